package soap

import (
	"slices"
	"strings"

	"example.com/lyewright/units"
)

// Reckoning is what the real weighings of a batch come to, and what would mend it.
// The batch's own Superfat and Parts stay the plan.
type Reckoning struct {
	Stage    Stage
	Lye      Lye     // as weighed and mixed
	Superfat Outlook // of the batch
	Parts    []ReckonedPart
	Remedies []Remedy
}

// ReckonedPart is a part as weighed.
type ReckonedPart struct {
	Name     string
	Batter   units.Mass
	Poured   units.Mass
	Superfat Outlook
}

// Blend is the Oil of a remedy that is the formula's oils in the proportions of the
// plan.
const Blend = "blend"

// Remedy is one thing that brings the batch, or a part, back to its plan at
// typical values. Each is enough alone, but for those of several parts, which are
// for each its own, and for those of two alkalis, which go together.
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
	UseLye, AddWater Weighing
	OfLye            units.Mass

	// AddAlkali is the alkali that is still missing from the lye, of Alkali, rounded
	// down to weigh: of a stock lye, the stock. AddWater goes in before it.
	Alkali    Alkali
	AddAlkali Weighing

	// What it is after that, with what the scale can show.
	Batter       units.Mass // in the pot, or of the part
	Poured       units.Mass
	WaterPerOils units.Ratio // of the batch or the part; held-back oil counts
	Superfat     Outlook     // of the batch, or of the part
}

// mostAdded is the largest addition that is offered, a share of the oils: a quarter
// (our choice). More makes another soap.
func mostAdded() units.Ratio { return units.Percent(25) }

// readings says which lines were weighed.
type readings struct{ oils, alkalis []bool }

// reckon judges the real weighings.
func (s *solved) reckon(b *Batch) (*Reckoning, Faults) {
	w, faults := s.asWeighed()
	if len(faults) > 0 {
		return nil, faults
	}
	m := mender{plan: b, planned: s, s: w, parts: make([]judged, 0, len(w.parts))}
	r := &Reckoning{Stage: s.f.Weighed.Stage, Lye: w.lye(), Parts: make([]ReckonedPart, len(w.parts))}
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
		j := judged{prospect: w.ofPart(i), heap: w.heapOf(i, dry[i])}
		part := ReckonedPart{Name: w.parts[i].Name, Batter: j.heap.batter, Poured: j.heap.poured}
		if part.Superfat, ok = j.judge(); !ok {
			faults.Add("weighed", "", "leaves no oil for the alkali of "+units.Quote(part.Name)+" in the worst case", remedy, ErrImpossible)
		}
		r.Parts[i] = part
		m.parts = append(m.parts, j)
	}
	if len(faults) > 0 {
		return nil, faults
	}
	switch r.Stage {
	case AtLye:
		r.Remedies = m.lye()
	case AtPot:
		r.Remedies = m.oils(nil, "", &m.whole, b.Superfat.Planned)
	case AtParts:
		r.Remedies = make([]Remedy, 0, len(m.parts)*(len(w.oils)+1))
		for i := range m.parts {
			r.Remedies = m.oils(r.Remedies, w.parts[i].Name, &m.parts[i], b.Parts[i].Superfat.Planned)
		}
	}
	return r, nil
}

