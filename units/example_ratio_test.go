package units_test

import (
	"fmt"
	"math"

	"example.com/lyewright/units"
)

// Not given is not zero: a superfat that somebody forgot does not become 0 %.
func ExampleRatio() {
	var superfat units.Ratio
	fmt.Println(superfat, superfat.Given(), units.Percent(0), units.Percent(0).Given())
	fmt.Println(superfat.Or(units.Percent(5)).PercentText(1), "%")
	// Output:
	// not given false 0 true
	// 5 %
}

// 5.25 % of fragrance for three parts alike comes out even; a third of the batter does not:
// it is kept to 34 digits, and printed to the nearest.
func ExampleRatio_Over() {
	three := units.Whole(3)
	fmt.Println(units.MustRatio("5.25 %").Over(three).PercentText(6), units.Whole(1).Over(three).PercentFixed(2))
	// Output: 1.75 33.33
}

// What is left of the oils when olive takes 45 % and coconut 25 %.
func ExamplePercent() {
	fmt.Println(units.Percent(45).Add(units.Percent(25)).Rest().PercentText(1), "%")
	// Output: 30 %
}

// 196 mg of KOH for each of 200 g of an oil.
func ExampleMilligramsPerGram() {
	fmt.Println(units.Grams(200).Times(units.MilligramsPerGram(196), units.Nearest))
	// Output: 39.2 g true
}

// Three parts of oil carry one part of a pigment: 5.5 g of it need 16.5 g.
func ExampleWhole() {
	fmt.Println(units.Milligrams(5_500).Times(units.Whole(3), units.Nearest))
	// Output: 16.5 g true
}

// The figure of a model comes in rounded to 10^-12, and what is no number does not come in.
func ExampleRatioOfFloat() {
	load, ok := units.RatioOfFloat(0.0061803398874989)
	fmt.Println(load, ok)
	_, ok = units.RatioOfFloat(math.NaN())
	fmt.Println(ok)
	// Output:
	// 0.006180339887 true
	// false
}

// A fraction is refused: read as a percentage it would be a hundredth of what is meant.
func ExampleParsePercent() {
	share, err := units.ParsePercent("45 %")
	fmt.Println(share, err)
	_, err = units.ParsePercent("0.45")
	fmt.Println(err)
	// Output:
	// 0.45 <nil>
	// "0.45" is a fraction where a percentage is needed; write "45 %"
}

// How many parts of a carrier go with one of a pigment is a number without a unit.
func ExampleParseNumber() {
	parts, err := units.ParseNumber("2.5")
	fmt.Println(parts, err)
	_, err = units.ParseNumber("250 %")
	fmt.Println(err)
	// Output:
	// 2.5 <nil>
	// "250 %" is a percentage where a plain number is needed; write the number alone
}

// A saponification value as it is printed: mg of KOH per g of oil.
func ExampleParseMilligramsPerGram() {
	value, err := units.ParseMilligramsPerGram("196.5")
	fmt.Println(value, err)
	// Output: 0.1965 <nil>
}

// Every spelling of a ratio is read as what it says.
func ExampleParseRatio() {
	for _, text := range []string{"6.5 %", "196.5 mg/g", "3"} {
		r, err := units.ParseRatio(text)
		fmt.Println(r, err)
	}
	// Output:
	// 0.065 <nil>
	// 0.1965 <nil>
	// 3 <nil>
}

// For what stands in the program itself.
func ExampleMustRatio() {
	superfat := units.MustRatio("6.5 %")
	fmt.Println(superfat.PercentText(1), "%")
	// Output: 6.5 %
}

// The ends of what a bottle may hold, and the value that is planned at: the middle, unless it is
// given.
func ExampleRange() {
	purity := units.Range{Low: units.Percent(97), Typical: units.MustRatio("98.5 %"), High: units.Percent(99)}
	fmt.Println(purity.Plan().PercentText(1), purity.Middle().PercentText(1), purity.Ordered())
	// Output: 98.5 98 true
}

// (185 + 196)/2.
func ExampleBetween() {
	olive := units.Between(units.MilligramsPerGram(185), units.MilligramsPerGram(196))
	fmt.Println(olive.Plan().MilligramsPerGramText(1))
	// Output: 190.5
}

// A lot that was titrated: one value, without a width.
func ExampleExactly() {
	lot := units.Exactly(units.MustRatio("97.6 %"))
	fmt.Println(lot.Plan().PercentText(1), lot.Single())
	// Output: 97.6 true
}
