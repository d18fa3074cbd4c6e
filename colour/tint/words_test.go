package tint_test

import (
	"strings"
	"testing"

	"example.com/lyewright/colour/tint"
)

func TestBandsAndCalibrationsSayWhatTheyAre(t *testing.T) {
	for want, bands := range map[string]tint.Bands{
		"31 bands, 400 to 700 nm": {From: 400, Step: 10, Count: 31},
		"18 bands, 380 to 720 nm": {From: 380, Step: 20, Count: 18},
		"3 bands":                 {},
	} {
		if got := bands.String(); got != want {
			t.Errorf("%+v: %q, want %q", bands, got, want)
		}
	}
	w := dusk()
	base := w.swatches([]map[string]float64{{}}, 0, 0)
	base.White = ""
	plain := calibrated(t, base)
	if got, want := plain.String(), "31 bands, 400 to 700 nm, 1 swatch met within 0.00 on average, 0.00 at worst"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got := calibrated(t, w.swatches(twelve, 0.003, 1)).String(); !strings.Contains(got, ", 12 swatches met within ") || strings.Contains(got, "just enough") {
		t.Error(got)
	}
	if got := (tint.Calibration{}).String(); got != "no calibration" {
		t.Error(got)
	}
}

// Where the first swatch has no reading, the others are not blamed for being read in
// another way than it.
func TestASwatchWithoutAReadingBlamesNoOther(t *testing.T) {
	w := dusk()
	s := w.swatches(twelve, 0.003, 1)
	s.Read[0].Reflectance = nil
	list := faultsOf(t, s)
	if len(list) != 1 || !strings.Contains(list[0], "has no reading") || !strings.HasPrefix(list[0], "read[0]") {
		t.Error(list)
	}
}
