package fragrance

import (
	"cmp"
	"slices"

	"example.com/lyewright/units"
)

// Several editions may stand for one oil. They are never added: within each its
// constituents are summed rule by rule, and of the sums the highest counts.

// assemble works out what a material brings to every rule from its figures, those of
// one source in a row. What is prohibited is a natural trace here: added as such it was
// refused.
func (m *material) assemble(rs *rules) {
	limits, labels := tally{}, tally{}
	for i := range m.figures {
		f := &m.figures[i]
		if i > 0 && f.Source != m.figures[i-1].Source {
			limits.next()
			labels.next()
		}
		m.colours(rs, f)
		if !rs.known(f.CAS) {
			m.frees(f)
			continue
		}
		rs.of(f.CAS, func(r *rule, share units.Ratio, base bool) {
			share = f.High.Times(share)
			if r.list != NotListed {
				labels.add(r, share, f, false)
			}
			if f.LabelOnly {
				return
			}
			limits.within(r, share, f, base)
			if r.standing == Prohibited {
				m.traces = appendOnce(m.traces, r)
			}
			if r.extract {
				m.naturals = appendOnce(m.naturals, r)
			}
			m.ask(r)
		})
	}
	for _, r := range m.own {
		whole := &Figure{High: units.Whole(1), Source: r.source}
		limits.next()
		labels.next()
		if r.list != NotListed {
			labels.add(r, whole.High, whole, false)
		}
		limits.within(r, whole.High, whole, false)
		m.ask(r)
	}
	m.limits, m.labels = limits.brings(), labels.brings()
}

// frees notes a constituent that no rule names, once.
func (m *material) frees(f *Figure) {
	if !slices.ContainsFunc(m.free, func(known Figure) bool { return known.CAS == f.CAS }) {
		m.free = append(m.free, *f)
	}
}

// ask notes what a rule leaves to the supplier, or unanswered.
func (m *material) ask(r *rule) {
	switch {
	case r.standing == Unheld:
		m.unheld = appendOnce(m.unheld, r)
	case r.ask != "":
		m.asks = appendOnce(m.asks, r)
	}
}

// colours notes what a constituent does to the colour.
func (m *material) colours(rs *rules, f *Figure) {
	c, found := rs.colouring[f.CAS]
	if !found || !f.High.Given() {
		return
	}
	c.share, c.source = f.High, f.Source
	m.colouring = append(m.colouring, c)
}

// browns notes what an allergen that is named without its share may do to the colour.
func (m *material) browns(rs *rules, r *rule) {
	for _, cas := range r.cas {
		if c, found := rs.colouring[cas]; found {
			c.Does = "may be in it, and " + c.Does
			m.colouring = append(m.colouring, c)
			return
		}
	}
}

func appendOnce[T comparable](list []T, item T) []T {
	if slices.Contains(list, item) {
		return list
	}
	return append(list, item)
}

// tally sums by rule within a source, and keeps the highest of the sources.
type tally struct {
	now, best []bring
}

// within adds a share to a rule's limit, and to those that are shared with it. aside: it
// is not the rule's own substance, so that its certificate still stands for that.
func (t *tally) within(r *rule, share units.Ratio, f *Figure, aside bool) {
	if r.quantified() {
		t.add(r, share, f, aside)
	}
	for _, wider := range r.within {
		t.add(wider, share, f, true)
	}
}

func (t *tally) add(r *rule, share units.Ratio, f *Figure, aside bool) {
	if !share.Given() {
		return
	}
	if i := slices.IndexFunc(t.now, func(b bring) bool { return b.rule == r }); i >= 0 {
		t.now[i].share = t.now[i].share.Add(share)
		t.now[i].aside = t.now[i].aside && aside
		return
	}
	t.now = append(t.now, bring{rule: r, share: share, aside: aside, source: f.Source})
}

// next ends a source.
func (t *tally) next() {
	for _, b := range t.now {
		i := slices.IndexFunc(t.best, func(known bring) bool { return known.rule == b.rule })
		if i < 0 {
			t.best = append(t.best, b)
		} else if b.share.Compare(t.best[i].share) > 0 {
			t.best[i] = b
		}
	}
	t.now = t.now[:0]
}

func (t *tally) brings() []bring {
	t.next()
	for i := range t.best {
		b := &t.best[i]
		b.share = atMostAll(b.share)
		if b.rule.quantified() {
			b.use = b.share.Float() / b.rule.limit.Float()
		}
	}
	slices.SortFunc(t.best, func(a, b bring) int { return cmp.Compare(a.rule.index, b.rule.index) })
	return t.best
}

// atMostAll cuts what the unlucky ends of several ranges add up to: there is no more
// than all of a material.
func atMostAll(share units.Ratio) units.Ratio {
	if all := units.Whole(1); share.Compare(all) > 0 {
		return all
	}
	return share
}
