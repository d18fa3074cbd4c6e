package sheet

import (
	"strings"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// profile reckons what an oil's own fatty acids demand, where it is planned at that.
func (w *working) profile(oil soap.Oil) {
	switch oil.Choice() {
	case soap.AtProfile, soap.AtLowEnd, soap.FromProfile:
	default:
		return
	}
	value := oil.ProfileValue()
	for _, p := range oil.Profiles() {
		if !value.Given() || !p.SaponificationValue().Equal(value) {
			continue
		}
		var moles, shares []string
		for _, share := range p.Acids {
			acid, _ := soap.LookUpFattyAcid(share.Acid)
			middle := units.Between(share.Low, share.High).Middle().PercentText(6)
			moles, shares = append(moles, middle+" / "+acid.MolarMass.Text(3)), append(shares, middle)
		}
		n := "(" + strings.Join(moles, " + ") + ") / (" + strings.Join(shares, " + ") + ")"
		w.add(Step{
			Of: oil.Name(), Formula: "value of fatty acids = 56105 × n / (1 + 38.049 / 3 × n), with n = the sum of share / M over the sum of the shares",
			Figures: "56105 × " + n + " / (1 + 38.049 / 3 × " + n + ")",
			Result:  milligrams(value) + " mg KOH/g", Because: "the middles of the published shares, in %", Sources: []cite.Source{p.Source, soap.AtomicWeights()},
		})
		return
	}
}

// worst reckons the superfat of the batch with everything at its unlucky end.
func (w *working) worst() {
	scale, small := w.b.Formula.Scales()
	if len(w.b.Acids) > 0 || len(w.b.Liquids) > 0 || len(w.b.Alkalis) == 0 {
		return // their ends are reckoned alike; the lines would be too many to follow
	}
	var demand, alkali []string
	for _, o := range w.b.Oils {
		demand = append(demand, "("+o.Total().Text(units.Gram, 6)+" − "+scale.Text(units.Gram, 6)+") × "+milligrams(o.Oil.Saponification().Low)+" / 1000")
		if o.Total().Compare(scale) < 0 {
			return // a line that its scale may lose altogether
		}
	}
	for _, a := range w.b.Alkalis {
		weighing, content := a.ToWeigh()
		alkali = append(alkali, "("+weighing.Mass.Text(units.Gram, 6)+" + "+small.Text(units.Gram, 6)+") × "+content.High.Text(8)+" × "+
			soap.PotassiumHydroxide.MolarMass().Text(3)+" / "+a.Alkali.MolarMass().Text(3))
	}
	w.add(Step{
		Of:      "Superfat of the batch, at worst",
		Formula: "worst = 1 − most alkali / least demand; most alkali = (mass + a division) × high end × M of KOH / M; least demand = (mass − a division) × low end / 1000",
		Figures: "1 − (" + strings.Join(alkali, " + ") + ") / (" + strings.Join(demand, " + ") + ")",
		Result:  w.b.Superfat.Low.PercentText(4) + " %",
		Because: "a line may be off by half a division as it is rounded to the scale and by half as the scale shows it",
	})
}

// dryPot reckons what is left when all water is gone, of oils and alkali alone.
func (w *working) dryPot() {
	if len(w.b.Acids) > 0 || len(w.b.Liquids) > 0 {
		return
	}
	var figures []string
	var free units.Sum
	for _, o := range w.b.Oils {
		if o.Oil.FreeAcid().Given() {
			free = free.Plus(o.Mass, o.Oil.FreeAcid())
		}
		figures = append(figures, o.Mass.Text(units.Gram, 5))
	}
	for _, a := range w.b.Alkalis {
		figures = append(figures, grams(a.Hydroxide()))
	}
	text := strings.Join(figures, " + ")
	if free.Sign() > 0 {
		text += " − " + grams(free) + " × 18.015 / " + soap.PotassiumHydroxide.MolarMass().Text(3)
	}
	dry := w.b.Dry
	for i := range w.b.Parts {
		for _, a := range w.b.Parts[i].Additions {
			if a.Mass.Sign() > 0 {
				return // each part's own follow: its sheet says them
			}
		}
	}
	w.add(Step{
		Of: "Dry mass", Formula: "dry mass = oils + pure hydroxide − the water that free acids form as they are neutralised (their demand × M of water / M of KOH)",
		Figures: text, Result: dry.Text(units.Gram, 4) + " g", Because: "all water gone, and nothing added to the batter", Sources: []cite.Source{soap.AtomicWeights()},
	})
}
