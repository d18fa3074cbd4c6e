package tint

// The equations of a layer, for the tests of what is known of them.
var (
	Opaque    = opaque
	Absorbing = absorbing
	Over      = over
)

// Measured is what is read of a reflectance inside, Internal the inverse.
func Measured(s Surface, inside float64) float64   { return s.measured(inside) }
func Internal(s Surface, measured float64) float64 { return s.internal(measured) }

// LayerOver solves for K and S of a layer that is read over two grounds.
func LayerOver(thickness, black, overBlack, white, overWhite float64) (k, s float64, ok bool) {
	b, w := ground{black, overBlack}, ground{white, overWhite}
	q, ok := absorbingOver(b, w)
	if !ok {
		return 0, 0, false
	}
	s, ok = scatteringOver(thickness, q, b, w)
	return q * s, s, ok
}

// WhitePoint gives X and Z of the light where Y is 100.
func (b Bands) WhitePoint() (x, z float64) {
	var sum [3]float64
	for j := range b.Count {
		for i, v := range observer()[(b.From+j*b.Step-leastNM)/gridNM] {
			sum[i] += v
		}
	}
	return 100 * sum[0] / sum[1], 100 * sum[2] / sum[1]
}

// NonNegative solves a small system by least squares without negative unknowns.
func NonNegative(a [][]float64, b []float64) []float64 {
	s := newSystem(len(a), len(a[0]))
	for i := range a {
		copy(s.a[i*s.unknowns:], a[i])
	}
	copy(s.b, b)
	return s.nonNegative(func() bool { return false })
}
