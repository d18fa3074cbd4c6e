package soap

import (
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// Molar masses in g/mol, from the abridged standard atomic weights of IUPAC's
// CIAAW, table of 2021: H 1.0080, C 12.011, O 15.999, Na 22.990, K 39.098. The
// abridged values are recalled; each lies inside the interval that CIAAW
// publishes (read).
//
// In thousandths of a gram per mole, so that they are whole numbers:
const (
	molarNaOH  = 39_997 // 22.990 + 15.999 + 1.0080
	molarKOH   = 56_105 // 39.098 + 15.999 + 1.0080
	molarWater = 18_015 // 2 × 1.0080 + 15.999
	// molarGlyceride is what three acids gain as they become a triglyceride:
	// glycerol, 3 × 12.011 + 8 × 1.0080 + 3 × 15.999 = 92.094, less three waters.
	molarGlyceride = 92_094 - 3*molarWater
)

// Carbonate counted as hydroxide by a titration of total alkali, per gram of
// carbonate: twice the molar mass of the hydroxide over that of the carbonate.
const (
	molarSodiumCarbonate    = 105_988 // 2 × 22.990 + 12.011 + 3 × 15.999
	molarPotassiumCarbonate = 138_204 // 2 × 39.098 + 12.011 + 3 × 15.999
)

func thousandths(n int) units.Ratio { return units.MilligramsPerGram(n) }

// AtomicWeights is the source of the molar masses.
func AtomicWeights() cite.Source {
	return cite.Source{Title: "IUPAC CIAAW, abridged standard atomic weights", Edition: "2021", Place: "H, C, O, Na, K", How: cite.Memory}
}
