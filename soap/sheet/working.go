package sheet

import (
	"io"
	"slices"
	"strings"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// A Step is one step of the working: a formula, the numbers put into it, and
// what comes out. All are sentences or sums in text, to be read and not to be parsed.
type Step struct {
	Of      string // what is worked out: an oil, an alkali, a part
	Formula string // in words
	Figures string // the formula with its numbers
	Result  string // with its unit
	Because string // where the numbers come from, in words; may be empty

	Sources []cite.Source // of the numbers; none where they come from the formula
}

// Working gives every step from the formula to the masses and the planned
// superfat, in the order in which they are worked out. Masses are in grams, demands in
// grams of KOH.
func Working(b soap.Batch) []Step {
	w := working{b: b}
	for _, o := range b.Oils {
		w.profile(o.Oil)
		w.oil(o)
	}
	w.add(Step{
		Of: "All oils", Formula: "demand of the batch = the sum of the oils' demands",
		Figures: strings.Join(w.demands, " + "), Result: grams(w.demand) + " g KOH",
	})
	w.fats()
	w.acids()
	for i, a := range b.Alkalis {
		w.alkali(i, a)
	}
	w.water()
	w.bench()
	w.pot()
	w.pure()
	for i := range b.Parts {
		w.part(&b.Parts[i])
	}
	w.likely()
	w.worst()
	w.dryPot()
	w.scales()
	w.moulds()
	return w.steps
}

type working struct {
	b       soap.Batch
	steps   []Step
	demand  units.Sum
	alkalis units.Sum // as KOH
	added   units.Sum // alkali added for acids, as KOH
	takes   units.Sum // what all acids take up, as KOH
	demands []string
	derived map[string]bool // the densities that were derived
}

func (w *working) add(s Step) { w.steps = append(w.steps, s) }

// grams prints a sum to the hundred-thousandth of a gram: enough to follow.
func grams(s units.Sum) string { return s.Mass(units.Nearest).Text(units.Gram, 5) }

func (w *working) oil(o soap.OilWeighing) {
	value := o.Oil.Saponification()
	demand := units.Sum{}.Plus(o.Total(), value.Typical)
	w.demand = w.demand.Add(demand)
	w.demands = append(w.demands, grams(demand))
	w.add(Step{
		Of: o.Oil.Name(), Formula: "demand = mass × saponification value / 1000",
		Figures: o.Total().Text(units.Gram, 6) + " × " + milligrams(value.Typical) + " / 1000",
		Result:  grams(demand) + " g KOH",
		Because: because(o.Oil), Sources: valueSources(o.Oil),
	})
}

func milligrams(r units.Ratio) string { return r.MilligramsPerGramText(6) }

// valueSources gives the sources of the value an oil is planned at.
func valueSources(oil soap.Oil) []cite.Source {
	sources := []cite.Source{oil.ValueSource()}
	if oil.Choice() == soap.AtProfile || oil.Choice() == soap.AtLowEnd {
		sources = append(sources, oil.ProfileSource())
	}
	return sources
}

// because says why an oil is planned at its value.
func because(oil soap.Oil) string {
	value := oil.Saponification()
	span := milligrams(value.Low) + " to " + milligrams(value.High)
	acids := "the value of its own fatty acids (" + milligrams(oil.ProfileValue()) + ")"
	switch oil.Choice() {
	case soap.AtProfile:
		if !oil.HasRange() {
			return acids + ", below the one figure published (" + milligrams(oil.Middle()) + ")"
		}
		return acids + ", below the middle (" + milligrams(oil.Middle()) + ") of the published range, " + span
	case soap.AtLowEnd:
		return "the low end of the published range, " + span + ": " + acids + " lies below it"
	case soap.FromProfile:
		return "computed from its fatty acids; no value is published, or none was given"
	case soap.AsGiven:
		if !oil.HasRange() {
			return "given with the formula, without a range"
		}
		return "given with the formula, from a range of " + span
	}
	switch {
	case oil.Kind() == soap.Wax:
		return "a wax: the middle between what it may take up at the least and at the most, " + span
	case !oil.HasRange():
		return "the one figure published"
	case oil.ProfileValue().Given():
		return "the middle of the published range, " + span + "; " + acids + " lies above it"
	default:
		return "the middle of the published range, " + span
	}
}

func (w *working) alkali(i int, a soap.AlkaliWeighing) {
	if a.Strength.Given() {
		w.stock(a)
		return
	}
	purity := "purity " + a.Purity.Typical.PercentText(6) + " %, between " + a.Purity.Low.PercentText(6) + " and " +
		a.Purity.High.PercentText(6) + " %"
	if a.Purity.Single() {
		purity = "purity " + a.Purity.Typical.PercentText(6) + " %, one figure"
	}
	sources := []cite.Source{soap.AtomicWeights()}
	switch line := w.b.Formula.Alkalis[i]; {
	case a.Source.Title != "":
		purity += ", what its grade allows"
		sources = append(sources, a.Source)
	case line.Purity.Given():
		purity += ", as given"
	default:
		purity += ", assumed: too little alkali is the safe mistake"
		sources = append(sources, soap.AssumedPuritySource())
	}
	if asked := w.b.Formula.Superfat.AtLeast; asked.Given() {
		purity += "; the superfat is the least plan that keeps " + asked.PercentText(6) + " % in the worst case"
	}
	w.add(Step{
		Of: alkaliName(a.Alkali),
		Formula: "mass = " + w.need("demand × (1 − superfat)", "what acids take up") +
			" × share saponified × M / (M of KOH × purity), rounded down",
		Figures: w.need(grams(w.demand)+" × (1 − "+w.b.Worked.Text(8)+")", grams(w.added)) + " × " + a.Saponifies.Text(12) +
			" × " + a.Alkali.MolarMass().Text(3) +
			" / (" + soap.PotassiumHydroxide.MolarMass().Text(3) + " × " + a.Purity.Typical.Text(8) + ")",
		Result:  a.Dry.Mass.Text(units.Gram, 5) + " g " + a.Alkali.Symbol() + " as weighed",
		Because: purity, Sources: sources,
	})
}

func (w *working) water() {
	s := Step{Of: "Water", Result: w.b.Water.Asked.Text(units.Gram, 5) + " g asked for"}
	var alkali units.Mass
	for _, a := range w.b.Alkalis {
		alkali = alkali.Add(a.Dry.Mass)
	}
	rule := w.b.Formula.Water
	switch {
	case rule.LyeConcentration.Given():
		c := rule.LyeConcentration.Text(8)
		s.Formula = "water = alkali × (1 − concentration) / concentration"
		s.Figures = alkali.Text(units.Gram, 5) + " × (1 − " + c + ") / " + c
	case rule.PerAlkali.Given():
		s.Formula = "water = alkali × water per alkali"
		s.Figures = alkali.Text(units.Gram, 5) + " × " + rule.PerAlkali.Text(8)
	default:
		s.Formula = "water = oils × water per oils"
		s.Figures = w.b.OilsTotal.Text(units.Gram, 5) + " × " + rule.PerOils.Text(8)
	}
	if w.b.Water.Mass != w.b.Water.Asked.Sub(w.b.Water.Withheld) {
		s.Because = "stock lyes, liquids and acids bring part of it, " + w.b.Water.Mass.Text(units.Gram, 5) +
			" g is left to add"
	}
	if w.b.Water.Withheld.Sign() > 0 {
		if s.Because != "" {
			s.Because += "; "
		}
		s.Because += "of it " + w.b.Water.Withheld.Text(units.Gram, 5) + " g is held back for carriers, which leaves " +
			w.b.Water.Mass.Text(units.Gram, 5) + " g for the lye"
	}
	w.add(s)
}

func (w *working) pot() {
	var figures []string
	for _, o := range w.b.Oils {
		figures = append(figures, o.Mass.Text(units.Gram, 5))
	}
	for _, a := range w.b.Alkalis {
		figures = append(figures, a.Dry.Mass.Text(units.Gram, 5))
	}
	figures = append(figures, w.lyeWater().Text(units.Gram, 5))
	formula := "batter = oils in the pot + alkali + lye water"
	for _, a := range w.b.Acids {
		formula = "batter = oils in the pot + alkali + lye water + acids + liquids without their water"
		figures = append(figures, a.Mass.Text(units.Gram, 5))
	}
	for _, l := range w.b.Liquids {
		formula = "batter = oils in the pot + alkali + lye water + acids + liquids without their water"
		figures = append(figures, l.Mass.Sub(l.Water).Text(units.Gram, 5))
	}
	w.add(Step{
		Of: "Batter", Formula: formula,
		Figures: strings.Join(figures, " + "),
		Result:  w.b.Batter.Text(units.Gram, 5) + " g in the pot",
	})
}

// pure brings the alkalis to the KOH that would do their work.
func (w *working) pure() {
	var figures []string
	for _, a := range w.b.Alkalis {
		inKOH := soap.PotassiumHydroxide.MolarMass().Over(a.Alkali.MolarMass())
		w.alkalis = w.alkalis.Add(a.Hydroxide().Times(inKOH))
		figures = append(figures, a.Dry.Mass.Text(units.Gram, 5)+" × "+a.Purity.Typical.Text(8)+" × "+
			soap.PotassiumHydroxide.MolarMass().Text(3)+" / "+a.Alkali.MolarMass().Text(3))
	}
	w.add(Step{
		Of: "Alkali as KOH", Formula: "alkali as KOH = mass × purity × M of KOH / M, all together",
		Figures: strings.Join(figures, " + "), Result: grams(w.alkalis) + " g KOH",
	})
	if w.takes.Sign() > 0 {
		all := w.alkalis
		w.alkalis = all.Sub(w.takes)
		w.add(Step{
			Of: "Alkali for the oils", Formula: "alkali for the oils = alkali as KOH − what acids take up",
			Figures: grams(all) + " − " + grams(w.takes), Result: grams(w.alkalis) + " g KOH",
		})
	}
}

func (w *working) part(p *soap.PartBatch) {
	var held, own units.Sum
	for _, o := range w.b.Oils {
		held = held.Plus(o.Withheld, o.Oil.Saponification().Typical)
	}
	for _, a := range p.Additions {
		if c := a.Carrier; c != nil && c.In == soap.InOil {
			own = own.Plus(c.Mass, c.Oil.Saponification().Typical)
		}
	}
	share := p.Share.Text(12)
	w.add(Step{
		Of: "Superfat of " + p.Name,
		Formula: "1 − share × alkali / (share × (demand − demand of oil held back) + demand of the part's own oil), " +
			"all as KOH",
		Figures: "1 − " + share + " × " + grams(w.alkalis) + " / (" + share + " × (" + grams(w.demand) + " − " + grams(held) +
			") + " + grams(own) + ")",
		Result: p.Superfat.Planned.PercentText(4) + " %",
	})
}

// WriteWorking prints the working of a batch as text of 78 columns: every [Step], its
// formula before its figures; what the oils are made of; what the findings of [Write] rest
// on; all sources. It may follow [Write] on one page. The error is the writer's.
func WriteWorking(w io.Writer, b soap.Batch) error {
	p := page{prefix: "W"} // printed behind a sheet, which has sources of its own
	p.heading("Working")
	p.wrap("", "Masses in g, saponification values in mg KOH per g of oil, M in g/mol. A demand is the KOH that would "+
		"saponify everything.")
	formula := ""
	for _, s := range Working(b) {
		if s.Formula != formula {
			p.line("")
			p.wrap("", s.Formula)
			formula = s.Formula
		}
		p.line("")
		p.wrap("  ", s.Of)
		p.wrap("    = ", s.Figures)
		p.wrap("    = ", s.Result)
		because := s.Because
		for _, source := range s.Sources {
			because += " " + p.cite(source)
		}
		if because != "" {
			p.wrap("    ", because)
		}
	}
	p.composition(b)
	p.restsOn(b.Findings)
	p.foot()
	return p.writeTo(w)
}

// restsOn cites what the findings of the sheet rest on: those of one code and one source in a line.
func (p *page) restsOn(found []soap.Finding) {
	type basis struct{ code, key string }
	var list []basis
	names := map[basis][]string{}
	for _, f := range found {
		key := p.cite(f.Source)
		if key == "" || isUnjudged(f) {
			continue
		}
		at := basis{f.Code, key}
		if !slices.Contains(list, at) {
			list = append(list, at)
		}
		for _, name := range f.Names {
			if !slices.Contains(names[at], name) {
				names[at] = append(names[at], name)
			}
		}
	}
	if len(list) > 0 {
		p.heading("What the findings rest on")
	}
	for _, at := range list {
		p.wrap("", strings.Join(append([]string{at.code}, names[at]...), "; ")+" "+at.key)
	}
}

// composition prints what the oils are made of.
func (p *page) composition(b soap.Batch) {
	c := b.Composition()
	p.heading("What the oils are made of")
	if c.Iodine.Given() {
		p.line("Iodine value " + c.Iodine.Low.PercentFixed(1) + " to " + c.Iodine.High.PercentFixed(1) +
			" g of iodine per 100 g of oils")
	} else {
		var names []string
		for _, oil := range c.Missing {
			names = append(names, oil.Name())
		}
		p.wrap("", "Iodine value of the blend not known: none is known of "+strings.Join(names, "; ")+".")
	}
	if len(c.Acids) == 0 {
		return
	}
	p.line(pad("Fatty acid", -nameColumn) + pad("% of the fatty acids", 24))
	for _, share := range c.Acids {
		acid, _ := soap.LookUpFattyAcid(share.Acid)
		p.line(pad(acid.Symbol, -9) + pad(shorten(acid.Name, nameColumn-10), 9-nameColumn) + pad(share.Low.PercentFixed(1)+
			" to "+share.High.PercentFixed(1), 24))
	}
	if c.Named.Compare(units.Whole(1)) < 0 {
		p.wrap("", "Of the oils, "+c.Named.PercentText(1)+" % by mass have fatty acids that are known; the rest is left out.")
	}
}
