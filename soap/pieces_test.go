package soap_test

import (
	"fmt"
	"math"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// layered is a formula whose vessels trials fill: masses follow without any density.
func layered(size, parts, embeds string) pieces {
	return plainFormula().with("size", size, "parts", parts, "embeds", embeds)
}

// Two layers, 200 g of which a trial found in a tray; two trays cut in four. Of every
// piece the last part counts the embeds.
func TestEmbedsAreCountedWithTheLastLayer(t *testing.T) {
	size := `{"vessels": [{"vessel": "tray", "parts": {"base": "50 %", "cloud": "rest"}, "count": 2, "cuts": 4, "volume": "1 L", "trial": {"count": 1, "mass": "200 g"}}]}`
	b := layered(size, `{"part": "base"}, {"part": "cloud"}`, `{"embed": "moon", "vessel": "tray", "each": 2, "mass": "3 g", "spares": 5}`).batch(t)
	// One batter in both layers: 100 g each, 25 g to a piece; 2 × 3 g of moons on top.
	for i, want := range []int64{25, 31} {
		if got := b.Pieces[i].Fresh; !within(massFrac(got), massFrac(units.Grams(want)), frac("0.0000001")) {
			t.Errorf("%s: %v, want %d g", b.Pieces[i].Part, got, want)
		}
	}
	// 8 pieces × 2 moons + 5 spares = 21, of 3 g.
	if len(b.Embeds) != 1 || b.Embeds[0].Count != 21 || b.Embeds[0].Mass != units.Grams(63) {
		t.Errorf("%+v", b.Embeds)
	}
	if b.PiecesInAll() != 8 {
		t.Errorf("%d pieces", b.PiecesInAll())
	}
}

// A known batch counts whole pieces, not cavities, and the moulds do not cut its hopes.
func TestAKnownBatchFillsWholePieces(t *testing.T) {
	vessel := func(moulds int) string {
		return fmt.Sprintf(`{"batter": "1050 g", "vessels": [{"vessel": "tray", "part": "base", "count": 6, "cuts": 4, "moulds": %d, "volume": "1 L", "trial": {"count": 1, "mass": "300 g"}}]}`, moulds)
	}
	for _, moulds := range []int{2, 6} {
		b := layered(vessel(moulds), `{"part": "base", "share": "100 %"}`, `{"embed": "moon", "vessel": "tray", "mass": "3 g"}`).batch(t)
		if len(b.Embeds) != 1 || b.Embeds[0].Count != 24 { // for all that is hoped for
			t.Errorf("%+v", b.Embeds)
		}
		// 1050 g / 1.05 = 1000 g: three trays of 300 g, twelve pieces; the fourth has 100 g.
		if p := b.Pieces[0]; p.Count != 24 || p.Filled != 12 || p.Short != units.Grams(200) {
			t.Errorf("%+v", p)
		}
		found := has(b, "moulds-short")
		if found != (moulds == 2) {
			t.Errorf("%d moulds for 6 trays: found is %t", moulds, found)
		}
	}
}

func has(b soap.Batch, code string) bool {
	for _, f := range b.Findings {
		if f.Code == code {
			return true
		}
	}
	return false
}

// Castor oil is 0.961 to 0.963 of water at 15.5 °C, 0.999023 g/mL; the batter is as
// far off as its oils are, either way.
func TestTheSpreadIsThatOfTheOils(t *testing.T) {
	p := pieces{
		"oils": `{"oil": "castor", "share": "100 %"}`, "alkali": `{"kind": "sodium-hydroxide", "purity": "100 %"}`, "superfat": `"5 %"`, "water": `{"per_alkali": "2"}`,
		"size": `{"vessels": [{"vessel": "slab", "part": "all", "count": 1, "volume": "1 L"}]}`, "parts": `{"part": "all"}`,
	}
	b := p.batch(t)
	lye := 3 * b.Alkalis[0].Dry.Mass.Grams() / b.OilsTotal.Grams()
	density := func(relative float64) float64 {
		return (1 + lye) / (1/(relative*0.999023-0.00064*24.5) + lye/1.348649)
	}
	want := (density(0.963) - density(0.961)) / 2 / density(0.962)
	if got := b.Volumes.Spread.Float(); math.Abs(got-want) > 1e-8 || want < 5e-4 {
		t.Errorf("±%v, by hand ±%v", got, want)
	}
}
