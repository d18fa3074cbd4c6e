package lye

import (
	"cmp"
	"slices"
	"strings"

	"example.com/lyewright/internal/names"
	"example.com/lyewright/internal/nearest"
	"example.com/lyewright/units/fault"
)

// LookUpAlkali finds a hydroxide by its name, "sodium-hydroxide" or "potassium-hydroxide",
// or by a name in everyday use that means it alone, such as "caustic soda" or "KOH": case,
// accents, hyphens and apostrophes do not count. Lye, soda, potash and their like mean
// several things, and are refused; so is a solution, whose strength a [Stock] needs. The
// error is a [fault.Fault] of path "kind" and kind [fault.ErrUnknown].
func LookUpAlkali(name string) (Alkali, error) {
	for _, a := range alkalis() {
		if a.String() == name {
			return a, nil
		}
	}
	answer := names.Look(names.Alkali, name, isAlkali)
	f := fault.Fault{Path: "kind", Text: name, Remedy: "write sodium-hydroxide or potassium-hydroxide, as its label " +
		"says: NaOH or KOH", Kind: fault.ErrUnknown}
	reason, _ := answer.Why(isAlkali, nil)
	switch {
	case solution(answer):
		f.Reason = "is " + answer.Note
		f.Remedy = `write "kind": "` + cmp.Or(answer.ID, SodiumHydroxide.String()) +
			`" with "stock": {"strength": "…"} in place of the purity`
		if answer.ID == "" {
			f.Remedy = `write the hydroxide that is in it as the kind, with "stock": {"strength": "…"} in place of the purity`
		}
	case answer.ID != "" && !answer.Unheld:
		for _, a := range alkalis() {
			if a.String() == answer.ID {
				return a, nil
			}
		}
	case reason != "":
		f.Reason = reason
	default:
		f.Reason = "is not an alkali that is known"
		near := names.Nearest(names.Alkali, name, []string{SodiumHydroxide.String(), PotassiumHydroxide.String()},
			func(a, b string) bool { return a == b })
		f.Remedy = cmp.Or(nearest.Question(near), f.Remedy)
	}
	return 0, f
}

func alkalis() []Alkali { return []Alkali{SodiumHydroxide, PotassiumHydroxide} }

func isAlkali(id string) bool {
	return id == SodiumHydroxide.String() || id == PotassiumHydroxide.String()
}

// solution reports whether a name is that of a solution of an alkali.
func solution(answer names.Answer) bool { return strings.HasPrefix(answer.Note, "a solution") }

// AlkaliNamed tells in a few words what alkali a name is, or may be: of a hydroxide, of a
// solution of one, of another strong alkali, or of a product that holds one; empty of any
// other name. A carbonate is none. A word among others counts, and a long one that is one letter
// off, as do formulas and registry numbers: what may burn is taken for what burns. What is said to
// be free of it is none.
func AlkaliNamed(name string) string {
	meant := names.AlkaliMeant(name)
	switch {
	case !meant.Found():
		return ""
	case meant.Solution:
		return "a solution of an alkali"
	case len(meant.IDs) == 0:
		return "an alkali"
	case len(meant.IDs) == 1 && !meant.Harmless:
		return meant.IDs[0]
	}
	return "what may be " + strings.Join(meant.IDs, " or ")
}

// AcidNamed gives the id of the acid that a name is of, or may be; empty of any other
// name, as of a salt of an acid, and of an acid that is not held. A name that has that of an acid
// among its words, such as "apple cider vinegar", is of it.
func AcidNamed(name string) string {
	if answer := lookAcid(name); answer.Found() {
		return heldAcid(answer)
	}
	if !mayHoldAcid(name) {
		return ""
	}
	return acidWithin(names.Words(name))
}

// mayHoldAcid is quick, since most names hold none: one of these parts stands in every name
// of a held acid, and in a vinegar with one letter off.
func mayHoldAcid(name string) bool {
	for i := range len(name) {
		for _, part := range acidParts(name[i]) {
			if len(name)-i >= len(part) && strings.EqualFold(name[i:i+len(part)], part) {
				return true
			}
		}
	}
	return false
}

