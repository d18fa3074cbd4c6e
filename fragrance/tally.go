package fragrance

import (
	"slices"

	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// tally sums shares by a key within a source, and keeps the highest of the sources.
type tally[K comparable] struct{ now, best []counted[K] }

// counted is a share of a material, and where it stands.
type counted[K comparable] struct {
	key    K
	share  units.Ratio
	source cite.Source
	aside  bool // see [bring]
	base   bool // a Schiff base brings some of it
}

// add counts a share of the source that is being read; one that is not given is none.
func (t *tally[K]) add(one counted[K]) {
	if !one.share.Given() {
		return
	}
	if c := find(t.now, one.key); c != nil {
		c.share, c.aside, c.base = c.share.Add(one.share), c.aside && one.aside, c.base || one.base
		return
	}
	t.now = append(t.now, one)
}

// next ends a source.
func (t *tally[K]) next() {
	for _, c := range t.now {
		if known := find(t.best, c.key); known == nil {
			t.best = append(t.best, c)
		} else if c.share.Compare(known.share) > 0 {
			*known = c
		}
	}
	t.now = t.now[:0]
}

// highest ends the last source, and gives what was kept.
func (t *tally[K]) highest() []counted[K] {
	t.next()
	return t.best
}

// find gives what is counted of a key; nil where there is none.
func find[K comparable](list []counted[K], key K) *counted[K] {
	i := slices.IndexFunc(list, func(c counted[K]) bool { return c.key == key })
	if i < 0 {
		return nil
	}
	return &list[i]
}
