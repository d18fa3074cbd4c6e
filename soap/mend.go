package soap

import (
	"example.com/lyewright/internal/molar"
	"example.com/lyewright/units"
)

// mender finds what brings a batch as weighed back to its plan. Alkali is never
// added to batter: it would not be stirred in evenly.
type mender struct {
	plan       *Batch
	s, planned *solved // as weighed, and as planned
	whole      judged
	parts      []judged

	// The formula's oils in the proportions of the plan, and their value.
	shares []float64
	blend  units.Range
}

// mix works out the blend.
func (m *mender) mix() {
	b := units.Range{Low: units.Whole(0), Typical: units.Whole(0), High: units.Whole(0)}
	m.shares = make([]float64, len(m.planned.oils))
	for i, mass := range m.planned.oils {
		share, _ := mass.Per(m.planned.oilTotal)
		share = share.Round(9, units.Nearest)
		value := m.planned.f.Oils[i].Oil.Saponification()
		b.Low = b.Low.Add(value.Low.Times(share))
		b.Typical = b.Typical.Add(value.Typical.Times(share))
		b.High = b.High.Add(value.High.Times(share))
		m.shares[i] = share.Float()
	}
	m.blend = units.Range{Low: b.Low.Round(12, units.Nearest), Typical: b.Typical.Round(12, units.Nearest), High: b.High.Round(12, units.Nearest)}
}

// lack gives the demand, as KOH, that must still come for the alkali to leave a
// superfat of its plan; not above zero where none is lacking.
func (l *ledger) lack(plan units.Ratio) units.Mass {
	kilo, rest := units.Grams(1000), plan.Rest() // by the kilo, quotients stay short
	used, ok := l.alkali.Per(l.demand)
	demand, fits := l.demand.Per(units.Sum{}.Plus(kilo, units.Whole(1)).TimesWhole(molar.NaOH).TimesWhole(l.times))
	if !ok || !fits {
		return units.Mass{}
	}
	koh := kilo.Times(demand, units.Nearest)
	more, _ := units.Sum{}.Plus(koh, used.Sub(rest)).Per(units.Sum{}.Plus(kilo, rest))
	return kilo.Times(more, units.Nearest)
}

// oils offers oil for a batter, or for a part alone, to a plan: each of the
// formula's oils but waxes, which react slowly, and their blend. It appends to
// remedies.
func (m *mender) oils(remedies []Remedy, part string, j *judged, plan units.Ratio) []Remedy {
	koh := j.now.planned.lack(plan)
	if koh.Sign() <= 0 {
		return remedies
	}
	if m.shares == nil {
		m.mix()
	}
	most := j.heap.oils.Times(mostAdded(), units.Down)
	offer := func(name string, value units.Range, then func(e *evidence, grams float64)) {
		kilos, ok := units.Sum{}.Plus(koh, units.Whole(1)).Per(units.Sum{}.Plus(units.Grams(1000), value.Typical))
		mass := units.Grams(1000).Times(kilos, units.Nearest)
		if !ok || mass.Sign() <= 0 || mass.Compare(most) > 0 {
			return
		}
		r := Remedy{Part: part, Oil: name, Add: weighed(mass, m.s.scale, units.Up)}
		r.Batter, r.Poured = j.batter.Add(r.Add.Weigh), j.poured.Add(r.Add.Weigh)
		r.WaterPerOils, _ = j.water.Per(j.heap.oils.Add(r.Add.Weigh))
		mended := j.now
		added := readLine(r.Add.Weigh, m.s.scale)
		mended.low.pour(lowest, added, value)
		mended.planned.pour(planned, added, value)
		mended.high.pour(highest, added, value)
		mended.spread.demand += float64(added.mass.Grams() * value.Typical.Float())
		mended.spread.ofDemand += added.squares(value.Typical.Float())
		then(&mended, added.mass.Grams())
		if r.Superfat, ok = mended.outlook(units.Ratio{}, j.dry.Add(r.Add.Weigh)); ok {
			remedies = append(remedies, r)
		}
	}
	// wider counts the range of an oil for the mass that there is after an addition.
	wider := func(e *evidence, oil int, grams float64) {
		d := &j.prospect.oils[oil]
		width, before := halfWidth(d.oil.Saponification()), d.grams(e.spread.share)
		e.spread.ofDemand += square((before+grams)*width) - square(before*width)
	}
	for i := range m.s.oils {
		if oil := m.s.f.Oils[i].Oil; oil.Kind() != Wax {
			offer(oil.ID(), oil.Saponification(), func(e *evidence, grams float64) { wider(e, i, grams) })
		}
	}
	offer(Blend, m.blend, func(e *evidence, grams float64) {
		for i, share := range m.shares {
			wider(e, i, grams*share)
		}
	})
	return remedies
}

