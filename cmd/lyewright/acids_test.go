package main

import (
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"testing"

	"example.com/lyewright/soap/lye"
)

// Each acid is listed with its formula, whose mass by the abridged atomic weights (C 12.011, H 1.008, O 15.999) is the
// molar mass that is given; each name beside it means that acid to a formula; and the two that are sold dissolved say
// that their strength must be written.
func TestTheAcidsAreListedWithWhatAFormulaMayCallThem(t *testing.T) {
	stdout, stderr, status := lyewright("", "lye", "acids", "-json")
	list, _ := decode(t, stdout).(object)
	if status != done || stderr != "" || list.values["schema"] != "lye-acids/1" {
		t.Fatalf("exit %d, %s%s", status, stdout, stderr)
	}
	page, _, _ := lyewright("", "lye", "acids")
	matchGolden(t, golden+"/lye-acids.txt", page)
	acids, _ := list.values["acids"].([]any)
	if len(acids) != 8 {
		t.Errorf("%d acids", len(acids))
	}
	atoms := map[byte]float64{'C': 12.011, 'H': 1.008, 'O': 15.999}
	names := 0
	for _, v := range acids {
		o := keyed(t, "acid", v, "acid:t name:t formula:t molar_g_per_mol:n strength_needed:b names:l")
		id, formula := o.values["acid"].(string), o.values["formula"].(string)
		mass := 0.0
		for i := 0; i < len(formula); {
			digits := i + 1
			for digits < len(formula) && '0' <= formula[digits] && formula[digits] <= '9' {
				digits++
			}
			count := 1
			if digits > i+1 {
				count, _ = strconv.Atoi(formula[i+1 : digits])
			}
			mass += atoms[formula[i]] * float64(count)
			i = digits
		}
		if got, _ := o.values["molar_g_per_mol"].(json.Number).Float64(); math.Abs(got-mass) > 0.0011 {
			t.Errorf("%s: %g g/mol, by its formula %g", id, got, mass)
		}
		if needed := o.values["strength_needed"]; needed != (id == "acetic-acid" || id == "lactic-acid") {
			t.Errorf("%s: a strength is needed: %v", id, needed)
		}
		if !strings.Contains(page, "\n"+id+" ") || !strings.Contains(page, " "+formula+" ") {
			t.Errorf("%s is not on the page", id)
		}
		for _, name := range o.values["names"].([]any) {
			names++
			if acid, err := lye.LookUpAcid(name.(string)); err != nil || acid.ID != id {
				t.Errorf("%s: %s is %s, %v", id, name, acid.ID, err)
			}
		}
	}
	if names < 15 || strings.Count(page, "strength must be written") != 2 {
		t.Errorf("%d names", names)
	}
	_, stderr, status = lyewright("", "lye", "acids", "vinegar")
	if status != wrongInput || !strings.Contains(stderr, `"vinegar" is more than lye acids needs`) {
		t.Errorf("exit %d, %s", status, stderr)
	}
}
