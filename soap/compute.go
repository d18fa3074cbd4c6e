package soap

import (
	"context"
	"slices"
	"strconv"

	"example.com/lyewright/internal/molar"
	"example.com/lyewright/units"
)

// Batch works the formula out. It is a pure function: the same formula always
// gives the same batch. The error is [Faults]: those of [Formula.Check], or,
// where there are none, what only the working shows, an [ErrImpossible] (carriers that
// take more than there is, a lye too strong to dissolve, a scale too coarse) or, of a
// slipped reading, an [ErrRange]. The batch beside an error is the zero value. A formula
// that is in order but unsafe or unwise gives a batch with findings.
func (f Formula) Batch() (Batch, error) { return f.BatchContext(context.Background()) }

// BatchContext is [Formula.Batch] with a context: work stops within 10 ms of its end, and the
// error then wraps that of the context. Nothing else of the batch depends on it.
func (f Formula) BatchContext(ctx context.Context) (Batch, error) {
	if ctx.Err() != nil {
		return Batch{}, stopped("the batch is", ctx)
	}
	f = *f.named()
	my, err := f.checked(ctx)
	if ctx.Err() != nil {
		return Batch{}, stopped("the batch is", ctx)
	}
	if err != nil {
		return Batch{}, err
	}
	my.run = newRun(ctx)
	my.run.remember = f.matches() || f.asksMost() || f.lines() > 100
	var b *Batch
	if f.matches() {
		b, err = f.matched(my)
	} else {
		var s *solved
		if b, s, err = f.loaded(my); err == nil {
			err = b.judge(s)
		}
	}
	if err != nil {
		return Batch{}, my.run.told("the batch is", err)
	}
	return *b, nil
}

// loaded works out a formula that is in order, and in which every colourant has its load,
// but for its findings.
func (f *Formula) loaded(my mine) (*Batch, *solved, error) {
	if f.asksMost() {
		return f.most(my)
	}
	b, s, faults := f.work(my)
	return b, s, faults.OrNil()
}

// work works out a formula that is in order, but for its findings. Where a promise cannot
// be kept because no batch can be made at all, the reason is the one that a plan of the
// same superfat has.
func (f *Formula) work(my mine) (*Batch, *solved, Faults) {
	b, s, faults := f.workAsAsked(my)
	if least := f.Superfat.AtLeast; len(faults) > 0 && least.Given() {
		plan := *f
		plan.Superfat = Superfat{Planned: least}
		if faults[0].Kind == errStopped || faults[0].Kind == ErrLimit {
			return b, s, faults
		}
		if _, _, hinders := plan.workAsAsked(my); len(hinders) > 0 {
			return nil, nil, hinders
		}
	}
	return b, s, faults
}

func (f *Formula) workAsAsked(my mine) (*Batch, *solved, Faults) {
	if faults := my.run.spend(f.lines()); len(faults) > 0 {
		return nil, nil, faults
	}
	s := f.layout(my)
	superfat, faults := s.planSuperfat()
	if len(faults) > 0 {
		return nil, nil, faults
	}
	if faults := my.run.look(); len(faults) > 0 {
		return nil, nil, faults
	}
	s.solve(superfat)
	if faults := s.impossible(); len(faults) > 0 {
		return nil, nil, faults
	}
	if faults := my.run.look(); len(faults) > 0 {
		return nil, nil, faults
	}
	if faults := s.emptyPromise(); len(faults) > 0 {
		return nil, nil, faults
	}
	b := s.batch()
	if faults := my.run.look(); len(faults) > 0 {
		return nil, nil, faults
	}
	if faults := s.judge(b); len(faults) > 0 {
		return nil, nil, faults
	}
	if f.keepsBack() {
		if faults := s.share(b); len(faults) > 0 {
			return nil, nil, faults
		}
	}
	if len(f.Size.Vessels) > 0 {
		if faults := s.intoVessels(b); len(faults) > 0 {
			return nil, nil, faults
		}
		if !f.fromVessels() {
			b.Better = s.better(b)
		}
		if b.Batches = s.seated.batches; b.Batches > 1 && f.fromVessels() {
			if b.Last, faults = s.last(); len(faults) > 0 {
				return nil, nil, faults
			}
		}
	}
	if f.Weighed.Stage != NotWeighed {
		reckoning, faults := s.reckon(b)
		if len(faults) > 0 {
			return nil, nil, faults
		}
		b.Weighed = reckoning
	}
	return b, s, nil
}

