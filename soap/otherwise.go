package soap

import (
	"slices"

	"example.com/lyewright/units"
)

// SuperfatIf is what the superfat would be if a figure of the formula were another, with
// everything as it is weighed: as a share of the demand, as [Outlook] has it.
type SuperfatIf struct {
	Batch  units.Ratio // of the batch, at typical values
	Part   string      // the part that comes off worst
	OfPart units.Ratio // of that part, at typical values
	// the low end of what is likely of that part; not given where nothing in it is certain to saponify
	LikelyLow units.Ratio
}

// negative reports whether a part may well be below zero.
func (s *SuperfatIf) negative() bool { return !s.LikelyLow.Given() || s.LikelyLow.Sign() < 0 }

// worse reports whether a part comes off worse than another.
func (s *SuperfatIf) worse(than *SuperfatIf) bool {
	return !s.LikelyLow.Given() || than.LikelyLow.Given() && s.LikelyLow.Compare(than.LikelyLow) < 0
}

// prospects are those of the batch and of its parts, as weighed where they were.
type prospects struct {
	s     *solved
	whole prospect
	parts []prospect
}

// prospects are drawn up once, when a figure is first held against another.
func (j *judge) prospects() *prospects {
	if j.others == nil {
		s := j.s
		if s.real != nil {
			s = s.real
		}
		j.others = &prospects{s: s, whole: s.ofBatch(), parts: make([]prospect, len(s.parts))}
		for i := range s.parts {
			j.others.parts[i] = s.ofPart(i)
		}
	}
	return j.others
}

// with gives the superfat with other figures, which swap puts into a prospect. The weighings
// stay as they are.
func (all *prospects) with(swap func(p *prospect)) SuperfatIf {
	var worst SuperfatIf
	for i := range all.parts {
		of := all.ofPart(i, swap)
		if i == 0 || of.worse(&worst) {
			worst = of
		}
	}
	whole := all.whole.otherwise(swap)
	worst.Batch, _ = whole.at(planned).superfat()
	return worst
}

// ofPart gives the superfat of one part with other figures; that of the batch is not given.
func (all *prospects) ofPart(part int, swap func(p *prospect)) SuperfatIf {
	p := all.parts[part].otherwise(swap)
	e := p.evidence()
	of := SuperfatIf{Part: all.s.parts[part].Name}
	of.OfPart, _ = e.planned.superfat()
	if o, ok := e.outlook(units.Ratio{}, units.Grams(1)); ok {
		of.LikelyLow = o.LikelyLow
	}
	return of
}

// otherwise is a copy of a prospect with other figures.
func (p prospect) otherwise(swap func(p *prospect)) prospect {
	p.oils, p.alkalis = slices.Clone(p.oils), slices.Clone(p.alkalis)
	p.liquids, p.acids = slices.Clone(p.liquids), slices.Clone(p.acids)
	swap(&p)
	return p
}

// swapOils puts other oils in place of those of the same ids.
func swapOils(others []Oil, ids []string) func(p *prospect) {
	return func(p *prospect) {
		for i := range p.oils {
			if at := slices.Index(ids, p.oils[i].oil.ID()); at >= 0 {
				p.oils[i].oil = others[at]
			}
		}
	}
}
