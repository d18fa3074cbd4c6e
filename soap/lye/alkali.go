package lye

import (
	"example.com/lyewright/internal/molar"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// Alkali is a hydroxide, as it is weighed dry or stands in a lye. The zero value is none:
// whatever returns an error refuses it; what returns none counts it as sodium hydroxide.
type Alkali uint8

// The two hydroxides.
const (
	SodiumHydroxide    Alkali = iota + 1 // NaOH, for bars
	PotassiumHydroxide                   // KOH, for soft soap and part of a bar
)

// String gives the name a formula file uses: "sodium-hydroxide",
// "potassium-hydroxide"; empty for any other value.
func (a Alkali) String() string {
	switch a {
	case SodiumHydroxide:
		return "sodium-hydroxide"
	case PotassiumHydroxide:
		return "potassium-hydroxide"
	default:
		return ""
	}
}

// Name gives the name in English: "Sodium hydroxide", "Potassium hydroxide"; empty for
// any other value.
func (a Alkali) Name() string {
	switch a {
	case SodiumHydroxide:
		return "Sodium hydroxide"
	case PotassiumHydroxide:
		return "Potassium hydroxide"
	default:
		return ""
	}
}

// Symbol gives the chemical formula: "NaOH", "KOH"; empty for any other value.
func (a Alkali) Symbol() string {
	switch a {
	case SodiumHydroxide:
		return "NaOH"
	case PotassiumHydroxide:
		return "KOH"
	default:
		return ""
	}
}

// MolarMass gives the molar mass in g/mol: NaOH 39.997, KOH 56.105, from the
// IUPAC abridged atomic weights of 2021 (see [AtomicWeights]).
func (a Alkali) MolarMass() units.Ratio { return units.MilligramsPerGram(a.milligrams()) }

// milligrams is the molar mass in mg/mol.
func (a Alkali) milligrams() int64 {
	if a == PotassiumHydroxide {
		return molar.KOH
	}
	return molar.NaOH
}

// carbonate is the molar mass of its carbonate in mg/mol.
func (a Alkali) carbonate() int64 {
	if a == PotassiumHydroxide {
		return molar.PotassiumCarbonate
	}
	return molar.SodiumCarbonate
}

// known reports whether it is one of the two.
func (a Alkali) known() bool { return a == SodiumHydroxide || a == PotassiumHydroxide }

// Saturation gives the largest strength at 20 °C: the mass fraction of hydroxide
// in a solution that holds no more. NaOH 52.1 %: a table of its solubility,
// University of Campinas, edition not stated (a compilation; read). KOH 52.8 %:
// Great Soviet Encyclopedia, article potassium hydroxide, edition not stated
// (read).
func (a Alkali) Saturation() units.Ratio {
	if a == PotassiumHydroxide {
		return units.MilligramsPerGram(528)
	}
	return units.MilligramsPerGram(521)
}

// SaturationSource is the source of what [Alkali.Saturation] gives.
func (a Alkali) SaturationSource() cite.Source {
	if a == PotassiumHydroxide {
		return cite.Source{
			Title: "Great Soviet Encyclopedia", Edition: "edition not stated",
			Place: "article potassium hydroxide", How: cite.Read,
		}
	}
	return cite.Source{
		Title:   "a table of the solubility of sodium hydroxide, University of Campinas",
		Edition: "edition not stated", How: cite.Read,
	}
}

// AtomicWeights is the source of the molar masses, which are recalled: H 1.008, C 12.011,
// O 15.999, Na 22.990, K 39.098 g/mol.
func AtomicWeights() cite.Source {
	return cite.Source{
		Title: "IUPAC CIAAW, abridged standard atomic weights", Edition: "2021", Place: "H, C, O, Na, K",
		How: cite.Memory,
	}
}
