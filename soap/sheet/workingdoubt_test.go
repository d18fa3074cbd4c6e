package sheet_test

import (
	"strconv"
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/soap/sheet"
	"example.com/lyewright/units"
)

// By hand, of two oils of 500 g at 200 (199 to 201) mg/g, 8 % superfat, NaOH of 98 (97.5 to
// 98.5) % and scales of 0.1 g: 184 g × 39.997/56.105/0.98 = 133.8498 g of alkali. At worst
// 133.9498 × 0.985 × 56.105/39.997 = 185.0769 g of KOH meet 2 × 499.9 × 0.199 = 198.9602 g
// of demand, which leaves 6.98 %. Dry are 1000 g and 131.173 g of hydroxide.
func TestTheWorstAndTheDryMassAreThoseWorkedOutByHand(t *testing.T) {
	got := map[string]string{}
	for _, s := range sheet.Working(batchOf(t, bar())) {
		got[s.Of] = s.Result
		if s.Of == "Superfat of the batch, at worst" && strings.Count(s.Figures, "0.985") != 1 {
			t.Errorf("the most alkali is not that of the high end: %s", s.Figures)
		}
	}
	if worst := got["Superfat of the batch, at worst"]; !strings.HasPrefix(worst, "6.97") &&
		!strings.HasPrefix(worst, "6.98") {
		t.Errorf("at worst %s, by hand 6.98 %%", worst)
	}
	if dry := got["Dry mass"]; !strings.HasPrefix(dry, "1131.17") {
		t.Errorf("dry mass %s, by hand 1131.17 g", dry)
	}
}

// Oleic acid alone (M 282.468): n = 1/282.468, 56105 n/(1 + 38.049/3 n) = 190.0891 mg KOH/g.
func TestTheValueOfAProfileIsDerived(t *testing.T) {
	b := batchOf(t, bar("oils", `[{"oil": "hall-oil", "name": "Hall oil", "share": "100 %", "profile": {"C18:1": "100 %"}}]`))
	for _, s := range sheet.Working(b) {
		if s.Of == "Hall oil" && strings.HasPrefix(s.Formula, "value of fatty acids") {
			if !strings.HasPrefix(s.Result, "190.0") || !strings.Contains(s.Figures, "100 / 282.468") {
				t.Errorf("%s = %s", s.Figures, s.Result)
			}
			return
		}
	}
	t.Error("no step derives the value of the profile")
}

// step gives the one step of a working with such a name.
func step(t *testing.T, steps []sheet.Step, of string) sheet.Step {
	t.Helper()
	for _, s := range steps {
		if s.Of == of {
			return s
		}
	}
	t.Fatalf("no step of %q", of)
	return sheet.Step{}
}

// By hand, of the same bar: each oil may be off by 500 × 0.002/2 = 0.5 g of KOH and twice by 0.05 × 0.2, which makes
// 2 × (0.25 + 2 × 0.0001)/3 = 0.166800 g². The alkali, 133.8498 g, may be off by 0.01/2 × 1.402730 of that, 0.938780 g,
// and twice by 0.05 × 0.98 × 1.402730 = 0.068734 g: 0.293769 + 0.003150 = 0.296919 g². With 184 g of alkali as KOH for
// 200 g the margin is 2 × √((184/200²)² × 0.1668 + 0.296919/200²) = 0.6619 %.
func TestTheLikelyRangeIsThatWorkedOutByHand(t *testing.T) {
	steps := sheet.Working(batchOf(t, bar()))
	for of, want := range map[string]string{
		"Demand": "0.1668 g²", "Alkali": "0.2969", "Likely range of the batch": "0.6619 % of the demand, 7.3381 to 8.6619 " +
			"% of superfat",
	} {
		if got := step(t, steps, of).Result; !strings.HasPrefix(got, want) {
			t.Errorf("%s: %s, by hand %s", of, got, want)
		}
	}
}

// 267.6997 g of water and 133.8498 g of alkali on a scale of 0.1 g: 2677 divisions to the nearest, 1338 down. 500 g are
// a whole number of them and need no step.
func TestTheRoundingToTheScaleIsDerived(t *testing.T) {
	steps := sheet.Working(batchOf(t, bar()))
	for of, want := range map[string][3]string{
		"Water":                   {"2677 × 0.1", "267.7 g", ", to the nearest whole number"},
		"Sodium hydroxide (NaOH)": {"1338 × 0.1", "133.8 g", ", down to a whole number"},
	} {
		found := false
		for _, s := range steps {
			if s.Of != of || !strings.HasPrefix(s.Formula, "to weigh = ") {
				continue
			}
			found = s.Figures == want[0] && s.Result == want[1] && strings.HasSuffix(s.Because, want[2])
			quotient, rest, _ := strings.Cut(s.Because, " = ")
			sheetsOwn, _, _ := strings.Cut(rest, ",")
			follow(t, of, sheet.Step{Of: of, Figures: quotient, Result: sheetsOwn})
		}
		if !found {
			t.Errorf("%s: no step of %v in %+v", of, want, steps)
		}
	}
	for _, s := range steps {
		if s.Of == "Hall oil" && strings.HasPrefix(s.Formula, "to weigh = ") {
			t.Errorf("500 g need no rounding: %+v", s)
		}
	}
}

