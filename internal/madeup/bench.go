package madeup

import (
	"maps"
	"slices"
	"strconv"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
)

// Benched is a formula as [Maker.Formula] makes it, with what stands on a bench
// beside it: acids, liquids other than water, stock lyes.
func (m *Maker) Benched() soap.Formula {
	f := m.Formula()
	size := About(f)
	acids := lye.Acids()
	m.Shuffle(len(acids), func(i, j int) { acids[i], acids[j] = acids[j], acids[i] })
	for i := range m.IntN(3) {
		a := soap.AcidLine{Acid: acids[i], Compensate: soap.Compensated}
		switch m.IntN(3) {
		case 0:
			a.Load.OfOils = Basis(m.Between(10, 100))
		case 1:
			a.Load.OfBatter = Basis(m.Between(5, 80))
		default:
			a.Load.Mass = units.Sum{}.Plus(size, Basis(m.Between(10, 100))).Mass(units.Nearest)
		}
		if m.IntN(2) == 0 {
			a.Strength = m.exactly(Basis(m.Between(7000, 9500)))
		} else if a.Acid.Dissolved {
			a.Strength = units.Between(units.Percent(78), units.Percent(82))
		}
		if m.IntN(2) == 0 {
			a.Compensate = soap.Uncompensated
		}
		f.Acids = append(f.Acids, a)
	}
	for i := range m.IntN(3) {
		solids := m.Between(500, 4000)
		l := soap.LiquidLine{Name: "hall milk " + strconv.Itoa(i+1), Water: Basis(10000 - solids)}
		if m.IntN(2) == 0 {
			l.Share = Basis(m.Between(300, 2000))
		} else {
			l.Mass = units.Sum{}.Plus(size, Basis(m.Between(100, 400))).Mass(units.Nearest)
		}
		if m.IntN(3) > 0 {
			l.Fat, l.Saponification = Basis(m.Between(50, solids/2)), Span(218, 226, 235)
			if m.IntN(3) == 0 {
				l.Saponification = units.Exactly(units.MilligramsPerGram(225))
			}
		}
		if m.IntN(2) == 0 {
			l.Sugar = Basis(m.Between(10, solids/4))
		}
		if m.IntN(2) == 0 {
			l.Alcohol = Basis(m.Between(10, solids/4))
		}
		f.Water.Liquids = append(f.Water.Liquids, l)
	}
	if m.IntN(3) == 0 {
		for i := range f.Alkalis {
			f.Alkalis[i].Purity = units.Range{}
			f.Alkalis[i].Stock = m.exactly(Basis(m.Between(4900, 5150)))
			if m.IntN(2) == 0 {
				f.Alkalis[i].Stock = units.Range{Low: units.Percent(48), High: units.Percent(50)}
			}
		}
	}
	return f
}

// Stages gives the stages of a batch that is being weighed, in the order of the work.
func Stages() []soap.Stage { return []soap.Stage{soap.AtLye, soap.AtPot, soap.AtParts, soap.AtMoulds} }

// Weigh makes up the real weighings of a batch, each line up to some percent off;
// not every line was written down.
func (m *Maker) Weigh(b soap.Batch, stage soap.Stage, percent int) soap.Weighed {
	w := soap.Weighed{Stage: stage}
	for _, o := range b.Oils {
		if m.IntN(3) > 0 {
			w.Oils = append(w.Oils, soap.WeighedOil{Oil: o.Oil.ID(), Mass: m.slip(o.Mass, percent)})
		}
	}
	for _, a := range b.Alkalis {
		if weighing, _ := a.ToWeigh(); m.IntN(3) > 0 {
			w.Alkalis = append(w.Alkalis, soap.WeighedAlkali{Alkali: a.Alkali, Mass: m.slip(weighing.Mass, percent)})
		}
	}
	if m.IntN(2) == 0 {
		w.Water = soap.Read(m.slip(b.Water.Mass, percent))
	}
	for _, a := range b.Acids {
		if m.IntN(2) == 0 {
			w.Acids = append(w.Acids, soap.WeighedAcid{Acid: a.Acid.ID, Mass: m.slip(a.Mass, percent)})
		}
	}
	for _, l := range b.Liquids {
		if m.IntN(2) == 0 {
			w.Liquids = append(w.Liquids, soap.WeighedLiquid{Liquid: l.Name, Mass: m.slip(l.Mass, percent)})
		}
	}
	for _, p := range b.Parts {
		if part := m.weighPart(p, percent); len(part.Additions)+len(part.Carriers) > 0 {
			w.Parts = append(w.Parts, part)
		}
	}
	f := b.Formula
	f.Weighed = w
	if real, err := f.Batch(); err == nil {
		m.divide(&w, real.Weighed.Parts, percent)
	}
	return w
}

