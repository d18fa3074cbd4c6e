package tint

import "math"

// Difference is CIEDE2000, with all three weights 1, 0 or more: about 1 is the smallest
// difference that people see side by side (common practice). It does not depend on the
// order. Source: Sharma, Wu, Dalal, Color Research and Application 30 (2005) 21 to 30.
func (c Lab) Difference(d Lab) float64 {
	r := c.apart(d)
	return math.Sqrt(r[0]*r[0] + r[1]*r[1] + r[2]*r[2])
}

// apart gives the difference from c to d as three terms, the sum of whose squares is the
// square of the CIEDE2000 difference: lightness, and chroma with hue, whose mixed term is
// shared between them.
func (c Lab) apart(d Lab) [3]float64 {
	of := weightsBetween(c, d)
	lightness := (d.L - c.L) / of.lightness
	chroma := (of.chroma2 - of.chroma1) / of.chroma
	hue := 2 * math.Sqrt(of.chroma1*of.chroma2) * math.Sin(of.turn/2) / of.hue
	return [3]float64{lightness, chroma + of.rotation/2*hue, math.Sqrt(1-of.rotation*of.rotation/4) * hue}
}

// weights are what CIEDE2000 divides by, midway between two colours.
type weights struct {
	stretch                float64 // what a is multiplied by
	chroma1, chroma2       float64
	direction, turn        float64 // the mean hue and the hue difference, in radians
	lightness, chroma, hue float64
	rotation               float64
}

// half is half a turn, and what the rounding of two angles may add to it: hues that lie
// exactly opposite are not turned.
const half = math.Pi + 1e-12

func weightsBetween(c, d Lab) weights {
	var w weights
	mean7 := seventh((math.Hypot(c.A, c.B) + math.Hypot(d.A, d.B)) / 2)
	w.stretch = 1 + 0.5*(1-math.Sqrt(mean7/(mean7+seventh(25))))
	w.chroma1, w.chroma2 = math.Hypot(c.A*w.stretch, c.B), math.Hypot(d.A*w.stretch, d.B)
	hue1, hue2 := hueOf(c.A*w.stretch, c.B), hueOf(d.A*w.stretch, d.B)
	w.direction = hue1 + hue2
	if w.chroma1*w.chroma2 != 0 {
		w.turn = hue2 - hue1
		switch {
		case w.turn > half:
			w.turn -= 2 * math.Pi
		case w.turn < -half:
			w.turn += 2 * math.Pi
		}
		w.direction /= 2
		if math.Abs(hue1-hue2) > half {
			if hue1+hue2 < 2*math.Pi {
				w.direction += math.Pi
			} else {
				w.direction -= math.Pi
			}
		}
	}
	chroma := (w.chroma1 + w.chroma2) / 2
	t := hueWeight(w.direction)
	off := (c.L+d.L)/2 - 50
	w.lightness = 1 + 0.015*off*off/math.Sqrt(20+off*off)
	w.chroma = 1 + 0.045*chroma
	w.hue = 1 + 0.015*chroma*t
	near := (w.direction - radians(275)) / radians(25)
	chroma7 := seventh(chroma)
	w.rotation = -math.Sin(2*radians(30)*math.Exp(-near*near)) * 2 * math.Sqrt(chroma7/(chroma7+seventh(25)))
	return w
}

// hueWeight is 1 − 0.17 cos(h − 30°) + 0.24 cos 2h + 0.32 cos(3h + 6°) − 0.20 cos(4h − 63°),
// by the sums of angles: a search asks for it a thousand times.
func hueWeight(h float64) float64 {
	const (
		cos30, sin30 = 0.86602540378443864676, 0.5
		cos6, sin6   = 0.99452189536827333692, 0.10452846326765347140
		cos63, sin63 = 0.45399049973954679156, 0.89100652418836786236
	)
	s1, c1 := math.Sincos(h)
	s2, c2 := 2*s1*c1, c1*c1-s1*s1
	s3, c3 := s2*c1+c2*s1, c2*c1-s2*s1
	s4, c4 := 2*s2*c2, c2*c2-s2*s2
	return 1 - 0.17*(c1*cos30+s1*sin30) + 0.24*c2 + 0.32*(c3*cos6-s3*sin6) - 0.20*(c4*cos63+s4*sin63)
}

// metric gives, at a colour, the linear form whose squares add up to the square of the
// CIEDE2000 difference of whatever lies close to it.
func (c Lab) metric() [3][3]float64 {
	w := weightsBetween(c, c)
	sin, cos := math.Sincos(w.direction)
	chroma := [3]float64{0, cos * w.stretch / w.chroma, sin / w.chroma}
	hue := [3]float64{0, -sin * w.stretch / w.hue, cos / w.hue}
	m := [3][3]float64{{1 / w.lightness, 0, 0}}
	for i := 1; i < 3; i++ {
		m[1][i] = chroma[i] + w.rotation/2*hue[i]
		m[2][i] = math.Sqrt(1-w.rotation*w.rotation/4) * hue[i]
	}
	return m
}

func seventh(x float64) float64 {
	cube := x * x * x
	return cube * cube * x
}

// hueOf gives an angle from 0 to below 360°, 0 of a grey.
func hueOf(a, b float64) float64 {
	if a == 0 && b == 0 {
		return 0
	}
	h := math.Atan2(b, a)
	if h < 0 {
		h += 2 * math.Pi
	}
	return h
}

func radians(degrees float64) float64 { return degrees * (math.Pi / 180) }
