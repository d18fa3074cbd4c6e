package sheet_test

import (
	"fmt"
	"strings"

	"example.com/lyewright/colour"
	"example.com/lyewright/fragrance"
	"example.com/lyewright/soap"
	"example.com/lyewright/soap/sheet"
)

// Two lines of the table of oils: planned at, range, iodine value, and why.
func ExampleWriteOils() {
	var page strings.Builder
	if err := sheet.WriteOils(&page, soap.Oils()); err != nil {
		fmt.Println(err)
		return
	}
	show(page.String(), "planned ", "olive ", "goose-fat ")
	// Output:
	// oil                     planned          range         iodine  how, choice
	// goose-fat                 194.4              -              -  computed
	// olive                     190.5     185 to 196       79 to 90  read, middle
}

// All that is known of an oil: here its published saponification value, with its source.
func ExampleWriteOil() {
	var page strings.Builder
	if err := sheet.WriteOil(&page, must(soap.LookUpOil("olive"))); err != nil {
		fmt.Println(err)
		return
	}
	show(page.String(), "185 to 196", "[1]  ")
	// Output:
	// Planned at 190.5 mg KOH/g: the middle of the published range, 185 to 196; the
	// saponification    185 to 196 mg KOH/g [1]
	// [1]  British Pharmaceutical Codex, 1911, Oleum Olivae
}

// The cap of a fragrance alone in the dry bar, and what binds: clove has 0.1 % of methyl
// eugenol, of which European law allows 0.001 %.
func ExampleWriteFragrances() {
	var page strings.Builder
	if err := sheet.WriteFragrances(&page, []fragrance.Material{must(fragrance.LookUp("clove-bud"))}); err != nil {
		fmt.Println(err)
		return
	}
	show(page.String(), "cap, %", "clove-bud")
	// Output:
	// id                                      cap, %  what binds
	// clove-bud                                    1  Methyl Eugenol (eu)
}

// All that is known of a fragrance: here how its cap comes about.
func ExampleWriteFragrance() {
	var page strings.Builder
	if err := sheet.WriteFragrance(&page, must(fragrance.LookUp("clove-bud"))); err != nil {
		fmt.Println(err)
		return
	}
	show(page.String(), "1 %", "1.7 %")
	// Output:
	// IFRA and EU: at most 1 %. Methyl Eugenol, 0.001 % [1] ÷ 0.1 % of it [2] = 1 %.
	// IFRA alone: at most 1.7 %. Methyl eugenol, 0.0017 % [5] ÷ 0.1 % of it [2] =
	// 1.7 %.
}

// What becomes of a colourant in alkali, whether the law lists it, and how much is usual.
func ExampleWriteColourants() {
	var page strings.Builder
	if err := sheet.WriteColourants(&page, []colour.Colourant{must(colour.LookUp("ultramarine-blue"))}); err != nil {
		fmt.Println(err)
		return
	}
	show(page.String(), "alkali  ", "ultramarine")
	// Output:
	// id                         CI      alkali              EU   US           usual
	// ultramarine-blue           77007   usable              yes  yes     0.2 to 1.5
}

// All that is known of a colourant: here its loads.
func ExampleWriteColourant() {
	var page strings.Builder
	if err := sheet.WriteColourant(&page, must(colour.LookUp("ultramarine-blue"))); err != nil {
		fmt.Println(err)
		return
	}
	show(page.String(), "sual")
	// Output: Usual load: 0.2 to 1.5 % of oils [4]
}
