package sheet

import (
	"strconv"
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
			middle := units.Between(share.Low, share.High).Middle()
			if middle.Sign() == 0 {
				continue
			}
			acid, _ := soap.LookUpFattyAcid(share.Acid)
			moles = append(moles, middle.PercentText(6)+" / "+acid.MolarMass.Text(3))
			shares = append(shares, middle.PercentText(6))
		}
		n := "(" + strings.Join(moles, " + ") + ") / (" + strings.Join(shares, " + ") + ")"
		w.add(Step{
			Of: oil.Name(), Formula: "value of fatty acids = 56105 × n / (1 + 38.049 / 3 × n), with n = the sum of share / M " +
				"over the sum of the shares",
			Figures: "56105 × " + n + " / (1 + 38.049 / 3 × " + n + ")",
			Result:  milligrams(value) + " mg KOH/g", Because: "the middles of the published shares, in %",
			Sources: []cite.Source{p.Source, soap.AtomicWeights()},
		})
		return
	}
}

// A doubtful is a weighing that enters the superfat: so much of it is worth a gram of KOH, from the low end of a range
// to its high end.
type doubtful struct {
	mass, division   units.Mass
	low, plan, high  units.Ratio
	lows, plans, ups string // the same as factors in a sum: "185 / 1000"
}

// demanding gives the weighings that demand alkali, in the order of the sheet.
func (w *working) demanding() []doubtful {
	scale, small := w.b.Formula.Scales()
	var list []doubtful
	per := func(r units.Ratio) string { return milligrams(r) + " / 1000" }
	for _, o := range w.b.Oils {
		value := o.Oil.Saponification()
		list = append(list, doubtful{
			o.Total(), scale, value.Low, value.Typical, value.High, per(value.Low), per(value.Typical), per(value.High),
		})
	}
	for i, l := range w.b.Liquids {
		line := w.b.Formula.Water.Liquids[i]
		if line.Fat.Sign() <= 0 {
			continue
		}
		value, fat := line.Saponification, line.Fat.Text(8)+" × "
		list = append(list, doubtful{
			l.Mass, small, line.Fat.Times(value.Low), line.Fat.Times(value.Plan()), line.Fat.Times(value.High),
			fat + per(value.Low), fat + per(value.Plan()), fat + per(value.High),
		})
	}
	return list
}

// alkaline gives the weighings of alkali, and taking those of acids, which take alkali up.
func (w *working) alkaline() (alkaline, taking []doubtful) {
	_, small := w.b.Formula.Scales()
	koh := soap.PotassiumHydroxide.MolarMass()
	for _, a := range w.b.Alkalis {
		weighing, content := a.ToWeigh()
		inKOH := " × " + koh.Text(3) + " / " + a.Alkali.MolarMass().Text(3)
		factor := koh.Over(a.Alkali.MolarMass())
		alkaline = append(alkaline, doubtful{
			weighing.Mass, small, content.Low.Times(factor), content.Typical.Times(factor), content.High.Times(factor),
			content.Low.Text(8) + inKOH, content.Typical.Text(8) + inKOH, content.High.Text(8) + inKOH,
		})
	}
	for i, a := range w.b.Acids {
		strength := w.b.Formula.Acids[i].Strength
		plan := strength.Plan().Or(units.Whole(1))
		low, high := strength.Low.Or(plan), strength.High.Or(plan)
		takes := a.Acid.Neutralises(soap.PotassiumHydroxide)
		inKOH := " × " + units.Whole(a.Acid.Protons).Text(0) + " × " + koh.Text(3) + " / " + a.Acid.Molar.Text(3)
		taking = append(taking, doubtful{
			a.Mass, small, low.Times(takes), plan.Times(takes), high.Times(takes),
			low.Text(8) + inKOH, plan.Text(8) + inKOH, high.Text(8) + inKOH,
		})
	}
	return alkaline, taking
}

// square is what a weighing may be off by, in grams of KOH, squared: a third of the square of half its range, and twice
// a third of the square of half a division.
func (d *doubtful) square() string {
	text := "2 × (" + d.division.Text(units.Gram, 9) + " / 2 × " + d.plans + ")² / 3"
	if d.low.Compare(d.high) == 0 {
		return text
	}
	return "(" + d.mass.Text(units.Gram, 6) + " × (" + d.ups + " − " + d.lows + ") / 2)² / 3 + " + text
}

