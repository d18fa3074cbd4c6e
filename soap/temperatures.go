package soap

import "example.com/lyewright/units"

// Temperatures are those that are known, each 0 °C to 100 °C; nothing is worked
// out of one that is not given.
type Temperatures struct {
	Oils  units.Temperature // of the oils, when lye and oils are joined
	Lye   units.Temperature // of the lye, when lye and oils are joined
	Water units.Temperature // of the water that the alkali goes into
	Room  units.Temperature // of the room and the dry alkali; 25 °C where not given
	Pour  units.Temperature // of the batter when it is poured: for the volume of moulds
}
