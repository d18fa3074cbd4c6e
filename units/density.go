package units

import "math/bits"

// Density is a mass per volume, held as a whole number of nanograms per
// millilitre, so that values can be compared with ==. The zero value means "not
// given"; what is given is above 0 and at most 30 g/mL. At what temperature it
// holds is the reader's to know.
type Density struct{ ngPerML int64 }

// mostDensity is the largest density that is read or made, in g/mL: a bound against
// slips, beyond the densest element, which has 22.6 (recalled, not read).
const mostDensity = 30

// GramsPerMillilitre gives a density from a ratio in g/mL, rounded to the
// nearest 10^-9 g/mL. It is not given where the ratio is not given, is not above 0
// once it is rounded, or is above 30.
func GramsPerMillilitre(r Ratio) Density {
	if r.Sign() <= 0 || r.Compare(Whole(mostDensity)) > 0 {
		return Density{}
	}
	return Density{Sum{}.Plus(Grams(1), r).Mass(Nearest).ng}
}

// DensityOfFloat takes the figure of a model, in g/mL, rounded to the nearest 10^-9.
// It refuses NaN, infinities, and what is not above 0 once it is rounded or is above
// 30; ok is then false.
func DensityOfFloat(gramsPerMillilitre float64) (d Density, ok bool) {
	r, ok := RatioOfFloat(gramsPerMillilitre)
	d = GramsPerMillilitre(r)
	return d, ok && d.Given()
}

// ParseDensity reads a density in g/mL, such as "1.33 g/mL"; the space may be
// left out. It is rounded to the nearest 10^-9 g/mL. What is not above 0 then, and
// more than 30 g/mL, is refused. The error is a [*ParseError].
func ParseDensity(text string) (Density, error) {
	n, symbol, fault := split(text)
	if fault != nil {
		return Density{}, fault
	}
	const remedy = `write g/mL, such as "1.33 g/mL"`
	if symbol != "g/mL" {
		return Density{}, unitFault(text, symbol, "a density", remedy)
	}
	d := GramsPerMillilitre(n.ratio(0))
	if !d.Given() {
		return Density{}, &ParseError{Text: text, Reason: "is not between 0 and 30 g/mL", Remedy: remedy, Kind: ErrSize}
	}
	return d, nil
}

// Given reports whether the density was given at all.
func (d Density) Given() bool { return d.ngPerML != 0 }

// Ratio gives the density exactly, as a ratio in g/mL; not given for the zero value.
func (d Density) Ratio() Ratio {
	if !d.Given() {
		return Ratio{}
	}
	r, _ := Mass{d.ngPerML}.Per(Grams(1))
	return r
}

// Float gives the density in g/mL as a float64, for models; 0 when not given.
func (d Density) Float() float64 { return float64(d.ngPerML) / nanogramsPerGram }

// Compare gives -1, 0 or 1 as d is below, equal to or above e. One that is not given
// is below every other.
func (d Density) Compare(e Density) int { return Mass{d.ngPerML}.Compare(Mass{e.ngPerML}) }

// Text gives the density in g/mL without the unit, with at most the given number
// of decimals (0 to 9): nearest, halves away from zero, no trailing zeros. It is the
// empty text where the density is not given.
func (d Density) Text(most int) string {
	if !d.Given() {
		return ""
	}
	return Mass{d.ngPerML}.Text(Gram, most)
}

// String gives the density exactly, in g/mL: "1.33 g/mL"; "not given" for the zero
// value.
func (d Density) String() string {
	if !d.Given() {
		return "not given"
	}
	return d.Text(9) + " g/mL"
}

// Of gives the mass of a volume at this density, rounded once, to the nearest
// nanogram; ok is false, and the mass 0 g, where the density is not given. Beyond what a
// [Mass] holds it stops at that end.
func (d Density) Of(v Volume) (m Mass, ok bool) {
	if !d.Given() {
		return Mass{}, false
	}
	hi, lo := bits.Mul64(magnitude(v.nl), magnitude(d.ngPerML))
	ng, ok := quotient128(hi, lo, nanolitresPerMillilitre, v.nl < 0, Nearest)
	if !ok {
		return saturated(1<<62, 4*int64(v.Sign())), true
	}
	return Mass{ng}, true
}

// Volume gives the volume of a mass at this density, rounded once, to the nearest
// nanolitre; ok is false where the density is not given, or the volume is beyond what
// a [Volume] holds.
func (d Density) Volume(m Mass) (v Volume, ok bool) {
	if !d.Given() {
		return Volume{}, false
	}
	hi, lo := bits.Mul64(magnitude(m.ng), nanolitresPerMillilitre)
	nl, ok := quotient128(hi, lo, uint64(d.ngPerML), m.ng < 0, Nearest)
	return Volume{nl}, ok
}