// planSuperfat finds the superfat to plan with, and the size where vessels say it.
func (s *solved) planSuperfat() (superfat units.Ratio, faults Faults) {
	f := s.asked
	floor := f.Superfat.AtLeast
	if !floor.Given() {
		if f.fromVessels() {
			faults = s.fromVessels(f.Superfat.Planned)
		}
		return f.Superfat.Planned, faults
	}
	least := floor
	for range 8 { // where the size depends on the superfat, until neither moves
		if f.fromVessels() {
			s.f = f
			s.parts = f.parts()
			if faults := s.fromVessels(least); len(faults) > 0 {
				return units.Ratio{}, faults
			}
		}
		next, ok, faults := s.leastSuperfat(floor)
		if len(faults) > 0 {
			return units.Ratio{}, faults
		}
		if !ok {
			return units.Ratio{}, Faults{{
				Path: "superfat.at_least", Text: floor.PercentText(12) + " %", Kind: ErrImpossible,
				Reason: "is more than any planned superfat below 100 % can promise",
				Remedy: "use a finer scale, oils with narrower ranges, or less",
			}}
		}
		settled := next.Equal(least)
		least = next
		if settled || !f.fromVessels() {
			break
		}
	}
	return least, nil
}

// emptyPromise refuses a promised superfat that is kept by next to no alkali: none that the
// scale shows.
func (s *solved) emptyPromise() (faults Faults) {
	floor := s.asked.Superfat.AtLeast
	if !floor.Given() {
		return nil
	}
	for i := range s.alkalis {
		weighing, _ := s.alkalis[i].ToWeigh()
		if weighing.Mass.Round(s.small, units.Down).Sign() > 0 {
			return nil
		}
	}
	faults.Add("superfat.at_least", percentText(floor), "is kept only with less alkali than the scale shows: hardly "+
		"anything of the oils is certain to saponify",
		"add an oil or a fat that reacts, or weigh on a finer scale", ErrImpossible)
	return faults
}

// batch writes the masses down.
func (s *solved) batch() *Batch {
	scale, small := s.f.Scales()
	b := &Batch{
		Formula: s.asked.clone(),
		Oils:    make([]OilWeighing, len(s.oils)),
		Alkalis: s.alkalis,
		Water: WaterWeighing{
			Asked:    s.waterAsked,
			Weighing: weighed(s.waterAdd, small, units.Nearest),
			Withheld: s.waterHeld,
		},
		OilsTotal: s.oilTotal,
		Worked:    s.superfat,
		Batter:    s.pot,
		Parts:     make([]PartBatch, len(s.parts)),
	}
	for i := range s.oils {
		b.Oils[i] = OilWeighing{
			Oil:      s.f.Oils[i].Oil,
			Weighing: weighed(s.inPot(i), scale, units.Nearest),
			Withheld: s.oilHeld[i],
			Note:     s.f.Oils[i].Note,
		}
	}
	for i := range b.Alkalis {
		b.Alkalis[i].Note, b.Alkalis[i].Asked = s.f.Alkalis[i].Note, s.f.Alkalis[i].Asked
		if a := &b.Alkalis[i]; a.Strength.Given() {
			a.Stock = weighed(a.Stock.Mass, small, units.Down)
		} else {
			a.Dry = weighed(a.Dry.Mass, small, units.Down)
		}
	}
	for i := range s.liquids {
		l := &s.liquids[i]
		b.Liquids = append(b.Liquids, LiquidWeighing{
			Name: l.line.Name, Weighing: weighed(l.mass, small, units.Nearest), Water: l.water,
		})
	}
	for i := range s.acids {
		a := &s.acids[i]
		takes := scaled(a.koh, units.Whole(molarOf(s.alkalis[0].Alkali)), units.Whole(molar.KOH), units.Nearest)
		b.Acids = append(b.Acids, AcidWeighing{
			Acid: a.line.Acid, Asked: a.line.Asked, Weighing: weighed(a.mass, small, units.Nearest),
			Water: a.mass.Sub(a.pure), Takes: takes,
		})
	}
	b.Lye = s.lye()
	dryPot := s.dryPot()
	dry := s.divided(dryPot)
	b.Poured, b.Dry = s.pot, dryPot
	for i := range s.parts {
		b.Parts[i] = s.part(i, small, dry[i])
		b.Poured = b.Poured.Add(b.Parts[i].Poured.Sub(b.Parts[i].Batter))
		b.Dry = b.Dry.Add(b.Parts[i].Dry.Sub(dry[i]))
	}
	return b
}

