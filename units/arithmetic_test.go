package units_test

import (
	"math"
	"math/big"
	"testing"

	"example.com/lyewright/units"
)

func TestProductOfMassAndRatioIsRoundedOnce(t *testing.T) {
	s := newSource(1)
	halves := 0
	for range 20_000 {
		m, x := s.mass(t)
		r, y := s.ratio(t)
		ng := times(x, y, power10(9))
		if isHalf(ng) {
			halves++
		}
		for _, how := range modes {
			want := new(big.Rat).SetFrac(rounded(ng, how), big.NewInt(1_000_000_000))
			if got, ok := m.Times(r, how); !ok || !agrees(got, want) {
				t.Fatalf("%v × %s rounded %v is %v, want %s", m, y.RatString(), how, got, want.FloatString(9))
			}
		}
	}
	if halves < 500 {
		t.Errorf("only %d products lay half-way: the source has changed", halves)
	}
}

// Worked by hand: half a nanogram of each sign.
func TestHalfANanogramGoesTheWayThatIsNamed(t *testing.T) {
	half := units.MustRatio("0.5")
	tests := []struct {
		ng   int64
		how  units.Rounding
		want int64
	}{
		{3, units.Nearest, 2},
		{3, units.Down, 1},
		{3, units.Up, 2},
		{1, units.Nearest, 1},
		{1, units.Down, 0},
		{1, units.Up, 1},
		{-3, units.Nearest, -2},
		{-3, units.Down, -2},
		{-3, units.Up, -1},
		{-1, units.Nearest, -1},
		{-1, units.Down, -1},
		{-1, units.Up, 0},
		{4, units.Nearest, 2},
		{4, units.Down, 2},
		{4, units.Up, 2},
	}
	for _, test := range tests {
		if got, ok := nanograms(t, test.ng).Times(half, test.how); !ok || got != nanograms(t, test.want) {
			t.Errorf("half of %d ng rounded %v is %v, want %d ng", test.ng, test.how, got, test.want)
		}
	}
}

func TestSumIsExactUntilItsEnd(t *testing.T) {
	s := newSource(2)
	for range 3_000 {
		var sum, other units.Sum
		exact, otherExact := new(big.Rat), new(big.Rat)
		for range 1 + s.IntN(8) {
			m, x := s.mass(t)
			r, y := s.ratio(t)
			switch s.IntN(8) {
			case 0:
				sum, other = other, sum
				exact, otherExact = otherExact, exact
			case 1:
				sum = sum.Add(other)
				exact = new(big.Rat).Add(exact, otherExact)
			case 2:
				sum = sum.Sub(other)
				exact = new(big.Rat).Sub(exact, otherExact)
			case 3:
				n := int64(s.IntN(200) - 100)
				sum = sum.TimesWhole(n)
				exact = times(exact, new(big.Rat).SetInt64(n))
			case 4:
				sum = sum.Times(r)
				exact = times(exact, y)
			default:
				sum = sum.Plus(m, r)
				exact = new(big.Rat).Add(exact, times(x, y))
			}
		}
		ng := times(exact, power10(9))
		for _, how := range modes {
			want := new(big.Rat).SetFrac(rounded(ng, how), big.NewInt(1_000_000_000))
			if got := sum.Mass(how); !agrees(got, want) {
				t.Fatalf("sum rounded %v is %v, want %s", how, got, want.FloatString(9))
			}
		}
		if got := sum.Sign(); got != exact.Sign() {
			t.Fatalf("the sign of %s is %d", exact.FloatString(30), got)
		}
		if got := sum.Compare(other); got != exact.Cmp(otherExact) {
			t.Fatalf("%s compared with %s is %d", exact.FloatString(30), otherExact.FloatString(30), got)
		}
		if back := sum.Add(other).Sub(other); back.Compare(sum) != 0 {
			t.Fatalf("s + t − t is not s for %s and %s", exact.FloatString(30), otherExact.FloatString(30))
		}
	}
}

