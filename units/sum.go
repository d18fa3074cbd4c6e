package units

import (
	"math"
	"math/big"
	"math/bits"

	"github.com/shopspring/decimal"
)

// Sum is an exact sum of masses times ratios: the alkali that oils demand, the
// pure hydroxide in what is weighed, the dry part of a mixture. Nothing in it
// is rounded; it becomes a Mass by one rounding at its end. The zero value is
// 0 g. It may be negative. Sums are compared with [Sum.Compare]; == does not compile.
type Sum struct {
	_ [0]func() // as in Ratio: sums are compared with Compare
	// Two's complement in units of 10^-21 g (a nanogram times 10^-12); wide,
	// where it is set, holds the whole sum instead, in grams.
	hi   int64
	lo   uint64
	wide *decimal.Decimal
}

// Plus gives s + m × r, exactly. A ratio that is not given counts as zero: a sum is one of
// what is known. Where that may not be, see [Mass.Times].
func (s Sum) Plus(m Mass, r Ratio) Sum {
	if s.wide != nil || r.wide != nil {
		d := s.decimal().Add(decimalOf(m.ng, -9).Mul(r.decimal()))
		return Sum{wide: &d}
	}
	hi, lo := bits.Mul64(magnitude(m.ng), magnitude(r.pico))
	if (m.ng < 0) != (r.pico < 0) {
		hi, lo = negative128(hi, lo)
	}
	return s.Add(Sum{hi: int64(hi), lo: lo})
}

// Add gives s + t, exactly.
func (s Sum) Add(t Sum) Sum {
	if s.wide == nil && t.wide == nil {
		lo, carry := bits.Add64(s.lo, t.lo, 0)
		hi, _ := bits.Add64(uint64(s.hi), uint64(t.hi), carry)
		if overflow := (s.hi < 0) == (t.hi < 0) && (int64(hi) < 0) != (s.hi < 0); !overflow {
			return Sum{hi: int64(hi), lo: lo}
		}
	}
	d := s.decimal().Add(t.decimal())
	return Sum{wide: &d}
}

// Sub gives s − t, exactly.
func (s Sum) Sub(t Sum) Sum {
	if t.wide == nil && t.hi != -1<<63 {
		hi, lo := negative128(uint64(t.hi), t.lo)
		return s.Add(Sum{hi: int64(hi), lo: lo})
	}
	d := s.decimal().Sub(t.decimal())
	return Sum{wide: &d}
}

// Times gives s × r, exactly. A ratio that is not given counts as zero.
func (s Sum) Times(r Ratio) Sum {
	d := s.decimal().Mul(r.decimal())
	return Sum{wide: &d}
}

// TimesWhole gives s × n for a whole number n, exactly.
func (s Sum) TimesWhole(n int64) Sum {
	if s.wide == nil && n >= 0 {
		negative := s.hi < 0
		hi, lo := magnitude128(s.hi, s.lo)
		over, high := bits.Mul64(hi, uint64(n))
		carry, low := bits.Mul64(lo, uint64(n))
		high, passed := bits.Add64(high, carry, 0)
		if over == 0 && passed == 0 && high <= 1<<63-1 {
			if negative {
				high, low = negative128(high, low)
			}
			return Sum{hi: int64(high), lo: low}
		}
	}
	d := s.decimal().Mul(decimalOf(n, 0))
	return Sum{wide: &d}
}

// Per gives the quotient s/t to twelve decimals, halves away from zero; ok is
// false when t is 0 g.
func (s Sum) Per(t Sum) (r Ratio, ok bool) {
	if t.Sign() == 0 {
		return Ratio{}, false
	}
	if pico, ok := s.longDivision(t); ok {
		return Ratio{pico: pico, given: true}, true
	}
	// Both as whole numbers of the same small unit, times 10^12.
	a, b := s.decimal(), t.decimal()
	places := -int(min(a.Exponent(), b.Exponent(), 0))
	n := divide(roundedAt(a, places+12, Nearest), roundedAt(b, places, Nearest), Nearest)
	return ratioOf(decimal.NewFromBigInt(n, -12)), true
}

