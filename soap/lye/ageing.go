package lye

import (
	"example.com/lyewright/internal/molar"
	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

// Aged gives the hydroxide of a bottle that has gained mass since it was
// titrated, as a share of what is weighed now. purity is the hydroxide as it was
// titrated, over 0 % to 100 %; gain is the mass taken up per mass as bought, 0 % to
// 100 %. All of it may be water,
// which thins the hydroxide to p/(1 + gain), or carbon dioxide, of which a gram
// uses up 1.8177 g of NaOH or 2.5497 g of KOH (2 M/M(CO2), the water formed
// staying): (p − 1.8177 gain)/(1 + gain). The range runs from the low end of the
// one to the high end of the other, each rounded outwards to 10^-12, and is planned at
// its high end: too little alkali is the safe mistake. Molar masses are those of
// [AtomicWeights]. Refused is a gain that may have used up all the hydroxide. The error
// is [fault.Faults].
func Aged(alkali Alkali, purity units.Range, gain units.Ratio) (units.Range, error) {
	var faults fault.Faults
	one := units.Whole(1)
	if !alkali.known() {
		faults.Add("alkali", "", "is missing", "say which hydroxide it is", fault.ErrMissing)
	}
	switch {
	case !purity.Given():
		faults.Add("purity", "", "is missing", "give the hydroxide as it was titrated", fault.ErrMissing)
	case !purity.Ordered() || purity.Low.Sign() <= 0 || purity.High.Compare(one) > 0:
		faults.Add("purity", "", "is not a range above 0 % and up to 100 %", "let low, typical and high rise, or stay equal", fault.ErrRange)
	}
	switch {
	case !gain.Given():
		faults.Add("gain", "", "is missing", "give the mass gained per mass as bought", fault.ErrMissing)
	case gain.Sign() < 0 || gain.Compare(one) > 0:
		faults.Add("gain", percentText(gain), "is not between 0 % and 100 %", "give the mass taken up per mass as bought", fault.ErrRange)
	}
	if len(faults) > 0 {
		return units.Range{}, faults
	}
	used := units.Whole(2 * alkali.milligrams()).Over(units.Whole(molar.CarbonDioxide))
	now := one.Add(gain)
	aged := units.Range{
		Low:  purity.Low.Sub(used.Times(gain)).Over(now).Round(12, units.Down),
		High: purity.High.Over(now).Round(12, units.Up),
	}
	aged.Typical = aged.High
	if aged.Low.Sign() <= 0 {
		return units.Range{}, fault.Faults{{Path: "gain", Text: percentText(gain), Reason: "may have used up all the hydroxide", Remedy: "titrate the bottle again", Kind: fault.ErrRange}}
	}
	return aged, nil
}
