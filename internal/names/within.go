package names

import (
	"slices"
	"strings"
)

// changing are further words that make something else of an oil, beside those of [telling] and [other]: what is taken
// out of it or made of it, what says that it is not there, and the words for these in German, French, Spanish and
// Italian. They are common knowledge.
const changing = " acid acids distillate olein oleine stearin stearine ester esters glyceride glycerides methyl ethyl" +
	" alcohol amide soap squalane squalene soapstock liquor" +
	" hardened partly hydrogenate sulfated sulphated ozonated ozonised ozonized oxidised oxidized ethoxylated peg" +
	" wachs cire cera kern kerne kernol noyau noyaux amande nocciolo beurre manteca burro mantequilla hydriert" +
	" hydriertes gehartet gehartetes hartfett hydrogene hydrogenee hidrogenado hidrogenada idrogenato fraktioniert" +
	" fraktioniertes fractionne fractionnee fraccionado frazionato blatt feuille feuilles hoja hojas foglia foglie" +
	" trester grignons orujo sansa milch lait leche latte mehl farine harina farina saure acide acido seife savon jabon" +
	" flocken leaves nut nuts like substitute replacer replacement imitation ersatz free frei libre without ohne sans sin "

// unlike are words of names that lie a letter off one that changes the meaning, and do not.
const unlike = " mild mill mile hall full bear beef brand gran dream taste real deal bitter better lead lean later" +
	" they when four floor silk "

// longestName is how many words the longest names have.
const longestName = 6

// Within gives the runs of whole words of a name that are names themselves, for the caller to look up: the longest
// first, none in another's words. There are none where a word is left over that changes the meaning, such as kernel
// in "palm kernel blend": it is not palm then. known reports whether a run, folded and with one space between words,
// is a name. Words behind lot or batch do not count, and oil or butter written together with the word before it is
// taken apart. It is for holding a figure against what is published, as [Likened] is, and for nothing else.
func Within(name string, known func(run string) bool) (runs []string) {
	words := apart(upToLot(Words(Fold(name))))
	taken := make([]bool, len(words))
	text := strings.Join(words, " ")
	starts := make([]int, len(words)+1) // in text
	for i, word := range words {
		starts[i+1] = starts[i] + len(word) + 1
	}
	for long := min(len(words), longestName); long > 0; long-- {
		for at := 0; at+long <= len(words); at++ {
			if slices.Contains(taken[at:at+long], true) {
				continue
			}
			run := text[starts[at] : starts[at+long]-1]
			if saysNothing(words[at:at+long]) || !known(run) {
				continue
			}
			runs = append(runs, run)
			for i := range long {
				taken[at+i] = true
			}
		}
	}
	for i, word := range words {
		if runs != nil && !taken[i] && changes(word) {
			return nil
		}
	}
	return runs
}

// upToLot are the words before lot or batch.
func upToLot(words []string) []string {
	if at := slices.IndexFunc(words, func(word string) bool { return word == "lot" || word == "batch" }); at > 0 {
		return words[:at]
	}
	return words
}

// apart takes oil and butter off the words that they are written together with, and hears flower where flour is
// written together with what is before it, as in sunflour.
func apart(words []string) []string {
	for i := 0; i < len(words); i++ {
		if before, has := strings.CutSuffix(words[i], "flour"); has && before != "" {
			words[i] = before + "flower"
		}
		for _, end := range [...]string{"oil", "butter"} {
			if before, has := strings.CutSuffix(words[i], end); has && len(before) > 2 {
				words = slices.Replace(words, i, i+1, before, end)
				i++
				break
			}
		}
	}
	return words
}

// changes reports whether a word makes something else of an oil.
func changes(word string) bool {
	return strings.Contains(changing, " "+word+" ") || !strings.Contains(unlike, " "+word+" ") && tells(word) != 0
}

// saysNothing reports whether all words are such that many names share them, or change what is named beside them.
func saysNothing(words []string) bool {
	return !slices.ContainsFunc(words, func(word string) bool {
		return !slices.Contains(plainWords[:], word) && !isNumber(word) && !isTrade(word) && !isBred(word) &&
			!changes(word)
	})
}
