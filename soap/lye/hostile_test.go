package lye_test

import (
	"errors"
	"math/rand/v2"
	"reflect"
	"testing"
	"time"

	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

// A caller hands over anything: values that are not given, below zero, beyond all
// bounds, and among them good ones.
type anything struct{ *rand.Rand }

func (a anything) alkali() lye.Alkali { return lye.Alkali(a.IntN(4)) }

func (a anything) mass() units.Mass {
	return []units.Mass{{}, units.Grams(-5), units.Milligrams(1), units.Grams(100), units.Grams(1000), units.Grams(int64(1) << 40), units.Grams(int64(-1) << 40)}[a.IntN(7)]
}

func (a anything) volume() units.Volume {
	return []units.Volume{{}, units.Millilitres(-5), units.Millilitres(1), units.Millilitres(30), units.Millilitres(31), units.Millilitres(int64(1) << 62)}[a.IntN(6)]
}

func (a anything) ratio() units.Ratio {
	return []units.Ratio{
		{},
		units.Whole(-1), units.Whole(0), units.MustRatio("0.000000000000000000000001"), units.Percent(1), units.Percent(30),
		units.Percent(50), units.Percent(98), units.Whole(1), units.Whole(1).Over(units.Whole(7)), units.Whole(21), units.MustRatio("9999999999999999.5"),
	}[a.IntN(12)]
}

func (a anything) temperature() units.Temperature {
	return []units.Temperature{{}, units.Celsius(-273), units.Celsius(-1), units.Celsius(0), units.Celsius(20), units.Celsius(60), units.Celsius(100), units.Celsius(9000)}[a.IntN(8)]
}

func (a anything) density() units.Density {
	d, _ := units.DensityOfFloat(2 * a.Float64())
	return []units.Density{{}, d, units.GramsPerMillilitre(units.Whole(30))}[a.IntN(3)]
}

func (a anything) portion() lye.Portion {
	return lye.Portion{Alkali: a.alkali(), Mass: a.mass(), Hydroxide: a.ratio(), Dissolved: a.IntN(2) == 0}
}

func TestAnythingGivesAResultOrFaultsAndNeverBoth(t *testing.T) {
	a := anything{rand.New(rand.NewPCG(5, 2026))}
	refusals, results := map[string]int{}, map[string]int{}
	check := func(name string, err error, got ...any) {
		t.Helper()
		if err == nil {
			results[name]++
			return
		}
		refusals[name]++
		for _, value := range got {
			if !reflect.ValueOf(value).IsZero() {
				t.Errorf("%s: %v stands beside %v", name, value, err)
			}
		}
		var faults fault.Faults
		if !errors.As(err, &faults) || len(faults) == 0 {
			t.Fatalf("%s: %v is not fault.Faults", name, err)
		}
		for _, f := range faults {
			// Readings that contradict each other, all of them, have no one path.
			if f.Path == "" || f.Reason == "" || f.Kind == nil {
				t.Errorf("%s: %+v", name, f)
			}
		}
	}
	for range 20_000 {
		s := lye.Solution{Alkali: a.alkali(), Strength: a.ratio(), At: a.temperature()}
		d, err := s.Density()
		check("density", err, d)
		if err == nil && !d.Given() {
			t.Errorf("%v: no density and no error", s)
		}
		v, err := s.Volume(a.mass())
		check("volume", err, v)
		if at, ok := s.Crystallises(); ok != at.Given() {
			t.Errorf("%v: crystallises at %v, %t", s, at, ok)
		}
		if at, ok := s.Boils(); ok != at.Given() {
			t.Errorf("%v: boils at %v, %t", s, at, ok)
		}
		strength, err := lye.Hydrometer{Alkali: a.alkali(), Reading: a.density(), At: a.temperature()}.Strength()
		check("hydrometer", err, strength)

		titration := lye.Titration{
			Alkali: a.alkali(), Sample: a.mass(), Normality: a.ratio(), First: a.volume(), Total: a.volume(),
			Balance: a.mass(), Burette: a.volume(), Titrant: a.ratio(), CarbonateMax: a.ratio(),
		}
		if a.IntN(2) == 0 {
			titration.Balance, titration.Burette, titration.Titrant = units.Mass{}, units.Volume{}, units.Ratio{}
		}
		found, err := titration.Result()
		check("titration", err, found)
		if r, ok := found.Range(); ok != r.Given() || ok && !r.Ordered() {
			t.Errorf("%+v: %v, %t", found, r, ok)
		}

		purity := units.Range{Low: a.ratio(), Typical: a.ratio(), High: a.ratio()}
		aged, err := lye.Aged(a.alkali(), purity, a.ratio())
		check("ageing", err, aged)
		if err == nil && (!aged.Ordered() || aged.Low.Sign() <= 0 || aged.High.Compare(units.Whole(1)) > 0) {
			t.Errorf("%v", aged)
		}
		allowed, err := lye.Certificate{AssayMin: a.ratio(), AssayMax: a.ratio(), CarbonateMax: a.ratio(), Typical: a.ratio()}.Purity(a.alkali())
		check("certificate", err, allowed)
		if err == nil && (!allowed.Ordered() || allowed.Low.Sign() <= 0 || allowed.High.Compare(units.Whole(1)) > 0) {
			t.Errorf("%v", allowed)
		}

		m := lye.Mixing{Water: a.mass(), WaterAt: a.temperature(), Ice: a.mass(), Room: a.temperature(), Heat: lye.HeatOfSolution(a.IntN(3))}
		for range a.IntN(4) {
			m.Alkalis = append(m.Alkalis, a.portion())
		}
		heat, err := m.Bound()
		check("mixing", err, heat)
		if err == nil && (!heat.Final.Given() || heat.Final.Compare(units.Celsius(0)) < 0 || heat.Final.Compare(units.Celsius(300)) > 0 || !heat.Strength.Given()) {
			t.Errorf("%+v: %+v", m, heat)
		}

		stock := lye.Stock{Alkali: a.alkali(), Strength: a.ratio()}
		alkali, water, err := stock.Make(a.mass(), a.ratio())
		check("making", err, alkali, water)
		if alkali.Sign() < 0 || water.Sign() < 0 {
			t.Errorf("%v: %v and %v", stock, alkali, water)
		}
		taken, water, err := stock.For(a.mass(), a.ratio())
		check("thinning", err, taken, water)
		if taken.Sign() < 0 || water.Sign() < 0 {
			t.Errorf("%v: %v and %v", stock, taken, water)
		}

		soonest, latest, err := lye.Cooling{Room: a.temperature(), First: a.temperature(), Second: a.temperature(), Between: time.Duration(a.Int64() >> a.IntN(63))}.Until(a.temperature())
		check("cooling", err, soonest, latest)
		if soonest < 0 || latest < soonest {
			t.Errorf("%v to %v", soonest, latest)
		}
		low, high, err := lye.Joining{Oils: a.mass(), OilsAt: a.temperature(), Lye: a.mass(), LyeAt: a.temperature(), Alkali: a.alkali(), Strength: a.ratio()}.Temperature()
		check("joining", err, low, high)
		lye.Apart(a.temperature(), a.temperature())
		heat.Hot()
	}
	for name := range refusals {
		if results[name] == 0 {
			t.Errorf("%s: nothing was accepted", name)
		}
	}
	if len(refusals) != 11 {
		t.Errorf("%d functions refused, want 11: %v", len(refusals), refusals)
	}
}

func TestSolutionsAndReadingsBeyondTheTablesAreRefused(t *testing.T) {
	good := lye.Solution{Alkali: lye.SodiumHydroxide, Strength: units.Percent(30), At: units.Celsius(20)}
	for _, c := range []struct {
		spoil func(*lye.Solution)
		path  string
		kind  error
	}{
		{func(s *lye.Solution) { s.Alkali = 0 }, "alkali", fault.ErrMissing},
		{func(s *lye.Solution) { s.Strength = units.Ratio{} }, "strength", fault.ErrMissing},
		{func(s *lye.Solution) { s.Strength = units.Whole(-1) }, "strength", fault.ErrRange},
		{func(s *lye.Solution) { s.Strength = percent("50.0001") }, "strength", fault.ErrRange},
		{func(s *lye.Solution) { s.At = units.Temperature{} }, "temperature", fault.ErrMissing},
		{func(s *lye.Solution) { s.At = celsius(t, -0.000001) }, "temperature", fault.ErrRange},
		{func(s *lye.Solution) { s.At = celsius(t, 100.000001) }, "temperature", fault.ErrRange},
	} {
		bad := good
		c.spoil(&bad)
		d, err := bad.Density()
		refused(t, d, err, c.path, c.kind)
		v, err := bad.Volume(units.Grams(100))
		refused(t, v, err, c.path, c.kind)
	}
	reading := units.GramsPerMillilitre(units.MustRatio("1.3"))
	for _, c := range []struct {
		hydrometer lye.Hydrometer
		path       string
		kind       error
	}{
		{lye.Hydrometer{Reading: reading, At: units.Celsius(20)}, "alkali", fault.ErrMissing},
		{lye.Hydrometer{Alkali: lye.SodiumHydroxide, At: units.Celsius(20)}, "density", fault.ErrMissing},
		{lye.Hydrometer{Alkali: lye.SodiumHydroxide, Reading: reading}, "temperature", fault.ErrMissing},
		{lye.Hydrometer{Alkali: lye.SodiumHydroxide, Reading: reading, At: units.Celsius(101)}, "temperature", fault.ErrRange},
		{lye.Hydrometer{Alkali: lye.SodiumHydroxide, Reading: units.GramsPerMillilitre(units.MustRatio("1.6")), At: units.Celsius(20)}, "density", fault.ErrRange},
		{lye.Hydrometer{Alkali: lye.SodiumHydroxide, Reading: units.GramsPerMillilitre(units.MustRatio("0.98")), At: units.Celsius(20)}, "density", fault.ErrRange},
		{lye.Hydrometer{Alkali: lye.SodiumHydroxide, Reading: units.GramsPerMillilitre(units.MustRatio("1330")), At: units.Celsius(20)}, "density", fault.ErrMissing}, // kg/m3 is not a density in g/mL
	} {
		strength, err := c.hydrometer.Strength()
		refused(t, strength, err, c.path, c.kind)
	}
}

func TestMixingsThatCannotBeAreRefused(t *testing.T) {
	for _, c := range []struct {
		spoil func(*lye.Mixing)
		path  string
		kind  error
	}{
		{func(m *lye.Mixing) { m.Water = units.Mass{} }, "water", fault.ErrMissing},
		{func(m *lye.Mixing) { m.Water = units.Grams(-1) }, "water", fault.ErrRange},
		{func(m *lye.Mixing) { m.Ice = units.Grams(-1) }, "ice", fault.ErrRange},
		{func(m *lye.Mixing) { m.WaterAt = units.Temperature{} }, "water_temperature", fault.ErrMissing},
		{func(m *lye.Mixing) { m.WaterAt = units.Celsius(101) }, "water_temperature", fault.ErrRange},
		{func(m *lye.Mixing) { m.Room = units.Celsius(-1) }, "room", fault.ErrRange},
		{func(m *lye.Mixing) { m.Heat = 2 }, "heat", fault.ErrUnknown},
		{func(m *lye.Mixing) { m.Alkalis = nil }, "alkali_mass", fault.ErrMissing},
		{func(m *lye.Mixing) { m.Alkalis = append(m.Alkalis, m.Alkalis[0], m.Alkalis[0]) }, "alkali_mass", fault.ErrMissing},
		{func(m *lye.Mixing) { m.Alkalis[0].Alkali = 0 }, "alkali", fault.ErrMissing},
		{func(m *lye.Mixing) { m.Alkalis[0].Mass = units.Mass{} }, "alkali_mass", fault.ErrMissing},
		{func(m *lye.Mixing) { m.Alkalis[0].Mass = units.Grams(-1) }, "alkali_mass", fault.ErrRange},
		{func(m *lye.Mixing) { m.Alkalis[0].Hydroxide = units.Ratio{} }, "purity", fault.ErrMissing},
		{func(m *lye.Mixing) { m.Alkalis[0].Hydroxide = percent("100.1") }, "purity", fault.ErrRange},
		{func(m *lye.Mixing) {
			m.Alkalis[0] = lye.Portion{Alkali: lye.PotassiumHydroxide, Mass: units.Grams(1), Hydroxide: units.Percent(30), Dissolved: true}
		}, "alkali", fault.ErrImpossible},
	} {
		bad := mixing(lye.SodiumHydroxide, 30, 20, lye.Cautious)
		c.spoil(&bad)
		h, err := bad.Bound()
		refused(t, h, err, c.path, c.kind)
	}
}
