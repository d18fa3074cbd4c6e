package names

import (
	"math/bits"
	"slices"
	"strings"

	"example.com/lyewright/internal/nearest"
)

// telling are the words that change what a name means: no name is offered for one that has
// another of them.
var telling = [...]string{
	"wax", "butter", "kernel", "fractionated", "hydrogenated", "flakes", "hydrous", "pomace", "leaf", "absolute",
	"sap", "tea", "egg",
}

// other are more of them: what is made of a plant, and is not its oil. One may be written
// together with what is before it, as in coconutmilk.
var other = [...]string{
	"milk", "cream", "flour", "meal", "powder", "pulp", "puree", "water", "juice", "extract",
	"hydrosol", "vinegar", "whey", "sugar", "syrup", "starch", "paste", "shell", "hull", "bran", "beer", "gel",
	"mus", "blatter",
}

// ownWords are a letter off one of those that tell, and are words of names themselves.
var ownWords = [...]string{"pure", "fleur", "bean", "beans"}

// plainWords are further words that many names share, and that tell none from another.
var plainWords = [...]string{"oil", "fat", "seed", "essential", "eo", "acid"}

// mostWrong is how many letters of a name may be wrong in all: a word more or less is no slip, be it the food made of
// a plant in whatever language.
const mostWrong = 2

// A Set holds the ids of a kind among which mistyped names are looked for.
type Set struct {
	kind Kind
	ids  []string
	held []listing // the ids, folded
}

// Among gives the set of these ids: those that are held, and what else may stand there.
func Among(kind Kind, ids []string) Set {
	s := Set{kind: kind, ids: ids, held: make([]listing, len(ids))}
	for i, id := range ids {
		s.held[i] = list(Fold(id), "")
	}
	return s
}

// Nearest is [Set.Nearest] of a set that is asked once.
func Nearest(kind Kind, name string, known []string, alike func(a, b string) bool) []string {
	return Among(kind, known).Nearest(name, alike)
}

// Nearest gives the ids that a mistyped name may have meant, at most three; none where taking
// one of them for the name could do harm. alike says of two of them that confusing them is harmless.
//
// Near are the names of the table and the ids that differ by the fewest letters, two at most and
// no more than a third of those of the words that tell names apart. Where one of these is not held, has
// several meanings or is unlike another, nothing is offered. Nor is what has another word
// that changes the meaning, or lacks one.
func (s Set) Nearest(name string, alike func(a, b string) bool) []string {
	const longest = 64
	folded := Fold(name)
	if folded == "" || len(folded) > longest {
		return nil
	}
	rest, mine := contents(folded)
	most := min(nearest.Most(rest), mostWrong)
	ids := s.nearTo(folded, most, mine)
	for spelled := range spellings(untraded(folded)) {
		if ids == nil && spelled != folded && spelled != "" {
			ids = s.nearTo(spelled, most, mine)
		}
	}
	if ids == nil && rest != "" {
		ids = s.partly(folded, mine)
	}
	var offered []string
	for _, id := range ids {
		if id == "" || !alike(ids[0], id) {
			return nil
		}
		if len(offered) < 3 && !slices.Contains(offered, id) {
			offered = append(offered, id)
		}
	}
	return offered
}

// nearTo lists the ids of the names that differ by the fewest letters, best at most; an empty one stands for a name
// that is not held, has several meanings, or whose words that change the meaning are others than mine.
func (s Set) nearTo(folded string, best int, mine uint64) (ids []string) {
	word, used := nearest.WordOf(folded), list(folded, "")
	add := func(l *listing, id func() string) {
		off := word.Distance(l.name, best)
		if off > best {
			return
		}
		if off < best {
			best, ids = off, nil
		}
		if tells(l.name) == mine && slips(folded, l.name) {
			ids = append(ids, id())
		} else {
			ids = append(ids, "")
		}
	}
	for i := range s.held {
		if l := &s.held[i]; !used.far(l, best) {
			add(l, func() string { return s.ids[i] })
		}
	}
	of := listed()[s.kind]
	for i := range of {
		if l := &of[i]; !used.far(l, best) {
			add(l, func() string { return s.only(l.line) })
		}
	}
	return ids
}