// NaOH in 5 mol of water gives off 37.761 kJ/mol (NBS Circular 500), and what is newer 1.64 more. 39.997 g and 5 ×
// 18.015 g of water, both at 25 °C, hold just that: 39.401 kJ. KOH counts with 57.8 kJ/mol. A calculator follows every
// step to the bound, and to the density, that the package gives.
func TestTheLyeIsDerivedToWhatThePackageGives(t *testing.T) {
	mole := lye.Mixing{
		Water: units.Milligrams(90_075), WaterAt: units.Celsius(25),
		Alkalis: []lye.Portion{{Alkali: lye.SodiumHydroxide, Mass: units.Milligrams(39_997), Hydroxide: units.Whole(1)}},
	}
	steps, err := mole.Derivation()
	if err != nil || len(steps) != 3 || steps[0].Figures != "37.761 + 0 + 1.64" || !strings.HasPrefix(steps[1].Result,
		"39.401 kJ") {
		t.Fatalf("%v, %+v", err, steps)
	}
	stock := lye.Portion{
		Alkali: lye.SodiumHydroxide, Mass: units.Grams(200), Hydroxide: units.Percent(50),
		Dissolved: true,
	}
	potash := lye.Portion{Alkali: lye.PotassiumHydroxide, Mass: units.Grams(40), Hydroxide: units.Percent(90)}
	dry := lye.Portion{Alkali: lye.SodiumHydroxide, Mass: units.Grams(100), Hydroxide: units.Percent(98)}
	acid, _ := lye.LookUpAcid("citric-acid-anhydrous")
	for name, m := range map[string]lye.Mixing{
		"dry": {
			Water: units.Grams(200), WaterAt: units.Celsius(12), Room: units.Celsius(20),
			Alkalis: []lye.Portion{dry},
		},
		"ice":   {Water: units.Grams(150), WaterAt: units.Celsius(5), Ice: units.Grams(50), Alkalis: []lye.Portion{dry}},
		"stock": {Water: units.Grams(100), WaterAt: units.Celsius(20), Alkalis: []lye.Portion{stock}},
		"cold": {
			Water: units.Grams(100), WaterAt: units.Celsius(10), Room: units.Celsius(10),
			Alkalis: []lye.Portion{stock},
		},
		"potash": {Water: units.Grams(100), WaterAt: units.Celsius(20), Alkalis: []lye.Portion{potash}},
		"both":   {Water: units.Grams(250), WaterAt: units.Celsius(20), Alkalis: []lye.Portion{dry, potash}},
		"an acid": {
			Water: units.Grams(250), WaterAt: units.Celsius(20), Alkalis: []lye.Portion{dry},
			Acids: []lye.Neutralised{{Acid: acid, Pure: units.Grams(20)}},
		},
		"as older": {Water: units.Grams(250), WaterAt: units.Celsius(20), Alkalis: []lye.Portion{dry}, Heat: lye.Older},
	} {
		bound, err := m.Bound()
		steps, derived := m.Derivation()
		if err != nil || derived != nil || len(steps) == 0 {
			t.Fatalf("%s: %v, %v", name, err, derived)
		}
		for _, s := range steps {
			follow(t, name, sheet.Step(s))
		}
		text, _, _ := strings.Cut(steps[len(steps)-1].Result, " ")
		if final, err := strconv.ParseFloat(text, 64); err != nil || final-bound.Final.Celsius() > 1e-4 ||
			bound.Final.Celsius()-final > 1e-4 {
			t.Errorf("%s: derived to %s, the bound is %s", name, text, bound.Final)
		}
	}
	for _, alkali := range []soap.Alkali{soap.SodiumHydroxide, soap.PotassiumHydroxide} {
		for _, strength := range []int{0, 5, 33, 50} {
			s := lye.Solution{Alkali: alkali, Strength: units.Percent(strength), At: units.Celsius(40)}
			density, err := s.Density()
			steps, derived := s.Derivation()
			if err != nil || derived != nil || !strings.HasPrefix(steps[len(steps)-1].Result, density.Text(6)+" g/mL") {
				t.Fatalf("%s of %d %%: %v, %v, %+v", alkali, strength, err, derived, steps)
			}
			for _, step := range steps {
				follow(t, alkali.String(), sheet.Step(step))
			}
		}
	}
	if _, err := (lye.Solution{}).Derivation(); err == nil {
		t.Error("nothing has a density")
	}
	if _, err := (lye.Mixing{}).Derivation(); err == nil {
		t.Error("nothing has a bound")
	}
}

// Wherever the sheet says how hot the lye gets, or what volume it has, the working derives it.
func TestWhatTheSheetSaysOfTheLyeIsDerived(t *testing.T) {
	heats, volumes := 0, 0
	for name, b := range batches(t) {
		derived := map[string]bool{}
		for _, s := range sheet.Working(b) {
			derived[s.Formula] = true
		}
		if b.Lye.Heat.Final.Given() {
			heats++
		}
		if b.Lye.VolumeKnown {
			volumes++
		}
		if derived["volume of the lye = hydroxide / strength / density"] != b.Lye.VolumeKnown {
			t.Errorf("%s: the volume of the lye: known %v", name, b.Lye.VolumeKnown)
		}
		if derived["temperature = 25 + 1000 × heat / (lye × its mean heat capacity)"] != b.Lye.Heat.Final.Given() {
			t.Errorf("%s: the heat of the lye: known %v", name, b.Lye.Heat.Final.Given())
		}
	}
	if heats == 0 || volumes == 0 {
		t.Errorf("%d heats and %d volumes", heats, volumes)
	}
}
