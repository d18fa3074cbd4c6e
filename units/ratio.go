package units

import (
	"math"
	"math/big"
	"math/bits"

	"github.com/shopspring/decimal"
	"golang.org/x/exp/constraints"
)

// picosPerOne is the resolution of a Ratio that fits in a machine word.
const picosPerOne = 1_000_000_000_000

// Ratio is an exact decimal number without a unit of its own: a share, a
// percentage, a purity, a saponification value (mg KOH per g is a ratio of
// masses), parts of one thing to one of another. The zero value means "not
// given", which is distinct from 0 %; arithmetic with a ratio that is not
// given yields one that is not given. It may be negative and above 100 %: what is
// in bounds is the reader's to know. Ratios are compared with [Ratio.Compare] or
// [Ratio.Equal]; == does not compile.
type Ratio struct {
	_     [0]func()        // keeps == from compiling, at no cost in size
	pico  int64            // in units of 10^-12, unless wide is set
	wide  *decimal.Decimal // what does not fit a whole number of 10^-12
	given bool
}

// Percent gives n/100, exactly: 6 is 6 %, of whatever it is a share of.
func Percent[N constraints.Integer](n N) Ratio { return ratioOfInteger(n, -2) }

// MilligramsPerGram gives n/1000, exactly, such as a saponification value in mg of
// KOH per g of oil.
func MilligramsPerGram[N constraints.Integer](n N) Ratio { return ratioOfInteger(n, -3) }

// Whole gives n itself, such as three parts of water to one of pigment; 1 is the whole
// of something, 100 %.
func Whole[N constraints.Integer](n N) Ratio { return ratioOfInteger(n, 0) }

func ratioOfInteger[N constraints.Integer](n N, exponent int32) Ratio {
	if scale := int64(pow10[12+exponent]); int64(n) < math.MaxInt64/scale && int64(n) > -math.MaxInt64/scale && (n < 0) == (int64(n) < 0) {
		return Ratio{pico: int64(n) * scale, given: true}
	}
	if n > 0 && uint64(n) > math.MaxInt64 {
		return ratioOf(decimal.NewFromBigInt(new(big.Int).SetUint64(uint64(n)), exponent))
	}
	return ratioOf(decimalOf(int64(n), exponent))
}

// RatioOfFloat takes an estimate into exact arithmetic, as a plain number (0.06 is
// 6 %), rounded to the nearest 10^-12, halves away from zero. It refuses NaN,
// infinities and what lies beyond ±9 million; ok is then false. It is the only way
// from a float64 to a Ratio.
func RatioOfFloat(f float64) (r Ratio, ok bool) {
	scaled := math.Round(f * picosPerOne)
	if !(math.Abs(scaled) < 9e18) { // false for NaN as well
		return Ratio{}, false
	}
	return Ratio{pico: int64(scaled), given: true}, true
}

func ratioOf(d decimal.Decimal) Ratio {
	if pico, exact := picosOf(d); exact {
		return Ratio{pico: pico, given: true}
	}
	return Ratio{wide: &d, given: true}
}

func picosOf(d decimal.Decimal) (pico int64, exact bool) {
	c := d.Coefficient()
	switch shift := int(d.Exponent()) + 12; {
	case c.Sign() == 0:
		return 0, true
	case shift >= 0 && shift < len(pow10):
		c.Mul(c, powerOfTen(shift))
	case shift < 0:
		if c.TrailingZeroBits() < uint(-shift) { // ten to the k has k factors of two
			return 0, false
		}
		r := new(big.Int)
		if c.QuoRem(c, powerOfTen(-shift), r); r.Sign() != 0 {
			return 0, false
		}
	default:
		return 0, false
	}
	return c.Int64(), c.IsInt64()
}

func decimalOf(n int64, exponent int32) decimal.Decimal { return decimal.New(n, exponent) }

func (r Ratio) decimal() decimal.Decimal {
	if r.wide != nil {
		return *r.wide
	}
	return decimalOf(r.pico, -12)
}

// Given reports whether the ratio was given at all.
func (r Ratio) Given() bool { return r.given }

// Or gives r, or other where r is not given.
func (r Ratio) Or(other Ratio) Ratio {
	if r.given {
		return r
	}
	return other
}

// Add gives r + s, exactly.
func (r Ratio) Add(s Ratio) Ratio {
	if !r.given || !s.given {
		return Ratio{}
	}
	if r.wide == nil && s.wide == nil {
		if sum := r.pico + s.pico; (sum > r.pico) == (s.pico > 0) {
			return Ratio{pico: sum, given: true}
		}
	}
	return ratioOf(r.decimal().Add(s.decimal()))
}

