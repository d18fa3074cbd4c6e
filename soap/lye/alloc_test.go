package lye_test

import (
	"testing"

	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
)

// Results go here so that the compiler keeps the calls.
var (
	keepDensity     units.Density
	keepHeat        lye.Heat
	keepTemperature units.Temperature
	keepRatio       units.Ratio
	keepTitrated    lye.Titrated
)

func measured() (lye.Solution, lye.Mixing, lye.Mixing) {
	potassium := mixing(lye.PotassiumHydroxide, 30, 20, lye.Cautious)
	return lye.Solution{Alkali: lye.SodiumHydroxide, Strength: units.Percent(33), At: units.Celsius(40)}, mixing(lye.SodiumHydroxide, 33, 20, lye.Cautious), potassium
}

// A drawing asks for thousands of these.
func TestEstimatesDoNotAllocate(t *testing.T) {
	s, sodium, potassium := measured()
	k := lye.Solution{Alkali: lye.PotassiumHydroxide, Strength: s.Strength, At: s.At}
	for name, call := range map[string]func(){
		"Density of NaOH": func() { keepDensity, _ = s.Density() },
		"Density of KOH":  func() { keepDensity, _ = k.Density() },
		"Bound of NaOH":   func() { keepHeat, _ = sodium.Bound() },
		"Bound of KOH":    func() { keepHeat, _ = potassium.Bound() },
		"Crystallises":    func() { keepTemperature, _ = s.Crystallises() },
	} {
		if allocs := testing.AllocsPerRun(100, call); allocs != 0 {
			t.Errorf("%s allocates %v times", name, allocs)
		}
	}
}

func BenchmarkDensity(b *testing.B) {
	s, _, _ := measured()
	b.ReportAllocs()
	for b.Loop() {
		keepDensity, _ = s.Density()
	}
}

func BenchmarkHeat(b *testing.B) {
	_, sodium, potassium := measured()
	for name, m := range map[string]lye.Mixing{"sodium": sodium, "potassium": potassium} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				keepHeat, _ = m.Bound()
			}
		})
	}
}

func BenchmarkHydrometer(b *testing.B) {
	h := lye.Hydrometer{Alkali: lye.SodiumHydroxide, Reading: units.GramsPerMillilitre(units.MustRatio("1.33")), At: units.Celsius(40)}
	b.ReportAllocs()
	for b.Loop() {
		keepRatio, _ = h.Strength()
	}
}

func BenchmarkTitration(b *testing.B) {
	x := lye.Titration{
		Alkali: lye.SodiumHydroxide, Sample: units.Milligrams(1500), Normality: units.Whole(1),
		First: volume(b, "36.30 mL"), Total: volume(b, "36.60 mL"),
		Balance: units.Milligrams(10), Burette: volume(b, "0.05 mL"), Titrant: percent("0.2"),
	}
	b.ReportAllocs()
	for b.Loop() {
		keepTitrated, _ = x.Result()
	}
}
