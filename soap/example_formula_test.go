package soap_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"strings"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// A formula in code becomes a batch. By hand: 1000 g × 190 mg/g = 190 g of KOH;
// × 0.95 × 39.997/(56.105 × 0.98) = 131.3037 g of sodium hydroxide, twice as
// much water.
func ExampleFormula_Batch() {
	batch, err := lanternBars().Batch()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, a := range batch.Alkalis {
		w, _ := a.ToWeigh()
		fmt.Println(a.Alkali, w.Mass.Text(units.Gram, 4), "g, weigh", w.Weigh)
	}
	fmt.Println("water", batch.Water.Mass.Text(units.Gram, 4), "g, weigh", batch.Water.Weigh)
	// Output:
	// sodium-hydroxide 131.3037 g, weigh 131.3 g
	// water 262.6074 g, weigh 262.6 g
}

// Faults of a formula built in code have paths as in a file, and no place.
func ExampleFormula_Check() {
	formula := lanternBars()
	formula.Superfat = soap.Superfat{}
	formula.Size.Batter = units.Grams(500)
	var faults soap.Faults
	if errors.As(formula.Check(), &faults) {
		for _, f := range faults {
			fmt.Println(f.Path, f.Reason, errors.Is(f, soap.ErrMissing))
		}
	}
	// Output:
	// superfat is missing true
	// size is given in more than one way false
}

// A formula file, read from anything that gives its bytes.
func ExampleReadFormula() {
	file := strings.NewReader(`{
	  "formula": "Lantern walk bars",
	  "oils": [{"oil": "olive", "share": "60 %"}, {"oil": "coconut", "share": "rest"}],
	  "alkali": [{"kind": "sodium-hydroxide", "purity": {"low": "97 %", "high": "99 %"}}],
	  "superfat": "6 %",
	  "water": {"lye_concentration": "32 %"},
	  "size": {"oils": "800 g"}
	}`)
	formula, err := soap.ReadFormula(file)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(formula.Name, "of", len(formula.Oils), "oils,", formula.Size.Oils)
	// Output: Lantern walk bars of 2 oils, 800 g
}

// Lines and columns stay known for what the batch finds later.
func ExampleParseFormula() {
	text := []byte(`{"formula": "Bars", "oils": [{"oil": "olive", "share": "100 %"}],
"alkali": [{"kind": "sodium-hydroxide"}],
"superfat": "6 %", "water": {"per_oils": "30 %"}, "size": {"oils": "800 g"}}`)
	formula, places, err := soap.ParseFormula(text)
	if err != nil {
		fmt.Println(err)
		return
	}
	batch, err := formula.Batch()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range batch.Findings {
		line, _ := places.Find(f.Subject)
		fmt.Println("line", line, f.Severity, f.Code)
	}
	// Output: line 2 warning purity-assumed
}

// The same file, held to the IFRA Standards alone: a shop that sells where European law
// does not count.
func ExampleBeside() {
	text := must(os.ReadFile("../testdata/formulas/scented-cups.json"))
	for _, law := range []soap.Law{soap.ByMarkets, soap.IFRAAlone} {
		formula, _, err := soap.ParseFormulaBeside(soap.Beside{Law: law}, text)
		if err != nil {
			fmt.Println(err)
			return
		}
		batch := must(formula.Batch())
		fmt.Println("limits of", batch.Caps().Law)
	}
	// Output:
	// limits of ifra+eu
	// limits of ifra
}

// Swatches from a file of their own are checked with the formula: here one of the two that
// a matched blue needs is missing.
func ExampleParseFormulaBeside() {
	swatches, _, err := soap.ParseSwatches([]byte(`{"read": [
		{"swatch": "plain", "srgb": "#e8dcc0"},
		{"swatch": "blue 1", "loads": {"ultramarine-blue": "1 % of batter"}, "srgb": "#7f93c6"}
	]}`))
	if err != nil {
		fmt.Println(err)
		return
	}
	_, _, err = soap.ParseFormulaBeside(soap.Beside{Swatches: swatches}, []byte(`{"formula": "Dusk",
"oils": [{"oil": "olive", "share": "100 %"}], "alkali": [{"kind": "sodium-hydroxide"}], "superfat": "6 %",
"water": {"per_oils": "30 %"}, "size": {"oils": "800 g"},
"parts": [{"part": "dusk", "share": "100 %", "target": {"srgb": "#8fa0cc"},
           "match": [{"colourant": "ultramarine-blue", "most": "1 % of oils"}]}]}`))
	var faults soap.Faults
	if errors.As(err, &faults) {
		fmt.Println(faults[0].Path, faults[0].Sentence())
	}
	// Output: swatches.read[1].loads.ultramarine-blue stands in this swatch alone, with 1 %; cast and read one with another load of it, such as 2 % of batter
}

