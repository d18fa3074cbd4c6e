package soap_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// placeOf finds where the nth occurrence of a text begins: line and column from
// 1, the column in bytes.
func placeOf(t *testing.T, text, find string, n int) (line, column int) {
	t.Helper()
	offset := 0
	for range n - 1 {
		next := strings.Index(text[offset:], find)
		if next < 0 {
			t.Fatalf("%q does not stand %d times in the text", find, n)
		}
		offset += next + 1
	}
	next := strings.Index(text[offset:], find)
	if next < 0 {
		t.Fatalf("%q does not stand %d times in the text", find, n)
	}
	offset += next
	for _, c := range []byte(text[:offset]) {
		column++
		if c == '\n' {
			line, column = line+1, 0
		}
	}
	return line + 1, column + 1
}

// wrongInManyWays is a file with a fault of every class, one or two a line.
const wrongInManyWays = `{
  "formula": "Laternenumzug für Löwenzahn", "tempo": "slow",
  "oils": [
    {"oil": "oliv", "share": "45 %"},
	{"oil": "coconut", "share": "25"},
    {"oil": "Löwenzahn", "share": "20 %", "saponification": "0.19"}, {"oil": "coconut", "share": "1e1 %"},
    "lard"
  ],
  "alkali": [{"kind": "sodium-hydroxide", "purity": "40 %"}, {"kind": "potassium-hydroxide"}],
  "superfat": 6,
  "water": {"lye_concentration": "32 %", "per_alkali": "2"},
  "scale": {"oils": "1 g", "small": "0.5 mg"},
  "parts": [
    {"part": "grün", "share": "60 %", "colourants": [{"colourant": "grün", "unlisted": true, "load": "0.8 %"},
	{"colourant": "grün", "unlisted": true, "load": "-1 g"}],
      "fragrances": [{"fragrance": "pear", "unlisted": true, "load": "max", "carrier": {"liquid": "sunflowr",
	"ratio": "1001"}}]},
    {"part": "grün", "share": "150 %", "look": "piped", "additives": [{"additive": "a\u2028b", "load": "4 gallons"}]}
  ]
}
`

func TestEveryFaultOfAFileComesAtOnceInTheOrderOfThePlaces(t *testing.T) {
	for name, text := range map[string]string{
		"with line feeds":                   wrongInManyWays,
		"with carriage returns as well":     strings.ReplaceAll(wrongInManyWays, "\n", "\r\n"),
		"in one line":                       strings.ReplaceAll(wrongInManyWays, "\n", " "),
		"with blank lines at the beginning": "\n\n\t" + wrongInManyWays,
	} {
		_, faults := read(t, text)
		want := []struct {
			path, at string
			nth      int // which occurrence of at
			kind     error
		}{
			{"size", `{`, 1, soap.ErrMissing},
			{"tempo", `"tempo"`, 1, soap.ErrUnknown},
			{"oils[0].oil", `"oliv"`, 1, soap.ErrUnknown},
			{"oils[1].share", `"25"`, 1, units.ErrUnit},
			{"oils[2].saponification", `"0.19"`, 1, soap.ErrRange},
			{"oils[3].oil", `"coconut"`, 2, soap.ErrConflict},
			{"oils[3].share", `"1e1 %"`, 1, units.ErrSyntax},
			{"oils[4]", `"lard"`, 1, soap.ErrFormat},
			{"alkali[0].saponifies", `{"kind"`, 1, soap.ErrMissing},
			{"alkali[0].purity", `"40 %"`, 1, soap.ErrRange},
			{"alkali[1].purity", `{"kind"`, 2, soap.ErrMissing},
			{"alkali[1].saponifies", `{"kind"`, 2, soap.ErrMissing},
			{"superfat", `6,`, 1, soap.ErrFormat},
			{"water", `{"lye_concentration"`, 1, soap.ErrConflict},
			{"scale.small", `"0.5 mg"`, 1, soap.ErrRange},
			{"parts[0].colourants[0].load", `"0.8 %"`, 1, units.ErrUnit},
			{"parts[0].colourants[1].colourant", `"grün"`, 3, soap.ErrConflict},
			{"parts[0].colourants[1].load", `"-1 g"`, 1, units.ErrSize},
			{"parts[0].fragrances[0].load", `"max"`, 1, soap.ErrConflict},
			{"parts[0].fragrances[0].carrier.liquid", `"sunflowr"`, 1, soap.ErrUnknown},
			{"parts[0].fragrances[0].carrier.ratio", `"1001"`, 1, soap.ErrRange},
			{"parts[1].part", `"grün"`, 4, soap.ErrConflict},
			{"parts[1].share", `"150 %"`, 1, soap.ErrRange},
			{"parts[1].look", `"piped"`, 1, soap.ErrUnknown},
			{"parts[1].additives[0].additive", `"a\u2028b"`, 1, soap.ErrRange},
			{"parts[1].additives[0].load", `"4 gallons"`, 1, units.ErrUnit},
		}
		if len(faults) != len(want) {
			t.Errorf("%s: %d faults, want %d:\n%v", name, len(faults), len(want), faults)
			continue
		}
		for i, w := range want {
			f := faults[i]
			line, column := placeOf(t, text, w.at, w.nth)
			if f.Path != w.path || f.Line != line || f.Column != column || !errors.Is(f, w.kind) {
				t.Errorf("%s: %v at %d:%d (%v), want %s at %d:%d (%v)", name, f.Path, f.Line, f.Column, f.Kind, w.path, line,
					column, w.kind)
			}
		}
	}
}

