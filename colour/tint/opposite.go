package tint

import "math"

// CIEDE2000 jumps where the hue of a colour passes that opposite to the target's. Far from
// reach the nearest mixture may lie just beside that jump, on the side where the difference is
// less, and no search that goes downhill comes along it. So one goes along the jump itself.

// How far from the jump a search goes along it, in a and b: for the nearest so close that what
// is lost shows in the third decimal of a difference; for the cheapest, which has [Slack], with
// more room for its steps.
const (
	closeBeside = 0.001
	looseBeside = 0.01
)

// besideJump measures the difference of what lies so far beside the jump, above 0 on one side
// of it and below 0 on the other: a colour is taken for the one at that place, and how far it
// is from there counts by itself. So all is smooth.
func (s *seeker) besideJump(beside float64) measure {
	t := s.wanted.Target
	chroma := math.Hypot(t.A, t.B)
	value := func(c Lab) [3]float64 {
		along, across := (t.A*c.A+t.B*c.B)/chroma, (t.A*c.B-t.B*c.A)/chroma
		along = min(along, -math.Abs(beside))
		d := t.apart(Lab{c.L, (along*t.A - beside*t.B) / chroma, (along*t.B + beside*t.A) / chroma})
		return [3]float64{d[0], math.Hypot(d[1], d[2]), 3 * (across - beside) / math.Abs(beside)}
	}
	return func(c Lab) (terms [3]float64, slopes [3][3]float64) { return sloped(value, c) }
}

// sloped gives what a function of a colour is, and how it changes with that: forwards alone,
// since a search needs no more digits.
func sloped(value func(Lab) [3]float64, c Lab) (terms [3]float64, slopes [3][3]float64) {
	const step = 1e-5
	terms = value(c)
	for i, moved := range [3]Lab{{c.L + step, c.A, c.B}, {c.L, c.A + step, c.B}, {c.L, c.A, c.B + step}} {
		on := value(moved)
		for k := range terms {
			slopes[k][i] = (on[k] - terms[k]) / step
		}
	}
	return terms, slopes
}

// turnedAway reports whether a colour has a hue more than a right angle from the target's.
func (s *seeker) turnedAway(c Lab) bool {
	return s.wanted.Target.A*c.A+s.wanted.Target.B*c.B < 0
}
