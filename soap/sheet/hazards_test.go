package sheet_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/soap/sheet"
	"example.com/lyewright/units"
)

// barsWith is a formula of bars with lines of its own in place of the usual ones.
func barsWith(alkali, water, more string) string {
	return `{"formula": "Lantern walk bars", "oils": [{"oil": "olive", "share": "70 %"}, {"oil": "coconut", "share": "rest"}],
		"alkali": [` + alkali + `], "superfat": "5 %", "water": ` + water + `, "size": {"oils": "1000 g"}` + more + `}`
}

const pureSoda = `{"kind": "sodium-hydroxide", "purity": {"low": "98 %", "high": "99 %"}}`

// The cloud's jug of 150 g of oil was forgotten: it would take 150 g, and a quarter of its
// 500 g of oils is 125 g. The base got a tenth too much alkali, which some oil mends.
func TestAPartThatNothingMendsIsKeptOffSkin(t *testing.T) {
	parts := func(jug string) string {
		return `, "parts": [{"part": "base", "share": "50 %"}, {"part": "cloud", "share": "rest",
			"colourants": [{"colourant": "titanium-dioxide", "load": "50 g", "carrier": {"liquid": "sunflower", "ratio": "3"}}]}],
			"weighed": {"stage": "parts", "alkali": {"sodium-hydroxide": "152 g"}, "parts": {"cloud": {"carriers": {"sunflower": "` + jug + `"}}}}`
	}
	const says = "cloud: no addition of up to a quarter of its oils brings it back to its plan. Do not use it on skin."
	b := batchOf(t, barsWith(pureSoda, `{"lye_concentration": "33 %"}`, parts("0 g")))
	page := flat(write(t, b, units.Gram))
	if !strings.Contains(page, says) || !strings.Contains(page, "For base:") || strings.Contains(page, "For cloud:") ||
		strings.Contains(page, "base: no addition") {
		t.Errorf("%s", page)
	}
	mended := flat(write(t, batchOf(t, barsWith(pureSoda, `{"lye_concentration": "33 %"}`, parts("140 g"))), units.Gram))
	if strings.Contains(mended, says) || !strings.Contains(mended, "For cloud:") {
		t.Errorf("%s", mended)
	}
	// A pot of which nothing mends any part: half of its oils are missing.
	pot := flat(write(t, batchOf(t, barsWith(pureSoda, `{"lye_concentration": "33 %"}`,
		`, "weighed": {"stage": "pot", "oils": {"olive": "350 g", "coconut": "240 g"}}`)), units.Gram))
	if !strings.Contains(pot, "No addition of up to a quarter of the oils brings it back to the plan: do not use it "+
		"on skin.") {
		t.Errorf("%s", pot)
	}
}

// What the bound on the lye's heat leaves open stands beside it, and only then.
func TestTheCautionsOfTheHeatStandWhereTheyHold(t *testing.T) {
	const extrapolated, largest, unknown = "above 42.5 % that is extrapolated",
		"of KOH only the largest heat is published, so it is likely less",
		"How hot it gets is not known: nothing is published on thinning such a stock lye."
	potash := `{"kind": "potassium-hydroxide", "purity": {"low": "89 %", "typical": "90 %", "high": "91 %"}}`
	for _, row := range []struct {
		name, alkali, water string
		says                []string
	}{
		{"soda of 33 %", pureSoda, "33 %", nil},
		// 42.43 % hydroxide
		{"soda of 42 % at most", `{"kind": "sodium-hydroxide", "purity": "98 %"}`, "43.3 %", nil},
		{"soda above 42.5 %", `{"kind": "sodium-hydroxide", "purity": "98 %"}`, "43.5 %", []string{extrapolated}}, // 42.63 %
		{"potash", potash, "33 %", []string{largest}},
		{"a stock of potash, thinned", `{"kind": "potassium-hydroxide", "stock": {"strength": {"low": "44 %", "high": "45 %"}}}`, "33 %", []string{unknown}},
		{
			"a stock of soda, thinned", `{"kind": "sodium-hydroxide", "stock": {"strength": {"low": "44 %", "high": "45 %"}}}`,
			"30 %", nil,
		},
	} {
		page := flat(write(t, batchOf(t, barsWith(row.alkali, `{"lye_concentration": "`+row.water+`"}`,
			`, "temperature": {"water": "10 °C", "room": "20 °C"}`)), units.Gram))
		for _, text := range []string{extrapolated, largest, unknown} {
			if strings.Contains(page, text) != slices.Contains(row.says, text) {
				t.Errorf("%s: %q in\n%s", row.name, text, page)
			}
		}
		if strings.Contains(page, "if no heat is lost") == slices.Contains(row.says, unknown) {
			t.Errorf("%s: %s", row.name, page)
		}
	}
}

