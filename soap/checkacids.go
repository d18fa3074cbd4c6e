package soap

import (
	"strconv"

	"example.com/lyewright/units"
)

// mostLines is how many acids, and how many liquids, a formula may have.
const mostLines = 20

func (c *checker) acids() {
	list := top("acids")
	if n := len(c.f.Acids); n > mostLines {
		c.fault(list, "", "are "+strconv.Itoa(n)+" lines", "list at most 20", ErrLimit)
		return
	}
	for i := range c.f.Acids {
		a, t := &c.f.Acids[i], list.item(i)
		switch {
		case a.Acid.ID == "":
			c.fault(t.at("acid"), "", "is missing", "name a known acid, such as citric-acid-anhydrous or lactic-acid",
				ErrMissing)
		case a.Acid.Crystal.Sign() < 0 || a.Acid.Crystal.Compare(units.Whole(1)) >= 0:
			c.fault(t.at("acid"), a.Acid.ID, "has crystal water that is not below 100 %",
				"give its mass fraction of the crystals", ErrRange)
		case a.Acid.Protons < 1 || a.Acid.Protons > 10 || a.Acid.Molar.Compare(units.Whole(1)) < 0:
			c.fault(t.at("acid"), a.Acid.ID, "lacks its protons or its molar mass", "give 1 to 10 protons and the mass in g/mol",
				ErrRange)
		}
		c.twice(list, "acid", i, a.Acid.ID, func(j int) bool { return c.f.Acids[j].Acid.ID == a.Acid.ID },
			"put both into one line")
		c.load(t.at("load"), &a.Load)
		c.acidStrength(t.at("strength"), a)
		switch a.Compensate {
		case Compensated, Uncompensated:
		case NotSaid:
			c.fault(t.at("compensate"), "", "is missing", "write true to add the alkali that the acid takes up, false to let "+
				"the superfat rise by it", ErrMissing)
		default:
			c.fault(t.at("compensate"), "", "is not known", "use Compensated or Uncompensated", ErrUnknown)
		}
	}
}

// acidStrength checks how much acid is in what is bought.
func (c *checker) acidStrength(t trail, a *AcidLine) {
	switch s := a.Strength; {
	case !a.strengthSaid():
		if a.Acid.Dissolved {
			c.fault(t, "", "is missing: "+a.Acid.Name+" is mostly sold dissolved in water, and counted as pure it would ask "+
				"for far too much alkali",
				`write the mass fraction of acid that its label gives, such as "5 %" of a vinegar or "80 %" of a lactic acid`,
				ErrMissing)
		}
	case !s.Given():
		c.fault(t, "", "lacks an end of its range", `give both "low" and "high", or one value`, ErrMissing)
	case s.Low.Sign() <= 0:
		c.fault(t, percentText(s.Low), "is not above 0 %", "give the mass fraction of acid in what is bought", ErrRange)
	case s.High.Compare(units.Whole(1)) > 0:
		c.fault(t, percentText(s.High), "is above 100 %", "write at most 100 %", ErrRange)
	case !s.Ordered():
		c.fault(t, "", "is out of order", "let low, typical and high rise, or stay equal", ErrRange)
	}
}

func (c *checker) liquids(list trail) {
	if n := len(c.f.Water.Liquids); n > mostLines {
		c.fault(list, "", "are "+strconv.Itoa(n)+" lines", "list at most 20", ErrLimit)
		return
	}
	all := units.Whole(0)
	for i := range c.f.Water.Liquids {
		l, t := &c.f.Water.Liquids[i], list.item(i)
		c.name(t.at("liquid"), l.Name)
		if reason, remedy := reckonedElsewhere(l.Name); reason != "" {
			c.fault(t.at("liquid"), l.Name, reason, remedy, ErrConflict)
		}
		c.twice(list, "liquid", i, l.Name, func(j int) bool { return c.f.Water.Liquids[j].Name == l.Name },
			"put both into one line")
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
		c.fault(list, percentText(all), "of the water asked for is to come from them",
			"let the shares add up to at most 100 %", ErrRange, "water.liquids[].share")
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
		c.fault(t, percentText(all), "is what water, fat, sugar and alcohol add up to", "let them add up to at most 100 %",
			ErrRange, path+".water", path+".fat", path+".sugar", path+".alcohol")
	}
	value, at := l.Saponification, t.at("saponification")
	switch {
	case !value.Given() && l.fatty():
		c.fault(at, "", "is missing: the liquid has fat", `give the value of its fat, such as {"low": "218", "high": "235"}`,
			ErrMissing)
	case !value.Given():
	case !value.Ordered():
		c.fault(at, "", "is out of order", "let low, typical and high rise, or stay equal", ErrRange)
	case value.Low.Compare(thousandths(5)) < 0 || value.High.Compare(thousandths(450)) > 0:
		c.fault(at, "", "is not between 5 and 450 mg KOH/g", "give the saponification value of the fat", ErrRange)
	case !l.fatty():
		c.fault(at, "", "is given although the liquid has no fat", `give the "fat" in it, or leave it out`, ErrConflict,
			t.String()+".fat")
	}
}
