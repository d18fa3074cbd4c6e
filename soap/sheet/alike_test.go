package sheet_test

import (
	"regexp"
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/sheet"
	"example.com/lyewright/units"
)

// Each of these formulas has two findings or more of one code. Whatever stands in one line, every word and every
// figure of every finding stands on the sheet, and no path of the file does.
func TestNothingIsLostOfFindingsAlike(t *testing.T) {
	for name, row := range map[string]struct {
		formula, code string
		says          []string
		lines         int // of the page that begin a finding of this code
	}{
		// Two bottles, each with a bound and a superfat of its own.
		"two low purities": {
			bar("alkali", `[{"kind": "sodium-hydroxide", "purity": "85 %", "saponifies": "60 %"},
				{"kind": "potassium-hydroxide", "purity": "70 %", "saponifies": "40 %"}]`),
			"purity-low",
			[]string{"below the 95.5 % that is usual", "below the 82 % that is usual"},
			2,
		},
		// 60 °C is the limit of oils and batter, 80 °C that of the lye.
		"three temperatures": {
			bar("temperature", `{"oils": "65 °C", "lye": "85 °C", "pour": "61 °C"}`), "temperature-high",
			[]string{
				"The same holds for: The batter when it is poured at 61 °C.",
				"The lye at 85 °C (limit 80 °C): hot oils, lye and batter scald",
			},
			2,
		},
		"two readings far below": {
			bar("weighed", `{"stage": "lye", "oils": {"hall-oil": "50 g", "yard-oil": "49 g"}}`), "weighed-far",
			[]string{"The same holds for: Yard oil: 49 g was weighed where 500 g is planned."},
			1,
		},
		// Both are so with both put right: one figure.
		"two values above": {
			bar("oils", `[{"oil": "olive", "share": "50 %", "saponification": "250"}, {"oil": "coconut", "share": "rest",
				"saponification": "300"}]`, "superfat", `"30 %"`),
			"saponification-outside",
			[]string{"The same holds for: Coconut oil: the saponification value, 300 mg KOH/g, lies " +
				"above what is published, 265 mg KOH/g."},
			1,
		},
		"one value above and one below": {
			bar("oils", `[{"oil": "olive", "share": "50 %", "saponification": "250"}, {"oil": "coconut", "share": "rest",
				"saponification": "200"}]`, "superfat", `"30 %"`),
			"saponification-outside",
			[]string{"250 mg KOH/g", "200 mg KOH/g"},
			2,
		},
		// The usual load of an iron oxide beside titanium dioxide is 0.05 to 0.5 % of oils.
		"more and less than usual": {
			bar("parts", `[{"part": "glow", "share": "100 %", "colourants": [{"colourant": "titanium-dioxide",
				"load": "0.2 % of oils"},
				{"colourant": "iron-oxide-red", "load": "2 % of oils"}, {"colourant": "iron-oxide-yellow",
					"load": "0.01 % of oils"}]}]`),
			"load-unusual",
			[]string{
				"Iron oxide red: a load of 2 % of oils is more than is usual",
				"Iron oxide yellow: a load of 0.01 % of oils is less than is usual",
			},
			2,
		},
		"four names": {
			bar("oils", `[{"oil": "Olive Oil", "share": "40 %"}, {"oil": "Castor Oil", "share": "10 %"}, {"oil": "Coconut Oil",
				"share": "rest"}]`), "name-note",
			[]string{`The name "Olive Oil" is read as olive. Likewise are read: "Castor Oil" as castor; "Coconut Oil" as coconut.`},
			1,
		},
	} {
		b := batchOf(t, row.formula)
		page := flat(write(t, b, units.Gram))
		heads, count := 0, 0
		for _, f := range b.Findings {
			if f.Code != row.code {
				continue
			}
			count++
			if strings.Contains(page, leadOf(f)+flat(f.Message())) {
				heads++
			}
			if !saidOf(page, leadOf(f), f) {
				t.Errorf("%s: %q is lost in\n%s", name, f.Message(), page)
			}
		}
		if count < 2 || heads != row.lines {
			t.Errorf("%s: %d findings in %d lines, want %d lines:\n%s", name, count, heads, row.lines, page)
		}
		for _, text := range row.says {
			if !strings.Contains(page, text) {
				t.Errorf("%s: it does not say %q:\n%s", name, text, page)
			}
		}
		if raw := regexp.MustCompile(`(temperature|weighed)\.[a-z]|500 g \(`); raw.MatchString(page) {
			t.Errorf("%s: a key of the file stands on the sheet:\n%s", name, page)
		}
	}
}

func leadOf(f soap.Finding) string {
	switch f.Severity {
	case soap.Danger:
		return "DANGER "
	case soap.Warning:
		return "WARNING "
	default:
		return "- "
	}
}

// What the findings rest on names each source: NaOH below its pharmacopoeia's least, KOH below a habit of the trade.
func TestEveryFindingOfACodeCitesItsOwnSource(t *testing.T) {
	b := batchOf(t, bar("alkali", `[{"kind": "sodium-hydroxide", "purity": "85 %", "saponifies": "60 %"},
		{"kind": "potassium-hydroxide", "purity": "70 %", "saponifies": "40 %"}]`))
	var page strings.Builder
	if err := sheet.WriteWorking(&page, b); err != nil {
		t.Fatal(err)
	}
	_, rests, _ := strings.Cut(page.String(), "WHAT THE FINDINGS REST ON")
	if strings.Count(rests, "purity-low; ") != 2 || !strings.Contains(rests, "purity-low; Sodium hydroxide [") ||
		!strings.Contains(rests, "purity-low; Potassium hydroxide [") {
		t.Errorf("%s", rests)
	}
}
