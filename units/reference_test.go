package units_test

import (
	"math/big"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"example.com/lyewright/units"
)

// The reference of these tests is math/big.Rat, which is exact and knows
// nothing of nanograms, decimals or 128-bit words.

var modes = []units.Rounding{units.Nearest, units.Down, units.Up}

var allUnits = []units.Unit{units.Gram, units.Kilogram, units.Milligram, units.Ounce, units.Pound}

// farGrams is the bound that the comment of Mass states: exact up to here,
// and beyond it at the end or exact.
const farGrams int64 = 9_223_372_036

func rat(t testing.TB, text string) *big.Rat {
	t.Helper()
	x, ok := new(big.Rat).SetString(text)
	if !ok {
		t.Fatalf("%q is not a plain number", text)
	}
	return x
}

// exactly gives a ratio exactly, however many decimals it has: Text writes at
// most 34, so it is scaled until nothing is cut off.
func exactly(t testing.TB, r units.Ratio) *big.Rat {
	t.Helper()
	scale := big.NewRat(1, 1)
	for range 20 {
		if r.Equal(r.Round(34, units.Down)) {
			return new(big.Rat).Quo(rat(t, r.Text(34)), scale)
		}
		r = r.Times(units.Whole(1_000_000_000))
		scale.Mul(scale, big.NewRat(1_000_000_000, 1))
	}
	t.Fatal("more than 200 decimals")
	return nil
}

// plain writes a number as Text should: nearest, halves away from zero, no
// trailing zeros, no minus before a zero.
func plain(x *big.Rat, decimals int) string {
	text := x.FloatString(decimals)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	if text == "-0" {
		return "0"
	}
	return text
}

// rounded gives x as a whole number.
func rounded(x *big.Rat, how units.Rounding) *big.Int {
	floor := new(big.Int).Div(x.Num(), x.Denom()) // the divisor is above zero: the floor
	switch {
	case x.IsInt():
	case how == units.Up:
		floor.Add(floor, big.NewInt(1))
	case how == units.Nearest:
		half := big.NewRat(int64(x.Sign()), 2)
		shifted := half.Add(half, x)
		return new(big.Int).Quo(shifted.Num(), shifted.Denom())
	}
	return floor
}

func isHalf(x *big.Rat) bool {
	return !x.IsInt() && new(big.Rat).Add(x, x).IsInt()
}

func power10(n int) *big.Rat {
	return new(big.Rat).SetInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(n)), nil))
}

func times(x *big.Rat, more ...*big.Rat) *big.Rat {
	product := new(big.Rat).Set(x)
	for _, y := range more {
		product.Mul(product, y)
	}
	return product
}

// agrees reports whether a mass is the given number of grams, or stands at the
// end that the number lies beyond.
func agrees(m units.Mass, want *big.Rat) bool {
	end := new(big.Rat).SetInt64(farGrams)
	switch {
	case want.Cmp(end) > 0:
		return m.Compare(units.Grams(farGrams)) >= 0
	case want.Cmp(new(big.Rat).Neg(end)) < 0:
		return m.Compare(units.Grams(-farGrams)) <= 0
	}
	return m.String() == plain(want, 9)+" g"
}

func mass(t testing.TB, text string) units.Mass {
	t.Helper()
	m, err := units.ParseMass(text)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func nanograms(t testing.TB, n int64) units.Mass {
	t.Helper()
	whole, part := n/1_000_000_000, n%1_000_000_000
	m := units.Grams(whole)
	text := strconv.FormatInt(max(part, -part), 10)
	text = "0." + strings.Repeat("0", 9-len(text)) + text + " g"
	if part < 0 {
		return m.Sub(mass(t, text))
	}
	return m.Add(mass(t, text))
}

func negative(r units.Ratio) units.Ratio { return units.Whole(0).Sub(r) }

// A source draws values that are spread over magnitudes and mixed with the
// awkward ones: zeros, halves, bounds, and more digits than a word holds.
type source struct{ *rand.Rand }

// newSource is seeded, so that a failure comes back.
func newSource(seed uint64) source { return source{rand.New(rand.NewPCG(seed, 2026))} }

func (s source) digits(n int) string {
	text := make([]byte, n)
	for i := range text {
		text[i] = byte('0' + s.IntN(10))
	}
	return string(text)
}

// nanograms draws below a power of ten that is itself drawn, of either sign.
func (s source) nanograms() int64 {
	edges := []int64{
		0, 1, 2, 3, 5, 999_999_999, 1_000_000_000, 28_349_523_125, 1_000_000_000_000_000, // a tonne
		farGrams * 1_000_000_000, farGrams*1_000_000_000 - 1,
	}
	n := edges[s.IntN(len(edges))]
	if s.IntN(8) > 0 {
		limit := int64(10)
		for range s.IntN(18) {
			limit *= 10
		}
		n = s.Int64N(limit)
	}
	if s.IntN(4) == 0 {
		return -n
	}
	return n
}

func (s source) mass(t testing.TB) (units.Mass, *big.Rat) {
	t.Helper()
	n := s.nanograms()
	return nanograms(t, n), big.NewRat(n, 1_000_000_000)
}

// ratioText draws a number within what is read: 16 digits and 34 decimals.
func (s source) ratioText() string {
	edges := []string{
		"0", "1", "0.5", "1.5", "0.25", "0.125", "2.5",
		"0.000000000001",                       // the least narrow ratio
		"0.0000000000005",                      // half of it: wide
		"0.0000000000000000000000000000000001", // the least that is read
		"9223372.036854775807",                 // 2^63 − 1 in units of 10^-12
		"9223372.036854775808",                 // the first beyond it; with a minus it still fits
		"9999999999999999.9999999999999999999999999999999999",
		"0.3333333333333333333333333333333333",
		"0.5000000000000000000000000000000000", // wide by its spelling only
	}
	switch s.IntN(6) {
	case 0:
		return edges[s.IntN(len(edges))]
	case 1: // halves are common
		return s.digits(1+s.IntN(6)) + ".5"
	case 2: // wide
		return s.digits(1+s.IntN(3)) + "." + s.digits(13+s.IntN(22))
	case 3: // large
		return s.digits(1+s.IntN(16)) + "." + s.digits(1+s.IntN(34))
	default: // narrow, as in a formula
		return s.digits(1+s.IntN(3)) + "." + s.digits(1+s.IntN(12))
	}
}

func (s source) ratio(t testing.TB) (units.Ratio, *big.Rat) {
	t.Helper()
	text := s.ratioText()
	r, x := units.MustRatio(text), rat(t, text)
	if s.IntN(4) == 0 {
		return negative(r), x.Neg(x)
	}
	return r, x
}
