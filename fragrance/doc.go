// Package fragrance knows what scents a soap: essential oils and extracts by their
// published compositions, a maker's own fragrance oils by their suppliers'
// certificates and lists, and blends of these. It tells how much of them a bar may
// hold, what binds, what may have to stand on the label, and what it will do to
// colour and batter.
//
// A [Material] is one of them: [LookUp] finds a built-in one, a [Shelf] holds the
// maker's own. [Judge] takes what goes into a part of a batch as [Dose]s and gives a
// [Verdict]. A [Rule] is one IFRA Standard or one entry of European law.
//
// Everything holds for category 9 of the IFRA Standards, products for body and hands
// that are mostly rinsed off, as a bar of soap is; figures of other categories are not
// held. The furocoumarin rules on skin in sunlight do not bind what is rinsed off: the
// Standards of bergamot, lemon, lime and their like have no restriction in this
// category, while tagetes and methyl N-methylanthranilate have one, which counts.
//
// The base of every percentage is the bar when all water is gone, the least that it
// can come to weigh: the Standards speak of the finished product, and a bar goes on
// drying. A verdict is not a safety assessment. The supplier's certificate, local law
// and licensed practice come first.
package fragrance
