package lye_test

import (
	"testing"

	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
)

// crystallises gives the temperature in °C for a strength in percent.
func crystallises(t *testing.T, strength float64) float64 {
	t.Helper()
	at, ok := lye.Solution{Alkali: lye.SodiumHydroxide, Strength: share(t, strength/100)}.Crystallises()
	if !ok {
		t.Fatalf("%v %%: not known", strength)
	}
	return at.Celsius()
}

// The handbook's freezing points were measured, the diagram was read off a plot:
// within the 1 K that CrystallisesWithin states, and always on the warm side.
// Measured: 0.36 K at 1 % to 0.99 K at 10 %.
func TestTheDiagramFreezesWhereTheHandbookDoes(t *testing.T) {
	within := lye.CrystallisesWithin().Kelvin()
	rows := 0
	for _, r := range table(t, "freezing.tsv", 13, 5) {
		if r[0] != "NaOH" {
			continue
		}
		rows++
		got, printed := crystallises(t, number(t, r[1])), number(t, r[2])
		if got < printed || got > printed+within {
			t.Errorf("%s %%: %.2f °C, the handbook has %s", r[1], got, r[2])
		}
	}
	if rows != 8 {
		t.Errorf("%d rows, want 8", rows)
	}
}

// What is said of the usual lyes: 38 to 40 % near 15 to 16 °C, the hydrate of 38.8 %;
// 50 % at 11 to 12 °C; the coldest between 18.7 % and 25 %.
func TestUsualLyesCrystalliseWhereTheyAreKnownTo(t *testing.T) {
	for strength := 38.0; strength <= 40; strength += 0.1 {
		if at := crystallises(t, strength); at < 15 || at > 16 {
			t.Errorf("%.1f %%: %.2f °C", strength, at)
		}
	}
	if at := crystallises(t, 50); at < 11 || at > 12 {
		t.Errorf("50 %%: %.2f °C", at)
	}
	coldest, where := 0.0, 0.0
	for strength := 0.0; strength <= 53; strength += 0.01 {
		if at := crystallises(t, strength); at < coldest {
			coldest, where = at, strength
		}
	}
	if !near(coldest, -28, 0.1) || !near(where, 18.68, 0.02) {
		t.Errorf("coldest %.2f °C at %.2f %%", coldest, where)
	}
	if at := crystallises(t, 0); at != 0 {
		t.Errorf("water freezes at %v °C", at)
	}
}

// The rows of the plot, and half way between two of them.
func TestBetweenRowsOfTheDiagramTheLineIsStraight(t *testing.T) {
	rows := table(t, "naoh-diagram.tsv", 40, 4)
	for i, r := range rows {
		strength, want := number(t, r[0]), number(t, r[1])
		if at := crystallises(t, strength); !near(at, want, 1e-6) {
			t.Errorf("%v %%: %v °C, want %v", strength, at, want)
		}
		if i > 0 {
			before := rows[i-1]
			strength, want = (strength+number(t, before[0]))/2, (want+number(t, before[1]))/2
			if at := crystallises(t, strength); !near(at, want, 1e-6) {
				t.Errorf("%v %%: %v °C, want %v", strength, at, want)
			}
		}
	}
}

// The handbook's lyes of potassium hydroxide freeze below 0 °C, all of them, and a
// 45 % one is liquid down to −29 °C: nothing to be told at the bench.
func TestNothingIsSaidOfPotassiumHydroxideOrBeyondTheDiagram(t *testing.T) {
	for _, r := range table(t, "freezing.tsv", 13, 5) {
		if r[0] == "KOH" && number(t, r[2]) >= 0 {
			t.Errorf("%s %%: %s °C", r[1], r[2])
		}
	}
	for strength := range 53 {
		s := lye.Solution{Alkali: lye.PotassiumHydroxide, Strength: units.Percent(strength)}
		if at, ok := s.Crystallises(); ok || at.Given() {
			t.Errorf("KOH %d %%: %v", strength, at)
		}
		if at, ok := s.Boils(); ok || at.Given() {
			t.Errorf("KOH %d %%: boils at %v", strength, at)
		}
	}
	for _, s := range []lye.Solution{
		{},
		{Alkali: lye.SodiumHydroxide},
		{Strength: units.Percent(30)},
		{Alkali: lye.SodiumHydroxide, Strength: percent("53.0601")},
		{Alkali: lye.SodiumHydroxide, Strength: units.Whole(0).Sub(units.Percent(1))},
	} {
		if at, ok := s.Crystallises(); ok || at.Given() {
			t.Errorf("%v: %v", s, at)
		}
		if at, ok := s.Boils(); ok || at.Given() {
			t.Errorf("%v: boils at %v", s, at)
		}
	}
}

// The vapour pressure equation at 101.325 kPa, worked out outside the library: four
// rows and water; between them a straight line.
func TestLyesBoilWhereWorkedOutOutside(t *testing.T) {
	for _, c := range []struct {
		strength units.Ratio
		want     float64
	}{
		{units.Percent(0), 100},
		{percent("12.5"), 106}, // half way
		{units.Percent(25), 112},
		{units.Whole(1).Over(units.Whole(3)), 121},
		{units.Percent(40), 130},
		{units.Percent(45), 138}, // half way
		{units.Percent(50), 146},
	} {
		at, ok := lye.Solution{Alkali: lye.SodiumHydroxide, Strength: c.strength}.Boils()
		if !ok || !near(at.Celsius(), c.want, 1e-6) {
			t.Errorf("%v: %v, want %v °C", c.strength, at, c.want)
		}
	}
	if at, ok := (lye.Solution{Alkali: lye.SodiumHydroxide, Strength: percent("50.0001")}).Boils(); ok {
		t.Errorf("above 50 %%: %v", at)
	}
}
