package soap

import (
	"strconv"

	"example.com/lyewright/units"
)

func (c *checker) oils() {
	lines, list := c.f.Oils, top("oils")
	switch {
	case len(lines) == 0:
		c.fault(list, "", "are missing", "list at least one oil", ErrMissing)
		return
	case len(lines) > mostOils:
		c.fault(list, "", "are "+strconv.Itoa(len(lines))+" lines", "list at most 100", ErrLimit)
		return
	}
	for i := range lines {
		oil, t := lines[i].Oil, list.item(i)
		c.note(t, lines[i].Note)
		switch {
		case oil.row == nil:
			c.fault(t.at("oil"), "", "is missing", "name a built-in oil, or bring one with its own saponification value",
				ErrMissing)
			continue
		case !oil.planned():
			c.fault(t.at("saponification"), "", "is missing: no value of "+oil.ID()+
				" is published, nor enough of its fatty acids",
				`bring the value of this lot, such as {"low": "190", "high": "198"}`, ErrMissing)
		}
		if lines[i].Measured && oil.Choice() != AsGiven {
			c.fault(t.at("measured"), "", "is said of an oil without a saponification value of its own",
				`give what the titration came to, such as {"low": "190", "high": "193"}, or leave "measured" out`, ErrConflict,
				itemPath("oils", i)+".saponification")
		}
		if first := c.f.lineOf(oil.ID()); first < i {
			c.fault(t.at("oil"), oil.ID(), "stands twice, first at "+itemPath("oils", first), "put both into one line",
				ErrConflict, itemPath("oils", first)+".oil")
		}
	}
	c.oilAmounts()
}

// oilAmounts checks that every line has a share, or every line a mass.
func (c *checker) oilAmounts() {
	lines, list := c.f.Oils, top("oils")
	shares, masses := 0, 0
	var total units.Mass
	for i := range lines {
		l, t := &lines[i], list.item(i)
		share, mass := l.Share.Given() || l.Rest, l.Mass.Sign() != 0
		switch {
		case share && mass, l.Rest && l.Share.Given():
			c.fault(t, "", "has its amount in more than one way", "give a share or a mass, the same for every oil", ErrConflict)
		case !share && !mass:
			c.fault(t.at("share"), "", "is missing", `give a share such as "45 %" or "rest", or a mass`, ErrMissing,
				itemPath("oils", i)+".mass")
		}
		if share {
			shares++
		}
		if mass {
			masses++
			total = total.Add(l.Mass)
			c.mass(t.at("mass"), l.Mass)
		}
		if l.Share.Given() {
			c.percent(t.at("share"), l.Share, 100, false, false)
		}
	}
	switch {
	case shares > 0 && masses > 0:
		c.fault(list, "", "mix shares and masses", "give every oil a share, or every oil a mass", ErrConflict, "oils[].share",
			"oils[].mass")
	case shares == len(lines):
		c.sharesAddUp("oils", len(lines), func(i int) (units.Ratio, bool) { return lines[i].Share, lines[i].Rest })
	case masses == len(lines) && total.Compare(units.Grams(units.Tonne)) > 0:
		c.fault(list, total.String(), "in all is more than a tonne", "make several batches", ErrRange, "oils[].mass")
	}
}

// sharesAddUp checks that shares make a whole, of which one may be the rest.
func (c *checker) sharesAddUp(key string, n int, share func(int) (units.Ratio, bool)) {
	list := top(key)
	c.addUp(list, key+"[].share", n, share, func(i int) trail {
		line := list.item(i)
		return line.at("share")
	})
}

// addUp checks that the shares of a list make a whole; at is where each stands.
func (c *checker) addUp(list trail, input string, n int, share func(int) (units.Ratio, bool), at func(int) trail) {
	total, rests := units.Whole(0), 0
	for i := range n {
		s, rest := share(i)
		if !rest {
			if s.Sign() <= 0 {
				return // said already
			}
			total = total.Add(s)
			continue
		}
		if rests++; rests == 2 {
			c.fault(at(i), "rest", "stands twice", "leave the rest to one line", ErrConflict, input)
		}
	}
	off := total.Sub(units.Whole(1))
	switch {
	case rests > 1:
	case rests == 1 && off.Sign() >= 0:
		c.fault(list, percentText(total), "is what the shares add up to: nothing is left for the rest",
			"lower a share, or leave the rest out", ErrRange, input)
	case rests == 0 && off.Sign() < 0:
		c.fault(list, percentText(total), "is what the shares add up to, "+percentText(total.Rest())+" short of 100 %",
			`raise a share, or make one "rest"`, ErrRange, input)
	case rests == 0 && off.Sign() > 0:
		c.fault(list, percentText(total), "is what the shares add up to, "+percentText(off)+" over 100 %",
			`lower a share, or make one "rest"`, ErrRange, input)
	}
}
