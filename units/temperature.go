package units

import (
	"math"
	"strings"

	"golang.org/x/exp/constraints"
)

// A Temperature is held as a whole number of microkelvins above absolute zero,
// so that values can be compared with ==. The zero value means "not given"; what is
// given is above absolute zero and, as read, at most 10,000 K. 0 °C is 273.15 K.
type Temperature struct{ uK int64 }

// A TemperatureDifference is the difference of two temperatures, a whole number
// of microkelvins, and may be negative. The zero value is 0 K.
type TemperatureDifference struct{ uK int64 }

const (
	microkelvins = 1_000_000
	// zeroCelsius is 0 °C = 273.15 K, exact by definition (SI brochure, 9th
	// edition, 2.3.1; recalled, not read).
	zeroCelsius = 273_150_000
	// mostKelvin is the hottest that is read or made.
	mostKelvin = 10_000
)

// Celsius gives a whole number of degrees Celsius. Below -273 °C and above 9000 °C it
// is not given.
func Celsius[N constraints.Integer](n N) Temperature {
	if n > 0 && uint64(n) > 9000 || n < 0 && int64(n) < -273 {
		return Temperature{}
	}
	return Temperature{int64(n)*microkelvins + zeroCelsius}
}

// CelsiusOfFloat takes the figure of a model, in °C, rounded to a microkelvin. It
// refuses NaN and what is not above -273.15 °C and at most 9726.85 °C; ok is then
// false.
func CelsiusOfFloat(celsius float64) (t Temperature, ok bool) {
	uK := math.Round(celsius*microkelvins) + zeroCelsius
	if !(uK > 0 && uK <= mostKelvin*microkelvins) { // false for NaN as well
		return Temperature{}, false
	}
	return Temperature{int64(uK)}, true
}

// Kelvins gives a difference of a whole number of kelvins, which are degrees Celsius.
// Beyond ±10,000 K it stops at that end.
func Kelvins[N constraints.Integer](n N) TemperatureDifference {
	if n > 0 && uint64(n) > mostKelvin {
		return TemperatureDifference{mostKelvin * microkelvins}
	}
	return TemperatureDifference{max(int64(n), -mostKelvin) * microkelvins}
}

// FahrenheitDegrees gives a difference of a whole number of degrees Fahrenheit,
// 5/9 K each, to the nearest microkelvin. Beyond ±10,000 of them it stops at that end.
func FahrenheitDegrees[N constraints.Integer](n N) TemperatureDifference {
	return TemperatureDifference{ninths(5 * Kelvins(n).uK)}
}

// ParseTemperature reads a temperature in degrees Celsius or Fahrenheit or in
// kelvins: "40 °C", "104 °F", "313.15 K"; "C" and "F" will do for the first two,
// and the space may be left out. It is rounded to the nearest microkelvin. A minus is
// allowed before degrees. What is not above absolute zero, and more than 10,000 K, is
// refused. The error is a [*ParseError].
func ParseTemperature(text string) (Temperature, error) {
	digits, negative := strings.CutPrefix(text, "-")
	n, symbol, fault := split(digits)
	if fault != nil {
		fault.Text = text
		return Temperature{}, fault
	}
	const remedy = `write °C or °F, such as "40 °C"`
	var uK int64
	ok := true
	switch symbol {
	case "°C", "C":
		uK, ok = n.times(microkelvins)
	case "°F", "F":
		var degrees int64 // in millionths
		degrees, ok = n.times(microkelvins)
		if ok = ok && degrees < 1<<40; ok {
			if negative {
				degrees = -degrees
			}
			uK, negative = ninths(5*(degrees-32*microkelvins)), false
		}
	case "K":
		if negative {
			return Temperature{}, &ParseError{Text: text, Reason: "is below absolute zero", Remedy: remedy, Kind: ErrSize}
		}
		uK, ok = n.times(microkelvins)
		uK -= zeroCelsius
	default:
		return Temperature{}, unitFault(text, symbol, "a temperature", remedy)
	}
	if negative {
		uK = -uK
	}
	switch {
	case !ok || uK > mostKelvin*microkelvins-zeroCelsius:
		return Temperature{}, &ParseError{Text: text, Reason: "is too hot to be meant", Remedy: remedy, Kind: ErrSize}
	case uK <= -zeroCelsius:
		return Temperature{}, &ParseError{Text: text, Reason: "is below absolute zero", Remedy: remedy, Kind: ErrSize}
	}
	return Temperature{uK + zeroCelsius}, nil
}

// ninths gives n/9 to the nearest whole number.
func ninths(n int64) int64 {
	if n < 0 {
		return -ninths(-n)
	}
	return (2*n + 9) / 18
}

// Given reports whether the temperature was given at all.
func (t Temperature) Given() bool { return t.uK != 0 }

// Celsius gives the temperature in °C as a float64, for models; -273.15 where it is not
// given.
func (t Temperature) Celsius() float64 { return float64(t.uK-zeroCelsius) / microkelvins }

// Ratio gives the temperature in °C exactly, as a plain number; not given where the
// temperature is not.
func (t Temperature) Ratio() Ratio {
	if !t.Given() {
		return Ratio{}
	}
	return ratioOf(decimalOf(t.uK-zeroCelsius, -6))
}

// Compare gives -1, 0 or 1 as t is below, equal to or above u. One that is not
// given is below every other.
func (t Temperature) Compare(u Temperature) int { return Mass{t.uK}.Compare(Mass{u.uK}) }

// Sub gives the difference t − u, exactly. Both must be given: one that is not counts
// as absolute zero.
func (t Temperature) Sub(u Temperature) TemperatureDifference {
	return TemperatureDifference{t.uK - u.uK}
}

// Add gives t + d, exactly. At absolute zero or below it is not given, and neither is
// what was not given before.
func (t Temperature) Add(d TemperatureDifference) Temperature {
	if !t.Given() || t.uK+d.uK <= 0 {
		return Temperature{}
	}
	return Temperature{t.uK + d.uK}
}

// Text gives the temperature in °C without the unit, with at most the given
// number of decimals (0 to 6): nearest, halves away from zero, no trailing zeros. It is
// the empty text where the temperature is not given.
func (t Temperature) Text(most int) string {
	if !t.Given() {
		return ""
	}
	return Mass{t.uK - zeroCelsius}.Text(Milligram, most)
}

// String gives the temperature exactly, in °C: "40 °C"; "not given" for the zero value.
func (t Temperature) String() string {
	if !t.Given() {
		return "not given"
	}
	return t.Text(6) + " °C"
}

// Kelvin gives the difference in K as a float64, for models.
func (d TemperatureDifference) Kelvin() float64 { return float64(d.uK) / microkelvins }

// Size gives the difference without its sign.
func (d TemperatureDifference) Size() TemperatureDifference {
	return TemperatureDifference{max(d.uK, -d.uK)}
}

// Compare gives -1, 0 or 1 as d is below, equal to or above e.
func (d TemperatureDifference) Compare(e TemperatureDifference) int {
	return Mass{d.uK}.Compare(Mass{e.uK})
}

// Ratio gives the difference in K exactly, as a plain number.
func (d TemperatureDifference) Ratio() Ratio { return ratioOf(decimalOf(d.uK, -6)) }

// Text gives the difference in K without the unit, with at most the given number
// of decimals (0 to 6): nearest, halves away from zero, no trailing zeros.
func (d TemperatureDifference) Text(most int) string {
	return Mass{d.uK}.Text(Milligram, most)
}

// String gives the difference exactly, in kelvins: "5.6 K".
func (d TemperatureDifference) String() string { return d.Text(6) + " K" }
