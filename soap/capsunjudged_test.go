package soap_test

import (
	"slices"
	"strings"
	"testing"
)

// A part with anything unjudged is not judged as a whole (FORMULA.md, Amendments): an additive or a colourant that
// bears the name of a fragrance may be that. Salt and soot are no fragrance.
func TestAPartWithTheNameOfAFragranceIsNotJudgedAsAWhole(t *testing.T) {
	for line, unjudged := range map[string][]string{
		`"additives": [{"additive": "cinnamon-bark", "load": "3 % of oils"}]`:                     {"cinnamon-bark"},
		`"colourants": [{"colourant": "cinnamon-bark", "unlisted": true, "load": "3 % of oils"}]`: {"cinnamon-bark"},
		`"additives": [{"additive": "fine salt", "load": "3 % of oils"}]`:                         nil,
		`"colourants": [{"colourant": "lantern soot", "unlisted": true, "load": "3 % of oils"}]`:  nil,
	} {
		b := plainFormula().with("parts", `{"part": "glow", "share": "100 %", `+line+`}`).batch(t)
		caps := b.Caps()
		if got := caps.Parts[0].Unjudged; !slices.Equal(got, unjudged) {
			t.Errorf("%s: unjudged %q", line, got)
		}
		_, complete := caps.Labels()
		if of := caps.Pieces[0]; complete != (unjudged == nil) || of.AllergensComplete != complete {
			t.Errorf("%s: its allergens are all listed: %v, those of the piece: %v", line, complete, of.AllergensComplete)
		}
		text, err := caps.MarshalJSON()
		if whole := strings.Contains(string(text), `"judged_as_a_whole":true`); err != nil || whole != (unjudged == nil) {
			t.Errorf("%s: %v, judged as a whole: %v", line, err, whole)
		}
		said := false
		for _, f := range caps.Findings {
			said = said || strings.HasSuffix(f.Code, "-unjudged") && f.Severity.String() == "warning" &&
				strings.Contains(f.Message(), "list it among the fragrances") &&
				!strings.Contains(f.Message(), "not known here")
		}
		if said != (unjudged != nil) {
			t.Errorf("%s: the fragrances are pointed to: %v", line, said)
		}
	}
}
