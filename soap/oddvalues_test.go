package soap_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// finding gives the finding of a code about a subject; the zero Finding where there is none.
func finding(b soap.Batch, code, subject string) soap.Finding {
	at := slices.IndexFunc(b.Findings, func(f soap.Finding) bool { return f.Code == code && f.Subject == subject })
	if at < 0 {
		return soap.Finding{}
	}
	return b.Findings[at]
}

// olives is the formula of 70 % of an oil and 30 % of another, at a superfat of 5 %.
func olives(olive, coconut string) pieces {
	return plainFormula().with(
		"oils", `{"share": "70 %", `+olive+`}, {"share": "30 %", `+coconut+`}`,
		"alkali", `{"kind": "sodium-hydroxide", "purity": {"low": "97 %", "high": "99 %"}}`)
}

const (
	plainOlive   = `"oil": "olive"`
	plainCoconut = `"oil": "coconut"`
)

// 250 is typed for olive's 185 to 196. By hand, with olive planned at 190.5 (the middle) and
// coconut at 254.354 mg/g (its own acids, below the middle): the alkali is for 0.7 × 250 + 0.3
// × 254.354 = 251.306 g of KOH in 1000 g of oils, times 0.95, and the oils take up 0.7 ×
// 190.5 + 76.306 = 209.656 g: 1 − 238.741/209.656 = −13.87 %.
func TestAValueFarAboveThePublishedOneIsADanger(t *testing.T) {
	for name, olive := range map[string]string{
		"on the built-in id":         `"oil": "olive", "saponification": "250"`,
		"under another name":         `"oil": "olive", "name": "Lot 7", "saponification": "250"`,
		"as an own oil of that name": `"oil": "Olive oil", "saponification": "250"`,
		"by its name alone":          `"oil": "lot-7", "name": "Olive", "saponification": "250"`,
		"by its name and lot":        `"oil": "olive-lot-7", "saponification": "250"`,
		"by an everyday name":        `"oil": "huile d'olive", "saponification": "250"`,
		"by its INCI name":           `"oil": "lot-7", "inci": "Olea Europaea Fruit Oil", "saponification": "250"`,
		"as it is printed":           `"oil": "lot-7", "name": "Olive oil (virgin and refined)", "saponification": "250"`,
		"by its name, a lot behind":  `"oil": "o", "name": "Olive oil, lot 12", "saponification": "250"`,
		"with a range":               `"oil": "olive", "saponification": {"low": "248", "high": "252"}`,
		"measured without a range":   `"oil": "olive", "saponification": "250", "measured": true`,
	} {
		f := finding(olives(olive, plainCoconut).batch(t), "saponification-outside", "oils[0]")
		if f.Severity != danger || f.SuperfatIf == nil {
			t.Errorf("%s: %+v", name, f)
			continue
		}
		if got := f.SuperfatIf.Batch.PercentText(2); got != "-13.87" {
			t.Errorf("%s: with the published value %s %%, by hand -13.87", name, got)
		}
		if v, l := f.Value.MilligramsPerGramText(3), f.Limit.MilligramsPerGramText(3); v != "250" || l != "196" {
			t.Errorf("%s: %s against %s", name, v, l)
		}
		if !strings.Contains(f.Source.Title, "Pharmaceutical Codex") {
			t.Errorf("%s: held against %+v", name, f.Source)
		}
	}
	// Who titrated a lot and gives its range is warned, and told the same figure.
	lot := olives(`"oil": "olive", "saponification": {"low": "248", "high": "252"}, "measured": true`,
		plainCoconut).batch(t)
	if f := finding(lot, "saponification-outside", "oils[0]"); f.Severity != warning ||
		f.SuperfatIf.Batch.PercentText(2) != "-13.87" || !strings.Contains(f.Message(), "-13.87 %") {
		t.Errorf("titrated: %+v", f)
	}
	// 250 on macadamia, of which only two acids are published: as glycerides they need 194.
	if f := finding(olives(`"oil": "macadamia", "saponification": "250"`, plainOlive).batch(t), "saponification-outside",
		"oils[0]"); f.Severity != danger {
		t.Errorf("macadamia: %+v", f)
	}
}

