package fragrance_test

import (
	"fmt"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/units"
)

// Does European law bind an oil more than the IFRA Standards do?
func ExampleLaw() {
	for _, id := range []string{"clove-bud", "lemongrass"} {
		m, err := fragrance.LookUp(id)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Print(id, ":")
		for _, law := range []fragrance.Law{fragrance.IFRAAndEU, fragrance.IFRAAlone} {
			fmt.Print(" ", m.Caps(law)[0].Most.PercentText(2), " % (", law, ")")
		}
		fmt.Println(";", m.CapsDiffer())
	}
	// Output:
	// clove-bud: 1 % (ifra+eu) 1.7 % (ifra); true
	// lemongrass: 1.41 % (ifra+eu) 1.41 % (ifra); false
}

// Whose limit binds clove bud oil?
func ExampleBody() {
	clove, err := fragrance.LookUp("clove-bud")
	if err != nil {
		fmt.Println(err)
		return
	}
	binds := clove.Caps(fragrance.IFRAAndEU)[0].Rule
	fmt.Println(binds.Body(), binds.Body() == fragrance.EU)
	// Output: eu true
}

// What do the rules ask that are of ylang ylang oil itself?
func ExampleStanding() {
	ylang, err := fragrance.LookUp("ylang-ylang-i")
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range ylang.Own() {
		fmt.Println(r.Body(), r.Name()+":", r.Standing())
	}
	// Output:
	// ifra Ylang ylang extracts: limited
	// eu Cananga Odorata Oil/Extract: named on the label
}

// What binds lemongrass, in all that is known of the rule?
func ExampleRule() {
	lemongrass, err := fragrance.LookUp("lemongrass")
	if err != nil {
		fmt.Println(err)
		return
	}
	r := lemongrass.Caps(fragrance.IFRAAndEU)[0].Rule
	fmt.Println(r.Body(), r.Number(), r.Name()+",", r.Limit().PercentText(2), "%")
	fmt.Println(r.Substances(), r.Effect())
	// Output:
	// ifra 021 Citral, 1.2 %
	// [5392-40-5 141-27-5 106-26-3] dermal sensitization and systemic toxicity
}

// Which allergens of 2 % of peppermint oil does the new list alone name? By hand: up to 1 % of
// carvone and 55 % of menthol are in it, and the oil itself counts.
func ExampleList() {
	peppermint, err := fragrance.LookUp("peppermint")
	if err != nil {
		fmt.Println(err)
		return
	}
	list, _ := fragrance.Judge(fragrance.IFRAAndEU, units.Grams(100), []fragrance.Dose{{Material: peppermint, Mass: units.Grams(2)}}).Allergens()
	for _, a := range list {
		if a.Rule.List() == fragrance.NewList {
			fmt.Println(a.Rule.Name(), a.OfDry.PercentText(3), "%")
		}
	}
	// Output:
	// Carvone 0.02 %
	// Menthol 1.1 %
	// Mentha Piperita Oil 2 %
}

// Until when may a label do without the new list?
func ExampleLists() {
	lists := fragrance.AllergenLists()
	fmt.Println("placed on the market until", lists.Placed+", made available until", lists.Available)
	// Output: placed on the market until 2026-07-31, made available until 2028-07-31
}

// Above what share does the label of a soap name an allergen?
func ExampleAllergenLists() {
	lists := fragrance.AllergenLists()
	fmt.Println(lists.Threshold.PercentText(3), "% -", lists.Source.Title)
	// Output: 0.01 % - Regulation (EC) 1223/2009
}

// What a sheet says of the limits that it was judged by.
func ExampleEdition() {
	fmt.Println(fragrance.Edition(fragrance.IFRAAlone))
	// Output: IFRA Standards, 51st Amendment, 30 June 2023
}

// Is a certificate to the 49th Amendment older than the limits that are held?
func ExampleAmendment() {
	fmt.Println(fragrance.Amendment(), 49 < fragrance.Amendment())
	// Output: 51 true
}

func ExampleCategory() {
	fmt.Println(fragrance.Category())
	// Output: 9
}

// The date of the tables is text that sorts as dates do.
func ExampleDataEdition() {
	fmt.Println(fragrance.DataEdition() >= "2026-11-25")
	// Output: true
}
