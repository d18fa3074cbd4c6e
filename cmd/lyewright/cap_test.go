package main

import (
	"encoding/json"
	"os"
	"slices"
	"strings"
	"testing"
)

// The keys of the format, chapter "Fragrance", on every formula there is.
func TestTheCapsHaveEveryKeyOfTheFormat(t *testing.T) {
	fragrances, allergens, bound := 0, 0, 0
	for _, path := range names(t, formulas+"/*.json") {
		stdout, stderr, _ := lyewright("", "cap", "-json", path)
		var c map[string]any
		if err := json.Unmarshal([]byte(stdout), &c); err != nil {
			t.Fatal(path, err, stderr)
		}
		if !strings.HasPrefix(stdout, `{"schema":"cap/1",`) || c["category"] != "9" || strings.Count(stdout, "null") != strings.Count(stdout, `"binding":null`) {
			t.Errorf("%s: schema first, category 9, and null for binding alone: %.100s", path, stdout)
		}
		has := func(where string, v any, keys string) map[string]any {
			object, ok := v.(map[string]any)
			if !ok {
				t.Fatalf("%s: %s is %T", path, where, v)
			}
			for key := range strings.FieldsSeq(keys) {
				if _, there := object[key]; !there {
					t.Errorf("%s: %s lacks %s", path, where, key)
				}
			}
			return object
		}
		list := func(object map[string]any, key string) []any {
			items, ok := object[key].([]any)
			if !ok {
				t.Fatalf("%s: %s is %T", path, key, object[key])
			}
			return items
		}
		has("caps", c, "law edition parts piece notices")
		for _, p := range list(c, "parts") {
			part := has("part", p, "part fragrances fragrance_of_dry_bar_pct allergens allergens_complete")
			for _, f := range list(part, "fragrances") {
				fragrances++
				one := has("fragrance", f, "fragrance dose_g of_dry_bar_pct of_dry_piece_pct binding next no_limit_known")
				if one["binding"] != nil {
					bound++
					has("bound fragrance", f, "cap_of_dry_bar_pct cap_g limit_pct share_of_limit_pct")
				} else if _, capped := one["cap_of_dry_bar_pct"]; capped {
					t.Errorf("%s: a cap without what binds", path)
				}
				if n := len(list(one, "next")); n > 3 {
					t.Errorf("%s: the next %d", path, n)
				}
			}
		}
		piece := has("piece", c["piece"], "fragrance_of_dry_pct allergens allergens_complete")
		for _, a := range list(piece, "allergens") {
			allergens++
			one := has("allergen", a, "name of_dry_pct list only_in_part")
			if one["list"] != "old" && one["list"] != "new" {
				t.Errorf("%s: list %v", path, one["list"])
			}
		}
	}
	if fragrances < 5 || allergens < 10 || bound < 3 {
		t.Errorf("%d fragrances, %d allergens, %d bound", fragrances, allergens, bound)
	}
}

// What every answer about fragrance says, in text and in JSON.
func TestEveryAnswerAboutFragranceSaysWhatItIsNot(t *testing.T) {
	for _, args := range [][]string{
		{"cap", formulas + "/scented-cups.json"},
		{"cap", "-json", formulas + "/scented-cups.json"},
		{"cap", formulas + "/single-bar.json"},
		{"fragrance"},
		{"fragrance", "lavender"},
	} {
		stdout, _, _ := lyewright("", args...)
		flat := strings.Join(strings.Fields(stdout), " ")
		for _, notice := range []string{"The supplier's certificate and local law come first. This is not a safety assessment.", "lists of prohibited and of restricted substances are not held in full", "category 9"} {
			if strings.Count(flat, notice) < 1 {
				t.Errorf("%v does not say %q", args, notice)
			}
		}
		if strings.Count(flat, "not held in full") != 1 {
			t.Errorf("%v says %d times that the lists are not held in full", args, strings.Count(flat, "not held in full"))
		}
	}
	if stdout, _, _ := lyewright("", "cap", "-law", "ifra", formulas+"/scented-cups.json"); strings.Contains(strings.Join(strings.Fields(stdout), " "), "not held in full") {
		t.Error("under the IFRA Standards alone the European lists are of no matter")
	}
}

