package soap

import (
	"slices"
	"strings"

	"example.com/lyewright/internal/molar"
	"example.com/lyewright/units"
)

// impossible finds what no pot can make.
func (s *solved) impossible() Faults {
	var faults Faults
	fault := func(path, text, reason, remedy string) {
		faults = append(faults, Fault{Path: path, Text: text, Reason: reason, Remedy: remedy, Kind: ErrImpossible})
	}
	if s.unbalancedWater(fault); len(faults) > 0 {
		return faults
	}
	if s.tooHeavy(fault); len(faults) > 0 {
		return faults
	}
	taken := make([]units.Mass, len(s.oils))
	var water units.Mass
	tonne := units.Grams(units.Tonne)
	for i := range s.loads {
		for _, l := range s.loads[i] {
			carrier := l.addition.Carrier
			if l.mass.Compare(tonne) > 0 {
				fault(l.path(i)+".load", l.mass.String(), "is more than a tonne", "lower the load")
			}
			if l.carrier.Compare(tonne) > 0 {
				fault(l.path(i)+".carrier", l.carrier.String(), "is more than a tonne", "lower the load or the ratio")
			}
			if carrier.In == NoLiquid || !carrier.fromFormula() {
				continue
			}
			had, all := &water, s.waterAdd.Add(s.waterHeld)
			if carrier.In == InOil {
				had, all = &taken[l.line], s.oils[l.line]
			}
			before := had.Compare(all) <= 0
			*had = had.Add(l.carrier)
			if before && had.Compare(all) > 0 {
				fault(l.path(i)+".carrier", had.Text(units.Gram, 6)+" g",
					"of "+carrier.liquid()+" is held back up to here, more than the "+all.Text(units.Gram, 6)+
						" g that the formula has",
					"lower the load or the ratio, or take the carrier extra")
			}
		}
	}
	if len(faults) == 0 {
		s.tooStrong(fault)
	}
	return faults
}

// unbalancedWater finds stock, liquids and acids that bring more water than is
// asked for, and acids that take more alkali than there is.
func (s *solved) unbalancedWater(fault func(path, text, reason, remedy string)) {
	if s.unbalanced {
		fault("water.liquids", "", "bring fat that asks for more lye than their water makes",
			"take less of them, or liquids with less fat")
		return
	}
	if s.overfull {
		fault("acids", "", "take up all that is in the pot", "lower their loads of batter")
		return
	}
	grams := func(m units.Mass) string { return m.Text(units.Gram, 2) + " g" }
	left := s.waterAsked
	if left.Sign() >= 0 && s.stockWater.Compare(left) > 0 {
		for i := range s.alkalis {
			if a := &s.alkalis[i]; a.Strength.Given() {
				path := itemPath("alkali", i) + ".stock.strength"
				fault(path, percentText(a.Strength.Typical), "is weaker than the lye asked for: the stock brings "+
					grams(s.stockWater)+" of water, of "+grams(left)+" asked for",
					"ask for more water, or take a stronger stock")
				return
			}
		}
	}
	left = left.Sub(s.stockWater)
	if left.Sign() >= 0 && s.liquidWater.Compare(left) > 0 {
		fault("water.liquids", grams(s.liquidWater), "of water is in them, more than the "+grams(left)+
			" that is left of the water asked for", "take less of them, or ask for more water")
		return
	}
	left = left.Sub(s.liquidWater)
	if left.Sign() >= 0 && s.acidOwn.Compare(left) > 0 {
		fault("acids", grams(s.acidOwn), "of water is in them, more than the "+grams(left)+" that is left to add",
			"take stronger acids, or ask for more water")
		return
	}
	var takes, has units.Sum
	for i := range s.acids {
		takes = takes.Add(s.acids[i].koh)
	}
	for i := range s.alkalis {
		a := &s.alkalis[i]
		has = has.Add(units.Sum{}.Plus(scaled(a.Hydroxide(), units.Whole(molar.KOH), units.Whole(molarOf(a.Alkali)),
			units.Nearest), units.Whole(1)))
	}
	if takes.Sign() > 0 && takes.Compare(has) >= 0 {
		remedy := "take less of them"
		if s.uncompensated() {
			remedy += `, or write "compensate": true`
		}
		fault("acids", grams(takes.Mass(units.Nearest)), "of KOH is what they take up, more than the "+
			grams(has.Mass(units.Nearest))+" that there is", remedy)
	}
}

