package units_test

import (
	"testing"

	"example.com/lyewright/units"
)

// NIST Handbook 44, 2014 edition, Appendix C (read): the ounce on p. C-14, the
// pound on pp. C-12 and C-20, the grain and its number to the ounce on p. C-19.
func TestOunceAndPoundAreThoseOfHandbook44(t *testing.T) {
	tests := []struct{ text, grams string }{
		{"1 oz", "28.349523125 g"},
		{"1 lb", "453.59237 g"},
		{"16 oz", "453.59237 g"},
		{"0.0625 lb", "28.349523125 g"}, // a sixteenth
		{"1 kg", "1000 g"},
		{"1 mg", "0.001 g"},
	}
	for _, test := range tests {
		if got := mass(t, test.text).String(); got != test.grams {
			t.Errorf("%s is %s, want %s", test.text, got, test.grams)
		}
	}
}

// The grain is 64.798 91 mg; 437.5 of them are an ounce and 7000 a pound
// (Handbook 44, 2014, Appendix C, pp. C-19 and C-20).
func TestOunceAndPoundAreWholeInGrains(t *testing.T) {
	grain := mass(t, "64.79891 mg")
	for text, grains := range map[string]string{"1 oz": "437.5", "1 lb": "7000"} {
		if got, ok := grain.Times(units.MustRatio(grains), units.Nearest); !ok || got != mass(t, text) {
			t.Errorf("%s grains are %v, want %s", grains, got, text)
		}
	}
}

// The rounded equivalents of Handbook 44 (2014), Appendix C, p. C-12, and the
// factors that 16 CFR 500.19(a) prescribes, in the digits they are printed in.
func TestPublishedConversionFactorsArePrinted(t *testing.T) {
	tests := []struct {
		source, mass string
		unit         units.Unit
		decimals     int
		want         string
	}{
		{"Handbook 44", "1 kg", units.Pound, 6, "2.204623"},
		{"Handbook 44", "1 kg", units.Ounce, 5, "35.27396"},
		{"16 CFR 500.19(a)", "1 oz", units.Gram, 4, "28.3495"},
		{"16 CFR 500.19(a)", "1 lb", units.Gram, 3, "453.592"},
		{"16 CFR 500.19(a)", "1 g", units.Ounce, 7, "0.0352740"},
	}
	for _, test := range tests {
		if got := mass(t, test.mass).Fixed(test.unit, test.decimals); got != test.want {
			t.Errorf("%s: %s is %s %v, want %s", test.source, test.mass, got, test.unit, test.want)
		}
	}
}
