package main

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"
)

// printedMass gives the figure of the line of a sheet that begins with a name, as it stands.
func printedMass(t *testing.T, sheet, name string) string {
	t.Helper()
	for line := range strings.Lines(sheet) {
		if strings.Contains(line, "[ ] "+name) {
			return strings.TrimSpace(line[50:62])
		}
	}
	t.Fatalf("no line to weigh %s:\n%s", name, sheet)
	return ""
}

// A scale of 0.05 oz shows 2.25, 2.30, 2.35 and nothing between: the sheet prints the
// division that the JSON's weigh_g is, whatever the division and the mass. The ounce is
// 28.349523125 g exactly.
func TestOuncesArePrintedAsTheDivisionShowsThem(t *testing.T) {
	const ounce = 28.349523125
	cases := 0
	for _, division := range []struct {
		text   string
		oz     float64
		places int
	}{
		{"0.005", 0.005, 3},
		{"0.01", 0.01, 2},
		{"0.02", 0.02, 2},
		{"0.05", 0.05, 2},
		{"0.1", 0.1, 1},
		{"0.125", 0.125, 3},
		{"0.25", 0.25, 2},
		{"0.5", 0.5, 1},
		{"1", 1, 0},
	} {
		for _, oils := range []string{"203.7 g", "8 oz", "17 oz", "500 g", "507 g", "2 lb", "1234.5 g", "1499 g", "4 kg"} {
			text := formulaWith("size", `{"oils":"`+oils+`"},"scale":"`+division.text+` oz"`)
			sheet, stderr, _ := lyewright(text, "batch", "-units", "oz", "-")
			object, _, _ := lyewright(text, "batch", "-json", "-")
			var batch struct {
				Oils   []weighing
				Alkali []weighing
				Water  weighing
			}
			if err := json.Unmarshal([]byte(object), &batch); err != nil || len(batch.Alkali) != 1 {
				t.Fatal(err, stderr)
			}
			alkali := batch.Alkali[0]
			// A nanogram is coarser than a division in ounces: half of one for each step.
			if alkali.Weigh > alkali.Mass+1e-6 {
				t.Errorf("%g g of alkali are weighed as %g g", alkali.Mass, alkali.Weigh)
			}
			for name, w := range map[string]weighing{
				"Sodium hydroxide": alkali, "Water": batch.Water,
				"Olive oil": batch.Oils[0],
			} {
				steps := math.Round(w.Weigh / ounce / division.oz)
				if off := math.Abs(steps*division.oz*ounce - w.Weigh); off > 1e-5 {
					t.Fatalf("%s: %g g are no multiple of %s oz, by %g g", name, w.Weigh, division.text, off)
				}
				want := fmt.Sprintf("%.*f", division.places, steps*division.oz)
				if got := printedMass(t, sheet, name); got != want {
					t.Errorf("%s of %s on a scale of %s oz: printed %s oz, weighed %s oz", name, oils, division.text, got, want)
				}
				cases++
			}
		}
	}
	if cases != 9*9*3 {
		t.Errorf("%d cases", cases)
	}
}

type weighing struct {
	Mass  float64 `json:"mass_g"`
	Weigh float64 `json:"weigh_g"`
}

// A fragrance is weighed downwards. 0.3 oz are three divisions of 0.1 oz, and not two,
// though in nanograms they are one short of them.
func TestAWholeNumberOfDivisionsIsWeighedWhole(t *testing.T) {
	for _, c := range []struct{ division, load, want string }{
		{"0.1", "0.3 oz", "0.3"},    // 8504856937.5 ng; three times 2834952312.5 ng
		{"0.03", "0.09 oz", "0.09"}, // 2551457081.25 ng; three times 850485693.75 ng
		{"0.05", "2.3 oz", "2.30"},
		{"0.1", "8.5 g", "0.2"},   // 0.29983 oz: short of it
		{"0.1", "8.505 g", "0.3"}, // 0.3000051 oz
	} {
		text := strings.Replace(formulaWith("size", `{"oils":"2 kg"},"scale":"`+c.division+` oz"`), `"share":"100 %"`,
			`"share":"100 %","fragrances":[{"fragrance":"lavender","load":"`+c.load+`"}]`, 1)
		sheet, stderr, _ := lyewright(text, "batch", "-units", "oz", "-")
		if stderr != "" {
			t.Fatal(stderr)
		}
		if got := printedMass(t, sheet, "lavender"); got != c.want {
			t.Errorf("%s on a scale of %s oz: printed %s oz, want %s", c.load, c.division, got, c.want)
		}
	}
}