// A file that is no JSON has one fault, at the place where it stops being it.
func TestAFileThatIsNotJSONHasItsPlace(t *testing.T) {
	for _, test := range []struct {
		text, path string
		line, col  int
	}{
		{"", "", 1, 1},
		{" \n\n ", "", 1, 1}, // nothing stands anywhere
		{"\uFEFF{}", "", 1, 1},
		{"{\n  \"formula\" \"x\"\n}", "formula", 2, 13},
		{"{\n  \"oils\": [1,]\n}", "oils", 2, 13}, // the comma is wrong
		{"{\n  \"formula\": \"x\",\n  \"formula\": \"y\"\n}", "formula", 3, 3},
		{"{\"water\": {\"per_oils\": \"30 %\",\n \"per_oils\": \"31 %\"}}", "water.per_oils", 2, 2},
		{"{\"formula\": \"ü\xff\"}", "", 1, 16}, // the 16th byte
		{"{}\n{}", "", 2, 1},
		{"{\"formula\": nul}", "formula", 1, 13},
		{"{\"formula\": 01}", "", 1, 14},
		{"{\"formula\": \"x\ny\"}", "formula", 1, 15},
		{"{\"formula\": \"\\ud83d\"}", "formula", 1, 13},
		{"{\"oils\": [", "oils[0]", 1, 11},
	} {
		_, faults := read(t, test.text)
		if len(faults) != 1 {
			t.Errorf("%q: %v", test.text, faults)
			continue
		}
		if f := faults[0]; f.Path != test.path || f.Line != test.line || f.Column != test.col ||
			!errors.Is(f, soap.ErrFormat) {
			t.Errorf("%q: %q at %d:%d, want %q at %d:%d\n%v", test.text, f.Path, f.Line, f.Column, test.path, test.line,
				test.col, f)
		}
	}
}

func TestAWrongKindOfJSONIsNamed(t *testing.T) {
	for key, with := range map[string][2]string{
		"formula":  {`7`, "a bare number"},
		"oils":     {`{}`, "an object"},
		"alkali":   {`"sodium-hydroxide"`, "a text"},
		"superfat": {`[]`, "a list"},
		"water":    {`null`, "null"},
		"size":     {`"800 g"`, "a text"},
		"parts":    {`true`, "true or false"},
	} {
		fields := map[string]string{
			"formula": `"Lantern walk"`, "oils": `[{"oil": "olive", "share": "100 %"}]`,
			"alkali":   `[{"kind": "sodium-hydroxide"}]`,
			"superfat": `"6 %"`, "water": `{"per_oils": "30 %"}`, "size": `{"oils": "800 g"}`,
		}
		fields[key] = with[0]
		var members []string
		for _, k := range []string{"formula", "oils", "alkali", "superfat", "water", "size", "scale", "parts"} {
			if fields[k] != "" {
				members = append(members, `"`+k+`": `+fields[k])
			}
		}
		_, faults := read(t, "{"+strings.Join(members, ",\n")+"}")
		if len(faults) != 1 || faults[0].Path != key || !strings.Contains(faults[0].Reason, with[1]) ||
			!errors.Is(faults, soap.ErrFormat) {
			t.Errorf("%s: %s: %v", key, with[0], faults)
		}
	}
	for _, text := range []string{`[]`, `"soap"`, `7`, `null`, `true`} {
		if _, faults := read(t, text); len(faults) == 0 || faults[0].Path != "" || !errors.Is(faults[0], soap.ErrFormat) {
			t.Errorf("%s: %v", text, faults)
		}
	}
}

