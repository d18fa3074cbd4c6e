package tint_test

import (
	"fmt"

	"example.com/lyewright/colour/tint"
	"example.com/lyewright/units"
)

// What will 0.6 % of white make of a base that was read with none, with 0.3 % and with 1 %?
// The readings are invented. The answer was worked out outside the library as well.
func Example() {
	read := func(lab tint.Lab, white string) tint.Swatch {
		s := tint.Swatch{Name: "white " + white, Lab: &lab}
		if share := units.MustRatio(white); share.Sign() > 0 {
			s.Loads = []tint.Load{{Colourant: "titanium-dioxide", OfBatter: share}}
		}
		return s
	}
	swatches := tint.Swatches{White: "titanium-dioxide", Read: []tint.Swatch{
		read(tint.Lab{L: 88, A: 1, B: 15}, "0 %"),
		read(tint.Lab{L: 91.5, A: 0.5, B: 10}, "0.3 %"),
		read(tint.Lab{L: 94.5, A: 0.2, B: 6}, "1 %"),
	}}
	calibration, err := swatches.Calibrate()
	if err != nil {
		fmt.Println(err) // which swatch to make, or what to measure
		return
	}
	colour, err := calibration.Predict([]tint.Load{
		{Colourant: "titanium-dioxide", OfBatter: units.MustRatio("0.6 %")},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	picture, _ := colour.SRGB()
	fmt.Printf("L* %.1f, %s\n", colour.L, picture)
	// Output: L* 93.2, #f3ebdd
}

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

// How well are the swatches met, and what is lacking where one of them is left out?
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

// What colour will 0.4 % of white and 0.6 % of blue make?
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

// Is more white worth its while? In this mixture 0.03 % of the batter make a difference that
// can just be seen.
func ExampleCalibration_Whiter() {
	swatches := photographed()
	calibration, err := swatches.Calibrate()
	if err != nil {
		fmt.Println(err)
		return
	}
	more, seen, err := calibration.Whiter([]tint.Load{
		{Colourant: "titanium-dioxide", OfBatter: units.MustRatio("0.2 %")},
		{Colourant: "ultramarine-blue", OfBatter: units.MustRatio("0.3 %")},
	}, units.Percent(1))
	fmt.Println(more.PercentText(2), "% more", seen, err)
	// Output: 0.03 % more true <nil>
}

// Which swatch is met worst? Cast that one again.
func ExampleResidual() {
	swatches := photographed()
	calibration, err := swatches.Calibrate()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range calibration.Residuals() {
		if r.Difference == calibration.Worst() {
			fmt.Printf("%s, %.1f off\n", r.Swatch, r.Difference)
		}
	}
	// Output: blue 1, 3.5 off
}

// How much lighter is it with 0.5 % of white than with 0.4 %?
func ExampleColour() {
	swatches := photographed()
	calibration, err := swatches.Calibrate()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, white := range []string{"0.4 %", "0.5 %"} {
		var colour tint.Colour
		colour, err = calibration.Predict([]tint.Load{
			{Colourant: "titanium-dioxide", OfBatter: units.MustRatio(white)},
			{Colourant: "ultramarine-blue", OfBatter: units.MustRatio("0.6 %")},
		})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("L* %.1f\n", colour.L)
	}
	// Output:
	// L* 68.2
	// L* 70.5
}

// Is a load within what was cast, so that a prediction has something to go by?
func ExampleLoad() {
	swatches := photographed()
	calibration, err := swatches.Calibrate()
	if err != nil {
		fmt.Println(err)
		return
	}
	load := tint.Load{Colourant: "ultramarine-blue", OfBatter: units.MustRatio("1.5 %")}
	most := calibration.Most(load.Colourant)
	fmt.Println("up to", most.PercentText(2), "%; within:", load.OfBatter.Compare(most) <= 0)
	// Output: up to 1 %; within: false
}
