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
	m.blend = units.Range{
		Low: b.Low.Round(12, units.Nearest), Typical: b.Typical.Round(12, units.Nearest),
		High: b.High.Round(12, units.Nearest),
	}
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
	koh := product(kilo, demand, units.Nearest)
	more, _ := units.Sum{}.Plus(koh, used.Sub(rest)).Per(units.Sum{}.Plus(kilo, rest))
	return product(kilo, more, units.Nearest)
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
	most := product(j.heap.oils, mostAdded(), units.Down)
	offer := func(name string, value units.Range, then func(e *evidence, grams float64)) {
		kilos, ok := units.Sum{}.Plus(koh, units.Whole(1)).Per(units.Sum{}.Plus(units.Grams(1000), value.Typical))
		mass := product(units.Grams(1000), kilos, units.Nearest)
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
		mended.spread.demandScale += added.squares(value.Typical.Float())
		then(&mended, added.mass.Grams())
		if r.Superfat, ok = mended.outlook(units.Ratio{}, j.dry.Add(r.Add.Weigh)); ok {
			remedies = append(remedies, r)
		}
	}
	// wider counts the range of an oil for the mass that there is after an addition.
	wider := func(e *evidence, oil int, grams float64) {
		d := &j.prospect.oils[oil]
		width, before := halfWidth(d.oil.Saponification()), d.grams(e.spread.share)
		e.spread.demandRanges += square((before+grams)*width) - square(before*width)
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

// lye offers to use part of a lye that has too much alkali, to add what is missing
// from one that has too little, and to make up its water.
func (m *mender) lye() []Remedy {
	p, l := &m.whole.prospect, &m.whole.now.planned
	rest := m.plan.Superfat.Planned.Rest()
	// On the ledger's scale: what acids take, the alkali that there is, and the demand
	// of the liquids' fat, which stands in the jug of the lye.
	var acids, has, fat units.Sum
	for i := range m.s.acids {
		acids = acids.Add(m.s.acids[i].koh.TimesWhole(molar.NaOH))
	}
	for i := range p.alkalis {
		a := &p.alkalis[i]
		has = has.Add(units.Sum{}.Plus(a.line.mass, a.content.Typical).TimesWhole(otherMolar(a.alkali)))
	}
	for i := range p.liquids {
		liquid := &p.liquids[i]
		fat = fat.Add(units.Sum{}.Plus(liquid.line.mass, liquid.demand.Typical).TimesWhole(molar.NaOH))
	}
	if needs := l.demand.Times(rest).Add(acids); needs.Compare(has) > 0 {
		if remedies := m.more(p, needs.Sub(has), needs); len(remedies) > 0 {
			return remedies
		}
	}
	// Of a share x of the jug: oils × rest + acids + x × fat × rest = x × alkali.
	share, ok := l.demand.Sub(fat).Times(rest).Add(acids).Per(has.Sub(fat.Times(rest)))
	if !ok || share.Sign() <= 0 {
		return nil
	}
	return m.less(p, share)
}

// less uses a share of the lye, all of it where that is what the scale shows, and
// makes up the water.
func (m *mender) less(p *prospect, share units.Ratio) []Remedy {
	mixed := m.s.waterAdd
	for i := range p.alkalis {
		mixed = mixed.Add(p.alkalis[i].line.mass)
	}
	for i := range m.s.liquids {
		mixed = mixed.Add(m.s.liquids[i].mass)
	}
	r := Remedy{OfLye: mixed}
	use := mixed
	if share.Compare(units.Whole(1)) < 0 {
		use = product(mixed, share, units.Down)
	}
	if mixed.Sub(use).Compare(m.s.small) < 0 {
		use, share = mixed, units.Whole(1) // too much by less than the scale shows
	}
	r.AddWater = m.missingWater(product(m.s.lyeWater, share, units.Nearest))
	if use != mixed {
		if r.AddWater.Mass.Sign() > 0 && m.s.undissolved() {
			return m.dissolved(p, mixed, share, r.AddWater.Mass)
		}
		r.UseLye = weighed(use, m.s.small, units.Down)
	}
	left, water, dry := units.Mass{}.Sub(r.AddWater.Weigh), m.s.lyeWater, m.whole.dry
	if r.UseLye.Mass.Sign() > 0 {
		used, _ := r.UseLye.Weigh.Per(mixed)
		water = product(water, used, units.Nearest)
		left = left.Add(mixed).Sub(r.UseLye.Weigh)
		dry = dry.Sub(product(m.inJug(), used.Rest(), units.Nearest))
		p.use(used)
	} else if r.AddWater.Mass.Sign() == 0 {
		return nil
	}
	if !m.mended(&r, p, left, water.Add(r.AddWater.Weigh), dry) {
		return nil
	}
	return []Remedy{r}
}

// use leaves a share of the lye: it is off as it was weighed, and once more as the lye is.
func (p *prospect) use(share units.Ratio) {
	for i := range p.alkalis {
		l := &p.alkalis[i].line
		l.mass, l.halves = product(l.mass, share, units.Nearest), 2
	}
	for i := range p.liquids {
		l := &p.liquids[i].line
		l.mass, l.halves = product(l.mass, share, units.Nearest), 2
	}
}

// dissolved makes up the water of a lye that holds more than dissolves before a share of it
// is used: what stays at the bottom of the jug cannot be shared out. missing is the water
// that the share lacks.
func (m *mender) dissolved(p *prospect, mixed units.Mass, share units.Ratio, missing units.Mass) []Remedy {
	water, ok := missing.Over(share, units.Nearest)
	if !ok { // none of the lye is used
		return nil
	}
	r := Remedy{WaterFirst: true, AddWater: weighed(water, m.s.small, units.Nearest)}
	r.OfLye = mixed.Add(r.AddWater.Weigh)
	r.UseLye = weighed(product(r.OfLye, share, units.Down), m.s.small, units.Down)
	used, _ := r.UseLye.Weigh.Per(r.OfLye)
	p.use(used)
	water = product(m.s.lyeWater.Add(r.AddWater.Weigh), used, units.Nearest)
	dry := m.whole.dry.Sub(product(m.inJug(), used.Rest(), units.Nearest))
	if !m.mended(&r, p, mixed.Sub(r.UseLye.Weigh), water, dry) {
		return nil
	}
	return []Remedy{r}
}

// missingWater is what makes the lye's water up to the plan's, by the mass of the
// oils; nothing where it is less than the scale shows.
func (m *mender) missingWater(there units.Mass) Weighing {
	asked := scaled(units.Sum{}.Plus(m.planned.lyeWater, units.Whole(1)), inGrams(m.s.oilTotal),
		inGrams(m.planned.oilTotal), units.Nearest)
	if missing := asked.Sub(there); missing.Compare(m.s.small) >= 0 {
		return weighed(missing, m.s.small, units.Nearest)
	}
	return Weighing{}
}

// inJug is the dry mass in the jug of the lye: hydroxide and the solids of liquids.
func (m *mender) inJug() units.Mass {
	dry := m.s.liquidSolids
	for i := range m.s.alkalis {
		dry = dry.Add(m.s.alkalis[i].Hydroxide().Mass(units.Nearest))
	}
	return dry
}

// more adds the alkali that is missing, given as KOH on the ledger's scale, and the
// water that is. Of two alkalis the one that is short gets it.
func (m *mender) more(p *prospect, missing, needs units.Sum) []Remedy {
	short := make([]units.Sum, len(m.s.alkalis))
	var planned, all units.Sum
	of := func(a *AlkaliWeighing) units.Sum { return a.Hydroxide().TimesWhole(otherMolar(a.Alkali)) }
	for i := range m.planned.alkalis {
		planned = planned.Add(of(&m.planned.alkalis[i]))
	}
	grown, _ := needs.Per(planned)
	for i := range m.s.alkalis {
		if lack := of(&m.planned.alkalis[i]).Times(grown).Sub(of(&m.s.alkalis[i])); lack.Sign() > 0 {
			short[i], all = lack, all.Add(lack)
		}
	}
	var remedies []Remedy
	water := m.missingWater(m.s.lyeWater)
	added, inLye, dry := water.Weigh, m.s.lyeWater.Add(water.Weigh), m.whole.dry
	for i := range m.s.alkalis {
		a := &m.s.alkalis[i]
		share, _ := short[i].Per(all)
		_, content := a.ToWeigh()
		over := content.Typical.Times(units.Whole(otherMolar(a.Alkali)))
		r := Remedy{Alkali: a.Alkali, AddAlkali: weighed(scaled(missing, share, over, units.Down), m.s.small, units.Down)}
		if r.AddAlkali.Weigh.Sign() == 0 {
			continue // less than the scale shows
		}
		l := &p.alkalis[i].line
		l.mass, l.halves = l.mass.Add(r.AddAlkali.Weigh), 2
		added = added.Add(r.AddAlkali.Weigh)
		inLye = inLye.Add(product(r.AddAlkali.Weigh, m.pureOf(i).Rest(), units.Nearest))
		dry = dry.Add(product(r.AddAlkali.Weigh, content.Typical, units.Nearest))
		remedies = append(remedies, r)
	}
	for i := range remedies {
		if i == 0 {
			remedies[i].AddWater = water
		}
		if !m.mended(&remedies[i], p, units.Mass{}.Sub(added), inLye, dry) {
			return nil
		}
	}
	return remedies
}

// mended writes down what it is after a remedy that leaves so much out of the lye
// (below zero: adds), so much water in it, and so much when all is dry; false where
// there may be no demand.
func (m *mender) mended(r *Remedy, p *prospect, left, water, dry units.Mass) (ok bool) {
	r.SecondVessel = r.AddWater.Mass.Sign() > 0 && m.s.undissolved() && m.s.dryJug()
	r.Batter, r.Poured = m.whole.batter.Sub(left), m.whole.poured.Sub(left)
	r.WaterPerOils, _ = water.Per(m.s.oilTotal)
	r.Superfat, ok = p.outlook(units.Ratio{}, dry)
	return ok
}

// pureOf gives the part of an alkali's weighing that is not water: of a stock its
// hydroxide, of a dry alkali all of it.
func (m *mender) pureOf(i int) units.Ratio {
	if strength := m.s.alkalis[i].Strength; strength.Given() {
		return strength.Typical
	}
	return units.Whole(1)
}
