package soap_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/soap"
)

// 250 is typed for 70 % of an oil, beside 30 % of coconut (planned at 254.354): the alkali is for 0.95 × (175 + 76.306)
// = 238.741 g of KOH in 1000 g of oils. With the value that the oil is planned at in this table in its place, v, the
// oils take up 0.7 v + 76.306 g. Olive 190.5: 209.656 g, −13.87 %. Palm 198.6756: 215.379 g, −10.85 %. High-oleic
// sunflower 188: 207.906 g, −14.83 %. Shea 177.5: 200.556 g, −19.04 %. Canola 187.5: 207.556 g, −15.02 %. Of two oils
// the lower counts: high-erucic rapeseed 174.5: 198.456 g, −20.30 %.
func TestAnOilThatIsSoldUnderWordsOfTheTradeIsHeldAgainstThatOil(t *testing.T) {
	for name, want := range map[string]struct{ limit, superfat string }{
		"Olive oil (organic)":          {"196", "-13.87"},
		"olive oil refined":            {"196", "-13.87"},
		"Organic, cold-pressed olive":  {"196", "-13.87"},
		"Olive oil, food grade, 5 l":   {"196", "-13.87"},
		"Bio Olivenöl nativ":           {"196", "-13.87"},
		"huile d'olive vierge bio":     {"196", "-13.87"},
		"Olive oil (organic), lot 12":  {"196", "-13.87"},
		"olive-organic":                {"196", "-13.87"},
		"palm oil RSPO":                {"209", "-10.85"},
		"RSPO palm oil, refined":       {"209", "-10.85"},
		"sunflower oil (high oleic)":   {"194", "-14.83"},
		"organic high oleic sunflower": {"194", "-14.83"},
		"Shea butter, refined":         {"195", "-19.04"},
		"Canola oil (high oleic)":      {"193", "-15.02"}, // no oil of its own here
		"Rapeseed oil":                 {"193", "-20.30"}, // low-erucic, 182 to 193, or high-erucic, 168 to 181
		"Rapeseed oil, cold pressed":   {"193", "-20.30"},
		"Oliv oil":                     {"196", "-13.87"},
		"Oliv oil (organic)":           {"196", "-13.87"},
		"plam oil":                     {"209", "-10.85"},
	} {
		for _, line := range []string{`"oil": "` + name + `", `, `"oil": "the-lot", "name": "` + name + `", `} {
			b := olives(line+`"saponification": {"low": "249", "high": "251"}`, plainCoconut).batch(t)
			f := finding(b, "saponification-outside", "oils[0]")
			if f.Severity != danger || f.SuperfatIf == nil {
				t.Errorf("%s: %+v", line, f)
				continue
			}
			limit, superfat := f.Limit.MilligramsPerGramText(3), f.SuperfatIf.Batch.PercentFixed(2)
			if limit != want.limit || superfat != want.superfat {
				t.Errorf("%s against %s, superfat %s; want %s, %s", line, limit, superfat, want.limit, want.superfat)
			}
		}
	}
}

// What it was held against stands in the finding: a name that is only near, and each oil that the name may mean.
func TestTheFindingSaysWhichOilAValueWasHeldAgainst(t *testing.T) {
	for name, want := range map[string]struct {
		names []string
		text  string
	}{
		"Oliv oil": {
			[]string{"Oliv oil", "Olive oil (virgin and refined)"},
			`Olive oil (virgin and refined), which "Oliv oil" is taken for by its letters`,
		},
		"Rapeseed oil": {
			[]string{"Rapeseed oil", "Rapeseed oil, low erucic acid (canola)", "Rapeseed oil (high erucic)"},
			"each oil that the name may mean",
		},
		"palm RSPO": {[]string{"palm RSPO", "Palm oil"}, "what is published of Palm oil, 209"},
	} {
		b := olives(`"oil": "`+name+`", "saponification": "250"`, plainCoconut).batch(t)
		f := finding(b, "saponification-outside", "oils[0]")
		if !slices.Equal(f.Names, want.names) || !strings.Contains(f.Message(), want.text) {
			t.Errorf("%q, %s", f.Names, f.Message())
		}
	}
}

