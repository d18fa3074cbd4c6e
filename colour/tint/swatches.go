package tint

import (
	"example.com/lyewright/units"
)

// Swatches are pieces of soap of known make, and what was read of them: all of one base,
// all read the same way, under the light D65. It is plain data; [Swatches.Check] says
// whether it is in order. The zero value lacks the swatches.
type Swatches struct {
	Name  string // what the maker calls them; may be empty
	Bands Bands  // of spectra; the zero value where swatches are read as Lab or sRGB
	// Surface is what was read through; nil: UsualSurface for spectra, none for Lab
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
	Name  string // its own, not empty
	Loads []Load // what is in it, at most 100 % together; none: the base alone

	Reflectance []float64 // of a piece so thick that nothing shines through: over 0 to 1, band by band

	// A layer of known thickness over two grounds, black and white: what is read of it over
	// each, over 0 to 1, band by band.
	OverBlack, OverWhite []float64
	Thickness            units.Length // of the layer, over 0 mm
	Backing              [2]float64   // what black and white reflect where the layer meets them, at least 0.1 apart

	Lab  *Lab  // as an instrument shows it
	SRGB *SRGB // as a photograph beside a colour card shows it
}

// Load is how much of a colourant is in a mixture.
type Load struct {
	Colourant string      // any name, the same in swatches and predictions
	OfBatter  units.Ratio // by mass, of the batter without it: over 0 % to 100 %
}

// The bounds of a set. More is refused before it costs anything.
const (
	MostSwatches   = 100                         // in a set
	MostColourants = 20                          // in all swatches of a set together
	MostBands      = (mostNM-leastNM)/gridNM + 1 // of a spectrum: 71, every 5 nm from 380 to 730
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
