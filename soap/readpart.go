package soap

import (
	"errors"
	"slices"
	"strings"

	"example.com/lyewright/internal/names"
	"example.com/lyewright/internal/nearest"
	"example.com/lyewright/internal/strictjson"
	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

func (r *reader) part(s *spot, f *Formula) Part {
	var p Part
	if !r.object(s, "part", "share", "work", "look", "reserve", "loss", "colourants", "fragrances", "additives", "target",
		"match", "note") {
		return p
	}
	p.Name, p.Note = r.label(s.at("part")), r.note(s.at("note"))
	p.Share, p.Rest = r.share(s.at("share"))
	if work := s.at("work"); work != nil {
		p.Work = mould.Work(max(0, r.word(work, mould.Poured.String(), mould.Piped.String())))
	}
	if look := s.at("look"); look != nil {
		p.Look = Look(max(0, r.word(look, AnyLook.String(), White.String(), Pale.String())))
	}
	p.Reserve, p.Loss = r.percent(s.at("reserve")), r.mass(s.at("loss"))
	p.Colourants = r.additions(s, Colourant, f)
	p.Fragrances = r.additions(s, Fragrance, f)
	p.Additives = r.additions(s, Additive, f)
	p.Target, p.Match = r.target(s.at("target")), r.match(s.at("match"), f)
	return p
}

func (r *reader) additions(part *spot, kind AdditionKind, f *Formula) []Addition {
	list := part.at(kind.list())
	if list == nil || !r.list(list, mostAdditions, kind.list()) {
		return nil
	}
	additions := make([]Addition, 0, len(list.node.Items))
	for i := range list.node.Items {
		s := list.item(i)
		var a Addition
		keys := []string{kind.String(), "load", "carrier", "note", "unlisted"}
		switch kind {
		case Additive:
			keys = append(keys, "glitter", "aluminium")
		case Fragrance:
			keys = append(keys, "margin")
		}
		if r.object(s, keys...) {
			a.Name, a.Note = r.label(s.at(kind.String())), r.note(s.at("note"))
			a.Load = r.load(s.at("load"))
			a.Carrier = r.carrier(s.at("carrier"), f)
			a.Unlisted = r.unlisted(s)
			switch kind {
			case Additive:
				a.Glitter, a.Foil = r.glitter(s)
			case Fragrance:
				a.Margin = r.percent(s.at("margin"))
			}
		}
		additions = append(additions, a)
	}
	return additions
}

func (r *reader) unlisted(s *spot) bool {
	return r.yes(s.at("unlisted"), "write true to weigh it unjudged") == affirmed
}

func (r *reader) load(s *spot) Load {
	text := r.text(s, "3 % of oils")
	if !s.is(strictjson.String) {
		return Load{}
	}
	amount, base, hasBase := strings.Cut(text, " of ")
	if !hasBase {
		switch {
		case text == "max":
			return Load{Max: true}
		case strings.Contains(text, "%"):
			percentage, _, _ := strings.Cut(text, "%")
			if _, err := units.ParsePercent(percentage + "%"); err != nil {
				percentage = "3 " // what is no percentage is quoted, and not said again
			}
			r.fault(s, text, "does not say of what it is a percentage", `write "`+percentage+`% of oils" or "`+percentage+
				`% of batter"`, units.ErrUnit)
		default:
			before, mass := len(r.faults), r.massOf(s, text)
			for i := range r.faults[before:] {
				if f := &r.faults[before+i]; errors.Is(f.Kind, units.ErrUnit) {
					f.Remedy += `, or a percentage, such as "3 % of oils"`
				}
			}
			return Load{Mass: mass}
		}
		return Load{}
	}
	value, err := units.ParsePercent(amount)
	if _, mass := units.ParseMass(amount); err != nil && mass == nil {
		r.fault(s, text, "is a mass of something", `write the mass alone, such as "`+amount+`"`, units.ErrUnit)
		return Load{}
	}
	if err != nil {
		r.parseFault(s, err)
		return Load{}
	}
	switch base {
	case "oils":
		return Load{OfOils: value}
	case "batter":
		return Load{OfBatter: value}
	}
	r.fault(s, text, "is a percentage of something unknown", `write "of oils" or "of batter"`, units.ErrUnit)
	return Load{}
}

func (r *reader) carrier(s *spot, f *Formula) Carrier {
	var c Carrier
	if s == nil || !r.object(s, "liquid", "ratio", "from", "paste") {
		return c
	}
	c.Ratio = r.number(s.at("ratio"))
	if from := s.at("from"); from != nil {
		c.From = From(1 + r.word(from, FromFormula.String(), Extra.String()))
	}
	c.Paste = r.yes(s.at("paste"), "write true where both are weighed as one") == affirmed
	liquid := s.at("liquid")
	if liquid == nil {
		r.fault(s, "", "does not say which liquid", `write "liquid": "water", "glycerin" or an oil`, ErrMissing)
		return Carrier{}
	}
	name := r.text(liquid, "water")
	switch names.Fold(name) {
	case "":
		r.meant = append(r.meant, liquid.path())
		if liquid.is(strictjson.String) {
			r.fault(liquid, "", "is empty", "write water, glycerin or an oil", ErrMissing)
		}
	case "water":
		c.In = InWater
	case "glycerin":
		c.In = InGlycerin
	default:
		c.In = InOil
		c.Oil = r.carrierOil(liquid, name, f)
	}
	return c
}

// carrierOil finds the oil of a carrier: one of the formula's, or a built-in.
func (r *reader) carrierOil(s *spot, name string, f *Formula) Oil {
	line := slices.Index(r.ids, name)
	if line < 0 {
		line = f.lineNamed(name)
	}
	if line >= 0 {
		oil := f.Oils[line].Oil
		switch {
		case oil.row == nil:
			r.meant = append(r.meant, s.path())
		case oil.ID() != name && oil.Asked() != name:
			return oil.askedAs(name, names.Note(names.Oil, name))
		}
		return oil
	}
	oil, unknown := namedOil(name)
	if unknown == nil {
		return oil
	}
	if unknown.Reason != notBuiltIn { // the name is known, and means no one oil
		r.fault(s, name, unknown.Reason, "write the id of an oil, or an oil of this formula", ErrUnknown)
		return oil
	}
	known := slices.Concat([]string{"water", "glycerin"}, r.ids, oilIDs())
	remedy := nearest.Question(names.Nearest(names.Oil, name, known, alikeOils))
	if remedy == "" && r.lost { // it may be the oil that could not be read
		r.meant = append(r.meant, s.path())
		return oil
	}
	if remedy == "" {
		remedy = "write water, glycerin, a built-in oil, or an oil of this formula"
	}
	r.fault(s, name, "is not a liquid that is known", remedy, ErrUnknown)
	return oil
}
