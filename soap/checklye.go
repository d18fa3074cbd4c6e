package soap

import (
	"strconv"

	"example.com/lyewright/units"
)

func (c *checker) alkalis() {
	lines, list := c.f.Alkalis, top("alkali")
	if len(lines) == 0 {
		c.fault(list, "", "is missing", `list one or two, such as [{"kind": "sodium-hydroxide", "purity": {"low": "97 %", "high": "99 %"}}]`, ErrMissing)
		return
	}
	if len(lines) > 2 {
		c.fault(list, "", "has "+strconv.Itoa(len(lines))+" lines", "list one or two", ErrRange)
		return
	}
	for i := range lines {
		l, t := &lines[i], list.item(i)
		c.note(t, l.Note)
		if l.Alkali != SodiumHydroxide && l.Alkali != PotassiumHydroxide {
			c.fault(t.at("kind"), "", "is missing", "write sodium-hydroxide or potassium-hydroxide", ErrMissing)
		} else if i == 1 && lines[0].Alkali == l.Alkali {
			c.fault(t.at("kind"), l.Alkali.String(), "stands twice", "put both into one line", ErrConflict, "alkali[].kind")
		}
		if l.stocked() {
			c.stock(t.at("stock"), l)
		} else {
			c.purity(t.at("purity"), l)
		}
		switch {
		case len(lines) == 1 && l.Saponifies.Given():
			c.fault(t.at("saponifies"), percentText(l.Saponifies), "is given although there is one alkali", "leave it out",
				ErrConflict)
		case len(lines) == 2 && !l.Saponifies.Given():
			c.fault(t.at("saponifies"), "", "is missing", "with two alkalis, say what share of the saponification each does",
				ErrMissing)
		case l.Saponifies.Given():
			c.percent(t.at("saponifies"), l.Saponifies, 100, false, true)
		}
	}
	if len(lines) == 2 && lines[0].Saponifies.Given() && lines[1].Saponifies.Given() {
		if total := lines[0].Saponifies.Add(lines[1].Saponifies); !whole(total) {
			c.fault(list, percentText(total), "is what the two saponify together", "let the two add up to 100 %", ErrRange,
				"alkali[].saponifies")
		}
	}
}

func (c *checker) purity(t trail, l *AlkaliLine) {
	purity := l.Purity
	switch {
	case l.assumed():
		if l.Alkali == PotassiumHydroxide {
			c.fault(t, "", "is missing", "potassium hydroxide is sold with 10 to 15 % of water: give the hydroxide of this lot",
				ErrMissing)
		}
	case !purity.Given():
		c.fault(t, "", "lacks an end of its range", `give both "low" and "high", or one value`, ErrMissing)
	case purity.High.Compare(units.Whole(1)) > 0:
		c.fault(t, percentText(purity.High), "is above 100 %", "an assay above 100 % counts carbonate as hydroxide: use "+
			"the certificate form", ErrRange)
	case purity.Low.Compare(units.Percent(50)) < 0:
		c.fault(t, percentText(purity.Low), "is below 50 % of hydroxide",
			"a stock lye is given by its strength, as \"stock\": {\"strength\": \"49.6 %\"}", ErrRange)
	case !purity.Ordered():
		c.fault(t, "", "is out of order", "let low, typical and high rise, or stay equal", ErrRange)
	}
}

func (c *checker) superfat() {
	s, t := c.f.Superfat, top("superfat")
	if !c.exactlyOne(t, `write a percentage such as "5 %", or {"at_least": "2 %"}`, s.Planned.Given(), s.AtLeast.Given()) {
		return
	}
	if s.Planned.Given() {
		c.percent(t, s.Planned, 100, true, true)
		return
	}
	c.percent(t.at("at_least"), s.AtLeast, 100, true, true)
	rangeless := func(oil Oil, input string) {
		if oil.planned() && !oil.HasRange() {
			c.fault(t.at("at_least"), oil.ID(), "has no range of saponification values, so no worst case can be promised",
				"give the oil a range, or plan the superfat", ErrConflict, input)
		}
	}
	c.promisedOils(t.at("at_least"))
	for i := range c.f.Oils {
		rangeless(c.f.Oils[i].Oil, itemPath("oils", i))
	}
	for i := range c.f.Water.Liquids {
		if l := &c.f.Water.Liquids[i]; l.fatty() && l.Saponification.Single() {
			at := itemPath("water.liquids", i) + ".saponification"
			c.fault(t.at("at_least"), l.Name, "has fat without a range of saponification values, so no worst case can be "+
				"promised", "give its fat a range, or plan the superfat", ErrConflict, at)
		}
	}
	c.promisedLye(t.at("at_least"))
	jug := func(carrier Carrier, part int, list string, line int) {
		if carrier.In == InOil && c.f.lineOf(carrier.Oil.ID()) < 0 {
			rangeless(carrier.Oil, itemPath(itemPath("parts", part)+"."+list, line)+".carrier")
		}
	}
	for i, p := range c.f.Parts {
		for kind := Colourant; kind <= Additive; kind++ {
			for j, a := range p.additions(kind) {
				jug(a.Carrier, i, kind.list(), j)
			}
		}
		for j := range p.Match {
			jug(p.Match[j].Carrier, i, "match", j)
		}
	}
}

