package names

import (
	"strings"
	"sync"
)

// An Answer is what a name means among the ids that are held.
type Answer struct {
	// ID is what the name means, empty where it has no meaning or several.
	ID string
	// Note is what the table says of the name, or of what it means; may be empty.
	Note string
	// Several are the meanings of a name that has to be chosen from, or must not be taken
	// without a look at its note; one without an ID is a further material.
	Several []Meaning
	// Unheld reports that what the name means is known and not held: ID says what, where
	// that has an id.
	Unheld bool
}

// Found reports whether the table or the ids know the name at all.
func (a Answer) Found() bool { return a.ID != "" || a.Unheld || a.Several != nil }

// Look gives what a name means: as an id that is held, else by the table; as it is written,
// then without each of the endings of a name. held reports whether an id, lower case and
// hyphenated, is held. An id wins over the table, whose note is given beside it.
func Look(kind Kind, name string, held func(id string) bool) Answer {
	for spelling := range spellings(Fold(name)) {
		id := strings.ReplaceAll(spelling, " ", "-")
		entry, found := Find(kind, spelling)
		switch {
		case held(id):
			return Answer{ID: id, Note: entry.note(id)}
		case found:
			return entry.answer(held)
		case known(kind, id):
			return Answer{ID: id, Unheld: true}
		}
	}
	return Answer{}
}

// Note gives what the table says of a name, or of what it means there; empty where it says
// nothing.
func Note(kind Kind, name string) string {
	for spelling := range spellings(Fold(name)) {
		if entry, found := Find(kind, spelling); found {
			return entry.note(strings.ReplaceAll(spelling, " ", "-"))
		}
	}
	return ""
}

// note is what an entry says of one of its meanings, or of the name where it is another.
func (e Entry) note(id string) string {
	for _, m := range e.Meanings {
		if m.ID == id && m.Note != "" {
			return m.Note
		}
	}
	for _, m := range e.Meanings {
		if m.Note != "" {
			return m.Note
		}
	}
	return ""
}

func (e Entry) answer(held func(id string) bool) Answer {
	only := e.Meanings[0]
	switch {
	case e.Several:
		return Answer{Several: e.Meanings, Note: e.note("")}
	case only.ID == "" || !held(only.ID):
		return Answer{ID: only.ID, Note: only.Note, Unheld: true}
	}
	return Answer{ID: only.ID, Note: only.Note}
}

// known reports whether some name of the table means an id.
func known(kind Kind, id string) bool { return allIDs()[string(kind)+" "+id] }

// allIDs are the ids that the table knows, each behind its kind: read once, when a name is
// first looked for that stands nowhere.
var allIDs = sync.OnceValue(func() map[string]bool {
	ids := map[string]bool{}
	for _, kind := range []Kind{Oil, Fragrance, Colourant, Acid, Alkali} {
		for _, l := range listed()[kind] {
			for _, m := range read(l.line).Meanings {
				if m.ID != "" {
					ids[string(kind)+" "+m.ID] = true
				}
			}
		}
	}
	return ids
})
