package mould_test

import (
	"fmt"

	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

// How much batter do twelve cups take, each filled to 90 % of its height, and how much is
// made, with the usual reserve? By hand: 58.5 mm is the diameter at 36 mm, and
// 3 π (58.5² + 58.5 × 45 + 45²) mm³ = 76.150 mL; 12 × 76.150 × 1.02 = 932.1 g, and 5 %.
func Example() {
	cup := mould.Frustum{
		Top: units.Millimetres(60), Bottom: units.Millimetres(45),
		Height: units.Millimetres(40), Fill: units.Percent(90),
	}
	volume, err := cup.Volume()
	if err != nil {
		fmt.Println(err) // everything that is wrong with its dimensions, together
		return
	}
	batter := units.GramsPerMillilitre(units.MustRatio("1.02"))
	one, ok := batter.Of(volume)
	if !ok {
		fmt.Println("the density is not known")
		return
	}
	cups := units.Sum{}.Plus(one, units.Whole(12)).Mass(units.Nearest)
	reserve := units.Sum{}.Plus(cups, mould.Poured.Reserve()).Mass(units.Nearest)
	fmt.Println(cups.Text(units.Gram, 1), "g in the cups,", cups.Add(reserve).Text(units.Gram, 1), "g in the pot")
	// Output: 932.1 g in the cups, 978.7 g in the pot
}

// What is known of a vessel decides how it is written down; each holds so much.
func ExampleShape() {
	loaf := mould.Box{Length: units.Millimetres(250), Width: units.Millimetres(80), Depth: units.Millimetres(60)}
	for _, s := range []mould.Shape{
		mould.Measured{Content: units.Millilitres(45)},
		loaf,
		mould.Cone{Base: units.Millimetres(45), Height: units.Millimetres(35)},
	} {
		v, err := s.Volume()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(v.Text(1), "mL, give or take", s.Spread().PercentText(0), "%")
	}
	// Output:
	// 45 mL, give or take 0 %
	// 1200 mL, give or take 0 %
	// 18.6 mL, give or take 15 %
}

// A loaf of 250 by 80 mm, filled to 95 % of its 60 mm: 250 × 80 × 57 mm³.
func ExampleBox() {
	v, err := mould.Box{
		Length: units.Millimetres(250), Width: units.Millimetres(80), Depth: units.Millimetres(60),
		Fill: units.Percent(95),
	}.Volume()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(v)
	// Output: 1140 mL
}

// A slab with 2 mm of liner on its bottom and walls: 296 × 196 × 38 mm³.
func ExampleSlab() {
	v, err := mould.Slab{
		Length: units.Millimetres(300), Width: units.Millimetres(200), Height: units.Millimetres(40),
		Liner: units.Millimetres(2),
	}.Volume()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(v.Text(1), "mL")
	// Output: 2204.6 mL
}

// A loaf tin: 60/6 × ((2 × 240 + 220) × 90 + (2 × 220 + 240) × 80) mm³.
func ExampleTaperedBox() {
	v, err := mould.TaperedBox{
		TopLength: units.Millimetres(240), TopWidth: units.Millimetres(90),
		BottomLength: units.Millimetres(220), BottomWidth: units.Millimetres(80),
		Depth: units.Millimetres(60),
	}.Volume()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(v)
	// Output: 1174 mL
}

// A pipe of 75 mm, 300 mm long: π/4 × 75² × 300 mm³.
func ExampleCylinder() {
	v, err := mould.Cylinder{Diameter: units.Millimetres(75), Height: units.Millimetres(300)}.Volume()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(v.Text(1), "mL")
	// Output: 1325.4 mL
}

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

// A lantern's half, 60 mm wide: filled to the brim 2/3 π 30³ mm³, to 90 % of its height
// π × 27² × (90 − 27)/3 mm³, which is 85 % of that.
func ExampleHalfSphere() {
	for _, fill := range []units.Ratio{units.Percent(100), units.Percent(90)} {
		v, err := mould.HalfSphere{Diameter: units.Millimetres(60), Fill: fill}.Volume()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(v.Text(2), "mL")
	}
	// Output:
	// 56.55 mL
	// 48.09 mL
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

// A coat of 3 mm on a bar whose top is 40 cm².
func ExampleCoat() {
	top, _ := units.ParseArea("40 cm²")
	v, err := mould.Coat{Area: top, Thickness: units.Millimetres(3)}.Volume()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(v)
	// Output: 12 mL
}

// What the seller says that it holds. Everything wrong with a vessel is said at once.
func ExampleMeasured() {
	v, err := mould.Measured{Content: units.Millilitres(45)}.Volume()
	fmt.Println(v, err)
	_, err = mould.Measured{}.Volume()
	fmt.Println(err)
	// Output:
	// 45 mL <nil>
	// "0 mL" is not above 0 mL; give what it holds
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
