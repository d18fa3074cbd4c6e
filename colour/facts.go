package colour

import (
	"strings"

	"example.com/lyewright/internal/refdata"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// DensitySource is where the density stands, or that it was recalled, or given; the zero
// value where there is none.
func (c Colourant) DensitySource() cite.Source {
	if c.own != nil && c.own.Density.Given() {
		return cite.Source{How: cite.Given}
	}
	line := c.line("density")
	return sourceOf(refdata.Field(line, 5), "", refdata.Field(line, 4))
}

// Law is one that says which colourants a cosmetic may have. The zero value is [EU].
type Law uint8

// The laws that are held.
const (
	EU Law = iota // Annex IV to Regulation (EC) No 1223/2009, of any cosmetic
	US            // 21 CFR 73 and 74, of soap that is sold as a cosmetic: true soap is none
)

// String gives "EU" or "US".
func (l Law) String() string {
	if l == US {
		return "US"
	}
	return "EU"
}

// Standing is what a law makes of a colourant in a soap that is a cosmetic. The zero value
// is [Unknown], which permits nothing.
type Standing uint8

// The standings of a colourant.
const (
	Unknown      Standing = iota // nothing is held of it
	Permitted                    // on the list, with the conditions that the remark names
	NotPermitted                 // not on the list, or for other uses alone
	NoEntry                      // on no list of colourants, and in use as something else
)

// String gives "not known", "permitted", "not permitted" or "no entry of its own".
func (s Standing) String() string {
	return [...]string{"not known", "permitted", "not permitted", "no entry of its own"}[min(s, NoEntry)]
}

// Status is a colourant's standing under a law, with the clause that says so. The zero
// value says that nothing is known.
type Status struct {
	Standing Standing // what the law makes of it
	Clause   string   // "entry 135", "21 CFR 73.2250"; may be empty
	Remark   string   // conditions, purity, what is unclear; may be empty

	key, how string // of its source
}

// Source is where the law says so; the zero value where nothing is held.
func (s Status) Source() cite.Source {
	return sourceOf(s.key, strings.TrimPrefix(s.Clause, "21 CFR "), s.how)
}

// Under gives the colourant's status under a law: of a maker's own that is not built-in
// nothing is known, but of what its Colour Index numbers stand for: ask each of
// [Colourant.Parts].
func (c Colourant) Under(l Law) Status {
	line := c.line([...]string{"eu", "us"}[min(l, US)])
	s := Status{
		Clause: refdata.Field(line, 2), Remark: refdata.Field(line, 5), key: refdata.Field(line, 4),
		how: refdata.Field(line, 3),
	}
	switch refdata.Field(line, 1) {
	case "permitted":
		s.Standing = Permitted
	case "not-permitted":
		s.Standing = NotPermitted
	case "no-entry":
		s.Standing = NoEntry
	}
	return s
}

// Stability is what caustic batter and soap make of a colourant. The zero value is
// [StabilityUnknown].
type Stability uint8

// What alkali makes of a colourant.
const (
	StabilityUnknown Stability = iota // nothing is held of it
	Stable                            // keeps its colour
	Usable                            // in soap, with the conditions that the text names
	Doubtful                          // may change
	Unstable                          // changes its colour or loses it
	Gassing                           // dissolves, and gives off hydrogen, which burns
)

// String gives "not known", "stable", "usable", "doubtful", "unstable" or "gives off
// hydrogen".
func (s Stability) String() string {
	return [...]string{"not known", "stable", "usable", "doubtful", "unstable", "gives off hydrogen"}[min(s, Gassing)]
}

// Fastness is a colourant's stability in alkali, and what happens to it. The zero value
// says that nothing is known.
type Fastness struct {
	Stability Stability // what alkali makes of it
	Text      string    // what happens: a clause, lower case, no full stop; may be empty

	key, how string // of its source
}

// Source is where that stands, or that it was recalled; the zero value where nothing is held.
func (f Fastness) Source() cite.Source { return sourceOf(f.key, "", f.how) }

// InAlkali gives the colourant's stability in alkali; of a maker's own that is not built-in
// nothing is known, but of its [Colourant.Parts].
func (c Colourant) InAlkali() Fastness {
	line := c.line("alkali")
	f := Fastness{Text: refdata.Field(line, 4), key: refdata.Field(line, 3), how: refdata.Field(line, 2)}
	switch refdata.Field(line, 1) {
	case "stable":
		f.Stability = Stable
	case "usable":
		f.Stability = Usable
	case "doubtful":
		f.Stability = Doubtful
	case "unstable":
		f.Stability = Unstable
	case "gas":
		f.Stability = Gassing
	}
	return f
}

// Medium is what a colourant is dispersed in, or several of these put together with |. The
// zero value is none.
type Medium uint8

// The media, each a bit.
const (
	Water    Medium = 1 << iota // "water"
	Oil                         // "oil": any oil
	Glycerin                    // "glycerin"
)

// Media lists the words of media, as a formula file writes them, in order of their bits.
func Media() []string { return []string{"water", "oil", "glycerin"} }

// String gives the words, such as "water, oil"; empty of none.
func (m Medium) String() string {
	var words []string
	for i, word := range Media() {
		if m&(1<<i) != 0 {
			words = append(words, word)
		}
	}
	return strings.Join(words, ", ")
}

// Dispersion is what a colourant disperses in. The zero value says nothing, and speaks
// against no medium.
type Dispersion struct {
	In     Medium      // all media that are named, together
	Only   bool        // in nothing else, as far as the source is definite
	Text   string      // the same in words, with the grade it depends on
	Source cite.Source // how it is known
}

// Takes reports whether nothing speaks against a medium. Glycerin is used for any powder
// that clumps (common practice): against it only a maker's own word counts.
func (d Dispersion) Takes(m Medium) bool {
	return !d.Only || d.In&m != 0 || m == Glycerin && d.Source.How != cite.Given
}

// Disperses gives what the colourant disperses in; its maker's word stands in place of
// what is built in.
func (c Colourant) Disperses() Dispersion {
	if c.own != nil && c.own.DispersesIn != 0 {
		return Dispersion{
			In: c.own.DispersesIn, Only: true, Text: c.own.DispersesIn.String(),
			Source: cite.Source{How: cite.Given},
		}
	}
	line := c.line("disperses")
	d := Dispersion{
		Only: refdata.Field(line, 1) == "only", Text: refdata.Field(line, 4),
		Source: cite.Source{How: cite.ParseHow(refdata.Field(line, 3))},
	}
	for in := range strings.SplitSeq(refdata.Field(line, 2), ",") {
		switch in {
		case "water":
			d.In |= Water
		case "oil":
			d.In |= Oil
		case "glycerin":
			d.In |= Glycerin
		}
	}
	return d
}

// Usual is a range of loads: a habit, no limit. The zero value is not given.
type Usual struct {
	Low, High Load        // both of one base
	Source    cite.Source // common practice, or given by its maker
}

// Usual gives the loads that are usual of the colourant: a habit of the trade, no limit.
// White is asked of two ways: alone, or beside another colourant, which it lightens
// (beside). Built-in ones are of the oils. given is false where nothing is known.
func (c Colourant) Usual(beside bool) (u Usual, given bool) {
	if c.own != nil && c.own.Usual.Low.Share.Given() {
		u = c.own.Usual
		u.Source = cite.Source{How: cite.Given}
		return u, true
	}
	role := "whitener"
	if beside {
		role = "tint"
	}
	for line := range refdata.Lines(c.stanza) {
		if as := refdata.Field(line, 1); refdata.Field(line, 0) == "usual" && (as == "-" || as == role) {
			low, errLow := units.ParsePercent(refdata.Field(line, 2) + " %")
			high, errHigh := units.ParsePercent(refdata.Field(line, 3) + " %")
			usual := Usual{Load{OfOils, low}, Load{OfOils, high}, cite.Source{How: cite.CommonPractice}}
			return usual, errLow == nil && errHigh == nil
		}
	}
	return Usual{}, false
}

// Whitens reports whether its usual loads are of two kinds: alone, and beside a colourant
// that it lightens.
func (c Colourant) Whitens() bool {
	own := c.own != nil && c.own.Usual.Low.Share.Given()
	return !own && c.field("usual", 1) == "whitener"
}

// Nano reports whether the maker says that it is of nano grade.
func (c Colourant) Nano() bool { return c.own != nil && c.own.Nano }

// Price is what the maker says that it costs; not given otherwise.
func (c Colourant) Price() Price {
	if c.own == nil {
		return Price{}
	}
	return c.own.Price
}

// Parts gives the built-in colourants whose facts are those of this one: itself, or those of
// the Colour Index numbers that its maker gives. unknown are numbers of which nothing is
// held.
func (c Colourant) Parts() (known []Colourant, unknown []string) {
	if c.own == nil || len(c.own.CI) == 0 {
		if c.stanza != "" {
			known = append(known, Colourant{stanza: c.stanza})
		}
		return known, nil
	}
	for _, ci := range c.own.CI {
		if part, found := OfCI(ci); found {
			known = append(known, part)
		} else {
			unknown = append(unknown, ci)
		}
	}
	return known, unknown
}

// Note says what else is worth knowing; mostly empty.
func (c Colourant) Note() string { return c.field("note", 1) }
