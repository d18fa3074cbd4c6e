package soap

import (
	"slices"
	"strings"
	"sync"

	"example.com/lyewright/internal/names"
	"example.com/lyewright/internal/nearest"
	"example.com/lyewright/units"
)

// namedOil finds what a name means among the built-in oils: its id, in whatever case and
// with or without hyphens and accents, or one of the names in everyday use. Of several
// meanings whose planned values lie within 3 % the first is taken.
func namedOil(name string) (Oil, *Fault) {
	if oil, found := builtIn(name); found {
		return oil, nil
	}
	answer := names.Look(names.Oil, name, isOilID)
	if alikeAll(answer.Several) {
		answer.ID = answer.Several[0].ID
	}
	if answer.ID == "" || answer.Unheld {
		return Oil{}, unknownOil(name, answer)
	}
	oil, _ := builtIn(answer.ID)
	return oil.askedAs(name, answer.Note), nil
}

// askedAs gives the oil with the name that it was looked for by, and what the table of
// names says of that.
func (o Oil) askedAs(name, note string) Oil {
	row := *o.row
	row.asked, row.nameNote = name, note
	return Oil{row: &row}
}

// Asked is the name that the oil was looked up by where that is not its id, such as "Olive
// oil" of olive; empty otherwise.
func (o Oil) Asked() string { return o.get().asked }

// NameNote is what should be known of the name that the oil was looked up by, or of its
// id: what else goes by that name, and how that differs. It is empty where nothing is
// to be said. It is common knowledge, and was not read anywhere.
func (o Oil) NameNote() string { return o.get().nameNote }

func isOilID(id string) bool {
	_, found := oilRows()[id]
	return found
}

// alikeOils reports whether confusing two oils is harmless: both are planned, at values
// within 3 % of each other.
func alikeOils(a, b string) bool {
	return a == b || alikeAll([]names.Meaning{{ID: a}, {ID: b}})
}

// alikeAll reports whether all meanings of a name are oils that are held, and planned at
// values that lie within 3 % of the lowest.
func alikeAll(meanings []names.Meaning) bool {
	var low, high units.Ratio
	for _, m := range meanings {
		oil, found := builtIn(m.ID)
		if !found || !oil.planned() {
			return false
		}
		value := oil.Saponification().Plan()
		if !low.Given() || value.Compare(low) < 0 {
			low = value
		}
		if !high.Given() || value.Compare(high) > 0 {
			high = value
		}
	}
	return len(meanings) > 1 && high.Compare(low.Times(units.Percent(103))) <= 0
}

// nearOils are the ids of the built-in oils, among which mistyped names are looked for.
var nearOils = sync.OnceValue(func() names.Set { return names.Among(names.Oil, oilIDs()) })

// notBuiltIn is what is wrong with a name that nothing is known of.
const notBuiltIn = "is not a built-in oil"

// unknownOil says why a name is not taken for an oil, and what would be right.
func unknownOil(name string, answer names.Answer) *Fault {
	const bring = `bring its own "saponification" in mg KOH/g`
	reason, choice := answer.Why(isOilID, func(id string) string {
		if oil, _ := builtIn(id); oil.planned() {
			return ", planned at " + oil.Saponification().Plan().MilligramsPerGramText(1) + " mg KOH/g"
		}
		return ""
	})
	f := Fault{Path: "oil", Text: name, Reason: reason, Remedy: bring, Kind: ErrUnknown}
	switch {
	case len(choice) > 0:
		f.Remedy = "write " + strings.Join(choice, " or ") + ", or " + bring
	case reason == "":
		f.Reason = notBuiltIn
		if f.Remedy = nearest.Question(nearOils().Nearest(name, alikeOils)); f.Remedy == "" {
			f.Remedy = bring + ", or see the list of oils"
		}
	}
	return &f
}

// isLiquid reports whether the carrier's liquid goes by a name.
func (c Carrier) isLiquid(name string) bool {
	return c.In != NoLiquid && sameLiquid(c.liquid(), name)
}

// sameLiquid reports whether two names of liquids are one liquid's.
func sameLiquid(a, b string) bool {
	if a == b || names.Fold(a) == names.Fold(b) {
		return true
	}
	one, unknown := namedOil(a)
	if unknown != nil {
		return false
	}
	other, unknown := namedOil(b)
	return unknown == nil && one.ID() == other.ID()
}

// lineNamed is the place of the oil line that a name means, or -1: the line's id or its
// written name, both letter for letter before they are folded, or another name of a built-in oil.
func (f *Formula) lineNamed(name string) int {
	if line := f.lineOf(name); line >= 0 {
		return line
	}
	folded := names.Fold(name)
	line := slices.IndexFunc(f.Oils, func(l OilLine) bool {
		return l.Oil.row != nil && (names.Fold(l.Oil.ID()) == folded || l.Oil.row.asked != "" &&
			names.Fold(l.Oil.row.asked) == folded)
	})
	if line >= 0 || folded == "" {
		return line
	}
	if oil, bad := namedOil(name); bad == nil {
		return f.lineOf(oil.ID())
	}
	return -1
}
