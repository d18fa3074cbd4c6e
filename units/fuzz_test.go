package units_test

import (
	"errors"
	"math/big"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/lyewright/units"
)

// quantities are the seeds of every target.
var quantities = []string{
	"800 g", "1.2 kg", "500 mg", "28.2 oz", "1.1 lb", // every unit of mass
	"6.5 %", "6.5%", "196.5 mg/g", "3", // every spelling of a ratio
	"", " ", ".", "-", " 5 g", "5  g", "5 g ", "5 ", // nothing, and spaces where none belong
	"1000 kg", "1000000.000000001 g", // the bound of a mass, and a nanogram beyond
	"0.0000000005 g", "0.0000000004999999999999999999999999 g", // half a nanogram, and a hair less
	"18446744073.7095516155 g", "9223372036.854775808 g", // where 64 bits end
	"9223372.036854775807", "9223372.036854775808", // where a narrow ratio ends
	"123456789012345678", "1234567890123456.7", "123456789012345.67 %", // 18 bytes: the short way of reading, and one more
	"0.000000000001 %", "0.0000000001", "0.000000000001", "0.0000000000001", // either side of 10^-12
	"9999999999999999.9999999999999999999999999999999999 mg/g",   // the longest number
	"0.00000000000000000000000000000000001", "12345678901234567", // one digit too many
	"-5 g", "+5 g", "1e9 g", "1E5", "1e999999999", "1,5 g", "1.2.3", ".5", "5.", "0x10 g", "NaN", "Inf", // what other parsers take
	"٥ g", "−5 g", "5\u00a0g", "5 \xff", "\xff", "5 g\x00", // beyond ASCII
	"5 fl oz", "5 mL", "5 mg/", "5 %%", // nearly units
	"17.5 mL", "1.2L", "1000 L", "1000000.000001 mL", "0.0000005 mL", // volumes
	"1.33 g/mL", "1.33g/mL", "30.0000000001 g/mL", "0.0000000004 g/mL", "1330 kg/m3", // densities
	"40 °C", "104°F", "313.15 K", "-40 F", "-40C", "-273.15 °C", "-459.67 °F", "0 K", "-1 K", "-0 °C", "--1 °C", // temperatures
}

// numberOf cuts a text that was accepted into its number and its unit, in
// another way than the package does.
func numberOf(t *testing.T, text string) (*big.Rat, string) {
	t.Helper()
	number := strings.TrimRight(text, "gkmolbz%/ ")
	if strings.Trim(number, "0123456789.") != "" {
		t.Fatalf("%q is accepted", text)
	}
	return rat(t, number), strings.TrimPrefix(text[len(number):], " ")
}

func checkFault(t *testing.T, text string, err error) {
	t.Helper()
	var fault *units.ParseError
	if !errors.As(err, &fault) {
		t.Fatalf("%q: %v is not a *ParseError", text, err)
	}
	if !errors.Is(err, units.ErrSyntax) && !errors.Is(err, units.ErrUnit) && !errors.Is(err, units.ErrSize) {
		t.Errorf("%q: %v is of no kind", text, err)
	}
	if fault.Text != text || fault.Reason == "" || fault.Remedy == "" {
		t.Errorf("%q: %+v", text, fault)
	}
	// Forty bytes of \x00 become 160, twice over with the unit.
	if len(err.Error()) > 600 || !utf8.ValidString(err.Error()) {
		t.Errorf("%q: the error is %q", text, err)
	}
}

func FuzzParseMass(f *testing.F) {
	for _, text := range quantities {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if unit, ok := units.ParseUnit(text); ok && unit.String() != text || !ok && unit != units.Gram || ok != strings.Contains(" g kg mg oz lb ", " "+text+" ") {
			t.Errorf("%q is the unit %v, %t", text, unit, ok)
		}
		m, err := units.ParseMass(text)
		if err != nil {
			checkFault(t, text, err)
			if m != (units.Mass{}) {
				t.Errorf("%q: %v stands beside the error", text, m)
			}
			return
		}
		if m.Sign() < 0 || m.Compare(units.Grams(units.Tonne)) > 0 {
			t.Errorf("%q is %v", text, m)
		}
		number, symbol := numberOf(t, text)
		unit, ok := units.ParseUnit(symbol)
		if !ok {
			t.Fatalf("%q is accepted with the unit %q", text, symbol)
		}
		if want := plain(times(number, rat(t, gramsOf[unit])), 9) + " g"; m.String() != want {
			t.Errorf("%q is %v, want %s", text, m, want)
		}
		if back := mass(t, m.String()); back != m {
			t.Errorf("%v reads back as %v", m, back)
		}
		for _, unit := range allUnits {
			printed := m.Text(unit, 9)
			back, err := units.ParseMass(printed + unit.String())
			if errors.Is(err, units.ErrSize) && m.Compare(units.Grams(units.Tonne-1)) > 0 {
				continue // a tonne in ounces may round up beyond a tonne
			}
			if err != nil || back.Text(unit, 9) != printed {
				t.Errorf("%v is %s %v, which reads back as %v, %v", m, printed, unit, back, err)
			}
		}
	})
}

