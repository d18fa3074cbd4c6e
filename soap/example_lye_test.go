package soap_test

import (
	"fmt"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
)

// Of sodium hydroxide the same job takes 39.997/56.105 as much, 71 %.
func ExampleAlkali() {
	for _, alkali := range []soap.Alkali{soap.SodiumHydroxide, soap.PotassiumHydroxide} {
		fmt.Println(alkali.Symbol(), alkali.MolarMass(), "g/mol, as a file calls it:", alkali)
	}
	// Output:
	// NaOH 39.997 g/mol, as a file calls it: sodium-hydroxide
	// KOH 56.105 g/mol, as a file calls it: potassium-hydroxide
}

// Two alkalis share the work. By hand: of the 180.5 g of KOH that 95 % of the demand is,
// nine tenths as sodium hydroxide are 162.45 × 39.997/(56.105 × 0.98) = 118.1733 g, and a
// tenth as potassium hydroxide of 90 % 18.05/0.9 = 20.0556 g.
func ExampleAlkaliLine() {
	formula := lanternBars()
	formula.Alkalis = []soap.AlkaliLine{
		{
			Alkali: soap.SodiumHydroxide, Purity: units.Between(units.Percent(97), units.Percent(99)),
			Saponifies: units.Percent(90),
		},
		{
			Alkali: soap.PotassiumHydroxide, Purity: units.Between(units.Percent(88), units.Percent(92)),
			Saponifies: units.Percent(10),
		},
	}
	for _, a := range must(formula.Batch()).Alkalis {
		fmt.Println(a.Dry.Mass.Text(units.Gram, 4), "g of", a.Alkali.Symbol(), "at", a.Purity.Typical.PercentText(1), "%")
	}
	// Output:
	// 118.1733 g of NaOH at 98 %
	// 20.0556 g of KOH at 90 %
}

// A stock lye in place of dry alkali. By hand: 190 × 0.95 × 39.997/56.105 = 128.6776 g
// of hydroxide are in 257.3553 g of a stock of 50 %, which brings half of the water
// asked for, 2 × 128.6776 g.
func ExampleAlkaliWeighing_ToWeigh() {
	formula := lanternBars()
	formula.Alkalis = []soap.AlkaliLine{{Alkali: soap.SodiumHydroxide, Stock: units.Between(units.Percent(49),
		units.Percent(51))}}
	batch, err := formula.Batch()
	if err != nil {
		fmt.Println(err)
		return
	}
	stock, strength := batch.Alkalis[0].ToWeigh()
	fmt.Println("stock of", strength.Typical.PercentText(1), "%:", stock.Mass.Text(units.Gram, 4), "g, weigh", stock.Weigh)
	fmt.Println("water to add:", batch.Water.Mass.Text(units.Gram, 4), "g, weigh", batch.Water.Weigh)
	// Output:
	// stock of 50 %: 257.3553 g, weigh 257.3 g
	// water to add: 128.6776 g, weigh 128.7 g
}

// Limits of a pharmacopoeia: 97.0 − 0.7547 × 2.0 = 95.4906 %.
func ExampleCertificate() {
	purity, err := soap.Certificate{
		AssayMin:     units.Percent(97),
		AssayMax:     units.MustRatio("100.5 %"),
		CarbonateMax: units.Percent(2),
	}.Purity(soap.SodiumHydroxide)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(purity.Low.PercentText(4), purity.Typical.PercentText(4), purity.High.PercentText(4))
	// Output: 95.4906 100 100
}

// A bottle without a purity is planned as if it were pure: too little alkali is the safe
// mistake. What it may be at the low end has a source.
func ExampleAssumedPuritySource() {
	formula := lanternBars()
	formula.Alkalis[0].Purity = units.Range{}
	batch := must(formula.Batch())
	purity := batch.Alkalis[0].Purity
	fmt.Println("planned", purity.Typical.PercentText(1), "%, from", purity.Low.PercentText(1), "% up")
	fmt.Println(batch.Findings[0].Code, batch.Findings[0].Source == soap.AssumedPuritySource())
	// Output:
	// planned 100 %, from 95.5 % up
	// purity-assumed true
}

// The smallest plan that never falls below 2 %. By hand, without the scales:
// 1 − 0.98 × 188/190 × 98/99 = 4.011 %; a division of 0.1 g of alkali and of oils
// adds 0.0827 points.
func ExampleSuperfat() {
	formula := lanternBars()
	formula.Superfat = soap.Superfat{AtLeast: units.Percent(2)}
	batch, err := formula.Batch()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("planned", batch.Superfat.Planned.PercentText(2), "%, worst", batch.Superfat.Low.PercentText(2), "%")
	// Output: planned 4.09 %, worst 2 %
}

