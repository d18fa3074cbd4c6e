package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

const dusk = formulas + "/lantern-dusk.json"

// apart takes the swatches out of the shipped formula: the formula without, and they alone.
func apart(t *testing.T) (formula, swatches string) {
	t.Helper()
	text, err := os.ReadFile(dusk)
	if err != nil {
		t.Fatal(err)
	}
	var f map[string]json.RawMessage
	if err := json.Unmarshal(text, &f); err != nil {
		t.Fatal(err)
	}
	swatches = string(f["swatches"])
	delete(f, "swatches")
	without, err := json.Marshal(f)
	if err != nil {
		t.Fatal(err)
	}
	return string(without), swatches
}

func file(t *testing.T, name, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// The keys of the format, chapter "Colour", on the shipped formula: every one that has
// something to say there.
func TestTheTintHasEveryKeyOfTheFormat(t *testing.T) {
	stdout, stderr, _ := lyewright("", "tint", "-json", dusk)
	if !strings.HasPrefix(stdout, `{"schema":"tint/1",`) || strings.Contains(stdout, "null") || strings.Contains(stdout, "-0,") {
		t.Fatalf("%.200s, %s", stdout, stderr)
	}
	var c struct {
		Fit struct {
			Bands    *int
			Mean     *float64 `json:"delta_e00_mean"`
			Max      *float64 `json:"delta_e00_max"`
			Swatches []struct {
				Swatch string
				Delta  *float64 `json:"delta_e00"`
			}
		}
		Parts []struct {
			Part      string
			Lab       []float64
			SRGB      string
			InGamut   *bool    `json:"in_gamut"`
			Delta     *float64 `json:"delta_e00"`
			Floor     *float64
			Reachable *bool
			Loads     []struct {
				Colourant string
				OfBatter  *float64 `json:"load_of_batter_pct"`
				OfOils    *float64 `json:"load_of_oils_pct"`
				At        string
			}
			Cost *float64
		}
		Order    []string
		Findings *[]any
	}
	if err := json.Unmarshal([]byte(stdout), &c); err != nil {
		t.Fatal(err)
	}
	if c.Fit.Bands == nil || *c.Fit.Bands != 31 || c.Fit.Mean == nil || c.Fit.Max == nil || len(c.Fit.Swatches) != 12 || c.Fit.Swatches[0].Swatch != "plain" || c.Fit.Swatches[0].Delta == nil {
		t.Errorf("%+v", c.Fit)
	}
	if !slices.Equal(c.Order, []string{"glow", "night"}) || c.Findings == nil || len(c.Parts) != 2 {
		t.Errorf("%v, %d parts", c.Order, len(c.Parts))
	}
	hex := regexp.MustCompile("^#[0-9a-f]{6}$")
	for i, p := range c.Parts {
		matched := i == 1
		if len(p.Lab) != 3 || !hex.MatchString(p.SRGB) || p.InGamut == nil || p.Floor == nil || p.Cost == nil || (p.Delta != nil) != matched || (p.Reachable != nil) != matched || len(p.Loads) < 2 {
			t.Errorf("%+v", p)
		}
		for _, l := range p.Loads {
			if l.Colourant == "" || l.OfBatter == nil || l.OfOils == nil || (l.At != "") != matched {
				t.Errorf("%+v", l)
			}
		}
	}
}

// Swatches in a file of their own say the same, whether bare or under their key; those of
// the formula itself come first.
func TestSwatchesFromAFile(t *testing.T) {
	formula, swatches := apart(t)
	want, _, _ := lyewright("", "tint", dusk)
	path := file(t, "dusk.json", formula)
	for _, text := range []string{swatches, `{"swatches": ` + swatches + `}`} {
		shelf := file(t, "shelf.json", text)
		if got, stderr, status := lyewright("", "tint", "-swatches", shelf, path); got != want || status != done {
			t.Errorf("exit %d, %s", status, stderr)
		}
		for _, verb := range []string{"batch", "check", "cap"} {
			with, _, _ := lyewright("", verb, dusk)
			if got, stderr, status := lyewright("", verb, "-swatches", shelf, path); strings.ReplaceAll(got, path, dusk) != with && verb != "check" || status != done {
				t.Errorf("%s: exit %d, %s", verb, status, stderr)
			}
		}
	}
	other := file(t, "other.json", strings.Replace(swatches, "dusk swatches", "other swatches", 1))
	if got, _, _ := lyewright("", "tint", "-swatches", other, dusk); got != want {
		t.Error("a formula's own swatches do not come first")
	}
	if _, stderr, status := lyewright("", "batch", path); status != wrongInput || !strings.Contains(stderr, "parts[1].match: asks for loads, and there are no swatches to find them from; add swatches, or give the colourants their loads") {
		t.Errorf("exit %d, %s", status, stderr)
	}
}

// The white may be a pigment of the formula's own, which a file of swatches does not know.
func TestAnOwnWhiteInAFileOfSwatches(t *testing.T) {
	formula, swatches := apart(t)
	own := func(text string) string { return strings.ReplaceAll(text, "titanium-dioxide", "chalk-white") }
	formula = strings.Replace(own(formula), `"colourant":"chalk-white","price"`, `"colourant":"chalk-white","ci":["77891"],"price"`, 1)
	got, stderr, status := lyewright(formula, "tint", "-swatches", file(t, "shelf.json", own(swatches)), "-")
	if status != done || !strings.Contains(got, "Whiter: no load of chalk-white up to 0.6936 % of batter") || !strings.Contains(got, "Predicted  L* 73.09, a* 12.63, b* 24.23") {
		t.Errorf("exit %d, %s\n%s", status, stderr, got)
	}
}

// What is wrong with a file of swatches is said of that file, where it stands.
func TestAWrongFileOfSwatches(t *testing.T) {
	_, swatches := apart(t)
	for _, row := range []struct {
		text, want string
	}{
		{strings.Replace(swatches, "0.3127", "1.3127", 1), `read[0].reflectance[1]: "1.3127" is not from 0 to 1`},
		{strings.Replace(swatches, "0.3127", `"0.3127"`, 1), `read[0].reflectance[1]: is a text where a bare number is needed; write it without quotation marks, such as 0.62`},
		{strings.Replace(swatches, "0.3127", "1e999", 1), `read[0].reflectance[1]: "1e999" is no figure that an instrument reads`},
		{strings.Replace(swatches, "0.3127", "0."+strings.Repeat("3", 50), 1), `is no figure that an instrument reads`},
		{strings.Replace(swatches, "0.3127", "0.02", 1), `read[0].reflectance[1]: "0.02" is no more than the surface alone reflects, 0.04; measure with the gloss excluded, or lower surface.outside`},
		{strings.Replace(swatches, `"10 nm"`, `"10"`, 1), `bands.step: "10" is not a wavelength; write a whole number of nm, such as "400 nm"`},
		{strings.Replace(swatches, `"reflectance"`, `"reflectence"`, 1), `read[0].reflectence: is not a key of a formula; did you mean reflectance?`},
		{strings.Replace(swatches, `0.3 % of batter`, `0.3 % of oils`, 1), `is not a share of the batter, and a swatch does not say how much oil its batter has; write it as "0.3 % of batter"`},
		{`{"swatches": ` + strings.Replace(swatches, "0.3127", "1.3127", 1) + `}`, `swatches.read[0].reflectance[1]: "1.3127" is not from 0 to 1`},
		{"[]", "is a list where swatches are needed"},
		{"", "is empty"},
	} {
		path := file(t, "shelf.json", row.text)
		stdout, stderr, status := lyewright("", "tint", "-swatches", path, dusk)
		if status != wrongInput || stdout != "" || !strings.HasPrefix(stderr, path+":") || !strings.Contains(stderr, ": "+row.want) && !strings.Contains(stderr, " "+row.want) {
			t.Errorf("exit %d, %s\nwant %s", status, stderr, row.want)
		}
	}
	if _, stderr, status := lyewright("", "tint", "-swatches", "nowhere.json", dusk); status != cannotIO || !strings.HasPrefix(stderr, "nowhere.json: cannot be read") {
		t.Errorf("exit %d, %s", status, stderr)
	}
	if _, stderr, status := lyewright("", "batch", "-json", "-swatches", "nowhere.json", dusk); status != cannotIO || !strings.HasPrefix(stderr, `{"schema":"error/1"`) {
		t.Errorf("exit %d, %s", status, stderr)
	}
}

func TestAPageIsWrittenBesideTheFigures(t *testing.T) {
	want, _, _ := lyewright("", "tint", dusk)
	path := filepath.Join(t.TempDir(), "dusk.html")
	if got, stderr, status := lyewright("", "tint", "-html", path, dusk); got != want || status != done {
		t.Errorf("exit %d, %s", status, stderr)
	}
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	page := string(text)
	for _, never := range []string{"<script", "http:", "https:", "url(", "@import", "<img", "<link"} {
		if strings.Contains(page, never) {
			t.Errorf("the page has %s", never)
		}
	}
	// Every swatch has a name, and its numbers stand in the table before it.
	if n := strings.Count(page, "<svg "); n != 2 || strings.Count(page, "<title>") != n+1 || strings.Count(page, "<figcaption>") != n || strings.Index(page, "<table>") > strings.Index(page, "<svg ") || strings.Count(page, "<h1>") != 1 {
		t.Errorf("%d swatches", n)
	}
	if strings.Count(page, "<table>") != strings.Count(page, "<caption>") || !strings.Contains(page, `<th scope="row">night</th><td class="text">predicted</td><td>42.87</td>`) {
		t.Error(page)
	}
}

func TestAPageEscapesNames(t *testing.T) {
	formula, swatches := apart(t)
	const evil = `<script>alert(\"x\")</script>&`
	formula = strings.ReplaceAll(formula, `"night"`, `"`+evil+`"`)
	formula = strings.Replace(formula, "Lantern walk dusk (invented)", evil, 1)
	path := filepath.Join(t.TempDir(), "page.html")
	if _, stderr, status := lyewright(formula, "tint", "-swatches", file(t, "s.json", strings.Replace(swatches, `"plain"`, `"`+evil+`"`, 1)), "-html", path, "-"); status != done {
		t.Fatal(status, stderr)
	}
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if strings.Contains(string(text), "<script") || strings.Count(string(text), "&lt;script&gt;alert(&#34;x&#34;)&lt;/script&gt;&amp;") < 5 {
		t.Errorf("%s", text)
	}
}

func TestAPageIsOfOneFormula(t *testing.T) {
	for _, args := range [][]string{{"tint", "-html", "x.html", dusk, dusk}, {"tint", "-html", "x.html", "-lines", dusk}} {
		if stdout, stderr, status := lyewright("", args...); status != wrongInput || stdout != "" || !strings.Contains(stderr, "-html\" makes the page of one formula; name one file, without -lines") {
			t.Errorf("%v: exit %d, %s", args, status, stderr)
		}
	}
	text, err := os.ReadFile(dusk)
	if err != nil {
		t.Fatal(err)
	}
	line := strings.ReplaceAll(string(text), "\n", " ")
	if stdout, stderr, status := lyewright(line+"\n"+line+"\n", "tint", "-html", filepath.Join(t.TempDir(), "x.html"), "-"); status != wrongInput || stdout != "" || !strings.Contains(stderr, "one formula") {
		t.Errorf("two on standard input: exit %d, %s, %.60s", status, stderr, stdout)
	}
	nowhere := filepath.Join(t.TempDir(), "no", "such", "page.html")
	if stdout, stderr, status := lyewright("", "tint", "-html", nowhere, dusk); status != cannotIO || stdout != "" || !strings.HasPrefix(stderr, nowhere+": cannot be written: ") {
		t.Errorf("exit %d, %q, %s", status, stdout, stderr)
	}
	// Of a wrong formula there is no page.
	path := filepath.Join(t.TempDir(), "page.html")
	if _, _, status := lyewright("{}", "tint", "-html", path, "-"); status != wrongInput {
		t.Error(status)
	}
	if _, err := os.Stat(path); !os.IsNotExist(err) {
		t.Error("a page of a wrong formula")
	}
}

func TestTintByTheLine(t *testing.T) {
	text, err := os.ReadFile(dusk)
	if err != nil {
		t.Fatal(err)
	}
	line := strings.ReplaceAll(string(text), "\n", " ")
	stdout, _, status := lyewright(line+"\n{}\n"+line+"\n", "tint", "-json", "-")
	lines := strings.Split(strings.TrimSpace(stdout), "\n")
	if status != wrongInput || len(lines) != 3 || !strings.HasPrefix(lines[0], `{"schema":"tint/1"`) || !strings.HasPrefix(lines[1], `{"schema":"error/1"`) || !strings.HasSuffix(lines[2], `"input_line":3}`) {
		t.Errorf("exit %d, %.200s", status, stdout)
	}
}
