package soap_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"example.com/lyewright/colour"
	"example.com/lyewright/soap"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

// shelved is a formula as [maker.benched] makes it, acids and liquids and stock lyes
// with it, whose size is that of its vessels.
func (m *maker) shelved() soap.Formula {
	f := m.benched()
	size := about(f)
	f.Size = soap.Size{}
	if f.Oils[0].Mass.Sign() > 0 {
		for i, share := range m.shares(len(f.Oils), 1000) {
			f.Oils[i].Mass, f.Oils[i].Share = units.Mass{}, share
		}
	}
	if m.IntN(2) == 0 {
		f.Temperature.Pour = units.Celsius(m.between(15, 60))
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
			p.Reserve = basis(m.between(0, 3000))
		}
		if m.IntN(3) == 0 {
			p.Loss = size.Times(basis(m.between(1, 100)), units.Nearest)
		}
		for j := range p.Colourants {
			if m.IntN(2) == 0 {
				p.Colourants[j].Name = []string{"titanium-dioxide", "kaolin", "ultramarine-blue"}[j%3]
			}
		}
		if apart && i > 0 && i == len(f.Parts)-1 {
			p.Share = basis(m.between(100, 2500))
			continue
		}
		parts = append(parts, p.Name)
	}
	each := size.Grams() / float64(len(parts)) // millilitres to fill with each part
	for i, part := range parts {
		for j := range m.between(1, 3) {
			v := soap.Vessel{Name: fmt.Sprintf("vessel %d.%d", i+1, j+1), Part: part, Shape: m.shape()}
			if other := parts[(i+1)%len(parts)]; other != part && m.IntN(4) == 0 {
				lower := basis(m.between(1000, 9000))
				v.Part, v.Layers = "", []soap.Layer{{Part: part, Share: lower}, {Part: other, Rest: true}}
				if m.IntN(2) == 0 {
					v.Layers[1] = soap.Layer{Part: other, Share: lower.Rest()}
				}
			}
			holds, err := v.Shape.Volume()
			if err != nil {
				panic(err)
			}
			v.Count = min(5000, 1+int(each/holds.Millilitres()))
			if m.IntN(3) == 0 {
				v.Cuts = m.between(1, 12)
				v.Count = min(v.Count, 10000/v.Cuts)
			}
			if m.IntN(4) == 0 {
				n := m.between(1, 9)
				v.Trial = mould.Trial{Count: n, Mass: units.Milligrams(int64(1000 * holds.Millilitres() * float64(n) * (0.8 + 0.3*m.Float64())))}
				if m.IntN(2) == 0 {
					v.Shape = nil
				}
			}
			f.Size.Vessels = append(f.Size.Vessels, v)
		}
	}
	if n := len(f.Size.Vessels); m.IntN(2) == 0 {
		for k := range m.between(1, 2) {
			f.Size.Vessels = append(f.Size.Vessels, soap.Vessel{
				Name: fmt.Sprintf("top %d", k+1), Part: parts[m.IntN(len(parts))], On: f.Size.Vessels[m.IntN(n)].Name,
				Shape: mould.Cone{Base: m.mm(30, 50), Tip: m.mm(2, 12), Height: m.mm(15, 40), Fill: basis(m.between(6000, 10000))},
			})
		}
		if m.IntN(2) == 0 { // tops may stand before what they stand on
			slices.Reverse(f.Size.Vessels)
		}
	}
	for k := range m.IntN(3) {
		e := soap.Embed{Name: fmt.Sprintf("little moon %d", k+1), Vessel: f.Size.Vessels[m.IntN(len(f.Size.Vessels))].Name, Each: m.IntN(3), Spares: m.IntN(4), Sunk: m.IntN(2) == 0}
		if m.IntN(2) == 0 {
			e.Mass = units.Milligrams(m.between(100, 900))
		} else if v, ok := units.VolumeOfFloat(0.2 + m.Float64()); ok {
			e.Volume = v
		}
		f.Embeds = append(f.Embeds, e)
	}
	if m.IntN(3) == 0 {
		f.Toppings = []soap.Topping{{Name: "pressed cornflower", Vessel: f.Size.Vessels[0].Name, Mass: units.Milligrams(m.between(50, 500))}}
	}
	return f
}

// promised is such a formula whose superfat is a promise.
func (m *maker) promised() soap.Formula {
	f := m.shelved()
	f.Superfat = soap.Superfat{AtLeast: basis([]int{0, 100, 250}[m.IntN(3)])}
	for i := range f.Water.Liquids {
		if l := &f.Water.Liquids[i]; l.Fat.Given() {
			l.Saponification = span(218, 226, 235)
		}
	}
	return f
}

func (m *maker) mm(low, high int) units.Length { return units.Millimetres(m.between(low, high)) }

// shape is a vessel of any kind.
func (m *maker) shape() mould.Shape {
	var fill units.Ratio
	if m.IntN(2) == 0 {
		fill = basis(m.between(4000, 10000))
	}
	switch m.IntN(10) {
	case 0:
		return mould.Measured{Content: units.Millilitres(m.between(20, 300))}
	case 1:
		return mould.WaterFill{Mass: units.Grams(m.between(20, 300)), At: units.Celsius(m.between(1, 60))}
	case 2:
		return mould.Box{Length: m.mm(60, 250), Width: m.mm(40, 90), Depth: m.mm(30, 80), Fill: fill}
	case 3:
		return mould.TaperedBox{TopLength: m.mm(60, 90), TopWidth: m.mm(40, 80), BottomLength: m.mm(50, 95), BottomWidth: m.mm(30, 70), Depth: m.mm(20, 50), Fill: fill}
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
		return mould.Coat{Area: units.SquareMillimetres(m.between(4000, 20000)), Thickness: m.mm(3, 8)}
	}
}