// Three ways to ask for the same water: 131.3037 g of alkali ask for twice as much.
func ExampleWater() {
	for _, water := range []soap.Water{
		{PerAlkali: units.Whole(2)},
		{LyeConcentration: units.Whole(1).Over(units.Whole(3))},
		{PerOils: units.MustRatio("26.26074 %")},
	} {
		formula := lanternBars()
		formula.Water = water
		fmt.Println(must(formula.Batch()).Water.Asked.Text(units.Gram, 4), "g")
	}
	// Output:
	// 262.6074 g
	// 262.6074 g
	// 262.6074 g
}

// A lye of one part alkali in three: (1 − c)/c = 2, and back.
func ExampleWaterPerAlkali() {
	third := units.Whole(1).Over(units.Whole(3))
	fmt.Println(soap.WaterPerAlkali(third).Text(6), soap.LyeConcentration(units.Whole(2)).PercentText(2))
	// 131 g of alkali per 1000 g of oils, twice as much water: 26.2 % of the oils.
	fmt.Println(soap.WaterPerOils(units.Whole(2), units.MustRatio("13.1 %")).PercentText(2))
	fmt.Println(soap.WaterPerAlkaliFromOils(units.MustRatio("26.2 %"), units.MustRatio("13.1 %")).Text(2))
	// Output:
	// 2 33.33
	// 26.2
	// 2
}

// Water as one book asks for it, as another calls it: 1/(1 + 2.125) = 32 %.
func ExampleLyeConcentration() {
	fmt.Println(soap.LyeConcentration(units.MustRatio("2.125")).PercentText(2), "%")
	// Output: 32 %
}

// How much water there is per oils, in a formula that weighs 13.1 g of alkali per 100 g of
// oils: 2 × 13.1 %.
func ExampleWaterPerOils() {
	fmt.Println(soap.WaterPerOils(units.Whole(2), units.MustRatio("13.1 %")).PercentText(2), "% of the oils")
	// Output: 26.2 % of the oils
}

// An old recipe asks for 38 % of the oils. With 13.1 g of alkali per 100 g that is
// 38/13.1 of the alkali, a lye of 13.1/51.1.
func ExampleWaterPerAlkaliFromOils() {
	water := soap.WaterPerAlkaliFromOils(units.Percent(38), units.MustRatio("13.1 %"))
	fmt.Println(water.Text(3), "to one, a lye of", soap.LyeConcentration(water).PercentText(2), "%")
	// Output: 2.901 to one, a lye of 25.64 %
}

// Water that a carrier needs comes out of the lye: twice the 4 g of white (1 % of 40 % of
// the oils).
func ExampleWaterWeighing() {
	water := must(lanternAndCloud().Batch()).Water
	fmt.Println("asked for", water.Asked.Text(units.Gram, 4), "g, held back", water.Withheld)
	fmt.Println("into the lye", water.Mass.Text(units.Gram, 4), "g, weigh", water.Weigh)
	// Output:
	// asked for 262.6074 g, held back 8 g
	// into the lye 254.6074 g, weigh 254.6 g
}

// The lye as mixed: 131.3037 g of alkali at 98 % in twice as much water. A third is
// alkali, and 0.98/3 hydroxide.
func ExampleLye() {
	l := must(lanternBars().Batch()).Lye
	fmt.Println(l.Mass.Text(units.Gram, 4), "g,", l.Concentration.PercentText(2), "% alkali,", l.Strength.PercentText(2),
		"% hydroxide")
	fmt.Println("crystallises at", l.Crystallises.Text(1), "°C")
	// Output:
	// 393.9111 g, 33.33 % alkali, 32.67 % hydroxide
	// crystallises at 7.2 °C
}

// Thermometers tell more: how hot the lye may get if no heat is lost, and what volume it
// then takes.
func ExampleTemperatures() {
	formula := lanternBars()
	formula.Temperature = soap.Temperatures{Water: units.Celsius(10), Lye: units.Celsius(35), Oils: units.Celsius(42)}
	batch := must(formula.Batch())
	fmt.Println("at most", batch.Lye.Heat.Final.Ratio().Round(0, units.Up), "°C; at 35 °C it takes",
		batch.Lye.Volume.Text(0), "mL")
	for _, f := range batch.Findings {
		fmt.Println(f.Severity, f.Code, f.Value.Text(1), f.Unit)
	}
	// Output:
	// at most 101 °C; at 35 °C it takes 293 mL
	// note temperatures-apart 7 K
}

