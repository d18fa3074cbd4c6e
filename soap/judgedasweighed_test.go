package soap_test

import (
	"strings"
	"testing"

	"example.com/lyewright/units"
)

// scentAsWeighed is a part "glow" of 1000 g of oils with 40 g of a fragrance planned, of which so
// much was weighed.
func scentAsWeighed(t *testing.T, limit, stage, weighed string) pieces {
	t.Helper()
	return plainFormula().with("materials", pear(limit), "parts", scentedWith(smell("pear", "40 g")),
		"weighed", `{"stage": "`+stage+`", "parts": {"glow": {"additions": {"pear": "`+weighed+`"}}}}`)
}

// 80 g of 1000 g of oils are 8 %, above 6 %, though 4 % were planned; 60 g are 6 %.
func TestADoseIsJudgedAsWeighed(t *testing.T) {
	if got := found(scentAsWeighed(t, "100 %", "parts", "80 g").batch(t), "dose-unusual"); len(got) != 1 ||
		got[0].Value.PercentText(4) != "8" {
		t.Errorf("%+v", got)
	}
	if got := found(scentAsWeighed(t, "100 %", "parts", "60 g").batch(t), "dose-unusual"); len(got) != 0 {
		t.Errorf("%+v", got)
	}
}

// 40 g in a bar of some 1100 g are beyond a limit of 1 %. Before it is in the batter the load can be lowered, and
// when the lye is not joined yet nothing is in any batter. What is in can be thinned while some batter is left,
// and is kept off skin when it is poured.
func TestTheRemedyOfATooHighLoadIsThatOfItsStage(t *testing.T) {
	planned := func() pieces {
		return plainFormula().with("materials", pear("1 %"), "parts", scentedWith(smell("pear", "40 g")))
	}
	for name, row := range map[string]struct {
		formula    pieces
		detail     string
		says, ends string
	}{
		"the plan":         {planned(), "", "", "lower the loads."},
		"the lye is mixed": {scentAsWeighed(t, "1 %", "lye", "40 g"), "", "", "lower the loads."},
		"in parts, not yet in": {
			planned().with("weighed", `{"stage": "parts", "water": "280 g"}`), "", "",
			"lower the loads.",
		},
		"in the pot, and in it": {
			scentAsWeighed(t, "1 %", "pot", "40 g"), "weighed", "add no more",
			"else do not use it on skin.",
		},
		"in parts, and in one": {
			scentAsWeighed(t, "1 %", "parts", "40 g"), "weighed", "where batter without it is left",
			"else do not use it on skin.",
		},
		"in moulds": {
			scentAsWeighed(t, "1 %", "moulds", "40 g"), "poured", "it is poured",
			"do not use it on skin.",
		},
		"in moulds, as is planned": {
			planned().with("weighed", `{"stage": "moulds", "water": "280 g"}`), "poured",
			"it is poured", "do not use it on skin.",
		},
	} {
		got := found(row.formula.batch(t), "fragrance-over-cap")
		if len(got) != 1 || got[0].Detail != row.detail || !strings.Contains(got[0].Message(), row.says) ||
			!strings.HasSuffix(got[0].Message(), row.ends) {
			t.Errorf("%s: %+v", name, got)
		}
		if len(got) == 1 && strings.Contains(got[0].Message(), "lower the loads") != (row.detail == "") {
			t.Errorf("%s: %s", name, got[0].Message())
		}
	}
}

// 190 g × 0.95 × 39.997/56.105/0.9995 = 128.7 g of alkali are planned for 5 %, so that 90 g as weighed leave
// 1 − 0.95 × 90/128.7, 33.6 %. The same figure as a plan is likely a slip; only of a promise that a scale of 50 g lets
// hardly keep is it said that it comes of the worst case.
func TestAHugeSuperfatIsToldByWhatLeadsToIt(t *testing.T) {
	for name, row := range map[string]struct {
		formula     pieces
		detail      string
		says, never string
	}{
		"as weighed": {
			plainFormula().with("weighed", `{"stage": "pot", "alkali": {"sodium-hydroxide": "90 g"}}`), "weighed",
			"As weighed, the superfat of", "worst case",
		},
		"as planned": {plainFormula().with("superfat", `"50 %"`), "", "Look for a slipped point.", "worst case"},
		"as promised": {
			plainFormula().with("superfat", `{"at_least": "2 %"}`, "scale", `{"oils": "50 g", "small": "50 g"}`), "at-least",
			"A worst case asked for on a coarse scale can lead here.", "slipped",
		},
	} {
		got := found(row.formula.batch(t), "superfat-unusual")
		if len(got) != 1 || got[0].Value.Compare(units.Percent(30)) <= 0 || got[0].Detail != row.detail {
			t.Fatalf("%s: %+v", name, got)
		}
		if text := got[0].Message(); !strings.Contains(text, row.says) || strings.Contains(text, row.never) {
			t.Errorf("%s: %s", name, text)
		}
	}
	// On the other side of the limits: 5 % as planned is usual, and so it is as weighed.
	if got := found(plainFormula().with("weighed", `{"stage": "pot", "water": "280 g"}`).batch(t),
		"superfat-unusual"); len(got) != 0 {
		t.Errorf("%+v", got)
	}
}

// Of 1000 g of oils 100 g of stearic acid are 10 %, the limit; 150 g as weighed are 150 of
// 1050 g.
func TestWhatIsSolidIsJudgedAsWeighed(t *testing.T) {
	p := plainFormula().with("oils", `{"oil": "olive", "mass": "900 g"}, {"oil": "stearic-acid", "mass": "100 g"}`)
	delete(p, "size")
	if got := found(p.batch(t), "solid-at-pour"); len(got) != 0 {
		t.Errorf("%+v", got)
	}
	if got := found(p.with("weighed", `{"stage": "pot", "oils": {"stearic-acid": "150 g"}}`).batch(t),
		"solid-at-pour"); len(got) != 1 {
		t.Errorf("%+v", got)
	}
}

// A quarter of 1000 g of oils is 250 g: 240 g of salt planned make no salt bar, 260 g do.
func TestASaltBarIsJudgedAsWeighed(t *testing.T) {
	for weighed, want := range map[string]string{"250 g": "weighed", "260 g": "salt"} {
		b := plainFormula().with("superfat", `"22 %"`, "parts",
			`{"part": "glow", "share": "100 %", "additives": [{"additive": "sea salt", "load": "240 g"}]}`,
			"weighed", `{"stage": "parts", "parts": {"glow": {"additions": {"sea salt": "`+weighed+`"}}}}`).batch(t)
		if got := found(b, "superfat-unusual"); len(got) != 1 || got[0].Detail != want {
			t.Errorf("%s: %+v", weighed, got)
		}
	}
}
