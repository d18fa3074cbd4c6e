package units_test

import (
	"errors"
	"math"
	"math/big"
	"testing"

	"example.com/lyewright/units"
)

func density(t testing.TB, text string) units.Density {
	t.Helper()
	d, err := units.ParseDensity(text)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestDensitiesAreReadExactly(t *testing.T) {
	for text, want := range map[string]string{
		"1.33 g/mL":              "1.33 g/mL",
		"1.33g/mL":               "1.33 g/mL",
		"30 g/mL":                "30 g/mL",
		"0.000000001 g/mL":       "0.000000001 g/mL",
		"0.0000000005 g/mL":      "0.000000001 g/mL",
		"1.12345678949999 g/mL":  "1.123456789 g/mL",
		"1.1234567895 g/mL":      "1.12345679 g/mL",
		"0000000000001.500 g/mL": "1.5 g/mL",
	} {
		if got := density(t, text); got.String() != want {
			t.Errorf("%s is %v, want %s", text, got, want)
		}
	}
	if got := density(t, "1.33 g/mL"); got != units.GramsPerMillilitre(units.MustRatio("1.33")) || got.Float() != 1.33 || !got.Ratio().Equal(units.MustRatio("1.33")) {
		t.Errorf("%v", got)
	}
}

func TestDensitiesThatCannotBeReadAreRefused(t *testing.T) {
	tests := append([]struct {
		text string
		kind error
	}{
		{"1.33", units.ErrUnit},
		{"1.33 g", units.ErrUnit},
		{"1.33 g/ml", units.ErrUnit},
		{"1.33 g/cm3", units.ErrUnit},
		{"1330 kg/m3", units.ErrUnit},
		{"1.33 °C", units.ErrUnit},
		{"0 g/mL", units.ErrSize},
		{"0.0000000004 g/mL", units.ErrSize},
		{"-1 g/mL", units.ErrSize},
		{"30.0000000001 g/mL", units.ErrSize},
		{"1330 g/mL", units.ErrSize},
	}, unread...)
	for _, test := range tests {
		d, err := units.ParseDensity(test.text)
		if !errors.Is(err, test.kind) || d.Given() {
			t.Errorf("%.40q: %v, %v, want %v", test.text, d, err, test.kind)
		}
		if err != nil {
			checkFault(t, test.text, err)
		}
	}
}

func TestADensityIsNotGivenBeyondWhatMatterHas(t *testing.T) {
	for _, r := range []units.Ratio{{}, units.Whole(0), units.Whole(-1), units.MustRatio("30.000000001")} {
		if d := units.GramsPerMillilitre(r); d.Given() {
			t.Errorf("%v is %v", r, d)
		}
	}
	for _, f := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, -1, 30.1, 1e-12, math.MaxFloat64} {
		if d, ok := units.DensityOfFloat(f); ok || d.Given() {
			t.Errorf("%v is %v", f, d)
		}
	}
	for f, want := range map[float64]string{1.5: "1.5 g/mL", 1.3486487881: "1.348648788 g/mL", 30: "30 g/mL"} {
		if d, ok := units.DensityOfFloat(f); !ok || d.String() != want {
			t.Errorf("%v is %v, want %s", f, d, want)
		}
	}
	var none units.Density
	if none.Given() || none.String() != "not given" || none.Text(9) != "" || none.Ratio().Given() || none.Float() != 0 || none.Compare(density(t, "1 g/mL")) != -1 {
		t.Errorf("none is %v", none)
	}
	if v, ok := none.Volume(units.Grams(1)); ok || v != (units.Volume{}) {
		t.Errorf("a gram of none is %v", v)
	}
}

// 250 mL of 1.33 g/mL are 332.5 g; mercury of 13.5951 g/mL (the conventional figure;
// recalled), 1 L: 13 595.1 g.
func TestMassAndVolumeAreThoseWorkedByHand(t *testing.T) {
	for _, c := range []struct{ density, volume, mass string }{
		{"1.33 g/mL", "250 mL", "332.5 g"},
		{"13.5951 g/mL", "1 L", "13595.1 g"},
		{"0.000000001 g/mL", "1 mL", "0.000000001 g"},
		{"1.5 g/mL", "0.000001 mL", "0.0000015 g"},
	} {
		d := density(t, c.density)
		if got, ok := d.Of(volume(t, c.volume)); !ok || got.String() != c.mass {
			t.Errorf("%s of %s: %v, want %s", c.volume, c.density, got, c.mass)
		}
		if got, ok := d.Volume(mass(t, c.mass)); !ok || got != volume(t, c.volume) {
			t.Errorf("%s of %s: %v, want %s", c.mass, c.density, got, c.volume)
		}
	}
}

// Against exact fractions, of either sign: rounded once.
func TestOfAndVolumeAreExactAndInverse(t *testing.T) {
	s := newSource(42)
	for range 10_000 {
		d := density(t, plain(rat(t, "0."+s.digits(8)+"1"), 9)+" g/mL")
		if s.IntN(2) == 0 {
			d = density(t, plain(rat(t, "1."+s.digits(9)), 9)+" g/mL")
		}
		number := plain(rat(t, s.digits(1+s.IntN(5))+"."+s.digits(6)), 6)
		v, x := volume(t, number+" mL"), rat(t, number)
		if s.IntN(4) == 0 {
			v, x = units.Volume{}.Sub(v), x.Neg(x)
		}
		m, ok := d.Of(v)
		if want := plain(times(x, rat(t, d.Text(9))), 9) + " g"; !ok || m.String() != want {
			t.Fatalf("%v of %v: %v, want %s", v, d, m, want)
		}
		back, ok := d.Volume(m)
		want := plain(new(big.Rat).Quo(rat(t, m.Text(units.Gram, 9)), rat(t, d.Text(9))), 6) + " mL"
		if !ok || back.String() != want {
			t.Fatalf("%v of %v: %v, want %s", m, d, back, want)
		}
		// A nanogram is less than a nanolitre where a millilitre weighs a milligram.
		if d.Float() > 0.001 && back != v {
			t.Fatalf("%v of %v comes back as %v", v, d, back)
		}
	}
}

// Of an unknown density a volume has no mass that is known, and none at all has no volume.
func TestADensityThatIsNotGivenMakesNoMass(t *testing.T) {
	if m, ok := (units.Density{}).Of(units.Millilitres(250)); ok || m != (units.Mass{}) {
		t.Errorf("%v, %v", m, ok)
	}
	if m, ok := density(t, "1.33 g/mL").Of(units.Volume{}); !ok || m != (units.Mass{}) {
		t.Errorf("0 mL: %v, %v", m, ok)
	}
}

func TestHugeMassesAndVolumesStopAtTheEnd(t *testing.T) {
	heavy, light := density(t, "30 g/mL"), density(t, "0.000000001 g/mL")
	huge := units.Millilitres(int64(1) << 40)
	if m, ok := heavy.Of(huge); !ok || m.Compare(units.Grams(farGrams)) < 0 {
		t.Errorf("%v of %v are %v", huge, heavy, m)
	}
	if m, ok := heavy.Of(units.Millilitres(int64(-1) << 40)); !ok || m.Compare(units.Grams(-farGrams)) > 0 {
		t.Errorf("they are %v", m)
	}
	if v, ok := light.Volume(units.Grams(farGrams)); ok || v != (units.Volume{}) {
		t.Errorf("more than a volume holds: %v, %t", v, ok)
	}
}
