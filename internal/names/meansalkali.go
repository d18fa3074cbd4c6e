package names

import (
	"slices"
	"strconv"
	"strings"
)

// The ids of the alkalis that are held.
const (
	sodiumHydroxide    = "sodium-hydroxide"
	potassiumHydroxide = "potassium-hydroxide"
)

// A MeantAlkali is what a name tells of a strong alkali. The zero value is that of a name that tells of none.
type MeantAlkali struct {
	IDs      []string // the hydroxides that it may be, sodium hydroxide first; none where it is another, or not known
	Solution bool     // it is dissolved
	Other    bool     // it is, or holds, an alkali that is not held
	Harmless bool     // it may be something else as well, such as a carbonate
}

// Found reports whether the name is of a strong alkali at all, or may be.
func (m MeantAlkali) Found() bool { return m.IDs != nil || m.Solution || m.Other }

// AlkaliMeant tells what strong alkali a name means, or may mean: as a whole by the table of names, else by any of its
// words, by two of them together or in one, by a formula or by a registry number; a word of seven letters or more may
// be one letter off. A name that has one among other words is taken for it, which is the safer reading: "food grade
// lye". One that says that it is free of it, a carbonate and another salt are none.
func AlkaliMeant(name string) MeantAlkali {
	if !mayMeanAlkali(name) {
		return MeantAlkali{}
	}
	isHeld := func(id string) bool { return id == sodiumHydroxide || id == potassiumHydroxide }
	if answer := Look(Alkali, name, isHeld); answer.Found() {
		return answer.alkali()
	}
	words := alkaliWords(name)
	all, certain := saying(0), false
	for i := range words {
		if said := words.at(i); said != 0 && !words.absent(i) {
			all, certain = all|said, certain || said&doubtful == 0
		}
	}
	if all == 0 {
		return MeantAlkali{}
	}
	m := MeantAlkali{Harmless: !certain, Other: all&another != 0}
	sodium, potassium := all&ofSodium != 0, all&ofPotassium != 0
	either := !sodium && !potassium && !m.Other
	if sodium || either {
		m.IDs = append(m.IDs, sodiumHydroxide)
	}
	if potassium || either {
		m.IDs = append(m.IDs, potassiumHydroxide)
	}
	m.Solution = m.IDs != nil && (all&dissolved != 0 || words.dissolved(name))
	return m
}

// alkali reads what the table says of a name of an alkali.
func (a Answer) alkali() (m MeantAlkali) {
	if strings.HasPrefix(a.Note, "no hydroxide") {
		return MeantAlkali{}
	}
	m.Solution = strings.HasPrefix(a.Note, "a solution")
	if a.ID != "" {
		m.IDs = []string{a.ID}
	}
	for _, meant := range a.Several {
		if meant.ID != "" {
			m.IDs = append(m.IDs, meant.ID)
		} else {
			m.Harmless = true
		}
	}
	slices.Sort(m.IDs)
	slices.Reverse(m.IDs) // sodium hydroxide first
	if m.IDs == nil {
		m.Other, m.Harmless = !m.Solution, false
	}
	return m
}

// sayings are the words of a name with what each says.
type sayings []said

type said struct {
	word string
	says saying
}

func (s sayings) says(i int, what saying) bool { return i >= 0 && i < len(s) && s[i].says&what != 0 }

func (s sayings) any(what saying) bool {
	return slices.ContainsFunc(s, func(w said) bool { return w.says&what != 0 })
}

// before and behind skip the words that link two others.
func (s sayings) before(i int) int {
	for i--; s.says(i, linking); i-- {
	}
	return i
}

func (s sayings) behind(i int) int {
	for i++; s.says(i, linking); i++ {
	}
	return i
}

const (
	held = ofSodium | ofPotassium
	of   = held | another | weak // what an oxide or a hydroxide is of
)

