package lye_test

import (
	"fmt"

	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
)

// A third at 20 °C: 1.3604 g/mL by the equation worked out elsewhere. It begins to
// crystallise at 8.5 °C, between 32.89 % (7.7 °C) and 34.25 % (10.1 °C).
func ExampleSolution_Density() {
	s := lye.Solution{Alkali: lye.SodiumHydroxide, Strength: units.Whole(1).Over(units.Whole(3)), At: units.Celsius(20)}
	d, err := s.Density()
	if err != nil {
		fmt.Println(err)
		return
	}
	v, _ := s.Volume(units.Grams(1000))
	crystals, _ := s.Crystallises()
	fmt.Println(d.Text(4), "g/mL; a kilogram is", v.Text(0), "mL; crystals from", crystals.Text(1), "°C")
	// Output: 1.3604 g/mL; a kilogram is 735 mL; crystals from 8.5 °C
}

// The handbook prints 1.4299 g/mL for 40 % at 20 °C.
func ExampleHydrometer_Strength() {
	reading, _ := units.ParseDensity("1.43 g/mL")
	strength, err := lye.Hydrometer{Alkali: lye.SodiumHydroxide, Reading: reading, At: units.Celsius(20)}.Strength()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(strength.PercentText(0), "%")
	// Output: 40 %
}

// The two hydroxides: as a file names them, and how much of each a lye of 20 °C holds.
func ExampleAlkali() {
	for _, a := range []lye.Alkali{lye.SodiumHydroxide, lye.PotassiumHydroxide} {
		fmt.Println(a, a.Symbol(), a.MolarMass(), "g/mol, up to", a.Saturation().PercentText(1), "%")
	}
	// Output:
	// sodium-hydroxide NaOH 39.997 g/mol, up to 52.1 %
	// potassium-hydroxide KOH 56.105 g/mol, up to 52.8 %
}

// Who says how much of a hydroxide dissolves.
func ExampleAlkali_SaturationSource() {
	fmt.Println(lye.PotassiumHydroxide.SaturationSource())
	// Output: Great Soviet Encyclopedia, edition not stated, article potassium hydroxide
}

// May a stock of 50 % stand in a shed of 12 °C? Between 48.73 % (9.9 °C) and 50.36 % (11.7
// °C) it begins to crystallise at 11.3 °C, and that is good to 1 K: it may not.
func ExampleCrystallisesWithin() {
	stock := lye.Solution{Alkali: lye.SodiumHydroxide, Strength: units.Percent(50)}
	begins, ok := stock.Crystallises()
	fmt.Println(begins.Text(1), "°C, give or take", lye.CrystallisesWithin(), ok)
	// Output: 11.3 °C, give or take 1 K true
}

// How much room does a kilogram of water take at 20 °C? The recommended 998.207 kg/m³
// (recalled) make it 1001.8 mL.
func ExampleDensityOfWater() {
	water, err := lye.DensityOfWater(units.Celsius(20))
	if err != nil {
		fmt.Println(err)
		return
	}
	v, _ := water.Volume(units.Grams(1000))
	fmt.Println(water.Text(4), "g/mL,", v.Text(1), "mL")
	// Output: 0.9982 g/mL, 1001.8 mL
}

// How much sodium hydroxide do 10 g of citric acid take up, and what water do they leave?
// 3 × 39.997/192.123 and 3 × 18.015/192.123 of a gram for each.
func ExampleAcid() {
	citric, err := lye.LookUpAcid("citric-acid-anhydrous")
	if err != nil {
		fmt.Println(err)
		return
	}
	acid := units.Grams(10)
	fmt.Println("takes up", units.Sum{}.Plus(acid,
		citric.Neutralises(lye.SodiumHydroxide)).Mass(units.Nearest).Text(units.Gram, 3), "g")
	fmt.Println("leaves", units.Sum{}.Plus(acid, citric.WaterFormed()).Mass(units.Nearest).Text(units.Gram, 3),
		"g of water")
	// Output:
	// takes up 6.246 g
	// leaves 2.813 g of water
}

// Which acids are bought with crystal water in them?
func ExampleAcids() {
	for _, a := range lye.Acids() {
		if a.Crystal.Given() {
			fmt.Println(a.ID, a.Crystal.PercentText(2), "%") // 18.015/210.138
		}
	}
	// Output: citric-acid-monohydrate 8.57 %
}

// What else may a formula call an acid?
func ExampleAcid_Names() {
	citric, err := lye.LookUpAcid("citric-acid-monohydrate")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(citric.Formula, citric.Names())
	// Output: C6H8O7.H2O [citric acid monohydrate hydrated citric acid]
}

// An unknown name is an error that offers the nearest.
func ExampleLookUpAcid() {
	_, err := lye.LookUpAcid("lactic")
	fmt.Println(err)
	// Output: acid: "lactic" is not an acid that is known; did you mean lactic-acid?
}

// Was the paper itself seen? An equation comes from what restates it.
func ExampleOlssonSource() {
	s := lye.OlssonSource()
	fmt.Println(s.Title, s.Edition)
	fmt.Println(s.Place)
	// Output:
	// Olsson, Jernqvist, Aly, Thermophysical properties of aqueous NaOH-H2O solutions at high concentrations, Int. J. Thermophys. 18(3) 1997
	// density and enthalpy equations, read as an open program ports them; the paper itself was not seen
}

func ExampleLaliberteSource() {
	fmt.Println(lye.LaliberteSource().Place)
	// Output: equations and coefficients, read as an open program holds them; the paper's tables were not seen
}

func ExampleCrystallisesSource() {
	s := lye.CrystallisesSource()
	fmt.Println(s.Title, s.Edition)
	// Output: Phase diagram of NaOH and water, Wang 2008
}

func ExampleBoilsSource() {
	s := lye.BoilsSource()
	fmt.Println(s.Place, "-", s.How)
	// Output: vapour pressure equation at 101.325 kPa, four rows, linear between them - computed
}

// ExampleDerivation shows how the density of a lye of potassium hydroxide comes about.
func ExampleDerivation() {
	steps, err := lye.Solution{
		Alkali: lye.PotassiumHydroxide, Strength: units.Percent(30),
		At: units.Celsius(25),
	}.Derivation()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range steps {
		fmt.Println(s.Of)
		fmt.Println("=", s.Result)
	}
	// Output:
	// Density of a lye of 30 % KOH at 25 °C
	// = 1.286753 g/mL
}

func ExampleSolution_Derivation() {
	steps, err := lye.Solution{
		Alkali: lye.SodiumHydroxide, Strength: units.Percent(36),
		At: units.Celsius(40),
	}.Derivation()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(steps[0].Figures, "=", steps[0].Result)
	last := steps[len(steps)-1]
	fmt.Println(last.Formula)
	// Output:
	// √(1 − 0.36) = 0.8
	// density = (a0 + t × (a1 + t × a2)) / 1000
}

func ExampleMixing_Derivation() {
	steps, err := lye.Mixing{
		Water: units.Milligrams(90_075), WaterAt: units.Celsius(25),
		Alkalis: []lye.Portion{{Alkali: lye.SodiumHydroxide, Mass: units.Milligrams(39_997), Hydroxide: units.Whole(1)}},
	}.Derivation()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range steps[:2] {
		fmt.Println(s.Figures, "=", s.Result)
	}
	// Output:
	// 37.761 + 0 + 1.64 = 39.401 kJ/mol
	// 90.075 × 4.19 × (25 − 25) / 1000 + 39.997 × 1.49 × (25 − 25) / 1000 + 39.997 × 1 / 39.997 × 39.401 = 39.401 kJ above 25 °C
}
