package soap_test

import (
	"fmt"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

// From the moulds to the oils. By hand: twelve cups of 50 g and 5 % are 630 g, twelve
// swirls of 20 g and 15 % are 276 g; 906 g over 1 + 3 × 0.1313037 is 649.97 g.
func ExampleSize() {
	f := lanternBars()
	f.Size = soap.Size{Vessels: []soap.Vessel{
		{Name: "cup", Part: "base", Count: 12, Trial: mould.Trial{Count: 1, Mass: units.Grams(50)}},
		{Name: "swirl", Part: "cloud", On: "cup", Trial: mould.Trial{Count: 6, Mass: units.Grams(120)}},
	}}
	f.Parts = []soap.Part{{Name: "base"}, {Name: "cloud", Work: mould.Piped}}
	batch, err := f.Batch()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("oils", batch.OilsTotal.Text(units.Gram, 2), "g")
	for _, p := range batch.Parts {
		fmt.Println(p.Name, p.Filled.Text(units.Gram, 2), "g filled,", p.Reserve.Text(units.Gram, 2), "g kept back")
	}
	// Output:
	// oils 649.97 g
	// base 600 g filled, 30 g kept back
	// cloud 240 g filled, 36 g kept back
}

// A loaf cut into ten: 250 × 80 × 60 mm are 1.2 L. With 5 % to spare that is 1.26 L of
// batter, whose oil and lye the package knows the density of.
func ExampleVessel() {
	formula := lanternBars()
	formula.Size = soap.Size{Vessels: []soap.Vessel{{
		Name: "loaf", Count: 1, Cuts: 10,
		Shape: mould.Box{Length: units.Millimetres(250), Width: units.Millimetres(80), Depth: units.Millimetres(60)},
	}}}
	batch := must(formula.Batch())
	fmt.Println(batch.PiecesInAll(), "bars of", batch.Pieces[0].Volume.Text(1), "mL, all poured", batch.Parts[0].Volume.Text(1), "mL")
	// Output: 10 bars of 120 mL, all poured 1260 mL
}

// A loaf in two layers. The part below takes 60 % of 1.2 L, and as much again and 5 %.
func ExampleLayer() {
	formula := lanternBars()
	formula.Parts = []soap.Part{{Name: "night"}, {Name: "glow"}}
	formula.Size = soap.Size{Vessels: []soap.Vessel{{
		Name: "loaf", Count: 1, Cuts: 10,
		Shape:  mould.Measured{Content: units.Millilitres(1200)},
		Layers: []soap.Layer{{Part: "night", Share: units.Percent(60)}, {Part: "glow", Rest: true}},
	}}}
	for _, part := range must(formula.Batch()).Parts {
		fmt.Println(part.Name, part.Volume.Text(1), "mL")
	}
	// Output:
	// night 756 mL
	// glow 504 mL
}

// twelveCups are cups that took 50 g each when they were tried.
func twelveCups() soap.Formula {
	formula := lanternBars()
	formula.Size = soap.Size{Vessels: []soap.Vessel{
		{Name: "cup", Count: 12, Trial: mould.Trial{Count: 1, Mass: units.Grams(50)}},
	}}
	return formula
}

// A little moon of 4 g in every cup, sunk, and two to spare: it displaces batter of its own
// mass, so that 46 g fill a cup, which holds 50 g with it.
func ExampleEmbed() {
	formula := twelveCups()
	formula.Embeds = []soap.Embed{{Name: "little moon", Vessel: "cup", Mass: units.Grams(4), Sunk: true, Spares: 2}}
	batch := must(formula.Batch())
	fmt.Println("batter in the cups", batch.Filled.Text(units.Gram, 2), "g; a cup", batch.Pieces[0].Fresh.Text(units.Gram, 2), "g")
	// Output: batter in the cups 552 g; a cup 50 g
}

// Petals on every cup: they lie on top and displace nothing.
func ExampleTopping() {
	formula := twelveCups()
	formula.Toppings = []soap.Topping{{Name: "pressed cornflower", Vessel: "cup", Mass: must(units.ParseMass("0.2 g"))}}
	batch := must(formula.Batch())
	fmt.Println("batter in the cups", batch.Filled.Text(units.Gram, 2), "g; a cup", batch.Pieces[0].Fresh.Text(units.Gram, 2), "g")
	// Output: batter in the cups 600 g; a cup 50.2 g
}

// How many moons to cast for twelve cups, with two to spare, and how many petals to press.
func ExampleExtraCount() {
	formula := twelveCups()
	formula.Embeds = []soap.Embed{{Name: "little moon", Vessel: "cup", Mass: units.Grams(4), Spares: 2}}
	formula.Toppings = []soap.Topping{{Name: "pressed cornflower", Vessel: "cup", Mass: must(units.ParseMass("0.2 g"))}}
	batch := must(formula.Batch())
	for _, extra := range append(batch.Embeds, batch.Toppings...) {
		fmt.Println(extra.Count, extra.Name, extra.Mass)
	}
	// Output:
	// 14 little moon 56 g
	// 12 pressed cornflower 2.4 g
}

// What a glitter is made of decides what is said of it. Of plastic that nobody spoke of
// further, two things are.
func ExampleGlitter() {
	for _, glitter := range []soap.Glitter{soap.PolymerGlitter, soap.MineralGlitter} {
		formula := twelveCups()
		formula.Toppings = []soap.Topping{{Name: "star dust", Vessel: "cup", Mass: units.Milligrams(100), Glitter: glitter}}
		fmt.Print(glitter)
		for _, f := range must(formula.Batch()).Findings {
			if f.Subject == "toppings[0]" {
				fmt.Print(", ", f.Code)
			}
		}
		fmt.Println()
	}
	// Output:
	// polymer, glitter-plastic, glitter-aluminium
	// mineral
}

// Aluminium in fresh batter gives off hydrogen. Where its maker says that there is none,
// nothing is warned of.
func ExampleFoil() {
	for _, foil := range []soap.Foil{soap.FoilUnknown, soap.WithAluminium, soap.WithoutAluminium} {
		formula := twelveCups()
		formula.Toppings = []soap.Topping{{Name: "star dust", Vessel: "cup", Mass: units.Milligrams(100), Glitter: soap.DegradableGlitter, Foil: foil}}
		warned := 0
		for _, f := range must(formula.Batch()).Findings {
			if f.Code == "glitter-aluminium" {
				warned++
			}
		}
		fmt.Println(warned)
	}
	// Output:
	// 1
	// 1
	// 0
}

// How far a batter goes that is there already. By hand: 1393.9111 g, of which 1/1.05 is
// filled, are 26 cups of 50 g and 27.53 g more.
func ExamplePiece() {
	formula := twelveCups()
	formula.Size.Oils, formula.Size.Vessels[0].Count = units.Grams(1000), 30
	cup := must(formula.Batch()).Pieces[0]
	fmt.Println("wanted", cup.Count, "filled", cup.Filled, "and the next lacks", cup.Short.Text(units.Gram, 2), "g")
	// Output: wanted 30 filled 26 and the next lacks 22.47 g
}

// What the pot must hold at 40 °C. By hand: 1000 g of oil of 0.9 g/mL, and 393.9111 g of lye
// of 1.3418 g/mL, for which a published table has 1.343 between its rows.
func ExampleVolumes() {
	oil := must(soap.OwnOil{
		ID: "hall-blend", Saponification: units.Between(units.MilligramsPerGram(188), units.MilligramsPerGram(192)), Density: units.MustRatio("0.9"),
	}.Oil())
	formula := twelveCups()
	formula.Size.Oils = units.Grams(1000)
	formula.Oils[0].Oil = oil
	v := must(formula.Batch()).Volumes
	fmt.Println("oils", v.Oils.Text(1), "mL, lye", v.Lye.Text(1), "mL of", v.LyeAsked.Text(4), "g/mL, pot", v.Pot.Text(1), "mL")
	fmt.Println("poured at", v.At, "a batter of", v.Density.Text(4), "g/mL")
	// Output:
	// oils 1111.1 mL, lye 293.6 mL of 1.3418 g/mL, pot 1404.7 mL
	// poured at 40 °C a batter of 0.9923 g/mL
}

// Thirty cups and twelve moulds: a batter cannot wait, so that there are three batches, the
// last of six cups, half as large.
func ExampleLastBatch() {
	formula := twelveCups()
	formula.Size.Vessels[0].Count, formula.Size.Vessels[0].Moulds = 30, 12
	batch := must(formula.Batch())
	fmt.Println(batch.Batches, "batches, each pours", batch.Poured.Text(units.Gram, 2), "g")
	fmt.Println("the last", batch.Last.Poured.Text(units.Gram, 2), "g for", batch.Last.Pieces[0].Count, "cups")
	// Output:
	// 3 batches, each pours 630 g
	// the last 315 g for 6 cups
}

// A view that prints a piece asks the formula for what its vessel's maker noted.
func ExampleFormula_VesselNamed() {
	formula := soap.Formula{Size: soap.Size{Vessels: []soap.Vessel{{Name: "cup", Count: 12, Note: "the blue set"}}}}
	fmt.Println(formula.VesselNamed("cup").Note)
	fmt.Println(formula.VesselNamed("loaf").Name == "")
	// Output:
	// the blue set
	// true
}
