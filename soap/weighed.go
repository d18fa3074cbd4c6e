package soap

import (
	"cmp"
	"slices"

	"example.com/lyewright/units"
)

// Stage is how far a batch has come when its real weighings are looked at: it says
// what can still be mended. The zero value is NotWeighed.
type Stage uint8

// How far a batch has come, and what still mends it.
const (
	NotWeighed Stage = iota // nothing was weighed: there is only the plan
	AtLye                   // lye and oils are not joined yet: part of the lye, more alkali, more water
	AtPot                   // one batter, not divided: more oil
	AtParts                 // divided into parts: more oil, for each its own
	AtMoulds                // poured: nothing
)

// String gives the word a formula file uses: "lye", "pot", "parts", "moulds";
// empty for NotWeighed.
func (s Stage) String() string {
	switch s {
	case AtLye:
		return "lye"
	case AtPot:
		return "pot"
	case AtParts:
		return "parts"
	case AtMoulds:
		return "moulds"
	default:
		return ""
	}
}

// Weighed is what was really weighed. A line that is not listed counts as
// planned, and as far off as a plan may be; one that was weighed is off by half a
// division of its scale. A mass may be 0 g: a line that was forgotten. More than three
// times its plan is held to be a slipped point, and refused by [Formula.Batch]; less than a
// third of it is a finding, weighed-far. The zero value: nothing was weighed yet.
type Weighed struct {
	Stage   Stage           // must be given where anything else is
	Oils    []WeighedOil    // into the pot
	Alkalis []WeighedAlkali // as weighed: of a stock lye, its mass
	Water   Reading         // into the lye: that still to add to stock and liquids
	Acids   []WeighedAcid   // as bought
	Liquids []WeighedLiquid // other than water
	Parts   []WeighedPart   // what each part got of the pot, its additions and carriers
}

// Reading is what a scale showed. The zero value: it was not read, which is not 0 g.
type Reading struct {
	Mass units.Mass // 0 g or more, to a tonne
	Read bool       // false: it was not read
}

// Read gives a reading of a mass, 0 g included.
func Read(mass units.Mass) Reading { return Reading{Mass: mass, Read: true} }

// WeighedOil is an oil of the formula as it was weighed into the pot.
type WeighedOil struct {
	Oil  string     // its id
	Mass units.Mass // 0 g or more, to a tonne
}

// WeighedAlkali is an alkali of the formula as it was weighed.
type WeighedAlkali struct {
	Alkali Alkali
	Mass   units.Mass // 0 g or more, to a tonne; of a stock lye all of it

	asked string // the name that it was written by, where that is another
}

// key is the key of a formula file that it stands under.
func (w WeighedAlkali) key() string { return cmp.Or(w.asked, w.Alkali.String()) }

// WeighedAcid is an acid of the formula as it was weighed.
type WeighedAcid struct {
	Acid string     // its id
	Mass units.Mass // as bought: 0 g or more, to a tonne
}

// WeighedLiquid is a liquid of the formula other than water, as it was weighed. It brings
// its fat, its water and the rest in the proportions of its line.
type WeighedLiquid struct {
	Liquid string     // its name
	Mass   units.Mass // 0 g or more, to a tonne
}

// WeighedPart is a part as it was divided and weighed. All parts together hold no more
// than the pot as weighed, by 2 % and a division for each line and part: else
// [Formula.Batch] refuses them. A part without a reading counts as its planned share.
type WeighedPart struct {
	Part      string            // its name; "whole" where the formula has no parts
	Batter    Reading           // what of the pot it got; not 0 g
	Additions []WeighedAddition // those that were weighed
	Carriers  []WeighedCarrier  // those that were weighed
}

// WeighedAddition is all of a part's additions of one name, as weighed: colourants (those
// whose load was looked for too), fragrances and additives. Of a paste it is the paste, its
// carrier with it.
type WeighedAddition struct {
	Name string     // as the formula has it
	Mass units.Mass // 0 g or more, to a tonne

	asked string // the name that it was written by, where that is another
}

// key is the key of a formula file that it stands under.
func (w WeighedAddition) key() string { return cmp.Or(w.asked, w.Name) }

// WeighedCarrier is all of a part's carriers of one liquid, as weighed; what is in a paste
// that stands among Additions is not of it.
type WeighedCarrier struct {
	Liquid string     // "water", "glycerin" or an oil's id
	Mass   units.Mass // 0 g or more, to a tonne
}

// adds reports whether an addition of a part was weighed.
func (w *Weighed) adds(part, name string) bool {
	return slices.ContainsFunc(w.Parts, func(p WeighedPart) bool {
		return p.Part == part && slices.ContainsFunc(p.Additions, func(a WeighedAddition) bool {
			return sameName(a.Name,
				name)
		})
	})
}

func (w Weighed) clone() Weighed {
	w.Oils, w.Alkalis, w.Parts = slices.Clone(w.Oils), slices.Clone(w.Alkalis), slices.Clone(w.Parts)
	w.Acids, w.Liquids = slices.Clone(w.Acids), slices.Clone(w.Liquids)
	for i := range w.Parts {
		w.Parts[i].Additions = slices.Clone(w.Parts[i].Additions)
		w.Parts[i].Carriers = slices.Clone(w.Parts[i].Carriers)
	}
	return w
}
