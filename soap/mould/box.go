package mould

import (
	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

// Box is a vessel with straight walls: a loaf. The zero value lacks its dimensions.
type Box struct {
	exact
	Length, Width, Depth units.Length // over 0 mm, to 10 m
	Fill                 units.Ratio  // of its depth, over 0 % to 100 %; not given: full
}

// Volume gives length × width × filled depth. The error is [fault.Faults].
func (s Box) Volume() (units.Volume, error) {
	var c checker
	c.length("length", s.Length)
	c.length("width", s.Width)
	c.length("depth", s.Depth)
	fill := c.fill(s.Fill)
	return c.volume(s.Length.Millimetres() * s.Width.Millimetres() * s.Depth.Millimetres() * fill)
}

// Slab is a flat mould with a liner on its bottom and its four walls. The zero value lacks
// its dimensions.
type Slab struct {
	exact
	Length, Width, Height units.Length // of the mould without the liner: over 0 mm, to 10 m
	Liner                 units.Length // its thickness; zero: none
	Fill                  units.Ratio  // of the height above the liner, over 0 % to 100 %; not given: full
}

// Volume gives what is left inside the liner, filled so far: (length − 2 liners) × (width −
// 2 liners) × (height − liner) × fill. A liner that leaves no room is refused. The error is
// [fault.Faults].
func (s Slab) Volume() (units.Volume, error) {
	var c checker
	c.length("length", s.Length)
	c.length("width", s.Width)
	c.length("height", s.Height)
	l := s.Liner.Millimetres()
	length, width, height := s.Length.Millimetres()-2*l, s.Width.Millimetres()-2*l, s.Height.Millimetres()-l
	switch {
	case l < 0:
		c.faults.Add("liner", s.Liner.String(), "is below 0 mm", "give its thickness, or leave it out", fault.ErrRange)
	case len(c.faults) == 0 && min(length, width, height) <= 0:
		c.faults.Add("liner", s.Liner.String(), "leaves no room in the mould", "give the thickness of the liner", fault.ErrRange)
	}
	fill := c.fill(s.Fill)
	return c.volume(length * width * height * fill)
}

// TaperedBox is a vessel with four slanted walls, wider at the top or at the
// bottom: a loaf tin. The zero value lacks its dimensions.
type TaperedBox struct {
	exact
	TopLength, TopWidth       units.Length // over 0 mm, to 10 m
	BottomLength, BottomWidth units.Length // over 0 mm, to 10 m
	Depth                     units.Length // over 0 mm, to 10 m
	Fill                      units.Ratio  // of its depth, over 0 % to 100 %; not given: full
}

// Volume gives d/6·[(2a+a′)b + (2a′+a)b′] with a and b the sides at the height to
// which it is filled, a′ and b′ those of the bottom, and d that height: the sides
// change evenly with the height, and the area is a square of it. The error is
// [fault.Faults].
func (s TaperedBox) Volume() (units.Volume, error) {
	var c checker
	c.length("top_length", s.TopLength)
	c.length("top_width", s.TopWidth)
	c.length("bottom_length", s.BottomLength)
	c.length("bottom_width", s.BottomWidth)
	c.length("depth", s.Depth)
	fill := c.fill(s.Fill)
	under, beside := s.BottomLength.Millimetres(), s.BottomWidth.Millimetres()
	length, width := between(under, s.TopLength.Millimetres(), fill), between(beside, s.TopWidth.Millimetres(), fill)
	bracket := float64((2*length+under)*width) + float64((2*under+length)*beside)
	return c.volume(s.Depth.Millimetres() * fill / 6 * bracket)
}

// between gives the dimension at a share of the way from the bottom to the top.
func between(bottom, top, share float64) float64 { return bottom + float64(share*(top-bottom)) }