// longDivision divides digit by digit, as on paper: no allocation, but only
// for quotients below ten of sums that leave room for a digit.
func (s Sum) longDivision(t Sum) (pico int64, ok bool) {
	if s.wide != nil || t.wide != nil {
		return 0, false
	}
	hi, lo := magnitude128(s.hi, s.lo)
	divisorHi, divisorLo := magnitude128(t.hi, t.lo)
	if divisorHi >= 1<<59 {
		return 0, false
	}
	digit := func() (d int64) {
		for d < 10 {
			low, borrow := bits.Sub64(lo, divisorLo, 0)
			high, borrow := bits.Sub64(hi, divisorHi, borrow)
			if borrow != 0 {
				break
			}
			hi, lo = high, low
			d++
		}
		return d
	}
	if pico = digit(); pico == 10 {
		return 0, false
	}
	for range 12 {
		carry, low := bits.Mul64(lo, 10)
		hi, lo = hi*10+carry, low
		pico = pico*10 + digit()
	}
	// What is left, doubled, against the divisor.
	hi, lo = hi<<1|lo>>63, lo<<1
	if digit() > 0 {
		pico++
	}
	if (s.hi < 0) != (t.hi < 0) {
		pico = -pico
	}
	return pico, true
}

// Scale gives s × times / over as a mass, rounded once, to a nanogram; ok is false, and
// the mass 0 g, where over is zero or not given, or times is not given. Beyond what a Mass
// holds it stops at that end.
func (s Sum) Scale(times, over Ratio, how Rounding) (m Mass, ok bool) {
	if over.Sign() == 0 || !times.given {
		return Mass{}, false
	}
	if s.wide == nil && times.wide == nil && over.wide == nil {
		negative := (s.hi < 0) != (times.pico < 0) != (over.pico < 0)
		hi, lo := magnitude128(s.hi, s.lo)
		if ng, ok := scaled(hi, lo, magnitude(times.pico), magnitude(over.pico), negative, how); ok {
			return Mass{ng}, true
		}
	}
	a, b := s.decimal().Mul(times.decimal()), over.decimal()
	places := -int(min(a.Exponent()+9, b.Exponent(), 0))
	n := divide(roundedAt(a, places+9, Nearest), roundedAt(b, places, Nearest), how)
	if !n.IsInt64() {
		return saturated(1<<62, int64(n.Sign())*4), true
	}
	return Mass{n.Int64()}, true
}

// Mass gives the sum as a mass, rounded once, to a nanogram. Beyond what a [Mass]
// holds it stops at that end.
func (s Sum) Mass(how Rounding) Mass {
	if s.wide == nil {
		negative := s.hi < 0
		hi, lo := magnitude128(s.hi, s.lo)
		if ng, ok := quotient128(hi, lo, picosPerOne, negative, how); ok {
			return Mass{ng}
		}
	}
	ng, ok := wholeOf(s.decimal().Shift(9), how)
	if !ok {
		return saturated(1<<62, int64(s.Sign())*4)
	}
	return Mass{ng}
}

// Sign gives -1, 0 or 1 as the sum is below, at or above 0 g.
func (s Sum) Sign() int {
	switch {
	case s.wide != nil:
		return s.wide.Sign()
	case s.hi < 0:
		return -1
	case s.hi == 0 && s.lo == 0:
		return 0
	}
	return 1
}

// Compare gives -1, 0 or 1 as s is below, equal to or above t.
func (s Sum) Compare(t Sum) int { return s.Sub(t).Sign() }

// Grams gives the sum in grams as a float64, for estimates; nothing that is weighed may
// come from it.
func (s Sum) Grams() float64 {
	f, _ := s.decimal().Float64()
	return f
}

// String gives the sum exactly, in grams: "135.24 g".
func (s Sum) String() string { return exactText(s.decimal()) + " g" }

// sumOf gives the sum of so many grams, exactly.
func sumOf(grams decimal.Decimal) Sum {
	steps := roundedAt(grams, 21, Nearest)
	if steps.BitLen() > 126 || !decimal.NewFromBigInt(steps, -21).Equal(grams) {
		return Sum{wide: &grams}
	}
	size := new(big.Int).Abs(steps)
	hi, lo := new(big.Int).Rsh(size, 64).Uint64(), size.And(size, new(big.Int).SetUint64(math.MaxUint64)).Uint64()
	if steps.Sign() < 0 {
		hi, lo = negative128(hi, lo)
	}
	return Sum{hi: int64(hi), lo: lo}
}

func (s Sum) decimal() decimal.Decimal {
	if s.wide != nil {
		return *s.wide
	}
	n := new(big.Int).SetInt64(s.hi)
	n.Lsh(n, 64)
	return decimal.NewFromBigInt(n.Add(n, new(big.Int).SetUint64(s.lo)), -21)
}

// magnitude128 drops the sign of a number in two's complement.
func magnitude128(hi int64, lo uint64) (uint64, uint64) {
	if hi < 0 {
		return negative128(uint64(hi), lo)
	}
	return uint64(hi), lo
}

// negative128 negates a number in two's complement.
func negative128(hi, lo uint64) (uint64, uint64) {
	lo, borrow := bits.Sub64(0, lo, 0)
	hi, _ = bits.Sub64(0, hi, borrow)
	return hi, lo
}
