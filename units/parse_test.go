package units_test

import (
	"errors"
	"runtime"
	"strings"
	"testing"

	"example.com/lyewright/units"
)

func TestMassesAreReadExactly(t *testing.T) {
	tests := []struct{ text, want string }{
		{"800 g", "800 g"},
		{"800g", "800 g"},
		{"1.2 kg", "1200 g"},
		{"500 mg", "0.5 g"},
		{"0 g", "0 g"},
		{"007.50 g", "7.5 g"},
		{"0.0000000004 g", "0 g"}, // less than half a nanogram
		{"0.0000000005 g", "0.000000001 g"},
		{"0.0000000005000000000000000000000000 g", "0.000000001 g"},
		{"0.0000000004999999999999999999999999 g", "0 g"},
		{"28.2 oz", "799.456552125 g"},      // 28.2 × 28.349523125, by hand
		{"1.1 lb", "498.951607 g"},          // 1.1 × 453.59237
		{"0.000000001 oz", "0.000000028 g"}, // 28.349… ng
		{"1000 kg", "1000000 g"},            // a tonne
		{"1000000 g", "1000000 g"},
		{"1000000000 mg", "1000000 g"},
	}
	for _, test := range tests {
		if got := mass(t, test.text); got.String() != test.want {
			t.Errorf("%s is %v, want %s", test.text, got, test.want)
		}
	}
	if units.Grams(units.Tonne) != mass(t, "1000 kg") {
		t.Error("Tonne is not 1000 kg")
	}
}

// refusal is what every reader makes of a text it does not take.
type refusal struct {
	text string
	kind error
	says string // a word the reason cannot do without
}

var numberRefusals = []refusal{
	{"", units.ErrSyntax, "empty"},
	{" ", units.ErrSyntax, "space"},
	{" 5 g", units.ErrSyntax, "begins with a space"},
	{"\t5 g", units.ErrSyntax, "begins with a space"},
	{"5  g", units.ErrSyntax, "space"},
	{"5 ", units.ErrSyntax, "ends with a space"},
	{"g", units.ErrSyntax, "does not begin with a number"},
	{"%", units.ErrSyntax, "does not begin with a number"},
	{"NaN g", units.ErrSyntax, "does not begin with a number"},
	{"Inf g", units.ErrSyntax, "does not begin with a number"},
	{"+Inf", units.ErrSyntax, "begins with a plus"},
	{"+5 g", units.ErrSyntax, "begins with a plus"},
	{"\u22125 g", units.ErrSyntax, "does not begin with a number"}, // a minus that is not ASCII
	{"٥ g", units.ErrSyntax, "does not begin with a number"},       // Arabic-Indic five
	{"\xff5 g", units.ErrSyntax, "does not begin with a number"},
	{"\x005 g", units.ErrSyntax, "does not begin with a number"},
	{"-5 g", units.ErrSize, "negative"},
	{"-0 g", units.ErrSize, "negative"},
	{"1,5 g", units.ErrSyntax, "comma"},
	{"1,500.5 g", units.ErrSyntax, "comma"},
	{"1.2.3 g", units.ErrSyntax, "two points"},
	{"1..2 g", units.ErrSyntax, "point"},
	{".5 g", units.ErrSyntax, "digit on one side of its point"},
	{".5.3 g", units.ErrSyntax, "digit on one side of its point"},
	{"5. g", units.ErrSyntax, "digit on one side of its point"},
	{".", units.ErrSyntax, "digit on one side of its point"},
	{"1e9 g", units.ErrSyntax, "exponent"},
	{"1E-9 g", units.ErrSyntax, "exponent"},
	{"1e+9 g", units.ErrSyntax, "exponent"},
	{"1e999999999 g", units.ErrSyntax, "exponent"},
	{"12345678901234567 g", units.ErrSize, "digits"}, // 17 before the point
	{"0." + strings.Repeat("1", 35) + " g", units.ErrSize, "digits"},
	{strings.Repeat("0", 17) + "5 g", units.ErrSize, "digits"},
	{strings.Repeat("9", 10_000) + " g", units.ErrSize, "too long"},
	{"5 " + strings.Repeat("g", 79), units.ErrSize, "too long"}, // 81 bytes
}

