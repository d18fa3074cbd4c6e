package soap

import (
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// vessels judges what fills the vessels.
func (j *judge) vessels() {
	if v := j.b.Volumes; v != nil && len(v.Unknown) > 0 {
		f := Finding{Code: "density-unknown", Subject: "size", Names: v.Unknown, Source: cite.Source{How: cite.Computed}}
		var oils units.Mass
		for i := range j.b.Oils {
			if j.s.bulk.oils[i].planned == 0 {
				oils = oils.Add(j.real().inPot(i))
			}
		}
		// A tenth is our choice: lye is half as dense again as oil, so that the volumes are
		// then some percent off.
		if share, _ := oils.Per(j.real().pot); share.Compare(units.Percent(10)) > 0 {
			f.Severity, f.Value, f.Limit, f.Unit, f.Detail = Warning, settled(share), units.Percent(10), "%", muchUnknown
		}
		j.add(f)
	}
	size := top("size")
	list := size.at("vessels")
	for i := range j.s.seated.vessels {
		v, wanted := &j.s.seated.vessels[i], j.s.seated.wanted[i]
		if v.Moulds == 0 || wanted <= v.Moulds {
			continue
		}
		t := list.item(i)
		subject := t.at("moulds")
		f := Finding{
			Code: "moulds-short", Subject: subject.String(), Value: units.Whole(wanted), Limit: units.Whole(v.Moulds),
			Unit:  "moulds",
			Names: []string{v.Name}, Source: cite.Source{How: cite.Computed},
		}
		if j.b.Formula.SizeKnown() {
			f.Detail = batchKnown
		}
		j.add(f)
	}
	for i := range j.b.Formula.Size.Vessels {
		j.metalVessel(list.item(i), j.b.Formula.Size.Vessels[i].Name)
	}
	for i := range j.b.Formula.Toppings {
		p, t := &j.b.Formula.Toppings[i], top("toppings")
		j.glitter(t.item(i), p.Name, p.Glitter, p.Foil)
		j.metalThing(t.item(i), p.Glitter, p.Name)
	}
	if embeds := j.b.Formula.Embeds; len(embeds) > 0 {
		f := Finding{Code: "embeds-present", Subject: "embeds", Source: commonSource()}
		list := top("embeds")
		for i := range embeds {
			j.metalThing(list.item(i), NoGlitter, embeds[i].Name)
			f.Names = append(f.Names, embeds[i].Name)
		}
		j.add(f)
	}
}

// glitter judges a glitter: among the additives or strewn on top.
func (j *judge) glitter(t trail, name string, glitter Glitter, foil Foil) {
	if glitter == NoGlitter {
		return
	}
	line := t // a copy, so that what is no glitter costs nothing
	subject := line.String()
	if glitter == PolymerGlitter {
		j.add(Finding{
			Code: "glitter-plastic", Severity: Warning, Subject: subject, Names: []string{name},
			Source: microplastics(),
		})
	}
	switch {
	// its name outweighs what is declared
	case foil == WithAluminium, isFilm(glitter, name) && metalNamed(name) == "aluminium":
		j.add(Finding{
			Code: "glitter-aluminium", Severity: Warning, Subject: subject, Names: []string{name},
			Source: cite.Source{How: cite.Memory},
		})
	case foil == FoilUnknown && glitter != MineralGlitter:
		j.add(Finding{
			Code: "glitter-aluminium", Severity: Warning, Subject: subject, Names: []string{name},
			Source: cite.Source{How: cite.Memory}, Detail: foilUnknown,
		})
	}
}

// microplastics is the European rule on plastic glitter.
func microplastics() cite.Source {
	return cite.Source{
		Title:   "Commission Regulation (EU) 2023/2055 (REACH Annex XVII, entry 78), OJ L 238, p. 67",
		Edition: "27 September 2023",
		Place: "title page; the dates as notices of the Commission and of others restate them, the annex itself was " +
			"not seen",
		How: cite.Read,
	}
}
