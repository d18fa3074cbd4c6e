package soap

import (
	"cmp"
	"slices"
	"strings"

	"example.com/lyewright/colour"
	"example.com/lyewright/colour/tint"
	"example.com/lyewright/fragrance"
	"example.com/lyewright/internal/names"
)

// named gives the formula with every fragrance and colourant under its id, wherever it is
// named: the formula itself where each of them is. A name that means none, or several,
// stays as it is, and the check says so.
func (f *Formula) named() *Formula {
	if !f.misnamed() {
		return f
	}
	g := f.clone()
	for i := range g.Parts {
		p := &g.Parts[i]
		for kind := Colourant; kind <= Fragrance; kind++ {
			list := p.additions(kind)
			for j := range list {
				if list[j].Unlisted {
					continue // the check says where it is known
				}
				if id := f.idOf(kind, list[j].Name); id != list[j].Name {
					list[j].Name, list[j].asked = id, list[j].Name
				}
			}
		}
		for j := range p.Match {
			m := &p.Match[j]
			if id := f.idOf(Colourant, m.Colourant); id != m.Colourant {
				m.Colourant, m.asked = id, m.Colourant
			}
		}
	}
	if g.Swatches != nil {
		for i := range g.Swatches.Read {
			loads := g.Swatches.Read[i].Loads
			for j := range loads {
				loads[j].Colourant = f.idOf(Colourant, loads[j].Colourant)
			}
		}
	}
	for i := range g.Weighed.Parts {
		w := &g.Weighed.Parts[i]
		at := partOf(g.Parts, w.Part)
		for j := range w.Additions {
			if at >= 0 {
				a := &w.Additions[j]
				if id := f.weighedAs(&g.Parts[at], a.Name); id != a.Name {
					a.Name, a.asked = id, a.Name
				}
			}
		}
	}
	return &g
}

// weighedAs is the name, in a part whose names are ids, of what was weighed under a name:
// that itself where the part has it, else the id that it means.
func (f *Formula) weighedAs(p *Part, name string) string {
	known := p.names()
	if slices.Contains(known, name) || slices.ContainsFunc(known,
		func(other string) bool { return sameName(other, name) }) {
		return name
	}
	for kind := Colourant; kind <= Fragrance; kind++ {
		if id := f.idOf(kind, name); slices.Contains(known, id) {
			return id
		}
	}
	return name
}

// misnamed reports whether a fragrance or a colourant is named by something else than its id.
func (f *Formula) misnamed() bool {
	other := func(kind AdditionKind, name string) bool { return f.idOf(kind, name) != name }
	for i := range f.Parts {
		p := &f.Parts[i]
		if len(p.Colourants)+len(p.Fragrances)+len(p.Match) > mostAdditions {
			return false // the check says so
		}
		for kind := Colourant; kind <= Fragrance; kind++ {
			list := p.additions(kind)
			for j := range list {
				if !list[j].Unlisted && other(kind, list[j].Name) {
					return true
				}
			}
		}
		for j := range p.Match {
			if other(Colourant, p.Match[j].Colourant) {
				return true
			}
		}
	}
	for i := range f.Weighed.Parts {
		w := &f.Weighed.Parts[i]
		if at := partOf(f.Parts, w.Part); at >= 0 && len(w.Additions) <= mostAdditions {
			for j := range w.Additions {
				if f.weighedAs(&f.Parts[at], w.Additions[j].Name) != w.Additions[j].Name {
					return true
				}
			}
		}
	}
	if f.Swatches == nil || len(f.Swatches.Read) > tint.MostSwatches {
		return false
	}
	for i := range f.Swatches.Read {
		for _, load := range f.Swatches.Read[i].Loads {
			if other(Colourant, load.Colourant) {
				return true
			}
		}
	}
	return false
}

// idOf is the id that a name of a fragrance or a colourant means: one of the formula's own, letter
// for letter and then folded, or a built-in one. A name that means none, or several, is given back.
func (f *Formula) idOf(kind AdditionKind, name string) string {
	id, _ := f.meaning(kind, name)
	return id
}

// meaning is idOf with what the table of names says of a name that is not one of the formula's own.
func (f *Formula) meaning(kind AdditionKind, name string) (id string, answer names.Answer) {
	if f.knows(kind, name) || name == "" {
		return name, names.Answer{}
	}
	folded := names.Fold(name)
	if kind == Fragrance {
		for i := range f.Materials {
			if id := f.Materials[i].ID; names.Fold(id) == folded {
				return id, names.Answer{}
			}
		}
	} else {
		for i := range f.Pigments {
			if id := f.Pigments[i].ID; names.Fold(id) == folded {
				return id, names.Answer{}
			}
		}
	}
	if answer = meaning(kind, name); answer.ID != "" && !answer.Unheld {
		return answer.ID, answer
	}
	return name, answer
}