// only is the one id of the set that a line of the table means; empty where it means none, or several.
func (s Set) only(line string) string {
	meant := read(line).answer(func(id string) bool { return slices.Contains(s.ids, id) })
	if meant.Unheld {
		return ""
	}
	return meant.ID
}

// A listing is a folded name, what its line of the table is, and which letters it has, one bit each: from a to z, and
// one for anything else.
type listing struct {
	name, line string
	has        uint32
}

func list(name, line string) listing {
	l := listing{name: name, line: line}
	for i := range len(name) {
		at := 26
		if c := name[i]; 'a' <= c && c <= 'z' {
			at = int(c - 'a')
		}
		l.has |= 1 << at
	}
	return l
}

// far reports, at little cost, that two names differ by more letters than some: by their lengths, or by the letters
// that one has and the other has not.
func (l *listing) far(other *listing, most int) bool {
	return abs(len(l.name)-len(other.name)) > most ||
		bits.OnesCount32(l.has&^other.has) > most || bits.OnesCount32(other.has&^l.has) > most
}

// contents is a folded name without the words that many share, and those of its words that change what it means.
func contents(folded string) (rest string, words uint64) {
	var kept []string
	for word := range strings.SplitSeq(folded, " ") {
		tells := tells(word)
		if words |= tells; tells == 0 && !slices.Contains(plainWords[:], word) {
			kept = append(kept, word)
		}
	}
	return strings.Join(kept, " "), words
}

// partly lists the ids that have a name as whole words among theirs, and no other that changes the meaning.
func (s Set) partly(folded string, mine uint64) (ids []string) {
	for i := range s.held {
		name := s.held[i].name
		if strings.Contains(name, folded) && strings.Contains(" "+name+" ", " "+folded+" ") && tells(name) == mine {
			ids = append(ids, s.ids[i])
		}
	}
	return ids
}

// untraded is a folded name without the words by which an oil is sold; behind another word, pure may be a puree.
func untraded(folded string) string {
	words := strings.Split(strings.TrimPrefix(folded, "pure "), " ")
	return strings.Join(slices.DeleteFunc(words, func(word string) bool { return isTrade(word) && word != "pure" }), " ")
}

// slips reports whether a folded name may be another with letters mistyped: no more in each word than that word
// allows, and one where words are run together or apart.
func slips(folded, name string) bool {
	words, others := strings.Split(folded, " "), strings.Split(name, " ")
	if len(words) != len(others) {
		return nearest.Distance(strings.Join(words, ""), strings.Join(others, "")) <= 1
	}
	for i, word := range words {
		stem := strings.TrimSuffix(word, "butter")
		if nearest.Distance(word, others[i]) > max(1, len(stem)/5) {
			return false
		}
	}
	return true
}

// tells gives the words of a folded name that change what it means, one bit each, mistyped by a letter or not.
func tells(folded string) (words uint64) {
	for word := range strings.SplitSeq(folded, " ") {
		if slices.Contains(ownWords[:], word) {
			continue
		}
		for i, t := range telling {
			if isOrNear(word, t) {
				words |= 1 << i
			}
		}
		for i, t := range other {
			if strings.HasSuffix(word, t) || isOrNear(word, t) {
				words |= 1 << (len(telling) + i)
			}
		}
	}
	return words
}

// isOrNear reports whether a word is another, or one of more than three letters with one of them mistyped.
func isOrNear(word, known string) bool {
	if word == known || len(known) <= 3 {
		return word == known
	}
	if word == "" || abs(len(word)-len(known)) > 1 || word[0] != known[0] && word[len(word)-1] != known[len(known)-1] {
		return false // a slip of one letter, or two swapped, leaves the first or the last as it is
	}
	return nearest.Distance(word, known) < 2
}

func abs(n int) int { return max(n, -n) }
