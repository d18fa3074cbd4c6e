package soap

import (
	"cmp"
	"slices"
)

// lightestFirst orders the parts, so that the blender need not be washed between them:
// common practice. A part whose colour is not known goes by what it is declared to look
// like: white before all, pale after those that are lighter than the middle of the scale,
// any last, each in the formula's order.
func (t *Tint) lightestFirst() []string {
	order := make([]*PartTint, len(t.Parts))
	for i := range t.Parts {
		order[i] = &t.Parts[i]
	}
	slices.SortStableFunc(order, func(a, b *PartTint) int { return cmp.Compare(b.place(), a.place()) })
	names := make([]string, len(order))
	for i, p := range order {
		names[i] = p.Name
	}
	return names
}

// place is where a part comes in the order: its lightness, or what stands in for it.
func (t *PartTint) place() float64 {
	switch {
	case t.Lit:
		return t.Lightness
	case t.Look == White:
		return 101
	case t.Look == Pale:
		return 50
	default:
		return -1
	}
}
