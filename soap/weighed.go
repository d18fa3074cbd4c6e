package soap

import (
	"slices"

	"example.com/lyewright/units"
)

// Stage is how far a batch has come when its real weighings are looked at: it says
// what can still be mended. The zero value is NotWeighed.
type Stage uint8

const (
	NotWeighed Stage = iota
	AtLye            // lye and oils are not joined yet
	AtPot            // one batter, not divided
	AtParts          // divided into parts
	AtMoulds         // poured
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
// division of its scale. A mass may be 0 g: a line that was forgotten.
type Weighed struct {
	Stage   Stage
	Oils    []WeighedOil    // into the pot
	Alkalis []WeighedAlkali // as weighed: of a stock lye, its mass
	Water   Reading         // into the lye
	Parts   []WeighedPart
}

// Reading is what a scale showed. The zero value: it was not read.
type Reading struct {
	Mass units.Mass
	Read bool
}

// Read gives a reading of a mass.
func Read(mass units.Mass) Reading { return Reading{Mass: mass, Read: true} }

// WeighedOil is an oil of the formula as it was weighed into the pot.
type WeighedOil struct {
	Oil  string // its id
	Mass units.Mass
}

// WeighedAlkali is an alkali of the formula as it was weighed.
type WeighedAlkali struct {
	Alkali Alkali
	Mass   units.Mass
}

// WeighedPart is a part as it was divided and weighed.
type WeighedPart struct {
	Part     string  // its name; "whole" where the formula has no parts
	Batter   Reading // what of the pot it got
	Carriers []WeighedCarrier
}

// WeighedCarrier is all of a part's carriers of one liquid, as weighed.
type WeighedCarrier struct {
	Liquid string // "water", "glycerin" or an oil's id
	Mass   units.Mass
}

func (w Weighed) clone() Weighed {
	w.Oils, w.Alkalis, w.Parts = slices.Clone(w.Oils), slices.Clone(w.Alkalis), slices.Clone(w.Parts)
	for i := range w.Parts {
		w.Parts[i].Carriers = slices.Clone(w.Parts[i].Carriers)
	}
	return w
}