// What a check would rest on is at fault already, so it is silent.
func TestNothingIsSaidTwiceOfOneMistake(t *testing.T) {
	oils := func(lines string) []string { return []string{"oils", lines} }
	for _, test := range []struct {
		change []string
		want   string
	}{
		{oils(`{"oil": "olive", "share": "60"}, {"oil": "neem", "share": "rest"}`), "oils[0].share"},
		{oils(`{"oil": "olive", "share": "140 %"}, {"oil": "neem", "share": "rest"}`), "oils[0].share"},
		{oils(`{"oil": "olive", "share": "0 %"}, {"oil": "neem", "share": "60 %"}`), "oils[0].share"},
		{oils(`{"oil": "olive", "shares": "60 %"}, {"oil": "neem", "share": "60 %"}`), "oils[0].shares"},
		{oils(`{"oil": "olive", "share": "60 %"}, {"oil": "neem", "mas": "60 g"}`), "oils[1].mas"},
		{oils(`{"oil": "olive", "share": 60}, {"oil": "neem", "share": "60 %"}`), "oils[0].share"},
		{oils(`{"oil": 7, "share": "60 %"}, {"oil": 7, "share": "40 %"}`), "oils[0].oil oils[1].oil"},
		// an oil that could not be made out is no oil without a range
		{[]string{
			"superfat", `{"at_least": "2 %"}`, "oils",
			`{"oil": "pressed", "share": "100 %", "saponification": "1900"}`,
		}, "oils[0].saponification"},
		{[]string{"superfat", `{"at_least": "2"}`, "oils", `{"oil": "neem", "share": "100 %"}`}, "superfat.at_least"},
		{[]string{"superfat", `"6"`}, "superfat"},
		{[]string{"superfat", `null`}, "superfat"},
		{[]string{"alkali", `{"kind": "potash"}`}, "alkali[0].kind"},
		{[]string{"alkali", `{"knd": "sodium-hydroxide"}`}, "alkali[0].knd"},
		{[]string{"alkali", `{"kind": "potassium-hydroxide", "purity": "90"}`}, "alkali[0].purity"},
		{[]string{"alkali", `{"kind": "potassium-hydroxide", "purty": "90 %"}`}, "alkali[0].purty"},
		{[]string{"alkali", `{"kind": "sodium-hydroxide", "saponifies": "60"}, {"kind": "potassium-hydroxide", "purity": "90 %", "saponifies": "60 %"}`}, "alkali[0].saponifies"},
		{[]string{"alkali", `{"kind": "sodium-hydroxide", "purity": {"low": "97", "high": "99 %"}}`}, "alkali[0].purity.low"},
		{[]string{"alkali", `"sodium-hydroxide"`}, "alkali[0]"},
		{[]string{"water", `{"per_alkali": 2}`}, "water.per_alkali"},
		{[]string{"water", `{"per_alkali": "2 %"}`}, "water.per_alkali"},
		{[]string{"size", `{"oils": 800}`}, "size.oils"},
		{[]string{"size", `{"oils": "800"}`}, "size.oils"},
		{[]string{"size", `{"batter": "0 g"}`}, "size.batter"},
		{[]string{"parts", `{"part": "lantern", "share": "60"}, {"part": "glow", "share": "30 %"}`}, "parts[0].share"},
		{[]string{"parts", `{"prat": "lantern", "share": "60 %"}, {"part": "glow", "share": "40 %"}`}, "parts[0].prat"},
		{[]string{"parts", `{"part": "lantern", "share": "60 %"}, 7`}, "parts[1]"},
		{
			[]string{"parts", `{"part": "lan\ttern", "share": "60 %"}, {"part": "lan\ttern", "share": "40 %"}`},
			"parts[0].part parts[1].part",
		},
		{[]string{"parts", part("1", "")}, "parts[0].colourants[0].load"},
		{[]string{"parts", part("1 g", `{"liquid": "water", "ratio": 2}`)}, "parts[0].colourants[0].carrier.ratio"},
		{[]string{"parts", part("1 g", `{"liquid": 7, "ratio": "2"}`)}, "parts[0].colourants[0].carrier.liquid"},
		{
			[]string{"parts", part("1 g", `{"liqiud": "water", "ratio": "2"}`)},
			"parts[0].colourants[0].carrier parts[0].colourants[0].carrier.liqiud",
		},
		{
			[]string{"parts", part("1 g", `{"liquid": "glycerin", "ratio": "2", "from": "formla"}`)},
			"parts[0].colourants[0].carrier.from",
		},
		// oils that could not be read may well have been what a carrier names
		{[]string{"oils", `7`, "parts", part("1 g", `{"liquid": "olive", "ratio": "2", "from": "formula"}`)}, "oils[0]"},
		{[]string{
			"oils", `{"oil": "olive", "share": "50"}, {"oil": "coconot", "share": "50 %"}`, "parts",
			part("1 g", `{"liquid": "coconot", "ratio": "2"}`),
		}, "oils[0].share oils[1].oil"},
	} {
		_, faults := read(t, plainFormula().with(test.change...).text())
		if got := strings.Join(paths(faults), " "); got != test.want {
			t.Errorf("%v: %s, want %s\n%v", test.change, got, test.want, faults)
		}
	}
}

