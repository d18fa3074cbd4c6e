package units_test

import (
	"math"
	"testing"

	"example.com/lyewright/units"
)

func TestZeroRatioIsNotGivenAndZeroPercentIs(t *testing.T) {
	var none units.Ratio
	zero := units.Percent(0)
	if none.Given() || !zero.Given() {
		t.Fatalf("given: %t and %t", none.Given(), zero.Given())
	}
	if none.Equal(zero) || !none.Equal(units.Ratio{}) || !zero.Equal(units.Whole(0)) {
		t.Error("not given and 0 % are not kept apart")
	}
	if none.String() != "not given" || none.Text(3) != "" || none.PercentFixed(2) != "" || zero.String() != "0" || zero.PercentFixed(2) != "0.00" {
		t.Errorf("texts: %q %q %q %q %q", none.String(), none.Text(3), none.PercentFixed(2), zero.String(), zero.PercentFixed(2))
	}
	if got := none.Or(units.Percent(6)); !got.Equal(units.Percent(6)) {
		t.Errorf("not given or 6 %% is %v", got)
	}
	if got := zero.Or(units.Percent(6)); !got.Equal(zero) {
		t.Errorf("0 %% or 6 %% is %v", got)
	}
}

func TestRatioThatIsNotGivenPoisonsArithmetic(t *testing.T) {
	var none units.Ratio
	for _, r := range []units.Ratio{none, units.Percent(0), units.Percent(6), units.MustRatio("0.12345678901234567890")} {
		results := map[string]units.Ratio{
			"r + none": r.Add(none), "none + r": none.Add(r),
			"r − none": r.Sub(none), "none − r": none.Sub(r),
			"r × none": r.Times(none), "none × r": none.Times(r),
			"r / none": r.Over(none), "none / r": none.Over(r),
			"1 − none": none.Rest(), "none rounded": none.Round(2, units.Up),
		}
		for name, got := range results {
			if got.Given() {
				t.Errorf("%s is %v where r is %v", name, got, r)
			}
		}
	}
	if none.Sign() != 0 {
		t.Errorf("its sign is %d", none.Sign())
	}
	if units.Percent(6).Over(units.Percent(0)).Given() {
		t.Error("a quotient by 0 % is given")
	}
}

// A forgotten share must not become 0 g without a word, and 0 % of a mass is 0 g. A sum is one of what is known.
func TestRatioThatIsNotGivenMakesNoMass(t *testing.T) {
	m := units.Grams(800)
	if got, ok := m.Times(units.Ratio{}, units.Up); ok || got != (units.Mass{}) {
		t.Errorf("a mass times it is %v, %v", got, ok)
	}
	if got, ok := m.Times(units.Percent(0), units.Up); !ok || got != (units.Mass{}) {
		t.Errorf("a mass times 0 %% is %v, %v", got, ok)
	}
	sum := units.Sum{}.Plus(m, units.Whole(1))
	if sum.Plus(m, units.Ratio{}).Compare(sum) != 0 || sum.Times(units.Ratio{}).Sign() != 0 {
		t.Error("a sum does not count it as zero")
	}
}

func TestRatioThatIsNotGivenIsBelowEveryOther(t *testing.T) {
	var none units.Ratio
	for _, r := range []units.Ratio{units.Whole(int64(math.MinInt64)), units.Percent(-1), units.Percent(0), units.MustRatio("0.0000000000000000000000000000000001")} {
		if none.Compare(r) != -1 || r.Compare(none) != 1 {
			t.Errorf("against %v: %d, and %d the other way", r, none.Compare(r), r.Compare(none))
		}
	}
	if none.Compare(none) != 0 {
		t.Error("it is not equal to itself")
	}
}

func TestWholeNumbersOfEveryTypeAreExactRatios(t *testing.T) {
	type count int16
	tests := []struct {
		got  units.Ratio
		want string
	}{
		{units.Percent(6), "0.06"},
		{units.Percent(int8(-128)), "-1.28"},
		{units.Percent(uint64(math.MaxUint64)), "184467440737095516.15"},
		{units.Percent(int64(math.MinInt64)), "-92233720368547758.08"},
		{units.MilligramsPerGram(190), "0.19"},
		{units.MilligramsPerGram(uint64(math.MaxUint64)), "18446744073709551.615"},
		{units.Whole(count(-3)), "-3"},
		{units.Whole(9_223_372), "9223372"}, // the last that fits a word in units of 10^-12
		{units.Whole(9_223_373), "9223373"},
		{units.Whole(-9_223_373), "-9223373"},
		{units.Whole(uint64(math.MaxInt64) + 1), "9223372036854775808"},
		{units.Whole(uint64(math.MaxUint64)), "18446744073709551615"},
		{units.Whole(int64(math.MinInt64)), "-9223372036854775808"},
	}
	for _, test := range tests {
		if got := test.got.Text(34); got != test.want {
			t.Errorf("got %s, want %s", got, test.want)
		}
	}
}

// 2^-13 is 0.0001220703125 exactly: a half in the thirteenth decimal.
func TestEstimateBecomesARatioOfTwelveDecimals(t *testing.T) {
	tests := []struct {
		float float64
		want  string
	}{
		{0, "0"},
		{math.Copysign(0, -1), "0"},
		{0.1, "0.1"},
		{-0.065, "-0.065"},
		{1.0 / 8192, "0.000122070313"},
		{-1.0 / 8192, "-0.000122070313"},
		{1e-13, "0"},
		{8_000_000.5, "8000000.5"},
		{math.SmallestNonzeroFloat64, "0"},
	}
	for _, test := range tests {
		if got, ok := units.RatioOfFloat(test.float); !ok || got.String() != test.want {
			t.Errorf("%v is %v, %t; want %s", test.float, got, ok, test.want)
		}
	}
	for _, f := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 9.1e6, -9.1e6, math.MaxFloat64} {
		if got, ok := units.RatioOfFloat(f); ok || got.Given() {
			t.Errorf("%v is taken as %v", f, got)
		}
	}
}

func TestFractionIsInItsLowestTerms(t *testing.T) {
	tests := []struct {
		ratio                  units.Ratio
		numerator, denominator int64
	}{
		{units.Percent(50), 1, 2},
		{units.Percent(-75), -3, 4},
		{units.Whole(0), 0, 1},
		{units.Whole(3), 3, 1},
		{units.MustRatio("0.000000000001"), 1, 1_000_000_000_000},
		{units.MustRatio("196.5 mg/g"), 393, 2000},
	}
	for _, test := range tests {
		if n, d, ok := test.ratio.Fraction(); !ok || n != test.numerator || d != test.denominator {
			t.Errorf("%v is %d/%d, %t; want %d/%d", test.ratio, n, d, ok, test.numerator, test.denominator)
		}
	}
	for _, r := range []units.Ratio{{}, units.MustRatio("0.0000000000001")} {
		if _, _, ok := r.Fraction(); ok {
			t.Errorf("%v has a fraction", r)
		}
	}
}

func TestRoundingsHaveNames(t *testing.T) {
	for how, want := range map[units.Rounding]string{units.Nearest: "nearest", units.Down: "down", units.Up: "up"} {
		if how.String() != want {
			t.Errorf("%q, want %q", how.String(), want)
		}
	}
	var zero units.Rounding
	if zero != units.Nearest {
		t.Error("the zero rounding is not Nearest")
	}
}
