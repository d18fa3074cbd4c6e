package soap

import (
	"slices"

	"example.com/lyewright/internal/strictjson"
	"example.com/lyewright/units"
)

func (r *reader) formula(s *spot) Formula {
	var f Formula
	if !r.object(s, "formula", "oils", "alkali", "superfat", "water", "size", "scale", "markets", "materials", "gel",
		"pigments", "swatches", "parts", "acids", "temperature", "embeds", "toppings", "weighed", "note") {
		return f
	}
	f.Name, f.Note = r.label(s.at("formula")), r.note(s.at("note"))
	if oils := s.at("oils"); oils != nil && !r.list(oils, mostOils, "oils") {
		r.lost = true
	} else if oils != nil {
		f.Oils = slices.Grow(f.Oils, len(oils.node.Items))
		for i := range oils.node.Items {
			f.Oils = append(f.Oils, r.oilLine(oils.item(i)))
		}
	}
	if alkali := s.at("alkali"); alkali != nil && r.list(alkali, 2, "alkalis") {
		f.Alkalis = slices.Grow(f.Alkalis, len(alkali.node.Items))
		for i := range alkali.node.Items {
			f.Alkalis = append(f.Alkalis, r.alkaliLine(alkali.item(i)))
		}
	}
	f.Superfat = r.superfat(s.at("superfat"))
	f.Water = r.water(s.at("water"))
	if size := s.at("size"); size != nil && !r.wholeSize(size) && r.object(size, "oils", "batter", "vessels", "pieces") {
		f.Size = Size{Oils: r.mass(size.at("oils")), Batter: r.mass(size.at("batter")), Pieces: r.count(size.at("pieces"), 1)}
		f.Size.Vessels = r.vessels(size.at("vessels"))
	}
	f.Scale, f.Small = r.scales(s.at("scale"))
	f.Markets, f.Materials = r.markets(s.at("markets")), r.materials(s.at("materials"))
	f.Gel, f.Pigments, f.Swatches = r.gel(s.at("gel")), r.pigments(s.at("pigments")), r.swatches(s.at("swatches"))
	if parts := s.at("parts"); parts != nil && r.list(parts, mostParts, "parts") {
		f.Parts = slices.Grow(f.Parts, len(parts.node.Items))
		for i := range parts.node.Items {
			f.Parts = append(f.Parts, r.part(parts.item(i), &f))
		}
		if len(parts.node.Items) == 0 {
			r.fault(parts, "", "is an empty list", "list the parts, or leave it out for one part", ErrMissing)
		}
	}
	f.Acids = r.acids(s.at("acids"))
	f.Temperature = r.temperatures(s.at("temperature"))
	f.Embeds = r.embeds(s.at("embeds"))
	f.Toppings = r.toppings(s.at("toppings"))
	f.Weighed = r.weighed(s.at("weighed"), &f)
	return f
}

// scales reads the divisions of the two scales, or one text for both.
func (r *reader) scales(s *spot) (oils, small units.Mass) {
	if !r.textOr(s, "0.1 g") {
		if s.is(strictjson.Object) && r.object(s, "oils", "small") {
			return r.mass(s.at("oils")), r.mass(s.at("small"))
		}
		return units.Mass{}, units.Mass{}
	}
	both := r.mass(s)
	c := checker{}
	c.scale(s.trail, both)
	for _, found := range c.found {
		r.fault(s, found.Text, found.Reason, found.Remedy, found.Kind)
		return units.Mass{}, units.Mass{}
	}
	return both, both
}

// textOr reports whether a value that may be a text or an object is a text; it
// says so where the value is neither.
func (r *reader) textOr(s *spot, example string) bool {
	if s != nil && !s.is(strictjson.Object) {
		r.text(s, example)
	}
	return s.is(strictjson.String)
}

// share reads a percentage, or "rest".
func (r *reader) share(s *spot) (share units.Ratio, rest bool) {
	if s.is(strictjson.String) && s.node.Text == "rest" {
		return units.Ratio{}, true
	}
	return r.percent(s), false
}

func (r *reader) superfat(s *spot) Superfat {
	switch {
	case r.textOr(s, "6 %"):
		return Superfat{Planned: r.percent(s)}
	case s.is(strictjson.Object) && r.object(s, "at_least"):
		if len(s.node.Members) == 0 {
			r.fault(s, "", "is empty", `write {"at_least": "2 %"}`, ErrMissing)
		}
		return Superfat{AtLeast: r.percent(s.at("at_least"))}
	}
	return Superfat{}
}
