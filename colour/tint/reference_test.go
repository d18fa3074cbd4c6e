package tint_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"example.com/lyewright/colour/tint"
	"example.com/lyewright/units"
)

// The same least squares, written once more and otherwise: normal equations by plain
// elimination, each weight the slope of the textbook form of R by a small difference, three
// rounds. It knows no bounds, so it is held against a set whose constants come out positive.
func reference(w world, mixtures []map[string]float64, read [][]float64, band int, weighted bool) []float64 {
	n := 1 + 1 + len(w.ids) + len(w.ids) - 1 // K0, S0, k of all, s of all but the white
	row := func(loads map[string]float64, q float64) (a []float64, right float64) {
		a = append(a, 1, -q)
		for _, id := range w.ids {
			a = append(a, loads[id])
		}
		for _, id := range w.ids[1:] {
			a = append(a, -q*loads[id])
		}
		return a, q * loads[w.ids[0]]
	}
	measured := func(q float64) float64 { return w.read(1 + q - math.Sqrt(q*q+2*q)) }
	x, scattering := make([]float64, n), make([]float64, len(mixtures))
	for i := range scattering {
		scattering[i] = 1
	}
	for range 3 {
		normal, right := make([][]float64, n), make([]float64, n)
		for i := range normal {
			normal[i] = make([]float64, n)
		}
		for i, loads := range mixtures {
			m := read[i][band] - w.surface.Outside
			inside := m / ((1-w.surface.Outside)*(1-w.surface.Inside) + w.surface.Inside*m)
			q := (1 - inside) * (1 - inside) / (2 * inside)
			h := 1e-6 * q
			weight := (measured(q+h) - measured(q-h)) / (2 * h) / scattering[i]
			if !weighted {
				weight = 1
			}
			a, b := row(loads, q)
			for j := range a {
				for l := range a {
					normal[j][l] += weight * weight * a[j] * a[l]
				}
				right[j] += weight * weight * a[j] * b
			}
		}
		for c := range normal {
			for r := range normal {
				if r == c {
					continue
				}
				f := normal[r][c] / normal[c][c]
				for l := range normal {
					normal[r][l] -= f * normal[c][l]
				}
				right[r] -= f * right[c]
			}
		}
		for i := range x {
			x[i] = right[i] / normal[i][i]
		}
		for i, loads := range mixtures {
			_, s := constants(w, x, loads)
			scattering[i] = s
		}
	}
	return x
}

// constants adds up what a mixture absorbs and scatters.
func constants(w world, x []float64, loads map[string]float64) (k, s float64) {
	k, s = x[0], x[1]+loads[w.ids[0]]
	for i, id := range w.ids {
		k += loads[id] * x[2+i]
		if i > 0 {
			s += loads[id] * x[1+len(w.ids)+i]
		}
	}
	return k, s
}

func TestTheFitIsThatOfASecondProgram(t *testing.T) {
	w := dusk()
	for _, glossy := range []tint.Surface{tint.UsualSurface(), {Outside: 0.02, Inside: 0.45}} {
		w.surface = glossy
		s := w.swatches(twelve, 0.002, 11)
		c := calibrated(t, s)
		read := make([][]float64, len(twelve))
		for i := range read {
			read[i] = s.Read[i].Reflectance
		}
		compared := 0
		for band := range w.bands.Count {
			x := reference(w, twelve, read, band, true)
			positive := true
			for _, v := range x {
				positive = positive && v > 0
			}
			if !positive {
				continue
			}
			compared++
			for i, loads := range others {
				k, sc := constants(w, x, loads)
				q := k / sc
				got, want := predicted(t, c, w.loads(loads)).Reflectance[band], w.read(1+q-math.Sqrt(q*q+2*q))
				if math.Abs(got-want) > 1e-6 {
					t.Errorf("band %d, mixture %d: %.8f, want %.8f", band, i, got, want)
				}
			}
		}
		if compared < 15 {
			t.Errorf("only %d bands without a bound", compared)
		}
	}
}

