package soap

import (
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// weighed judges what was really weighed by itself: a lye that does not dissolve. What it
// comes to is judged where the plan would be.
func (j *judge) weighed() {
	r := j.b.Weighed
	if r == nil || !r.Lye.Undissolved {
		return
	}
	f := Finding{
		Code: "lye-undissolved", Severity: Danger, Subject: "weighed", Value: settled(r.Lye.Strength), Limit: j.s.real.saturates(&r.Lye), Unit: "%",
		Source: cite.Source{How: cite.Computed}, Detail: inBatter,
	}
	if len(j.b.Alkalis) == 1 {
		f.Source = j.b.Alkalis[0].Alkali.SaturationSource()
	}
	if r.Stage == AtLye {
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
