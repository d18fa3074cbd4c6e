package soap

import "example.com/lyewright/units"

// Reckoning is what the real weighings of a batch come to, and what would mend it.
// The batch's own Superfat and Parts stay the plan; its findings judge what was weighed.
type Reckoning struct {
	Stage Stage
	Lye   Lye // as weighed and mixed

	Batter units.Mass // in the pot
	Poured units.Mass // all parts, with additions and carriers
	Dry    units.Mass // all parts, when all water is gone

	// Volumes are those of the batch as weighed; nil without vessels, and where the lye is
	// stronger than densities are known of.
	Volumes *Volumes

	Superfat Outlook        // of the batch
	Parts    []ReckonedPart // in the formula's order

	// Remedies are none where nothing is wanting or nothing helps any more, and none before a
	// reading far below its plan was taken again: weighed-far says so, with Detail again.
	Remedies []Remedy
}

// ReckonedPart is a part as weighed.
type ReckonedPart struct {
	Name   string
	Share  units.Ratio // of the pot
	Batter units.Mass  // what of the pot it got: as it was weighed, to the nanogram
	Oils   units.Mass  // its share of all the formula's oils, held back or not
	Poured units.Mass  // with its additions and carriers
	Dry    units.Mass  // when all water is gone

	// With vessels: of what is poured, at the temperature it is poured at. Zero and not
	// given without Volumes.
	Volume  units.Volume
	Density units.Density

	// Additions are those of the plan, in its order: of what was weighed Mass and Weigh are
	// what the scale showed, all else is as planned.
	Additions []AdditionWeighing
	Superfat  Outlook
}

// Blend is the Oil of a remedy that is the formula's oils in the proportions of the
// plan.
const Blend = "blend"

// Remedy is one thing that brings the batch, or a part, back to its plan at
// typical values. Each is enough alone, but for those of several parts, which are
// for each its own, and for those of two alkalis, which go together. Alkali is never added
// to batter, and no more oil is offered than a quarter of the oils (our choice): more makes
// another soap.
type Remedy struct {
	Part string // the part it is for; empty: all

	// Oil is what is added to batter: the id of one of the formula's oils, or [Blend];
	// empty where the lye is mended. Add is how much, rounded up to the oils' scale to
	// weigh.
	Oil string
	Add Weighing

	// UseLye is how much of the lye is used, rounded down to weigh, OfLye all of it
	// (alkali, water and other liquids, as weighed; acids are not counted in it), and
	// AddWater the water that brings it back to the plan; zero where neither is needed.
	// WaterFirst: the lye as weighed does not dissolve. All of AddWater goes into it before
	// part of it is used, and OfLye counts it.
	UseLye, AddWater Weighing
	OfLye            units.Mass
	WaterFirst       bool

	// SecondVessel: [Lye.Dry] holds of what was weighed. All of AddWater is weighed into a second vessel, and the
	// alkali in the jug is added to it, a little at a time; water is never poured on it.
	SecondVessel bool

	// AddAlkali is the alkali that is still missing from the lye, of Alkali, rounded
	// down to weigh: of a stock lye, the stock. AddWater goes in before it.
	Alkali    Alkali
	AddAlkali Weighing

	// What it is after that, with what the scale can show.
	Batter       units.Mass  // in the pot, or of the part
	Poured       units.Mass  // with additions and carriers
	WaterPerOils units.Ratio // of the batch or the part; held-back oil counts
	Superfat     Outlook     // of the batch, or of the part
}

// mostAdded is the largest addition that is offered, a share of the oils: a quarter
// (our choice). More makes another soap.
func mostAdded() units.Ratio { return units.Percent(25) }

