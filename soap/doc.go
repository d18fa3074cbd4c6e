// Package soap works out batches of cold-process bar soap.
//
// A [Formula] says what the maker wants: oils, one or two alkalis, a superfat,
// a rule for the water, a size, and the parts that the batter is divided into,
// each with its colourants, fragrances, additives and their carriers. Build one
// from typed values or read one with [ReadFormula]. [Formula.Batch] turns it
// into a [Batch]: what to weigh, in grams to the nanogram and as the scales can
// show it, and what it will be.
//
// An [Oil] comes from the built-in table ([LookUpOil], [Oils]) or is the
// caller's own ([OwnOil]). It keeps the range that published standards print,
// and the value that it is planned at; every figure carries its source.
//
// The superfat is an [Outlook]: planned, likely and worst, for the batch and for
// each part, since a carrier of oil or one held back moves it. A [Finding] is
// something about a valid formula that its maker should know; a [Danger] is one
// that could hurt a person. What is wrong with a formula comes as [Faults], all
// together.
//
// # Chemistry
//
// The alkali an oil demands is its saponification value, mg of KOH per g. Of
// sodium hydroxide the same job takes 39.997/56.105 as much (molar masses from
// the IUPAC abridged atomic weights of 2021). What is weighed is the demand less
// the superfat, over the purity: the mass fraction of hydroxide in the bottle.
//
// Alkali burns skin and can blind. The labels and safety data sheets of what was
// bought, and local rules, come before anything this package works out.
package soap
