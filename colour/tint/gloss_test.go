package tint_test

import (
	"math"
	"testing"

	"example.com/lyewright/colour/tint"
)

// A reading with the gloss in it holds the 4 % that the surface reflects before any light
// enters; one without does not. By hand, for the usual surface (0.04 outside, 0.6 inside) and a
// base that reflects R inside, the reading is
//
//	T = 0.96 × 0.4 × R/(1 − 0.6 R), and with the gloss 0.04 + T
//
// For R = 0.5: T = 0.192/0.7 = 0.274285714..., 0.314285714... with the gloss. What absorbs is
// Q = K/S = (1 − R)²/2R = 0.25. A swatch with 1 % of a white that scatters 1 and absorbs 0.05 in
// a base that scatters 1 has Q = (0.25 + 0.05)/2 = 0.15, R = 1 + 0.15 − √(0.15² + 0.3) =
// 0.582109165..., and reads T = 0.343504..., 0.383504... with the gloss. With 3 % Q = (0.25 +
// 0.15)/4 = 0.1, R = 1.1 − √0.21 = 0.641742431..., T = 0.400727..., 0.440727... with it.
//
// A third mixture, 2 %, has Q = 0.35/3, R = 0.619731... by the same form. Both kinds of readings
// must predict what the same kind of reading of it would be: 0.96 × 0.4 × R/(1 − 0.6 R), and 0.04
// more with the gloss. Taken for the other kind, three readings that are 0.04 too high or too
// low give other constants, and other predictions.
func TestReadingsWithTheGlossAndWithoutAreToldApart(t *testing.T) {
	inside := func(q float64) float64 { return 1 + q - math.Sqrt(q*q+2*q) }
	through := func(q float64) float64 { return 0.96 * 0.4 * inside(q) / (1 - 0.6*inside(q)) }
	if got := through(0.25); math.Abs(got-0.192/0.7) > 1e-12 {
		t.Fatalf("by hand %g", got)
	}
	for _, without := range []bool{false, true} {
		gloss := 0.04
		if without {
			gloss = 0
		}
		s := tint.Swatches{
			White: white, Bands: tint.Bands{From: 400, Step: 10, Count: 31},
			Surface: &tint.Surface{Outside: 0.04, Inside: 0.6, NoGloss: without},
		}
		for _, row := range []struct {
			load float64
			q    float64
		}{{0, 0.25}, {1, 0.15}, {3, 0.1}} {
			swatch := tint.Swatch{Name: "white " + share(row.load).PercentText(0), Reflectance: make([]float64, 31)}
			if row.load > 0 {
				swatch.Loads = []tint.Load{{Colourant: white, OfBatter: share(row.load)}}
			}
			for j := range swatch.Reflectance {
				swatch.Reflectance[j] = gloss + through(row.q)
			}
			s.Read = append(s.Read, swatch)
		}
		c := calibrated(t, s)
		want := gloss + through(0.35/3)
		got := predicted(t, c, []tint.Load{{Colourant: white, OfBatter: share(2)}}).Reflectance
		for j := range got {
			if math.Abs(got[j]-want) > 1e-6 {
				t.Fatalf("without the gloss %v: band %d is read as %g, by hand %g", without, j, got[j], want)
			}
		}
		// What a perfect black would read is the gloss alone.
		if law := tint.Measured(*s.Surface, 0); law != gloss {
			t.Errorf("without the gloss %v: black is read as %g, want %g", without, law, gloss)
		}
		if back := tint.Internal(*s.Surface, gloss+through(0.25)); math.Abs(back-0.5) > 1e-12 {
			t.Errorf("without the gloss %v: %g inside, want 0.5", without, back)
		}
	}
}
