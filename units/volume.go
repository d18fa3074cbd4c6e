package units

import "golang.org/x/exp/constraints"

// A Volume is held as a whole number of nanolitres, a millionth of a millilitre:
// sums and differences are exact, and values can be compared with ==. The zero
// value is 0 mL. It may be negative, as the difference of two volumes. A millilitre is
// a cubic centimetre. At what temperature it holds is the reader's to know.
type Volume struct{ nl int64 }

const nanolitresPerMillilitre = 1_000_000

// mostLitres is the largest volume that is read from a text.
const mostLitres = 1000

// Millilitres gives a whole number of millilitres. Beyond ±2^40 mL it stops at that
// end.
func Millilitres[N constraints.Integer](n N) Volume {
	if n > 0 && uint64(n) > 1<<40 {
		return Volume{1 << 40 * nanolitresPerMillilitre}
	}
	return Volume{max(int64(n), -1<<40) * nanolitresPerMillilitre}
}

// ParseVolume reads a volume with its unit, such as "17.5 mL" or "1.2 L"; the
// space may be left out. It is rounded to the nearest nanolitre. 0 mL is read; a
// negative volume and more than 1000 L are refused. The error is a [*ParseError].
func ParseVolume(text string) (Volume, error) {
	n, symbol, fault := split(text)
	if fault != nil {
		return Volume{}, fault
	}
	factor, fault := volumeFactor(text, symbol)
	if fault != nil {
		return Volume{}, fault
	}
	nl, ok := n.times(factor)
	if !ok || nl > mostLitres*1000*nanolitresPerMillilitre {
		return Volume{}, &ParseError{Text: text, Reason: "is more than 1000 L", Remedy: "write at most 1000 L", Kind: ErrSize}
	}
	return Volume{nl}, nil
}

// volumeFactor gives the nanolitres of a unit, or what is wrong with it.
func volumeFactor(text, symbol string) (int64, *ParseError) {
	factor := int64(nanolitresPerMillilitre)
	switch symbol {
	case "mL":
	case "L":
		factor *= 1000
	default:
		return 0, unitFault(text, symbol, "a volume", `write mL or L, such as "17.5 mL"`)
	}
	return factor, nil
}

// unitFault says that a quantity has no unit, or another kind's.
func unitFault(text, symbol, meaning, remedy string) *ParseError {
	reason := "has the wrong unit for " + meaning + ", " + Quote(symbol)
	if symbol == "" {
		reason = "has no unit"
	}
	return &ParseError{Text: text, Reason: reason, Remedy: remedy, Kind: ErrUnit}
}

// VolumeOfFloat takes the figure of a model, in millilitres, rounded to the nearest
// nanolitre. It refuses NaN, infinity and more than 1000 L either way; ok is then
// false.
func VolumeOfFloat(millilitres float64) (v Volume, ok bool) {
	r, ok := RatioOfFloat(millilitres)
	if !ok || r.Compare(Whole(mostLitres*1000)) > 0 || r.Compare(Whole(-mostLitres*1000)) < 0 {
		return Volume{}, false
	}
	return Volume{Sum{}.Plus(Milligrams(1), r).Mass(Nearest).ng}, true
}

// Add gives v + w, exactly.
func (v Volume) Add(w Volume) Volume { return Volume{Mass{v.nl}.Add(Mass{w.nl}).ng} }

// Sub gives v − w, exactly.
func (v Volume) Sub(w Volume) Volume { return v.Add(Volume{-w.nl}) }

// Sign gives -1, 0 or 1 as v is below, at or above 0 mL.
func (v Volume) Sign() int { return Mass{v.nl}.Sign() }

// Compare gives -1, 0 or 1 as v is below, equal to or above w.
func (v Volume) Compare(w Volume) int { return Mass{v.nl}.Compare(Mass{w.nl}) }

// Per gives the quotient v/w to twelve decimals, halves away from zero; ok is
// false when w is 0 mL.
func (v Volume) Per(w Volume) (r Ratio, ok bool) { return Mass{v.nl}.Per(Mass{w.nl}) }

// Millilitres gives the volume in mL as a float64, for models.
func (v Volume) Millilitres() float64 { return float64(v.nl) / nanolitresPerMillilitre }

// Text gives the volume in millilitres without the unit, with at most the given
// number of decimals (0 to 6): nearest, halves away from zero, no trailing zeros.
func (v Volume) Text(most int) string {
	return Mass{v.nl}.Text(Milligram, most)
}

// String gives the volume exactly, in millilitres: "17.5 mL".
func (v Volume) String() string { return v.Text(6) + " mL" }
