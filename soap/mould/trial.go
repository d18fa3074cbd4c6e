package mould

import (
	"strconv"

	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

// Trial is what a maker found: so many cavities, or swirls on a sheet, took so
// much batter. It beats any model. The zero value is no trial.
type Trial struct {
	Count int        // 1 to 10,000
	Mass  units.Mass // of all of them, over 0 g, to a tonne
}

// Given reports whether there was a trial; whether its figures are in order, Each says.
func (t Trial) Given() bool { return t != Trial{} }

// Each gives the mass that one took, to the nearest nanogram. The error is
// [fault.Faults].
func (t Trial) Each() (units.Mass, error) {
	var c checker
	if t.Count < 1 || t.Count > Most {
		c.faults.Add("count", strconv.Itoa(t.Count), "is not between 1 and 10000", "give how many took that mass", fault.ErrRange)
	}
	switch {
	case t.Mass.Sign() <= 0:
		c.faults.Add("mass", t.Mass.String(), "is not above 0 g", "give what all of them took", fault.ErrRange)
	case t.Mass.Compare(units.Grams(units.Tonne)) > 0:
		c.faults.Add("mass", t.Mass.String(), "is more than a tonne", "write at most 1000 kg", fault.ErrRange)
	}
	if len(c.faults) > 0 {
		return units.Mass{}, c.faults
	}
	each, _ := t.Mass.Over(units.Whole(t.Count), units.Nearest)
	if each.Sign() == 0 {
		c.faults.Add("mass", t.Mass.String(), "is less than a nanogram for each", "give what all of them took", fault.ErrRange)
	}
	return each, c.faults.OrNil()
}

// Most is the largest count of anything that a formula or a trial may have: cavities,
// pieces of one, moulds.
const Most = 10_000
