package units_test

import (
	"errors"
	"math"
	"math/big"
	"testing"

	"example.com/lyewright/units"
)

func length(t testing.TB, text string) units.Length {
	t.Helper()
	l, err := units.ParseLength(text)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// An inch is 25.4 mm exactly: the international yard and pound agreement of 1959
// (recalled, nobody saw it).
func TestLengthsAreReadExactly(t *testing.T) {
	for text, want := range map[string]string{
		"45 mm":         "45 mm",
		"45mm":          "45 mm",
		"4.5 cm":        "45 mm",
		"0.3 m":         "300 mm",
		"1 in":          "25.4 mm",
		"1.75 in":       "44.45 mm",
		"0 mm":          "0 mm",
		"0.000001 mm":   "0.000001 mm", // a nanometre
		"0.0000005 mm":  "0.000001 mm",
		"0.00000049 mm": "0 mm",
		"10 m":          "10000 mm",
	} {
		l, err := units.ParseLength(text)
		if err != nil || l.String() != want {
			t.Errorf("%s is %v, %v, want %s", text, l, err, want)
		}
		if back, err := units.ParseLength(l.String()); err != nil || back != l {
			t.Errorf("%v reads back as %v, %v", l, back, err)
		}
	}
	if l, _ := units.ParseLength("45 mm"); units.Millimetres(45) != l || l.Millimetres() != 45 || l.Text(0) != "45" {
		t.Errorf("45 mm is %v, %v, %s", l, l.Millimetres(), l.Text(0))
	}
	if a, b := units.Millimetres(-3), units.Millimetres(2); a.Sign() != -1 || a.Compare(b) != -1 || b.Compare(a) != 1 || a.Compare(a) != 0 || (units.Length{}).Sign() != 0 {
		t.Error("lengths are out of order")
	}
}

func TestAreasAreReadExactly(t *testing.T) {
	for text, want := range map[string]string{
		"120 mm²":       "120 mm²",
		"120mm2":        "120 mm²",
		"1.2 cm²":       "120 mm²",
		"1.2 cm2":       "120 mm²",
		"0.5 m²":        "500000 mm²",
		"0.5 m2":        "500000 mm²",
		"1 in²":         "645.16 mm²", // 25.4 × 25.4
		"2 in2":         "1290.32 mm²",
		"0.000001 mm²":  "0.000001 mm²",
		"0.0000005 mm²": "0.000001 mm²",
		"100 m²":        "100000000 mm²",
	} {
		a, err := units.ParseArea(text)
		if err != nil || a.String() != want {
			t.Errorf("%s is %v, %v, want %s", text, a, err, want)
		}
		if back, err := units.ParseArea(a.String()); err != nil || back != a {
			t.Errorf("%v reads back as %v, %v", a, back, err)
		}
	}
	if a, _ := units.ParseArea("45 mm²"); units.SquareMillimetres(45) != a || a.SquareMillimetres() != 45 {
		t.Errorf("45 mm² is %v, %v", a, a.SquareMillimetres())
	}
	if a, b := units.SquareMillimetres(-3), units.SquareMillimetres(2); a.Sign() != -1 || a.Compare(b) != -1 || b.Compare(a) != 1 {
		t.Error("areas are out of order")
	}
}

func TestLengthsAndAreasThatCannotBeReadAreRefused(t *testing.T) {
	for _, test := range append([]struct {
		text string
		kind error
	}{
		{"5", units.ErrUnit},
		{"5 g", units.ErrUnit},
		{"5 mL", units.ErrUnit},
		{"5 MM", units.ErrUnit},
		{"5 ft", units.ErrUnit},
		{`5 "`, units.ErrUnit},
		{"-5 mm", units.ErrSize},
		{"-5 mm²", units.ErrSize},
		{"10.000000001 m", units.ErrSize},
		{"394 in", units.ErrSize},
		{"100.000001 m²", units.ErrSize},
		{"9999999999999999 m", units.ErrSize},
		{"9999999999999999 m²", units.ErrSize},
	}, unread...) {
		l, err := units.ParseLength(test.text)
		if err == nil || l != (units.Length{}) {
			t.Errorf("%.40q: %v, %v", test.text, l, err)
		}
		a, areaErr := units.ParseArea(test.text)
		if areaErr == nil || a != (units.Area{}) {
			t.Errorf("%.40q: %v, %v", test.text, a, areaErr)
		}
		if !errors.Is(err, test.kind) && !errors.Is(areaErr, test.kind) {
			t.Errorf("%.40q: %v, %v, want %v", test.text, err, areaErr, test.kind)
		}
		for _, err := range []error{err, areaErr} {
			if err != nil {
				checkFault(t, test.text, err)
			}
		}
	}
	for _, text := range []string{"5 mm²", "5 cm2"} {
		if l, err := units.ParseLength(text); !errors.Is(err, units.ErrUnit) {
			t.Errorf("%s is a length: %v, %v", text, l, err)
		}
	}
	for _, text := range []string{"5 mm", "5 in"} {
		if a, err := units.ParseArea(text); !errors.Is(err, units.ErrUnit) {
			t.Errorf("%s is an area: %v, %v", text, a, err)
		}
	}
}

func TestLengthsAndAreasStopAtTheirEnds(t *testing.T) {
	for _, n := range []int64{1<<40 + 1, math.MaxInt64} {
		if units.Millimetres(n) != units.Millimetres(int64(1<<40)) || units.SquareMillimetres(n).Sign() != 1 {
			t.Errorf("%d mm is %v, %v", n, units.Millimetres(n), units.SquareMillimetres(n))
		}
		if units.Millimetres(-n) != units.Millimetres(int64(-1<<40)) {
			t.Errorf("%d mm is %v", -n, units.Millimetres(-n))
		}
	}
}

func TestLengthSurvivesWritingAndReading(t *testing.T) {
	s := newSource(47)
	for range 5_000 {
		number := plain(rat(t, s.digits(1+s.IntN(4))+"."+s.digits(1+s.IntN(6))), 6)
		l := length(t, number+" mm")
		if l.Text(6) != number || length(t, l.String()) != l {
			t.Fatalf("%s mm is %v", number, l)
		}
		for unit, scale := range map[string]int64{"cm": 10, "m": 1000} {
			text := times(rat(t, number), big.NewRat(1, scale)).FloatString(9) + " " + unit
			if got := length(t, text); got != l {
				t.Fatalf("%s is %v, want %v", text, got, l)
			}
		}
		places := s.IntN(7)
		if got, want := l.Text(places), plain(rat(t, number), places); got != want {
			t.Fatalf("%s with %d decimals is %s, want %s", number, places, got, want)
		}
	}
}

func TestOtherUnitsAreNoLengths(t *testing.T) {
	for _, text := range []string{
		"45", "45 g", "45 ml", "45 mL", "45 %", // another kind's, or none
		"45 mm²", "45 cm2", "45 in²", "45 mm³", // an area, a volume
		"45 inch", "45 inches", "45 in.", `45"`, "45 ft", "45 km", "45 µm", "45 nm", // not among the spellings
		"45 MM", "45 Mm", "45 M", "45 IN", // capitals mean something else
		"45 m m", "45 mm/", "45\u00a0mm", "45 mm\u200b", "45 ㎜", "45 мм", // a symbol taken apart, lookalikes
		"45 mm\x00", "45 mm\xff", "45 mm\n", // and what follows
	} {
		l, err := units.ParseLength(text)
		if !errors.Is(err, units.ErrUnit) || l != (units.Length{}) {
			t.Errorf("%q: %v, %v", text, l, err)
		}
		if err != nil {
			checkFault(t, text, err)
		}
	}
}

func TestLengthsEndAtTenMetres(t *testing.T) {
	for _, text := range []string{"10 m", "1000 cm", "10000 mm", "393.7007874 in"} {
		if l := length(t, text); l.Compare(units.Millimetres(10_000)) > 0 {
			t.Errorf("%s is %v", text, l)
		}
	}
	for _, text := range []string{
		"10.000000001 m", "1000.0000001 cm", "10000.000001 mm", "393.7007875 in",
		"9999999999999999.9999999999999999999999999999999999 m",
		"9223372036.854775808 m", "18446744073.709551616 m", // where 64 bits end
	} {
		if l, err := units.ParseLength(text); !errors.Is(err, units.ErrSize) || l != (units.Length{}) {
			t.Errorf("%s is %v, %v", text, l, err)
		}
	}
}

func TestVolumesOfFloats(t *testing.T) {
	for _, f := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e6 + 1, -1e6 - 1, 1e300} {
		if v, ok := units.VolumeOfFloat(f); ok || v != (units.Volume{}) {
			t.Errorf("%v is %v", f, v)
		}
	}
	for f, want := range map[float64]string{19.0740512: "19.074051 mL", -0.0000006: "-0.000001 mL", 1e6: "1000000 mL", 0: "0 mL"} {
		v, ok := units.VolumeOfFloat(f)
		if !ok || v.String() != want || math.Abs(v.Millilitres()-f) > 6e-7 {
			t.Errorf("%v is %v, %v, want %s", f, v, ok, want)
		}
	}
}