func FuzzParseRatio(f *testing.F) {
	for _, text := range quantities {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		r, err := units.ParseRatio(text)
		percent, percentErr := units.ParsePercent(text)
		number, numberErr := units.ParseNumber(text)
		milligrams, milligramsErr := units.ParseMilligramsPerGram(text)
		for _, read := range []struct {
			r   units.Ratio
			err error
		}{{r, err}, {percent, percentErr}, {number, numberErr}, {milligrams, milligramsErr}} {
			if read.r.Given() == (read.err != nil) {
				t.Errorf("%q gives %v and the error %v", text, read.r, read.err)
			}
			if read.err != nil {
				checkFault(t, text, read.err)
			}
		}
		if err != nil {
			if percentErr == nil || numberErr == nil || milligramsErr == nil {
				t.Errorf("%q is refused as a ratio and yet read", text)
			}
			return
		}
		digits, symbol := numberOf(t, text)
		var own units.Ratio // by the reader of the spelling
		var printed string
		scale := big.NewRat(1, 1)
		switch symbol {
		case "%":
			own, printed, scale = percent, r.PercentText(34)+" %", big.NewRat(1, 100)
		case "mg/g":
			own, printed, scale = milligrams, r.MilligramsPerGramText(34)+" mg/g", big.NewRat(1, 1000)
		case "":
			own, printed = number, r.Text(34)
			if !milligrams.Equal(r.Times(units.MilligramsPerGram(1))) {
				t.Errorf("%q is %v as milligrams per gram", text, milligrams)
			}
		}
		if (percentErr == nil) != (symbol == "%") || (numberErr == nil) != (symbol == "") || (milligramsErr == nil) != (symbol == "" || symbol == "mg/g") {
			t.Errorf("%q: %v, %v, %v", text, percentErr, numberErr, milligramsErr)
		}
		if !own.Equal(r) {
			t.Errorf("%q is %v, and %v by its own reader", text, r, own)
		}
		if exactly(t, r).Cmp(times(digits, scale)) != 0 {
			t.Errorf("%q is %s", text, r.Text(34))
		}
		if back, err := units.ParseRatio(printed); err != nil || !back.Equal(r) {
			t.Errorf("%q is written %s, which reads back as %v, %v", text, printed, back, err)
		}
	})
}

// parts cuts a text that was accepted into its number and its unit.
func parts(t *testing.T, text string) (*big.Rat, string) {
	t.Helper()
	end := strings.IndexFunc(text, func(r rune) bool { return !strings.ContainsRune("-0123456789.", r) })
	if end < 1 || strings.Contains(text[1:end], "-") {
		t.Fatalf("%q is accepted", text)
	}
	return rat(t, text[:end]), strings.TrimPrefix(text[end:], " ")
}

func FuzzParseVolume(f *testing.F) {
	for _, text := range quantities {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		v, err := units.ParseVolume(text)
		if err != nil {
			checkFault(t, text, err)
			if v != (units.Volume{}) {
				t.Errorf("%q: %v stands beside the error", text, v)
			}
			return
		}
		number, symbol := parts(t, text)
		scale, ok := map[string]int64{"mL": 1, "L": 1000}[symbol]
		if !ok {
			t.Fatalf("%q is accepted with the unit %q", text, symbol)
		}
		if want := plain(times(number, big.NewRat(scale, 1)), 6) + " mL"; v.String() != want {
			t.Errorf("%q is %v, want %s", text, v, want)
		}
		if v.Sign() < 0 || v.Compare(units.Millilitres(1_000_000)) > 0 {
			t.Errorf("%q is %v", text, v)
		}
		if back := volume(t, v.String()); back != v {
			t.Errorf("%v reads back as %v", v, back)
		}
	})
}

