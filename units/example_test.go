package units_test

import (
	"fmt"

	"example.com/lyewright/units"
)

// An ounce is 28.349523125 g exactly (NIST Handbook 44, 2014 edition, Appendix
// C, p. C-14; read): 28.2 oz are 799.456552125 g.
func ExampleParseMass() {
	oils, err := units.ParseMass("28.2 oz")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(oils, "=", oils.Text(units.Ounce, 3), "oz")
	_, err = units.ParseMass("800 mL")
	fmt.Println(err)
	// Output:
	// 799.456552125 g = 28.2 oz
	// "800 mL" is a volume where a mass is needed; weigh it, and write g, kg, mg, oz or lb
}

// 45 % of 799.456552125 g are 359.75544845625 g, born once as nanograms.
func ExampleMass_Times() {
	oils, _ := units.ParseMass("28.2 oz")
	share, _ := units.ParsePercent("45 %")
	olive := oils.Times(share, units.Nearest)
	fmt.Println(olive, "weighed as", olive.Round(units.Milligrams(100), units.Nearest))
	// Output: 359.755448456 g weighed as 359.8 g
}

// Not given is not zero.
func ExampleRatio() {
	var superfat units.Ratio
	fmt.Println(superfat, superfat.Given(), units.Percent(0), units.Percent(0).Given())
	fmt.Println(superfat.Or(units.Percent(5)).PercentText(1), "%")
	// Output:
	// not given false 0 true
	// 5 %
}

func ExampleRange() {
	olive := units.Between(units.MilligramsPerGram(185), units.MilligramsPerGram(196))
	fmt.Println(olive.Plan().MilligramsPerGramText(1)) // (185 + 196)/2
	// Output: 190.5
}

// 360 g at 190.5 and 200 g at 254.354214 mg/g: 68.58 + 50.8708428 g of KOH.
func ExampleSum() {
	demand := units.Sum{}.
		Plus(units.Grams(360), units.MustRatio("190.5 mg/g")).
		Plus(units.Grams(200), units.MustRatio("254.354214 mg/g"))
	fmt.Println(demand.Mass(units.Down))
	// Output: 119.4508428 g
}

// Three equal parts of 100 g: the first takes the nanogram that is left.
func ExampleApportion() {
	third := units.Whole(1).Over(units.Whole(3))
	for _, part := range units.Apportion(units.Grams(100), []units.Ratio{third, third, third}) {
		fmt.Println(part)
	}
	// Output:
	// 33.333333334 g
	// 33.333333333 g
	// 33.333333333 g
}

// A burette's reading, and what went out of it between two.
func ExampleParseVolume() {
	first, err := units.ParseVolume("17.5 mL")
	if err != nil {
		fmt.Println(err)
		return
	}
	total, _ := units.ParseVolume("0.019 L")
	fmt.Println(total.Sub(first))
	_, err = units.ParseVolume("17.5 g")
	fmt.Println(err)
	// Output:
	// 1.5 mL
	// "17.5 g" has the wrong unit for a volume, "g"; write mL or L, such as "17.5 mL"
}

// 250 mL of 1.33 g/mL are 332.5 g.
func ExampleParseDensity() {
	lye, err := units.ParseDensity("1.33 g/mL")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(lye.Of(units.Millilitres(250)))
	// Output: 332.5 g
}

// (104 − 32) × 5/9.
func ExampleParseTemperature() {
	oils, err := units.ParseTemperature("104 °F")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(oils, "is", oils.Sub(units.Celsius(25)), "above 25 °C")
	// Output: 40 °C is 15 K above 25 °C
}