// pour adds oil of a saponification value to what the alkali is held against.
func (l *ledger) pour(e end, added line, value units.Range) {
	demand := units.Sum{}.Plus(e.shift(added), e.pick(value))
	l.demand = l.demand.Add(demand.TimesWhole(molar.NaOH).TimesWhole(l.times))
}

// lye offers to use part of a lye that has too much alkali, or to add what is
// missing from one that has too little.
func (m *mender) lye() []Remedy {
	p, l := &m.whole.prospect, &m.whole.now.planned
	plan := m.plan.Superfat.Planned
	// The alkali, on the ledger's scale, that all the oils and acids ask for.
	var acids, has units.Sum
	for i := range m.s.acids {
		acids = acids.Add(m.s.acids[i].koh.TimesWhole(molar.NaOH))
	}
	for i := range p.alkalis {
		a := &p.alkalis[i]
		has = has.Add(units.Sum{}.Plus(a.line.mass, a.content.Typical).TimesWhole(otherMolar(a.alkali)))
	}
	needs := l.demand.Times(plan.Rest()).Add(acids)
	switch needs.Compare(has) {
	case -1:
		share, _ := needs.Per(has)
		return m.less(p, share)
	case 1:
		return m.more(p, needs.Sub(has))
	default:
		return nil
	}
}

// less uses a share of the lye.
func (m *mender) less(p *prospect, share units.Ratio) []Remedy {
	mixed := m.s.waterAdd
	for i := range p.alkalis {
		mixed = mixed.Add(p.alkalis[i].line.mass)
	}
	if share.Sign() <= 0 || mixed.Sign() <= 0 {
		return nil
	}
	r := Remedy{OfLye: mixed, UseLye: weighed(mixed.Times(share, units.Down), m.s.small, units.Down)}
	if mixed.Sub(r.UseLye.Mass).Compare(m.s.small) < 0 {
		return nil // too much by less than the scale shows
	}
	water := m.planned.waterAdd.Sub(m.s.waterAdd.Times(share, units.Nearest))
	if water.Sign() > 0 {
		r.AddWater = weighed(water, m.s.small, units.Nearest)
	}
	used, _ := r.UseLye.Weigh.Per(mixed)
	for i := range p.alkalis {
		// Off as it was weighed, and once more as the lye is.
		l := &p.alkalis[i].line
		l.mass, l.halves = l.mass.Times(used, units.Nearest), 2
	}
	left := mixed.Sub(r.UseLye.Weigh).Sub(r.AddWater.Weigh)
	return m.mended(p, r, left)
}

// more adds the alkali that is missing, given as KOH on the ledger's scale: with
// two alkalis in the shares of the saponification that they do.
func (m *mender) more(p *prospect, missing units.Sum) []Remedy {
	var remedies []Remedy
	var added units.Mass
	for i := range m.s.alkalis {
		a := &m.s.alkalis[i]
		_, content := a.ToWeigh()
		over := content.Typical.Times(units.Whole(otherMolar(a.Alkali)))
		r := Remedy{Alkali: a.Alkali, AddAlkali: weighed(missing.Scale(a.Saponifies, over, units.Down), m.s.small, units.Down)}
		if r.AddAlkali.Weigh.Sign() == 0 {
			continue // less than the scale shows
		}
		l := &p.alkalis[i].line
		l.mass, l.halves = l.mass.Add(r.AddAlkali.Weigh), 2
		added = added.Add(r.AddAlkali.Weigh)
		remedies = append(remedies, r)
	}
	for i := range remedies {
		mended := m.mended(p, remedies[i], units.Mass{}.Sub(added))
		if len(mended) == 0 {
			return nil
		}
		remedies[i] = mended[0]
	}
	return remedies
}

// mended says what it is after a remedy of the lye that leaves so much out.
func (m *mender) mended(p *prospect, r Remedy, left units.Mass) []Remedy {
	var ok bool
	r.Batter, r.Poured = m.whole.batter.Sub(left), m.whole.poured.Sub(left)
	water := r.Batter.Sub(m.s.acidMass).Sub(m.s.liquidSolids)
	for i := range m.s.oils {
		water = water.Sub(m.s.inPot(i))
	}
	var alkali units.Mass
	for i := range p.alkalis {
		alkali = alkali.Add(p.alkalis[i].line.mass.Times(m.pureOf(i), units.Nearest))
	}
	r.WaterPerOils, _ = water.Sub(alkali).Per(m.s.oilTotal)
	r.Superfat, ok = p.outlook(units.Ratio{}, m.whole.dry)
	if !ok {
		return nil
	}
	return []Remedy{r}
}

// pureOf gives the part of an alkali's weighing that is not water: of a stock its
// hydroxide, of a dry alkali all of it.
func (m *mender) pureOf(i int) units.Ratio {
	if strength := m.s.alkalis[i].Strength; strength.Given() {
		return strength.Typical
	}
	return units.Whole(1)
}
