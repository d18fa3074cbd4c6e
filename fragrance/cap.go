package fragrance

import (
	"cmp"
	"math/big"
	"slices"

	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// Cap is the most of a material that one limit leaves room for, alone in the bar. It comes
// from [Material.Caps], or as one of [Reckoned.Caps].
type Cap struct {
	Rule   Rule        // that binds; not given: its certificate, or those of its parts
	Limit  units.Ratio // of the rule, or of the certificates: a share of the finished product
	Brings units.Ratio // what the material brings to the rule, as a share of it; not given of a certificate
	// Most is of the material in the dry bar: Limit over Brings, rounded down to 10^-8; in
	// a blend less what the certificates of its parts stand for.
	Most   units.Ratio
	Used   units.Ratio // of the limit, by all that is in the part: 100 % is all of it; not given of a material alone
	Source cite.Source // of what it brings, or of the certificate
}

// Reckoned is what the rules leave room for of one material in a part. It comes from
// [Verdict.Of] or [Verdict.All].
type Reckoned struct {
	Dose              // as it was judged
	OfDry units.Ratio // the dose as a share of the part's dry mass, to 10^-8

	// Caps are those of the material alone, the smallest first: what binds, and the next
	// three. A cap above 100 % does not bind and is left out.
	Caps []Cap

	// Most is how much of it goes into the part, with all else as it stands, rounded down
	// to a nanogram: nothing where the others pass some limit whatever there is of it.
	// The bar grows heavier by what goes in. Limited is false where nothing binds; Most is
	// then 0 g and means nothing.
	Most    units.Mass
	Limited bool
}

// mostCaps is how many caps are shown.
const mostCaps = 4

// Of reckons one of the doses, counted from 0; it panics where there is none.
func (v Verdict) Of(i int) Reckoned { return (&reckoner{Verdict: v}).of(i) }

// All reckons all of the doses, in their order.
func (v Verdict) All() []Reckoned {
	r := reckoner{Verdict: v}
	all := make([]Reckoned, len(v.doses))
	for i := range all {
		all[i] = r.of(i)
	}
	return all
}

// reckoner keeps what is used of every limit, exactly, for all doses.
type reckoner struct {
	Verdict
	whole map[int]*big.Rat
}

// total gives how much of a limit is used; it must not be changed.
func (v *reckoner) total(row int) *big.Rat {
	if v.whole == nil {
		v.whole = map[int]*big.Rat{}
	}
	if v.whole[row] == nil {
		v.whole[row] = v.exact(row)
	}
	return v.whole[row]
}

func (v *reckoner) of(i int) Reckoned {
	r := Reckoned{Dose: v.doses[i], OfDry: share(v.doses[i].Mass, v.dry)}
	r.Caps = v.caps(i)
	r.Most, r.Limited = v.most(i)
	return r
}

// caps lists those of a material alone.
func (v *reckoner) caps(i int) []Cap {
	m := v.doses[i].Material.get()
	var rows []int
	for row := range v.uses[i] {
		// A limit that its list does not name, and its certificate does, is said once: as
		// the certificate.
		if v.uses[i][row] > 1-near && (row == len(v.rows) || m.names(v.rows[row])) {
			rows = append(rows, row)
		}
	}
	// Of two that leave the same room, the one that the part uses more of comes first.
	slices.SortStableFunc(rows, func(a, b int) int {
		return cmp.Or(cmp.Compare(v.uses[i][b], v.uses[i][a]), cmp.Compare(v.used[b], v.used[a]))
	})
	var caps []Cap
	for k, row := range rows {
		if len(caps) == mostCaps || v.said(row, rows[:k]) {
			continue
		}
		use := v.exactUse(i, row)
		if use.Cmp(one()) < 0 {
			continue
		}
		c := Cap{Most: toRatio(use.Inv(use), shown, units.Down), Used: v.shownUse(row)}
		if row == len(v.rows) {
			c.Limit, c.Source = m.certificate.limit, cite.Source{Title: m.id, Place: "supplier's certificate", How: cite.Given}
			if !c.Limit.Given() { // of a blend, what its parts' come to
				c.Limit = c.Most
			}
		} else {
			c.Rule, c.Limit = Rule{v.rows[row]}, v.rows[row].limit
			c.Brings, c.Source = m.brought(v.rows[row])
		}
		caps = append(caps, c)
	}
	return caps
}

// said reports whether a stricter limit on the same substances is among the rows.
func (v *Verdict) said(row int, rows []int) bool {
	if row == len(v.rows) {
		return false
	}
	r := v.rows[row]
	return slices.ContainsFunc(rows, func(other int) bool {
		return other < len(v.rows) && (slices.Contains(r.with, v.rows[other]) ||
			slices.ContainsFunc(r.cas, func(c CAS) bool { return slices.Contains(v.rows[other].cas, c) }))
	})
}

// names reports whether a list of the material, or of one of its parts, says what it
// brings to a rule, and not its certificate.
func (m *material) names(r *rule) bool {
	for _, p := range m.parts {
		if b, found := p.m.brings(r); found && (!b.aside || b.use > p.m.certificate.use) {
			return true
		}
	}
	return false
}

// brought gives what a material's lists bring to a rule, and the source of most of it.
func (m *material) brought(r *rule) (all units.Ratio, source cite.Source) {
	all, most := units.Whole(0), units.Whole(0)
	for _, p := range m.parts {
		if b, found := p.m.brings(r); found {
			share := b.share.Times(p.share)
			if all = all.Add(share); share.Compare(most) > 0 {
				most, source = share, b.source
			}
		}
	}
	return all, source
}

// brings gives what a list brings to a rule.
func (m *material) brings(r *rule) (b bring, found bool) {
	i, found := slices.BinarySearchFunc(m.limits, r.index, func(b bring, index int) int { return cmp.Compare(b.rule.index, index) })
	if !found {
		return bring{}, false
	}
	return m.limits[i], true
}

// most gives how much of a material goes in beside the others. With x of it, and D0 the
// dry mass without it and what comes and goes with it, every limit asks that
//
//	others + use × x ≤ D0 + with × x
func (v *reckoner) most(i int) (most units.Mass, limited bool) {
	d := &v.doses[i]
	mass := d.Mass.Grams()
	with := d.with().Float()
	room := v.dry.Grams() - float64(with*mass)
	estimate := func(row int) float64 {
		others := float64(v.used[row]*v.dry.Grams()) - float64(v.uses[i][row]*mass)
		return (room - others) / (v.uses[i][row] - with)
	}
	least, binds := 0.0, false
	for row, use := range v.uses[i] {
		if use > with*(1+near) {
			if x := estimate(row); !binds || x < least {
				least, binds = x, true
			}
		}
	}
	if !binds {
		return units.Mass{}, false
	}
	var exact *big.Rat
	for row, use := range v.uses[i] {
		if use > with*(1+near) && estimate(row) <= least+near*max(least, mass, v.dry.Grams()*near) {
			if x := v.exactMost(i, row); exact == nil || x.Cmp(exact) < 0 {
				exact = x
			}
		}
	}
	if exact.Sign() <= 0 {
		return units.Mass{}, true
	}
	most = toMass(exact)
	for row, use := range v.uses[i] {
		if use <= with*(1+near) && v.passedBeside(i, row, most) {
			return units.Mass{}, true
		}
	}
	return most, true
}

// passedBeside reports whether a limit that a material does not fill is passed by the
// others beside so much of it.
func (v *reckoner) passedBeside(i, row int, most units.Mass) bool {
	d := &v.doses[i]
	more := most.Grams() - d.Mass.Grams()
	dry := v.dry.Grams() + more*d.with().Float()
	used := v.used[row]*v.dry.Grams() + v.uses[i][row]*more
	if used < dry*(1-near) || used > dry*(1+near) {
		return used > dry
	}
	room := new(big.Rat).Sub(grams(most), grams(d.Mass))
	sum := new(big.Rat).Mul(v.total(row), grams(v.dry))
	sum.Add(sum, new(big.Rat).Mul(room, v.exactUse(i, row)))
	room.Mul(room, fraction(d.with()))
	return sum.Cmp(room.Add(room, grams(v.dry))) > 0
}

// exactMost gives the most that one limit leaves room for, in grams.
func (v *reckoner) exactMost(i, row int) *big.Rat {
	mass, use := grams(v.doses[i].Mass), v.exactUse(i, row)
	with := fraction(v.doses[i].with())
	room := grams(v.dry)
	room.Sub(room, new(big.Rat).Mul(with, mass))
	others := new(big.Rat).Mul(v.total(row), grams(v.dry))
	others.Sub(others, new(big.Rat).Mul(use, mass))
	room.Sub(room, others)
	return room.Quo(room, use.Sub(use, with))
}

// Caps lists the caps of a material alone in the dry bar under a law, the smallest first:
// what binds, and the next three. A cap above 100 % is left out: without any, no limit that
// is known binds, and [Material.Unjudged] says what is not known. Used is not given.
func (m Material) Caps(law Law) []Cap {
	v := reckoner{Verdict: Judge(law, units.Grams(1), []Dose{{Material: m}})}
	caps := v.caps(0)
	for i := range caps {
		caps[i].Used = units.Ratio{}
	}
	return caps
}

// CapsDiffer reports whether European law binds a material more than the IFRA Standards
// do.
func (m Material) CapsDiffer() bool {
	both, alone := m.Caps(IFRAAndEU), m.Caps(IFRAAlone)
	return len(both) > 0 && (len(alone) == 0 || !both[0].Most.Equal(alone[0].Most))
}
