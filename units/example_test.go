package units_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"

	"example.com/lyewright/units"
)

// How much olive oil are 45 % of 28.2 oz of oils, on a scale that shows 0.1 g? By hand:
// 28.2 × 28.349523125 × 0.45 = 359.75544845625 g.
func Example() {
	oils, err := units.ParseMass("28.2 oz")
	if err != nil {
		fmt.Println(err) // says what would be right
		return
	}
	share, err := units.ParsePercent("45 %")
	if err != nil {
		fmt.Println(err)
		return
	}
	olive, ok := oils.Times(share, units.Nearest)
	if !ok {
		fmt.Println("the share was not given")
		return
	}
	scale := units.Milligrams(100)
	fmt.Println(olive, "is weighed as", olive.Round(scale, units.Nearest))
	// Output: 359.755448456 g is weighed as 359.8 g
}

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

// Masses are plain values: they add up exactly, and == tells whether two are the same.
func ExampleMass() {
	var poured units.Mass // 0 g
	for range 3 {
		poured = poured.Add(units.Milligrams(45_100))
	}
	fmt.Println(poured, poured == units.Milligrams(135_300))
	// Output: 135.3 g true
}

// 45 % of 799.456552125 g are 359.75544845625 g, born once as nanograms.
func ExampleMass_Times() {
	oils, _ := units.ParseMass("28.2 oz")
	share, _ := units.ParsePercent("45 %")
	fmt.Println(oils.Times(share, units.Nearest))
	var forgotten units.Ratio
	fmt.Println(oils.Times(forgotten, units.Nearest))
	// Output:
	// 359.755448456 g true
	// 0 g false
}

// A column of the batch sheet, aligned on the point.
func ExampleMass_Fixed() {
	for _, m := range []units.Mass{units.Grams(360), units.Milligrams(5_250)} {
		fmt.Printf("%8s g\n", m.Fixed(units.Gram, 1))
	}
	// Output:
	//    360.0 g
	//      5.3 g
}

// What is left of a kilogram of batter when eleven cups have taken 84 g each.
func ExampleGrams() {
	fmt.Println(units.Grams(1000).Sub(units.Grams(11 * 84)))
	// Output: 76 g
}

// As a database keeps it: a whole number, there and back.
func ExampleNanograms() {
	weighed, _ := units.ParseMass("118.1 g")
	kept := weighed.Nanograms()
	fmt.Println(kept, units.Nanograms(kept) == weighed)
	// Output: 118100000000 true
}

// A mass in JSON is the text that ParseMass reads, and comes back to the nanogram.
func ExampleMass_MarshalText() {
	type jug struct{ Alkali units.Mass }
	saved, err := json.Marshal(jug{Alkali: units.Milligrams(118_100)})
	fmt.Println(string(saved), err)
	var read jug
	err = json.Unmarshal(saved, &read)
	fmt.Println(read.Alkali, err)
	// Output:
	// {"Alkali":"118.1 g"} <nil>
	// 118.1 g <nil>
}

// 31.416 g of a pigment, on a scale whose division is 0.1 g.
func ExampleMilligrams() {
	fmt.Println(units.Milligrams(31_416).Round(units.Milligrams(100), units.Nearest))
	// Output: 31.4 g
}

// 111.46 g on a scale of 0.1 g: an oil goes to the nearest, alkali down, the least of
// something up.
func ExampleRounding() {
	for _, how := range []units.Rounding{units.Nearest, units.Down, units.Up} {
		fmt.Println(how, units.Milligrams(111_460).Round(units.Milligrams(100), how))
	}
	// Output:
	// nearest 111.5 g
	// down 111.4 g
	// up 111.5 g
}

// The same mass in every unit: 800/28.349523125 and 800/453.59237.
func ExampleUnit() {
	for _, u := range []units.Unit{units.Gram, units.Kilogram, units.Ounce, units.Pound} {
		fmt.Println(units.Grams(800).Text(u, 3), u)
	}
	// Output:
	// 800 g
	// 0.8 kg
	// 28.219 oz
	// 1.764 lb
}

// The symbol alone is known, not the word.
func ExampleParseUnit() {
	u, ok := units.ParseUnit("oz")
	fmt.Println(u, ok)
	_, ok = units.ParseUnit("ounces")
	fmt.Println(ok)
	// Output:
	// oz true
	// false
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

// What is wrong with a text comes with what would be right, and errors.Is tells the kinds
// apart (see also ParseMass).
func ExampleParseError() {
	_, err := units.ParseMass("1,000 g")
	var wrong *units.ParseError
	if errors.As(err, &wrong) {
		fmt.Println(wrong.Text, wrong.Reason)
		fmt.Println(wrong.Remedy)
	}
	fmt.Println(errors.Is(err, units.ErrSyntax), errors.Is(err, units.ErrUnit))
	// Output:
	// 1,000 g has a comma in its number
	// write a decimal point, and no digit grouping
	// true false
}

// A name that would upset a terminal, and one that would flood a log.
func ExampleQuote() {
	fmt.Println(units.Quote("lantern\a"))
	fmt.Println(units.Quote(strings.Repeat("lantern ", 1000)))
	// Output:
	// "lantern\a"
	// "lantern lantern lantern lantern lantern "…
}
