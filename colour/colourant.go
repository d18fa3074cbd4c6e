package colour

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"example.com/lyewright/internal/names"
	"example.com/lyewright/internal/refdata"
	"example.com/lyewright/units"
)

// Colourant is a colourant, built-in or a maker's own. It is immutable; the zero value is
// none. Get one from [LookUp], [Colourants] or [Shelf.Find].
type Colourant struct {
	stanza string    // of the table; empty of one that is not built-in
	own    *Supplied // what the maker says of it; nil where nothing
	asked  string    // the name that it was looked up by, where that is not the id
}

// Given reports whether there is a colourant.
func (c Colourant) Given() bool { return c != Colourant{} }

// Supplied reports whether its maker says something of it.
func (c Colourant) Supplied() bool { return c.own != nil }

// ID is the name a formula file uses; of a built-in one lower case, hyphenated.
func (c Colourant) ID() string {
	if c.own != nil {
		return c.own.ID
	}
	return c.field("colourant", 1)
}

// Asked is the name that it was looked up by where that is not its ID, such as "charcoal"
// of activated-charcoal; empty otherwise.
func (c Colourant) Asked() string { return c.asked }

// NameNote is what should be known of the name that a built-in one was looked up by, or of
// its id: what else goes by that name. It is empty where nothing is to be said. It
// is common knowledge, and was not read anywhere.
func (c Colourant) NameNote() string {
	if c.own != nil || c.stanza == "" {
		return ""
	}
	return names.Note(names.Colourant, cmp.Or(c.asked, c.ID()))
}

// Name is the common English name, or what the maker calls it.
func (c Colourant) Name() string {
	switch {
	case c.own != nil && c.own.Name != "":
		return c.own.Name
	case c.stanza != "":
		return c.field("name", 1)
	default:
		return c.ID()
	}
}

// Chemistry says what it is made of; empty of a maker's own that is not built-in.
func (c Colourant) Chemistry() string { return c.field("chemistry", 1) }

// CI are its Colour Index numbers, such as "77491", those that its maker gives in place of
// built-in ones; none where none is known.
func (c Colourant) CI() []string {
	if c.own != nil && len(c.own.CI) > 0 {
		return append([]string(nil), c.own.CI...)
	}
	line := c.line("ci")
	if line == "" {
		return nil
	}
	return strings.Split(line, "\t")[1:]
}

// Is reports whether a Colour Index number is one of the colourant's.
func (c Colourant) Is(ci string) bool {
	if c.own != nil && len(c.own.CI) > 0 {
		return slices.Contains(c.own.CI, ci)
	}
	line := c.line("ci")
	for field := 1; ; field++ {
		switch refdata.Field(line, field) {
		case "":
			return false
		case ci:
			return true
		}
	}
}

// Pearl is the Colour Index number of mica, CI 77019: what has it is a pearl, whose colour
// depends on the angle.
const Pearl = "77019"

// IsWhite reports whether the colourant is titanium dioxide for whitening: Colour Index
// number 77891 and no other (a mica coated with it is none), and not of nano grade.
func (c Colourant) IsWhite() bool {
	const titaniumDioxide = "77891"
	if c.own != nil && len(c.own.CI) > 0 {
		return len(c.own.CI) == 1 && c.own.CI[0] == titaniumDioxide && !c.own.Nano
	}
	line := c.line("ci")
	return refdata.Field(line, 1) == titaniumDioxide && refdata.Field(line, 2) == "" && !c.Nano()
}

// Density is that of the solid, in g/mL at room temperature: the lowest and highest of
// what it may be, and what is reckoned with; what its maker gives stands for all three.
// None is given where it is not known. [Colourant.DensitySource] says where it stands.
func (c Colourant) Density() (low, planned, high units.Density) {
	if c.own != nil && c.own.Density.Given() {
		return c.own.Density, c.own.Density, c.own.Density
	}
	line := c.line("density")
	return density(line, 1), density(line, 2), density(line, 3)
}

func density(line string, field int) units.Density {
	printed, _ := strconv.ParseFloat(refdata.Field(line, field), 64)
	d, _ := units.DensityOfFloat(printed)
	return d
}

// Remark says what else is published of the density, and why this figure is taken;
// mostly empty.
func (c Colourant) Remark() string {
	if c.own != nil && c.own.Density.Given() {
		return ""
	}
	return c.field("density", 6)
}

// line gives the line of its stanza with a key; empty where there is none.
func (c Colourant) line(key string) string {
	for line := range refdata.Lines(c.stanza) {
		if refdata.Field(line, 0) == key {
			return line
		}
	}
	return ""
}

func (c Colourant) field(key string, n int) string { return refdata.Field(c.line(key), n) }
