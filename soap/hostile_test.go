package soap_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/lyewright/colour"
	"example.com/lyewright/colour/tint"
	"example.com/lyewright/fragrance"
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// A quoted is a text of a formula file: a key, or the value of the key before it.
type quoted struct {
	from, to int // with its quotation marks
	key      string
	isKey    bool
}

var (
	quotedText = regexp.MustCompile(`"(?:[^"\\]|\\.)*"`)
	bareNumber = regexp.MustCompile(`[\s\[:,](-?[0-9][0-9.eE+-]*)`)
)

// quotedIn finds every text of a formula file.
func quotedIn(text string) (list []quoted) {
	key := ""
	for _, at := range quotedText.FindAllStringIndex(text, -1) {
		isKey := strings.HasPrefix(strings.TrimSpace(text[at[1]:]), ":")
		if isKey {
			key = text[at[0]+1 : at[1]-1]
		}
		list = append(list, quoted{at[0], at[1], key, isKey})
	}
	return list
}

// richFormulas are those that between them have every key of a formula that takes
// a name.
func richFormulas(t *testing.T) map[string]string {
	t.Helper()
	list := map[string]string{}
	for _, path := range []string{"names/every-name.json", "formulas/scented-cups.json", "formulas/stock-and-milk.json", "worked/weighed-parts.json"} {
		text, err := os.ReadFile(filepath.Join("..", "testdata", path))
		if err != nil {
			t.Fatal(err)
		}
		if _, _, err := soap.ParseFormula(text); err != nil {
			t.Fatalf("%s: %v", path, err)
		}
		list[path] = string(text)
	}
	return list
}

// controls are characters that do something to a screen or to a log, in JSON.
func controls() []string {
	return []string{
		`\u0000`, `\n`, `\r`, `\u001b`, "\u007f", "\u009b", // C0, delete, C1
		"\u2028", `\u2029`, // separators of lines and paragraphs
		"\u200e", `\u200f`, "\u061c", "\u202a", "\u202b", `\u202c`, "\u202d", `\u202e`, "\u2066", "\u2067", `\u2068`, "\u2069", // bidirectional
	}
}

// Every text of a formula in turn, keys too, gets a control character. None may come
// through, and none may stand raw in what is said of it.
func TestNoTextOfAFormulaTakesAControlCharacter(t *testing.T) {
	tried := map[string]int{}
	for file, text := range richFormulas(t) {
		for _, q := range quotedIn(text) {
			if !q.isKey {
				tried[q.key]++
			}
			for i, control := range controls() {
				if i%5 != 0 && (q.isKey || file != "names/every-name.json") {
					continue // every one in the values there, some elsewhere
				}
				at := q.to - 1 // behind its last letter
				if i%2 == 1 {
					at = q.from + 1 // or before its first
				}
				_, _, err := soap.ParseFormula([]byte(text[:at] + control + text[at:]))
				if err == nil {
					t.Errorf("%s: %s takes %q (key: %v)", file, text[q.from:q.to], control, q.isKey)
					continue
				}
				for _, f := range faultsOf(t, err) {
					said := f.Error()
					if strings.ContainsFunc(said, func(r rune) bool { return r < ' ' || r >= 0x7f && r < 0xa0 || r == '\u2028' || r == '\u2029' }) || strings.ContainsAny(said, "\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069") {
						t.Errorf("%s: of %s with %q is said %q", file, text[q.from:q.to], control, said)
					}
				}
			}
		}
	}
	// the keys of FORMULA.md that take a name: the walk has been to each of them
	for _, key := range []string{
		"formula", "oil", "name", "inci", "grade", "liquid", "acid", "vessel", "part", "on", "fragrance", "category", "allergens",
		"colourant", "additive", "swatch", "embed", "topping", "kind", "stage", "from", "look", "work", "markets", "behaviour", "gel", "glitter",
		"ci", "disperses_in", "price", "amendment", "cas", "srgb", "load", "share", "superfat", "strength",
	} {
		if tried[key] == 0 {
			t.Errorf("no text of %q was tried", key)
		}
	}
}

