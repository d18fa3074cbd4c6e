package soap

import (
	"slices"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/units"
)

func cloneMaterials(materials []fragrance.Supplied) []fragrance.Supplied {
	materials = slices.Clone(materials)
	for i := range materials {
		m := &materials[i]
		m.Certificates, m.Constituents = slices.Clone(m.Certificates), slices.Clone(m.Constituents)
		m.Allergens, m.Blend = slices.Clone(m.Allergens), slices.Clone(m.Blend)
	}
	return materials
}

// knowsFragrance reports whether something is known of a fragrance.
func (f *Formula) knowsFragrance(id string) bool {
	return fragrance.Known(id) || f.ownFragrance(id)
}

// ownFragrance reports whether it is one of the formula's own.
func (f *Formula) ownFragrance(id string) bool {
	return slices.ContainsFunc(f.Materials, func(m fragrance.Supplied) bool { return m.ID == id })
}

// scented reports whether something is known of one of the part's fragrances.
func (p *PartBatch) scented() bool {
	return slices.ContainsFunc(p.Additions, func(a AdditionWeighing) bool { return a.Material.Given() })
}

// doses lists the fragrances of a part. They are weighed downwards, so that what was worked
// out is the larger of the two. Of one that is only a name nothing is known but its mass.
func (p *PartBatch) doses() []fragrance.Dose {
	var doses []fragrance.Dose
	for i := range p.Additions {
		a := &p.Additions[i]
		if a.Kind != Fragrance {
			continue
		}
		d := fragrance.Dose{Material: a.Material, Mass: a.Mass, Beside: a.beside(p.Share)}
		if !d.Material.Given() {
			d.Material = fragrance.Unknown(a.Name)
		}
		doses = append(doses, d)
	}
	return doses
}

// beside gives the dry mass of a carrier that comes and goes with an addition, per mass
// of it. Oil that is held back leaves the pot, and with it this part's share of the pot.
func (a *AdditionWeighing) beside(share units.Ratio) units.Ratio {
	if a.Carrier == nil || a.Carrier.In == InWater {
		return units.Ratio{}
	}
	ratio := a.ratio
	if a.Carrier.In == InOil {
		formed := waterFormed(units.Sum{}.Plus(units.Grams(1), a.Carrier.Oil.FreeAcid()))
		dry, _ := units.Grams(1).Sub(formed).Per(units.Grams(1))
		ratio = ratio.Times(dry)
	}
	if a.Carrier.From == FromFormula {
		ratio = ratio.Times(share.Rest())
	}
	return ratio
}

// verdict holds the fragrances of a part against the rules: as weighed, where it was.
func (b *Batch) verdict(part int) fragrance.Verdict {
	p := b.judgedPart(part)
	return fragrance.Judge(b.Formula.law(), p.Dry, p.doses())
}
