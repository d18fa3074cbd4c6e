package fragrance

import (
	"slices"
	"strconv"
	"strings"

	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

// blends checks the blends and takes each apart into what is no blend itself.
func (b *shelver) blends() {
	for i := range b.supplied {
		b.blend(i)
	}
	if len(b.faults) > 0 {
		return
	}
	for i := range b.own {
		b.takeApart(i)
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
	for j, line := range blend {
		at := item(list, j)
		switch {
		case line.Fragrance == "":
			b.fault(at+".fragrance", "", "is missing", "name a material", fault.ErrMissing)
		case b.indexOf(line.Fragrance) < 0 && !Known(line.Fragrance):
			b.unknown(at+".fragrance", line.Fragrance)
		}
		for k := range j {
			if line.Fragrance != "" && blend[k].Fragrance == line.Fragrance {
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
			if line.Fragrance == circle[1] {
				b.fault(item(list, j)+".fragrance", line.Fragrance, "leads back to "+units.Quote(b.supplied[i].ID)+": "+spelled(circle), "leave it out of one of these", fault.ErrConflict)
				break
			}
		}
	}
}

func (b *shelver) unknown(path, id string) {
	remedy := b.offer(id, &b.materialNames, func() []string {
		names := slices.Clone(ids())
		for i := range b.supplied {
			names = append(names, b.supplied[i].ID)
		}
		return names
	})
	if remedy == "" {
		remedy = "name a material of this list, or a built-in fragrance"
	}
	b.fault(path, id, "is not a material that is known", remedy, fault.ErrUnknown)
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
		for _, line := range b.supplied[i].Blend {
			next := b.indexOf(line.Fragrance)
			switch {
			case next == start:
				return []string{b.supplied[i].ID, line.Fragrance}
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
	for _, line := range b.supplied[i].Blend {
		var inner *material
		if j := b.indexOf(line.Fragrance); j >= 0 {
			inner = b.takeApart(j)
		} else {
			inner, _ = builtIn(b.rs, line.Fragrance) // checked
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
