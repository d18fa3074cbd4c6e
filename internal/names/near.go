package names

import (
	"slices"
	"strings"

	"example.com/lyewright/internal/nearest"
)

// telling are the words that change what a name means: no name is offered for one that has
// another of them.
var telling = [...]string{
	"wax", "butter", "kernel", "fractionated", "hydrogenated", "flakes", "hydrous", "pomace", "leaf", "absolute",
	"gel", "sap", "tea", "egg",
}

// other are more of them: what is made of a plant, and is not its oil. One may be written
// together with what is before it, as in coconutmilk.
var other = [...]string{
	"milk", "cream", "flour", "meal", "powder", "pulp", "puree", "water", "juice", "extract",
	"hydrosol", "vinegar", "whey", "sugar", "syrup", "starch", "paste", "shell", "hull",
}

// ownWords are a letter off one of those that tell, and are words of names themselves.
var ownWords = [...]string{"pure", "fleur"}

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
	spelled := make([]string, len(known))
	for i, id := range known {
		spelled[i] = Fold(id)
	}
	ids := nearTo(kind, folded, known, spelled)
	if ids == nil && contents(folded) != "" {
		ids = partly(folded, known, spelled)
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
func nearTo(kind Kind, folded string, known, spelled []string) (ids []string) {
	best := nearest.Most(contents(folded)) // letters
	mine, used := tells(folded), lettersOf(folded)
	add := func(spelled string, has *letters, meaning func() string) {
		if abs(len(spelled)-len(folded)) > best || used.apart(has) > best {
			return
		}
		off := nearest.DistanceTo(folded, spelled, best)
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
	for i, id := range known {
		has := lettersOf(spelled[i])
		add(spelled[i], &has, func() string { return id })
	}
	of := listed()[kind]
	for i := range of {
		l := &of[i]
		add(l.name, &l.letters, func() string {
			only := read(l.line).answer(func(id string) bool { return slices.Contains(known, id) })
			if only.Unheld {
				return ""
			}
			return only.ID
		})
	}
	return ids
}

// letters are how often a name has each letter from a to z, and anything else.
type letters [27]uint8

func lettersOf(folded string) (of letters) {
	for i := range len(folded) {
		at := len(of) - 1
		if c := folded[i]; 'a' <= c && c <= 'z' {
			at = int(c - 'a')
		}
		of[at]++ // no name has more than 200 bytes
	}
	return of
}

// apart is by how many letters two names differ at least: the larger of what one has more, and
// what it has less. A letter that is changed counts once in both, swapped letters in none.
func (of *letters) apart(other *letters) int {
	more, less := 0, 0
	for i := range of {
		if d := int(of[i]) - int(other[i]); d > 0 {
			more += d
		} else {
			less -= d
		}
	}
	return max(more, less)
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
func partly(folded string, known, spelled []string) (ids []string) {
	for i, name := range spelled {
		if strings.Contains(name, folded) && strings.Contains(" "+name+" ", " "+folded+" ") && tells(folded) == tells(name) {
			ids = append(ids, known[i])
		}
	}
	return ids
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
	return word == known || len(known) > 3 && abs(len(word)-len(known)) < 2 && nearest.Distance(word, known) < 2
}

func abs(n int) int { return max(n, -n) }
