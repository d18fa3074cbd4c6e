package sheet

import (
	"strconv"
	"strings"

	"example.com/lyewright/units"
)

// A column prints masses in one unit with the places that a scale shows, and
// adds up what it printed, so that a total is the sum of its lines.
type column struct {
	unit   units.Unit
	places int
	total  int64 // in units of the last place
}

// columnFor gives the places that a scale's division needs in a unit: as many
// as show it exactly, up to three, or as many as are finer than it.
func columnFor(unit units.Unit, division units.Mass) column {
	exact := division.Text(unit, 9)
	_, decimals, _ := strings.Cut(exact, ".")
	places := len(decimals)
	if places > 3 {
		places = 1 + len(decimals) - len(strings.TrimLeft(decimals, "0"))
	}
	return column{unit: unit, places: min(places, 6)}
}

// mass prints a mass and adds it to the total. What is weighed is a multiple of the scale's
// division already, alkali and fragrances rounded down to it: in another unit it is printed
// to the nearest, as the scale shows it. Cut, 2.30 oz on a scale of 0.05 oz would read
// 2.29, since a nanogram is coarser than that division.
func (c *column) mass(m units.Mass) string {
	text := m.Fixed(c.unit, c.places)
	digits := strings.Replace(text, ".", "", 1)
	if n, err := strconv.ParseInt(digits, 10, 64); err == nil {
		c.total += n
	}
	return text
}

// sum prints the total of what was printed.
func (c *column) sum() string {
	text := strconv.FormatInt(c.total, 10)
	if c.places == 0 {
		return text
	}
	for len(text) <= c.places {
		text = "0" + text
	}
	return text[:len(text)-c.places] + "." + text[len(text)-c.places:]
}
