// Package sheet writes the batch sheet that a maker takes to the bench, as
// plain text, and the working behind it for those who teach.
//
// [Write] prints what is unsafe or unwise first, then every mass to weigh with
// a box to tick, then how sure the superfat is, with cautions beside their step
// and sources at the foot. [WriteWorking] spells out every formula with the
// numbers put into it. Both only read a [soap.Batch]: the masses are those of
// the batch, and a total is the sum of the lines printed above it.
package sheet
