// Package sheet writes what a maker takes to the bench, as plain text: the sheet of a
// batch, its working, its fragrance and its colour, and what is known of oils, fragrances,
// colourants and lyes.
//
//	batch, err := formula.Batch() // of package soap
//	if err != nil {
//		return err
//	}
//	return sheet.Write(w, batch, units.Gram)
//
// # Of a batch
//
// [Write] prints what is unsafe or unwise first, then every mass to weigh with a box to
// tick, then how sure the superfat is, with cautions beside their step and sources at the
// foot. [WriteWorking] spells out every formula with the numbers put into it, for those who
// teach; [Working] gives the same as [Step] values. [WriteCaps] prints how much fragrance
// the batch may hold, [WriteTint] what colour its parts will have; [WriteTintPage] writes
// that as a page of HTML with the colours to be seen.
//
// All of them only read a [soap.Batch]: the masses are those of the batch, and a total is
// the sum of the lines printed above it.
//
// # Of what is known
//
// [WriteOils], [WriteFragrances] and [WriteColourants] print tables, [WriteOil],
// [WriteFragrance] and [WriteColourant] all that is known of one, with its sources.
// [WriteTitration], [WriteHeat], [WriteSolution] and [WriteStock] print what package
// soap/lye worked out, with the cautions of whoever mixes a lye.
//
// # Form
//
// A text has at most 78 columns, in English, the same bytes under any locale. Sources stand
// in it as short keys that are listed at its foot; what was recalled or is common practice
// says so there. Alkali and fragrances are printed rounded down, in any unit. In HTML,
// names are escaped. The wording may change from one version to the next: programs read
// [soap.Batch.MarshalJSON] and its like instead.
//
// Show a page whole: the dangers stand at its head, and the cautions beside their step.
// The labels and safety data sheets of what was bought, and local rules, come before
// anything printed here.
package sheet