// At every bound of number, length and depth: the most passes, one more is
// refused, and refused once.
func TestABoundIsTheMostThatPasses(t *testing.T) {
	list := func(n int, item func(i int) string) string {
		items := make([]string, n)
		for i := range items {
			items[i] = item(i)
		}
		return strings.Join(items, ", ")
	}
	oils := func(n int) []string {
		return []string{"oils", list(n, func(i int) string {
			return fmt.Sprintf(`{"oil": "lot-%d", "share": "1 %%", "saponification": {"low": "189", "high": "191"}}`, i)
		})}
	}
	parts := func(n int) []string {
		return []string{"parts", list(n, func(i int) string { return fmt.Sprintf(`{"part": "cup %d", "share": "2 %%"}`, i) })}
	}
	additions := func(colourants, fragrances, additives int) []string {
		of := func(kind string, n int) string {
			return `"` + kind + `s": [` + list(n, func(i int) string {
				return fmt.Sprintf(`{"%s": "jar %d", "unlisted": true,
				"load": "1 mg"}`, kind, i)
			}) + `]`
		}
		return []string{"parts", `{"part": "lantern", "share": "100 %", ` + of("colourant", colourants) + ", " +
			of("fragrance", fragrances) + ", " + of("additive", additives) + `}`}
	}
	for _, test := range []struct {
		most, more []string
		path       string
	}{
		{oils(100), oils(101), "oils"},
		{parts(50), parts(51), "parts"},
		{additions(50, 0, 0), additions(51, 0, 0), "parts[0].colourants"},
		{additions(0, 50, 0), additions(0, 51, 0), "parts[0].fragrances"},
		{additions(0, 0, 50), additions(0, 0, 51), "parts[0].additives"},
		{additions(20, 20, 10), additions(20, 20, 11), "parts[0]"}, // 50 in all
	} {
		f, faults := read(t, plainFormula().with(test.most...).text())
		if faults != nil {
			t.Errorf("%s: the most that passes: %v", test.path, faults)
		} else if _, err := f.Batch(); err != nil {
			t.Errorf("%s: the most that passes: %v", test.path, err)
		}
		if _, faults = read(t, plainFormula().with(test.more...).text()); !slices.Equal(paths(faults), []string{test.path}) ||
			!errors.Is(faults, soap.ErrLimit) {
			t.Errorf("%s: one more: %v", test.path, faults)
		}
	}

	// Built in code, the same bounds.
	for path, f := range map[string]func(f *soap.Formula){
		"oils":     func(f *soap.Formula) { f.Oils = slices.Repeat(f.Oils[:1], 101) },
		"parts":    func(f *soap.Formula) { f.Parts = slices.Repeat(f.Parts, 51) },
		"parts[0]": func(f *soap.Formula) { f.Parts[0].Additives = make([]soap.Addition, 51) },
		"alkali":   func(f *soap.Formula) { f.Alkalis = slices.Repeat(f.Alkalis, 3) },
	} {
		formula := typedFormula(t)
		f(&formula)
		if got := faultsOf(t, formula.Check()); !slices.Equal(paths(got), []string{path}) {
			t.Errorf("in code, %s: %v", path, got)
		}
	}

	// 16 levels, the object among them, and 17
	nested := func(depth int) string {
		return `{"x": ` + strings.Repeat("[", depth-1) + strings.Repeat("]", depth-1) + `}`
	}
	if _, faults := read(t, nested(16)); slices.ContainsFunc(faults,
		func(f soap.Fault) bool { return strings.Contains(f.Reason, "deep") }) {
		t.Errorf("16 levels: %v", faults)
	}
	if _, faults := read(t, nested(17)); len(faults) != 1 || !strings.Contains(faults[0].Reason, "deep") ||
		!errors.Is(faults, soap.ErrLimit) {
		t.Errorf("17 levels: %v", faults)
	}

	// 1 MiB of formula and white space, and a byte more
	text := plainFormula().text()
	full := text + strings.Repeat(" ", 1<<20-len(text))
	if _, faults := read(t, full); faults != nil {
		t.Errorf("1 MiB: %v", faults)
	}
	if _, faults := read(t, full+" "); len(faults) != 1 || !strings.Contains(faults[0].Reason, "1 MiB") {
		t.Errorf("1 MiB and a byte: %v", faults)
	}
	if soap.MostBytes != 1<<20 {
		t.Errorf("MostBytes is %d", soap.MostBytes)
	}
}