func checkRefusal[T any](t *testing.T, text string, got T, err error, kind error, says string) {
	t.Helper()
	var fault *units.ParseError
	if !errors.As(err, &fault) {
		t.Errorf("%.50q gives %v and the error %v, not a *ParseError", text, got, err)
		return
	}
	for _, k := range []error{units.ErrSyntax, units.ErrUnit, units.ErrSize} {
		if errors.Is(err, k) != (k == kind) {
			t.Errorf("%.50q: is %q is %t", text, k, errors.Is(err, k))
		}
	}
	if !strings.Contains(fault.Reason, says) {
		t.Errorf("%.50q: the reason %q does not say %q", text, fault.Reason, says)
	}
	if fault.Text != text || fault.Remedy == "" || strings.HasSuffix(err.Error(), ".") {
		t.Errorf("%.50q: text %.50q, remedy %q, error %s", text, fault.Text, fault.Remedy, err)
	}
	if !strings.Contains(err.Error(), fault.Reason) || !strings.Contains(err.Error(), fault.Remedy) {
		t.Errorf("%.50q: the error %s leaves out the reason or the remedy", text, err)
	}
	if len(text) > 40 && strings.Contains(err.Error(), text[:41]) {
		t.Errorf("%.50q: the error quotes more than 40 bytes: %s", text, err)
	}
}

func TestEveryReaderRefusesWhatIsNotAPlainNumber(t *testing.T) {
	for _, test := range numberRefusals {
		m, err := units.ParseMass(test.text)
		checkRefusal(t, test.text, m, err, test.kind, test.says)
		if m != (units.Mass{}) {
			t.Errorf("%.50q: %v stands beside the error", test.text, m)
		}
		readers := map[string]func(string) (units.Ratio, error){
			"": units.ParseNumber, " %": units.ParsePercent, " mg/g": units.ParseMilligramsPerGram,
		}
		for unit, read := range readers {
			text := test.text
			if number, isGrams := strings.CutSuffix(text, " g"); isGrams && len(text) < 80 {
				text = number + unit
			}
			for _, parse := range []func(string) (units.Ratio, error){read, units.ParseRatio} {
				r, err := parse(text)
				checkRefusal(t, text, r, err, test.kind, test.says)
				if r.Given() {
					t.Errorf("%.50q: %v stands beside the error", text, r)
				}
			}
		}
	}
}

func TestMassNeedsAUnitOfMass(t *testing.T) {
	tests := []refusal{
		{"5", units.ErrUnit, "no unit"},
		{"5 %", units.ErrUnit, "percentage"},
		{"5%", units.ErrUnit, "percentage"},
		{"5 mL", units.ErrUnit, "volume"},
		{"5 ml", units.ErrUnit, "volume"},
		{"5 fl oz", units.ErrUnit, "volume"},
		{"5 g ", units.ErrSyntax, "ends with a space"},
		{"5 G", units.ErrUnit, `"G"`},
		{"5 Kg", units.ErrUnit, `"Kg"`},
		{"5 gram", units.ErrUnit, `"gram"`},
		{"5 g g", units.ErrUnit, `"g g"`},
		{"5\u00a0g", units.ErrUnit, "no-break space"},
		{"5\tg", units.ErrUnit, "unknown unit"},
		{"5\n", units.ErrUnit, "unknown unit"},
		{"5 \xff\xfe", units.ErrUnit, `\xff`},
		{"5 g\x00", units.ErrUnit, `\x00`},
		{"0x10 g", units.ErrUnit, `"x10 g"`},
		{"1_000 g", units.ErrUnit, `"_000 g"`},
		{"5 e", units.ErrUnit, `"e"`},
		{"5٥ g", units.ErrUnit, "unknown unit"},
		{"5 mg/g", units.ErrUnit, `"mg/g"`},
		{"5 " + strings.Repeat("x", 78), units.ErrUnit, "unknown unit"}, // 80 bytes
	}
	for _, test := range tests {
		m, err := units.ParseMass(test.text)
		checkRefusal(t, test.text, m, err, test.kind, test.says)
	}
}

