package lye

import (
	"slices"
	"sync"

	"example.com/lyewright/internal/molar"
	"example.com/lyewright/internal/names"
	"example.com/lyewright/units"
)

// Acid is an acid that takes up alkali before any oil does. Its dissociation
// constants lie so far below the pH of soap that every proton counts. The zero
// value is none. Get one from [LookUpAcid] or [Acids].
type Acid struct {
	ID      string      // as a formula file calls it: "lactic-acid"
	Name    string      // in English
	Formula string      // its chemical formula, carbon and hydrogen first: "C3H6O3"; that of the crystals with their water
	Protons int         // that a molecule gives off, each taking up a hydroxide
	Molar   units.Ratio // in g/mol, that of the crystals with their water
	Crystal units.Ratio // mass fraction of crystal water in it; not given where there is none

	// Dissolved: it is mostly sold as a solution (common practice: vinegar is about 5 %
	// acetic acid, lactic acid is sold at 80 to 90 %), so that its strength must be said.
	Dissolved bool
}

// Acids lists the acids that are known, sorted by ID. Their molar masses follow
// from the atomic weights of [AtomicWeights].
func Acids() []Acid { return slices.Clone(acids()) }

// acids is the list itself, made once.
var acids = sync.OnceValue(func() []Acid {
	const hydrate = molar.CitricAcid + molar.Water
	one := func(id, name, formula string, mass int64) Acid {
		return Acid{ID: id, Name: name, Formula: formula, Protons: 1, Molar: units.MilligramsPerGram(mass)}
	}
	dissolved := func(a Acid) Acid { a.Dissolved = true; return a }
	return []Acid{
		dissolved(one("acetic-acid", "Acetic acid", "C2H4O2", molar.AceticAcid)),
		{
			ID: "citric-acid-anhydrous", Name: "Citric acid, anhydrous", Formula: "C6H8O7",
			Protons: 3, Molar: units.MilligramsPerGram(molar.CitricAcid),
		},
		{
			ID: "citric-acid-monohydrate", Name: "Citric acid, monohydrate", Formula: "C6H8O7.H2O",
			Protons: 3, Molar: units.MilligramsPerGram(hydrate), Crystal: units.Whole(molar.Water).Over(units.Whole(hydrate)),
		},
		dissolved(one("lactic-acid", "Lactic acid", "C3H6O3", molar.LacticAcid)),
		one("lauric-acid", "Lauric acid", "C12H24O2", molar.LauricAcid),
		one("oleic-acid", "Oleic acid", "C18H34O2", molar.OleicAcid),
		one("palmitic-acid", "Palmitic acid", "C16H32O2", molar.PalmiticAcid),
		one("stearic-acid", "Stearic acid, pure", "C18H36O2", molar.StearicAcid),
	}
})

// LookUpAcid gives an acid by its ID, or by a name in everyday use that means it alone, such
// as "vinegar" of acetic-acid, which then needs its strength: case, accents, hyphens and
// apostrophes do not count. Citric acid may be anhydrous or the monohydrate, 9 % apart, and
// has to be told. The error is [fault.Faults] of kind [fault.ErrUnknown] and says what the
// name may mean, or offers the nearest ID.
func LookUpAcid(name string) (Acid, error) {
	for _, a := range acids() {
		if a.ID == name {
			return a, nil
		}
	}
	return acidNamed(name)
}

// Names lists the names in everyday use that mean the acid alone, such as "vinegar" of acetic-acid: common knowledge,
// which nobody read anywhere.
func (a Acid) Names() []string { return names.Called(names.Acid, a.ID) }

// Neutralises gives the mass of pure hydroxide that the acid takes up, per mass of the
// pure acid with its crystal water: protons × M(hydroxide) / M(acid). It is not given of
// the zero value.
func (a Acid) Neutralises(alkali Alkali) units.Ratio {
	return units.Whole(int64(a.Protons) * alkali.milligrams()).Over(units.Whole(1000).Times(a.Molar))
}

// WaterFormed gives the mass of water that the acid leaves as it is neutralised, per mass
// of the pure acid with its crystal water: a mole for each proton, and the crystal water.
// It is not given of the zero value.
func (a Acid) WaterFormed() units.Ratio {
	formed := units.Whole(int64(a.Protons) * molar.Water).Over(units.Whole(1000).Times(a.Molar))
	return formed.Add(a.Crystal.Or(units.Whole(0)))
}