// A sum passes through 128 bits and back where its terms are large: 2^127
// units of 10^-21 g are 1.7 × 10^17 g.
func TestSumBeyond128BitsComesBackExactly(t *testing.T) {
	most, scale := units.Grams(farGrams), units.Whole(9_000_000)
	sum, exact := units.Sum{}.Plus(nanograms(t, 1), units.MustRatio("0.000000000001")), big.NewRat(1, 1)
	exact.Quo(exact, power10(21))
	step := times(big.NewRat(farGrams, 1), big.NewRat(9_000_000, 1))
	for range 40 { // 40 × 8.3 × 10^16 g
		sum = sum.Plus(most, scale)
		exact.Add(exact, step)
	}
	if sum.Sign() != 1 || sum.Mass(units.Nearest).Compare(most) < 0 {
		t.Errorf("a sum of %s g has sign %d and is %v", exact.FloatString(0), sum.Sign(), sum.Mass(units.Nearest))
	}
	for range 40 {
		sum = sum.Sub(units.Sum{}.Plus(most, scale))
	}
	if sum.Sign() != 1 || sum.Mass(units.Up) != nanograms(t, 1) || sum.Mass(units.Down) != (units.Mass{}) {
		t.Errorf("10^-21 g came back as sign %d, %v rounded up", sum.Sign(), sum.Mass(units.Up))
	}
}

// Halves are drawn often: a sum over an even number, and twice over it.
func TestASumIsScaledExactlyAndRoundedOnce(t *testing.T) {
	s := newSource(13)
	halves, cut := 0, 0
	for range 40_000 {
		var sum units.Sum
		exact := new(big.Rat)
		for range 1 + s.IntN(3) {
			m, x := s.mass(t)
			r, y := s.ratio(t)
			sum = sum.Plus(m, r)
			exact.Add(exact, times(x, y))
		}
		by, x := s.ratio(t)
		over, y := s.ratio(t)
		if s.IntN(3) == 0 {
			even := int64(2 * (1 + s.IntN(500)))
			over, y = units.Whole(even), big.NewRat(even, 1)
			n := s.nanograms()
			sum, exact = units.Sum{}.Plus(nanograms(t, n), units.Whole(1)), big.NewRat(n, 1_000_000_000)
			by, x = units.Whole(even/2), big.NewRat(even/2, 1)
		}
		if y.Sign() == 0 {
			continue
		}
		want := times(exact, x, new(big.Rat).Inv(y), power10(9))
		if isHalf(want) {
			halves++
		} else if !want.IsInt() {
			cut++
		}
		for _, how := range modes {
			ng := new(big.Rat).SetInt(rounded(want, how))
			if got, ok := sum.Scale(by, over, how); !ok || !agrees(got, ng.Quo(ng, power10(9))) {
				t.Fatalf("%s g × %s / %s, %v, is %v", exact.FloatString(25), x.FloatString(15), y.FloatString(15), how, got)
			}
		}
	}
	if halves < 1000 || cut < 1000 {
		t.Errorf("%d halves, %d with a rest: too few to tell the roundings apart", halves, cut)
	}
}

// 2^64 ng, where the quotient of two words no longer fits one, and a little beside it.
func TestASumScaledBeyondTheEndStopsThere(t *testing.T) {
	for _, beside := range []int64{-1, 0, 1} {
		sum := units.Sum{}.Plus(nanograms(t, beside), units.Whole(1))
		for range 4 {
			sum = sum.Plus(nanograms(t, 1<<62), units.Whole(1))
		}
		for _, by := range []units.Ratio{units.Whole(1), units.Percent(37)} {
			for _, how := range modes {
				if got, ok := sum.Scale(by, by, how); !ok || got.Compare(units.Grams(farGrams)) < 0 {
					t.Errorf("2^64 %+d ng became %v", beside, got)
				}
				if got, ok := (units.Sum{}).Sub(sum).Scale(by, by, how); !ok || got.Compare(units.Grams(-farGrams)) > 0 {
					t.Errorf("-(2^64 %+d ng) became %v", beside, got)
				}
			}
		}
	}
}

func TestTimesWholeIsTimesForEveryNumber(t *testing.T) {
	s := newSource(3)
	numbers := []int64{0, 1, -1, 7, -7, 1_000_000_000, math.MaxInt64, math.MinInt64}
	for range 500 {
		m, _ := s.mass(t)
		r, _ := s.ratio(t)
		sum := units.Sum{}.Plus(m, r)
		for _, n := range numbers {
			if sum.TimesWhole(n).Compare(sum.Times(units.Whole(n))) != 0 {
				t.Fatalf("%v × %s times %d", m, r, n)
			}
		}
	}
}

