package soap

import (
	"errors"
	"slices"

	"example.com/lyewright/colour"
	"example.com/lyewright/colour/tint"
	"example.com/lyewright/units"
)

// matching is what came of the loads that were looked for.
type matching struct {
	calibration tint.Calibration
	parts       []sought
}

// sought is what came of one part; found is nil where nothing was looked for.
type sought struct {
	found    *tint.Matched
	lines    []Match
	target   tint.Lab
	wanted   question // of which the loads were found
	unpriced bool     // some have a price, and some have none: none counted
}

// matched works out a formula that leaves some loads to be looked for. How much oil a
// batter has says what the most of a colourant is, and what is held back for carriers
// moves that a little: it goes round until the loads come to rest.
func (f *Formula) matched(my mine) (*Batch, error) {
	calibration, err := f.calibrated(my.run.ctx, my.colours, "the batch is")
	if err != nil {
		return nil, err
	}
	g := f.clone()
	for i := range g.Parts {
		g.Parts[i].Match = nil
	}
	g.Weighed = Weighed{} // loads are looked for as planned: what was weighed is judged by them
	b, s, err := g.loaded(my)
	if err != nil {
		return nil, err
	}
	m := &matching{calibration: calibration, parts: make([]sought, len(f.Parts))}
	for range matchRounds {
		settled := true
		for i := range f.Parts {
			if len(f.Parts[i].Match) == 0 {
				continue
			}
			w, now := f.wanted(b, i, m.calibration, &my)
			cost := matchSteps(len(w.Free), m.calibration.Bands().Count)
			if last := &m.parts[i]; last.found != nil && (last.wanted.close(&w) || my.run.left < cost) {
				continue // of what did not move the loads do not; else they are a thousandth off the best at most
			}
			if faults := my.run.spend(cost); len(faults) > 0 {
				return nil, faults
			}
			err := f.seek(&now, w, i, m.calibration, my.run)
			if err != nil {
				return nil, err
			}
			settled = settled && m.parts[i].found != nil && sameLoads(now.found, m.parts[i].found)
			m.parts[i] = now
			g.Parts[i].Colourants = f.withLoads(i, now.found)
		}
		if settled {
			break
		}
		if b, s, err = g.loaded(my); err != nil {
			return nil, err
		}
	}
	if g.Weighed = f.Weighed; g.Weighed.Stage != NotWeighed {
		if b, s, err = g.loaded(my); err != nil {
			return nil, err
		}
	}
	if err := b.judge(s); err != nil {
		return nil, err
	}
	b.Formula, b.matching = f.clone(), m
	return b, nil
}

// matchRounds is enough: each round the batter moves by a hundredth of what it moved
// the time before.
const matchRounds = 6

func sameLoads(a, b *tint.Matched) bool {
	for i := range a.Loads {
		if a.At[i] != b.At[i] || !a.Loads[i].Round(9, units.Nearest).Equal(b.Loads[i].Round(9, units.Nearest)) {
			return false
		}
	}
	return true
}

// under puts a path before those of faults.
func under(path string, err error) error {
	var faults Faults
	if !errors.As(err, &faults) {
		return err
	}
	placed := make(Faults, len(faults))
	for i, f := range faults {
		switch {
		case path == "":
		case f.Path == "" || f.Path[0] == '[':
			f.Path = path + f.Path
		default:
			f.Path = path + "." + f.Path
		}
		placed[i] = f
	}
	return placed
}

// amounts are what loads of the part are shares of.
func (p *PartBatch) amounts() colour.Amounts {
	return colour.Amounts{Oils: p.Oils, Batter: p.Batter, Dry: p.Dry}
}

// share gives a load as a share of the part's batter.
func (load *Load) share(of colour.Amounts) units.Ratio {
	switch {
	case load.OfBatter.Given():
		return load.OfBatter
	case load.OfOils.Given():
		return of.Convert(colour.Load{Of: colour.OfOils, Share: load.OfOils}, colour.OfBatter).Share
	default:
		return of.Load(load.Mass, colour.OfBatter).Share
	}
}

