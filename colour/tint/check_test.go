package tint_test

import (
	"errors"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/lyewright/colour/tint"
	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

// faultsOf gives the faults of swatches as "path: text reason; remedy".
func faultsOf(t *testing.T, s tint.Swatches) []string {
	t.Helper()
	err := s.Check()
	if _, calibrateErr := s.Calibrate(); (err == nil) != (calibrateErr == nil) {
		t.Errorf("Check says %v, Calibrate %v", err, calibrateErr)
	}
	var faults fault.Faults
	if err != nil && !errors.As(err, &faults) {
		t.Fatal(err)
	}
	list := make([]string, len(faults))
	for i, f := range faults {
		list[i] = f.Error()
		if f.Kind == nil || f.Reason == "" || f.Remedy == "" {
			t.Errorf("%+v", f)
		}
	}
	return list
}

func TestSwatchesInOrderHaveNoFaults(t *testing.T) {
	w := dusk()
	if list := faultsOf(t, w.swatches(twelve, 0.003, 1)); len(list) > 0 {
		t.Error(list)
	}
}

// Every fault says which swatch to make, or what to measure.
func TestWhatIsWrongWithSwatches(t *testing.T) {
	w := dusk()
	lab := func(s *tint.Swatches, of func(i int) tint.Lab) {
		s.Bands = tint.Bands{}
		for i := range s.Read {
			c := of(i)
			s.Read[i].Reflectance, s.Read[i].Lab = nil, &c
		}
	}
	layer := func(s *tint.Swatch, black, white float64) {
		s.Reflectance, s.Thickness, s.Backing = nil, units.Millimetres(2), [2]float64{0.05, 0.88}
		for range 31 {
			s.OverBlack, s.OverWhite = append(s.OverBlack, black), append(s.OverWhite, white)
		}
	}
	for _, row := range []struct {
		change func(s *tint.Swatches)
		want   []string // each a part of one fault, in order; none besides
	}{
		{func(s *tint.Swatches) { s.Read = nil }, []string{"read: is missing"}},
		{func(s *tint.Swatches) { s.Read = make([]tint.Swatch, 101) }, []string{"read: are 101 swatches"}},
		{func(s *tint.Swatches) { s.Read = s.Read[1:] }, []string{"read: has no swatch of the base; cast and read the batter without any colourant"}},
		{func(s *tint.Swatches) { s.Read = s.Read[:1] }, []string{`read: "titanium-dioxide" is the white, and is in no swatch`}},
		{func(s *tint.Swatches) { s.Read = slices.Delete(s.Read, 4, 6) }, []string{
			`read[3].loads.ultramarine-blue: stands in this swatch alone, with 0.3 %; cast and read one with another load of it, such as 0.6 % of batter, or with this load and without white`,
		}},
		{func(s *tint.Swatches) { s.Read = append(s.Read[:2], s.Read[3:6]...); s.Read[2].Loads = s.Read[3].Loads }, []string{`read: are 5 swatches, too few of their kind to tell the colourants apart; cast and read "titanium-dioxide" alone in the base, with another load than those there are`}},
		{func(s *tint.Swatches) {
			s.Read = []tint.Swatch{s.Read[0], s.Read[1], s.Read[2], s.Read[3], s.Read[4]}
			s.Read[4].Loads = s.Read[3].Loads
		}, []string{`read[3].loads.ultramarine-blue: has the same load in every swatch, 0.3 %; cast and read one with another load`}},
		{func(s *tint.Swatches) {
			s.Read = []tint.Swatch{s.Read[0], s.Read[1], s.Read[2]}
			s.Read[2].Loads = s.Read[1].Loads
		}, []string{`read[1].loads.titanium-dioxide: has the same load in every swatch, 0.3 %; cast and read one with another load of it, such as 0.6 % of batter`}},
		{func(s *tint.Swatches) { // blue and red always in one proportion
			s.Read = s.Read[:6]
			for i := 3; i < 6; i++ {
				load := s.Read[i].Loads[len(s.Read[i].Loads)-1]
				s.Read[i].Loads = append(slices.Clone(s.Read[i].Loads), tint.Load{Colourant: red, OfBatter: load.OfBatter})
			}
		}, []string{`read: are 6 swatches, too few of their kind to tell the colourants apart; cast and read "ultramarine-blue" alone in the base`}},
		{func(s *tint.Swatches) { // a white alone once, and beside the others
			s.Read = slices.Delete(s.Read, 2, 3)
			s.Read = slices.Delete(s.Read, 4, 5)
			s.Read = slices.Delete(s.Read, 6, 7)
			s.Read = slices.Delete(s.Read, 8, 9)
		}, []string{`read: are 8 swatches, too few of their kind to tell the colourants apart; cast and read "titanium-dioxide" alone in the base`}},
		{func(s *tint.Swatches) { // three that lack a rung, one of them misspelt
			s.Read = append(s.Read[:3:3], s.Read[3], s.Read[6], s.Read[9], s.Read[5])
			s.Read[6].Loads = []tint.Load{{Colourant: "ultramarine-blu", OfBatter: share(0.8)}}
		}, []string{`read[3].loads.ultramarine-blue: stands in this swatch alone, with 0.3 %; cast`, `read[4].loads.iron-oxide-red`, `read[5].loads.iron-oxide-yellow`, `read[6].loads.ultramarine-blu`}},
		{func(s *tint.Swatches) { s.Read[3].Reflectance[5] = 1.2 }, []string{`read[3].reflectance[5]: "1.2" is not from 0 to 1; give the share of light that is reflected, 0 to 1, not a percentage`}},
		{func(s *tint.Swatches) { s.Read[3].Reflectance[5] = -0.1 }, []string{`read[3].reflectance[5]: "-0.1" is not from 0 to 1`}},
		{func(s *tint.Swatches) { s.Read[3].Reflectance[0] = 640 }, []string{`read[3].reflectance[0]: "640" is not from 0 to 1; give the share of light that is reflected, 0 to 1`}},
		{func(s *tint.Swatches) { s.Read[3].Reflectance[5] = math.NaN() }, []string{`read[3].reflectance[5]: "NaN" is not a number`}},
		{func(s *tint.Swatches) { s.Read[3].Reflectance[5] = math.Inf(1) }, []string{`read[3].reflectance[5]: "+Inf" is not a number`}},
		{func(s *tint.Swatches) { s.Read[3].Reflectance[30] = 0.04 }, []string{`read[3].reflectance[30]: "0.04" is no more than the surface alone reflects, 0.04; measure with the gloss excluded, or lower surface.outside`}},
		{func(s *tint.Swatches) {
			s.Surface = &tint.Surface{Outside: 0.04, Inside: 0.6, NoGloss: true}
			s.Read[3].Reflectance[30] = 0
		}, []string{`read[3].reflectance[30]: "0" is no light at all`}},
		{func(s *tint.Swatches) { s.Surface = &tint.Surface{Outside: math.NaN(), Inside: 1} }, []string{`surface.outside: "NaN" is not from 0 to below 1`, `surface.inside: "1" is not from 0`}},
		{func(s *tint.Swatches) { s.Read[4].Reflectance = s.Read[4].Reflectance[:30] }, []string{"read[4].reflectance: has 30 values for 31 bands; give every swatch the same bands"}},
		{func(s *tint.Swatches) { s.Bands = tint.Bands{} }, []string{"bands: is missing"}},
		{func(s *tint.Swatches) { s.Bands.Step = 7 }, []string{`bands.step: "7 nm" is not a step`}},
		{func(s *tint.Swatches) { s.Bands.Step = 0 }, []string{`bands.step: "0 nm" is not a step`}},
		{func(s *tint.Swatches) { s.Bands.From = 420 }, []string{`bands.from: "420 nm" is not a multiple of 5 nm from 380 to 400 nm`}},
		{func(s *tint.Swatches) { s.Bands.From = 383 }, []string{`bands.from: "383 nm"`}},
		{func(s *tint.Swatches) { s.Bands.Step = 5 }, []string{`bands: are 31 bands from 400 nm in steps of 5 nm; list 61 to 67 values`}},
		{func(s *tint.Swatches) { s.Bands.Count = math.MaxInt }, []string{"bands: are " + strconv.Itoa(math.MaxInt) + " bands"}},
		{func(s *tint.Swatches) { s.Read[2].Name = "" }, []string{"read[2].swatch: is missing"}},
		{func(s *tint.Swatches) { s.Read[2].Name = s.Read[1].Name }, []string{`read[2].swatch: "swatch 1" stands twice, first at read[1]`}},
		{func(s *tint.Swatches) { s.Read[2].Reflectance = nil }, []string{`read[2]: "swatch 2" has no reading`}},
		{func(s *tint.Swatches) { s.Read[2].Lab = &tint.Lab{L: 50} }, []string{`read[2]: "swatch 2" is read in more than one way`}},
		{func(s *tint.Swatches) { s.Read[2].Reflectance, s.Read[2].Lab = nil, &tint.Lab{L: 50} }, []string{`read[2]: "swatch 2" is read in another way than "swatch 0"; read every swatch the same way`}},
		{func(s *tint.Swatches) { s.Read[1].Loads[0].OfBatter = units.Ratio{} }, []string{"read[1].loads.titanium-dioxide: is missing"}},
		{func(s *tint.Swatches) { s.Read[1].Loads[0].OfBatter = units.Percent(0) }, []string{`read[1].loads.titanium-dioxide: "0 %" is not above 0 %`}},
		{func(s *tint.Swatches) { s.Read[1].Loads[0].OfBatter = units.Percent(101) }, []string{`read[1].loads: "101 %" is what they add up to, above 100 %`}},
		{func(s *tint.Swatches) { s.Read[1].Loads[0].Colourant = "" }, []string{"read[1].loads: has a load of nothing"}},
		{func(s *tint.Swatches) { s.Read[3].Loads[1].Colourant = white }, []string{`read[3].loads.titanium-dioxide: "titanium-dioxide" stands twice`}},
		{func(s *tint.Swatches) { s.Read[1].Loads = make([]tint.Load, 21) }, []string{"read[1].loads: are 21 colourants"}},
		{func(s *tint.Swatches) {
			lab(s, func(i int) tint.Lab { return tint.Lab{L: 50 + float64(i)} })
			s.Bands = tens
		}, []string{"bands: is given for swatches that are no spectra"}},
		{func(s *tint.Swatches) {
			lab(s, func(i int) tint.Lab { return tint.Lab{L: 50 + float64(i)} })
			s.Read[4].Lab = &tint.Lab{L: 50, A: -120, B: 60}
		}, []string{`read[4].lab: "50, -120, 60" has no light in its red, which three bands cannot hold; measure reflectance`}},
		{func(s *tint.Swatches) {
			lab(s, func(i int) tint.Lab { return tint.Lab{L: 50 + float64(i)} })
			s.Read[4].Lab = &tint.Lab{L: 95, A: 40}
		}, []string{`read[4].lab: "95, 40, 0" is brighter than white in its red`}},
		{func(s *tint.Swatches) {
			lab(s, func(i int) tint.Lab { return tint.Lab{L: 50 + float64(i)} })
			s.Read[4].Lab, s.Read[5].Lab, s.Read[6].Lab = &tint.Lab{L: 101}, &tint.Lab{L: math.NaN()}, &tint.Lab{L: 50, B: 201}
		}, []string{`read[4].lab: "101, 0, 0" has a lightness that is not from 0 to 100`, `read[5].lab: "NaN, 0, 0" is not a colour`, `read[6].lab: "50, 0, 201" is farther from grey than any colour`}},
		{func(s *tint.Swatches) {
			s.Bands = tint.Bands{}
			for i := range s.Read {
				s.Read[i].Reflectance, s.Read[i].SRGB = nil, &tint.SRGB{R: 200, G: 100, B: uint8(10 * i)}
			}
		}, []string{`read[0].srgb: "#c86400" has no light in its blue; measure reflectance`}},
		{func(s *tint.Swatches) {
			s.Surface = &tint.Surface{Outside: 0.04, Inside: 0.6}
			lab(s, func(i int) tint.Lab { return tint.Lab{L: 50 + float64(i)} })
			s.Read[4].Lab = &tint.Lab{L: 20}
		}, []string{`read[4].lab: "20, 0, 0" has no light in its red beyond what the surface alone reflects, 0.04, which three bands cannot hold`}},
		{func(s *tint.Swatches) { layer(&s.Read[0], 0.5, 0.5) }, []string{`read[0]: "swatch 0" reads the same over black and white at 400 nm; cast a thinner layer`}},
		{func(s *tint.Swatches) { layer(&s.Read[0], 0.4, 0.93) }, []string{`read[0]: "swatch 0" reads as no layer can at 400 nm; check the readings`}},
		{func(s *tint.Swatches) { layer(&s.Read[0], 0.4, 0.6); s.Read[0].Thickness = units.Length{} }, []string{"read[0].thickness: is missing"}},
		{func(s *tint.Swatches) { layer(&s.Read[0], 0.4, 0.6); s.Read[0].Backing = [2]float64{0.88, 0.05} }, []string{`read[0].backing: "0.88, 0.05" is not a black and a white`}},
		{func(s *tint.Swatches) { layer(&s.Read[0], 0.4, 0.6); s.Read[0].Backing[0] = 0.8 }, []string{`read[0].backing: "0.8, 0.88" is not a black and a white`}},
		{func(s *tint.Swatches) { layer(&s.Read[0], 0.4, 0.6); s.Read[0].Backing[1] = math.NaN() }, []string{`read[0].backing: "0.05, NaN"`}},
		{func(s *tint.Swatches) { layer(&s.Read[0], 0.4, 0.6); s.Read[0].OverWhite = nil }, []string{"read[0].over_white: is missing"}},
	} {
		s := w.swatches(twelve, 0, 0)
		row.change(&s)
		got := faultsOf(t, s)
		if len(got) != len(row.want) {
			t.Errorf("got %q\nwant %q", got, row.want)
			continue
		}
		for i, want := range row.want {
			if !strings.Contains(got[i], want) {
				t.Errorf("got %s\nwant %s", got[i], want)
			}
		}
	}
}

// A mixture over black and white that hides both is still opaque: its K/S counts.
func TestAMixtureMayHideItsGrounds(t *testing.T) {
	w := dusk()
	s := w.swatches(twelve, 0, 0)
	s.Read[4].OverBlack, s.Read[4].OverWhite = s.Read[4].Reflectance, s.Read[4].Reflectance
	s.Read[4].Reflectance, s.Read[4].Thickness, s.Read[4].Backing = nil, units.Millimetres(8), [2]float64{0.05, 0.88}
	if c := calibrated(t, s); c.Worst() > 1e-6 || c.Thin() {
		t.Errorf("%v, thin %t", c, c.Thin())
	}
}

// Without a white the base is the unit, and everything is found as well.
func TestWithoutAWhite(t *testing.T) {
	w := dusk()
	s := w.swatches([]map[string]float64{{}, {blue: 0.3}, {blue: 0.8}, {red: 0.1}, {red: 0.3}, {red: 0.1, blue: 0.3}}, 0, 0)
	s.White = ""
	c := calibrated(t, s)
	if c.White() != "" || c.Worst() > 1e-6 {
		t.Errorf("%v", c)
	}
	if d := predicted(t, c, w.loads(map[string]float64{blue: 0.5, red: 0.2})).Difference(w.seen(t, w.reflects(map[string]float64{blue: 0.5, red: 0.2}))); d > 1e-6 {
		t.Errorf("off by %g", d)
	}
	if _, _, err := c.Whiter(nil, share(1)); err == nil {
		t.Error("whiter without a white")
	}
}

// Three bands: linear light from Lab and from sRGB, without a surface.
func TestThreeBands(t *testing.T) {
	w := dusk()
	w.bands, w.surface = tint.Bands{}, tint.Surface{}
	s := w.swatches(twelve, 0, 0)
	s.Surface = nil
	for i := range s.Read {
		c := w.seen(t, s.Read[i].Reflectance)
		s.Read[i].Lab, s.Read[i].Reflectance = &c, nil
	}
	c := calibrated(t, s)
	if c.Count() != 3 || c.Worst() > 1e-6 {
		t.Errorf("%v", c)
	}
	for i, loads := range others {
		if d := predicted(t, c, w.loads(loads)).Difference(w.seen(t, w.reflects(loads))); d > 1e-6 {
			t.Errorf("mixture %d: off by %g", i, d)
		}
	}
	for i := range s.Read { // a photograph has eight bits
		picture, _ := s.Read[i].Lab.SRGB()
		s.Read[i].SRGB, s.Read[i].Lab = &picture, nil
	}
	c = calibrated(t, s)
	for i, loads := range others {
		if d := predicted(t, c, w.loads(loads)).Difference(w.seen(t, w.reflects(loads))); d > 1.5 {
			t.Errorf("mixture %d: off by %g", i, d)
		}
	}
}

// The gloss may be left out of the readings.
func TestTheGlossMayBeExcluded(t *testing.T) {
	w := dusk()
	w.surface.NoGloss = true
	c := calibrated(t, w.swatches(twelve, 0, 0))
	for i, loads := range others {
		if d := predicted(t, c, w.loads(loads)).Difference(w.seen(t, w.reflects(loads))); d > 1e-6 {
			t.Errorf("mixture %d: off by %g", i, d)
		}
	}
}

// The order of the swatches, of the loads in them, and the names of the colourants count
// for nothing.
func TestTheOrderOfSwatchesDoesNotCount(t *testing.T) {
	w := dusk()
	s := w.swatches(twelve, 0.003, 3)
	c := calibrated(t, s)
	slices.Reverse(s.Read)
	for i := range s.Read {
		slices.Reverse(s.Read[i].Loads)
	}
	turned := calibrated(t, s)
	for i, loads := range others {
		if d := predicted(t, c, w.loads(loads)).Difference(predicted(t, turned, w.loads(loads)).Lab); d > 1e-7 {
			t.Errorf("mixture %d: %g apart", i, d)
		}
	}
}

func TestWhatCannotBePredicted(t *testing.T) {
	w := dusk()
	c := calibrated(t, w.swatches(twelve, 0, 0))
	for _, row := range []struct {
		loads []tint.Load
		want  string
	}{
		{[]tint.Load{{Colourant: "dusk-mica", OfBatter: share(1)}}, `[0]: "dusk-mica" stood in no swatch`},
		{[]tint.Load{{Colourant: blue, OfBatter: share(1)}, {Colourant: red}}, `[1]: " %" is not a load`},
		{[]tint.Load{{Colourant: blue, OfBatter: units.Percent(101)}}, `[0]: "101 %" is not a load`},
		{[]tint.Load{{Colourant: blue, OfBatter: units.Whole(0).Sub(units.Percent(1))}}, `[0]: "-1 %" is not a load`},
	} {
		if _, err := c.Predict(row.loads); err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%v, want %s", err, row.want)
		}
	}
	var none tint.Calibration
	if _, err := none.Predict(nil); err == nil || none.Given() || none.Knows(blue) || none.Count() != 0 || none.Floor() != 0 || none.Worst() != 0 || none.Residuals() != nil || none.White() != "" || none.Thin() || none.Bands() != (tint.Bands{}) || none.String() != "no calibration" {
		t.Errorf("the zero value knows something: %v", err)
	}
	if _, err := none.Match(tint.Wanted{}); err == nil {
		t.Error("the zero value matches")
	}
	if _, err := none.Layer(nil, units.Millimetres(1), nil); err == nil {
		t.Error("the zero value has layers")
	}
}

func TestBandsThatAreNone(t *testing.T) {
	for _, row := range []struct {
		bands tint.Bands
		read  []float64
	}{{tens, make([]float64, 35)}, {tint.Bands{}, make([]float64, 4)}, {tint.Bands{From: 400, Step: 10, Count: 5}, make([]float64, 5)}, {tint.Bands{}, []float64{0.1, math.NaN(), 0.2}}, {tint.Bands{}, []float64{0.1, 1.5, 0.2}}} {
		if c, err := row.bands.Colour(row.read); err == nil {
			t.Errorf("%v: %v", row.bands, c)
		}
	}
}