// acidParts lists those of these parts that begin with a letter.
func acidParts(first byte) []string {
	switch first | 0x20 {
	case 'a':
		return []string{"acv", "acet", "azijn"}
	case 'c':
		return []string{"cid"}
	case 'e':
		return []string{"egar", "essig", "e2", "e3"}
	case 's':
		return []string{"steari"}
	case 'u':
		return []string{"ure"}
	case 'v':
		return []string{"vin"}
	}
	return nil
}

// heldAcid gives the first acid that is held among what a name means.
func heldAcid(answer names.Answer) string {
	if answer.ID != "" && !answer.Unheld {
		return answer.ID
	}
	for _, m := range answer.Several {
		if isAcid(m.ID) {
			return m.ID
		}
	}
	return ""
}

// acidWithin gives the acid that is named by at most three words in a row of a longer name, or by one that is a
// vinegar ("Apfelessig", "vineger"); empty where there is none.
func acidWithin(words []string) string {
	const longest = 3
	for first, word := range words {
		if first > 0 && slices.Contains(lacksAcid[:], words[first-1]) {
			continue
		}
		for n := min(longest, len(words)-first); n > 0; n-- {
			if end := first + n; end < len(words) && slices.Contains(noAcid[:], words[end]) {
				continue
			}
			run := strings.Join(words[first:first+n], " ")
			if number, has := strings.CutPrefix(run, "e "); has && n == 2 { // E260, which was parted
				run = "e" + number
			}
			if run == "stearin" { // the hard part of palm oil is called so as well
				continue
			}
			if acid := heldAcid(lookAcid(run)); acid != "" {
				return acid
			}
			if n == 1 && vinegar(word) {
				return "acetic-acid"
			}
		}
	}
	return ""
}

// vinegar reports whether a word is a vinegar, as English, German, Dutch, French, Spanish and Italian have it, alone or
// at the end of a compound, or with one letter off (memory).
func vinegar(word string) bool {
	return word == "acv" || word == "essigessenz" || nearest.Distance(word, "vinegar") == 1 ||
		slices.ContainsFunc(vinegars[:], func(end string) bool { return strings.HasSuffix(word, end) })
}

var vinegars = [...]string{"vinegar", "essig", "azijn", "vinaigre", "vinagre", "aceto"}

// noAcid are words behind the name of an acid that say that it is not in it, or is bound; lacksAcid are those before
// it (memory).
var (
	noAcid = [...]string{
		"free", "frei", "bacteria", "bacterium", "culture", "cultures", "ferment", "ester", "esters",
	}
	lacksAcid = [...]string{"without", "no", "non", "not", "sans", "ohne", "kein", "sin", "senza"}
)

// lookAcid looks a name up: as the id of an acid, also of one that is not in the table of names, else in that.
func lookAcid(name string) names.Answer {
	if folded := names.Fold(name); strings.HasSuffix(folded, "acid") {
		if id := strings.ReplaceAll(folded, " ", "-"); isAcid(id) {
			return names.Answer{ID: id, Note: names.Note(names.Acid, name)}
		}
	}
	return names.Look(names.Acid, name, isAcid)
}

func isAcid(id string) bool {
	return slices.ContainsFunc(acids(), func(a Acid) bool { return a.ID == id })
}

// acidNamed finds an acid by a name that is not its ID.
func acidNamed(name string) (Acid, error) {
	answer := lookAcid(name)
	if answer.ID != "" && !answer.Unheld {
		return LookUpAcid(answer.ID)
	}
	reason, choice := answer.Why(isAcid, nil)
	var ids []string
	for _, a := range acids() {
		ids = append(ids, a.ID)
	}
	remedy := "name one of the known acids, such as citric-acid-anhydrous or lactic-acid"
	switch {
	case len(choice) > 0:
		remedy = "write " + strings.Join(choice, " or ") + ", as its label says"
	case reason == "":
		reason = "is not an acid that is known"
		remedy = cmp.Or(nearest.Question(names.Nearest(names.Acid, name, ids, func(a, b string) bool { return a == b })),
			remedy)
	}
	return Acid{}, fault.Faults{{Path: "acid", Text: name, Reason: reason, Remedy: remedy, Kind: fault.ErrUnknown}}
}
