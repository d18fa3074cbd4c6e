package molar_test

import (
	"testing"

	"example.com/lyewright/internal/molar"
)

// Sums of the abridged standard atomic weights of IUPAC's CIAAW, table of 2021, H
// 1.0080, C 12.011, O 15.999, Na 22.990, K 39.098 g/mol (recalled, each inside the
// published interval, which was read), added up outside the library. In mg/mol.
func TestMolarMassesAreThoseAddedUpOutsideTheLibrary(t *testing.T) {
	for _, c := range []struct {
		formula   string
		got, want int
	}{
		{"NaOH", molar.NaOH, 39_997},
		{"KOH", molar.KOH, 56_105},
		{"H2O", molar.Water, 18_015},
		{"C3H8O3", molar.Glycerol, 92_094},
		{"Na2CO3", molar.SodiumCarbonate, 105_988},
		{"K2CO3", molar.PotassiumCarbonate, 138_204},
		{"CO2", molar.CarbonDioxide, 44_009},
		{"C6H8O7", molar.CitricAcid, 192_123},
		{"C6H8O7·H2O", molar.CitricAcid + molar.Water, 210_138},
		{"C3H6O3", molar.LacticAcid, 90_078},
		{"C2H4O2", molar.AceticAcid, 60_052},
		{"C12H24O2", molar.LauricAcid, 200_322},
		{"C16H32O2", molar.PalmiticAcid, 256_430},
		{"C18H36O2", molar.StearicAcid, 284_484},
		{"C18H34O2", molar.OleicAcid, 282_468},
	} {
		if c.got != c.want {
			t.Errorf("%s: %d mg/mol, want %d", c.formula, c.got, c.want)
		}
	}
}

// What two molecules become has the mass that the two had.
func TestNothingIsLostInAReaction(t *testing.T) {
	// 3 RCOOH + glycerol = triglyceride + 3 H2O: trilaurin, tripalmitin, tristearin and
	// triolein, 639.015, 807.339, 891.501 and 885.453 g/mol.
	for name, c := range map[string][2]int{
		"trilaurin":   {molar.LauricAcid, 639_015},
		"tripalmitin": {molar.PalmiticAcid, 807_339},
		"tristearin":  {molar.StearicAcid, 891_501},
		"triolein":    {molar.OleicAcid, 885_453},
	} {
		if got := 3*c[0] + molar.Glycerol - 3*molar.Water; got != c[1] {
			t.Errorf("%s: %d mg/mol, want %d", name, got, c[1])
		}
	}
	// 2 MOH + CO2 = M2CO3 + H2O.
	if 2*molar.NaOH+molar.CarbonDioxide != molar.SodiumCarbonate+molar.Water || 2*molar.KOH+molar.CarbonDioxide != molar.PotassiumCarbonate+molar.Water {
		t.Error("carbonate and water are not hydroxide and carbon dioxide")
	}
}
