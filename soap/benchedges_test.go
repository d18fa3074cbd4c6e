package soap_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

func batchOf(t *testing.T, text string) soap.Batch {
	t.Helper()
	f, faults := read(t, text)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	b, err := f.Batch()
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// Loads that leave no room for oil or alkali are refused; nothing comes out below
// zero or at the end of what a mass can hold.
func TestWhatLeavesNoRoomForSoapIsRefused(t *testing.T) {
	acid := func(load string, compensate string) []string {
		return []string{"acids", `{"acid": "citric-acid-anhydrous", "load": "` + load + `", "compensate": ` + compensate +
			`}`}
	}
	for _, test := range []struct {
		change     []string
		path, says string
	}{
		{append(acid("80 % of batter", "true"), "water", `{"per_oils": "30 %"}`), "acids", "lower their loads of batter"},
		{acid("100 % of batter", "false"), "acids", "lower their loads of batter"},
		{acid("60 % of oils", "false"), "acids", `write "compensate": true`},
		{[]string{"water", `{"lye_concentration": "32 %", "liquids": [{"liquid": "hall broth", "share": "100 %", "water": "0.000001 %"}]}`}, "water.liquids[0]", "more than a tonne"},
		{[]string{
			"superfat", `{"at_least": "1 %"}`, "water",
			`{"lye_concentration": "32 %", "liquids": [{"liquid": "hall milk", "share": "10 %", "water": "88 %", "fat": "4 %",
				"saponification": "227"}]}`,
		}, "superfat.at_least", "give its fat a range"},
		{[]string{"weighed", `{}`}, "weighed", `write "stage"`},
		{
			[]string{"weighed", `{"stage": "parts", "parts": {"lantern": {"batter": "0 g"}}}`},
			"weighed.parts.lantern.batter",
			"leave it out",
		},
	} {
		w := plainFormula()
		for i := 0; i < len(test.change); i += 2 {
			w = w.with(test.change[i], test.change[i+1])
		}
		faults := made(t, w.text())
		if len(faults) != 1 || faults[0].Path != test.path || !strings.Contains(faults[0].Sentence(), test.says) {
			t.Errorf("%v: got %v, want one at %s that says %q", test.change, faults, test.path, test.says)
		}
	}
	// What is compensated already has no use for the advice to compensate it.
	for _, f := range made(t, plainFormula().with("acids",
		`{"acid": "citric-acid-anhydrous", "load": "90 % of batter", "compensate": true}`).text()) {
		if strings.Contains(f.Remedy, "compensate") {
			t.Errorf("%v", f)
		}
	}
}

// By hand: 96.06 g of citric acid are 0.5 mol and give 1.5 mol of protons, 83.7 kJ
// at 55.8 kJ/mol. A lye of about 3.5 J/(g K) grows hotter by that over its heat
// capacity.
func TestTheBoundCountsTheHeatOfAcids(t *testing.T) {
	cold := plainFormula().with("temperature", `{"water": "10 °C"}`)
	without := batchOf(t, cold.text())
	acid := batchOf(t, cold.with("acids", `{"acid": "citric-acid-anhydrous", "load": "96.0615 g", "compensate": false}`).text())
	lye := acid.Lye.Mass.Grams()
	rise := acid.Lye.Heat.Final.Sub(without.Lye.Heat.Final).Kelvin()
	if want := 83_700 / (3.5 * lye); rise < 0.93*want || rise > 1.07*want {
		t.Errorf("the acid adds %.1f K, by hand about %.1f K", rise, want)
	}
}

// The high end of the purity makes a lye stronger than dissolves: the bound is then
// that of the plan, not none.
func TestTheHottestLyeHasABound(t *testing.T) {
	b := batchOf(t, plainFormula().with("alkali",
		`{"kind": "sodium-hydroxide", "purity": {"low": "95 %", "typical": "97 %", "high": "100 %"}}`).
		with("water", `{"lye_concentration": "53.5 %"}`).with("temperature", `{"water": "20 °C"}`).text())
	if !b.Lye.Heat.Final.Given() || !b.Lye.Heat.Extrapolated {
		t.Errorf("%+v", b.Lye.Heat)
	}
	if i := slices.IndexFunc(b.Findings, func(f soap.Finding) bool { return f.Code == "lye-hot" }); i < 0 {
		t.Errorf("a lye at %s is not hot", b.Lye.Heat.Final)
	}
}

// Water that was forgotten shows in the findings, and is to be made up.
func TestALyeThatLacksWaterIsMadeUp(t *testing.T) {
	plan := batchOf(t, plainFormula().text())
	b := batchOf(t, plainFormula().with("weighed", `{"stage": "lye", "water": "100 g"}`).text())
	if !slices.ContainsFunc(b.Findings, func(f soap.Finding) bool { return f.Code == "lye-strong" }) {
		t.Error("nothing says that the lye is strong")
	}
	if len(b.Weighed.Remedies) != 1 {
		t.Fatalf("%+v", b.Weighed.Remedies)
	}
	r := b.Weighed.Remedies[0]
	if want := plan.Water.Mass.Sub(units.Grams(100)); r.AddWater.Mass != want || r.UseLye.Mass.Sign() != 0 ||
		r.AddAlkali.Mass.Sign() != 0 {
		t.Errorf("%+v, want %s of water", r, want)
	}
	if short := plan.Batter.Sub(r.Batter); short.Compare(units.Milligrams(50)) > 0 ||
		units.Milligrams(-50).Compare(short) > 0 {
		t.Errorf("the batter is %s, planned %s", r.Batter, plan.Batter)
	}
}

// An acid that is not compensated lifts the superfat above what is written, so that
// a promise may be kept from a plan below it, down to 0 %.
func TestAPromiseCountsWhatAcidsLeaveToTheOils(t *testing.T) {
	b := batchOf(t, plainFormula().with("oils", `{"oil": "olive", "share": "100 %"}`).with("alkali",
		`{"kind": "sodium-hydroxide", "purity": {"low": "97 %", "high": "98 %"}}`).
		with("superfat", `{"at_least": "2 %"}`).with("acids",
		`{"acid": "citric-acid-anhydrous", "load": "4 % of oils", "compensate": false}`).text())
	if b.Worked.Sign() != 0 || b.Superfat.Low.Compare(units.Percent(2)) < 0 {
		t.Errorf("planned with %s, at the worst %s", b.Worked, b.Superfat.Low)
	}
}

// A stock that brings just the water asked for leaves none to weigh, and no finding
// about it; what is then weighed all the same is no slipped point.
func TestAStockAsWeakAsTheLyeNeedsNoWater(t *testing.T) {
	w := plainFormula().with("alkali", `{"kind": "sodium-hydroxide", "stock": {"strength": "32 %"}}`).with("water",
		`{"lye_concentration": "32 %"}`)
	b := batchOf(t, w.text())
	if b.Water.Mass.Sign() != 0 || slices.ContainsFunc(b.Findings,
		func(f soap.Finding) bool { return f.Code == "rounding-coarse" }) {
		t.Errorf("%+v, %v", b.Water, b.Findings)
	}
	if faults := made(t, w.with("weighed", `{"stage": "pot", "water": "1 g"}`).text()); faults != nil {
		t.Error(faults)
	}
}

// Missing alkali needs its water too, and of two alkalis the one that is short gets
// what is missing.
func TestWhatIsMissingFromALyeIsMadeUp(t *testing.T) {
	plan := batchOf(t, plainFormula().text())
	b := batchOf(t, plainFormula().with("weighed",
		`{"stage": "lye", "alkali": {"sodium-hydroxide": "90 g"}, "water": "100 g"}`).text())
	r := b.Weighed.Remedies[0]
	if short := plan.Alkalis[0].Dry.Mass.Sub(units.Grams(90)).Sub(r.AddAlkali.Mass); short.Compare(units.Milligrams(1)) > 0 || r.AddWater.Mass != plan.Water.Mass.Sub(units.Grams(100)) {
		t.Errorf("%+v", r)
	}
	if off := plan.Batter.Sub(r.Batter); off.Compare(units.Milligrams(5)) > 0 || units.Milligrams(-5).Compare(off) > 0 {
		t.Errorf("the batter is %s, planned %s", r.Batter, plan.Batter)
	}
	two := plainFormula().with("alkali", `{"kind": "sodium-hydroxide", "purity": "98 %", "saponifies": "70 %"}, {"kind": "potassium-hydroxide", "purity": "90 %", "saponifies": "30 %"}`)
	plan = batchOf(t, two.text())
	b = batchOf(t, two.with("weighed", `{"stage": "lye", "alkali": {"sodium-hydroxide": "50 g"}}`).text())
	if n := len(b.Weighed.Remedies); n != 1 || b.Weighed.Remedies[0].Alkali != soap.SodiumHydroxide {
		t.Fatalf("%+v", b.Weighed.Remedies)
	}
	if short := plan.Alkalis[0].Dry.Mass.Sub(units.Grams(50)).Sub(b.Weighed.Remedies[0].AddAlkali.Mass); short.Compare(units.Milligrams(1)) > 0 {
		t.Errorf("short by %s", short)
	}
}

// With half of the oils half of the lye is used, and it has its water in it.
func TestALyeIsMadeUpForTheOilsThereAre(t *testing.T) {
	plan := batchOf(t, plainFormula().text())
	b := batchOf(t, plainFormula().with("weighed",
		`{"stage": "lye", "oils": {"hall-blend": "250 g", "yard-blend": "250 g"}}`).text())
	r := b.Weighed.Remedies[0]
	half := units.Sum{}.Plus(plan.Lye.Mass, units.Percent(50)).Mass(units.Nearest)
	if off := r.UseLye.Mass.Sub(half); off.Compare(units.Milligrams(1)) > 0 || r.AddWater.Mass.Sign() != 0 {
		t.Errorf("%+v, want %s of the lye and no water", r, half)
	}
}

// A batter asked for is met to the nanogram, also where the stock brings all the
// water and a few nanograms are left over: of those there is nothing to weigh.
func TestABatterAskedForIsMet(t *testing.T) {
	over := 0
	for grams := 1000; grams < 1200; grams++ {
		b := batchOf(t, plainFormula().with("alkali",
			`{"kind": "sodium-hydroxide", "stock": {"strength": "33 %"}}`).with("size", `{"batter": "`+strconv.Itoa(grams)+
			` g"}`).text())
		if b.Water.Mass.Sign() > 0 {
			over++
			if b.Batter != units.Grams(grams) {
				t.Errorf("%s, asked %d g", b.Batter, grams)
			}
		}
		if slices.ContainsFunc(b.Findings, func(f soap.Finding) bool { return f.Code == "rounding-coarse" }) {
			t.Errorf("%d g: %s of water is said to be coarse", grams, b.Water.Mass)
		}
	}
	if over < 10 {
		t.Errorf("%d times something was left over", over)
	}
}

// A lye mended on a fine scale leaves in the worst case what the plan does: of the
// dry mass that there is then, not of that before.
func TestAMendedLyeLeavesTheFreeAlkaliOfThePlan(t *testing.T) {
	none := plainFormula().with("superfat", `"0 %"`)
	plan := batchOf(t, none.text()).Superfat.FreeAlkaliWorst.Float()
	for _, mass := range []string{"300 g", "60 g"} {
		b := batchOf(t, none.with("weighed", `{"stage": "lye", "alkali": {"sodium-hydroxide": "`+mass+`"}}`).text())
		if after := b.Weighed.Remedies[0].Superfat.FreeAlkaliWorst.Float(); after < 0.99*plan || after > 1.01*plan {
			t.Errorf("%s: %v, as planned %v", mass, after, plan)
		}
	}
}
