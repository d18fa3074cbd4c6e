package fragrance

import (
	"cmp"
	"slices"

	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// Several editions may stand for one oil. They are never added: within each its
// constituents are summed rule by rule, and of the sums the highest counts.

// assemble works out what a material brings to every rule from its figures, those of
// one source in a row. What is prohibited is a natural trace here: added as such it was
// refused.
func (m *material) assemble(rs *rules) {
	var limits, labels tally[*rule]
	var colours tally[*Colouring]
	for i := range m.figures {
		f := &m.figures[i]
		if i > 0 && f.Source != m.figures[i-1].Source {
			limits.next()
			labels.next()
			colours.next()
		}
		if c := rs.colouring[f.CAS]; c != nil {
			colours.add(counted[*Colouring]{key: c, share: f.High, source: f.Source})
		}
		if !rs.known(f.CAS) {
			m.frees(f)
			continue
		}
		rs.of(f.CAS, func(r *rule, share units.Ratio, base bool) {
			one := counted[*rule]{key: r, share: f.High.Times(share), source: f.Source, aside: base, base: base}
			if r.list != NotListed && !base {
				labels.add(one)
			}
			within(&limits, one)
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
		whole := counted[*rule]{key: r, share: units.Whole(1), source: r.source}
		limits.next()
		labels.next()
		if r.list != NotListed {
			labels.add(whole)
		}
		within(&limits, whole)
		m.ask(r)
	}
	m.limits, m.labels = rs.brings(&limits), rs.brings(&labels)
	for _, c := range colours.highest() {
		colouring := *c.key
		colouring.Share = c.share
		m.colouring = append(m.colouring, colouring)
	}
}

// within adds a share to its rule's limit, and to those that are shared with it. What is
// not the rule's own substance stands aside, so that a certificate still stands for that.
func within(limits *tally[*rule], one counted[*rule]) {
	if one.key.quantified() {
		limits.add(one)
	}
	for _, wider := range one.key.within {
		one.key, one.aside = wider, true
		limits.add(one)
	}
}

// released adds to the source of a material's list where it stands what a Schiff base in it
// counts as, and whose reading that is under European law.
func (rs *rules) released(own cite.Source, body Body) cite.Source {
	own.Place += "; a Schiff base in it counts as its aldehyde, by " + rs.bases
	if body == EU {
		own.Place += " (in European law our reading)"
	}
	return own
}

// brings is what a tally comes to for each rule, in the rules' order.
func (rs *rules) brings(t *tally[*rule]) []bring {
	counts := t.highest()
	list := make([]bring, len(counts))
	for i, c := range counts {
		list[i] = bring{rule: c.key, share: atMostAll(c.share), aside: c.aside, source: c.source}
		if c.base {
			list[i].source = rs.released(c.source, c.key.body)
		}
		if c.key.quantified() {
			list[i].use = list[i].share.Float() / c.key.limit.Float()
		}
	}
	slices.SortFunc(list, func(a, b bring) int { return cmp.Compare(a.rule.index, b.rule.index) })
	return list
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

// browns notes what an allergen that is named without its share may do to the colour.
func (m *material) browns(rs *rules, r *rule) {
	for _, cas := range r.cas {
		if c := rs.colouring[cas]; c != nil {
			m.colouring = append(m.colouring, Colouring{Substance: c.Substance, Does: "may be in it, and " + c.Does, How: c.How})
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

// atMostAll cuts what the unlucky ends of several ranges add up to: there is no more
// than all of a material.
func atMostAll(share units.Ratio) units.Ratio {
	if all := units.Whole(1); share.Compare(all) > 0 {
		return all
	}
	return share
}
