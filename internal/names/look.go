package names

import (
	"slices"
	"strings"
	"sync"
	"unicode/utf8"

	"example.com/lyewright/internal/refdata"
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
// hyphenated, is held; one that the table does not know counts as not held. An id wins over the
// table, whose note is given beside it.
func Look(kind Kind, name string, held func(id string) bool) Answer {
	if !mayStand(kind, name) {
		return Answer{}
	}
	for spelling := range spellings(Fold(name)) {
		if !stands(kind, spelling) {
			continue
		}
		id := strings.ReplaceAll(spelling, " ", "-")
		entry, found := Find(kind, spelling)
		switch {
		case held(id):
			return Answer{ID: id, Note: entry.note(id)}
		case found:
			return entry.answer(held)
		case isMeant(kind, id):
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

// kinds are all kinds of the table, in a fixed order.
var kinds = [...]Kind{Oil, Fragrance, Colourant, Acid, Alkali}

// stands reports whether the table may have a name, or an id that a name means, of a kind, with these words in whatever
// order: false means that it has none. It is for the many names that are nobody's.
func stands(kind Kind, folded string) bool { return isStanding(kind, place(folded)) }

func isStanding(kind Kind, place uint32) bool {
	at := slices.Index(kinds[:], kind)
	return at >= 0 && standing()[place]>>at&1 != 0
}

// mayStand is [stands] of a name that is not folded, for any of its spellings. Of a name with an apostrophe or a letter
// that is not ASCII it says that it may.
func mayStand(kind Kind, name string) bool {
	for i := range len(name) {
		if c := name[i]; c >= utf8.RuneSelf || c == '\'' || c == '`' {
			return true
		}
	}
	words := hashed(name)
	if isStanding(kind, words.place()) {
		return true
	}
	switch words.last { // the endings of a name
	case hashOf("oil"):
		words.sum -= words.last
		if isStanding(kind, words.place()) {
			return true
		}
		words.sum -= words.before
		return isStanding(kind, words.place())
	case hashOf("fat"), hashOf("eo"):
		words.sum -= words.last
		return isStanding(kind, words.place())
	}
	return false
}

// standing has the kinds of the names of the table and of the ids that they mean, one bit each, by a hash of the
// name. It is read once, when a name is first looked for.
var standing = sync.OnceValue(func() *[1 << placeBits]uint8 {
	known := new([1 << placeBits]uint8)
	for _, at := range lines() {
		line := lineAt(at)
		kind, name, _ := strings.Cut(refdata.Field(line, 0), " ")
		bit := uint8(1) << slices.Index(kinds[:], Kind(kind))
		known[place(name)] |= bit
		for id := range meant(line) {
			if id != "" {
				known[place(id)] |= bit
			}
		}
	}
	return known
})

const placeBits = 15 // for some 2,600 names and ids

// place is a hash of the words of a folded name or of an id, in whatever order they stand.
func place(name string) uint32 { return hashed(name).place() }

// hashes are those of the words of a name (FNV-1a): their sum, and those of the last word and of the one before it.
type hashes struct{ sum, last, before uint32 }

func (h hashes) place() uint32 { return (h.sum ^ h.sum>>placeBits) % (1 << placeBits) }

// The offset and the prime of the hash.
const empty, prime = 2166136261, 16777619

func hashOf(word string) uint32 { return hashed(word).sum }

// hashed hashes the words of a name; capitals of ASCII count as small letters.
func hashed(name string) (h hashes) {
	hash, last := uint32(empty), byte(' ')
	for i := range len(name) {
		c := name[i]
		if 'A' <= c && c <= 'Z' {
			c += 'a' - 'A'
		}
		of := byte('a') // a letter
		switch {
		case '0' <= c && c <= '9':
			of = '0'
		case c < 'a' && c < utf8.RuneSelf:
			of = ' '
		}
		if of != last && last != ' ' { // a word ends, as in Words
			h.sum, h.last, h.before = h.sum+hash, hash, h.last
			hash = empty
		}
		if last = of; of != ' ' {
			hash = (hash ^ uint32(c)) * prime
		}
	}
	if last != ' ' {
		h.sum, h.last, h.before = h.sum+hash, hash, h.last
	}
	return h
}

// isMeant reports whether some name of the table means an id.
func isMeant(kind Kind, id string) bool { return allIDs()[entryKey{kind, id}] }

type entryKey struct {
	kind Kind
	id   string
}

// allIDs are the ids that the names of the table mean: read once, when one that is not held is first looked for.
var allIDs = sync.OnceValue(func() map[entryKey]bool {
	ids := map[entryKey]bool{}
	for _, at := range lines() {
		line := lineAt(at)
		kind, _, _ := strings.Cut(line, " ")
		for id := range meant(line) {
			if id != "" {
				ids[entryKey{Kind(kind), id}] = true
			}
		}
	}
	return ids
})