// wanted is what is asked of a part whose loads are looked for, beside its own colourants as
// they are weighed.
func (f *Formula) wanted(b *Batch, part int, calibration tint.Calibration, my *mine) (tint.Wanted, sought) {
	p, line := &b.Parts[part], &f.Parts[part]
	target, _ := line.Target.lab(calibration.Bands())
	w := tint.Wanted{Target: target}
	for k := range p.Additions {
		if a := &p.Additions[k]; a.Kind == Colourant && line.lists(a.Name) {
			share, _ := a.Pigment().Per(p.Batter)
			w.Fixed = append(w.Fixed, tint.Load{Colourant: a.Name, OfBatter: share})
		}
	}
	priced := 0
	for i := range line.Match {
		m := &line.Match[i]
		free := tint.Free{Colourant: m.Colourant, Most: m.Most.share(p.amounts())}
		if free.Most.Compare(units.Whole(1)) > 0 {
			free.Most = units.Whole(1) // a mass beyond the batter: no more than that is tried
		}
		if price := my.colourOf(m.Colourant).Price().Of(units.Grams(1)); price.Given() {
			priced++
			free.Price = price.Float()
		}
		w.Free = append(w.Free, free)
	}
	if priced < len(w.Free) {
		for i := range w.Free {
			w.Free[i].Price = 0
		}
	}
	return w, sought{lines: slices.Clone(line.Match), target: target, unpriced: priced > 0 && priced < len(w.Free)}
}

// seek looks for the loads of a part.
func (f *Formula) seek(s *sought, w tint.Wanted, part int, calibration tint.Calibration, run *run) error {
	found, err := calibration.MatchContext(run.ctx, w)
	if faults := run.look(); len(faults) > 0 {
		return faults
	}
	s.found, s.wanted = &found, question{w}
	return under(itemPath("parts", part), err)
}

// question is what was looked for.
type question struct{ tint.Wanted }

// close reports whether another question is the same to a billionth of the batter, as far as
// loads have to come to rest.
func (q *question) close(other *tint.Wanted) bool {
	same := func(a, b units.Ratio) bool { return a.Round(9, units.Nearest).Equal(b.Round(9, units.Nearest)) }
	if q.Target != other.Target || len(q.Fixed) != len(other.Fixed) || len(q.Free) != len(other.Free) {
		return false
	}
	for i := range q.Fixed {
		if q.Fixed[i].Colourant != other.Fixed[i].Colourant || !same(q.Fixed[i].OfBatter, other.Fixed[i].OfBatter) {
			return false
		}
	}
	for i := range q.Free {
		a, b := &q.Free[i], &other.Free[i]
		if a.Colourant != b.Colourant || a.Price != b.Price || !same(a.Most, b.Most) {
			return false
		}
	}
	return true
}

// lists reports whether a colourant stands in the part with a load.
func (p *Part) lists(colourant string) bool {
	for i := range p.Colourants {
		if p.Colourants[i].Name == colourant {
			return true
		}
	}
	return false
}

// withLoads gives the colourants of a part with those that were looked for. What is at its
// most gets that as it is written.
func (f *Formula) withLoads(part int, found *tint.Matched) []Addition {
	line := &f.Parts[part]
	list := append([]Addition(nil), line.Colourants...)
	for i := range line.Match {
		m := &line.Match[i]
		a := Addition{
			Name: m.Colourant, Load: Load{OfBatter: found.Loads[i]}, Carrier: m.Carrier, Unlisted: m.Unlisted,
			asked: m.asked, match: i + 1,
		}
		switch found.At[i] {
		case tint.AtMost:
			a.Load = m.Most
		case tint.AtNone:
			if !f.Weighed.adds(line.Name, m.Colourant) {
				continue
			}
			a.Load = Load{} // it was added all the same
		}
		list = append(list, a)
	}
	return list
}

// Pigment is how much of an addition is really weighed, as the scale shows it: of a paste
// its part in that.
func (a *AdditionWeighing) Pigment() units.Mass {
	if a.Paste.Mass.Sign() == 0 {
		return a.Weigh
	}
	share, _ := a.Mass.Per(a.Paste.Mass)
	return product(a.Paste.Weigh, share, units.Nearest)
}

// CarrierRatio is how many parts of the carrier go to one of the addition; not given where
// there is no carrier.
func (a *AdditionWeighing) CarrierRatio() units.Ratio { return a.ratio }
