package soap_test

import (
	"fmt"
	"io"
	"os"

	"example.com/lyewright/colour/tint"
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// A part whose colour is matched: swatches photographed beside a colour card (invented), the
// colour that is meant, and what may be used for it. A search of every load in steps of
// 0.002 % of the batter comes to 0.194 % of white and 0.270 % of blue.
func Example_matchedTint() {
	if err := matchDusk(os.Stdout, tint.Lab{L: 70, A: 0, B: -16}); err != nil {
		fmt.Println(err)
	}
	// Output:
	// [ ] 1.37 g Titanium dioxide, crystal form not stated, 0.19 % of batter
	// [ ] 1.89 g Ultramarine blue, 0.27 % of batter
	// difference 0.7, sure within 1.2
	// - A prediction is for soap made and read as the swatches were. It knows nothing of micas and other pearls, whose colour depends on the angle, of gelled soap from ungelled swatches or the other way round, or of what fragrance and time do to the colour.
	// - No usual load is a limit: loads are a habit of the trade. Powders raise dust: weigh them away from draughts, with a mask.
}

// castAndRead are swatches as a photograph shows them: what is in each, and its colour.
func castAndRead() (*tint.Swatches, error) {
	swatches := &tint.Swatches{Name: "dusk swatches"}
	for _, s := range []struct{ name, picture, white, blue string }{
		{"plain", "#e8dcc0", "", ""},
		{"white 0.3", "#efe8d8", "0.3 %", ""},
		{"white 1", "#f4f0e8", "1 %", ""},
		{"blue 0.3", "#b9c3da", "0.5 %", "0.3 %"},
		{"blue 1", "#7f93c6", "0.5 %", "1 %"},
	} {
		picture, err := tint.ParseSRGB(s.picture)
		if err != nil {
			return nil, err
		}
		swatch := tint.Swatch{Name: s.name, SRGB: &picture}
		for _, load := range []struct{ id, share string }{{"titanium-dioxide", s.white}, {"ultramarine-blue", s.blue}} {
			if load.share != "" {
				swatch.Loads = append(swatch.Loads, tint.Load{Colourant: load.id, OfBatter: units.MustRatio(load.share)})
			}
		}
		swatches.Read = append(swatches.Read, swatch)
	}
	return swatches, nil
}

// matchDusk looks for the loads that bring a part (invented) nearest to a colour.
func matchDusk(w io.Writer, target tint.Lab) error {
	swatches, err := castAndRead()
	if err != nil {
		return err
	}
	olive, err := soap.LookUpOil("olive")
	if err != nil {
		return err
	}
	batch, err := soap.Formula{
		Name:     "Lantern walk, dusk",
		Oils:     []soap.OilLine{{Oil: olive, Rest: true}},
		Alkalis:  []soap.AlkaliLine{{Alkali: soap.SodiumHydroxide, Purity: units.Between(units.Percent(97), units.Percent(99))}},
		Superfat: soap.Superfat{Planned: units.Percent(6)},
		Water:    soap.Water{LyeConcentration: units.Percent(32)},
		Size:     soap.Size{Oils: units.Grams(500)},
		Small:    units.Milligrams(10),
		Swatches: swatches,
		Parts: []soap.Part{{
			Name: "dusk", Share: units.Percent(100),
			Target: soap.Target{Lab: &target},
			Match: []soap.Match{
				{Colourant: "titanium-dioxide", Most: soap.Load{OfOils: units.Percent(1)}},
				{Colourant: "ultramarine-blue", Most: soap.Load{OfOils: units.MustRatio("1.4 %")}},
			},
		}},
	}.Batch()
	if err != nil {
		return err // soap.Faults, such as a swatch that is missing
	}
	view, err := batch.Tint()
	if err != nil {
		return err
	}
	for _, load := range view.Parts[0].Loads {
		fmt.Fprintln(w, "[ ]", load.Weighed, load.Name+",", load.OfBatter.PercentText(2), "% of batter")
	}
	fmt.Fprintf(w, "difference %.1f, sure within %.1f\n", view.Parts[0].Difference, view.Fit.Floor())
	for _, notice := range soap.TintNotices() {
		fmt.Fprintln(w, "-", notice)
	}
	return nil
}
