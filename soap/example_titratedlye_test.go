package soap_test

import (
	"errors"
	"fmt"
	"io"
	"os"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
)

// An old bottle, titrated to two end points: what it found becomes the purity.
//
// By hand: 2 g took 48 mL of acid of 1 mol/L to phenolphthalein, and 49 mL to methyl orange.
// The hydroxide took 2 × 48 − 49 = 47 mL, of 39.997 mg each: 93.993 %; the carbonate 2 × (49 −
// 48) mL, of 105.988/2 mg each: 5.299 %. The balance may be off by 0.25 % and the acid by
// 0.2 %. 190 g × 0.95 × 39.997/(56.105 × 0.93993) are 136.90 g to weigh.
func Example_titratedLye() {
	if err := fromOldBottle(os.Stdout); err != nil {
		fmt.Println(err)
	}
	// Output:
	// hydroxide 93.993 %, carbonate 5.299 %
	// between 93.57 and 94.42 %
	// weigh 136.9 g of it for 1000 g of oil
}

// fromOldBottle titrates a bottle (invented) and makes bars with what is in it.
func fromOldBottle(w io.Writer) error {
	found, err := lye.Titration{
		Alkali:    soap.SodiumHydroxide,
		Sample:    units.Grams(2),
		Normality: units.Whole(1), // mol per litre
		First:     units.Millilitres(48),
		Total:     units.Millilitres(49),
		Balance:   units.Milligrams(5),
		Titrant:   units.MustRatio("0.2 %"),
	}.Result()
	if err != nil {
		return err // end points out of order, readings too coarse
	}
	purity, ok := found.Range()
	if !ok {
		return errors.New("one end point alone gives no range")
	}
	oil, err := soap.OwnOil{
		ID: "hall-blend", Saponification: units.Between(units.MilligramsPerGram(188), units.MilligramsPerGram(192)),
	}.Oil()
	if err != nil {
		return err
	}
	batch, err := soap.Formula{
		Name:     "Lantern walk bars, of an old bottle",
		Oils:     []soap.OilLine{{Oil: oil, Share: units.Percent(100)}},
		Alkalis:  []soap.AlkaliLine{{Alkali: soap.SodiumHydroxide, Purity: purity, PuritySource: lye.TitrationSource()}},
		Superfat: soap.Superfat{Planned: units.Percent(5)},
		Water:    soap.Water{PerAlkali: units.Whole(2)},
		Size:     soap.Size{Oils: units.Grams(1000)},
	}.Batch()
	if err != nil {
		return err
	}
	fmt.Fprintln(w, "hydroxide", found.Hydroxide.PercentText(3), "%, carbonate", found.Carbonate.PercentText(3), "%")
	fmt.Fprintln(w, "between", purity.Low.PercentText(2), "and", purity.High.PercentText(2), "%")
	weighing, _ := batch.Alkalis[0].ToWeigh()
	fmt.Fprintln(w, "weigh", weighing.Weigh, "of it for", batch.OilsTotal, "of oil")
	return nil
}
