package fragrance

import (
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// Law says whose limits count: the smaller wins. The zero value is both, [IFRAAndEU].
type Law uint8

// Whose limits may count.
const (
	IFRAAndEU Law = iota // the IFRA Standards and European law
	IFRAAlone            // the IFRA Standards alone, where European law does not hold
)

// String gives "ifra+eu" or "ifra".
func (l Law) String() string {
	if l == IFRAAlone {
		return IFRA.String()
	}
	return IFRA.String() + "+" + EU.String()
}

func (l Law) counts(r *rule) bool { return l != IFRAAlone || r.body == IFRA }

// Body is who makes a rule. The zero value is [IFRA].
type Body uint8

// Who makes rules.
const (
	IFRA Body = iota // the International Fragrance Association: the trade's own Standards
	EU               // Regulation (EC) 1223/2009
)

// String gives "ifra" or "eu".
func (b Body) String() string {
	if b == EU {
		return "eu"
	}
	return "ifra"
}

// Standing is what a rule asks of a bar of soap. The zero value is [Limited].
type Standing uint8

// What a rule may ask.
const (
	Limited      Standing = iota // at most so much of the finished product
	Unrestricted                 // no restriction in this category
	Prohibited                   // not to be added
	Ceiling                      // not to be added; naturals that contain it may bring so much
	Conditional                  // not to be added unless a specification is met
	Purity                       // a specification alone, no quantity
	Named                        // to be named on the label, and no more
	Unheld                       // there is a maximum, which is not held here
)

// String gives the standing in a few words, such as "limited" or "prohibited".
func (s Standing) String() string {
	switch s {
	case Limited:
		return "limited"
	case Unrestricted:
		return "no restriction in this category"
	case Prohibited:
		return "prohibited"
	case Ceiling:
		return "prohibited as added; limited in naturals"
	case Conditional:
		return "prohibited unless a specification is met"
	case Purity:
		return "a specification of purity"
	case Named:
		return "named on the label"
	default:
		return "a maximum that is not held here"
	}
}

// standingOf reads the word of a table.
func standingOf(word string) Standing {
	switch word {
	case "limit":
		return Limited
	case "free":
		return Unrestricted
	case "prohibited":
		return Prohibited
	case "ceiling":
		return Ceiling
	case "unless":
		return Conditional
	case "specification":
		return Purity
	case "label":
		return Named
	default:
		return Unheld
	}
}

// List is which of the lists of fragrance allergens of European law names a substance. The
// zero value is [NotListed].
type List uint8

// The lists of fragrance allergens.
const (
	NotListed List = iota // on none of them
	OldList               // named on labels since before 2023
	NewList               // named since Regulation (EU) 2023/1545: see Lists
)

// String gives "old" or "new"; empty for NotListed.
func (l List) String() string {
	switch l {
	case OldList:
		return "old"
	case NewList:
		return "new"
	default:
		return ""
	}
}

// Rule is an IFRA Standard, or an entry of Annex II or III of Regulation (EC)
// 1223/2009. The zero value is none. It comes from [Material.Own], from a [Cap], a [Use], an
// [Allergen] or what is [Unjudged]; two are equal with == where they are the same rule.
type Rule struct{ r *rule }

type rule struct {
	body         Body
	index        int // among all rules of its edition
	number, name string
	standing     Standing
	limit        units.Ratio
	with         []*rule // whose substances count within this limit, too
	within       []*rule // the other way round
	extract      bool
	effect       string
	members      string
	ask, remark  string
	list         List
	cas          []CAS
	source       cite.Source
}

func (r Rule) get() *rule {
	if r.r == nil {
		return &rule{}
	}
	return r.r
}

// Given reports whether it is a rule.
func (r Rule) Given() bool { return r.r != nil }

// Body is who makes it.
func (r Rule) Body() Body { return r.get().body }

// Number is that of the IFRA Standard or of the entry of Annex III, in three digits; of an
// entry of Annex II behind "ii-"; x and a number where it was not recalled.
func (r Rule) Number() string { return r.get().number }

// Name is the substance, or the group of substances, as printed.
func (r Rule) Name() string { return r.get().name }

// Standing is what it asks.
func (r Rule) Standing() Standing { return r.get().standing }

// Limit is the most that the finished product may hold, as a share of it by mass; given
// where Standing is [Limited] or [Ceiling].
func (r Rule) Limit() units.Ratio { return r.get().limit }

// List is the list of allergens that names it.
func (r Rule) List() List { return r.get().list }

// Substances are the registry numbers that it is about: those of the list as it was read,
// and isomers of these that the list lacks, counted on the safe side.
func (r Rule) Substances() []CAS { return append([]CAS(nil), r.get().cas...) }

// Members says in words which substances make up the group; mostly empty.
func (r Rule) Members() string { return r.get().members }

// Ask is what the supplier must give its word for; mostly empty.
func (r Rule) Ask() string { return r.get().ask }

// Effect is what a Standard is about, such as dermal sensitization; empty of an entry.
func (r Rule) Effect() string { return r.get().effect }

// Remark is what else is to be known; mostly empty.
func (r Rule) Remark() string { return r.get().remark }

// Source is where it stands.
func (r Rule) Source() cite.Source { return r.get().source }

// quantified reports whether it has a limit that counts.
func (r *rule) quantified() bool { return r.standing == Limited || r.standing == Ceiling }
