package sheet_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/units"
)

// 1000 g of oils at 200 mg/g and a superfat of 8 % need 133.8 g of alkali in twice as much water. 142 g of alkali in
// 100 g of water are 57.5 % hydroxide, and no more than some 52 % dissolve at 20 °C. 140 g are more than the oils
// take up at 8 %. 40 g in place of 133.8 g are less than a third.
func TestTheStepOfJoiningIsThatOfTheStage(t *testing.T) {
	const pour = "our the lye slowly into the oils and stir to a light trace"
	weighed := func(stage, readings string) string {
		return `{"stage": "` + stage + `"` + readings + `}`
	}
	const thick, rich = `, "alkali": {"sodium-hydroxide": "142 g"}, "water": "100 g"`,
		`, "alkali": {"sodium-hydroxide": "140 g"}`
	const asPlanned, lost = `, "water": "267.7 g"`, `, "oils": {"hall-oil": "50 g"}`
	for name, row := range map[string]struct {
		weighed string
		says    string // of the step
		pours   bool
	}{
		"the plan":       {"", "P" + pour + ", then divide the batter.", true},
		"a lye in order": {weighed("lye", asPlanned), "P" + pour + ", then divide the batter.", true},
		"a lye that does not dissolve": {weighed("lye", thick), "Do not pour the lye as it is: it holds more alkali than " +
			"dissolves, and what stays undissolved burns skin. First make up its water", true},
		"alkali without its water": {weighed("lye", `, "water": "0 g"`), "Do not pour the lye as it is: hardly any water " +
			"is in its jug, or none, and what stays undissolved burns skin. First weigh the water into a second vessel and " +
			"add the alkali to it, a little at a time, never the water to the alkali", true},
		"a lye with too much alkali": {weighed("lye", rich), "Do not pour the lye as it is: first mend it, as it says " +
			"further up. Then p" + pour, true},
		"a reading in doubt": {
			weighed("lye", lost),
			"Do not pour the lye yet: weigh again first, as it says further up.", true,
		},
		"a pot with grains in it": {weighed("pot", thick), "Do not pour this batter for use: grains of alkali are in " +
			"it, and no oil mends that. Do not use it on skin.", false},
		"parts with grains in them": {
			weighed("parts", thick),
			"Do not pour this batter for use: grains of alkali are in it", false,
		},
		"moulds with grains in them": {
			weighed("moulds", thick),
			"It is poured, with grains of alkali in it, and nothing mends that: do not use it on skin.", false,
		},
		"a pot in order": {
			weighed("pot", asPlanned),
			"The lye is in the oils: stir to a light trace, then divide the batter.", false,
		},
		"a pot with too much alkali": {weighed("pot", rich), "The lye is in the oils. First add what mends the batter, " +
			"as it says further up.", false},
		"a pot in doubt": {weighed("pot", lost), "Weigh again first, as it says further up, before anything " +
			"is added or poured.", false},
		"a pot that nothing mends": {
			weighed("pot", `, "oils": {"hall-oil": "0 g"}`),
			"It has too much alkali, and nothing that is offered mends it: do not use it on skin.", false,
		},
		"parts in order":  {weighed("parts", asPlanned), "The batter is divided.", false},
		"moulds in order": {weighed("moulds", asPlanned), "It is poured.", false},
	} {
		changes := []string{"parts", `[{"part": "base", "share": "60 %"}, {"part": "cloud", "share": "rest"}]`}
		if row.weighed != "" {
			changes = append(changes, "weighed", row.weighed)
		}
		page := flat(write(t, batchOf(t, bar(changes...)), units.Gram))
		_, step, _ := strings.Cut(page, "BATTER AND PARTS Raw batter burns like lye: keep goggles and gloves on until it "+
			"is poured and everything is washed. ")
		if !strings.HasPrefix(step, row.says) {
			t.Errorf("%s: the step is %.300q, want %q", name, step, row.says)
		}
		if strings.Contains(page, pour) != row.pours {
			t.Errorf("%s: told to pour the lye: %v", name, !row.pours)
		}
		plans := strings.Contains(page, "The steps below, with their masses, are those of the plan.") &&
			strings.Contains(page, "These figures are those of the plan; as weighed they stand further up.")
		if plans != (row.weighed != "") {
			t.Errorf("%s: it says what the plan is: %v", name, plans)
		}
	}
}