// Both sides of the triggers: 1 % beyond olive's 185 to 196 is 183.15 and 197.96; the value
// of neem (one sample, planned at 194.9544) is no range, and 3 % off it are 189.1 and 200.803.
// At 30 % of superfat nothing of it is a danger.
func TestAValueMayLieALittleOutsideWhatIsPublished(t *testing.T) {
	for _, test := range []struct {
		oil      string
		severity soap.Severity
		found    bool
	}{
		{`"oil": "olive", "saponification": "197.96"`, 0, false},
		{`"oil": "olive", "saponification": "197.961"`, warning, true},
		{`"oil": "olive", "saponification": "183.15"`, 0, false},
		{`"oil": "olive", "saponification": "183.149"`, note, true},
		{`"oil": "olive", "saponification": "150.001"`, note, true},
		{`"oil": "olive", "saponification": "150"`, warning, true}, // mg of NaOH?
		{`"oil": "olive", "saponification": "120"`, warning, true},
		{`"oil": "olive", "saponification": "119.999"`, note, true},
		{`"oil": "neem", "saponification": "200.8"`, 0, false},
		{`"oil": "neem", "saponification": "200.81"`, warning, true},
		{`"oil": "neem", "saponification": "189.11"`, 0, false},
		{`"oil": "neem", "saponification": "189.1"`, note, true},
		{`"oil": "jojoba", "saponification": "93.1"`, 0, false},
		{`"oil": "jojoba", "saponification": "93.2"`, danger, true}, // published from 0 up: it may not react
		{`"oil": "macadamia", "saponification": "199.7"`, 0, false}, // 193.98 computed, and 3 %
		{`"oil": "macadamia", "saponification": "200"`, warning, true},
		// A composition of one's own: trilaurin, 3 × 56105/639.014 = 263.4; triolein, 190.089
		{`"oil": "olive", "profile": {"C12:0": "100 %"}`, warning, true},
		{`"oil": "olive", "profile": {"C18:1": "100 %"}`, 0, false},
		{`"oil": "Olive oil", "profile": {"C12:0": "100 %"}`, warning, true},
		// Known oils without a word of the maker's own are not held against themselves.
		{plainOlive, 0, false},
		{`"oil": "goose-fat"`, 0, false},
		// 188 to 196 is published of peanut, whose everyday name is groundnut.
		{`"oil": "groundnut oil", "saponification": "197.9"`, 0, false},
		{`"oil": "groundnut oil", "saponification": "198"`, warning, true},
		{`"oil": "yard", "name": "Aceite de girasol", "saponification": "250"`, warning, true}, // of three, all alike
		{`"oil": "yard", "name": "Cooking oil", "saponification": "250"`, 0, false},            // of several, one not held
		// An oil that means none has nothing to be held against but what fats have.
		{`"oil": "yard blend", "saponification": "250"`, 0, false},
	} {
		b := olives(test.oil, plainCoconut).with("superfat", `"40 %"`).batch(t)
		f := finding(b, "saponification-outside", "oils[0]")
		if found := f.Code != ""; found != test.found || f.Severity != test.severity {
			t.Errorf("%s: %v %s, want %v %s", test.oil, found, f.Severity, test.found, test.severity)
		}
		if f.Code != "" && f.Severity == warning && f.Value.Compare(f.Limit) < 0 && !strings.Contains(f.Message(), "NaOH") {
			t.Errorf("%s: %s", test.oil, f.Message())
		}
	}
}

