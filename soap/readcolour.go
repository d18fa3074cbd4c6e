package soap

import (
	"example.com/lyewright/colour"
	"example.com/lyewright/colour/tint"
	"example.com/lyewright/units"
)

// gels are the words of a formula file.
func gels() []string {
	return []string{GelUnknown.String(), Gelled.String(), NotGelled.String()}
}

func (r *reader) gel(s *spot) Gel {
	if s == nil {
		return GelUnknown
	}
	return Gel(max(0, r.word(s, gels()...)))
}

func (r *reader) pigments(s *spot) []colour.Supplied {
	if s == nil || !r.list(s, colour.MostOwn, "pigments") {
		return nil
	}
	pigments := make([]colour.Supplied, len(s.node.Items))
	for i := range pigments {
		pigments[i] = r.pigment(s.item(i))
	}
	return pigments
}

func (r *reader) pigment(s *spot) colour.Supplied {
	var p colour.Supplied
	if !r.object(s, "colourant", "name", "ci", "density", "disperses_in", "nano", "usual", "price") {
		return p
	}
	p.ID, p.Name = r.label(s.at("colourant")), r.label(s.at("name"))
	if list := s.at("ci"); list != nil && r.list(list, colour.MostCI, "numbers") {
		for i := range list.node.Items {
			p.CI = append(p.CI, r.text(list.item(i), "77891"))
		}
	}
	p.Density = measure(r, s.at("density"), units.ParseDensity, "2.9 g/mL")
	if list := s.at("disperses_in"); list != nil && r.list(list, len(colour.Media()), "media") {
		for i := range list.node.Items {
			if word := r.word(list.item(i), colour.Media()...); word >= 0 {
				p.DispersesIn |= 1 << word
			}
		}
	}
	p.Nano = r.yes(s.at("nano"), "write true where it is of nano grade") == affirmed
	if usual := s.at("usual"); usual != nil && r.object(usual, "low", "high") {
		p.Usual.Low, p.Usual.High = r.usual(usual.at("low")), r.usual(usual.at("high"))
	}
	p.Price = measure(r, s.at("price"), colour.ParsePrice, "12.40 per 100 g")
	return p
}

// usual reads an end of the usual loads.
func (r *reader) usual(s *spot) colour.Load {
	if s == nil {
		return colour.Load{}
	}
	switch load := r.load(s); {
	case load.OfOils.Given():
		return colour.Load{Of: colour.OfOils, Share: load.OfOils}
	case load.OfBatter.Given():
		return colour.Load{Of: colour.OfBatter, Share: load.OfBatter}
	case load.Max || load.Mass.Sign() != 0:
		r.fault(s, s.node.Text, "is not a percentage", `write "0.5 % of oils" or "0.5 % of batter"`, units.ErrUnit)
	}
	return colour.Load{}
}

func (r *reader) target(s *spot) (t Target) {
	if s == nil || !r.object(s, "lab", "srgb", "reflectance") {
		return t
	}
	if len(s.node.Members) == 0 {
		r.fault(s, "", "is empty", `write {"lab": [62, -8, -24]} or {"srgb": "#c8b49a"}`, ErrMissing)
	}
	if lab := s.at("lab"); lab != nil {
		t.Lab = r.lab(lab)
	}
	if srgb := s.at("srgb"); srgb != nil {
		t.SRGB = r.srgb(srgb)
	}
	t.Reflectance = r.floats(s.at("reflectance"), tint.MostBands)
	return t
}

func (r *reader) match(s *spot, f *Formula) []Match {
	if s == nil || !r.list(s, tint.MostFree, "colourants") {
		return nil
	}
	if len(s.node.Items) == 0 {
		r.fault(s, "", "is an empty list", "list the colourants to match with, or leave it out", ErrMissing)
	}
	list := make([]Match, len(s.node.Items))
	for i := range list {
		line := s.item(i)
		if r.object(line, "colourant", "most", "carrier", "load", "unlisted") {
			if load := line.at("load"); load != nil {
				r.fault(load, load.node.Text, "is given for a colourant whose load is looked for",
					`write its "most" alone, or list it among the colourants`, ErrConflict)
			}
			list[i] = Match{
				Colourant: r.label(line.at("colourant")), Most: r.load(line.at("most")),
				Carrier: r.carrier(line.at("carrier"), f), Unlisted: r.unlisted(line),
			}
		}
	}
	return list
}