// Both sides of the triggers. Of two oils the ends are those of both, each with its percent: 168 × 0.99 = 166.32, 193
// × 1.01 = 194.93. Of what is published of olive, 185 to 196: 183.15 and 197.96.
func TestANameOfTwoOilsIsHeldAgainstWhatIsPublishedOfBoth(t *testing.T) {
	for _, test := range []struct {
		oil, value string
		severity   soap.Severity
		limit      string // empty: no finding
	}{
		{"Rapeseed oil", "194.93", 0, ""},
		{"Rapeseed oil", "194.94", warning, "193"},
		{"Rapeseed oil", "183", 0, ""}, // above that of one, within that of the other
		{"Rapeseed oil", "166.32", 0, ""},
		{"Rapeseed oil", "166.31", note, "168"},
		{"Olive, organic", "197.96", 0, ""},
		{"Olive, organic", "197.97", warning, "196"},
		{"Olive, organic", "183.14", note, "185"},
		{"Oliv oil", "197.96", 0, ""},
		{"Oliv oil", "197.97", warning, "196"},
		// What is known and not held, what may mean something that is not held, and words that
		// change the value are held against nothing.
		{"Organic marula oil", "250", 0, ""},
		{"cooking oil, refined", "250", 0, ""},
		{"organic palm kernel fat", "275", 0, ""},
		{"rice bran wax, refined", "250", 0, ""},
		{"olive leaf, organic", "250", 0, ""},
		{"fractionated coconut oil, RBD", "289", 0, ""},
		{"organic fair trade", "250", 0, ""},
		{"hall blend, refined", "250", 0, ""},
	} {
		line := `"oil": "` + test.oil + `", "saponification": "` + test.value + `"`
		b := olives(line, plainCoconut).with("superfat", `"40 %"`).batch(t)
		f := finding(b, "saponification-outside", "oils[0]")
		limit := ""
		if f.Code != "" {
			limit = f.Limit.MilligramsPerGramText(3)
		}
		if f.Severity != test.severity || limit != test.limit {
			t.Errorf("%s: %s, against %q; want %s, %q", line, f.Severity, limit, test.severity, test.limit)
		}
	}
}

// Beeswax stays a wax by whatever words it is sold.
func TestAWaxStaysOneUnderWordsOfTheTrade(t *testing.T) {
	for _, name := range []string{"Beeswax", "Organic beeswax", "beeswax (refined, cosmetic grade)"} {
		value := `"saponification": {"low": "87", "high": "102"}`
		oil := oilOf(t, `{"oil": "lot", "name": "`+name+`", "share": "100 %", `+value+`}`)
		if oil.Kind() != soap.Wax {
			t.Errorf("%s is a %s", name, oil.Kind())
		}
	}
}

// An own oil that is called by a name of one built-in oil puts its value in place of the built-in one, as one
// on the id does. One that only bears such a name does not, nor one whose name means several or is near.
func TestAnOwnOilCalledByTheNameOfABuiltInOneReplacesItsValue(t *testing.T) {
	for oil, names := range map[string][]string{
		`"oil": "Olive oil"`: {"Olive oil", "Olive oil (virgin and refined)"},
		`"oil": "Olive"`:     {"Olive", "Olive oil (virgin and refined)"},
		`"oil": "Huile d'olive", "name": "From the hall"`: {"From the hall", "Olive oil (virgin and refined)"},
		`"oil": "olive"`:                       {"Olive oil (virgin and refined)"},
		`"oil": "lot-12", "name": "Olive oil"`: nil,
		`"oil": "Rapeseed oil"`:                nil,
		`"oil": "Oliv oil"`:                    nil,
		`"oil": "hall blend"`:                  nil,
	} {
		b := olives(oil+`, "saponification": {"low": "186", "high": "190"}`, plainCoconut).batch(t)
		f := finding(b, "saponification-replaced", "oils[0]")
		if !slices.Equal(f.Names, names) {
			t.Errorf("%s: %q, want %q", oil, f.Names, names)
		}
		said := strings.Contains(f.Message(), "in place of the built-in 185 to 196")
		if names != nil && (f.Severity != note || !said) {
			t.Errorf("%s: %s %s", oil, f.Severity, f.Message())
		}
	}
}