// What the batch finds later gets the line that the file has it on.
func ExamplePlaces() {
	formula, places, err := soap.ParseFormula([]byte(`{"formula": "Bars", "oils": [{"oil": "olive", "share": "100 %"}],
"alkali": [{"kind": "sodium-hydroxide", "purity": "98 %"}],
"superfat": "6 %", "size": {"oils": "800 g"},
"water": {"lye_concentration": "60 %"}}`))
	if err != nil {
		fmt.Println(err)
		return
	}
	_, err = formula.Batch()
	var faults soap.Faults
	if errors.As(err, &faults) {
		for _, f := range places.Place(faults) {
			fmt.Println("line", f.Line, f.Path, f.Text, errors.Is(f, soap.ErrImpossible))
		}
	}
	fmt.Println(places.Find("alkali[0].purity"))
	// Output:
	// line 4 water 60 % true
	// 2 51
}

// The scale rounds: an oil to the nearest gram, alkali always down. By hand: 655.4 g of oil
// demand 655.4 × 0.19 × 0.95 × 39.997/(56.105 × 0.98) = 86.0564 g of sodium hydroxide.
func ExampleWeighing() {
	formula := lanternBars()
	formula.Size.Oils, formula.Scale = must(units.ParseMass("655.4 g")), units.Grams(1)
	batch := must(formula.Batch())
	alkali, _ := batch.Alkalis[0].ToWeigh()
	for _, w := range []soap.Weighing{batch.Oils[0].Weighing, alkali} {
		fmt.Println(w.Mass.Text(units.Gram, 4), "g, weigh", w.Weigh)
	}
	// Output:
	// 655.4 g, weigh 655 g
	// 86.0564 g, weigh 86 g
}

// The file of a maker with a lot of lard. By hand: 1000 g at 196 mg/g are 196 g of
// KOH, 95 % of it 186.2 g; × 39.997/56.105 = 132.741135... g of sodium hydroxide,
// rounded down to the division of 0.1 g; twice as much water, 265.482270... g, to
// the nearest. Together with the oil 1398.223406... g.
func ExampleBatch_MarshalJSON() {
	formula, err := soap.ReadFormula(strings.NewReader(`{
	  "formula": "Lantern walk lard",
	  "oils": [{"oil": "lard-lot-12", "share": "100 %", "saponification": {"low": "192", "typical": "196", "high": "203"}}],
	  "alkali": [{"kind": "sodium-hydroxide", "purity": "100 %"}],
	  "superfat": "5 %",
	  "water": {"per_alkali": "2"},
	  "size": {"oils": "1000 g"}
	}`))
	if err != nil {
		fmt.Println(err)
		return
	}
	batch, err := formula.Batch()
	if err != nil {
		fmt.Println(err)
		return
	}
	text, err := batch.MarshalJSON()
	if err != nil {
		fmt.Println(err)
		return
	}
	var read struct {
		Schema string
		Alkali []struct {
			Kind  string
			Mass  json.Number `json:"mass_g"`
			Weigh json.Number `json:"weigh_g"`
		}
		Water struct {
			Weigh json.Number `json:"weigh_g"`
		}
		Batter json.Number `json:"batter_g"`
	}
	if err := json.Unmarshal(text, &read); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(read.Schema)
	for _, a := range read.Alkali {
		fmt.Println(a.Kind, a.Mass, "weigh", a.Weigh)
	}
	fmt.Println("water, weigh", read.Water.Weigh)
	fmt.Println("batter", read.Batter)
	// Output:
	// batch/1
	// sodium-hydroxide 132.741135 weigh 132.7
	// water, weigh 265.5
	// batter 1398.223406
}
