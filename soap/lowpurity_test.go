package soap_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// The alkali of a superfat of 5 % is for 0.95 of the demand at the purity given; with the
// bottle at its usual 98 % (KOH 90 %) the superfat is 1 − 0.95 × 98/given. By hand: 89 % is
// −4.61 %, 85 % is −9.53 %, 93 % is −0.11 %, 60 % is −55.17 %; KOH of 80 % is −6.88 %.
func TestALowPurityTellsTheSuperfatAtTheUsualOne(t *testing.T) {
	soda := func(purity string) string { return `{"kind": "sodium-hydroxide", "purity": ` + purity + `}` }
	potash := func(purity string) string { return `{"kind": "potassium-hydroxide", "purity": ` + purity + `}` }
	for _, test := range []struct {
		alkali   string
		severity soap.Severity
		superfat string // empty: not found
	}{
		{soda(`"95.5 %"`), 0, ""},
		{soda(`"95.49 %"`), warning, "2.5"}, // 1 − 0.95 × 98/95.49 = 2.503
		{soda(`"93 %"`), warning, "-0.11"},
		{soda(`"89 %"`), warning, "-4.61"},
		{soda(`"85 %"`), warning, "-9.53"},
		{soda(`"60 %"`), warning, "-55.17"},
		{soda(`{"low": "92 %", "high": "94 %"}`), note, "-0.11"},
		{soda(`{"low": "92 %", "typical": "93 %", "high": "94.01 %"}`), warning, "-0.11"},
		{soda(`{"low": "93 %", "high": "93 %"}`), warning, "-0.11"},
		{soda(`{"low": "91 %", "typical": "95.5 %", "high": "96 %"}`), 0, ""}, // what is planned counts
		{`{"kind": "sodium-hydroxide"}`, 0, ""},
		{`{"kind": "sodium-hydroxide", "stock": {"strength": "49 %"}}`, 0, ""},
		{potash(`"82 %"`), 0, ""},
		{potash(`"81.99 %"`), warning, "-4.28"}, // 1 − 0.95 × 90/81.99
		{potash(`"80 %"`), warning, "-6.88"},
		{potash(`{"low": "79 %", "high": "81 %"}`), note, "-6.88"},
	} {
		f := finding(plainFormula().with("alkali", test.alkali).batch(t), "purity-low", "alkali[0]")
		if (f.Code != "") != (test.superfat != "") || f.Severity != test.severity {
			t.Errorf("%s: %+v", test.alkali, f)
			continue
		}
		if f.SuperfatIf == nil {
			continue
		}
		if got := f.SuperfatIf.Batch.PercentText(2); got != test.superfat {
			t.Errorf("%s: %s %%, by hand %s", test.alkali, got, test.superfat)
		}
		if message := f.Message(); !strings.Contains(message, test.superfat+" %") {
			t.Errorf("%s: %s", test.alkali, message)
		}
	}
}

// Of two alkalis the one that is low is taken at its usual purity, the other stays. By hand:
// of 95 parts of alkali as KOH half are from NaOH, at 98 in place of 89 %: 47.5 × 98/89 + 47.5 =
// 99.803, which leaves 0.2 %. The part whose oil went into a jug comes off worse: of its 190 g
// of demand per 1000 g 10 % were held back in the whole pot, 1 − 99.803/90 = −10.89 %.
func TestALowPurityIsToldOfTheWorstPart(t *testing.T) {
	b := plainFormula().with(
		"alkali", `{"kind": "sodium-hydroxide", "purity": "89 %", "saponifies": "50 %"}, {"kind": "potassium-hydroxide", "purity": "90 %", "saponifies": "50 %"}`,
		"parts", `{"part": "plain", "share": "50 %"}, {"part": "glow", "share": "rest", "colourants": [{"colourant": "dusk",
			"unlisted": true, "load": "50 g", "carrier": {"liquid": "hall-blend", "ratio": "2", "from": "formula"}}]}`,
	).batch(t)
	f := finding(b, "purity-low", "alkali[0]")
	if f.SuperfatIf == nil || f.SuperfatIf.Batch.PercentText(1) != "0.2" || f.SuperfatIf.Part != "plain" ||
		f.SuperfatIf.OfPart.PercentText(2) != "-10.89" {
		t.Errorf("%+v", f.SuperfatIf)
	}
	if message := f.Message(); !strings.Contains(message, `of the part "plain" -10.89 %`) {
		t.Error(message)
	}
}

