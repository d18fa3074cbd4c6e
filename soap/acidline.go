package soap

import (
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
)

// AcidLine is an acid that goes into the whole batch. It takes up alkali before any oil
// does. Its own water comes out of the lye water.
type AcidLine struct {
	Acid lye.Acid // one of [lye.Acids], or one with an ID, 1 to 10 protons and its molar mass
	// Asked is the name that it was asked for by, where that is not its ID: a finding says
	// both. It may be empty.
	Asked string
	Load  Load // of the acid as bought: of all the formula's oils, of what is in the pot, or a mass

	// Strength is the mass fraction of acid in what is bought. The zero Range is 100 %, and
	// refused of an acid that is sold dissolved ([lye.Acid.Dissolved]). Where Typical is left
	// out the middle is planned. In the worst case it is at its low end: what the acid does
	// not take up stays as alkali.
	Strength units.Range

	// Compensate must be said: whether alkali is added for the acid.
	Compensate Compensation
}

// Compensation says whether the alkali that an acid takes up is added. The zero
// value is neither, which [Formula.Check] refuses.
type Compensation uint8

// What is done about the alkali that an acid takes up.
const (
	NotSaid       Compensation = iota // nobody said: refused
	Compensated                       // alkali is added: the superfat stays as planned
	Uncompensated                     // it is taken from the oils' alkali: the superfat rises
)

// strength is the strength to plan with.
func (a *AcidLine) strength() units.Ratio {
	return a.Strength.Plan().Or(units.Whole(1))
}

// strengthSaid reports whether a strength was written.
func (a *AcidLine) strengthSaid() bool {
	return a.Strength.Low.Given() || a.Strength.Typical.Given() || a.Strength.High.Given()
}

// takes gives the KOH that a gram of the acid as bought takes up, at the planned strength.
func (a *AcidLine) takes() units.Ratio {
	return a.strength().Times(a.Acid.Neutralises(PotassiumHydroxide))
}

// takesUp gives the same over the range of its strength.
func (a *AcidLine) takesUp() units.Range {
	if !a.strengthSaid() {
		return units.Exactly(a.takes())
	}
	koh := a.Acid.Neutralises(PotassiumHydroxide)
	return units.Range{Low: a.Strength.Low.Times(koh), Typical: a.takes(), High: a.Strength.High.Times(koh)}
}

// An acidWeighing is an acid with its masses.
type acidWeighing struct {
	line *AcidLine
	mass units.Mass // as bought
	pure units.Mass // without its water
	koh  units.Sum  // what it takes up
}

// weighing gives what a mass of the acid as bought comes to.
func (a *AcidLine) weighing(mass units.Mass) acidWeighing {
	pure := product(mass, a.strength(), units.Nearest)
	return acidWeighing{line: a, mass: mass, pure: pure, koh: units.Sum{}.Plus(mass, a.takes())}
}

func (s *solved) weighAcids() {
	s.acids = make([]acidWeighing, len(s.f.Acids))
	for i := range s.f.Acids {
		line := &s.f.Acids[i]
		var mass units.Mass
		switch load := line.Load; {
		case load.OfOils.Given():
			mass = product(s.oilTotal, load.OfOils, units.Nearest)
		case load.OfBatter.Given():
			mass = product(s.pot, load.OfBatter, units.Nearest)
		default:
			mass = load.Mass
		}
		s.acids[i] = line.weighing(mass)
	}
	s.addAcids()
}

// addAcids adds up the acids as bought, and the water in them.
func (s *solved) addAcids() {
	s.acidOwn, s.acidMass = units.Mass{}, units.Mass{}
	for i := range s.acids {
		a := &s.acids[i]
		s.acidMass = s.acidMass.Add(a.mass)
		s.acidOwn = s.acidOwn.Add(a.mass.Sub(a.pure))
	}
}

// compensated gives the KOH that is added for acids.
func (s *solved) compensated() units.Sum {
	var koh units.Sum
	for i := range s.acids {
		if s.acids[i].line.Compensate == Compensated {
			koh = koh.Add(s.acids[i].koh)
		}
	}
	return koh
}
