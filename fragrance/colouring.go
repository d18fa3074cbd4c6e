package fragrance

import (
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// Colouring is something in a fragrance that may colour the soap. No share is
// published at which it begins. It comes from [Material.Colours].
type Colouring struct {
	Substance string      // "vanillin"; empty of a material that is coloured itself, or said to brown
	Does      string      // what it does to the soap, in words
	How       cite.How    // how that is known
	Share     units.Ratio // of the material; not given where it is not known
}

// Colours lists what in a material may colour the soap, each with its share of the
// material at the unlucky end; of one substance the highest figure of any source.
func (m Material) Colours() []Colouring {
	var list []Colouring
	add := func(c Colouring) {
		for i := range list {
			if list[i].Substance == c.Substance && list[i].Does == c.Does {
				if c.Share.Given() { // what it does differs where no share is known
					list[i].Share = list[i].Share.Add(c.Share)
				}
				return
			}
		}
		list = append(list, c)
	}
	for _, p := range m.get().parts {
		for _, c := range p.m.colouring {
			if c.Share.Given() {
				c.Share = c.Share.Times(p.share)
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
