package soap_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
)

// Each accuracy that is left out is named, by itself and with the others, and none where all
// three are given.
func TestATitrationSaysWhatItTakesAsExact(t *testing.T) {
	for left := range 8 {
		titration := lye.Titration{
			Alkali: soap.SodiumHydroxide, Sample: units.Grams(2), Normality: units.Whole(1), Total: units.Millilitres(49),
			Balance: units.Milligrams(10), Burette: units.Millilitres(1), Titrant: units.MustRatio("0.2 %"),
		}
		var want []string
		if left&1 > 0 {
			titration.Balance, want = units.Mass{}, append(want, "balance")
		}
		if left&2 > 0 {
			titration.Burette, want = units.Volume{}, append(want, "burette")
		}
		if left&4 > 0 {
			titration.Titrant, want = units.Ratio{}, append(want, "titrant")
		}
		found := soap.TitrationFindings(titration)
		if len(want) == 0 {
			if len(found) != 0 {
				t.Errorf("all are given: %v", found)
			}
			continue
		}
		if len(found) != 1 || found[0].Code != "titration-exact" || found[0].Severity != soap.Note ||
			!slices.Equal(found[0].Names, want) {
			t.Errorf("without %v: %+v", want, found)
			continue
		}
		for _, name := range want {
			if !strings.Contains(found[0].Message(), name) {
				t.Errorf("%s does not name the %s", found[0].Message(), name)
			}
		}
	}
}

// A bottle that was titrated without a word of how well the scale weighs.
func ExampleTitrationFindings() {
	for _, f := range soap.TitrationFindings(lye.Titration{
		Burette: units.Millilitres(1),
		Titrant: units.MustRatio("0.2 %"),
	}) {
		fmt.Println(f.Severity, f.Code, f.Names)
	}
	// Output: note titration-exact [balance]
}
