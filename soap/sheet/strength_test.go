package sheet_test

import (
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/soap/sheet"
	"example.com/lyewright/units"
)

// A strength is a percentage wherever it is printed: a stock lye of 49 to 51 % is one of
// 50 %, and not of 0.5 % or 5000 %. By hand: 100 g of hydroxide in 300 g of lye are 33.33 %.
func TestAStrengthIsPrintedInPercent(t *testing.T) {
	formula, _, err := soap.ParseFormula([]byte(`{"formula": "Lantern stock", "oils": [{"oil": "olive", "share": "100 %"}],
		"alkali": [{"kind": "sodium-hydroxide", "stock": {"strength": {"low": "49 %", "high": "51 %"}}}], "superfat": "5 %", "water": {"per_alkali": "2"}, "size": {"oils": "500 g"}}`))
	if err != nil {
		t.Fatal(err)
	}
	batch := must(formula.Batch())
	var page, working strings.Builder
	if err := sheet.Write(&page, batch, units.Gram); err != nil {
		t.Fatal(err)
	}
	if err := sheet.WriteWorking(&working, batch); err != nil {
		t.Fatal(err)
	}
	var line string
	for l := range strings.Lines(page.String()) {
		if strings.Contains(l, "stock lye") && strings.HasPrefix(l, "[ ]") {
			line = l
		}
	}
	if fields := strings.Fields(line); len(fields) == 0 || fields[len(fields)-1] != "50" {
		t.Errorf("the line to weigh is %q, want 50 %% at its end", line)
	}
	if !strings.Contains(strings.Join(strings.Fields(working.String()), " "), "strength 49 to 51 %, as given") {
		t.Errorf("the working does not say 49 to 51 %%:\n%s", working.String())
	}
	object, err := batch.MarshalJSON()
	if err != nil || !strings.Contains(string(object), `"strength_pct":50,`) {
		t.Errorf("no strength of 50 in %.400s, %v", object, err)
	}

	m := lye.Mixing{
		Water: units.Grams(200), WaterAt: units.Celsius(20),
		Alkalis: []lye.Portion{{Alkali: soap.SodiumHydroxide, Mass: units.Grams(100), Hydroxide: units.Whole(1)}},
	}
	page.Reset()
	if err := sheet.WriteHeat(&page, m, must(m.Bound())); err != nil {
		t.Fatal(err)
	}
	if want := "33.33 % hydroxide"; !strings.Contains(page.String(), want) {
		t.Errorf("no %s:\n%s", want, page.String())
	}
	page.Reset()
	if err := sheet.WriteSolution(&page, lye.Solution{
		Alkali: soap.SodiumHydroxide, Strength: units.Percent(33),
		At: units.Celsius(20),
	}, units.Mass{}, false); err != nil {
		t.Fatal(err)
	}
	if want := "33 % hydroxide"; !strings.Contains(page.String(), want) {
		t.Errorf("no %s:\n%s", want, page.String())
	}
}
