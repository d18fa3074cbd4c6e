package units_test

import (
	"fmt"
	"math"

	"example.com/lyewright/units"
)

// A burette's reading, and what went out of it between two.
func ExampleParseVolume() {
	first, err := units.ParseVolume("17.5 mL")
	if err != nil {
		fmt.Println(err)
		return
	}
	total, _ := units.ParseVolume("0.019 L")
	fmt.Println(total.Sub(first))
	_, err = units.ParseVolume("17.5 g")
	fmt.Println(err)
	// Output:
	// 1.5 mL
	// "17.5 g" has the wrong unit for a volume, "g"; write mL or L, such as "17.5 mL"
}

// How much of a pot of 2.5 L do 1800 mL of batter fill?
func ExampleVolume() {
	pot, _ := units.ParseVolume("2.5 L")
	filled, ok := units.Millilitres(1800).Per(pot)
	fmt.Println(filled.PercentText(0), "%", ok)
	// Output: 72 % true
}

// Twelve cups of 45 mL.
func ExampleMillilitres() {
	fmt.Println(units.Millilitres(12 * 45))
	// Output: 540 mL
}

// A half-sphere of 60 mm in a model of one's own: 2/3 π 30³ mm³, 1000 of which are a
// millilitre. What is no number does not come in.
func ExampleVolumeOfFloat() {
	v, ok := units.VolumeOfFloat(2.0 / 3 * math.Pi * 30 * 30 * 30 / 1000)
	fmt.Println(v.Text(2), "mL", ok)
	_, ok = units.VolumeOfFloat(math.Inf(1))
	fmt.Println(ok)
	// Output:
	// 56.55 mL true
	// false
}

// 250 mL of 1.33 g/mL are 332.5 g.
func ExampleParseDensity() {
	lye, err := units.ParseDensity("1.33 g/mL")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(lye.Of(units.Millilitres(250)))
	// Output: 332.5 g true
}

// How much room does a batter of 1.02 g/mL take, 510 g of it? One of unknown density
// takes no known room.
func ExampleDensity() {
	batter := units.GramsPerMillilitre(units.MustRatio("1.02"))
	v, ok := batter.Volume(units.Grams(510))
	fmt.Println(v, ok)
	_, ok = units.Density{}.Volume(units.Grams(510))
	fmt.Println(ok)
	// Output:
	// 500 mL true
	// false
}

// A trial: 184.5 g of batter filled 180 mL.
func ExampleGramsPerMillilitre() {
	perMillilitre := units.MustRatio("184.5").Over(units.Whole(180))
	fmt.Println(units.GramsPerMillilitre(perMillilitre))
	fmt.Println(units.GramsPerMillilitre(units.Whole(0)))
	// Output:
	// 1.025 g/mL
	// not given
}

// The figure of a model comes in rounded to 10^-9 g/mL.
func ExampleDensityOfFloat() {
	d, ok := units.DensityOfFloat(1.36041234567)
	fmt.Println(d, ok)
	_, ok = units.DensityOfFloat(-1)
	fmt.Println(ok)
	// Output:
	// 1.360412346 g/mL true
	// false
}

// (104 − 32) × 5/9.
func ExampleParseTemperature() {
	oils, err := units.ParseTemperature("104 °F")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(oils, "is", oils.Sub(units.Celsius(25)), "above 25 °C")
	// Output: 40 °C is 15 K above 25 °C
}

// Not given is not 0 °C.
func ExampleTemperature() {
	var room units.Temperature
	fmt.Println(room, room.Given(), units.Celsius(0).Given())
	// Output: not given false true
}

// How far are oils and lye apart, whichever is the warmer?
func ExampleTemperatureDifference() {
	oils, lye := units.Celsius(38), units.Celsius(43)
	apart := oils.Sub(lye)
	fmt.Println(apart, apart.Size())
	// Output: -5 K 5 K
}

func ExampleCelsius() {
	lye := units.Celsius(108)
	fmt.Println(lye, lye.Compare(units.Celsius(100)) > 0)
	// Output: 108 °C true
}

// The figure of a model comes in rounded to a microkelvin, unless it is below absolute
// zero.
func ExampleCelsiusOfFloat() {
	t, ok := units.CelsiusOfFloat(33.512345678)
	fmt.Println(t, ok)
	_, ok = units.CelsiusOfFloat(-300)
	fmt.Println(ok)
	// Output:
	// 33.512346 °C true
	// false
}

// A lye of 20 °C that warms by 88 K.
func ExampleKelvins() {
	fmt.Println(units.Celsius(20).Add(units.Kelvins(88)))
	// Output: 108 °C
}

// 10 × 5/9.
func ExampleFahrenheitDegrees() {
	fmt.Println(units.FahrenheitDegrees(10))
	// Output: 5.555556 K
}

// A rule in inches: 1.75 × 25.4 mm.
func ExampleParseLength() {
	rim, err := units.ParseLength("1.75 in")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(rim)
	_, err = units.ParseLength("1.75")
	fmt.Println(err)
	// Output:
	// 44.45 mm
	// "1.75" has no unit; write mm, cm, m or in, such as "45 mm"
}

// Is a cup of 45 mm wide enough for a swirl whose base is 44.45 mm?
func ExampleLength() {
	base, _ := units.ParseLength("1.75 in")
	fmt.Println(base.Compare(units.Millimetres(45)) <= 0)
	// Output: true
}

func ExampleMillimetres() {
	fmt.Println(units.Millimetres(45), units.Millimetres(45).Millimetres()/10, "cm")
	// Output: 45 mm 4.5 cm
}

// The top of a bar: 80 by 50 mm are 40 cm².
func ExampleParseArea() {
	top, err := units.ParseArea("40 cm²")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(top, top == units.SquareMillimetres(80*50))
	// Output: 4000 mm² true
}

// Which of two tops takes more of a coat: one of 6.5 in² (6.5 × 645.16 mm²) or one of
// 40 cm²?
func ExampleArea() {
	inches, _ := units.ParseArea("6.5 in²")
	centimetres, _ := units.ParseArea("40 cm2")
	fmt.Println(inches, inches.Compare(centimetres) > 0)
	// Output: 4193.54 mm² true
}

func ExampleSquareMillimetres() {
	fmt.Println(units.SquareMillimetres(80 * 50))
	// Output: 4000 mm²
}