// Every key in turn stands twice.
func TestNoKeyOfAFormulaMayStandTwice(t *testing.T) {
	for file, text := range richFormulas(t) {
		for _, q := range quotedIn(text) {
			if !q.isKey {
				continue
			}
			key := text[q.from:q.to]
			_, _, err := soap.ParseFormula([]byte(text[:q.from] + key + ": 1, " + text[q.from:]))
			if err == nil || !strings.Contains(err.Error(), "stands twice") {
				t.Errorf("%s: %s twice: %v", file, key, err)
			}
		}
	}
}

// Every text and every number in turn becomes absurd. Each answer is a fault or a
// batch; none is a panic, and none costs more than bounded memory.
func TestNoFigureOfAFormulaCanBeAbsurd(t *testing.T) {
	long := strings.Repeat("9", 20_000)
	tooLong := []string{`"` + long + ` g"`, `"0.` + long + ` % of oils"`, long, "-1e999999999", "1e-999999999"}
	tried, bare := 0, 0
	for file, text := range richFormulas(t) {
		try := func(from, to int, value string) {
			changed := []byte(text[:from] + value + text[to:])
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			f, _, err := soap.ParseFormula(changed)
			if err == nil {
				_, err = f.Batch()
			}
			runtime.ReadMemStats(&after)
			if err == nil {
				t.Errorf("%s: %s may be %.20s…", file, text[from:to], value)
				return
			}
			if used := after.TotalAlloc - before.TotalAlloc; used > 2<<20 {
				t.Errorf("%s: %s as %.20s… costs %d bytes", file, text[from:to], value, used)
			}
			if len(err.Error()) > 20_000 {
				t.Errorf("%s: %s as %.20s…: %d bytes are said", file, text[from:to], value, len(err.Error()))
			}
			tried++
		}
		for _, q := range quotedIn(text) {
			if !q.isKey {
				for _, value := range tooLong {
					try(q.from, q.to, value)
				}
			}
		}
		for _, at := range bareNumber.FindAllStringSubmatchIndex(text, -1) {
			if slices.ContainsFunc(quotedIn(text), func(q quoted) bool { return q.from < at[2] && at[2] < q.to }) {
				continue
			}
			bare++
			for _, value := range tooLong[:len(tooLong)-1] { // the last is as good as 0
				try(at[2], at[3], value)
			}
		}
	}
	if tried < 1000 || bare < 10 {
		t.Errorf("only %d values were tried, %d of them in place of bare numbers", tried, bare)
	}
}

