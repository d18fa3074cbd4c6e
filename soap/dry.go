package soap

import (
	"example.com/lyewright/internal/molar"
	"example.com/lyewright/units"
)

// dryPot gives what is left of the pot when all water is gone: oils, pure
// hydroxide, acids and the solids of liquids, less the water that free acids form.
func (s *solved) dryPot() units.Mass {
	one := units.Whole(1)
	var left, acid units.Sum
	for i := range s.oils {
		left = left.Plus(s.inPot(i), one)
		acid = acid.Plus(s.inPot(i), s.f.Oils[i].Oil.FreeAcid())
	}
	for i := range s.alkalis {
		left = left.Add(s.alkalis[i].Hydroxide())
	}
	return left.Mass(units.Nearest).Add(s.dryOfOthers()).Sub(waterFormed(acid))
}

// dryOwn gives what a part's additions leave: all of them, and carriers other
// than water.
func (s *solved) dryOwn(part int) units.Mass {
	var left units.Mass
	var acid units.Sum
	for i := range s.loads[part] {
		l := &s.loads[part][i]
		left = left.Add(l.mass)
		switch l.addition.Carrier.In {
		case InOil:
			acid = acid.Plus(l.carrier, l.oil.FreeAcid())
			left = left.Add(l.carrier)
		case InGlycerin:
			left = left.Add(l.carrier)
		}
	}
	return left.Sub(waterFormed(acid))
}

// waterFormed gives the water that free acids form as they are neutralised, a
// mole for each; the acids are given as the KOH they demand.
func waterFormed(acid units.Sum) units.Mass {
	if acid.Sign() == 0 {
		return units.Mass{}
	}
	return scaled(acid, units.Whole(molar.Water), units.Whole(molar.KOH), units.Nearest)
}

// dryOfOthers gives what acids and liquids leave when all water is gone: an acid
// forms a mole of water for each proton; alcohol goes as water does.
func (s *solved) dryOfOthers() units.Mass {
	var left units.Sum
	for i := range s.acids {
		a := &s.acids[i]
		left = left.Plus(a.pure, a.line.Acid.WaterFormed().Rest())
	}
	for i := range s.liquids {
		l := &s.liquids[i]
		left = left.Plus(l.mass, l.line.Water.Add(l.line.Alcohol.Or(units.Whole(0))).Rest())
	}
	return left.Mass(units.Nearest)
}