// promisedLye refuses a worst case that would rest on a single figure of what is in a
// bottle: the worst case takes it as exact.
func (c *checker) promisedLye(t trail) {
	const remedy = `give a range: from a titration (lyewright lye titration), a grade such as {"grade": "ph-eur-7"}, or the limits of its certificate ("assay_min", "assay_max", "carbonate_max")`
	for i := range c.f.Alkalis {
		l, what, at := &c.f.Alkalis[i], "purity", ".purity"
		content := l.Purity
		if l.stocked() {
			content, what, at = l.Stock, "strength", ".stock"
		}
		if content.Single() {
			c.fault(t, l.Alkali.String(), "has a single figure as its "+what+", so no worst case can be promised", remedy,
				ErrConflict, itemPath("alkali", i)+at)
		}
	}
	for i := range c.f.Acids {
		if a := &c.f.Acids[i]; a.Compensate == Compensated && a.Strength.Single() && !whole(a.Strength.Low) {
			c.fault(t, a.Acid.ID, "has a single figure as its strength, and alkali is added for it, so no worst case can be "+
				"promised", `give the strength as a range, such as {"low": "78 %", "high": "82 %"}`, ErrConflict,
				itemPath("acids", i)+".strength")
		}
	}
}

// promisedOils refuses a worst case of waxes alone: their esters may not react at all, and
// what would keep the promise is a batter with next to no alkali.
func (c *checker) promisedOils(t trail) {
	for i := range c.f.Oils {
		if oil := c.f.Oils[i].Oil; oil.row == nil || oil.Kind() != Wax {
			return
		}
	}
	if len(c.f.Oils) > 0 {
		c.fault(t, percentText(c.f.Superfat.AtLeast), "is asked of waxes alone, which may not react: hardly any alkali "+
			"could keep that", "add an oil or a fat, or plan the superfat", ErrConflict, "oils[]")
	}
}

func (c *checker) water() {
	w, t := c.f.Water, top("water")
	c.liquids(t.at("liquids"))
	if !c.exactlyOne(t, "give one of lye_concentration, per_alkali and per_oils",
		w.LyeConcentration.Given(), w.PerAlkali.Given(), w.PerOils.Given()) {
		return
	}
	switch {
	case w.LyeConcentration.Given():
		at := t.at("lye_concentration")
		if w.LyeConcentration.Compare(units.Whole(1)) >= 0 {
			c.fault(at, percentText(w.LyeConcentration), "leaves no water: it is the alkali's share of alkali and water",
				`write less, such as "33 %"`, ErrRange)
			return
		}
		c.percent(at, w.LyeConcentration, 100, false, true)
	case w.PerAlkali.Given():
		c.plain(t.at("per_alkali"), w.PerAlkali, 100)
	default:
		c.percent(t.at("per_oils"), w.PerOils, 1000, false, false)
	}
}

func (c *checker) size() {
	s, t := c.f.Size, top("size")
	const remedy = `give one of oils, batter and vessels, such as {"oils": "800 g"}`
	masses, shares := len(c.f.Oils) > 0, false
	for i := range c.f.Oils {
		l := &c.f.Oils[i]
		masses = masses && l.Mass.Sign() != 0
		shares = shares || l.Share.Given() || l.Rest
	}
	oils, batter, vessels := s.Oils.Sign() != 0, s.Batter.Sign() != 0, len(s.Vessels) > 0
	switch {
	case masses && (oils || batter):
		c.fault(t, "", "is given although every oil has a mass", "leave it out, or give shares", ErrConflict)
	case masses:
	case vessels && !oils && !batter:
	case !oils && !batter && !shares: // the oils may have been meant to have masses
		c.fault(t, "", "is missing", remedy, ErrMissing, "oils[].mass")
	case !c.exactlyOne(t, remedy, oils, batter):
	case oils:
		c.mass(t.at("oils"), s.Oils)
	default:
		c.mass(t.at("batter"), s.Batter)
	}
}

func (c *checker) scales() {
	t := top("scale")
	c.scale(t.at("oils"), c.f.Scale)
	c.scale(t.at("small"), c.f.Small)
}

func (c *checker) scale(t trail, division units.Mass) {
	if division.Sign() != 0 && (division.Compare(units.Milligrams(1)) < 0 || division.Compare(units.Grams(100)) > 0) {
		c.fault(t, division.String(), "is not between 1 mg and 100 g",
			"write the smallest step that the scale's display shows, such as \"0.1 g\"", ErrRange)
	}
}

// stock checks the strength of a stock lye.
func (c *checker) stock(t trail, l *AlkaliLine) {
	if l.Purity.Low.Given() || l.Purity.Typical.Given() || l.Purity.High.Given() {
		c.fault(t, "", "is given beside a purity", "give the purity of a dry alkali, or the strength of a stock lye",
			ErrConflict)
		return
	}
	at, s := t.at("strength"), l.Stock
	switch {
	case !s.Given():
		c.fault(at, "", "lacks an end of its range", `give both "low" and "high", or one value`, ErrMissing)
	case s.Low.Sign() <= 0:
		c.fault(at, percentText(s.Low), "is not above 0 %", "give the mass fraction of hydroxide in the stock lye", ErrRange)
	case l.Alkali != 0 && s.High.Compare(l.Alkali.Saturation()) > 0:
		c.fault(at, percentText(s.High), "is stronger than dissolves at 20 °C, "+percentText(l.Alkali.Saturation()),
			"give the mass fraction of hydroxide in the stock lye", ErrRange)
	case !s.Ordered():
		c.fault(at, "", "is out of order", "let low, typical and high rise, or stay equal", ErrRange)
	}
}

func (c *checker) temperatures() {
	t, at := top("temperature"), c.f.Temperature
	for _, figure := range []struct {
		key   string
		value units.Temperature
	}{{"oils", at.Oils}, {"lye", at.Lye}, {"water", at.Water}, {"room", at.Room}, {"pour", at.Pour}} {
		if v := figure.value; v.Given() && (v.Compare(units.Celsius(0)) < 0 || v.Compare(units.Celsius(100)) > 0) {
			c.fault(t.at(figure.key), v.Text(2)+" °C", "is not between 0 °C and 100 °C", "give what a thermometer in it shows",
				ErrRange)
		}
	}
}