// A file with a hundred thousand faults is told the first hundred, and that there
// are more. Each of these would fill a screen a thousand times over.
func TestAFloodOfFaultsIsCutShort(t *testing.T) {
	var keys, names []string
	for i := range 200 {
		keys = append(keys, fmt.Sprintf(`"k%d":1`, i))
		names = append(names, fmt.Sprintf(`"name-%d":"1"`, i))
	}
	object := "{" + strings.Join(keys, ",") + "}"
	list := func(item string, n int) string {
		return "[" + strings.TrimSuffix(strings.Repeat(item+",", n), ",") + "]"
	}
	pieces := func(key, value string) string { return plainFormula().with(key, strings.Trim(value, "[]")).text() }
	parts := func(item string) string {
		return list(`{"part":"p","share":"2 %","colourants":`+list(item, 50)+`,"additives":`+list(item, 50)+`}`, 50)
	}
	for name, text := range map[string]string{
		"keys":                pieces("parts", list(`{"part":"p","colourants":`+list(object, 40)+`}`, 10)),
		"no objects":          pieces("parts", parts("1")),
		"empty carriers":      pieces("parts", parts(`{"carrier":{}}`)),
		"unknown liquids":     pieces("parts", parts(`{"carrier":{"liquid":"moonlight"}}`)),
		"acids of profiles":   pieces("oils", list(`{"oil":"own","share":"1 %","profile":{`+strings.Join(names, ",")+`}}`, 100)),
		"allergens":           pieces("materials", list(`{"fragrance":"m","allergens":`+list(`"moonlight"`, 300)+`}`, 100)),
		"loads of swatches":   plainFormula().with("swatches", `{"read":`+list(`{"swatch":"s","loads":{`+strings.Join(names, ",")+`}}`, 60)+`}`).text(),
		"what was weighed":    plainFormula().with("weighed", `{"stage":"pot","oils":{`+strings.Join(names, ",")+`},"alkali":{`+strings.Join(names, ",")+`}}`).text(),
		"layers of vessels":   plainFormula().with("size", `{"vessels":`+list(`{"vessel":"v","count":1,"volume":"1 mL","parts":{`+strings.ReplaceAll(strings.Join(names, ","), `"1"`, `"1 %"`)+`}}`, 100)+`}`).text(),
		"embeds and toppings": plainFormula().with("embeds", strings.Trim(list(`{"embed":1,"vessel":1,"each":1.5,"mass":1}`, 50), "[]")).text(),
	} {
		if len(text) > soap.MostBytes {
			t.Fatalf("%s: %d bytes are too many to be read", name, len(text))
		}
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		_, _, err := soap.ParseFormula([]byte(text))
		runtime.ReadMemStats(&after)
		faults := faultsOf(t, err)
		if len(faults) < 2 || len(faults) > 101 {
			t.Errorf("%s: %d faults are told", name, len(faults))
			continue
		}
		last := faults[len(faults)-1]
		if want := fmt.Sprintf("has more wrong with it than these %d faults; put these right first", len(faults)-1); last.Error() != fmt.Sprintf("%d:%d: %s", last.Line, last.Column, want) {
			t.Errorf("%s: the last of %d says %v", name, len(faults), last)
		}
		if !slices.IsSortedFunc(faults, func(a, b soap.Fault) int { return (a.Line-b.Line)<<20 + a.Column - b.Column }) {
			t.Errorf("%s: not sorted by place", name)
		}
		if used := after.TotalAlloc - before.TotalAlloc; used > 48<<20 {
			t.Errorf("%s: %d MiB for %d KiB of text", name, used>>20, len(text)>>10)
		}
	}
}

// Ninety-nine faults and the hundredth are told in full; nothing is added.
func TestAHundredFaultsAreAllTold(t *testing.T) {
	for _, n := range []int{99, 100, 101} {
		keys := make([]string, n)
		for i := range keys {
			keys[i] = fmt.Sprintf(`"k%d": 1`, i)
		}
		text := strings.Replace(plainFormula().text(), "{", "{"+strings.Join(keys, ", ")+", ", 1)
		_, faults := read(t, text)
		more := strings.Contains(faults[len(faults)-1].Reason, "has more wrong")
		if n <= 100 && (len(faults) != n || more) || n > 100 && (len(faults) != 101 || !more) {
			t.Errorf("%d wrong keys: %d faults, and more: %v", n, len(faults), more)
		}
	}
}