// reckon judges the real weighings.
func (s *solved) reckon(b *Batch) (*Reckoning, Faults) {
	w, faults := s.asWeighed()
	if len(faults) > 0 {
		return nil, faults
	}
	m := mender{plan: b, planned: s, s: w, parts: make([]judged, 0, len(w.parts))}
	if faults := s.run.look(); len(faults) > 0 {
		return nil, faults
	}
	r := &Reckoning{Stage: s.f.Weighed.Stage, Lye: w.lye(), Batter: w.pot, Parts: make([]ReckonedPart, len(w.parts))}
	const remedy = "weigh the oils, or weigh on a finer scale"
	var ok bool
	dryPot := w.dryPot()
	m.whole = judged{prospect: w.ofBatch(), heap: w.whole(dryPot)}
	if r.Superfat, ok = m.whole.judge(); !ok {
		faults.Add("weighed", "", "leaves no oil for the alkali in the worst case", remedy, ErrImpossible)
		return nil, faults
	}
	dry := w.divided(dryPot)
	for i := range w.parts {
		if faults := s.run.look(); len(faults) > 0 {
			return nil, faults
		}
		j := judged{prospect: w.ofPart(i), heap: w.heapOf(i, dry[i])}
		part := ReckonedPart{
			Name: w.parts[i].Name, Share: w.parts[i].Share, Batter: j.heap.batter, Oils: w.partOils[i], Poured: j.heap.poured,
			Dry:       j.heap.dry,
			Additions: w.additions(i, w.small),
		}
		if part.Superfat, ok = j.judge(); !ok {
			faults.Add("weighed", "", "leaves no oil for the alkali of "+units.Quote(part.Name)+" in the worst case", remedy,
				ErrImpossible)
		}
		r.Poured, r.Dry = r.Poured.Add(part.Poured), r.Dry.Add(part.Dry)
		r.Parts[i] = part
		m.parts = append(m.parts, j)
	}
	if len(faults) > 0 {
		return nil, faults
	}
	w.realVolumes(r)
	s.real = w
	if r.Lye.Undissolved && r.Stage != AtLye {
		return r, nil // no oil reaches the grains of alkali
	}
	if w.read.doubted() {
		return r, nil // what would mend a slipped point may burn where none has slipped
	}
	switch r.Stage {
	case AtLye:
		r.Remedies = m.lye()
	case AtPot:
		r.Remedies = m.oils(nil, "", &m.whole, b.Superfat.Planned)
	case AtParts:
		r.Remedies = make([]Remedy, 0, len(m.parts)*(len(w.oils)+1))
		for i := range m.parts {
			if faults := s.run.look(); len(faults) > 0 {
				return nil, faults
			}
			r.Remedies = m.oils(r.Remedies, w.parts[i].Name, &m.parts[i], b.Parts[i].Superfat.Planned)
		}
	}
	return r, nil
}

// realVolumes works the volumes out, where there are vessels.
func (s *solved) realVolumes(r *Reckoning) {
	if s.bulk == nil {
		return
	}
	bulk := *s.bulk // that of the plan remembers what it was asked last
	s.bulk = &bulk
	c := s.measured()
	volumes, batter, ok := s.volumes(c)
	if !ok {
		return
	}
	r.Volumes = volumes
	for i := range r.Parts {
		p := &r.Parts[i]
		p.Volume, p.Density, _ = s.bulk.poured(c, i, batter)
	}
}

// judgedPart is a part as it is judged: as weighed, where something was.
func (b *Batch) judgedPart(i int) *PartBatch {
	if b.Weighed == nil {
		return &b.Parts[i]
	}
	p, r := b.Parts[i], &b.Weighed.Parts[i]
	p.Share, p.Batter, p.Oils, p.Poured, p.Dry = r.Share, r.Batter, r.Oils, r.Poured, r.Dry
	if r.Density.Given() {
		p.Volume, p.Density = r.Volume, r.Density
	}
	p.Superfat, p.Additions = r.Superfat, r.Additions
	return &p
}

// A heap is what the batch, or a part of it, comes to as weighed.
type heap struct {
	batter, poured, dry, water units.Mass
	// of the batch all of the formula's, of a part its share of the pot's and its own jugs
	oils units.Mass
}

// judged is what a superfat is judged from, and what it is a superfat of.
type judged struct {
	prospect
	heap
	now evidence
}

func (j *judged) judge() (Outlook, bool) {
	j.now = j.evidence()
	return j.now.outlook(units.Ratio{}, j.dry)
}

// whole is the heap of the batch.
func (s *solved) whole(dryPot units.Mass) heap {
	h := heap{batter: s.pot, poured: s.pot, dry: dryPot, water: s.lyeWater, oils: s.oilTotal}
	for i := range s.loads {
		own := s.own(i)
		h.poured, h.dry = h.poured.Add(own.poured), h.dry.Add(own.dry)
	}
	return h
}

// heapOf is the heap of a part; dry is its share of the dry pot.
func (s *solved) heapOf(part int, dry units.Mass) heap {
	own := s.own(part)
	h := heap{
		batter: s.partPot[part], poured: s.partPot[part].Add(own.poured), dry: dry.Add(own.dry),
		water: s.partWater[part].Add(own.water),
	}
	inPot := units.Mass{}
	for i := range s.oils {
		inPot = inPot.Add(s.inPot(i))
	}
	h.oils = product(inPot, s.parts[part].Share, units.Nearest).Add(own.oils)
	return h
}

// own adds up a part's additions and carriers.
func (s *solved) own(part int) heap {
	h := heap{dry: s.dryOwn(part)}
	for i := range s.loads[part] {
		l := &s.loads[part][i]
		h.poured = h.poured.Add(l.mass).Add(l.carrier)
		switch l.addition.Carrier.In {
		case InWater:
			h.water = h.water.Add(l.carrier)
		case InOil:
			h.oils = h.oils.Add(l.carrier)
		}
	}
	return h
}
