package sheet_test

import (
	"fmt"
	"strings"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/soap/sheet"
	"example.com/lyewright/units"
)

// A bottle titrated to two end points. By hand: 47 mL of 1 mol/L acid, 39.997 mg each, are
// 93.99 % of 2 g, and as the acid may be off by 0.2 %, 93.80 to 94.19 %; two more millilitres,
// 52.994 mg each, are 5.3 % of carbonate.
func ExampleWriteTitration() {
	titration := lye.Titration{
		Alkali: soap.SodiumHydroxide, Sample: units.Grams(2), Normality: units.Whole(1),
		First: units.Millilitres(48), Total: units.Millilitres(49), Titrant: units.MustRatio("0.2 %"),
	}
	found := must(titration.Result())
	var page strings.Builder
	if err := sheet.WriteTitration(&page, titration, found); err != nil {
		fmt.Println(err)
		return
	}
	show(page.String(), "Hydroxide  ", "outer bounds", "Carbonate  ", "accuracy", "purity")
	// Output:
	// Hydroxide                         93.99 %
	// Carbonate                         5.3 %
	// Hydroxide, outer bounds           93.8 to 94.19 %
	// -  No accuracy is stated of: balance, burette. What was read there is taken as
	//   "purity": {"low": "93.8049 %", "typical": "93.993 %", "high": "94.181 %"}
}

// How hot the lye of the bars gets if no heat is lost. By hand: 129.99 g of
// hydroxide at 99 % are 33.0 % of 393.9 g.
func ExampleWriteHeat() {
	mixing := lye.Mixing{
		Water: units.Milligrams(262_607), WaterAt: units.Celsius(10),
		Alkalis: []lye.Portion{{Alkali: soap.SodiumHydroxide, Mass: units.Milligrams(131_304), Hydroxide: units.Percent(99)}},
	}
	heat := must(mixing.Bound())
	var page strings.Builder
	if err := sheet.WriteHeat(&page, mixing, heat); err != nil {
		fmt.Println(err)
		return
	}
	show(page.String(), "Strength", "reaches", "boils")
	// Output:
	// Strength of the lye               33 % hydroxide
	// It reaches up to                  100.9 °C
	// It boils near                     121 °C [2]
}

// What a lye of 32 % is like at 20 °C. A published table has 1.3488 g/mL.
func ExampleWriteSolution() {
	solution := lye.Solution{Alkali: soap.SodiumHydroxide, Strength: units.Percent(32), At: units.Celsius(20)}
	var page strings.Builder
	if err := sheet.WriteSolution(&page, solution, units.Grams(500), false); err != nil {
		fmt.Println(err)
		return
	}
	show(page.String(), "Strength", "Density", "Volume", "crystallise")
	// Output:
	// Strength                          32 % hydroxide
	// Density                           1.3464 g/mL
	// Volume of 500 g                   371.4 mL
	// It begins to crystallise at       5.6 °C, give or take 1 K [2]
}

// A kilogram of stock lye of 50 % from an alkali of 98 %: 500/0.98 g, and water.
func ExampleWriteStock() {
	alkali, water, err := lye.Stock{Alkali: soap.SodiumHydroxide, Strength: units.Percent(50)}.Make(units.Grams(1000), units.Percent(98))
	if err != nil {
		fmt.Println(err)
		return
	}
	var page strings.Builder
	if err := sheet.WriteStock(&page, "A kilogram of stock lye of 50 %", "Sodium hydroxide at 98 %", alkali, water); err != nil {
		fmt.Println(err)
		return
	}
	show(page.String(), "Sodium hydroxide at", "Water  ")
	// Output:
	// Sodium hydroxide at 98 %          510.204 g
	// Water                             489.796 g
}

// The acids by what a formula may call them.
func ExampleWriteAcids() {
	var page strings.Builder
	if err := sheet.WriteAcids(&page, lye.Acids()); err != nil {
		fmt.Println(err)
		return
	}
	show(page.String(), "lactic-acid")
	// Output: lactic-acid               C3H6O3      90.078 g/mol
}