// A list far beyond its bound is one fault, at the list, whatever stands in it: in
// a file, and in a formula built in code.
func TestTenThousandOfAnythingAreOneFault(t *testing.T) {
	const many = 10_000
	list := func(item string) string { return strings.TrimSuffix(strings.Repeat(item+", ", many), ", ") }
	wrong := `{"colour": 1}`
	for key, pieces := range map[string]pieces{
		"oils":      plainFormula().with("oils", list(wrong)),
		"alkali":    plainFormula().with("alkali", list(wrong)),
		"parts":     plainFormula().with("parts", list(wrong)),
		"materials": plainFormula().with("materials", list(wrong)),
		"pigments":  plainFormula().with("pigments", list(wrong)),
		"markets":   plainFormula().with("markets", list(`"moon"`)),
		"acids":     plainFormula().with("acids", list(wrong)),
		"embeds":    plainFormula().with("embeds", list(wrong)),
		"toppings":  plainFormula().with("toppings", list(wrong)),

		"water.liquids":       plainFormula().with("water", `{"liquids": [`+list(wrong)+`]}`),
		"size.vessels":        plainFormula().with("size", `{"vessels": [`+list(wrong)+`]}`),
		"swatches.read":       plainFormula().with("swatches", `{"read": [`+list(wrong)+`]}`),
		"parts[0].colourants": plainFormula().with("parts", `{"part": "p", "colourants": [`+list(wrong)+`]}`),
		"parts[0].match":      plainFormula().with("parts", `{"part": "p", "match": [`+list(wrong)+`]}`),
	} {
		if _, faults := read(t, pieces.text()); len(faults) != 1 || faults[0].Path != key || !strings.Contains(faults[0].Reason, "has more than 500 items") {
			t.Errorf("%s: %v", key, faults)
		}
	}
	olive := builtIn(t, "olive")
	for path, change := range map[string]func(f *soap.Formula){
		"oils":   func(f *soap.Formula) { f.Oils = slices.Repeat([]soap.OilLine{{Oil: olive}}, many) },
		"alkali": func(f *soap.Formula) { f.Alkalis = make([]soap.AlkaliLine, many) },
		"parts":  func(f *soap.Formula) { f.Parts = make([]soap.Part, many) },
		"parts[0]": func(f *soap.Formula) {
			f.Parts = []soap.Part{{Name: "p", Rest: true, Additives: make([]soap.Addition, many)}}
		},
		"materials":    func(f *soap.Formula) { f.Materials = make([]fragrance.Supplied, many) },
		"pigments":     func(f *soap.Formula) { f.Pigments = make([]colour.Supplied, many) },
		"acids":        func(f *soap.Formula) { f.Acids = make([]soap.AcidLine, many) },
		"embeds":       func(f *soap.Formula) { f.Embeds = make([]soap.Embed, many) },
		"toppings":     func(f *soap.Formula) { f.Toppings = make([]soap.Topping, many) },
		"size.vessels": func(f *soap.Formula) { f.Size = soap.Size{Vessels: make([]soap.Vessel, many)} },
		"swatches":     func(f *soap.Formula) { f.Swatches = &tint.Swatches{Read: make([]tint.Swatch, many)} },

		"water.liquids": func(f *soap.Formula) { f.Water.Liquids = make([]soap.LiquidLine, many) },
	} {
		f := lanternBars()
		change(&f)
		faults := faultsOf(t, f.Check())
		n := 0
		for _, fault := range faults {
			if strings.HasPrefix(fault.Path, path) {
				n++
			}
		}
		if n != 1 || len(faults) > 3 {
			t.Errorf("%s: %d faults, %d in all: %.300v", path, n, len(faults), faults)
		}
	}
}

// A million brackets are refused at the seventeenth, on no more than a copy of the
// text.
func TestAMillionBracketsAreRefusedAtTheSeventeenth(t *testing.T) {
	for _, opened := range []string{"[", `{"a":`} {
		text := []byte(strings.Repeat(opened, 1_000_000)[:1_000_000])
		for name, parse := range map[string]func([]byte) error{
			"formula":  func(text []byte) error { _, _, err := soap.ParseFormula(text); return err },
			"swatches": func(text []byte) error { _, _, err := soap.ParseSwatches(text); return err },
		} {
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			err := parse(text)
			runtime.ReadMemStats(&after)
			faults := faultsOf(t, err)
			if len(faults) != 1 || faults[0].Column != 1+16*len(opened) || !strings.Contains(faults[0].Reason, "nested too deeply") {
				t.Errorf("%s of %s: %v", name, opened, faults)
			}
			if used := after.TotalAlloc - before.TotalAlloc; used > 2<<20 {
				t.Errorf("%s of %s: %d bytes", name, opened, used)
			}
		}
	}
}

// In JSON what a name has of HTML is escaped, so that it may stand in a page.
func TestNoNameBringsMarkupIntoTheJSON(t *testing.T) {
	const markup = `</script><b>&`
	text := richFormulas(t)["names/every-name.json"]
	for _, name := range []string{"Lantern walk, every name (invented)", "Village hall blend", "oat milk", "cup", "cloud", "lantern-pear", "dusk-blue", "Dusk blue", "plain", "fine salt", "little moon", "pressed cornflower"} {
		changed := strings.ReplaceAll(text, `"`+name+`"`, `"`+markup+`"`)
		f, _, err := soap.ParseFormula([]byte(changed))
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		b, err := f.Batch()
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		tinted, err := b.Tint()
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		came := 0
		for _, value := range []json.Marshaler{b, b.Caps(), tinted} {
			out, err := value.MarshalJSON()
			if err != nil || !json.Valid(out) {
				t.Errorf("%s: %v", name, err)
			}
			if bytes.ContainsAny(out, "<>&") {
				t.Errorf("%s comes raw into %.80s", name, out)
			}
			came += bytes.Count(out, []byte(`\u003c/script\u003e`))
		}
		if came == 0 {
			t.Errorf("%s comes into no output", name)
		}
	}
}

