package soap

import (
	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

// Vessel is a line of moulds or piped tops that a batch is to fill. Its shape is
// that of one cavity; a trial beside it beats it. The zero value is refused: it needs a
// name, a part or layers, a count or a vessel that it stands on, and a shape or a trial.
type Vessel struct {
	Name   string  // each once
	Note   string  // as of a [Formula]
	Part   string  // the part that fills it; may be empty in a formula without parts
	Layers []Layer // or the parts that share it by volume, the lowest first

	Count  int    // cavities that are wanted, 1 to 10,000
	Cuts   int    // pieces cut from one cavity, 1 to 10,000; 0: one
	Moulds int    // how many cavities the shelf has, 1 to 10,000; 0: enough
	On     string // a top: the vessel whose every piece it stands on. It has no count, cuts or moulds of its own

	Shape mould.Shape // [mould.Box], [mould.Cone] and so on; may be nil where there is a trial
	Trial mould.Trial // what so many cavities took; the zero value: there was none
}

// Layer is a part's share of a vessel. Those of a vessel add up to 100 %.
type Layer struct {
	Part  string      // its name
	Share units.Ratio // of the vessel's volume, over 0 % to 100 %
	Rest  bool        // the share is what the other layers leave
}

// cuts gives the pieces that one cavity makes.
func (v *Vessel) cuts() int { return max(1, v.Cuts) }

// Embed is something cast beforehand that goes into or onto every piece of a
// vessel. How much it is: exactly one of Mass and Volume. The other is reckoned at the
// batter's own density.
type Embed struct {
	Name   string
	Vessel string       // the vessel whose pieces get it
	Each   int          // in a piece, 1 to 10,000; 0: one
	Spares int          // to cast besides, 0 to 10,000
	Mass   units.Mass   // of one: over 0 g, to a tonne
	Volume units.Volume // of one: over 0 mL, to 1000 L
	Sunk   bool         // it displaces batter
}

func (e *Embed) each() int { return max(1, e.Each) }

// Topping is strewn on every piece of a vessel.
type Topping struct {
	Name    string
	Vessel  string     // the vessel on whose pieces it goes
	Mass    units.Mass // on one piece, over 0 g, to a tonne
	Glitter Glitter    // what a glitter is made of; of anything else NoGlitter
	Foil    Foil       // of a glitter alone
}

// Glitter says what a glitter is made of. The zero value is NoGlitter.
type Glitter uint8

// What glitter is made of.
const (
	NoGlitter         Glitter = iota // it is no glitter
	PolymerGlitter                   // plastic, such as polyester film
	MineralGlitter                   // mica, glass, metal
	DegradableGlitter                // with a report that it passed a test for degradability
)

// Foil says whether a glitter has a layer of aluminium, which fresh batter dissolves: it
// gives off hydrogen. The zero value is FoilUnknown.
type Foil uint8

// What is known of a glitter's layer of aluminium.
const (
	FoilUnknown      Foil = iota // warned of, but for a mineral glitter
	WithAluminium                // warned of
	WithoutAluminium             // its maker says that there is none
)

// glitters and foils are the words of a formula file.
func glitters() []string { return []string{"polymer", "mineral", "degradable-tested"} }

// String gives the word a formula file uses: "polymer", "mineral",
// "degradable-tested"; empty for NoGlitter.
func (g Glitter) String() string {
	if g == NoGlitter || g > DegradableGlitter {
		return ""
	}
	return glitters()[g-1]
}