func TestPotassiumHydroxideAloneMakesNoBar(t *testing.T) {
	for alkali, want := range map[string]bool{
		`{"kind": "potassium-hydroxide", "purity": "90 %"}`: true,
		`{"kind": "sodium-hydroxide", "purity": "98 %"}`:    false,
		`{"kind": "potassium-hydroxide", "purity": "90 %", "saponifies": "95 %"}, {"kind": "sodium-hydroxide", "saponifies": "5 %"}`: false,
		`{"kind": "potassium-hydroxide", "stock": {"strength": "45 %"}}`:                                                             true,
	} {
		f := finding(plainFormula().with("alkali", alkali).batch(t), "potassium-only", "alkali")
		if (f.Code != "") != want || f.Severity != note || want && !strings.Contains(f.Message(), "paste") {
			t.Errorf("%s: %+v", alkali, f)
		}
	}
}

// A promise "never below" rests on ranges: one figure of purity, of a stock's strength, or of
// an acid that alkali is added for, is refused with where a range comes from.
func TestAPromiseNeedsARangeOfEveryBottle(t *testing.T) {
	acid := func(line string) pieces {
		return plainFormula().with("superfat", `{"at_least": "2 %"}`, "acids", `{"load": "1 % of oils", `+line+`}`)
	}
	alkali := func(line string) pieces {
		return plainFormula().with("superfat", `{"at_least": "2 %"}`, "alkali", line)
	}
	for _, test := range []struct {
		p    pieces
		says []string // nil: no fault
	}{
		{alkali(`{"kind": "sodium-hydroxide", "purity": "98 %"}`), []string{
			"sodium-hydroxide", "single figure as its purity",
			"lye titration", "grade", "certificate",
		}},
		{
			alkali(`{"kind": "sodium-hydroxide", "purity": {"low": "98 %", "high": "98 %"}}`),
			[]string{"single figure", "lye titration"},
		},
		{alkali(`{"kind": "sodium-hydroxide", "purity": {"low": "98 %", "high": "98.1 %"}}`), nil},
		{alkali(`{"kind": "sodium-hydroxide"}`), nil}, // 95.5 to 100 %
		{alkali(`{"kind": "sodium-hydroxide", "purity": {"grade": "ph-eur-7", "typical": "98 %"}}`), nil},
		{alkali(`{"kind": "potassium-hydroxide", "purity": "90 %"}`), []string{"potassium-hydroxide", "single figure"}},
		{alkali(`{"kind": "sodium-hydroxide", "stock": {"strength": "49 %"}}`), []string{
			"single figure as its strength",
			"lye titration",
		}},
		{alkali(`{"kind": "sodium-hydroxide", "stock": {"strength": {"low": "48.9 %", "high": "49.1 %"}}}`), nil},
		{
			acid(`"acid": "lactic-acid", "strength": "80 %", "compensate": true`),
			[]string{"lactic-acid", "single figure as its strength"},
		},
		{acid(`"acid": "lactic-acid", "strength": {"low": "79 %", "high": "81 %"}, "compensate": true`), nil},
		{acid(`"acid": "lactic-acid", "strength": "80 %", "compensate": false`), nil},
		{acid(`"acid": "citric-acid-anhydrous", "compensate": true`), nil},
	} {
		_, faults := read(t, test.p.text())
		if test.says == nil {
			if len(faults) > 0 {
				t.Errorf("%s: %v", test.p.text(), faults)
			}
			continue
		}
		if got := paths(faults); !slices.Equal(got, []string{"superfat.at_least"}) || faults[0].Kind != soap.ErrConflict {
			t.Errorf("%s: %v", test.p.text(), faults)
			continue
		}
		for _, says := range test.says {
			if !strings.Contains(faults[0].Error(), says) {
				t.Errorf("%q is not in %v", says, faults[0])
			}
		}
	}
}

// Waxes may not react at all: what kept a promise over them alone was 82 µg of alkali in 710 g
// of batter.
func TestNothingIsPromisedOfWaxesAlone(t *testing.T) {
	for oils, refused := range map[string]bool{
		`{"oil": "beeswax", "share": "100 %"}`:                                    true,
		`{"oil": "beeswax", "share": "60 %"}, {"oil": "jojoba", "share": "rest"}`: true,
		`{"oil": "beeswax", "share": "10 %"}, {"oil": "olive", "share": "rest"}`:  false,
		// an oil, for all that is known
		`{"oil": "hall fat", "saponification": {"low": "90", "high": "95"}, "share": "100 %"}`: false,
		// a wax by its name
		`{"oil": "hall wax", "saponification": {"low": "90", "high": "95"}, "share": "100 %"}`: true,
	} {
		_, faults := read(t, plainFormula().with("oils", oils, "superfat", `{"at_least": "2 %"}`).text())
		if got := len(faults) == 1 && faults[0].Path == "superfat.at_least" && strings.Contains(faults[0].Reason,
			"waxes alone"); got != refused || !refused && len(faults) > 0 {
			t.Errorf("%s: %v", oils, faults)
		}
	}
}

