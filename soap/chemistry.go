package soap

import (
	"example.com/lyewright/internal/molar"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// molarGlyceride is what three acids gain as they become a triglyceride:
// glycerol less three waters.
const molarGlyceride = molar.Glycerol - 3*molar.Water

func thousandths(n int) units.Ratio { return units.MilligramsPerGram(n) }

// AtomicWeights is the source of the molar masses: those of [lye.Alkali.MolarMass] and of
// [FattyAcids].
func AtomicWeights() cite.Source { return lye.AtomicWeights() }
