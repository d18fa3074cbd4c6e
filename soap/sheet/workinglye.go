package sheet

import (
	"example.com/lyewright/soap"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// fats adds what the fat in liquids demands to what the oils do.
func (w *working) fats() {
	for i, l := range w.b.Liquids {
		line := w.b.Formula.Water.Liquids[i]
		if line.Fat.Sign() <= 0 {
			continue
		}
		value := line.Saponification.Plan()
		demand := units.Sum{}.Plus(l.Mass, line.Fat.Times(value))
		w.demand = w.demand.Add(demand)
		w.add(Step{
			Of: l.Name, Formula: "demand of a liquid's fat = mass × fat × saponification value / 1000, added to the oils'",
			Figures: l.Mass.Text(units.Gram, 6) + " × " + line.Fat.Text(8) + " × " + milligrams(value) + " / 1000",
			Result:  grams(demand) + " g KOH, in all " + grams(w.demand) + " g",
			Because: "as its label says",
		})
	}
}

// acids reckons what acids take up before the oils do.
func (w *working) acids() {
	for i, a := range w.b.Acids {
		line := w.b.Formula.Acids[i]
		strength := line.Strength.Plan().Or(units.Whole(1))
		takes := units.Sum{}.Plus(a.Mass, strength.Times(a.Acid.Neutralises(soap.PotassiumHydroxide)))
		w.takes = w.takes.Add(takes)
		because := "not compensated: the superfat rises by it"
		if line.Compensate == soap.Compensated {
			w.added = w.added.Add(takes)
			because = "compensated: alkali is added for it"
		}
		w.add(Step{
			Of: a.Acid.Name, Formula: "what an acid takes up = mass × strength × protons × M of KOH / M",
			Figures: a.Mass.Text(units.Gram, 6) + " × " + strength.Text(8) + " × " + units.Whole(a.Acid.Protons).Text(0) + " × " +
				soap.PotassiumHydroxide.MolarMass().Text(3) + " / " + a.Acid.Molar.Text(3),
			Result: grams(takes) + " g KOH", Because: because, Sources: []cite.Source{lye.AtomicWeights()},
		})
	}
}

// need writes the alkali that is asked for, with what acids take up where any is
// added for them.
func (w *working) need(oils, acids string) string {
	if w.added.Sign() == 0 {
		return oils
	}
	return "(" + oils + " + " + acids + ")"
}

// stock reckons the stock lye that holds the hydroxide asked for.
func (w *working) stock(a soap.AlkaliWeighing) {
	w.add(Step{
		Of:      alkaliName(a.Alkali),
		Formula: "hydroxide = " + w.need("demand × (1 − superfat)", "what acids take up") + " × share saponified × M / M of KOH, rounded down",
		Figures: w.need(grams(w.demand)+" × (1 − "+w.b.Worked.Text(8)+")", grams(w.added)) + " × " + a.Saponifies.Text(12) + " × " + a.Alkali.MolarMass().Text(3) +
			" / " + soap.PotassiumHydroxide.MolarMass().Text(3),
		Result: a.Dry.Mass.Text(units.Gram, 5) + " g " + a.Alkali.Symbol() + ", pure", Sources: []cite.Source{soap.AtomicWeights()},
	})
	w.add(Step{
		Of: a.Alkali.Name() + ", stock lye", Formula: "stock = hydroxide / strength, rounded down; the rest of it is water",
		Figures: a.Dry.Mass.Text(units.Gram, 5) + " / " + a.Strength.Typical.Text(8), Result: a.Stock.Mass.Text(units.Gram, 5) + " g of stock lye",
		Because: "strength " + a.Strength.Low.PercentText(6) + " to " + a.Strength.High.PercentText(6) + " %, as given",
	})
}

// lyeWater is all the water of the lye.
func (w *working) lyeWater() units.Mass {
	water := w.b.Lye.Mass
	for _, a := range w.b.Alkalis {
		water = water.Sub(a.Dry.Mass)
	}
	return water
}
