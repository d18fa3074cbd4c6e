// Package names knows names in everyday use, in five languages, and the ids that they mean.
// It holds no table of oils, fragrances or colourants: a caller says which ids are held.
//
// The names are common knowledge and were not read anywhere; data/names.txt says so, and
// what was compared. Nothing is parsed at start-up: the lines are indexed once, when a name
// is first looked for, and each is read when it is found.
package names

import (
	"cmp"
	_ "embed"
	"iter"
	"slices"
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
	e.Several = refdata.Field(line, 3) == "several"
	for id, number := range meant(line) {
		m := Meaning{ID: id}
		if number != "" {
			note, _ := notes().Find(number)
			_, m.Note, _ = strings.Cut(note, "\t")
		}
		e.Meanings = append(e.Meanings, m)
	}
	return e
}

// meant yields the ids that a line means, each with the number of its note; one that has no id is empty.
func meant(line string) iter.Seq2[string, string] {
	return func(yield func(id, number string) bool) {
		for range 4 { // the kind and the name folded, as it is written, its languages, whether it means one
			_, line, _ = strings.Cut(line, "\t")
		}
		for field := range strings.SplitSeq(line, "\t") {
			id, number, _ := strings.Cut(field, " ")
			if !yield(strings.TrimPrefix(id, "-"), number) {
				return
			}
		}
	}
}

// find finds the line of a name.
func find(kind Kind, folded string) (line string, found bool) {
	at, found := slices.BinarySearchFunc(lines(), folded, func(at uint32, folded string) int {
		of, name, _ := strings.Cut(refdata.Field(lineAt(at), 0), " ")
		return cmp.Or(strings.Compare(of, string(kind)), strings.Compare(name, folded))
	})
	if !found {
		return "", false
	}
	return lineAt(lines()[at]), true
}

// lines are the places in the table at which its lines begin, which are sorted by kind and name. They are found once,
// when a name is first looked for. Places, since a collector has to look at every string again and again.
var lines = sync.OnceValue(func() []uint32 {
	places := make([]uint32, 0, strings.Count(table, "\n"))
	at := 0
	for line := range strings.Lines(table) {
		if line[0] != '#' {
			places = append(places, uint32(at))
		}
		at += len(line)
	}
	return places
})

func lineAt(at uint32) string {
	line, _, _ := strings.Cut(table[at:], "\n")
	return line
}

// listed holds the lines of each kind, read when a near name is first looked for.
var listed = sync.OnceValue(func() map[Kind][]listing {
	all := map[Kind][]listing{}
	for line := range refdata.Lines(table) {
		key, _, _ := strings.Cut(line, "\t")
		kind, name, _ := strings.Cut(key, " ")
		all[Kind(kind)] = append(all[Kind(kind)], list(name, line))
	}
	return all
})
