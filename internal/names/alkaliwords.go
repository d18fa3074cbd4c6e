package names

import (
	"strings"
	"sync"

	"example.com/lyewright/internal/nearest"
)

// saying is what a word tells of an alkali, one bit for each thing.
type saying uint32

const (
	lye         saying = 1 << iota // it means a strong alkali by itself
	ofSodium                       // or sodium itself
	ofPotassium                    // or potassium itself
	another                        // of something else whose oxide or hydroxide is a strong alkali
	weak                           // of a metal whose hydroxide is none
	hydroxide
	oxide
	hydrate
	soda        // it may be the hydroxide or a carbonate
	undrunk     // soda of which no drink is called
	piece       // a form in which hydroxides are sold
	dissolved   // it is in water, or is water
	doubtful    // it may be something harmless, too
	salt        // it is a carbonate or another salt
	lime        // or the fruit
	burntBefore // before lime: no fruit, and no chalk
	burntBehind // behind lime
	milky
	cleaned // what a strong cleaner is for
	cleaner
	general // alkali of no kind
	resin
	linking   // it stands between two words that belong together
	without   // before the name of what is not in it
	free      // behind the name of what is not in it, or before it with "of"
	afterFree // behind "free": it is free of something else, or flows freely
	nothing   // it says nothing of what it is
)

// The words by which a name tells of an alkali, in English, German, French, Spanish, Italian and Dutch: in lower
// case, without accents. They are common knowledge; nobody read them anywhere.
var alkaliVocabulary = [...]struct {
	says  saying
	words string
}{
	{lye, "lye lyes lauge laugen caustic caustics caustique caustiques caustico caustica causticos causticas kaustik" +
		" kaustisch kaustische kaustisches kaustischer caustisch caustische atz"},
	{lye | dissolved, "loog liscivia lisciva"},
	{lye | doubtful, "lessive lessives lejia lejias"},
	{lye | dissolved | ofSodium, "natronlauge natronlaugen natronloog"},
	{lye | dissolved | ofPotassium, "kalilauge kalilaugen kaliloog"},
	{lye | ofSodium, "naoh seifenstein atznatron"},
	{lye | ofPotassium, "koh atzkali"},
	{lye | another, "lioh quicklime limewater limewash kalkmilch chaux ammonia ammoniac ammoniak ammoniaque ammoniaca" +
		" amoniaco salmiakgeist desatascador desatascadores limpiahornos deboucheur gootsteenontstopper"},
	{hydroxide, "hydroxide hydroxides hydroxid hydroxyd hydroxyde hydroxydes hidroxido hidroxidos idrossido idrossidi"},
	{oxide, "oxide oxid oxyd oxyde oxido ossido"},
	{hydrate, "hydrate hydrat hydraat hidrato idrato"},
	{ofSodium, "sodium natrium natron sodio sodique sodico sodica"},
	{ofPotassium, "potassium kalium kali potasio potassio potassique potasico potasica potassico"},
	{another, "calcium lithium barium strontium rubidium caesium cesium ammonium calcio litio bario amonio ammonio" +
		" calcique calcico"},
	{weak, "aluminium aluminum aluminio alluminio alumina magnesium magnesio magnesia chromium chrom chrome chromic" +
		" cromo iron ferric ferrous eisen fer hierro ferro zinc zink cinc zinco copper cupric kupfer cuivre cobre rame" +
		" titanium titan titane titanio bismuth wismut cobalt kobalt nickel manganese mangan tin stannic cerium zirconium"},
	{soda | ofSodium, "soda"},
	{soda | undrunk | ofSodium, "soude sosa"},
	{soda | undrunk | ofPotassium, "potash potasse potasa pottasche potassa"},
	{piece, "bead beads pearl pearls micropearl micropearls prill prills pellet pellets flake flakes perle perlen" +
		" mikroperlen plattchen pastilles pastille paillettes perles billes perlas escamas lentejas perline scaglie" +
		" korrels parels flocken schuppen vlokken"},
	{dissolved, "solution solutions losung loesung solucion disolucion soluzione oplossing dissolved dissous gelost" +
		" disuelta aqueous wassrig aqueuse liquid liquor flussig liquide liquida soln aq water wasser eau agua acqua" +
		" stock masterbatch master"},
	{salt, "carbonate carbonat karbonat carbonato bicarbonate bicarbonat bikarbonat bicarbonato hydrogencarbonate" +
		" percarbonate sulphate sulfate sulfat sulfato muriate chloride chlorid nitrate silicate baking washing backsoda" +
		" waschsoda bleichsoda crystals crystal cristaux cristales kristalle club cream bread ash soap feldspar alum"},
	{lime, "lime kalk cal calce"},
	{burntBefore, "quick slaked unslaked hydrated burnt burned caustic atz pickling hydraulic losch brannt gebrannter" +
		" geloschter ungeloschter sumpf gebluste ongebluste lechada"},
	{burntBehind, "putty hydrate hydrat viva apagada muerta hidratada spenta idrata"},
	{milky, "milk milch"},
	{cleaned, "drain drains oven rohr abfluss backofen horno hornos canalisation canalisations evier desague desagues"},
	{cleaner, "cleaner cleaners opener unblocker clearer reiniger crystals granules deboucheur debouche limpiador"},
	{general, "alkali alkalis alcali alcalis"},
	{resin, "gum gomme sal sel gummi"},
	{linking, "of de d du des da di van von en in the el la le les l"},
	{without, "without no non not sans ohne kein keine sin senza zonder"},
	{free, "free frei libre vrij"},
	{afterFree, "of from de von da di van flowing flow running"},
	{nothing, "strong pure the a our my for soap making technical food grade per cent percent"},
}

