package soap_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/lyewright/soap"
)

// Wherever the guess lands, below the first plan that holds or beyond it, the search finds
// that plan, and asks about none outside its bounds: every guess of every threshold of
// forty plans, against counting.
func TestTheSearchOfAPromiseForgivesItsGuess(t *testing.T) {
	for _, bounds := range [][2]int{{0, 39}, {7, 30}, {5, 5}} {
		first, last := bounds[0], bounds[1]
		for threshold := first; threshold <= last+1; threshold++ {
			for guess := first; guess <= last; guess++ {
				holds := func(n int) bool {
					if n < first || n > last {
						t.Fatalf("asked about %d, of %d to %d", n, first, last)
					}
					return n >= threshold
				}
				if n, ok := soap.FirstBeside(guess, first, last, holds); n != threshold || ok != (threshold <= last) {
					t.Errorf("from %d, in %d to %d: %d, %t, want %d", guess, first, last, n, ok, threshold)
				}
			}
		}
	}
}

// 500 g of oils at 200 mg/g less 5 % take alkali for 95 g of KOH. A part of share s gets s of
// both, and 10 g of the oil of its own in a carrier: 1 − 95 s/(100 s + 2). Shares of more
// than twelve decimals are no whole number of 10^-12.
func TestAShareOfManyDecimalsIsAShare(t *testing.T) {
	for _, share := range []string{"25", "33.3333333333333333", "12.34567890123456789", "0.00000000000123456"} {
		var s float64
		if _, err := fmt.Sscan(share, &s); err != nil {
			t.Fatal(err)
		}
		s /= 100
		formula, _, err := soap.ParseFormula([]byte(`{"formula": "Lantern thirds", "oils": [{"oil": "hall-blend", "share": "100 %", "saponification": "200"}],
			"alkali": [{"kind": "sodium-hydroxide", "purity": "100 %"}], "superfat": "5 %", "water": {"per_alkali": "2"}, "size": {"oils": "500 g"},
			"parts": [{"part": "blue", "share": "` + share + ` %", "colourants": [{"colourant": "ultramarine-blue", "load": "5 g", "carrier": {"liquid": "hall-blend", "ratio": "2", "from": "extra"}}]}, {"part": "plain", "share": "rest"}]}`))
		if err != nil {
			t.Fatal(err)
		}
		batch, err := formula.Batch()
		if err != nil {
			t.Fatal(err)
		}
		blue, plain := batch.Parts[0].Superfat.Planned.Float(), batch.Parts[1].Superfat.Planned.Float()
		if want := 1 - 95*s/(100*s+2); math.Abs(blue-want) > 1e-9 {
			t.Errorf("%s %%: a superfat of %.12f, want %.12f", share, blue, want)
		}
		if math.Abs(plain-0.05) > 1e-9 {
			t.Errorf("beside %s %%: a superfat of %.12f, want 0.05", share, plain)
		}
	}
}

// No fat takes more than 450 mg of KOH a gram, or less than 5: a liquid's is held to that as
// an oil is. 4500 is a slip of the point.
func TestALiquidsFatHasTheValueOfAFat(t *testing.T) {
	for value, taken := range map[string]bool{
		"4.9": false, "5": true, "230": true, "450": true, "450.1": false,
		"500": false, "4500": false,
	} {
		_, _, err := soap.ParseFormula([]byte(`{"formula": "Lantern milk", "oils": [{"oil": "olive", "share": "100 %"}], "alkali": [{"kind": "sodium-hydroxide", "purity": {"low": "97 %", "high": "99 %"}}],
			"superfat": "5 %", "water": {"per_alkali": "2", "liquids": [{"liquid": "milk", "share": "50 %", "water": "88 %", "fat": "4 %", "saponification": "` + value + `"}]}, "size": {"oils": "500 g"}}`))
		if taken && err != nil {
			t.Errorf("%s mg/g: %v", value, err)
		}
		var faults soap.Faults
		if !taken && (!errors.As(err, &faults) || len(faults) != 1 || faults[0].Path != "water.liquids[0].saponification" ||
			!errors.Is(err, soap.ErrRange)) {
			t.Errorf("%s mg/g: %v", value, err)
		}
	}
}

// A list that is too long is refused as one, and nothing in it is read: what is wrong with
// its lines is not said line by line.
func TestAnOverlongListIsReadNoFurther(t *testing.T) {
	lines := func(n int) string { return strings.TrimSuffix(strings.Repeat(`{"nonsense": 1},`, n), ",") }
	for path, c := range map[string]struct {
		most int
		text string
	}{
		"parts[0].additives":  {50, `"parts": [{"part": "whole", "share": "100 %", "additives": [LINES]}]`},
		"parts[0].fragrances": {50, `"parts": [{"part": "whole", "share": "100 %", "fragrances": [LINES]}]`},
		"water.liquids":       {20, `"water": {"per_alkali": "2", "liquids": [LINES]}`},
		"acids":               {20, `"acids": [LINES]`},
	} {
		for _, n := range []int{c.most, c.most + 1} {
			text := `{"formula": "Lantern list", "oils": [{"oil": "olive", "share": "100 %"}], "alkali": [{"kind": "sodium-hydroxide", "purity": {"low": "97 %", "high": "99 %"}}], "superfat": "5 %", "size": {"oils": "500 g"}, ` +
				strings.Replace(c.text, "LINES", lines(n), 1) + `}`
			_, _, err := soap.ParseFormula([]byte(text))
			var faults soap.Faults
			if !errors.As(err, &faults) {
				t.Fatalf("%s with %d lines: %v", path, n, err)
			}
			whole, inside := 0, 0
			for _, f := range faults {
				switch {
				case f.Path == path && errors.Is(f.Kind, soap.ErrLimit):
					whole++
				case strings.HasPrefix(f.Path, path+"["):
					inside++
				}
			}
			if long := n > c.most; long && (whole != 1 || inside != 0) || !long && (whole != 0 || inside == 0) {
				t.Errorf("%s with %d lines: %d faults of the list, %d in it", path, n, whole, inside)
			}
		}
	}
}