// at tells what alkali begins or stands at a word, by what stands beside it; 0 where there is none.
func (s sayings) at(i int) saying {
	w := s[i]
	before, behind := s.before(i), s.behind(i)
	switch {
	case w.word == "ammoniac" && s.says(i-1, resin): // gum ammoniac, sal ammoniac
	case w.says&lye != 0:
		own := w.says & (lye | held | another | dissolved | doubtful)
		if own&(held|another) == 0 {
			own |= s.cation(before) | s.cation(behind)
		}
		return own &^ weak
	case w.says&hydroxide != 0:
		for s.says(before, oxide) || s.roman(before) { // iron oxide hydroxide, iron(III) hydroxide
			before = s.before(before)
		}
		cation := s.cation(before)
		if cation == 0 {
			cation = s.cation(behind)
		}
		if cation&weak == 0 {
			return lye | cation
		}
	case w.says&(oxide|hydrate) != 0:
		cation := s.cation(i - 1)
		if cation == 0 && behind > i+1 {
			cation = s.cation(behind)
		}
		switch {
		case cation&weak != 0:
		case w.says&hydrate != 0 && cation&held != 0:
			return lye | cation
		case w.says&oxide != 0 && cation != 0:
			return lye | another
		}
	case w.says&soda != 0:
		if !s.any(salt) && (s.any(piece) || w.says&undrunk != 0 && s.any(dissolved)) {
			return lye | w.says&held | doubtful
		}
	case w.says&lime != 0:
		water := i == 0 && s.says(i+1, dissolved) || before < i-1 && s.says(before, dissolved)
		milk := before < i-1 && s.says(before, milky)
		if water || milk || s.says(before, burntBefore) || s.says(i+1, burntBehind) {
			return lye | another
		}
	case w.says&cleaner != 0:
		if s.says(before, cleaned) || behind > i+1 && s.says(behind, cleaned) {
			return lye | another
		}
	case w.says&general != 0:
		bare := func(o said) bool { return o.says&(general|piece|dissolved|linking|nothing) != 0 || isNumber(o.word) }
		if !slices.ContainsFunc(s, func(o said) bool { return !bare(o) }) {
			return lye
		}
	default:
		return s.number(i)
	}
	return 0
}

// cation is what a word says an oxide, a hydroxide or a lye is of.
func (s sayings) cation(i int) saying {
	if i < 0 || i >= len(s) {
		return 0
	}
	if s[i].says == 0 {
		return mistypedCation(s[i].word)
	}
	return s[i].says & of
}

func (s sayings) roman(i int) bool {
	return i >= 0 && i < len(s) && strings.Trim(s[i].word, "iv") == ""
}

// The registry numbers of the Chemical Abstracts Service and of the European inventory (EINECS), all but those of
// the first two of alkalis that are not held; memory, their check digits were worked out. E numbers, too.
var alkaliNumbers = [...]struct {
	number string
	of     saying
}{
	{"1310 73 2", ofSodium},
	{"1310732", ofSodium},
	{"215 185 5", ofSodium},
	{"e 524", ofSodium},
	{"1310 58 3", ofPotassium},
	{"1310583", ofPotassium},
	{"215 181 3", ofPotassium},
	{"e 525", ofPotassium},
	{"1305 62 0", another},
	{"1305 78 8", another},
	{"1310 65 2", another},
	{"7664 41 7", another},
	{"1336 21 6", another},
	{"e 526", another},
	{"e 527", another},
	{"e 529", another},
	// Formulas whose letters stand apart.
	{"na oh", ofSodium},
	{"k oh", ofPotassium},
	{"ca oh", another},
	{"li oh", another},
	{"ba oh", another},
	{"nh 4 oh", another},
	{"nh 3", another},
}

// number tells what alkali has the number, or the formula in several words, that begins at a word.
func (s sayings) number(i int) saying {
next:
	for _, known := range alkaliNumbers {
		at := i
		for part := range strings.SplitSeq(known.number, " ") {
			if at == len(s) || s[at].word != part {
				continue next
			}
			at++
		}
		return lye | known.of
	}
	return 0
}

// absent reports whether the alkali at a word is said not to be in it: "without lye", "free of caustic soda",
// "lye-free". In "lye free of carbonate" and "free-flowing lye" it is.
func (s sayings) absent(i int) bool {
	const same = held | another | soda | hydroxide | lye
	at := i - 1
	for s.says(at, same) {
		at--
	}
	if s.says(at, without) || s.says(at, linking) && s.says(at-1, free) {
		return true
	}
	at = s.behind(i)
	for s.says(at, same) {
		at = s.behind(at)
	}
	return s.says(at, free) && !s.says(at+1, afterFree)
}

// dissolved reports whether a name says that what it is of is dissolved: in words, or as a percentage that is no
// purity.
func (s sayings) dissolved(name string) bool {
	const leastPurity = 80 // percent, of what is sold as solid (common practice)
	if s.any(dissolved) || !strings.Contains(name, "%") || s.any(piece) {
		return s.any(dissolved)
	}
	return slices.ContainsFunc(s, func(w said) bool {
		percent, err := strconv.Atoi(w.word)
		return err == nil && percent > 0 && percent < leastPurity
	})
}