// tooHeavy finds masses beyond a tonne, and a batter that its additions leave
// nothing of.
func (s *solved) tooHeavy(fault func(path, text, reason, remedy string)) {
	tonne := units.Grams(units.Tonne)
	heavy := func(path string, mass units.Mass, remedy string) {
		if mass.Compare(tonne) > 0 {
			fault(path, mass.Text(units.Gram, 0)+" g", "is more than a tonne", remedy)
		}
	}
	for i := range s.liquids {
		heavy(itemPath("water.liquids", i), s.liquids[i].mass, "take less of it, or a liquid with more water")
	}
	for i := range s.acids {
		heavy(itemPath("acids", i)+".load", s.acids[i].mass, "lower the load")
	}
	for i := range s.alkalis {
		heavy(itemPath("alkali", i)+".stock.strength", s.alkalis[i].Stock.Mass, "take a stronger stock, or make less")
	}
	if len(s.acids)+len(s.liquids) > 0 && (s.oilTotal.Sign() <= 0 || s.alkali.Sign() <= 0 || s.pot.Sign() <= 0) {
		fault("size", "", "leaves no oil beside the acids and liquids", "take less of them, or make more")
	}
}

// undissolved reports whether the lye is stronger than dissolves at 20 °C: pure
// hydroxide in all the water of the lye, that in the alkali included.
func (s *solved) undissolved() bool {
	filled, full := s.filledLye()
	return filled.Compare(full) > 0
}

// filledLye gives how much of what the lye can hold at 20 °C is there, and all that it can
// hold, on one scale. Each hydroxide fills a part of the solution, and the parts add up:
// Σ hydroxide/(limit/1000) against the lye, multiplied out.
func (s *solved) filledLye() (filled, full units.Sum) {
	limit := func(a Alkali) int64 { n, d, _ := a.Saturation().Fraction(); return 1000 * n / d }
	product := limit(SodiumHydroxide) * limit(PotassiumHydroxide)
	for i := range s.alkalis {
		a := &s.alkalis[i]
		filled = filled.Add(a.Hydroxide().TimesWhole(1000 * (product / limit(a.Alkali))))
	}
	return filled, units.Sum{}.Plus(s.alkali.Add(s.lyeWater), units.Whole(1)).TimesWhole(product)
}

// tooStrong finds a lye that would not dissolve.
func (s *solved) tooStrong(fault func(path, text, reason, remedy string)) {
	if !s.undissolved() {
		return
	}
	var limits []string
	for i := range s.alkalis {
		a := s.alkalis[i].Alkali
		limits = append(limits, a.Saturation().PercentText(1)+" g "+a.Symbol())
	}
	concentration, _ := s.alkali.Per(s.alkali.Add(s.lyeWater))
	fault("water", concentration.PercentText(2)+" %",
		"is the lye as mixed, stronger than dissolves at 20 °C ("+strings.Join(limits, ", ")+" in 100 g of solution)",
		"ask for more water, or let carriers and acids take less")
}

// path gives the addition's path in the formula.
func (l *loaded) path(part int) string {
	return itemPath(itemPath("parts", part)+"."+l.list(), l.at())
}

// noDemand says why there may be nothing for the alkali to saponify: carriers that hold
// all the oils back, a scale too coarse, or oils that may not react at all.
func (s *solved) noDemand(p *prospect, what string) Fault {
	if p.emptied() {
		return Fault{
			Path: "oils", Kind: ErrImpossible,
			Reason: "leave nothing to saponify in " + what + ": carriers hold back all that the formula has",
			Remedy: "lower the loads or the ratios of the carriers, or take them extra",
		}
	}
	if _, ok := p.exact().at(lowest).superfat(); ok {
		scale, small := s.f.Scales()
		return Fault{
			Path: "scale", Text: scale.String(), Kind: ErrImpossible,
			Reason: "(small: " + small.String() + ") is too coarse for " + what +
				": off by a division, nothing of its oils would be there",
			Remedy: "weigh on a finer scale, or make more",
		}
	}
	return Fault{
		Path: "oils", Kind: ErrImpossible,
		Reason: "leave nothing certain to saponify in " + what + ": in the worst case its waxes do not react",
		Remedy: "add an oil or a fat",
	}
}

// emptied reports whether nothing of any oil is there.
func (p *prospect) emptied() bool {
	for i := range p.oils {
		if p.oils[i].pot.mass.Sign() > 0 || len(p.oils[i].jugs) > 0 {
			return false
		}
	}
	return len(p.liquids) == 0
}

// exact gives the prospect as if its scales showed everything.
func (p *prospect) exact() *prospect {
	e := *p
	e.oils, e.liquids = slices.Clone(p.oils), slices.Clone(p.liquids)
	for i := range e.oils {
		oil := &e.oils[i]
		oil.pot.halves = 0
		oil.jugs = slices.Clone(oil.jugs)
		for j := range oil.jugs {
			oil.jugs[j].halves = 0
		}
	}
	for i := range e.liquids {
		e.liquids[i].line.halves = 0
	}
	return &e
}
