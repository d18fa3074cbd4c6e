package soap_test

import (
	"strings"
	"testing"
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
	if got := found(scentAsWeighed(t, "100 %", "parts", "80 g").batch(t), "dose-unusual"); len(got) != 1 || got[0].Value.PercentText(4) != "8" {
		t.Errorf("%+v", got)
	}
	if got := found(scentAsWeighed(t, "100 %", "parts", "60 g").batch(t), "dose-unusual"); len(got) != 0 {
		t.Errorf("%+v", got)
	}
}

// 40 g in a bar of some 1100 g are beyond a limit of 1 %: while it is not poured the loads
// can be lowered, and afterwards it is kept off skin.
func TestALoadThatIsPouredIsNotLoweredAnyMore(t *testing.T) {
	for stage, want := range map[string]string{"parts": "lower the loads", "moulds": "do not use it on skin"} {
		got := found(scentAsWeighed(t, "1 %", stage, "40 g").batch(t), "fragrance-over-cap")
		if len(got) != 1 || !strings.HasSuffix(got[0].Message(), want+".") || (got[0].Detail == "poured") != (stage == "moulds") {
			t.Errorf("%s: %+v", stage, got)
		}
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
	if got := found(p.with("weighed", `{"stage": "pot", "oils": {"stearic-acid": "150 g"}}`).batch(t), "solid-at-pour"); len(got) != 1 {
		t.Errorf("%+v", got)
	}
}

// A quarter of 1000 g of oils is 250 g: 240 g of salt planned make no salt bar, 260 g do.
func TestASaltBarIsJudgedAsWeighed(t *testing.T) {
	for weighed, want := range map[string]string{"250 g": "", "260 g": "salt"} {
		b := plainFormula().with("superfat", `"22 %"`, "parts", `{"part": "glow", "share": "100 %", "additives": [{"additive": "sea salt", "load": "240 g"}]}`,
			"weighed", `{"stage": "parts", "parts": {"glow": {"additions": {"sea salt": "`+weighed+`"}}}}`).batch(t)
		if got := found(b, "superfat-unusual"); len(got) != 1 || got[0].Detail != want {
			t.Errorf("%s: %+v", weighed, got)
		}
	}
}
