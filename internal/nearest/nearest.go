// Package nearest finds the known names that a mistyped one may have meant.
package nearest

import (
	"slices"
	"strings"
)

// Names returns at most three of the known names that lie near a mistyped
// one, the nearest first, equals in the given order. Near is within a third
// of the name's letters changed, added, dropped or swapped with a neighbour,
// or one name being a whole-word part of the other.
func Names(name string, known []string) []string {
	if name == "" || len(name) > longest {
		return nil
	}
	type candidate struct {
		name     string
		distance int
	}
	var near []candidate
	name = strings.ToLower(name)
	most, word := Most(name), WordOf(name)
	for _, k := range known {
		lower := strings.ToLower(k)
		d := word.Distance(lower, most)
		switch {
		case d <= most:
		case within(name, lower) || within(lower, name):
			d = most + 1
		default:
			continue
		}
		near = append(near, candidate{k, d})
	}
	slices.SortStableFunc(near, func(a, b candidate) int { return a.distance - b.distance })
	var names []string
	for _, c := range near[:min(3, len(near))] {
		names = append(names, c.name)
	}
	return names
}

// Most is how many letters of a name may be wrong: a third of them, and one always.
func Most(name string) int { return max(1, len(name)/3) }

// within reports whether part stands in whole as one or more of its words.
func within(part, whole string) bool {
	return strings.Contains("-"+strings.ReplaceAll(whole, " ", "-")+"-", "-"+strings.ReplaceAll(part, " ", "-")+"-")
}

// Distance counts the letters changed, added, dropped or swapped between two words (optimal string alignment). Two
// that both have more than 64 bytes, which no name that is known has, are as far apart as words of their length can
// be, unless they are the same.
func Distance(a, b string) int {
	if len(a) > longest {
		a, b = b, a
	}
	switch {
	case a == b:
		return 0
	case len(a) > longest:
		return max(len(a), len(b))
	}
	w := WordOf(a)
	return w.Distance(b, len(a)+len(b))
}

// longest is how many bytes a word may have that others are compared with.
const longest = 64

// A Word is a word of 1 to 64 bytes that others are compared with.
type Word struct {
	at   [256]uint64 // where each letter stands in it, one bit each
	size int
}

// WordOf gives a word to compare others with.
func WordOf(word string) (w Word) {
	for i := range len(word) {
		w.at[word[i]] |= 1 << i
	}
	w.size = len(word)
	return w
}

// Distance is how many letters another word is off: see the function of that name. What is off by more than the most
// may be told as less than it is, but as more than that. It works through the table of
// distances between the beginnings of the two words a column at a time, in whose bits stands where the distance grows
// or falls by one from a letter to the next (Hyyrö, A Bit-Vector Algorithm for Computing Levenshtein and Damerau
// Edit Distances, 2003; memory).
func (w *Word) Distance(word string, most int) int {
	if w.size == 0 {
		return len(word)
	}
	off, last := w.size, uint64(1)<<(w.size-1)
	grows, falls := ^uint64(0), uint64(0) // down the column
	var kept, before uint64               // where the distance is that of the neighbour up and left; the letter before
	for i := range len(word) {
		at := w.at[word[i]]
		swapped := (^kept & at) << 1 & before
		kept = (at&grows + grows) ^ grows | at | falls | swapped
		right, left := falls|^(kept|grows), kept&grows // it grows, or falls, from this column to the next
		if right&last != 0 {
			off++
		}
		if left&last != 0 {
			off--
		}
		if off-(len(word)-1-i) > most { // from a letter to the next it falls by one at most
			break
		}
		right, left = right<<1|1, left<<1
		grows, falls, before = left|^(kept|right), right&kept, at
	}
	return off
}

// Remedy says which of the known names may have been meant, or "" when none
// is near.
func Remedy(name string, known []string) string { return Question(Names(name, known)) }

// Question asks whether one of some names was meant, "" of none.
func Question(names []string) string {
	switch len(names) {
	case 0:
		return ""
	case 1:
		return "did you mean " + names[0] + "?"
	default:
		return "did you mean " + strings.Join(names[:len(names)-1], ", ") + " or " + names[len(names)-1] + "?"
	}
}

// Begun is Remedy among the known names that begin as a name does, letter for letter up to
// the third: for names that are mostly no slip, and then cost next to nothing.
func Begun(name string, known []string) string {
	if len(name) < 3 {
		return ""
	}
	var alike []string
	for _, id := range known {
		if len(id) > 2 && strings.EqualFold(id[:3], name[:3]) {
			alike = append(alike, id)
		}
	}
	return Remedy(name, alike)
}
