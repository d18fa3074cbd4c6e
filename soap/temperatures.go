package soap

import "example.com/lyewright/units"

// Temperatures are those that are known, each 0 °C to 100 °C. Each unlocks something: that
// of the water how hot the lye may get, that of the lye its volume and whether it
// crystallises, that of the batter how much the moulds hold. The zero value is none.
type Temperatures struct {
	Oils  units.Temperature // of the oils, when lye and oils are joined
	Lye   units.Temperature // of the lye, when lye and oils are joined
	Water units.Temperature // of the water that the alkali goes into
	Room  units.Temperature // of the room and the dry alkali; 25 °C where not given
	Pour  units.Temperature // of the batter when it is poured: with vessels 15 °C to 60 °C; 40 °C where not given
}
