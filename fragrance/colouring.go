package fragrance

import (
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// Colouring is something in a fragrance that may colour the soap. No share is
// published at which it begins.
type Colouring struct {
	Substance string      // "vanillin"; empty of a material that is coloured itself, or said to brown
	Does      string      // in words
	How       cite.How    // how that is known
	Share     units.Ratio // of the material; not given where it is not known

	share  units.Ratio // of the material
	source cite.Source // of the share
}

// Colours lists what in a material may colour the soap, each with its share of the
// material at the unlucky end; of one substance the highest figure of any source.
func (m Material) Colours() []Colouring {
	var list []Colouring
	add := func(c Colouring) {
		for i := range list {
			if list[i].Substance == c.Substance && list[i].Does == c.Does {
				if c.Share.Given() {
					list[i].Share = list[i].Share.Add(c.Share)
				}
				return
			}
		}
		list = append(list, c)
	}
	for _, p := range m.get().parts {
		for _, c := range p.m.substances() {
			if c.share.Given() {
				c.Share = c.share.Times(p.share)
			}
			add(c)
		}
		if p.m.coloured {
			add(Colouring{Does: "is coloured from the start", How: cite.CommonPractice})
		}
	}
	if m.Behaviour()&Browns != 0 {
		add(Colouring{Does: "browns, as whoever brought it says", How: cite.Given})
	}
	return list
}

// substances sums the isomers of a source, and takes the highest of the sources.
func (m *material) substances() []Colouring {
	var best, now []Colouring
	end := func() {
		for _, c := range now {
			known := false
			for i := range best {
				if best[i].Substance != c.Substance {
					continue
				}
				if known = true; c.share.Given() && c.share.Compare(best[i].share) > 0 {
					best[i] = c
				}
			}
			if !known {
				best = append(best, c)
			}
		}
		now = now[:0]
	}
	for i, c := range m.colouring {
		if i > 0 && c.source != m.colouring[i-1].source {
			end()
		}
		summed := false
		for j := range now {
			if now[j].Substance == c.Substance && now[j].share.Given() && c.share.Given() {
				now[j].share, summed = now[j].share.Add(c.share), true
			}
		}
		if !summed {
			now = append(now, c)
		}
	}
	end()
	return best
}