// The page on a lye alone says the same.
func TestThePageOnHeatSaysWhatIsLeftOpen(t *testing.T) {
	const extrapolated, largest = "Above 42.5 % the heat of solution is extrapolated.",
		"Of potassium hydroxide only the heat at infinite dilution is held here"
	for _, row := range []struct {
		alkali soap.Alkali
		water  int // g, to 100 g of pure alkali
		says   []string
	}{
		{soap.SodiumHydroxide, 136, nil},                    // 42.4 %
		{soap.SodiumHydroxide, 135, []string{extrapolated}}, // 42.6 %
		{soap.PotassiumHydroxide, 200, []string{largest}},
	} {
		m := lye.Mixing{
			Water: units.Grams(row.water), WaterAt: units.Celsius(10),
			Alkalis: []lye.Portion{{Alkali: row.alkali, Mass: units.Grams(100), Hydroxide: units.Percent(100)}},
		}
		h, err := m.Bound()
		if err != nil {
			t.Fatal(err)
		}
		var page strings.Builder
		if err := sheet.WriteHeat(&page, m, h); err != nil {
			t.Fatal(err)
		}
		for _, text := range []string{extrapolated, largest} {
			if strings.Contains(flat(page.String()), text) != slices.Contains(row.says, text) {
				t.Errorf("%v in %d g: %q in\n%s", row.alkali, row.water, text, page.String())
			}
		}
	}
}

// Bare metal stands first on the sheet, and once more at its end.
func TestTheSheetBeginsAndEndsWithTheHydrogen(t *testing.T) {
	page := flat(write(t, batchOf(t, barsWith(pureSoda, `{"lye_concentration": "33 %"}`,
		`, "parts": [{"part": "bars", "share": "100 %", "colourants": [{"colourant": "aluminium-powder", "load": "2 g"}]}]`)),
		units.Gram))
	const says = "DANGER Aluminium powder: in lye and fresh batter this metal gives off hydrogen, which burns and " +
		"explodes. Never put it into lye or batter, nor on fresh soap."
	first, last := strings.Index(page, says), strings.LastIndex(page, says)
	weigh := strings.Index(page, "[ ] Olive oil")
	if first < 0 || weigh < first || last < weigh {
		t.Errorf("at %d and %d, the first line to weigh at %d", first, last, weigh)
	}
}

// A note is printed right below the line that it is on, with the characters it has.
func TestANoteStandsBelowItsLine(t *testing.T) {
	page := write(t, batchOf(t, `{"formula": "Lantern walk cups", "note": "for the hall",
		"oils": [{"oil": "olive", "share": "70 %", "note": "tin by the door"}, {"oil": "coconut", "share": "rest"}],
		"alkali": [{"kind": "sodium-hydroxide", "purity": {"low": "97 %", "high": "99 %"}, "note": "opened in May"}], "superfat": "5 %",
		"water": {"lye_concentration": "33 %"}, "size": {"vessels": [{"vessel": "cup", "part": "glow", "count": 12, "volume": "45 mL", "note": "the blue set"}]},
		"parts": [{"part": "glow", "note": "stir by hand",
			"colourants": [{"colourant": "mica", "load": "1 g", "note": "sift it"}, {"colourant": "kaolin", "load": "1 g", "note": "soak it", "carrier": {"liquid": "glycerin", "ratio": "2", "paste": true}}],
			"fragrances": [{"fragrance": "lavender", "load": "2 g", "note": "`+strings.Repeat("long ", 30)+`end"}]}]}`), units.Gram)
	var lines []string
	for line := range strings.Lines(page) {
		lines = append(lines, strings.Join(strings.Fields(line), " "))
	}
	for note, above := range map[string]string{
		"for the hall": "Lantern walk cups", "tin by the door": "[ ] Olive oil", "opened in May": "[ ] Sodium hydroxide",
		"stir by hand": "glow",
		"sift it":      "[ ] mica", "soak it": "1 part in 2 of glycerin", "the blue set": "cup, glow",
	} {
		at := slices.Index(lines, "Note: "+note)
		if at < 1 || !strings.HasPrefix(lines[at-1], above) {
			t.Errorf("%q is at %d, want it below %q\n%s", note, at, above, page)
		}
	}
	if strings.Count(page, "Note: ") != 8 || !strings.Contains(flat(page), "Note: "+strings.Repeat("long ", 30)+"end") {
		t.Error(page)
	}
	for _, line := range strings.Split(page, "\n") {
		if len([]rune(line)) > 78 {
			t.Errorf("%q is longer than a page is wide", line)
		}
	}
}
