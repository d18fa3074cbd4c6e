package lye_test

import (
	"fmt"
	"time"

	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
)

// For the lantern walk, 100 g of alkali go into 200 g of water: no hotter than this, rounded up,
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
	fmt.Println("up to", heat.Final.Ratio().Round(0, units.Up), "°C; boils at", heat.Boils)
	fmt.Println("hot from", limit, hot)
	// Output:
	// up to 109 °C; boils at 121 °C
	// hot from 111 °C false
}

// Two fifths of the water as ice: to melt and to warm them takes 80 × (333.6 + 4.19 × 20) J,
// which is 31 K in 300 g of a lye of 3.6 J/(g K), off the 108.4 °C of the example above.
func ExampleHeat() {
	heat, err := lye.Mixing{
		Water: units.Grams(120), WaterAt: units.Celsius(20), Ice: units.Grams(80), Room: units.Celsius(20),
		Alkalis: []lye.Portion{{Alkali: lye.SodiumHydroxide, Mass: units.Grams(100), Hydroxide: units.Whole(1)}},
	}.Bound()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("up to", heat.Final.Ratio().Round(0, units.Up), "°C,", heat.Rise.Text(1), "K above the water")
	// Output: up to 78 °C, 57.3 K above the water
}

// A stock of 50 % gives off the heat of being thinned, and no more: dry, the same hydroxide
// would make the same lye up to 108.4 °C hot.
func ExamplePortion() {
	heat, err := lye.Mixing{
		Water: units.Grams(100), WaterAt: units.Celsius(20), Room: units.Celsius(20),
		Alkalis: []lye.Portion{{
			Alkali: lye.SodiumHydroxide, Mass: units.Grams(200), Hydroxide: units.Percent(50), Dissolved: true,
		}},
	}.Bound()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(heat.Strength.PercentText(1), "%, up to", heat.Final.Ratio().Round(0, units.Up), "°C")
	// Output: 33.3 %, up to 53 °C
}

// The two published figures of sodium hydroxide are 1.64 kJ/mol apart: 4 K in this lye.
func ExampleHeatOfSolution() {
	for _, published := range []lye.HeatOfSolution{lye.Cautious, lye.Older} {
		heat, err := lye.Mixing{
			Water: units.Grams(200), WaterAt: units.Celsius(20), Room: units.Celsius(20), Heat: published,
			Alkalis: []lye.Portion{{Alkali: lye.SodiumHydroxide, Mass: units.Grams(100), Hydroxide: units.Whole(1)}},
		}.Bound()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println("up to", heat.Final.Ratio().Round(0, units.Up), "°C")
	}
	// Output:
	// up to 109 °C
	// up to 105 °C
}

// Ten grams of citric acid in the water warm the lye, 108.4 °C without them, by some 8 K more:
// 10 × 3/192.123 mol of protons at 55.8 kJ, in 300 g of 3.6 J/(g K).
func ExampleNeutralised() {
	citric, err := lye.LookUpAcid("citric-acid-anhydrous")
	if err != nil {
		fmt.Println(err)
		return
	}
	heat, err := lye.Mixing{
		Water: units.Grams(200), WaterAt: units.Celsius(20), Room: units.Celsius(20),
		Alkalis: []lye.Portion{{Alkali: lye.SodiumHydroxide, Mass: units.Grams(100), Hydroxide: units.Whole(1)}},
		Acids:   []lye.Neutralised{{Acid: citric, Pure: units.Grams(10)}},
	}.Bound()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("up to", heat.Final.Ratio().Round(0, units.Up), "°C")
	// Output: up to 117 °C
}

func ExampleHeatSource() {
	s := lye.HeatSource()
	fmt.Println(s.Title, "-", s.How)
	// Output: NBS Circular 500, heats of solution of NaOH - computed
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

// What of a 50 % stock, and of water, makes a lye of 33 % with 120 g of hydroxide in it?
// 120/0.5, and 120/0.33 less that.
func ExampleStock_For() {
	stock, water, err := lye.Stock{Alkali: lye.SodiumHydroxide, Strength: units.Percent(50)}.For(units.Grams(120), units.Percent(33))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(stock.Text(units.Gram, 1), "g of stock,", water.Text(units.Gram, 1), "g of water")
	// Output: 240 g of stock, 123.6 g of water
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

// 43 and 38 °C are near enough: 10 °F apart are the most that is usual.
func ExampleApart() {
	apart, limit, over := lye.Apart(units.Celsius(38), units.Celsius(43))
	fmt.Println(apart, "apart, over", limit.Text(1), "K:", over)
	// Output: 5 K apart, over 5.6 K: false
}

func ExampleOilHeatSource() {
	s := lye.OilHeatSource()
	fmt.Println(s.Title, s.Edition)
	// Output: Fasina, Colley, Int. J. Food Properties 11, 738-746, heat capacities of twelve vegetable oils 2008
}

// A hydroxide goes by several names; lye is the name of two, and of their solutions.
func ExampleLookUpAlkali() {
	alkali, err := lye.LookUpAlkali("caustic soda")
	fmt.Println(alkali, err)
	_, err = lye.LookUpAlkali("lye")
	fmt.Println(err != nil)
	// Output:
	// sodium-hydroxide <nil>
	// true
}

// What must not stand among additives, where nothing would reckon with it?
func ExampleAlkaliNamed() {
	for _, name := range []string{"caustic soda", "food grade lye", "slaked lime", "baking soda", "fine salt"} {
		fmt.Printf("%s: %q\n", name, lye.AlkaliNamed(name))
	}
	// Output:
	// caustic soda: "sodium-hydroxide"
	// food grade lye: "what may be sodium-hydroxide or potassium-hydroxide"
	// slaked lime: "an alkali"
	// baking soda: ""
	// fine salt: ""
}

// An acid takes up alkali; its salt does not.
func ExampleAcidNamed() {
	for _, name := range []string{"vinegar", "citric acid", "sodium lactate"} {
		fmt.Printf("%s: %q\n", name, lye.AcidNamed(name))
	}
	// Output:
	// vinegar: "acetic-acid"
	// citric acid: "citric-acid-anhydrous"
	// sodium lactate: ""
}
