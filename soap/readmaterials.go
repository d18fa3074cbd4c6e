package soap

import (
	"strconv"
	"strings"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/internal/strictjson"
	"example.com/lyewright/units"
)

func (r *reader) markets(s *spot) []Market {
	if s == nil || !r.list(s, 10, "markets") {
		return nil
	}
	if len(s.node.Items) == 0 {
		r.fault(s, "", "is an empty list", `name the markets, such as ["eu"], or leave it out`, ErrMissing)
	}
	markets := make([]Market, len(s.node.Items))
	for i := range markets {
		if word := r.word(s.item(i), EuropeanUnion.String(), UnitedStates.String()); word >= 0 {
			markets[i] = Market(1 + word)
		}
	}
	return markets
}

func (r *reader) materials(s *spot) []fragrance.Supplied {
	if s == nil || !r.list(s, fragrance.MostMaterials, "materials") {
		return nil
	}
	materials := make([]fragrance.Supplied, len(s.node.Items))
	for i := range materials {
		materials[i] = r.material(s.item(i))
	}
	return materials
}

func (r *reader) material(s *spot) fragrance.Supplied {
	var m fragrance.Supplied
	if !r.object(s, "fragrance", "natural", "complete", "certificates", "constituents", "allergens", "behaviour",
		"blend") {
		return m
	}
	m.ID = r.label(s.at("fragrance"))
	m.Natural = r.yes(s.at("natural"), "write true where it is a natural material") == affirmed
	m.Complete = r.yes(s.at("complete"), "write true where its list names everything that is restricted") == affirmed
	m.Certificates = r.certificates(s.at("certificates"))
	m.Constituents, m.ConstituentsListed = r.constituents(s.at("constituents"))
	m.Allergens, m.AllergensListed = r.allergens(s.at("allergens"))
	m.Behaviour = r.behaviour(s.at("behaviour"))
	m.Blend = r.blend(s.at("blend"))
	return m
}

func (r *reader) certificates(s *spot) []fragrance.Certificate {
	if s == nil || !r.list(s, fragrance.MostCertificates, "certificates") {
		return nil
	}
	certificates := make([]fragrance.Certificate, len(s.node.Items))
	for i := range certificates {
		line := s.item(i)
		if r.object(line, "category", "limit", "amendment") {
			certificates[i] = fragrance.Certificate{
				Category: r.labelled(line.at("category"), fragrance.Category()), Limit: r.percent(line.at("limit")),
				Amendment: r.amendment(line.at("amendment")),
			}
		}
	}
	return certificates
}

// amendment reads the number of an amendment, as text.
func (r *reader) amendment(s *spot) int {
	text := r.text(s, "51")
	if !s.is(strictjson.String) {
		return 0
	}
	n, err := strconv.Atoi(text)
	if err != nil || len(text) > 2 || n < 1 || strings.Trim(text, "0123456789") != "" {
		r.fault(s, text, "is not the number of an amendment", `write its number alone, such as "51"`, ErrFormat)
		return 0
	}
	return n
}

// constituents reads what a supplier lists; an empty list says that nothing is to be listed.
func (r *reader) constituents(s *spot) (constituents []fragrance.Constituent, listed bool) {
	if s == nil || !r.list(s, fragrance.MostConstituents, "constituents") {
		return nil, false
	}
	constituents = make([]fragrance.Constituent, len(s.node.Items))
	for i := range constituents {
		line := s.item(i)
		if !r.object(line, "cas", "share", "natural") {
			continue
		}
		c := &constituents[i]
		if cas := line.at("cas"); cas != nil {
			if text := r.text(cas, "97-53-0"); cas.is(strictjson.String) {
				number, err := fragrance.ParseCAS(text)
				r.under(cas, err, "")
				c.CAS = number
			}
		}
		switch share := line.at("share"); {
		case r.textOr(share, "1.2 %"):
			c.Share = units.Exactly(r.percent(share))
		case share.is(strictjson.Object) && r.object(share, "low", "high"):
			c.Share = r.ends(share, r.percent)
		}
		switch r.yes(line.at("natural"), "write true where it came with a natural material") {
		case affirmed:
			c.Origin = fragrance.FromNature
		case denied:
			c.Origin = fragrance.Added
		}
	}
	return constituents, true
}

// allergens reads the names that a supplier lists; an empty list says that there are
// none.
func (r *reader) allergens(s *spot) (names []string, listed bool) {
	if s == nil || !r.list(s, fragrance.MostConstituents, "allergens") {
		return nil, false
	}
	for i := range s.node.Items {
		names = append(names, r.label(s.item(i)))
	}
	return names, true
}

func (r *reader) behaviour(s *spot) (b fragrance.Behaviour) {
	if s == nil || !r.list(s, len(fragrance.Behaviours()), "words") {
		return 0
	}
	for i := range s.node.Items {
		if word := r.word(s.item(i), fragrance.Behaviours()...); word >= 0 {
			b |= 1 << word
		}
	}
	return b
}

func (r *reader) blend(s *spot) []fragrance.Share {
	if s == nil || !r.list(s, fragrance.MostBlended, "materials") {
		return nil
	}
	if len(s.node.Items) == 0 {
		r.fault(s, "", "is an empty list", "list what it is blended of, or leave it out", ErrMissing)
	}
	blend := make([]fragrance.Share, len(s.node.Items))
	for i := range blend {
		line := s.item(i)
		if r.object(line, "fragrance", "share") {
			blend[i] = fragrance.Share{Fragrance: r.label(line.at("fragrance")), Share: r.percent(line.at("share"))}
		}
	}
	return blend
}