// divided gives each part's share of something in the pot. The parts add up to it, but
// where the batter of some was weighed: those are what they are.
func (s *solved) divided(of units.Mass) []units.Mass {
	if s.read == nil || !slices.Contains(s.read.parts, true) {
		return units.Apportion(of, s.shares)
	}
	parts := make([]units.Mass, len(s.shares))
	for i, share := range s.shares {
		if s.read.parts[i] {
			parts[i], _ = units.Sum{}.Plus(of, units.Whole(1)).Scale(inGrams(s.read.batters[i]), inGrams(s.pot), units.Nearest)
		} else {
			parts[i] = product(of, share, units.Nearest)
		}
	}
	return parts
}

func weighed(mass, division units.Mass, how units.Rounding) Weighing {
	if how == units.Down {
		if near := mass.Round(division, units.Nearest); reaches(mass, near, division) {
			return Weighing{Mass: mass, Weigh: near}
		}
	}
	return Weighing{Mass: mass, Weigh: mass.Round(division, how)}
}

// reaches reports whether a mass reaches a multiple of the division above it, but for what
// both were rounded by. A division in ounces is no whole number of nanograms: 0.3 oz are
// 8.5048569375 g, held as 8.504856938 g, and three divisions of 0.1 oz a nanogram more. A
// division in grams has no such rounding, and a mass that is short of it is short.
func reaches(mass, multiple, division units.Mass) bool {
	short, step := multiple.Sub(mass).Nanograms(), division.Nanograms()
	return short > 0 && step%1000 != 0 && 2*short <= multiple.Nanograms()/step+1 && short < step/1000
}

// product gives m × r, rounded once. A ratio that is not given counts as zero: of figures that must be given, a formula
// that lacks one has been refused by then.
func product(m units.Mass, r units.Ratio, how units.Rounding) units.Mass {
	return units.Sum{}.Plus(m, r).Mass(how)
}

// scaled gives sum × times / over, rounded once. The callers' over is above zero: a formula
// in which it is not has been refused by then.
func scaled(sum units.Sum, times, over units.Ratio, how units.Rounding) units.Mass {
	mass, _ := sum.Scale(times, over, how)
	return mass
}

// part writes the masses of a part down; dry is its share of the dry pot.
func (s *solved) part(i int, small, dry units.Mass) PartBatch {
	own := s.own(i)
	p := PartBatch{
		Name: s.parts[i].Name, Note: s.parts[i].Note, Share: s.parts[i].Share, Batter: s.partPot[i], Oils: s.partOils[i],
		Water: s.partWater[i].Add(own.water), Poured: s.partPot[i].Add(own.poured), Dry: dry.Add(own.dry),
		Additions: s.additions(i, small),
	}
	return p
}