// Every place that takes a name takes the same names.
func TestNamesOfAnyScriptAndWithoutControlsAreTaken(t *testing.T) {
	places := map[string]func(name string) string{
		"formula": func(name string) string {
			return strings.Replace(plainFormula().text(), `"Lantern walk"`, name, 1)
		},
		"oils[0].oil": func(name string) string {
			return plainFormula().with("oils", `{"oil": `+name+`, "share": "100 %", "saponification": "190"}`).text()
		},
		"oils[0].name": func(name string) string {
			return plainFormula().with("oils", `{"oil": "olive", "name": `+name+`, "share": "100 %"}`).text()
		},
		"oils[0].inci": func(name string) string {
			return plainFormula().with("oils", `{"oil": "olive", "inci": `+name+`, "share": "100 %"}`).text()
		},
		"parts[0].part": func(name string) string {
			return plainFormula().with("parts", `{"part": `+name+`, "share": "100 %"}`).text()
		},
		"parts[0].colourants[0].colourant": func(name string) string {
			return plainFormula().with("parts", `{"part": "lantern", "share": "100 %", "colourants": [{"colourant": `+name+
				`, "unlisted": true, "load": "1 g"}]}`).text()
		},
		"parts[0].fragrances[0].fragrance": func(name string) string {
			return plainFormula().with("parts", `{"part": "lantern", "share": "100 %", "fragrances": [{"fragrance": `+name+
				`, "unlisted": true, "load": "1 g"}]}`).text()
		},
		"parts[0].additives[0].additive": func(name string) string {
			return plainFormula().with("parts", `{"part": "lantern", "share": "100 %", "additives": [{"additive": `+name+
				`, "load": "1 g"}]}`).text()
		},
	}
	taken := []string{
		"x", "Laternenumzug für alle", "提灯の石けん", "фонарь", "فانوس", "פנס", "कंदील", "โคมไฟ", "등불", "🏮", "🏳️‍🌈", "é",
		"O'Brien & Sons, \"No. 2\" \\ 50 %",
		strings.Repeat("l", 200), strings.Repeat("ü", 100), // two bytes each
	}
	refused := []string{
		"", " ", "\t", "\u00a0", "a\nb", "a\rb", "a\tb", "a\x00b", "a\x1bb", "a\x7fb", "a\u0085b", "a\u009fb",
		"a\u2028b", "a\u2029b",
		"a\u061cb", "a\u200eb", "a\u200fb", "a\u202ab", "a\u202bb", "a\u202cb", "a\u202db", "a\u202eb", "a\u2066b",
		"a\u2067b", "a\u2068b", "a\u2069b",
		strings.Repeat("l", 201), strings.Repeat("ü", 100) + "l",
	}
	quoted := func(name string) string {
		text, err := json.Marshal(name)
		if err != nil {
			t.Fatal(err)
		}
		return string(text)
	}
	for path, in := range places {
		for _, name := range taken {
			f, faults := read(t, in(quoted(name)))
			if faults != nil {
				t.Errorf("%s: %q: %v", path, name, faults)
				continue
			}
			if _, err := f.Batch(); err != nil {
				t.Errorf("%s: %q: %v", path, name, err)
			}
		}
		for _, name := range refused {
			_, faults := read(t, in(quoted(name)))
			if !slices.Equal(paths(faults), []string{path}) || faults[0].Reason == "" {
				t.Errorf("%s: %q: %v", path, name, faults)
			}
			if line := faults.Error(); strings.ContainsAny(line, "\n\r\x00\x1b\u2028\u2029\u202e") {
				t.Errorf("%s: the error passes controls on: %q", path, line)
			}
		}
	}
}

