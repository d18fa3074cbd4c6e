package soap_test

import (
	"errors"
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// What takes up no alkali, and an alkali, an acid, water or a metal, is no oil, whatever value is written beside it.
func TestAnOilThatTakesUpNoAlkaliIsRefusedByItsName(t *testing.T) {
	for name, word := range map[string]string{
		"mineral oil": "mineral oil", "liquid paraffin": "paraffin", "Vaseline": "vaseline", "olive squalane": "squalane",
		"cetyl alcohol": "cetyl alcohol", "glycerine": "glycerine", "vegetable glycerin USP": "glycerin",
		"dimethicone": "dimethicone", "ozokerite": "ozokerite", "water": "water", "rose water": "water",
		"NaOH": "sodium-hydroxide", "aluminium powder": "aluminium", "baby oil, hall": "baby oil", "citric acid": "acid",
		"Paraffinum liquidum": "paraffinum", "white petrolatum": "petrolatum", "Silikonöl": "silikonol",
		"huile minérale": "huile minerale",
	} {
		for key, line := range map[string]string{
			"oil":  `{"oil": "` + name + `", "share": "30 %", "saponification": {"low": "185", "high": "195"}}`,
			"name": `{"oil": "jug", "name": "` + name + `", "share": "30 %", "saponification": {"low": "185", "high": "195"}}`,
		} {
			_, faults := read(t, plainFormula().with("oils", line+`, {"oil": "olive", "share": "rest"}`).text())
			if len(faults) != 1 || faults[0].Path != "oils[0]."+key || !errors.Is(faults[0].Kind, soap.ErrConflict) ||
				!strings.Contains(faults[0].Reason, word) {
				t.Errorf("%s: %v, want one that says %s", line, faults, word)
			}
		}
	}
	for _, name := range []string{
		"water lily seed oil", "watermelon", "paraffin-free blend", "blend without squalene", "glyceryl stearate",
		"glycerol stearate", "silica blend", "mineral lantern", "zinc ricinoleate", "olive oil, water washed",
	} {
		_, faults := read(t, plainFormula().with("oils", `{"oil": "`+name+
			`", "share": "100 %", "saponification": {"low": "185", "high": "195"}}`).text())
		if len(faults) > 0 {
			t.Errorf("%s: %v", name, faults)
		}
	}
}

// A wax may take up hardly anything of what its value says: 30 % at 190 in place of half of it, 95, is 70 % × 190.5 +
// 30 % × 95 = 161.85 mg where 0.95 × 190.35 = 180.83 mg of alkali is planned: −11.7 %, and less at the low end of what
// is likely.
func TestAnOilThatIsAWaxByItsNameIsTakenForOne(t *testing.T) {
	for name, want := range map[string]bool{
		"candelilla wax": true, "carnauba wax": true, "soy wax": true, "olive wax": true, "Olivenwachs": true,
		"cire de tournesol": true, "cera lanterna": true, "floral wax jug 2": true, "Rose wax": true,
		"hall blend": false, "wax-free blend": false, "wax-like": false, "blend without wax": false, "waxberry": false,
		"Wachshausen blend": false, "what was left": false,
	} {
		text := `{"oil": "` + name + `", "share": "30 %", "saponification": {"low": "185", "high": "195"}`
		for _, titrated := range []bool{false, true} {
			end := "}"
			if titrated {
				end = `, "measured": true}`
			}
			b := plainFormula().with("oils", text+end+`, {"oil": "olive", "share": "rest"}`).with("superfat", `"5 %"`).batch(t)
			f, slow := finding(b, "superfat-likely-negative", "parts[0]"), finding(b, "wax-reacts-slowly", "oils")
			if got := f.Severity == danger && f.Detail == "wax"; got != (want && !titrated) {
				t.Errorf("%s, titrated %t: %s %q", name, titrated, f.Severity, f.Detail)
			}
			if f.Detail == "wax" && f.Value.Add(units.MustRatio("11.7 %")).Sign() >= 0 {
				t.Errorf("%s: %s %% at the low end, want less than -11.7", name, f.Value.PercentText(2))
			}
			if got := slow.Severity == warning; got != want {
				t.Errorf("%s: wax-reacts-slowly is a %s", name, slow.Severity)
			}
		}
	}
}
