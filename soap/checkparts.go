package soap

import (
	"slices"
	"strconv"

	"example.com/lyewright/units"
)

func (c *checker) parts() {
	parts, list := c.f.Parts, top("parts")
	if len(parts) > mostParts {
		c.fault(list, "", "are "+strconv.Itoa(len(parts))+" parts", "list at most 50", ErrLimit)
		return
	}
	fromVessels := c.f.fromVessels()
	for i := range parts {
		if c.ended() {
			return
		}
		p, t := &parts[i], list.item(i)
		c.name(t.at("part"), p.Name)
		c.note(t, p.Note)
		c.twice(list, "part", i, p.Name, func(j int) bool { return parts[j].Name == p.Name },
			"give each part a name of its own")
		c.filling(t, p)
		c.look(t, p)
		switch {
		case fromVessels:
			c.partSize(t, p)
		case p.Rest && p.Share.Given():
			c.fault(t.at("share"), "", "is given in more than one way", `give a percentage or "rest"`, ErrConflict)
		case !p.Rest && !p.Share.Given():
			c.fault(t.at("share"), "", "is missing", `give a percentage of the batter, or "rest"`, ErrMissing, "size.vessels")
		case !p.Rest:
			c.percent(t.at("share"), p.Share, 100, false, false)
		}
		c.additions(t, p)
		c.target(t, p)
	}
	switch {
	case fromVessels:
		c.sharesBesideVessels()
	case len(parts) > 0:
		c.sharesAddUp("parts", len(parts), func(i int) (units.Ratio, bool) { return parts[i].Share, parts[i].Rest })
	}
}

// most checks a fragrance of which the most is asked for; above are the lines before it.
func (c *checker) most(t trail, kind AdditionKind, above []Addition, a *Addition) {
	load, margin := t.at("load"), t.at("margin")
	switch {
	case kind != Fragrance && a.Load.Max:
		c.load(load, &a.Load)
	case kind != Fragrance:
		c.fault(margin, percentText(a.Margin), "is given for something that is not a fragrance", "leave it out", ErrConflict)
	case !a.Load.Max:
		c.load(load, &a.Load)
		c.fault(margin, percentText(a.Margin), `is given for a load that is not "max"`, "leave it out, or ask for the most",
			ErrConflict, load.String())
	case a.Load.OfOils.Given() || a.Load.OfBatter.Given() || a.Load.Mass.Sign() != 0:
		c.fault(load, "max", "is asked for beside a load", "give one of them", ErrConflict)
	case slices.ContainsFunc(above, func(other Addition) bool { return other.Load.Max }):
		c.fault(load, "max", "is asked for a second time in this part",
			"give the other a load: the most of one depends on it", ErrConflict)
	}
	if a.Margin.Given() && a.Load.Max {
		if a.Margin.Sign() < 0 {
			c.fault(margin, percentText(a.Margin), "is below 0 %", "give how far below the most to stay", ErrRange)
		} else {
			c.percent(margin, a.Margin, 100, true, true)
		}
	}
}

// mostBeside refuses the most of a fragrance beside one of which nothing is known: the rules
// leave room beside all of a part's fragrances together.
func (c *checker) mostBeside(list trail, fragrances []Addition) {
	most := slices.IndexFunc(fragrances, func(a Addition) bool { return a.Load.Max })
	unlisted := slices.IndexFunc(fragrances, func(a Addition) bool { return a.Unlisted })
	if most < 0 || unlisted < 0 {
		return
	}
	line, beside := list.item(most), list.item(unlisted)
	if most == unlisted {
		c.fault(line.at("load"), "max", "is asked for of what is unlisted, of which nothing is known",
			"give it a load, or bring it among the materials, with its supplier's certificate", ErrConflict)
		return
	}
	c.fault(line.at("load"), "max", "is asked for beside "+units.Quote(fragrances[unlisted].Name)+
		", which is unlisted: what room the rules leave beside it is not known",
		"give a load, or bring that among the materials, with its supplier's certificate", ErrConflict, beside.String())
}

