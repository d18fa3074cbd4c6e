package soap

import (
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
// times its plan is held to be a slipped point, and refused by [Formula.Batch]. The zero
// value: nothing was weighed yet.
type Weighed struct {
	Stage   Stage           // must be given where anything else is
	Oils    []WeighedOil    // into the pot
	Alkalis []WeighedAlkali // as weighed: of a stock lye, its mass
	Water   Reading         // into the lye: that still to add to stock and liquids
	Parts   []WeighedPart   // what each part got of the pot, and its carriers
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
}

// WeighedPart is a part as it was divided and weighed.
type WeighedPart struct {
	Part     string           // its name; "whole" where the formula has no parts
	Batter   Reading          // what of the pot it got; not 0 g
	Carriers []WeighedCarrier // those that were weighed
}

// WeighedCarrier is all of a part's carriers of one liquid, as weighed.
type WeighedCarrier struct {
	Liquid string     // "water", "glycerin" or an oil's id
	Mass   units.Mass // 0 g or more, to a tonne
}

func (w Weighed) clone() Weighed {
	w.Oils, w.Alkalis, w.Parts = slices.Clone(w.Oils), slices.Clone(w.Alkalis), slices.Clone(w.Parts)
	for i := range w.Parts {
		w.Parts[i].Carriers = slices.Clone(w.Parts[i].Carriers)
	}
	return w
}