// Names from a program need not be UTF-8 either.
func TestATypedNameThatIsNotUTF8IsRefused(t *testing.T) {
	f := typedFormula(t)
	f.Name = "lantern \xff"
	if got := faultsOf(t, f.Check()); !slices.Equal(paths(got), []string{"formula"}) || !errors.Is(got, soap.ErrRange) {
		t.Errorf("%v", got)
	}
}

// A key of a later chapter is known only where that chapter has it.
func TestAKeyOfALaterChapterInTheWrongPlaceIsAnUnknownKey(t *testing.T) {
	for path, text := range map[string]string{
		"stock":              strings.TrimSuffix(plainFormula().text(), "}") + `, "stock": {}}`,
		"parts[0].gel":       plainFormula().with("parts", `{"part": "lantern", "share": "100 %", "gel": "yes"}`).text(),
		"size.liquids":       plainFormula().with("size", `{"oils": "1 kg", "liquids": []}`).text(),
		"water.vessels":      plainFormula().with("water", `{"per_oils": "30 %", "vessels": []}`).text(),
		"oils[0].reserve":    plainFormula().with("oils", `{"oil": "olive", "share": "100 %", "reserve": "5 %"}`).text(),
		"superfat.acids":     plainFormula().with("superfat", `{"at_least": "2 %", "acids": []}`).text(),
		"alkali[0].strength": plainFormula().with("alkali", `{"kind": "sodium-hydroxide", "strength": "50 %"}`).text(),
		"alkali[0].Stock":    plainFormula().with("alkali", `{"kind": "sodium-hydroxide", "Stock": {}}`).text(),
		"scale.temperature":  plainFormula().with("scale", `{"oils": "1 g", "temperature": "20"}`).text(),
		"alkali[0].purity.kg": plainFormula().with("alkali",
			`{"kind": "sodium-hydroxide", "purity": {"low": "97 %", "high": "99 %", "kg": "1"}}`).text(),
	} {
		_, faults := read(t, text)
		if len(faults) != 1 || faults[0].Path != path || strings.Contains(faults[0].Reason, "not yet") ||
			!errors.Is(faults, soap.ErrUnknown) {
			t.Errorf("%s: %v", path, faults)
		}
	}
}

