package soap

import (
	"slices"

	"example.com/lyewright/colour"
	"example.com/lyewright/units/cite"
)

// metal judges whether an addition is a metal that alkali dissolves under hydrogen: a
// colourant by what it holds, anything by its names.
func (j *judge) metal(t trail, a *AdditionWeighing, glitter Glitter) {
	if !a.Colourant.Given() {
		if !j.metalByName(t, glitter, a.Name) && a.Material.Given() {
			j.metalByName(t, glitter, a.Material.Name())
		}
		return
	}
	holds, unheld := a.Colourant.Parts()
	if i := slices.IndexFunc(holds, func(part colour.Colourant) bool { return part.InAlkali().Stability == colour.Gassing }); i >= 0 {
		f := Finding{Code: "hydrogen", Severity: Danger, Subject: t.String(), Names: []string{a.Colourant.Name()}, Source: holds[i].InAlkali().Source()}
		if holds[i].Name() != f.Names[0] {
			f.Names = append(f.Names, holds[i].Name())
		}
		j.add(f)
		return
	}
	for _, name := range append([]string{a.Colourant.Name(), a.Colourant.ID()}, unheld...) {
		if j.metalByName(t, glitter, name) {
			return
		}
	}
}

// metalByName judges a name, and reports whether it is that of such a metal. The film of a
// glitter is judged by [judge.glitter]: of one that is metallised only a thin layer is metal.
func (j *judge) metalByName(t trail, glitter Glitter, name string) bool {
	metal := metalNamed(name)
	if metal == "" || glitter == PolymerGlitter || glitter == DegradableGlitter {
		return false
	}
	line := t // a copy, so that a line in order costs nothing
	j.add(Finding{Code: "hydrogen", Severity: Danger, Subject: line.String(), Names: []string{name, metal}, Detail: byItsName, Source: cite.Source{How: cite.Memory}})
	return true
}
