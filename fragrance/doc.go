// Package fragrance knows what scents a soap: essential oils and extracts by their
// published compositions, a maker's own fragrance oils by their suppliers' certificates and
// lists, and blends of these. It tells how much of them a bar may hold, what binds, what may
// have to stand on the label, and what it will do to colour and batter. It stands alone: it
// asks for no formula.
//
// The types, in the order in which a reader needs them:
//
//   - A [Material] is one that scents: [LookUp] finds a built-in one, [Materials] lists them.
//     Its [Figure] list is what is published of it, each with its [CAS] number.
//   - A maker's own are described as [Supplied], by each [Certificate] and [Constituent], or
//     as a blend with the [Share] of each of its parts, and put on a [Shelf].
//   - [Material.Caps] gives each [Cap] of a material alone in the bar, the smallest first:
//     what binds.
//   - [Judge] takes each [Dose] that goes into a part of a batch, under a [Law], and gives a
//     [Verdict]: each [Use] of a limit, what is [Reckoned] of each material, and every
//     [Allergen] above its threshold.
//   - [Material.Unjudged] says what is left open, and [Why]; [Material.Colours] what may
//     colour the soap; [Material.Behaviour] what somebody saw it do.
//   - A [Rule] is one IFRA Standard or one entry of European law; its [Standing] says what it
//     asks.
//
// How much clove bud oil may a bar hold, and what binds it?
//
//	clove, err := fragrance.LookUp("clove-bud")
//	if err != nil {
//		return err // offers the nearest ids
//	}
//	for _, c := range clove.Caps(fragrance.IFRAAndEU) {
//		fmt.Println(c.Most.PercentText(2), "% of the dry bar:", c.Rule.Name()) // first 1 %: Methyl Eugenol
//	}
//	for _, u := range clove.Unjudged(fragrance.IFRAAndEU) {
//		fmt.Println("not judged:", u.Why)
//	}
//
// # What is judged
//
// Everything holds for category 9 of the IFRA Standards, products for body and hands that
// are mostly rinsed off, as a bar of soap is; figures of other categories are not held. The
// furocoumarin rules on skin in sunlight do not bind what is rinsed off: the Standards of
// bergamot, lemon, lime and their like have no restriction in this category, while tagetes
// and methyl N-methylanthranilate have one, which counts.
//
// The base of every percentage of a bar is the bar when all water is gone, the least that it
// can come to weigh: the Standards speak of the finished product, and a bar goes on drying.
// A share of a constituent is of its material, by mass, and its high end counts. Whether a
// limit is kept is decided exactly where it is close. A Schiff base counts as the aldehyde
// that it can release: for the Standards as their Annex says, for European limits by our
// reading, the stricter one. For the label it does not.
//
// # Sources
//
// The limits are those of the IFRA Standards, 51st Amendment (30 June 2023; read), with the
// Annex on contributions from other sources, and of Regulation (EC) 1223/2009 with Regulation
// (EU) 2023/1545, of which Annex II and Annex III are not held in full and single figures are
// recalled. Compositions are those of the IFRA Annex, of ISO standards, pharmacopoeias and
// handbooks, in part recalled. Each [Rule], [Figure] and [Cap] carries its source; what a
// fragrance does to colour is recalled or common practice. [Edition] names the publications,
// [DataEdition] dates the tables.
//
// # Cautions
//
// What is neither listed nor certified is unknown, never nothing: that no limit is passed
// clears nothing that [Material.Unjudged] names. A verdict is not a safety assessment. The
// supplier's certificate, local law and licensed practice come first. Neat fragrances may
// irritate skin and eyes: their safety data sheets say what to wear.
//
// Readers give [fault.Fault] or [fault.Faults]. All types are values, safe for concurrent use.
package fragrance
