package lye_test

import (
	"fmt"
	"time"

	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
)

// An exercise of two end points: of 17.5 mL to phenolphthalein, carbonate took the
// 1.5 mL that it takes again to methyl orange. 16.0 × 0.1 × 39.997/400 and 1.5 × 0.1
// × 105.988/400.
func ExampleTitration_Result() {
	first, _ := units.ParseVolume("17.5 mL")
	found, err := lye.Titration{
		Alkali: lye.SodiumHydroxide, Sample: units.Milligrams(400), Normality: units.MustRatio("0.1"),
		First: first, Total: units.Millilitres(19),
	}.Result()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(found.Hydroxide.PercentText(1), "% of hydroxide,", found.Carbonate.PercentText(2), "% of carbonate")
	// Output: 16 % of hydroxide, 3.97 % of carbonate
}

// One end point counts carbonate as hydroxide. With what the bottle may hold of it
// there is a low end: 36.60 × 39.997/1500 = 97.59 %, less 0.7547 × 3 %.
func ExampleTitrated_Range() {
	total, _ := units.ParseVolume("36.60 mL")
	found, err := lye.Titration{
		Alkali: lye.SodiumHydroxide, Sample: units.Milligrams(1500), Normality: units.Whole(1),
		Total: total, CarbonateMax: units.Percent(3),
	}.Result()
	if err != nil {
		fmt.Println(err)
		return
	}
	purity, ok := found.Range()
	fmt.Println(purity.Low.PercentText(2), "to", purity.High.PercentText(2), "%, planned at", purity.Typical.PercentText(2), "%", ok)
	// Output: 95.33 to 97.59 %, planned at 97.59 % true
}

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

// For the lantern walk, 100 g of alkali go into 200 g of water: no hotter than this,
// well over the 100 °C of water and under the 121 °C at which the lye boils.
func ExampleMixing_Bound() {
	heat, err := lye.Mixing{
		Water: units.Grams(200), WaterAt: units.Celsius(20), Room: units.Celsius(20),
		Alkalis: []lye.Portion{{Alkali: lye.SodiumHydroxide, Mass: units.Grams(100), Hydroxide: units.Whole(1)}},
	}.Bound()
	if err != nil {
		fmt.Println(err)
		return
	}
	limit, hot := heat.Hot()
	fmt.Println("up to", heat.Final.Text(0), "°C; boils at", heat.Boils)
	fmt.Println("hot from", limit, hot)
	// Output:
	// up to 108 °C; boils at 121 °C
	// hot from 111 °C false
}

// 98 % when it was titrated, and 2 % heavier since: 0.98/1.02 if all of it is water,
// (0.98 − 0.02 × 1.8177)/1.02 if all is carbon dioxide.
func ExampleAged() {
	purity, err := lye.Aged(lye.SodiumHydroxide, units.Exactly(units.Percent(98)), units.Percent(2))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(purity.Low.PercentText(1), "to", purity.High.PercentText(1), "%")
	// Output: 92.5 to 96.1 %
}

// 97.0 % of total alkali and 2.0 % of carbonate at the most: 97.0 − 0.7547 × 2.0.
func ExampleLookUpGrade() {
	grade, err := lye.LookUpGrade("ph-eur-7", lye.SodiumHydroxide)
	if err != nil {
		fmt.Println(err)
		return
	}
	purity, err := grade.Purity(units.Ratio{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(purity.Low.PercentText(1), "to", purity.High.PercentText(1), "%")
	_, err = lye.LookUpGrade("ph-eur-7", lye.PotassiumHydroxide)
	fmt.Println(err)
	// Output:
	// 95.5 to 100 %
	// grade: "ph-eur-7" has no limits for potassium-hydroxide that are known here; the grades are acs-2017, jecfa-2002, usp-nf-35
}

// 500 g of hydroxide from flakes of 98 %: 510.204... g, rounded down.
func ExampleStock_Make() {
	alkali, water, err := lye.Stock{Alkali: lye.SodiumHydroxide, Strength: units.Percent(50)}.Make(units.Grams(1000), units.Percent(98))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(alkali.Text(units.Gram, 1), "g of alkali,", water.Text(units.Gram, 1), "g of water")
	// Output: 510.2 g of alkali, 489.8 g of water
}

// At the latest the readings were 60 and 40 °C: half of what is above the room's 20
// °C went in ten minutes, and half of the rest goes in ten more. At the soonest they
// were 62 and 38 °C: 10 × ln(18/10)/ln(42/18) = 6.9 minutes.
func ExampleCooling_Until() {
	c := lye.Cooling{Room: units.Celsius(20), First: units.Celsius(61), Second: units.Celsius(39), Between: 10 * time.Minute}
	soonest, latest, err := c.Until(units.Celsius(30))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(soonest.Round(time.Minute), "to", latest.Round(time.Minute))
	// Output: 7m0s to 10m0s
}

// 1.907 to 2.705 J/(g K) of a kilogram of oils against 3.61 of 400 g of lye.
func ExampleJoining_Temperature() {
	oils, lyeAt := units.Celsius(40), units.Celsius(25)
	low, high, err := lye.Joining{
		Oils: units.Grams(1000), OilsAt: oils, Lye: units.Grams(400), LyeAt: lyeAt,
		Alkali: lye.SodiumHydroxide, Strength: units.Percent(30),
	}.Temperature()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(low.Text(1), "to", high.Text(1), "°C")
	apart, limit, over := lye.Apart(oils, lyeAt)
	fmt.Println(apart, "apart, over", limit.Text(1), "K:", over)
	// Output:
	// 33.5 to 34.8 °C
	// 15 K apart, over 5.6 K: true
}
