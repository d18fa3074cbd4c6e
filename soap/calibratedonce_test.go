package soap_test

import (
	"context"
	"errors"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/colour/tint"
	"example.com/lyewright/soap"
)

// With a calibration that was made before, batch and tint are the same to the last byte. One of
// other swatches is refused, and so is a formula without any.
func TestACalibrationMadeOnceGivesTheSameBatch(t *testing.T) {
	f, _, err := soap.ParseFormula(lanternDusk())
	if err != nil {
		t.Fatal(err)
	}
	written := func(f soap.Formula) (all string) {
		t.Helper()
		b, err := f.Batch()
		if err != nil {
			t.Fatal(err)
		}
		tint, err := b.Tint()
		if err != nil {
			t.Fatal(err)
		}
		first, err := b.MarshalJSON()
		second, err2 := tint.MarshalJSON()
		if err := errors.Join(err, err2); err != nil {
			t.Fatal(err)
		}
		return string(first) + string(second)
	}
	plain := written(f)
	kept := f
	if kept.Calibration, err = f.Calibrate(t.Context()); err != nil {
		t.Fatal(err)
	}
	if got := written(kept); got != plain {
		t.Errorf("with a calibration of its own: %.200s, else %.200s", got, plain)
	}
	// What was read a calibration does not tell, so that one of darker swatches is worked with: it is that which
	// counts, and none is made anew.
	darker, _, err := soap.ParseFormula(lanternDusk())
	if err != nil {
		t.Fatal(err)
	}
	for _, swatch := range darker.Swatches.Read {
		for i := range swatch.Reflectance {
			swatch.Reflectance[i] *= 0.95
		}
	}
	kept = f
	if kept.Calibration, err = darker.Calibrate(t.Context()); err != nil {
		t.Fatal(err)
	}
	if got, want := written(kept), written(darker); got != want || got == plain {
		t.Errorf("with the calibration of darker swatches: as with these: %v, as with its own: %v", got == want, got == plain)
	}
	other, _, err := soap.ParseFormula(heaviest["a hundred swatches of 71 bands"].Text())
	if err != nil {
		t.Fatal(err)
	}
	other.Calibration = kept.Calibration
	if _, err := other.Batch(); !errors.Is(err, soap.ErrConflict) {
		t.Errorf("with a calibration of other swatches: %v", err)
	}
	if _, err := (soap.Formula{}).Calibrate(t.Context()); !errors.Is(err, soap.ErrMissing) {
		t.Errorf("without swatches: %v", err)
	}
	over, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := f.Calibrate(over); !errors.Is(err, context.Canceled) {
		t.Errorf("after the end of its context: %v", err)
	}
}

// A calibration is of other swatches where their bands, their white or their colourants are others: each alone
// tells it.
func TestACalibrationOfOtherSwatchesIsToldByEach(t *testing.T) {
	for name, change := range map[string]func(s *tint.Swatches){
		"none": func(*tint.Swatches) {},
		"bands": func(s *tint.Swatches) { // one more, at 390 nm
			s.Bands.From, s.Bands.Count = s.Bands.From-s.Bands.Step, s.Bands.Count+1
			for i := range s.Read {
				s.Read[i].Reflectance = slices.Insert(s.Read[i].Reflectance, 0, s.Read[i].Reflectance[0])
			}
		},
		"white": func(s *tint.Swatches) { s.White = "iron-oxide-red" },
		"colourants": func(s *tint.Swatches) {
			for i := range s.Read {
				for j := range s.Read[i].Loads {
					if load := &s.Read[i].Loads[j]; load.Colourant == "iron-oxide-red" {
						load.Colourant = "chromium-oxide-green"
					}
				}
			}
		},
	} {
		f, _, err := soap.ParseFormula(lanternDusk())
		if err != nil {
			t.Fatal(err)
		}
		if f.Calibration, err = f.Calibrate(t.Context()); err != nil {
			t.Fatal(err)
		}
		change(f.Swatches)
		err = f.Check()
		told := err != nil && strings.Contains(err.Error(), "are others than the calibration beside them was made of")
		if told != (name != "none") {
			t.Errorf("%s: %v", name, err)
		}
	}
}
