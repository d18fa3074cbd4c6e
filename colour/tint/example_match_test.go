package tint_test

import (
	"fmt"

	"example.com/lyewright/colour/tint"
	"example.com/lyewright/units"
)

// Which loads come nearest to a dusty blue, and how near is that?
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

// How much blue, with the white as it is, for a lighter blue?
func ExampleWanted() {
	swatches := photographed()
	calibration, err := swatches.Calibrate()
	if err != nil {
		fmt.Println(err)
		return
	}
	found, err := calibration.Match(tint.Wanted{
		Target: tint.Lab{L: 75, A: 1, B: -14},
		Fixed:  []tint.Load{{Colourant: "titanium-dioxide", OfBatter: units.MustRatio("0.5 %")}},
		Free:   []tint.Free{{Colourant: "ultramarine-blue", Most: units.Percent(1)}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(found.Loads[0].PercentText(2), "%")
	// Output: 0.34 %
}

// What if there is less blue on the shelf than the colour takes? All of it goes in, less white
// with it, and the colour is farther off.
func ExampleFree() {
	swatches := photographed()
	calibration, err := swatches.Calibrate()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, most := range []string{"1 %", "0.2 %"} {
		var found tint.Matched
		found, err = calibration.Match(tint.Wanted{
			Target: tint.Lab{L: 70, A: 0, B: -15},
			Free: []tint.Free{
				{Colourant: "titanium-dioxide", Most: units.Percent(1), Price: 9.80},
				{Colourant: "ultramarine-blue", Most: units.MustRatio(most), Price: 14.50},
			},
		})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(found.Loads[0].PercentText(2), found.Loads[1].PercentText(2), found.At[1])
		fmt.Printf("%.1f off at best\n", found.Best)
	}
	// Output:
	// 0.19 0.26 free
	// 1.1 off at best
	// 0.14 0.2 most
	// 2.7 off at best
}

// Is the night sky within reach of these two? Not by far: all of the blue is not enough.
func ExampleMatched() {
	swatches := photographed()
	calibration, err := swatches.Calibrate()
	if err != nil {
		fmt.Println(err)
		return
	}
	found, err := calibration.Match(tint.Wanted{
		Target: tint.Lab{L: 40, A: 0, B: -45},
		Fixed:  []tint.Load{{Colourant: "titanium-dioxide", OfBatter: units.MustRatio("0.5 %")}},
		Free:   []tint.Free{{Colourant: "ultramarine-blue", Most: units.Percent(1)}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f off at best, blue at %s\n", found.Best, found.Nearest[0])
	// Output: 27 off at best, blue at most
}

// Which loads hold a match back? The nearest to a very pale colour takes all of the white
// that there may be, half a percent, and no blue.
func ExampleAt() {
	swatches := photographed()
	calibration, err := swatches.Calibrate()
	if err != nil {
		fmt.Println(err)
		return
	}
	found, err := calibration.Match(tint.Wanted{
		Target: tint.Lab{L: 97, A: 0, B: 5},
		Free: []tint.Free{
			{Colourant: "titanium-dioxide", Most: units.MustRatio("0.5 %")},
			{Colourant: "ultramarine-blue", Most: units.Percent(1)},
		},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, at := range found.Nearest {
		fmt.Println(at, at == tint.AtMost)
	}
	// Output:
	// most true
	// none false
}
