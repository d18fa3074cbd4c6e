package fragrance

import (
	"cmp"
	_ "embed"
	"strings"
	"sync"

	"example.com/lyewright/internal/names"
	"example.com/lyewright/internal/nearest"
	"example.com/lyewright/internal/refdata"
	"example.com/lyewright/units/cite"
	"example.com/lyewright/units/fault"
)

//go:embed data/materials.txt
var materialsTable string

//go:embed data/sources.txt
var sourcesTable string

// LookUp finds a built-in material by its id, such as "clove-bud", or by a name in everyday
// use that means it alone, such as "cinnamon bark": case, accents, hyphens and apostrophes
// do not count, and [Material.Asked] tells the name. The error is a [fault.Fault] of kind
// [fault.ErrUnknown]: the name has several meanings, which it lists, or one that is not
// held, or is not known, and then it offers the nearest id.
func LookUp(name string) (Material, error) {
	if m, found := builtIn(current(), name); found {
		return Material{m}, nil
	}
	answer := names.Look(names.Fragrance, name, Known)
	if m, found := builtIn(current(), answer.ID); found && !answer.Unheld {
		m.asked = name
		return Material{m}, nil
	}
	reason, choice := answer.Why(Known, nil)
	remedy := "bring it with its supplier's certificate"
	switch {
	case len(choice) > 0:
		remedy = "write " + strings.Join(choice, " or ")
	case reason == "":
		reason, remedy = "is not a built-in fragrance", cmp.Or(Suggest(name), remedy)
	}
	return Material{}, fault.Fault{Path: "fragrance", Text: name, Reason: reason, Remedy: remedy, Kind: fault.ErrUnknown}
}

// Known reports whether an id is that of a built-in material, which it does not read.
func Known(id string) bool {
	_, found := index().Find(id)
	return found
}

// Materials lists the built-in materials in order of id.
func Materials() []Material {
	var list []Material
	for stanza := range refdata.Stanzas(materialsTable) {
		list = append(list, Material{read(current(), stanza)})
	}
	return list
}

// Suggest gives a sentence that offers the built-in id nearest to a mistyped name; empty
// where none is near, or several are. It is for a plain name that may have been meant as a
// built-in one.
func Suggest(name string) string {
	return nearest.Question(among().Nearest(name, func(a, b string) bool { return a == b }))
}

var (
	index       = sync.OnceValue(func() refdata.Index { return refdata.IndexStanzas(materialsTable, "material") })
	sourceIndex = sync.OnceValue(func() refdata.Index { return refdata.IndexLines(sourcesTable) })
)

// ids are those of the built-in materials, in order.
func ids() []string { return index().IDs() }

// among is where the nearest id is looked for.
var among = sync.OnceValue(func() names.Set { return names.Among(names.Fragrance, ids()) })

func builtIn(rs *rules, id string) (*material, bool) {
	stanza, found := index().Find(id)
	if !found {
		return nil, false
	}
	return read(rs, stanza), true
}

// read reads a stanza of the table under an edition of the rules.
func read(rs *rules, stanza string) *material {
	m := &material{}
	key, source := "", cite.Source{}
	for line := range refdata.Lines(stanza) {
		value := refdata.Field(line, 1)
		switch word := refdata.Field(line, 0); word {
		case "material":
			m.id = value
		case "name":
			m.name = value
		case "latin":
			m.latin = value
		case "annex":
			m.annex = true
		case "coloured":
			m.coloured = true
		case "behaviour":
			for i, word := range Behaviours() {
				if word == value {
					m.recalled |= 1 << i
				}
			}
		case "standard", "entry":
			body := IFRA
			if word == "entry" {
				body = EU
			}
			if r := rs.numbered(body, value); r != nil {
				m.own = append(m.own, r)
			}
		case "c":
			if of := refdata.Field(line, 4); of != key {
				key, source = of, sourceOf(of)
			}
			m.figures = append(m.figures, Figure{
				CAS: CAS{value}, Low: percentage(refdata.Field(line, 2)), High: percentage(refdata.Field(line, 3)),
				Name: refdata.Field(line, 5), Source: source,
			})
		case "note":
			m.notes = append(m.notes, value)
		}
	}
	m.assemble(rs)
	m.alone()
	return m
}

// sourceOf finds a publication.
func sourceOf(key string) cite.Source {
	line, _ := sourceIndex().Find(key)
	return cite.Source{Title: refdata.Field(line, 1), Edition: refdata.Field(line, 2), Place: refdata.Field(line, 3), How: cite.ParseHow(refdata.Field(line, 4))}
}
