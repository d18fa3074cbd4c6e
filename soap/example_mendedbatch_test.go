package soap_test

import (
	"fmt"
	"io"
	"os"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// A batch weighed past the mark: 150 g of sodium hydroxide went on the scale in place of
// 144.5 g, and oils and lye are joined. What mends it is read off.
//
// By hand: 150 × 0.98 × 56.105/39.997 = 206.2014 g of KOH against 700 × 0.19 + 300 × 0.254 =
// 209.2 g, a superfat of 1.43 %. For 5 % it takes 206.2014/0.95 − 209.2 = 7.8541 g of KOH
// more: 41.34 g at 190 mg/g, 30.92 g at 254, 37.54 g of the blend at 209.2, each rounded up
// to the scale.
func Example_mendedBatch() {
	if err := mendBars(os.Stdout, units.Grams(150)); err != nil {
		fmt.Println(err)
	}
	// Output:
	// danger superfat-likely-negative
	// planned 5 %, as weighed 1.43 %
	// add 41.4 g of hall-blend for 5.01 %, then pour 1480.5 g
	// add 31 g of yard-blend for 5.01 %, then pour 1470.1 g
	// add 37.6 g of blend for 5.01 %, then pour 1476.7 g
}

// mendBars writes what brings bars (invented) back to their plan, whose alkali was weighed so.
func mendBars(w io.Writer, alkali units.Mass) error {
	hall, err := soap.OwnOil{ID: "hall-blend", Saponification: units.Between(units.MilligramsPerGram(188), units.MilligramsPerGram(192))}.Oil()
	if err != nil {
		return err
	}
	yard, err := soap.OwnOil{ID: "yard-blend", Saponification: units.Between(units.MilligramsPerGram(248), units.MilligramsPerGram(260))}.Oil()
	if err != nil {
		return err
	}
	batch, err := soap.Formula{
		Name:     "Lantern walk bars",
		Oils:     []soap.OilLine{{Oil: hall, Share: units.Percent(70)}, {Oil: yard, Rest: true}},
		Alkalis:  []soap.AlkaliLine{{Alkali: soap.SodiumHydroxide, Purity: units.Between(units.Percent(97), units.Percent(99))}},
		Superfat: soap.Superfat{Planned: units.Percent(5)},
		Water:    soap.Water{PerAlkali: units.Whole(2)},
		Size:     soap.Size{Oils: units.Grams(1000)},
		Weighed: soap.Weighed{
			Stage:   soap.AtPot,
			Alkalis: []soap.WeighedAlkali{{Alkali: soap.SodiumHydroxide, Mass: alkali}},
		},
	}.Batch()
	if err != nil {
		return err // a slipped point, too: more than three times the plan
	}
	for _, f := range batch.Findings {
		if f.Severity == soap.Danger {
			fmt.Fprintln(w, f.Severity, f.Code)
		}
	}
	weighed := batch.Weighed
	fmt.Fprintln(w, "planned", batch.Superfat.Planned.PercentText(2), "%, as weighed", weighed.Superfat.Planned.PercentText(2), "%")
	for _, r := range weighed.Remedies {
		fmt.Fprintln(w, "add", r.Add.Weigh, "of", r.Oil, "for", r.Superfat.Planned.PercentText(2), "%, then pour", r.Poured.Text(units.Gram, 1), "g")
	}
	return nil
}
