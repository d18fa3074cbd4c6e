package lye

import (
	"math"
	"time"

	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

// Cooling is a lye, or a pot of oils, that stands and cools: two readings of its
// thermometer, some time apart.
type Cooling struct {
	Room    units.Temperature // of the air around it, taken as exact: 0 °C to 100 °C
	First   units.Temperature // read first, above the room's
	Second  units.Temperature // read later: more than 2 K below the first, more than 1 K above the room's
	Between time.Duration     // from the first reading to the second, over zero
}

// Until gives how long after the second reading a temperature is reached, as a
// span: each reading may be off by 1 K. It cools towards the room's temperature,
// the faster the farther it is from it (Newton's law of cooling). soonest is 0 where
// it may be reached already; what would take longer than about 146 years is cut there.
// Refused are readings out of order, or so close that the thermometer cannot tell them
// apart, and a temperature that is not between the second reading and the room's. The
// error is [fault.Faults].
func (c Cooling) Until(target units.Temperature) (soonest, latest time.Duration, err error) {
	faults := checkTemperature(nil, "room", c.Room, true)
	for _, reading := range []struct {
		path string
		at   units.Temperature
	}{{"first", c.First}, {"second", c.Second}, {"target", target}} {
		switch {
		case !reading.at.Given():
			faults.Add(reading.path, "", "is missing", `give a temperature, such as "60 °C"`, fault.ErrMissing)
		case c.Room.Given() && reading.at.Compare(c.Room) <= 0:
			faults.Add(reading.path, reading.at.Text(2)+" °C", "is not above the room's temperature", "what cools stays above the room", fault.ErrRange)
		}
	}
	if c.Between <= 0 {
		faults.Add("between", c.Between.String(), "is not above zero", "give the time between the two readings", fault.ErrRange)
	}
	if len(faults) == 0 && c.First.Sub(c.Second).Compare(units.Kelvins(2)) <= 0 {
		faults.Add("second", c.Second.Text(2)+" °C", "is not more than 2 K below the first reading: thermometers may be off by 1 K each", "wait longer between the readings", fault.ErrRange)
	}
	if len(faults) == 0 && target.Compare(c.Second) > 0 {
		faults.Add("target", target.Text(2)+" °C", "is above the second reading", "it has been passed already", fault.ErrRange)
	}
	if len(faults) == 0 && c.Second.Sub(c.Room).Compare(units.Kelvins(1)) <= 0 {
		faults.Add("second", c.Second.Text(2)+" °C", "is not more than 1 K above the room's temperature", "it is as cool as it gets", fault.ErrRange)
	}
	if len(faults) > 0 {
		return 0, 0, faults
	}
	room := c.Room.Celsius()
	after := func(off float64) time.Duration {
		first, second := c.First.Celsius()-off-room, c.Second.Celsius()+off-room
		rate := math.Log(first/second) / c.Between.Seconds()
		nanoseconds := math.Log(second/(target.Celsius()-room)) / rate * float64(time.Second)
		return time.Duration(min(nanoseconds, 1<<62)) // a century and a half; more wraps round
	}
	return max(0, after(-1)), after(1), nil
}
