package units

import (
	"math/big"
	"math/bits"

	"github.com/shopspring/decimal"
)

// significant is the least number of digits a quotient keeps.
const significant = 34

var pow10 = [...]uint64{
	1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9,
	1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19,
}

// quotient128 divides the magnitude hi·2^64 + lo by a divisor above zero and
// rounds; ok is false when the result passes 2^63 − 1.
func quotient128(hi, lo, divisor uint64, negative bool, how Rounding) (whole int64, ok bool) {
	if hi >= divisor {
		return 0, false
	}
	q, r := bits.Div64(hi, lo, divisor)
	doubled := -1
	if r >= divisor-r {
		doubled = 1
	}
	return stepped(q, r != 0, doubled, negative, how)
}

// stepped gives a quotient its sign, and one step more where what is left over asks for
// it: doubled compares twice that with the divisor. ok is false beyond 2^63 − 1.
func stepped(q uint64, rest bool, doubled int, negative bool, how Rounding) (whole int64, ok bool) {
	if rest && q < 1<<63 && how.stepsUp(negative, doubled) {
		q++
	}
	if q > 1<<63-1 {
		return 0, false
	}
	if negative {
		return -int64(q), true
	}
	return int64(q), true
}

// scaled gives the magnitude hi·2^64 + lo, in units of 10^-21 g, times a quotient of
// two whole numbers, in nanograms; ok is false where that passes 2^63 − 1, or where
// the divisor is too small or the product too great for three machine words.
func scaled(hi, lo, times, over uint64, negative bool, how Rounding) (ng int64, ok bool) {
	// The product as three words, the divisor (over × 10^12) as two, both moved left
	// until the divisor's first bit is set.
	carry, n0 := bits.Mul64(lo, times)
	n2, n1 := bits.Mul64(hi, times)
	n1, carry = bits.Add64(n1, carry, 0)
	n2 += carry
	d1, d0 := bits.Mul64(over, picosPerOne)
	shift := bits.LeadingZeros64(d1)
	if d1 == 0 || n2>>(63-shift)>>1 != 0 {
		return 0, false
	}
	up := func(high, low uint64) uint64 { return high<<shift | low>>1>>(63-shift) }
	n2, n1, n0 = up(n2, n1), up(n1, n0), n0<<shift
	d1, d0 = up(d1, d0), d0<<shift
	if n2 >= d1 { // a quotient of a word at most
		return 0, false
	}
	// The quotient of the first two words by the first is at most two too great.
	q, r := bits.Div64(n2, n1, d1)
	high, low := bits.Mul64(q, d0)
	low, borrow := bits.Sub64(n0, low, 0)
	high, borrow = bits.Sub64(r, high, borrow)
	for borrow != 0 {
		q--
		low, carry = bits.Add64(low, d0, 0)
		high, carry = bits.Add64(high, d1, carry)
		borrow -= carry
	}
	doubled := 1
	if high>>63 == 0 { // else twice the rest is above 2^128, and so above the divisor
		twiceLow, borrow := bits.Sub64(low<<1, d0, 0)
		twiceHigh, borrow := bits.Sub64(high<<1|low>>63, d1, borrow)
		switch {
		case borrow != 0:
			doubled = -1
		case twiceHigh|twiceLow == 0:
			doubled = 0
		}
	}
	return stepped(q, high|low != 0, doubled, negative, how)
}

// The decimal library keeps settings in package variables that any program
// may change, so the three operations that read them (its quotient, its text
// and its zero) are not used; these stand in for them.

// quotient divides, keeping 34 significant digits or a few more, the last
// rounded half away from zero.
func quotient(a, b decimal.Decimal) decimal.Decimal {
	ca, cb := a.Coefficient(), b.Coefficient()
	shift := max(0, significant+2+digitsAbout(cb)-digitsAbout(ca))
	ca.Mul(ca, powerOfTen(shift))
	return decimal.NewFromBigInt(divide(ca, cb, Nearest), a.Exponent()-b.Exponent()-int32(shift))
}

// divide gives a/b rounded to a whole number, for any b but zero.
func divide(a, b *big.Int, how Rounding) *big.Int {
	q, r := new(big.Int).QuoRem(a, b, new(big.Int))
	if r.Sign() == 0 {
		return q
	}
	negative := a.Sign() != b.Sign()
	doubled := r.Lsh(r, 1).CmpAbs(b)
	switch {
	case !how.stepsUp(negative, doubled):
		return q
	case negative:
		return q.Sub(q, big.NewInt(1))
	default:
		return q.Add(q, big.NewInt(1))
	}
}

func powerOfTen(n int) *big.Int {
	if n < len(pow10) {
		return new(big.Int).SetUint64(pow10[n])
	}
	return new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(n)), nil)
}

// digitsAbout counts the decimal digits of a number's magnitude, at most one
// too few or too many.
func digitsAbout(n *big.Int) int {
	return n.BitLen() * 30103 / 100000
}

// wholeOf rounds a decimal to a whole number; ok is false beyond an int64.
func wholeOf(d decimal.Decimal, how Rounding) (whole int64, ok bool) {
	q := roundedAt(d, 0, how)
	return q.Int64(), q.IsInt64()
}

// roundedAt gives d times ten to the power of places, rounded to a whole number.
func roundedAt(d decimal.Decimal, places int, how Rounding) *big.Int {
	c := d.Coefficient()
	shift := int(d.Exponent()) + places
	if shift >= 0 {
		return c.Mul(c, powerOfTen(shift))
	}
	return divide(c, powerOfTen(-shift), how)
}
