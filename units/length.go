package units

import "golang.org/x/exp/constraints"

// A Length is held as a whole number of nanometres, so that values can be compared
// with ==. The zero value is 0 mm.
type Length struct{ nm int64 }

const nanometresPerMillimetre = 1_000_000

// mostMetres is the largest length that is read from a text.
const mostMetres = 10

// Millimetres gives a whole number of millimetres. Beyond ±2^40 mm it stops at that
// end.
func Millimetres[N constraints.Integer](n N) Length { return Length{Millilitres(n).nl} }

// ParseLength reads a length with its unit: "45 mm", "4.5 cm", "0.3 m", "1.75 in"
// (an inch is 25.4 mm exactly: the international yard and pound agreement of 1959;
// recalled, not read); the space may be left out. It is rounded to the nearest
// nanometre. 0 mm is read; a negative length and more than 10 m are refused. The error
// is a [*ParseError].
func ParseLength(text string) (Length, error) {
	n, symbol, fault := split(text)
	if fault != nil {
		return Length{}, fault
	}
	factor, fault := lengthFactor(text, symbol)
	if fault != nil {
		return Length{}, fault
	}
	nm, ok := n.times(factor)
	if !ok || nm > mostMetres*1000*nanometresPerMillimetre {
		return Length{}, &ParseError{Text: text, Reason: "is more than 10 m", Remedy: "write at most 10 m", Kind: ErrSize}
	}
	return Length{nm}, nil
}

// lengthFactor gives the nanometres of a unit, or what is wrong with it.
func lengthFactor(text, symbol string) (int64, *ParseError) {
	factor := int64(nanometresPerMillimetre)
	switch symbol {
	case "mm":
	case "cm":
		factor *= 10
	case "m":
		factor *= 1000
	case "in":
		factor = 25_400_000
	default:
		return 0, unitFault(text, symbol, "a length", `write mm, cm, m or in, such as "45 mm"`)
	}
	return factor, nil
}

// Sign gives -1, 0 or 1 as l is below, at or above 0 mm.
func (l Length) Sign() int { return Mass{l.nm}.Sign() }

// Compare gives -1, 0 or 1 as l is below, equal to or above k.
func (l Length) Compare(k Length) int { return Mass{l.nm}.Compare(Mass{k.nm}) }

// Millimetres gives the length in mm as a float64, for models.
func (l Length) Millimetres() float64 { return float64(l.nm) / nanometresPerMillimetre }

// Text gives the length in millimetres without the unit, with at most the given
// number of decimals (0 to 6): nearest, halves away from zero, no trailing zeros.
func (l Length) Text(most int) string { return Mass{l.nm}.Text(Milligram, most) }

// String gives the length exactly, in millimetres: "45 mm".
func (l Length) String() string { return l.Text(6) + " mm" }
