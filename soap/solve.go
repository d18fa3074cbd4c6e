package soap

import (
	"example.com/lyewright/internal/molar"
	"example.com/lyewright/units"
)

// solved is a formula with its masses worked out at one planned superfat. It
// is only arithmetic: what cannot be made is found afterwards.
type solved struct {
	f        *Formula
	parts    []Part
	shares   []units.Ratio // of the parts
	oils     []units.Mass  // the formula's oils, line by line
	oilTotal units.Mass
	demand   units.Sum // of all oils at typical values, as KOH
	alkalis  []AlkaliWeighing
	alkali   units.Mass // all alkalis together

	waterAsked, waterHeld, lyeWater units.Mass
	oilHeld                         []units.Mass // line by line
	pot                             units.Mass

	partOils, partPot, partWater []units.Mass
	loads                        [][]loaded // part by part: colourants, fragrances, additives
	superfat                     units.Ratio
}

// loaded is an addition with its masses.
type loaded struct {
	addition *Addition
	kind     AdditionKind
	index    int // in its list
	mass     units.Mass
	carrier  units.Mass
	line     int // the formula's oil line that the carrier is, or -1
	oil      Oil // of an oil carrier: with the value it has in the formula
}

// layout is the part of a formula's working that no superfat changes, so that
// a search for one pays for it once.
func (f *Formula) layout() *solved {
	s := &solved{f: f, parts: f.parts()}
	s.oilHeld = make([]units.Mass, len(f.Oils))
	s.loads = make([][]loaded, len(s.parts))
	s.shares = make([]units.Ratio, len(s.parts))
	for i := range s.parts {
		part := &s.parts[i]
		s.shares[i] = part.Share
		s.loads[i] = make([]loaded, 0, len(part.Colourants)+len(part.Fragrances)+len(part.Additives))
		for kind := Colourant; kind <= Additive; kind++ {
			list := part.additions(kind)
			for j := range list {
				l := loaded{addition: &list[j], kind: kind, index: j, line: -1, oil: list[j].Carrier.Oil}
				if list[j].Carrier.In == InOil {
					if l.line = f.lineOf(l.oil.ID()); l.line >= 0 {
						l.oil = f.Oils[l.line].Oil
					}
				}
				s.loads[i] = append(s.loads[i], l)
			}
		}
	}
	return s
}

// lineOf finds the formula's line of an oil, or -1.
func (f *Formula) lineOf(id string) int {
	for i := range f.Oils {
		if f.Oils[i].Oil.ID() == id {
			return i
		}
	}
	return -1
}

// solve works the masses out at a planned superfat.
func (s *solved) solve(superfat units.Ratio) {
	f := s.f
	s.superfat = superfat
	factors := s.alkaliFactors()
	switch {
	case f.Size.Oils.Sign() > 0:
		s.oilTotal = f.Size.Oils
		s.oils = units.Apportion(s.oilTotal, f.oilShares())
	case f.Size.Batter.Sign() > 0:
		shares := f.oilShares()
		s.oilTotal = s.oilsOfBatter(shares, factors)
		s.oils = units.Apportion(s.oilTotal, shares)
	default:
		s.oils = make([]units.Mass, len(f.Oils))
		s.oilTotal = units.Mass{}
		for i, line := range f.Oils {
			s.oils[i] = line.Mass
			s.oilTotal = s.oilTotal.Add(line.Mass)
		}
	}
	s.demand = units.Sum{}
	for i, mass := range s.oils {
		s.demand = s.demand.Plus(mass, f.Oils[i].Oil.Saponification().Typical)
	}
	s.weighAlkali(factors)

	s.partOils = units.Apportion(s.oilTotal, s.shares)
	s.pot = f.Size.Batter
	if s.pot.Sign() == 0 {
		s.waterAsked = f.Water.asked(s.alkali, s.oilTotal)
		s.pot = s.potOf(s.oilTotal.Add(s.alkali).Add(s.waterAsked))
	}
	s.weighLoads()
	held := units.Mass{}
	for _, mass := range s.oilHeld {
		held = held.Add(mass)
	}
	inPot := s.oilTotal.Sub(held).Add(s.alkali)
	if f.Size.Batter.Sign() > 0 {
		s.lyeWater = s.pot.Sub(inPot)
		s.waterAsked = s.lyeWater.Add(s.waterHeld)
	} else {
		s.lyeWater = s.waterAsked.Sub(s.waterHeld)
		s.pot = inPot.Add(s.lyeWater)
	}
	s.partPot = units.Apportion(s.pot, s.shares)
	s.partWater = units.Apportion(s.lyeWater, s.shares)
}

// An alkaliFactor is the mass of an alkali to weigh per mass of KOH demanded,
// as a quotient that is not divided out: (1 − superfat) × saponifies × M over
// M(KOH) × purity.
type alkaliFactor struct{ times, over units.Ratio }

