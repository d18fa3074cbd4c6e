package sheet_test

import (
	"os"
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/soap/sheet"
	"example.com/lyewright/units"
)

// bar is a formula of two oils of one value, in pieces that a test replaces.
func bar(changes ...string) string {
	pieces := map[string]string{
		"oils": `[{"oil": "hall-oil", "name": "Hall oil", "share": "50 %", "saponification": {"low": "199", "typical": "200", "high": "201"}},
			{"oil": "yard-oil", "name": "Yard oil", "share": "50 %", "saponification": {"low": "199", "typical": "200", "high": "201"}}]`,
		"alkali":   `[{"kind": "sodium-hydroxide", "purity": {"low": "97.5 %", "typical": "98 %", "high": "98.5 %"}}]`,
		"superfat": `"8 %"`, "water": `{"per_alkali": "2"}`, "size": `{"oils": "1000 g"}`, "scale": `"0.1 g"`,
	}
	for i := 0; i < len(changes); i += 2 {
		pieces[changes[i]] = changes[i+1]
	}
	text := `{"formula": "Lantern bar"`
	for key, value := range pieces {
		text += `, "` + key + `": ` + value
	}
	return text + "}"
}

// lineWith gives the line of a page that begins with a text.
func lineWith(page, begins string) string {
	for line := range strings.Lines(page) {
		if strings.HasPrefix(line, begins) {
			return strings.Join(strings.Fields(line), " ")
		}
	}
	return ""
}

// A printer has 66 lines to a page. A bar without colour and scent is one page, the shipped
// cup two.
func TestASimpleBarFitsOnePageAndTheShippedCupTwo(t *testing.T) {
	for name, most := range map[string]int{"single-bar": 66, "lantern-cups": 2 * 66} {
		b := shipped(t, name, func(text string) string { return text })
		for _, unit := range []units.Unit{units.Gram, units.Ounce} {
			if n := strings.Count(write(t, b, unit), "\n"); n > most {
				t.Errorf("%s in %s has %d lines, more than %d", name, unit, n, most)
			}
		}
	}
}

