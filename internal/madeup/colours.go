package madeup

import (
	"slices"

	"example.com/lyewright/colour"
	"example.com/lyewright/colour/tint"
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// Coloured is a formula as [Maker.Scented] makes it, whose colourants are known: built-in
// ones and pigments of the maker's own. One in five has swatches, some of them targets and
// loads that are looked for.
func (m *Maker) Coloured() soap.Formula {
	f := m.Scented()
	m.colour(&f)
	return f
}

func (m *Maker) colour(f *soap.Formula) {
	f.Gel = []soap.Gel{soap.GelUnknown, soap.Gelled, soap.NotGelled}[m.IntN(3)]
	f.Pigments = []colour.Supplied{
		{ID: "titanium-dioxide", Price: colour.Price{Amount: units.Whole(m.Between(1, 2000)).Over(units.Whole(100)), Per: units.Grams(100)}},
		{
			ID: "dusk", Name: "Dusk", CI: []string{"77007"}, DispersesIn: colour.Oil, Nano: m.IntN(4) == 0,
			Usual: colour.Usual{Low: colour.Load{Of: colour.OfBatter, Share: Basis(10)}, High: colour.Load{Of: colour.OfBatter, Share: Basis(m.Between(20, 200))}},
		},
	}
	ids := []string{"titanium-dioxide", "dusk", "kaolin", "iron-oxide-red", "ultramarine-blue", "carmine", "a-neighbour-s-blue"}
	swatches := m.IntN(5) == 0
	if swatches {
		f.Swatches = m.swatches()
	}
	for i := range f.Parts {
		p := &f.Parts[i]
		m.Shuffle(len(ids), func(i, j int) { ids[i], ids[j] = ids[j], ids[i] })
		for k := range p.Colourants {
			a := &p.Colourants[k]
			a.Name, a.Unlisted = ids[k], ids[k] == "a-neighbour-s-blue"
			a.Carrier.Paste = a.Carrier.In != soap.NoLiquid && m.IntN(4) == 0
		}
		if !swatches || m.IntN(2) == 0 {
			continue
		}
		p.Target.Lab = &tint.Lab{L: float64(m.Between(30, 90)), A: float64(m.Between(-10, 10)), B: float64(m.Between(-30, 20))}
		if m.IntN(3) == 0 {
			p.Target = soap.Target{SRGB: &tint.SRGB{R: uint8(m.IntN(256)), G: uint8(m.IntN(256)), B: uint8(m.IntN(256))}}
		}
		if m.IntN(4) == 0 {
			continue // a target alone
		}
		// What is looked for stands in a swatch, as all beside it, and is not given.
		p.Colourants = slices.DeleteFunc(p.Colourants, func(a soap.Addition) bool { return a.Name != "titanium-dioxide" && a.Name != "dusk" })
		for _, id := range []string{"titanium-dioxide", "dusk"} {
			given := slices.ContainsFunc(p.Colourants, func(a soap.Addition) bool { return a.Name == id })
			if !given && m.IntN(3) > 0 {
				p.Match = append(p.Match, soap.Match{Colourant: id, Most: soap.Load{OfBatter: Basis(m.Between(20, 150))}})
			}
		}
	}
}

// swatches are photographs of five pieces: of three bands, so that a fit is fast.
func (m *Maker) swatches() *tint.Swatches {
	read := func(name string, r, g, b uint8, loads ...tint.Load) tint.Swatch {
		return tint.Swatch{Name: name, SRGB: &tint.SRGB{R: r, G: g, B: b}, Loads: loads}
	}
	of := func(id string, n int) tint.Load { return tint.Load{Colourant: id, OfBatter: Basis(n)} }
	set := &tint.Swatches{Name: "dusk swatches", Read: []tint.Swatch{
		read("plain", 0xe8, 0xdc, 0xc0),
		read("white 0.3", 0xef, 0xe8, 0xd8, of("titanium-dioxide", 30)),
		read("white 1", 0xf4, 0xf0, 0xe8, of("titanium-dioxide", 100)),
		read("dusk 0.3", 0xb9, 0xc3, 0xda, of("titanium-dioxide", 50), of("dusk", 30)),
		read("dusk 1", 0x7f, 0x93, 0xc6, of("titanium-dioxide", 50), of("dusk", 100)),
	}}
	if m.IntN(2) == 0 {
		surface := tint.UsualSurface()
		set.Surface = &surface
	}
	return set
}
