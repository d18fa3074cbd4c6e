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
	if r != 0 {
		doubled := -1
		if r >= divisor-r {
			doubled = 1
		}
		if how.stepsUp(negative, doubled) && q < 1<<63 {
			q++
		}
	}
	if q > 1<<63-1 {
		return 0, false
	}
	if negative {
		return -int64(q), true
	}
	return int64(q), true
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
