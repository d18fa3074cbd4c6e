package lye

import (
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"example.com/lyewright/units"
)

// NBS Circular 500 (1952), as tabulated in Koretsky (read). Up to 20 mol of water
// the curve runs within 0.2 kJ/mol of it; at 50 and 100 mol, weaker than any lye
// for soap, the enthalpy equation's heat of dilution is 0.3 and 0.5 kJ/mol too
// large.
func TestHeatsOfSolutionAreThoseOfThePublishedTable(t *testing.T) {
	text, err := os.ReadFile("../../testdata/lye/heat-of-solution.tsv")
	if err != nil {
		t.Fatal(err)
	}
	rows := 0
	for line := range strings.Lines(string(text)) {
		f := strings.Split(line, "\t")
		if strings.HasPrefix(line, "#") || f[0] == "infinite" {
			continue
		}
		water, err1 := strconv.ParseFloat(f[0], 64)
		heat, err2 := strconv.ParseFloat(f[1], 64)
		if err1 != nil || err2 != nil {
			t.Fatal(line)
		}
		rows++
		within := 0.2
		if water > 20 {
			within = 0.6
		}
		got := solutionHeat(39.997 / (39.997 + water*18.015))
		if math.Abs(got+heat) > within {
			t.Errorf("%v mol of water: %.3f kJ/mol given off, the table has %v", water, got, heat)
		}
		if water == 5 && math.Abs(got+heat) > 1e-9 {
			t.Errorf("at the anchor %v kJ/mol, not %v", got, -heat)
		}
	}
	if rows != 7 {
		t.Errorf("%d rows, want 7", rows)
	}
}

// Worked out outside the library from the same equation, shifted by 0.74 kJ/mol to
// fit the whole table, not to one row: 0.07 kJ/mol lies between the two ways.
func TestHeatsOfSolutionAreThoseWorkedOutOutside(t *testing.T) {
	for strength, want := range map[float64]float64{0.10: 42.89, 0.15: 42.73, 0.20: 42.05, 0.25: 40.60, 0.30: 38.26, 0.35: 35.01, 0.40: 31.04, 0.45: 26.68, 0.50: 22.30} {
		if got := solutionHeat(strength); math.Abs(got-want) > 0.1 {
			t.Errorf("%v: %.3f kJ/mol, want %v", strength, got, want)
		}
	}
}

// The newer heat is the older one and what the values at infinite dilution differ
// by: 44.51 (NBS tables of 1982; recalled) less 42.87 (NBS Circular 500, to two
// decimals; read).
func TestTheNewerHeatIsLargerByTheDifferenceAtInfiniteDilution(t *testing.T) {
	if math.Abs(newerHeat-(44.51-42.87)) > 1e-9 {
		t.Errorf("%v kJ/mol", newerHeat)
	}
	// −424.6 less (−252.4 − 230.0): the CRC Handbook's formation enthalpies (read).
	if math.Abs(heatOfPotassium-(-424.6+252.4+230.0)) > 1e-9 {
		t.Errorf("KOH: %v kJ/mol", heatOfPotassium)
	}
}

// Every gram of alkali more gives heat: up to 50 %, all at 25 °C.
func TestMoreAlkaliInTheSameWaterGivesMoreHeat(t *testing.T) {
	before := 0.0
	for grams := 1; grams <= 100; grams++ {
		m := Mixing{
			Water: units.Grams(100), WaterAt: units.Celsius(25), Heat: Older,
			Alkalis: []Portion{{Alkali: SodiumHydroxide, Mass: units.Grams(grams), Hydroxide: units.Whole(1)}},
		}
		heat := m.heat(float64(grams) / float64(100+grams))
		if heat <= before {
			t.Fatalf("%d g: %v J, not above %v", grams, heat, before)
		}
		before = heat
	}
}

// To 50 % and then thinned to 20 %, or to 20 % at once: 100 g in 100 and 300 g.
func TestAStockAndItsThinningGiveTheHeatOfDissolvingStraight(t *testing.T) {
	part := func(m units.Mass, hydroxide int, dissolved bool) []Portion {
		return []Portion{{Alkali: SodiumHydroxide, Mass: m, Hydroxide: units.Percent(hydroxide), Dissolved: dissolved}}
	}
	at25 := Mixing{Water: units.Grams(100), WaterAt: units.Celsius(25), Heat: Older, Alkalis: part(units.Grams(100), 100, false)}
	stock := at25.heat(0.5)
	at25.Water, at25.Alkalis = units.Grams(300), part(units.Grams(200), 50, true)
	thinning := at25.heat(0.2)
	at25.Water, at25.Alkalis = units.Grams(400), part(units.Grams(100), 100, false)
	if straight := at25.heat(0.2); math.Abs(stock+thinning-straight) > 1e-6 {
		t.Errorf("%v + %v J, and %v J straight", stock, thinning, straight)
	}
	// 22.30 and 42.05 kJ/mol of 2.5002 mol: worked out outside, to 0.1 kJ/mol.
	if math.Abs(thinning-2500.2*(42.05-22.30)) > 500 {
		t.Errorf("thinning gives %v J", thinning)
	}
}

// Perry's Chemical Engineers' Handbook, specific heats of aqueous solutions, KOH at
// 19 °C: 0.814 cal/(g K) at 4.76 mol % and 0.75 at 9.09, twenty and ten moles of
// water (memory). Within 3 %.
func TestHeatCapacityOfPotassiumHydroxideIsNearTheOlderTable(t *testing.T) {
	for water, calories := range map[float64]float64{20: 0.814, 10: 0.75} {
		strength := 56.105 / (56.105 + water*18.015)
		if got, want := capacityOfPotassium(strength, 19), 4.184*calories; math.Abs(got-want) > 0.03*want {
			t.Errorf("%v mol of water: %.3f J/(g K), want %.3f", water, got, want)
		}
	}
}

// The slope of the enthalpy equation at 25 °C, worked out outside the library.
func TestHeatCapacityOfSodiumHydroxideIsThatWorkedOutOutside(t *testing.T) {
	for percent, want := range map[float64]float64{10: 3.87, 20: 3.70, 25: 3.65, 30: 3.61, 100.0 / 3: 3.57, 35: 3.55, 40: 3.47, 45: 3.36, 50: 3.23} {
		h := enthalpyOfSodium(percent / 100)
		if got := h.capacity(25); math.Abs(got-want) > 0.0101 { // printed to 0.01, a mean of 20 to 30 °C
			t.Errorf("%v %%: %.4f J/(g K), want %v", percent, got, want)
		}
		if got := (h.at(30) - h.at(20)) / 10; math.Abs(got-want) > 0.0051 {
			t.Errorf("%v %%, 20 to 30 °C: %.4f J/(g K), want %v", percent, got, want)
		}
	}
}

// Water by the enthalpy equation: 104.66 and 419.60 J/g worked out outside; steam
// tables have 104.8 and 419.1 (recalled).
func TestEnthalpyOfWaterIsThatWorkedOutOutside(t *testing.T) {
	h := enthalpyOfSodium(0)
	for celsius, want := range map[float64]float64{25: 104.66, 100: 419.60} {
		if got := h.at(celsius); math.Abs(got-want) > 0.0051 {
			t.Errorf("%v °C: %.3f J/g, want %v", celsius, got, want)
		}
	}
}
