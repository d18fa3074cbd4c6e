package soap

import (
	"errors"

	"example.com/lyewright/internal/strictjson"
	"example.com/lyewright/units"
)

func (r *reader) alkaliLine(s *spot) AlkaliLine {
	var line AlkaliLine
	if !r.object(s, "alkali", "kind", "purity", "saponifies") {
		return line
	}
	if kind := s.at("kind"); kind != nil {
		line.Alkali = Alkali(1 + r.word(kind, SodiumHydroxide.String(), PotassiumHydroxide.String()))
	}
	line.Saponifies = r.percent(s.at("saponifies"))
	line.Purity = r.purity(s.at("purity"), line.Alkali)
	return line
}

func (r *reader) purity(s *spot, alkali Alkali) units.Range {
	switch {
	case r.textOr(s, "98 %"):
		return units.Exactly(r.percent(s))
	case !s.is(strictjson.Object):
	case s.at("assay_min") != nil || s.at("assay_max") != nil || s.at("carbonate_max") != nil:
		return r.certificate(s, alkali)
	case r.object(s, "purity", "low", "typical", "high", "assay_min", "assay_max", "carbonate_max"):
		return r.ends(s, r.percent)
	}
	return units.Range{}
}

func (r *reader) certificate(s *spot, alkali Alkali) units.Range {
	before := len(r.faults)
	r.object(s, "purity", "assay_min", "assay_max", "carbonate_max", "typical")
	c := Certificate{
		AssayMin: r.percent(s.at("assay_min")), AssayMax: r.percent(s.at("assay_max")),
		CarbonateMax: r.percent(s.at("carbonate_max")), Typical: r.percent(s.at("typical")),
	}
	if len(r.faults) > before || alkali == 0 {
		return units.Range{} // said already: the figures, or which hydroxide it is
	}
	purity, err := c.Purity(alkali)
	var faults Faults
	if errors.As(err, &faults) {
		for _, f := range faults {
			f.Path = s.path() + "." + f.Path
			r.faults = append(r.faults, f)
		}
	}
	return purity
}
