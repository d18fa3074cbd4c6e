package soap

import (
	"cmp"
	"slices"

	"example.com/lyewright/internal/nearest"
	"example.com/lyewright/units"
)

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
			c.fault(at, "", "is not a part of this formula", cmp.Or(nearest.Remedy(read.Part, names), "use the names of its parts; a formula without parts has one, named whole"), ErrUnknown, "parts[].part", "parts")
			continue
		}
		c.once(at, i, func(j int) bool { return w.Parts[j].Part == read.Part }, "put both into one")
		carriers := at.at("carriers")
		for j := range read.Carriers {
			carrier := &read.Carriers[j]
			line := carriers.at(carrier.Liquid)
			c.readMass(line, carrier.Mass)
			if liquids := part.liquids(); !part.hasLiquid(carrier.Liquid) {
				c.fault(line, "", "is not a carrier of this part", cmp.Or(nearest.Remedy(carrier.Liquid, liquids), "name the liquid of one of its carriers"), ErrUnknown, "parts", "parts[].colourants", "parts[].fragrances", "parts[].additives")
			}
			c.once(line, j, func(k int) bool { return sameLiquid(read.Carriers[k].Liquid, carrier.Liquid) }, "weigh all the part's carriers of one liquid together")
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

// weighedLines checks what was weighed into the pot and the lye.
func (c *checker) weighedLines(w *Weighed, t trail) {
	oils, alkalis := t.at("oils"), t.at("alkali")
	for i := range w.Oils {
		line := oils.at(w.Oils[i].Oil)
		c.readMass(line, w.Oils[i].Mass)
		of := c.f.lineNamed(w.Oils[i].Oil)
		if of < 0 {
			c.fault(line, "", "is not an oil of this formula", "use the ids of its oils", ErrUnknown, "oils", "oils[].oil")
		}
		c.once(line, i, func(j int) bool {
			return w.Oils[j].Oil == w.Oils[i].Oil || of >= 0 && c.f.lineNamed(w.Oils[j].Oil) == of
		}, "put both into one")
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
		c.fault(t, mass.String(), "is negative", "give what the scale showed", ErrRange)
	case mass.Compare(units.Grams(units.Tonne)) > 0:
		c.fault(t, mass.String(), "is more than a tonne", "write at most 1000 kg", ErrRange)
	}
}

// hasLiquid reports whether one of the part's carriers goes by a name.
func (p *Part) hasLiquid(name string) bool {
	for kind := Colourant; kind <= Additive; kind++ {
		if slices.ContainsFunc(p.additions(kind), func(a Addition) bool { return a.Carrier.isLiquid(name) }) {
			return true
		}
	}
	return false
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
