package soap

import (
	"cmp"
	"iter"
	"slices"

	"example.com/lyewright/internal/names"
	"example.com/lyewright/internal/nearest"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
)

func (c *checker) weighed() {
	w, t := &c.f.Weighed, top("weighed")
	if w.Stage > AtMoulds {
		c.fault(t.at("stage"), "", "is not known", "use AtLye, AtPot, AtParts or AtMoulds", ErrUnknown)
		return
	}
	if w.Stage == NotWeighed {
		if len(w.Oils)+len(w.Alkalis)+len(w.Acids)+len(w.Liquids)+len(w.Parts) > 0 || w.Water.Read {
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
			c.fault(at, "", "is not a part of this formula", cmp.Or(nearest.Remedy(read.Part, names),
				"use the names of its parts; a formula without parts has one, named whole"), ErrUnknown, "parts[].part", "parts")
			continue
		}
		c.once(at, i, func(j int) bool { return w.Parts[j].Part == read.Part }, "put both into one")
		c.weighedAdditions(part, read, at)
		carriers := at.at("carriers")
		for j := range read.Carriers {
			carrier := &read.Carriers[j]
			line := carriers.at(carrier.Liquid)
			c.readMass(line, carrier.Mass)
			switch there, apart := part.carries(carrier.Liquid, read); {
			case there && !apart:
				c.fault(line, "", "is in a paste that was weighed as one, under additions", "leave it out, or give the paste alone",
					ErrConflict)
			case !there:
				liquids := part.liquids()
				c.fault(line, "", "is not a carrier of this part", cmp.Or(nearest.Remedy(carrier.Liquid, liquids),
					"name the liquid of one of its carriers"), ErrUnknown, "parts", "parts[].colourants", "parts[].fragrances",
					"parts[].additives")
			}
			c.once(line, j, func(k int) bool { return sameLiquid(read.Carriers[k].Liquid, carrier.Liquid) },
				"weigh all the part's carriers of one liquid together")
		}
	}
}

// weighedAdditions checks what was weighed of a part's additions.
func (c *checker) weighedAdditions(part *Part, read *WeighedPart, t trail) {
	additions := t.at("additions")
	for i := range read.Additions {
		addition := &read.Additions[i]
		line := additions.at(addition.key())
		c.readMass(line, addition.Mass)
		if known := part.names(); !slices.ContainsFunc(known,
			func(name string) bool { return sameName(name, addition.Name) }) {
			c.fault(line, "", "is not an addition of this part", cmp.Or(nearest.Remedy(addition.Name, known),
				"name one of its colourants, fragrances or additives"), ErrUnknown, "parts", "parts[].colourants",
				"parts[].fragrances", "parts[].additives", "parts[].match")
		}
		c.once(line, i, func(j int) bool { return sameName(read.Additions[j].Name, addition.Name) },
			"weigh all the part's additions of one name together")
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
		line := alkalis.at(w.Alkalis[i].key())
		c.readMass(line, w.Alkalis[i].Mass)
		found := false
		for j := range c.f.Alkalis {
			found = found || c.f.Alkalis[j].Alkali == w.Alkalis[i].Alkali
		}
		if !found {
			c.fault(line, "", "is not an alkali of this formula", "use the kinds of its alkalis", ErrUnknown, "alkali",
				"alkali[].kind")
		}
		c.once(line, i, func(j int) bool { return w.Alkalis[j].Alkali == w.Alkalis[i].Alkali }, "put both into one")
	}
	c.readMass(t.at("water"), w.Water.Mass)
	acids, liquids := t.at("acids"), t.at("liquids")
	means := make([]string, len(w.Acids))
	for i := range w.Acids {
		line := acids.at(w.Acids[i].Acid)
		c.readMass(line, w.Acids[i].Mass)
		means[i] = cmp.Or(acidID(w.Acids[i].Acid), w.Acids[i].Acid)
		if !slices.ContainsFunc(c.f.Acids, func(a AcidLine) bool { return a.Acid.ID == means[i] }) {
			c.fault(line, "", "is not an acid of this formula", "use the ids of its acids", ErrUnknown, "acids", "acids[].acid")
		}
		c.once(line, i, func(j int) bool { return means[j] == means[i] }, "put both into one")
	}
	for i := range w.Liquids {
		line := liquids.at(w.Liquids[i].Liquid)
		c.readMass(line, w.Liquids[i].Mass)
		if !slices.ContainsFunc(c.f.Water.Liquids, func(l LiquidLine) bool { return sameName(l.Name, w.Liquids[i].Liquid) }) {
			c.fault(line, "", "is not a liquid of this formula", "use the names of its liquids; water has a key of its own",
				ErrUnknown, "water", "water.liquids", "water.liquids[].liquid")
		}
		c.once(line, i, func(j int) bool { return sameName(w.Liquids[j].Liquid, w.Liquids[i].Liquid) }, "put both into one")
	}
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

// carries reports whether one of the part's carriers goes by a name, and whether one of
// those is weighed by itself: not in a paste that was weighed as one.
func (p *Part) carries(name string, read *WeighedPart) (there, apart bool) {
	for of, c := range p.carriers() {
		if c.isLiquid(name) {
			there = true
			apart = apart || !c.Paste || !slices.ContainsFunc(read.Additions,
				func(a WeighedAddition) bool { return sameName(a.Name, of) })
		}
	}
	return there, apart
}

// liquids lists the liquids of the part's carriers.
func (p *Part) liquids() []string {
	var liquids []string
	for _, c := range p.carriers() {
		liquids = append(liquids, c.liquid())
	}
	return liquids
}

// carriers goes through the carriers of all that is added to the part, each with the name
// of that.
func (p *Part) carriers() iter.Seq2[string, Carrier] {
	return func(yield func(string, Carrier) bool) {
		for kind := Colourant; kind <= Additive; kind++ {
			for _, a := range p.additions(kind) {
				if a.Carrier.In != NoLiquid && !yield(a.Name, a.Carrier) {
					return
				}
			}
		}
		for _, m := range p.Match {
			if m.Carrier.In != NoLiquid && !yield(m.Colourant, m.Carrier) {
				return
			}
		}
	}
}

// sameName reports whether two names of an addition are one, but for how they are spelled.
func sameName(a, b string) bool { return a == b || names.Fold(a) == names.Fold(b) }

// sameAcid reports whether a name is that of an acid.
func sameAcid(id, name string) bool { return id == name || acidID(name) == id }

// acidID is the id of the acid that a name means; empty where it means none, or several.
func acidID(name string) string {
	acid, err := lye.LookUpAcid(name)
	if err != nil {
		return ""
	}
	return acid.ID
}

// names lists the names of all that is added to the part.
func (p *Part) names() []string {
	var list []string
	for kind := Colourant; kind <= Additive; kind++ {
		for _, a := range p.additions(kind) {
			list = append(list, a.Name)
		}
	}
	for _, m := range p.Match {
		list = append(list, m.Colourant)
	}
	return list
}
