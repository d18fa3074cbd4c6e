// Package tint predicts what colour a mixture of colourants will have, from swatches
// that the maker cast and read, and finds the loads for a colour that is wanted. It stands
// alone: it asks for no formula and knows no colourant but by its name.
//
// The types, in the order in which a reader needs them:
//
//   - A [Lab] is a colour, [Lab.Difference] how far it is from another; an [SRGB] is one on
//     a screen; [Bands.Colour] makes one of a spectrum.
//   - [Swatches] are pieces of soap of known make, each a [Swatch] with the [Load] of every
//     colourant in it, and what was read of it: a spectrum, a Lab or an sRGB, through a
//     [Surface].
//   - [Swatches.Calibrate] makes a [Calibration] of them: how much the base and every
//     colourant absorb and scatter light, band by band. [Calibration.Floor] says how well it
//     meets its own swatches, a [Residual] how well one of them: no prediction is surer.
//   - [Calibration.Predict] gives the [Colour] of loads, [Calibration.Layer] that of a thin
//     layer, [Calibration.Whiter] what more white would do.
//   - [Calibration.Match] looks for the loads of what is [Wanted], of each colourant that is
//     [Free], and gives what is [Matched]. Both searches have a form that takes a context,
//     [Swatches.CalibrateContext] and [Calibration.MatchContext].
//
// What will 0.6 % of white make of a base that was read with none, with 0.3 % and with 1 %?
//
//	read := func(lab tint.Lab, white string) tint.Swatch {
//		s := tint.Swatch{Name: "white " + white, Lab: &lab}
//		if share := units.MustRatio(white); share.Sign() > 0 {
//			s.Loads = []tint.Load{{Colourant: "titanium-dioxide", OfBatter: share}}
//		}
//		return s
//	}
//	swatches := tint.Swatches{White: "titanium-dioxide", Read: []tint.Swatch{
//		read(tint.Lab{L: 88, A: 1, B: 15}, "0 %"),
//		read(tint.Lab{L: 91.5, A: 0.5, B: 10}, "0.3 %"),
//		read(tint.Lab{L: 94.5, A: 0.2, B: 6}, "1 %"),
//	}}
//	calibration, err := swatches.Calibrate()
//	if err != nil {
//		return err // which swatch to make, or what to measure
//	}
//	colour, err := calibration.Predict([]tint.Load{
//		{Colourant: "titanium-dioxide", OfBatter: units.MustRatio("0.6 %")},
//	})
//	if err != nil {
//		return err
//	}
//	picture, _ := colour.SRGB()
//	fmt.Printf("L* %.1f, %s\n", colour.L, picture) // L* 93.2, #f3ebdd
//
// Loads are of the batter, by mass. Colours are in CIELAB for the 1931 observer and the
// light D65, differences are CIEDE2000. Errors are [fault.Faults], all that is wrong
// together. All types are values; a [Calibration] is immutable and safe for concurrent use.
//
// # Sources
//
// The model is that of Kubelka and Munk with two constants (J. Opt. Soc. Am. 38 (1948) 448;
// recalled, as restated in several texts, read), the surface that of Saunderson (J. Opt. Soc.
// Am. 32 (1942) 727; recalled, as restated, read). The observer and the light are those of
// the CIE, CIELAB that of CIE 15, the difference that of Sharma, Wu and Dalal (2005), the
// screen IEC 61966-2-1. Calibrating and matching name theirs at [Swatches.Calibrate] and
// [Calibration.Match]. [DataEdition] dates the table of the observer.
//
// # Cautions
//
// All figures here are estimates; none enters a weighing but through a rounding that its
// caller names. The model is for flat, even, opaque matter in diffuse light: micas and other
// pearls, whose colour depends on the angle, are outside it, and so are gelled soap
// predicted from ungelled swatches and what a fragrance does to the colour later. A
// prediction beyond the largest load of the swatches ([Calibration.Most]) has nothing to go
// by, and with just as many swatches as constants ([Calibration.Spare]) the floor says
// little. What three bands of a photograph cannot hold, a spectrum can.
package tint
