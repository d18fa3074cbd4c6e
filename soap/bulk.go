package soap

import (
	"math"

	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
)

// bulk holds the densities of all that is in a batch, in g/mL at the pouring
// temperature, as float64: volumes are estimates. A density of 0 is not known; what
// has none counts at the batter's own.
type bulk struct {
	at       units.Temperature
	water    float64
	oils     []filler
	loads    [][]filler // part by part, as in solved.loads: each addition,
	carriers [][]filler // and its carrier
	alkalis  []portion
	unknown  []string // the names of what has no density, in the formula's order

	strength, lye float64 // the last strength whose density was looked up
}

// filler is a density with the ends of its range.
type filler struct{ low, planned, high float64 }

func (f filler) pick(e end) float64 {
	switch e {
	case lowest:
		return f.low
	case highest:
		return f.high
	default:
		return f.planned
	}
}

// portion is an alkali's part of all the hydroxide.
type portion struct {
	alkali Alkali
	share  float64
}

// contents are what is in a batch, in grams.
type contents struct {
	oils        []float64 // in the pot
	alkali      float64
	hydroxide   float64
	asked, held float64 // water: asked for, and of it held back for carriers
	others      float64 // acids and what is not water in liquids
	pot         float64
	batter      []float64   // of each part
	loads       [][]float64 // part by part
	carriers    [][]float64
	poured      []float64
}

// pourAt is the batter's temperature when it is poured: 40 °C where it is not given.
func (f *Formula) pourAt() units.Temperature {
	if f.Temperature.Pour.Given() {
		return f.Temperature.Pour
	}
	return units.Celsius(40)
}

// bulkOf looks up the density of all that is in a formula.
func (s *solved) bulkOf(factors []alkaliFactor) *bulk {
	f := s.f
	b := &bulk{at: f.pourAt()}
	celsius := b.at.Celsius()
	water, _ := lye.DensityOfWater(b.at)
	b.water = water.Float()
	named := func(name string, f filler) filler {
		if f.planned == 0 {
			b.lacks(name)
		}
		return f
	}
	oil := func(o Oil) filler {
		low, planned, high, _ := o.densities(celsius)
		return filler{low, planned, high}
	}
	b.oils = make([]filler, len(f.Oils))
	for i := range f.Oils {
		b.oils[i] = named(f.Oils[i].Oil.Name(), oil(f.Oils[i].Oil))
	}
	hydroxide := 0.0
	for i := range f.Alkalis {
		l := &f.Alkalis[i]
		p := portion{l.Alkali, factors[i].float() * l.planned().Typical.Float()}
		b.alkalis = append(b.alkalis, p)
		hydroxide += p.share
	}
	for i := range b.alkalis {
		b.alkalis[i].share /= hydroxide
	}
	for i := range f.Acids {
		b.lacks(f.Acids[i].Acid.Name)
	}
	for i := range f.Water.Liquids {
		if l := &f.Water.Liquids[i]; l.Water.Compare(units.Whole(1)) < 0 {
			b.lacks(l.Name)
		}
	}
	b.loads, b.carriers = make([][]filler, len(s.loads)), make([][]filler, len(s.loads))
	for i := range s.loads {
		b.loads[i], b.carriers[i] = make([]filler, len(s.loads[i])), make([]filler, len(s.loads[i]))
		for j := range s.loads[i] {
			l := &s.loads[i][j]
			b.loads[i][j] = named(l.addition.Name, pigment(l))
			switch carrier := l.addition.Carrier; carrier.In {
			case InWater:
				b.carriers[i][j] = filler{b.water, b.water, b.water}
			case InGlycerin:
				b.carriers[i][j] = filler{glycerin, glycerin, glycerin}
			case InOil:
				if l.line >= 0 {
					b.carriers[i][j] = b.oils[l.line]
				} else {
					b.carriers[i][j] = named(l.oil.Name(), oil(l.oil))
				}
			}
		}
	}
	for i := range f.Embeds { // by mass it displaces, by volume it weighs
		if e := &f.Embeds[i]; e.Sunk || e.Volume.Sign() > 0 {
			b.lacks(e.Name)
		}
	}
	return b
}

// glycerin is the density of glycerol at 20 °C in g/mL (CRC Handbook, physical
// constants of organic compounds; read as an open data set holds it). How it changes
// with the temperature is not held; a batch has little of it.
const glycerin = 1.2613

// pigment gives the density of a colourant, or of a clay among the additives.
func pigment(l *loaded) filler {
	low, planned, high := l.colourant.Density()
	return filler{low.Float(), planned.Float(), high.Float()}
}

// lacks lists what has no density, each once.
func (b *bulk) lacks(name string) {
	for _, known := range b.unknown {
		if known == name {
			return
		}
	}
	b.unknown = append(b.unknown, name)
}

// lyeAt gives the density of the lye as asked for; ok is false above 50 %, where it
// is not known. Two alkalis count as two lyes of one strength, side by side.
func (b *bulk) lyeAt(strength float64) (density float64, ok bool) {
	// A density is a whole number of 10^-9 g/mL. Looked up afresh for every strength it
	// would step to and fro at such a step, and the search never come to rest.
	if math.Abs(strength-b.strength) < 1e-9 {
		return b.lye, b.lye > 0
	}
	b.strength, b.lye = strength, 0
	share, ok := units.RatioOfFloat(strength)
	if !ok {
		return 0, false
	}
	volume := 0.0
	for _, a := range b.alkalis {
		d, err := lye.Solution{Alkali: a.alkali, Strength: share, At: b.at}.Density()
		if err != nil {
			return 0, false
		}
		volume += a.share / d.Float()
	}
	b.lye = 1 / volume
	return b.lye, true
}

// pot gives the volumes of what is in the pot in mL: its oils and its lye, as far as
// their densities are known, and all of it. The lye is that asked for, less the water
// held back: volumes add up, wherever the water goes. ok is false where the lye's
// density is not known.
func (b *bulk) pot(c *contents, e end) (oils, lye, all float64, ok bool) {
	known := c.alkali + c.asked - c.held
	asked, ok := b.lyeAt(c.hydroxide / (c.alkali + c.asked))
	if !ok {
		return 0, 0, 0, false
	}
	lye = (c.alkali+c.asked)/asked - c.held/b.water
	for i, mass := range c.oils {
		if density := b.oils[i].pick(e); density > 0 {
			known += mass
			oils += mass / density
		}
	}
	return oils, lye, c.pot * (oils + lye) / known, true
}

// poured gives the volume of what is poured of a part, and its density, also in g/mL.
func (b *bulk) poured(c *contents, i int, batter float64) (units.Volume, units.Density, float64) {
	mass, volume := b.part(c, i, batter, planned)
	density, _ := units.DensityOfFloat(mass / volume)
	return millilitres(volume), density, mass / volume
}

// part gives the mass of a part in g and its volume in mL, at a density of the
// batter.
func (b *bulk) part(c *contents, i int, batter float64, e end) (mass, volume float64) {
	mass = c.batter[i]
	volume = mass / batter
	add := func(grams, density float64) {
		if density == 0 {
			density = batter
		}
		mass += grams
		volume += grams / density
	}
	for j, grams := range c.loads[i] {
		add(grams, b.loads[i][j].pick(e))
		add(c.carriers[i][j], b.carriers[i][j].pick(e))
	}
	return mass, volume
}
