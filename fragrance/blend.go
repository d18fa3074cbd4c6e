package fragrance

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"example.com/lyewright/internal/names"
	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

// blends checks the blends and takes each apart into what is no blend itself.
func (b *shelver) blends() {
	b.meanings()
	for i := range b.supplied {
		if b.ctx.Err() != nil {
			return
		}
		b.blend(i)
	}
	if len(b.faults) > 0 {
		return
	}
	for i := range b.own {
		if b.ctx.Err() != nil {
			return
		}
		b.takeApart(i)
	}
}

// meanings finds the ids that the lines of all blends mean: of a material of the list, letter for letter and then but
// for its spelling, or of a built-in one, which may be called by a name in everyday use. A name that means none, or
// several, stands for itself.
func (b *shelver) meanings() {
	var spelled map[string]string
	for i := range b.supplied {
		blend := b.supplied[i].Blend
		if len(blend) > MostBlended {
			blend = nil // that is said
		}
		ids := make([]string, len(blend))
		for j, line := range blend {
			ids[j] = line.Fragrance
			if line.Fragrance == "" || b.indexOf(line.Fragrance) >= 0 || Known(line.Fragrance) {
				continue
			}
			if spelled == nil {
				spelled = make(map[string]string, len(b.supplied))
				for k := range slices.Backward(b.supplied) { // the first of those spelled alike counts
					spelled[names.Fold(b.supplied[k].ID)] = b.supplied[k].ID
				}
			}
			if id := spelled[names.Fold(line.Fragrance)]; id != "" {
				ids[j] = id
			} else if answer := names.Look(names.Fragrance, line.Fragrance, Known); answer.ID != "" && !answer.Unheld {
				ids[j] = answer.ID
			}
		}
		b.meant = append(b.meant, ids)
	}
}

// blend checks a blend's own lines, and that it does not lead back to itself.
func (b *shelver) blend(i int) {
	list := item("", i) + ".blend"
	blend := b.supplied[i].Blend
	if len(blend) == 0 {
		return
	}
	if len(blend) > MostBlended {
		b.fault(list, "", "are "+strconv.Itoa(len(blend))+" materials", "blend at most 50", fault.ErrLimit)
		return
	}
	all, whole := units.Whole(0), true
	ids := b.meant[i]
	for j, line := range blend {
		at := item(list, j)
		switch {
		case line.Fragrance == "":
			b.fault(at+".fragrance", "", "is missing", "name a material", fault.ErrMissing)
		case b.indexOf(ids[j]) < 0 && !Known(ids[j]):
			b.unknown(at+".fragrance", line.Fragrance)
		}
		for k := range j {
			if line.Fragrance != "" && ids[k] == ids[j] {
				b.fault(at+".fragrance", line.Fragrance, "stands twice", "put both into one", fault.ErrConflict)
				break
			}
		}
		switch {
		case !line.Share.Given():
			b.fault(at+".share", "", "is missing", "give its share of the blend", fault.ErrMissing)
			whole = false
		case line.Share.Sign() <= 0 || line.Share.Compare(units.Whole(1)) > 0:
			b.fault(at+".share", line.Share.PercentText(12)+" %", "is not between 0 % and 100 %", "give its share of the blend", fault.ErrRange)
			whole = false
		default:
			all = all.Add(line.Share)
		}
	}
	if whole && !all.Equal(units.Whole(1)) {
		b.fault(list, all.PercentText(12)+" %", "is what the shares add up to", "make them add up to 100 %", fault.ErrRange)
	}
	if circle := b.circle(i); circle != nil {
		for j, line := range blend {
			if ids[j] == circle[1] {
				b.fault(item(list, j)+".fragrance", line.Fragrance, "leads back to "+units.Quote(b.supplied[i].ID)+": "+spelled(circle), "leave it out of one of these", fault.ErrConflict)
				break
			}
		}
	}
}

// unknown says why a name in a blend is taken for no material, and what would be right: what it may mean, one of the
// list that is spelled almost so, or a built-in one that is harmless to offer.
func (b *shelver) unknown(path, name string) {
	reason, choice := names.Look(names.Fragrance, name, Known).Why(Known, nil)
	remedy := "name a material of this list, or a built-in fragrance"
	switch {
	case len(choice) > 0:
		remedy = "write " + strings.Join(choice, " or ")
	case reason == "":
		reason = "is not a material that is known"
		offered := b.offer(name, &b.materialNames, func() []string {
			own := make([]string, len(b.supplied))
			for i := range b.supplied {
				own[i] = b.supplied[i].ID
			}
			return own
		})
		if offered == "" && b.offers <= mostOffers {
			offered = Suggest(name)
		}
		remedy = cmp.Or(offered, remedy)
	}
	b.fault(path, name, reason, remedy, fault.ErrUnknown)
}

// indexOf finds a material of the list, or -1.
func (b *shelver) indexOf(id string) int {
	for i := range b.supplied {
		if b.supplied[i].ID == id {
			return i
		}
	}
	return -1
}

// spelled gives a way in words, a long one by its ends.
func spelled(way []string) string {
	if n := len(way); n > 8 {
		way = slices.Concat(way[:4], []string{"…"}, way[n-3:])
	}
	return strings.Join(way, " → ")
}

// circle gives the way on which a blend leads back to itself, said of the first
// material of the circle alone; nil where there is none.
func (b *shelver) circle(start int) []string {
	seen := make([]bool, len(b.supplied))
	var way func(i int) []string
	way = func(i int) []string {
		for _, id := range b.meant[i] {
			next := b.indexOf(id)
			switch {
			case next == start:
				return []string{b.supplied[i].ID, id}
			case next < start || seen[next]: // said of that one, or no way
				continue
			}
			seen[next] = true
			if rest := way(next); rest != nil {
				return append([]string{b.supplied[i].ID}, rest...)
			}
		}
		return nil
	}
	return way(start)
}

// takeApart fills a blend with what is no blend itself, and its shares.
func (b *shelver) takeApart(i int) *material {
	m := b.own[i]
	if len(m.parts) > 0 {
		return m
	}
	for k, line := range b.supplied[i].Blend {
		var inner *material
		id := b.meant[i][k]
		if j := b.indexOf(id); j >= 0 {
			inner = b.takeApart(j)
		} else {
			inner, _ = builtIn(b.rs, id) // checked
		}
		m.behaviour |= inner.behaviour
		m.recalled |= inner.recalled
		for _, p := range inner.parts {
			m.blendIn(p, line.Share)
		}
	}
	return m
}

// blendIn adds a share of a part; the same material by two ways is one.
func (m *material) blendIn(p portion, of units.Ratio) {
	share := p.share.Times(of)
	for k := range m.parts {
		if known := &m.parts[k]; known.m.id == p.m.id {
			known.share = known.share.Add(share)
			known.part = known.share.Float()
			return
		}
	}
	m.parts = append(m.parts, portion{m: p.m, share: share, part: share.Float()})
}
