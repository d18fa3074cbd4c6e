package soap

import (
	"cmp"
	"slices"
	"strings"

	"example.com/lyewright/colour"
	"example.com/lyewright/internal/names"
	"example.com/lyewright/soap/lye"
)

// reckonedElsewhere says what is wrong with an additive or a liquid that bears the name of an alkali or an acid; both
// texts are empty of any other name.
func reckonedElsewhere(name string) (reason, remedy string) {
	if reason, remedy = caustic(name); reason != "" {
		return reason, remedy
	}
	switch acid := lye.AcidNamed(name); acid {
	case "":
		return "", ""
	case "stearic-acid":
		return "is a name of an acid (" + acid + "), which takes up alkali",
			"list it among the oils, as stearic-acid-50 or stearic-acid-95: what is sold is mostly half palmitic acid"
	default:
		return "is a name of an acid (" + acid + ")", "list it among the acids, where the alkali that it takes up is " +
			"reckoned with"
	}
}

// caustic says what is wrong with a name, anywhere but among the alkalis, that means a strong alkali or may mean one:
// nothing would reckon with it, and it burns. Both texts are empty of any other name.
func caustic(name string) (reason, remedy string) {
	meant := names.AlkaliMeant(name)
	either := strings.Join(meant.IDs, " or ")
	switch {
	case !meant.Found():
		return "", ""
	case meant.Solution:
		return "is a name of a solution of an alkali", `list it among the alkalis, with "kind": "` +
			cmp.Or(either, "sodium-hydroxide or potassium-hydroxide") +
			`" and "stock": {"strength": "…"} in place of the purity`
	case meant.Other && either == "":
		return "is a name of an alkali that is not held, or of what may hold one", "leave it out"
	case meant.Harmless:
		return "may mean " + either, "list it among the alkalis, where it is reckoned with, if it is that; " +
			"if not, say in its name what it is, such as washing soda"
	case len(meant.IDs) > 1:
		return "may mean " + either, "list it among the alkalis, where it is reckoned with, as the one that its label says"
	default:
		return "is a name of " + either, "list it among the alkalis, where it is reckoned with"
	}
}

// causticAddition refuses a colourant or a fragrance that bears the name of a strong alkali, be it the maker's own, and
// reports whether it did. That it is said to be unlisted changes nothing.
func (c *checker) causticAddition(t trail, kind AdditionKind, a *Addition) bool {
	reason, remedy := caustic(a.asWritten())
	if reason == "" && kind == Colourant {
		if i := slices.IndexFunc(c.f.Pigments, func(own colour.Supplied) bool { return own.ID == a.Name }); i >= 0 {
			reason, remedy = caustic(c.f.Pigments[i].Name)
		}
	}
	if reason == "" {
		return false
	}
	line := t // a copy, so that a line in order costs nothing
	c.fault(line.at(kind.String()), a.asWritten(), reason, remedy, ErrConflict, line.String()+".unlisted")
	return true
}

// noAlkali refuses what is laid in or strewn on and bears the name of a strong alkali.
func (c *checker) noAlkali(t trail, name string) {
	if reason, _ := caustic(name); reason != "" {
		c.fault(t, name, reason, "leave it out: it burns whoever touches the soap, and only what is listed among the "+
			"alkalis is reckoned with", ErrConflict)
	}
}
