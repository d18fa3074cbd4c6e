package lye_test

import (
	"errors"
	"testing"

	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

func FuzzTitration(f *testing.F) {
	for _, seed := range [][7]string{
		{"0.4 g", "0.1", "17.5 mL", "19.0 mL", "0 g", "0 mL", ""},
		{"1.5 g", "1", "36.30 mL", "36.60 mL", "0.01 g", "0.05 mL", ""},
		{"1.5 g", "1", "0 mL", "36.60 mL", "0 g", "0 mL", "3 %"},
		{"1.5 g", "1", "36.30 mL", "0 mL", "0 g", "0 mL", "3 %"},
		{"0.000000001 g", "20", "1000 L", "1000 L", "0 g", "1000 L", "100 %"},
		{"1000 kg", "0.0000000000000000000000000000000001", "0.000001 mL", "0.000001 mL", "0 g", "0 mL", ""},
	} {
		f.Add(seed[0], seed[1], seed[2], seed[3], seed[4], seed[5], seed[6], false)
		f.Add(seed[0], seed[1], seed[2], seed[3], seed[4], seed[5], seed[6], true)
	}
	f.Fuzz(func(t *testing.T, sample, normality, first, total, balance, burette, carbonate string, potassium bool) {
		x := lye.Titration{Alkali: lye.SodiumHydroxide}
		if potassium {
			x.Alkali = lye.PotassiumHydroxide
		}
		x.Sample, _ = units.ParseMass(sample)
		x.Normality, _ = units.ParseNumber(normality)
		x.First, _ = units.ParseVolume(first)
		x.Total, _ = units.ParseVolume(total)
		x.Balance, _ = units.ParseMass(balance)
		x.Burette, _ = units.ParseVolume(burette)
		x.CarbonateMax, _ = units.ParsePercent(carbonate)
		found, err := x.Result()
		if err != nil {
			if found.High.Given() || found.Low.Given() || found.Hydroxide.Given() || found.Carbonate.Given() {
				t.Errorf("%+v stands beside %v", found, err)
			}
			return
		}
		if !found.High.Given() || found.High.Sign() < 0 || found.High.Compare(units.Whole(1)) > 0 {
			t.Errorf("%+v: high %v", x, found.High)
		}
		two := x.First.Sign() > 0 && x.Total.Sign() > 0
		if found.Hydroxide.Given() != two || found.Carbonate.Given() != two || found.Low.Given() != (two || x.CarbonateMax.Given()) {
			t.Errorf("%+v: %+v", x, found)
		}
		if two && (found.Low.Compare(found.Hydroxide) > 0 || found.Carbonate.Sign() < 0) {
			t.Errorf("%+v: %+v", x, found)
		}
		if r, ok := found.Range(); ok != found.Low.Given() || ok && (!r.Ordered() || r.Low.Sign() <= 0) {
			t.Errorf("%+v: %v, %t", found, r, ok)
		}
	})
}

func FuzzHydrometer(f *testing.F) {
	for _, seed := range [][2]string{
		{"1.33 g/mL", "20 °C"},
		{"1.5 g/mL", "68 °F"},
		{"1 g/mL", "4 °C"},
		{"0.958 g/mL", "100 °C"},
		{"0.9998 g/mL", "0 °C"},
		{"1.53 g/mL", "0 °C"},
		{"30 g/mL", "50 °C"},
		{"0.000000001 g/mL", "100.000001 °C"},
		{"1.3", "-1 °C"},
	} {
		f.Add(seed[0], seed[1], false)
		f.Add(seed[0], seed[1], true)
	}
	f.Fuzz(func(t *testing.T, density, temperature string, potassium bool) {
		h := lye.Hydrometer{Alkali: lye.SodiumHydroxide}
		if potassium {
			h.Alkali = lye.PotassiumHydroxide
		}
		h.Reading, _ = units.ParseDensity(density)
		h.At, _ = units.ParseTemperature(temperature)
		strength, err := h.Strength()
		if err != nil {
			if strength.Given() {
				t.Errorf("%v stands beside %v", strength, err)
			}
			return
		}
		back, err := lye.Solution{Alkali: h.Alkali, Strength: strength, At: h.At}.Density()
		// The strength is rounded to 10^-8, worth at most 1.5 × 10^-8 g/mL.
		if err != nil || !near(back.Float(), h.Reading.Float(), 2e-8) {
			t.Errorf("%v at %v is %v, which has %v, %v", h.Reading, h.At, strength, back, err)
		}
	})
}

// A certificate of limits gives a purity in order and within what is printed, or nothing
// and a fault for each figure that cannot be.
func FuzzCertificate(f *testing.F) {
	f.Add("97 %", "100.5 %", "1 %", "", false) // as a pharmacopoeia prints it
	f.Fuzz(func(t *testing.T, least, most, carbonate, typical string, potassium bool) {
		alkali, factor := lye.SodiumHydroxide, "0.7547"
		if potassium {
			alkali, factor = lye.PotassiumHydroxide, "0.8119"
		}
		var c lye.Certificate
		c.AssayMin, _ = units.ParsePercent(least)
		c.AssayMax, _ = units.ParsePercent(most)
		c.CarbonateMax, _ = units.ParsePercent(carbonate)
		c.Typical, _ = units.ParsePercent(typical)
		purity, err := c.Purity(alkali)
		if err != nil {
			var faults fault.Faults
			if !errors.As(err, &faults) || len(faults) == 0 || purity.Low.Given() || purity.Typical.Given() || purity.High.Given() {
				t.Fatalf("%v beside %v", purity, err)
			}
			for _, one := range faults {
				if one.Path == "" || one.Reason == "" || one.Kind == nil {
					t.Errorf("%+v says not where, or not why", one)
				}
			}
			return
		}
		if !purity.Ordered() || purity.Low.Sign() <= 0 || purity.High.Compare(units.Whole(1)) > 0 || purity.High.Compare(c.AssayMax) > 0 || purity.Low.Compare(c.AssayMin) > 0 {
			t.Errorf("%+v gives %v", c, purity)
		}
		if want := c.AssayMin.Sub(c.CarbonateMax.Times(units.MustRatio(factor))); !purity.Low.Equal(want) {
			t.Errorf("%+v: low %v, by hand %v", c, purity.Low, want)
		}
		if want := c.Typical.Or(purity.High); !purity.Typical.Equal(want) || potassium && !c.Typical.Given() {
			t.Errorf("%+v: typical %v", c, purity.Typical)
		}
	})
}
