package soap

import (
	"slices"

	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

// seated says what the vessels of a formula come to before anything is known of
// its batter: cavities and pieces of each, in one batch.
type seated struct {
	vessels  []Vessel
	layers   [][]seat
	cavities []cavity
	each     []int // cavities in one batch
	wanted   []int // cavities in all
	last     []int // cavities in the last batch
	batches  int
	pieces   int // in all, tops apart
}

// seat is a part's share of a vessel.
type seat struct {
	part  int
	share units.Ratio
}

// partOf finds a part by its name, or -1.
func partOf(parts []Part, name string) int {
	return slices.IndexFunc(parts, func(p Part) bool { return p.Name == name })
}

// vesselOf finds a vessel by its name, or -1.
func vesselOf(vessels []Vessel, name string) int {
	return slices.IndexFunc(vessels, func(v Vessel) bool { return v.Name == name })
}

// seat gives every vessel its cavities and its parts.
func (f *Formula) seat(parts []Part) seated {
	vessels := f.Size.Vessels
	s := seated{vessels: vessels, layers: make([][]seat, len(vessels)), wanted: make([]int, len(vessels))}
	for i := range vessels {
		v := &vessels[i]
		s.wanted[i] = v.Count
		if v.On == "" {
			s.pieces += v.Count * v.cuts()
		}
		s.layers[i] = v.seats(parts)
	}
	if f.Size.Pieces > 0 {
		s.wanted = mould.Scaled(s.wanted, s.pieces, f.Size.Pieces)
		s.pieces = 0
		for i := range vessels {
			s.pieces += s.wanted[i] * vessels[i].cuts()
		}
	}
	shelves := make([]mould.Shelf, len(vessels))
	for i := range vessels {
		shelves[i] = mould.Shelf{Count: s.wanted[i], Moulds: vessels[i].Moulds}
	}
	s.batches, s.each, s.last = mould.Batches(shelves)
	if f.SizeKnown() { // what there is goes into as many as it fills
		s.each = slices.Clone(s.wanted)
	}
	for i := range vessels {
		if below := vesselOf(vessels, vessels[i].On); vessels[i].On != "" {
			cuts := vessels[below].cuts()
			s.wanted[i], s.each[i], s.last[i] = s.wanted[below]*cuts, s.each[below]*cuts, s.last[below]*cuts
		}
	}
	s.cavities = f.cavities(&s)
	return s
}

// seats lists the parts that fill a vessel with their shares of it.
func (v *Vessel) seats(parts []Part) []seat {
	if len(v.Layers) == 0 {
		return []seat{{part: max(0, partOf(parts, v.Part)), share: units.Whole(1)}}
	}
	seats, shares, rest := make([]seat, len(v.Layers)), make([]units.Ratio, len(v.Layers)), -1
	for i, layer := range v.Layers {
		shares[i] = layer.Share
		if layer.Rest {
			rest = i
		}
	}
	if rest >= 0 {
		shares[rest] = remainder(shares, rest)
	}
	for i, layer := range v.Layers {
		seats[i] = seat{part: partOf(parts, layer.Part), share: shares[i]}
	}
	return seats
}

// cavity is what a vessel takes.
type cavity struct {
	count     float64
	volume    float64 // mL; 0 where a trial says what it takes
	trial     float64 // g
	seats     []seat
	parts     []float64 // the shares of its seats
	sunk      float64   // mL that embeds displace,
	sunkGrams float64   // and g of embeds at the batter's own density
}

// net gives the volume that a cavity takes of batter.
func (k *cavity) net(density []float64, batter float64) float64 {
	volume := k.volume
	if volume == 0 {
		per := 0.0
		for j, seat := range k.seats {
			per += float64(k.parts[j] * density[seat.part])
		}
		volume = k.trial / per
	}
	return volume - k.sunk - k.sunkGrams/batter
}

// cavities lists what the vessels of one batch take.
func (f *Formula) cavities(s *seated) []cavity {
	cavities := make([]cavity, len(s.each))
	for i := range cavities {
		v, k := &s.vessels[i], &cavities[i]
		k.count, k.seats = float64(s.each[i]), s.layers[i]
		for _, seat := range k.seats {
			k.parts = append(k.parts, seat.share.Float())
		}
		if each, err := v.Trial.Each(); v.Trial.Given() && err == nil {
			k.trial = each.Grams()
		} else if volume, err := v.Shape.Volume(); err == nil {
			k.volume = volume.Millilitres()
		}
		for j := range f.Embeds {
			e := &f.Embeds[j]
			if e.Vessel == v.Name && e.Sunk {
				n := float64(e.each() * v.cuts())
				k.sunk += n * e.Volume.Millilitres()
				k.sunkGrams += n * e.Mass.Grams()
			}
		}
	}
	return cavities
}
