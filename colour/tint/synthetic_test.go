package tint_test

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"example.com/lyewright/colour/tint"
	"example.com/lyewright/units"
)

// A world of invented matter, whose constants are known in every band: what a
// calibration should find.
type world struct {
	bands   tint.Bands
	surface tint.Surface
	base    [2]func(nm float64) float64 // K and S
	ids     []string
	per     map[string][2]func(nm float64) float64 // per percent of batter
}

func bump(height, centre, width float64) func(float64) float64 {
	return func(nm float64) float64 {
		d := (nm - centre) / width
		return height * math.Exp(-d*d)
	}
}

func flat(v float64) func(float64) float64 { return func(float64) float64 { return v } }

func plus(fs ...func(float64) float64) func(float64) float64 {
	return func(nm float64) float64 {
		sum := 0.0
		for _, f := range fs {
			sum += f(nm)
		}
		return sum
	}
}

const white, blue, red, yellow = "titanium-dioxide", "ultramarine-blue", "iron-oxide-red", "iron-oxide-yellow"

// dusk is a creamy base, a white and three pigments.
func dusk() world {
	return world{
		bands:   tint.Bands{From: 400, Step: 10, Count: 31},
		surface: tint.UsualSurface(),
		base:    [2]func(float64) float64{plus(flat(0.006), bump(0.05, 380, 70)), flat(0.25)},
		ids:     []string{white, blue, red, yellow},
		per: map[string][2]func(float64) float64{
			white:  {plus(flat(0.0015), bump(0.2, 380, 20)), flat(1)},
			blue:   {plus(bump(3.2, 600, 60), flat(0.05)), plus(bump(0.35, 450, 60), flat(0.06))},
			red:    {plus(bump(9, 460, 90), bump(3, 540, 40), flat(0.3)), plus(bump(1.5, 680, 70), flat(0.4))},
			yellow: {plus(bump(7, 420, 60), flat(0.08)), plus(bump(1.2, 620, 120), flat(0.3))},
		},
	}
}

func (w world) count() int {
	if w.bands == (tint.Bands{}) {
		return 3
	}
	return w.bands.Count
}

func (w world) nm(band int) float64 {
	if w.bands == (tint.Bands{}) {
		return [3]float64{610, 540, 450}[band]
	}
	return float64(w.bands.From + band*w.bands.Step)
}

// reflects gives what is read of a mixture, by the textbook forms of the two equations.
func (w world) reflects(loads map[string]float64) []float64 {
	r := make([]float64, w.count())
	for j := range r {
		nm := w.nm(j)
		k, s := w.base[0](nm), w.base[1](nm)
		for id, load := range loads {
			k += load * w.per[id][0](nm)
			s += load * w.per[id][1](nm)
		}
		q := k / s
		r[j] = w.read(1 + q - math.Sqrt(q*q+2*q))
	}
	return r
}

// read gives what an instrument reads of a reflectance inside.
func (w world) read(inside float64) float64 {
	through := (1 - w.surface.Outside) * (1 - w.surface.Inside) * inside / (1 - w.surface.Inside*inside)
	if w.surface.NoGloss {
		return through
	}
	return w.surface.Outside + through
}

func share(percent float64) units.Ratio {
	return units.MustRatio(strconv.FormatFloat(percent, 'f', -1, 64) + " %")
}

func (w world) loads(loads map[string]float64) []tint.Load {
	var list []tint.Load
	for _, id := range w.ids {
		if load, has := loads[id]; has && load > 0 {
			list = append(list, tint.Load{Colourant: id, OfBatter: share(load)})
		}
	}
	return list
}

// twelve are the loads of twelve swatches, in percent: the base, two whites, and three of
// each pigment, one of them without white.
var twelve = []map[string]float64{
	{},
	{white: 0.3},
	{white: 1},
	{white: 0.5, blue: 0.3},
	{white: 0.5, blue: 1},
	{blue: 0.8},
	{white: 0.5, red: 0.05},
	{white: 0.5, red: 0.3},
	{red: 0.2},
	{white: 0.5, yellow: 0.1},
	{white: 0.5, yellow: 0.4},
	{yellow: 0.3},
}

// others are six mixtures that are not among them, a masstone and a tint included.
var others = []map[string]float64{
	{red: 0.4},
	{white: 0.8, yellow: 0.03},
	{white: 0.4, blue: 0.6, red: 0.05},
	{white: 0.2, yellow: 0.3, red: 0.1},
	{white: 0.6, blue: 0.4, yellow: 0.2},
	{blue: 0.5, red: 0.1, yellow: 0.1},
}

// swatches reads the mixtures, each reflectance off by noise.
func (w world) swatches(mixtures []map[string]float64, noise float64, seed uint64) tint.Swatches {
	source := rand.New(rand.NewPCG(seed, 2026))
	s := tint.Swatches{Name: "dusk", Bands: w.bands, White: white}
	if w.surface != tint.UsualSurface() {
		s.Surface = &w.surface
	}
	for i, loads := range mixtures {
		read := w.reflects(loads)
		for j := range read {
			read[j] += noise * source.NormFloat64()
		}
		s.Read = append(s.Read, tint.Swatch{Name: "swatch " + strconv.Itoa(i), Loads: w.loads(loads), Reflectance: read})
	}
	return s
}

func calibrated(t testing.TB, s tint.Swatches) tint.Calibration {
	t.Helper()
	c, err := s.Calibrate()
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func predicted(t testing.TB, c tint.Calibration, loads []tint.Load) tint.Colour {
	t.Helper()
	colour, err := c.Predict(loads)
	if err != nil {
		t.Fatal(err)
	}
	return colour
}

// seen gives the colour of reflectances, as the library makes it of a whole set of bands.
func (w world) seen(t testing.TB, read []float64) tint.Lab {
	t.Helper()
	c, err := w.bands.Colour(read)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestWithoutNoiseEveryMixtureIsFound(t *testing.T) {
	w := dusk()
	c := calibrated(t, w.swatches(twelve, 0, 0))
	if c.Worst() > 1e-6 {
		t.Errorf("swatches are met within %g, want 1e-6", c.Worst())
	}
	for i, loads := range others {
		got, want := predicted(t, c, w.loads(loads)), w.reflects(loads)
		if d := got.Difference(w.seen(t, want)); d > 1e-6 {
			t.Errorf("mixture %d: off by %g", i, d)
		}
		for j := range want {
			if math.Abs(got.Reflectance[j]-want[j]) > 1e-8 {
				t.Errorf("mixture %d, band %d: %g, want %g", i, j, got.Reflectance[j], want[j])
			}
		}
	}
}

func TestNoiseStaysWithinItsBounds(t *testing.T) {
	w := dusk()
	var mean, worst, mets, worstMet float64
	const seeds = 10
	for seed := range uint64(seeds) {
		c := calibrated(t, w.swatches(twelve, 0.003, seed))
		mets += c.Floor() / seeds
		worstMet = max(worstMet, c.Worst())
		for _, loads := range others {
			d := predicted(t, c, w.loads(loads)).Difference(w.seen(t, w.reflects(loads)))
			mean += d / seeds / float64(len(others))
			worst = max(worst, d)
		}
	}
	t.Logf("mixtures: %.3f on average, %.3f at worst; swatches: %.3f, %.3f", mean, worst, mets, worstMet)
	if mean > 0.6 || worst > 3 || mets > 0.5 || worstMet > 2 {
		t.Errorf("mixtures: %g on average, %g at worst; swatches: %g, %g", mean, worst, mets, worstMet)
	}
}
