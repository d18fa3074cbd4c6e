package soap

import (
	"slices"
	"strings"

	"example.com/lyewright/internal/names"
	"example.com/lyewright/internal/nearest"
)

// The words by which a name tells a metal that gives off hydrogen in alkali, in English, German, French, Spanish,
// Italian, Dutch and Latin: in lower case, without accents. They are common knowledge; nobody read them anywhere.
var dissolving = [...]struct{ metal, name string }{
	{"aluminium", "aluminium"},
	{"aluminium", "aluminum"},
	{"aluminium", "aluminio"},
	{"aluminium", "alluminio"},
	{"aluminium", "alu"},
	{"aluminium", "duralumin"},
	{"aluminium", "duraluminium"},
	{"zinc", "zinc"},
	{"zinc", "zink"},
	{"zinc", "cinc"},
	{"zinc", "zinco"},
	{"zinc", "zincum"},
	{"magnesium", "magnesium"},
	{"magnesium", "magnesio"},
	{"magnesium", "magnalium"},
}

// wordList holds words with a space on either side of each.
type wordList string

func (l wordList) has(word string) bool {
	return word != "" && strings.Contains(string(l), " "+word+" ")
}

// metalForms say that it is the metal itself, finely divided; aluminiumForms do so of aluminium, glitterForms among
// them may be of film with a thin layer of it, and foils are forms of which no salt is sold.
const (
	metalForms wordList = " powder powders powdered dust flake flakes flaked filings shavings turnings granule" +
		" granules grit ribbon wool chips pellets metal atomised atomized pulver staub flocken spane griess" +
		" granulat plattchen metall poudre poussiere paillettes limaille copeaux flocons grenaille polvo escamas" +
		" virutas limaduras granalla copos polvere scaglie poeder vlokken schilfers "
	aluminiumForms wordList = " paste bronze pigment pigments "
	glitterForms   wordList = " glitter glitters sequins confetti flitter "
	foils          wordList = " foil foils leaf leaves sheet sheets can cans wire scraps folie folien blatt" +
		" feuille feuilles hoja hojas lamina laminas papier papel foglio foglia tinfoil "
)

// metalFillers may stand between the metal and its form, and say nothing; linking words stand between a form and its
// metal.
const (
	metalFillers wordList = " in en im als de d of the fine finest extra pure pur pura puro fein feines reines" +
		" fin fina fino raw silver leafing metallic mesh shredded "
	linking      wordList = " de d of du des from di van "
	absentBehind wordList = " free frei libre "
	noThing      wordList = " white weiss blanc blanco bianco rich "
	linedWithin  wordList = " lined coated beschichtet ausgekleidet "
	absentBefore wordList = " without no non not sans ohne kein keine sin senza zonder free frei libre "
)

// saltStems stand in the words that make a salt, an oxide or an ester of a metal; saltWords are such words.
const (
	saltWords wordList = " lake lakes lack laque laca pca l oil ol starch salt salts salz salze sel sels sal sales "
	saltStems          = "oxid oxyd ossid hidrox idross sulf sulph solf chlor clor carbonat stear silic silik phosph " +
		"phosf fosf lactat laktat" +
		" citrat zitrat glucon glukon ricin rizin acetat azetat nitrat nitrit borat octenyl succinat ascorb pyrith pirit" +
		" glycin glicin malat taurat threon treon undecyl fluor bromid iodid jodid salicyl palmit myrist oleat laurat" +
		" aspart orotat picolin hydrat alginat"
)

// metalNamed tells which metal that gives off hydrogen in alkali a name means, in powder, flake or
// foil: "aluminium", "zinc" or "magnesium"; empty of any other name, such as one of a salt,
// an oxide or a lake. A bare metal is taken for a powder, and a name that may be that of a
// salt as well, such as "magnesium flakes", for the metal: the safer reading. So is a name that
// is off by one letter.
func metalNamed(name string) string {
	if !mayNameMetal(name) {
		return ""
	}
	words := names.Words(name)
	for i, word := range words {
		behind := func(before string) bool { return i > 0 && words[i-1] == before }
		switch {
		case word == "77000", word == "173" && behind("e"):
			return "aluminium" // its Colour Index number, and that as a food colour
		case word == "1" && behind("metal") && i > 1 && words[i-2] == "pigment":
			return "aluminium" // Pigment Metal 1, its Colour Index name (memory)
		case word == "77945":
			return "zinc" // Pigment Black 16, zinc dust (memory)
		case word == "tinfoil", word == "foil" && (behind("tin") || behind("kitchen") || behind("baking")):
			return "aluminium"
		case i == 0 && len(words) > 1 && bySymbol(word) != "" && isForm(words[1], bySymbol(word)):
			return bySymbol(word)
		}
		for _, known := range dissolving {
			if spelled(word, known.name) && isMetal(words, i, known.metal) || joined(word, known.metal, known.name) {
				return known.metal
			}
		}
	}
	return ""
}

// metalThing tells which metal that gives off hydrogen in alkali a thing is made of by its name, such as "aluminium
// star" or "zinc mould"; empty of any other. Of what is cast, strewn or filled no salt is sold under the bare name of
// the metal, so that its name among other words, or at the head of one, means the metal, which is the safer reading. A
// salt, a white (zinc white is the oxide) and what is free of it or rich in it are none.
func metalThing(name string) string {
	if metal := metalNamed(name); metal != "" || !mayNameMetal(name) {
		return metal
	}
	words := names.Words(name)
	if slices.ContainsFunc(words, isSalt) {
		return ""
	}
	for i, word := range words {
		if i > 0 && absentBefore.has(words[i-1]) || i+1 < len(words) && (absentBehind.has(words[i+1]) ||
			noThing.has(words[i+1])) {
			continue
		}
		for _, known := range dissolving {
			if spelled(word, known.name) || compounded(word, known.name) {
				return known.metal
			}
		}
	}
	return ""
}

