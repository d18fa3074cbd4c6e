package sheet_test

import (
	"fmt"
	"strings"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/sheet"
	"example.com/lyewright/units"
)

// The sheet in ounces, its lines to weigh. By hand: 1000 g are 35.274 oz, 262.6 g of water
// 9.263 oz, and 131.3 g of alkali, rounded down, 4.631 oz.
func ExampleWrite() {
	var page strings.Builder
	if err := sheet.Write(&page, lanternBars(), units.Ounce); err != nil {
		fmt.Println(err)
		return
	}
	show(page.String(), "[ ]")
	// Output:
	// [ ] Village hall blend                                  35.274         100.0
	// [ ] Water                                                9.263
	// [ ] Sodium hydroxide (NaOH)                              4.631            98
}

// A danger stands before the first mass, and once more at the end.
func ExampleWrite_danger() {
	batch := lanternBars(func(f *soap.Formula) { f.Superfat.Planned = units.Percent(0) })
	var page strings.Builder
	if err := sheet.Write(&page, batch, units.Gram); err != nil {
		fmt.Println(err)
		return
	}
	show(page.String(), "DANGER", "[ ] Village", "BEFORE YOU WEIGH", "ONCE MORE")
	// Output:
	// BEFORE YOU WEIGH
	// DANGER   The batch: the superfat may well be below zero, -1.69 % at the low
	// [ ] Village hall blend                                  1000.0         100.0
	// ONCE MORE, BEFORE IT IS USED
	// DANGER   The batch: the superfat may well be below zero, -1.69 % at the low
}

// Every formula with the numbers put into it: here the alkali's.
func ExampleWriteWorking() {
	var page strings.Builder
	if err := sheet.WriteWorking(&page, lanternBars()); err != nil {
		fmt.Println(err)
		return
	}
	show(page.String(), "(56.105 × 0.98)", "NaOH as weighed")
	// Output:
	// = 190 × (1 − 0.05) × 1 × 39.997 / (56.105 × 0.98)
	//     = 131.30371 g NaOH as weighed
}

// The same as values, for whoever draws a page of their own.
func ExampleWorking() {
	for _, step := range sheet.Working(lanternBars())[:2] {
		fmt.Println(step.Of+":", step.Figures, "=", step.Result)
	}
	// Output:
	// Village hall blend: 1000 × 190 / 1000 = 190 g KOH
	// All oils: 190 = 190 g KOH
}

// A step says why its numbers are what they are.
func ExampleStep() {
	olive := must(soap.LookUpOil("olive"))
	batch := lanternBars(func(f *soap.Formula) { f.Oils[0].Oil = olive })
	step := sheet.Working(batch)[0]
	fmt.Println(step.Formula)
	fmt.Println(step.Because)
	fmt.Println(step.Sources[0])
	// Output:
	// demand = mass × saponification value / 1000
	// the middle of the published range, 185 to 196; the value of its own fatty acids (191.697142) lies above it
	// British Pharmaceutical Codex, 1911, Oleum Olivae
}
