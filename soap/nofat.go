package soap

import (
	"slices"
	"strings"

	"example.com/lyewright/internal/names"
	"example.com/lyewright/soap/lye"
)

// noFats are words of what takes up no alkali, or next to none, and is sold beside oils: of mineral oil, of
// silicones, of hydrocarbons and of alcohols, in English, German, French, Spanish and Italian, folded. Each tells
// that by itself. They are common knowledge; nobody read them anywhere.
const noFats wordList = " paraffin paraffins paraffine parafin paraffinum parafina paraffina paraffinol vaseline" +
	" vaselina vaselinum vaselin petrolatum petroleum petrolato ozokerite ozokerit ceresin ceresine ceresina squalane" +
	" squalan squalano squalene squalen dimethicone dimethicon dimeticone cyclomethicone cyclopentasiloxane silicone" +
	" silicon silikon silikonol isododecane isohexadecane polybutene polyisobutene mineralol cetearyl microcrystalline "

// noFatPairs are pairs of such words; alcohols are fatty alcohols, of which one is meant with nothing but these beside.
var noFatPairs = [...]string{
	"mineral oil", "baby oil", "white oil", "huile minerale", "aceite mineral", "olio minerale", "cetyl alcohol",
	"stearyl alcohol", "cetostearyl alcohol", "behenyl alcohol", "propylene glycol", "butylene glycol",
}

// bareNoFats are words of what takes up no alkali where nothing tells an oil or an ester beside them: rose water, and
// not water lily oil; glycerine, and not glyceryl stearate.
const bareNoFats wordList = " glycerine glycerin glycerinum glycerol glyzerin glicerina glicerine water aqua eau" +
	" wasser" +
	" agua acqua "

// noFatFault says what is wrong with an own oil that bears a name of what takes up no alkali, of water, of an alkali,
// of an acid that is reckoned with elsewhere, or of a metal; both are empty of any other.
func noFatFault(name string) (reason, remedy string) {
	const additive = "leave it out of the oils: weigh it as an additive, or water as water"
	if name == "" {
		return "", ""
	}
	if lye.AcidNamed(name) != "stearic-acid" { // which is sold as a fat is, with a value of its own
		if reason, remedy = reckonedElsewhere(name); reason != "" {
			return reason, remedy
		}
	}
	if metal := metalNamed(name); metal != "" {
		return "is a name of " + metal + ", which lye and batter dissolve: hydrogen comes off, which burns", "leave it out"
	}
	if word := noFatNamed(name); word != "" {
		return "is a name of what takes up no alkali (" + word + "), whatever value is given: all the lye that is planned " +
			"for it would be left over", additive
	}
	return "", ""
}

// noFatNamed is the word by which a name tells what takes up no alkali; empty of any other name, and of one that says
// that it is without.
func noFatNamed(name string) string {
	words := names.Words(names.Fold(name))
	for i, word := range words {
		if i > 0 && absentBefore.has(words[i-1]) || i+1 < len(words) && absentBehind.has(words[i+1]) {
			continue
		}
		if noFats.has(word) {
			return word
		}
		if i+1 < len(words) && slices.Contains(noFatPairs[:], word+" "+words[i+1]) {
			return word + " " + words[i+1]
		}
		if bareNoFats.has(word) && !slices.ContainsFunc(words, oilyOrEster) {
			return word
		}
	}
	if answer := names.Likened(names.Oil, name, isOilID); answer.Unheld && strings.HasPrefix(answer.Note, "no fat: ") {
		return strings.Join(words, " ")
	}
	return ""
}

// oilyOrEster reports whether a word tells an oil, a fat or an ester.
func oilyOrEster(word string) bool {
	const oily wordList = " oil fat butter seed huile ol aceite olio fett tallow lard suet ghee wax esters ester "
	return oily.has(word) || strings.HasSuffix(word, "ate") || strings.HasSuffix(word, "ol") && word != "glycerol"
}

// isWaxByName reports whether a name says of itself that it is a wax, by a word or the end of one; hardened oils are
// sold as waxes, and may take up alkali as fats do, which their name does not tell.
func isWaxByName(name string) bool {
	const waxes wordList = " wax waxes wachs wachse cire cires cera ceras cere "
	words := names.Words(names.Fold(name))
	for i, word := range words {
		if i > 0 && absentBefore.has(words[i-1]) || i+1 < len(words) && (absentBehind.has(words[i+1]) ||
			words[i+1] == "like") {
			continue
		}
		if waxes.has(word) || strings.HasSuffix(word, "wachs") || strings.HasSuffix(word, "wax") && len(word) > 5 {
			return true
		}
	}
	return false
}
