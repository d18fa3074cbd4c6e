package soap_test

import (
	"encoding/json"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/colour"
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// Two oils, 600 g and 400 g, with every figure a range. Of the acids: C16:0 is 0.6 × 20 to
// 30 %, C18:1 0.6 × 70 to 80 and 0.4 × 30 to 40, C18:2 0.4 × 60 to 70. The iodine value is
// 0.6 × 80 + 0.4 × 130.
func TestACompositionIsTheMeanByMass(t *testing.T) {
	share := func(acid string, low, high int) soap.AcidShare {
		return soap.AcidShare{Acid: acid, Low: units.Percent(low), High: units.Percent(high)}
	}
	hall, err := soap.OwnOil{ID: "hall", Iodine: units.Percent(80), Profile: []soap.AcidShare{share("C16:0", 20, 30), share("C18:1", 70, 80)}}.Oil()
	if err != nil {
		t.Fatal(err)
	}
	yard, err := soap.OwnOil{ID: "yard", Iodine: units.Percent(130), Profile: []soap.AcidShare{share("C18:1", 30, 40), share("C18:2", 60, 70)}}.Oil()
	if err != nil {
		t.Fatal(err)
	}
	f := lanternBars()
	f.Size = soap.Size{}
	f.Oils = []soap.OilLine{{Oil: hall, Mass: units.Grams(600)}, {Oil: yard, Mass: units.Grams(400)}}
	b, err := f.Batch()
	if err != nil {
		t.Fatal(err)
	}
	c := b.Composition()
	var got []string
	for _, a := range c.Acids {
		got = append(got, a.Acid+" "+a.Low.PercentText(9)+" "+a.High.PercentText(9))
	}
	if want := []string{"C16:0 12 18", "C18:1 54 64", "C18:2 24 28"}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	if !c.Named.Equal(units.Whole(1)) || len(c.Missing) > 0 || c.Iodine.Low.PercentText(9) != "100" || c.Iodine.High.PercentText(9) != "100" {
		t.Errorf("%v named, iodine %v to %v", c.Named, c.Iodine.Low, c.Iodine.High)
	}
}

// Temperatures are estimates: two decimals are all that is printed of them, whatever the
// platform makes of the next.
func TestTemperaturesOfALyeHaveTwoDecimals(t *testing.T) {
	text, err := plainFormula().with("temperature", `{"water": "20 °C", "room": "21 °C"}`).batch(t).MarshalJSON()
	if err != nil {
		t.Fatal(err)
	}
	for _, key := range []string{"crystallises_c", "final_c", "rise_k", "boiling_c"} {
		if figure := regexp.MustCompile(`"` + key + `":(-?[0-9]+(\.[0-9]+)?)`).FindSubmatch(text); figure == nil || len(figure[2]) > 3 {
			t.Errorf("%s: %s", key, figure)
		}
	}
}

// What is left open of a fragrance stands in the JSON as the library has it: why, and of
// which rules.
func TestTheJSONOfCapsSaysWhatIsLeftOpenAndWhy(t *testing.T) {
	b := plainFormula().with(
		"materials", `{"fragrance": "lantern-pear"}`,
		"parts", `{"part": "lantern", "share": "100 %", "fragrances": [{"fragrance": "lantern-pear", "load": "1 % of oils"}, {"fragrance": "clove-bud", "load": "0.1 % of oils"}]}`).batch(t)
	caps := b.Caps()
	text, err := json.Marshal(caps)
	if err != nil {
		t.Fatal(err)
	}
	var view struct {
		Parts []struct {
			Fragrances []struct {
				Unjudged []struct {
					Why string
					Of  []string
				}
			}
		}
	}
	if err := json.Unmarshal(text, &view); err != nil {
		t.Fatal(err)
	}
	compared := 0
	for i, f := range caps.Parts[0].Fragrances {
		want, got := f.Material.Unjudged(caps.Law), view.Parts[0].Fragrances[i].Unjudged
		if len(got) != len(want) {
			t.Fatalf("%s: %v, want %v", f.Material.ID(), got, want)
		}
		for j, u := range want {
			compared++
			if got[j].Why != u.Why.String() || !slices.Equal(got[j].Of, append([]string{}, u.Names()...)) {
				t.Errorf("%s: %v, want %v of %v", f.Material.ID(), got[j], u.Why, u.Names())
			}
		}
	}
	if compared == 0 {
		t.Error("nothing is left open")
	}
}

// The names of own pigments are held to what any name is, in a program too.
func TestTheNamesOfPigmentsAreChecked(t *testing.T) {
	for path, pigment := range map[string]colour.Supplied{
		"pigments[0].colourant": {ID: "dusk\amica"},
		"pigments[0].name":      {ID: "dusk-mica", Name: "Dusk\u202emica"},
	} {
		f := lanternBars()
		f.Pigments = []colour.Supplied{pigment}
		if faults := faultsOf(t, f.Check()); len(faults) != 1 || faults[0].Path != path {
			t.Errorf("%s: %v", path, faults)
		}
	}
}

// Vessels that cannot be filled are the fault of a promised superfat, too: nothing is said of
// superfat there.
func TestVesselsThatCannotBeFilledAreSaidOfWhateverIsAsked(t *testing.T) {
	for _, superfat := range []string{`"5 %"`, `{"at_least": "2 %"}`} {
		faults := made(t, plainFormula().with("superfat", superfat,
			"size", `{"vessels": [{"vessel": "cup", "part": "lantern", "count": 4, "volume": "50 mL"}]}`,
			"parts", `{"part": "lantern", "additives": [{"additive": "fine salt", "load": "900 g"}]}`).text())
		if len(faults) != 1 || !strings.HasPrefix(faults[0].Path, "parts[0]") && !strings.HasPrefix(faults[0].Path, "size.vessels") {
			t.Errorf("%s: %v", superfat, faults)
		}
	}
}

// Where a shape is no object, that is all there is to say of it.
func TestAShapeThatIsNoObjectIsOneFault(t *testing.T) {
	for _, shape := range []string{"box", "cylinder", "cone", "slab", "half_sphere"} {
		_, faults := read(t, plainFormula().with("size", `{"vessels": [{"vessel": "cup", "part": "lantern", "count": 4, "`+shape+`": "50 mm"}]}`, "parts", `{"part": "lantern"}`).text())
		if len(faults) != 1 || faults[0].Path != "size.vessels[0]."+shape {
			t.Errorf("%s: %v", shape, faults)
		}
	}
}

// An oil of which all goes into a jug is not weighed into the pot, so no scale errs there.
// Of the part without the jug, with 900 g of oil and a division of 10 g: 1 − hydroxide at its
// least over (900 + 10) g × 191 mg/g.
func TestAnOilThatIsAllInAJugIsNotWeighedIntoThePot(t *testing.T) {
	b := plainFormula().with(
		"oils", `{"oil": "hall-blend", "mass": "900 g", "saponification": {"low": "189", "high": "191"}},
		         {"oil": "yard-blend", "mass": "100 g", "saponification": {"low": "189", "high": "191"}}`,
		"size", "", "scale", `{"oils": "10 g", "small": "1 mg"}`,
		"parts", `{"part": "base", "share": "50 %", "colourants": [{"colourant": "dusk blue", "unlisted": true,
			"load": "10 g", "carrier": {"liquid": "yard-blend", "ratio": "10", "from": "formula"}}]},
		          {"part": "cloud", "share": "50 %"}`).batch(t)
	if b.Oils[1].Mass.Sign() != 0 || b.Oils[1].Withheld != units.Grams(100) {
		t.Fatalf("%+v", b.Oils[1])
	}
	least := (b.Alkalis[0].Dry.Mass.Grams() - 0.001) * 0.999 * 56.105 / 39.997
	want := 1 - least/(910*0.191)
	if got := b.Parts[1].Superfat.High.Float(); math.Abs(got-want) > 1e-9 {
		t.Errorf("at most %.9f, want %.9f", got, want)
	}
}

// Thirteen cups in twelve moulds leave one for the last batch: 60 g of salt, which is the same
// in every batch, is more than it holds.
func TestALastBatchThatIsAllAdditionsIsRefused(t *testing.T) {
	faults := made(t, plainFormula().with(
		"size", `{"vessels": [{"vessel": "cup", "part": "lantern", "count": 13, "moulds": 12, "volume": "45 mL"}]}`,
		"parts", `{"part": "lantern", "additives": [{"additive": "fine salt", "load": "60 g"}]}`).text())
	if len(faults) != 1 || faults[0].Path != "size.vessels" || !strings.Contains(faults[0].Reason, "a last batch that cannot be made") {
		t.Errorf("%v", faults)
	}
}

// The strength that no density is known of is said: 51 % of an alkali of 99.95 %.
func TestALyeTooStrongForItsDensitySaysHowStrongItIs(t *testing.T) {
	for _, size := range []string{`"oils": "1000 g", `, ``} {
		faults := made(t, plainFormula().with("water", `{"lye_concentration": "51 %"}`,
			"size", `{`+size+`"vessels": [{"vessel": "cup", "part": "lantern", "count": 12, "volume": "45 mL"}]}`,
			"parts", `{"part": "lantern"`+map[bool]string{true: `, "share": "100 %"`}[size != ""]+`}`).text())
		if len(faults) != 1 || faults[0].Text != "50.97 %" {
			t.Errorf("%q: %v", size, faults)
		}
	}
}

// A mass is born once, at the nearest nanogram: 0.66666666666 % of 1000 g are 6.6666666666 g,
// and 1 g takes 0.66666666666 g of a carrier.
func TestLoadsAndCarriersAreBornAtTheNearestNanogram(t *testing.T) {
	b := plainFormula().with("parts", `{"part": "lantern", "share": "100 %", "colourants": [
		{"colourant": "dusk blue", "unlisted": true, "load": "0.66666666666 % of oils"},
		{"colourant": "dusk grey", "unlisted": true, "load": "1 g", "carrier": {"liquid": "glycerin",
			"ratio": "0.66666666666"}}]}`).batch(t)
	blue, grey := b.Parts[0].Additions[0], b.Parts[0].Additions[1]
	if blue.Mass.String() != "6.666666667 g" || grey.Carrier.Mass.String() != "0.666666667 g" {
		t.Errorf("%v, and %v of glycerin", blue.Mass, grey.Carrier.Mass)
	}
}
