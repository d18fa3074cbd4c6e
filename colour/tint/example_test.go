package tint_test

import (
	"fmt"

	"example.com/lyewright/colour/tint"
	"example.com/lyewright/units"
)

// Swatches photographed beside a colour card, invented: the base, two loads of white, and
// two of a blue.
func photographed() tint.Swatches {
	of := func(name, colour string, loads ...tint.Load) tint.Swatch {
		c, err := tint.ParseSRGB(colour)
		if err != nil {
			panic(err)
		}
		return tint.Swatch{Name: name, Loads: loads, SRGB: &c}
	}
	load := func(id, percent string) tint.Load {
		return tint.Load{Colourant: id, OfBatter: units.MustRatio(percent)}
	}
	const white, blue = "titanium-dioxide", "ultramarine-blue"
	return tint.Swatches{Name: "lantern walk", White: white, Read: []tint.Swatch{
		of("plain", "#e8dcc0"),
		of("white 0.3", "#efe8d8", load(white, "0.3 %")),
		of("white 1", "#f4f0e8", load(white, "1 %")),
		of("blue 0.3", "#b9c3da", load(white, "0.5 %"), load(blue, "0.3 %")),
		of("blue 1", "#7f93c6", load(white, "0.5 %"), load(blue, "1 %")),
	}}
}

func ExampleSwatches_Calibrate() {
	swatches := photographed()
	calibration, err := swatches.Calibrate()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(calibration)

	swatches.Read = swatches.Read[:4]
	_, err = swatches.Calibrate()
	fmt.Println(err)
	// Output:
	// 3 bands, 5 swatches met within 1.22 on average, 3.50 at worst, which says little: they are just enough
	// read[3].loads.ultramarine-blue: stands in this swatch alone, with 0.3 %; cast and read one with another load of it, such as 0.6 % of batter, or with this load and without white
}

func ExampleCalibration_Predict() {
	swatches := photographed()
	calibration, err := swatches.Calibrate()
	if err != nil {
		fmt.Println(err)
		return
	}
	colour, err := calibration.Predict([]tint.Load{
		{Colourant: "titanium-dioxide", OfBatter: units.MustRatio("0.4 %")},
		{Colourant: "ultramarine-blue", OfBatter: units.MustRatio("0.6 %")},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	picture, inGamut := colour.SRGB()
	fmt.Printf("L* %.1f, a* %.1f, b* %.1f; %s, in gamut: %t\n", colour.L, colour.A, colour.B, picture, inGamut)
	// Output: L* 68.2, a* 3.4, b* -21.1; #97a6cc, in gamut: true
}

func ExampleCalibration_Match() {
	swatches := photographed()
	calibration, err := swatches.Calibrate()
	if err != nil {
		fmt.Println(err)
		return
	}
	found, err := calibration.Match(tint.Wanted{
		Target: tint.Lab{L: 70, A: 0, B: -15},
		Free: []tint.Free{
			{Colourant: "titanium-dioxide", Most: units.MustRatio("1 %")},
			{Colourant: "ultramarine-blue", Most: units.MustRatio("1 %")},
		},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, load := range found.Loads {
		fmt.Println(load.PercentText(2)+" %", found.At[i])
	}
	fmt.Printf("nearest within reach: %.1f\n", found.Best)
	// Output:
	// 0.19 % free
	// 0.26 % free
	// nearest within reach: 1.1
}

func ExampleLab_Difference() {
	dusk, night := tint.Lab{L: 62, A: -8, B: -24}, tint.Lab{L: 61, A: -7, B: -25}
	fmt.Printf("%.2f\n", dusk.Difference(night))
	// Output: 1.23
}