// The bounds of the tests of noise and of exact readings tell a good model from two poor
// ones: without weights the fit misses its own swatches by far more than 2, and with one
// constant, K/S over that of the white they are in, the masstones are off by far more than
// what noise does to a fit.
func TestPoorerModelsMissTheirSwatches(t *testing.T) {
	w := dusk()
	s := w.swatches(twelve, 0.003, 1)
	read := make([][]float64, len(twelve))
	for i := range read {
		read[i] = s.Read[i].Reflectance
	}
	model := make([][]float64, len(twelve)) // of each swatch, without weights
	single := make([]float64, w.bands.Count)
	for i := range model {
		model[i] = make([]float64, w.bands.Count)
	}
	for band := range w.bands.Count {
		x := reference(w, twelve, read, band, false)
		for i, loads := range twelve {
			k, sc := constants(w, x, loads)
			q := max(0, k/sc)
			model[i][band] = w.read(1 + q - math.Sqrt(q*q+2*q))
		}
		// Blue alone, from the exact tints of 0.3 and 1 % in 0.5 % of white: K/S as a straight
		// line of the load, on the base's.
		exact := func(loads map[string]float64) float64 {
			nm := w.nm(band)
			k, sc := w.base[0](nm), w.base[1](nm)
			for id, load := range loads {
				k += load * w.per[id][0](nm)
				sc += load * w.per[id][1](nm)
			}
			return k / sc
		}
		slope := (exact(twelve[4]) - exact(twelve[3])) / 0.7
		q := exact(twelve[0]) + 0.8*slope
		single[band] = w.read(1 + q - math.Sqrt(q*q+2*q))
	}
	worst := 0.0
	for i := range model {
		worst = max(worst, w.seen(t, model[i]).Difference(w.seen(t, read[i])))
	}
	if worst < 4 {
		t.Errorf("without weights its swatches are met within %g", worst)
	}
	if off := w.seen(t, single).Difference(w.seen(t, w.reflects(twelve[5]))); off < 2.9 {
		t.Errorf("with one constant a masstone is off by %g", off)
	}
}

// With just as many swatches as constants most are met, and that says little.
func TestJustEnoughSwatchesSayLittle(t *testing.T) {
	w := dusk()
	var enough []map[string]float64
	for i, loads := range twelve {
		if i%3 != 1 || i < 3 {
			enough = append(enough, loads)
		}
	}
	c := calibrated(t, w.swatches(enough, 0.003, 1))
	if len(enough) != 9 || c.Spare() != 0 || !strings.HasSuffix(c.String(), "which says little: they are just enough") {
		t.Errorf("%d swatches: %d to spare; %v", len(enough), c.Spare(), c)
	}
	c = calibrated(t, w.swatches(twelve, 0.003, 1))
	if c.Spare() != 3 || strings.Contains(c.String(), "little") || c.Most(red).PercentText(2) != "0.3" || c.Most("mica").Given() || (tint.Calibration{}).Spare() != 0 {
		t.Errorf("%d to spare; %v; red up to %v", c.Spare(), c, c.Most(red))
	}
}

// Of several bases over black and white the mean counts.
func TestTheScaleIsTheMeanOfTheBases(t *testing.T) {
	w := dusk()
	of := func(thicknesses ...int) tint.Calibration {
		s := w.swatches(twelve, 0, 0)
		plain := s.Read[0]
		s.Read = s.Read[1:]
		for i, mm := range thicknesses {
			plain.Name, plain.Reflectance, plain.Thickness, plain.Backing = "plain "+strconv.Itoa(i), nil, units.Millimetres(mm), [2]float64{0.05, 0.88}
			plain.OverBlack, plain.OverWhite = nil, nil
			for j := range w.bands.Count { // cast at 2 mm, whatever was written down
				k, sc := 3*w.base[0](w.nm(j)), 3*w.base[1](w.nm(j))
				plain.OverBlack = append(plain.OverBlack, w.read(exponential(k, sc, 2, 0.05)))
				plain.OverWhite = append(plain.OverWhite, w.read(exponential(k, sc, 2, 0.88)))
			}
			s.Read = append(s.Read, plain)
		}
		return calibrated(t, s)
	}
	layer := func(c tint.Calibration, mm int) float64 {
		colour, err := c.Layer(w.loads(map[string]float64{blue: 0.2}), units.Millimetres(mm), nil)
		if err != nil {
			t.Fatal(err)
		}
		return colour.Reflectance[15]
	}
	// S·X is 3·2 for a layer written down as 2 mm, and 3·2/4 per mm of one of 4: the mean of
	// 3 and 1.5 per mm makes a layer of 4 mm what 3 mm are to the first alone.
	if got, want := layer(of(2, 4), 4), layer(of(2), 3); math.Abs(got-want) > 1e-9 {
		t.Errorf("%.9f, want %.9f", got, want)
	}
}