// compounded reports whether a word is a thing of a metal in one, as in German ("Aluminiumstern"): it begins with the
// whole long name of the metal, and what is behind that names no salt, no colour and nothing that is free of the metal
// or rich in it. Short names, such as zinc and alu, begin other words too.
func compounded(word, name string) bool {
	const long = 6
	behind, found := strings.CutPrefix(word, name)
	if !found || len(name) < long || behind == "" || isSalt(behind) {
		return false
	}
	return !slices.ContainsFunc(noCompound[:], func(start string) bool { return strings.HasPrefix(behind, start) })
}

// noCompound are the beginnings of what stands behind a metal in one word and says that it is not of it (memory).
var noCompound = [...]string{
	"frei", "free", "vrij", "weiss", "wit", "grau", "grijs", "farb", "reich", "rich", "rijk", "lack", "salz",
	"seife", "zout",
}

// bySymbol gives the metal of a chemical symbol; empty of any other word.
func bySymbol(word string) string {
	switch word {
	case "al":
		return "aluminium"
	case "zn":
		return "zinc"
	case "mg":
		return "magnesium"
	default:
		return ""
	}
}

// spelled reports whether a word is the name of a metal, or a long one mistyped by one letter; magnesia is an oxide.
func spelled(word, name string) bool {
	const long = 7
	return word == name || len(name) >= long && word != "magnesia" && nearest.Distance(word, name) == 1
}

// mayNameMetal is quick, since most names mean none.
func mayNameMetal(name string) bool {
	for i := range len(name) - 2 {
		switch [3]byte{name[i] | 0x20, name[i+1] | 0x20, name[i+2] | 0x20} {
		case [3]byte{'a', 'l', 'u'}, [3]byte{'u', 'm', 'i'}, [3]byte{'i', 'n', 'i'}, [3]byte{'l', 'u', 'm'},
			[3]byte{'z', 'i', 'n'}, [3]byte{'c', 'i', 'n'},
			[3]byte{'m', 'a', 'g'}, [3]byte{'g', 'n', 'e'}, [3]byte{'n', 'e', 's'}, [3]byte{'s', 'i', 'u'},
			[3]byte{'f', 'o', 'i'},
			[3]byte{'m', 'e', 't'}, [3]byte{'7', '7', '0'}, [3]byte{'7', '7', '9'}, [3]byte{'1', '7', '3'},
			[3]byte{'a', 'l', ' '}, [3]byte{'z', 'n', ' '}, [3]byte{'m', 'g', ' '}, [3]byte{'a', 'l', '-'},
			[3]byte{'z', 'n', '-'}, [3]byte{'m', 'g', '-'}:
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
	return metalForms.has(word) || foils.has(word) || glitterForms.has(word) ||
		metal == "aluminium" && aluminiumForms.has(word)
}

func isSalt(word string) bool {
	if saltWords.has(word) {
		return true
	}
	for stem := range strings.SplitSeq(saltStems, " ") {
		if strings.Contains(word, stem) {
			return true
		}
	}
	return false
}

// isFoil reports whether a name says that it is of a foil, a leaf or the like: no salt is sold as one.
func isFoil(name string) bool {
	return slices.ContainsFunc(names.Words(name), func(word string) bool {
		return foils.has(word) || strings.HasSuffix(word, "folie") || strings.HasPrefix(word, "blatt")
	})
}

// namesGlitter reports whether a name of aluminium is that of a glitter, and of no powder, flake or foil:
// a film of which a thin layer is metal is sold under such a name.
func namesGlitter(name string) bool {
	is := false
	for _, word := range names.Words(name) {
		form := word
		for _, known := range dissolving {
			if joined(word, known.metal, known.name) {
				form = strings.TrimPrefix(strings.TrimSuffix(word, known.name), known.name)
			}
		}
		switch {
		case glitterForms.has(form):
			is = true
		case isForm(form, "aluminium"):
			return false
		}
	}
	return is
}

// isMetal reports whether words[at], the name of a metal, means the metal itself.
func isMetal(words []string, at int, metal string) bool {
	before := at - 1
	for before >= 0 && linking.has(words[before]) {
		before--
	}
	if before >= 0 && (isSalt(words[before]) || absentBefore.has(words[before])) {
		return false // oxide of zinc, without aluminium
	}
	const near = 2 // words that say something
	said := 0
	for _, word := range words[at+1:] {
		if said == 0 && absentBehind.has(word) || isSalt(word) {
			return false
		}
		if isForm(word, metal) {
			return true
		}
		if !metalFillers.has(word) && strings.Trim(word, "0123456789") != "" {
			if said++; said == near {
				break
			}
		}
	}
	if before >= 0 && isForm(words[before], metal) {
		return true
	}
	for _, word := range words {
		other := slices.ContainsFunc(dissolving[:],
			func(known struct{ metal, name string }) bool { return spelled(word, known.name) })
		if !other && !isForm(word, metal) && !metalFillers.has(word) && strings.Trim(word, "0123456789") != "" {
			return false // it is a word among others
		}
	}
	return true
}