// Keys and units are strict: no other case, no other spelling.
func TestKeysAndUnitsHaveOneSpelling(t *testing.T) {
	for _, change := range [][]string{
		{"superfat", `"6 percent"`},
		{"superfat", `"6 %%"`},
		{"superfat", `" 6 %"`},
		{"superfat", `"6 % "`},
		{"superfat", `"6  %"`},
		{"superfat", `"+6 %"`},
		{"superfat", `"6. %"`},
		{"superfat", `".6 %"`},
		{"superfat", `"6,0 %"`},
		{"superfat", `"0.6e1 %"`},
		{"superfat", `"６ %"`},
		{"superfat", `"NaN %"`},
		{"superfat", `"Inf %"`},
		{"superfat", `"0x6 %"`},
		{"size", `{"oils": "1_000 g"}`},
		{"size", `{"oils": "1,000 g"}`},
		{"size", `{"oils": "1000 G"}`},
		{"size", `{"oils": "1000 grams"}`},
		{"size", `{"oils": "1 l"}`},
		{"size", `{"Oils": "1 kg"}`},
		{"water", `{"Per_Oils": "30 %"}`},
		{"water", `{"per_alkali": "200 %"}`},
		{"water", `{"per_oils": "0.3"}`},
		{"oils", `{"oil": "olive", "share": "Rest"}`},
		{"parts", part("3 %of oils", "")},
		{"parts", part("3 % of the oils", "")},
		{"parts", part("3 % of Oils", "")},
		{"parts", part("3 g of oils", "")},
		{"parts", part("1 g", `{"liquid": "water", "ratio": "2", "from": "Formula"}`)},
	} {
		if _, faults := read(t, plainFormula().with(change...).text()); len(faults) != 1 {
			t.Errorf("%v: %v", change, faults)
		}
	}
	for _, change := range [][]string{
		{"superfat", `"6%"`},
		{"superfat", `"006 %"`},
		{"superfat", `"6.000 %"`},
		{"size", `{"oils": "1kg"}`},
		{"size", `{"oils": "2.2 lb"}`},
		{"size", `{"oils": "28.2oz"}`},
		{"size", `{"oils": "1000000 mg"}`},
		{"parts", part("3% of oils", "")},
		{"parts", part("3% of batter", "")},
	} {
		if _, faults := read(t, plainFormula().with(change...).text()); faults != nil {
			t.Errorf("%v: %v", change, faults)
		}
	}
}

// Faults are an error that errors.Is and errors.As look into.
func TestFaultsAreAnErrorOfManyErrors(t *testing.T) {
	_, err := soap.ReadFormula(strings.NewReader(plainFormula().with("superfat", `"6"`, "water", `{}`).text()))
	if !errors.Is(err, units.ErrUnit) || !errors.Is(err, soap.ErrMissing) || errors.Is(err, soap.ErrConflict) {
		t.Errorf("kinds of %v", err)
	}
	var fault soap.Fault
	if !errors.As(err, &fault) || fault.Path != "superfat" {
		t.Errorf("the first fault is %+v", fault)
	}
	wrapped := fmt.Errorf("lantern.json: %w", err)
	var faults soap.Faults
	if !errors.As(wrapped, &faults) || len(faults) != 2 {
		t.Fatalf("%v", wrapped)
	}
	if lines := strings.Split(err.Error(), "\n"); len(lines) != 2 || lines[0] != faults[0].Error() ||
		lines[1] != faults[1].Error() {
		t.Errorf("%q", err)
	}
	// place, path, text, reason, remedy
	want := fmt.Sprintf("%d:%d: superfat: %q %s; %s", faults[0].Line, faults[0].Column, "6", faults[0].Reason,
		faults[0].Remedy)
	if faults[0].Error() != want || faults[0].Remedy == "" {
		t.Errorf("%q, want %q", faults[0].Error(), want)
	}
	text, err := faults.MarshalJSON()
	if err != nil {
		t.Fatal(err)
	}
	var object struct {
		Schema string
		Errors []struct {
			Path, Text, Reason, Remedy string
			Line, Column               int
		}
	}
	if err := json.Unmarshal(text, &object); err != nil {
		t.Fatal(err)
	}
	if object.Schema != "error/1" || len(object.Errors) != 2 {
		t.Fatalf("%s", text)
	}
	for i, e := range object.Errors {
		if f := faults[i]; e.Path != f.Path || e.Text != f.Text || e.Reason != f.Reason || e.Remedy != f.Remedy ||
			e.Line != f.Line || e.Column != f.Column {
			t.Errorf("%+v is not %+v", e, f)
		}
	}
	// without a file there is no place, in the JSON neither
	if text, _ := (soap.Faults{{Path: "size", Reason: "is missing"}}).MarshalJSON(); bytes.Contains(text, []byte("line")) {
		t.Errorf("%s", text)
	}
}

