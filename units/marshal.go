package units

import (
	"strings"

	"github.com/shopspring/decimal"
)

// Every quantity is written as the text that its parser reads, and read back from it as
// the same value. What a parser refuses of a stranger's text, a minus or more than a
// tonne, is read back here, since a program wrote it. The empty text stands for what is
// not given, and is refused of a quantity that has no such value. On an error the
// receiver keeps its value.

// written is the text of a quantity, whole and exact.
func written(text string) ([]byte, error) { return []byte(text), nil }

// signedNumber cuts a quantity as split does, behind a minus that it may have.
func signedNumber(text string) (n number, symbol string, negative bool, fault *ParseError) {
	digits, negative := strings.CutPrefix(text, "-")
	n, symbol, fault = split(digits)
	if fault != nil {
		fault.Text = text
	}
	return n, symbol, negative, fault
}

// wholeSteps reads a quantity that is held as a whole number of steps; factor gives how
// many steps a unit has, or what is wrong with the unit.
func wholeSteps(text []byte, factor func(text, symbol string) (int64, *ParseError)) (steps int64, err error) {
	n, symbol, negative, fault := signedNumber(string(text))
	if fault != nil {
		return 0, fault
	}
	per, fault := factor(string(text), symbol)
	if fault != nil {
		return 0, fault
	}
	steps, ok := n.times(per)
	switch {
	case !ok:
		return 0, &ParseError{
			Text: string(text), Reason: "is beyond what can be held", Remedy: "write a smaller quantity",
			Kind: ErrSize,
		}
	case negative:
		return -steps, nil
	}
	return steps, nil
}

// MarshalText writes the mass exactly, in grams, as [Mass.String] does: "118.1 g",
// "-0.000000001 g". The error is nil.
func (m Mass) MarshalText() ([]byte, error) { return written(m.String()) }

// UnmarshalText reads what MarshalText wrote, and whatever [ParseMass] reads; a minus is
// read too, and a mass above a tonne. The error is a [*ParseError].
func (m *Mass) UnmarshalText(text []byte) error {
	ng, err := wholeSteps(text, massFactor)
	if err == nil {
		*m = Mass{ng}
	}
	return err
}

// MarshalText writes the volume exactly, in millilitres, as [Volume.String] does:
// "17.5 mL". The error is nil.
func (v Volume) MarshalText() ([]byte, error) { return written(v.String()) }

// UnmarshalText reads what MarshalText wrote, and whatever [ParseVolume] reads; a minus is
// read too, and a volume above 1000 L. The error is a [*ParseError].
func (v *Volume) UnmarshalText(text []byte) error {
	nl, err := wholeSteps(text, volumeFactor)
	if err == nil {
		*v = Volume{nl}
	}
	return err
}

// MarshalText writes the length exactly, in millimetres, as [Length.String] does:
// "45 mm". The error is nil.
func (l Length) MarshalText() ([]byte, error) { return written(l.String()) }

// UnmarshalText reads what MarshalText wrote, and whatever [ParseLength] reads; a minus is
// read too, and a length above 10 m. The error is a [*ParseError].
func (l *Length) UnmarshalText(text []byte) error {
	nm, err := wholeSteps(text, lengthFactor)
	if err == nil {
		*l = Length{nm}
	}
	return err
}

// MarshalText writes the area exactly, in square millimetres, as [Area.String] does:
// "120 mm²". The error is nil.
func (a Area) MarshalText() ([]byte, error) { return written(a.String()) }

// UnmarshalText reads what MarshalText wrote, and whatever [ParseArea] reads; a minus is
// read too, and an area above 100 m². The error is a [*ParseError].
func (a *Area) UnmarshalText(text []byte) error {
	um2, err := wholeSteps(text, areaFactor)
	if err == nil {
		*a = Area{um2}
	}
	return err
}

// MarshalText writes the density exactly, in g/mL, as [Density.String] does:
// "1.33 g/mL"; one that is not given is the empty text. The error is nil.
func (d Density) MarshalText() ([]byte, error) {
	if !d.Given() {
		return written("")
	}
	return written(d.String())
}

// UnmarshalText reads what MarshalText wrote, the empty text included, and whatever
// [ParseDensity] reads. The error is a [*ParseError].
func (d *Density) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*d = Density{}
		return nil
	}
	read, err := ParseDensity(string(text))
	if err == nil {
		*d = read
	}
	return err
}

// MarshalText writes the temperature exactly, in °C, as [Temperature.String] does:
// "40 °C"; one that is not given is the empty text. Above 10,000 K, which no parser
// reads, it is refused with a [*ParseError].
func (t Temperature) MarshalText() ([]byte, error) {
	switch {
	case !t.Given():
		return written("")
	case t.uK > mostKelvin*microkelvins:
		return nil, &ParseError{
			Text: t.String(), Reason: "is too hot to be written and read back",
			Remedy: "keep it at or below 9726.85 °C", Kind: ErrSize,
		}
	}
	return written(t.String())
}

// UnmarshalText reads what MarshalText wrote, the empty text included, and whatever
// [ParseTemperature] reads. The error is a [*ParseError].
func (t *Temperature) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*t = Temperature{}
		return nil
	}
	read, err := ParseTemperature(string(text))
	if err == nil {
		*t = read
	}
	return err
}

// MarshalText writes the difference exactly, in kelvins, as
// [TemperatureDifference.String] does: "5.6 K". The error is nil.
func (d TemperatureDifference) MarshalText() ([]byte, error) { return written(d.String()) }

