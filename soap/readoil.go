package soap

import (
	"errors"
	"slices"
	"strings"

	"example.com/lyewright/internal/strictjson"
	"example.com/lyewright/units"
)

func (r *reader) oilLine(s *spot) OilLine {
	var line OilLine
	if !r.object(s, "oil", "name", "share", "mass", "saponification", "profile", "unsaponifiables", "iodine", "density",
		"inci", "measured", "note") {
		r.ids, r.lost = append(r.ids, ""), true
		return line
	}
	line.Share, line.Rest = r.share(s.at("share"))
	line.Mass = r.mass(s.at("mass"))
	line.Measured = r.yes(s.at("measured"), "write true of a lot whose saponification value was titrated") == affirmed
	line.Note = r.note(s.at("note"))
	before := len(r.faults)
	id := r.label(s.at("oil"))
	r.ids = append(r.ids, id)
	own := OwnOil{
		ID: id, Name: r.label(s.at("name")), INCI: r.label(s.at("inci")),
		Saponification:  r.saponification(s.at("saponification")),
		Profile:         r.profile(s.at("profile")),
		Unsaponifiables: r.percent(s.at("unsaponifiables")),
		Iodine:          r.iodine(s.at("iodine")),
		Density:         r.density(s.at("density")),
	}
	r.lost = r.lost || id == ""
	meant := func(key string) bool { return len(r.meant) > 0 && slices.Contains(r.meant, s.path()+key) }
	if id == "" || len(r.faults) > before || meant(".saponification") || meant(".profile") {
		r.unsure(s)
		return line
	}
	oil, err := own.on(id, s.at("saponification") != nil || s.at("profile") != nil)
	var faults Faults
	if errors.As(err, &faults) {
		for _, f := range faults {
			where := s
			for key := range strings.SplitSeq(f.Path, ".") {
				if next := where.at(key); next != nil {
					where = next
				}
			}
			r.fault(where, f.Text, f.Reason, f.Remedy, f.Kind)
		}
		r.unsure(s)
	}
	line.Oil = oil
	return line
}

// unsure keeps the check silent about an oil that could not be made out.
func (r *reader) unsure(s *spot) {
	if s.at("oil") != nil {
		r.meant = append(r.meant, s.path()+".oil")
	}
	r.meant = append(r.meant, s.path()+".saponification")
}

func (r *reader) saponification(s *spot) units.Range {
	parse := func(s *spot) units.Ratio { return measure(r, s, units.ParseMilligramsPerGram, "192.5") }
	switch {
	case r.textOr(s, "192.5"):
		return units.Exactly(parse(s))
	case s.is(strictjson.Object) && r.object(s, "low", "typical", "high"):
		return r.ends(s, parse)
	}
	return units.Range{}
}

// ends reads a range by its ends, of which both are needed.
func (r *reader) ends(s *spot, parse func(*spot) units.Ratio) units.Range {
	for _, key := range []string{"low", "high"} {
		if s.at(key) == nil {
			r.fault(s, "", "lacks its "+key+" end", `give "low" and "high", or one value`, ErrMissing)
		}
	}
	return units.Range{Low: parse(s.at("low")), Typical: parse(s.at("typical")), High: parse(s.at("high"))}
}

func (r *reader) profile(s *spot) []AcidShare {
	if s == nil {
		return nil
	}
	if s.node.Kind != strictjson.Object {
		r.fault(s, "", "is "+s.node.Kind.Name()+" where an object is needed",
			`write the acids and their shares, such as {"C18:1": "71 %"}`, ErrFormat)
		return nil
	}
	acids := []AcidShare{}
	for i := range s.node.Members {
		key := s.node.Members[i].Key
		share := r.percent(s.at(key))
		acids = append(acids, AcidShare{Acid: key, Low: share, High: share})
	}
	return acids
}

func (r *reader) iodine(s *spot) units.Ratio {
	value := r.number(s)
	return value.Over(units.Whole(100))
}

func (r *reader) density(s *spot) units.Ratio {
	if s == nil {
		return units.Ratio{}
	}
	text := r.text(s, "0.915 g/mL")
	if !s.is(strictjson.String) {
		return units.Ratio{}
	}
	value, err := units.ParseDensity(text)
	if err != nil {
		r.parseFault(s, err)
	}
	return value.Ratio()
}