// Sub gives r − s, exactly.
func (r Ratio) Sub(s Ratio) Ratio {
	if !s.given {
		return Ratio{}
	}
	if s.wide == nil && s.pico != math.MinInt64 {
		s.pico = -s.pico
		return r.Add(s)
	}
	return r.Add(ratioOf(s.decimal().Neg()))
}

// Times gives r × s, exactly.
func (r Ratio) Times(s Ratio) Ratio {
	if !r.given || !s.given {
		return Ratio{}
	}
	if r.wide == nil && s.wide == nil {
		hi, lo := bits.Mul64(magnitude(r.pico), magnitude(s.pico))
		if hi < picosPerOne {
			if q, rest := bits.Div64(hi, lo, picosPerOne); rest == 0 && q <= math.MaxInt64 {
				return signed(q, (r.pico < 0) != (s.pico < 0))
			}
		}
	}
	return ratioOf(r.decimal().Mul(s.decimal()))
}

// Over gives r/s, exact or to 34 significant digits; it is not given when s
// is zero or not given.
func (r Ratio) Over(s Ratio) Ratio {
	if !r.given || !s.given || s.Sign() == 0 {
		return Ratio{}
	}
	if r.wide == nil && s.wide == nil {
		hi, lo := bits.Mul64(magnitude(r.pico), picosPerOne)
		if divisor := magnitude(s.pico); hi < divisor {
			if q, rest := bits.Div64(hi, lo, divisor); rest == 0 && q <= math.MaxInt64 {
				return signed(q, (r.pico < 0) != (s.pico < 0))
			}
		}
	}
	return ratioOf(quotient(r.decimal(), s.decimal()))
}

func signed(picos uint64, negative bool) Ratio {
	pico := int64(picos)
	if negative {
		pico = -pico
	}
	return Ratio{pico: pico, given: true}
}

// Fraction gives r as a fraction of whole numbers in its lowest terms, the
// denominator above zero; ok is false where the ratio is not given, has more than
// twelve decimals, or is larger than about 9.2 million either way.
func (r Ratio) Fraction() (numerator, denominator int64, ok bool) {
	if !r.given || r.wide != nil {
		return 0, 0, false
	}
	a, b := magnitude(r.pico), uint64(picosPerOne)
	for b != 0 {
		a, b = b, a%b
	}
	return r.pico / int64(a), picosPerOne / int64(a), true
}

// Rest gives 1 − r, exactly: what is left of a whole; not given where r is not.
func (r Ratio) Rest() Ratio { return Whole(1).Sub(r) }

// Round gives r at the given number of decimals (0 to 34); of a percentage
// that is two fewer, so that places 8 leaves six decimals of a percent. One that is
// not given stays so.
func (r Ratio) Round(places int, how Rounding) Ratio {
	if !r.given {
		return r
	}
	places = min(max(places, 0), mostDecimals)
	if r.wide == nil {
		if places >= 12 {
			return r
		}
		step := pow10[12-places]
		if n, ok := quotient128(0, magnitude(r.pico), step, r.pico < 0, how); ok && magnitude(n) <= math.MaxInt64/step {
			return Ratio{pico: n * int64(step), given: true}
		}
	}
	return ratioOf(decimal.NewFromBigInt(roundedAt(r.decimal(), places, how), int32(-places)))
}

// Sign gives -1, 0 or 1 as r is below, at or above zero; 0 when not given.
func (r Ratio) Sign() int {
	if r.wide != nil {
		return r.wide.Sign()
	}
	switch {
	case r.pico < 0:
		return -1
	case r.pico > 0:
		return 1
	}
	return 0
}

// Compare gives -1, 0 or 1 as r is below, equal to or above s. A ratio that is
// not given is below every other.
func (r Ratio) Compare(s Ratio) int {
	switch {
	case !r.given && !s.given:
		return 0
	case !r.given:
		return -1
	case !s.given:
		return 1
	case r.wide == nil && s.wide == nil:
		switch {
		case r.pico < s.pico:
			return -1
		case r.pico > s.pico:
			return 1
		}
		return 0
	}
	return r.decimal().Cmp(s.decimal())
}

// Equal reports whether r and s are the same number, or both not given.
func (r Ratio) Equal(s Ratio) bool { return r.Compare(s) == 0 }

// Float gives the nearest float64 or one beside it, for estimates; 0 when not
// given.
func (r Ratio) Float() float64 {
	if r.wide != nil {
		f, _ := r.wide.Float64()
		return f
	}
	return float64(r.pico) / picosPerOne
}
