package soap

import (
	"slices"
	"strconv"

	"example.com/lyewright/internal/nearest"
	"example.com/lyewright/units"
)

// mostLines is how many acids, and how many liquids, a formula may have.
const mostLines = 20

func (c *checker) acids() {
	list := top("acids")
	if n := len(c.f.Acids); n > mostLines {
		c.fault(list, "", "are "+strconv.Itoa(n)+" lines", "list at most 20", ErrRange)
		return
	}
	for i := range c.f.Acids {
		a, t := &c.f.Acids[i], list.item(i)
		switch {
		case a.Acid.ID == "":
			c.fault(t.at("acid"), "", "is missing", "name a known acid, such as citric-acid-anhydrous or lactic-acid", ErrMissing)
		case a.Acid.Crystal.Sign() < 0 || a.Acid.Crystal.Compare(units.Whole(1)) >= 0:
			c.fault(t.at("acid"), a.Acid.ID, "has crystal water that is not below 100 %", "give its mass fraction of the crystals", ErrRange)
		case a.Acid.Protons < 1 || a.Acid.Protons > 10 || a.Acid.Molar.Compare(units.Whole(1)) < 0:
			c.fault(t.at("acid"), a.Acid.ID, "lacks its protons or its molar mass", "give 1 to 10 protons and the mass in g/mol", ErrRange)
		}
		for j := range i {
			if a.Acid.ID != "" && c.f.Acids[j].Acid.ID == a.Acid.ID {
				c.fault(t.at("acid"), a.Acid.ID, "stands twice, first at "+itemPath("acids", j), "put both into one line", ErrConflict, itemPath("acids", j)+".acid")
				break
			}
		}
		c.load(t.at("load"), &a.Load)
		if a.Strength.Given() {
			c.percent(t.at("strength"), a.Strength, 100, false, false)
		}
		switch a.Compensate {
		case Compensated, Uncompensated:
		case NotSaid:
			c.fault(t.at("compensate"), "", "is missing", "write true to add the alkali that the acid takes up, false to let the superfat rise by it", ErrMissing)
		default:
			c.fault(t.at("compensate"), "", "is not known", "use Compensated or Uncompensated", ErrUnknown)
		}
	}
}

func (c *checker) liquids(list trail) {
	if n := len(c.f.Water.Liquids); n > mostLines {
		c.fault(list, "", "are "+strconv.Itoa(n)+" lines", "list at most 20", ErrRange)
		return
	}
	all := units.Whole(0)
	for i := range c.f.Water.Liquids {
		l, t := &c.f.Water.Liquids[i], list.item(i)
		c.name(t.at("liquid"), l.Name)
		for j := range i {
			if l.Name != "" && c.f.Water.Liquids[j].Name == l.Name {
				first := list.item(j)
				c.fault(t.at("liquid"), l.Name, "stands twice, first at "+first.String(), "put both into one line", ErrConflict, first.String()+".liquid")
				break
			}
		}
		switch {
		case !c.exactlyOne(t, `give "share" (of the water asked for) or "mass"`, l.Share.Given(), l.Mass.Sign() != 0):
		case l.Share.Given():
			c.percent(t.at("share"), l.Share, 100, false, false)
			all = all.Add(l.Share)
		default:
			c.mass(t.at("mass"), l.Mass)
		}
		c.composition(t, l)
	}
	if all.Compare(units.Whole(1)) > 0 {
		c.fault(list, percentText(all), "of the water asked for is to come from them", "let the shares add up to at most 100 %", ErrRange, "water.liquids[].share")
	}
}

// composition checks what a liquid's label says of it.
func (c *checker) composition(t trail, l *LiquidLine) {
	if !l.Water.Given() {
		c.fault(t.at("water"), "", "is missing", `give the water in it as its label does, such as "88 %"`, ErrMissing)
	} else {
		c.percent(t.at("water"), l.Water, 100, false, false)
	}
	all := l.Water.Or(units.Whole(0))
	for _, figure := range []struct {
		key   string
		value units.Ratio
	}{{"fat", l.Fat}, {"sugar", l.Sugar}, {"alcohol", l.Alcohol}} {
		if figure.value.Given() {
			c.percent(t.at(figure.key), figure.value, 100, true, false)
			all = all.Add(figure.value)
		}
	}
	if all.Compare(units.Whole(1)) > 0 {
		path := t.String()
		c.fault(t, percentText(all), "is what water, fat, sugar and alcohol add up to", "let them add up to at most 100 %", ErrRange, path+".water", path+".fat", path+".sugar", path+".alcohol")
	}
	value, at := l.Saponification, t.at("saponification")
	switch {
	case !value.Given() && l.fatty():
		c.fault(at, "", "is missing: the liquid has fat", `give the value of its fat, such as {"low": "218", "high": "235"}`, ErrMissing)
	case !value.Given():
	case !value.Ordered():
		c.fault(at, "", "is out of order", "let low, typical and high rise, or stay equal", ErrRange)
	case value.Low.Compare(thousandths(5)) < 0 || value.High.Compare(thousandths(450)) > 0:
		c.fault(at, "", "is not between 5 and 450 mg KOH/g", "give the saponification value of the fat", ErrRange)
	case !l.fatty():
		c.fault(at, "", "is given although the liquid has no fat", `give the "fat" in it, or leave it out`, ErrConflict, t.String()+".fat")
	}
}

