package soap_test

import (
	"fmt"
	"io"
	"os"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

// From twelve cups on the shelf, and a swirl on each, to the oils.
//
// By hand: a cup of 45 to 60 mm filled to 36 of its 40 mm takes π·36/12·(58.5² + 58.5·45 +
// 45²) = 76.150 mL, a swirl π·35/12·(45² + 45·8 + 8²)·0.85 = 19.074 mL. 1.3860 g of batter to
// a gram of oils, of 0.9919 g/mL: 75.53 g and 18.92 g. Twelve of each, with 5 % and 15 % to
// spare, are 951.72 g and 261.09 g; over 1.3860 that is 875.02 g of oils.
func Example_twoPartCup() {
	if err := cupsAndSwirls(os.Stdout); err != nil {
		fmt.Println(err)
	}
	// Output:
	// 12 of cup with base at 75.53 g
	// 12 of swirl with cloud at 18.92 g
	// make 951.72 g of base
	// make 261.09 g of cloud
	// oils 875.02 g for 12 pieces
}

// cupsAndSwirls fills twelve cups (invented) and pipes a swirl on each.
func cupsAndSwirls(w io.Writer) error {
	oil, err := soap.OwnOil{
		ID: "hall-blend", Saponification: units.Exactly(units.MilligramsPerGram(190)), Density: units.MustRatio("0.9"), // g/mL
	}.Oil()
	if err != nil {
		return err
	}
	batch, err := soap.Formula{
		Name:     "Lantern walk cups",
		Oils:     []soap.OilLine{{Oil: oil, Share: units.Percent(100)}},
		Alkalis:  []soap.AlkaliLine{{Alkali: soap.SodiumHydroxide, Purity: units.Exactly(units.Percent(100))}},
		Superfat: soap.Superfat{Planned: units.Percent(5)},
		Water:    soap.Water{PerAlkali: units.Whole(2)},
		Size: soap.Size{Vessels: []soap.Vessel{
			{Name: "cup", Part: "base", Count: 12, Shape: mould.Frustum{
				Top: units.Millimetres(60), Bottom: units.Millimetres(45), Height: units.Millimetres(40), Fill: units.Percent(90),
			}},
			{Name: "swirl", Part: "cloud", On: "cup", Shape: mould.Cone{
				Base: units.Millimetres(45), Tip: units.Millimetres(8), Height: units.Millimetres(35), Fill: units.Percent(85),
			}},
		}},
		Parts: []soap.Part{{Name: "base"}, {Name: "cloud", Work: mould.Piped}},
	}.Batch()
	if err != nil {
		return err
	}
	for _, p := range batch.Pieces {
		fmt.Fprintln(w, p.Count, "of", p.Vessel, "with", p.Part, "at", p.Fresh.Text(units.Gram, 2), "g")
	}
	for _, p := range batch.Parts {
		fmt.Fprintln(w, "make", p.Poured.Text(units.Gram, 2), "g of", p.Name)
	}
	fmt.Fprintln(w, "oils", batch.OilsTotal.Text(units.Gram, 2), "g for", batch.PiecesInAll(), "pieces")
	return nil
}