func (c *checker) additions(part trail, p *Part) {
	if n := len(p.Colourants) + len(p.Fragrances) + len(p.Additives) + len(p.Match); n > mostAdditions {
		c.fault(part, "", "has "+strconv.Itoa(n)+" additions", "use at most 50 in a part", ErrLimit)
		return
	}
	for kind := Colourant; kind <= Additive; kind++ {
		additions, list := p.additions(kind), part.at(kind.list())
		for i := range additions {
			a, t := &additions[i], list.item(i)
			c.name(t.at(kind.String()), a.Name)
			c.note(t, a.Note)
			c.twice(list, kind.String(), i, a.Name, func(j int) bool { return additions[j].Name == a.Name },
				"put both into one line of this part")
			if !c.misplaced(t, kind, a.Name) && a.Name != "" {
				c.unlisted(t, kind, a)
			}
			if a.Load.Max || a.Margin.Given() {
				c.most(t, kind, additions[:i], a)
			} else {
				c.load(t.at("load"), &a.Load)
			}
			c.carrier(t.at("carrier"), &a.Carrier)
			c.paste(t, kind, &a.Carrier)
			c.glitter(t, a.Glitter, a.Foil)
		}
		if kind == Fragrance {
			c.mostBeside(list, additions)
		}
	}
}

// paste refuses a fragrance mixed ahead: it is judged by what is weighed of it alone.
func (c *checker) paste(t trail, kind AdditionKind, carrier *Carrier) {
	if kind != Fragrance || !carrier.Paste {
		return
	}
	line := t // a copy, so that a line in order costs nothing
	at := line.at("carrier")
	c.fault(at.at("paste"), "true", "is given for a fragrance, which is weighed by itself", "leave it out", ErrConflict)
}

func (c *checker) load(t trail, load *Load) {
	switch {
	case load.Max:
		c.fault(t, "max", "is asked for of something that is not a fragrance",
			`write "3 % of oils", "3 % of batter" or a mass`, ErrConflict)
	case !c.exactlyOne(t, `write "3 % of oils", "3 % of batter" or a mass`, load.OfOils.Given(), load.OfBatter.Given(),
		load.Mass.Sign() != 0):
	case load.OfOils.Given():
		c.percent(t, load.OfOils, 100, false, false)
	case load.OfBatter.Given():
		c.percent(t, load.OfBatter, 100, false, false)
	default:
		c.mass(t, load.Mass)
	}
}

func (c *checker) carrier(t trail, carrier *Carrier) {
	switch {
	case carrier.In > InOil:
		c.fault(t.at("liquid"), "", "is not a liquid that is known", "use InWater, InGlycerin or InOil", ErrUnknown)
		return
	case carrier.From > Extra:
		c.fault(t.at("from"), "", "is not known", "use Usual, FromFormula or Extra", ErrUnknown)
		return
	}
	if carrier.Oil.row != nil && carrier.In != InOil {
		c.fault(t.at("liquid"), carrier.Oil.ID(), "is an oil, but the carrier is not said to be one", "set In to InOil",
			ErrConflict)
		return
	}
	if carrier.In == NoLiquid {
		if carrier.Ratio.Given() || carrier.From != Usual || carrier.Paste {
			c.fault(t.at("liquid"), "", "is missing", "write water, glycerin or an oil", ErrMissing)
		}
		return
	}
	if !carrier.Ratio.Given() {
		c.fault(t.at("ratio"), "", "is missing", `give the parts of carrier to one, such as "2"`, ErrMissing)
	} else {
		c.plain(t.at("ratio"), carrier.Ratio, 1000)
	}
	switch {
	case carrier.In == InGlycerin && carrier.From == FromFormula:
		c.fault(t.at("from"), "formula", "takes glycerin that the formula does not have", `write "extra", or leave it out`,
			ErrConflict)
	case carrier.In == InOil:
		c.carrierOil(t, carrier)
	}
}

// differs reports whether an earlier carrier from outside the formula has the
// oil's id but not its value. However an oil gets into a part it has one value.
func (c *checker) differs(oil Oil) bool {
	for _, known := range c.jugs {
		if known.row.id == oil.row.id {
			return !known.row.saponification.Equal(oil.row.saponification)
		}
	}
	c.jugs = append(c.jugs, oil)
	return false
}

func (c *checker) carrierOil(t trail, carrier *Carrier) {
	switch oil := carrier.Oil; {
	case oil.row == nil:
		c.fault(t.at("liquid"), "", "is missing", "name the oil", ErrMissing)
	case c.f.lineOf(oil.ID()) >= 0:
	case carrier.From == FromFormula:
		c.fault(t.at("liquid"), oil.ID(), "is to come from the formula, which does not have it",
			`add it to the oils, or write "from": "extra"`,
			ErrConflict, "oils", "oils[].oil", t.String()+".from")
	case c.differs(oil):
		c.fault(t.at("liquid"), oil.ID(), "stands for two oils with different saponification values",
			"give each lot an id of its own", ErrConflict)
	case !oil.planned():
		c.fault(t.at("liquid"), oil.ID(), "has no published saponification value",
			"choose another oil, or bring its value on a line of the formula", ErrMissing, "oils[].oil")
	}
}
