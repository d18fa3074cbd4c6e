package soap

import (
	"example.com/lyewright/colour"
	"example.com/lyewright/fragrance"
	"example.com/lyewright/internal/molar"
	"example.com/lyewright/units"
)

// solved is a formula with its masses worked out at one planned superfat. It
// is only arithmetic: what cannot be made is found afterwards.
type solved struct {
	asked    *Formula
	f        *Formula // as asked, or with the oils and shares that fill the vessels
	parts    []Part
	shares   []units.Ratio // of the parts
	oils     []units.Mass  // the formula's oils, line by line
	oilTotal units.Mass
	demand   units.Sum // of all oils at typical values, as KOH
	alkalis  []AlkaliWeighing
	alkali   units.Mass // all alkalis together

	acids                []acidWeighing
	acidMass, acidOwn    units.Mass // all acids as bought, and the water in them
	liquids              []liquidWeighing
	liquidWater          units.Mass // of all liquids
	liquidSolids         units.Mass // all but the water of all liquids
	fatDemand            units.Sum  // of the liquids' fat, as KOH
	stockWater           units.Mass // of all stock lyes
	circular, unbalanced bool       // something depends on the pot; a liquid's fat never comes out even
	overfull             bool       // acids take all that is in the pot

	// The water asked for; of it what is held back; all the lye's water, that of
	// stock and liquids included; and what is still to add.
	waterAsked, waterHeld, lyeWater, waterAdd units.Mass
	oilHeld                                   []units.Mass // line by line
	pot                                       units.Mass

	partOils, partPot, partWater []units.Mass
	loads                        [][]loaded // part by part: colourants, fragrances, additives
	superfat                     units.Ratio

	mine          // the maker's own fragrances and colourants
	seated seated // the vessels

	// contents are what the layers of each vessel's cavity take, of a batch whose mass is known.
	contents [][]units.Mass

	bulk *bulk // what volumes are reckoned with; nil without vessels

	scale, small units.Mass // the divisions of the two scales
	read         *readings  // which lines were weighed; nil on the plan
	spreads      []spread   // of the parts, once they are judged
	real         *solved    // on the plan: what was really weighed; nil where nothing was
}

// loaded is an addition with its masses.
type loaded struct {
	addition  *Addition
	kind      AdditionKind
	index     int // in its list
	mass      units.Mass
	carrier   units.Mass
	read      bool // the carrier was weighed
	taken     bool // the addition was weighed
	line      int  // the formula's oil line that the carrier is, or -1
	oil       Oil  // of an oil carrier: with the value it has in the formula
	material  fragrance.Material
	colourant colour.Colourant
}

// grain is how far off its carrier may be weighed: of a paste, that of its part in it.
func (l *loaded) grain(division units.Mass) units.Mass {
	if !l.addition.Carrier.Paste {
		return division
	}
	ratio := l.addition.Carrier.Ratio
	return product(division, ratio.Over(ratio.Add(units.Whole(1))), units.Up)
}

// shown is how much of its carrier is weighed: of a paste its part in that.
func (l *loaded) shown(division units.Mass) units.Mass {
	carrier := l.addition.Carrier
	if !carrier.Paste {
		return l.carrier.Round(division, units.Nearest)
	}
	paste := l.mass.Add(l.carrier).Round(division, units.Nearest)
	share := carrier.Ratio.Over(carrier.Ratio.Add(units.Whole(1)))
	return product(paste, share, units.Nearest)
}

