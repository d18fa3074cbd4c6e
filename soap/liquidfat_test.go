package soap_test

import (
	"testing"

	"example.com/lyewright/soap"
)

// Lye of 32 % for olive 70 and coconut 30 (190.5 × 0.7 + 254.354 × 0.3 = 209.66 mg KOH/g), 1000 g.
func lyeFor(extra ...string) pieces {
	return plainFormula().with("oils", `{"oil": "olive", "share": "70 %"}, {"oil": "coconut", "share": "30 %"}`).
		with("superfat", `"5 %"`).with("water", `{"lye_concentration": "32 %"}`).with(extra...)
}

// Of milk fat 205 to 235 is published: 202.95 and 237.35 with a percent. Others are held against 155 and 290. Above is
// a warning and below a note, but for 120 to 150, which may be mg of NaOH (FORMULA.md, Amendments).
func TestTheFatOfALiquidIsHeldAgainstWhatIsPublished(t *testing.T) {
	for _, test := range []struct {
		name, value, code string
		severity          soap.Severity
	}{
		{"cream", "440", "saponification-outside", danger},
		{"goat milk", "237.35", "", soap.Note},
		{"goat milk", "237.36", "saponification-outside", warning},
		{"lait entier", "202.95", "", soap.Note},
		{"Milch", "202.94", "saponification-outside", soap.Note},
		{"Milch", "151", "saponification-outside", soap.Note},
		{"Milch", "150", "saponification-outside", warning},
		{"Milch", "120", "saponification-outside", warning},
		{"Milch", "119", "saponification-outside", soap.Note},
		{"coconut milk", "290", "", soap.Note},
		{"coconut milk", "290.1", "saponification-unusual", warning},
		{"hall brew", "440", "saponification-unusual", warning},
		{"hall brew", "155", "", soap.Note},
		{"hall brew", "154.9", "saponification-unusual", soap.Note},
	} {
		fat := "4 %"
		if test.severity == danger {
			fat = "35 %"
		}
		b := lyeFor("water", `{"lye_concentration": "32 %", "liquids": [{"liquid": "`+test.name+
			`", "share": "50 %", "water": "60 %", "fat": "`+fat+`", "saponification": "`+test.value+`"}]}`).batch(t)
		for _, code := range []string{"saponification-outside", "saponification-unusual"} {
			f := finding(b, code, "water.liquids[0]")
			if (f.Code != "") != (code == test.code) || f.Code != "" && f.Severity != test.severity {
				t.Errorf("%s at %s: %s is %q, a %s", test.name, test.value, code, f.Code, f.Severity)
			}
		}
	}
}

// 20 g of vinegar taken for pure: alkali for 20/60.052 = 0.33305 mol, and vinegar of 5 % takes up 0.01665 mol. The
// rest is 0.3164 × 56.105 = 17.75 g of KOH, 8.47 % of the 209.66 g that the oils take up: 5 − 8.47 = −3.47 %. 10 g of
// lactic acid of 91 % that has 80 % are 1.1 g less, 1.1/90.078 × 56.105 = 0.685 g of KOH, 0.33 %: 5 − 0.33 = 4.67 %.
func TestAVinegarStrongerThanIsSoldIsADangerWhereItBurns(t *testing.T) {
	for _, test := range []struct {
		name, strength, load, superfat string
		severity                       int
	}{
		{"vinegar", "100 %", "2 %", "-3.47", 2},
		{"vinegar", "10 %", "2 %", "", -1},
		{"vinegar", "10.1 %", "0.1 %", "", 1},
		{"acetic-acid", "100 %", "2 %", "", -1},
		{"lactic acid", "90 %", "1 %", "", -1},
		{"lactic acid", "91 %", "1 %", "4.67", 1},
	} {
		b := lyeFor("acids", `{"acid": "`+test.name+`", "load": "`+test.load+` of oils", "strength": "`+test.strength+
			`", "compensate": true}`).batch(t)
		severity, superfat := -1, ""
		for _, f := range b.Findings {
			if f.Code == "acid-unusual" && f.Detail == "strength" {
				severity, superfat = int(f.Severity), f.SuperfatIf.Batch.PercentFixed(2)
			}
		}
		if severity != test.severity || test.superfat != "" && superfat != test.superfat {
			t.Errorf("%s %s: severity %d, superfat %s; want %d, %s", test.name, test.strength, severity, superfat,
				test.severity, test.superfat)
		}
	}
}
