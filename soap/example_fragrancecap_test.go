package soap_test

import (
	"fmt"
	"io"
	"os"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// How much fragrance a part may hold, and what binds: clove beside a maker's own fragrance,
// whose certificate (invented) allows 2.4 %.
//
// By hand: the bars weigh 1000 + 0.98 × 131.3037 = 1128.6776 g dry, with 15 g of pear and 5 g
// of clove 1148.6776 g. The clove holds 0.1 % of methyl eugenol, of which European law allows
// 0.001 %: 1 % of clove, and 5 g are 0.4353 %, 43.53 % of that limit. Nobody said what the
// pear holds: of every limit it may use as much as of its own, 1.3058 % of 2.4 %, 54.41 %.
// Both are 97.94 % of what there may be of methyl eugenol, and the most of either is where
// that comes to 100 %.
func Example_fragranceCap() {
	if err := scentedCups(os.Stdout); err != nil {
		fmt.Println(err)
	}
	// Output:
	// warning allergens-unknown parts
	// note fragrance-unjudged parts[0].fragrances[0]
	// note fragrance-behaviour parts[0].fragrances[1]
	// lantern-pear is 1.3058 % of the dry bar; alone at most 2.4 %, by its certificate
	//   beside the others 15.58 g at most
	// clove-bud is 0.4353 % of the dry bar; alone at most 1 %, by Methyl Eugenol
	//   beside the others 5.24 g at most
	// label: Eugenol
	// label: Beta-Caryophyllene
	// label: Eugenia Caryophyllus Oil
	// label: Eugenyl Acetate
	// all allergens listed: false
	// - The supplier's certificate and local law come first. This is not a safety assessment.
	// - Limits are those of category 9 of the IFRA Standards, body and hands, mostly rinsed off; others are not held.
	// - The European Union's lists of prohibited and of restricted substances are not held in full.
	// - What alkali may split off in the bar is not counted, such as eugenol from eugenyl acetate or linalool from linalyl acetate.
}

// scentedCups writes how much of what scents them cups (invented) may hold.
func scentedCups(w io.Writer) error {
	oil, err := soap.OwnOil{ID: "hall-blend", Saponification: units.Between(units.MilligramsPerGram(188),
		units.MilligramsPerGram(192))}.Oil()
	if err != nil {
		return err
	}
	batch, err := soap.Formula{
		Name: "Lantern walk cups, scented",
		Oils: []soap.OilLine{{Oil: oil, Share: units.Percent(100)}},
		Alkalis: []soap.AlkaliLine{{Alkali: soap.SodiumHydroxide, Purity: units.Between(units.Percent(97),
			units.Percent(99))}},
		Superfat: soap.Superfat{Planned: units.Percent(5)},
		Water:    soap.Water{PerAlkali: units.Whole(2)},
		Size:     soap.Size{Oils: units.Grams(1000)},
		Markets:  []soap.Market{soap.EuropeanUnion},
		Materials: []fragrance.Supplied{{
			ID:           "lantern-pear",
			Certificates: []fragrance.Certificate{{Category: "9", Limit: units.MustRatio("2.4 %"), Amendment: 51}},
		}},
		Parts: []soap.Part{{Name: "cups", Share: units.Percent(100), Fragrances: []soap.Addition{
			{Name: "lantern-pear", Load: soap.Load{OfOils: units.MustRatio("1.5 %")}},
			{Name: "clove-bud", Load: soap.Load{OfOils: units.MustRatio("0.5 %")}},
		}}},
	}.Batch()
	if err != nil {
		return err
	}
	caps := batch.Caps()
	for _, f := range caps.Findings {
		fmt.Fprintln(w, f.Severity, f.Code, f.Subject)
	}
	for _, f := range caps.Parts[0].Fragrances {
		binds := f.Caps[0]
		name := "its certificate"
		if binds.Rule.Given() {
			name = binds.Rule.Name()
		}
		fmt.Fprintln(w, f.Material.ID(), "is", f.OfDry.PercentText(4), "% of the dry bar; alone at most",
			binds.Most.PercentText(2), "%, by", name)
		fmt.Fprintln(w, "  beside the others", f.Most.Text(units.Gram, 2), "g at most")
	}
	labels, complete := caps.Labels()
	for _, l := range labels {
		fmt.Fprintln(w, "label:", l.Rule.Name())
	}
	fmt.Fprintln(w, "all allergens listed:", complete)
	for _, notice := range soap.Notices(caps.Law) {
		fmt.Fprintln(w, "-", notice)
	}
	return nil
}
