package soap

import (
	"slices"
	"strings"
	"unicode"

	"example.com/lyewright/internal/names"
)

// The words by which a name tells a metal that alkali dissolves under hydrogen, in English,
// German, French, Spanish and Latin: in lower case, without accents. They are common
// knowledge; nobody read them anywhere.
var (
	dissolving = []struct{ metal, name string }{
		{"aluminium", "aluminium"}, {"aluminium", "aluminum"}, {"aluminium", "aluminio"}, {"aluminium", "alu"},
		{"zinc", "zinc"}, {"zinc", "zink"}, {"zinc", "cinc"}, {"zinc", "zincum"},
		{"magnesium", "magnesium"}, {"magnesium", "magnesio"}, {"magnesium", "magnalium"},
	}
	// metalForms say that it is the metal itself, finely divided; the others do so of aluminium.
	metalForms = strings.Fields(`powder powders powdered dust flake flakes flaked foil foils leaf leaves filings shavings
		turnings granule granules grit ribbon wool chips pellets metal atomised atomized
		pulver staub flocken folie folien blatt blattchen spane griess granulat plattchen metall
		poudre poussiere paillettes feuille feuilles limaille copeaux flocons grenaille
		polvo escamas hoja hojas lamina laminas virutas limaduras granalla copos`)
	aluminiumForms = strings.Fields("paste bronze pigment pigments glitter sequins confetti sheet flitter papier papel")
	// metalFillers may stand between the metal and its form, and say nothing.
	metalFillers = strings.Fields(`in en im als de d of the fine finest extra pure pur pura puro fein feines reines
		fin fina fino raw silver leafing metallic mesh`)
	linking = strings.Fields("de d of du des from")
	// saltStems stand in the words that make a salt, an oxide or an ester of it; saltWords are such words.
	saltStems = strings.Fields(`oxid oxyd hidrox sulf sulph chlor clor carbonat stear silic silik phosph phosf fosf lactat laktat citrat zitrat
		glucon glukon ricin rizin acetat azetat nitrat nitrit borat octenyl succinat ascorb pyrith pirit glycin glicin malat taurat threon treon
		undecyl fluor bromid iodid jodid salicyl palmit myrist oleat laurat aspart orotat picolin hydrat alginat`)
	saltWords    = strings.Fields("lake lakes lack laque laca pca l oil ol starch salt salts salz salze sel sels sal sales")
	absentBehind = strings.Fields("free frei libre")
	absentBefore = strings.Fields("without no non not sans ohne kein keine sin free frei libre")
)

// metalNamed tells which metal that dissolves in alkali a name means, in powder, flake or
// foil: "aluminium", "zinc" or "magnesium"; empty of any other name, such as one of a salt,
// an oxide or a lake. A bare metal is taken for a powder, and a name that may be that of a
// salt as well, such as "magnesium flakes", for the metal: the safer reading.
func metalNamed(name string) string {
	if !mayNameMetal(name) {
		return ""
	}
	words := plainWords(name)
	for i, word := range words {
		switch {
		case word == "77000", word == "e173", word == "173" && i > 0 && words[i-1] == "e":
			return "aluminium" // its Colour Index number, and that as a food colour
		case word == "77945":
			return "zinc" // Pigment Black 16, zinc dust (memory)
		case word == "tinfoil", word == "foil" && i > 0 && (words[i-1] == "tin" || words[i-1] == "kitchen"):
			return "aluminium"
		}
		for _, known := range dissolving {
			if word == known.name && isMetal(words, i, known.metal) || joined(word, known.metal, known.name) {
				return known.metal
			}
		}
	}
	return ""
}

// mayNameMetal is quick, since most names mean none.
func mayNameMetal(name string) bool {
	for i := range len(name) - 2 {
		switch [3]byte{name[i] | 0x20, name[i+1] | 0x20, name[i+2] | 0x20} {
		case [3]byte{'a', 'l', 'u'}, [3]byte{'z', 'i', 'n'}, [3]byte{'c', 'i', 'n'}, [3]byte{'m', 'a', 'g'},
			[3]byte{'f', 'o', 'i'}, [3]byte{'7', '7', '0'}, [3]byte{'7', '7', '9'}, [3]byte{'1', '7', '3'}:
			return true
		}
	}
	return false
}

// joined reports whether a word is a metal and its form in one, as in German.
func joined(word, metal, name string) bool {
	before, found := strings.CutSuffix(word, name)
	if found && isForm(before, metal) {
		return true
	}
	behind, found := strings.CutPrefix(word, name)
	return found && isForm(behind, metal)
}

func isForm(word, metal string) bool {
	return slices.Contains(metalForms, word) || metal == "aluminium" && slices.Contains(aluminiumForms, word)
}

func isSalt(word string) bool {
	return slices.Contains(saltWords, word) || slices.ContainsFunc(saltStems, func(stem string) bool { return strings.Contains(word, stem) })
}

// isMetal reports whether words[at], the name of a metal, means the metal itself.
func isMetal(words []string, at int, metal string) bool {
	before := at - 1
	for before >= 0 && slices.Contains(linking, words[before]) {
		before--
	}
	if before >= 0 && (isSalt(words[before]) || slices.Contains(absentBefore, words[before])) {
		return false // oxide of zinc, without aluminium
	}
	const near = 2 // words that say something
	said := 0
	for _, word := range words[at+1:] {
		if said == 0 && slices.Contains(absentBehind, word) || isSalt(word) {
			return false
		}
		if isForm(word, metal) {
			return true
		}
		if !slices.Contains(metalFillers, word) && strings.Trim(word, "0123456789") != "" {
			if said++; said == near {
				break
			}
		}
	}
	if before >= 0 && isForm(words[before], metal) {
		return true
	}
	for _, word := range words {
		other := slices.ContainsFunc(dissolving, func(known struct{ metal, name string }) bool { return known.name == word })
		if !other && !isForm(word, metal) && !slices.Contains(metalFillers, word) && strings.Trim(word, "0123456789") != "" {
			return false // it is a word among others
		}
	}
	return true
}

// plainWords splits a name into its words, folded: letters and digits, whatever else stands
// between them, an apostrophe too.
func plainWords(name string) []string {
	apart := strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) || unicode.Is(unicode.Mn, r) {
			return r
		}
		return ' '
	}, name)
	return strings.Fields(names.Fold(apart))
}
