package main

import (
	"fmt"
	"strings"

	"example.com/lyewright/colour"
	"example.com/lyewright/colour/tint"
	"example.com/lyewright/fragrance"
	"example.com/lyewright/soap"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/soap/mould"
	"example.com/lyewright/soap/sheet"
	"example.com/lyewright/units"
)

// Bars is the formula of the shop's plain bars, for so much oil.
func Bars(oils units.Mass) (soap.Formula, error) {
	hall, err := soap.OwnOil{
		ID: "hall-blend", Name: "Village hall blend",
		Saponification: units.Between(units.MilligramsPerGram(188), units.MilligramsPerGram(192)),
	}.Oil()
	if err != nil {
		return soap.Formula{}, err
	}
	return soap.Formula{
		Name: "Lantern walk bars",
		Oils: []soap.OilLine{{Oil: hall, Share: units.Percent(100)}},
		Alkalis: []soap.AlkaliLine{{Alkali: soap.SodiumHydroxide, Purity: units.Between(units.Percent(97),
			units.Percent(99))}},
		Superfat: soap.Superfat{Planned: units.Percent(5)},
		Water:    soap.Water{PerAlkali: units.Whole(2)},
		Size:     soap.Size{Oils: oils},
	}, nil
}

// A DangerError is a batch that could hurt someone: the shop does not pick it.
type DangerError struct{ Finding soap.Finding }

func (e DangerError) Error() string { return e.Finding.Subject + ": " + e.Finding.Message() }

// Pick says what to weigh for a formula, with all of its sheet behind it.
func Pick(formula soap.Formula) (string, error) {
	batch, err := formula.Batch()
	if err != nil {
		return "", err
	}
	for _, f := range batch.Findings {
		if f.Severity == soap.Danger {
			return "", DangerError{f}
		}
	}
	var list strings.Builder
	for _, oil := range batch.Oils {
		fmt.Fprintf(&list, "pick %s of %s\n", oil.Weigh, oil.Oil.Name())
	}
	for _, alkali := range batch.Alkalis {
		weighing, _ := alkali.ToWeigh() // of a stock lye, the stock
		fmt.Fprintf(&list, "pick %s of %s\n", weighing.Weigh, alkali.Alkali)
	}
	list.WriteString("\n")
	if err := sheet.Write(&list, batch, units.Gram); err != nil {
		return "", err
	}
	return list.String(), nil
}

// MostScented says by which part the limits on fragrance are used most, and how much
// of the limit that is.
func MostScented(batch *soap.Batch) (part string, used units.Ratio) {
	caps := batch.Caps()
	for i := range caps.Parts {
		if p := &caps.Parts[i]; p.Limited && (part == "" || p.Most.Used.Compare(used) > 0) {
			part, used = p.Name, p.Most.Used
		}
	}
	return part, used
}

// Shade predicts the colour of white soap with so much of the white, from the shop's
// own swatches, without a formula.
func Shade(swatches tint.Swatches, white units.Ratio) (tint.Lab, error) {
	swatches.White = "titanium-dioxide"
	fit, err := swatches.Calibrate()
	if err != nil {
		return tint.Lab{}, err
	}
	predicted, err := fit.Predict([]tint.Load{{Colourant: "titanium-dioxide", OfBatter: white}})
	return predicted.Lab, err
}

// MayBeSold reports whether a colourant may stand in soap that is a cosmetic, in the EU.
func MayBeSold(id string) (bool, error) {
	colourant, err := colour.LookUp(id)
	if err != nil {
		return false, err
	}
	return colourant.Under(colour.EU).Standing == colour.Permitted, nil
}

// Cup is what one of the shop's round cups holds, filled to nine tenths.
func Cup() (units.Volume, error) {
	return mould.Cylinder{Diameter: units.Millimetres(60), Height: units.Millimetres(40), Fill: units.Percent(90)}.Volume()
}

// Bottle is the hydroxide in a bottle, titrated to one end point.
func Bottle(sample units.Mass, total units.Volume) (units.Range, error) {
	found, err := lye.Titration{
		Alkali: lye.SodiumHydroxide, Sample: sample, Normality: units.Whole(1), Total: total, CarbonateMax: units.Percent(3),
	}.Result()
	if err != nil {
		return units.Range{}, err
	}
	purity, ok := found.Range()
	if !ok {
		return units.Range{}, fmt.Errorf("the titration does not say what is in the bottle")
	}
	return purity, nil
}

// Clove gives the most of clove bud oil alone in a dry bar.
func Clove() (units.Ratio, error) {
	clove, err := fragrance.LookUp("clove-bud")
	if err != nil {
		return units.Ratio{}, err
	}
	caps := clove.Caps(fragrance.IFRAAndEU)
	if len(caps) == 0 {
		return units.Ratio{}, fmt.Errorf("nothing binds clove bud oil")
	}
	return caps[0].Most, nil
}
