package fragrance_test

import (
	"fmt"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/units"
)

// How much clove bud oil may a bar hold, and what binds it? By hand: its highest figures are
// 0.1 % of methyl eugenol and 90 % of eugenol; 0.001 % over 0.1 %, and 4.9 % over 90 %.
func Example() {
	clove, err := fragrance.LookUp("clove-bud")
	if err != nil {
		fmt.Println(err) // offers the nearest ids
		return
	}
	for _, c := range clove.Caps(fragrance.IFRAAndEU) {
		fmt.Println(c.Most.PercentText(2), "% of the dry bar:", c.Rule.Name())
	}
	for _, u := range clove.Unjudged(fragrance.IFRAAndEU) {
		fmt.Println("not judged:", u.Why)
	}
	// Output:
	// 1 % of the dry bar: Methyl Eugenol
	// 5.44 % of the dry bar: Eugenol
}

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
		fmt.Printf("%v: %s, %s %% over %s %%: at most %s %%\n", law, c.Rule.Name(), c.Limit.PercentText(4),
			c.Brings.PercentText(4), c.Most.PercentText(4))
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
		v := fragrance.Judge(fragrance.IFRAAndEU, units.Grams(1000),
			[]fragrance.Dose{{Material: pear, Mass: units.Grams(mass)}})
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

// A supplier names linalool and does not say how much there is: all of the material counts,
// 2 g in 1000 g.
func ExampleAllergen() {
	shelf, err := fragrance.NewShelf([]fragrance.Supplied{{ID: "lantern-pear", Allergens: []string{"Linalool"}}},
		fragrance.IFRAAndEU)
	if err != nil {
		fmt.Println(err)
		return
	}
	pear, _ := shelf.Find("lantern-pear")
	list, _ := fragrance.Judge(fragrance.IFRAAndEU, units.Grams(1000),
		[]fragrance.Dose{{Material: pear, Mass: units.Grams(2)}}).Allergens()
	for _, a := range list {
		fmt.Println(a.Rule.Name(), a.OfDry.PercentText(2), "% at the most:", a.Bound)
	}
	// Output: Linalool 0.2 % at the most: true
}

// With a carrier of two parts of oil beside it, 5 g of clove bud oil stand in a part of 1000
// g, 985 g of which are neither. By hand: x grams bring 0.001 x of methyl eugenol to 985 + 3 x
// grams, of which it may be 0.00001: x = 9.85/0.97.
func ExampleDose() {
	clove, err := fragrance.LookUp("clove-bud")
	if err != nil {
		fmt.Println(err)
		return
	}
	v := fragrance.Judge(fragrance.IFRAAndEU, units.Grams(1000), []fragrance.Dose{
		{Material: clove, Mass: units.Grams(5), Beside: units.Whole(2)},
	})
	fmt.Println("at most", v.Of(0).Most.Text(units.Gram, 2), "g")
	// Output: at most 10.15 g
}

// What is left for clove bud oil in a part of 1000 g that has 5 g of it already? By hand: x
// grams bring 0.001 x of methyl eugenol to 995 + x grams, of which it may be 0.00001: x =
// 9.95/0.99, rounded down.
func ExampleReckoned() {
	clove, err := fragrance.LookUp("clove-bud")
	if err != nil {
		fmt.Println(err)
		return
	}
	v := fragrance.Judge(fragrance.IFRAAndEU, units.Grams(1000), []fragrance.Dose{{Material: clove, Mass: units.Grams(5)}})
	for _, r := range v.All() {
		fmt.Println(r.OfDry.PercentText(2), "% of the dry part; at most", r.Most, r.Limited)
	}
	// Output: 0.5 % of the dry part; at most 10.05050505 g true
}

// Which limit does too much clove pass, and by how much? 12 g bring 12 mg of methyl eugenol
// to 1000 g: 0.0012 %, where 0.001 % is the limit.
func ExampleUse() {
	clove, err := fragrance.LookUp("clove-bud")
	if err != nil {
		fmt.Println(err)
		return
	}
	v := fragrance.Judge(fragrance.IFRAAndEU, units.Grams(1000),
		[]fragrance.Dose{{Material: clove, Mass: units.Grams(12)}})
	for _, u := range v.Over() {
		fmt.Println(u.Rule.Name()+":", u.Used.PercentText(0), "% of its limit")
	}
	// Output: Methyl Eugenol: 120 % of its limit
}

// What binds rose otto? 2 % of methyl eugenol in it: 0.001 % over 2 %, and who says so.
func ExampleCap() {
	rose, err := fragrance.LookUp("rose-otto")
	if err != nil {
		fmt.Println(err)
		return
	}
	c := rose.Caps(fragrance.IFRAAndEU)[0]
	fmt.Println(c.Limit.PercentText(4), "% over", c.Brings.PercentText(4), "%: at most", c.Most.PercentText(4), "%")
	fmt.Println(c.Rule.Source())
	fmt.Println(c.Source)
	// Output:
	// 0.001 % over 2 %: at most 0.05 %
	// Regulation (EC) 1223/2009, with Regulation (EU) 2023/1545 (OJ L 188, 27.7.2023, p. 1), Annex III entry 102 (recalled, not read)
	// IFRA Standards, Annex on contributions from other sources, 51st Amendment, 30 June 2023, sheet Natural contributions
}

// Of clove oil it is recalled that it accelerates; of a lot that seized its maker says so.
func ExampleMaterial_BehaviourHow() {
	clove, err := fragrance.LookUp("clove-bud")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(clove.Behaviour().Words(), clove.BehaviourHow(fragrance.Accelerates))
	shelf, err := fragrance.NewShelf([]fragrance.Supplied{{ID: "lantern-pear", Behaviour: fragrance.Seizes}},
		fragrance.IFRAAndEU)
	if err != nil {
		fmt.Println(err)
		return
	}
	pear, _ := shelf.Find("lantern-pear")
	fmt.Println(pear.Behaviour().Words(), pear.BehaviourHow(fragrance.Seizes))
	// Output:
	// [accelerates] memory
	// [seizes] given
}
