package soap

import (
	"cmp"
	"errors"
	"slices"
	"strconv"
	"strings"

	"example.com/lyewright/colour"
	"example.com/lyewright/colour/tint"
	"example.com/lyewright/internal/nearest"
)

// colouring checks what the formula says of colour beside its parts.
func (c *checker) colouring() {
	f := c.f
	if f.Gel > NotGelled {
		c.fault(top("gel"), strconv.Itoa(int(f.Gel)), "is not known", "use GelUnknown, Gelled or NotGelled", ErrUnknown)
	}
	if len(f.Pigments) > 0 {
		c.pigments()
	}
	if f.Swatches != nil {
		c.swatchNames(f.Swatches)
		swatches := f.swatches(c.colours)
		check := swatches.Check
		if c.lostSwatch { // whether they suffice is not known
			check = swatches.CheckEach
		}
		if bands := f.Swatches.Bands; !c.lostSwatch || bands.Count > 0 || bands == (tint.Bands{}) {
			c.faultsOf(under("swatches", check()))
		}
		c.inSwatches = swatches.Colourants()
		if f.Calibration.Given() && !fits(f.Calibration, &swatches) {
			c.fault(top("swatches"), "", "are others than the calibration beside them was made of",
				"calibrate these, or leave the calibration out", ErrConflict)
		}
	}
}

// swatchNames checks the names that stand in swatches; all else is checked where swatches
// are known.
func (c *checker) swatchNames(s *tint.Swatches) {
	set := top("swatches")
	if s.Name != "" {
		c.name(set.at("name"), s.Name)
	}
	if len(s.Read) > tint.MostSwatches {
		return
	}
	list := set.at("read")
	for i := range s.Read {
		line := list.item(i)
		if s.Read[i].Name != "" { // said there, where it is missing
			c.name(line.at("swatch"), s.Read[i].Name)
		}
		for _, load := range s.Read[i].Loads {
			if load.Colourant != "" {
				c.name(line.at("loads"), load.Colourant)
			}
		}
	}
}

// pigments checks the maker's own colourants: their names here, all else where colourants
// are known.
func (c *checker) pigments() {
	list := top("pigments")
	if len(c.f.Pigments) <= colour.MostOwn {
		for i := range c.f.Pigments {
			p, line := &c.f.Pigments[i], list.item(i)
			if p.ID != "" { // said there, where it is missing
				c.name(line.at("colourant"), p.ID)
			}
			if p.Name != "" {
				c.name(line.at("name"), p.Name)
			}
			if c.f.ownFragrance(p.ID) {
				c.fault(line.at("colourant"), p.ID, "is the id of one of the formula's fragrances", "give it an id of its own",
					ErrConflict, "materials", "materials[].fragrance")
			}
		}
	}
	var err error
	c.colours, err = colour.NewShelf(c.f.Pigments)
	c.faultsOf(under("pigments", err))
}

// faultsOf takes over what another package found; inputs are what else it rests on.
func (c *checker) faultsOf(err error, inputs ...string) {
	var faults Faults
	if !errors.As(err, &faults) {
		return
	}
	for _, f := range faults {
		c.add(f, inputs...)
	}
}

// ownColourant reports whether a name is that of one of the maker's own colourants.
func (f *Formula) ownColourant(name string) bool {
	return slices.ContainsFunc(f.Pigments, func(p colour.Supplied) bool { return p.ID == name })
}

// target checks the colour that a part is meant to have, and what may be used for it.
func (c *checker) target(part trail, p *Part) {
	if !p.Target.Given() && len(p.Match) == 0 {
		return
	}
	t := part // a copy, so that a part without costs nothing
	target, match := t.at("target"), t.at("match")
	switch n := count(p.Target.Lab != nil, p.Target.SRGB != nil, p.Target.Reflectance != nil); {
	case n > 1:
		c.fault(target, "", "is given in more than one way", "give one of lab, srgb and reflectance", ErrConflict)
	case n == 0:
		c.fault(match, "", "is given without a target", `add "target": {"lab": [62, -8, -24]} or {"srgb": "#c8b49a"}`,
			ErrMissing, target.String())
	case p.Target.Reflectance != nil:
		c.reflectanceTarget(target.at("reflectance"), p.Target.Reflectance)
	case p.Target.Lab != nil:
		if err := p.Target.Lab.Check(); err != nil {
			c.faultsOf(under(target.String(), err))
		}
	}
	if len(p.Match) == 0 {
		return
	}
	if c.f.Swatches == nil {
		c.fault(match, "", "asks for loads, and there are no swatches to find them from",
			"add swatches, or give the colourants their loads", ErrMissing, "swatches")
	}
	if len(p.Match) > tint.MostFree {
		c.fault(match, "", "are "+strconv.Itoa(len(p.Match))+" colourants", "match with at most "+strconv.Itoa(tint.MostFree),
			ErrLimit)
		return
	}
	for i := range p.Match {
		m, line := &p.Match[i], match.item(i)
		at := line.at("colourant")
		c.name(at, m.Colourant)
		c.twice(match, "colourant", i, m.Colourant, func(j int) bool { return p.Match[j].Colourant == m.Colourant },
			"match with it once")
		if !c.misplaced(line, Colourant, m.Colourant) && m.Colourant != "" {
			c.unlisted(line, Colourant, &Addition{Name: m.Colourant, Unlisted: m.Unlisted, asked: m.asked})
		}
		if k := slices.IndexFunc(p.Colourants, func(a Addition) bool { return a.Name == m.Colourant }); k >= 0 &&
			m.Colourant != "" {
			path := t.at(Colourant.list())
			first := path.item(k)
			c.fault(at, m.Colourant, "has a load, too, at "+first.String(), "match with it, or give it a load", ErrConflict,
				first.String())
		} else {
			c.inSwatch(at, m.Colourant)
		}
		c.load(line.at("most"), &m.Most)
		c.carrier(line.at("carrier"), &m.Carrier)
	}
	for i := range p.Colourants {
		list := t.at(Colourant.list())
		line := list.item(i)
		c.inSwatch(line.at("colourant"), p.Colourants[i].Name)
	}
}

// inSwatch refuses a colourant that no swatch has, in a part whose loads are looked for.
func (c *checker) inSwatch(t trail, name string) {
	if c.f.Swatches == nil || name == "" || slices.Contains(c.inSwatches, name) {
		return
	}
	remedy := "cast and read two swatches with different loads of it"
	if _, known := c.colours.Find(name); !known {
		remedy = cmp.Or(nearest.Remedy(name, c.inSwatches), remedy)
	}
	c.fault(t, name, "stands in no swatch, and the part's colour is to be matched", remedy, ErrUnknown, "swatches")
}

func (c *checker) reflectanceTarget(t trail, list []float64) {
	if c.f.Swatches == nil || c.f.Swatches.Bands == (tint.Bands{}) {
		c.fault(t, "", "is a spectrum, and there are no swatches read at its bands", "give the target as lab or srgb",
			ErrMissing, "swatches")
		return
	}
	if n := c.f.Swatches.Bands.Count; len(list) != n {
		c.fault(t, "", "has "+strconv.Itoa(len(list))+" values, and the swatches "+strconv.Itoa(n)+" bands",
			"read the target at the bands of the swatches, or give it as lab or srgb", ErrConflict, "swatches")
		return
	}
	if _, err := c.f.Swatches.Bands.Colour(list); err != nil {
		path, _ := strings.CutSuffix(t.String(), ".reflectance")
		c.faultsOf(under(path, err), "swatches")
	}
}
