package soap

import (
	"errors"
	"slices"

	"example.com/lyewright/internal/nearest"
	"example.com/lyewright/internal/strictjson"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
)

func (r *reader) acids(s *spot) []AcidLine {
	if s == nil || !r.list(s, mostLines, "acids") {
		return nil
	}
	var lines []AcidLine
	for i := range s.node.Items {
		lines = append(lines, r.acid(s.item(i)))
	}
	return lines
}

func (r *reader) acid(s *spot) AcidLine {
	var line AcidLine
	if !r.object(s, "acids", "acid", "load", "strength", "compensate") {
		return line
	}
	if id := s.at("acid"); r.label(id) != "" {
		var err error
		line.Acid, err = lye.LookUpAcid(id.node.Text)
		r.under(id, err, "acid")
	}
	line.Load = r.load(s.at("load"))
	line.Strength = r.percent(s.at("strength"))
	if c := s.at("compensate"); c != nil {
		switch {
		case c.is(strictjson.Bool) && c.node.Text == "true":
			line.Compensate = Compensated
		case c.is(strictjson.Bool):
			line.Compensate = Uncompensated
		default:
			r.fault(c, c.node.Text, "is "+c.node.Kind.Name()+" where true or false is needed", "write true to add the alkali that the acid takes up", ErrFormat)
		}
	}
	return line
}

// under places the faults of a figure of another package: those of the key itself at
// the figure, others under it.
func (r *reader) under(s *spot, err error, key string) {
	var faults Faults
	if !errors.As(err, &faults) {
		return
	}
	for _, f := range faults {
		where := s
		if f.Path != key {
			where = &spot{trail: s.trail.at(f.Path), node: s.node}
			if found := s.at(f.Path); found != nil {
				where = found
			}
		}
		r.fault(where, f.Text, f.Reason, f.Remedy, f.Kind)
	}
}

func (r *reader) water(s *spot) Water {
	if s == nil || !r.object(s, "water", "lye_concentration", "per_alkali", "per_oils", "liquids") {
		return Water{}
	}
	w := Water{
		LyeConcentration: r.percent(s.at("lye_concentration")),
		PerAlkali:        r.number(s.at("per_alkali")),
		PerOils:          r.percent(s.at("per_oils")),
	}
	if list := s.at("liquids"); list != nil && r.list(list, mostLines, "liquids") {
		for i := range list.node.Items {
			w.Liquids = append(w.Liquids, r.liquid(list.item(i)))
		}
	}
	return w
}

func (r *reader) liquid(s *spot) LiquidLine {
	if !r.object(s, "liquids", "liquid", "share", "mass", "water", "fat", "sugar", "alcohol", "saponification") {
		return LiquidLine{}
	}
	return LiquidLine{
		Name:  r.label(s.at("liquid")),
		Share: r.percent(s.at("share")), Mass: r.mass(s.at("mass")),
		Water: r.percent(s.at("water")), Fat: r.percent(s.at("fat")),
		Sugar: r.percent(s.at("sugar")), Alcohol: r.percent(s.at("alcohol")),
		Saponification: r.saponification(s.at("saponification")),
	}
}

func (r *reader) temperatures(s *spot) Temperatures {
	if s == nil || !r.object(s, "temperature", "oils", "lye", "water", "room", "pour") {
		return Temperatures{}
	}
	return Temperatures{
		Oils: r.temperature(s.at("oils")), Lye: r.temperature(s.at("lye")), Water: r.temperature(s.at("water")),
		Room: r.temperature(s.at("room")), Pour: r.temperature(s.at("pour")),
	}
}

func (r *reader) temperature(s *spot) units.Temperature {
	if s == nil {
		return units.Temperature{}
	}
	text := r.text(s, "40 °C")
	if !s.is(strictjson.String) {
		return units.Temperature{}
	}
	t, err := units.ParseTemperature(text)
	if err != nil {
		r.parseFault(s, err)
	}
	return t
}

func (r *reader) weighed(s *spot) Weighed {
	var w Weighed
	if s == nil || !r.object(s, "weighed", "stage", "oils", "alkali", "water", "parts") {
		return w
	}
	if stage := s.at("stage"); stage != nil {
		w.Stage = Stage(1 + r.word(stage, AtLye.String(), AtPot.String(), AtParts.String(), AtMoulds.String()))
	}
	if len(s.node.Members) == 0 {
		r.fault(s, "", "does not say how far the batch has come", `write "stage": "lye", "pot", "parts" or "moulds"`, ErrMissing)
	}
	r.masses(s.at("oils"), func(id string, at *spot, mass units.Mass) {
		if !slices.Contains(r.ids, id) {
			r.unknownName(at, id, "is not an oil of this formula", r.ids)
		}
		w.Oils = append(w.Oils, WeighedOil{Oil: id, Mass: mass})
	})
	r.masses(s.at("alkali"), func(id string, at *spot, mass units.Mass) {
		kinds := []string{SodiumHydroxide.String(), PotassiumHydroxide.String()}
		i := slices.Index(kinds, id)
		if i < 0 {
			r.unknownName(at, id, "is not an alkali", kinds)
			return
		}
		w.Alkalis = append(w.Alkalis, WeighedAlkali{Alkali: Alkali(1 + i), Mass: mass})
	})
	w.Water = r.reading(s.at("water"))
	parts := s.at("parts")
	if parts != nil && !parts.is(strictjson.Object) {
		r.fault(parts, "", "is "+parts.node.Kind.Name()+" where an object is needed", `write {"base": {"batter": "690 g"}}`, ErrFormat)
		return w
	}
	if parts != nil {
		for i := range parts.node.Members {
			w.Parts = append(w.Parts, r.weighedPart(parts, parts.node.Members[i].Key))
		}
	}
	return w
}

func (r *reader) weighedPart(parts *spot, name string) WeighedPart {
	s, p := parts.at(name), WeighedPart{Part: name}
	if !r.object(s, "", "batter", "carriers") {
		return p
	}
	p.Batter = r.reading(s.at("batter"))
	r.masses(s.at("carriers"), func(liquid string, _ *spot, mass units.Mass) {
		p.Carriers = append(p.Carriers, WeighedCarrier{Liquid: liquid, Mass: mass})
	})
	return p
}

// masses reads an object of names and what a scale showed for each.
func (r *reader) masses(s *spot, each func(name string, at *spot, mass units.Mass)) {
	if s == nil {
		return
	}
	if !s.is(strictjson.Object) {
		r.fault(s, "", "is "+s.node.Kind.Name()+" where an object is needed", `write names and masses, such as {"olive": "366 g"}`, ErrFormat)
		return
	}
	for i := range s.node.Members {
		name := s.node.Members[i].Key
		at := s.at(name)
		each(name, at, r.reading(at).Mass)
	}
}

// reading reads what a scale showed: 0 g, too, for a line that was forgotten.
func (r *reader) reading(s *spot) Reading {
	text := r.text(s, "366 g")
	if !s.is(strictjson.String) {
		return Reading{}
	}
	mass, err := units.ParseMass(text)
	if err != nil {
		r.parseFault(s, err)
	}
	return Read(mass)
}

func (r *reader) unknownName(s *spot, name, reason string, known []string) {
	remedy := nearest.Remedy(name, known)
	if remedy == "" && len(known) > 0 && known[0] != "" {
		remedy = "use a name such as " + known[0]
	}
	r.fault(s, "", reason, remedy, ErrUnknown) // its path names it
}
