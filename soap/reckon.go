package soap

import (
	"slices"

	"example.com/lyewright/units"
)

// Reckoning is what the real weighings of a batch come to, and what would mend it.
// The batch's own Superfat and Parts stay the plan.
type Reckoning struct {
	Stage    Stage
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
	// (alkali and water, as weighed), and AddWater the water that goes with what is
	// used; zero where neither is needed.
	UseLye, AddWater Weighing
	OfLye            units.Mass

	// AddAlkali is the alkali that is still missing from the lye, of Alkali, rounded
	// down to weigh: of a stock lye, the stock.
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
	now := w.batch()
	if faults := w.judgeRead(&now); len(faults) > 0 {
		return nil, faults
	}
	r := &Reckoning{Stage: s.f.Weighed.Stage, Superfat: now.Superfat}
	for i := range now.Parts {
		p := &now.Parts[i]
		r.Parts = append(r.Parts, ReckonedPart{Name: p.Name, Batter: p.Batter, Poured: p.Poured, Superfat: p.Superfat})
	}
	switch m := (mender{plan: b, now: &now, s: w, planned: s}); r.Stage {
	case AtLye:
		r.Remedies = m.lye()
	case AtPot:
		r.Remedies = m.pot()
	case AtParts:
		for i := range now.Parts {
			r.Remedies = append(r.Remedies, m.part(i)...)
		}
	}
	return r, nil
}

// judgeRead works out the superfats of what was weighed, from the masses.
func (s *solved) judgeRead(b *Batch) Faults {
	var faults Faults
	all := s.ofBatch()
	var ok bool
	if b.Superfat, ok = all.outlook(units.Ratio{}, b.Dry); !ok {
		faults.Add("weighed", "", "leaves no oil for the alkali in the worst case", "weigh the oils, or weigh on a finer scale", ErrImpossible)
		return faults
	}
	for i := range s.parts {
		p := s.ofPart(i)
		if b.Parts[i].Superfat, ok = p.outlook(units.Ratio{}, b.Parts[i].Dry); !ok {
			faults.Add("weighed", "", "leaves no oil for the alkali of "+units.Quote(s.parts[i].Name)+" in the worst case", "weigh the oils, or weigh on a finer scale", ErrImpossible)
		}
	}
	return faults
}

// asWeighed gives the batch with the masses that were really weighed in place of
// the planned ones.
func (s *solved) asWeighed() (*solved, Faults) {
	w, read := *s, &s.f.Weighed
	w.read = &readings{oils: make([]bool, len(s.oils)), alkalis: make([]bool, len(s.alkalis))}
	w.oils, w.oilHeld, w.alkalis = slices.Clone(s.oils), slices.Clone(s.oilHeld), slices.Clone(s.alkalis)
	w.parts, w.shares, w.loads = slices.Clone(s.parts), slices.Clone(s.shares), make([][]loaded, len(s.loads))
	var faults Faults
	slipped := func(path string, mass, plan units.Mass) bool {
		if mass.Compare(plan.Times(units.Whole(3), units.Down)) <= 0 {
			return false
		}
		faults.Add(path, mass.Text(units.Gram, 6)+" g", "is more than three times its plan, "+plan.Text(units.Gram, 2)+" g", "look for a slipped point; what was weighed wrong by so much cannot be mended", ErrRange)
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
			if o.Oil == s.f.Oils[i].Oil.ID() && !slipped("weighed.oils."+o.Oil, o.Mass, inPot) {
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
			if found.Alkali == a.Alkali && !slipped("weighed.alkali."+a.Alkali.String(), found.Mass, weighing.Mass) {
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
	if read.Water.Read && !slipped("weighed.water", read.Water.Mass, s.waterAdd) {
		w.waterAdd = read.Water.Mass
	}
	w.lyeWater = w.waterAdd.Add(w.stockWater).Add(w.liquidWater)
	w.pot = w.pot.Add(w.alkali).Add(w.lyeWater)
	for i := range s.parts {
		for j := range read.Parts {
			batter := read.Parts[j].Batter
			if read.Parts[j].Part == s.parts[i].Name && batter.Read && !slipped("weighed.parts."+s.parts[i].Name+".batter", batter.Mass, s.partPot[i]) {
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
func (s *solved) readCarriers(part int, read *Weighed, slipped func(path string, mass, plan units.Mass) bool) {
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
			if slipped("weighed.parts."+s.parts[part].Name+".carriers."+carrier.Liquid, carrier.Mass, plan) {
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