// A heap is what the batch, or a part of it, comes to as weighed.
type heap struct {
	batter, poured, dry, water units.Mass
	oils                       units.Mass // of the batch all of the formula's, of a part its share of the pot's and its own jugs
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
	h := heap{batter: s.partPot[part], poured: s.partPot[part].Add(own.poured), dry: dry.Add(own.dry), water: s.partWater[part].Add(own.water)}
	inPot := units.Mass{}
	for i := range s.oils {
		inPot = inPot.Add(s.inPot(i))
	}
	h.oils = inPot.Times(s.parts[part].Share, units.Nearest).Add(own.oils)
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

// asWeighed gives the batch with the masses that were really weighed in place of
// the planned ones.
func (s *solved) asWeighed() (*solved, Faults) {
	w, read := *s, &s.f.Weighed
	w.read = &readings{oils: make([]bool, len(s.oils)), alkalis: make([]bool, len(s.alkalis))}
	w.oils, w.oilHeld, w.alkalis = slices.Clone(s.oils), slices.Clone(s.oilHeld), slices.Clone(s.alkalis)
	w.parts, w.shares, w.loads = slices.Clone(s.parts), slices.Clone(s.shares), make([][]loaded, len(s.loads))
	var faults Faults
	slipped := func(path []string, mass, plan units.Mass) bool {
		if plan.Sign() == 0 || mass.Compare(plan.Add(plan).Add(plan)) <= 0 {
			return false
		}
		faults.Add("weighed."+strings.Join(path, "."), mass.Text(units.Gram, 6)+" g", "is more than three times its plan, "+plan.Text(units.Gram, 2)+" g", "look for a slipped point; what was weighed wrong by so much cannot be mended", ErrRange)
		return true
	}
	// Carriers first: they say what of an oil is held back.
	clear(w.oilHeld)
	w.waterHeld = units.Mass{}
	for i := range s.loads {
		w.loads[i] = slices.Clone(s.loads[i])
		w.readCarriers(i, read, slipped)
		for _, l := range w.loads[i] {
			if !l.addition.Carrier.fromFormula() {
				continue
			}
			switch {
			case l.addition.Carrier.In == InWater:
				w.waterHeld = w.waterHeld.Add(l.carrier)
			case l.line >= 0:
				w.oilHeld[l.line] = w.oilHeld[l.line].Add(l.carrier)
			}
		}
	}
	w.pot = w.liquidSolids.Add(w.acidMass)
	w.oilTotal = units.Mass{}
	for i := range s.oils {
		inPot := s.inPot(i)
		for _, o := range read.Oils {
			if o.Oil == s.f.Oils[i].Oil.ID() && !slipped([]string{"oils", o.Oil}, o.Mass, inPot) {
				inPot, w.read.oils[i] = o.Mass, true
			}
		}
		w.oils[i] = inPot.Add(w.oilHeld[i])
		w.oilTotal = w.oilTotal.Add(w.oils[i])
		w.pot = w.pot.Add(inPot)
	}
	w.alkali, w.stockWater = units.Mass{}, units.Mass{}
	for i := range s.alkalis {
		a := &w.alkalis[i]
		for _, found := range read.Alkalis {
			weighing, _ := s.alkalis[i].ToWeigh()
			if found.Alkali == a.Alkali && !slipped([]string{"alkali", a.Alkali.String()}, found.Mass, weighing.Mass) {
				w.read.alkalis[i] = true
				a.Mass = found.Mass
				if a.Strength.Given() {
					a.Stock.Mass, a.Mass = found.Mass, found.Mass.Times(a.Strength.Typical, units.Nearest)
				}
			}
		}
		w.alkali = w.alkali.Add(a.Mass)
		if a.Strength.Given() {
			w.stockWater = w.stockWater.Add(a.Stock.Mass.Sub(a.Mass))
		}
	}
	if read.Water.Read && !slipped([]string{"water"}, read.Water.Mass, s.waterAdd) {
		w.waterAdd = read.Water.Mass
	}
	w.lyeWater = w.waterAdd.Add(w.stockWater).Add(w.liquidWater)
	w.pot = w.pot.Add(w.alkali).Add(w.lyeWater)
	for i := range s.parts {
		for j := range read.Parts {
			batter := read.Parts[j].Batter
			if read.Parts[j].Part == s.parts[i].Name && batter.Read && !slipped([]string{"parts", s.parts[i].Name, "batter"}, batter.Mass, s.partPot[i]) {
				w.parts[i].Share, _ = batter.Mass.Per(w.pot)
				w.shares[i] = w.parts[i].Share
			}
		}
	}
	w.partPot, w.partOils, w.partWater = w.divided(w.pot), w.divided(w.oilTotal), w.divided(w.lyeWater)
	return &w, faults
}

// readCarriers puts a part's carriers as weighed in place of the planned ones:
// several jugs of one liquid were weighed together, and share what is off.
func (s *solved) readCarriers(part int, read *Weighed, slipped func(path []string, mass, plan units.Mass) bool) {
	for i := range read.Parts {
		if read.Parts[i].Part != s.parts[part].Name {
			continue
		}
		for _, carrier := range read.Parts[i].Carriers {
			var jugs []units.Ratio
			var plan units.Mass
			loads := s.loads[part]
			of := func(l *loaded) bool {
				return l.addition.Carrier.In != NoLiquid && l.addition.Carrier.liquid() == carrier.Liquid
			}
			for j := range loads {
				if of(&loads[j]) {
					plan = plan.Add(loads[j].carrier)
				}
			}
			if slipped([]string{"parts", s.parts[part].Name, "carriers", carrier.Liquid}, carrier.Mass, plan) {
				continue
			}
			for j := range loads {
				if of(&loads[j]) {
					share, _ := loads[j].carrier.Per(plan)
					jugs = append(jugs, share)
				}
			}
			masses := units.Apportion(carrier.Mass, jugs)
			for j := range loads {
				if of(&loads[j]) {
					loads[j].carrier, loads[j].read, masses = masses[0], true, masses[1:]
				}
			}
		}
	}
}