// cavitiesOf counts what a batch fills of each vessel, a top as often as there are
// pieces below it.
func cavitiesOf(f soap.Formula) (cavities, cuts []int) {
	for _, v := range f.Size.Vessels {
		count := v.Count
		for _, below := range f.Size.Vessels {
			if v.On != "" && below.Name == v.On {
				count = below.Count * max(1, below.Cuts)
			}
		}
		cavities, cuts = append(cavities, count), append(cuts, max(1, v.Cuts))
	}
	return cavities, cuts
}

// sharesOf says which parts fill a vessel, by volume.
func sharesOf(f soap.Formula, v soap.Vessel) map[int]float64 {
	shares := map[int]float64{}
	find := func(name string) int {
		return max(0, slices.IndexFunc(f.Parts, func(p soap.Part) bool { return p.Name == name }))
	}
	if len(v.Layers) == 0 {
		shares[find(v.Part)] = 1
	}
	rest := 1.0
	for _, l := range v.Layers {
		rest -= l.Share.Or(units.Whole(0)).Float()
	}
	for _, l := range v.Layers {
		shares[find(l.Part)] = l.Share.Or(units.Whole(0)).Float()
		if l.Rest {
			shares[find(l.Part)] = rest
		}
	}
	return shares
}

// summed adds up what is in a batch, mass and volume, from its masses and published
// densities: what no density is known of counts at the batter's own. Nothing here
// knows how the batch was solved.
type summed struct {
	batter  float64   // g/mL
	density []float64 // of the parts
	volume  []float64 // of what is poured of them
}

func sumUp(t *testing.T, b soap.Batch) summed {
	t.Helper()
	at := b.Formula.Temperature.Pour
	if !at.Given() {
		at = units.Celsius(40)
	}
	pure, err := lye.DensityOfWater(at)
	if err != nil {
		t.Fatal(err)
	}
	water := pure.Float()
	mass, volume := 0.0, 0.0
	for _, o := range b.Oils {
		if d, known := o.Oil.Density(at); known {
			mass += o.Mass.Grams()
			volume += o.Mass.Grams() / d.Planned.Float()
		}
	}
	// The lye, as if all the water asked for were in it; then that held back leaves.
	// Two alkalis are two lyes of the same strength.
	all, hydroxide := b.Water.Asked, units.Sum{}
	for _, a := range b.Alkalis {
		all, hydroxide = all.Add(a.Mass), hydroxide.Add(a.Hydroxide())
	}
	strength, _ := hydroxide.Per(units.Sum{}.Plus(all, units.Whole(1)))
	for _, a := range b.Alkalis {
		d, err := lye.Solution{Alkali: a.Alkali, Strength: strength, At: at}.Density()
		if err != nil {
			t.Fatal(err)
		}
		volume += all.Grams() * a.Hydroxide().Grams() / hydroxide.Grams() / d.Float()
	}
	held := b.Water.Withheld.Grams()
	mass, volume = mass+all.Grams()-held, volume-held/water
	s := summed{batter: mass / volume}
	for _, p := range b.Parts {
		mass, volume := p.Batter.Grams(), p.Batter.Grams()/s.batter
		add := func(m units.Mass, density float64) {
			mass, volume = mass+m.Grams(), volume+m.Grams()/density
		}
		for _, a := range p.Additions {
			density := s.batter
			if c, err := colour.LookUp(a.Name); err == nil {
				_, planned, _ := c.Density()
				density = planned.Float()
			}
			add(a.Mass, density)
			if a.Carrier == nil {
				continue
			}
			density = s.batter
			switch a.Carrier.In {
			case soap.InWater:
				density = water
			case soap.InGlycerin:
				density = 1.2613 // glycerol at 20 °C, from a table of organic constants
			default:
				if d, known := a.Carrier.Oil.Density(at); known {
					density = d.Planned.Float()
				}
			}
			add(a.Carrier.Mass, density)
		}
		s.density, s.volume = append(s.density, mass/volume), append(s.volume, volume)
	}
	return s
}

// takes is what the vessels of a formula hold of each part, in grams, and what a
// single cavity of each takes in millilitres.
func (s summed) takes(t *testing.T, f soap.Formula) (parts []float64, holds []float64) {
	t.Helper()
	parts = make([]float64, len(s.density))
	cavities, cuts := cavitiesOf(f)
	for i, v := range f.Size.Vessels {
		shares, net := sharesOf(f, v), 0.0
		if v.Trial != (mould.Trial{}) {
			mean := 0.0
			for part, share := range shares {
				mean += share * s.density[part]
			}
			net = v.Trial.Mass.Grams() / float64(v.Trial.Count) / mean
		} else if volume, err := v.Shape.Volume(); err == nil {
			net = volume.Millilitres()
		} else {
			t.Fatal(err)
		}
		for _, e := range f.Embeds {
			if e.Vessel == v.Name && e.Sunk {
				net -= float64(cuts[i]*max(1, e.Each)) * (e.Volume.Millilitres() + e.Mass.Grams()/s.batter)
			}
		}
		holds = append(holds, net)
		for part, share := range shares {
			parts[part] += float64(cavities[i]) * share * net * s.density[part]
		}
	}
	return parts, holds
}

// off is how far two figures lie apart, as a share of the second.
func off(got, want float64) float64 { return math.Abs(got/want - 1) }
