package lye_test

import (
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
)

// table reads a published table of testdata/lye: so many rows of so many fields.
func table(t testing.TB, name string, rows, fields int) [][]string {
	t.Helper()
	text, err := os.ReadFile("../../testdata/lye/" + name)
	if err != nil {
		t.Fatal(err)
	}
	var lines [][]string
	for line := range strings.Lines(string(text)) {
		line = strings.TrimSuffix(line, "\n")
		if strings.HasPrefix(line, "#") {
			continue
		}
		f := strings.Split(line, "\t")
		if len(f) != fields {
			t.Fatalf("%s: %d fields in %q, want %d", name, len(f), line, fields)
		}
		lines = append(lines, f)
	}
	if len(lines) != rows {
		t.Fatalf("%s: %d rows, want %d", name, len(lines), rows)
	}
	return lines
}

func number(t testing.TB, text string) float64 {
	t.Helper()
	f, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func mass(t testing.TB, text string) units.Mass {
	t.Helper()
	m, err := units.ParseMass(text)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func volume(t testing.TB, text string) units.Volume {
	t.Helper()
	v, err := units.ParseVolume(text)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func celsius(t testing.TB, f float64) units.Temperature {
	t.Helper()
	c, ok := units.CelsiusOfFloat(f)
	if !ok {
		t.Fatalf("%v °C is no temperature", f)
	}
	return c
}

func percent(text string) units.Ratio { return units.MustRatio(text + " %") }

// share is a float64 as a mass fraction.
func share(t testing.TB, f float64) units.Ratio {
	t.Helper()
	r, ok := units.RatioOfFloat(f)
	if !ok {
		t.Fatalf("%v is no share", f)
	}
	return r
}

// density is that of a lye in kg/m3; strength in percent, temperature in °C.
func density(t testing.TB, alkali lye.Alkali, strength, at float64) float64 {
	t.Helper()
	d, err := lye.Solution{Alkali: alkali, Strength: share(t, strength/100), At: celsius(t, at)}.Density()
	if err != nil {
		t.Fatalf("%v %v %% at %v °C: %v", alkali, strength, at, err)
	}
	return 1000 * d.Float()
}

func near(got, want, within float64) bool { return math.Abs(got-want) <= within }
