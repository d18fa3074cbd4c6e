package soap_test

import (
	"math"
	"slices"
	"testing"

	"example.com/lyewright/colour"
	"example.com/lyewright/soap"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

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
		all, hydroxide = all.Add(a.Dry.Mass), hydroxide.Add(a.Hydroxide())
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
