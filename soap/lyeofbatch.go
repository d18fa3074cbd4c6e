package soap

import (
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
)

// lye describes the lye as mixed.
func (s *solved) lye() Lye {
	l := Lye{Mass: s.alkali.Add(s.lyeWater), Undissolved: s.read != nil && s.undissolved()}
	l.Dry = l.Undissolved && s.dryJug()
	l.Concentration, _ = s.alkali.Per(l.Mass)
	l.WaterPerAlkali, _ = s.lyeWater.Per(s.alkali)
	var hydroxide units.Sum
	for i := range s.alkalis {
		hydroxide = hydroxide.Add(s.alkalis[i].Hydroxide())
	}
	l.Strength, _ = hydroxide.Per(units.Sum{}.Plus(l.Mass, units.Whole(1)))
	if len(s.alkalis) == 1 {
		l.Crystallises, _ = lye.Solution{Alkali: s.alkalis[0].Alkali, Strength: l.Strength}.Crystallises()
	}
	if at := s.f.Temperature; at.Lye.Given() && len(s.liquids) == 0 {
		l.Volume, l.VolumeKnown = s.lyeVolume(l.Strength)
	}
	if s.f.Temperature.Water.Given() {
		l.Heat, l.Mixing = s.heat()
	}
	return l
}

// dryJug reports whether the water in the lye is less than half the mass of its alkali: see [Lye.Dry].
func (s *solved) dryJug() bool { return s.lyeWater.Add(s.lyeWater).Compare(s.alkali) < 0 }

// lyeVolume gives the volume of the lye at its temperature. Two alkalis count as
// two lyes of the same strength, side by side.
func (s *solved) lyeVolume(strength units.Ratio) (all units.Volume, ok bool) {
	for i := range s.alkalis {
		a := &s.alkalis[i]
		mass := scaled(a.Hydroxide(), units.Whole(1), strength, units.Nearest)
		volume, err := lye.Solution{Alkali: a.Alkali, Strength: strength, At: s.f.Temperature.Lye}.Volume(mass)
		if err != nil { // above 50 %, where no density is known
			return units.Volume{}, false
		}
		all = all.Add(volume)
	}
	return all, true
}

// heat gives how hot the lye gets if no heat is lost: the alkali at the high end
// of its purity, the water as mixed, acids dissolved in it. Where the high end would
// not dissolve, the plan does. The zero values where it is not known: a stock of
// potassium hydroxide, or nothing but stock.
func (s *solved) heat() (lye.Heat, lye.Mixing) {
	m := lye.Mixing{Water: s.waterAdd.Add(s.liquidWater), WaterAt: s.f.Temperature.Water, Room: s.f.Temperature.Room}
	if dust(m.Water) {
		return lye.Heat{}, lye.Mixing{}
	}
	for i := range s.acids {
		m.Acids = append(m.Acids, lye.Neutralised{Acid: s.acids[i].line.Acid, Pure: s.acids[i].pure})
	}
	m.Alkalis = make([]lye.Portion, len(s.alkalis))
	for _, e := range []end{highest, planned} { // more than dissolves gives off no heat
		for i := range s.alkalis {
			weighing, content := s.alkalis[i].ToWeigh()
			m.Alkalis[i] = lye.Portion{Alkali: s.alkalis[i].Alkali, Mass: weighing.Mass, Hydroxide: e.pick(content), Dissolved: s.alkalis[i].Strength.Given()}
		}
		if heat, err := m.Bound(); err == nil {
			return heat, m
		}
	}
	return lye.Heat{}, lye.Mixing{}
}
