package soap

import (
	"slices"

	"example.com/lyewright/internal/nearest"
	"example.com/lyewright/internal/strictjson"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
)

func (r *reader) weighed(s *spot, f *Formula) Weighed {
	var w Weighed
	if s == nil || !r.object(s, "stage", "oils", "alkali", "water", "acids", "liquids", "parts") {
		return w
	}
	if stage := s.at("stage"); stage != nil {
		w.Stage = Stage(1 + r.word(stage, AtLye.String(), AtPot.String(), AtParts.String(), AtMoulds.String()))
	}
	if len(s.node.Members) == 0 {
		r.fault(s, "", "does not say how far the batch has come", `write "stage": "lye", "pot", "parts" or "moulds"`, ErrMissing)
	}
	r.masses(s.at("oils"), func(id string, at *spot, mass units.Mass) {
		if !slices.Contains(r.ids, id) && f.lineNamed(id) < 0 {
			r.unknownName(at, id, "is not an oil of this formula", r.ids)
		}
		w.Oils = append(w.Oils, WeighedOil{Oil: id, Mass: mass})
	})
	r.masses(s.at("alkali"), func(id string, at *spot, mass units.Mass) {
		alkali, err := lye.LookUpAlkali(id)
		if r.under(at, err, "kind"); err != nil {
			return
		}
		read := WeighedAlkali{Alkali: alkali, Mass: mass}
		if id != alkali.String() {
			read.asked = id
		}
		w.Alkalis = append(w.Alkalis, read)
	})
	w.Water = r.reading(s.at("water"))
	r.masses(s.at("acids"), func(id string, _ *spot, mass units.Mass) {
		w.Acids = append(w.Acids, WeighedAcid{Acid: id, Mass: mass})
	})
	r.masses(s.at("liquids"), func(name string, _ *spot, mass units.Mass) {
		w.Liquids = append(w.Liquids, WeighedLiquid{Liquid: name, Mass: mass})
	})
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
	if !r.object(s, "batter", "additions", "carriers") {
		return p
	}
	p.Batter = r.reading(s.at("batter"))
	r.masses(s.at("additions"), func(name string, _ *spot, mass units.Mass) {
		p.Additions = append(p.Additions, WeighedAddition{Name: name, Mass: mass})
	})
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