// additions writes the additions of a part down; what was weighed is what the scale showed.
func (s *solved) additions(part int, small units.Mass) []AdditionWeighing {
	list := make([]AdditionWeighing, 0, len(s.loads[part]))
	for _, l := range s.loads[part] {
		how := units.Nearest
		if l.kind == Fragrance {
			how = units.Down
		}
		a := AdditionWeighing{
			Name: l.addition.Name, Asked: l.addition.asked, Kind: l.kind, Weighing: weighed(l.mass, small, how),
			Material: l.material, Colourant: l.colourant, Note: l.addition.Note, ratio: l.addition.Carrier.Ratio,
		}
		if carrier := l.addition.Carrier; carrier.In != NoLiquid {
			from := Extra
			if carrier.fromFormula() {
				from = FromFormula
			}
			a.Carrier = &CarrierWeighing{
				In: carrier.In, Oil: l.oil, Name: carrier.liquid(),
				Weighing: weighed(l.carrier, small, units.Nearest), From: from,
			}
			if carrier.Paste {
				a.Paste = weighed(l.mass.Add(l.carrier), small, units.Nearest)
			}
			if l.read {
				a.Carrier.Weigh = a.Carrier.Mass
			}
		}
		if l.taken {
			a.Weigh, a.Paste.Weigh = a.Mass, a.Paste.Mass
		}
		list = append(list, a)
	}
	return list
}

// uncompensated reports whether an acid takes its alkali from the oils.
func (s *solved) uncompensated() bool {
	for i := range s.f.Acids {
		if s.f.Acids[i].Compensate == Uncompensated {
			return true
		}
	}
	return false
}

// judge works out the superfat of the batch and of every part.
func (s *solved) judge(b *Batch) Faults {
	var faults Faults
	all := s.ofBatch()
	s.showHeld(&all)
	asked := s.superfat
	if s.uncompensated() {
		asked = units.Ratio{} // an acid takes alkali from the oils: worked out from the masses
	}
	var ok bool
	if b.Superfat, ok = all.outlook(asked, b.Dry); !ok {
		return Faults{s.noDemand(&all, "the batch")}
	}
	b.Superfat.AsPrinted = all.asPrinted()
	s.spreads = make([]spread, len(s.parts))
	pot := s.inParts()
	p := pot
	p.oils = make([]drawn, 0, cap(pot.oils))
	for i := range s.parts {
		if faults := s.run.look(); len(faults) > 0 {
			return faults
		}
		p.oils = append(p.oils[:0], pot.oils...)
		s.takeInto(&p, i)
		e := p.evidence()
		s.spreads[i] = e.spread
		if b.Parts[i].Superfat, ok = e.outlook(units.Ratio{}, b.Parts[i].Dry); !ok {
			faults = append(faults, s.noDemand(&p, "part "+strconv.Quote(s.parts[i].Name)))
			continue
		}
		b.Parts[i].Superfat.AsPrinted = p.asPrinted()
	}
	return faults
}

// showHeld counts every oil of the batch as it is printed: what goes into the pot on the
// oils' scale, what is held back jug by jug on the small one.
func (s *solved) showHeld(p *prospect) {
	for i := range s.oils {
		p.oils[i].pot.shown = s.inPot(i).Round(s.scale, units.Nearest)
	}
	for i := range s.loads {
		for j := range s.loads[i] {
			if l := &s.loads[i][j]; l.line >= 0 && l.addition.Carrier.fromFormula() {
				pot := &p.oils[l.line].pot
				pot.shown = pot.shown.Add(l.shown(s.small))
			}
		}
	}
}

// asPrinted gives the superfat of the masses that the scales are asked to show, at typical
// values; not given where nothing is left of the oils.
func (p *prospect) asPrinted() units.Ratio {
	l := p.at(printed)
	if superfat, ok := l.superfat(); ok {
		return superfat
	}
	return units.Ratio{}
}
