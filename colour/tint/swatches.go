package tint

import (
	"example.com/lyewright/units"
)

// Swatches are pieces of soap of known make, and what was read of them: all read the same
// way, under the light D65. It is plain data.
type Swatches struct {
	Name  string
	Bands Bands // of spectra; the zero value where swatches are read as Lab or sRGB
	// Surface is what was read through; nil: [UsualSurface] for spectra, none for Lab
	// and sRGB.
	Surface *Surface
	Read    []Swatch // at most 100

	// White is the colourant whose scattering is the unit, 1 per percent; empty where
	// none of the swatches has a white: the base's is 1 then.
	White string
}

// Swatch is one piece, and what was read of it: exactly one of Reflectance, OverBlack with
// OverWhite, Lab and SRGB.
type Swatch struct {
	Name  string
	Loads []Load // none: the base alone

	Reflectance []float64 // of a piece so thick that nothing shines through: 0 to 1, band by band

	// A layer of known thickness over two grounds, black and white, whose reflectances as
	// the layer meets them are Backing.
	OverBlack, OverWhite []float64
	Thickness            units.Length
	Backing              [2]float64

	Lab  *Lab
	SRGB *SRGB
}

// Load is how much of a colourant is in a mixture.
type Load struct {
	Colourant string
	OfBatter  units.Ratio // by mass, of the batter without it: over 0 % to 100 %
}

// The bounds of a set. More is refused before it costs anything.
const (
	MostSwatches   = 100
	MostColourants = 20 // in all swatches of a set together
	MostBands      = (mostNM-leastNM)/gridNM + 1
)

// way is how a swatch was read.
type way uint8

const (
	unread way = iota
	asSpectrum
	asLab
	asSRGB
	manifold // in more than one way
)

func (s *Swatch) layered() bool { return s.OverBlack != nil || s.OverWhite != nil }

func (s *Swatch) way() way {
	w := unread
	for _, given := range []struct {
		as way
		is bool
	}{
		{asSpectrum, s.Reflectance != nil},
		{asSpectrum, s.layered()},
		{asLab, s.Lab != nil},
		{asSRGB, s.SRGB != nil},
	} {
		switch {
		case !given.is:
		case w != unread:
			return manifold
		default:
			w = given.as
		}
	}
	return w
}

// surface is what the swatches were read through.
func (s *Swatches) surface() Surface {
	switch {
	case s.Surface != nil:
		return *s.Surface
	case s.Bands != (Bands{}):
		return UsualSurface()
	default:
		return Surface{}
	}
}

// Colourants lists what the swatches hold, the white first, the others in order of their
// first swatch.
func (s *Swatches) Colourants() []string {
	var ids []string
	seen := map[string]bool{}
	if s.White != "" {
		ids, seen[s.White] = append(ids, s.White), true
	}
	for i := range s.Read {
		for _, load := range s.Read[i].Loads {
			if !seen[load.Colourant] {
				ids, seen[load.Colourant] = append(ids, load.Colourant), true
			}
		}
	}
	return ids
}
