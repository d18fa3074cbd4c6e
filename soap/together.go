package soap

import "example.com/lyewright/units"

// A form is a mass in grams that depends on the mass of all oils and on what is in
// the pot: oils × O + pot × P + fixed. Loads of batter, what is held back for
// them, acids and liquids all depend on the pot, and the pot on them; as forms
// they make one linear equation, which is solved exactly.
type form struct{ oils, pot, fixed units.Ratio }

func nothing() form { return form{units.Whole(0), units.Whole(0), units.Whole(0)} }

func fixedForm(grams units.Ratio) form {
	f := nothing()
	f.fixed = grams
	return f
}

func (f form) plus(g form) form {
	return form{f.oils.Add(g.oils), f.pot.Add(g.pot), f.fixed.Add(g.fixed)}
}

func (f form) times(r units.Ratio) form {
	return form{f.oils.Times(r), f.pot.Times(r), f.fixed.Times(r)}
}

func (f form) over(r units.Ratio) form {
	return form{f.oils.Over(r), f.pot.Over(r), f.fixed.Over(r)}
}

// of is the form of a load on the whole batch.
func (load *Load) of() form {
	f := nothing()
	switch {
	case load.OfOils.Given():
		f.oils = load.OfOils
	case load.OfBatter.Given():
		f.pot = load.OfBatter
	default:
		f.fixed = inGrams(load.Mass)
	}
	return f
}

func inGrams(m units.Mass) units.Ratio {
	r, _ := m.Per(units.Grams(1))
	return r
}

// together is the formula as one linear system: what goes into the pot, as forms.
type together struct {
	asked  form // the water asked for
	alkali form
	others form // acids without their water, and what is not water in liquids
	pot    form // all that goes into the pot, of which the pot itself is a part
	ok     bool // false where a liquid's fat asks for more water than brings it
}

// system draws the formula up as forms. demand is the KOH that the formula's oils
// demand.
func (s *solved) system(demand form, factors []alkaliFactor) together {
	f, rest := s.f, s.superfat.Rest()
	one := units.Whole(1)
	perDemand := units.Whole(0) // alkali as weighed per KOH
	for _, factor := range factors {
		perDemand = perDemand.Add(factor.times.Over(factor.over))
	}
	acids, pure := nothing(), nothing()
	for i := range f.Acids {
		a := &f.Acids[i]
		load := a.Load.of()
		pure = pure.plus(load.times(a.strength()))
		if a.Compensate == Compensated {
			acids = acids.plus(load.times(a.takes()))
		}
	}
	// Liquids by mass are known; those by share follow the water asked for.
	fixedFat, sharedFat := units.Whole(0), units.Whole(0)       // KOH: in all, per water asked
	fixedSolids, sharedSolids := units.Whole(0), units.Whole(0) // the same of solids
	for i := range f.Water.Liquids {
		l := &f.Water.Liquids[i]
		fat := units.Whole(0)
		if l.fatty() {
			fat = l.fatDemand().Typical
		}
		if l.Share.Given() {
			per := l.Share.Over(l.Water)
			sharedFat = sharedFat.Add(per.Times(fat))
			sharedSolids = sharedSolids.Add(per.Times(l.Water.Rest()))
		} else {
			fixedFat = fixedFat.Add(inGrams(l.Mass).Times(fat))
			fixedSolids = fixedSolids.Add(inGrams(l.Mass).Times(l.Water.Rest()))
		}
	}
	// The alkali without what liquids by share ask for, and with it:
	// alkali = known + fed × asked.
	known := demand.plus(fixedForm(fixedFat)).times(rest).plus(acids).times(perDemand)
	fed := sharedFat.Times(rest).Times(perDemand)
	t := together{ok: true}
	if f.Water.PerOils.Given() {
		t.asked = nothing()
		t.asked.oils = f.Water.PerOils
		if f.SizeKnown() && f.Size.Batter.Sign() == 0 { // the oils are known
			t.asked = fixedForm(inGrams(s.oilTotal).Times(f.Water.PerOils))
		}
	} else {
		perAlkali := f.Water.PerAlkali
		if !perAlkali.Given() {
			perAlkali = WaterPerAlkali(f.Water.LyeConcentration)
		}
		damped := one.Sub(perAlkali.Times(fed))
		if damped.Sign() <= 0 {
			return together{}
		}
		t.asked = known.times(perAlkali).over(damped)
	}
	t.alkali = known.plus(t.asked.times(fed))
	heldOils, heldPot, heldFixed := s.heldShares()
	fixed, _ := heldFixed.Per(units.Sum{}.Plus(units.Grams(1), one))
	held := form{heldOils, heldPot, fixed}
	t.others = pure.plus(t.asked.times(sharedSolids)).plus(fixedForm(fixedSolids))
	t.pot = form{one, units.Whole(0), units.Whole(0)}.
		plus(t.alkali).plus(t.asked).plus(t.others).
		plus(held.times(units.Whole(-1)))
	return t
}

// at gives the mass of a form in grams.
func (f form) at(oils, pot units.Ratio) units.Ratio {
	return f.oils.Times(oils).Add(f.pot.Times(pot)).Add(f.fixed)
}

// potOf solves for what is in the pot: pot = oils × O + pot share × pot + fixed.
func (t *together) potOf(oils units.Ratio) units.Ratio {
	all := t.pot.oils.Times(oils).Add(t.pot.fixed)
	return all.Over(t.pot.pot.Rest())
}

// oilsOf solves for the mass of all oils that makes so much in the pot.
func (t *together) oilsOf(pot units.Ratio) units.Ratio {
	left := pot.Times(t.pot.pot.Rest()).Sub(t.pot.fixed)
	return left.Over(t.pot.oils)
}
