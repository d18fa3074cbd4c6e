// Package units holds the quantities that soap making is worked out in: a
// mass, a ratio, a range, and an exact sum of masses times ratios.
//
// A [Mass] is a whole number of nanograms. A [Ratio] is an exact decimal: a
// share, a percentage, a saponification value; its zero value means "not
// given", which is not 0 %. A [Range] keeps a published value as the range it
// is. A [Sum] adds masses times ratios without rounding any product. Every
// rounding is named ([Nearest], [Down], [Up]) and happens once.
//
//	oils, _ := units.ParseMass("28.2 oz")
//	share, _ := units.ParsePercent("45 %")
//	olive := oils.Times(share, units.Nearest)
//
// All types are values: immutable, safe for concurrent use, and cheap to copy.
// No function panics on data; those whose names begin with Must are for text
// written into a program.
package units