// layout is the part of a formula's working that no superfat changes, so that
// a search for one pays for it once.
func (f *Formula) layout(my mine) *solved {
	s := &solved{asked: f, f: f, parts: f.parts(), mine: my}
	s.scale, s.small = f.Scales()
	s.oilHeld = make([]units.Mass, len(f.Oils))
	s.loads = make([][]loaded, len(s.parts))
	s.shares = make([]units.Ratio, len(s.parts))
	for i := range f.Acids {
		s.circular = s.circular || f.Acids[i].Load.OfBatter.Given()
	}
	for i := range f.Water.Liquids {
		s.circular = s.circular || f.Water.Liquids[i].Share.Given()
	}
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
				switch kind {
				case Fragrance:
					l.material = my.scent(l.addition.Name)
				case Colourant, Additive: // a clay, say, is an additive of which its density is known
					l.colourant = my.colourOf(l.addition.Name)
				}
				s.loads[i] = append(s.loads[i], l)
			}
		}
	}
	if len(f.Size.Vessels) > 0 {
		s.seated = f.seat(s.parts)
		s.bulk = s.bulkOf(s.alkaliFactors())
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
	asked := s.size(factors)
	s.weighAcids()
	s.weighLiquids(asked)
	s.weighAlkali(factors)

	s.partOils = s.divided(s.oilTotal)
	inPot := s.oilTotal.Add(s.alkali).Add(s.acidMass).Add(s.liquidSolids)
	if f.Size.Batter.Sign() == 0 {
		s.waterAsked = f.Water.asked(s.alkali, s.oilTotal)
		s.pot = s.potOf(inPot.Add(s.waterAsked).Sub(s.acidOwn))
	}
	s.weighLoads()
	for _, mass := range s.oilHeld {
		inPot = inPot.Sub(mass)
	}
	elsewhere := s.waterHeld.Add(s.acidOwn) // asked for, and not in the lye
	if f.Size.Batter.Sign() > 0 {
		s.lyeWater = s.pot.Sub(inPot)
		s.waterAsked = s.lyeWater.Add(elsewhere)
	} else {
		s.lyeWater = s.waterAsked.Sub(elsewhere)
	}
	s.waterAdd = s.lyeWater.Sub(s.stockWater).Sub(s.liquidWater)
	if s.waterAdd != s.lyeWater && dust(s.waterAdd) && (s.waterAdd.Sign() < 0 || f.Size.Batter.Sign() == 0) {
		// Stock or liquids bring just the water asked for: what is left, or lacking, is
		// the rounding of masses.
		s.waterAsked = s.waterAsked.Sub(s.waterAdd)
		s.lyeWater = s.lyeWater.Sub(s.waterAdd)
		s.waterAdd = units.Mass{}
	}
	s.pot = inPot.Add(s.lyeWater)
	s.partPot, s.partWater = s.divided(s.pot), s.divided(s.lyeWater)
}

// dust reports whether a mass is no more than the rounding of a few dozen others
// to a nanogram may leave: below a microgram.
func dust(m units.Mass) bool {
	return m.Compare(microgram()) < 0 && m.Add(microgram()).Sign() > 0
}

func microgram() units.Mass {
	return product(units.Milligrams(1), units.MilligramsPerGram(1), units.Nearest)
}

// size gives the oils their masses, and where acids or liquids depend on it what is
// in the pot. It returns the water asked for in grams where liquids depend on that.
func (s *solved) size(factors []alkaliFactor) (asked units.Ratio) {
	f := s.f
	batter := f.Size.Batter.Sign() > 0
	s.pot = f.Size.Batter
	s.unbalanced, s.overfull = false, false
	switch {
	case f.Size.Oils.Sign() > 0:
		s.oilTotal = f.Size.Oils
		s.oils = units.Apportion(s.oilTotal, f.oilShares())
	case !batter:
		s.oils = make([]units.Mass, len(f.Oils))
		s.oilTotal = units.Mass{}
		for i, line := range f.Oils {
			s.oils[i] = line.Mass
			s.oilTotal = s.oilTotal.Add(line.Mass)
		}
	}
	if !batter {
		s.demandOfOils()
	}
	if !batter && !s.circular {
		return units.Ratio{}
	}
	demand := nothing()
	if batter {
		demand.oils = f.demandPerOils()
	} else {
		demand.fixed, _ = s.demand.Per(units.Sum{}.Plus(units.Grams(1), units.Whole(1)))
	}
	t := s.system(demand, factors)
	s.unbalanced = !t.ok
	s.overfull = t.ok && t.pot.pot.Rest().Sign() <= 0
	if s.unbalanced || s.overfull {
		if batter { // no size can be found, and none of an earlier plan counts
			s.oils, s.oilTotal, s.demand = nil, units.Mass{}, units.Sum{}
		}
		return units.Whole(0)
	}
	oils, pot := inGrams(s.oilTotal), inGrams(s.pot)
	if batter {
		oils = units.Whole(0)
		if t.pot.oils.Sign() > 0 { // else found afterwards: the carriers take everything
			oils = t.oilsOf(pot)
		}
		s.oilTotal = product(units.Grams(1), oils, units.Nearest)
		s.oils = units.Apportion(s.oilTotal, f.oilShares())
		s.demandOfOils()
	} else {
		pot = t.potOf(oils)
		s.pot = product(units.Grams(1), pot, units.Nearest)
	}
	return t.asked.at(oils, pot)
}

