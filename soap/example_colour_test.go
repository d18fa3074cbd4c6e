package soap_test

import (
	"fmt"
	"os"

	"example.com/lyewright/colour/tint"
	"example.com/lyewright/soap"
	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

// duskBars are lantern bars of one part, and what swatches of white and blue looked like in
// a photograph beside a colour card (invented).
func duskBars(part soap.Part) soap.Formula {
	read := func(name, picture string, loads ...tint.Load) tint.Swatch {
		c := must(tint.ParseSRGB(picture))
		return tint.Swatch{Name: name, SRGB: &c, Loads: loads}
	}
	white := func(load string) tint.Load {
		return tint.Load{Colourant: "titanium-dioxide", OfBatter: units.MustRatio(load)}
	}
	blue := func(load string) tint.Load {
		return tint.Load{Colourant: "ultramarine-blue", OfBatter: units.MustRatio(load)}
	}
	formula := lanternBars()
	formula.Small = units.Milligrams(10)
	formula.Swatches = &tint.Swatches{Name: "dusk swatches", Read: []tint.Swatch{
		read("plain", "#e8dcc0"),
		read("white 0.3", "#efe8d8", white("0.3 %")),
		read("white 1", "#f4f0e8", white("1 %")),
		read("blue 0.3", "#b9c3da", white("0.5 %"), blue("0.3 %")),
		read("blue 1", "#7f93c6", white("0.5 %"), blue("1 %")),
	}}
	part.Share = units.Percent(100)
	formula.Parts = []soap.Part{part}
	return formula
}

// mixed is white and blue, as loads of batter.
func mixed(white, blue string) []soap.Addition {
	return []soap.Addition{
		{Name: "titanium-dioxide", Load: soap.Load{OfBatter: units.MustRatio(white)}},
		{Name: "ultramarine-blue", Load: soap.Load{OfBatter: units.MustRatio(blue)}},
	}
}

// matched is a part in which white and blue are looked for.
func matched(l, a, b float64) soap.Part {
	return soap.Part{
		Name: "dusk", Target: soap.Target{Lab: &tint.Lab{L: l, A: a, B: b}},
		Match: []soap.Match{
			{Colourant: "titanium-dioxide", Most: soap.Load{OfOils: units.Percent(1)}},
			{Colourant: "ultramarine-blue", Most: soap.Load{OfOils: units.MustRatio("1.4 %")}},
		},
	}
}

// What colour a part will have. It is mixed as the swatch "blue 1" was, which is #7f93c6: as
// near as that swatch is met, a difference of 3.5.
func ExampleBatch_Tint() {
	batch, err := duskBars(soap.Part{Name: "dusk", Colourants: mixed("0.5 %", "1 %")}).Batch()
	if err != nil {
		fmt.Println(err)
		return
	}
	view, err := batch.Tint()
	if err != nil {
		fmt.Println(err)
		return
	}
	picture, _ := view.Parts[0].Colour.SRGB()
	fmt.Println(view.Parts[0].Name, "is", picture)
	// Output: dusk is #8d9bc8
}

// How sure the predictions are, and in which order to work: the lightest part first, so that
// the blender need not be washed.
func ExampleTint() {
	formula := duskBars(soap.Part{})
	formula.Parts = []soap.Part{
		{Name: "dusk", Share: units.Percent(60), Colourants: mixed("0.5 %", "1 %")},
		{Name: "cloud", Rest: true, Colourants: mixed("1 %", "0.1 %")[:1]},
	}
	batch := must(formula.Batch())
	view := must(batch.Tint())
	fmt.Println(view.Fit)
	fmt.Println("work in the order", view.Order)
	// Output:
	// 3 bands, 5 swatches met within 1.22 on average, 3.50 at worst, which says little: they are just enough
	// work in the order [cloud dusk]
}

// How far a part is from the colour that is meant.
func ExamplePartTint() {
	dusk := soap.Part{Name: "dusk", Colourants: mixed("0.5 %", "0.6 %"), Target: soap.Target{Lab: &tint.Lab{L: 70, A: 0, B: -16}}}
	batch := must(duskBars(dusk).Batch())
	part := must(batch.Tint()).Parts[0]
	fmt.Printf("L %.0f, a %.0f, b %.0f: %.1f from the target, reached: %v\n", part.Colour.L, part.Colour.A, part.Colour.B, part.Difference, part.Reachable)
	// Output: L 70, a 3, b -20: 3.7 from the target, reached: false
}

// A colour may be meant as a screen shows it: #8fa0cc is L 66, a 4, b -24.
func ExampleTarget() {
	picture := must(tint.ParseSRGB("#8fa0cc"))
	dusk := soap.Part{Name: "dusk", Colourants: mixed("0.5 %", "0.8 %"), Target: soap.Target{SRGB: &picture}}
	batch := must(duskBars(dusk).Batch())
	part := must(batch.Tint()).Parts[0]
	fmt.Printf("L %.0f, a %.0f, b %.0f\n", part.Target.L, part.Target.A, part.Target.B)
	// Output: L 66, a 4, b -24
}

// Loads that are looked for: of the white up to 1 % of the oils, of the blue up to 1.4 %. A
// search of every load in steps of 0.002 % comes to 0.194 % and 0.270 % of the batter.
func ExampleMatch() {
	batch := must(duskBars(matched(70, 0, -16)).Batch())
	for _, a := range batch.Parts[0].Additions {
		fmt.Println(a.Name, a.Weigh)
	}
	// Output:
	// titanium-dioxide 2.71 g
	// ultramarine-blue 3.75 g
}

// What is weighed of each, as shares of the batter and of the oils: 1393.9111 g to 1000 g.
func ExampleTintLoad() {
	batch := must(duskBars(matched(70, 0, -16)).Batch())
	for _, load := range must(batch.Tint()).Parts[0].Loads {
		fmt.Println(load.Name, load.OfBatter.PercentText(3), "% of batter,", load.OfOils.PercentText(3), "% of oils")
	}
	// Output:
	// Titanium dioxide, crystal form not stated 0.194 % of batter, 0.271 % of oils
	// Ultramarine blue 0.269 % of batter, 0.375 % of oils
}

// A mauve that white and blue cannot make: what is nearest, and in which directions the target
// lies from it.
func ExampleMatched() {
	batch := must(duskBars(matched(60, 20, -10)).Batch())
	part := must(batch.Tint()).Parts[0]
	fmt.Printf("reachable %v, at best %.0f away, lacking %v\n", part.Reachable, part.Matched.Best, part.Matched.Missing)
	// Output: reachable false, at best 18 away, lacking [yellower redder darker]
}

// How much more white makes the next difference that can be seen.
func ExampleWhiter() {
	batch := must(duskBars(soap.Part{Name: "dusk", Colourants: mixed("0.3 %", "0.5 %")}).Batch())
	whiter := must(batch.Tint()).Parts[0].Whiter
	fmt.Println("now", whiter.Now.PercentText(2), "% of batter, seen with", whiter.Mass.Text(units.Gram, 1), "g more:", whiter.Seen)
	// Output: now 0.3 % of batter, seen with 0.5 g more: true
}

// A thin blue coat on a plain loaf. These swatches were not read over black and white, so
// that its colour is not known.
func ExampleCoat() {
	formula := duskBars(soap.Part{})
	formula.Parts = []soap.Part{{Name: "base"}, {Name: "dusk", Colourants: mixed("0.5 %", "1 %")}}
	formula.Size = soap.Size{Vessels: []soap.Vessel{
		{Name: "loaf", Part: "base", Count: 1, Shape: mould.Measured{Content: units.Millilitres(1200)}},
		{Name: "coat", Part: "dusk", On: "loaf", Shape: mould.Coat{Area: units.SquareMillimetres(20_000), Thickness: units.Millimetres(2)}},
	}}
	batch := must(formula.Batch())
	for _, coat := range must(batch.Tint()).Parts[1].Coats {
		fmt.Println(coat.Thickness, "on", coat.Under, "colour known:", coat.Colour != nil)
	}
	// Output: 2 mm on base colour known: false
}

// Clove browns soap, which matters in a part that is meant white.
func ExampleLook() {
	for _, look := range []soap.Look{soap.AnyLook, soap.White} {
		formula := lanternBars()
		formula.Parts = []soap.Part{{Name: "bars", Share: units.Percent(100), Look: look, Fragrances: []soap.Addition{
			{Name: "clove-bud", Load: soap.Load{Mass: units.Grams(3)}},
		}}}
		warned := false
		for _, f := range must(formula.Batch()).Findings {
			warned = warned || f.Code == "fragrance-browns"
		}
		fmt.Println(look, warned)
	}
	// Output:
	// any false
	// white true
}

// Soap that gels draws rivers with much titanium dioxide: 1 % of the oils or more.
func ExampleGel() {
	for _, gel := range []soap.Gel{soap.GelUnknown, soap.Gelled, soap.NotGelled} {
		formula := lanternAndCloud()
		formula.Gel = gel
		likely := false
		for _, f := range must(formula.Batch()).Findings {
			likely = likely || f.Code == "rivers-likely"
		}
		fmt.Println(gel, likely)
	}
	// Output:
	// unknown false
	// yes true
	// no false
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

// What stands under every page on colour.
func ExampleTintNotices() {
	fmt.Println(soap.TintNotices()[1])
	// Output: No usual load is a limit: loads are a habit of the trade. Powders raise dust: weigh them away from draughts, with a mask.
}
