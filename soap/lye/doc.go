// Package lye holds what is known of the lye itself, before any oil meets it. It stands
// alone: it asks for no formula.
//
// An [Alkali] is one of the two hydroxides. Whoever has a bottle of one asks, in this
// order:
//
//   - How much hydroxide is in the bottle? A [Titration] measures it, and finds what a
//     [Titrated] holds; a supplier's [Certificate] or a published [Grade] says what may be
//     in it; [Aged] says what is left in a bottle that has drawn water. Each ends in the
//     [units.Range] that a formula takes as purity.
//   - What is a lye like? A [Solution] has a density and a volume, a temperature at which
//     it crystallises and one at which it boils. A [Hydrometer] gives its strength.
//   - How hot does it get? A [Mixing] of water, ice and each [Portion] of alkali gives the
//     bound, a [Heat].
//   - When can it be poured? [Cooling] says how long it takes, [Joining] what temperature
//     oils and lye will have together, [Apart] whether they are too far apart.
//   - How is a [Stock] lye made and thinned, and what does an [Acid] take up?
//
// How hot do 100 g of sodium hydroxide make 200 g of water?
//
//	heat, err := lye.Mixing{
//		Water: units.Grams(200), WaterAt: units.Celsius(20), Room: units.Celsius(20),
//		Alkalis: []lye.Portion{{
//			Alkali: lye.SodiumHydroxide, Mass: units.Grams(100), Hydroxide: units.Whole(1),
//		}},
//	}.Bound()
//	if err != nil {
//		return err // everything that is wrong, together
//	}
//	fmt.Println(heat.Final.Ratio().Round(0, units.Up), "°C at most; boils at", heat.Boils) // 109, 121 °C
//
// Purity and strength are mass fractions of hydroxide: purity in what is weighed dry,
// strength in a solution. Carbonate, which an assay counts, is neither.
//
// Every error is [fault.Faults]: all that is wrong together, each with a path in the words
// of a formula file or of the command's options, and a kind: [fault.ErrMissing] where a
// figure is not given, [fault.ErrRange] where it is outside its bounds, [fault.ErrConflict]
// where two do not go together, [fault.ErrUnknown] for a name, [fault.ErrImpossible] where
// no such lye can be made. All types are values, safe for concurrent use.
//
// # How sure it is
//
// What becomes a mass is exact and rounded once: titrations, purities, stocks. Physics is
// an estimate, reckoned in float64: densities are within 0.4 % of the published tables
// for sodium hydroxide and up to 0.7 % from one of two that disagree for potassium
// hydroxide; a crystallising temperature is good to 1 K; the heat is what a lye would
// reach if none were lost, a bound for a caution, and not a promise.
//
// # Sources
//
// Each figure's source can be asked for: [TitrationSource], [Grade.Source],
// [AtomicWeights], [OlssonSource] and [LaliberteSource] (density), [CrystallisesSource],
// [BoilsSource], [HeatSource], [OilHeatSource]. Several were read as an open program holds
// them and not in the paper itself, some are recalled; they say so.
//
// # Cautions
//
// Alkali burns skin and can blind. Wear tight goggles and alkali-proof gloves; put alkali
// into water, never water onto alkali; take heat-proof plastic or stainless steel, no
// aluminium; keep children and animals away. On skin or in eyes: rinse at once with plenty
// of running water and get medical help. The labels and safety data sheets of what was
// bought, and local rules, come before anything this package works out.
package lye
