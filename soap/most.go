package soap

import (
	"slices"

	"example.com/lyewright/units"
)

// asksMost reports whether the most of some fragrance is asked for.
func (f *Formula) asksMost() bool {
	return slices.ContainsFunc(f.Parts, func(p Part) bool {
		return slices.ContainsFunc(p.Fragrances, func(a Addition) bool { return a.Load.Max })
	})
}

// wanted is a fragrance of which the most is asked for.
type wanted struct{ part, line int }

// most works out a formula that asks for the most of some fragrances. What goes into a
// part decides its dry mass, that decides the most, and with vessels the batter, too:
// it goes round, with a load of oils in place of every "max", until none changes.
func (f *Formula) most(my mine) (*Batch, *solved, error) {
	g := f.clone()
	g.Weighed = Weighed{} // the most is that of the plan: what was weighed is judged by it
	var all []wanted
	for i := range g.Parts {
		for j := range g.Parts[i].Fragrances {
			if load := &g.Parts[i].Fragrances[j].Load; load.Max {
				all = append(all, wanted{i, j})
				*load = Load{}
			}
		}
	}
	for range mostRounds {
		b, s, faults := g.work(my)
		if len(faults) > 0 {
			return nil, nil, faults
		}
		settled := true
		for _, w := range all {
			if faults := my.run.spend(10 * len(b.Parts[w.part].Additions)); len(faults) > 0 {
				return nil, nil, faults
			}
			now, next, fault := b.roomFor(f, w)
			if fault != nil {
				faults = append(faults, *fault)
				continue
			}
			// A mass that leaves no more than some nanograms of room is the most: the
			// roundings of all the others go to and fro.
			room := next.Sub(now)
			if now.Sign() == 0 || room.Sign() < 0 || !dust(room) {
				settled = false
				// Not [units.Mass.Per]: of a quotient of twelve decimals a large batch would make
				// some nanograms more than there is room for, round after round.
				g.Parts[w.part].Fragrances[w.line].Load.OfOils = inGrams(next).Over(inGrams(b.OilsTotal)).Over(b.Parts[w.part].Share)
			}
		}
		if len(faults) > 0 {
			return nil, nil, faults
		}
		if settled {
			if g.Weighed = f.Weighed; g.Weighed.Stage != NotWeighed {
				if b, s, faults = g.work(my); len(faults) > 0 {
					return nil, nil, faults
				}
			}
			b.Formula = f.clone()
			return b, s, nil
		}
	}
	return nil, nil, Faults{{
		Path: itemPath("parts", all[0].part) + "." + itemPath("fragrances", all[0].line) + ".load", Text: "max", Kind: ErrImpossible,
		Reason: "does not come to rest: what fills the vessels, and the most that goes into it, drive each other", Remedy: "give a load",
	}}
}

// roomFor gives what a batch has of a fragrance, and the most that it has room for, less
// its margin: down to a microgram, so that it can be written down in full.
func (b *Batch) roomFor(f *Formula, w wanted) (now, most units.Mass, fault *Fault) {
	r := b.verdict(w.part).Of(w.line)
	path := itemPath("parts", w.part) + "." + itemPath("fragrances", w.line) + ".load"
	switch {
	case !r.Limited:
		return now, most, &Fault{Path: path, Text: "max", Reason: "asks for the most of " + units.Quote(r.Material.ID()) + ", and no limit that is held binds it here", Remedy: "give a load: a limit that is not held may bind it still", Kind: ErrImpossible}
	case r.Most.Sign() == 0:
		return now, most, &Fault{Path: path, Text: "max", Reason: "leaves nothing for " + units.Quote(r.Material.ID()) + ": the part's other fragrances use a limit up", Remedy: "lower theirs", Kind: ErrImpossible}
	}
	margin := f.Parts[w.part].Fragrances[w.line].Margin
	most = product(r.Most, margin.Or(units.Whole(0)).Rest(), units.Down)
	return r.Mass, most.Round(microgram(), units.Down), nil
}
