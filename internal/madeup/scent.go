package madeup

import (
	"example.com/lyewright/fragrance"
	"example.com/lyewright/soap"
	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

// Scented is a formula as [Maker.Benched] or [Maker.Shelved] makes it, whose fragrances
// are known: built-in ones, and a maker's own with certificates, constituents, allergens
// and a blend. At times one is asked for at its most.
func (m *Maker) Scented() soap.Formula {
	f := m.Benched()
	if m.IntN(3) == 0 {
		f = m.Shelved()
	}
	m.scent(&f)
	return f
}

func (m *Maker) scent(f *soap.Formula) {
	f.Materials = m.materials()
	switch m.IntN(4) {
	case 0:
		f.Markets = []soap.Market{soap.UnitedStates}
	case 1:
		f.Markets = []soap.Market{soap.EuropeanUnion, soap.UnitedStates}
	}
	ids := []string{"clove-bud", "lime-expressed", "peppermint", "lavender", "ylang-ylang-extra", "pear", "walk-blend", "moonlight"}
	for i := range f.Parts {
		p := &f.Parts[i]
		p.Look = []soap.Look{soap.AnyLook, soap.White, soap.Pale}[m.IntN(3)]
		if m.IntN(3) == 0 {
			p.Work = mould.Piped
		}
		m.Shuffle(len(ids), func(i, j int) { ids[i], ids[j] = ids[j], ids[i] })
		p.Fragrances = nil
		for k := range m.IntN(4) {
			a := soap.Addition{Name: ids[k], Unlisted: ids[k] == "moonlight", Load: soap.Load{OfOils: Basis(m.Between(1, 150))}}
			switch {
			case k == 0 && m.IntN(8) == 0 && a.Name != "moonlight" && a.Name != "lavender": // where nothing binds there is no most
				a.Load = soap.Load{Max: true}
				if m.IntN(2) == 0 {
					a.Margin = Basis(m.Between(0, 2000))
				}
			case m.IntN(3) == 0:
				a.Load = soap.Load{OfBatter: Basis(m.Between(1, 100))}
			case m.IntN(4) == 0:
				a.Load = soap.Load{Mass: units.Milligrams(m.Between(100, 2000))}
			}
			if m.IntN(4) == 0 {
				a.Carrier = m.carrier(f)
			}
			if a.Unlisted && len(p.Fragrances) > 0 && p.Fragrances[0].Load.Max {
				continue // beside it nobody knows the most
			}
			p.Fragrances = append(p.Fragrances, a)
		}
	}
}

// materials are a maker's own: a fragrance oil with its papers, and a blend with it.
func (m *Maker) materials() []fragrance.Supplied {
	pear := fragrance.Supplied{
		ID: "pear", Natural: m.IntN(4) == 0, Complete: m.IntN(2) == 0,
		Certificates: []fragrance.Certificate{{Category: "9", Limit: Basis(m.Between(100, 4000)), Amendment: m.Between(48, 51)}},
		Constituents: []fragrance.Constituent{
			{CAS: cas("97-53-0"), Share: units.Exactly(Basis(m.Between(1, 200)))},                            // eugenol
			{CAS: cas("121-33-5"), Share: units.Between(Basis(m.Between(0, 50)), Basis(m.Between(50, 400)))}, // vanillin
			{CAS: cas("78-70-6"), Share: units.Exactly(Basis(m.Between(1, 1000))), Origin: fragrance.Added},  // linalool
		},
	}
	if m.IntN(2) == 0 {
		pear.Allergens, pear.AllergensListed = []string{"Eugenol", "Linalool"}, true
	}
	if m.IntN(3) == 0 {
		pear.Behaviour = fragrance.Accelerates | fragrance.Browns
	}
	share := Basis(m.Between(1000, 9000))
	blend := fragrance.Supplied{ID: "walk-blend", Blend: []fragrance.Share{{Fragrance: "pear", Share: share}, {Fragrance: "spearmint", Share: share.Rest()}}}
	return []fragrance.Supplied{pear, blend}
}

func cas(text string) fragrance.CAS { return must(fragrance.ParseCAS(text)) }
