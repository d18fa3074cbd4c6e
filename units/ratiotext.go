package units

import (
	"math"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"
)

// ParsePercent reads a percentage with its sign, such as "6.5 %" or "6.5%",
// exactly. What it is a percentage of, and whether more than 100 % may be right, is
// the reader's to know. A bare fraction such as "0.45" is refused, and so is a
// negative percentage. The error is a [*ParseError].
func ParsePercent(text string) (Ratio, error) {
	n, symbol, fault := split(text)
	if fault != nil {
		return Ratio{}, fault
	}
	if symbol != "%" {
		return Ratio{}, ratioUnitFault(text, symbol, "%", "a percentage")
	}
	return n.ratio(-2), nil
}

// ParseNumber reads a plain number without a unit, such as "3" or "2.125", exactly. A
// negative one is refused. The error is a [*ParseError].
func ParseNumber(text string) (Ratio, error) {
	n, symbol, fault := split(text)
	if fault != nil {
		return Ratio{}, fault
	}
	if symbol != "" {
		return Ratio{}, ratioUnitFault(text, symbol, "", "a plain number")
	}
	return n.ratio(0), nil
}

// ParseMilligramsPerGram reads milligrams per gram, as saponification values are
// printed, exactly, with the unit or without: "196.5 mg/g", "196.5". Both give the
// ratio 0.1965. A negative one is refused. The error is a [*ParseError].
func ParseMilligramsPerGram(text string) (Ratio, error) {
	n, symbol, fault := split(text)
	if fault != nil {
		return Ratio{}, fault
	}
	if symbol != "" && symbol != "mg/g" {
		return Ratio{}, ratioUnitFault(text, symbol, "mg/g", "milligrams per gram")
	}
	return n.ratio(-3), nil
}

// ParseRatio reads any spelling of a ratio, exactly: "6.5 %" (0.065),
// "196.5 mg/g" (0.1965), "3" (3). Where one spelling alone is right, use the reader
// of that one. A negative ratio is refused. The error is a [*ParseError].
func ParseRatio(text string) (Ratio, error) {
	r, fault := parseRatio(text)
	if fault != nil {
		return Ratio{}, fault
	}
	return r, nil
}

func parseRatio(text string) (Ratio, *ParseError) {
	n, symbol, fault := split(text)
	if fault != nil {
		return Ratio{}, fault
	}
	switch symbol {
	case "%":
		return n.ratio(-2), nil
	case "mg/g":
		return n.ratio(-3), nil
	case "":
		return n.ratio(0), nil
	}
	return Ratio{}, &ParseError{
		Text: text, Kind: ErrUnit,
		Reason: "has an unknown unit of a ratio, " + Quote(symbol),
		Remedy: `write "6.5 %", "196.5 mg/g" or a plain number`,
	}
}

// MustRatio is ParseRatio for text written into a program; it panics on what
// ParseRatio refuses.
func MustRatio(text string) Ratio {
	r, err := ParseRatio(text)
	if err != nil {
		panic("units: " + err.Error())
	}
	return r
}

func (n number) ratio(exponent int) Ratio {
	if pico, exact := n.exactly(12 + exponent); exact {
		return Ratio{pico: pico, given: true}
	}
	return ratioOf(n.decimal().Shift(int32(exponent)))
}

func ratioUnitFault(text, symbol, want, meaning string) *ParseError {
	fault := &ParseError{Text: text, Kind: ErrUnit}
	switch _, mass := ParseUnit(symbol); {
	case symbol == "" && want == "%" && strings.HasPrefix(text, "0."):
		// Following the number to the letter would plan a hundredth of it.
		fault.Reason = "is a fraction where a percentage is needed"
		fault.Remedy = "write it times a hundred"
		if n, _, bad := split(text); bad == nil {
			fault.Remedy = "write " + strconv.Quote(n.ratio(0).PercentText(mostDecimals)+" %")
		}
		return fault
	case symbol == "":
		fault.Reason = "has no unit"
		fault.Remedy = "write " + Quote(text+" "+want) + " if " + meaning + " is meant"
		return fault
	case mass:
		fault.Reason = "is a mass where " + meaning + " is needed"
	case symbol == "%":
		fault.Reason = "is a percentage where " + meaning + " is needed"
	case symbol[0] == ':':
		fault.Reason = "is a ratio of two numbers where " + meaning + " is needed"
	default:
		fault.Reason = "has the wrong unit, " + Quote(symbol)
	}
	if want == "" {
		fault.Remedy = "write the number alone"
	} else {
		fault.Remedy = "write a number and " + strconv.Quote(want)
	}
	return fault
}

// String gives the plain number exactly (6 % is "0.06"), "not given" for the zero value.
func (r Ratio) String() string {
	switch {
	case !r.given:
		return "not given"
	case r.wide == nil:
		return r.Text(12)
	}
	return exactText(*r.wide)
}

// Text gives the plain number with at most the given number of decimals (0 to 34):
// nearest, halves away from zero, no trailing zeros. A ratio that is not given
// is the empty text.
func (r Ratio) Text(most int) string { return r.scaledText(0, most, true) }

// Fixed gives the plain number with exactly the given number of decimals (0 to 34):
// nearest, halves away from zero. A ratio that is not given is the empty text.
func (r Ratio) Fixed(decimals int) string { return r.scaledText(0, decimals, false) }

// PercentText gives r × 100 as Text does, without the sign: 0.065 is "6.5".
func (r Ratio) PercentText(most int) string { return r.scaledText(2, most, true) }

// PercentFixed gives r × 100 as Fixed does, without the sign: 0.065 with two decimals
// is "6.50".
func (r Ratio) PercentFixed(decimals int) string { return r.scaledText(2, decimals, false) }

// MilligramsPerGramText gives r × 1000 as Text does: 0.1965 is "196.5".
func (r Ratio) MilligramsPerGramText(most int) string { return r.scaledText(3, most, true) }

func (r Ratio) scaledText(shift, decimals int, trim bool) string {
	if !r.given {
		return ""
	}
	decimals = min(max(decimals, 0), mostDecimals)
	if drop := 12 - shift - decimals; r.wide == nil && drop >= 0 && r.pico != math.MinInt64 {
		n, _ := quotient128(0, magnitude(r.pico), pow10[drop], false, Nearest)
		var buffer [32]byte
		dst := buffer[:0]
		if r.pico < 0 && n != 0 {
			dst = append(dst, '-')
		}
		return string(appendDigits(dst, uint64(n), decimals, trim))
	}
	return string(appendFixed(nil, r.decimal().Shift(int32(shift)), decimals, trim))
}

// exactText writes a decimal with all its digits.
func exactText(d decimal.Decimal) string {
	return string(appendFixed(nil, d, max(0, -int(d.Exponent())), true))
}

// appendFixed writes a decimal with a number of decimals, nearest.
func appendFixed(dst []byte, d decimal.Decimal, decimals int, trim bool) []byte {
	n := roundedAt(d, decimals, Nearest)
	if n.Sign() < 0 {
		dst = append(dst, '-')
		n.Neg(n)
	}
	digits := n.String()
	for len(digits) <= decimals {
		digits = "0" + digits
	}
	whole, part := digits[:len(digits)-decimals], digits[len(digits)-decimals:]
	for trim && part != "" && part[len(part)-1] == '0' {
		part = part[:len(part)-1]
	}
	dst = append(dst, whole...)
	if part != "" {
		dst = append(dst, '.')
		dst = append(dst, part...)
	}
	return dst
}
