package units

// Range is a figure that is known only to lie between two ends, as published
// values of natural goods are, with the value to plan at. What it is a figure of,
// and of what a percentage is one, is said where it stands. The zero value is not
// given. It is plain data: [Range.Ordered] says whether its ends are in order.
type Range struct {
	Low     Ratio // the lower end
	Typical Ratio // the value to plan at; not given: the middle of the ends
	High    Ratio // the upper end
}

// Between gives the range between two ends, planned at its middle. It does not put
// them in order.
func Between(low, high Ratio) Range { return Range{Low: low, High: high} }

// Exactly gives a range of no width: a single value, taken as exact.
func Exactly(value Ratio) Range { return Range{Low: value, Typical: value, High: value} }

// Given reports whether both ends are given.
func (r Range) Given() bool { return r.Low.Given() && r.High.Given() }

// Single reports whether the range is given and has no width.
func (r Range) Single() bool { return r.Given() && r.Low.Equal(r.High) }

// Middle gives the mean of the two ends, exactly; not given where one of them is not.
func (r Range) Middle() Ratio { return r.Low.Add(r.High).Times(Percent(50)) }

// Plan gives the value to plan at: Typical, or the middle where that is not
// given.
func (r Range) Plan() Ratio {
	if r.Typical.Given() {
		return r.Typical
	}
	return r.Middle()
}

// Ordered reports whether the range is given and Low <= Plan <= High.
func (r Range) Ordered() bool {
	return r.Given() && r.Low.Compare(r.High) <= 0 &&
		r.Low.Compare(r.Plan()) <= 0 && r.Plan().Compare(r.High) <= 0
}

// Equal reports whether two ranges have the same ends and the same value to
// plan at.
func (r Range) Equal(s Range) bool {
	return r.Low.Equal(s.Low) && r.High.Equal(s.High) && r.Plan().Equal(s.Plan())
}