// knows reports whether a name is the id of a fragrance or a colourant, as it stands.
func (f *Formula) knows(kind AdditionKind, id string) bool {
	if kind == Fragrance {
		return f.knowsFragrance(id)
	}
	return colour.Known(id) || f.ownColourant(id)
}

// meaning looks a fragrance or a colourant up in the table of names.
func meaning(kind AdditionKind, name string) names.Answer {
	if kind == Fragrance {
		return names.Look(names.Fragrance, name, fragrance.Known)
	}
	return names.Look(names.Colourant, name, colour.Known)
}

// unlisted checks that what is weighed unjudged is said to be, and that nothing else is.
func (c *checker) unlisted(t trail, kind AdditionKind, a *Addition) {
	if kind == Additive {
		c.additive(t, a)
		return
	}
	if c.causticAddition(t, kind, a) {
		return
	}
	if !a.Unlisted && c.f.knows(kind, a.Name) {
		return
	}
	id, answer := c.f.meaning(kind, a.Name)
	if c.f.knows(kind, id) {
		line := t // a copy, so that a line in order costs nothing
		c.fault(line.at("unlisted"), "true", "is given for "+id+", which is known, and judged", "leave it out", ErrConflict,
			"materials", "pigments")
		return
	}
	if reason, _ := nameFault(a.Name); reason != "" {
		return // said already
	}
	held, suggest, own := fragrance.Known, fragrance.Suggest, "materials"
	if kind == Colourant {
		held, suggest, own = colour.Known, colour.Suggest, "pigments"
	}
	reason, choice := answer.Why(held, nil)
	if a.Unlisted && len(choice) == 0 {
		return
	}
	line := t
	remedy := "write " + strings.Join(choice, " or ")
	if len(choice) == 0 {
		remedy = `bring it among the ` + own + `, or write "unlisted": true to weigh it unjudged`
		if near := suggest(a.Name); near != "" && metalNamed(a.Name) == "" {
			remedy = near + " If not, " + remedy
		}
	}
	at := line.at(kind.String())
	c.fault(at, a.asWritten(), cmp.Or(reason, "is not a "+kind.String()+" that is known"), remedy, ErrUnknown, own, own+
		"[]."+kind.String(), line.String()+".unlisted")
}

// asWritten is the name of an addition as the formula has it.
func (a *Addition) asWritten() string { return cmp.Or(a.asked, a.Name) }

// additive refuses, among the additives, what takes part in the chemistry and would not
// be reckoned with.
func (c *checker) additive(t trail, a *Addition) {
	reason, remedy := "", ""
	if metalNamed(a.Name) == "aluminium" && !isFilm(a.Glitter, a.Name) {
		reason = "is a name of aluminium, which lye and batter dissolve: hydrogen comes off, which burns"
		remedy = `leave it out; list a pigment that has aluminium among the colourants, where it is judged, and call ` +
			`a film with a layer of it a glitter, with "glitter": "polymer" or "degradable-tested"`
	} else {
		reason, remedy = reckonedElsewhere(a.Name)
	}
	if reason == "" && !a.Unlisted {
		if oil := c.oilCalled(a.Name); oil != "" {
			reason, remedy = "is a name of an oil ("+oil+"), which takes up alkali",
				`list it among the oils; or, where it is no oil (a puree, a meal), write "unlisted": true`
		}
	}
	if reason != "" {
		line := t // a copy, so that a line in order costs nothing
		path := line.String()
		c.fault(line.at(Additive.String()), a.Name, reason, remedy, ErrConflict, path+".unlisted", path+".glitter",
			"oils[].oil")
	}
}

// oilCalled gives the id of an oil that a name may mean: one of the formula's, or a
// built-in one; empty where there is none.
func (c *checker) oilCalled(name string) string {
	folded := names.Fold(name)
	for i := range c.f.Oils {
		if row := c.f.Oils[i].Oil.row; row != nil && row.id != "" && (row.foldedID == folded || row.foldedName == folded) {
			return row.id
		}
	}
	answer := names.Look(names.Oil, name, isOilID)
	if answer.ID != "" && !answer.Unheld {
		return answer.ID
	}
	at := slices.IndexFunc(answer.Several, func(m names.Meaning) bool { return isOilID(m.ID) })
	if at < 0 {
		return ""
	}
	return answer.Several[at].ID
}
