package soap_test

import (
	"fmt"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// The oil went on the scale as 990 g in place of 1000 g, and the batter is in the pot. By
// hand: 131.3037 g of alkali are 180.5 g of KOH against 188.1 g, a superfat of 4.04 %; for 5 %
// it takes the 10 g that are missing.
func ExampleWeighed() {
	formula := lanternBars()
	formula.Weighed = soap.Weighed{
		Stage: soap.AtPot,
		Oils:  []soap.WeighedOil{{Oil: "hall-blend", Mass: units.Grams(990)}},
	}
	batch, err := formula.Batch()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("as weighed", batch.Weighed.Superfat.Planned.PercentText(2), "%")
	for _, r := range batch.Weighed.Remedies {
		fmt.Println("add", r.Add.Weigh, "of", r.Oil)
	}
	// Output:
	// as weighed 4.04 %
	// add 10 g of hall-blend
	// add 10 g of blend
}

// barsWeighed are lantern bars of which something was weighed.
func barsWeighed(stage soap.Stage, w soap.Weighed) soap.Formula {
	formula := lanternBars()
	formula.Weighed = w
	formula.Weighed.Stage = stage
	return formula
}

// The same slip at every stage: 140 g of alkali in place of 131.3 g. While lye and oils are
// apart some lye is left out; then more oil helps, of the one oil or of the blend; what is
// poured cannot be mended.
func ExampleStage() {
	slip := soap.Weighed{Alkalis: []soap.WeighedAlkali{{Alkali: soap.SodiumHydroxide, Mass: units.Grams(140)}}}
	for stage := soap.AtLye; stage <= soap.AtMoulds; stage++ {
		fmt.Println(stage, len(must(barsWeighed(stage, slip).Batch()).Weighed.Remedies))
	}
	// Output:
	// lye 1
	// pot 2
	// parts 2
	// moulds 0
}

// The water was forgotten, which is not the same as not read: all of it is added.
func ExampleReading() {
	for _, water := range []soap.Reading{{}, soap.Read(units.Mass{})} {
		batch := must(barsWeighed(soap.AtLye, soap.Weighed{Water: water}).Batch())
		for _, r := range batch.Weighed.Remedies {
			fmt.Println("add", r.AddWater.Weigh, "of water")
		}
	}
	// Output: add 262.6 g of water
}

// A little too much water changes no superfat, but the lye.
func ExampleRead() {
	batch := must(barsWeighed(soap.AtPot, soap.Weighed{Water: soap.Read(units.Grams(280))}).Batch())
	fmt.Println("a lye of", batch.Weighed.Lye.Concentration.PercentText(2), "%, planned", batch.Lye.Concentration.PercentText(2), "%")
	fmt.Println("superfat", batch.Weighed.Superfat.Planned.PercentText(2), "%")
	// Output:
	// a lye of 31.92 %, planned 33.33 %
	// superfat 5 %
}

// 1050 g of oil in place of 1000 g, before the lye is joined. By hand: it takes a twentieth
// more of everything, 6.5652 g of alkali and 13.1304 g of water.
func ExampleWeighedOil() {
	batch := must(barsWeighed(soap.AtLye, soap.Weighed{
		Oils: []soap.WeighedOil{{Oil: "hall-blend", Mass: units.Grams(1050)}},
	}).Batch())
	r := batch.Weighed.Remedies[0]
	fmt.Println("add", r.AddAlkali.Mass.Text(units.Gram, 4), "g of alkali to", r.AddWater.Mass.Text(units.Gram, 4), "g of water")
	// Output: add 6.5652 g of alkali to 13.1304 g of water
}

// 140 g of alkali in place of 131.3 g. By hand: at 98 % that is 137.2 × 56.105/39.997 =
// 192.4549 g of KOH against the 190 g that the oils demand, so that alkali is left over.
func ExampleWeighedAlkali() {
	batch := must(barsWeighed(soap.AtMoulds, soap.Weighed{
		Alkalis: []soap.WeighedAlkali{{Alkali: soap.SodiumHydroxide, Mass: units.Grams(140)}},
	}).Batch())
	fmt.Println("superfat", batch.Weighed.Superfat.Planned.PercentText(2), "%")
	fmt.Println(batch.Findings[0].Severity, batch.Findings[0].Code)
	// Output:
	// superfat -1.29 %
	// danger superfat-below-zero
}

// The blue part got 30 g of sunflower oil in place of 14.4 g. By hand: at 190.5 mg/g that is
// 5.715 g of KOH beside the 114 g that its 600 g of oil demand; 108.3 g are there.
func ExampleWeighedCarrier() {
	formula := lanternAndCloud()
	formula.Weighed = soap.Weighed{Stage: soap.AtParts, Parts: []soap.WeighedPart{{
		Part: "lantern", Carriers: []soap.WeighedCarrier{{Liquid: "sunflower", Mass: units.Grams(30)}},
	}}}
	batch := must(formula.Batch())
	fmt.Println("planned", batch.Parts[0].Superfat.Planned.PercentText(2), "%, as weighed", batch.Weighed.Parts[0].Superfat.Planned.PercentText(2), "%")
	// Output: planned 7.23 %, as weighed 9.54 %
}

// The blue part got 800 g of the pot of 1385.9111 g, and not 831.5 g. By hand: its 14.4 g of
// sunflower oil then count for more, 2.7432 g of KOH beside 800/1385.9111 of 190 g.
func ExampleWeighedPart() {
	formula := lanternAndCloud()
	formula.Weighed = soap.Weighed{Stage: soap.AtParts, Parts: []soap.WeighedPart{
		{Part: "lantern", Batter: soap.Read(units.Grams(800))},
	}}
	batch := must(formula.Batch())
	fmt.Println("superfat planned", batch.Parts[0].Superfat.Planned.PercentText(2), "%, as weighed", batch.Weighed.Parts[0].Superfat.Planned.PercentText(2), "%")
	// Output: superfat planned 7.23 %, as weighed 7.32 %
}

// The plan stays beside what was weighed.
func ExampleReckoning() {
	batch := must(barsWeighed(soap.AtLye, soap.Weighed{
		Alkalis: []soap.WeighedAlkali{{Alkali: soap.SodiumHydroxide, Mass: units.Grams(140)}},
	}).Batch())
	fmt.Println("planned", batch.Superfat.Planned.PercentText(2), "%")
	fmt.Println("as weighed", batch.Weighed.Superfat.Planned.PercentText(2), "%, in a lye of", batch.Weighed.Lye.Mass.Text(units.Gram, 2), "g")
	// Output:
	// planned 5 %
	// as weighed -1.29 %, in a lye of 402.61 g
}

// A part as it was divided: 800 g of batter, the blue and its oil.
func ExampleReckonedPart() {
	formula := lanternAndCloud()
	formula.Weighed = soap.Weighed{Stage: soap.AtParts, Parts: []soap.WeighedPart{
		{Part: "lantern", Batter: soap.Read(units.Grams(800))},
	}}
	part := must(formula.Batch()).Weighed.Parts[0]
	fmt.Println(part.Name, part.Batter, "poured", part.Poured)
	// Output: lantern 800 g poured 819.2 g
}

// 140 g of alkali while the lye stands alone. By hand: 131.3037/140 = 0.937884 of the lye of
// 402.6074 g have the alkali of the plan, in 246.2949 g of its water; 16.3126 g are added.
func ExampleRemedy() {
	batch := must(barsWeighed(soap.AtLye, soap.Weighed{
		Alkalis: []soap.WeighedAlkali{{Alkali: soap.SodiumHydroxide, Mass: units.Grams(140)}},
	}).Batch())
	r := batch.Weighed.Remedies[0]
	fmt.Println("use", r.UseLye.Weigh, "of", r.OfLye.Text(units.Gram, 4), "g of lye, and add", r.AddWater.Weigh, "of water")
	fmt.Println("superfat then", r.Superfat.Planned.PercentText(2), "%")
	// Output:
	// use 377.5 g of 402.6074 g of lye, and add 16.3 g of water
	// superfat then 5.02 %
}