// In a formula built in code, too, no name may have a control.
func TestATypedNameWithAControlIsRefused(t *testing.T) {
	for _, bad := range []string{"a\x1b[31mb", "a\nb", "a\u2028b", "a\u202eb", "a\u2066b", "a\x00b", "a\u0085b", "\xff"} {
		for path, change := range map[string]func(f *soap.Formula){
			"formula": func(f *soap.Formula) { f.Name = bad },
			"parts[0].part": func(f *soap.Formula) {
				f.Parts = []soap.Part{{Name: bad, Rest: true}}
			},
			"parts[0].additives[0].additive": func(f *soap.Formula) {
				f.Parts = []soap.Part{{Name: "p", Rest: true, Additives: []soap.Addition{{Name: bad, Load: soap.Load{Mass: units.Grams(1)}}}}}
			},
			"parts[0].colourants[0].colourant": func(f *soap.Formula) {
				f.Parts = []soap.Part{{Name: "p", Rest: true, Colourants: []soap.Addition{{Name: bad, Load: soap.Load{Mass: units.Grams(1)}}}}}
			},
			"parts[0].fragrances[0].fragrance": func(f *soap.Formula) {
				f.Parts = []soap.Part{{Name: "p", Rest: true, Fragrances: []soap.Addition{{Name: bad, Load: soap.Load{Mass: units.Grams(1)}}}}}
			},
			"water.liquids[0].liquid": func(f *soap.Formula) {
				f.Water.Liquids = []soap.LiquidLine{{Name: bad, Share: units.Percent(10), Water: units.Percent(90)}}
			},
			"materials[0].fragrance":    func(f *soap.Formula) { f.Materials = []fragrance.Supplied{{ID: bad}} },
			"materials[0].allergens[0]": func(f *soap.Formula) { f.Materials = []fragrance.Supplied{{ID: "m", Allergens: []string{bad}}} },
			"pigments[0].colourant":     func(f *soap.Formula) { f.Pigments = []colour.Supplied{{ID: bad}} },
			"pigments[0].name":          func(f *soap.Formula) { f.Pigments = []colour.Supplied{{ID: "p", Name: bad}} },
			"swatches.read[0].swatch":   func(f *soap.Formula) { f.Swatches = &tint.Swatches{Read: []tint.Swatch{{Name: bad}}} },
			"swatches.name":             func(f *soap.Formula) { f.Swatches = &tint.Swatches{Name: bad} },
			"swatches.read[0].loads": func(f *soap.Formula) {
				f.Swatches = &tint.Swatches{Read: []tint.Swatch{{Name: "s", Loads: []tint.Load{{Colourant: bad}}}}}
			},
			"size.vessels[0].vessel": func(f *soap.Formula) { f.Size = soap.Size{Vessels: []soap.Vessel{{Name: bad}}} },
			"embeds[0].embed":        func(f *soap.Formula) { f.Embeds = []soap.Embed{{Name: bad}} },
			"toppings[0].topping":    func(f *soap.Formula) { f.Toppings = []soap.Topping{{Name: bad}} },
			"materials[0].blend[0].fragra": func(f *soap.Formula) {
				f.Materials = []fragrance.Supplied{{ID: "m", Blend: []fragrance.Share{{Fragrance: bad}}}}
			},
		} {
			f := lanternBars()
			change(&f)
			faults := faultsOf(t, f.Check())
			if !slices.ContainsFunc(faults, func(f soap.Fault) bool { return strings.HasPrefix(f.Path, path) }) {
				t.Errorf("%s may be %q: %v", path, bad, faults)
			}
			if said := faults.Error(); strings.ContainsAny(said, "\x00\x1b\u0085\u2028\u202e\u2066") || !utf8.ValidString(said) || strings.Count(said, "\n") != len(faults)-1 {
				t.Errorf("%s: %q is said", path, said)
			}
		}
	}
}
