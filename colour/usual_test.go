package colour_test

import (
	"testing"

	"example.com/lyewright/colour"
	"example.com/lyewright/internal/madeup"
	"example.com/lyewright/units/cite"
)

// Usual loads by the class of a colourant, % of the oils, typed in from a table of the
// habits of the trade (common practice, without a source); what no class names has none.
// Of titanium dioxide the load as the only whitener; beside another colourant 0.1 to 0.5.
func TestUsualLoadsAreThoseOfTheirClass(t *testing.T) {
	classes := map[[2]string][]string{
		{"0.3", "1"}:    {"titanium-dioxide", "titanium-dioxide-anatase", "titanium-dioxide-rutile"},
		{"0.05", "0.5"}: {"iron-oxide-black", "iron-oxide-red", "iron-oxide-yellow"},
		{"0.2", "1.5"}:  {"ultramarine-blue", "ultramarine-pink", "ultramarine-violet"},
		{"0.1", "1"}:    {"chromium-oxide-green", "chromium-hydroxide-green", "activated-charcoal"},
		{"0.5", "2"}:    {"mica"},
		{"1", "4"}:      {"kaolin", "coloured-clays"},
		{"0.05", "0.3"}: {"red-30-lake"}, // lakes where alkali-fast
		{"0.2", "2"}:    {"turmeric", "madder", "indigo", "paprika"},
	}
	checked := map[string]bool{}
	for ends, ids := range classes {
		for _, id := range ids {
			c, err := colour.LookUp(id)
			if err != nil {
				t.Fatal(err)
			}
			checked[id] = true
			u, given := c.Usual(false)
			if !given || u.Low.Of != colour.OfOils || u.Low.Share.PercentText(6) != ends[0] || u.High.Share.PercentText(6) != ends[1] || u.Source.How != cite.CommonPractice {
				t.Errorf("%s: %+v, want %s to %s %% of oils", id, u, ends[0], ends[1])
			}
		}
	}
	for _, id := range classes[[2]string{"0.3", "1"}] {
		c, _ := colour.LookUp(id)
		if u, _ := c.Usual(true); u.Low.Share.PercentText(6) != "0.1" || u.High.Share.PercentText(6) != "0.5" {
			t.Errorf("%s beside another: %+v", id, u)
		}
	}
	rows := 0
	for _, c := range colour.Colourants() {
		if _, given := c.Usual(false); given {
			rows++
			if !checked[c.ID()] {
				t.Errorf("%s has a usual load, and no class", c.ID())
			}
		}
	}
	madeup.Covered(t, "colourants.txt, usual loads", checked, rows, 20)
}
