package tint_test

import (
	"math"
	"testing"

	"example.com/lyewright/colour/tint"
)

// The same least squares, written once more and otherwise: normal equations by plain
// elimination, each weight the slope of the textbook form of R by a small difference, three
// rounds. It knows no bounds, so it is held against a set whose constants come out positive.
func reference(w world, mixtures []map[string]float64, read [][]float64, band int) []float64 {
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
			x := reference(w, twelve, read, band)
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