// Every reason is lower case without a full stop, for every wrong formula of the
// testdata.
func TestEveryReasonReadsOnFromItsValue(t *testing.T) {
	files, err := filepath.Glob("../testdata/formulas/wrong/*.json")
	if err != nil || len(files) < 20 {
		t.Fatal(len(files), err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		f, err := soap.ReadFormula(bytes.NewReader(text))
		if err == nil {
			_, err = f.Batch()
		}
		var faults soap.Faults
		if !errors.As(err, &faults) || len(faults) == 0 {
			t.Errorf("%s: %v", file, err)
			continue
		}
		for _, f := range faults {
			for _, said := range []string{f.Reason, f.Remedy} {
				if strings.HasSuffix(said, ".") || said != "" && strings.ToUpper(said[:1]) == said[:1] && said[0] >= 'A' &&
					said[0] <= 'Z' {
					t.Errorf("%s: %q", file, said)
				}
			}
			if f.Reason == "" || f.Kind == nil {
				t.Errorf("%s: %+v", file, f)
			}
		}
	}
}

// counted hands out the same formula text for ever.
type counted struct{ given int }

func (c *counted) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = ' '
	}
	c.given += len(p)
	return len(p), nil
}

func TestAHundredMebibytesAreReadToTheFirstByteTooMany(t *testing.T) {
	input := &counted{}
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	_, err := soap.ReadFormula(input)
	runtime.ReadMemStats(&after)
	if !errors.Is(err, soap.ErrLimit) {
		t.Errorf("got %v", err)
	}
	if input.given != soap.MostBytes+1 {
		t.Errorf("%d bytes were taken, want %d", input.given, soap.MostBytes+1)
	}
	// the bytes themselves, grown by doubling: no more than eight times over
	if used := after.TotalAlloc - before.TotalAlloc; used > 8<<20 {
		t.Errorf("%d bytes were allocated", used)
	}
}

// Ten thousand oils, objects in objects, texts that are all but numbers: what is
// refused is refused before it costs anything.
func TestHostileFormulasAreRefusedCheaply(t *testing.T) {
	mib := 1 << 20
	for name, hostile := range map[string]struct {
		text string
		most uint64 // bytes allocated
	}{
		"ten thousand oils": {`{"oils": [` + strings.TrimSuffix(strings.Repeat(`{"oil": "olive", "share": "0.01 %"},`,
			10_000), ",") + `]}`, 16 << 20},
		"objects in objects": {strings.Repeat(`{"a":`, 100_000), 4 << 20},
		"lists in lists":     {strings.Repeat(`[`, 200_000), 4 << 20},
		"a mass of digits": {
			plainFormula().with("size", `{"oils": "`+strings.Repeat("9", mib-1000)+` g"}`).text(),
			8 << 20,
		},
		"decimals": {plainFormula().with("superfat", `"0.`+strings.Repeat("1", mib-1000)+` %"`).text(), 8 << 20},
		"a name": {
			strings.Replace(plainFormula().text(), "Lantern walk", strings.Repeat("l", mib-1000), 1),
			8 << 20,
		},
		"an oil's name": {plainFormula().with("oils", `{"oil": "`+strings.Repeat("o", mib-1000)+
			`", "share": "100 %"}`).text(), 8 << 20},
		"a liquid": {plainFormula().with("parts", part("1 g", `{"liquid": "`+strings.Repeat("o", mib-1000)+
			`", "ratio": "2"}`)).text(), 8 << 20},
		"a kind of alkali": {
			plainFormula().with("alkali", `{"kind": "`+strings.Repeat("s", mib-1000)+`"}`).text(),
			8 << 20,
		},
		"an acid of a profile": {plainFormula().with("oils", `{"oil": "x", "share": "100 %", "profile": {"`+
			strings.Repeat("C", 190)+`": "100 %"}}`).text(), 4 << 20},
	} {
		text := []byte(hostile.text)
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		_, _, err := soap.ParseFormula(text)
		runtime.ReadMemStats(&after)
		if err == nil {
			t.Errorf("%s: accepted", name)
			continue
		}
		if used := after.TotalAlloc - before.TotalAlloc; used > hostile.most {
			t.Errorf("%s: %d bytes for %d", name, used, len(text))
		}
		if len(err.Error()) > 4000 {
			t.Errorf("%s: a message of %d bytes", name, len(err.Error()))
		}
	}
}