// A milk for a part of the water. By hand: the 4 g of fat in 100 g demand 4 × 0.227 = 0.908
// g of KOH more, so that 190.908 × 0.95 × 39.997/(56.105 × 0.98) = 131.9312 g of alkali ask
// for 263.8624 g of water, of which 88 g are in the milk.
func ExampleLiquidLine() {
	formula := lanternBars()
	formula.Water.Liquids = []soap.LiquidLine{{
		Name: "milk from the hall", Mass: units.Grams(100),
		Water: units.Percent(88), Fat: units.Percent(4), Sugar: units.Percent(5),
		Saponification: units.Between(units.MilligramsPerGram(219), units.MilligramsPerGram(235)),
	}}
	batch := must(formula.Batch())
	fmt.Println("alkali", batch.Alkalis[0].Dry.Mass.Text(units.Gram, 4), "g, water to add",
		batch.Water.Mass.Text(units.Gram, 4), "g")
	// Output: alkali 131.9312 g, water to add 175.8624 g
}

// Half of the water as a cordial of 90 % water: 131.3037 g of water are in 145.8930 g of it.
func ExampleLiquidWeighing() {
	formula := lanternBars()
	formula.Water.Liquids = []soap.LiquidLine{{
		Name: "elder cordial", Share: units.Percent(50), Water: units.Percent(90), Sugar: units.Percent(9),
	}}
	cordial := must(formula.Batch()).Liquids[0]
	fmt.Println(cordial.Name, cordial.Mass.Text(units.Gram, 4), "g, weigh", cordial.Weigh, "with",
		cordial.Water.Text(units.Gram, 4), "g of water")
	// Output: elder cordial 145.893 g, weigh 145.9 g with 131.3037 g of water
}

// Citric acid against soap scum. By hand: 10 g take up 3 × 39.997/192.123 × 10 = 6.2455 g of
// sodium hydroxide, which at 98 % is 6.3730 g more to weigh than the 131.3037 g of the oils.
func ExampleAcidLine() {
	formula := lanternBars()
	formula.Acids = []soap.AcidLine{{
		Acid: must(lye.LookUpAcid("citric-acid-anhydrous")), Load: soap.Load{OfOils: units.Percent(1)},
		Compensate: soap.Compensated,
	}}
	batch := must(formula.Batch())
	fmt.Println("alkali", batch.Alkalis[0].Dry.Mass.Text(units.Gram, 4), "g, superfat",
		batch.Superfat.Planned.PercentText(2), "%")
	// Output: alkali 137.6767 g, superfat 5 %
}

// What is weighed of an acid that is bought as a solution: 8 g of lactic acid of 80 % hold
// 1.6 g of water, which comes out of the lye's, and take up 6.4 × 39.997/90.078 g.
func ExampleAcidWeighing() {
	formula := lanternBars()
	formula.Acids = []soap.AcidLine{{
		Acid: must(lye.LookUpAcid("lactic-acid")), Load: soap.Load{Mass: units.Grams(8)},
		Strength: units.Exactly(units.Percent(80)), Compensate: soap.Compensated,
	}}
	acid := must(formula.Batch()).Acids[0]
	fmt.Println("weigh", acid.Weigh, "with", acid.Water, "of water; it takes up", acid.Takes.Text(units.Gram, 4),
		"g of NaOH")
	// Output: weigh 8 g with 1.6 g of water; it takes up 2.8418 g of NaOH
}

// An acid that nobody adds alkali for takes it from the oils. By hand: 10 g of citric acid
// take up 3 × 56.105/192.123 × 10 = 8.7608 g of the 180.5 g of KOH; of the 190 g that the
// oils demand, 9.61 % go without.
func ExampleCompensation() {
	formula := lanternBars()
	for _, compensate := range []soap.Compensation{soap.Compensated, soap.Uncompensated} {
		formula.Acids = []soap.AcidLine{{
			Acid: must(lye.LookUpAcid("citric-acid-anhydrous")), Load: soap.Load{Mass: units.Grams(10)}, Compensate: compensate,
		}}
		fmt.Println(must(formula.Batch()).Superfat.Planned.PercentText(2), "%")
	}
	// Output:
	// 5 %
	// 9.61 %
}