func (s *solved) alkaliFactors() []alkaliFactor {
	factors := make([]alkaliFactor, len(s.f.Alkalis))
	for i := range s.f.Alkalis {
		l := &s.f.Alkalis[i]
		factors[i] = alkaliFactor{
			times: s.superfat.Rest().Times(l.Saponifies.Or(units.Whole(1))).Times(units.Whole(molarOf(l.Alkali))),
			over:  l.planned().Typical.Times(units.Whole(molar.KOH)),
		}
	}
	return factors
}

// weighAlkali works the alkalis out of the demand. They are born rounded down.
func (s *solved) weighAlkali(factors []alkaliFactor) {
	s.alkalis = make([]AlkaliWeighing, len(factors))
	s.alkali = units.Mass{}
	for i := range s.f.Alkalis {
		l := &s.f.Alkalis[i]
		s.alkalis[i] = AlkaliWeighing{
			Alkali:     l.Alkali,
			Purity:     l.planned(),
			Saponifies: l.Saponifies.Or(units.Whole(1)),
			Weighing:   Weighing{Mass: s.demand.Scale(factors[i].times, factors[i].over, units.Down)},
		}
		s.alkali = s.alkali.Add(s.alkalis[i].Mass)
	}
}

// heldShares adds up what carriers take out of the formula: perOils of all the
// oils, perPot of what is in the pot, and a fixed mass.
func (s *solved) heldShares() (perOils, perPot units.Ratio, fixed units.Sum) {
	perOils, perPot = units.Whole(0), units.Whole(0)
	for i := range s.loads {
		share := s.parts[i].Share
		for _, l := range s.loads[i] {
			carrier := l.addition.Carrier
			if carrier.In == NoLiquid || !carrier.fromFormula() {
				continue
			}
			switch load := l.addition.Load; {
			case load.OfOils.Given():
				perOils = perOils.Add(carrier.Ratio.Times(load.OfOils).Times(share))
			case load.OfBatter.Given():
				perPot = perPot.Add(carrier.Ratio.Times(load.OfBatter).Times(share))
			default:
				fixed = fixed.Plus(load.Mass, carrier.Ratio)
			}
		}
	}
	return perOils, perPot, fixed
}

// potOf gives what is in the pot, of all that the formula has. Loads of batter
// and what is held back for them depend on each other:
//
//	pot = all − perOils × oils − fixed − perPot × pot
func (s *solved) potOf(all units.Mass) units.Mass {
	perOils, perPot, fixed := s.heldShares()
	left := units.Sum{}.Plus(all, units.Whole(1)).Sub(fixed)
	left = left.Sub(units.Sum{}.Plus(s.oilTotal, perOils))
	if perPot.Sign() == 0 {
		return left.Mass(units.Nearest)
	}
	return left.Times(units.Whole(1).Over(units.Whole(1).Add(perPot))).Mass(units.Nearest)
}

// oilsOfBatter gives the mass of all oils that makes the batter asked for. With
// a the alkali and w the water per oils,
//
//	batter = oils × (1 + a + w − perOils) − fixed − perPot × batter
func (s *solved) oilsOfBatter(shares []units.Ratio, factors []alkaliFactor) units.Mass {
	perOils, perPot, fixed := s.heldShares()
	demand := units.Whole(0)
	for i, share := range shares {
		demand = demand.Add(share.Times(s.f.Oils[i].Oil.Saponification().Typical))
	}
	alkali := units.Whole(0)
	for _, factor := range factors {
		alkali = alkali.Add(demand.Times(factor.times).Over(factor.over))
	}
	perOil := units.Whole(1).Add(alkali).Add(s.f.Water.perOils(alkali)).Sub(perOils)
	if perOil.Sign() <= 0 {
		return units.Mass{} // found afterwards: the carriers take everything
	}
	all := fixed.Plus(s.f.Size.Batter, units.Whole(1).Add(perPot))
	return all.Times(units.Whole(1).Over(perOil)).Mass(units.Nearest)
}

// weighLoads gives every addition and carrier its mass, and adds up what is
// held back.
func (s *solved) weighLoads() {
	s.waterHeld = units.Mass{}
	clear(s.oilHeld)
	for i := range s.loads {
		share := s.parts[i].Share
		for j := range s.loads[i] {
			l := &s.loads[i][j]
			switch load := l.addition.Load; {
			case load.OfOils.Given():
				l.mass = s.oilTotal.Times(load.OfOils.Times(share), units.Nearest)
			case load.OfBatter.Given():
				l.mass = s.pot.Times(load.OfBatter.Times(share), units.Nearest)
			default:
				l.mass = load.Mass
			}
			carrier := l.addition.Carrier
			if carrier.In == NoLiquid {
				continue
			}
			l.carrier = l.mass.Times(carrier.Ratio, units.Nearest)
			if !carrier.fromFormula() {
				continue
			}
			if carrier.In == InWater {
				s.waterHeld = s.waterHeld.Add(l.carrier)
			} else if l.line >= 0 {
				s.oilHeld[l.line] = s.oilHeld[l.line].Add(l.carrier)
			}
		}
	}
}

// inPot gives the mass of an oil line that goes into the pot.
func (s *solved) inPot(line int) units.Mass { return s.oils[line].Sub(s.oilHeld[line]) }
