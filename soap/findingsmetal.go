package soap

import (
	"slices"

	"example.com/lyewright/colour"
	"example.com/lyewright/internal/names"
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
		f := Finding{
			Code: "hydrogen", Severity: Danger, Subject: t.String(), Names: []string{a.Colourant.Name()},
			Source: holds[i].InAlkali().Source(),
		}
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

// metalByName judges a name, and reports whether it is that of such a metal. A declaration does not
// outweigh the name: only what is called a glitter, and said to be one of film, is a film of which no
// more than a thin layer is metal. That is judged by [judge.glitter].
func (j *judge) metalByName(t trail, glitter Glitter, name string) bool {
	metal := metalNamed(name)
	if metal == "" || isFilm(glitter, name) {
		return false
	}
	line := t // a copy, so that a line in order costs nothing
	j.add(Finding{Code: "hydrogen", Severity: Danger, Subject: line.String(), Names: []string{name, metal}, Detail: byItsName, Source: cite.Source{How: cite.Memory}})
	return true
}

// metalThing judges an embed or a topping, which meets the batter as it is, by its name.
func (j *judge) metalThing(t trail, glitter Glitter, name string) {
	if metal := metalThing(name); metal != "" && !isFilm(glitter, name) {
		line := t // a copy, so that a line in order costs nothing
		j.add(Finding{
			Code: "hydrogen", Severity: Danger, Subject: line.String(), Names: []string{name, metal},
			Detail: byItsName, Source: cite.Source{How: cite.Memory},
		})
	}
}

// metalVessel judges a vessel by its name: fresh batter dissolves a wall of such a metal, unless it is lined or coated.
func (j *judge) metalVessel(t trail, name string) {
	metal := metalThing(name)
	if metal == "" || slices.ContainsFunc(names.Words(name), linedWithin.has) {
		return
	}
	line := t
	j.add(Finding{
		Code: "hydrogen", Severity: Danger, Subject: line.String(), Names: []string{name, metal},
		Detail: vesselOfIt, Source: cite.Source{How: cite.Memory},
	})
}

// isFilm reports whether what has the name of a metal is a film with a layer of it: it is declared as a
// glitter of film, and its name is that of a glitter and of no powder, flake or foil.
func isFilm(glitter Glitter, name string) bool {
	return (glitter == PolymerGlitter || glitter == DegradableGlitter) && namesGlitter(name)
}