func TestMassesAddAndSubtractExactlyAndStopAtTheEnds(t *testing.T) {
	s := newSource(4)
	for range 10_000 {
		m, x := s.mass(t)
		n, y := s.mass(t)
		if got, want := m.Add(n), new(big.Rat).Add(x, y); !agrees(got, want) {
			t.Fatalf("%v + %v is %v", m, n, got)
		}
		if got, want := m.Sub(n), new(big.Rat).Sub(x, y); !agrees(got, want) {
			t.Fatalf("%v − %v is %v", m, n, got)
		}
		if m.Compare(n) != x.Cmp(y) || m.Sign() != x.Sign() || (m == n) != (x.Cmp(y) == 0) {
			t.Fatalf("%v against %v: %d, sign %d", m, n, m.Compare(n), m.Sign())
		}
	}
}

func TestSumBeyondTheEndNeverWraps(t *testing.T) {
	high, low := units.Grams(farGrams), units.Grams(-farGrams)
	up, down := high, low
	for range 5 {
		next, below := up.Add(high), down.Add(low)
		if next.Compare(up) < 0 || below.Compare(down) > 0 {
			t.Fatalf("the sum turned back: %v after %v, %v after %v", next, up, below, down)
		}
		up, down = next, below
	}
	if up.Sub(low).Compare(up) != 0 {
		t.Error("a difference beyond the upper end moved it")
	}
	if low.Sub(up).Sign() >= 0 || up.Sub(down).Sign() <= 0 {
		t.Error("a difference of the ends has the wrong sign")
	}
}

func TestWholeNumbersOfEveryTypeAreTakenExactlyOrStopAtTheEnds(t *testing.T) {
	type count uint16 // a caller's own type
	exact := map[string]units.Mass{
		"-128 g":        units.Grams(int8(-128)),
		"255 g":         units.Grams(uint8(255)),
		"65535 g":       units.Grams(count(65535)),
		"9223372036 g":  units.Grams(farGrams),
		"-9223372036 g": units.Grams(-farGrams),
		"-0.001 g":      units.Milligrams(-1),
		"4294967.295 g": units.Milligrams(uint32(math.MaxUint32)),
	}
	for want, got := range exact {
		if got.String() != want {
			t.Errorf("%v, want %s", got, want)
		}
	}
	for _, m := range []units.Mass{units.Grams(uint64(math.MaxUint64)), units.Grams(int64(math.MaxInt64)), units.Milligrams(uint64(math.MaxUint64))} {
		if m.Compare(units.Grams(farGrams)) < 0 {
			t.Errorf("a number beyond the upper end gives %v", m)
		}
	}
	for _, m := range []units.Mass{units.Grams(int64(math.MinInt64)), units.Milligrams(int64(math.MinInt64))} {
		if m.Compare(units.Grams(-farGrams)) > 0 {
			t.Errorf("a number beyond the lower end gives %v", m)
		}
	}
}

func TestRoundedMassIsTheMultipleOfTheDivisionThatIsNamed(t *testing.T) {
	s := newSource(5)
	divisions := []int64{1, 7, 1_000_000, 10_000_000, 100_000_000, 500_000_000, 1_000_000_000, 2_000_000_000, 5_000_000_000, 28_349_523_125, 1_000_000_000_000_000}
	for range 10_000 {
		n := s.nanograms()
		division := divisions[s.IntN(len(divisions))]
		if s.IntN(2) == 0 { // a multiple of the division and a half
			n = n/division*division + division/2
		}
		m, d := nanograms(t, n), nanograms(t, division)
		for _, how := range modes {
			steps := rounded(big.NewRat(n, division), how)
			want := new(big.Rat).SetFrac(steps.Mul(steps, big.NewInt(division)), big.NewInt(1_000_000_000))
			got := m.Round(d, how)
			if !agrees(got, want) {
				t.Fatalf("%v rounded %v to %v is %v, want %s", m, how, d, got, want.FloatString(9))
			}
			if got.Compare(units.Grams(farGrams)) < 0 && got.Compare(units.Grams(-farGrams)) > 0 {
				for _, again := range modes {
					if got.Round(d, again) != got {
						t.Fatalf("%v, a multiple of %v, moves when rounded %v", got, d, again)
					}
				}
			}
		}
	}
}

func TestDivisionOfNothingLeavesTheMass(t *testing.T) {
	m := mass(t, "12.3456 g")
	for _, division := range []units.Mass{{}, units.Grams(-1)} {
		for _, how := range modes {
			if got := m.Round(division, how); got != m {
				t.Errorf("%v rounded %v to %v is %v", m, how, division, got)
			}
		}
	}
}

