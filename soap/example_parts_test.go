package soap_test

import (
	"fmt"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// A batter of 1393.9111 g less the 8 g of water held back for the white, divided 60 to 40.
func ExamplePart() {
	for _, part := range must(lanternAndCloud().Batch()).Parts {
		fmt.Println(part.Name, part.Share.PercentText(0), "%:", part.Batter.Text(units.Gram, 2), "g of batter")
	}
	// Output:
	// lantern 60 %: 831.55 g of batter
	// cloud 40 %: 554.36 g of batter
}

// What a part is made of: its share of the pot, and what is added to it alone, here 4.8 g of
// blue (0.8 % of its 600 g of oils) and three times as much sunflower oil.
func ExamplePartBatch() {
	lantern := must(lanternAndCloud().Batch()).Parts[0]
	fmt.Println("oils", lantern.Oils, "batter", lantern.Batter.Text(units.Gram, 4), "g, poured", lantern.Poured.Text(units.Gram, 4), "g")
	fmt.Println("superfat", lantern.Superfat.Planned.PercentText(2), "%, since the carrier's oil meets no alkali of its own")
	// Output:
	// oils 600 g batter 831.5467 g, poured 850.7467 g
	// superfat 7.23 %, since the carrier's oil meets no alkali of its own
}

// Salt, by its mass, in a part of its own. Nothing is known of it but its name: it is weighed
// and not judged.
func ExampleAddition() {
	formula := lanternBars()
	formula.Parts = []soap.Part{{Name: "bars", Share: units.Percent(100), Additives: []soap.Addition{
		{Name: "fine salt", Load: soap.Load{Mass: units.Grams(20)}},
	}}}
	batch := must(formula.Batch())
	for _, a := range batch.Parts[0].Additions {
		fmt.Println(a.Kind, a.Name, a.Weigh)
	}
	fmt.Println(batch.Findings[0].Code)
	// Output:
	// additive fine salt 20 g
	// additive-unjudged
}

// The kinds of addition in the order in which they are weighed.
func ExampleAdditionKind() {
	for kind := soap.Colourant; kind <= soap.Additive; kind++ {
		fmt.Println(kind)
	}
	// Output:
	// colourant
	// fragrance
	// additive
}

// What a maker weighs for a part: each addition, and what it is stirred into.
func ExampleAdditionWeighing() {
	for _, part := range must(lanternAndCloud().Batch()).Parts {
		for _, a := range part.Additions {
			fmt.Println(a.Weigh, a.Name, "in", a.Carrier.Weigh, a.Carrier.Name)
		}
	}
	// Output:
	// 4.8 g ultramarine-blue in 14.4 g sunflower
	// 4 g titanium-dioxide in 8 g water
}

// White mixed ahead and weighed as one with its water: 4.2 g (1.05 % of 400 g of oils) and
// twice as much. A scale of 1 g shows 13 g, and a third of that is white.
func ExampleAdditionWeighing_Pigment() {
	formula := lanternAndCloud()
	formula.Small = units.Grams(1)
	formula.Parts[1].Colourants[0].Load.OfOils = units.MustRatio("1.05 %")
	formula.Parts[1].Colourants[0].Carrier.Paste = true
	white := must(formula.Batch()).Parts[1].Additions[0]
	fmt.Println("paste", white.Paste.Mass, "weigh", white.Paste.Weigh, "with", white.Pigment().Text(units.Gram, 2), "g of white")
	// Output: paste 12.6 g weigh 13 g with 4.33 g of white
}

// Three ways to say how much: of the part's 600 g of oils, of its batter, or a mass.
func ExampleLoad() {
	for _, load := range []soap.Load{
		{OfOils: units.Percent(1)},
		{OfBatter: units.Percent(1)},
		{Mass: units.Grams(6)},
	} {
		formula := lanternBars()
		formula.Parts = []soap.Part{
			{Name: "lantern", Share: units.Percent(60), Colourants: []soap.Addition{{Name: "ultramarine-blue", Load: load}}},
			{Name: "plain", Rest: true},
		}
		fmt.Println(must(formula.Batch()).Parts[0].Additions[0].Mass.Text(units.Gram, 4), "g")
	}
	// Output:
	// 6 g
	// 8.3635 g
	// 6 g
}

// What a pigment is stirred into: oil comes on top of the formula, and lifts the part's
// superfat; water comes out of the lye.
func ExampleCarrier() {
	for _, carrier := range []soap.Carrier{
		{In: soap.InOil, Oil: hall(), Ratio: units.Whole(3)},
		{In: soap.InWater, Ratio: units.Whole(3)},
	} {
		formula := lanternAndCloud()
		formula.Parts[0].Colourants[0].Carrier = carrier
		lantern := must(formula.Batch()).Parts[0]
		c := lantern.Additions[0].Carrier
		fmt.Println(c.Weigh, c.Name, "superfat", lantern.Superfat.Planned.PercentText(2), "%")
	}
	// Output:
	// 14.4 g hall-blend superfat 7.23 %
	// 14.4 g water superfat 5 %
}

// Where a carrier really comes from is said of each, whether the formula said it or not.
func ExampleCarrierWeighing() {
	for _, part := range must(lanternAndCloud().Batch()).Parts {
		carrier := part.Additions[0].Carrier
		fmt.Println(carrier.Name, carrier.Weigh, "from", carrier.From)
	}
	// Output:
	// sunflower 14.4 g from extra
	// water 8 g from formula
}

// Oil for a carrier on top of the formula, or out of it. What is held back leaves the pot:
// its alkali was worked out on all the oils, so the other part keeps less superfat.
func ExampleFrom() {
	for _, from := range []soap.From{soap.Extra, soap.FromFormula} {
		formula := lanternAndCloud()
		formula.Parts[0].Colourants[0].Carrier = soap.Carrier{In: soap.InOil, Oil: hall(), Ratio: units.Whole(3), From: from}
		batch := must(formula.Batch())
		fmt.Print(from)
		for _, part := range batch.Parts {
			fmt.Print(", ", part.Name, " ", part.Superfat.Planned.PercentText(2), " %")
		}
		fmt.Println()
	}
	// Output:
	// extra, lantern 7.23 %, cloud 5 %
	// formula, lantern 5.9 %, cloud 3.61 %
}

// Water or glycerin for the white: glycerin comes on top, so that nothing is held back.
func ExampleLiquid() {
	for _, in := range []soap.Liquid{soap.InWater, soap.InGlycerin} {
		formula := lanternAndCloud()
		formula.Parts[1].Colourants[0].Carrier.In = in
		batch := must(formula.Batch())
		fmt.Println(batch.Parts[1].Additions[0].Carrier.Name, "holds back", batch.Water.Withheld)
	}
	// Output:
	// water holds back 8 g
	// glycerin holds back 0 g
}
