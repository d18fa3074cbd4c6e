package mould_test

import (
	"fmt"

	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

// A small cup, filled to 90 % of its height: not 90 % of its volume.
func ExampleFrustum() {
	cup := mould.Frustum{
		Top: units.Millimetres(60), Bottom: units.Millimetres(45),
		Height: units.Millimetres(40), Fill: units.Percent(90),
	}
	v, err := cup.Volume()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(v.Text(2), "mL")
	// Output: 76.15 mL
}

// A piped swirl is a model until some were piped on a sheet and weighed.
func ExampleCone() {
	swirl := mould.Cone{
		Base: units.Millimetres(45), Tip: units.Millimetres(8),
		Height: units.Millimetres(35), Fill: units.Percent(85),
	}
	v, err := swirl.Volume()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(v.Text(2), "mL, give or take", swirl.Spread().PercentText(0), "%")
	each, err := mould.Trial{Count: 6, Mass: units.Grams(210)}.Each()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("found:", each)
	// Output:
	// 19.07 mL, give or take 15 %
	// found: 35 g
}

// A vessel of any shape, known by the water that fills it.
func ExampleWaterFill() {
	v, err := mould.WaterFill{Mass: units.Grams(100), At: units.Celsius(20)}.Volume()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(v.Text(2), "mL")
	// Output: 100.18 mL
}

// How far a bowl of batter goes with twelve cups.
func ExampleFill() {
	filled := mould.Fill(units.Grams(514), []mould.Wanted{{Content: units.Grams(46), Count: 12}})
	fmt.Println(filled[0].Whole, "cups; the next one lacks", filled[0].Short)
	// Output: 11 cups; the next one lacks 38 g
}

// Thirty cups, and a shelf with twelve moulds.
func ExampleBatches() {
	n, each, last := mould.Batches([]mould.Shelf{{Count: 30, Moulds: 12}})
	fmt.Println(n, "batches of", each[0], "and the last of", last[0])
	// Output: 3 batches of 12 and the last of 6
}
