package fragrance

import "example.com/lyewright/units"

// Supplied is a fragrance of the maker's own, as the papers that came with it describe
// it: a fragrance oil, a lot of an essential oil, or a blend. Every list may be left
// out. Put it on a [Shelf].
type Supplied struct {
	ID string // what the formula calls it, not empty; a formula takes 1 to 200 bytes; not that of a built-in material

	// Natural: it is a natural material, so that a prohibited substance in it is a
	// trace of nature's, unless its own Origin says otherwise.
	Natural bool
	// Complete: Constituents names everything in it that the IFRA Standards restrict.
	Complete bool

	Certificates []Certificate // at most 20
	Constituents []Constituent // at most 300, each number once
	// ConstituentsListed says so of an empty list: nothing is listed because nothing in it is
	// to be. With Complete it is then a diluent, in which nothing is restricted.
	ConstituentsListed bool

	// Allergens are all that the supplier names, of the old European list and of the new
	// one, as these spell them, such as "Linalool"; at most 300. For the label one that
	// Constituents does not name counts as all of the material.
	Allergens []string
	// AllergensListed says so of an empty list: there are none. Where only the old list was
	// declared, give neither.
	AllergensListed bool

	Behaviour Behaviour // what it does in soap, as its supplier says or its maker saw

	// Blend makes it a blend of other materials, of the shelf or built-in, whose shares
	// add up to 100 %; of the built-in ones a name in everyday use does as well as the ID. A
	// blend has no certificate and no list of its own.
	Blend []Share // at most 50
}

// Certificate is a supplier's word that a fragrance keeps the IFRA Standards up to a
// share of the finished product. Of several the strictest counts.
type Certificate struct {
	Category  string      // of product: "9", the only one that is held
	Limit     units.Ratio // of the finished product, over 0 % to 100 %
	Amendment int         // of the Standards, 1 to 99
}

// Constituent is a substance in a fragrance.
type Constituent struct {
	CAS    CAS         // its number, each once in a list
	Share  units.Range // of the fragrance, by mass, 0 % to 100 %; for a limit and for the label its high end counts
	Origin Origin      // how it got in
}

// Origin says whether a constituent is a natural trace, which a prohibition of what is
// added does not mean. The zero value is [AsMaterial].
type Origin uint8

// How a constituent got in.
const (
	AsMaterial Origin = iota // as Natural says of the material
	FromNature               // a trace of a natural material
	Added                    // added as such
)

// Share is a material's share of a blend.
type Share struct {
	Fragrance string      // its ID, of the shelf or built-in
	Share     units.Ratio // of the blend, by mass: over 0 % to 100 %
}