// By hand: 1000 g × 0.2 g KOH/g × (1 − 0.08) × 39.997/56.105 / 0.98 = 133.8502 g of alkali,
// 133.8 g on the scale, twice as much water, 267.7 g. Alkali is a third of the lye.
// 184 × 0.7128955 = 131.1728 g of hydroxide in 401.5506 g of lye are 32.67 % for the heat.
func TestFiguresOfTheSheetAreThoseWorkedOutByHand(t *testing.T) {
	page := write(t, batchOf(t, bar("parts", `[{"part": "base", "share": "66.6667 %"}, {"part": "cloud", "share": "rest"}]`)), units.Gram)
	for begins, want := range map[string]string{
		"[ ] Hall oil":                "[ ] Hall oil 500.0 50.0",
		"    Oils into the pot":       "Oils into the pot 1000.0",
		"[ ] Water":                   "[ ] Water 267.7",
		"[ ] Sodium hydroxide (NaOH)": "[ ] Sodium hydroxide (NaOH) 133.8 98",
		"[ ] Batter, 66.7 %":          "[ ] Batter, 66.7 % of the pot 934.4", // 2/3 of 1401.5506 g
		"[ ] Batter, 33.3 %":          "[ ] Batter, 33.3 % of the pot 467.2",
	} {
		if got := lineWith(page, begins); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if line := lineWith(page, "Lye as mixed"); !strings.Contains(line, " 33.33 %") {
		t.Errorf("%q is not a third", line)
	}
	if line := lineWith(page, "batch  "); !strings.HasPrefix(line, "batch 8.00 ") {
		t.Errorf("%q is not 8 %%", line)
	}
	stock := write(t, batchOf(t, bar("alkali", `[{"kind": "sodium-hydroxide", "stock": {"strength": {"low": "48 %", "typical": "49 %", "high": "50 %"}}}]`)), units.Gram)
	// 131.1728 g of hydroxide in a stock of 49 %: 267.6996 g
	if got, want := lineWith(stock, "[ ] Sodium hydroxide (NaOH), stock lye"),
		"[ ] Sodium hydroxide (NaOH), stock lye 267.6 49"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// The pages on lye print percent as percent: a lye of a quarter, and 30 g of pure hydroxide
// in 100 g.
func TestThePagesOnLyePrintStrengthsInPercent(t *testing.T) {
	var solution, heat strings.Builder
	if err := sheet.WriteSolution(&solution, lye.Solution{
		Alkali: soap.SodiumHydroxide, Strength: units.Percent(25),
		At: units.Celsius(20),
	}, units.Grams(100), false); err != nil {
		t.Fatal(err)
	}
	m := lye.Mixing{
		Water: units.Grams(70), WaterAt: units.Celsius(5),
		Alkalis: []lye.Portion{{Alkali: soap.SodiumHydroxide, Mass: units.Grams(30), Hydroxide: units.Whole(1)}},
	}
	bound, err := m.Bound()
	if err != nil {
		t.Fatal(err)
	}
	if err := sheet.WriteHeat(&heat, m, bound); err != nil {
		t.Fatal(err)
	}
	if got := lineWith(solution.String(), "Strength"); got != "Strength 25 % hydroxide" {
		t.Error(got)
	}
	if got := lineWith(heat.String(), "Strength"); got != "Strength of the lye 30 % hydroxide" {
		t.Error(got)
	}
}

// What is so of several parts or materials is one line that names them all; the metal that
// stands among them is not lost between.
func TestWhatRepeatsIsOneLineThatNamesAll(t *testing.T) {
	fragrance := func(name string) string {
		return `{"fragrance": "` + name + `", "certificates": [{"category": "9", "limit": "3 %", "amendment": "49"}]}`
	}
	text := func(markets string) string {
		return bar("markets", markets, "materials", "["+fragrance("lantern-pear")+","+fragrance("hall-fig")+","+
			fragrance("yard-moss")+"]",
			"parts", `[{"part": "base", "share": "100 %", "colourants": [{"colourant": "aluminium-powder", "load": "1 g"}], "fragrances": [
				{"fragrance": "lantern-pear", "load": "1 g"}, {"fragrance": "hall-fig", "load": "1 g"}, {"fragrance": "yard-moss", "load": "1 g"}]}]`)
	}
	grave := func(b soap.Batch) string {
		_, after, _ := strings.Cut(write(t, b, units.Gram), "BEFORE YOU WEIGH\n")
		before, _, _ := strings.Cut(after, "\nOILS\n")
		return before
	}
	europe := grave(batchOf(t, text(`["eu"]`)))
	if n := strings.Count(flat(europe), "certified to amendment 49"); n != 1 {
		t.Errorf("the old certificates stand %d times:\n%s", n, europe)
	}
	if !strings.Contains(flat(europe), "The same holds for: hall-fig (49); yard-moss (49).") {
		t.Errorf("not all are named:\n%s", europe)
	}
	if n := strings.Count(flat(europe), "allergens are not all listed"); n != 1 {
		t.Errorf("the allergens stand %d times:\n%s", n, europe)
	}
	metal, allergens := strings.Index(europe, "hydrogen"), strings.Index(europe, "allergens")
	if metal < 0 || metal > allergens {
		t.Errorf("the metal stands at %d, the allergens at %d", metal, allergens)
	}
	if elsewhere := grave(batchOf(t, text(`["us"]`))); strings.Contains(elsewhere, "allergens") ||
		!strings.Contains(elsewhere, "hydrogen") {
		t.Errorf("where no label asks:\n%s", elsewhere)
	}
}

// Figures of what repeats are not lost: each part below zero has its own.
func TestADangerOfSeveralPartsKeepsTheFigureOfEach(t *testing.T) {
	b := batchOf(t, bar("superfat", `"0 %"`, "parts",
		`[{"part": "base", "share": "50 %"}, {"part": "cloud", "share": "rest"}]`))
	page := flat(write(t, b, units.Gram))
	for _, f := range b.Findings {
		if f.Severity == soap.Danger && strings.Count(page, f.Names[0]+" ("+f.Figure()+")")+
			strings.Count(page, f.Message()) < 2 {
			t.Errorf("%s, %s does not stand first and last", f.Names[0], f.Figure())
		}
	}
	if strings.Count(page, "DANGER ") != 2 {
		t.Errorf("not one line first and one last: %s", page)
	}
}

// Who has only milk is not sent for water; who has a stock lye is not told to dissolve alkali.
func TestTheMixingIsThatOfWhatThereIs(t *testing.T) {
	milk := func(share string) string {
		return `{"per_alkali": "2", "liquids": [{"liquid": "oat milk", "share": "` + share + `", "water": "100 %"}]}`
	}
	stock := `[{"kind": "sodium-hydroxide", "stock": {"strength": {"low": "30 %", "high": "31 %"}}}]`
	for _, c := range []struct {
		water, alkali, says string
	}{
		{`{"per_alkali": "2"}`, "", "Add the alkali to cold water a little at a time, never the water to the alkali: it " +
			"gets very hot and may boil."},
		{milk("50 %"), "", "Add the alkali to cold water a little at a time, never the water to the alkali: it gets very " +
			"hot and may boil."},
		{milk("100 %"), "", "Add the alkali to the liquid, well chilled or frozen (oat milk), a little at a time, never " +
			"the liquid to the alkali: it gets very hot, and may boil and foam over."},
		{`{"per_alkali": "3"}`, stock, "Pour the stock lye into the cold water a little at a time, never the water into " +
			"the stock lye: it gets hot and may spit."},
	} {
		changes := []string{"water", c.water}
		if c.alkali != "" {
			changes = append(changes, "alkali", c.alkali)
		}
		page := flat(write(t, batchOf(t, bar(changes...)), units.Gram))
		if !strings.Contains(page, c.says) {
			t.Errorf("%s: the sheet does not say %q", c.water, c.says)
		}
		if strings.Contains(page, "cold water") != strings.Contains(c.says, "cold water") {
			t.Errorf("%s: cold water where there is none, or none where there is", c.water)
		}
	}
}

// "Before you weigh" is no word for a batch that is under way.
func TestTheGraveStandUnderAHeadingOfTheirStage(t *testing.T) {
	for stage, want := range map[string]string{
		"": "BEFORE YOU WEIGH", "lye": "BEFORE YOU GO ON", "pot": "BEFORE YOU GO ON", "parts": "BEFORE YOU GO ON",
		"moulds": "OF THIS BATCH, WHICH IS POURED",
	} {
		changes := []string{"superfat", `"0 %"`}
		if stage != "" {
			changes = append(changes, "weighed", `{"stage": "`+stage+`", "water": "280 g"}`)
		}
		page := write(t, batchOf(t, bar(changes...)), units.Gram)
		for _, heading := range []string{"BEFORE YOU WEIGH", "BEFORE YOU GO ON", "OF THIS BATCH, WHICH IS POURED"} {
			if there := strings.Contains(page, "\n"+heading+"\n"); there != (heading == want) {
				t.Errorf("stage %q: %s: %v", stage, heading, there)
			}
		}
	}
}

// The temperatures of the formula stand where the thermometer is read, and none is made up.
func TestTheTemperaturesGivenAreTargets(t *testing.T) {
	given := write(t, batchOf(t, bar("temperature", `{"oils": "41 °C", "lye": "37.5 °C"}`)), units.Gram)
	oils, lyeAt := strings.Index(given, "Target: oils at 41 °C. Measured: ____"),
		strings.Index(given, "Target: lye at 37.5 °C. Measured: ____")
	if oils < strings.Index(given, "\nOILS\n") || oils > strings.Index(given, "\nLYE\n") || lyeAt < strings.Index(given,
		"\nLYE\n") || lyeAt > strings.Index(given, "\nFIRST AID\n") {
		t.Errorf("the oils' target stands at %d, the lye's at %d:\n%s", oils, lyeAt, given)
	}
	if page := write(t, batchOf(t, bar()), units.Gram); strings.Contains(page, "Target") {
		t.Error("a target that nobody gave")
	}
}

func TestThereIsRoomToWriteDateLotAndTimes(t *testing.T) {
	page := write(t, batchOf(t, bar()), units.Gram)
	before, _, _ := strings.Cut(page, "[ ]")
	for _, blank := range []string{"Date ____", "Lot ____", "Lye mixed at ____", "Joined at ____", "Poured at ____"} {
		if !strings.Contains(before, blank) {
			t.Errorf("no room for %q", blank)
		}
	}
}

// What has no range is named: an oil, the fat of a liquid, the oil of a jug.
func TestWhatHasNoRangeIsNamed(t *testing.T) {
	b := batchOf(t, bar(
		"oils", `[{"oil": "hall-oil", "name": "Hall oil", "share": "50 %", "saponification": "200"}, {"oil": "olive", "share": "rest"}]`,
		"water", `{"per_alkali": "2", "liquids": [{"liquid": "oat milk", "share": "30 %", "water": "88 %", "fat": "3.5 %", "saponification": "190"}]}`,
		"parts", `[{"part": "base", "share": "100 %", "colourants": [{"colourant": "kaolin", "load": "1 % of oils", "carrier": {"liquid": "goose-fat", "ratio": "2"}}]}]`,
	))
	want := "Not complete: no range of saponification values is known of Hall oil; oat milk; Goose fat. The one figure " +
		"was taken as exact."
	if page := flat(write(t, b, units.Gram)); !strings.Contains(page, want) {
		t.Errorf("the sheet does not say %q", want)
	}
}

// What cannot be mended is not left open. Twice the alkali wants about as much oil again,
// four times what is offered.
func TestWhatNothingMendsIsNotForSkin(t *testing.T) {
	parts := `[{"part": "base", "share": "50 %"}, {"part": "cloud", "share": "rest"}]`
	for stage, want := range map[string]string{
		"pot":   "No addition of up to a quarter of the oils brings it back to the plan: do not use it on skin.",
		"parts": "No addition of up to a quarter of the oils brings it back to the plan: do not use it on skin.",
	} {
		b := batchOf(t, bar("parts", parts, "weighed", `{"stage": "`+stage+
			`", "alkali": {"sodium-hydroxide": "267.7 g"}, "water": "400 g"}`))
		page := flat(write(t, b, units.Gram))
		if len(b.Weighed.Remedies) > 0 || !strings.Contains(page, want) || strings.Contains(page, "nothing to mend") {
			t.Errorf("%s: %d remedies, the sheet does not say %q", stage, len(b.Weighed.Remedies), want)
		}
	}
	// One part past mending beside one that is not. 166.9 g are 24.7 % too much: of oil at 200
	// cloud wants 24.7 % of its 500 g, which is offered. base has 58 g of coconut too, at 255:
	// its 558 g demand as much as 574 g at 200, of which 24.7 % are 142 g, over a quarter of 558.
	b := batchOf(t, bar("parts", `[{"part": "base", "share": "50 %", "colourants": [{"colourant": "kaolin", "load": "4 % of oils", "carrier": {"liquid": "coconut", "ratio": "2.9", "from": "extra"}}]}, {"part": "cloud", "share": "rest"}]`,
		"weighed", `{"stage": "parts", "alkali": {"sodium-hydroxide": "166.9 g"}, "water": "267 g"}`))
	page := flat(write(t, b, units.Gram))
	offered := map[string]bool{}
	for _, r := range b.Weighed.Remedies {
		offered[r.Part] = true
	}
	for _, p := range b.Weighed.Parts {
		said := strings.Contains(page, p.Name+": no addition of up to a quarter of its oils brings it back to its plan. Do "+
			"not use it on skin.")
		if said == offered[p.Name] {
			t.Errorf("%s: offered %v, said that nothing is: %v", p.Name, offered[p.Name], said)
		}
	}
	if len(offered) != 1 {
		t.Fatalf("%d of two parts can be mended: %v", len(offered), b.Weighed.Remedies)
	}
}

// What the bound on the heat does not know is said beside it.
func TestTheCaveatsOfTheHeatStandBesideIt(t *testing.T) {
	const cold = `{"water": "20 °C"}`
	for _, c := range []struct{ alkali, water, says string }{
		{
			`[{"kind": "potassium-hydroxide", "purity": {"low": "89 %", "typical": "90 %", "high": "91 %"}}]`,
			`{"per_alkali": "2"}`, "of KOH only the largest heat is published, so it is likely less",
		},
		{
			`[{"kind": "sodium-hydroxide", "purity": {"low": "97 %", "high": "99 %"}}]`, `{"lye_concentration": "45 %"}`,
			"above 42.5 % that is extrapolated",
		},
		{
			`[{"kind": "potassium-hydroxide", "stock": {"strength": {"low": "45 %", "high": "46 %"}}}]`, `{"per_alkali": "3"}`,
			"How hot it gets is not known: nothing is published on thinning such a stock lye.",
		},
		{`[{"kind": "sodium-hydroxide", "purity": {"low": "97 %", "high": "99 %"}}]`, `{"lye_concentration": "42 %"}`, ""},
	} {
		page := flat(write(t, batchOf(t, bar("alkali", c.alkali, "water", c.water, "temperature", cold)), units.Gram))
		for _, caveat := range []string{
			"of KOH only the largest heat", "that is extrapolated",
			"How hot it gets is not known",
		} {
			if said := strings.Contains(page, caveat); said != strings.Contains(c.says, caveat) {
				t.Errorf("%s, %s: %q said: %v", c.alkali, c.water, caveat, said)
			}
		}
		if !strings.Contains(page, c.says) {
			t.Errorf("%s, %s: the sheet does not say %q", c.alkali, c.water, c.says)
		}
	}
}

// Fatty acids and sources stand in the working, and no longer on the sheet.
func TestTheWorkingHasTheFattyAcidsAndWhatFindingsRestOn(t *testing.T) {
	text, err := os.ReadFile("../../testdata/formulas/lantern-cups.json")
	if err != nil {
		t.Fatal(err)
	}
	b := batchOf(t, string(text))
	var working strings.Builder
	if err := sheet.WriteWorking(&working, b); err != nil {
		t.Fatal(err)
	}
	page := write(t, b, units.Gram)
	for _, said := range []string{
		"C18:1", "WHAT THE FINDINGS REST ON", "typical-disputed; Shea butter, unrefined [W",
		"Codex Alimentarius, CXS 325R-2017",
	} {
		if !strings.Contains(working.String(), said) || strings.Contains(page, said) {
			t.Errorf("%q: in the working %v, on the sheet %v", said, strings.Contains(working.String(), said),
				strings.Contains(page, said))
		}
	}
}