// Of 1000 g of oils 1 g is sure to take up what it demands, 189 mg: 0.13 g of NaOH, which a
// scale of 1 g does not show.
func TestAPromiseThatNoAlkaliKeepsIsRefused(t *testing.T) {
	p := plainFormula().with("superfat", `{"at_least": "2 %"}`, "scale", `{"oils": "1 mg", "small": "1 g"}`,
		"oils", `{"oil": "hall-blend", "share": "0.1 %", "saponification": {"low": "189", "high": "191"}}, {"oil": "jojoba", "share": "rest"}`)
	f, faults := read(t, p.text())
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	_, err := f.Batch()
	if got := faultsOf(t, err); len(got) != 1 || got[0].Path != "superfat.at_least" || got[0].Kind != soap.ErrImpossible {
		t.Error(err)
	}
	p = p.with("oils", `{"oil": "hall-blend", "share": "5 %", "saponification": {"low": "189", "high": "191"}}, {"oil": "jojoba", "share": "rest"}`)
	if b := p.batch(t); b.Alkalis[0].Dry.Weigh.Sign() == 0 {
		t.Errorf("50 g of oil are given %s of alkali", b.Alkalis[0].Dry.Mass)
	}
}

// By hand: 100 g of vinegar with 5 % of acetic acid hold 5 g, which take up 5 × 39.997/60.052 =
// 3.3302 g of NaOH; as pure acid they were given 66.604 g, 63.274 g too much.
func TestVinegarIsNoAcetic(t *testing.T) {
	vinegar := func(rest string) pieces {
		return plainFormula().with("acids", `{"load": "10 % of oils", "compensate": true, `+rest+`}`)
	}
	for _, acid := range []string{"acetic-acid", "lactic-acid"} {
		_, faults := read(t, vinegar(`"acid": "`+acid+`"`).text())
		if got := paths(faults); !slices.Equal(got, []string{"acids[0].strength"}) || faults[0].Kind != soap.ErrMissing ||
			!strings.Contains(faults[0].Remedy, "label") {
			t.Errorf("%s: %v", acid, faults)
		}
	}
	if _, faults := read(t, vinegar(`"acid": "citric-acid-anhydrous"`).text()); len(faults) > 0 {
		t.Error(faults)
	}
	b := vinegar(`"acid": "acetic-acid", "strength": "5 %"`).batch(t)
	if got := b.Acids[0].Takes.Text(units.Gram, 4); got != "3.3302" {
		t.Errorf("vinegar takes up %s g of NaOH, by hand 3.3302", got)
	}
}

// A strength of 4 to 6 % is planned at 5 %. By hand, per 1000 g of oils of 189 to 191 mg/g: at
// worst 100 g of vinegar take up 4 × 56.105/60.052 = 3.7371 g of KOH where alkali for 4.6714 g
// was added, so that 0.9343 g of it is left over; of the 189 g that the oils then take up that
// is 0.494 points. The superfat is lower by as much than with 5 % for certain.
func TestAWeakAcidLeavesItsAlkaliOver(t *testing.T) {
	low := func(strength string) float64 {
		b := plainFormula().with("acids", `{"acid": "acetic-acid", "load": "10 % of oils", "strength": `+strength+
			`, "compensate": true}`).batch(t)
		if got := b.Superfat.Planned.PercentText(6); got != "5" {
			t.Errorf("planned at %s", got)
		}
		return b.Parts[0].Superfat.Low.Float()
	}
	if off := low(`"5 %"`) - low(`{"low": "4 %", "high": "6 %"}`); off < 0.00493 || off > 0.00496 {
		t.Errorf("the worst case is lower by %.5f, by hand 0.00494", off)
	}
	// At the low end for certain it is as low as with the range, planned otherwise.
	b := plainFormula().with("acids", `{"acid": "acetic-acid", "load": "10 % of oils", "strength": {"low": "4 %", "typical": "4.5 %", "high": "6 %"}, "compensate": true}`).batch(t)
	if got := b.Acids[0].Takes.Text(units.Gram, 4); got != "2.9972" { // 4.5 × 39.997/60.052
		t.Errorf("planned at 4.5 %% it takes up %s g", got)
	}
	for strength, path := range map[string]string{
		`{"low": "6 %", "high": "4 %"}`:                    "acids[0].strength",
		`{"low": "6 %"}`:                                   "acids[0].strength",
		`{"low": "0 %", "high": "4 %"}`:                    "acids[0].strength",
		`{"low": "4 %", "typical": "7 %", "high": "6 %"}`:  "acids[0].strength",
		`{"low": "4 %", "high": "100.1 %"}`:                "acids[0].strength",
		`{"low": "4 %", "high": "6 %", "middle": "5.1 %"}`: "acids[0].strength.middle",
		`5`: "acids[0].strength",
	} {
		_, faults := read(t, plainFormula().with("acids", `{"acid": "acetic-acid", "load": "1 g", "strength": `+strength+
			`, "compensate": true}`).text())
		if got := paths(faults); !slices.Equal(got, []string{path}) {
			t.Errorf("%s: %v", strength, faults)
		}
	}
}
