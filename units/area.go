package units

import "golang.org/x/exp/constraints"

// An Area is a surface, held as a whole number of square micrometres, a millionth of a
// square millimetre, so that values can be compared with ==. The zero value is 0 mm².
type Area struct{ um2 int64 }

const squareMicrometres = 1_000_000 // in a square millimetre

// mostSquareMetres is the largest area that is read from a text.
const mostSquareMetres = 100

// SquareMillimetres gives a whole number of square millimetres. Beyond ±2^40 mm² it
// stops at that end.
func SquareMillimetres[N constraints.Integer](n N) Area { return Area{Millilitres(n).nl} }

// ParseArea reads an area with its unit: "120 cm²" or "120 cm2", and likewise mm²,
// m², in² (645.16 mm² exactly); the space may be left out. It is rounded to the
// nearest square micrometre. 0 mm² is read; a negative area and more than 100 m² are
// refused. The error is a [*ParseError].
func ParseArea(text string) (Area, error) {
	n, symbol, fault := split(text)
	if fault != nil {
		return Area{}, fault
	}
	factor, fault := areaFactor(text, symbol)
	if fault != nil {
		return Area{}, fault
	}
	um2, ok := n.times(factor)
	if !ok || um2 > mostSquareMetres*1_000_000*squareMicrometres {
		return Area{}, &ParseError{Text: text, Reason: "is more than 100 m²", Remedy: "write at most 100 m²", Kind: ErrSize}
	}
	return Area{um2}, nil
}

// areaFactor gives the square micrometres of a unit, or what is wrong with it.
func areaFactor(text, symbol string) (int64, *ParseError) {
	factor := int64(squareMicrometres)
	switch symbol {
	case "mm²", "mm2":
	case "cm²", "cm2":
		factor *= 100
	case "m²", "m2":
		factor *= 1_000_000
	case "in²", "in2":
		factor = 645_160_000
	default:
		return 0, unitFault(text, symbol, "an area", `write mm², cm², m² or in², such as "120 cm²"`)
	}
	return factor, nil
}

// Sign gives -1, 0 or 1 as a is below, at or above 0 mm².
func (a Area) Sign() int { return Mass{a.um2}.Sign() }

// Compare gives -1, 0 or 1 as a is below, equal to or above b.
func (a Area) Compare(b Area) int { return Mass{a.um2}.Compare(Mass{b.um2}) }

// SquareMillimetres gives the area in mm² as a float64, for models.
func (a Area) SquareMillimetres() float64 { return float64(a.um2) / squareMicrometres }

// Text gives the area in square millimetres without the unit, with at most the given
// number of decimals (0 to 6): nearest, halves away from zero, no trailing zeros.
func (a Area) Text(most int) string { return Mass{a.um2}.Text(Milligram, most) }

// String gives the area exactly, in square millimetres: "120 mm²".
func (a Area) String() string { return a.Text(6) + " mm²" }
