package tint_test

import (
	"math"
	"testing"

	"example.com/lyewright/colour/tint"
	"example.com/lyewright/units"
)

// A worked case that was made up by hand (one wavelength, % of batter): base K 0.020, S
// 0.060; white 0.0010 and 1; pigment 4.00 and 0.300; the surface 0.04 and 0.6. Columns:
// white, pigment, K/S, reflectance inside, and as read, to six decimals.
var workedCase = [][5]float64{
	{1.0, 0, 0.019811, 0.819773, 0.659506},
	{1.0, 0.05, 0.205581, 0.532212, 0.340246},
	{1.0, 0.10, 0.386239, 0.426209, 0.259897},
	{1.0, 0.20, 0.733036, 0.317616, 0.190680},
	{0.5, 0.10, 0.712712, 0.322251, 0.193405},
	{0, 0.10, 4.666667, 0.088933, 0.076075},
}

func TestWorkedCaseOfOneWavelength(t *testing.T) {
	for _, row := range workedCase {
		if got := tint.Opaque(row[2]); math.Abs(got-row[3]) > 3e-6 {
			t.Errorf("K/S %g: %g", row[2], got)
		}
		if got := tint.Absorbing(row[3]); math.Abs(got-row[2]) > 5e-5 {
			t.Errorf("R %g: %g", row[3], got)
		}
	}
}

// The worked case once more, from the readings alone: a calibration on grey bands finds
// the constants that it was made with.
func TestCalibrationFindsTheWorkedCase(t *testing.T) {
	w := world{
		bands: tint.Bands{From: 400, Step: 20, Count: 16}, surface: tint.UsualSurface(), ids: []string{white, blue},
		base: [2]func(float64) float64{flat(0.020), flat(0.060)},
		per:  map[string][2]func(float64) float64{white: {flat(0.0010), flat(1)}, blue: {flat(4), flat(0.3)}},
	}
	c := calibrated(t, w.swatches([]map[string]float64{{}, {white: 0.5}, {white: 1}, {white: 1, blue: 0.05}, {white: 1, blue: 0.10}, {white: 1, blue: 0.20}}, 0, 0))
	for _, row := range workedCase {
		var loads []tint.Load
		for i, id := range w.ids {
			if row[i] > 0 {
				loads = append(loads, tint.Load{Colourant: id, OfBatter: share(row[i])})
			}
		}
		for j, got := range predicted(t, c, loads).Reflectance {
			if math.Abs(got-row[4]) > 1e-6 {
				t.Errorf("white %g, pigment %g, band %d: %.6f, want %.6f", row[0], row[1], j, got, row[4])
			}
		}
	}
}

// Both algebraic forms of the opaque layer, and the inverse, over ten powers of ten.
func TestOpaqueFormsAgree(t *testing.T) {
	for q := 1e-8; q < 1e4; q *= 1.7 {
		r := tint.Opaque(q)
		if other := 1 + q - math.Sqrt(q*q+2*q); math.Abs(r-other) > 1e-12*(1+q*q) {
			t.Errorf("K/S %g: %g and %g", q, r, other)
		}
		if back := tint.Absorbing(r); math.Abs(back-q) > 1e-7*q {
			t.Errorf("K/S %g comes back as %g", q, back)
		}
	}
	if tint.Opaque(0) != 1 || tint.Absorbing(1) != 0 {
		t.Error("what absorbs nothing is not white")
	}
}

// A finite layer, made up by hand: K 0.02, S 0.5, X 3.
func TestWorkedCaseOfALayer(t *testing.T) {
	for _, row := range []struct{ under, want float64 }{{0, 0.572418}, {0.80, 0.774656}} {
		if got := tint.Over(0.02, 0.5, 3, row.under); math.Abs(got-row.want) > 1e-6 {
			t.Errorf("over %g: %.6f", row.under, got)
		}
	}
	if got := tint.Over(0.02, 0.5, 1e4, 0.3); math.Abs(got-0.754343) > 1e-6 {
		t.Errorf("thick: %.6f", got)
	}
}

func TestALayersLimits(t *testing.T) {
	for _, k := range []float64{0, 1e-6, 0.02, 0.7, 5} {
		for _, s := range []float64{1e-6, 0.05, 0.5, 4} {
			for _, under := range []float64{0, 0.3, 0.8, 1} {
				// The exponential form of the same equation.
				thick := tint.Opaque(k / s)
				for _, x := range []float64{0.05, 0.4, 3} {
					got, want := tint.Over(k, s, x, under), exponential(k, s, x, under)
					if !(math.Abs(got-want) <= 2e-9) {
						t.Errorf("K %g S %g X %g over %g: %.12f, want %.12f", k, s, x, under, got, want)
					}
					if low, high := min(thick, under), max(thick, under); got < low-1e-9 || got > high+1e-9 {
						t.Errorf("K %g S %g X %g over %g: %g is not between %g and %g", k, s, x, under, got, low, high)
					}
				}
				if got := tint.Over(k, s, 1e-9, under); math.Abs(got-under) > 1e-7 {
					t.Errorf("K %g S %g over %g: nothing reads %g", k, s, under, got)
				}
			}
		}
	}
	// Where nothing absorbs, R0 = SX/(1+SX); where nothing scatters, light is absorbed twice.
	if got := tint.Over(0, 0.5, 3, 0); !(math.Abs(got-1.5/2.5) <= 1e-12) { // NaN is refused, too
		t.Errorf("%g", got)
	}
	if got := tint.Over(0.2, 0, 3, 0.8); !(math.Abs(got-0.8*math.Exp(-1.2)) <= 1e-12) {
		t.Errorf("%g", got)
	}
}