// stock checks the strength of a stock lye.
func (c *checker) stock(t trail, l *AlkaliLine) {
	if l.Purity.Low.Given() || l.Purity.Typical.Given() || l.Purity.High.Given() {
		c.fault(t, "", "is given beside a purity", "give the purity of a dry alkali, or the strength of a stock lye", ErrConflict)
		return
	}
	at, s := t.at("strength"), l.Stock
	switch {
	case !s.Given():
		c.fault(at, "", "lacks an end of its range", `give both "low" and "high", or one value`, ErrMissing)
	case s.Low.Sign() <= 0:
		c.fault(at, percentText(s.Low), "is not above 0 %", "", ErrRange)
	case l.Alkali != 0 && s.High.Compare(l.Alkali.Saturation()) > 0:
		c.fault(at, percentText(s.High), "is stronger than dissolves at 20 °C, "+percentText(l.Alkali.Saturation()), "give the mass fraction of hydroxide in the stock lye", ErrRange)
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
			c.fault(t.at(figure.key), v.Text(2)+" °C", "is not between 0 °C and 100 °C", "give what a thermometer in it shows", ErrRange)
		}
	}
}

func (c *checker) weighed() {
	w, t := &c.f.Weighed, top("weighed")
	if w.Stage > AtMoulds {
		c.fault(t.at("stage"), "", "is not known", "use AtLye, AtPot, AtParts or AtMoulds", ErrUnknown)
		return
	}
	if w.Stage == NotWeighed {
		if len(w.Oils)+len(w.Alkalis)+len(w.Parts) > 0 || w.Water.Read {
			c.fault(t.at("stage"), "", "is missing", "write lye, pot, parts or moulds: how far the batch has come", ErrMissing)
		}
		return
	}
	c.weighedLines(w, t)
	parts := c.f.parts()
	list := t.at("parts")
	for i := range w.Parts {
		read := &w.Parts[i]
		at := list.at(read.Part)
		batter := at.at("batter")
		c.readMass(batter, read.Batter.Mass)
		if read.Batter.Read && read.Batter.Mass.Sign() == 0 {
			c.fault(batter, "0 g", "is nothing to judge", "give what the part got, or leave it out", ErrRange)
		}
		var part *Part
		var names []string
		for j := range parts {
			names = append(names, parts[j].Name)
			if parts[j].Name == read.Part {
				part = &parts[j]
			}
		}
		if part == nil {
			c.fault(at, "", "is not a part of this formula", or(nearest.Remedy(read.Part, names), "use the names of its parts; a formula without parts has one, named whole"), ErrUnknown, "parts[].part", "parts")
			continue
		}
		c.once(at, i, func(j int) bool { return w.Parts[j].Part == read.Part }, "put both into one")
		carriers := at.at("carriers")
		for j := range read.Carriers {
			carrier := &read.Carriers[j]
			line := carriers.at(carrier.Liquid)
			c.readMass(line, carrier.Mass)
			if liquids := part.liquids(); !slices.Contains(liquids, carrier.Liquid) {
				c.fault(line, "", "is not a carrier of this part", or(nearest.Remedy(carrier.Liquid, liquids), "name the liquid of one of its carriers"), ErrUnknown, "parts", "parts[].colourants", "parts[].fragrances", "parts[].additives")
			}
			c.once(line, j, func(k int) bool { return read.Carriers[k].Liquid == carrier.Liquid }, "weigh all the part's carriers of one liquid together")
		}
	}
}

// once checks that none of the items before the i-th is the same.
func (c *checker) once(t trail, i int, same func(j int) bool, remedy string) {
	for j := range i {
		if same(j) {
			c.fault(t, "", "stands twice", remedy, ErrConflict)
			return
		}
	}
}

func or(text, other string) string {
	if text == "" {
		return other
	}
	return text
}

// weighedLines checks what was weighed into the pot and the lye.
func (c *checker) weighedLines(w *Weighed, t trail) {
	oils, alkalis := t.at("oils"), t.at("alkali")
	for i := range w.Oils {
		line := oils.at(w.Oils[i].Oil)
		c.readMass(line, w.Oils[i].Mass)
		if c.f.lineOf(w.Oils[i].Oil) < 0 {
			c.fault(line, "", "is not an oil of this formula", "use the ids of its oils", ErrUnknown, "oils", "oils[].oil")
		}
		c.once(line, i, func(j int) bool { return w.Oils[j].Oil == w.Oils[i].Oil }, "put both into one")
	}
	for i := range w.Alkalis {
		name := w.Alkalis[i].Alkali.String()
		line := alkalis.at(name)
		c.readMass(line, w.Alkalis[i].Mass)
		found := false
		for j := range c.f.Alkalis {
			found = found || c.f.Alkalis[j].Alkali == w.Alkalis[i].Alkali
		}
		if !found {
			c.fault(line, "", "is not an alkali of this formula", "use the kinds of its alkalis", ErrUnknown, "alkali", "alkali[].kind")
		}
		c.once(line, i, func(j int) bool { return w.Alkalis[j].Alkali == w.Alkalis[i].Alkali }, "put both into one")
	}
	c.readMass(t.at("water"), w.Water.Mass)
}

// readMass checks what a scale showed: 0 g is a line that was forgotten.
func (c *checker) readMass(t trail, mass units.Mass) {
	switch {
	case mass.Sign() < 0:
		c.fault(t, mass.String(), "is negative", "", ErrRange)
	case mass.Compare(units.Grams(units.Tonne)) > 0:
		c.fault(t, mass.String(), "is more than a tonne", "write at most 1000 kg", ErrRange)
	}
}

// liquids lists the liquids of the part's carriers.
func (p *Part) liquids() []string {
	var liquids []string
	for kind := Colourant; kind <= Additive; kind++ {
		for _, a := range p.additions(kind) {
			if a.Carrier.In != NoLiquid {
				liquids = append(liquids, a.Carrier.liquid())
			}
		}
	}
	return liquids
}
