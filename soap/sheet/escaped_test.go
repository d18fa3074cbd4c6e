package sheet_test

import (
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"os"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/sheet"
)

// markup is a name that would do harm on a page where it came raw.
const markup = `<script>alert(1)</script>&"'`

// tintPage gives the page of a formula, nothing where the formula is refused.
func tintPage(t *testing.T, text string) string {
	t.Helper()
	f, _, err := soap.ParseFormula([]byte(text))
	var faults soap.Faults
	if errors.As(err, &faults) {
		return ""
	}
	b, err := f.Batch()
	if err != nil {
		return ""
	}
	var page strings.Builder
	if err := sheet.WriteTintPage(&page, b); err != nil {
		t.Fatal(err)
	}
	return page.String()
}

// skeleton gives the tags of a page with their attributes, in order, and its text.
func skeleton(t *testing.T, page string) (tags []string, text string) {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(page))
	d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	var all strings.Builder
	for {
		token, err := d.Token()
		switch token := token.(type) {
		case xml.StartElement:
			tag := token.Name.Local
			for _, a := range token.Attr {
				tag += " " + a.Name.Local + "=" + a.Value
			}
			tags = append(tags, tag)
		case xml.EndElement:
			tags = append(tags, "/"+token.Name.Local)
		case xml.CharData:
			all.Write(token)
		case xml.Comment, xml.ProcInst:
			t.Errorf("a page with %T", token)
		}
		if errors.Is(err, io.EOF) {
			return tags, all.String()
		}
		if err != nil {
			t.Fatal(err)
		}
	}
}

// textsOf gives every text of a JSON value, keys too, each once.
func textsOf(value any) (texts []string) {
	add := func(more ...string) {
		for _, text := range more {
			if text != "" && !slices.Contains(texts, text) {
				texts = append(texts, text)
			}
		}
	}
	switch value := value.(type) {
	case string:
		add(value)
	case []any:
		for _, item := range value {
			add(textsOf(item)...)
		}
	case map[string]any:
		for key, item := range value {
			add(key)
			add(textsOf(item)...)
		}
	}
	return texts
}

// Every text of a formula in turn, wherever it stands, is renamed to markup. Where the
// formula is still one, its page has the very tags that it had before, and the name
// stands in it as text.
func TestNoNameBringsATagIntoThePage(t *testing.T) {
	source, err := os.ReadFile("../../testdata/names/every-name.json")
	if err != nil {
		t.Fatal(err)
	}
	text := string(source)
	before, _ := skeleton(t, tintPage(t, text))
	if len(before) < 300 {
		t.Fatalf("a page of %d tags", len(before))
	}
	var tree any
	if err := json.Unmarshal(source, &tree); err != nil {
		t.Fatal(err)
	}
	quote := func(text string) string {
		quoted, err := json.Marshal(text)
		if err != nil {
			t.Fatal(err)
		}
		return string(quoted)
	}
	var taken, shown []string
	for _, name := range textsOf(tree) {
		page := tintPage(t, strings.ReplaceAll(text, quote(name), quote(markup)))
		if page == "" {
			continue // no name, but a key, a quantity or a known word
		}
		taken = append(taken, name)
		tags, words := skeleton(t, page)
		if slices.ContainsFunc(tags, func(tag string) bool { return strings.Contains(tag, "script") }) || strings.Contains(page, "<script") || strings.Contains(page, "alert(1)</") {
			t.Errorf("%q comes raw into the page", name)
		}
		if !slices.Equal(tags, before) && name != "titanium-dioxide" { // under another name it is no white, and judged otherwise
			t.Errorf("renaming %q brings other tags: %d, not %d", name, len(tags), len(before))
		}
		if strings.Contains(words, markup) {
			shown = append(shown, name)
		}
	}
	for _, name := range []string{
		"Lantern walk, every name (invented)", "ground", "cloud", "glow", "Dusk blue", "moth mica", "fine salt", "star dust",
		"gilding", "loaf", "plain", "white 0.3", "white 1", "blue 0.3", "blue 1",
	} {
		if !slices.Contains(taken, name) {
			t.Errorf("the formula does not take markup for %q", name)
		} else if !slices.Contains(shown, name) {
			t.Errorf("%q is not on the page", name)
		}
	}
	for _, name := range []string{"Village hall blend", "Yard blend", "Lucerna Seed Oil", "oat milk", "cup", "swirl", "lantern-pear", "dusk-walk", "dusk photographs (invented)", "little moon", "pressed cornflower", "hall-blend"} {
		if !slices.Contains(taken, name) {
			t.Errorf("the formula does not take markup for %q", name)
		}
	}
}

// A page that did not escape would be seen.
func TestARawNameWouldBeSeenOnThePage(t *testing.T) {
	source, err := os.ReadFile("../../testdata/names/every-name.json")
	if err != nil {
		t.Fatal(err)
	}
	page := tintPage(t, string(source))
	before, _ := skeleton(t, page)
	raw := strings.Replace(page, "moth mica", "<b>moth mica</b>", 1)
	if after, _ := skeleton(t, raw); slices.Equal(after, before) {
		t.Error("a tag more makes no difference")
	}
}
