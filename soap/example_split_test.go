package soap_test

import (
	"fmt"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

// halvedBatter is a batter of 580 g, halved: cups of 50 g, and on each a swirl of 20 g.
func halvedBatter() soap.Formula {
	formula := lanternBars()
	trial := func(grams int) mould.Trial { return mould.Trial{Count: 10, Mass: units.Grams(grams)} }
	formula.Size = soap.Size{Batter: units.Grams(580), Vessels: []soap.Vessel{
		{Name: "cup", Part: "base", Count: 12, Trial: trial(500)},
		{Name: "swirl", Part: "cloud", On: "cup", Trial: trial(200)},
	}}
	formula.Parts = []soap.Part{
		{Name: "base", Share: units.Percent(50), Reserve: units.Whole(0)},
		{Name: "cloud", Rest: true, Reserve: units.Whole(0)},
	}
	return formula
}

// Five cups and fourteen swirls are five pieces; divided otherwise they are eight.
func ExampleSplit() {
	batch := must(halvedBatter().Batch())
	fmt.Println(batch.PiecesComplete, "pieces, or", batch.Better.PiecesComplete)
	// Output: 5 pieces, or 8
}

// Eight cups and swirls take 400 and 160 g: the parts share the batter as 5 to 2.
func ExamplePartShare() {
	for _, part := range must(halvedBatter().Batch()).Better.Parts {
		fmt.Println(part.Name, part.Share.PercentText(2), "%")
	}
	// Output:
	// base 71.43 %
	// cloud 28.57 %
}
