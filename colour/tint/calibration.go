package tint

import (
	"slices"
	"strconv"

	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

// Calibration is what swatches say of the base and of each colourant. It is immutable and
// safe for concurrent use; the zero value is none. Get one from [Swatches.Calibrate].
type Calibration struct{ c *calibration }

type calibration struct {
	bands    Bands
	surface  Surface
	eye      eye
	white    string
	absolute bool // K and S are in 1/mm

	base mixture
	ids  []string
	per  []mixture     // per percent of batter, in order of ids
	most []units.Ratio // the largest load of each in the swatches

	residuals   []Residual
	mean, worst float64
}

// mixture is what something absorbs and scatters, band by band.
type mixture struct{ k, s []float64 }

// Residual is how far a swatch is from what the calibration makes of it.
type Residual struct {
	Swatch     string  // its name
	Difference float64 // CIEDE2000, 0 or more
}

// Colour is what a mixture will look like, as far as the calibration is met (see
// [Calibration.Floor]). The zero value is black, and no prediction.
type Colour struct {
	Lab                   // as the eye sees it under D65
	Reflectance []float64 // as it would be read, band by band; of Lab and sRGB swatches linear light
}

// Given reports whether there is a calibration.
func (c Calibration) Given() bool { return c.c != nil }

// Bands are those of its swatches: it predicts no others.
func (c Calibration) Bands() Bands {
	if c.c == nil {
		return Bands{}
	}
	return c.c.bands
}

// Count is the number of bands: three of Lab and sRGB.
func (c Calibration) Count() int {
	if c.c == nil {
		return 0
	}
	return len(c.c.eye)
}

// Knows reports whether a colourant stood in the swatches.
func (c Calibration) Knows(colourant string) bool {
	return c.c != nil && slices.Contains(c.c.ids, colourant)
}

// White is the colourant whose scattering is the unit; empty where there is none.
func (c Calibration) White() string {
	if c.c == nil {
		return ""
	}
	return c.c.white
}

// Thin reports whether thin layers can be predicted: a base was read over black and white.
func (c Calibration) Thin() bool { return c.c != nil && c.c.absolute }

// Spare is how many swatches there are beyond those that the constants take, which is one,
// and two for each colourant: with none most are met, whatever their errors, and Floor says
// little.
func (c Calibration) Spare() int {
	if c.c == nil {
		return 0
	}
	return len(c.c.residuals) - unknowns(len(c.c.ids))
}

// Most is the largest load of a colourant in the swatches, of batter: beyond it a prediction
// has nothing to go by. It is not given where the colourant stood in none.
func (c Calibration) Most(colourant string) units.Ratio {
	if !c.Knows(colourant) {
		return units.Ratio{}
	}
	return c.c.most[slices.Index(c.c.ids, colourant)]
}

// Residuals are those of the swatches, in order.
func (c Calibration) Residuals() []Residual {
	if c.c == nil {
		return nil
	}
	return slices.Clone(c.c.residuals)
}

// Floor is the mean of the residuals, as CIEDE2000: no prediction is surer. It is 0 of the
// zero value.
func (c Calibration) Floor() float64 {
	if c.c == nil {
		return 0
	}
	return c.c.mean
}

// Worst is the largest of the residuals, as CIEDE2000; 0 of the zero value.
func (c Calibration) Worst() float64 {
	if c.c == nil {
		return 0
	}
	return c.c.worst
}

// Predict gives the colour of an opaque piece of the base with loads in it; without loads
// that of the base. The error is [fault.Faults] where a colourant stood in no swatch
// ([fault.ErrUnknown]), a load is not from 0 % to 100 % ([fault.ErrRange]), or there is no
// calibration ([fault.ErrMissing]).
func (c Calibration) Predict(loads []Load) (Colour, error) {
	percent, err := c.percents(loads)
	if err != nil {
		return Colour{}, err
	}
	colour := Colour{Reflectance: make([]float64, len(c.c.eye))}
	for j := range colour.Reflectance {
		colour.Reflectance[j] = c.c.reflects(j, percent)
	}
	colour.Lab = c.c.eye.sees(colour.Reflectance).lab()
	return colour, nil
}

// Layer gives the colour of a layer with loads in it, above 0 mm thick, on an opaque piece
// with others, which it touches without air between. The error is [fault.Faults] as of
// [Calibration.Predict], or where thin layers cannot be predicted: [Calibration.Thin] is
// false.
func (c Calibration) Layer(loads []Load, thickness units.Length, under []Load) (Colour, error) {
	if c.Given() && !c.Thin() {
		return Colour{}, fault.Faults{{Reason: "thin layers cannot be predicted", Remedy: "read a layer of the base over black and over white, with its thickness", Kind: fault.ErrMissing}}
	}
	if thickness.Sign() <= 0 {
		return Colour{}, fault.Faults{{Text: thickness.String(), Reason: "is no thickness of a layer", Remedy: "give one above 0 mm", Kind: fault.ErrRange}}
	}
	top, err := c.percents(loads)
	if err != nil {
		return Colour{}, err
	}
	ground, err := c.percents(under)
	if err != nil {
		return Colour{}, err
	}
	colour := Colour{Reflectance: make([]float64, len(c.c.eye))}
	for j := range colour.Reflectance {
		k, s := c.c.band(j, ground)
		below := opaque(ratio(k, s))
		k, s = c.c.band(j, top)
		colour.Reflectance[j] = c.c.surface.measured(over(k, s, thickness.Millimetres(), below))
	}
	colour.Lab = c.c.eye.sees(colour.Reflectance).lab()
	return colour, nil
}

// percents gives loads in the order of the calibration.
func (c Calibration) percents(loads []Load) ([]float64, error) {
	if c.c == nil {
		return nil, fault.Faults{{Reason: "there is no calibration", Remedy: "calibrate with swatches", Kind: fault.ErrMissing}}
	}
	percent := make([]float64, len(c.c.ids))
	var faults fault.Faults
	for i, load := range loads {
		at := item("", i)
		j := slices.Index(c.c.ids, load.Colourant)
		share := load.OfBatter
		switch {
		case j < 0:
			faults.Add(at, load.Colourant, "stood in no swatch", "cast and read two swatches with different loads of it", fault.ErrUnknown)
		case !share.Given() || share.Sign() < 0 || share.Compare(units.Whole(1)) > 0:
			faults.Add(at, share.PercentText(12)+" %", "is not a load from 0 % to 100 % of the batter", "give its share", fault.ErrRange)
		default:
			percent[j] += 100 * share.Float()
		}
	}
	return percent, faults.OrNil()
}

// band adds up what a mixture absorbs and scatters in a band.
func (c *calibration) band(band int, percent []float64) (k, s float64) {
	k, s = c.base.k[band], c.base.s[band]
	for j, load := range percent {
		k += load * c.per[j].k[band]
		s += load * c.per[j].s[band]
	}
	return k, s
}

// ratio is K/S, also where nothing scatters.
func ratio(k, s float64) float64 { return k / max(s, leastOfAll) }

// leastOfAll stands in for no scattering at all: K/S is then very large, and not infinite.
const leastOfAll = 1e-12

// reflects gives what is read of a mixture in a band.
func (c *calibration) reflects(band int, percent []float64) float64 {
	return c.surface.reads(c.band(band, percent))
}

// see gives the colour of a mixture.
func (c *calibration) see(percent []float64) Lab {
	var seen stimulus
	for j := range c.eye {
		r := c.reflects(j, percent)
		for i := range seen {
			seen[i] += c.eye[j][i] * r
		}
	}
	return seen.lab()
}

// String says what it is: "31 bands, 400 to 700 nm, 12 swatches met within 0.40 on
// average, 1.20 at worst".
func (c Calibration) String() string {
	if c.c == nil {
		return "no calibration"
	}
	swatches := " swatches"
	if len(c.c.residuals) == 1 {
		swatches = " swatch"
	}
	text := c.c.bands.String() + ", " + strconv.Itoa(len(c.c.residuals)) + swatches + " met within " + strconv.FormatFloat(c.c.mean, 'f', 2, 64) +
		" on average, " + strconv.FormatFloat(c.c.worst, 'f', 2, 64) + " at worst"
	if c.Spare() == 0 && len(c.c.ids) > 0 {
		text += ", which says little: they are just enough"
	}
	return text
}
