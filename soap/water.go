package soap

import "example.com/lyewright/units"

// Water is the rule that says how much water is asked for: exactly one of
// LyeConcentration, PerAlkali and PerOils. The zero value is missing, which
// [Formula.Check] refuses. What carriers hold back comes out of it, and so does the water
// of stock lyes, liquids and acids. Alkali counts as weighed, of a stock lye its pure
// hydroxide.
type Water struct {
	// LyeConcentration is alkali as weighed over alkali and water together,
	// over 0 % and below 100 %.
	LyeConcentration units.Ratio
	// PerAlkali is water per alkali as weighed, by mass: over 0, to 100.
	PerAlkali units.Ratio
	// PerOils is water per oils, by mass: over 0 %, to 1000 %.
	PerOils units.Ratio

	// Liquids bring part of the water asked for: at most 20, each name once. They stand
	// beside the rule.
	Liquids []LiquidLine
}

// WaterPerAlkali gives the water per alkali, by mass, of a lye of this
// concentration (alkali as weighed over the lye): (1 − c)/c. Not given for a
// concentration of zero.
func WaterPerAlkali(concentration units.Ratio) units.Ratio {
	return concentration.Rest().Over(concentration)
}

// LyeConcentration gives the concentration (alkali as weighed over the lye) of
// a lye with this much water per alkali, by mass: 1/(1 + w). It is the inverse
// of [WaterPerAlkali]. Not given where the water per alkali is not.
func LyeConcentration(waterPerAlkali units.Ratio) units.Ratio {
	return units.Whole(1).Over(units.Whole(1).Add(waterPerAlkali))
}

// WaterPerOils gives the water per oils, by mass, that so much water per
// alkali is where the formula weighs alkaliPerOils of alkali per oils, both as weighed.
// Not given where either is not.
func WaterPerOils(waterPerAlkali, alkaliPerOils units.Ratio) units.Ratio {
	return waterPerAlkali.Times(alkaliPerOils)
}

// WaterPerAlkaliFromOils gives the water per alkali, by mass, that so much
// water per oils is: the inverse of [WaterPerOils]. Not given where there is
// no alkali.
func WaterPerAlkaliFromOils(waterPerOils, alkaliPerOils units.Ratio) units.Ratio {
	return waterPerOils.Over(alkaliPerOils)
}

// asked gives the water the rule asks for.
func (w Water) asked(alkali, oils units.Mass) units.Mass {
	switch {
	case w.PerOils.Given():
		return product(oils, w.PerOils, units.Nearest)
	case w.PerAlkali.Given():
		return product(alkali, w.PerAlkali, units.Nearest)
	}
	c := w.LyeConcentration // alkali × (1 − c)/c, divided once
	return scaled(units.Sum{}.Plus(alkali, units.Whole(1)), c.Rest(), c, units.Nearest)
}
