package tint_test

import (
	"math"
	"strings"
	"testing"

	"example.com/lyewright/colour/tint"
	"example.com/lyewright/units"
)

// Whatever an instrument reads, a set is refused or predicts a colour that is one.
func FuzzSwatches(f *testing.F) {
	f.Add(0.64, 0.75, 0.8, 0.35, 0.2, 0.04, 0.6) // as an instrument reads them
	f.Fuzz(func(t *testing.T, base, white1, white2, blue1, blue2, outside, inside float64) {
		s := tint.Swatches{Bands: tint.Bands{From: 400, Step: 20, Count: 16}, White: white, Surface: &tint.Surface{Outside: outside, Inside: inside}}
		for i, r := range []float64{base, white1, white2, blue1, blue2} {
			read := tint.Swatch{Name: string(rune('a' + i)), Reflectance: make([]float64, 16)}
			for j := range read.Reflectance {
				read.Reflectance[j] = r
			}
			if i == 1 || i == 3 {
				read.Loads = append(read.Loads, tint.Load{Colourant: white, OfBatter: share(0.5)})
			}
			if i == 2 {
				read.Loads = append(read.Loads, tint.Load{Colourant: white, OfBatter: share(1)})
			}
			if i > 2 {
				read.Loads = append(read.Loads, tint.Load{Colourant: blue, OfBatter: share(float64(i))})
			}
			s.Read = append(s.Read, read)
		}
		c, err := s.Calibrate()
		if err != nil {
			return
		}
		for _, loads := range [][]tint.Load{nil, {{Colourant: blue, OfBatter: share(0.3)}}, {{Colourant: white, OfBatter: units.Percent(3)}, {Colourant: blue, OfBatter: share(2)}}} {
			colour, err := c.Predict(loads)
			if err != nil || !(colour.L >= -1e-9 && colour.L <= 100+1e-6) || math.IsNaN(colour.A) || math.IsNaN(colour.B) {
				t.Errorf("%v: %v, %v", loads, colour.Lab, err)
			}
		}
		m, err := c.Match(tint.Wanted{Target: tint.Lab{L: 50}, Free: []tint.Free{{Colourant: blue, Most: share(2)}, {Colourant: white, Most: share(1)}}})
		if err != nil || math.IsNaN(m.Best) || !m.Loads[0].Given() {
			t.Errorf("%v, %v", m, err)
		}
	})
}

func FuzzParseSRGB(f *testing.F) {
	f.Add("#c8b49a") // as a photograph gives it
	f.Fuzz(func(t *testing.T, text string) {
		c, err := tint.ParseSRGB(text)
		if err != nil {
			if c != (tint.SRGB{}) || len(err.Error()) > 300 {
				t.Errorf("%.40q: %v beside an error of %d bytes", text, c, len(err.Error()))
			}
			return
		}
		if !strings.EqualFold(c.String(), text) {
			t.Errorf("%q is %v", text, c)
		}
		if back, err := tint.ParseSRGB(c.String()); err != nil || back != c || len(text) != 7 {
			t.Errorf("%q: %v, %v, %v", text, c, back, err)
		}
	})
}
