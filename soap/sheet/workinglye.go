package sheet

import (
	"strings"

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
			Figures: a.Mass.Text(units.Gram, 6) + " × " + strength.Text(8) + " × " + units.Whole(a.Acid.Protons).Text(0) +
				" × " +
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
		Of: alkaliName(a.Alkali),
		Formula: "hydroxide = " + w.need("demand × (1 − superfat)", "what acids take up") +
			" × share saponified × M / M of KOH, rounded down",
		Figures: w.need(grams(w.demand)+" × (1 − "+w.b.Worked.Text(8)+")", grams(w.added)) + " × " + a.Saponifies.Text(12) +
			" × " + a.Alkali.MolarMass().Text(3) +
			" / " + soap.PotassiumHydroxide.MolarMass().Text(3),
		Result:  a.Dry.Mass.Text(units.Gram, 5) + " g " + a.Alkali.Symbol() + ", pure",
		Sources: []cite.Source{soap.AtomicWeights()},
	})
	w.add(Step{
		Of: a.Alkali.Name() + ", stock lye", Formula: "stock = hydroxide / strength, rounded down; the rest of it is water",
		Figures: a.Dry.Mass.Text(units.Gram, 5) + " / " + a.Strength.Typical.Text(8), Result: a.Stock.Mass.Text(units.Gram,
			5) + " g of stock lye",
		Because: "strength " + a.Strength.Low.PercentText(6) + " to " + a.Strength.High.PercentText(6) + " %, as given",
	})
}

// bench derives what is said of the lye on the bench: its volume, and how hot it gets.
func (w *working) bench() {
	l := &w.b.Lye
	at := w.b.Formula.Temperature.Lye
	if l.VolumeKnown {
		var figures []string
		for _, a := range w.b.Alkalis {
			density, err := lye.Solution{Alkali: a.Alkali, Strength: l.Strength, At: at}.Density()
			if err != nil {
				return // no density, no volume
			}
			w.density(a.Alkali, l.Strength, at)
			figures = append(figures, grams(a.Hydroxide())+" / "+l.Strength.Text(8)+" / "+density.Text(6))
		}
		w.add(Step{
			Of: "Lye", Formula: "volume of the lye = hydroxide / strength / density", Figures: strings.Join(figures, " + "),
			Result: l.Volume.Text(3) + " mL at " + at.Text(1) + " °C", Because: w.strength(),
		})
	}
	steps, err := l.Mixing.Derivation()
	if err != nil {
		return // no bound was found
	}
	for i, s := range steps {
		if _, content := w.b.Alkalis[0].ToWeigh(); i == len(steps)-2 && l.Mixing.Alkalis[0].Hydroxide.Equal(content.High) {
			s.Because += "; hydroxide at the high end of its range"
		}
		w.add(Step(s))
	}
}

// strength says what the strength of the lye is.
func (w *working) strength() string {
	var hydroxide units.Sum
	for _, a := range w.b.Alkalis {
		hydroxide = hydroxide.Add(a.Hydroxide())
	}
	return "its strength is " + grams(hydroxide) + " g of hydroxide over " + w.b.Lye.Mass.Text(units.Gram, 5) + " g of lye"
}

// density derives the density of a lye, once.
func (w *working) density(alkali soap.Alkali, strength units.Ratio, at units.Temperature) {
	steps, err := lye.Solution{Alkali: alkali, Strength: strength, At: at}.Derivation()
	if err != nil || len(steps) == 0 || w.derived[steps[len(steps)-1].Of] {
		return
	}
	if w.derived == nil {
		w.derived = map[string]bool{}
	}
	w.derived[steps[len(steps)-1].Of] = true
	for _, s := range steps {
		w.add(Step(s))
	}
}

// lyeWater is all the water of the lye.
func (w *working) lyeWater() units.Mass {
	water := w.b.Lye.Mass
	for _, a := range w.b.Alkalis {
		water = water.Sub(a.Dry.Mass)
	}
	return water
}
