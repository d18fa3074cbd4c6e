package soap_test

import (
	"strings"
	"testing"

	"example.com/lyewright/colour"
	"example.com/lyewright/fragrance"
	"example.com/lyewright/internal/names"
	"example.com/lyewright/soap"
	"example.com/lyewright/soap/lye"
)

// An id with spaces in place of its hyphens is a name of what it stands for: every one of them is found.
func TestEveryIDIsFoundAsAName(t *testing.T) {
	found := func(kind names.Kind, id string, held func(id string) bool) {
		if answer := names.Look(kind, strings.ReplaceAll(id, "-", " "), held); answer.ID != id {
			t.Errorf("%s %s: %+v", kind, id, answer)
		}
	}
	for _, o := range soap.Oils() {
		found(names.Oil, o.ID(), func(id string) bool { _, err := soap.LookUpOil(id); return err == nil })
	}
	for _, m := range fragrance.Materials() {
		found(names.Fragrance, m.ID(), fragrance.Known)
	}
	for _, c := range colour.Colourants() {
		found(names.Colourant, c.ID(), colour.Known)
	}
	for _, a := range lye.Acids() { // some are not in the table of names
		if got := lye.AcidNamed(strings.ReplaceAll(a.ID, "-", " ")); got != a.ID {
			t.Errorf("acid %s: %q", a.ID, got)
		}
	}
}
