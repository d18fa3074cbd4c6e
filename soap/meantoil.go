package soap

import (
	"slices"
	"strings"
	"sync"

	"example.com/lyewright/internal/names"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// A likeness is which built-in oils an own oil is held against.
type likeness struct {
	ids    []string // of the built-in oils: one that is meant, or those that may be
	only   bool     // the id, the name or the INCI name means that one, words of the trade aside
	called string   // the id of the built-in oil that the own one's id is a name of; empty where it is none, or of several
	near   string   // the name that the ids lie nearest to by their letters; empty where that was not asked
}

// liken finds the built-in oils that an oil of the caller's own means, to hold its value against: its id, its name
// and its INCI name are looked for one by one, without words of the trade where they mean nothing with them. Where
// they mean several oils, the one of the lowest planned value is taken, which finds the most alkali left over. Where
// none means exactly one, all that they may mean count, if all are known; else those whose names
// lie near, where confusing them is harmless; else those whose names stand in the name, the id or the INCI name as
// whole words.
func liken(id, name, inci string) likeness {
	like := likenAny(id, name, inci)
	if answer := names.Look(names.Oil, id, isOilID); alikeAll(answer.Several) {
		like.called = answer.Several[0].ID
	} else if !answer.Unheld {
		like.called = answer.ID
	}
	return like
}

func likenAny(texts ...string) likeness {
	if like, known := likenBy(meanings, texts); known {
		return like
	}
	for _, text := range texts {
		if ids := nearOils().Nearest(names.Plain(text), alikeOils); ids != nil {
			return likeness{ids: ids, near: text}
		}
	}
	like, _ := likenBy(standing, texts)
	return like
}

// likenBy likens an oil by what each of some texts may mean. known reports whether anything is known of one.
func likenBy(meanings func(text string) (ids []string, known bool), texts []string) (like likeness, known bool) {
	var meant Oil
	var perhaps []string
	for _, text := range texts {
		ids, found := meanings(text)
		known = known || found
		if len(ids) != 1 {
			perhaps = append(perhaps, ids...)
			continue
		}
		oil, _, _ := published(ids[0])
		if meant.row == nil || oil.Saponification().Plan().Compare(meant.Saponification().Plan()) < 0 {
			meant = oil
		}
	}
	switch {
	case meant.row != nil:
		return likeness{ids: []string{meant.ID()}, only: true}, true
	case known:
		slices.Sort(perhaps)
		return likeness{ids: slices.Compact(perhaps)}, true
	}
	return likeness{}, false
}

// standing gives the ids of the built-in oils whose names stand in a text as whole words: all of them where there are
// several, and none where something stands there that is not held, unless another name that does has more words.
func standing(text string) (ids []string, known bool) {
	runs := names.Within(text, func(run string) bool { _, found := called(run); return found })
	for _, run := range runs {
		meant, _ := called(run)
		if meant == nil {
			if len(ids) > 0 && strings.Count(run, " ") < strings.Count(runs[0], " ") {
				continue
			}
			return nil, true
		}
		ids = append(ids, meant...)
	}
	slices.Sort(ids)
	return slices.Compact(ids), len(runs) > 0
}

// called is what a run of words is a name of, as it stands or with the words for oil of two languages before it,
// which gives "oliva" and "ricin" their meaning.
func called(run string) (ids []string, found bool) {
	if id, printed := printedNames()[run]; printed {
		return []string{id}, true
	}
	for _, before := range [...]string{"", "aceite de ", "huile de ", "huile d"} {
		if answer := names.Look(names.Oil, before+run, isOilID); answer.Found() {
			return likely(answer), true
		}
	}
	return nil, false
}

// meant is the id of the built-in oil that an own oil means; empty where it means none, or nobody knows which.
func (row *oilRow) meant() string {
	if !row.like.only {
		return ""
	}
	return row.like.ids[0]
}

// meanings gives the ids of the built-in oils with a value that a name may mean, by the table of names or as the
// oil is printed here: one where it means that, the first of several that are alike, and none where it may mean
// something that is not held. known reports whether anything is known of the name.
func meanings(name string) (ids []string, known bool) {
	if id, found := printedNames()[strings.Join(names.Words(names.Fold(name)), " ")]; found {
		return []string{id}, true
	}
	answer := names.Likened(names.Oil, name, isOilID)
	return likely(answer), answer.Found()
}

// likely gives the ids of the built-in oils with a value that an answer has: one, or the first of several that are
// alike; none where one of them is not held.
func likely(answer names.Answer) (ids []string) {
	switch {
	case alikeAll(answer.Several):
		return []string{answer.Several[0].ID}
	case answer.ID != "" && !answer.Unheld:
		answer.Several = []names.Meaning{{ID: answer.ID}}
	}
	for _, m := range answer.Several {
		if _, _, held := published(m.ID); !held {
			return nil
		}
		ids = append(ids, m.ID)
	}
	return ids
}

// inPlaceOf gives the built-in oil in place of whose value the caller's own is used: one on a built-in id, or on an
// own oil whose id is a name of exactly one, such as "Olive oil". replaced is false of every other.
func (row *oilRow) inPlaceOf() (built Oil, replaced bool) {
	switch {
	case row.replaced:
		return builtIn(row.id)
	case row.builtIn || !row.brought():
		return Oil{}, false
	}
	return builtIn(row.like.called)
}

// printedNames finds the ids of the built-in oils by the names that they are printed with,
// each of which is one oil's.
var printedNames = sync.OnceValue(func() map[string]string {
	ids := map[string]string{}
	for _, id := range oilIDs() {
		stanza, _ := oilIndex().Find(id) // no row is read for its name alone
		_, rest, _ := strings.Cut(stanza, "\nname\t")
		name, _, _ := strings.Cut(rest, "\n")
		ids[strings.Join(names.Words(names.Fold(name)), " ")] = id
	}
	return ids
})

// A standard is a built-in oil that a value of the caller's own is held against, with the source of its value.
type standard struct {
	oil    Oil
	source cite.Source
}

// heldAgainst gives the built-in oils that a value of the caller's own is held against: that of the same id, or those
// that an own oil means. There are none of a built-in value, and where nothing is known to hold it against.
func (o Oil) heldAgainst() (standards []standard) {
	row := o.get()
	ids := row.like.ids
	switch {
	case !row.brought():
		return nil
	case row.builtIn:
		ids = []string{row.id}
	}
	for _, id := range ids {
		if built, source, known := published(id); known {
			standards = append(standards, standard{built, source})
		}
	}
	return standards
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

// A passing is how a value lies outside what is published of the oils that it is held against.
type passing struct {
	end    units.Ratio // of what is published
	source cite.Source // of that
	above  bool
	lowest Oil // of those oils the one of the lowest planned value: with it the most alkali is left over
}

// passes tells how a value lies outside what is published of each of some oils; ok is false where it lies within
// that of one. Where it lies above some, it counts as above.
func passes(value units.Ratio, standards []standard) (p passing, ok bool) {
	for _, s := range standards {
		published, apart := s.oil.Saponification(), mostApart(s.oil)
		above := value.Compare(published.High.Times(units.Whole(1).Add(apart))) > 0
		if !above && value.Compare(published.Low.Times(apart.Rest())) >= 0 {
			return passing{}, false
		}
		end := published.Low
		if above {
			end = published.High
		}
		farther := end.Compare(p.end) < 0
		if above {
			farther = end.Compare(p.end) > 0
		}
		if p.lowest.row == nil || above && !p.above || above == p.above && farther {
			p.end, p.source, p.above = end, s.source, above
		}
		if p.lowest.row == nil || published.Plan().Compare(p.lowest.Saponification().Plan()) < 0 {
			p.lowest = s.oil
		}
	}
	return p, len(standards) > 0
}
