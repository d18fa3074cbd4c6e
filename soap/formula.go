package soap

import (
	"slices"

	"example.com/lyewright/colour"
	"example.com/lyewright/colour/tint"
	"example.com/lyewright/fragrance"
	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

// Formula is what the maker wants, field for field as in a formula file. It is
// plain data: build one from typed values, or read one with [ReadFormula].
// [Formula.Check] says what is wrong with it, [Formula.Batch] works it out.
//
// The zero value is refused: name, oils, alkalis, superfat, water and size must be
// given. All else may be left out. A name here and below is 1 to 200 bytes of UTF-8 in
// one line, without control characters and bidirectional controls.
//
// A Note, here and below, is a maker's remark on a line: at most 500 bytes, with the
// characters of a name; empty: none. It is printed where the line stands and is part of no
// arithmetic.
type Formula struct {
	Name     string
	Note     string
	Oils     []OilLine    // 1 to 100, each oil once
	Alkalis  []AlkaliLine // one or two, each hydroxide once
	Superfat Superfat     // of the oils' demand; the zero value is missing, not 0 %
	Water    Water        // how much is asked for
	Size     Size         // how much is made; the zero value where the oil lines have masses
	Parts    []Part       // at most 50, each name once; none means one part named "whole"

	Markets   []Market             // where the soap is sold; none: anywhere
	Law       Law                  // whose limits on fragrance count; the zero value: as Markets says
	Materials []fragrance.Supplied // the maker's own fragrances, at most 100

	Gel      Gel               // whether it goes through the gel phase
	Pigments []colour.Supplied // the maker's own colourants, at most 100
	Swatches *tint.Swatches    // what colours are predicted from; nil: none are
	// Calibration is that of Swatches, made once for many batches: see [Formula.Calibrate]. The
	// zero value: each batch, and each of its tints, makes its own.
	Calibration tint.Calibration

	Embeds   []Embed   // at most 50
	Toppings []Topping // at most 50

	Acids       []AcidLine   // at most 20, each once: what takes up alkali before the oils do
	Temperature Temperatures // as far as they are known
	Weighed     Weighed      // what was really weighed; the zero value: nothing yet

	// Scale is the division of the scale that oils are weighed on, Small that
	// of the scale for everything else (alkali, water, colourants, fragrances,
	// carriers, additives): 1 mg to 100 g, 0.1 g where zero.
	Scale, Small units.Mass
}

// OilLine is one oil of a formula. Either every line has a share of all the
// oils, and they add up to 100 % (one line may take the rest), or every line
// has a mass.
type OilLine struct {
	Oil   Oil         // the zero value is refused
	Share units.Ratio // of all oils, over 0 % to 100 %
	Rest  bool        // the share is what the others leave
	Mass  units.Mass  // over 0 g, to a tonne

	// Measured says that the saponification value is this lot's own, titrated: a range
	// that lies outside what is published is then no danger. Only of an oil with a value
	// of the caller's own; a single figure leaves open how well it was measured, and
	// counts as if it were not.
	Measured bool
	Note     string // as of a [Formula]
}

// Superfat is the share of the oils' saponification demand that is left
// without alkali: exactly one of its fields. The zero value is missing, which
// [Formula.Check] refuses.
type Superfat struct {
	// Planned at typical values, 0 % or more and below 100 %.
	Planned units.Ratio
	// AtLeast asks for the smallest planned value, rounded up to 0.000001 %,
	// at which neither the batch nor any part lies below it in the worst case:
	// 0 % or more and below 100 %. Every oil then needs a range of saponification
	// values. [Batch.Worked] says which plan it came to.
	AtLeast units.Ratio
}

// Size says how much is made: exactly one of Oils, Batter and Vessels, or none
// where the oil lines have masses. Vessels beside a known mass ask backwards: how
// far it goes with them. The zero value is allowed where every oil line has a mass.
type Size struct {
	Oils    units.Mass // mass of all oils, over 0 g, to a tonne
	Batter  units.Mass // mass of what is in the pot, over 0 g, to a tonne
	Vessels []Vessel   // at most 100, each name once

	// Pieces asks for so many pieces in all: the counts of all vessels are scaled to
	// it, each up to the next whole one. 0: as they are counted, else to 10,000. Only
	// with Vessels alone.
	Pieces int
}

// SizeKnown reports whether the formula itself says how much is made, by its oils or
// its batter: vessels then ask how far it goes.
func (f *Formula) SizeKnown() bool {
	return f.Size.Oils.Sign() != 0 || f.Size.Batter.Sign() != 0 || len(f.Oils) > 0 && f.Oils[0].Mass.Sign() != 0
}

// fromVessels reports whether the vessels say how much is made.
func (f *Formula) fromVessels() bool { return len(f.Size.Vessels) > 0 && !f.SizeKnown() }

// Part is a part of the batter with what is added to it alone.
type Part struct {
	Name  string      // each once in a formula
	Note  string      // as of a [Formula]
	Share units.Ratio // of the batter, over 0 % to 100 %. A part whose vessels say how much has none
	Rest  bool        // the share is what the other parts leave

	Work    mould.Work  // how it gets into its vessels
	Reserve units.Ratio // of what is filled, 0 % to 100 %; not given: see [mould.Work.Reserve]
	Loss    units.Mass  // what stays in pot and bag, over 0 g, to a tonne; 0 g: none
	Look    Look        // what it is meant to look like

	// What is added, each name once in its list; 50 in all at most, with Match.
	Colourants, Fragrances, Additives []Addition

	Target Target  // the colour that it is meant to have
	Match  []Match // at most 6 colourants whose loads are looked for, beside Colourants
}

// ReserveOrUsual is what is made of the part beyond what is filled, as a share of
// that: its Reserve, or what is usual for its Work.
func (p Part) ReserveOrUsual() units.Ratio { return p.Reserve.Or(p.Work.Reserve()) }

// Addition is a colourant, a fragrance or an additive of a part. The zero value is
// refused: name and load must be given.
type Addition struct {
	// Name is the id of a built-in colourant or fragrance, or of one of the formula's own,
	// or a name in everyday use that means one of these alone. A fragrance or colourant of
	// any other name is refused, unless it is Unlisted; an additive is weighed and not judged, and a
	// finding says so.
	Name    string
	Load    Load    // must be given
	Carrier Carrier // the zero value: none

	// Margin is how far below the most that the rules leave room for a fragrance stays
	// whose Load is Max: a share of that, 0 % or more and below 100 %; not given: none.
	Margin units.Ratio

	// Glitter and Foil say what a glitter among the additives is.
	Glitter Glitter
	Foil    Foil

	Note string // as of a [Formula]

	// Unlisted says that a fragrance or a colourant is of the maker's own, and nothing is
	// known of it: it is weighed and not judged, under a warning. Of an additive that bears the
	// name of an oil it says that it is none, such as a puree.
	Unlisted bool

	asked string // the name as written, once Name is the id that it means

	match int // 1 for the first of a part's Match, once its load is found; else 0
}

// Load is how much of an addition goes into a part: exactly one of its fields. The zero
// value is missing, which [Formula.Check] refuses.
type Load struct {
	OfOils   units.Ratio // of the part's share of all the formula's oils, over 0 % to 100 %
	OfBatter units.Ratio // of the part's share of what is in the pot, over 0 % to 100 %
	Mass     units.Mass  // over 0 g, to a tonne
	// Max asks for the most of a fragrance that the rules leave room for, beside all else
	// in its part; of one fragrance of a part at most.
	Max bool
}

// Liquid is what an addition is dispersed in. The zero value is none.
type Liquid uint8

// What a carrier may be.
const (
	NoLiquid   Liquid = iota // there is no carrier
	InWater                  // water: out of the lye water, unless [Extra] is said
	InGlycerin               // glycerin: on top of the formula
	InOil                    // the Oil of a [Carrier]: on top, unless [FromFormula] is said
)

// From says where a carrier comes from. The zero value is Usual.
type From uint8

// Where a carrier comes from.
const (
	// Usual: water comes from the formula, everything else is extra.
	Usual From = iota
	// FromFormula takes the carrier out of what the formula already has: water
	// out of the lye water, oil out of that oil's own line. The alkali is still
	// worked out on all the oils.
	FromFormula
	// Extra adds the carrier on top of the formula.
	Extra
)

// String gives the word a formula file uses: "formula", "extra"; empty for
// Usual.
func (f From) String() string {
	switch f {
	case FromFormula:
		return "formula"
	case Extra:
		return "extra"
	default:
		return ""
	}
}

// Carrier is the liquid an addition is dispersed in before it goes into the
// part. The zero value is none.
type Carrier struct {
	In    Liquid      // what it is
	Oil   Oil         // of InOil. An oil of the formula takes the value it has there
	Ratio units.Ratio // parts of carrier to one of the addition, by mass: over 0, to 1000
	From  From        // where it comes from; glycerin is always on top
	// Paste: addition and carrier were mixed ahead, and are weighed as one; not of a fragrance.
	Paste bool
}

// fromFormula reports whether the carrier is taken out of the formula.
func (c Carrier) fromFormula() bool {
	return c.From == FromFormula || c.From == Usual && c.In == InWater
}

// liquid is the carrier's name as a formula file writes it.
func (c Carrier) liquid() string {
	switch c.In {
	case InWater:
		return "water"
	case InGlycerin:
		return "glycerin"
	case InOil:
		return c.Oil.ID()
	default:
		return ""
	}
}

// AdditionKind says what an addition is. The zero value is Colourant.
type AdditionKind uint8

// The kinds of addition, each a list of a [Part].
const (
	Colourant AdditionKind = iota // of Part.Colourants, or of Part.Match once its load is found
	Fragrance                     // of Part.Fragrances: weighed downwards, held to its caps
	Additive                      // of Part.Additives: weighed and, but for glitter, not judged
)

// String gives "colourant", "fragrance" or "additive".
func (k AdditionKind) String() string {
	switch k {
	case Fragrance:
		return "fragrance"
	case Additive:
		return "additive"
	default:
		return "colourant"
	}
}

// list is the key of the kind's list in a formula file.
func (k AdditionKind) list() string {
	switch k {
	case Fragrance:
		return "fragrances"
	case Additive:
		return "additives"
	default:
		return "colourants"
	}
}

// additions lists the additions of a kind.
func (p Part) additions(kind AdditionKind) []Addition {
	switch kind {
	case Fragrance:
		return p.Fragrances
	case Additive:
		return p.Additives
	default:
		return p.Colourants
	}
}

// clone copies the formula with its lists, so that whoever holds one may change
// it without a change to the other.
func (f Formula) clone() Formula {
	f.Oils, f.Alkalis, f.Parts = slices.Clone(f.Oils), slices.Clone(f.Alkalis), slices.Clone(f.Parts)
	f.Acids, f.Water.Liquids = slices.Clone(f.Acids), slices.Clone(f.Water.Liquids)
	f.Markets, f.Materials = slices.Clone(f.Markets), cloneMaterials(f.Materials)
	f.Pigments, f.Swatches = clonePigments(f.Pigments), cloneSwatches(f.Swatches)
	f.Embeds, f.Toppings = slices.Clone(f.Embeds), slices.Clone(f.Toppings)
	f.Size.Vessels = slices.Clone(f.Size.Vessels)
	for i := range f.Size.Vessels {
		f.Size.Vessels[i].Layers = slices.Clone(f.Size.Vessels[i].Layers)
	}
	f.Weighed = f.Weighed.clone()
	for i := range f.Parts {
		p := &f.Parts[i]
		p.Colourants, p.Fragrances, p.Additives = slices.Clone(p.Colourants), slices.Clone(p.Fragrances), slices.Clone(p.Additives)
		p.Target, p.Match = p.Target.clone(), slices.Clone(p.Match)
	}
	return f
}

// ownName is the name of the one part of a formula without parts.
const ownName = "whole"

// parts lists the parts with their shares, the rest worked out.
func (f Formula) parts() []Part {
	if len(f.Parts) == 0 {
		return []Part{{Name: ownName, Share: units.Whole(1)}}
	}
	parts := append([]Part(nil), f.Parts...)
	shares := make([]units.Ratio, len(parts))
	rest := -1
	for i, p := range parts {
		shares[i] = p.Share
		if p.Rest {
			rest = i
		}
	}
	if rest >= 0 {
		parts[rest].Share = remainder(shares, rest)
	}
	return parts
}

// PartNamed gives the part of a name; the zero Part where the formula names no such.
func (f Formula) PartNamed(name string) Part {
	if i := partOf(f.Parts, name); i >= 0 {
		return f.Parts[i]
	}
	return Part{}
}

// VesselNamed gives the vessel of a name; the zero Vessel where the formula names no such.
func (f Formula) VesselNamed(name string) Vessel {
	if i := vesselOf(f.Size.Vessels, name); i >= 0 {
		return f.Size.Vessels[i]
	}
	return Vessel{}
}

// oilShares lists the shares of the oil lines, the rest worked out.
func (f Formula) oilShares() []units.Ratio {
	shares := make([]units.Ratio, len(f.Oils))
	rest := -1
	for i, line := range f.Oils {
		shares[i] = line.Share
		if line.Rest {
			rest = i
		}
	}
	if rest >= 0 {
		shares[rest] = remainder(shares, rest)
	}
	return shares
}

// remainder gives what all shares but one leave of a whole.
func remainder(shares []units.Ratio, but int) units.Ratio {
	left := units.Whole(1)
	for i, share := range shares {
		if i != but {
			left = left.Sub(share)
		}
	}
	return left
}

// Scales gives the divisions of the two scales, 0.1 g where they are not given: that of
// the oils, and that of everything else.
func (f Formula) Scales() (oils, small units.Mass) {
	oils, small = f.Scale, f.Small
	if oils.Sign() == 0 {
		oils = units.Milligrams(100)
	}
	if small.Sign() == 0 {
		small = units.Milligrams(100)
	}
	return oils, small
}

// lines counts the lines of a formula that are weighed or poured.
func (f *Formula) lines() int {
	n := len(f.Oils) + len(f.Acids) + len(f.Water.Liquids) + len(f.Size.Vessels)
	for i := range f.Parts {
		p := &f.Parts[i]
		n += 1 + len(p.Colourants) + len(p.Fragrances) + len(p.Additives) + len(p.Match)
	}
	return n
}
