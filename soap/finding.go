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
// These may be a [Danger]: superfat-below-zero and superfat-likely-negative, where a bar would or may well burn skin;
// saponification-outside, where it would with the published value of an oil or a milk; acid-unusual, where it would
// with the acid at its usual strength; lye-undissolved, of what was weighed; hydrogen, of a metal that alkali
// dissolves; and fragrance-over-cap. A program that shows nothing else should show those, and knows that a [Warning]
// may be of a hazard, too: the film of a glitter may have a layer of aluminium. All codes, by what they are about:
//
//   - superfat: superfat-below-zero, superfat-likely-negative, free-alkali-worst,
//     part-superfat-shifted, superfat-unusual
//   - oils: typical-disputed, range-missing, value-computed, figure-from-memory,
//     saponification-single, saponification-replaced, saponification-outside,
//     saponification-unusual, wax-reacts-slowly
//   - alkali and lye: purity-assumed, purity-single, purity-low, potassium-only, lye-strong,
//     lye-weak, lye-hot, lye-crystallises, lye-undissolved, temperatures-apart,
//     temperature-high, solid-at-pour, acid-compensated, acid-unusual, liquid-sugar,
//     liquid-alcohol, wet-into-hot-lye
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
//   - all of them: findings-more, the last of 200, where there are more. It is as severe as
//     the gravest that is not listed
//   - any addition, topping, embed, liquid or vessel: hydrogen
//   - a titration (see [TitrationFindings]): titration-exact
type Finding struct {
	Code     string      // lower case, hyphenated: "purity-assumed"
	Severity Severity    // of one code it may differ from case to case
	Subject  string      // path in the formula, as in a file: "parts[0]"
	Value    units.Ratio // the figure found; not given where there is none
	Limit    units.Ratio // what it was held against; not given where there is none

	// Unit is that of both, and says by how much to multiply them: "%" and "points" (of
	// percent) by 100, "mg KOH/g" by 1000, "K", "°C", "moulds", "amendment" and
	// "findings" by 1. Empty where neither is given.
	Unit   string
	Source cite.Source // of the limit or the figure
	Names  []string    // what it is about: oils, a part, an addition and the rules for it

	// SuperfatIf is what the superfat would be if the figure that the finding doubts were the usual one: of
	// saponification-outside with the published value, of purity-low with the bottle at its usual purity, of
	// acid-unusual (strength) with the acid at its usual one, and of the first two with all such figures where Detail
	// says so. Nil of all others.
	SuperfatIf *SuperfatIf

	// Detail tells cases of one code apart: a word of the list below, empty for the usual
	// case. As codes do, a word keeps its meaning, and more may come.
	//
	//   - acid-unusual: strength (over what is mostly sold under its name)
	//   - additive-unjudged: fragrance (its name is also that of one)
	//   - colourant-not-permitted: eu, us: under which law
	//   - colourant-unjudged: fragrance (its name is also that of one), numbers (not all its Colour Index numbers are
	//     known), unheld (its law or its stability in alkali is not held)
	//   - density-unknown: much (of oils that are much of the batter)
	//   - fragrance-behaviour: what it does, accelerates, rices or seizes; of several the
	//     gravest
	//   - fragrance-browns: the look that is meant, white or pale
	//   - fragrance-over-cap: last (in the last of several batches), weighed (as weighed, and in
	//     the batter already), poured (as weighed, and past mending)
	//   - fragrance-unjudged: not-listed, not-listed-eu, maximum-not-held, natural-trace,
	//     natural-within, specification: the words of [fragrance.Why]
	//   - glitter-aluminium: unknown (nobody said whether it has any)
	//   - hydrogen: name (its name alone tells the metal), vessel (a vessel is of the metal, by its name)
	//   - load-unusual: of what the load is a share, oils or batter
	//   - lye-undissolved: jug (it stands in its jug), dry (the same, with hardly any water or none: see [Lye.Dry]),
	//     batter (it is in the oils already)
	//   - moulds-short: known (the batch is as large as it is)
	//   - name-note: what it is the name of, oil, fragrance, colourant, acid or alkali
	//   - nano-grade: whitens (of titanium dioxide, which then hardly does)
	//   - part-superfat-shifted: held-back (by oil that went into jugs)
	//   - purity-single: stock (the strength of a stock lye)
	//   - purity-low: doubts (with every value and purity that is doubted at what is usual)
	//   - saponification-outside: together (with every such value replaced), doubts (with every
	//     low purity too), measured (the maker titrated the lot); measured-together and
	//     measured-doubts are both
	//   - solid-at-pour: acids (free acids are among them)
	//   - superfat-below-zero: weighed (as weighed), poured (as weighed, and past mending)
	//   - superfat-likely-negative: what makes most of the doubt, scale, ranges, purity or
	//     plan, or wax (by the published range of a wax in place of the value given); with
	//     weighed or poured before it, such as weighed-plan, as above
	//   - superfat-unusual: salt (of a salt bar), weighed (as weighed), at-least (the plan that
	//     keeps a worst case)
	//   - temperature-high: f (so high that °F may have been meant)
	//   - typical-disputed: recalled (nobody saw the fatty acids)
	//   - wax-reacts-slowly: given (with a value of the caller's own)
	//   - weighed-far: again (nothing is offered to mend the batch before it is weighed again)
	//   - wet-into-hot-lye: name (the name of a liquid tells what is in it, and no figure is given)
	//   - findings-more: dangers where some of those that are not listed are, warnings where
	//     none is and some are warnings
	Detail string

	// Quoted is what the sentence quotes beside names and figures: a published range, what a
	// source says, a mass. It is for people; empty for most.
	Quoted string
}
