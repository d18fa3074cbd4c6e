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
	const longest = 64
	if name == "" || len(name) > longest {
		return nil
	}
	type candidate struct {
		name     string
		distance int
	}
	var near []candidate
	name = strings.ToLower(name)
	most := Most(name)
	for _, k := range known {
		lower := strings.ToLower(k)
		d := DistanceTo(name, lower, most)
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

// Distance counts the letters changed, added, dropped or swapped between two
// words (optimal string alignment).
func Distance(a, b string) int { return DistanceTo(a, b, len(a)+len(b)) }

// DistanceTo is Distance up to a most: what is farther is told as farther, without saying by
// how much.
func DistanceTo(a, b string, most int) int {
	var room [3][65]int // of names of usual length, without a list of its own for each
	before, last, row := room[0][:], room[1][:], room[2][:]
	if len(b) >= len(room[0]) {
		before, last, row = make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	}
	last = last[:len(b)+1]
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		least := i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
			least = min(least, row[j])
		}
		if least > most+1 { // by a swap a row may yet fall by one below the row before
			return most + 1
		}
		before, last, row = last, row, before
	}
	return last[len(b)]
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