// What is not judged never reads as free: where a maximum is not held, or a trace has no
// ceiling, or nothing is listed, no line says that no limit binds and leaves it there.
func TestWhatIsNotJudgedNeverReadsAsFree(t *testing.T) {
	for what, constituents := range map[string]string{
		"a maximum that is not held": `"constituents":[{"cas":"119-36-8","share":"98 %"}],"complete":true`,
		"a natural trace":            `"natural":true,"constituents":[{"cas":"57-06-7","share":"1 %"}],"complete":true`,
		"a natural material within":  `"constituents":[{"cas":"8000-34-8","share":"50 %"}],"complete":true`,
		"nothing listed":             `"allergens":[]`,
	} {
		text := formulaWith("materials", `[{"fragrance":"hall","`+constituents[1:]+`}]`)
		text = strings.Replace(text, `"share":"100 %"}]`, `"share":"100 %","fragrances":[{"fragrance":"hall","load":"1 % of oils"}]}]`, 1)
		stdout, stderr, _ := lyewright(text, "cap", "-")
		flat := strings.Join(strings.Fields(stdout), " ")
		if !strings.Contains(flat, "No limit binds, of what is known.") {
			t.Errorf("%s: %s%s", what, flat, stderr)
		}
		object, _, _ := lyewright(text, "cap", "-json", "-")
		var c struct {
			Parts    []struct{ Fragrances []struct{ Unjudged []any } }
			Findings []struct{ Code string }
		}
		if err := json.Unmarshal([]byte(object), &c); err != nil || len(c.Parts[0].Fragrances[0].Unjudged) == 0 || len(c.Findings) == 0 {
			t.Errorf("%s: %v, %s", what, err, object)
		}
	}
	table, _, _ := lyewright("", "fragrance")
	for line := range strings.Lines(table) {
		for _, open := range []string{"lavender ", "patchouli ", "rosemary-spanish-type "} {
			if strings.HasPrefix(line, open) && !strings.Contains(line, "of what") {
				t.Errorf("%s", line)
			}
		}
	}
}

// The flag wins over the markets, and over what is read.
func TestTheLawOfTheFlagWins(t *testing.T) {
	law := func(text string, args ...string) string {
		stdout, stderr, _ := lyewright(text, append(append([]string{"cap", "-json"}, args...), "-")...)
		var c struct{ Law string }
		if err := json.Unmarshal([]byte(stdout), &c); err != nil {
			return stderr
		}
		return c.Law
	}
	for markets, want := range map[string]string{`["eu"]`: "ifra+eu", `["us"]`: "ifra", `["us","eu"]`: "ifra+eu"} {
		text := formulaWith("markets", markets)
		if got := law(text); got != want {
			t.Errorf("%s: %s", markets, got)
		}
		if got := law(text, "-law", "ifra"); got != "ifra" {
			t.Errorf("%s with -law ifra: %s", markets, got)
		}
		if got := law(text, "-law", "eu"); got != "ifra+eu" {
			t.Errorf("%s with -law eu: %s", markets, got)
		}
	}
	lily := formulaWith("materials", `[{"fragrance":"old-lily","constituents":[{"cas":"80-54-6","share":"1 %"}]}]`)
	if got := law(lily); !strings.Contains(got, "materials[0].constituents[0].cas") {
		t.Errorf("what is prohibited in the Union: %s", got)
	}
	if got := law(lily, "-law", "ifra"); got != "ifra" {
		t.Errorf("with -law ifra: %s", got)
	}
}

// Several files, and a formula to a line, as with batch.
func TestCapsOfSeveralFormulas(t *testing.T) {
	one, two := formulas+"/scented-cups.json", formulas+"/too-much-clove.json"
	stdout, stderr, status := lyewright("", "cap", "-json", one, two)
	if lines := strings.Split(strings.TrimSpace(stdout), "\n"); len(lines) != 2 || status != dangerous || stderr != "" || !strings.Contains(lines[1], `"file":"`+two+`"`) {
		t.Errorf("exit %d, %s", status, stderr)
	}
	line := oneLine(t, "scented-cups.json", "cups") + "\n"
	stdout, _, status = lyewright(line+"{\n"+line, "cap", "-json", "-lines", "-")
	lines := strings.Split(strings.TrimSpace(stdout), "\n")
	if len(lines) != 3 || status != wrongInput || !strings.Contains(lines[1], "error/1") || !strings.Contains(lines[2], `"input_line":3`) {
		t.Errorf("exit %d: %.300s", status, stdout)
	}
	if stdout, stderr, status := lyewright("", "cap", "none.json"); stdout != "" || status != cannotIO || stderr == "" {
		t.Errorf("exit %d: %s%s", status, stdout, stderr)
	}
	if stdout, _, status := lyewright("", "cap", formulas+"/wrong/materials-astray.json"); stdout != "" || status != wrongInput {
		t.Errorf("exit %d: %s", status, stdout)
	}
}

