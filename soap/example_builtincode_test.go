package soap_test

import (
	"fmt"
	"io"
	"os"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// A formula built in code, from the oils of the table to a line for everything to weigh.
//
// By hand: 480 g × 190.5 + 320 g × 254.354214 are 172 833.348 mg of KOH; times 0.94 ×
// 39.997/(56.105 × 0.98) that is 118.183 g of sodium hydroxide, rounded down to the scale;
// times 68/32 it is 251.139 g of water.
func Example_builtInCode() {
	if err := lanternCups(os.Stdout); err != nil {
		fmt.Println(err)
	}
	// Output:
	// [ ] 480 g Olive oil (virgin and refined)
	// [ ] 320 g Coconut oil
	// [ ] 251.1 g water
	// [ ] 118.1 g Sodium hydroxide at 98 %, into the water
	// superfat 6 %, likely 3.4 to 8.6 %
}

// lanternCups works out a batch for the lantern walk (invented) and writes what to weigh.
func lanternCups(w io.Writer) error {
	olive, err := soap.LookUpOil("olive")
	if err != nil {
		return err // offers the nearest known ids
	}
	coconut, err := soap.LookUpOil("coconut")
	if err != nil {
		return err
	}
	batch, err := soap.Formula{
		Name: "Lantern walk cups",
		Oils: []soap.OilLine{
			{Oil: olive, Share: units.Percent(60)},
			{Oil: coconut, Rest: true},
		},
		Alkalis: []soap.AlkaliLine{{
			Alkali: soap.SodiumHydroxide,
			Purity: units.Between(units.Percent(97), units.Percent(99)),
		}},
		Superfat: soap.Superfat{Planned: units.Percent(6)},
		Water:    soap.Water{LyeConcentration: units.Percent(32)},
		Size:     soap.Size{Oils: units.Grams(800)},
	}.Batch()
	if err != nil {
		return err // soap.Faults: everything that is wrong, together
	}
	for _, f := range batch.Findings { // what is unsafe stands first
		fmt.Fprintln(w, f.Severity, f.Message())
	}
	for _, oil := range batch.Oils {
		fmt.Fprintln(w, "[ ]", oil.Weigh, oil.Oil.Name())
	}
	fmt.Fprintln(w, "[ ]", batch.Water.Weigh, "water")
	for _, alkali := range batch.Alkalis {
		weighing, purity := alkali.ToWeigh()
		fmt.Fprintln(w, "[ ]", weighing.Weigh, alkali.Alkali.Name(), "at", purity.Typical.PercentText(1), "%, into the water")
	}
	s := batch.Superfat
	fmt.Fprintln(w, "superfat", s.Planned.PercentText(1), "%, likely", s.LikelyLow.PercentText(1), "to", s.LikelyHigh.PercentText(1), "%")
	return nil
}
