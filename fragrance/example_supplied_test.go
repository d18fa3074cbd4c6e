package fragrance_test

import (
	"context"
	"fmt"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/units"
)

// A fragrance oil of one's own beside the built-in ones.
func ExampleShelf() {
	shelf, err := fragrance.NewShelf([]fragrance.Supplied{{
		ID:           "lantern-pear",
		Certificates: []fragrance.Certificate{{Category: "9", Limit: units.MustRatio("2.4 %"), Amendment: 51}},
	}}, fragrance.IFRAAndEU)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, id := range []string{"lantern-pear", "clove-bud", "moonlight"} {
		_, found := shelf.Find(id)
		fmt.Println(id, found)
	}
	// Output:
	// lantern-pear true
	// clove-bud true
	// moonlight false
}

// What is wrong with a supplier's papers comes together, with what would be right.
func ExampleNewShelf() {
	_, err := fragrance.NewShelf([]fragrance.Supplied{{
		ID:           "lantern-pear",
		Certificates: []fragrance.Certificate{{Category: "4", Limit: units.MustRatio("2.4 %"), Amendment: 51}},
		Allergens:    []string{"Linalol"},
	}}, fragrance.IFRAAndEU)
	fmt.Println(err)
	// Output:
	// [0].certificates[0].category: "4" is another category: limits are held for 9 alone, body and hands, mostly rinsed off; give the certificate's limit for category "9", or ask the supplier for it
	// [0].allergens[0]: "Linalol" is not on the lists of fragrance allergens; did you mean Linalool?
}

// A shelf for as long as somebody waits for it.
func ExampleNewShelfContext() {
	ctx, cancel := context.WithCancel(context.Background())
	supplied := []fragrance.Supplied{{ID: "lantern-pear"}}
	shelf, err := fragrance.NewShelfContext(ctx, supplied, fragrance.IFRAAndEU)
	_, found := shelf.Find("lantern-pear")
	fmt.Println(found, err)
	cancel()
	_, err = fragrance.NewShelfContext(ctx, supplied, fragrance.IFRAAndEU)
	fmt.Println(err)
	// Output:
	// true <nil>
	// context canceled
}

// A lot whose supplier's list names everything that is restricted in it needs no
// certificate: 4.9 % of eugenol over 20 % in it.
func ExampleSupplied() {
	eugenol, err := fragrance.ParseCAS("97-53-0")
	if err != nil {
		fmt.Println(err)
		return
	}
	shelf, err := fragrance.NewShelf([]fragrance.Supplied{{
		ID: "lantern-spice", Complete: true, Behaviour: fragrance.Accelerates,
		Constituents: []fragrance.Constituent{{CAS: eugenol, Share: units.Exactly(units.Percent(20))}},
	}}, fragrance.IFRAAndEU)
	if err != nil {
		fmt.Println(err)
		return
	}
	spice, _ := shelf.Find("lantern-spice")
	fmt.Println(spice.Caps(fragrance.IFRAAndEU)[0].Most.PercentText(1), "%,", spice.Behaviour().Words())
	// Output: 24.5 %, [accelerates]
}

// Of several certificates the strictest counts; the cap is theirs, and no rule's.
func ExampleCertificate() {
	shelf, err := fragrance.NewShelf([]fragrance.Supplied{{
		ID: "lantern-pear",
		Certificates: []fragrance.Certificate{
			{Category: "9", Limit: units.MustRatio("3.1 %"), Amendment: 49},
			{Category: "9", Limit: units.MustRatio("2.4 %"), Amendment: 51},
		},
	}}, fragrance.IFRAAndEU)
	if err != nil {
		fmt.Println(err)
		return
	}
	pear, _ := shelf.Find("lantern-pear")
	c := pear.Caps(fragrance.IFRAAndEU)[0]
	fmt.Println(c.Most.PercentText(1), "%,", c.Source.Place, c.Rule.Given())
	// Output: 2.4 %, supplier's certificate false
}

// Which materials of a blend are certified, and to what?
func ExampleCertified() {
	shelf, err := fragrance.NewShelf([]fragrance.Supplied{
		{ID: "lantern-pear", Certificates: []fragrance.Certificate{{Category: "9", Limit: units.MustRatio("2.4 %"), Amendment: 51}}},
		{ID: "lantern-walk", Blend: []fragrance.Share{
			{Fragrance: "lantern-pear", Share: units.Percent(80)}, {Fragrance: "sweet-orange", Share: units.Percent(20)},
		}},
	}, fragrance.IFRAAndEU)
	if err != nil {
		fmt.Println(err)
		return
	}
	blend, _ := shelf.Find("lantern-walk")
	for _, c := range blend.Certificates() {
		fmt.Println(c.Of.ID(), c.Limit.PercentText(1), "%, to amendment", c.Amendment)
	}
	// Output: lantern-pear 2.4 %, to amendment 51
}

// Up to 3 % of vanillin in a fragrance: what will it do to the soap? The high end counts.
func ExampleConstituent() {
	vanillin, err := fragrance.ParseCAS("121-33-5")
	if err != nil {
		fmt.Println(err)
		return
	}
	shelf, err := fragrance.NewShelf([]fragrance.Supplied{{
		ID:           "lantern-cake",
		Constituents: []fragrance.Constituent{{CAS: vanillin, Share: units.Between(units.Percent(1), units.Percent(3))}},
	}}, fragrance.IFRAAndEU)
	if err != nil {
		fmt.Println(err)
		return
	}
	cake, _ := shelf.Find("lantern-cake")
	for _, c := range cake.Colours() {
		fmt.Println(c.Share.PercentText(1), "% of", c.Substance, c.Does)
	}
	// Output: 3 % of vanillin browns in air and time, the surface and cut faces first
}

// Safrole must not be added; what a natural material brings of it is another thing.
func ExampleOrigin() {
	safrole, err := fragrance.ParseCAS("94-59-7")
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, origin := range []fragrance.Origin{fragrance.Added, fragrance.FromNature} {
		_, err = fragrance.NewShelf([]fragrance.Supplied{{
			ID:           "lantern-spice",
			Constituents: []fragrance.Constituent{{CAS: safrole, Share: units.Exactly(units.MustRatio("0.1 %")), Origin: origin}},
		}}, fragrance.IFRAAlone)
		fmt.Println(err == nil)
	}
	// Output:
	// false
	// true
}

// A blend of 60 % sweet orange and 40 % clove bud, whose 0.1 % of methyl eugenol is 0.04 % of
// the blend: 0.001 % over that.
func ExampleShare() {
	shelf, err := fragrance.NewShelf([]fragrance.Supplied{{ID: "lantern-walk", Blend: []fragrance.Share{
		{Fragrance: "sweet-orange", Share: units.Percent(60)}, {Fragrance: "clove-bud", Share: units.Percent(40)},
	}}}, fragrance.IFRAAndEU)
	if err != nil {
		fmt.Println(err)
		return
	}
	blend, _ := shelf.Find("lantern-walk")
	c := blend.Caps(fragrance.IFRAAndEU)[0]
	fmt.Println(c.Rule.Name()+":", "at most", c.Most.PercentText(2), "%")
	// Output: Methyl Eugenol: at most 2.5 %
}