// Either of two values alone would leave the likely low above zero, both do not. By hand, per
// 1000 g of oils at 8 %: alkali for 0.92 × (0.7 × 205 + 0.3 × 285) = 210.68 g of KOH; with
// olive's own 190.5 the oils take up 218.85 (3.73 %), with coconut's 254.354 they take up
// 219.806 (4.15 %), with both 209.656: −0.49 %.
func TestSeveralValuesAreReplacedTogether(t *testing.T) {
	b := olives(`"oil": "olive", "saponification": "205"`, `"oil": "coconut", "saponification": "285"`).with("superfat",
		`"8 %"`).batch(t)
	for _, subject := range []string{"oils[0]", "oils[1]"} {
		f := finding(b, "saponification-outside", subject)
		if f.Severity != danger || f.SuperfatIf.Batch.PercentText(2) != "-0.49" || !strings.Contains(f.Message(),
			"the others like it") {
			t.Errorf("%s: %+v", subject, f)
		}
	}
	for olive, coconut := range map[string]string{
		`"oil": "olive", "saponification": "205"`: plainCoconut,
		plainOlive: `"oil": "coconut", "saponification": "285"`,
	} {
		b := olives(olive, coconut).with("superfat", `"8 %"`).batch(t)
		for _, f := range b.Findings {
			if f.Severity == danger {
				t.Errorf("%s, %s: %s", olive, coconut, f.Message())
			}
		}
	}
	// One far too high is not hidden by one that is too low: alkali for 0.95 × (175 + 45) = 209
	// g, and if the low one is right the oils take up 133.35 + 45 = 178.35 g: −17.19 %.
	b = olives(`"oil": "olive", "saponification": "250"`, `"oil": "coconut", "saponification": "150"`).batch(t)
	if f := finding(b, "saponification-outside", "oils[0]"); f.Severity != danger ||
		f.SuperfatIf.Batch.PercentText(2) != "-17.19" {
		t.Errorf("the high one: %+v", f)
	}
	if f := finding(b, "saponification-outside", "oils[1]"); f.Severity != warning {
		t.Errorf("the low one: %+v", f)
	}
}

// The figure is the batch's own: a formula with the published value in which the same
// masses were weighed comes to the same planned figure, and to the same likely low but for what
// a milligram of rounding does.
func TestTheSuperfatWithThePublishedValueIsThatOfTheBatch(t *testing.T) {
	parts := `{"part": "plain", "share": "50 %"}, {"part": "glow", "share": "rest", "colourants": [{"colourant": "dusk",
		"unlisted": true, "load": "1 % of oils", "carrier": {"liquid": "olive", "ratio": "3", "from": "formula"}}]}`
	doubted := olives(`"oil": "olive", "saponification": "215"`, plainCoconut).with("parts", parts).batch(t)
	f := finding(doubted, "saponification-outside", "oils[0]")
	if f.SuperfatIf == nil {
		t.Fatal(codes(doubted.Findings))
	}
	alkali, water := doubted.Alkalis[0].Dry.Mass.Text(units.Gram, 9), doubted.Water.Mass.Text(units.Gram, 9)
	true := olives(plainOlive, plainCoconut).with("parts", parts, "weighed",
		`{"stage": "pot", "alkali": {"sodium-hydroxide": "`+alkali+` g"}, "water": "`+water+` g"}`).batch(t)
	worst := true.Weighed.Parts[0]
	if worst.Superfat.LikelyLow.Compare(true.Weighed.Parts[1].Superfat.LikelyLow) > 0 {
		t.Fatal("the part whose oil went into a jug has the less alkali to fear")
	}
	near := func(what string, got, want units.Ratio) {
		if !within(ratioFrac(got), ratioFrac(want), frac("0.00001")) {
			t.Errorf("%s: %s, as weighed %s", what, got, want)
		}
	}
	if f.SuperfatIf.Part != "plain" {
		t.Errorf("the worst part is %q", f.SuperfatIf.Part)
	}
	near("batch", f.SuperfatIf.Batch, true.Weighed.Superfat.Planned)
	near("part", f.SuperfatIf.OfPart, worst.Superfat.Planned)
	near("likely low", f.SuperfatIf.LikelyLow, worst.Superfat.LikelyLow)
	if !strings.Contains(f.Message(), `"plain"`) {
		t.Error(f.Message())
	}
}

