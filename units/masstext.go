package units

import (
	"math/bits"
	"strconv"
	"strings"
)

// ParseMass reads a mass with its unit, such as "800 g", "1.2 kg", "500 mg",
// "28.2 oz" or "1.1 lb" (see [Unit]); the space may be left out. It is rounded to
// the nearest nanogram. 0 g is read. Negative masses, exponents and digit grouping
// are refused, and so are a volume and more than a tonne. The error is a
// [*ParseError].
func ParseMass(text string) (Mass, error) {
	n, symbol, fault := split(text)
	if fault != nil {
		return Mass{}, fault
	}
	factor, fault := massFactor(text, symbol)
	if fault != nil {
		return Mass{}, fault
	}
	ng, ok := n.times(factor)
	if !ok || ng > Tonne*nanogramsPerGram {
		return Mass{}, &ParseError{Text: text, Reason: "is more than a tonne", Remedy: "write at most 1000 kg", Kind: ErrSize}
	}
	return Mass{ng}, nil
}

// massFactor gives the nanograms of a unit, or what is wrong with it.
func massFactor(text, symbol string) (int64, *ParseError) {
	unit, ok := ParseUnit(symbol)
	if !ok {
		return 0, massUnitFault(text, symbol)
	}
	return unit.nanograms(), nil
}

func massUnitFault(text, symbol string) *ParseError {
	const units = "write g, kg, mg, oz or lb"
	fault := &ParseError{Text: text, Kind: ErrUnit, Remedy: units}
	switch {
	case symbol == "":
		fault.Reason = "has no unit"
		fault.Remedy += ", such as " + Quote(text+" g")
	case symbol == "%":
		fault.Reason = "is a percentage where a mass is needed"
	case strings.HasPrefix(symbol, "mL"), strings.HasPrefix(symbol, "ml"), strings.HasPrefix(symbol, "fl"):
		fault.Reason = "is a volume where a mass is needed"
		fault.Remedy = "weigh it, and " + units
	default:
		fault.Reason = "has an unknown unit of mass, " + Quote(symbol)
	}
	return fault
}

// String gives the mass exactly, in grams: "800 g", "0.000000001 g".
func (m Mass) String() string {
	return m.Text(Gram, 9) + " g"
}

// Text gives the mass in a unit without its symbol, with at most the given
// number of decimals (0 to 9, of milligrams 0 to 6): nearest, halves away from
// zero, no trailing zeros.
func (m Mass) Text(unit Unit, most int) string {
	var buffer [32]byte
	return string(m.append(buffer[:0], unit, most, true, Nearest))
}

// Fixed gives the mass in a unit without its symbol, with exactly the given
// number of decimals (0 to 9, of milligrams 0 to 6), so that a column lines up
// on the point: nearest, halves away from zero.
func (m Mass) Fixed(unit Unit, decimals int) string {
	var buffer [32]byte
	return string(m.append(buffer[:0], unit, decimals, false, Nearest))
}

// FixedDown is Fixed, rounded towards zero: for the most of something, of which a unit that
// does not come out even must not make more. A mass was itself rounded to a nanogram, so
// what reaches a step but for half a nanogram has reached it: 0.05 oz, which is
// 1.41747615625 g, prints as "0.05".
func (m Mass) FixedDown(unit Unit, decimals int) string {
	var buffer [32]byte
	return string(m.append(buffer[:0], unit, decimals, false, Down))
}

func (m Mass) append(dst []byte, unit Unit, decimals int, trim bool, how Rounding) []byte {
	finest := 9
	if unit == Milligram {
		finest = 6 // a nanogram
	}
	decimals = min(max(decimals, 0), finest)
	size, step := magnitude(m.ng), uint64(unit.nanograms())
	if how == Down {
		size, step = 2*size+1, 2*step // half a nanogram more
	}
	hi, lo := bits.Mul64(size, pow10[decimals])
	n, _ := quotient128(hi, lo, step, false, how)
	if m.ng < 0 && n != 0 {
		dst = append(dst, '-')
	}
	return appendDigits(dst, uint64(n), decimals, trim)
}

// appendDigits writes n × 10^−decimals.
func appendDigits(dst []byte, n uint64, decimals int, trim bool) []byte {
	for trim && decimals > 0 && n%10 == 0 {
		n /= 10
		decimals--
	}
	if decimals == 0 {
		return strconv.AppendUint(dst, n, 10)
	}
	dst = strconv.AppendUint(dst, n/pow10[decimals], 10)
	dst = append(dst, '.')
	tail := len(dst)
	dst = strconv.AppendUint(dst, n%pow10[decimals], 10)
	for len(dst) < tail+decimals {
		dst = append(dst, 0)
		copy(dst[tail+1:], dst[tail:])
		dst[tail] = '0'
	}
	return dst
}
