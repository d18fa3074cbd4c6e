package names

import (
	"iter"
	"slices"
	"strings"
	"sync"

	"example.com/lyewright/internal/refdata"
)

// trade are words by which an oil is sold and that leave it the oil that it is, in English, German, French and
// Spanish, folded: how it was pressed and cleaned, who certified it, what it is for. They are common knowledge.
// None of them is among those that change what a name means.
const trade = " organic organically grown bio biologique ecologico ecologica conventional natural naturally pure" +
	" refined unrefined virgin extra native raw crude cold warm pressed press expeller filtered unfiltered deodorised" +
	" deodorized bleached rbd rspo sg mb certified sustainable sustainably sourced fair fairly trade traded" +
	" fairtrade food grade cosmetic cosmetics pharma pharmaceutical technical premium quality kosher halal" +
	" vegan local for bulk lb lbs kg g oz ml l litre litres liter liters kaltgepresst" +
	" kaltgepresstes raffiniert raffiniertes unraffiniert unraffiniertes nativ natives naturbelassen naturlich" +
	" desodoriert gefiltert kba biologisch biologisches reines rein vierge raffine raffinee brut brute non" +
	" pressee premiere pression a froid equitable naturel naturelle desodorisee filtree virgen refinado" +
	" refinada sin refinar prensado prensada en frio crudo cruda organico organica puro pura "

// bred are words that tell how the plant was bred: they may stand in the names of another oil that is held, and are
// left out last.
const bred = " high higher mid low ho oleic linoleic type "

// Likened gives what a name most likely means where words of the trade and the order of its words do not count:
// "sunflower oil (high oleic)" is high-oleic sunflower, "Olive oil, refined" is olive. What stands behind the word
// lot or batch does not count either, nor a number. It is for holding a figure against what is published and never
// for taking what it finds in place of the name. held is as for [Look].
func Likened(kind Kind, name string, held func(id string) bool) Answer {
	words := upToLot(Words(Fold(name)))
	doubtful := Look(kind, name, held)
	if doubtful.ID != "" && !doubtful.Unheld {
		return doubtful
	}
	for _, drop := range []func(word string) bool{nil, isTrade, isNumber, isBred} {
		if drop != nil {
			words = slices.DeleteFunc(words, drop)
		}
		for spelled := range arranged(kind, words) {
			answer := Look(kind, spelled, held)
			if answer.ID != "" && !answer.Unheld {
				return answer
			}
			if !doubtful.Found() {
				doubtful = answer
			}
		}
	}
	return doubtful
}

func isTrade(word string) bool { return strings.Contains(trade, " "+word+" ") }

func isBred(word string) bool { return strings.Contains(bred, " "+word+" ") }

func isNumber(word string) bool { return strings.Trim(word, "0123456789") == "" }

// Plain gives the words of a name without those of the trade.
func Plain(name string) string {
	return strings.Join(slices.DeleteFunc(Words(Fold(name)), isTrade), " ")
}

// arranged yields some words as they stand, and in the order in which a name of the table or an id has them all; then
// without the word oil, wherever it stands.
func arranged(kind Kind, words []string) iter.Seq[string] {
	return func(yield func(string) bool) {
		words := slices.Clone(words)
		for _, drop := range []string{"", "oil", "seed"} {
			words = slices.DeleteFunc(words, func(word string) bool { return word == drop })
			if len(words) == 0 || !yield(strings.Join(words, " ")) {
				return
			}
			if name, found := rearranged(kind, words); found && !yield(name) {
				return
			}
		}
	}
}

func sorted(words []string) string {
	words = slices.Clone(words)
	slices.Sort(words)
	return strings.Join(words, " ")
}

// rearranged finds the id, else the first name, of the table that has these words in whatever order, folded.
func rearranged(kind Kind, words []string) (name string, found bool) {
	joined := strings.Join(words, " ")
	if !stands(kind, joined) {
		return "", false
	}
	at, key := place(joined), sorted(words)
	has := func(name string) bool { return place(name) == at && sorted(Words(name)) == key }
	for _, start := range placed()[at] {
		line := lineAt(start)
		of, folded, _ := strings.Cut(refdata.Field(line, 0), " ")
		if Kind(of) != kind {
			continue
		}
		for id := range meant(line) {
			if has(id) {
				return Fold(id), true
			}
		}
		if !found && has(folded) {
			name, found = folded, true
		}
	}
	return name, found
}

// placed are the lines of the table by the places of their names and of the ids that they mean, in the order of the
// table. They are found once, when a name is first likened that may stand there.
var placed = sync.OnceValue(func() map[uint32][]uint32 {
	at := make(map[uint32][]uint32, len(lines()))
	for _, start := range lines() {
		line := lineAt(start)
		_, name, _ := strings.Cut(refdata.Field(line, 0), " ")
		at[place(name)] = append(at[place(name)], start)
		for id := range meant(line) {
			if to := place(id); id != "" && to != place(name) {
				at[to] = append(at[to], start)
			}
		}
	}
	return at
})
