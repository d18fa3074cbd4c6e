package soap

import (
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// weighed judges what was really weighed by itself: a lye that does not dissolve, readings
// far below their plan. What it comes to is judged where the plan would be.
func (j *judge) weighed() {
	if j.b.Weighed == nil {
		return
	}
	if j.b.Weighed.Lye.Undissolved {
		j.undissolved(j.b.Weighed)
	}
	grams := func(m units.Mass) string { return m.Text(units.Gram, 2) + " g" }
	for _, far := range j.s.real.read.far {
		f := Finding{
			Code: "weighed-far", Severity: Warning, Subject: far.path, Limit: units.Whole(1).Over(units.Whole(3)), Unit: "%",
			Source: commonSource(), Names: []string{far.name, grams(far.reading), grams(far.plan)},
		}
		f.Value, _ = far.reading.Per(far.plan)
		if far.doubted && j.b.Weighed.Stage != AtMoulds && (j.b.Weighed.Stage == AtLye || !j.b.Weighed.Lye.Undissolved) {
			f.Detail = weighAgain
		}
		j.add(f)
	}
}

// undissolved says that the lye as weighed holds more alkali than dissolves.
func (j *judge) undissolved(r *Reckoning) {
	f := Finding{
		Code: "lye-undissolved", Severity: Danger, Subject: "weighed", Value: settled(r.Lye.Strength),
		Limit: j.s.real.saturates(&r.Lye), Unit: "%",
		Source: cite.Source{How: cite.Computed}, Detail: inBatter,
	}
	if len(j.b.Alkalis) == 1 {
		f.Source = j.b.Alkalis[0].Alkali.SaturationSource()
	}
	switch {
	case r.Stage == AtLye && r.Lye.Dry:
		f.Detail = dryInJug
	case r.Stage == AtLye:
		f.Detail = inJug
	}
	j.add(f)
}

// saturates gives the strength at which no more of a lye's hydroxides dissolves at 20 °C, in
// the proportions in which they are in it.
func (s *solved) saturates(l *Lye) units.Ratio {
	filled, full := s.filledLye()
	share, _ := filled.Per(full)
	return l.Strength.Over(share).Round(9, units.Nearest)
}