func TestRatiosAddSubtractAndMultiplyExactly(t *testing.T) {
	s := newSource(6)
	for range 10_000 {
		r, x := s.ratio(t)
		q, y := s.ratio(t)
		tests := []struct {
			op   string
			got  units.Ratio
			want *big.Rat
		}{
			{"+", r.Add(q), new(big.Rat).Add(x, y)},
			{"−", r.Sub(q), new(big.Rat).Sub(x, y)},
			{"×", r.Times(q), times(x, y)},
			{"rest", r.Rest(), new(big.Rat).Sub(big.NewRat(1, 1), x)},
		}
		for _, test := range tests {
			if !test.got.Given() || exactly(t, test.got).Cmp(test.want) != 0 {
				t.Fatalf("%s %s %s is %s", plain(x, 34), test.op, plain(y, 34), test.got.Text(34))
			}
			if test.got.Sign() != test.want.Sign() {
				t.Fatalf("%s %s %s has sign %d", plain(x, 34), test.op, plain(y, 34), test.got.Sign())
			}
		}
	}
}

// The comment of Over promises 34 significant digits; half a unit in the last
// of them is at most 5 × 10^-34 of the quotient.
func TestQuotientOfRatiosKeeps34SignificantDigits(t *testing.T) {
	s := newSource(7)
	for range 5_000 {
		r, x := s.ratio(t)
		q, y := s.ratio(t)
		got := r.Over(q)
		if got.Given() != (y.Sign() != 0) {
			t.Fatalf("%s / %s: given is %t", plain(x, 34), plain(y, 34), got.Given())
		}
		if !got.Given() {
			continue
		}
		want := new(big.Rat).Quo(x, y)
		off := new(big.Rat).Sub(exactly(t, got), want)
		if off.Abs(off).Cmp(times(want.Abs(want), big.NewRat(5, 1), new(big.Rat).Inv(power10(34)))) > 0 {
			t.Fatalf("%s / %s is %s", plain(x, 34), plain(y, 34), got.Text(34))
		}
	}
}

func TestQuotientOfMassesAndOfSumsHasTwelveDecimals(t *testing.T) {
	s := newSource(12)
	below10, above10 := 0, 0
	check := func(what string, got units.Ratio, ok bool, above, below *big.Rat) {
		t.Helper()
		if ok != (below.Sign() != 0) || ok != got.Given() {
			t.Fatalf("%s: ok is %t", what, ok)
		}
		if !ok {
			return
		}
		want := new(big.Rat).Quo(above, below)
		if text := plain(want, 12); got.Text(34) != text {
			t.Fatalf("%s is %s, want %s", what, got.Text(34), text)
		}
		if want.Abs(want).Cmp(big.NewRat(10, 1)) < 0 {
			below10++
		} else {
			above10++
		}
	}
	for range 10_000 {
		m, u := s.mass(t)
		n, v := s.mass(t)
		share, ok := m.Per(n)
		check(m.String()+" per "+n.String(), share, ok, u, v)
		r, x := s.ratio(t)
		q, y := s.ratio(t)
		share, ok = units.Sum{}.Plus(m, r).Per(units.Sum{}.Plus(n, q))
		check("a sum per a sum", share, ok, times(u, x), times(v, y))
	}
	if below10 < 3_000 || above10 < 3_000 {
		t.Errorf("%d quotients below ten and %d above it: the source has changed", below10, above10)
	}
}

// By hand: 1/3, a half in the thirteenth decimal of each sign, and a quotient
// that rounds up to the next whole number.
func TestQuotientOfMassesRoundsHalvesAwayFromZero(t *testing.T) {
	tests := []struct {
		above, below units.Mass
		want         string
	}{
		{units.Grams(1), units.Grams(3), "0.333333333333"},
		{units.Grams(2), units.Grams(-3), "-0.666666666667"},
		{nanograms(t, 1), units.Grams(2000), "0.000000000001"}, // 0.0000000000005
		{nanograms(t, -1), units.Grams(2000), "-0.000000000001"},
		{nanograms(t, 1), nanograms(t, 2_000_000_000_001), "0"}, // a little less
		{nanograms(t, 9_999_999_999_999), nanograms(t, 1_000_000_000_000), "9.999999999999"},
		{nanograms(t, 99_999_999_999_999), nanograms(t, 10_000_000_000_000), "10"}, // 9.9999999999999
		{nanograms(t, 1), nanograms(t, 1), "1"},
		{units.Mass{}, nanograms(t, 1), "0"},
		{units.Grams(800), units.Grams(80), "10"},
	}
	for _, test := range tests {
		if got, ok := test.above.Per(test.below); !ok || got.String() != test.want {
			t.Errorf("%v per %v is %v, want %s", test.above, test.below, got, test.want)
		}
	}
}

