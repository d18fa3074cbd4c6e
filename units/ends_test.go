package units_test

import (
	"strings"
	"testing"

	"example.com/lyewright/units"
)

// Where the words that hold a quantity end: a magnitude of 2^63 has no
// positive counterpart in 64 bits, and 2^64 − 1 rounded up is 0.

func TestSumJustBelow2To64NanogramsStopsAtTheEnd(t *testing.T) {
	// 2^64 − 1 ng and a half: 18 446 744 073.709 551 615 5 g.
	sum := units.Sum{}.Plus(units.Grams(int64(9_000_000_000)), units.Whole(2)).
		Plus(units.Grams(446_744_073), units.Whole(1)).
		Plus(mass(t, "0.709551615 g"), units.Whole(1)).
		Plus(nanograms(t, 1), units.MustRatio("0.5"))
	for _, how := range modes {
		if m := sum.Mass(how); m.Compare(units.Grams(farGrams)) < 0 {
			t.Errorf("rounded %v it is %v", how, m)
		}
	}
}

func TestLowestMassIsAMassLikeAnyOther(t *testing.T) {
	m := units.Grams(int64(-10_000_000_000))
	if !strings.HasPrefix(m.String(), "-9223372036") {
		t.Errorf("it is written %s", m)
	}
	for _, how := range modes {
		if got := m.Round(nanograms(t, 1), how); got != m {
			t.Errorf("rounded %v to a nanogram it is %v", how, got)
		}
	}
	if got := m.Sub(m); got != (units.Mass{}) {
		t.Errorf("less itself it is %v", got)
	}
}

func TestLowestNarrowRatioIsWritten(t *testing.T) {
	r := negative(units.MustRatio("9223372.036854775808")) // −2^63 units of 10^-12
	if got := r.String(); got != "-9223372.036854775808" || r.Sign() != -1 {
		t.Errorf("%s, of sign %d", got, r.Sign())
	}
}

func TestMiddleOfEqualEndsIsTheEndHoweverManyDigits(t *testing.T) {
	x := units.MustRatio("1234567890.1234567890123456789012345678901239")
	r := units.Between(x, x)
	if !r.Middle().Equal(x) || !r.Ordered() {
		t.Errorf("the middle is %s, ordered is %t", r.Middle().Text(34), r.Ordered())
	}
}

func TestRemedyForAMissingUnitDoesNotRepeatALongNumber(t *testing.T) {
	text := strings.Repeat("1", 16) + "." + strings.Repeat("2", 34)
	_, massErr := units.ParseMass(text)
	_, percentErr := units.ParsePercent(text)
	for _, err := range []error{massErr, percentErr} {
		if err == nil || strings.Contains(err.Error(), text[:41]) {
			t.Errorf("more than 40 bytes of the text in %v", err)
		}
	}
}

func TestASumOverNothingIsNoMass(t *testing.T) {
	sum := units.Sum{}.Plus(units.Grams(1), units.Whole(1))
	for _, over := range []units.Ratio{{}, units.Whole(0)} {
		if m, ok := sum.Scale(units.Whole(1), over, units.Nearest); ok || m != (units.Mass{}) {
			t.Errorf("1 g over %v is %v, %t: want no mass", over, m, ok)
		}
	}
	if m, ok := sum.Scale(units.Ratio{}, units.Whole(2), units.Nearest); ok || m != (units.Mass{}) {
		t.Errorf("1 g times what is not given is %v, %t: want no mass", m, ok)
	}
}

// 0.05 for 5 %: to put a sign behind it would plan a hundredth.
func TestAFractionIsNotAskedToBecomeAHundredthOfItself(t *testing.T) {
	for text, want := range map[string]string{"0.05": `write "5 %"`, "0.99": `write "99 %"`, "0.385": `write "38.5 %"`, "6": `write "6 %"`} {
		if _, err := units.ParsePercent(text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %s", text, err, want)
		}
	}
}
