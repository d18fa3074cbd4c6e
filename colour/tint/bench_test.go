package tint_test

import "testing"

func BenchmarkPredict(b *testing.B) {
	w := dusk()
	c := calibrated(b, w.swatches(twelve, 0.003, 1))
	loads := w.loads(map[string]float64{white: 0.4, blue: 0.6, red: 0.05})
	b.ReportAllocs()
	for b.Loop() {
		if _, err := c.Predict(loads); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCalibrate(b *testing.B) {
	w := dusk()
	s := w.swatches(twelve, 0.003, 1)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := s.Calibrate(); err != nil {
			b.Fatal(err)
		}
	}
}

// A known mixture, a colour out of reach, and each in turn of a hundred: the slowest of
// them is far below ten times the mean.
func BenchmarkMatch(b *testing.B) {
	w := dusk()
	c := calibrated(b, w.swatches(twelve, 0.003, 1))
	wanted := w.hundred(b, c)
	b.ReportAllocs()
	b.ResetTimer()
	for i := 0; b.Loop(); i++ {
		if _, err := c.Match(wanted[i%len(wanted)]); err != nil {
			b.Fatal(err)
		}
	}
}