// A mass over a ratio is one division, rounded once: m × 10^12 / p by big integers.
func TestMassOverARatio(t *testing.T) {
	for _, test := range []struct {
		mass, ratio string
		how         units.Rounding
		want        string
	}{
		{"210 g", "6", units.Nearest, "35 g"},
		{"100 g", "3", units.Nearest, "33.333333333 g"},
		{"100 g", "3", units.Up, "33.333333334 g"},
		{"200 g", "3", units.Nearest, "66.666666667 g"},
		{"200 g", "3", units.Down, "66.666666666 g"},
		{"1.15 g", "1.15", units.Nearest, "1 g"},
		{"1000 kg", "0.5", units.Nearest, "2000000 g"},
	} {
		m, err := units.ParseMass(test.mass)
		if err != nil {
			t.Fatal(err)
		}
		if got, ok := m.Over(units.MustRatio(test.ratio), test.how); !ok || got.Text(units.Gram, 9)+" g" != test.want {
			t.Errorf("%s / %s is %v, want %s", test.mass, test.ratio, got, test.want)
		}
	}
	third := units.Whole(1).Over(units.Whole(3)) // not a whole number of 10^-12
	if got, ok := units.Grams(1).Over(third, units.Nearest); !ok || got != units.Grams(3) {
		t.Errorf("1 g over a third is %v", got)
	}
	if got, ok := units.Grams(-1).Over(units.Whole(2), units.Nearest); !ok || got != units.Milligrams(-500) {
		t.Errorf("−1 g over 2 is %v", got)
	}
	for _, none := range []units.Ratio{{}, units.Whole(0)} {
		if got, ok := units.Grams(1).Over(none, units.Nearest); ok || got != (units.Mass{}) {
			t.Errorf("1 g over nothing is %v, %t: want no mass", got, ok)
		}
	}
}
