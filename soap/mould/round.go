package mould

import (
	"math"

	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

// Cylinder is a round vessel with straight walls: a length of pipe, stood on its end. The
// zero value lacks its dimensions.
type Cylinder struct {
	exact
	Diameter, Height units.Length // over 0 mm, to 10 m
	Fill             units.Ratio  // of its height, over 0 % to 100 %; not given: full
}

// Volume gives π/4 × diameter² × filled height. The error is [fault.Faults].
func (s Cylinder) Volume() (units.Volume, error) {
	var c checker
	c.length("diameter", s.Diameter)
	c.length("height", s.Height)
	fill := c.fill(s.Fill)
	d := s.Diameter.Millimetres()
	return c.volume(frustum(d, d, s.Height.Millimetres()*fill))
}

// Frustum is a round vessel with slanted walls: a cup, wider at the top or at the
// bottom. The zero value lacks its dimensions.
type Frustum struct {
	exact
	Top, Bottom units.Length // diameters, over 0 mm, to 10 m
	Height      units.Length // over 0 mm, to 10 m
	Fill        units.Ratio  // of its height, over 0 % to 100 %; not given: full
}

// Volume gives π·h/12·(D² + D·d + d²) with D the diameter at the height h to which
// it is filled and d that of the bottom. The error is [fault.Faults].
func (s Frustum) Volume() (units.Volume, error) {
	var c checker
	c.length("top", s.Top)
	c.length("bottom", s.Bottom)
	c.length("height", s.Height)
	fill := c.fill(s.Fill)
	bottom := s.Bottom.Millimetres()
	return c.volume(frustum(between(bottom, s.Top.Millimetres(), fill), bottom, s.Height.Millimetres()*fill))
}

// HalfSphere is half of a ball, its open side up. The zero value lacks its diameter.
type HalfSphere struct {
	exact
	Diameter units.Length // over 0 mm, to 10 m
	Fill     units.Ratio  // of its height, half the diameter: over 0 % to 100 %; not given: full
}

// Volume gives the cap of the ball up to the height h to which it is filled,
// π·h²·(3·r − h)/3. The error is [fault.Faults].
func (s HalfSphere) Volume() (units.Volume, error) {
	var c checker
	c.length("diameter", s.Diameter)
	r := s.Diameter.Millimetres() / 2
	h := float64(r * c.fill(s.Fill))
	return c.volume(math.Pi * h * h * (float64(3*r) - h) / 3)
}

// Cone is a piped top: a swirl, narrower at its tip, with air between its turns. The zero
// value lacks its dimensions.
type Cone struct {
	Base   units.Length // diameter, over 0 mm, to 10 m
	Tip    units.Length // diameter, 0 mm to that of the base
	Height units.Length // over 0 mm, to 10 m
	Fill   units.Ratio  // of its volume, what is batter and not air: over 0 % to 100 %; not given: all
}

// Volume gives π·h/12·(D² + D·d + d²), with D the base's diameter and d the tip's, of
// which Fill is batter. It is only a model of a hand with a piping bag: see [Cone.Spread].
// A tip wider than the base is refused ([fault.ErrConflict]). The error is [fault.Faults].
func (s Cone) Volume() (units.Volume, error) {
	var c checker
	c.length("base", s.Base)
	switch {
	case s.Tip.Sign() < 0:
		c.faults.Add("tip", s.Tip.String(), "is below 0 mm", "give its diameter", fault.ErrRange)
	case s.Tip.Compare(s.Base) > 0 && s.Base.Sign() > 0:
		c.faults.Add("tip", s.Tip.String(), "is wider than the base", "exchange the two", fault.ErrConflict)
	}
	c.length("height", s.Height)
	fill := c.fill(s.Fill)
	return c.volume(frustum(s.Base.Millimetres(), s.Tip.Millimetres(), s.Height.Millimetres()) * fill)
}

// Spread is 15 % of the volume either way: a guess of ours, without a source, until a
// [Trial] replaces it.
func (Cone) Spread() units.Ratio { return units.Percent(15) }

// frustum gives the volume of a cone that is cut off.
func frustum(top, bottom, height float64) float64 {
	return math.Pi * height / 12 * (float64(top*top) + float64(top*bottom) + float64(bottom*bottom))
}
