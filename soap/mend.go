package soap

import (
	"slices"

	"example.com/lyewright/internal/molar"
	"example.com/lyewright/units"
)

// mender finds what brings a batch as weighed back to its plan. Alkali is never
// added to batter: it would not be stirred in evenly.
type mender struct {
	plan, now  *Batch
	s, planned *solved // as weighed, and as planned
}

// lack gives the demand, as KOH, that must still come for the alkali to leave a
// superfat of its plan; not above zero where none is lacking.
func (p *prospect) lack(plan units.Ratio) (koh units.Sum, times int64) {
	l := p.at(planned)
	return l.alkali.Times(units.Whole(1).Over(plan.Rest())).Sub(l.demand), l.times
}

// pot offers oil for the one batter.
func (m *mender) pot() []Remedy {
	p := m.s.ofBatch()
	return m.oils("", &p, m.plan.Superfat.Planned, m.s.oilTotal, after{
		batter: m.now.Batter, poured: m.now.Poured, dry: m.now.Dry, water: m.s.lyeWater, oils: m.s.oilTotal,
	})
}

// part offers oil for a part alone, to that part's own plan.
func (m *mender) part(i int) []Remedy {
	p, part := m.s.ofPart(i), &m.now.Parts[i]
	inPot := units.Mass{}
	for j := range m.s.oils {
		inPot = inPot.Add(m.s.inPot(j))
	}
	oils := inPot.Times(m.s.parts[i].Share, units.Nearest)
	for _, l := range m.s.loads[i] {
		if l.addition.Carrier.In == InOil {
			oils = oils.Add(l.carrier)
		}
	}
	return m.oils(part.Name, &p, m.plan.Parts[i].Superfat.Planned, oils, after{
		batter: part.Batter, poured: part.Poured, dry: part.Dry, water: part.Water, oils: oils,
	})
}

// after is what an addition is added to.
type after struct{ batter, poured, dry, water, oils units.Mass }

// oils offers each of the formula's oils but waxes, which react slowly, and their
// blend.
func (m *mender) oils(part string, p *prospect, plan units.Ratio, oils units.Mass, a after) []Remedy {
	koh, times := p.lack(plan)
	if koh.Sign() <= 0 {
		return nil
	}
	most := oils.Times(mostAdded(), units.Down)
	one := units.Whole(1)
	offer := func(name string, value units.Ratio, pour func(q *prospect, added line)) (r Remedy, ok bool) {
		mass := koh.Scale(one, value.Times(units.Whole(molar.NaOH)).Times(units.Whole(times)), units.Nearest)
		if mass.Sign() <= 0 || mass.Compare(most) > 0 {
			return Remedy{}, false
		}
		add := weighed(mass, m.s.scale, units.Up)
		q := *p
		q.oils = slices.Clone(p.oils)
		pour(&q, readLine(add.Weigh, m.s.scale))
		r = Remedy{Part: part, Oil: name, Add: add, Batter: a.batter.Add(add.Weigh), Poured: a.poured.Add(add.Weigh)}
		r.WaterPerOils, _ = a.water.Per(a.oils.Add(add.Weigh))
		r.Superfat, ok = q.outlook(units.Ratio{}, a.dry.Add(add.Weigh))
		return r, ok
	}
	var remedies []Remedy
	keep := func(r Remedy, ok bool) {
		if ok {
			remedies = append(remedies, r)
		}
	}
	for i := range m.s.oils {
		oil := m.s.f.Oils[i].Oil
		if oil.Kind() == Wax {
			continue
		}
		keep(offer(oil.ID(), oil.Saponification().Typical, func(q *prospect, added line) { q.pour(i, added) }))
	}
	shares := make([]units.Ratio, len(m.planned.oils))
	blend := units.Whole(0)
	for i, mass := range m.planned.oils {
		shares[i], _ = mass.Per(m.planned.oilTotal)
		blend = blend.Add(shares[i].Times(m.s.f.Oils[i].Oil.Saponification().Typical))
	}
	keep(offer(Blend, blend, func(q *prospect, added line) {
		q.blend, q.blendDemand = added, blend.Float()
		for i, mass := range units.Apportion(added.mass, shares) {
			q.pour(i, line{mass: mass, division: added.division.Times(shares[i], units.Nearest), halves: 1, counted: true})
		}
	}))
	return remedies
}

// pour adds oil of a line of the formula.
func (p *prospect) pour(oil int, added line) {
	d := &p.oils[oil]
	d.jugs = append(slices.Clip(d.jugs), added)
}

// lye offers to use part of a lye that has too much alkali, or to add what is
// missing from one that has too little.
func (m *mender) lye() []Remedy {
	p := m.s.ofBatch()
	l := p.at(planned)
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
		return m.less(&p, share)
	case 1:
		return m.more(&p, needs.Sub(has))
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
	r.Batter, r.Poured = m.now.Batter.Sub(left), m.now.Poured.Sub(left)
	water := r.Batter.Sub(m.s.acidMass).Sub(m.s.liquidSolids)
	for i := range m.s.oils {
		water = water.Sub(m.s.inPot(i))
	}
	var alkali units.Mass
	for i := range p.alkalis {
		alkali = alkali.Add(p.alkalis[i].line.mass.Times(m.pureOf(i), units.Nearest))
	}
	r.WaterPerOils, _ = water.Sub(alkali).Per(m.s.oilTotal)
	r.Superfat, ok = p.outlook(units.Ratio{}, m.now.Dry)
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
