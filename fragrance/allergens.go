package fragrance

import (
	"cmp"
	"slices"

	"example.com/lyewright/units"
)

// Allergen is a fragrance allergen that a label may have to name. It comes from
// [Verdict.Allergens].
type Allergen struct {
	Rule  Rule        // the entry: name, list and source
	OfDry units.Ratio // of the dry mass, at the unlucky end, to 10^-8
	// Bound: some material is said to hold it and not how much, so that OfDry counts all
	// of that material.
	Bound bool
}

// Allergens lists the allergens above the threshold of a rinse-off product, 0.01 % of the
// dry mass ([Lists.Threshold]), in the order of the entries; what reaches it exactly does
// not exceed it. complete is false where the allergens of some material are not listed: the
// list is then what is known, and never says that there are no others.
func (v Verdict) Allergens() (list []Allergen, complete bool) {
	complete = true
	type amount struct {
		rule  *rule
		mass  units.Sum
		bound bool
	}
	var amounts []amount
	add := func(r *rule, mass units.Mass, share units.Ratio, bound bool) {
		i := slices.IndexFunc(amounts, func(a amount) bool { return a.rule == r })
		if i < 0 {
			i, amounts = len(amounts), append(amounts, amount{rule: r})
		}
		amounts[i].mass = amounts[i].mass.Plus(mass, share)
		amounts[i].bound = amounts[i].bound || bound
	}
	for _, d := range v.doses {
		complete = complete && d.Material.AllergensListed()
		for _, p := range d.Material.get().parts {
			for _, b := range p.m.labels {
				add(b.rule, d.Mass, b.share.Times(p.share), false)
			}
			for _, r := range p.m.named {
				add(r, d.Mass, p.share, true)
			}
		}
	}
	limit := units.Sum{}.Plus(v.dry, AllergenLists().Threshold)
	dry := units.Sum{}.Plus(v.dry, units.Whole(1))
	for _, a := range amounts {
		if a.mass.Compare(limit) > 0 { // equal to the threshold does not exceed it
			of, _ := a.mass.Per(dry)
			list = append(list, Allergen{Rule: Rule{a.rule}, OfDry: of.Round(shown, units.Nearest), Bound: a.bound})
		}
	}
	slices.SortFunc(list, func(a, b Allergen) int { return cmp.Compare(a.Rule.r.index, b.Rule.r.index) })
	return list, complete
}
