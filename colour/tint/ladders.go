package tint

import (
	"math"
	"slices"
	"strconv"

	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

// ladders checks that the swatches suffice: the base, two loads of the white, and two of
// each colourant, of which one may be without white.
func (c *checker) ladders() {
	ids := c.s.Colourants()
	if len(ids) > MostColourants {
		c.fault("read", "", "hold "+strconv.Itoa(len(ids))+" colourants", "calibrate at most "+strconv.Itoa(MostColourants)+
			" together", fault.ErrLimit)
		return
	}
	base := false
	for i := range c.s.Read {
		base = base || len(c.s.Read[i].Loads) == 0
	}
	if !base {
		c.fault("read", "", "has no swatch of the base", "cast and read the batter without any colourant", fault.ErrMissing)
	}
	before := len(c.faults)
	for _, id := range ids {
		c.ladder(id)
	}
	if len(c.faults) == before && base && len(ids) > 0 {
		c.tellApart(ids)
	}
}

// ladder checks that a colourant stands in two swatches that differ. Of the white the
// loads must differ; of another it is enough that one is without white.
func (c *checker) ladder(id string) {
	var rungs []units.Ratio
	differ, first, path := false, Swatch{}, "read"
	for i := range c.s.Read {
		s := &c.s.Read[i]
		load := s.load(id)
		if !load.Given() {
			continue
		}
		if len(rungs) == 0 {
			first, path = *s, item("read", i)+".loads."+id
		}
		rungs = append(rungs, load)
		differ = differ || !load.Equal(rungs[0]) ||
			!s.load(c.s.White).Or(units.Whole(0)).Equal(first.load(c.s.White).Or(units.Whole(0)))
	}
	switch {
	case differ:
	case len(rungs) == 0: // the white that someone named is in no swatch
		c.fault("read", id, "is the white, and is in no swatch",
			"cast and read two swatches with different loads of it alone", fault.ErrMissing)
	case len(rungs) == 1:
		c.fault(path, "", "stands in this swatch alone, with "+rungs[0].PercentText(6)+" %", c.another(id, rungs[0]),
			fault.ErrMissing)
	default:
		c.fault(path, "", "has the same load in every swatch, "+rungs[0].PercentText(6)+" %", c.another(id, rungs[0]),
			fault.ErrMissing)
	}
}

// another says which swatch would be the second rung.
func (c *checker) another(id string, load units.Ratio) string {
	remedy := "cast and read one with another load of it, such as " + load.Times(units.Whole(2)).PercentText(6) +
		" % of batter"
	if id != c.s.White && c.s.White != "" {
		remedy += ", or with this load and without white"
	}
	return remedy
}

// load gives how much of a colourant is in a swatch; not given where none is.
func (s *Swatch) load(id string) units.Ratio {
	for _, load := range s.Loads {
		if load.Colourant == id {
			return load.OfBatter
		}
	}
	return units.Ratio{}
}

// tellApart refuses swatches from which the constants do not follow: too few of them, or
// colourants that always stand in the same proportion. It looks at what is in them, as
// they would read with made-up constants that differ in all.
func (c *checker) tellApart(ids []string) {
	m := mixtures(c.s.Read, ids)
	lost := c.lost(m)
	if lost == 0 {
		return
	}
	// The first colourant of which one more swatch, alone in the base, would tell more.
	for j, id := range ids {
		more, most := make([]float64, len(ids)), 0.0
		for i := range m {
			most = max(most, m[i][j])
		}
		if more[j] = 1.37 * most; c.lost(append(slices.Clone(m), more)) < lost {
			c.fault("read", "", "are "+strconv.Itoa(len(m))+" swatches, too few of their kind to tell the colourants apart",
				"cast and read "+units.Quote(id)+" alone in the base, with another load than those there are", fault.ErrMissing)
			return
		}
	}
	c.fault("read", "", "are "+strconv.Itoa(len(m))+" swatches, which do not tell the colourants apart",
		"cast and read each of them alone in the base, with two loads", fault.ErrMissing)
}

// lost is how many constants do not follow from mixtures.
func (c *checker) lost(m [][]float64) int {
	sys := newSystem(len(m), unknowns(len(m[0])))
	for i, loads := range m {
		k, s := 0.3, 0.7
		for j, load := range loads {
			k += load * math.Sqrt(float64(2+j))
			s += load / math.Sqrt(float64(3+j))
		}
		c.s.fill(sys.a[i*sys.unknowns:(i+1)*sys.unknowns], loads, k/s, 1)
	}
	return len(sys.dependent())
}

// mixtures gives the loads of the swatches in percent, colourant by colourant.
func mixtures(swatches []Swatch, ids []string) [][]float64 {
	m := make([][]float64, len(swatches))
	for i := range swatches {
		m[i] = make([]float64, len(ids))
		for j, id := range ids {
			m[i][j] = 100 * swatches[i].load(id).Or(units.Whole(0)).Float()
		}
	}
	return m
}
