package main

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/lyewright/colour/tint"
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// By hand: 1000 g of oils at 190 mg/g take 190 g of KOH; of sodium hydroxide at 98 %, less
// 5 %, that is 190 × 0.95 × 39.997/(56.105 × 0.98) = 131.3037 g, rounded down to 131.3 g.
func TestAFormulaBuiltInCodeIsPicked(t *testing.T) {
	bars, err := Bars(units.Grams(1000))
	if err != nil {
		t.Fatal(err)
	}
	list, err := Pick(bars)
	if err != nil {
		t.Fatal(err)
	}
	want := "pick 1000 g of Village hall blend\npick 131.3 g of sodium-hydroxide\n\nLantern walk bars\nBatch sheet"
	if !strings.HasPrefix(list, want) {
		t.Errorf("%.300s", list)
	}
}

const order = `{
  "formula": "Lantern walk bars",
  "oils": [{"oil": "hall-blend", "share": "100 %", "saponification": {"low": "188", "high": "192"}}],
  "alkali": [{"kind": "sodium-hydroxide", "purity": {"low": "97 %", "high": "99 %"}}],
  "superfat": "5 %", "water": {"per_alkali": "2"}, "size": {"oils": "500 g"},
  "parts": [
    {"part": "plain", "share": "50 %"},
    {"part": "clove", "share": "rest", "fragrances": [{"fragrance": "clove-bud", "load": "LOAD"}]}
  ]
}`

// Half of the 131.3037 g: 65.65 g, 65.6 g on the scale.
func TestAnOrderIsRead(t *testing.T) {
	var out strings.Builder
	if err := run(strings.NewReader(strings.Replace(order, "LOAD", "0.01 % of oils", 1)), &out); err != nil {
		t.Fatal(err)
	}
	if !strings.HasPrefix(out.String(), "pick 500 g of hall-blend\npick 65.6 g of sodium-hydroxide\n") {
		t.Errorf("%.200s", out.String())
	}
}

// A stock lye is picked as itself, not as the dry alkali that nobody weighs: 95 g of KOH less
// 5 % are 64.3389 g of sodium hydroxide, in twice as much of a stock of 50 %: 128.6 g.
func TestAStockLyeIsPicked(t *testing.T) {
	var out strings.Builder
	stock := strings.NewReplacer("LOAD", "0.01 % of oils", `"purity": {"low": "97 %", "high": "99 %"}`,
		`"stock": {"strength": "50 %"}`)
	if err := run(strings.NewReader(stock.Replace(order)), &out); err != nil {
		t.Fatal(err)
	}
	if !strings.HasPrefix(out.String(), "pick 500 g of hall-blend\npick 128.6 g of sodium-hydroxide\n") {
		t.Errorf("%.200s", out.String())
	}
}

func TestAWrongOrderNamesItsFaults(t *testing.T) {
	var out strings.Builder
	err := run(strings.NewReader(strings.Replace(order, `"5 %"`, `"5"`, 1)), &out)
	var faults soap.Faults
	if !errors.As(err, &faults) || !errors.Is(err, units.ErrUnit) || out.Len() != 0 {
		t.Fatalf("%v, %q", err, out.String())
	}
	places := map[string]int{}
	for _, f := range faults {
		places[f.Path] = f.Line
	}
	if places["superfat"] != 5 {
		t.Errorf("%v", places)
	}
}

// Clove bud oil is mostly eugenol; a tenth of the oils is far beyond what its limit
// leaves room for, whatever edition that is of.
func TestADangerousOrderIsNotPicked(t *testing.T) {
	formula, err := soap.ReadFormula(strings.NewReader(strings.Replace(order, "LOAD", "10 % of oils", 1)))
	if err != nil {
		t.Fatal(err)
	}
	var danger DangerError
	if _, err := Pick(formula); !errors.As(err, &danger) || danger.Finding.Code != "fragrance-over-cap" {
		t.Errorf("%v", err)
	}
	batch, err := formula.Batch()
	if err != nil {
		t.Fatal(err)
	}
	if part, used := MostScented(&batch); part != "clove" || used.Compare(units.Percent(100)) <= 0 {
		t.Errorf("%s uses %s %% of its limit", part, used.PercentText(1))
	}
	most, err := Clove()
	if err != nil {
		t.Fatal(err)
	}
	dose := batch.Caps().Parts[1].Fragrances[0].OfDry
	if most.Sign() <= 0 || most.Compare(dose) >= 0 {
		t.Errorf("alone at most %s %%, and %s %% is too much", most.PercentText(2), dose.PercentText(2))
	}
}

// Between two whites that were read lies what is between their loads.
func TestAShadeLiesBetweenTheSwatchesBesideIt(t *testing.T) {
	read := func(name, picture, load string) tint.Swatch {
		c, err := tint.ParseSRGB(picture)
		if err != nil {
			t.Fatal(err)
		}
		swatch := tint.Swatch{Name: name, SRGB: &c}
		if load != "" {
			swatch.Loads = []tint.Load{{Colourant: "titanium-dioxide", OfBatter: units.MustRatio(load)}}
		}
		return swatch
	}
	shelf := tint.Swatches{Read: []tint.Swatch{read("plain", "#e8dcc0", ""), read("white 0.3", "#efe8d8", "0.3 %"),
		read("white 1", "#f4f0e8", "1 %")}}
	var lightness []float64
	for _, load := range []string{"0.3 %", "0.6 %", "1 %"} {
		shade, err := Shade(shelf, units.MustRatio(load))
		if err != nil {
			t.Fatal(err)
		}
		lightness = append(lightness, shade.L)
	}
	if !(lightness[0] < lightness[1] && lightness[1] < lightness[2]) {
		t.Errorf("L* %v", lightness)
	}
	if ok, err := MayBeSold("titanium-dioxide"); !ok || err != nil {
		t.Errorf("the white may be sold: %v, %v", ok, err)
	}
}

// By hand: π × 3 cm × 3 cm × 3.6 cm = 101.788 mL.
func TestACupHoldsWhatItsShapeDoes(t *testing.T) {
	cup, err := Cup()
	if err != nil || math.Abs(cup.Millilitres()-101.788) > 0.001 {
		t.Errorf("%v, %v", cup, err)
	}
}

// By hand: 36.60 mL × 39.997 g/mol/1500 mg = 97.59 %, less 0.7547 × 3 % = 95.33 %.
func TestABottleIsTitrated(t *testing.T) {
	total, err := units.ParseVolume("36.60 mL")
	if err != nil {
		t.Fatal(err)
	}
	purity, err := Bottle(units.Milligrams(1500), total)
	if err != nil || purity.High.PercentText(2) != "97.59" || purity.Low.PercentText(2) != "95.33" {
		t.Errorf("%s to %s %%, %v", purity.Low.PercentText(2), purity.High.PercentText(2), err)
	}
}
