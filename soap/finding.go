package soap

import (
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// Severity says how grave a finding is. The graver is the larger. The zero value is Note.
type Severity uint8

// How grave a finding may be.
const (
	Note    Severity = iota // worth knowing
	Warning                 // likely a mistake, or a risk to the batch
	Danger                  // harm to a person
)

// String gives "note", "warning" or "danger".
func (s Severity) String() string {
	switch s {
	case Danger:
		return "danger"
	case Warning:
		return "warning"
	default:
		return "note"
	}
}

// Finding is something about a valid formula that its maker should know. Code
// and Severity are part of the library's interface; the sentence, [Finding.Message], is
// not.
//
// These may be a [Danger]: superfat-below-zero and superfat-likely-negative, where a bar
// would or may well burn skin; saponification-outside, where it would with the published
// value of an oil; lye-undissolved, of what was weighed; hydrogen, of a metal that alkali
// dissolves; and fragrance-over-cap. A program that shows nothing else should show those, and
// knows that a [Warning] may be of a hazard, too: the film of a glitter may have a layer of
// aluminium. All codes, by what they are about:
//
//   - superfat: superfat-below-zero, superfat-likely-negative, free-alkali-worst,
//     part-superfat-shifted, superfat-unusual
//   - oils: typical-disputed, range-missing, value-computed, figure-from-memory,
//     saponification-single, saponification-replaced, saponification-outside,
//     saponification-unusual, wax-reacts-slowly
//   - alkali and lye: purity-assumed, purity-single, purity-low, potassium-only, lye-strong,
//     lye-weak, lye-hot, lye-crystallises, lye-undissolved, temperatures-apart,
//     temperature-high, solid-at-pour, acid-compensated, liquid-sugar, liquid-alcohol,
//     wet-into-hot-lye
//   - moulds: moulds-short, density-unknown, embeds-present, glitter-plastic,
//     glitter-aluminium
//   - names: name-note
//   - scales: rounding-coarse, weighed-far
//   - fragrance: fragrance-over-cap, fragrance-unjudged, natural-ceiling-used,
//     certificate-older, allergens-unknown, fragrance-browns, fragrance-behaviour,
//     dose-unusual
//   - colour: colourant-not-permitted, colourant-unstable, colourant-unjudged, nano-grade,
//     load-unusual, carrier-unlike, rivers-likely, target-out-of-gamut
//   - additives: additive-unjudged
//   - any addition, topping, embed or liquid: hydrogen
//   - a titration (see [TitrationFindings]): titration-exact
type Finding struct {
	Code     string      // lower case, hyphenated: "purity-assumed"
	Severity Severity    // of one code it may differ from case to case
	Subject  string      // path in the formula, as in a file: "parts[0]"
	Value    units.Ratio // the figure found; not given where there is none
	Limit    units.Ratio // what it was held against; not given where there is none

	// Unit is that of both, and says by how much to multiply them: "%" and "points" (of
	// percent) by 100, "mg KOH/g" by 1000, "K", "°C" and "moulds" by 1. Empty where
	// neither is given.
	Unit   string
	Source cite.Source // of the limit or the figure
	Names  []string    // what it is about: oils, a part, an addition

	// SuperfatIf is what the superfat would be if the figure that the finding doubts were
	// the usual one: of saponification-outside with the published value, of purity-low with
	// the bottle at its usual purity. Nil of all others.
	SuperfatIf *SuperfatIf
	Detail     string // tells cases of one code apart in its sentence; empty for the usual one
}
