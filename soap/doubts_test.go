package soap_test

import (
	"strings"
	"testing"
)

// Each of two low bottles alone leaves the superfat near zero, both do not. By hand: of 95 parts
// of alkali as KOH each has 47.5; NaOH of 98 in place of 89 % makes 52.303 of them, KOH of 90 in
// place of 70 % makes 61.071: 100 − 113.374 = −13.37 %. NaOH alone is 100 − 99.803 = 0.2 %.
func TestLowPuritiesAreToldTogether(t *testing.T) {
	alkali := func(potash string) string {
		return `{"kind": "sodium-hydroxide", "purity": "89 %", "saponifies": "50 %"}, {"kind": "potassium-hydroxide",
			"purity": "` + potash + `", "saponifies": "50 %"}`
	}
	b := plainFormula().with("alkali", alkali("70 %")).batch(t)
	for _, subject := range []string{"alkali[0]", "alkali[1]"} {
		f := finding(b, "purity-low", subject)
		if f.Severity != warning || f.Detail != "doubts" || f.SuperfatIf.Batch.PercentText(2) != "-13.37" ||
			!strings.Contains(f.Message(), "every other value and purity") {
			t.Errorf("%s: %+v", subject, f)
		}
	}
	b = plainFormula().with("alkali", alkali("90 %")).batch(t)
	if f := finding(b, "purity-low", "alkali[0]"); f.Detail != "" || f.SuperfatIf.Batch.PercentText(1) != "0.2" {
		t.Errorf("alone: %+v", f)
	}
}

// Olive's own 202 and a purity of 94 %, at 8 %: with olive's own 190.5 the superfat is 1 − 0.92 ×
// 217.706/209.656 = 4.47 %, with a bottle of 98 % it is 1 − 0.92 × 98/94 = 4.09 %. Both together
// leave 1 − 0.92 × 1.03840 × 1.04255 = 0.40 %, of which the low end of the ranges is below zero.
func TestAValueAndAPurityAreReplacedTogether(t *testing.T) {
	doubted := func(olive, purity string) pieces {
		return olives(olive, plainCoconut).with("superfat", `"8 %"`, "alkali", `{"kind": "sodium-hydroxide", "purity": "`+
			purity+`"}`)
	}
	b := doubted(`"oil": "olive", "saponification": "202"`, "94 %").batch(t)
	value, purity := finding(b, "saponification-outside", "oils[0]"), finding(b, "purity-low", "alkali[0]")
	if value.Severity != danger || value.Detail != "doubts" || value.SuperfatIf.Batch.PercentText(2) != "0.40" &&
		value.SuperfatIf.Batch.PercentText(2) != "0.4" {
		t.Errorf("the value: %+v %+v", value, value.SuperfatIf)
	}
	if purity.Severity != warning || purity.Detail != "doubts" || !purity.SuperfatIf.Batch.Equal(value.SuperfatIf.Batch) {
		t.Errorf("the purity: %+v", purity)
	}
	b = doubted(`"oil": "olive", "saponification": "202"`, "98 %").batch(t)
	if f := finding(b, "saponification-outside", "oils[0]"); f.Severity != warning || f.Detail != "" ||
		f.SuperfatIf.Batch.PercentText(2) != "4.47" {
		t.Errorf("the value alone: %+v", f)
	}
	b = doubted(plainOlive, "94 %").batch(t)
	if f := finding(b, "purity-low", "alkali[0]"); f.Severity != warning || f.Detail != "" ||
		f.SuperfatIf.Batch.PercentText(2) != "4.09" {
		t.Errorf("the purity alone: %+v", f)
	}
}

// A lot that was titrated keeps its own advice beside one that was not.
func TestATitratedLotKeepsItsAdvice(t *testing.T) {
	b := olives(`"oil": "olive", "saponification": {"low": "204", "high": "206"}, "measured": true`,
		`"oil": "coconut", "saponification": "285"`).with("superfat", `"8 %"`).batch(t)
	f := finding(b, "saponification-outside", "oils[0]")
	if message := f.Message(); f.Severity != warning || f.Detail != "measured-together" || !strings.Contains(message,
		"be sure of the titration") || !strings.Contains(message, "the others like it") {
		t.Errorf("%+v: %s", f, message)
	}
	if f = finding(b, "saponification-outside", "oils[1]"); f.Severity != danger || f.Detail != "together" {
		t.Errorf("beside it: %+v", f)
	}
}

// A certificate prints 87 to 104 of all the esters of beeswax, whose acids alone need 17 and which
// is planned at the middle, 60.5. By hand, 30 % at 95 beside 70 % of coconut (254.354): alkali for
// 0.95 × (28.5 + 178.048) = 196.22; with 60.5 the oils take up 18.15 + 178.048 = 196.198: 0.0 %,
// and 196.22/183.148 = −7.1 % at 17; coconut's own low end of 248 would make it −9.8 %. With 5 % of wax it is 1 − 0.95
// × 246.386/244.661 = 4.3 %.
func TestACertifiedWaxMayStayAsItIs(t *testing.T) {
	value := `"saponification": {"low": "87", "typical": "95", "high": "102"}`
	for _, test := range []struct {
		wax, share string
		found      bool
	}{
		{`"oil": "beeswax", ` + value, "30 %", true},
		{`"oil": "Beeswax", ` + value, "30 %", true},
		{`"oil": "bees wax", ` + value, "30 %", true},
		{`"oil": "Bienenwachs", ` + value, "30 %", true},
		{`"oil": "lot-7", "name": "Beeswax", ` + value, "30 %", true},
		{`"oil": "beeswax", "saponification": "95"`, "30 %", true},
		{`"oil": "beeswax", "measured": true, ` + value, "30 %", false},
		{`"oil": "beeswax", ` + value, "5 %", false},
		{`"oil": "yard fat", ` + value, "30 %", false}, // it means none, and is no wax
	} {
		b := plainFormula().with("oils", `{"share": "`+test.share+`", `+test.wax+`}, {"oil": "coconut", "share": "rest"}`,
			"temperature", `{"pour": "40 °C"}`).batch(t)
		f := finding(b, "superfat-likely-negative", "parts[0]")
		if (f.Code != "") != test.found {
			t.Errorf("%s, %s: %v", test.wax, test.share, codes(b.Findings))
		}
		if test.found {
			if low := f.Value.Float(); f.Severity != danger || f.Detail != "wax" || low > -0.0713 || low < -0.0983 ||
				!strings.Contains(f.Message(), "esters of a wax") {
				t.Errorf("%s: %+v: %s", test.wax, f, f.Message())
			}
			if solid := found(b, "solid-at-pour"); len(solid) != 1 || solid[0].Value.Text(0) != "66" ||
				len(found(b, "wax-reacts-slowly")) != 1 {
				t.Errorf("%s: %v", test.wax, codes(b.Findings))
			}
		}
	}
}

// Stearic acid seizes and sets under every name that it has, with a value of the maker's own.
func TestAnOwnValueLeavesAnAcidSolid(t *testing.T) {
	for name, want := range map[string]int{"stearic-acid-50": 1, "stearic-acid": 1, "Stearinsäure": 1, "yard acid": 0} {
		b := plainFormula().with("oils", `{"oil": "`+name+
			`", "share": "70 %", "saponification": {"low": "205", "high": "210"}}, {"oil": "olive", "share": "rest"}`,
			"temperature", `{"pour": "40 °C"}`).batch(t)
		if got := found(b, "solid-at-pour"); len(got) != want || want == 1 && got[0].Detail != "acids" {
			t.Errorf("%s: %v", name, codes(b.Findings))
		}
	}
}
