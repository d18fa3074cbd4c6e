// Package colour knows colourants: pigments, clays, pearls and plant colours by their
// names. Of each it says how dense it is, what the law and alkali make of it, what it
// disperses in, and how much is usual; of every figure, where it stands and how it was
// obtained.
//
// [LookUp] finds a built-in [Colourant]; a maker's own go on a [Shelf]. A [Load] is how
// much of one, in percent of the oils, the batter or the dry part. What a mixture will
// look like is the business of package tint.
package colour