func FuzzParseLengthAndArea(f *testing.F) {
	for _, text := range quantities {
		f.Add(text)
	}
	for _, text := range []string{
		"45 mm", "4.5cm", "0.3 m", "1.75 in", // every unit of length
		"120 mm²", "120mm2", "120 cm²", "120 cm2", "0.5 m²", "0.5m2", "120 in²", "120 in2", // every spelling of an area
		"10 m", "10.000000001 m", "100 m2", "100.000000000001 m²", // the bounds, and a nanometre or a square micrometre beyond
		"0.0000005 mm", "0.00000000077 in²", "0.00000000078 in2", // half a nanometre, and either side of half a square micrometre
		"120 cm\xb2", "120 cm\xc2", "120 cm^2", "45 ml", // nearly units
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		l, err := units.ParseLength(text)
		a, areaErr := units.ParseArea(text)
		if err != nil {
			checkFault(t, text, err)
			if l != (units.Length{}) {
				t.Errorf("%q: %v stands beside the error", text, l)
			}
		}
		if areaErr != nil {
			checkFault(t, text, areaErr)
			if a != (units.Area{}) {
				t.Errorf("%q: %v stands beside the error", text, a)
			}
		}
		if l.Sign() < 0 || l.Compare(units.Millimetres(10_000)) > 0 || a.Sign() < 0 || a.Compare(units.SquareMillimetres(100_000_000)) > 0 {
			t.Errorf("%q is %v, %v", text, l, a)
		}
		if back := length(t, l.String()); back != l {
			t.Errorf("%v reads back as %v", l, back)
		}
		if back := area(t, a.String()); back != a {
			t.Errorf("%v reads back as %v", a, back)
		}
		if err == nil && areaErr == nil {
			t.Fatalf("%q is a length, %v, and an area, %v", text, l, a)
		}
		check := func(err error, got string, scales map[string]string, unit string) {
			if err != nil {
				return
			}
			number, symbol := parts(t, text)
			scale, ok := scales[symbol]
			if !ok {
				t.Fatalf("%q is accepted with the unit %q", text, symbol)
			}
			if want := plain(times(number, rat(t, scale)), 6) + unit; got != want {
				t.Errorf("%q is %s, want %s", text, got, want)
			}
		}
		check(err, l.String(), map[string]string{"mm": "1", "cm": "10", "m": "1000", "in": "25.4"}, " mm")
		check(areaErr, a.String(), map[string]string{
			"mm²": "1", "mm2": "1", "cm²": "100", "cm2": "100", "m²": "1000000", "m2": "1000000", "in²": "645.16", "in2": "645.16",
		}, " mm²")
	})
}

func FuzzParseDensity(f *testing.F) {
	for _, text := range quantities {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		d, err := units.ParseDensity(text)
		if d.Given() == (err != nil) {
			t.Errorf("%q gives %v and the error %v", text, d, err)
		}
		if err != nil {
			checkFault(t, text, err)
			return
		}
		number, symbol := parts(t, text)
		if want := plain(number, 9) + " g/mL"; symbol != "g/mL" || d.String() != want {
			t.Errorf("%q is %v, want %s", text, d, want)
		}
		if number.Cmp(big.NewRat(30, 1)) > 0 {
			t.Errorf("%q is accepted", text)
		}
		if back := density(t, d.String()); back != d {
			t.Errorf("%v reads back as %v", d, back)
		}
	})
}

func FuzzParseTemperature(f *testing.F) {
	for _, text := range quantities {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		c, err := units.ParseTemperature(text)
		if c.Given() == (err != nil) {
			t.Errorf("%q gives %v and the error %v", text, c, err)
		}
		if err != nil {
			checkFault(t, text, err)
			return
		}
		number, symbol := parts(t, text)
		// A number is rounded to a millionth of its own unit first.
		rounded := rat(t, plain(number, 6))
		switch symbol {
		case "°C", "C":
		case "°F", "F":
			rounded.Sub(rounded, big.NewRat(32, 1)).Mul(rounded, big.NewRat(5, 9))
		case "K":
			rounded.Sub(rounded, big.NewRat(27315, 100))
		default:
			t.Fatalf("%q is accepted with the unit %q", text, symbol)
		}
		if want := plain(rounded, 6) + " °C"; c.String() != want {
			t.Errorf("%q is %v, want %s", text, c, want)
		}
		if back := temperature(t, c.String()); back != c {
			t.Errorf("%v reads back as %v", c, back)
		}
	})
}
