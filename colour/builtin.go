package colour

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

//go:embed data/colourants.txt
var table string

//go:embed data/sources.txt
var sourcesTable string

// DataEdition is the date of the built-in table, as year-month-day. A figure of it changes
// only with this date.
func DataEdition() string { return refdata.Edition(table) }

// LookUp finds a built-in colourant by its id, such as "titanium-dioxide", or by a name in
// everyday use that means it alone, such as "charcoal": case, accents, hyphens and
// apostrophes do not count, and [Colourant.Asked] tells the name. The error is a
// [fault.Fault] of kind [fault.ErrUnknown]: the name has several meanings, which it lists,
// or one that is not held, or is not known, and then it offers the nearest id.
func LookUp(name string) (Colourant, error) {
	if c, found := builtIn(name); found {
		return c, nil
	}
	answer := names.Look(names.Colourant, name, Known)
	if c, found := builtIn(answer.ID); found && !answer.Unheld {
		c.asked = name
		return c, nil
	}
	reason, choice := answer.Why(Known, nil)
	remedy := "bring it as one of your own"
	switch {
	case len(choice) > 0:
		remedy = "write " + strings.Join(choice, " or ")
	case reason == "":
		reason, remedy = "is not a built-in colourant", cmp.Or(Suggest(name), remedy)
	}
	return Colourant{}, fault.Fault{Path: "colourant", Text: name, Reason: reason, Remedy: remedy, Kind: fault.ErrUnknown}
}

// Known reports whether an id is that of a built-in colourant, letter for letter.
func Known(id string) bool {
	_, found := index().Find(id)
	return found
}

func builtIn(id string) (c Colourant, found bool) {
	stanza, found := index().Find(id)
	return Colourant{stanza: stanza}, found
}

// Suggest gives a sentence that offers the built-in id nearest to a mistyped name; empty
// where none is near, or several are. It is for a plain name that may have been meant as a
// built-in one.
func Suggest(name string) string {
	return nearest.Question(among().Nearest(name, func(a, b string) bool { return a == b }))
}

// Colourants lists the built-in colourants in order of id.
func Colourants() []Colourant {
	var list []Colourant
	for stanza := range refdata.Stanzas(table) {
		list = append(list, Colourant{stanza: stanza})
	}
	return list
}

// OfCI gives the built-in colourant of a Colour Index number: of several that which has
// the fewest other numbers, and the first of these in order of id. Of a number with a
// suffix that is not held, such as "15850:1", it is that of the dye, 15850: its lakes are
// made of it. found is false of a number of which nothing is held.
func OfCI(ci string) (c Colourant, found bool) {
	if c, found = byCI()[ci]; !found {
		dye, _, variety := strings.Cut(ci, ":")
		if variety {
			c, found = byCI()[dye]
		}
	}
	return c, found
}

// byCI lists the colourants by their numbers, once.
var byCI = sync.OnceValue(func() map[string]Colourant {
	list, fewest := map[string]Colourant{}, map[string]int{}
	for _, c := range Colourants() {
		numbers := c.CI()
		for _, ci := range numbers {
			if n, known := fewest[ci]; !known || len(numbers) < n {
				list[ci], fewest[ci] = c, len(numbers)
			}
		}
	}
	return list
})

var (
	index       = sync.OnceValue(func() refdata.Index { return refdata.IndexStanzas(table, "colourant") })
	sourceIndex = sync.OnceValue(func() refdata.Index { return refdata.IndexLines(sourcesTable) })
)

func ids() []string { return index().IDs() }

// among is where the nearest id is looked for.
var among = sync.OnceValue(func() names.Set { return names.Among(names.Colourant, ids()) })

// sourceOf finds a publication.
func sourceOf(key, place string, how string) cite.Source {
	line, found := sourceIndex().Find(key)
	if !found {
		return cite.Source{}
	}
	if place == "" {
		place = refdata.Field(line, 3)
	}
	return cite.Source{Title: refdata.Field(line, 1), Edition: refdata.Field(line, 2), Place: place, How: cite.ParseHow(how)}
}
