package units_test

import (
	"fmt"
	"math/big"
	"strings"
	"testing"

	"example.com/lyewright/units"
)

// gramsOf is what one of each unit weighs (Handbook 44, as in
// TestOunceAndPoundAreThoseOfHandbook44).
var gramsOf = map[units.Unit]string{
	units.Gram: "1", units.Kilogram: "1000", units.Milligram: "0.001", units.Ounce: "28.349523125", units.Pound: "453.59237",
}

func TestMassIsWrittenInEveryUnitToTheNearestDecimal(t *testing.T) {
	s := newSource(30)
	for range 5_000 {
		m, x := s.mass(t)
		for _, unit := range allUnits {
			most := 9
			if unit == units.Milligram {
				most = 6
			}
			for _, decimals := range []int{-1, 0, s.IntN(most + 1), most, most + 1, 40} {
				places := min(max(decimals, 0), most)
				inUnit := new(big.Rat).Quo(x, rat(t, gramsOf[unit]))
				if got, want := m.Text(unit, decimals), plain(inUnit, places); got != want {
					t.Fatalf("%v in %v with at most %d decimals is %s, want %s", m, unit, decimals, got, want)
				}
				want := inUnit.FloatString(places)
				if plain(inUnit, places) == "0" { // no minus before a zero
					want = strings.TrimPrefix(want, "-")
				}
				if got := m.Fixed(unit, decimals); got != want {
					t.Fatalf("%v in %v with %d decimals is %s, want %s", m, unit, decimals, got, want)
				}
			}
		}
	}
}

func TestMassIsWrittenExactlyInGrams(t *testing.T) {
	tests := []struct {
		m    units.Mass
		want string
	}{
		{units.Mass{}, "0 g"},
		{units.Grams(800), "800 g"},
		{units.Grams(-800), "-800 g"},
		{nanograms(t, 1), "0.000000001 g"},
		{nanograms(t, -1), "-0.000000001 g"},
		{nanograms(t, 10_200_000_000), "10.2 g"},
		{units.Grams(farGrams), "9223372036 g"},
	}
	for _, test := range tests {
		if got := test.m.String(); got != test.want {
			t.Errorf("%s, want %s", got, test.want)
		}
	}
	if got := nanograms(t, -4_000_000).Fixed(units.Gram, 2); got != "0.00" {
		t.Errorf("−0.004 g with two decimals is %s", got)
	}
	if got := nanograms(t, -5_000_000).Fixed(units.Gram, 2); got != "-0.01" {
		t.Errorf("−0.005 g with two decimals is %s", got)
	}
	if got := fmt.Sprintf("%v", units.Grams(3)); got != "3 g" {
		t.Errorf("%%v writes %s", got)
	}
}

// Nine decimals of a kilogram, an ounce or a pound are coarser than a
// nanogram, six of a milligram and nine of a gram are one: a text comes back
// as it was, whatever the nanogram it was rounded to.
func TestTextOfAMassSurvivesReadingAndWriting(t *testing.T) {
	s := newSource(31)
	for range 5_000 {
		for _, unit := range allUnits {
			decimals, integers := 1+s.IntN(9), 1+s.IntN(3)
			if unit == units.Milligram {
				decimals, integers = 1+s.IntN(6), 1+s.IntN(9)
			}
			number := plain(rat(t, s.digits(integers)+"."+s.digits(decimals)), 9)
			for _, space := range []string{"", " "} {
				m := mass(t, number+space+unit.String())
				if got := m.Text(unit, 9); got != number {
					t.Fatalf("%s %v is %v, and %s in %v again", number, unit, m, got, unit)
				}
				if back := mass(t, m.String()); back != m {
					t.Fatalf("%v reads back as %v", m, back)
				}
			}
		}
	}
}

func TestRatioIsWrittenToTheNearestDecimalInEverySpelling(t *testing.T) {
	s := newSource(32)
	for range 10_000 {
		r, x := s.ratio(t)
		decimals := s.IntN(37) - 1
		places := min(max(decimals, 0), 34)
		percent := times(x, big.NewRat(100, 1))
		fixed := percent.FloatString(places)
		if plain(percent, places) == "0" {
			fixed = strings.TrimPrefix(fixed, "-")
		}
		tests := []struct{ how, got, want string }{
			{"String", r.String(), plain(x, 60)},
			{"Text", r.Text(decimals), plain(x, places)},
			{"PercentText", r.PercentText(decimals), plain(percent, places)},
			{"PercentFixed", r.PercentFixed(decimals), fixed},
			{"MilligramsPerGramText", r.MilligramsPerGramText(decimals), plain(times(x, big.NewRat(1000, 1)), places)},
		}
		for _, test := range tests {
			if test.got != test.want {
				t.Fatalf("%s of %s with %d decimals is %s, want %s", test.how, plain(x, 34), decimals, test.got, test.want)
			}
		}
	}
}

func TestRatioReadsBackFromEverySpelling(t *testing.T) {
	s := newSource(33)
	for range 5_000 {
		r := units.MustRatio(s.digits(1+s.IntN(13)) + "." + s.digits(1+s.IntN(34)))
		for _, text := range []string{r.Text(34), r.PercentText(34) + " %", r.PercentText(34) + "%", r.MilligramsPerGramText(34) + " mg/g"} {
			back, err := units.ParseRatio(text)
			if err != nil || !back.Equal(r) {
				t.Fatalf("%s reads back from %q as %s, %v", r.Text(34), text, back.Text(34), err)
			}
		}
	}
}

// 100 g are 3.527396… oz: printed as 3.53 oz, whoever weighs it has 0.07 g more than the
// most. 0.05 oz are 1.41747615625 g, held a quarter of a nanogram short.
func TestTheMostIsWrittenTowardsZeroInEveryUnit(t *testing.T) {
	for n := range 1000 {
		text := fmt.Sprintf("%d.%02d", n/100, n%100)
		if got := mass(t, text+" oz").FixedDown(units.Ounce, 2); got != text {
			t.Errorf("%s oz are written as %s", text, got)
		}
	}
	half := big.NewRat(1, 2_000_000_000) // of a nanogram, in grams
	if got := units.Grams(100).FixedDown(units.Ounce, 2); got != "3.52" {
		t.Errorf("100 g are %s oz, want 3.52", got)
	}
	s := newSource(31)
	for range 2_000 {
		m, x := s.mass(t)
		for _, unit := range allUnits {
			most := 9
			if unit == units.Milligram {
				most = 6
			}
			places := s.IntN(most + 1)
			steps := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(places)), nil)
			size := new(big.Rat).Add(new(big.Rat).Abs(x), half)
			scaled := new(big.Rat).Mul(new(big.Rat).Quo(size, rat(t, gramsOf[unit])), new(big.Rat).SetInt(steps))
			whole := new(big.Int).Quo(scaled.Num(), scaled.Denom()) // towards zero
			if x.Sign() < 0 {
				whole.Neg(whole)
			}
			want := new(big.Rat).SetFrac(whole, steps).FloatString(places)
			if got := m.FixedDown(unit, places); got != want {
				t.Fatalf("%v in %v with %d decimals is %s, want %s", m, unit, places, got, want)
			}
		}
	}
}
