package mould

import (
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

// Shape is the inside of a vessel. All its dimensions are inside ones. The shapes of this
// package hold over a nanolitre and up to 1000 L, and refuse to be less or more.
type Shape interface {
	// Volume gives what it holds when it is filled as asked. The error is
	// fault.Faults with the keys of a formula file as paths.
	Volume() (units.Volume, error)
	// Spread is how far off that may be either way, as a share of it: 0 % where
	// a shape is what it is measured to be.
	Spread() units.Ratio
}

// exact is embedded in shapes that are what they are measured to be.
type exact struct{}

// Spread is 0 %.
func (exact) Spread() units.Ratio { return units.Whole(0) }

// Measured is a vessel of known volume. The zero value lacks it.
type Measured struct {
	exact
	Content units.Volume // over 0 mL, to 1000 L
}

// Volume gives the volume. The error is [fault.Faults].
func (m Measured) Volume() (units.Volume, error) {
	var c checker
	switch {
	case m.Content.Sign() <= 0:
		c.faults.Add("", m.Content.String(), "is not above 0 mL", "give what it holds", fault.ErrRange)
	case m.Content.Compare(units.Millilitres(mostMillilitres)) > 0:
		c.faults.Add("", m.Content.String(), "is more than 1000 L", "write at most 1000 L", fault.ErrRange)
	}
	return c.holds(m.Content)
}

// WaterFill is a vessel known by the water that fills it: put it on the scale, and fill it
// to where the batter is to stand. The zero value lacks the water.
type WaterFill struct {
	exact
	Mass units.Mass        // of the water: over 0 g, to a tonne and to that of 1000 L
	At   units.Temperature // of the water, 0 °C to 100 °C
}

// Volume gives the mass of water over its density (see [lye.DensityOfWater]). The
// error is [fault.Faults].
func (w WaterFill) Volume() (units.Volume, error) {
	var c checker
	switch {
	case w.Mass.Sign() <= 0:
		c.faults.Add("mass", w.Mass.String(), "is not above 0 g", "give the water that fills it", fault.ErrRange)
	case w.Mass.Compare(units.Grams(units.Tonne)) > 0:
		c.faults.Add("mass", w.Mass.String(), "is more than a tonne", "write at most 1000 kg", fault.ErrRange)
	}
	density, err := lye.DensityOfWater(w.At)
	if bad, ok := err.(fault.Faults); ok {
		c.faults = append(c.faults, bad...)
	}
	v, _ := density.Volume(w.Mass)
	return c.holds(v)
}

// Coat is a layer of one thickness on a surface. The zero value lacks its dimensions.
type Coat struct {
	exact
	Area      units.Area   // over 0 mm², to 100 m²
	Thickness units.Length // over 0 mm, to 10 m
}

// Volume gives area × thickness. The error is [fault.Faults].
func (s Coat) Volume() (units.Volume, error) {
	var c checker
	switch {
	case s.Area.Sign() <= 0:
		c.faults.Add("area", s.Area.String(), "is not above 0 mm²", "give the surface that is coated", fault.ErrRange)
	case s.Area.Compare(units.SquareMillimetres(100_000_000)) > 0:
		c.faults.Add("area", s.Area.String(), "is more than 100 m²", "write at most 100 m²", fault.ErrRange)
	}
	c.length("thickness", s.Thickness)
	return c.volume(s.Area.SquareMillimetres() * s.Thickness.Millimetres())
}

// checker collects what is wrong with a shape.
type checker struct{ faults fault.Faults }

func (c *checker) length(path string, l units.Length) {
	switch {
	case l.Sign() <= 0:
		c.faults.Add(path, l.String(), "is not above 0 mm", "give the inside dimension", fault.ErrRange)
	case l.Compare(units.Millimetres(10_000)) > 0:
		c.faults.Add(path, l.String(), "is more than 10 m", "write at most 10 m", fault.ErrRange)
	}
}

// fill checks how far a vessel is filled, and gives it as a float: 1 where it is
// not given.
func (c *checker) fill(fill units.Ratio) float64 {
	fill = fill.Or(units.Whole(1))
	switch {
	case fill.Sign() <= 0:
		c.faults.Add("fill", fill.PercentText(12)+" %", "is not above 0 %", "leave it out for a full vessel", fault.ErrRange)
	case fill.Compare(units.Whole(1)) > 0:
		c.faults.Add("fill", fill.PercentText(12)+" %", "is above 100 %", "write at most 100 %", fault.ErrRange)
	}
	return fill.Float()
}

// volume rounds cubic millimetres to a volume, unless something is wrong.
func (c *checker) volume(cubicMillimetres float64) (units.Volume, error) {
	if len(c.faults) > 0 {
		return units.Volume{}, c.faults
	}
	v, ok := units.VolumeOfFloat(cubicMillimetres / 1000)
	if !ok {
		v = units.Millilitres(mostMillilitres + 1)
	}
	return c.holds(v)
}

// mostMillilitres is the largest volume of a vessel.
const mostMillilitres = 1_000_000

// holds gives a volume, unless something is wrong or it is no vessel's.
func (c *checker) holds(v units.Volume) (units.Volume, error) {
	switch {
	case len(c.faults) > 0:
	case v.Sign() <= 0:
		c.faults.Add("", "", "holds less than a nanolitre", "check its dimensions and their units", fault.ErrRange)
	case v.Compare(units.Millilitres(mostMillilitres)) > 0:
		c.faults.Add("", "", "holds more than 1000 L", "check its dimensions and their units", fault.ErrRange)
	default:
		return v, nil
	}
	return units.Volume{}, c.faults
}
