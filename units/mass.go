package units

import (
	"math"
	"math/bits"

	"golang.org/x/exp/constraints"
)

// nanogramsPerGram is the resolution of a Mass.
const nanogramsPerGram = 1_000_000_000

// Tonne is the largest mass that is read from a text, in grams: 1000 kg. It is a plain
// number, for [Grams].
const Tonne = 1_000_000

// Mass is a mass, held as a whole number of nanograms: sums and differences
// are exact, and values can be compared with == and used as map keys.
// The zero value is 0 g. It may be negative, as the difference of two masses.
// Beyond ±9 223 372 036.854 775 807 g it stops at that end instead of wrapping
// round; every reader refuses far smaller masses (see [Tonne]).
type Mass struct{ ng int64 }

// Grams gives a whole number of grams. Beyond what a [Mass] holds it stops at that
// end.
func Grams[N constraints.Integer](grams N) Mass { return massOf(grams, nanogramsPerGram) }

// Milligrams gives a whole number of milligrams: 100 of them are a division of a
// kitchen scale that shows 0.1 g. Beyond what a [Mass] holds it stops at that end.
func Milligrams[N constraints.Integer](milligrams N) Mass {
	return massOf(milligrams, nanogramsPerGram/1000)
}

// Nanograms gives a whole number of nanograms, which is how a mass is held: [Mass.Nanograms]
// of it gives the same number, so that a database may keep a mass as a whole number. -2^63,
// which no mass holds, becomes -2^63 + 1, and what is above 2^63 - 1 stops there.
func Nanograms[N constraints.Integer](nanograms N) Mass { return massOf(nanograms, 1) }

func massOf[N constraints.Integer](n N, factor int64) Mass {
	most := math.MaxInt64 / factor
	switch {
	case n > 0 && uint64(n) > uint64(most):
		return Mass{math.MaxInt64}
	case n < 0 && int64(n) < -most:
		return Mass{-math.MaxInt64}
	}
	return Mass{int64(n) * factor}
}

// Add gives m + n, exactly.
func (m Mass) Add(n Mass) Mass {
	sum := m.ng + n.ng
	switch {
	case n.ng > 0 && sum < m.ng:
		return Mass{math.MaxInt64}
	case n.ng < 0 && sum > m.ng, sum == math.MinInt64:
		return Mass{-math.MaxInt64}
	}
	return Mass{sum}
}

// Sub gives m − n, exactly.
func (m Mass) Sub(n Mass) Mass { return m.Add(Mass{-n.ng}) }

// Compare gives -1, 0 or 1 as m is below, equal to or above n.
func (m Mass) Compare(n Mass) int {
	switch {
	case m.ng < n.ng:
		return -1
	case m.ng > n.ng:
		return 1
	}
	return 0
}

// Sign gives -1, 0 or 1 as m is below, at or above 0 g.
func (m Mass) Sign() int { return m.Compare(Mass{}) }

// Times gives m × r, rounded once, to a nanogram; ok is false, and the mass 0 g, where r is
// not given. Beyond what a Mass holds it stops at that end. Where several such products are
// added up, a [Sum] rounds none of them, and counts a ratio that is not given as zero.
func (m Mass) Times(r Ratio, how Rounding) (product Mass, ok bool) {
	return Sum{}.Plus(m, r).Mass(how), r.given
}

// Over gives m / r, rounded once, to a nanogram; ok is false, and the mass 0 g, where r is
// zero or not given. Beyond what a Mass holds it stops at that end.
func (m Mass) Over(r Ratio, how Rounding) (quotient Mass, ok bool) {
	if r.wide == nil && r.pico > 0 {
		hi, lo := bits.Mul64(magnitude(m.ng), picosPerOne)
		if ng, ok := quotient128(hi, lo, uint64(r.pico), m.ng < 0, how); ok {
			return Mass{ng}, true
		}
	}
	one := Ratio{pico: picosPerOne, given: true}
	return Sum{}.Plus(m, one).Scale(one, r, how)
}

// Per gives the quotient m/n to twelve decimals, halves away from zero; ok is
// false when n is 0 g.
func (m Mass) Per(n Mass) (r Ratio, ok bool) {
	one := Ratio{pico: picosPerOne, given: true}
	return Sum{}.Plus(m, one).Per(Sum{}.Plus(n, one))
}

// Round gives a multiple of a division, such as that of a scale; how says which: the
// nearest, or the next one down or up. A division of 0 g or less leaves m as it is.
func (m Mass) Round(division Mass, how Rounding) Mass {
	if division.ng <= 0 {
		return m
	}
	hi, lo := bits.Mul64(magnitude(m.ng), 1)
	steps, _ := quotient128(hi, lo, uint64(division.ng), m.ng < 0, how)
	return saturated(steps, division.ng)
}

// Nanograms gives the mass exactly, as the whole number of nanograms that it is.
func (m Mass) Nanograms() int64 { return m.ng }

// Grams gives the mass in grams as a float64, for estimates and drawings;
// nothing that is weighed may come from it.
func (m Mass) Grams() float64 { return float64(m.ng) / nanogramsPerGram }

func magnitude(n int64) uint64 {
	if n < 0 {
		return -uint64(n)
	}
	return uint64(n)
}

func saturated(a, b int64) Mass {
	hi, lo := bits.Mul64(magnitude(a), magnitude(b))
	negative := (a < 0) != (b < 0)
	if hi != 0 || lo > math.MaxInt64 {
		if negative {
			return Mass{-math.MaxInt64}
		}
		return Mass{math.MaxInt64}
	}
	if negative {
		return Mass{-int64(lo)}
	}
	return Mass{int64(lo)}
}
