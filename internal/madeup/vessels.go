package madeup

import (
	"slices"
	"strconv"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

// Shelved is a formula as [Maker.Benched] makes it, acids and liquids and stock lyes
// with it, whose size is that of its vessels.
func (m *Maker) Shelved() soap.Formula {
	f := m.Benched()
	size := About(f)
	f.Size = soap.Size{}
	if f.Oils[0].Mass.Sign() > 0 {
		for i, share := range m.shares(len(f.Oils), 1000) {
			f.Oils[i].Mass, f.Oils[i].Share = units.Mass{}, share
		}
	}
	if m.IntN(2) == 0 {
		f.Temperature.Pour = units.Celsius(m.Between(15, 60))
	}
	parts := []string{""} // the one of a formula without parts
	if len(f.Parts) > 0 {
		parts = nil
	}
	apart := m.IntN(4) == 0 // the last part fills no vessel
	for i := range f.Parts {
		p := &f.Parts[i]
		p.Share, p.Rest = units.Ratio{}, false
		if m.IntN(3) == 0 {
			p.Work = mould.Piped
		}
		if m.IntN(3) == 0 {
			p.Reserve = Basis(m.Between(0, 3000))
		}
		if m.IntN(3) == 0 {
			p.Loss = units.Sum{}.Plus(size, Basis(m.Between(1, 100))).Mass(units.Nearest)
		}
		for j := range p.Colourants {
			if m.IntN(2) == 0 {
				p.Colourants[j].Name, p.Colourants[j].Unlisted = []string{"titanium-dioxide", "kaolin", "ultramarine-blue"}[j%3],
					false
			}
		}
		if apart && i > 0 && i == len(f.Parts)-1 {
			p.Share = Basis(m.Between(100, 2500))
			continue
		}
		parts = append(parts, p.Name)
	}
	each := size.Grams() / float64(len(parts)) // millilitres to fill with each part
	for i, part := range parts {
		for j := range m.Between(1, 3) {
			v := soap.Vessel{Name: "vessel " + strconv.Itoa(i+1) + "." + strconv.Itoa(j+1), Part: part, Shape: m.shape()}
			if other := parts[(i+1)%len(parts)]; other != part && m.IntN(4) == 0 {
				lower := Basis(m.Between(1000, 9000))
				v.Part, v.Layers = "", []soap.Layer{{Part: part, Share: lower}, {Part: other, Rest: true}}
				if m.IntN(2) == 0 {
					v.Layers[1] = soap.Layer{Part: other, Share: lower.Rest()}
				}
			}
			holds := must(v.Shape.Volume())
			v.Count = min(5000, 1+int(each/holds.Millilitres()))
			if m.IntN(3) == 0 {
				v.Cuts = m.Between(1, 12)
				v.Count = min(v.Count, 10000/v.Cuts)
			}
			if m.IntN(4) == 0 {
				n := m.Between(1, 9)
				v.Trial = mould.Trial{Count: n, Mass: units.Milligrams(int64(1000 * holds.Millilitres() * float64(n) * (0.8 +
					float64(0.3*m.Float64()))))}
				if m.IntN(2) == 0 {
					v.Shape = nil
				}
			}
			f.Size.Vessels = append(f.Size.Vessels, v)
		}
	}
	if n := len(f.Size.Vessels); m.IntN(2) == 0 {
		for k := range m.Between(1, 2) {
			f.Size.Vessels = append(f.Size.Vessels, soap.Vessel{
				Name: "top " + strconv.Itoa(k+1), Part: parts[m.IntN(len(parts))], On: f.Size.Vessels[m.IntN(n)].Name,
				Shape: mould.Cone{Base: m.mm(30, 50), Tip: m.mm(2, 12), Height: m.mm(15, 40), Fill: Basis(m.Between(6000, 10000))},
			})
		}
		if m.IntN(2) == 0 { // tops may stand before what they stand on
			slices.Reverse(f.Size.Vessels)
		}
	}
	for k := range m.IntN(3) {
		e := soap.Embed{
			Name: "little moon " + strconv.Itoa(k+1), Vessel: f.Size.Vessels[m.IntN(len(f.Size.Vessels))].Name,
			Each: m.IntN(3), Spares: m.IntN(4), Sunk: m.IntN(2) == 0,
		}
		if m.IntN(2) == 0 {
			e.Mass = units.Milligrams(m.Between(100, 900))
		} else if v, ok := units.VolumeOfFloat(0.2 + m.Float64()); ok {
			e.Volume = v
		}
		f.Embeds = append(f.Embeds, e)
	}
	if m.IntN(3) == 0 {
		f.Toppings = []soap.Topping{{
			Name: "pressed cornflower", Vessel: f.Size.Vessels[0].Name,
			Mass: units.Milligrams(m.Between(50, 500)),
		}}
	}
	return f
}

// Promised is such a formula whose superfat is a promise.
func (m *Maker) Promised() soap.Formula {
	f := m.Shelved()
	f.Superfat = soap.Superfat{AtLeast: Basis([]int{0, 100, 250}[m.IntN(3)])}
	for i := range f.Water.Liquids {
		if l := &f.Water.Liquids[i]; l.Fat.Given() {
			l.Saponification = Span(218, 226, 235)
		}
	}
	return f
}

func (m *Maker) mm(low, high int) units.Length { return units.Millimetres(m.Between(low, high)) }

// shape is a vessel of any kind.
func (m *Maker) shape() mould.Shape {
	var fill units.Ratio
	if m.IntN(2) == 0 {
		fill = Basis(m.Between(4000, 10000))
	}
	switch m.IntN(10) {
	case 0:
		return mould.Measured{Content: units.Millilitres(m.Between(20, 300))}
	case 1:
		return mould.WaterFill{Mass: units.Grams(m.Between(20, 300)), At: units.Celsius(m.Between(1, 60))}
	case 2:
		return mould.Box{Length: m.mm(60, 250), Width: m.mm(40, 90), Depth: m.mm(30, 80), Fill: fill}
	case 3:
		return mould.TaperedBox{
			TopLength: m.mm(60, 90), TopWidth: m.mm(40, 80), BottomLength: m.mm(50, 95),
			BottomWidth: m.mm(30, 70), Depth: m.mm(20, 50), Fill: fill,
		}
	case 4:
		return mould.Cylinder{Diameter: m.mm(40, 80), Height: m.mm(20, 90), Fill: fill}
	case 5:
		return mould.Frustum{Top: m.mm(40, 80), Bottom: m.mm(30, 70), Height: m.mm(20, 60), Fill: fill}
	case 6:
		return mould.HalfSphere{Diameter: m.mm(40, 90), Fill: fill}
	case 7:
		return mould.Slab{Length: m.mm(100, 250), Width: m.mm(80, 180), Height: m.mm(20, 40), Liner: m.mm(0, 2), Fill: fill}
	case 8:
		return mould.Cone{Base: m.mm(35, 60), Tip: m.mm(0, 20), Height: m.mm(25, 60), Fill: fill}
	default:
		return mould.Coat{Area: units.SquareMillimetres(m.Between(4000, 20000)), Thickness: m.mm(3, 8)}
	}
}
