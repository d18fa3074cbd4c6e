package soap

import "example.com/lyewright/units"

// LiquidLine is a liquid other than water, such as a milk or a beer, with what its
// label says of it: mass fractions of the liquid. No composition is built in. Its
// water is part of the water asked for; the rest of it comes on top.
type LiquidLine struct {
	Name string // each once

	// How much of it goes into the lye: exactly one of Share and Mass.
	Share units.Ratio // of the water asked for, the part that is this liquid's water: over 0 % to 100 %
	Mass  units.Mass  // of the liquid, over 0 g, to a tonne

	// What it is made of, of its mass; together at most 100 %.
	Water   units.Ratio // over 0 % to 100 %; must be given
	Fat     units.Ratio // 0 % where not given
	Sugar   units.Ratio // 0 % where not given
	Alcohol units.Ratio // 0 % where not given

	// Saponification is the value of the fat, needed where there is any: as of an
	// [OwnOil]. The fat's demand comes on top of the formula's oils; it counts in the
	// superfat, not in "of oils", in shares or in the size.
	Saponification units.Range
}

// fatty reports whether the liquid brings fat.
func (l *LiquidLine) fatty() bool { return l.Fat.Sign() > 0 }

// fatDemand gives the KOH that a gram of the liquid demands for its fat.
func (l *LiquidLine) fatDemand() units.Range {
	value := l.Saponification
	return units.Range{Low: value.Low.Times(l.Fat), Typical: value.Plan().Times(l.Fat), High: value.High.Times(l.Fat)}
}

// liquidWeighing is a liquid of the lye water with its masses.
type liquidWeighing struct {
	line  *LiquidLine
	mass  units.Mass
	water units.Mass
}

// weighing gives what a mass of the liquid comes to.
func (l *LiquidLine) weighing(mass units.Mass) liquidWeighing {
	return liquidWeighing{line: l, mass: mass, water: product(mass, l.Water, units.Nearest)}
}

// weighLiquids works the liquids out of the water asked for.
func (s *solved) weighLiquids(asked units.Ratio) {
	s.liquids = make([]liquidWeighing, len(s.f.Water.Liquids))
	for i := range s.f.Water.Liquids {
		line := &s.f.Water.Liquids[i]
		mass := line.Mass
		if line.Share.Given() {
			mass = product(units.Grams(1), asked.Times(line.Share).Over(line.Water), units.Nearest)
		}
		s.liquids[i] = line.weighing(mass)
	}
	s.addLiquids()
}

// addLiquids adds up what the liquids bring: water, all else, and the demand of their fat.
func (s *solved) addLiquids() {
	s.liquidWater, s.liquidSolids, s.fatDemand = units.Mass{}, units.Mass{}, units.Sum{}
	for i := range s.liquids {
		l := &s.liquids[i]
		s.liquidWater = s.liquidWater.Add(l.water)
		s.liquidSolids = s.liquidSolids.Add(l.mass.Sub(l.water))
		if l.line.fatty() {
			s.fatDemand = s.fatDemand.Plus(l.mass, l.line.fatDemand().Typical)
		}
	}
}
