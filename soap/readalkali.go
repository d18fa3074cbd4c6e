package soap

import (
	"errors"

	"example.com/lyewright/internal/strictjson"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

func (r *reader) alkaliLine(s *spot) AlkaliLine {
	var line AlkaliLine
	if !r.object(s, "kind", "purity", "stock", "saponifies", "note") {
		return line
	}
	if kind := s.at("kind"); kind != nil {
		line.Alkali, line.Asked = r.alkali(kind)
	}
	line.Saponifies = r.percent(s.at("saponifies"))
	line.Note = r.note(s.at("note"))
	line.Purity, line.PuritySource = r.purity(s.at("purity"), line.Alkali)
	if stock := s.at("stock"); stock != nil && r.object(stock, "strength") {
		line.Stock = r.strength(stock)
	}
	return line
}

// alkali reads the name of a hydroxide, and gives it where it is not the usual one.
func (r *reader) alkali(s *spot) (alkali Alkali, asked string) {
	text := r.text(s, SodiumHydroxide.String())
	if !s.is(strictjson.String) {
		return 0, ""
	}
	if text == "" {
		r.fault(s, "", "is empty", "write sodium-hydroxide or potassium-hydroxide", ErrMissing)
		return 0, ""
	}
	alkali, err := lye.LookUpAlkali(text)
	if r.under(s, err, "kind"); err == nil && text != alkali.String() {
		asked = text
	}
	return alkali, asked
}

func (r *reader) purity(s *spot, alkali Alkali) (units.Range, cite.Source) {
	switch {
	case r.textOr(s, "98 %"):
		return units.Exactly(r.percent(s)), cite.Source{}
	case !s.is(strictjson.Object):
	case s.at("grade") != nil:
		return r.grade(s, alkali)
	case s.at("assay_min") != nil || s.at("assay_max") != nil || s.at("carbonate_max") != nil:
		return r.certificate(s, alkali), cite.Source{}
	case r.object(s, "low", "typical", "high", "assay_min", "assay_max", "carbonate_max", "grade"):
		return r.ends(s, r.percent), cite.Source{}
	}
	return units.Range{}, cite.Source{}
}

// grade reads a published grade, with or without the lot's own hydroxide.
func (r *reader) grade(s *spot, alkali Alkali) (units.Range, cite.Source) {
	before := len(r.faults)
	r.object(s, "grade", "typical")
	id, typical := r.label(s.at("grade")), r.percent(s.at("typical"))
	if len(r.faults) > before || alkali == 0 {
		return units.Range{}, cite.Source{} // said already: the figures, or which hydroxide it is
	}
	grade, err := lye.LookUpGrade(id, alkali)
	if err != nil {
		r.under(s, err, "")
		return units.Range{}, cite.Source{}
	}
	purity, err := grade.Purity(typical)
	r.under(s, err, "")
	return purity, grade.Source
}

// strength reads the strength of a stock lye: one value, or a range.
func (r *reader) strength(stock *spot) units.Range {
	s := stock.at("strength")
	if s == nil {
		r.fault(stock, "", "does not say how strong it is", `write {"strength": "49.6 %"}`, ErrMissing)
		return units.Range{}
	}
	return r.percentRange(s, "49.6 %")
}

// percentRange reads a percentage: one value, or a range by its ends.
func (r *reader) percentRange(s *spot, example string) units.Range {
	switch {
	case r.textOr(s, example):
		return units.Exactly(r.percent(s))
	case s.is(strictjson.Object) && r.object(s, "low", "typical", "high"):
		return r.ends(s, r.percent)
	}
	return units.Range{}
}

func (r *reader) certificate(s *spot, alkali Alkali) units.Range {
	before := len(r.faults)
	r.object(s, "assay_min", "assay_max", "carbonate_max", "typical")
	c := Certificate{
		AssayMin: r.percent(s.at("assay_min")), AssayMax: r.percent(s.at("assay_max")),
		CarbonateMax: r.percent(s.at("carbonate_max")), Typical: r.percent(s.at("typical")),
	}
	if len(r.faults) > before || alkali == 0 {
		return units.Range{} // said already: the figures, or which hydroxide it is
	}
	purity, err := c.Purity(alkali)
	r.under(s, err, "")
	return purity
}

// under places the faults of a figure of another package: those of the key itself at
// the figure, others under it.
func (r *reader) under(s *spot, err error, key string) {
	var faults Faults
	var one Fault
	switch {
	case errors.As(err, &faults):
	case errors.As(err, &one):
		faults = Faults{one}
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
