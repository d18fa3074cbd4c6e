// Package soap works out batches of cold-process bar soap: what to weigh so that the
// moulds are full, how sure the superfat is, how much fragrance a bar may hold, what
// colour its parts will be, what mends a batch that was weighed wrong, and what is
// unsafe, unwise or unknown about a plan.
//
// One value goes in, one comes out, and everything else is a view of it:
//
//	var lines []string // for the bench
//	formula, err := soap.ReadFormula(file)
//	if err != nil {
//		return err // soap.Faults: all that is wrong, together
//	}
//	batch, err := formula.Batch()
//	if err != nil {
//		return err
//	}
//	for _, f := range batch.Findings { // the most severe first
//		lines = append(lines, f.Severity.String()+": "+f.Message())
//	}
//	for _, o := range batch.Oils {
//		lines = append(lines, o.Weigh.String()+" of "+o.Oil.Name())
//	}
//	for _, a := range batch.Alkalis {
//		w, _ := a.ToWeigh() // the dry alkali, or the stock lye that holds it
//		lines = append(lines, w.Weigh.String()+" of "+a.Alkali.Name())
//	}
//
// The whole programs among the examples build a formula in code, read one from a file,
// bring an oil and a titrated bottle, fill moulds, mend a batch, cap a fragrance and
// match a colour. They all make soap for an invented village lantern walk.
//
// # What goes in
//
// A [Formula] is plain data, field for field as in a formula file: build one from typed
// values, or read one with [ReadFormula] or [ParseFormula]. In the order in which a
// maker thinks of it, it holds
//
//   - [OilLine]: an [Oil] and its share or its mass. [LookUpOil] finds a built-in oil;
//     [OwnOil] is a lot with its own certificate or composition.
//   - [AlkaliLine]: one hydroxide or two, dry with a purity or as a stock lye. The
//     purity may come from a [Certificate], a published [lye.Grade] or a [lye.Titration].
//   - [Superfat]: planned, or promised even in the worst case.
//   - [Water], with a [LiquidLine] for milk or beer, and an [AcidLine] for an acid.
//   - [Size]: the mass of the oils or of the batter, or the [Vessel] lines to be filled,
//     each of a [mould.Shape].
//   - [Part]: a share of the batter with what is added to it alone. An [Addition] is a
//     colourant, a fragrance or an additive; its [Load] says how much of it, its
//     [Carrier] what it is dispersed in.
//   - [Embed], [Topping], [Temperatures], [Market]; the maker's own fragrances, pigments
//     and swatches; a [Target] colour with what may be used to [Match] it.
//   - [Weighed]: what the scale really showed, once the work has begun.
//
// The zero value of a [units.Ratio] means "not given", which is not 0 %: a forgotten
// superfat is an error.
//
// # What comes out
//
// [Formula.Batch] gives a [Batch], its caller's own: every line to weigh as a [Weighing],
// the [Lye] as mixed, each part as a [PartBatch], the [Volumes] and every [Piece]. The
// superfat is an [Outlook], planned, likely and worst, for the batch and for each part,
// since a carrier of oil, or one held back, moves it. What was weighed becomes a
// [Reckoning] with [Remedy] values.
//
// A [Finding] is something about a formula in order that its maker should know. One whose
// severity is [Danger] could hurt a person. What is wrong with a formula comes as
// [Faults], all together, each with its path and what would be right; nothing partial is
// returned beside it.
//
// Views of a batch are [Batch.Caps] (how much fragrance), [Batch.Tint] (what colour, in
// which order to work), [Batch.Composition] (fatty acids), [Batch.MarshalJSON], and the
// pages of package soap/sheet.
//
// # Numbers
//
// Masses are whole nanograms, each rounded once; the parts of a whole add up to it.
// Nothing that is weighed comes from a float64, but for the search that fills moulds and
// the one that matches a colour, whose results enter by one rounding. What nature varies
// stays a range. Every percentage here says of what it is one: oils, batter, the dry
// mass, a demand.
//
// Nothing here reads a file of its own, a clock or a setting: the same formula always
// gives the same batch. Functions may be called by several goroutines at once.
//
// # Limits
//
// A formula is bounded, so that the heaviest one that is accepted is worked out, with its caps, its tint and their
// JSON, in less than a second and 64 MB on one core. A file has at most 1 MiB. Lists hold at most 100 oils, 50 parts,
// 50 additions in a part (loads that are looked for among them, of which a part has at most six), 100 vessels, 100
// materials of the maker's own with 300 constituents each, and 100 swatches. In all parts together there are at most
// 1500 additions, and 100 loads that are looked for; these may take as long as those of three parts of six colourants
// each, with swatches of 71 bands, of five such parts with 36 bands, or of twelve with swatches in sRGB. All
// materials together have at most 5000 constituents and parts of blends, and blends of blends nest at most six deep.
// And what drives each other round after round (what fills vessels, a promise, the most of a fragrance, loads looked
// for) has a budget of steps, which no formula of a maker that we know comes near. More is refused, with an
// [ErrLimit] that says of what there is too much, before it costs anything; only the budget of steps shows as late as
// in the working.
//
// At most 200 findings are told of a batch and of each view, dangers first, and the last then says how many more there
// are; and at most a hundred faults of a formula, and one more.
//
// Whoever serves others bounds time as well: [Formula.BatchContext], [Batch.CapsContext], [Batch.TintContext] and
// [Formula.Calibrate] stop within 10 ms of the end of their context. Reading a formula, and writing JSON of it, take
// some tens of milliseconds at most, and no context.
//
// # Chemistry
//
// The alkali an oil demands is its saponification value, mg of KOH per g. Of sodium
// hydroxide the same job takes 39.997/56.105 as much, the molar masses of NaOH and KOH in
// g/mol. What is weighed is the demand less the superfat, over the purity: the mass
// fraction of hydroxide in the bottle.
//
// # Sources
//
// Every figure of the built-in tables carries its own, as a [cite.Source] that says
// whether it was read, recalled or computed: [Oil.Figures], [Oil.Profiles],
// [Oil.ValueSource]. They are editions of the Codex Alimentarius, pharmacopoeias and
// papers. [AtomicWeights] names the source of the molar masses (IUPAC, recalled),
// [DensitySource] that of oils whose density nobody printed, [AssumedPuritySource] that of
// a purity that nobody gave; a [Finding] names the source of the limit it was held
// against. A limit that no publication sets is common practice or recalled, and says
// so. [DataEdition] dates the
// tables: a number may change only with it.
//
// # Cautions
//
// Alkali burns skin and can blind, and a bar with alkali left over burns later. Show the
// findings before any mass, and test a bar before it is used. The labels and safety data
// sheets of what was bought, local rules and licensed practice come before anything this
// package works out; what it says of fragrance is not a safety assessment.
package soap
