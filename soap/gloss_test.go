package soap_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"example.com/lyewright/colour/tint"
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// A reading with the gloss "included" holds the 4 % that the surface reflects before any light
// enters, one with it "excluded" does not. By hand, for 0.04 outside and 0.6 inside, what
// absorbs Q times what it scatters reflects R = 1 + Q − √(Q² + 2Q) inside, and reads
// T = 0.96 × 0.4 × R/(1 − 0.6 R), and 0.04 + T with the gloss:
//
//	base                  Q = 0.25                   R = 0.5         T = 0.274286
//	1 % of a white        Q = (0.25 + 0.05)/2 = 0.15 R = 0.582109    T = 0.343504
//	3 %                   Q = (0.25 + 0.15)/4 = 0.1  R = 0.641742    T = 0.400727
//	20 %, not read        Q = (0.25 + 1)/21          R = 0.709394    T = 0.474277
//
// Of a bar that reads 3 % the gloss cannot be in it: that is refused. Left out, it is included. Taken for the other
// kind the readings give other constants, and another prediction.
func TestTheGlossOfAFileIsTakenAsItIsWritten(t *testing.T) {
	for _, row := range []struct {
		written string
		gloss   float64
	}{{`, "gloss": "included"`, 0.04}, {`, "gloss": "excluded"`, 0}, {"", 0.04}} {
		swatch := func(loads string, through float64) string {
			reading := strconv.FormatFloat(row.gloss+through, 'f', 6, 64)
			return `{"swatch": "lantern` + loads + `"` + loaded(loads) + `, "reflectance": [` + reading +
				strings.Repeat(", "+reading, 30) + `]}`
		}
		s, _, err := soap.ParseSwatches([]byte(`{"name": "lanterns", "bands": {"from": "400 nm", "step": "10 nm"},
			"surface": {"outside": 0.04, "inside": 0.6` + row.written + `}, "read": [` +
			swatch("", 0.2742857) + "," + swatch("1", 0.3435040) + "," + swatch("3", 0.4007273) + `]}`))
		if err != nil {
			t.Fatal(err)
		}
		black := strings.Repeat(", 0.03", 30)
		dark, _, err := soap.ParseSwatches([]byte(`{"name": "lanterns", "bands": {"from": "400 nm", "step": "10 nm"}, "surface": {"outside": 0.04, "inside": 0.6` +
			row.written + `}, "read": [{"swatch": "plain", "reflectance": [0.03` + black + `]}]}`))
		refused := err != nil
		if err == nil {
			refused = dark.CheckEach() != nil
		}
		if refused != (row.gloss > 0) {
			t.Errorf("%q: a reading of 3 %% is refused: %v", row.written, refused)
		}
		s.White = "titanium-dioxide"
		c, err := s.Calibrate()
		if err != nil {
			t.Fatal(err)
		}
		got, err := c.Predict([]tint.Load{{Colourant: "titanium-dioxide", OfBatter: units.MustRatio("20 %")}})
		if err != nil {
			t.Fatal(err)
		}
		if want := row.gloss + 0.474277; math.Abs(got.Reflectance[15]-want) > 1e-4 {
			t.Errorf("%q: 20 %% of white is read as %.6f, by hand %.6f", row.written, got.Reflectance[15], want)
		}
	}
}

// loaded gives the key of a load of white, none for an empty one.
func loaded(percent string) string {
	if percent == "" {
		return ""
	}
	return `, "loads": {"titanium-dioxide": "` + percent + ` % of batter"}`
}
