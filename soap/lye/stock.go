package lye

import (
	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

// Stock is a lye made ahead, of known strength, that is weighed in place of dry
// alkali. The zero value lacks everything.
type Stock struct {
	Alkali   Alkali      // that it is made of
	Strength units.Ratio // mass fraction of hydroxide: over 0 %, up to Alkali.Saturation
}

// Make gives what to weigh for so much of the stock, over 0 g: alkali of a purity (the
// mass fraction of hydroxide in it, over 0 % to 100 %), rounded down to a nanogram, and
// the water that makes up the mass. A purity that is not above the strength is
// refused, since it leaves no water ([fault.ErrImpossible]). The error is [fault.Faults].
func (s Stock) Make(mass units.Mass, purity units.Ratio) (alkali, water units.Mass, err error) {
	faults := s.check()
	checkMass(&faults, "make", mass)
	switch {
	case !purity.Given():
		faults.Add("purity", "", "is missing", `give the hydroxide in what is weighed, such as "98 %"`, fault.ErrMissing)
	case purity.Sign() <= 0 || purity.Compare(units.Whole(1)) > 0:
		faults.Add("purity", percentText(purity), "is not above 0 % and up to 100 %", "give the hydroxide in what is weighed, carbonate not counted", fault.ErrRange)
	case len(faults) == 0 && purity.Compare(s.Strength) == 0:
		faults.Add("purity", percentText(purity), "is the strength asked for, which leaves no water to dissolve it in",
			"ask for a weaker stock; a solution that is as strong as that is a stock already", fault.ErrImpossible)
	case len(faults) == 0 && purity.Compare(s.Strength) < 0:
		faults.Add("purity", percentText(purity), "is below the strength asked for", "an alkali cannot make a stronger lye than it is pure", fault.ErrImpossible)
	}
	if len(faults) > 0 {
		return units.Mass{}, units.Mass{}, faults
	}
	alkali, _ = units.Sum{}.Plus(mass, s.Strength).Scale(units.Whole(1), purity, units.Down) // the purity is above 0 %
	return alkali, mass.Sub(alkali), nil
}

// For gives the stock that holds so much pure hydroxide, rounded down to a nanogram, and
// the water that thins it to a lye of a lower strength: the mass fraction of hydroxide in
// that lye. A stock weaker than the lye is refused ([fault.ErrImpossible]), and so is more
// than a tonne of lye. The error is [fault.Faults].
func (s Stock) For(hydroxide units.Mass, lye units.Ratio) (stock, water units.Mass, err error) {
	faults := s.check()
	checkMass(&faults, "hydroxide", hydroxide)
	switch {
	case !lye.Given():
		faults.Add("lye", "", "is missing", `give the strength of the lye, such as "33 %"`, fault.ErrMissing)
	case lye.Sign() <= 0:
		faults.Add("lye", percentText(lye), "is not above 0 %", "give the strength of the lye that is wanted", fault.ErrRange)
	case len(faults) == 0 && lye.Compare(s.Strength) > 0:
		faults.Add("strength", percentText(s.Strength), "is weaker than the lye asked for, "+percentText(lye), "ask for a weaker lye, or take a stronger stock", fault.ErrImpossible)
	}
	if len(faults) > 0 {
		return units.Mass{}, units.Mass{}, faults
	}
	one := units.Whole(1)
	held := units.Sum{}.Plus(hydroxide, one)
	stock, _ = held.Scale(one, s.Strength, units.Down) // both strengths are above 0 %
	all, _ := held.Scale(one, lye, units.Nearest)
	if all.Compare(units.Grams(units.Tonne)) > 0 {
		return units.Mass{}, units.Mass{}, fault.Faults{{Path: "lye", Text: percentText(lye), Reason: "of so much hydroxide makes more than a tonne", Remedy: "make less, or a stronger lye", Kind: fault.ErrRange}}
	}
	return stock, all.Sub(stock), nil
}

func checkMass(faults *fault.Faults, path string, mass units.Mass) {
	switch {
	case mass.Sign() == 0:
		faults.Add(path, "", "is missing", `give a mass, such as "500 g"`, fault.ErrMissing)
	case mass.Sign() < 0:
		faults.Add(path, mass.String(), "is not above 0 g", "give what is wanted", fault.ErrRange)
	}
}

func (s Stock) check() fault.Faults {
	faults := checkAlkali(nil, s.Alkali)
	switch {
	case !s.Strength.Given():
		faults.Add("strength", "", "is missing", `give the stock's mass fraction of hydroxide, such as "50 %"`, fault.ErrMissing)
	case s.Strength.Sign() <= 0 || s.Alkali.known() && s.Strength.Compare(s.Alkali.Saturation()) > 0:
		faults.Add("strength", percentText(s.Strength), "is not above 0 % and up to what dissolves at 20 °C, "+percentText(s.Alkali.Saturation()), "make it weaker", fault.ErrRange)
	}
	return faults
}
