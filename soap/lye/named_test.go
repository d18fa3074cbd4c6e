package lye_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/internal/names"
	"example.com/lyewright/soap/lye"
)

// Every name by which an acid goes is found among other words as it is alone, but for stearin, which is the hard part
// of palm oil as well.
func TestEveryNameOfAnAcidIsFoundAmongOtherWords(t *testing.T) {
	tried := 0
	for _, a := range lye.Acids() {
		for _, name := range append(names.Called(names.Acid, a.ID), strings.ReplaceAll(a.ID, "-", " ")) {
			if name == "stearin" {
				continue
			}
			tried++
			alone := lye.AcidNamed(name)
			if alone == "" {
				t.Errorf("%q is no acid", name)
			}
			for _, longer := range []string{"lantern " + name + " jug", strings.ToUpper("hall " + name)} {
				if got := lye.AcidNamed(longer); got != alone {
					t.Errorf("%q is %q, and %q is %q", name, alone, longer, got)
				}
			}
		}
	}
	if tried < 20 {
		t.Errorf("%d names were tried", tried)
	}
	for _, name := range []string{"lantern stearin jug", "hall rice", "viner", "accent", "cider"} {
		if got := lye.AcidNamed(name); got != "" {
			t.Errorf("%q is %q", name, got)
		}
	}
	if !slices.Contains(names.Called(names.Acid, "acetic-acid"), "vinegar") {
		t.Error("vinegar is not a name of acetic acid")
	}
}
