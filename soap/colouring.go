package soap

import (
	"context"
	"slices"

	"example.com/lyewright/colour"
	"example.com/lyewright/colour/tint"
	"example.com/lyewright/fragrance"
)

// Gel says whether the soap goes through the gel phase: where it does, much titanium
// dioxide is likely to draw rivers. The zero value is GelUnknown.
type Gel uint8

// Whether the soap gels.
const (
	GelUnknown Gel = iota // nobody said
	Gelled                // it does
	NotGelled             // it does not
)

// String gives the word a formula file uses: "unknown", "yes", "no".
func (g Gel) String() string {
	switch g {
	case Gelled:
		return "yes"
	case NotGelled:
		return "no"
	default:
		return "unknown"
	}
}

// Target is the colour that a part is meant to have: at most one of its fields. The zero
// value is none.
type Target struct {
	Lab         *tint.Lab  // CIELAB: L 0 to 100, a and b within 200
	SRGB        *tint.SRGB // the colour of a screen
	Reflectance []float64  // 0 to 1, at the bands of the swatches, which must be spectra
}

// Given reports whether there is a target.
func (t *Target) Given() bool { return t.Lab != nil || t.SRGB != nil || t.Reflectance != nil }

// lab gives the target as a colour; ok is false where there is none, or it is not one of
// these bands.
func (t *Target) lab(bands tint.Bands) (c tint.Lab, ok bool) {
	switch {
	case t.Lab != nil:
		return *t.Lab, true
	case t.SRGB != nil:
		return t.SRGB.Lab(), true
	case t.Reflectance != nil:
		c, err := bands.Colour(t.Reflectance)
		return c, err == nil
	default:
		return c, false
	}
}

// Match is a colourant whose load is looked for, so that a part comes near its target.
// The part needs a [Target], and the formula swatches in which the colourant stands.
type Match struct {
	Colourant string  // its id, as the swatches call it; not among the part's Colourants
	Most      Load    // of oils, of batter, or a mass; must be given
	Carrier   Carrier // the zero value: none
	Unlisted  bool    // as of an [Addition]

	asked string // the name as written, once Colourant is the id that it means
}

// mine are the maker's own fragrances and colourants.
type mine struct {
	scents  fragrance.Shelf
	colours colour.Shelf
	run     *run
}

// swatches gives the formula's swatches, their white named: the first of their colourants
// that is titanium dioxide and not of nano grade.
func (f *Formula) swatches(shelf colour.Shelf) tint.Swatches {
	s := *f.Swatches
	if s.White != "" {
		return s
	}
	for i := range s.Read {
		for _, load := range s.Read[i].Loads {
			if c, found := shelf.Find(load.Colourant); found && c.IsWhite() {
				s.White = load.Colourant
				return s
			}
		}
	}
	return s
}

// Calibrate gives the calibration of the formula's swatches, to be kept in Calibration for
// this formula and for others with the same swatches and pigments. The error is [Faults]; or
// it wraps that of the context, within 10 ms of whose end work stops.
func (f Formula) Calibrate(ctx context.Context) (tint.Calibration, error) {
	if f.Swatches == nil {
		return tint.Calibration{}, Faults{{
			Path: "swatches", Reason: "are missing",
			Remedy: "list the swatches that were read", Kind: ErrMissing,
		}}
	}
	shelf, err := colour.NewShelf(f.Pigments)
	if err != nil {
		return tint.Calibration{}, under("pigments", err)
	}
	return f.calibrated(ctx, shelf, "the calibration is")
}

// calibrated gives the calibration to work with.
func (f *Formula) calibrated(ctx context.Context, shelf colour.Shelf, what string) (tint.Calibration, error) {
	if f.Calibration.Given() {
		return f.Calibration, nil
	}
	swatches := f.swatches(shelf)
	made, err := swatches.CalibrateContext(ctx)
	if ctx.Err() != nil {
		return tint.Calibration{}, stopped(what, ctx)
	}
	return made, under("swatches", err)
}

// fits reports whether a calibration may be that of swatches: it has their bands, their white
// and their colourants. What was read it does not tell.
func fits(c tint.Calibration, s *tint.Swatches) bool {
	if c.Bands() != s.Bands || c.White() != s.White {
		return false
	}
	for _, id := range s.Colourants() {
		if !c.Knows(id) {
			return false
		}
	}
	return true
}

// matches reports whether loads are looked for.
func (f *Formula) matches() bool {
	return slices.ContainsFunc(f.Parts, func(p Part) bool { return len(p.Match) > 0 })
}

func cloneSwatches(s *tint.Swatches) *tint.Swatches {
	if s == nil {
		return nil
	}
	c := *s
	if s.Surface != nil {
		surface := *s.Surface
		c.Surface = &surface
	}
	c.Read = slices.Clone(s.Read)
	for i := range c.Read {
		r := &c.Read[i]
		r.Loads, r.Reflectance = slices.Clone(r.Loads), slices.Clone(r.Reflectance)
		r.OverBlack, r.OverWhite = slices.Clone(r.OverBlack), slices.Clone(r.OverWhite)
		if r.Lab != nil {
			lab := *r.Lab
			r.Lab = &lab
		}
		if r.SRGB != nil {
			srgb := *r.SRGB
			r.SRGB = &srgb
		}
	}
	return &c
}

func (t Target) clone() Target {
	t.Reflectance = slices.Clone(t.Reflectance)
	if t.Lab != nil {
		lab := *t.Lab
		t.Lab = &lab
	}
	if t.SRGB != nil {
		srgb := *t.SRGB
		t.SRGB = &srgb
	}
	return t
}

func clonePigments(pigments []colour.Supplied) []colour.Supplied {
	pigments = slices.Clone(pigments)
	for i := range pigments {
		pigments[i].CI = slices.Clone(pigments[i].CI)
	}
	return pigments
}
