package soap_test

import (
	"fmt"
	"strings"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// The middle of 185 to 196 is 190.5; the value of its own fatty acids lies above
// it, so the middle is planned.
func ExampleLookUpOil() {
	oil, err := soap.LookUpOil("olive")
	if err != nil {
		fmt.Println(err)
		return
	}
	value := oil.Saponification()
	fmt.Println(oil.Name(), value.Low.MilligramsPerGramText(1), value.Typical.MilligramsPerGramText(1), value.High.MilligramsPerGramText(1))
	fmt.Println(oil.Choice(), "of", oil.ValueSource())

	_, err = soap.LookUpOil("cocoa-buter")
	fmt.Println(err)
	// Output:
	// Olive oil (virgin and refined) 185 190.5 196
	// middle of British Pharmaceutical Codex, 1911, Oleum Olivae
	// oil: "cocoa-buter" is not a built-in oil; did you mean cocoa-butter?
}

// Which built-in oils need a value of the maker's own: no standard prints one, and too
// little of their fatty acids is known.
func ExampleOils() {
	for _, oil := range soap.Oils() {
		if oil.Choice() == soap.NoValue {
			fmt.Println(oil.Name())
		}
	}
	// Output: Macadamia oil
}

// Waxes react slowly, if at all, and fatty acids at once.
func ExampleKind() {
	for _, id := range []string{"olive", "lard", "beeswax", "stearic-acid-95"} {
		oil := must(soap.LookUpOil(id))
		fmt.Println(oil.ID()+":", oil.Kind())
	}
	// Output:
	// olive: vegetable oil
	// lard: animal fat
	// beeswax: wax
	// stearic-acid-95: fatty acid
}

// Why an oil is planned at its value: the middle of 248 to 265 is 256.5, but coconut's own
// fatty acids demand less, and too little alkali is the safe mistake.
func ExampleChoice() {
	for _, id := range []string{"olive", "coconut", "goose-fat"} {
		oil := must(soap.LookUpOil(id))
		fmt.Println(id, "at", oil.Saponification().Typical.MilligramsPerGramText(2), oil.Choice())
	}
	// Output:
	// olive at 190.5 middle
	// coconut at 254.35 profile
	// goose-fat at 194.41 computed
}

// Everything that is published of an oil, each figure with its source.
func ExampleFigure() {
	olive := must(soap.LookUpOil("olive"))
	for _, f := range olive.Figures() {
		if f.Name == "iodine" { // grams of iodine per 100 g: percent
			fmt.Println(f.Low.PercentText(0), "to", f.High.PercentText(0), f.Unit)
			fmt.Println(f.Source)
		}
	}
	// Output:
	// 79 to 90 g iodine/100 g
	// The Merck Index, edition not stated, monograph Olive Oil
}

// An oil from its fatty acids alone. Pure triolein: 3 × 56105/885.453 = 190.0891;
// less 1 % of unsaponifiable matter, 188.1882.
func ExampleOwnOil() {
	oil, err := soap.OwnOil{
		ID:              "pressed-at-the-hall",
		Profile:         []soap.AcidShare{{Acid: "C18:1", Low: units.Percent(100), High: units.Percent(100)}},
		Unsaponifiables: units.Percent(1),
	}.Oil()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(oil.Saponification().Typical.MilligramsPerGramText(4), oil.Choice(), oil.HasRange())
	// Output: 188.1882 computed false
}

// A titrated lot takes the place of the built-in value.
func ExampleOil_WithSaponification() {
	shea, err := soap.LookUpOil("shea-butter")
	if err != nil {
		fmt.Println(err)
		return
	}
	lot, err := shea.WithSaponification(units.Between(units.MilligramsPerGram(178), units.MilligramsPerGram(182)))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(lot.Name(), lot.Saponification().Typical.MilligramsPerGramText(1))
	// Output: Shea butter, unrefined 180
}

// What a composition demands. Pure triolein, 3 × 56105/885.453 = 190.0891 mg of KOH per g;
// the oleic acid alone, free, 56105/282.468 = 198.624.
func ExampleProfile() {
	all := units.Percent(100)
	olein := soap.Profile{Acids: []soap.AcidShare{{Acid: "C18:1", Low: all, High: all}}}
	fmt.Println("as glycerides", olein.SaponificationValue().MilligramsPerGramText(4))
	fmt.Println("as free acid", olein.AcidValue().MilligramsPerGramText(3))
	// Output:
	// as glycerides 190.0891
	// as free acid 198.624
}

// What analysis leaves open: 35 to 45 % and 50 to 60 % name 95 % of the acids at their
// middles, enough for a value.
func ExampleAcidShare() {
	pressed := soap.Profile{Acids: []soap.AcidShare{
		{Acid: "C18:1", Low: units.Percent(35), High: units.Percent(45)},
		{Acid: "C18:2", Low: units.Percent(50), High: units.Percent(60)},
	}}
	fmt.Println("named", pressed.Coverage().PercentText(1), "%, value given:", pressed.SaponificationValue().Given())
	// Output: named 95 %, value given: true
}

// The acids of eighteen carbon atoms, by their double bonds; ricinoleic acid, C18:1-OH, and
// the like apart.
func ExampleFattyAcids() {
	for _, acid := range soap.FattyAcids() {
		if strings.HasPrefix(acid.Symbol, "C18:") && !strings.HasSuffix(acid.Symbol, "-OH") {
			fmt.Println(acid.Symbol, acid.Name, acid.DoubleBonds)
		}
	}
	// Output:
	// C18:0 stearic acid 0
	// C18:1 oleic acid 1
	// C18:2 linoleic acid 2
	// C18:3 alpha-linolenic acid 3
	// C18:3n6 gamma-linolenic acid 3
	// C18:4 stearidonic acid 4
}

// How much KOH a gram of a free acid takes up: 56105/282.468 mg.
func ExampleFattyAcid() {
	oleic, _ := soap.LookUpFattyAcid("C18:1")
	koh := soap.PotassiumHydroxide.MolarMass().Over(oleic.MolarMass)
	fmt.Println(oleic.Name, koh.MilligramsPerGramText(3), "mg KOH/g")
	// Output: oleic acid 198.624 mg KOH/g
}

// A symbol that is not known is not guessed at.
func ExampleLookUpFattyAcid() {
	for _, symbol := range []string{"C12:0", "C12"} {
		acid, found := soap.LookUpFattyAcid(symbol)
		fmt.Printf("%s: %q %v\n", symbol, acid.Name, found)
	}
	// Output:
	// C12:0: "lauric acid" true
	// C12: "" false
}

// Shares of all the oils, of which one line takes the rest: 20 % of 1000 g.
func ExampleOilLine() {
	formula := lanternBars()
	formula.Oils = []soap.OilLine{
		{Oil: hall(), Share: units.Percent(55)},
		{Oil: must(soap.LookUpOil("coconut")), Share: units.Percent(25)},
		{Oil: must(soap.LookUpOil("sunflower")), Rest: true},
	}
	for _, oil := range must(formula.Batch()).Oils {
		fmt.Println(oil.Weigh, oil.Oil.Name())
	}
	// Output:
	// 550 g Village hall blend
	// 250 g Coconut oil
	// 200 g Sunflower seed oil
}

// Oil for a carrier may come out of the formula: of 1000 g, three times the 4.8 g of blue
// (0.8 % of 60 %) are held back.
func ExampleOilWeighing() {
	formula := lanternAndCloud()
	blue := &formula.Parts[0].Colourants[0]
	blue.Carrier.Oil, blue.Carrier.From = formula.Oils[0].Oil, soap.FromFormula
	oil := must(formula.Batch()).Oils[0]
	fmt.Println("into the pot", oil.Weigh, "held back", oil.Withheld, "in all", oil.Total())
	// Output: into the pot 985.6 g held back 14.4 g in all 1000 g
}

// How dense a lot of olive oil is when it is poured. By hand: the middle of 0.910 to 0.916,
// times 0.99820 g/mL of water at 20 °C, less 0.00064 g/mL for each of the 20 °C above. The
// temperatures of this row are assumed: in the copy that was read they are not legible.
func ExampleOilDensity() {
	density, known := must(soap.LookUpOil("olive")).Density(units.Celsius(40))
	fmt.Println(density.Planned.Text(4), "g/mL", known)
	fmt.Println(density.Figure.Text(4), "at", density.From, "over water at", density.Water)
	// Output:
	// 0.8986 g/mL true
	// 0.913 at 20 °C over water at 20 °C
}

// Goose fat with an iodine value of the maker's own has a density that nobody measured:
// it is computed from the two values, and says so.
func ExampleDensitySource() {
	lot := must(soap.OwnOil{
		ID: "goose-fat-lot-2", Saponification: units.Exactly(units.MilligramsPerGram(194)), Iodine: units.Percent(69),
	}.Oil())
	density, _ := lot.Density(units.Celsius(15))
	// 0.8475 + 0.00030 × 194 + 0.00014 × 69 = 0.91536, over water at 15 °C
	fmt.Println(density.Figure.Text(5), density.Computed, density.Source == soap.DensitySource())
	// Output: 0.91536 true true
}

// Half coconut, half an oil of oleic acid: the lauric acid is half of what
// coconut has (45.1 to 53.2 %), the oleic acid half of 5 to 10 % and half of all.
func ExampleBatch_Composition() {
	coconut, err := soap.LookUpOil("coconut")
	if err != nil {
		fmt.Println(err)
		return
	}
	all := units.Percent(100)
	oleic, err := soap.OwnOil{ID: "oleic", Iodine: units.Percent(86), Profile: []soap.AcidShare{{Acid: "C18:1", Low: all, High: all}}}.Oil()
	if err != nil {
		fmt.Println(err)
		return
	}
	formula := lanternBars()
	formula.Oils = []soap.OilLine{{Oil: coconut, Share: units.Percent(50)}, {Oil: oleic, Share: units.Percent(50)}}
	batch, err := formula.Batch()
	if err != nil {
		fmt.Println(err)
		return
	}
	c := batch.Composition()
	for _, share := range c.Acids {
		if share.Acid == "C12:0" || share.Acid == "C18:1" {
			fmt.Println(share.Acid, share.Low.PercentText(2), "to", share.High.PercentText(2))
		}
	}
	fmt.Println("iodine value", c.Iodine.Low.PercentText(2), "to", c.Iodine.High.PercentText(2))
	// Output:
	// C12:0 22.55 to 26.6
	// C18:1 52.5 to 55
	// iodine value 46.15 to 48.3
}

// What is not known of a blend is said, not guessed: hall oil came without its fatty acids
// and without an iodine value.
func ExampleComposition() {
	formula := lanternBars()
	formula.Oils = []soap.OilLine{
		{Oil: hall(), Share: units.Percent(60)},
		{Oil: must(soap.LookUpOil("coconut")), Rest: true},
	}
	c := must(formula.Batch()).Composition()
	fmt.Println("acids known of", c.Named.PercentText(0), "% of the oils")
	fmt.Println("iodine value given:", c.Iodine.Given(), "for want of that of", c.Missing[0].Name())
	// Output:
	// acids known of 40 % of the oils
	// iodine value given: false for want of that of Village hall blend
}

// A batch on file is worked out again when the tables are newer than it is.
func ExampleDataEdition() {
	onFile := "2025-01-31"
	if soap.DataEdition() > onFile {
		fmt.Println("worked out with older tables: the numbers may have changed")
	}
	// Output: worked out with older tables: the numbers may have changed
}

// A source says how a figure was obtained.
func ExampleAtomicWeights() {
	source := soap.AtomicWeights()
	fmt.Println(source.Edition, source.How)
	fmt.Println(source)
	// Output:
	// 2021 memory
	// IUPAC CIAAW, abridged standard atomic weights, 2021, H, C, O, Na, K (recalled, not read)
}
