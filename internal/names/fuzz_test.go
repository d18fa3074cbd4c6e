package names_test

import (
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/lyewright/internal/names"
)

// Folding a folded name changes nothing, no name grows by more than a letter that becomes two, and spellings that
// differ in case, hyphens or apostrophes fold alike. What is found stands in the table, and whatever is looked for,
// likened or offered, nothing panics.
func FuzzFold(f *testing.F) {
	f.Add("Huile d\u2019olive") // an apostrophe that is no ASCII
	ids := []string{"olive", "palm-kernel", "rice-bran", "sunflower-high-oleic"}
	held := func(id string) bool { return slices.Contains(ids, id) }
	f.Fuzz(func(t *testing.T, name string) {
		if len(name) > 400 {
			return
		}
		folded := names.Fold(name)
		if again := names.Fold(folded); again != folded {
			t.Errorf("%q folds to %q, and that to %q", name, folded, again)
		}
		if len(folded) > 3*len(name) { // a byte that is no text becomes a replacement character of three
			t.Errorf("%q, %d bytes, folds to %d", name, len(name), len(folded))
		}
		if strings.HasPrefix(folded, " ") || strings.HasSuffix(folded, " ") || strings.Contains(folded, "  ") {
			t.Errorf("%q folds to %q", name, folded)
		}
		if utf8.ValidString(name) {
			for _, other := range []string{
				" " + name, name + "-", strings.ReplaceAll(name, " ", "-"), strings.ReplaceAll(name, " ", "  "),
				"'" + name + "\u2019",
			} {
				if got := names.Fold(other); got != folded {
					t.Errorf("%q folds to %q, %q to %q", name, folded, other, got)
				}
			}
		}
		for _, word := range names.Words(name) {
			if word == "" || names.Fold(word) != word {
				t.Errorf("%q has the word %q", name, word)
			}
		}
		for _, kind := range []names.Kind{names.Oil, names.Acid, names.Alkali} {
			look := names.Look(kind, name, held)
			if look.ID != "" && !look.Unheld && !held(look.ID) {
				t.Errorf("%q means %q, which is not held", name, look.ID)
			}
			if likened := names.Likened(kind, name, held); look.ID != "" && !look.Unheld && likened.ID != look.ID {
				t.Errorf("%q means %q, and is likened to %q", name, look.ID, likened.ID)
			}
			for _, id := range names.Nearest(kind, name, ids, func(a, b string) bool { return a == b }) {
				if !held(id) {
					t.Errorf("%q offers %q", name, id)
				}
			}
		}
	})
}

// Each name of the table finds its own line in whatever case and with whatever hyphens it is written.
func TestEveryNameOfTheTableFindsItselfHoweverItIsSpelled(t *testing.T) {
	for _, row := range rows(t) {
		kind, name, _ := strings.Cut(row[0], " ")
		want, _ := names.Find(names.Kind(kind), name)
		for _, spelled := range []string{
			strings.ToUpper(name), strings.ReplaceAll(name, " ", "-"), "  " + name + " ",
			"'" + name,
		} {
			got, found := names.Find(names.Kind(kind), names.Fold(spelled))
			if !found || got.Several != want.Several || !slices.Equal(got.Meanings, want.Meanings) {
				t.Errorf("%q is not found as %s is", spelled, row[0])
			}
		}
	}
}
