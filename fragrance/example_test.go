package fragrance_test

import (
	"fmt"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/units"
)

// What binds clove bud oil, and the most of it in a dry bar. By hand: the Annex has up to
// 0.1 % of methyl eugenol in it; 0.001 % over 0.1 % is 1 % (EU), 0.0017 % over 0.1 % is
// 1.7 % (IFRA).
func ExampleLookUp() {
	clove, err := fragrance.LookUp("clove-bud")
	if err != nil {
		fmt.Println(err) // offers the nearest ids
		return
	}
	for _, law := range []fragrance.Law{fragrance.IFRAAndEU, fragrance.IFRAAlone} {
		c := clove.Caps(law)[0]
		fmt.Printf("%v: %s, %s %% over %s %%: at most %s %%\n", law, c.Rule.Name(), c.Limit.PercentText(4), c.Brings.PercentText(4), c.Most.PercentText(4))
	}
	// Output:
	// ifra+eu: Methyl Eugenol, 0.001 % over 0.1 %: at most 1 %
	// ifra: Methyl eugenol, 0.0017 % over 0.1 %: at most 1.7 %
}

// A fragrance oil of one's own, by its certificate and list, beside a built-in oil. By
// hand, in 1000 g of dry bar: the certificate's 2.4 % is 24 g, so that 12 g use half of it,
// and for methyl eugenol, which the list does not name, the certificate stands; 5 g of
// clove bud bring 5 mg of it, half of 0.001 %: together all of the limit.
func ExampleJudge() {
	eugenol, err := fragrance.ParseCAS("97-53-0")
	if err != nil {
		fmt.Println(err)
		return
	}
	shelf, err := fragrance.NewShelf([]fragrance.Supplied{{
		ID:           "lantern-pear",
		Certificates: []fragrance.Certificate{{Category: "9", Limit: units.MustRatio("2.4 %"), Amendment: 51}},
		Constituents: []fragrance.Constituent{{CAS: eugenol, Share: units.Between(units.Percent(1), units.Percent(2))}},
	}}, fragrance.IFRAAndEU)
	if err != nil {
		fmt.Println(err) // everything that is wrong with the list, together
		return
	}
	pear, _ := shelf.Find("lantern-pear")
	clove, _ := shelf.Find("clove-bud")
	v := fragrance.Judge(fragrance.IFRAAndEU, units.Grams(1000), []fragrance.Dose{
		{Material: pear, Mass: units.Grams(12)}, {Material: clove, Mass: units.Grams(5)},
	})
	most, _ := v.Most()
	fmt.Println(most.Rule.Name()+":", most.Used.PercentText(2), "% of its limit;", v.Passed(), "limits passed")
	fmt.Println("of clove bud at most", v.Of(1).Most.Text(units.Gram, 3), "g")
	// Output:
	// Methyl Eugenol: 100 % of its limit; 0 limits passed
	// of clove bud at most 5 g
}

// What the label may have to name: 5 g of a material with up to 2 % of eugenol in 1000 g
// is 0.01 %, which is not above the threshold; 6 g are.
func ExampleVerdict_Allergens() {
	eugenol, err := fragrance.ParseCAS("97-53-0")
	if err != nil {
		fmt.Println(err)
		return
	}
	shelf, err := fragrance.NewShelf([]fragrance.Supplied{{
		ID: "lantern-pear", Complete: true, Allergens: []string{"Eugenol"},
		Constituents: []fragrance.Constituent{{CAS: eugenol, Share: units.Between(units.Percent(1), units.Percent(2))}},
	}}, fragrance.IFRAAndEU)
	if err != nil {
		fmt.Println(err)
		return
	}
	pear, _ := shelf.Find("lantern-pear")
	for _, mass := range []int{5, 6} {
		v := fragrance.Judge(fragrance.IFRAAndEU, units.Grams(1000), []fragrance.Dose{{Material: pear, Mass: units.Grams(mass)}})
		list, complete := v.Allergens()
		fmt.Println(mass, "g:", len(list), "to name, complete", complete)
		for _, a := range list {
			fmt.Println(a.Rule.Name(), a.OfDry.PercentText(4), "%,", a.Rule.List(), "list")
		}
	}
	// Output:
	// 5 g: 0 to name, complete true
	// 6 g: 1 to name, complete true
	// Eugenol 0.012 %, old list
}

// A number with a wrong check digit is no number.
func ExampleParseCAS() {
	cas, err := fragrance.ParseCAS("97-53-0")
	fmt.Println(cas, err)
	_, err = fragrance.ParseCAS("97-53-1")
	fmt.Println(err)
	// Output:
	// 97-53-0 <nil>
	// "97-53-1" is not a CAS number: its check digit is wrong; compare it with the supplier's list; if the other digits are right the last is 0
}