// exponential is Kubelka and Munk's own form, in exponentials of the thickness.
func exponential(k, s, x, under float64) float64 {
	if k == 0 {
		sx := s * x
		return (under + sx*(1-under)) / (1 + sx*(1-under))
	}
	r := tint.Opaque(k / s)
	e := math.Exp(s * x * (1/r - r))
	return ((under-r)/r - r*(under-1/r)*e) / (under - r - (under-1/r)*e)
}

func TestALayerOverTwoGroundsGivesBothConstants(t *testing.T) {
	for _, k := range []float64{0, 0.001, 0.02, 0.4} {
		for _, s := range []float64{0.05, 0.3, 2} {
			for _, grounds := range [][2]float64{{0.05, 0.88}, {0, 1}, {0.2, 0.6}} {
				b, w := tint.Over(k, s, 1.5, grounds[0]), tint.Over(k, s, 1.5, grounds[1])
				gotK, gotS, ok := tint.LayerOver(1.5, grounds[0], b, grounds[1], w)
				if !ok || math.Abs(gotK-k) > 1e-6 || math.Abs(gotS-s) > 1e-6*s {
					t.Errorf("K %g S %g: %g, %g, %t", k, s, gotK, gotS, ok)
				}
			}
		}
	}
	if _, _, ok := tint.LayerOver(1, 0.05, 0.4, 0.88, 0.4); ok {
		t.Error("a layer that hides both grounds has a scattering")
	}
	if _, _, ok := tint.LayerOver(1, 0.05, 0.6, 0.88, 0.97); ok {
		t.Error("a layer that is lighter than it can be has constants")
	}
}

// A base read over black and white sets the scale: layers of every thickness are then what
// they are in truth. Without it they are refused.
func TestThinLayersNeedABaseOverBlackAndWhite(t *testing.T) {
	w := dusk()
	top, under := w.loads(map[string]float64{white: 0.4, blue: 0.2}), w.loads(map[string]float64{red: 0.2})
	c := calibrated(t, w.swatches(twelve, 0, 0))
	if c.Thin() {
		t.Fatal("thin layers without a scale")
	}
	if _, err := c.Layer(top, units.Millimetres(2), under); err == nil {
		t.Error("a layer without a scale")
	}
	// In truth everything scatters three times as much per mm.
	const perMM = 3
	s := w.swatches(twelve, 0, 0)
	s.Read[0].Reflectance, s.Read[0].Thickness, s.Read[0].Backing = nil, units.Millimetres(2), [2]float64{0.05, 0.88}
	for j := range w.bands.Count {
		k, sc := perMM*w.base[0](w.nm(j)), perMM*w.base[1](w.nm(j))
		s.Read[0].OverBlack = append(s.Read[0].OverBlack, w.read(exponential(k, sc, 2, 0.05)))
		s.Read[0].OverWhite = append(s.Read[0].OverWhite, w.read(exponential(k, sc, 2, 0.88)))
	}
	c = calibrated(t, s)
	if !c.Thin() || c.Worst() > 1e-6 {
		t.Fatalf("%v", c)
	}
	for _, mm := range []int{1, 3, 20} {
		got, err := c.Layer(top, units.Millimetres(mm), under)
		if err != nil {
			t.Fatal(err)
		}
		for j, r := range got.Reflectance {
			nm := w.nm(j)
			k, sc := w.base[0](nm)+0.4*w.per[white][0](nm)+0.2*w.per[blue][0](nm), w.base[1](nm)+0.4*w.per[white][1](nm)+0.2*w.per[blue][1](nm)
			below := (w.base[0](nm) + 0.2*w.per[red][0](nm)) / (w.base[1](nm) + 0.2*w.per[red][1](nm))
			want := w.read(exponential(perMM*k, perMM*sc, float64(mm), 1+below-math.Sqrt(below*below+2*below)))
			if math.Abs(r-want) > 1e-6 {
				t.Errorf("%d mm, band %d: %.8f, want %.8f", mm, j, r, want)
			}
		}
	}
	for _, thickness := range []units.Length{{}, units.Millimetres(-1)} {
		if _, err := c.Layer(top, thickness, under); err == nil {
			t.Errorf("a layer of %v", thickness)
		}
	}
}
