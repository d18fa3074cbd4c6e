package tint

import (
	"strconv"

	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

// Check says what is wrong with the swatches: everything missing, out of its bounds, or
// too little to tell colourants apart, all together: needed are the base, two swatches of
// each colourant that differ, and as many as there are constants. The error is
// [fault.Faults], with paths such as "read[2].reflectance[5]", and says which swatch to
// make or what to measure.
func (s *Swatches) Check() error {
	_, err := s.checked()
	return err
}

// CheckEach says what is wrong with each swatch by itself, and not whether they suffice: that
// depends on which colourant is the white. The error is [fault.Faults], as of
// [Swatches.Check].
func (s *Swatches) CheckEach() error {
	c := checker{s: s}
	c.each()
	return c.faults.OrNil()
}

// checked is Check; it gives the readings, too.
func (s *Swatches) checked() (readings, error) {
	c := checker{s: s}
	c.each()
	if len(c.faults) == 0 {
		c.ladders()
	}
	var r readings
	if len(c.faults) == 0 {
		r = c.readings()
	}
	return r, c.faults.OrNil()
}

// each checks the swatches one by one.
func (c *checker) each() {
	s := c.s
	c.surface()
	switch n := len(s.Read); {
	case n > MostSwatches:
		c.fault("read", "", "are "+strconv.Itoa(n)+" swatches", "list at most "+strconv.Itoa(MostSwatches), fault.ErrLimit)
		return
	case n == 0:
		c.fault("read", "", "is missing", "list the swatches that were read", fault.ErrMissing)
		return
	}
	c.bands()
	c.noBands = len(c.faults) > 0
	for i := range s.Read {
		c.swatch(i)
	}
}

type checker struct {
	s       *Swatches
	faults  fault.Faults
	noBands bool // what is read cannot be held against them
}

func (c *checker) fault(path, text, reason, remedy string, kind error) {
	c.faults.Add(path, text, reason, remedy, kind)
}

func item(path string, i int) string { return path + "[" + strconv.Itoa(i) + "]" }

// figure prints a number that was given.
func figure(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }

func (c *checker) surface() {
	if c.s.Surface == nil {
		return
	}
	for _, side := range []struct {
		key   string
		value float64
	}{{"outside", c.s.Surface.Outside}, {"inside", c.s.Surface.Inside}} {
		if !(side.value >= 0 && side.value < 1) {
			c.fault("surface."+side.key, figure(side.value), "is not from 0 to below 1",
				"give the share of light that is reflected, such as 0.04 outside and 0.6 inside", fault.ErrRange)
		}
	}
}

func (c *checker) bands() {
	first := c.s.Read[0].way()
	b := c.s.Bands
	if b == (Bands{}) {
		if first == asSpectrum {
			c.fault("bands", "", "is missing", "say at which wavelengths the reflectances were read, such as from 400 nm in "+
				"steps of 10 nm", fault.ErrMissing)
		}
		return
	}
	if first == asLab || first == asSRGB {
		c.fault("bands", "", "is given for swatches that are no spectra", "leave it out", fault.ErrConflict)
		return
	}
	c.grid()
}

// grid checks the wavelengths.
func (c *checker) grid() {
	b := c.s.Bands
	if b.Step != 5 && b.Step != 10 && b.Step != 20 {
		c.fault("bands.step", strconv.Itoa(b.Step)+" nm", "is not a step that is known", "use 5, 10 or 20 nm", fault.ErrRange)
		return
	}
	if b.From < leastNM || b.From > mostFirstNM || b.From%gridNM != 0 {
		c.fault("bands.from", strconv.Itoa(b.From)+" nm", "is not a multiple of 5 nm from 380 to 400 nm",
			"begin at 400 nm or a little below: without the ends of the spectrum a colour cannot be known", fault.ErrRange)
		return
	}
	if b.Count > MostBands || b.last() < leastLastNM || b.last() > mostNM {
		least, most := (leastLastNM-b.From+b.Step-1)/b.Step+1, (mostNM-b.From)/b.Step+1
		c.fault("bands", "", "are "+strconv.Itoa(b.Count)+" bands from "+strconv.Itoa(b.From)+" nm in steps of "+
			strconv.Itoa(b.Step)+" nm", "list "+strconv.Itoa(least)+" to "+strconv.Itoa(most)+
			" values, so that the last is at 700 to 730 nm", fault.ErrRange)
	}
}

func (c *checker) swatch(i int) {
	s, path := &c.s.Read[i], item("read", i)
	if s.Name == "" {
		c.fault(path+".swatch", "", "is missing", "give the swatch a name", fault.ErrMissing)
	}
	for j := range i {
		if s.Name != "" && c.s.Read[j].Name == s.Name {
			c.fault(path+".swatch", s.Name, "stands twice, first at "+item("read", j), "give each swatch a name of its own",
				fault.ErrConflict)
			break
		}
	}
	c.loads(s.Loads, path+".loads")
	switch way := s.way(); way {
	case unread:
		c.fault(path, s.Name, "has no reading", "give its reflectance, lab or srgb", fault.ErrMissing)
		return
	case manifold:
		c.fault(path, s.Name, "is read in more than one way", "give one reading", fault.ErrConflict)
		return
	case c.s.Read[0].way():
	default:
		if first := c.s.Read[0].way(); first != unread && first != manifold {
			c.fault(path, s.Name, "is read in another way than "+units.Quote(c.s.Read[0].Name), "read every swatch the same way",
				fault.ErrConflict)
		}
		return
	}
	c.reading(s, path)
}

// loads checks what is in a mixture.
func (c *checker) loads(loads []Load, path string) {
	if len(loads) > MostColourants {
		c.fault(path, "", "are "+strconv.Itoa(len(loads))+" colourants", "list at most "+strconv.Itoa(MostColourants),
			fault.ErrLimit)
		return
	}
	all := units.Whole(0)
	for j, load := range loads {
		at := path + "." + load.Colourant
		if load.Colourant == "" {
			c.fault(path, "", "has a load of nothing", "name the colourant", fault.ErrMissing)
		}
		for _, other := range loads[:j] {
			if other.Colourant == load.Colourant {
				c.fault(at, load.Colourant, "stands twice", "put both into one", fault.ErrConflict)
			}
		}
		switch {
		case !load.OfBatter.Given():
			c.fault(at, "", "is missing", `give its share, such as "0.3 % of batter"`, fault.ErrMissing)
			continue
		case load.OfBatter.Sign() <= 0:
			c.fault(at, load.OfBatter.PercentText(12)+" %", "is not above 0 %", "leave out what is not in the swatch",
				fault.ErrRange)
			continue
		}
		all = all.Add(load.OfBatter)
	}
	if all.Compare(units.Whole(1)) > 0 {
		c.fault(path, all.PercentText(12)+" %", "is what they add up to, above 100 % of the batter", "check the loads",
			fault.ErrRange)
	}
}

func (c *checker) reading(s *Swatch, path string) {
	if c.noBands {
		return
	}
	switch s.way() {
	case asLab:
		c.lab(s, path+".lab")
	case asSRGB:
		for i, v := range s.SRGB.linear() {
			if c.s.surface().internal(v) <= 0 {
				c.fault(path+".srgb", s.SRGB.String(), "has no light in its "+[3]string{"red", "green", "blue"}[i]+
					c.beyondSurface(), "measure reflectance, or photograph it in more light", fault.ErrRange)
				break
			}
		}
	default:
		if !s.layered() {
			c.spectrum(s.Reflectance, path+".reflectance", true)
			return
		}
		c.layer(s, path)
	}
}

func (c *checker) lab(s *Swatch, path string) {
	lab := *s.Lab
	text := lab.String()
	if reason := labFault(lab); reason != "" {
		c.fault(path, text, reason, "give L from 0 to 100, a and b", fault.ErrRange)
		return
	}
	for i, v := range lab.stimulus().light() {
		name := [3]string{"red", "green", "blue"}[i]
		switch {
		case c.s.surface().internal(v) <= 0:
			c.fault(path, text, "has no light in its "+name+c.beyondSurface()+", which three bands cannot hold",
				"measure reflectance", fault.ErrRange)
		case v > 1+1e-6:
			c.fault(path, text, "is brighter than white in its "+name,
				"measure reflectance, or set the reading against white again", fault.ErrRange)
		default:
			continue
		}
		break
	}
}

// beyondSurface says that light is counted without what the surface alone reflects, where one
// is given.
func (c *checker) beyondSurface() string {
	if s := c.s.surface(); s.Outside > 0 && !s.NoGloss {
		return " beyond what the surface alone reflects, " + figure(s.Outside)
	}
	return ""
}

// mostLab is how far from grey a Lab may lie: real colours lie within.
const mostLab = 200

// labFault says what is wrong with a Lab, "" if nothing is.
func labFault(c Lab) string {
	switch {
	case !c.finite():
		return "is not a colour"
	case c.L < 0 || c.L > 100:
		return "has a lightness that is not from 0 to 100"
	case c.A < -mostLab || c.A > mostLab || c.B < -mostLab || c.B > mostLab:
		return "is farther from grey than any colour"
	default:
		return ""
	}
}

// spectrum checks the reflectances of the bands; ok is false where something is wrong.
func (c *checker) spectrum(list []float64, path string, above bool) (ok bool) {
	if bands := c.s.Bands.count(); len(list) != bands {
		c.fault(path, "", "has "+strconv.Itoa(len(list))+" values for "+strconv.Itoa(bands)+" bands",
			"give every swatch the same bands", fault.ErrConflict)
		return false
	}
	surface := c.s.surface()
	for j, r := range list {
		at := item(path, j)
		switch {
		case !finite(r):
			c.fault(at, figure(r), "is not a number", "measure it again", fault.ErrRange)
		case r < 0 || r > 1:
			remedy := "give the share of light that is reflected, 0 to 1"
			if r > 1 && r <= 100 {
				remedy = "give the share of light that is reflected, 0 to 1, not a percentage"
			}
			c.fault(at, figure(r), "is not from 0 to 1", remedy, fault.ErrRange)
		case above && surface.internal(r) <= 0 && surface.Outside > 0 && !surface.NoGloss:
			c.fault(at, figure(r), "is no more than the surface alone reflects, "+figure(surface.Outside),
				"measure with the gloss excluded, or lower surface.outside", fault.ErrRange)
		case above && surface.internal(r) <= 0:
			c.fault(at, figure(r), "is no light at all", "measure it again: nothing is quite black", fault.ErrRange)
		default:
			continue
		}
		return false // one value says it: the others are mostly wrong in the same way
	}
	return true
}

// layer checks a layer over black and white.
func (c *checker) layer(s *Swatch, path string) {
	before := len(c.faults)
	for i, key := range [2]string{"over_black", "over_white"} {
		if list := [2][]float64{s.OverBlack, s.OverWhite}[i]; list == nil {
			c.fault(path+"."+key, "", "is missing", "read the layer over black and over white", fault.ErrMissing)
		} else {
			c.spectrum(list, path+"."+key, true)
		}
	}
	if s.Thickness.Sign() <= 0 {
		c.fault(path+".thickness", "", "is missing", `give the thickness of the layer, such as "2 mm"`, fault.ErrMissing)
	}
	black, white := s.Backing[0], s.Backing[1]
	if !(black >= 0 && white <= 1 && white-black >= leastContrast) {
		c.fault(path+".backing", figure(black)+", "+figure(white), "is not a black and a white",
			"give the reflectances of both grounds, such as [0.05, 0.88]", fault.ErrRange)
	}
	if len(c.faults) > before {
		return
	}
	for j := range s.OverBlack {
		black, white := s.grounds(c.s.surface(), j)
		q, ok := absorbingOver(black, white)
		if !ok {
			c.fault(path, s.Name, "reads as no layer can at "+c.wavelength(j),
				"check the readings, and that backing gives what the grounds reflect", fault.ErrRange)
			return
		}
		if len(s.Loads) > 0 {
			continue // of a mixture K/S is enough
		}
		if _, ok := scatteringOver(s.Thickness.Millimetres(), q, black, white); !ok {
			c.fault(path, s.Name, "reads the same over black and white at "+c.wavelength(j),
				"cast a thinner layer: this one hides what is under it", fault.ErrRange)
			return
		}
	}
}

// leastContrast is how far apart two grounds must be to tell a layer by.
const leastContrast = 0.1

func (c *checker) wavelength(band int) string {
	return strconv.Itoa(c.s.Bands.From+band*c.s.Bands.Step) + " nm"
}
