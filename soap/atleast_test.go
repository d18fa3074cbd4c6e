package soap_test

import (
	"testing"

	"example.com/lyewright/internal/madeup"
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// 505.149 g of one oil (185/190/196), sodium hydroxide 97 to 99 %, at least 2 %:
// at a plan of 5.704723 % the alkali is 65.835905... g and the worst case
//
//	1 − (alkali + 0.1) × 0.99 × 56.105/39.997/((505.149 − 0.1) × 0.185)
//
// is 1.9999999999853 %, below 2 %. FORMULA.md: the smallest planned value at
// which neither the batch nor any part is below that, rounded up to 0.000001 %:
// 5.704724 %. The worst case is rounded to twelve decimals before it is compared.
func TestAtLeastIsNotMetByRoundingTheWorstCaseUp(t *testing.T) {
	oil, err := soap.OwnOil{ID: "hall-blend", Saponification: madeup.Span(185, 190, 196)}.Oil()
	if err != nil {
		t.Fatal(err)
	}
	for _, milligrams := range []int{505_149, 524_066, 530_865} {
		f := soap.Formula{
			Name: "Lantern walk promise",
			Oils: []soap.OilLine{{Oil: oil, Share: units.Percent(100)}},
			Alkalis: []soap.AlkaliLine{{Alkali: soap.SodiumHydroxide, Purity: units.Between(units.Percent(97),
				units.Percent(99))}},
			Superfat: soap.Superfat{AtLeast: units.Percent(2)},
			Water:    soap.Water{PerAlkali: units.Whole(2)},
			Size:     soap.Size{Oils: units.Milligrams(milligrams)},
		}
		b, err := f.Batch()
		if err != nil {
			t.Fatal(err)
		}
		// worked out here, in fractions
		alkali := times(times(plus(massFrac(b.Alkalis[0].Dry.Mass), frac("0.1")), frac("0.99")),
			over(frac("56.105"), frac("39.997")))
		demand := times(minus(massFrac(f.Size.Oils), frac("0.1")), frac("0.185"))
		if low := minus(whole(1), over(alkali, demand)); low.Cmp(frac("0.02")) < 0 {
			t.Errorf("%s: planned at %s %%, worst case %s, below 0.02", f.Size.Oils, b.Superfat.Planned.PercentText(6),
				low.FloatString(18))
		}
	}
}
