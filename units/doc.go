// Package units holds the quantities that soap making is worked out in. A quantity is
// read from a text with its unit, reckoned with exactly, rounded by a named act, and
// printed. What must not be mixed up is of another type: a mass is no volume, a
// temperature is no difference of two.
//
// The types, in the order in which a reader needs them:
//
//   - A [Mass] is what is weighed: a whole number of nanograms.
//   - A [Ratio] is an exact decimal without a unit of its own: a share, a percentage, a
//     saponification value. Its zero value means "not given", which is not 0 %.
//   - A [Range] keeps a published value as the range that it is.
//   - A [Sum] adds masses times ratios without rounding any product.
//   - A [Rounding] says which way a figure goes, and every rounding is named: [Nearest],
//     [Down], [Up].
//   - A [Volume] and a [Density] lead to a mass and back. A [Temperature] and a
//     [TemperatureDifference], a [Length] and an [Area] are what moulds and lyes are
//     measured in.
//   - A [ParseError] says what is wrong with a text, and what would be right.
//
// How much olive oil are 45 % of 28.2 oz of oils, on a scale that shows 0.1 g?
//
//	oils, err := units.ParseMass("28.2 oz")
//	if err != nil {
//		return units.Mass{}, err // says what would be right
//	}
//	share, err := units.ParsePercent("45 %")
//	if err != nil {
//		return units.Mass{}, err
//	}
//	olive, ok := oils.Times(share, units.Nearest) // 359.755448456 g
//	if !ok {
//		return units.Mass{}, errors.New("the share was not given")
//	}
//	scale := units.Milligrams(100)
//	return olive.Round(scale, units.Nearest), nil // 359.8 g
//
// # What is exact, and what is not
//
// A mass is born once, by one rounding to a nanogram; sums of masses are exact, and
// [Apportion] divides one so that its parts add up to the last nanogram. Ratios are added
// and multiplied exactly; a quotient that does not come out even keeps 34 significant
// digits, or twelve decimals where it is one of masses, sums or volumes. Figures of a
// model come in by functions that refuse what is no number ([RatioOfFloat],
// [DensityOfFloat], [VolumeOfFloat], [CelsiusOfFloat]); float64s go out for estimates and
// drawings alone (such as [Mass.Grams]): nothing that is weighed may come from one.
//
// What is not given does not become a mass, a volume or a quotient by itself: the functions
// that would make one say with ok that there is none ([Mass.Times], [Mass.Over], [Mass.Per],
// [Sum.Per], [Sum.Scale], [Density.Of], [Density.Volume]). Between ratios it stays not given.
// Only what adds up counts it as zero, and says so: a [Sum] is one of what is known, and
// [Apportion] gives nothing to a share that is not given. [Ratio.Float] gives 0 for it: that is
// for drawings and estimates, and no weighing follows from it.
//
// What is beyond what a type holds stops at that end and does not wrap round. The readers
// refuse far less: more than a tonne, 1000 L, 10 m, 100 m², 30 g/mL, 10,000 K, and a text
// of more than 16 digits before its point or 34 after it, before it costs anything.
// Negative figures are not read, but for temperatures; exponents, digit grouping and
// commas are not, either.
//
// # Sources
//
// The ounce, the pound and the inch are exact by definition (for the first two see
// [Ounce]; the inch is recalled, not read). 0 °C is 273.15 K (SI brochure, 9th edition,
// 2.3.1; recalled, not read).
//
// # Cautions
//
// A percentage does not say what it is a percentage of: whoever reads one must. A volume
// is no mass: weigh what can be weighed.
//
// All types are values: immutable, safe for concurrent use, and cheap to copy. No function
// panics on data; [MustRatio], which does, is for text written into a program.
package units
