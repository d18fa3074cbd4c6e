package sheet_test

import (
	"fmt"
	"io"
	"strings"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/sheet"
	"example.com/lyewright/units"
)

// The example of the README: a formula in code becomes a sheet for the bench.
// Here only the lines to weigh are shown.
func Example() {
	var page strings.Builder
	if err := lanternCups(&page); err != nil {
		fmt.Println(err)
	}
	for line := range strings.Lines(page.String()) {
		if strings.HasPrefix(line, "[ ]") {
			fmt.Print(line)
		}
	}
	// By hand: 480 g × 190.5 + 320 g × 254.354214 are 172833.348 mg of KOH; times
	// 0.94 × 39.997/(56.105 × 0.98) that is 118.183 g of sodium hydroxide, rounded
	// down to the scale; times 68/32 it is 251.139 g of water.

	// Output:
	// [ ] Olive oil (virgin and refined)                       480.0          60.0
	// [ ] Coconut oil                                          320.0          40.0
	// [ ] Water                                                251.1
	// [ ] Sodium hydroxide (NaOH)                              118.1            98
}

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
	for _, f := range batch.Findings {
		fmt.Fprintln(w, f.Severity, f.Subject, f.Message())
	}
	return sheet.Write(w, batch, units.Gram)
}
