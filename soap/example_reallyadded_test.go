package soap_test

import (
	"fmt"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
)

// "A little more" blue: 6 g in place of 4.8 g. The rest of its part counts as planned.
func ExampleWeighedAddition() {
	formula := lanternAndCloud()
	formula.Weighed = soap.Weighed{Stage: soap.AtParts, Parts: []soap.WeighedPart{
		{Part: "lantern", Additions: []soap.WeighedAddition{{Name: "ultramarine-blue", Mass: units.Grams(6)}}},
	}}
	part := must(formula.Batch()).Weighed.Parts[0]
	fmt.Println(part.Additions[0].Name, part.Additions[0].Mass, "in", part.Batter.Text(units.Gram, 1), "g of batter")
	// Output: ultramarine-blue 6 g in 831.5 g of batter
}

// 9 g of citric acid were planned, with the alkali that they take, and forgotten. By hand:
// they would take 7.8847 g of KOH, which is left over now.
func ExampleWeighedAcid() {
	citric := must(lye.LookUpAcid("citric-acid-anhydrous"))
	formula := barsWeighed(soap.AtPot, soap.Weighed{Acids: []soap.WeighedAcid{{Acid: citric.ID}}})
	formula.Acids = []soap.AcidLine{{Acid: citric, Load: soap.Load{Mass: units.Grams(9)}, Compensate: soap.Compensated}}
	batch := must(formula.Batch())
	fmt.Println("planned", batch.Superfat.Planned.PercentText(2), "%, as weighed",
		batch.Weighed.Superfat.Planned.PercentText(2), "%")
	// Output: planned 5 %, as weighed 0.85 %
}

// Milk poured twice brings its water twice: 60 g more in the pot, 52.8 g of them water.
func ExampleWeighedLiquid() {
	formula := barsWeighed(soap.AtPot, soap.Weighed{Liquids: []soap.WeighedLiquid{{
		Liquid: "oat milk",
		Mass:   units.Grams(120),
	}}})
	formula.Water.Liquids = []soap.LiquidLine{{Name: "oat milk", Mass: units.Grams(60), Water: units.Percent(88)}}
	batch := must(formula.Batch())
	fmt.Println(batch.Weighed.Batter.Sub(batch.Batter), "more,", batch.Weighed.Lye.Mass.Sub(batch.Lye.Mass),
		"of it in the lye")
	// Output: 60 g more, 52.8 g of it in the lye
}