func TestQuotientThatEndsIsExact(t *testing.T) {
	s := newSource(8)
	for range 3_000 {
		quotient := units.MustRatio(s.digits(1+s.IntN(8)) + "." + s.digits(1+s.IntN(20)))
		divisor := units.MustRatio("1" + s.digits(s.IntN(8)) + "." + s.digits(1+s.IntN(20)))
		if got := quotient.Times(divisor).Over(divisor); !got.Equal(quotient) {
			t.Fatalf("%s × %s / %s is %s", quotient.Text(34), divisor.Text(34), divisor.Text(34), got.Text(34))
		}
	}
	// By hand; the digits of 1/7 are 142857 over and over, and the 35th is a 4.
	seventh := "0.1428571428571428571428571428571429"
	if got := units.Whole(1).Over(units.Whole(7)).Round(34, units.Nearest).Text(34); got != seventh {
		t.Errorf("1/7 is %s", got)
	}
}

func TestRoundedRatioIsTheDecimalThatIsNamed(t *testing.T) {
	s := newSource(9)
	for range 10_000 {
		r, x := s.ratio(t)
		places := s.IntN(35)
		if s.IntN(3) == 0 { // a half in the last place: often
			places = 0
		}
		for _, how := range modes {
			want := new(big.Rat).Quo(new(big.Rat).SetInt(rounded(times(x, power10(places)), how)), power10(places))
			got := r.Round(places, how)
			if exactly(t, got).Cmp(want) != 0 {
				t.Fatalf("%s rounded %v to %d decimals is %s", plain(x, 34), how, places, got.Text(34))
			}
			for _, again := range modes {
				if !got.Round(places, again).Equal(got) {
					t.Fatalf("%s moves when rounded %v again", got.Text(34), again)
				}
			}
		}
	}
	if got := units.MustRatio("2.5").Round(-3, units.Down); !got.Equal(units.Whole(2)) {
		t.Errorf("below no decimals, 2.5 rounds to %s", got)
	}
}

func TestRatiosCompareAsNumbersWhateverTheirSpelling(t *testing.T) {
	s := newSource(10)
	last, lastExact := units.Whole(0), new(big.Rat)
	for range 10_000 {
		r, x := s.ratio(t)
		if s.IntN(3) == 0 { // the same number, or one beside it in the last place
			r, x = last.Add(units.Whole(0)), new(big.Rat).Set(lastExact)
			if s.IntN(2) == 0 {
				least := units.MustRatio("0.0000000000000000000000000000000001")
				r, x = r.Add(least), x.Add(x, new(big.Rat).Inv(power10(34)))
			}
		}
		if got, want := r.Compare(last), x.Cmp(lastExact); got != want || last.Compare(r) != -want {
			t.Fatalf("%s compared with %s is %d", r.Text(34), last.Text(34), got)
		}
		if r.Equal(last) != (x.Cmp(lastExact) == 0) {
			t.Fatalf("%s equals %s is %t", r.Text(34), last.Text(34), r.Equal(last))
		}
		last, lastExact = r, x
	}
	half := units.MustRatio("0.5")
	for _, spelling := range []string{"0.50", "0.5000000000000000000000000000000000", "50 %", "500 mg/g", "00.5"} {
		if !units.MustRatio(spelling).Equal(half) {
			t.Errorf("%s is not a half", spelling)
		}
	}
}

func TestFloatsAreTheNearestOrBesideIt(t *testing.T) {
	s := newSource(11)
	close := func(got float64, exact *big.Rat) bool {
		want, _ := exact.Float64()
		return got == want || got == math.Nextafter(want, got)
	}
	for range 3_000 {
		r, x := s.ratio(t)
		m, y := s.mass(t)
		if got := r.Float(); !close(got, x) {
			t.Fatalf("%s is %v", plain(x, 34), got)
		}
		if got := m.Grams(); !close(got, y) {
			t.Fatalf("%v is %v", m, got)
		}
		if got := (units.Sum{}).Plus(m, r).Grams(); !close(got, times(x, y)) {
			t.Fatalf("%v × %s is %v", m, plain(x, 34), got)
		}
	}
	if got := (units.Ratio{}).Float(); got != 0 {
		t.Errorf("a ratio that is not given is %v", got)
	}
}
