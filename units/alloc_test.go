package units_test

import (
	"testing"

	"example.com/lyewright/units"
)

// Results go here so that the compiler keeps the calls.
var (
	keepMass  units.Mass
	keepSum   units.Sum
	keepRatio units.Ratio
	keepInt   int
	keepOK    bool
)

// A batch does thousands of these; with ratios of at most twelve decimals none
// may allocate.
func TestArithmeticOfAWeighingDoesNotAllocate(t *testing.T) {
	m, n := units.Grams(800), mass(t, "28.2 oz")
	r, q := units.MustRatio("6.5 %"), units.MustRatio("196.512345678 mg/g")
	sum, other := units.Sum{}.Plus(m, r), units.Sum{}.Plus(n, q)
	tests := map[string]func(){
		"Mass.Add":       func() { keepMass = m.Add(n) },
		"Mass.Sub":       func() { keepMass = m.Sub(n) },
		"Mass.Times":     func() { keepMass, keepOK = m.Times(q, units.Down) },
		"Mass.Round":     func() { keepMass = n.Round(units.Milligrams(100), units.Nearest) },
		"Mass.Compare":   func() { keepInt = m.Compare(n) },
		"Sum.Plus":       func() { keepSum = sum.Plus(n, q) },
		"Sum.Add":        func() { keepSum = sum.Add(other) },
		"Sum.Sub":        func() { keepSum = sum.Sub(other) },
		"Sum.TimesWhole": func() { keepSum = sum.TimesWhole(7) },
		"Sum.Mass":       func() { keepMass = sum.Mass(units.Up) },
		"Sum.Compare":    func() { keepInt = sum.Compare(other) },
		"Ratio.Add":      func() { keepRatio = r.Add(q) },
		"Ratio.Sub":      func() { keepRatio = r.Sub(q) },
		"Ratio.Compare":  func() { keepInt = r.Compare(q) },
		"Ratio.Equal":    func() { keepOK = r.Equal(q) },
		"Percent":        func() { keepRatio = units.Percent(6) },
		"ParseMass":      func() { keepMass, _ = units.ParseMass("28.2 oz") },
		"ParsePercent":   func() { keepRatio, _ = units.ParsePercent("6.5 %") },
	}
	for name, call := range tests {
		if allocs := testing.AllocsPerRun(100, call); allocs != 0 {
			t.Errorf("%s allocates %v times", name, allocs)
		}
	}
}

func BenchmarkParseMass(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		keepMass, _ = units.ParseMass("28.2 oz")
	}
}

func BenchmarkParsePercent(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		keepRatio, _ = units.ParsePercent("6.5 %")
	}
}

func BenchmarkMassTimes(b *testing.B) {
	m, r := units.Grams(800), units.MustRatio("196.5 mg/g")
	b.ReportAllocs()
	for b.Loop() {
		keepMass, keepOK = m.Times(r, units.Nearest)
	}
}

func BenchmarkSumPlus(b *testing.B) {
	m, r, sum := units.Grams(800), units.MustRatio("196.5 mg/g"), units.Sum{}
	b.ReportAllocs()
	for b.Loop() {
		keepSum = sum.Plus(m, r)
	}
}

func BenchmarkRatioOver(b *testing.B) {
	quotients := map[string][2]units.Ratio{
		"ends":   {units.MustRatio("6.5 %"), units.Whole(4)},
		"is cut": {units.MustRatio("6.5 %"), units.Whole(7)},
	}
	for name, q := range quotients {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				keepRatio = q[0].Over(q[1])
			}
		})
	}
}