func TestMoreThanATonneIsRefused(t *testing.T) {
	for _, text := range []string{
		"1000000.000000001 g", "1000.000000000001 kg", "1000000001 mg", "35273.97 oz", "2204.63 lb",
		"9999999999999999 lb",                 // beyond 2^64 nanograms
		"9999999999999999.999999999999999 kg", // beyond 18 digits as well
		"18446744.0737095516155 kg",           // a hair below 2^64 nanograms, rounded up
		"9223372036.854775808 g",              // 2^63 nanograms
	} {
		m, err := units.ParseMass(text)
		checkRefusal(t, text, m, err, units.ErrSize, "tonne")
	}
	// 10^6 g / 453.59237 g = 2204.622 6…, so the last whole pound is 2204.
	for _, text := range []string{"2204 lb", "35273 oz"} {
		if m := mass(t, text); m.Compare(units.Grams(units.Tonne)) > 0 {
			t.Errorf("%s is %v", text, m)
		}
	}
}

func TestRatiosAreReadExactlyInEverySpelling(t *testing.T) {
	tests := []struct{ text, want string }{
		{"6.5 %", "0.065"},
		{"6.5%", "0.065"},
		{"0 %", "0"},
		{"100 %", "1"},
		{"196.5 mg/g", "0.1965"},
		{"196.5mg/g", "0.1965"},
		{"3", "3"},
		{"2.125", "2.125"},
		{"0.0000000000000000000000000000000001", "0.0000000000000000000000000000000001"},
		{"9999999999999999 %", "99999999999999.99"},
		{"9223372.036854775807", "9223372.036854775807"}, // the last that fits a word
		{"9223372.036854775808", "9223372.036854775808"},
		{"33.333333333333333333 %", "0.33333333333333333333"},
		{"17.6543210987654321 mg/g", "0.0176543210987654321"},
	}
	for _, test := range tests {
		r, err := units.ParseRatio(test.text)
		if err != nil || r.Text(34) != test.want {
			t.Errorf("%s is %s, %v; want %s", test.text, r.Text(34), err, test.want)
		}
		read := map[string]func(string) (units.Ratio, error){
			"%": units.ParsePercent, "g": units.ParseMilligramsPerGram,
		}[test.text[len(test.text)-1:]]
		if read == nil {
			read = units.ParseNumber
		}
		if s, err := read(test.text); err != nil || !s.Equal(r) {
			t.Errorf("%s is %v, %v by its own reader", test.text, s, err)
		}
	}
	bare, err := units.ParseMilligramsPerGram("196.5")
	if err != nil || !bare.Equal(units.MustRatio("196.5 mg/g")) {
		t.Errorf("a bare 196.5 is %v, %v", bare, err)
	}
}

func TestRatioNeedsTheUnitThatIsMeant(t *testing.T) {
	tests := []struct {
		reader string
		read   func(string) (units.Ratio, error)
		refusal
		remedy string
	}{
		{"ParsePercent", units.ParsePercent, refusal{"5", units.ErrUnit, "no unit"}, `"5 %"`},
		{"ParsePercent", units.ParsePercent, refusal{"5 g", units.ErrUnit, "mass"}, `"%"`},
		{"ParsePercent", units.ParsePercent, refusal{"5 lb", units.ErrUnit, "mass"}, `"%"`},
		{"ParsePercent", units.ParsePercent, refusal{"5 mg/g", units.ErrUnit, `"mg/g"`}, `"%"`},
		{"ParsePercent", units.ParsePercent, refusal{"5 percent", units.ErrUnit, `"percent"`}, `"%"`},
		{"ParsePercent", units.ParsePercent, refusal{"5 % ", units.ErrSyntax, "ends with a space"}, "leave the space out"},
		{"ParsePercent", units.ParsePercent, refusal{"5 \xff", units.ErrUnit, `\xff`}, `"%"`},
		{"ParseNumber", units.ParseNumber, refusal{"5 %", units.ErrUnit, "percentage"}, "alone"},
		{"ParseNumber", units.ParseNumber, refusal{"5 g", units.ErrUnit, "mass"}, "alone"},
		{"ParseNumber", units.ParseNumber, refusal{"5 mg/g", units.ErrUnit, `"mg/g"`}, "alone"},
		{"ParseMilligramsPerGram", units.ParseMilligramsPerGram, refusal{"5 %", units.ErrUnit, "percentage"}, `"mg/g"`},
		{"ParseMilligramsPerGram", units.ParseMilligramsPerGram, refusal{"5 mg", units.ErrUnit, "mass"}, `"mg/g"`},
		{"ParseMilligramsPerGram", units.ParseMilligramsPerGram, refusal{"5 mg/kg", units.ErrUnit, `"mg/kg"`}, `"mg/g"`},
		{"ParseRatio", units.ParseRatio, refusal{"5 g", units.ErrUnit, `"g"`}, `"6.5 %"`},
		{"ParseRatio", units.ParseRatio, refusal{"0x10", units.ErrUnit, `"x10"`}, `"6.5 %"`},
	}
	for _, test := range tests {
		r, err := test.read(test.text)
		checkRefusal(t, test.text, r, err, test.kind, test.says)
		if err != nil && !strings.Contains(err.Error(), test.remedy) {
			t.Errorf("%s(%q): the remedy of %s does not say %s", test.reader, test.text, err, test.remedy)
		}
	}
}