// A cap that was printed may be typed back: as a load it passes, as is.
func TestAPrintedCapMayBeTypedBack(t *testing.T) {
	text, err := os.ReadFile(formulas + "/too-much-clove.json")
	if err != nil {
		t.Fatal(err)
	}
	type fragranceCap struct {
		Fragrance string
		Cap       json.Number `json:"cap_g"`
		CapOils   json.Number `json:"cap_of_oils_pct"`
	}
	for _, oils := range []string{"800 g", "1034 g", "777.7 g", "123.456789 g"} {
		sized := strings.Replace(string(text), "800 g", oils, 1)
		stdout, _, _ := lyewright(sized, "cap", "-json", "-")
		var c struct {
			Parts []struct{ Fragrances []fragranceCap }
		}
		if err := json.Unmarshal([]byte(stdout), &c); err != nil {
			t.Fatal(err)
		}
		clove := c.Parts[0].Fragrances[1]
		for _, load := range []string{clove.Cap.String() + " g", clove.CapOils.String() + " % of oils"} {
			again := strings.Replace(sized, "1.05 % of oils", load, 1)
			if _, _, status := lyewright(again, "batch", "-"); status != done {
				t.Errorf("%s of oils: %s of clove leaf is a danger", oils, load)
			}
		}
	}
}

// The names of the table are those of the ids that are looked up.
func TestTheTableOfFragrancesNamesEveryOne(t *testing.T) {
	stdout, _, _ := lyewright("", "fragrance", "-json")
	var all []struct {
		Fragrance    string
		Constituents []struct{ Cas, Source, How string }
	}
	if err := json.Unmarshal([]byte(stdout), &all); err != nil || len(all) != 105 {
		t.Fatalf("%d fragrances (%v), want 105, as fragrance/tables_test.go counts them", len(all), err)
	}
	table, _, _ := lyewright("", "fragrance")
	for _, m := range all {
		if !strings.Contains(table, "\n"+m.Fragrance+" ") {
			t.Errorf("%s is not in the table", m.Fragrance)
		}
		for _, c := range m.Constituents {
			if c.Cas == "" || c.Source == "" || !slices.Contains([]string{"read", "memory"}, c.How) {
				t.Errorf("%s: %+v", m.Fragrance, c)
			}
		}
	}
	for line := range strings.Lines(table) {
		if n := len([]rune(line)) - 1; n > 78 {
			t.Errorf("%d columns: %s", n, line)
		}
	}
}

// In a blend a certificate may stand for what a part does not list: then limit ÷ share is
// not all there is to a cap, and it is said. By hand: 0.001/0.02 is 5 %; 20 % of clove use
// 0.2/1 of it per percent, 30 % of pear certified for 2.4 % 0.3/2.4: 1/(0.2 + 0.125) is
// 3.0769 %.
func TestACapOfABlendSaysWhatItIsMadeOf(t *testing.T) {
	text := formulaWith("materials", `[{"fragrance":"pear","certificates":[{"category":"9","limit":"2.4 %","amendment":"51"}]},
		{"fragrance":"mix","blend":[{"fragrance":"clove-bud","share":"20 %"},{"fragrance":"pear","share":"30 %"},{"fragrance":"eucalyptus","share":"50 %"}]}]`)
	text = strings.Replace(text, `"share":"100 %"}]`, `"share":"100 %","fragrances":[{"fragrance":"mix","load":"1 % of oils"}]}]`, 1)
	stdout, stderr, _ := lyewright(text, "cap", "-")
	flat := strings.Join(strings.Fields(stdout), " ")
	for _, said := range []string{"÷ 0.02 % of it", "and what the certificates of its parts stand for = 3.0769 %", "the certificates of what it is blended of", "of what is known"} {
		if !strings.Contains(flat, said) {
			t.Errorf("does not say %q: %s%s", said, flat, stderr)
		}
	}
}
