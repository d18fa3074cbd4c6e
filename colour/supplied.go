package colour

import "example.com/lyewright/units"

// Supplied is a colourant as its maker knows it: one of their own, or a built-in one of
// which they say more. Everything but the ID may be left out. Put it on a [Shelf].
type Supplied struct {
	// ID is what the formula calls it, not empty; a formula takes 1 to 200 bytes. Under
	// the id of a built-in one what is given here stands in place of what is built in,
	// and the rest stays.
	ID   string
	Name string   // what people call it; empty: the built-in name, or the ID
	CI   []string // Colour Index numbers, at most 20: what it is made of

	Density     units.Density // of the solid, at room temperature; not given: that built in
	DispersesIn Medium        // in these and nothing else; 0 where it is not known
	Nano        bool          // of nano grade: it hardly whitens
	Usual       Usual         // its loads, 0 % to 100 %; both ends of one base, oils or batter
	Price       Price         // not given where it does not matter
}
