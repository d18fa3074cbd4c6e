package tint_test

import (
	"errors"
	"fmt"
	"slices"

	"example.com/lyewright/colour/tint"
	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

// Two blues side by side: a little more than can just be seen.
func ExampleLab_Difference() {
	dusk, night := tint.Lab{L: 62, A: -8, B: -24}, tint.Lab{L: 61, A: -7, B: -25}
	fmt.Printf("%.2f\n", dusk.Difference(night))
	// Output: 1.23
}

// A colour card's value in CIELAB, and one that no screen can show.
func ExampleSRGB() {
	c := tint.SRGB{R: 0xc8, G: 0xb4, B: 0x9a}.Lab()
	fmt.Printf("%.1f, %.1f, %.1f\n", c.L, c.A, c.B)
	_, inGamut := tint.Lab{L: 50, A: -100, B: 0}.SRGB()
	fmt.Println(inGamut)
	// Output:
	// 74.4, 3.0, 15.9
	// false
}

func ExampleParseSRGB() {
	c, err := tint.ParseSRGB("#c8b49a")
	fmt.Println(c, c.R, err)
	_, err = tint.ParseSRGB("dusk")
	fmt.Println(err)
	// Output:
	// #c8b49a 200 <nil>
	// "dusk" is not a colour; write # and six digits, such as "#c8b49a"
}

// What reflects half of the light everywhere is grey: L* is 116 × ∛0.5 − 16.
func ExampleBands() {
	bands := tint.Bands{From: 400, Step: 10, Count: 31}
	grey, err := bands.Colour(slices.Repeat([]float64{0.5}, bands.Count))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s: L* %.2f\n", bands, grey.L)
	// Output: 31 bands, 400 to 700 nm: L* 76.07
}

// The date of the table is text that sorts as dates do.
func ExampleDataEdition() {
	fmt.Println(tint.DataEdition() >= "2026-11-26")
	// Output: true
}

// Why is a reading of charcoal refused? It was read without the gloss, and the usual surface
// has it in.
func ExampleSurface() {
	charcoal := tint.Swatches{
		Bands: tint.Bands{From: 400, Step: 20, Count: 16},
		Read:  []tint.Swatch{{Name: "charcoal", Reflectance: slices.Repeat([]float64{0.03}, 16)}},
	}
	var faults fault.Faults
	if errors.As(charcoal.CheckEach(), &faults) {
		fmt.Println(faults[0])
	}
	without := tint.UsualSurface()
	without.NoGloss = true
	charcoal.Surface = &without
	fmt.Println(charcoal.CheckEach())
	// Output:
	// read[0].reflectance[0]: "0.03" is no more than the surface alone reflects, 0.04; measure with the gloss excluded, or lower surface.outside
	// <nil>
}

// (1.5 − 1)²/(1.5 + 1)² is what a surface of refractive index 1.5 reflects of light that
// meets it upright.
func ExampleUsualSurface() {
	s := tint.UsualSurface()
	fmt.Println(s.Outside, s.Inside, s.NoGloss)
	// Output: 0.04 0.6 false
}

// One piece may be read in one way alone, and every piece in the same way.
func ExampleSwatch() {
	paper := tint.Lab{L: 88, A: 1, B: 15}
	swatches := tint.Swatches{Read: []tint.Swatch{
		{Name: "plain", Lab: &paper},
		{Name: "white 0.3", SRGB: &tint.SRGB{R: 0xef, G: 0xe8, B: 0xd8}},
	}}
	fmt.Println(swatches.CheckEach())
	// Output: read[1]: "white 0.3" is read in another way than "plain"; read every swatch the same way
}

// How thick must a pale layer be to hide a charcoal bar? A layer of the base was read over
// black and over white; what is read is grey, and invented: a base that absorbs 0.05 and
// scatters 1 per mm, which the charcoal makes darker. By the equation of Kubelka and Munk
// worked outside the library the layers read 0.256, 0.438 and, without an end, 0.539.
func ExampleCalibration_Layer() {
	grey := func(r float64) []float64 { return slices.Repeat([]float64{r}, 31) }
	load := func(percent string) []tint.Load {
		return []tint.Load{{Colourant: "activated-charcoal", OfBatter: units.MustRatio(percent)}}
	}
	swatches := tint.Swatches{
		Bands: tint.Bands{From: 400, Step: 10, Count: 31},
		Read: []tint.Swatch{
			{Name: "plain", OverBlack: grey(0.3075), OverWhite: grey(0.6582), Thickness: units.Millimetres(1), Backing: [2]float64{0.05, 0.88}},
			{Name: "charcoal 0.5", Loads: load("0.5 %"), Reflectance: grey(0.1813)},
			{Name: "charcoal 1", Loads: load("1 %"), Reflectance: grey(0.1316)},
		},
	}
	calibration, err := swatches.Calibrate()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, thickness := range []string{"0.5 mm", "2 mm", "100 mm"} {
		layer, _ := units.ParseLength(thickness)
		colour, err := calibration.Layer(nil, layer, load("1 %"))
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s: L* %.0f\n", thickness, colour.L)
	}
	// Output:
	// 0.5 mm: L* 58
	// 2 mm: L* 72
	// 100 mm: L* 78
}