// demandPerOils gives the KOH that the oils demand, per mass of them.
func (f *Formula) demandPerOils() units.Ratio {
	demand := units.Whole(0)
	for i, share := range f.oilShares() {
		demand = demand.Add(share.Times(f.Oils[i].Oil.Saponification().Typical))
	}
	return demand
}

// demandOfOils adds up what the formula's oils demand.
func (s *solved) demandOfOils() {
	s.demand = units.Sum{}
	for i, mass := range s.oils {
		s.demand = s.demand.Plus(mass, s.f.Oils[i].Oil.Saponification().Typical)
	}
}

// An alkaliFactor is the mass of an alkali to weigh per mass of KOH demanded,
// as a quotient that is not divided out: saponifies × M over M(KOH) × purity.
type alkaliFactor struct{ times, over units.Ratio }

func (s *solved) alkaliFactors() []alkaliFactor {
	factors := make([]alkaliFactor, len(s.f.Alkalis))
	for i := range s.f.Alkalis {
		l := &s.f.Alkalis[i]
		factors[i] = alkaliFactor{
			times: l.Saponifies.Or(units.Whole(1)).Times(units.Whole(molarOf(l.Alkali))),
			over:  l.planned().Typical.Times(units.Whole(molar.KOH)),
		}
	}
	return factors
}

// weighAlkali works the alkalis out of the demand. They are born rounded down.
func (s *solved) weighAlkali(factors []alkaliFactor) {
	s.alkalis = make([]AlkaliWeighing, len(factors))
	s.alkali, s.stockWater = units.Mass{}, units.Mass{}
	needed, rest := s.demand.Add(s.fatDemand), s.superfat.Rest()
	if added := s.compensated(); added.Sign() > 0 {
		needed, rest = needed.Times(rest).Add(added), units.Whole(1)
	}
	for i := range s.f.Alkalis {
		l := &s.f.Alkalis[i]
		a := AlkaliWeighing{
			Alkali:     l.Alkali,
			Purity:     l.planned(),
			Source:     l.PuritySource,
			Saponifies: l.Saponifies.Or(units.Whole(1)),
			Dry:        Weighing{Mass: scaled(needed, factors[i].times.Times(rest), factors[i].over, units.Down)},
		}
		if l.stocked() {
			a.Strength = units.Range{Low: l.Stock.Low, Typical: l.Stock.Plan(), High: l.Stock.High}
			a.Stock.Mass = scaled(units.Sum{}.Plus(a.Dry.Mass, units.Whole(1)), units.Whole(1), a.Strength.Typical, units.Down)
			s.stockWater = s.stockWater.Add(a.Stock.Mass.Sub(a.Dry.Mass))
		}
		s.alkalis[i] = a
		s.alkali = s.alkali.Add(a.Dry.Mass)
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

// potOf gives what is in the pot, of all that the formula has, once its alkali is
// known. Loads of batter and what is held back for them depend on each other:
//
//	pot = all − perOils × oils − fixed − perPot × pot
func (s *solved) potOf(all units.Mass) units.Mass {
	perOils, perPot, fixed := s.heldShares()
	left := units.Sum{}.Plus(all, units.Whole(1)).Sub(fixed)
	left = left.Sub(units.Sum{}.Plus(s.oilTotal, perOils))
	if perPot.Sign() == 0 {
		return left.Mass(units.Nearest)
	}
	return scaled(left, units.Whole(1), units.Whole(1).Add(perPot), units.Nearest)
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
				l.mass = product(s.oilTotal, load.OfOils.Times(share), units.Nearest)
			case load.OfBatter.Given():
				l.mass = product(s.pot, load.OfBatter.Times(share), units.Nearest)
			default:
				l.mass = load.Mass
			}
			carrier := l.addition.Carrier
			if carrier.In == NoLiquid {
				continue
			}
			l.carrier = product(l.mass, carrier.Ratio, units.Nearest)
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
