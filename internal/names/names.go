// Package names knows names in everyday use, in five languages, and the ids that they mean.
// It holds no table of oils, fragrances or colourants: a caller says which ids are held.
//
// The names are common knowledge and were not read anywhere; data/names.txt says so, and
// what was compared. Nothing is parsed at start-up: the lines are indexed once, when a name
// is first looked for, and each is read when it is found.
package names

import (
	_ "embed"
	"strings"
	"sync"

	"example.com/lyewright/internal/refdata"
)

//go:embed data/names.txt
var table string

//go:embed data/notes.txt
var notesTable string

var notes = sync.OnceValue(func() refdata.Index { return refdata.IndexLines(notesTable) })

// Kind is the kind of thing that a name is looked for among.
type Kind string

// The kinds of the table.
const (
	Oil       Kind = "oil"
	Fragrance Kind = "fragrance"
	Colourant Kind = "colourant"
	Acid      Kind = "acid"
	Alkali    Kind = "alkali"
)

// A Meaning is one of the things that a name may mean.
type Meaning struct {
	ID   string // empty: a further material, of which nothing is held
	Note string // what tells it from the others, or else should be known; may be empty
}

// An Entry is a name of the table with what it means, in the order of the table.
type Entry struct {
	Meanings []Meaning
	// Several says that the meanings have to be chosen from, or that a single one is not
	// to be taken without a look at its note.
	Several bool
}

// Find gives the entry of a name that is already folded, letter for letter.
func Find(kind Kind, folded string) (e Entry, found bool) {
	line, found := find(kind, folded)
	if !found {
		return Entry{}, false
	}
	return read(line), true
}

// read reads a line of the table.
func read(line string) (e Entry) {
	_, rest, _ := strings.Cut(line, "\t") // the name, folded
	_, rest, _ = strings.Cut(rest, "\t")  // as written
	_, rest, _ = strings.Cut(rest, "\t")  // languages
	how, rest, _ := strings.Cut(rest, "\t")
	e.Several = how == "several"
	for field := range strings.SplitSeq(rest, "\t") {
		id, number, _ := strings.Cut(field, " ")
		m := Meaning{ID: id}
		if id == "-" {
			m.ID = ""
		}
		if number != "" {
			note, _ := notes().Find(number)
			_, m.Note, _ = strings.Cut(note, "\t")
		}
		e.Meanings = append(e.Meanings, m)
	}
	return e
}

// find finds the line of a name.
func find(kind Kind, folded string) (line string, found bool) {
	line, found = index()[entryKey{kind, folded}]
	return line, found
}

type entryKey struct {
	kind Kind
	name string
}

// index holds the lines of the table by kind and name. It is made once, when a name is first looked for.
var index = sync.OnceValue(func() map[entryKey]string {
	lines := make(map[entryKey]string, strings.Count(table, "\n"))
	for line := range refdata.Lines(table) {
		key, _, _ := strings.Cut(line, "\t")
		kind, name, _ := strings.Cut(key, " ")
		lines[entryKey{Kind(kind), name}] = line
	}
	return lines
})

// listing is a line of the table, its name and the letters of that.
type listing struct {
	name, line string
	letters    letters
}

// listed holds the lines of each kind, read when a near name is first looked for.
var listed = sync.OnceValue(func() map[Kind][]listing {
	all := map[Kind][]listing{}
	for line := range refdata.Lines(table) {
		key, _, _ := strings.Cut(line, "\t")
		kind, name, _ := strings.Cut(key, " ")
		all[Kind(kind)] = append(all[Kind(kind)], listing{name, line, lettersOf(name)})
	}
	return all
})