// UnmarshalText reads what MarshalText wrote: a number of kelvins with its unit, a minus
// allowed, rounded to the nearest microkelvin. The error is a [*ParseError].
func (d *TemperatureDifference) UnmarshalText(text []byte) error {
	uK, err := wholeSteps(text, kelvinFactor)
	if err == nil {
		*d = TemperatureDifference{uK}
	}
	return err
}

func kelvinFactor(text, symbol string) (int64, *ParseError) {
	if symbol != "K" {
		return 0, unitFault(text, symbol, "a difference of temperatures", `write kelvins, such as "5.6 K"`)
	}
	return microkelvins, nil
}

// MarshalText writes the ratio exactly, as a plain number where that takes at most 34
// decimals ("0.065"), else as a percentage or in mg/g; one that is not given is the empty
// text. What has more digits than [ParseRatio] reads is refused with a [*ParseError]:
// [Ratio.Round] it first.
func (r Ratio) MarshalText() ([]byte, error) {
	if !r.given {
		return written("")
	}
	for _, spelling := range []struct {
		shift  int
		symbol string
	}{{0, ""}, {2, " %"}, {3, " mg/g"}} {
		if text, ok := readable(r.decimal(), spelling.shift); ok {
			return written(text + spelling.symbol)
		}
	}
	return nil, unreadable(r.String())
}

// UnmarshalText reads what MarshalText wrote, the empty text included, and whatever
// [ParseRatio] reads; a minus is read too. The error is a [*ParseError].
func (r *Ratio) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*r = Ratio{}
		return nil
	}
	digits, negative := strings.CutPrefix(string(text), "-")
	read, fault := parseRatio(digits)
	switch {
	case fault != nil:
		fault.Text = string(text)
		return fault
	case negative:
		read = Whole(0).Sub(read)
	}
	*r = read
	return nil
}

// MarshalText writes the sum exactly, in grams, as [Sum.String] does: "135.24 g". What has
// more than 16 digits before its point or 34 behind it is refused with a [*ParseError].
func (s Sum) MarshalText() ([]byte, error) {
	text, ok := readable(s.decimal(), 0)
	if !ok {
		return nil, unreadable(s.String())
	}
	return written(text + " g")
}

// UnmarshalText reads what MarshalText wrote: a number of grams with its unit, exactly, a
// minus allowed. The error is a [*ParseError].
func (s *Sum) UnmarshalText(text []byte) error {
	n, symbol, negative, fault := signedNumber(string(text))
	switch {
	case fault != nil:
		return fault
	case symbol != "g":
		return unitFault(string(text), symbol, "a sum", `write grams, such as "135.24 g"`)
	}
	grams := n.decimal()
	if negative {
		grams = grams.Neg()
	}
	*s = sumOf(grams)
	return nil
}

// readable writes a decimal times ten to the power of shift with all its digits; ok is
// false where there are more than split reads.
func readable(d decimal.Decimal, shift int) (text string, ok bool) {
	text = exactText(d.Shift(int32(shift)))
	whole, part, _ := strings.Cut(strings.TrimPrefix(text, "-"), ".")
	return text, len(whole) <= mostInteger && len(part) <= mostDecimals
}

func unreadable(text string) *ParseError {
	return &ParseError{
		Text: text, Reason: "has more digits than can be written and read back", Remedy: "round it first",
		Kind: ErrSize,
	}
}

// The words between the figures of a range as text.
const (
	rangeTo      = " to "
	rangeTypical = ", typical "
	rangeMissing = "not given"
)

// MarshalText writes the range exactly: its ends, and its value to plan at where that is
// given, each as a [Ratio] is written or as "not given": "0.97 to 0.99",
// "0.185 to 0.196, typical 0.19". The range that is not given at all is the empty text.
// The error is that of [Ratio.MarshalText].
func (r Range) MarshalText() ([]byte, error) {
	if !r.Low.given && !r.Typical.given && !r.High.given {
		return written("")
	}
	var texts [3]string
	for i, figure := range []Ratio{r.Low, r.High, r.Typical} {
		text, err := figure.MarshalText()
		if err != nil {
			return nil, err
		}
		if texts[i] = string(text); texts[i] == "" {
			texts[i] = rangeMissing
		}
	}
	text := texts[0] + rangeTo + texts[1]
	if r.Typical.given {
		text += rangeTypical + texts[2]
	}
	return written(text)
}

// UnmarshalText reads what MarshalText wrote, the empty text included; a figure may be
// spelled in any way that [Ratio.UnmarshalText] reads. Whether the ends are in order is
// not looked at. The error is a [*ParseError].
func (r *Range) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*r = Range{}
		return nil
	}
	ends, typical, planned := strings.Cut(string(text), rangeTypical)
	low, high, ok := strings.Cut(ends, rangeTo)
	if !ok || planned && typical == "" {
		return &ParseError{
			Text: string(text), Reason: "is not a range",
			Remedy: `write "0.97 to 0.99" or "0.97 to 0.99, typical 0.98"`, Kind: ErrSyntax,
		}
	}
	var read Range
	for _, figure := range []struct {
		ratio *Ratio
		text  string
	}{{&read.Low, low}, {&read.High, high}, {&read.Typical, typical}} {
		if figure.text == rangeMissing {
			continue
		}
		if figure.text == "" && figure.ratio != &read.Typical {
			return &ParseError{
				Text: string(text), Reason: "lacks one of its ends", Remedy: `write "not given" in its place`,
				Kind: ErrSyntax,
			}
		}
		if err := figure.ratio.UnmarshalText([]byte(figure.text)); err != nil {
			return err
		}
	}
	*r = read
	return nil
}
