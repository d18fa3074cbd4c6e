package tint

import (
	"context"

	"example.com/lyewright/units"
)

// readings are swatches as K/S: what every band of an opaque piece of each reflects.
type readings struct {
	inside [][]float64 // swatch by swatch, band by band: reflectance inside, opaque
	// scattering is the base's own, in 1/mm, band by band; nil where no base was read
	// over black and white.
	scattering []float64
}

// readings works out what swatches in order reflect.
func (c *checker) readings() readings {
	s := c.s
	surface, bands := s.surface(), s.Bands.count()
	r := readings{inside: make([][]float64, len(s.Read))}
	bases := 0.0
	for i := range s.Read {
		swatch, inside := &s.Read[i], make([]float64, bands)
		r.inside[i] = inside
		var light light
		switch swatch.way() {
		case asLab:
			light = swatch.Lab.stimulus().light()
		case asSRGB:
			light = swatch.SRGB.linear()
		}
		base := swatch.layered() && len(swatch.Loads) == 0
		if base {
			bases++
			if r.scattering == nil {
				r.scattering = make([]float64, bands)
			}
		}
		for j := range inside {
			switch {
			case s.Bands == (Bands{}):
				inside[j] = surface.internal(min(1, light[j]))
			case !swatch.layered():
				inside[j] = surface.internal(swatch.Reflectance[j])
			default:
				black, white := swatch.grounds(surface, j)
				q, _ := absorbingOver(black, white)
				inside[j] = opaque(q)
				if base { // the mean of all bases
					s, _ := scatteringOver(swatch.Thickness.Millimetres(), q, black, white)
					r.scattering[j] += (s - r.scattering[j]) / bases
				}
			}
		}
	}
	return r
}

// grounds gives what is under a layer in a band, and what is read of it.
func (s *Swatch) grounds(surface Surface, band int) (black, white ground) {
	return ground{s.Backing[0], surface.internal(s.OverBlack[band])}, ground{s.Backing[1], surface.internal(s.OverWhite[band])}
}

// fill writes the equation of a mixture in one band: K0 + Σck − Q(S0 + Σcs) = 0, with
// weight. The unknowns are K0, then S0 but where it is the unit, then k and s of each
// colourant, the white's k alone. It gives what stands on the right, for what is the unit.
func (s *Swatches) fill(row, loads []float64, q, weight float64) (right float64) {
	row[0] = weight
	next := 1
	if s.White != "" {
		row[next] = -q * weight
		next++
	} else {
		right = q * weight
	}
	for j, load := range loads {
		row[next] = load * weight
		next++
		if j == 0 && s.White != "" {
			right = q * load * weight
			continue
		}
		row[next] = -q * load * weight
		next++
	}
	return right
}

// unknowns is how many constants there are in a band: K and S of the base and of each
// colourant, but for the one that is the unit.
func unknowns(colourants int) int { return 2*colourants + 1 }

// passes is how often the equations are solved: each time a row is divided by the
// scattering that the time before gave it, so that what counts is the error of K/S.
const passes = 3

// Calibrate works out how much the base and each colourant absorb and scatter, band by
// band, by non-negative least squares on K0 + Σck − Q(S0 + Σcs) = 0, each row weighted
// with the reading's error and its own scattering. Where a base was read over black and
// white the constants are per millimetre, and thin layers can be predicted. The error is
// that of [Swatches.Check].
//
// Sources: Walowit, McCarthy, Berns, Color Research and Application 12 (1987) 340
// (recalled) for the linear form.
func (s *Swatches) Calibrate() (Calibration, error) {
	return s.CalibrateContext(context.Background())
}

// CalibrateContext is [Swatches.Calibrate] with a context. It stops within a few milliseconds
// after ctx ends, and the error is then ctx.Err().
func (s *Swatches) CalibrateContext(ctx context.Context) (Calibration, error) {
	ended := func() bool { return ctx.Err() != nil }
	r, err := s.checked()
	if err != nil {
		return Calibration{}, err
	}
	ids := s.Colourants()
	c := &calibration{
		bands: s.Bands, surface: s.surface(), eye: s.Bands.eye(), ids: ids, white: s.White,
		base: mixture{make([]float64, s.Bands.count()), make([]float64, s.Bands.count())}, absolute: r.scattering != nil,
	}
	for range ids {
		c.per = append(c.per, mixture{make([]float64, s.Bands.count()), make([]float64, s.Bands.count())})
	}
	loads := mixtures(s.Read, ids)
	for _, id := range ids {
		most := units.Whole(0)
		for i := range s.Read {
			if load := s.Read[i].load(id); load.Given() && load.Compare(most) > 0 {
				most = load
			}
		}
		c.most = append(c.most, most)
	}
	sys := newSystem(len(loads), unknowns(len(ids)))
	scattering := make([]float64, len(loads))
	for band := range s.Bands.count() {
		for i := range scattering {
			scattering[i] = 1
		}
		for range passes {
			for i, inside := range r.inside {
				weight := c.surface.slope(inside[band]) * slopeOfOpaque(inside[band]) / scattering[i]
				sys.b[i] = s.fill(sys.a[i*sys.unknowns:(i+1)*sys.unknowns], loads[i], absorbing(inside[band]), weight)
			}
			c.take(band, sys.nonNegative(ended))
			if ended() {
				return Calibration{}, ctx.Err()
			}
			most := 0.0
			for i := range loads {
				_, scattering[i] = c.band(band, loads[i])
				most = max(most, scattering[i])
			}
			for i := range scattering {
				scattering[i] = max(scattering[i], most*leastScattering)
			}
		}
		if r.scattering != nil && c.base.s[band] > 0 {
			c.scale(band, r.scattering[band]/c.base.s[band])
		}
	}
	c.judge(s.Read, r.inside, loads)
	return Calibration{c}, nil
}

// leastScattering keeps a row whose scattering came out as nothing from drowning the
// others: a share of the most.
const leastScattering = 1e-6

// slopeOfOpaque is how much an opaque piece's reflectance falls with K/S, from the
// reflectance itself. It grows without end towards a perfect white, which nothing is.
func slopeOfOpaque(reflectance float64) float64 {
	r := min(reflectance, mostReflecting)
	return 2 * r * r / (1 - r*r)
}

const mostReflecting = 0.9999

// take writes what was solved for one band down.
func (c *calibration) take(band int, x []float64) {
	c.base.k[band], c.base.s[band] = x[0], 1
	next := 1
	if c.white != "" {
		c.base.s[band] = x[next]
		next++
	}
	for j := range c.per {
		c.per[j].k[band], c.per[j].s[band] = x[next], 1
		next++
		if j == 0 && c.white != "" {
			continue
		}
		c.per[j].s[band] = x[next]
		next++
	}
}

// scale multiplies everything in a band: only the ratios follow from opaque swatches.
func (c *calibration) scale(band int, by float64) {
	c.base.k[band] *= by
	c.base.s[band] *= by
	for j := range c.per {
		c.per[j].k[band] *= by
		c.per[j].s[band] *= by
	}
}

// judge measures how far every swatch is from what the calibration makes of it.
func (c *calibration) judge(swatches []Swatch, inside, loads [][]float64) {
	read := make([]float64, len(c.eye))
	for i := range swatches {
		for j, r := range inside[i] {
			read[j] = c.surface.measured(r)
		}
		r := Residual{Swatch: swatches[i].Name, Difference: c.eye.sees(read).lab().Difference(c.see(loads[i]))}
		c.residuals = append(c.residuals, r)
		c.mean += r.Difference / float64(len(swatches))
		c.worst = max(c.worst, r.Difference)
	}
}
