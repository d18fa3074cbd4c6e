package colour_test

import (
	"fmt"

	"example.com/lyewright/colour"
	"example.com/lyewright/units"
)

// May ultramarine go into a part of 500 g of oils, and how much is usual? 0.2 and 1.5 % of
// 500 g.
func Example() {
	blue, err := colour.LookUp("ultramarine-blue")
	if err != nil {
		fmt.Println(err) // offers the nearest ids
		return
	}
	fmt.Println(blue.InAlkali().Stability, "in alkali;", blue.Under(colour.EU).Standing)
	part := colour.Amounts{Oils: units.Grams(500)}
	if usual, known := blue.Usual(false); known {
		fmt.Println(part.Mass(usual.Low), "to", part.Mass(usual.High))
	}
	// Output:
	// usable in alkali; permitted
	// 1 g to 7.5 g
}

// How dense is it, who says so, and what else is published? An unknown id is an error that
// offers the nearest.
func ExampleLookUp() {
	white, err := colour.LookUp("titanium-dioxide")
	if err != nil {
		fmt.Println(err)
		return
	}
	_, density, _ := white.Density()
	fmt.Println(white.Name()+":", density)
	fmt.Println(white.DensitySource())
	fmt.Println(white.Remark())
	_, err = colour.LookUp("titanium-dioxid")
	fmt.Println(err)
	// Output:
	// Titanium dioxide, crystal form not stated: 4.17 g/mL
	// Table of inorganic constants, CRC type, edition not stated, density, as an open data set holds it
	// anatase 3.90, rutile 4.17; planned as rutile, which most pigment grades are (recalled)
	// colourant: "titanium-dioxid" is not a built-in colourant; did you mean titanium-dioxide?
}

// Is a name the id of a colourant as it stands? LookUp takes further names.
func ExampleKnown() {
	fmt.Println(colour.Known("activated-charcoal"), colour.Known("charcoal"))
	charcoal, err := colour.LookUp("charcoal")
	fmt.Println(charcoal.ID(), charcoal.Asked(), err)
	// Output:
	// true false
	// activated-charcoal charcoal <nil>
}

// A plain name in a formula that may have been meant as a built-in one.
func ExampleSuggest() {
	fmt.Println(colour.Suggest("ultramarin-blue"))
	fmt.Println(colour.Suggest("lantern glow") == "")
	// Output:
	// did you mean ultramarine-blue?
	// true
}

// Which of the built-in ones must never meet lye?
func ExampleColourants() {
	for _, c := range colour.Colourants() {
		if c.InAlkali().Stability == colour.Gassing {
			fmt.Println(c.ID()+":", c.InAlkali().Text)
		}
	}
	// Output: aluminium-powder: dangerous: dissolves with hydrogen gas; never for cold-process soap, nor is aluminium-coated glitter
}

// What a label calls CI 77510. A lake's number leads to its dye.
func ExampleOfCI() {
	blue, found := colour.OfCI("77510")
	fmt.Println(blue.Name(), found)
	lake, found := colour.OfCI("15850:1")
	fmt.Println(lake.ID(), found)
	// Output:
	// Iron blue true
	// red-7-lake true
}

// The date of the table is text that sorts as dates do.
func ExampleDataEdition() {
	fmt.Println(colour.DataEdition() >= "2026-11-26")
	// Output: true
}

// Which white is one that whitens: titanium dioxide itself, and not a mica coated with it.
func ExampleColourant() {
	shelf, err := colour.NewShelf([]colour.Supplied{{ID: "moon-mica", Name: "Moon mica", CI: []string{"77019", "77891"}}})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, id := range []string{"titanium-dioxide", "moon-mica"} {
		c, _ := shelf.Find(id)
		fmt.Println(c.Name(), c.CI(), c.IsWhite())
	}
	// Output:
	// Titanium dioxide, crystal form not stated [77891] true
	// Moon mica [77019 77891] false
}

// A pigment of one's own, checked as a whole.
func ExampleNewShelf() {
	_, err := colour.NewShelf([]colour.Supplied{
		{ID: "dusk-mica", CI: []string{"77019", "CI 77510"}},
		{ID: "dusk-mica"},
	})
	fmt.Println(err)
	// Output:
	// [0].ci[1]: "CI 77510" is not a Colour Index number; write its five digits alone, such as "77891"
	// [1].colourant: "dusk-mica" stands twice, first at pigments[0]; give each pigment an id of its own
}

// What is a bought mica made of, and what becomes of that in soap? Its blue does not last.
func ExampleShelf_Find() {
	shelf, err := colour.NewShelf([]colour.Supplied{{ID: "dusk-mica", CI: []string{"77019", "77510"}}})
	if err != nil {
		fmt.Println(err)
		return
	}
	mica, _ := shelf.Find("dusk-mica")
	parts, _ := mica.Parts()
	for _, part := range parts {
		fmt.Println(part.Name()+":", part.InAlkali().Stability)
	}
	// Output:
	// Mica: stable
	// Iron blue: unstable
}

// The supplier's own density and price stand in place of what is built in, and the rest
// stays: 3 g at 12.40 for 100 g.
func ExampleSupplied() {
	price, err := colour.ParsePrice("12.40 per 100 g")
	if err != nil {
		fmt.Println(err)
		return
	}
	density, _ := units.ParseDensity("3.9 g/mL")
	shelf, err := colour.NewShelf([]colour.Supplied{{ID: "titanium-dioxide", Density: density, Price: price}})
	if err != nil {
		fmt.Println(err)
		return
	}
	white, _ := shelf.Find("titanium-dioxide")
	_, planned, _ := white.Density()
	fmt.Println(white.Name(), planned, "-", white.DensitySource())
	fmt.Println(white.Price().Of(units.Grams(3)).Fixed(2))
	// Output:
	// Titanium dioxide, crystal form not stated 3.9 g/mL - given
	// 0.37
}
