package colour

import (
	"strconv"
	"strings"

	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

// The bounds of a shelf. More is refused before it costs anything.
const (
	MostOwn = 100 // colourants of the maker's own
	MostCI  = 20  // Colour Index numbers of one
)

// Shelf holds a maker's own colourants, beside the built-in ones. It is immutable; the
// zero value holds none of the maker's.
type Shelf struct{ own []Supplied }

// NewShelf puts colourants on a shelf. Refused are one without an ID, an ID or a number
// that stands twice, what is no Colour Index number (five digits, a lake's or a variety's
// with a colon and one or two more), loads that are out of order or of two bases, and a
// price that is none. The error is [fault.Faults], all that is wrong together, with paths
// such as "[0].ci[1]".
func NewShelf(supplied []Supplied) (Shelf, error) {
	var faults fault.Faults
	if len(supplied) > MostOwn {
		faults.Add("", "", "are "+strconv.Itoa(len(supplied))+" pigments", "list at most "+strconv.Itoa(MostOwn),
			fault.ErrLimit)
		return Shelf{}, faults
	}
	shelf := Shelf{own: make([]Supplied, len(supplied))}
	for i := range supplied {
		check(supplied, i, &faults)
		shelf.own[i] = supplied[i]
		shelf.own[i].CI = append([]string(nil), supplied[i].CI...)
	}
	if len(faults) > 0 {
		return Shelf{}, faults
	}
	return shelf, nil
}

// Find gives the colourant of an id: of the shelf, or built-in. Under the id of a built-in
// one that is on the shelf, what its maker says stands in place of what is built in. found
// is false of an id that is neither.
func (s Shelf) Find(id string) (c Colourant, found bool) {
	c, found = builtIn(id)
	for i := range s.own {
		if s.own[i].ID == id {
			c.own = &s.own[i]
			return c, true
		}
	}
	return c, found
}

func check(list []Supplied, i int, faults *fault.Faults) {
	s, path := &list[i], "["+strconv.Itoa(i)+"]"
	if s.ID == "" {
		faults.Add(path+".colourant", "", "is missing", "give it a name", fault.ErrMissing)
	}
	for j := range i {
		if s.ID != "" && list[j].ID == s.ID {
			faults.Add(path+".colourant", s.ID, "stands twice, first at pigments["+strconv.Itoa(j)+"]",
				"give each pigment an id of its own", fault.ErrConflict)
			break
		}
	}
	if len(s.CI) > MostCI {
		faults.Add(path+".ci", "", "are "+strconv.Itoa(len(s.CI))+" numbers", "list at most "+strconv.Itoa(MostCI),
			fault.ErrLimit)
		return
	}
	for j, ci := range s.CI {
		at := path + ".ci[" + strconv.Itoa(j) + "]"
		if !numbered(ci) {
			faults.Add(at, ci, "is not a Colour Index number", `write its five digits alone, such as "77891"`, fault.ErrFormat)
			continue
		}
		for _, other := range s.CI[:j] {
			if other == ci {
				faults.Add(at, ci, "stands twice", "leave one of them out", fault.ErrConflict)
				break
			}
		}
	}
	if s.DispersesIn > Water|Oil|Glycerin {
		faults.Add(path+".disperses_in", "", "is not known", "use Water, Oil and Glycerin", fault.ErrUnknown)
	}
	s.usual(path+".usual", faults)
	if p := s.Price; p.Given() && (p.Amount.Sign() < 0 || p.Amount.Compare(units.Whole(mostMoney)) > 0 ||
		p.Per.Sign() <= 0) {
		faults.Add(path+".price", "", "is not an amount from 0 to a million for a mass", `write it as "12.40 per 100 g"`,
			fault.ErrRange)
	}
}

func (s *Supplied) usual(path string, faults *fault.Faults) {
	low, high := s.Usual.Low, s.Usual.High
	if !low.Share.Given() && !high.Share.Given() {
		return
	}
	for _, end := range []struct {
		key  string
		load Load
	}{{"low", low}, {"high", high}} {
		switch {
		case !end.load.Share.Given():
			faults.Add(path+"."+end.key, "", "is missing", `give both ends, such as "0.5 % of oils" and "2 % of oils"`,
				fault.ErrMissing)
			return
		case end.load.Share.Sign() < 0 || end.load.Share.Compare(units.Whole(1)) > 0:
			faults.Add(path+"."+end.key, end.load.Text(12), "is not from 0 % to 100 %", "", fault.ErrRange)
			return
		case end.load.Of > OfBatter:
			faults.Add(path+"."+end.key, "", "is neither of oils nor of batter", `write "0.5 % of oils" or "0.5 % of batter"`,
				fault.ErrUnknown)
			return
		}
	}
	switch {
	case low.Of != high.Of:
		faults.Add(path, "", "has a low end "+low.Of.String()+" and a high end "+high.Of.String(), "give both of the same",
			fault.ErrConflict)
	case low.Share.Compare(high.Share) > 0:
		faults.Add(path+".low", low.Text(12), "is the low end, above the high end", "exchange the two", fault.ErrRange)
	}
}

// numbered reports whether a text has the form of a Colour Index number: five digits, with
// a digit or two behind a colon where it is a lake or a variety.
func numbered(ci string) bool {
	number, variety, colon := strings.Cut(ci, ":")
	digits := func(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }
	return len(number) == 5 && digits(number) && (!colon || digits(variety) && len(variety) <= 2)
}
