// Package lye holds what is known of the lye itself, before any oil meets it.
//
//   - How much hydroxide is in the bottle: a [Titration], a supplier's
//     [Certificate], a published [Grade], or a titrated bottle that has [Aged].
//     Each gives the [units.Range] that a formula takes as purity.
//   - What a [Solution] is like: its density and volume, the temperature at which
//     it crystallises, the one at which it boils; and its strength from a
//     [Hydrometer].
//   - What happens at the bench: how hot a [Mixing] gets if no heat is lost, how
//     long it takes [Cooling], what temperature oils and lye have once joined
//     ([Joining]), and how a [Stock] lye is made and thinned.
//
// Purity and strength are mass fractions of hydroxide: purity in what is weighed
// dry, strength in a solution. Carbonate, which an assay counts, is neither.
//
// Physics is an estimate and is reckoned in float64; what becomes a mass is exact
// and rounded once. Errors are [fault.Faults], all that is wrong together. All
// types are values, safe for concurrent use.
//
// Alkali burns skin and can blind. The labels and safety data sheets of what was
// bought, and local rules, come before anything this package works out.
package lye
