package soap

import (
	"slices"

	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

// Vessel is a line of moulds or piped tops that a batch is to fill. Its shape is
// that of one cavity; a trial beside it beats it.
type Vessel struct {
	Name   string
	Part   string  // the part that fills it; may be empty in a formula without parts
	Layers []Layer // or the parts that share it by volume, the lowest first

	Count  int    // cavities that are wanted, 1 to 10,000; of a top 0
	Cuts   int    // pieces cut from one cavity, 1 to 10,000; 0: one
	Moulds int    // how many cavities the shelf has, 1 to 10,000; 0: enough
	On     string // a top: the vessel whose every piece it stands on

	Shape mould.Shape // [mould.Box], [mould.Cone] and so on; nil where there is a trial
	Trial mould.Trial // what so many cavities took
}

// Layer is a part's share of a vessel.
type Layer struct {
	Part  string
	Share units.Ratio // of the vessel's volume, over 0 % to 100 %
	Rest  bool        // the share is what the other layers leave
}

// cuts gives the pieces that one cavity makes.
func (v *Vessel) cuts() int { return max(1, v.Cuts) }

// Embed is something cast beforehand that goes into or onto every piece of a
// vessel.
type Embed struct {
	Name   string
	Vessel string
	Each   int          // in a piece, 1 to 10,000; 0: one
	Spares int          // to cast besides, 0 to 10,000
	Mass   units.Mass   // of one, or
	Volume units.Volume // of one: over 0 mL, to 1000 L
	Sunk   bool         // it displaces batter
}

func (e *Embed) each() int { return max(1, e.Each) }

// Topping is strewn on every piece of a vessel.
type Topping struct {
	Name    string
	Vessel  string
	Mass    units.Mass // on one piece, over 0 g, to a tonne
	Glitter Glitter
	Foil    Foil
}

// Glitter says what a glitter is made of. The zero value is NoGlitter.
type Glitter uint8

const (
	NoGlitter         Glitter = iota
	PolymerGlitter            // plastic, such as polyester film
	MineralGlitter            // mica, glass, metal
	DegradableGlitter         // with a report that it passed a test for degradability
)

// Foil says whether a glitter has a layer of aluminium. The zero value is
// FoilUnknown.
type Foil uint8

const (
	FoilUnknown Foil = iota
	WithAluminium
	WithoutAluminium
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

// seated says what the vessels of a formula come to before anything is known of
// its batter: cavities and pieces of each, in one batch.
type seated struct {
	vessels []Vessel
	layers  [][]seat
	each    []int // cavities in one batch
	wanted  []int // cavities in all
	last    []int // cavities in the last batch
	batches int
	pieces  int // in all, tops apart
}

// seat is a part's share of a vessel.
type seat struct {
	part  int
	share units.Ratio
}

// partOf finds a part by its name, or -1.
func partOf(parts []Part, name string) int {
	return slices.IndexFunc(parts, func(p Part) bool { return p.Name == name })
}

// vesselOf finds a vessel by its name, or -1.
func vesselOf(vessels []Vessel, name string) int {
	return slices.IndexFunc(vessels, func(v Vessel) bool { return v.Name == name })
}

// seat gives every vessel its cavities and its parts.
func (f *Formula) seat(parts []Part) seated {
	vessels := f.Size.Vessels
	s := seated{vessels: vessels, layers: make([][]seat, len(vessels)), wanted: make([]int, len(vessels))}
	for i := range vessels {
		v := &vessels[i]
		s.wanted[i] = v.Count
		if v.On == "" {
			s.pieces += v.Count * v.cuts()
		}
		s.layers[i] = v.seats(parts)
	}
	if f.Size.Pieces > 0 {
		s.wanted = mould.Scaled(s.wanted, s.pieces, f.Size.Pieces)
		s.pieces = 0
		for i := range vessels {
			s.pieces += s.wanted[i] * vessels[i].cuts()
		}
	}
	shelves := make([]mould.Shelf, len(vessels))
	for i := range vessels {
		shelves[i] = mould.Shelf{Count: s.wanted[i], Moulds: vessels[i].Moulds}
	}
	s.batches, s.each, s.last = mould.Batches(shelves)
	if f.known() { // what there is goes into as many as it fills
		s.each = slices.Clone(s.wanted)
	}
	for i := range vessels {
		if below := vesselOf(vessels, vessels[i].On); vessels[i].On != "" {
			cuts := vessels[below].cuts()
			s.wanted[i], s.each[i], s.last[i] = s.wanted[below]*cuts, s.each[below]*cuts, s.last[below]*cuts
		}
	}
	return s
}

// seats lists the parts that fill a vessel with their shares of it.
func (v *Vessel) seats(parts []Part) []seat {
	if len(v.Layers) == 0 {
		return []seat{{part: max(0, partOf(parts, v.Part)), share: units.Whole(1)}}
	}
	seats, shares, rest := make([]seat, len(v.Layers)), make([]units.Ratio, len(v.Layers)), -1
	for i, layer := range v.Layers {
		shares[i] = layer.Share
		if layer.Rest {
			rest = i
		}
	}
	if rest >= 0 {
		shares[rest] = remainder(shares, rest)
	}
	for i, layer := range v.Layers {
		seats[i] = seat{part: partOf(parts, layer.Part), share: shares[i]}
	}
	return seats
}
