package sheet_test

import (
	"html"
	"os"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/sheet"
	"example.com/lyewright/units"
)

var tags = regexp.MustCompile(`<[^<>]*>`)

// Names are a stranger's. In the page of colours they are text: the tags of the page is
// that of plain names. On the sheet they keep to its columns.
func FuzzNamesOnPages(f *testing.F) {
	text, err := os.ReadFile("../../testdata/formulas/lantern-dusk.json")
	if err != nil {
		f.Fatal(err)
	}
	formula, _, err := soap.ParseFormula(text)
	if err != nil {
		f.Fatal(err)
	}
	formula.Parts = formula.Parts[:1:1]
	formula.Parts[0].Share, formula.Parts[0].Rest = units.Percent(100), false
	formula.Size = soap.Size{Oils: units.Grams(500)}
	named := func(name string) (soap.Batch, error) {
		g := formula
		g.Name = name
		g.Parts = append([]soap.Part(nil), formula.Parts...)
		g.Parts[0].Name = name
		swatches := *formula.Swatches
		swatches.Read = append(swatches.Read[:0:0], swatches.Read...)
		swatches.Read[0].Name = name
		g.Swatches = &swatches
		return g.Batch()
	}
	page := func(t testing.TB, b soap.Batch) string {
		var w strings.Builder
		if err := sheet.WriteTintPage(&w, b); err != nil {
			t.Fatal(err)
		}
		return w.String()
	}
	plain, err := named("dusk")
	if err != nil {
		f.Fatal(err)
	}
	skeleton := strings.Join(tags.FindAllString(page(f, plain), -1), "\n")
	f.Add("Lantern walk, dusk") // as most are
	f.Fuzz(func(t *testing.T, name string) {
		b, err := named(name)
		if err != nil {
			mustBePlaced(t, err)
			return
		}
		got := page(t, b)
		if tags := strings.Join(tags.FindAllString(got, -1), "\n"); tags != skeleton {
			t.Errorf("%q changes the tags of the page", name)
		}
		shown := tags.ReplaceAllString(got, "")
		if strings.ContainsAny(shown, "<>") || !strings.Contains(html.UnescapeString(shown), name) || !utf8.ValidString(got) {
			t.Errorf("%q does not stand on the page as it is", name)
		}
		narrow(t, name, write(t, b, units.Gram))
		for _, write := range []func(*strings.Builder) error{
			func(w *strings.Builder) error { return sheet.WriteTint(w, b, units.Gram) },
			func(w *strings.Builder) error { return sheet.WriteCaps(w, b, units.Gram) },
			func(w *strings.Builder) error { return sheet.WriteWorking(w, b) },
		} {
			var w strings.Builder
			if err := write(&w); err != nil {
				t.Fatal(err)
			}
			narrow(t, name, w.String())
		}
	})
}

// mustBePlaced checks that a name that is refused is refused by its path.
func mustBePlaced(t *testing.T, err error) {
	t.Helper()
	faults, ok := err.(soap.Faults)
	if !ok || len(faults) == 0 {
		t.Fatalf("%v is no list of faults", err)
	}
	for _, f := range faults {
		if f.Path == "" || f.Reason == "" || f.Kind == nil {
			t.Errorf("%+v says not where, or not why", f)
		}
	}
}