func TestMustRatioPanicsOnWhatParseRatioRefuses(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("no panic")
		}
	}()
	units.MustRatio("5 g")
}

// A text of a million digits must be refused for its length, before anything
// is copied or converted: a decimal parser takes gigabytes for it.
func TestHostileDigitsAreRefusedWithoutWork(t *testing.T) {
	text := strings.Repeat("9", 1_000_000) + " g"
	readers := map[string]func() error{
		"ParseMass":  func() error { _, err := units.ParseMass(text); return err },
		"ParseRatio": func() error { _, err := units.ParseRatio(text); return err },
	}
	for name, read := range readers {
		if err := read(); !errors.Is(err, units.ErrSize) {
			t.Errorf("%s: %.80v", name, err)
		}
		if allocs := testing.AllocsPerRun(100, func() { _ = read() }); allocs > 3 {
			t.Errorf("%s allocates %v times", name, allocs)
		}
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		for range 10 {
			_ = read()
		}
		runtime.ReadMemStats(&after)
		if bytes := after.TotalAlloc - before.TotalAlloc; bytes > 100_000 { // a tenth of one copy
			t.Errorf("%s: ten refusals take %d bytes", name, bytes)
		}
	}
}

func TestQuotedTextIsCutAfterFortyBytes(t *testing.T) {
	tests := []struct{ text, want string }{
		{"", `""`},
		{"5 \x00\n\xff", `"5 \x00\n\xff"`},
		{strings.Repeat("a", 40), `"` + strings.Repeat("a", 40) + `"`},
		{strings.Repeat("a", 41), `"` + strings.Repeat("a", 40) + `"…`},
	}
	for _, test := range tests {
		if got := units.Quote(test.text); got != test.want {
			t.Errorf("got %s, want %s", got, test.want)
		}
	}
	if got := units.Quote(strings.Repeat("\x1b[2J", 100_000)); strings.Contains(got, "\x1b") || len(got) > 200 {
		t.Errorf("a long text of escapes is quoted as %.200s", got)
	}
	// A letter of three bytes is not cut in two.
	if got := units.Quote(strings.Repeat("€", 40)); strings.Contains(got, `\x`) || strings.Count(got, "€") != 13 {
		t.Errorf("forty euro signs are quoted as %s", got)
	}
}

func TestUnitsAreReadByTheirOwnSymbol(t *testing.T) {
	symbols := map[units.Unit]string{units.Gram: "g", units.Kilogram: "kg", units.Milligram: "mg", units.Ounce: "oz", units.Pound: "lb"}
	for unit, symbol := range symbols {
		if unit.String() != symbol {
			t.Errorf("%q, want %q", unit.String(), symbol)
		}
		if got, ok := units.ParseUnit(symbol); !ok || got != unit {
			t.Errorf("%s is read as %v, %t", symbol, got, ok)
		}
	}
	for _, symbol := range []string{"", "G", "gr", "lbs", "ozt", "%", "mL", "g "} {
		if got, ok := units.ParseUnit(symbol); ok {
			t.Errorf("%q is read as %v", symbol, got)
		}
	}
	var zero units.Unit
	if zero != units.Gram {
		t.Error("the zero unit is not the gram")
	}
}
