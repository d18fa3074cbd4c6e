package soap

import (
	"slices"
	"strings"
	"sync"
	"unicode"

	"example.com/lyewright/internal/names"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// meantOil gives the id of the built-in oil that an oil of the caller's own means, to hold
// its value against: its id, its name and its INCI name are looked for one by one, and each
// counts where it means exactly one. Where they mean several, the one of the lowest planned
// value is taken, which finds the most alkali left over. It is empty where none is meant.
func meantOil(texts ...string) string {
	var meant Oil
	for _, text := range texts {
		id := onlyMeaning(text)
		if id == "" {
			continue
		}
		oil, _, _ := published(id)
		if meant.row == nil || oil.Saponification().Plan().Compare(meant.Saponification().Plan()) < 0 {
			meant = oil
		}
	}
	return meant.ID()
}

// onlyMeaning gives the id of the one built-in oil with a value that a name means, by the
// table of names or as the oil is printed here; empty where it means none, or several that are
// not alike. The name counts as it is written, without what is no word ("lard, lot 12"), and
// without the number of a lot.
func onlyMeaning(name string) string {
	words := foldedWords(names.Fold(name))
	tries := []string{name, strings.Join(words, " ")}
	if i := slices.IndexFunc(words, func(word string) bool { return word == "lot" || word == "batch" }); i > 0 {
		tries = append(tries, strings.Join(words[:i], " "))
	}
	for _, name := range tries {
		if id := idOfName(name); id != "" {
			if _, _, known := published(id); known {
				return id
			}
		}
	}
	return ""
}

// idOfName gives the id of the built-in oil that a name means; empty where it means none, or
// several that are not alike.
func idOfName(name string) string {
	answer := names.Look(names.Oil, name, isOilID)
	switch {
	case alikeAll(answer.Several):
		return answer.Several[0].ID
	case answer.ID != "" && !answer.Unheld:
		return answer.ID
	}
	return printedNames()[strings.Join(foldedWords(names.Fold(name)), " ")]
}

// printedNames finds the ids of the built-in oils by the names that they are printed with,
// each of which is one oil's.
var printedNames = sync.OnceValue(func() map[string]string {
	ids := map[string]string{}
	for _, oil := range Oils() {
		ids[strings.Join(foldedWords(names.Fold(oil.Name())), " ")] = oil.ID()
	}
	return ids
})

// foldedWords gives the words of a name in lower case, without what is neither letter nor
// digit.
func foldedWords(name string) []string {
	return strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
}

// heldAgainst gives the built-in oil that a value of the caller's own is held against, with
// the source of its value: that of the same id, or the one that an own oil means. ok is false
// of a built-in value, and where nothing is known to hold it against.
func (o Oil) heldAgainst() (built Oil, source cite.Source, ok bool) {
	row := o.get()
	switch {
	case !row.brought():
		return Oil{}, cite.Source{}, false
	case row.builtIn:
		return published(row.id)
	default:
		return published(row.meant)
	}
}

// published gives a built-in oil to hold a value against. One that has no value to plan at
// (macadamia) is held at the value of the acids that are published of it, where they are
// three quarters of all: not enough to plan with, and enough to see that another value can
// hardly be meant (our choice).
func published(id string) (built Oil, source cite.Source, ok bool) {
	built, ok = builtIn(id)
	if !ok || built.planned() {
		return built, built.ValueSource(), ok
	}
	for _, p := range built.Profiles() {
		if n, enough := p.molesOf(units.Percent(75)); enough {
			row := *built.row
			row.saponification = units.Exactly(ofGlycerides(n).Round(9, units.Nearest))
			p.Source.How = cite.Computed
			return Oil{row: &row}, p.Source, true
		}
	}
	return Oil{}, cite.Source{}, false
}

// brought reports whether the value that is planned at is the caller's own, given or
// computed from the caller's composition.
func (row *oilRow) brought() bool {
	return row.choice == AsGiven || row.choice == FromProfile && (row.replaced || !row.builtIn)
}

// mostApart is how far a value of the caller's own may lie outside what is published without
// a word: 1 % beyond a range, 3 % off a planned value that has none.
func mostApart(built Oil) units.Ratio {
	if built.HasRange() {
		return units.Percent(1)
	}
	return units.Percent(3)
}

// passes gives the end of what is published of an oil that a value lies outside of, and
// whether above it. ok is false where it lies within.
func passes(value units.Ratio, built Oil) (end units.Ratio, above, ok bool) {
	published, apart := built.Saponification(), mostApart(built)
	if value.Compare(published.High.Times(units.Whole(1).Add(apart))) > 0 {
		return published.High, true, true
	}
	if value.Compare(published.Low.Times(apart.Rest())) < 0 {
		return published.Low, false, true
	}
	return units.Ratio{}, false, false
}
