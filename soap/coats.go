package soap

import "example.com/lyewright/soap/mould"

// coats predicts the thin layers that vessels ask of a part, each on what fills the vessel
// below it.
func (t *Tint) coats(vessels []Vessel) error {
	for i := range vessels {
		v := &vessels[i]
		coat, thin := v.Shape.(mould.Coat)
		below := vesselOf(vessels, v.On)
		if !thin || v.On == "" || below < 0 {
			continue
		}
		top, under := t.part(v.Part), t.part(vessels[below].top())
		if top == nil || under == nil {
			continue
		}
		c := Coat{Vessel: v.Name, On: v.On, Under: under.Name, Thickness: coat.Thickness}
		if t.Fit.Thin() && top.Colour != nil && under.Colour != nil {
			colour, err := t.Fit.Layer(top.mixture(), coat.Thickness, under.mixture())
			if err != nil {
				return err
			}
			c.Colour = &colour
		}
		top.Coats = append(top.Coats, c)
	}
	return nil
}

// top is the part that lies uppermost in a vessel.
func (v *Vessel) top() string {
	if len(v.Layers) > 0 {
		return v.Layers[len(v.Layers)-1].Part
	}
	return v.Part
}

// part finds a part by its name; in a batch of one part that is always it.
func (t *Tint) part(name string) *PartTint {
	for i := range t.Parts {
		if t.Parts[i].Name == name || len(t.Parts) == 1 {
			return &t.Parts[i]
		}
	}
	return nil
}