// vocabulary is what each word says. It is made once, when a name that may mean an alkali is first asked for.
var vocabulary = sync.OnceValue(func() map[string]saying {
	words := map[string]saying{}
	for _, group := range &alkaliVocabulary {
		for word := range strings.FieldsSeq(group.words) {
			words[word] |= group.says
		}
	}
	return words
})

// The long words that are known with one letter off, too; a word that is in the vocabulary itself, or here among the
// others, is none of them.
var mistyped = [...]string{
	"hydroxide", "hydroxyde", "hidroxido", "idrossido", "caustic", "caustique", "caustica", "kaustisch", "natronlauge",
	"kalilauge", "atznatron", "seifenstein", "quicklime", "limewater", "lessive", "ammonia", "ammoniak", "ammoniaque",
	"sodiumhydroxide", "potassiumhydroxide", "natriumhydroxid", "kaliumhydroxid", "causticsoda", "rohrreiniger",
}

const notMistyped = "armonia" // harmony

// mistypedCation is what a word says where it is the name of an alkali metal with one letter off.
func mistypedCation(word string) saying {
	switch {
	case nearest.Distance(word, "sodium") == 1, nearest.Distance(word, "natrium") == 1:
		return ofSodium
	case nearest.Distance(word, "potassium") == 1, nearest.Distance(word, "kalium") == 1:
		return ofPotassium
	}
	return 0
}

// alkaliWords splits a name into its words, and those that are two in one into both, with what each says.
func alkaliWords(name string) sayings {
	var list sayings
	for _, word := range Words(name) {
		list = appendWord(list, word)
	}
	return list
}

func appendWord(list sayings, word string) sayings {
	if says, known := vocabulary()[word]; known {
		return append(list, said{word, says})
	}
	if parts := takenApart(word); parts != nil {
		return append(list, parts...)
	}
	const long = 7
	if len(word) >= long-1 && word != notMistyped {
		for _, known := range &mistyped {
			if len(known)-len(word) < 2 && len(word)-len(known) < 2 && nearest.Distance(word, known) == 1 {
				return appendWord(list, known)
			}
		}
	}
	return append(list, said{word: word})
}

// takenApart takes a word apart that is several in one, of which one tells of an alkali; nil of any other.
func takenApart(word string) sayings {
	const shortest = 3
	words := vocabulary()
	for cut := shortest; cut <= len(word)-shortest; cut++ {
		first, second := words[word[:cut]], words[word[cut:]]
		if first != 0 && second != 0 && (first|second)&(lye|hydroxide|oxide|hydrate|soda|lime|cleaner) != 0 {
			return sayings{{word[:cut], first}, {word[cut:], second}}
		}
	}
	for _, stem := range [...]string{"hydroxid", "hydroxyd", "hidroxid", "idrossid"} {
		if before, behind, found := strings.Cut(word, stem); found { // natriumhydroxidlosung
			var parts sayings
			if says := words[before]; says != 0 {
				parts = append(parts, said{before, says})
			}
			parts = append(parts, said{stem, hydroxide})
			if behind = strings.TrimPrefix(behind, "e"); words[behind] != 0 {
				parts = append(parts, said{behind, words[behind]})
			}
			return parts
		}
	}
	if before, found := strings.CutSuffix(strings.TrimSuffix(word, "n"), "lauge"); found { // seifenlauge
		return sayings{{before, 0}, {"lauge", lye | dissolved}}
	}
	return nil
}

// alkaliTriples are three letters, digits or others in a row of which each name of an alkali has one, and each word
// that may be one letter off has one whatever that letter is.
const alkaliTriples = "lye aug les siv lej isc loo aoh koh ioh sei nst atz atr hyd rox hyr hid hir idr ssi ido oxy" +
	" cau tic tiq kau tis kal qui lim wat hau cal amm nia lmi sod sou sos pot ash dra cle roh ein goo tas bou lka m_o" +
	" 524 525 526 527 529 131 130 766 133 215 _oh -oh (oh 4oh nh3 nh4 nh-"

var triples = sync.OnceValue(func() *[1 << 10]uint32 {
	known := new([1 << 10]uint32)
	for triple := range strings.FieldsSeq(alkaliTriples) {
		at := uint32(0)
		for _, c := range []byte(strings.ReplaceAll(triple, "_", " ")) {
			at = at<<5 | uint32(c&31)
		}
		known[at>>5] |= 1 << (at & 31)
	}
	return known
})

// mayMeanAlkali is quick, since most names mean none: by the triples, of whose letters and digits it compares the five
// last bits, as if some were others. A name with a letter that is not ASCII may mean one.
func mayMeanAlkali(name string) bool {
	known, at := triples(), uint32(0)
	for i := range len(name) {
		c := name[i]
		at = (at<<5 | uint32(c&31)) & (1<<15 - 1)
		if c >= 0x80 || i >= 2 && known[at>>5]>>(at&31)&1 != 0 {
			return true
		}
	}
	return false
}
