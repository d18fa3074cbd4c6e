package soap

import (
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// Severity says how grave a finding is.
type Severity uint8

const (
	Note    Severity = iota // worth knowing
	Warning                 // likely a mistake, or a risk to the batch
	Danger                  // harm to a person
)

// String gives "note", "warning" or "danger".
func (s Severity) String() string {
	switch s {
	case Danger:
		return "danger"
	case Warning:
		return "warning"
	default:
		return "note"
	}
}

// Finding is something about a valid formula that its maker should know. Code
// and Severity are part of the library's interface; the sentence is not.
type Finding struct {
	Code     string
	Severity Severity
	Subject  string      // path in the formula, as in a file: "parts[0]"
	Value    units.Ratio // the figure found; not given where there is none
	Limit    units.Ratio // what it was held against; not given where there is none
	Unit     string      // of both: "%", "points" (of percent), "mg KOH/g", "K", "°C" or "moulds"; the ratio times 100, 100, 1000, 1, 1, 1
	Source   cite.Source // of the limit or the figure
	Names    []string    // what it is about: oils, a part, an addition
	Detail   string      // tells cases of one code apart in its sentence; empty for the usual one
}
