package tint

import "math"

// Kubelka and Munk: a layer that absorbs K and scatters S of the light in it, per unit of
// thickness. Sources: P. Kubelka, J. Opt. Soc. Am. 38 (1948) 448 (recalled), as restated
// in several texts (read).

// absorbing gives K/S of matter so thick that more makes no change, from its reflectance
// inside, above 0 to 1.
func absorbing(reflectance float64) float64 {
	return (1 - reflectance) * (1 - reflectance) / (2 * reflectance)
}

// opaque is its inverse, in the form that keeps its digits where K/S is large.
func opaque(q float64) float64 { return 1 / (1 + q + math.Sqrt(q*(q+2))) }

// over gives the reflectance of a layer over what reflects by itself.
func over(k, s, thickness, under float64) float64 {
	if s <= 0 {
		return under * math.Exp(-2*k*thickness)
	}
	a := 1 + k/s
	b := math.Sqrt((a - 1) * (a + 1))
	c := 1 / (s * thickness) // where nothing is absorbed
	if x := b * s * thickness; x > 1e-8 {
		c = b / math.Tanh(x)
	}
	return (1 - under*(a-c)) / (a - under + c)
}

// A ground is what lies under a layer, and what is read of both: each a reflectance, the
// second inside the layer.
type ground struct{ under, over float64 }

// Of a layer that is read over two grounds each reading gives b·coth(b·S·X), with
// a = (S+K)/S and b² = a² − 1, as a function of a; that both agree gives a, and so K/S. ok is
// false where no layer reads so.
func absorbingOver(black, white ground) (q float64, ok bool) {
	d1, d2 := black.over-black.under, white.over-white.under
	p1, p2 := 1+black.over*black.under, 1+white.over*white.under
	a := (p1*d2 - p2*d1) / ((black.over+black.under)*d2 - (white.over+white.under)*d1)
	if a < 1 && a > 1-absorbsNothing {
		a = 1
	}
	return a - 1, finite(a) && a >= 1
}

// absorbsNothing is how far below 1 (S+K)/S may come out of readings with some noise in
// them: nothing absorbs less than nothing.
const absorbsNothing = 0.02

// scatteringOver gives S per unit of thickness, from the same readings and K/S. ok is
// false where the layer is so thick that both read the same.
func scatteringOver(thickness, q float64, black, white ground) (s float64, ok bool) {
	from := black
	if math.Abs(white.over-white.under) > math.Abs(black.over-black.under) {
		from = white
	}
	a := 1 + q
	b := math.Sqrt(q * (q + 2))
	c := (1 + from.over*from.under - a*(from.over+from.under)) / (from.over - from.under)
	switch {
	case !finite(c) || c <= b*(1+hidden):
		return 0, false
	case b < 1e-8:
		s = 1 / (c * thickness)
	default:
		s = math.Atanh(b/c) / (b * thickness)
	}
	return s, finite(s) && s > 0
}

// hidden is how little of a ground may show through a layer before its thickness no longer
// counts.
const hidden = 1e-6