// weighPart makes up what was weighed of a part's additions and carriers.
func (m *Maker) weighPart(p soap.PartBatch, percent int) soap.WeighedPart {
	part := soap.WeighedPart{Part: p.Name}
	additions := Additions(p)
	for _, name := range slices.Sorted(maps.Keys(additions)) {
		if m.IntN(2) == 0 {
			part.Additions = append(part.Additions, soap.WeighedAddition{Name: name, Mass: m.slip(additions[name], percent)})
		}
	}
	apart := p
	apart.Additions = slices.DeleteFunc(slices.Clone(p.Additions), func(a soap.AdditionWeighing) bool {
		return a.Paste.Mass.Sign() > 0 && slices.ContainsFunc(part.Additions,
			func(read soap.WeighedAddition) bool { return read.Name == a.Name })
	})
	carriers := Carriers(apart)
	for _, name := range slices.Sorted(maps.Keys(carriers)) {
		if m.IntN(2) == 0 {
			part.Carriers = append(part.Carriers, soap.WeighedCarrier{Liquid: name, Mass: m.slip(carriers[name], percent)})
		}
	}
	return part
}

// divide makes up what some of the parts got of the pot as weighed: some less than their
// share, others what those lacked.
func (m *Maker) divide(w *soap.Weighed, parts []soap.ReckonedPart, percent int) {
	var left units.Mass
	for _, p := range parts {
		if m.IntN(2) == 0 {
			continue
		}
		lost := units.Sum{}.Plus(p.Batter, Basis(m.IntN(100*percent+1))).Mass(units.Nearest)
		batter := p.Batter.Sub(lost)
		left = left.Add(lost)
		if most := (units.Sum{}).Plus(p.Batter, units.Percent(50)).Mass(units.Nearest); m.IntN(2) == 0 &&
			left.Compare(most) < 0 {
			batter, left = batter.Add(left), units.Mass{}
		}
		at := slices.IndexFunc(w.Parts, func(q soap.WeighedPart) bool { return q.Part == p.Name })
		if at < 0 {
			at, w.Parts = len(w.Parts), append(w.Parts, soap.WeighedPart{Part: p.Name})
		}
		w.Parts[at].Batter = soap.Read(batter)
	}
}

// slip gives a mass as it was really weighed: some percent off.
func (m *Maker) slip(mass units.Mass, percent int) units.Mass {
	return units.Sum{}.Plus(mass, Basis(m.Between(10000-100*percent, 10000+100*percent))).Mass(units.Nearest)
}

// Additions adds up a part's additions, name by name, as they are weighed: a paste with its
// carrier.
func Additions(p soap.PartBatch) map[string]units.Mass {
	all := map[string]units.Mass{}
	for _, a := range p.Additions {
		mass := a.Mass
		if a.Paste.Mass.Sign() > 0 {
			mass = a.Paste.Mass
		}
		all[a.Name] = all[a.Name].Add(mass)
	}
	return all
}

// Carriers adds up a part's carriers, liquid by liquid.
func Carriers(p soap.PartBatch) map[string]units.Mass {
	all := map[string]units.Mass{}
	for _, a := range p.Additions {
		if a.Carrier != nil {
			all[a.Carrier.Name] = all[a.Carrier.Name].Add(a.Carrier.Mass)
		}
	}
	return all
}
