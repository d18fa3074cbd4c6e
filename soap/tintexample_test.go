package soap_test

import (
	"fmt"
	"os"

	"example.com/lyewright/colour"
	"example.com/lyewright/colour/tint"
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// A part whose colour is matched: swatches photographed beside a colour card (invented),
// a target, and what may be used for it.
func ExampleBatch_Tint() {
	olive, err := soap.LookUpOil("olive")
	if err != nil {
		fmt.Println(err)
		return
	}
	pct := func(text string) units.Ratio { return units.MustRatio(text) }
	read := func(name, picture string, loads ...tint.Load) tint.Swatch {
		c, err := tint.ParseSRGB(picture)
		if err != nil {
			fmt.Println(err)
		}
		return tint.Swatch{Name: name, SRGB: &c, Loads: loads}
	}
	white := func(load string) tint.Load {
		return tint.Load{Colourant: "titanium-dioxide", OfBatter: pct(load)}
	}
	blue := func(load string) tint.Load {
		return tint.Load{Colourant: "ultramarine-blue", OfBatter: pct(load)}
	}
	batch, err := soap.Formula{
		Name:     "Lantern walk, dusk",
		Oils:     []soap.OilLine{{Oil: olive, Rest: true}},
		Alkalis:  []soap.AlkaliLine{{Alkali: soap.SodiumHydroxide, Purity: units.Between(pct("97 %"), pct("99 %"))}},
		Superfat: soap.Superfat{Planned: pct("6 %")},
		Water:    soap.Water{LyeConcentration: pct("32 %")},
		Size:     soap.Size{Oils: units.Grams(500)},
		Small:    units.Milligrams(10),
		Pigments: []colour.Supplied{{ID: "ultramarine-blue", Usual: colour.Usual{
			Low: colour.Load{Of: colour.OfBatter, Share: pct("0.1 %")}, High: colour.Load{Of: colour.OfBatter, Share: pct("1 %")},
		}}},
		Swatches: &tint.Swatches{Read: []tint.Swatch{
			read("plain", "#e8dcc0"),
			read("white 0.3", "#efe8d8", white("0.3 %")),
			read("white 1", "#f4f0e8", white("1 %")),
			read("blue 0.3", "#b9c3da", white("0.5 %"), blue("0.3 %")),
			read("blue 1", "#7f93c6", white("0.5 %"), blue("1 %")),
		}},
		Parts: []soap.Part{{
			Name: "dusk", Share: pct("100 %"),
			Target: soap.Target{Lab: &tint.Lab{L: 70, A: 0, B: -16}},
			Match: []soap.Match{
				{Colourant: "titanium-dioxide", Most: soap.Load{OfOils: pct("1 %")}},
				{Colourant: "ultramarine-blue", Most: soap.Load{OfOils: pct("1.5 %")}},
			},
		}},
	}.Batch()
	if err != nil {
		fmt.Println(err)
		return
	}
	view, err := batch.Tint()
	if err != nil {
		fmt.Println(err)
		return
	}
	dusk := view.Parts[0]
	for _, load := range dusk.Loads {
		fmt.Println(load.Colourant, load.Weighed)
	}
	fmt.Printf("difference %.1f, sure within %.1f\n", dusk.Difference, view.Fit.Floor())
	// Output:
	// titanium-dioxide 1.37 g
	// ultramarine-blue 1.89 g
	// difference 0.7, sure within 1.2
}

// Swatches may stand in a file of their own.
func ExampleParseSwatches() {
	swatches, _, err := soap.ParseSwatches([]byte(`{"read": [
		{"swatch": "plain", "srgb": "#e8dcc0"},
		{"swatch": "blue 1", "loads": {"ultramarine-blue": "1 % of batter"}, "srgb": "#7f93zz"}
	]}`))
	fmt.Println(swatches, err)

	text, err := os.ReadFile("../testdata/formulas/lantern-dusk.json")
	if err != nil {
		fmt.Println(err)
		return
	}
	formula, _, err := soap.ParseFormulaBeside(soap.Beside{Law: soap.IFRAAlone}, text)
	fmt.Println(len(formula.Swatches.Read), "swatches,", formula.Gel, "gel", err)
	// Output:
	// <nil> 3:80: read[1].srgb: "#7f93zz" is not a colour; write # and six digits, such as "#c8b49a"
	// 12 swatches, no gel <nil>
}
