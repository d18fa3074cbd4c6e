package soap_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// FORMULA.md: "a check is silent where its input already has a fault". Each of
// these is one mistake of the maker's and should be said once.
func TestOneMistakeIsSaidOnce(t *testing.T) {
	hundredAndOne := make([]string, 101)
	for i := range hundredAndOne {
		hundredAndOne[i] = fmt.Sprintf(`{"oil": "lot-%d", "share": "1 %%", "saponification": "190"}`, i)
	}
	jug := part("1 g", `{"liquid": "lot-7", "ratio": "2"}`)
	for name, test := range map[string]struct {
		change []string
		want   string
	}{
		"a bare number for both scales":                         {[]string{"scale", `0.1`}, "scale"},
		"a mistyped saponification key":                         {[]string{"oils", `{"oil": "pressed", "share": "100 %", "saponificaton": "190"}`}, "oils[0].saponificaton"},
		"masses, one of them without its unit":                  {[]string{"size", "", "oils", `{"oil": "olive", "mass": "600 g"}, {"oil": "coconut", "mass": "400"}`}, "oils[1].mass"},
		"masses, one of them mistyped":                          {[]string{"size", "", "oils", `{"oil": "olive", "mass": "600 g"}, {"oil": "coconut", "mas": "400 g"}`}, "oils[1].mas"},
		"too many oils, and a jug of one of them":               {[]string{"oils", strings.Join(hundredAndOne, ", "), "parts", jug}, "oils"},
		"a line whose oil key is mistyped, and a jug of it":     {[]string{"oils", `{"oli": "lot-7", "share": "100 %", "saponification": "190"}`, "parts", jug}, "oils[0].oli"},
		"a line whose oil is no text, and a jug of another lot": {[]string{"oils", `{"oil": ["lot-7"], "share": "100 %", "saponification": "190"}`, "parts", jug}, "oils[0].oil"},
	} {
		_, faults := read(t, plainFormula().with(test.change...).text())
		if got := strings.Join(paths(faults), " "); got != test.want {
			t.Errorf("%s: faults at %q, want %q\n%v", name, got, test.want, faults)
		}
	}
}

// The reader and Check say the same of the same formula; Check alone says some
// mistakes twice, because only the reader leaves out what rests on a fault.
func TestCheckSaysWhatTheReaderSays(t *testing.T) {
	olive, neem := builtIn(t, "olive"), builtIn(t, "neem")
	koh := soap.AlkaliLine{Alkali: soap.PotassiumHydroxide, Purity: units.Exactly(units.Percent(90)), Saponifies: units.Percent(40)}
	for _, test := range []struct {
		change []string
		typed  func(f *soap.Formula)
	}{
		{[]string{"oils", `{"oil": "olive", "share": "50 %", "mass": "50 g"}, {"oil": "neem", "share": "50 %"}`}, func(f *soap.Formula) {
			f.Oils = []soap.OilLine{{Oil: olive, Share: units.Percent(50), Mass: units.Grams(50)}, {Oil: neem, Share: units.Percent(50)}}
		}},
		{[]string{"oils", `{"oil": "olive", "share": "150 %"}, {"oil": "neem", "share": "50 %"}`}, func(f *soap.Formula) {
			f.Oils = []soap.OilLine{{Oil: olive, Share: units.Percent(150)}, {Oil: neem, Share: units.Percent(50)}}
		}},
		{[]string{"alkali", `{"kind": "sodium-hydroxide", "saponifies": "120 %"}, {"kind": "potassium-hydroxide", "purity": "90 %", "saponifies": "40 %"}`}, func(f *soap.Formula) {
			f.Alkalis = []soap.AlkaliLine{{Alkali: soap.SodiumHydroxide, Saponifies: units.Percent(120)}, koh}
		}},
		{[]string{"parts", `{"part": "lantern", "share": "150 %"}, {"part": "glow", "share": "rest"}`}, func(f *soap.Formula) {
			f.Parts = []soap.Part{{Name: "lantern", Share: units.Percent(150)}, {Name: "glow", Rest: true}}
		}},
	} {
		f := typedFormula(t)
		test.typed(&f)
		got := faultsOf(t, f.Check())
		_, want := read(t, plainFormula().with(test.change...).text())
		p, q := paths(got), paths(want)
		slices.Sort(p)
		slices.Sort(q)
		if !slices.Equal(p, q) {
			t.Errorf("%v:\ncheck says\n%v\nreader says\n%v", test.change, got, want)
		}
	}
}
