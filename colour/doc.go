// Package colour knows colourants: pigments, clays, pearls and plant colours by their
// names. Of each it says how dense it is, what the law and alkali make of it, what it
// disperses in, and how much is usual; of every figure, where it stands and how it was
// obtained. It stands alone: it asks for no formula.
//
// A [Colourant] is one of them: [LookUp] finds a built-in one by its id, [OfCI] by its
// Colour Index number, [Colourants] lists all. A maker's own are described as [Supplied]
// and put on a [Shelf]. What is asked of a colourant:
//
//   - [Colourant.InAlkali]: its [Fastness] in caustic batter, a [Stability] and words.
//   - [Colourant.Under]: its [Status] under a [Law], the [Standing] and the clause.
//   - [Colourant.Disperses]: its [Dispersion], in which [Medium] it goes.
//   - [Colourant.Usual]: which loads are [Usual].
//   - [Colourant.Density], for the room that it takes.
//
// A [Load] is how much of one goes into a part, in percent of its oils, its batter or its
// dry mass: the [Base]. [Amounts] turn a load into a mass, and one load into another. A
// [Price] says what a mass costs.
//
// May ultramarine go into a part of 500 g of oils, and how much is usual?
//
//	blue, err := colour.LookUp("ultramarine-blue")
//	if err != nil {
//		return err // offers the nearest ids
//	}
//	fmt.Println(blue.InAlkali().Stability, "in alkali;", blue.Under(colour.EU).Standing) // usable, permitted
//	part := colour.Amounts{Oils: units.Grams(500)}
//	if usual, known := blue.Usual(false); known {
//		fmt.Println(part.Mass(usual.Low), "to", part.Mass(usual.High)) // 1 g to 7.5 g
//	}
//
// What a mixture will look like is the business of package tint.
//
// # Sources
//
// The European standings are those of Annex IV to Regulation (EC) No 1223/2009, list of 26
// May 2026, read; the American ones of 21 CFR 73 and 74, for soap that is sold as a
// cosmetic, in part recalled. Densities were read in a table of inorganic constants and in
// Gettens and Stout, Painting Materials (1942); two are recalled. Most of what is said of alkali, and all of dispersing, is recalled; usual
// loads are common practice without a source. Every figure says which it is. [DataEdition]
// dates the table.
//
// # Cautions
//
// What is not held is unknown, and never permitted. A law's list speaks of the colour as
// it prescribes its purity: ask the supplier for that. A usual load is a habit and no
// limit. Aluminium powder, and glitter with a layer of it, gives off hydrogen in lye and
// in fresh batter. The supplier's papers, local law and licensed practice come first.
//
// All types are values; what is built in is read when it is asked for, and safe for
// concurrent use.
package colour
