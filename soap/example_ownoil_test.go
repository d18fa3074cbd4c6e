package soap_test

import (
	"fmt"
	"io"
	"os"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// Oils of the maker's own: one pressed at the hall, with the range of its saponification
// value, and a lot of coconut whose certificate says more than the table.
//
// By hand: 700 g × 191 + 300 g × 257 are 210.8 g of KOH; times 0.95 × 39.997/(56.105 × 0.98)
// that is 145.6780 g of sodium hydroxide. At worst, without the scales, the oils demand 700 ×
// 188 + 300 × 255 = 208.1 g, and 145.6780 g at 99 % are 202.303 g of KOH, 2.79 % less; a
// division of 0.1 g of each line adds 0.09 points.
func Example_ownOil() {
	if err := hallBars(os.Stdout); err != nil {
		fmt.Println(err)
	}
	// Output:
	// note saponification-replaced oils[1]
	// Oil pressed at the hall, planned at 191 mg KOH/g, its value own
	// Coconut oil, planned at 257 mg KOH/g, its value own
	// sodium hydroxide 145.678 g
	// superfat at worst 2.7 %, likely 3.4 % or more
}

// hallBars are bars (invented) of what the village hall pressed.
func hallBars(w io.Writer) error {
	pressed, err := soap.OwnOil{
		ID:             "pressed-at-the-hall",
		Name:           "Oil pressed at the hall",
		Saponification: units.Between(units.MilligramsPerGram(188), units.MilligramsPerGram(194)),
	}.Oil()
	if err != nil {
		return err // soap.Faults, such as grams of alkali in place of mg of KOH
	}
	coconut, err := soap.LookUpOil("coconut")
	if err != nil {
		return err
	}
	lot, err := coconut.WithSaponification(units.Between(units.MilligramsPerGram(255), units.MilligramsPerGram(259)))
	if err != nil {
		return err
	}
	batch, err := soap.Formula{
		Name: "Hall bars",
		Oils: []soap.OilLine{{Oil: pressed, Mass: units.Grams(700)}, {Oil: lot, Mass: units.Grams(300)}},
		Alkalis: []soap.AlkaliLine{{Alkali: soap.SodiumHydroxide, Purity: units.Between(units.Percent(97),
			units.Percent(99))}},
		Superfat: soap.Superfat{Planned: units.Percent(5)},
		Water:    soap.Water{PerAlkali: units.Whole(2)},
	}.Batch()
	if err != nil {
		return err
	}
	for _, f := range batch.Findings {
		fmt.Fprintln(w, f.Severity, f.Code, f.Subject)
	}
	for _, oil := range batch.Oils {
		value := oil.Oil.Saponification()
		fmt.Fprintln(w, oil.Oil.Name()+", planned at", value.Typical.MilligramsPerGramText(1), "mg KOH/g, its value",
			oil.Oil.Choice())
	}
	fmt.Fprintln(w, "sodium hydroxide", batch.Alkalis[0].Dry.Mass.Text(units.Gram, 4), "g")
	fmt.Fprintln(w, "superfat at worst", batch.Superfat.Low.PercentText(1), "%, likely",
		batch.Superfat.LikelyLow.PercentText(1), "% or more")
	return nil
}

// A value of 250 mg/g typed for olive oil. By hand: alkali for 0.95 × 250 g of KOH against
// the 190.5 g that 1000 g of olive oil take up leave 1 − 237.5/190.5 = −24.67 %.
func ExampleSuperfatIf() {
	typed := must(must(soap.LookUpOil("olive")).WithSaponification(units.Exactly(units.MilligramsPerGram(250))))
	batch := must(soap.Formula{
		Name: "Hall bars",
		Oils: []soap.OilLine{{Oil: typed, Mass: units.Grams(1000)}},
		Alkalis: []soap.AlkaliLine{{Alkali: soap.SodiumHydroxide, Purity: units.Between(units.Percent(97),
			units.Percent(99))}},
		Superfat: soap.Superfat{Planned: units.Percent(5)},
		Water:    soap.Water{PerAlkali: units.Whole(2)},
	}.Batch())
	f := batch.Findings[0]
	fmt.Println(f.Severity, f.Code)
	fmt.Println("with the published value", f.SuperfatIf.Batch.PercentText(2), "%")
	// Output:
	// danger saponification-outside
	// with the published value -24.67 %
}
