// Package tint predicts what colour a mixture of colourants will have, from swatches
// that the maker cast and read.
//
// [Swatches] are what was read. [Swatches.Calibrate] makes a [Calibration] of them: how
// much the base and every colourant absorb and scatter light, band by band. It predicts
// a [Colour] from loads, also of a thin layer, and finds loads for a colour that is
// wanted. [Lab] measures the difference between two colours.
//
// The model is that of Kubelka and Munk with two constants, and the surface is that of
// Saunderson. It is for flat, even, opaque matter in diffuse light: micas and other
// pearls, whose colour depends on the angle, are outside it, and so are gelled soap
// predicted from ungelled swatches and what a fragrance does to the colour later. All
// figures here are estimates; none enters a weighing but through a rounding that its
// caller names.
package tint
