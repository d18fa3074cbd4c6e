package tint

import "math"

// Surface is what light meets at the surface of a bar: Saunderson's correction. The
// zero value is no surface at all.
//
// Source: J. L. Saunderson, J. Opt. Soc. Am. 32 (1942) 727 (recalled), as restated after
// E. Allen (1980), eq. 24 and 26 (read).
type Surface struct {
	Outside float64 // share of light reflected before it enters: 0 to below 1
	Inside  float64 // share reflected back inside, of diffuse light: 0 to below 1
	// NoGloss: read without the gloss, so that what is reflected outside is not in it.
	NoGloss bool
}

// UsualSurface is that of spectra where none is given: 0.04 outside and 0.6 inside, the
// gloss included, as theory gives them for a refractive index of 1.5 (computed).
func UsualSurface() Surface { return Surface{Outside: 0.04, Inside: 0.6} }

// measured gives what is read of a reflectance inside.
func (s Surface) measured(inside float64) float64 {
	r := (1 - s.Outside) * (1 - s.Inside) * inside / (1 - s.Inside*inside)
	if s.NoGloss {
		return r
	}
	return s.Outside + r
}

// reads is measured of an opaque piece that absorbs k and scatters s, in one division: a
// search asks for it a hundred thousand times.
func (s Surface) reads(k, scatters float64) float64 {
	scatters = max(scatters, leastOfAll)
	d := scatters + k + math.Sqrt(k*(k+2*scatters)) // R = scatters/d
	r := (1 - s.Outside) * (1 - s.Inside) * scatters / (d - s.Inside*scatters)
	if s.NoGloss {
		return r
	}
	return s.Outside + r
}

// internal gives the reflectance inside of what is read: not above 0 where that is no
// more than the gloss.
func (s Surface) internal(measured float64) float64 {
	if !s.NoGloss {
		measured -= s.Outside
	}
	return measured / ((1-s.Outside)*(1-s.Inside) + s.Inside*measured)
}

// slope is the derivative of measured.
func (s Surface) slope(inside float64) float64 {
	d := 1 - s.Inside*inside
	return (1 - s.Outside) * (1 - s.Inside) / (d * d)
}
