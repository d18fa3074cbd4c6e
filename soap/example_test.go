package soap_test

import (
	"errors"
	"fmt"
	"strings"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/soap"
	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

// hall is an invented oil with its certificate: 188 to 192 mg KOH/g.
func hall() soap.Oil {
	oil, err := soap.OwnOil{
		ID:             "hall-blend",
		Name:           "Village hall blend",
		Saponification: units.Between(units.MilligramsPerGram(188), units.MilligramsPerGram(192)),
	}.Oil()
	if err != nil {
		panic(err)
	}
	return oil
}

func lanternBars() soap.Formula {
	return soap.Formula{
		Name:     "Lantern walk bars",
		Oils:     []soap.OilLine{{Oil: hall(), Share: units.Percent(100)}},
		Alkalis:  []soap.AlkaliLine{{Alkali: soap.SodiumHydroxide, Purity: units.Between(units.Percent(97), units.Percent(99))}},
		Superfat: soap.Superfat{Planned: units.Percent(5)},
		Water:    soap.Water{PerAlkali: units.Whole(2)},
		Size:     soap.Size{Oils: units.Grams(1000)},
	}
}

// A formula in code becomes a batch. By hand: 1000 g × 190 mg/g = 190 g of KOH;
// × 0.95 × 39.997/(56.105 × 0.98) = 131.3037 g of sodium hydroxide, twice as
// much water.
func ExampleFormula_Batch() {
	batch, err := lanternBars().Batch()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, a := range batch.Alkalis {
		fmt.Println(a.Alkali, a.Mass.Text(units.Gram, 4), "g, weigh", a.Weigh)
	}
	fmt.Println("water", batch.Water.Mass.Text(units.Gram, 4), "g, weigh", batch.Water.Weigh)
	// Output:
	// sodium-hydroxide 131.3037 g, weigh 131.3 g
	// water 262.6074 g, weigh 262.6 g
}

// From the moulds to the oils. By hand: twelve cups of 50 g and 5 % are 630 g, twelve
// swirls of 20 g and 15 % are 276 g; 906 g over 1 + 3 × 0.1313037 is 649.97 g.
func ExampleSize() {
	f := lanternBars()
	f.Size = soap.Size{Vessels: []soap.Vessel{
		{Name: "cup", Part: "base", Count: 12, Trial: mould.Trial{Count: 1, Mass: units.Grams(50)}},
		{Name: "swirl", Part: "cloud", On: "cup", Trial: mould.Trial{Count: 6, Mass: units.Grams(120)}},
	}}
	f.Parts = []soap.Part{{Name: "base"}, {Name: "cloud", Work: mould.Piped}}
	batch, err := f.Batch()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("oils", batch.OilsTotal.Text(units.Gram, 2), "g")
	for _, p := range batch.Parts {
		fmt.Println(p.Name, p.Filled.Text(units.Gram, 2), "g filled,", p.Reserve.Text(units.Gram, 2), "g kept back")
	}
	// Output:
	// oils 649.97 g
	// base 600 g filled, 30 g kept back
	// cloud 240 g filled, 36 g kept back
}

func ExampleReadFormula() {
	file := strings.NewReader(`{
	  "formula": "Lantern walk bars",
	  "oils": [{"oil": "olive", "share": "60 %"}, {"oil": "coconut", "share": "rest"}],
	  "alkali": [{"kind": "sodium-hydroxide", "purity": {"low": "97 %", "high": "99 %"}}],
	  "superfat": "6 %",
	  "water": {"lye_concentration": "32 %"},
	  "size": {"oils": "800 g"}
	}`)
	formula, err := soap.ReadFormula(file)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(formula.Name, "of", len(formula.Oils), "oils,", formula.Size.Oils)
	// Output: Lantern walk bars of 2 oils, 800 g
}

// Everything that is wrong comes back together.
func ExampleFaults() {
	_, err := soap.ReadFormula(strings.NewReader(`{"formula": "Bars", "oils": [{"oil": "oliv", "share": "60 %"}],
"alkali": [{"kind": "sodium-hydroxide"}], "superfat": "6", "water": {"per_oils": "30 %"}, "size": {"oils": "800 g"}}`))
	var faults soap.Faults
	if errors.As(err, &faults) {
		for _, f := range faults {
			fmt.Printf("line %d, %s: %s\n", f.Line, f.Path, f.Sentence())
		}
	}
	// Output:
	// line 1, oils: "60 %" is what the shares add up to, 40 % short of 100 %; raise a share, or make one "rest"
	// line 1, oils[0].oil: "oliv" is not a built-in oil; did you mean olive?
	// line 2, superfat: "6" has no unit; write "6 %" if a percentage is meant
}

// Lines and columns stay known for what the batch finds later.
func ExampleParseFormula() {
	text := []byte(`{"formula": "Bars", "oils": [{"oil": "olive", "share": "100 %"}],
"alkali": [{"kind": "sodium-hydroxide"}],
"superfat": "6 %", "water": {"per_oils": "30 %"}, "size": {"oils": "800 g"}}`)
	formula, places, err := soap.ParseFormula(text)
	if err != nil {
		fmt.Println(err)
		return
	}
	batch, err := formula.Batch()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range batch.Findings {
		line, _ := places.Find(f.Subject)
		fmt.Println("line", line, f.Severity, f.Code)
	}
	// Output: line 2 warning purity-assumed
}

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

// Limits of a pharmacopoeia: 97.0 − 0.7547 × 2.0 = 95.4906 %.
func ExampleCertificate_Purity() {
	purity, err := soap.Certificate{
		AssayMin:     units.Percent(97),
		AssayMax:     units.MustRatio("100.5 %"),
		CarbonateMax: units.Percent(2),
	}.Purity(soap.SodiumHydroxide)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(purity.Low.PercentText(4), purity.Typical.PercentText(4), purity.High.PercentText(4))
	// Output: 95.4906 100 100
}

// The smallest plan that never falls below 2 %. By hand, without the scales:
// 1 − 0.98 × 188/190 × 98/99 = 4.011 %; a division of 0.1 g of alkali and of oils
// adds 0.0827 points.
func ExampleSuperfat() {
	formula := lanternBars()
	formula.Superfat = soap.Superfat{AtLeast: units.Percent(2)}
	batch, err := formula.Batch()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("planned", batch.Superfat.Planned.PercentText(2), "%, worst", batch.Superfat.Low.PercentText(2), "%")
	// Output: planned 4.09 %, worst 2 %
}

// A lye of one part alkali in three: (1 − c)/c = 2, and back.
func ExampleWaterPerAlkali() {
	third := units.Whole(1).Over(units.Whole(3))
	fmt.Println(soap.WaterPerAlkali(third).Text(6), soap.LyeConcentration(units.Whole(2)).PercentText(2))
	// 131 g of alkali per 1000 g of oils, twice as much water: 26.2 % of the oils.
	fmt.Println(soap.WaterPerOils(units.Whole(2), units.MustRatio("13.1 %")).PercentText(2))
	fmt.Println(soap.WaterPerAlkaliFromOils(units.MustRatio("26.2 %"), units.MustRatio("13.1 %")).Text(2))
	// Output:
	// 2 33.33
	// 26.2
	// 2
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

// What a maker should know comes most severe first.
func ExampleFinding() {
	formula := lanternBars()
	formula.Alkalis = []soap.AlkaliLine{{Alkali: soap.SodiumHydroxide}}
	batch, err := formula.Batch()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range batch.Findings {
		fmt.Println(f.Severity, f.Code, f.Subject)
	}
	// Output: warning purity-assumed alkali[0]
}

// 150 g of sodium hydroxide went on the scale in place of 144.5 g, and oils and lye
// are joined. By hand: 150 × 0.98 × 56.105/39.997 = 206.2014 g of KOH against 700 ×
// 0.19 + 300 × 0.254 = 209.2 g, a superfat of 1.43 %. For 5 % it takes 206.2014/0.95 −
// 209.2 = 7.8541 g of KOH more: 41.34 g at 190 mg/g, 30.92 g at 254, 37.54 g of the
// blend at 209.2.
func ExampleWeighed() {
	yard, err := soap.OwnOil{ID: "yard-blend", Saponification: units.Between(units.MilligramsPerGram(248), units.MilligramsPerGram(260))}.Oil()
	if err != nil {
		fmt.Println(err)
		return
	}
	formula := lanternBars()
	formula.Oils = []soap.OilLine{{Oil: hall(), Share: units.Percent(70)}, {Oil: yard, Rest: true}}
	formula.Weighed = soap.Weighed{
		Stage:   soap.AtPot,
		Alkalis: []soap.WeighedAlkali{{Alkali: soap.SodiumHydroxide, Mass: units.Grams(150)}},
	}
	batch, err := formula.Batch()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("planned", batch.Superfat.Planned.PercentText(2), "%, as weighed", batch.Weighed.Superfat.Planned.PercentText(2), "%")
	for _, r := range batch.Weighed.Remedies {
		fmt.Println("add", r.Add.Weigh, "of", r.Oil, "for", r.Superfat.Planned.PercentText(2), "%")
	}
	// Output:
	// planned 5 %, as weighed 1.43 %
	// add 41.4 g of hall-blend for 5.01 %
	// add 31 g of yard-blend for 5.01 %
	// add 37.6 g of blend for 5.01 %
}

// A stock lye in place of dry alkali. By hand: 190 × 0.95 × 39.997/56.105 = 128.6776 g
// of hydroxide are in 257.3553 g of a stock of 50 %, which brings half of the water
// asked for, 2 × 128.6776 g.
func ExampleAlkaliWeighing_ToWeigh() {
	formula := lanternBars()
	formula.Alkalis = []soap.AlkaliLine{{Alkali: soap.SodiumHydroxide, Stock: units.Between(units.Percent(49), units.Percent(51))}}
	batch, err := formula.Batch()
	if err != nil {
		fmt.Println(err)
		return
	}
	stock, strength := batch.Alkalis[0].ToWeigh()
	fmt.Println("stock of", strength.Typical.PercentText(1), "%:", stock.Mass.Text(units.Gram, 4), "g, weigh", stock.Weigh)
	fmt.Println("water to add:", batch.Water.Mass.Text(units.Gram, 4), "g, weigh", batch.Water.Weigh)
	// Output:
	// stock of 50 %: 257.3553 g, weigh 257.3 g
	// water to add: 128.6776 g, weigh 128.7 g
}

// The most of a fragrance that its certificate leaves room for. By hand: 1000 g of oil
// and 131.3037 g of alkali at 98 % are 1128.6776 g dry; of 2.4 % in the whole that is
// 0.024 × 1128.6776/0.976 = 27.7544 g.
func ExampleBatch_Caps() {
	f := lanternBars()
	f.Materials = []fragrance.Supplied{{
		ID: "lantern-pear", Certificates: []fragrance.Certificate{{Category: "9", Limit: units.MustRatio("2.4 %"), Amendment: 51}},
	}}
	f.Parts = []soap.Part{{Name: "base", Share: units.Percent(100), Fragrances: []soap.Addition{
		{Name: "lantern-pear", Load: soap.Load{Max: true}},
	}}}
	batch, err := f.Batch()
	if err != nil {
		fmt.Println(err)
		return
	}
	caps := batch.Caps()
	pear := caps.Parts[0].Fragrances[0]
	fmt.Println("dose", pear.Mass.Text(units.Gram, 4), "g,", pear.OfDry.PercentText(4), "% of the dry bar")
	labels, complete := caps.Labels()
	fmt.Println(len(labels), "allergens known, all listed:", complete)
	// Output:
	// dose 27.7544 g, 2.4 % of the dry bar
	// 0 allergens known, all listed: false
}
