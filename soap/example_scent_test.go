package soap_test

import (
	"fmt"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/soap"
	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

// scentedBars are lantern bars with so much of a fragrance whose certificate (invented)
// allows 2.4 % of the bar, and whose list names one allergen, 5 % of it. Without it they
// weigh 1128.6776 g dry: 1000 g of oil, and 131.3037 g of alkali at 98 %.
func scentedBars(load soap.Load) soap.Formula {
	formula := lanternBars()
	formula.Materials = []fragrance.Supplied{{
		ID: "lantern-pear", Allergens: []string{"Linalool"},
		Certificates: []fragrance.Certificate{{Category: "9", Limit: units.MustRatio("2.4 %"), Amendment: 51}},
		Constituents: []fragrance.Constituent{{CAS: must(fragrance.ParseCAS("78-70-6")), Share: units.Exactly(units.Percent(5))}},
	}}
	formula.Parts = []soap.Part{{Name: "bars", Share: units.Percent(100), Fragrances: []soap.Addition{{Name: "lantern-pear", Load: load}}}}
	return formula
}

// How much of a fragrance there may be, in short. By hand: 30 g in 1158.6776 g are 2.5892 %,
// over the 2.4 % of the certificate.
func ExampleBatch_Caps() {
	batch, err := scentedBars(soap.Load{OfOils: units.Percent(3)}).Batch()
	if err != nil {
		fmt.Println(err)
		return
	}
	caps := batch.Caps()
	for _, f := range caps.Parts[0].Fragrances {
		fmt.Println(f.Material.ID(), "is", f.OfDry.PercentText(4), "% of the dry bar; its cap is", f.Caps[0].Most.PercentText(2), "%")
	}
	fmt.Println(caps.Findings[0].Severity, caps.Findings[0].Code)
	// Output:
	// lantern-pear is 2.5892 % of the dry bar; its cap is 2.4 %
	// danger fragrance-over-cap
}

// What the page of a batch begins with: whose limits count, and what they say of it.
func ExampleCaps() {
	batch := must(scentedBars(soap.Load{OfOils: units.Percent(1)}).Batch())
	caps := batch.Caps()
	fmt.Println(caps.Formula+", limits of", caps.Law)
	for _, p := range caps.Parts {
		fmt.Println(p.Name, "has", p.Fragrance.PercentText(4), "% of fragrance, and uses", p.Most.Used.PercentText(2), "% of a limit")
	}
	// Output:
	// Lantern walk bars, limits of ifra+eu
	// bars has 0.8782 % of fragrance, and uses 36.59 % of a limit
}

// What a part's percentages are of: its dry mass with the fragrance, and its oils. Salt
// counts as dry, and is named, for a wet additive would make every cap too large.
func ExamplePartCaps() {
	formula := scentedBars(soap.Load{Mass: units.Grams(10)})
	formula.Parts[0].Additives = []soap.Addition{{Name: "fine salt", Load: soap.Load{Mass: units.Grams(20)}}}
	batch := must(formula.Batch())
	part := batch.Caps().Parts[0]
	fmt.Println("dry", part.Dry.Text(units.Gram, 4), "g, oils", part.Oils, "counted as dry:", part.Dried)
	// Output: dry 1158.6776 g, oils 1000 g counted as dry: [fine salt]
}

// The most of a fragrance that its certificate leaves room for. By hand: of 2.4 % in the
// whole bar it is 0.024 × 1128.6776/0.976 = 27.7544 g.
func ExampleFragranceCap() {
	batch := must(scentedBars(soap.Load{Max: true}).Batch())
	pear := batch.Caps().Parts[0].Fragrances[0]
	fmt.Println("weigh", pear.Mass.Text(units.Gram, 4), "g,", pear.OfDry.PercentText(4), "% of the dry bar")
	fmt.Println("of the oils at most", pear.MostOfOils.PercentText(4), "%")
	// Output:
	// weigh 27.7544 g, 2.4 % of the dry bar
	// of the oils at most 2.7754 %
}

// How much of its tightest limit a part uses. By hand: 10 g in 1138.6776 g are 0.8782 %, of
// 2.4 % that is 36.59 %.
func ExampleScented() {
	batch := must(scentedBars(soap.Load{Mass: units.Grams(10)}).Batch())
	scented := batch.Caps().Parts[0].Scented
	fmt.Println(scented.Fragrance.PercentText(4), "% of the dry part,", scented.Most.Used.PercentText(2), "% of the limit")
	for _, allergen := range scented.Allergens {
		fmt.Println(allergen.Rule.Name(), allergen.OfDry.PercentText(4), "%")
	}
	// Output:
	// 0.8782 % of the dry part, 36.59 % of the limit
	// Linalool 0.0439 %
}

// A plain cup of 50 g with a scented swirl of 20 g on it. By hand: the swirl has 20 g of
// fragrance to 1393.9111 g of batter, 0.2829 g of its 20 g, 1.74 % of it dry, within the
// 2.4 % of its certificate; the piece weighs 40.4860 + 15.9654 + 0.2829 g dry.
func ExamplePieceCaps() {
	formula := scentedBars(soap.Load{OfOils: units.Percent(2)})
	formula.Parts = []soap.Part{
		{Name: "base"},
		{Name: "cloud", Work: mould.Piped, Fragrances: formula.Parts[0].Fragrances},
	}
	formula.Size = soap.Size{Vessels: []soap.Vessel{
		{Name: "cup", Part: "base", Count: 12, Trial: mould.Trial{Count: 1, Mass: units.Grams(50)}},
		{Name: "swirl", Part: "cloud", On: "cup", Trial: mould.Trial{Count: 1, Mass: units.Grams(20)}},
	}}
	batch := must(formula.Batch())
	for _, piece := range batch.Caps().Pieces {
		fmt.Println(piece.Name, piece.Dry.Text(units.Gram, 2), "g dry, fragrance", piece.Fragrance.PercentText(2), "%")
	}
	// Output: cup 56.73 g dry, fragrance 0.5 %
}

// What may have to stand on a label. By hand: 5 % of 10 g in 1138.6776 g are 0.0439 %, above
// the 0.01 % from which a product that is rinsed off names it.
func ExampleLabel() {
	batch := must(scentedBars(soap.Load{Mass: units.Grams(10)}).Batch())
	caps := batch.Caps()
	labels, complete := caps.Labels()
	for _, l := range labels {
		fmt.Println(l.Rule.Name(), l.OfDry.PercentText(4), "%, list:", l.Rule.List())
	}
	fmt.Println("all listed:", complete)
	// Output:
	// Linalool 0.0439 %, list: old
	// all listed: true
}

// cloveBars ask for as much clove as may be.
func cloveBars() soap.Formula {
	formula := lanternBars()
	formula.Parts = []soap.Part{{Name: "bars", Share: units.Percent(100), Fragrances: []soap.Addition{
		{Name: "clove-bud", Load: soap.Load{Max: true}},
	}}}
	return formula
}

// European law allows less clove than the IFRA Standards do: 1 % of the dry bar, and not
// 1.7 %. By hand: 0.017 × 1128.6776/0.983 = 19.5193 g and 0.01 × 1128.6776/0.99 = 11.4008 g.
func ExampleLaw() {
	for _, law := range []soap.Law{soap.IFRAAlone, soap.WithEU} {
		formula := cloveBars()
		formula.Law = law
		batch := must(formula.Batch())
		clove := batch.Caps().Parts[0].Fragrances[0]
		fmt.Println(clove.Mass.Text(units.Gram, 4), "g, bound by", clove.Caps[0].Rule.Body())
	}
	// Output:
	// 19.5193 g, bound by ifra
	// 11.4008 g, bound by eu
}

// Sold in the United States alone, European limits on fragrance do not count. Where no
// market is named, all of them do.
func ExampleMarket() {
	for _, markets := range [][]soap.Market{nil, {soap.UnitedStates}, {soap.UnitedStates, soap.EuropeanUnion}} {
		formula := cloveBars()
		formula.Markets = markets
		batch := must(formula.Batch())
		fmt.Println(markets, batch.Caps().Law)
	}
	// Output:
	// [] ifra+eu
	// [us] ifra
	// [us eu] ifra+eu
}

// What stands under every page on fragrance.
func ExampleNotices() {
	fmt.Println(soap.Notices(fragrance.IFRAAlone)[0])
	// Output: The supplier's certificate and local law come first. This is not a safety assessment.
}