// variance is the same as a figure, to be carried into the next step.
func (d *doubtful) variance() float64 {
	half := d.mass.Grams() * (d.high.Float() - d.low.Float()) / 2
	scale := d.division.Grams() / 2 * d.plan.Float()
	return half*half/3 + 2*scale*scale/3
}

// likely reckons the likely range of the batch's superfat.
func (w *working) likely() {
	demanding := w.demanding()
	alkaline, taking := w.alkaline()
	if w.demand.Sign() == 0 {
		return
	}
	squares := func(of, what string, list []doubtful) string {
		var figures []string
		variance := 0.0
		for i := range list {
			figures = append(figures, list[i].square())
			variance += list[i].variance()
		}
		total := plainly(variance, 9)
		w.add(Step{
			Of: of, Formula: what + " = the sum of (mass × width of its range / 2)² / 3, and of 2 × (division / 2 × value)² / " +
				"3, each in g of KOH",
			Figures: strings.Join(figures, " + "), Result: total + " g²",
		})
		return total
	}
	const what = "square of what it may be off by"
	demand := squares("Demand", what, demanding)
	alkali := squares("Alkali", what, append(alkaline, taking...))
	o := &w.b.Superfat
	used, all := grams(w.alkalis), grams(w.demand)
	margin := o.Planned.Sub(o.LikelyLow)
	because := ""
	if other := o.LikelyHigh.Sub(o.Planned); other.Compare(margin) > 0 {
		margin = other
	}
	if o.LikelyLow.Equal(o.Low) {
		because = "the low end is cut off at the worst case"
	}
	if o.LikelyHigh.Equal(o.High) {
		if because != "" {
			return // both ends are the worst case, which says so itself
		}
		because = "the high end is cut off at the best case"
	}
	w.add(Step{
		Of: "Likely range of the batch", Formula: "margin = 2 × √((alkali / demand²)² × square of the demand + (1 / " +
			"demand)² × square of the alkali)",
		Figures: "2 × √((" + used + " / " + all + "²)² × " + demand + " + (1 / " + all + ")² × " + alkali + ")",
		Result: margin.PercentText(4) + " % of the demand, " + o.LikelyLow.PercentText(4) + " to " +
			o.LikelyHigh.PercentText(4) + " % of superfat", Because: because,
	})
}

// plainly writes an estimate with so many decimals.
func plainly(f float64, places int) string {
	text := strconv.FormatFloat(f, 'f', places, 64)
	return strings.TrimRight(strings.TrimRight(text, "0"), ".")
}

// worst reckons the superfat of the batch with everything at its unlucky end.
func (w *working) worst() {
	demanding := w.demanding()
	alkaline, taking := w.alkaline()
	var demand, alkali []string
	for i := range demanding {
		d := &demanding[i]
		if d.mass.Compare(d.division) < 0 {
			return // a line that its scale may lose altogether
		}
		demand = append(demand, "("+d.mass.Text(units.Gram, 6)+" − "+d.division.Text(units.Gram, 9)+") × "+d.lows)
	}
	for i := range alkaline {
		a := &alkaline[i]
		alkali = append(alkali, "("+a.mass.Text(units.Gram, 6)+" + "+a.division.Text(units.Gram, 9)+") × "+a.ups)
	}
	most := strings.Join(alkali, " + ")
	formula := "worst = 1 − most alkali / least demand; most alkali = (mass + a division) × high end × M of KOH / M; " +
		"least demand = (mass − a division) × low end / 1000"
	if len(taking) > 0 {
		formula += "; of acids the least is taken off the alkali, (mass − a division) × low end × protons × M of KOH / M"
	}
	for i := range taking {
		a := &taking[i]
		if a.mass.Compare(a.division) < 0 {
			return
		}
		most += " − (" + a.mass.Text(units.Gram, 6) + " − " + a.division.Text(units.Gram, 9) + ") × " + a.lows
	}
	w.add(Step{
		Of: "Superfat of the batch, at worst", Formula: formula,
		Figures: "1 − (" + most + ") / (" + strings.Join(demand, " + ") + ")",
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
		Of: "Dry mass", Formula: "dry mass = oils + pure hydroxide − the water that free acids form as they are " +
			"neutralised (their demand × M of water / M of KOH)",
		Figures: text, Result: dry.Text(units.Gram, 4) + " g", Because: "all water gone, and nothing added to the batter",
		Sources: []cite.Source{soap.AtomicWeights()},
	})
}
