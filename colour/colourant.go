package colour

import (
	_ "embed"
	"strconv"

	"example.com/lyewright/internal/refdata"
	"example.com/lyewright/units"
)

//go:embed data/colourants.txt
var table string

// DataEdition is the date of the built-in table.
func DataEdition() string { return refdata.Edition(table) }

// Colourant is a built-in colourant. It is immutable; the zero value is none. Get one
// from [LookUpColourant] or [Colourants].
type Colourant struct{ row string }

// LookUpColourant finds a colourant by its id, such as "titanium-dioxide".
func LookUpColourant(id string) (c Colourant, found bool) {
	row, found := refdata.Line(table, id)
	return Colourant{row}, found
}

// Colourants lists the built-in colourants in order of id.
func Colourants() []Colourant {
	var colourants []Colourant
	for row := range refdata.Lines(table) {
		colourants = append(colourants, Colourant{row})
	}
	return colourants
}

// ID is the name a formula file uses: lower case, hyphenated.
func (c Colourant) ID() string { return refdata.Field(c.row, 0) }

// Name is the common English name.
func (c Colourant) Name() string { return refdata.Field(c.row, 1) }

// Density is that of the solid, in g/mL at room temperature: what it may be, and what
// is reckoned with. None is given of the zero value.
func (c Colourant) Density() (low, planned, high units.Density) {
	return c.density(2), c.density(3), c.density(4)
}

func (c Colourant) density(field int) units.Density {
	printed, _ := strconv.ParseFloat(refdata.Field(c.row, field), 64)
	d, _ := units.DensityOfFloat(printed)
	return d
}

// Remark says what else is published of the density, and why this figure is taken;
// mostly empty.
func (c Colourant) Remark() string { return refdata.Field(c.row, 7) }
