package soap_test

import (
	"strings"
	"testing"
)

// What makers write by habit: each is refused in words that name what stands there, and
// what they are told to write is taken.
func TestASlipIsNamedAndItsRemedyIsTaken(t *testing.T) {
	const right = `{"formula": "Lantern walk bars", "oils": [{"oil": "olive", "share": "70 %"}, {"oil": "coconut", "share": "rest"}],
		"alkali": [{"kind": "sodium-hydroxide", "purity": {"low": "97 %", "high": "99 %"}}], "superfat": "5 %",
		"water": {"lye_concentration": "33 %"}, "size": {"oils": "800 g"}}`
	const water, size = `"water": {"lye_concentration": "33 %"}`, `"size": {"oils": "800 g"}`
	for _, c := range []struct {
		from, wrong, mended string // what of the right formula becomes the wrong one, and what the remedy makes of it
		path, says, remedy  string
		kind                string
	}{
		{size + "}", size + ",}", size + "}", "", "has a comma before the closing }", "leave out that comma", "syntax"},
		{`"rest"}]`, `"rest"},]`, `"rest"}]`, "oils", "has a comma before the closing ]", "leave out that comma", "syntax"},
		{`"superfat"`, "// usual\n\"superfat\"", `"superfat"`, "", "has a comment", "leave it out", "syntax"},
		{`"superfat"`, `/* usual */ "superfat"`, `"superfat"`, "", "has a comment", "leave it out", "syntax"},
		{`"superfat"`, "# usual\n\"superfat\"", `"superfat"`, "", "has a comment", "leave it out", "syntax"},
		{`"5 %"`, `“5 %”`, `"5 %"`, "superfat", "has a curly quotation mark, “", "write straight ones", "syntax"},
		{`"superfat"`, `„superfat“`, `"superfat"`, "", "has a curly quotation mark, „", "write straight ones", "syntax"},
		{`"5 %"`, `'5 %'`, `"5 %"`, "superfat", "has a single quotation mark", "write double ones", "syntax"},
		{`"5 %"`, `5 %`, `"5 %"`, "", "has a quantity without quotation marks", `such as "5 %"`, "syntax"},
		{
			`"superfat": `, "\"superfat\":\u00a0", `"superfat": `, "superfat", "has a no-break space", "write a plain space",
			"syntax",
		},
		{
			`"800 g"`, "\"800\u00a0g\"", `"800 g"`, "size.oils", "has a no-break space",
			"put one plain space between number and unit", "syntax",
		},
		{
			`"5 %"`, "\"5\u202f%\"", `"5 %"`, "superfat", "has a no-break space", "put one plain space between number and unit",
			"syntax",
		},
		{
			water, `"water": {"lye_concentration": "1:2"}`, `"water": {"per_alkali": "2"}`, "water.lye_concentration",
			"is a ratio of alkali and water where a percentage is needed", `"per_alkali": "2"`, "syntax",
		},
		{
			water, `"water": {"per_alkali": "2:1"}`, `"water": {"per_alkali": "2"}`, "water.per_alkali",
			"is a ratio of two numbers where a plain number is needed", "write the number alone", "syntax",
		},
		{
			`"33 %"`, `0.25`, `"25 %"`, "water.lye_concentration", "is a bare number where a text is needed",
			`in quotation marks: "25 %"`, "syntax",
		},
		{
			`"33 %"`, `33`, `"33 %"`, "water.lye_concentration", "is a bare number where a text is needed",
			`with its unit: "33 %"`, "syntax",
		},
		{`"33 %"`, `"100 %"`, `"33 %"`, "water.lye_concentration", "leaves no water", `write less, such as "33 %"`, "range"},
		{
			size, size + `, "fragrances": [{"fragrance": "lavender", "load": "2 % of oils"}]`, size +
				`, "parts": [{"part": "base", "share": "100 %", "fragrances": [{"fragrance": "lavender", "load": "2 % of oils"}]}]`,
			"fragrances", "is not a key of a formula",
			`list it in a part, such as "parts": [{"part": "base", "share": "100 %", "fragrances": [`, "unknown",
		},
		{
			size, size + `, "materials": [{"name": "lantern-pear"}]`, size + `, "materials": [{"fragrance": "lantern-pear"}]`,
			"materials[0].name", "is not a key of a formula", `is named by "fragrance"`, "unknown",
		},
		{size, size + `, "materials": [{"fragrance": "pear", "certificates": [{"category": 9, "limit": "3 %", "amendment": "51"}]}]`, size + `, "materials": [{"fragrance": "pear", "certificates": [{"category": "9", "limit": "3 %", "amendment": "51"}]}]`, "materials[0].certificates[0].category", "is a bare number where a text is needed", `such as "9"`, "syntax"},
		{size, `"size": "bars"`, size, "size", "is a text where an object is needed", `or give "oils" or "batter"`, "syntax"},
		{
			size, `"size": {"bars": 12}`, size, "size.bars", "is not a key of a formula", `or give "oils" or "batter"`,
			"unknown",
		},
		{
			size, `"size": "800 g"`, `"size": {"batter": "800 g"}`, "size", "is a text where an object is needed",
			`{"oils": "800 g"} or {"batter": "800 g"}`, "syntax",
		},
	} {
		_, faults := read(t, strings.Replace(right, c.from, c.wrong, 1))
		if len(faults) != 1 {
			t.Errorf("%s: %v", c.wrong, faults)
			continue
		}
		if f := faults[0]; f.Path != c.path || !strings.Contains(f.Reason, c.says) || !strings.Contains(f.Remedy, c.remedy) ||
			f.Word() != c.kind {
			t.Errorf("%s: %s (%s)", c.wrong, f, f.Word())
		}
		if _, faults := read(t, strings.Replace(right, c.from, c.mended, 1)); faults != nil {
			t.Errorf("%s, as the remedy says: %v", c.mended, faults)
		}
	}
	// the vessels that the remedy shows are taken as they stand
	_, faults := read(t, strings.Replace(right, size, `"size": "bars"`, 1))
	_, shown, _ := strings.Cut(faults[0].Remedy, "such as ")
	shown, _, _ = strings.Cut(shown, ", or give")
	if _, faults := read(t, strings.Replace(right, size, `"size": `+shown, 1)); faults != nil {
		t.Errorf("%s: %v", shown, faults)
	}
}

// A concentration just below one leaves water, and is taken as far as the bounds go.
func TestALyeOfAlkaliAloneIsNoLye(t *testing.T) {
	for text, wrong := range map[string]bool{`"99.9 %"`: false, `"100 %"`: true, `"101 %"`: true} {
		_, faults := read(t, plainFormula().with("water", `{"lye_concentration": `+text+`}`).text())
		if said := len(faults) == 1 && strings.Contains(faults[0].Reason, "leaves no water"); said != wrong || !wrong &&
			faults != nil {
			t.Errorf("%s: %v", text, faults)
		}
	}
}
