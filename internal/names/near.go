package names

import (
	"math/bits"
	"slices"
	"strings"

	"example.com/lyewright/internal/nearest"
)

// telling are the words that change what a name means: no name is offered for one that has
// another of them.
var telling = [...]string{"wax", "butter", "kernel", "fractionated", "hydrogenated", "flakes", "hydrous", "pomace", "leaf", "absolute"}

// plainWords are further words that many names share, and that tell none from another.
var plainWords = [...]string{"oil", "fat", "seed", "essential", "eo", "acid"}

// Nearest gives the ids that a mistyped name may have meant, at most three; none where taking
// one of them for the name could do harm. known are the ids that are held, and what else
// may stand there; alike says of two of them that confusing them is harmless.
//
// Near are the names of the table and the ids that differ by the fewest letters, at most a
// third of those of the words that tell names apart. Where one of these is not held, has
// several meanings or is unlike another, nothing is offered. Nor is what has another word
// that changes the meaning, or lacks one.
func Nearest(kind Kind, name string, known []string, alike func(a, b string) bool) []string {
	const longest = 64
	folded := Fold(name)
	if folded == "" || len(folded) > longest {
		return nil
	}
	ids := nearTo(kind, folded, known)
	if ids == nil {
		ids = partly(folded, known)
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

// nearTo lists the ids of the names that differ by the fewest letters; an empty one stands for a name that is
// not held, has several meanings, or has another word that changes the meaning.
func nearTo(kind Kind, folded string, known []string) (ids []string) {
	best := nearest.Most(contents(folded)) // letters
	mine, used := tells(folded), lettersOf(folded)
	add := func(spelled string, meaning func() string) {
		if abs(len(spelled)-len(folded)) > best || bits.OnesCount32(lettersOf(spelled)^used) > 2*best {
			return
		}
		off := nearest.Distance(folded, spelled)
		if off > best {
			return
		}
		if off < best {
			best, ids = off, nil
		}
		id := ""
		if tells(spelled) == mine {
			id = meaning()
		}
		ids = append(ids, id)
	}
	for _, id := range known {
		add(Fold(id), func() string { return id })
	}
	for spelled, line := range lines(kind) {
		add(spelled, func() string {
			only := read(line).answer(func(id string) bool { return slices.Contains(known, id) })
			if only.Unheld {
				return ""
			}
			return only.ID
		})
	}
	return ids
}

// lettersOf gives the letters from a to z that a name has, one bit each. A letter changed changes two of them
// at most.
func lettersOf(folded string) (set uint32) {
	for i := range len(folded) {
		if c := folded[i]; 'a' <= c && c <= 'z' {
			set |= 1 << (c - 'a')
		}
	}
	return set
}

// contents is a folded name without the words that many share.
func contents(folded string) string {
	var words []string
	for word := range strings.SplitSeq(folded, " ") {
		if tells(word) == 0 && !slices.Contains(plainWords[:], word) {
			words = append(words, word)
		}
	}
	return strings.Join(words, " ")
}

// partly lists the ids that have a name as whole words among theirs.
func partly(folded string, known []string) (ids []string) {
	for _, id := range known {
		if spelled := Fold(id); tells(folded) == tells(spelled) && strings.Contains(" "+spelled+" ", " "+folded+" ") {
			ids = append(ids, id)
		}
	}
	return ids
}

// tells gives the words of a folded name that change what it means, one bit each, mistyped by a letter or not.
func tells(folded string) (words uint) {
	for word := range strings.SplitSeq(folded, " ") {
		for i, t := range telling {
			if word == t || len(t) > 3 && abs(len(word)-len(t)) < 2 && nearest.Distance(word, t) < 2 {
				words |= 1 << i
			}
		}
	}
	return words
}

func abs(n int) int { return max(n, -n) }