// What was really weighed is judged: the plan with 210 is safe at 12 %, the alkali is not.
func TestAValueIsJudgedByWhatWasWeighed(t *testing.T) {
	odd := olives(`"oil": "olive", "saponification": "210"`, plainCoconut).with("superfat", `"14 %"`)
	if f := finding(odd.batch(t), "saponification-outside", "oils[0]"); f.Severity != warning {
		t.Fatalf("as planned: %+v", f)
	}
	odd = odd.with("weighed", `{"stage": "pot", "alkali": {"sodium-hydroxide": "150 g"}}`)
	// 150 × 0.98 × 56.105/39.997 = 206.2 of 209.656 g: 1.65 %, less 3 %
	f := finding(odd.batch(t), "saponification-outside", "oils[0]")
	if f.Severity != danger || f.SuperfatIf.Batch.PercentText(2) != "1.65" {
		t.Errorf("as weighed: %+v", f)
	}
}

func TestAnOwnOilThatMeansNoneIsHeldAgainstWhatFatsHave(t *testing.T) {
	for _, test := range []struct {
		oil      string
		severity soap.Severity
		found    bool
	}{
		{`"oil": "yard blend", "saponification": "290"`, 0, false},
		{`"oil": "yard blend", "saponification": "290.1"`, warning, true},
		{`"oil": "yard blend", "saponification": "420"`, warning, true},
		{`"oil": "yard blend", "saponification": "155"`, 0, false},
		{`"oil": "yard blend", "saponification": "154.9"`, note, true},
		{`"oil": "yard blend", "saponification": "135"`, note, true},
		{`"oil": "olive", "saponification": "290.1"`, 0, false}, // outside, and not unusual
		{`"oil": "beeswax"`, 0, false},
		// tricaprylin, 3 × 56105/470.69 = 357.6
		{`"oil": "yard blend", "profile": {"C8:0": "100 %"}`, warning, true},
	} {
		b := olives(test.oil, plainCoconut).with("superfat", `"40 %"`).batch(t)
		f := finding(b, "saponification-unusual", "oils[0]")
		if found := f.Code != ""; found != test.found || f.Severity != test.severity {
			t.Errorf("%s: %v %s, want %v %s", test.oil, found, f.Severity, test.found, test.severity)
		}
	}
}

// "measured" is said of a value, and of nothing else.
func TestMeasuredNeedsAValue(t *testing.T) {
	for oil, want := range map[string]string{
		`"oil": "olive", "measured": true`:                                     "oils[0].measured",
		`"oil": "olive", "profile": {"C18:1": "100 %"}, "measured": true`:      "oils[0].measured",
		`"oil": "olive", "measured": "yes"`:                                    "oils[0].measured",
		`"oil": "olive", "measured": false`:                                    "",
		`"oil": "olive", "saponification": "190", "measured": true`:            "",
		`"oil": "yard", "saponification": "0.19", "measured": true`:            "oils[0].saponification",
		`"oil": "olvie", "saponification": {"low": "190"}, "measured": true`:   "oils[0].saponification",
		`"oil": "yard blend", "saponification": "190 mg/g", "measured": false`: "",
	} {
		_, faults := read(t, olives(oil, plainCoconut).text())
		var want1 []string
		if want != "" {
			want1 = []string{want}
		}
		if got := paths(faults); !slices.Equal(got, want1) {
			t.Errorf("%s: %v, want %v", oil, faults, want1)
		}
	}
}

// A composition of the maker's own has no publication behind it.
func TestAnOwnCompositionCitesNobody(t *testing.T) {
	b := olives(`"oil": "olive", "profile": {"C18:1": "100 %"}`, plainCoconut).batch(t)
	oil := b.Oils[0].Oil
	for what, source := range map[string]string{
		"value":       oil.ValueSource().String(),
		"composition": oil.ProfileSource().String(),
	} {
		if strings.Contains(source, "Pharmacopoeia") || strings.Contains(source, "Codex") ||
			strings.Contains(source, "monograph") {
			t.Errorf("the %s of an own composition: %s", what, source)
		}
	}
	for _, f := range b.Findings {
		if f.Subject == "oils[0]" && f.Code != "saponification-outside" && f.Source.Title != "" {
			t.Errorf("%s cites %s", f.Code, f.Source)
		}
	}
}