// Who forgot the water is nowhere told to pour it on the alkali, whether the alkali is as planned (133.8 g), too
// little or too much.
func TestNobodyIsToldToPourWaterOnAlkali(t *testing.T) {
	for alkali, says := range map[string]string{
		"133.8 g": "stir until it is clear.", "120 g": "Then dissolve the alkali that is missing in it:",
		"142 g": "It is too much for the oils: then use part of it.",
	} {
		page := flat(write(t, batchOf(t, bar("weighed", `{"stage": "lye", "alkali": {"sodium-hydroxide": "`+alkali+
			`"}, "water": "0 g"}`)), units.Gram))
		for _, says := range []string{
			says,
			"Hardly any water is in the jug, or none, so that the alkali does not dissolve. " +
				"Do not pour water on it", "weigh the water into a second vessel and add the alkali to it",
			"water, in a second vessel ",
		} {
			if !strings.Contains(page, says) {
				t.Errorf("%s: it does not say %q:\n%s", alkali, says, page)
			}
		}
		for _, pours := range []string{"make up", "make it up", "water to add", "first add water"} {
			if strings.Contains(page, pours) {
				t.Errorf("%s: it says %q:\n%s", alkali, pours, page)
			}
		}
	}
}

// Who has only milk weighs no water: a line of 0.0 is no weighing. With half of it milk there is one.
func TestWaterThatIsNotThereHasNoLine(t *testing.T) {
	for share, there := range map[string]bool{"100 %": false, "50 %": true} {
		page := write(t, batchOf(t, bar("water", `{"per_alkali": "2", "liquids": [{"liquid": "oat milk", "share": "`+share+
			`", "water": "100 %"}]}`)), units.Gram)
		if got := lineWith(page, "[ ] Water"); (got != "") != there || strings.Contains(page, " 0.0\n") {
			t.Errorf("%s of milk: %q", share, got)
		}
	}
}

// Two liquids, one of them frozen by its name: the sentence stands whatever they are called.
func TestTheMixingOfTwoLiquidsReadsWell(t *testing.T) {
	page := flat(write(t, batchOf(t, bar("water",
		`{"per_alkali": "2", "liquids": [{"liquid": "frozen milk", "share": "60 %", "water": "100 %"},
			{"liquid": "elder tea", "share": "40 %", "water": "100 %"}]}`)), units.Gram))
	const says = "Add the alkali to the liquids, well chilled or frozen (frozen milk; elder tea), a little at a time, " +
		"never the liquids to the alkali: it gets very hot, and may boil and foam over."
	if !strings.Contains(page, says) {
		t.Errorf("it does not say %q:\n%s", says, page)
	}
}

// One part of a cup of 45 mL: 300 g of water in place of 267.7 g are 32.3 g more to pour than the plan has, which the
// pieces do not know of. As planned there is nothing to say.
func TestThePiecesOfAWeighedBatchAreSaidToBeThoseOfThePlan(t *testing.T) {
	cups := []string{"size", `{"oils": "1000 g", "vessels": [{"vessel": "cup", "part": "base", "count": 20,
		"volume": "45 mL"}]}`, "parts", `[{"part": "base", "share": "100 %"}]`}
	const plan, there = "The pieces are those of the plan.", "The pieces are those of the plan. As weighed, there is of " +
		"base 1433.8 g to pour in place of 1401.5 g: look whether it fills them."
	for weighed, want := range map[string]string{
		"": "", `{"stage": "pot", "water": "300 g"}`: there, `{"stage": "pot", "oils": {"hall-oil": "500 g"}}`: plan + " ",
	} {
		changes := cups
		if weighed != "" {
			changes = append(slices.Clone(cups), "weighed", weighed)
		}
		page := flat(write(t, batchOf(t, bar(changes...)), units.Gram))
		if !strings.Contains(page, want) || strings.Contains(page, plan) != (want != "") ||
			strings.Contains(page, "look whether it fills") != (want == there) {
			t.Errorf("%s: it does not say %q:\n%s", weighed, want, page)
		}
	}
}

// What was weighed is no plan: its column is that of typical values. A formula without parts has no part of a name.
func TestTheTablesSayWhatTheirFiguresAre(t *testing.T) {
	page := write(t, batchOf(t, bar("weighed", `{"stage": "pot", "water": "270 g"}`)), units.Gram)
	_, weighed, _ := strings.Cut(page, "AS WEIGHED\n")
	_, sure, _ := strings.Cut(page, "HOW SURE THE SUPERFAT IS\n")
	if !strings.HasPrefix(strings.TrimSpace(weighed), "typical") || !strings.Contains(sure, "planned            likely") {
		t.Errorf("%s", page)
	}
	if strings.Contains(page, "\nwhole\n") {
		t.Errorf("a part that the maker never named stands on the sheet:\n%s", page)
	}
	if named := write(t, batchOf(t, bar("parts", `[{"part": "base", "share": "100 %"}]`)),
		units.Gram); !strings.Contains(named, "\nbase\n") {
		t.Errorf("the maker's part is not named:\n%s", named)
	}
}
