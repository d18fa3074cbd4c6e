package colour_test

import (
	"fmt"

	"example.com/lyewright/colour"
	"example.com/lyewright/units"
)

// The same black under both laws.
func ExampleLaw() {
	black, err := colour.LookUp("carbon-black")
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, law := range []colour.Law{colour.EU, colour.US} {
		fmt.Println(law, black.Under(law).Standing)
	}
	// Output:
	// EU permitted
	// US not permitted
}

// What is not held is not permitted: nobody found a statement on alkanet.
func ExampleStanding() {
	alkanet, err := colour.LookUp("alkanet")
	if err != nil {
		fmt.Println(err)
		return
	}
	standing := alkanet.Under(colour.US).Standing
	fmt.Println(standing, standing == colour.Permitted)
	// Output: not known false
}

// Where the law says so, and on what conditions.
func ExampleStatus() {
	green, err := colour.LookUp("chromium-oxide-green")
	if err != nil {
		fmt.Println(err)
		return
	}
	s := green.Under(colour.EU)
	fmt.Println(s.Standing, "by", s.Clause+":", s.Remark)
	fmt.Println(s.Source())
	// Output:
	// permitted by entry 129: free from chromate ion
	// Annex IV to Regulation (EC) No 1223/2009, list of 26 May 2026, entry 129
}

// Which colours would a lantern of raw batter not keep?
func ExampleStability() {
	for _, id := range []string{"iron-oxide-red", "ultramarine-blue", "carmine"} {
		c, err := colour.LookUp(id)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(c.Name()+":", c.InAlkali().Stability)
	}
	// Output:
	// Iron oxide red: stable
	// Ultramarine blue: usable
	// Carmine: unstable
}

// What happens to manganese violet in batter, and who says so?
func ExampleFastness() {
	violet, err := colour.LookUp("manganese-violet")
	if err != nil {
		fmt.Println(err)
		return
	}
	fast := violet.InAlkali()
	fmt.Println(fast.Text)
	fmt.Println(fast.Source())
	// Output:
	// turns grey-brown in caustic batter: hydroxide releases ammonia and precipitates manganese oxides
	// Buxbaum, Pfaff, Industrial Inorganic Pigments, 3rd edition, 2005, general statements on fastness (recalled, not read)
}

// Media are put together.
func ExampleMedium() {
	fmt.Println(colour.Water|colour.Glycerin, (colour.Water|colour.Glycerin)&colour.Oil != 0)
	// Output: water, glycerin false
}

// The words that a formula file knows.
func ExampleMedia() {
	fmt.Println(colour.Media())
	// Output: [water oil glycerin]
}

// Will beta-carotene disperse in the lye water?
func ExampleDispersion() {
	carotene, err := colour.LookUp("beta-carotene")
	if err != nil {
		fmt.Println(err)
		return
	}
	in := carotene.Disperses()
	fmt.Println(in.In, in.Takes(colour.Water), in.Takes(colour.Oil))
	// Output: oil false true
}

// White alone, and white beside a blue that it lightens.
func ExampleUsual() {
	white, err := colour.LookUp("titanium-dioxide")
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, beside := range []bool{false, true} {
		if usual, known := white.Usual(beside); known {
			fmt.Println(usual.Low.Text(2), "to", usual.High.Text(2), "-", usual.Source)
		}
	}
	// Output:
	// 0.3 % of oils to 1 % of oils - common practice
	// 0.1 % of oils to 0.5 % of oils - common practice
}

// The same 4 g in a part of 500 g of oils, 720 g of batter and 560 g when it is dry.
func ExampleBase() {
	part := colour.Amounts{Oils: units.Grams(500), Batter: units.Grams(720), Dry: units.Grams(560)}
	for _, of := range []colour.Base{colour.OfOils, colour.OfBatter, colour.OfDry} {
		fmt.Println(part.Load(units.Grams(4), of).Text(3))
	}
	// Output:
	// 0.8 % of oils
	// 0.556 % of batter
	// 0.714 % of the dry part
}

// A percentage that says what it is of.
func ExampleLoad() {
	load := colour.Load{Of: colour.OfBatter, Share: units.MustRatio("0.8 %")}
	fmt.Println(load.Text(2))
	// Output: 0.8 % of batter
}

// 0.8 % of the oils of a part of 500 g of oils and 720 g of batter.
func ExampleAmounts_Convert() {
	part := colour.Amounts{Oils: units.Grams(500), Batter: units.Grams(720)}
	load := colour.Load{Of: colour.OfOils, Share: units.MustRatio("0.8 %")}
	fmt.Println(part.Mass(load), "is", part.Convert(load, colour.OfBatter).Text(4))
	// Output: 4 g is 0.5556 % of batter
}

// What do 7.5 g of a pigment cost that is sold at 12.40 for 100 g?
func ExamplePrice() {
	price := colour.Price{Amount: units.MustRatio("12.40"), Per: units.Grams(100)}
	fmt.Println(price.Of(units.Milligrams(7_500)).Fixed(2))
	// Output: 0.93
}

func ExampleParsePrice() {
	price, err := colour.ParsePrice("12.40 per 100 g")
	fmt.Println(price.Amount.Fixed(2), "for", price.Per, err)
	_, err = colour.ParsePrice("12.40")
	fmt.Println(err)
	// Output:
	// 12.40 for 100 g <nil>
	// "12.40" does not say for how much; write an amount and a mass, such as "12.40 per 100 g"
}
