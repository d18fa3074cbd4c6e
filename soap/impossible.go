package soap

import (
	"strings"

	"example.com/lyewright/units"
)

// impossible finds what no pot can make.
func (s *solved) impossible() Faults {
	var faults Faults
	fault := func(path, text, reason, remedy string) {
		faults = append(faults, Fault{Path: path, Text: text, Reason: reason, Remedy: remedy, Kind: ErrImpossible})
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
			had, all := &water, s.waterAsked
			if carrier.In == InOil {
				had, all = &taken[l.line], s.oils[l.line]
			}
			before := had.Compare(all) <= 0
			*had = had.Add(l.carrier)
			if before && had.Compare(all) > 0 {
				fault(l.path(i)+".carrier", had.Text(units.Gram, 6)+" g",
					"of "+carrier.liquid()+" is held back up to here, more than the "+all.Text(units.Gram, 6)+" g that the formula has",
					"lower the load or the ratio, or take the carrier extra")
			}
		}
	}
	if len(faults) == 0 {
		s.tooStrong(fault)
	}
	return faults
}

// tooStrong finds a lye that would not dissolve at 20 °C: pure hydroxide in all
// the water of the lye, that in the alkali included.
func (s *solved) tooStrong(fault func(path, text, reason, remedy string)) {
	lye := s.alkali.Add(s.lyeWater)
	// Each hydroxide fills a part of what the solution can hold, and the parts
	// add up: Σ hydroxide/(limit/1000) > lye, multiplied out.
	limit := func(a Alkali) int64 { n, d, _ := a.Saturation().Fraction(); return 1000 * n / d }
	product := limit(SodiumHydroxide) * limit(PotassiumHydroxide)
	var filled units.Sum
	for i := range s.alkalis {
		a := &s.alkalis[i]
		filled = filled.Add(a.Hydroxide().TimesWhole(1000 * (product / limit(a.Alkali))))
	}
	if filled.Compare(units.Sum{}.Plus(lye, units.Whole(1)).TimesWhole(product)) <= 0 {
		return
	}
	var limits []string
	for i := range s.alkalis {
		a := s.alkalis[i].Alkali
		limits = append(limits, a.Saturation().PercentText(1)+" g "+a.Symbol())
	}
	concentration, _ := s.alkali.Per(lye)
	fault("water", concentration.PercentText(2)+" %",
		"is the lye as mixed, stronger than dissolves at 20 °C ("+strings.Join(limits, ", ")+" in 100 g of solution)",
		"ask for more water, or let carriers take less")
}

// path gives the addition's path in the formula.
func (l *loaded) path(part int) string {
	return itemPath(itemPath("parts", part)+"."+l.kind.list(), l.index)
}

// noDemand says why there may be nothing for the alkali to saponify: a scale
// too coarse, or oils that may not react at all.
func (s *solved) noDemand(p *prospect, what string) Fault {
	p.scale, p.small = units.Mass{}, units.Mass{}
	if _, ok := p.at(lowest).superfat(); ok {
		scale, small := s.f.Scales()
		return Fault{
			Path: "scale", Text: scale.String(), Kind: ErrImpossible,
			Reason: "(small: " + small.String() + ") is too coarse for " + what + ": off by a division, nothing of its oils would be there",
			Remedy: "weigh on a finer scale, or make more",
		}
	}
	return Fault{
		Path: "oils", Kind: ErrImpossible,
		Reason: "leave nothing certain to saponify in " + what + ": in the worst case its waxes do not react",
		Remedy: "add an oil or a fat",
	}
}
