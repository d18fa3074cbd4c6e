package soap_test

import (
	"encoding/json"
	"strings"
	"testing"

	"example.com/lyewright/internal/madeup"
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// weighedAt is a formula of 800 g of olive oil at 6 % superfat and a lye of 32 %, of which
// so much alkali and water was weighed.
func weighedAt(t *testing.T, stage, purity, alkali, water string) soap.Batch {
	t.Helper()
	return batchOf(t, `{"formula": "Lantern walk", "oils": [{"oil": "olive", "share": "100 %"}], "alkali": [{"kind": "sodium-hydroxide", "purity": "`+purity+`"}],
		"superfat": "6 %", "water": {"lye_concentration": "32 %"}, "size": {"oils": "800 g"},
		"weighed": {"stage": "`+stage+`", "alkali": {"sodium-hydroxide": "`+alkali+`"}, "water": "`+water+`"}}`)
}

func findingOf(list []soap.Finding, code string) (soap.Finding, bool) {
	for _, f := range list {
		if f.Code == code {
			return f, true
		}
	}
	return soap.Finding{}, false
}

// 142 g of sodium hydroxide of 98 % in 100 g of water: 139.16 g of 242 g are hydroxide,
// 57.504132… %; a table of its solubility has 52.1 % at 20 °C.
func TestALyeThatDoesNotDissolveIsADangerAtEveryStage(t *testing.T) {
	for _, stage := range madeup.Stages() {
		b := weighedAt(t, stage.String(), "98 %", "142 g", "100 g")
		f, found := findingOf(b.Findings, "lye-undissolved")
		if !found || f.Severity != soap.Danger || f.Subject != "weighed" || f.Unit != "%" {
			t.Fatalf("%s: %+v", stage, f)
		}
		if f.Value.PercentText(6) != "57.504132" || f.Limit.PercentText(6) != "52.1" {
			t.Errorf("%s: %s of %s", stage, f.Value, f.Limit)
		}
		if says := f.Message(); !strings.Contains(says, "57.5 % hydroxide") || !strings.Contains(says, "52.1 %") ||
			strings.Contains(says, "in the batter") == (stage == soap.AtLye) {
			t.Errorf("%s: %s", stage, says)
		}
		// nothing beside it says that it could be mended, once it is in the batter
		if f, found := findingOf(b.Findings, "superfat-below-zero"); !found || strings.Contains(f.Message(),
			"mend it before") != (stage == soap.AtLye) {
			t.Errorf("%s: %s", stage, f.Message())
		}
		// no oil reaches grains of alkali: only a lye in its jug can still be mended
		if offered := len(b.Weighed.Remedies) > 0; offered != (stage == soap.AtLye) {
			t.Errorf("%s: offered is %+v", stage, b.Weighed.Remedies)
		}
		caps := b.Caps()
		tint, err := b.Tint()
		if err != nil {
			t.Fatal(err)
		}
		for view, findings := range map[string][]soap.Finding{"cap": caps.Findings, "tint": tint.Findings} {
			if _, found := findingOf(findings, "lye-undissolved"); !found {
				t.Errorf("%s: %s does not have it", stage, view)
			}
		}
		text, err := b.MarshalJSON()
		if err != nil {
			t.Fatal(err)
		}
		var object struct {
			Weighed struct {
				Lye struct {
					Undissolved      bool
					Concentration    float64 `json:"concentration_pct"`
					Mass, WaterPerOf float64
				}
			}
		}
		// 142 of 242 g is 58.677686 %
		if err := json.Unmarshal(text, &object); err != nil || !object.Weighed.Lye.Undissolved ||
			object.Weighed.Lye.Concentration != 58.677686 {
			t.Errorf("%s: %v, %+v", stage, err, object)
		}
	}
}

// 104.2 g of pure sodium hydroxide fill a lye of 200 g to just 52.1 %, a milligram less of
// water does not hold it. Of two alkalis each fills its part: 50 g of NaOH take the room of
// 50/0.521 = 95.9693 g of lye, 50 g of KOH that of 50/0.528 = 94.6970 g, 190.6663 g together,
// of which 90.6663 g are water.
func TestALyeDissolvesUpToWhatItHolds(t *testing.T) {
	for _, test := range []struct {
		water string
		over  bool
	}{{"95.8 g", false}, {"95.799 g", true}, {"300 g", false}} {
		b := weighedAt(t, "pot", "100 %", "104.2 g", test.water)
		if f, over := findingOf(b.Findings, "lye-undissolved"); over != test.over || over &&
			f.Limit.PercentText(6) != "52.1" {
			t.Errorf("in %s: %+v", test.water, f)
		}
		if b.Weighed.Lye.Undissolved != test.over {
			t.Errorf("in %s: undissolved %v", test.water, b.Weighed.Lye.Undissolved)
		}
	}
	for _, test := range []struct {
		water string
		over  bool
	}{{"90.667 g", false}, {"90.666 g", true}} {
		b := plainFormula().with("alkali", `{"kind": "sodium-hydroxide", "purity": "100 %", "saponifies": "50 %"}, {"kind": "potassium-hydroxide", "purity": "100 %", "saponifies": "50 %"}`,
			"weighed", `{"stage": "moulds", "alkali": {"sodium-hydroxide": "50 g", "potassium-hydroxide": "50 g"}, "water": "`+
				test.water+`"}`).batch(t)
		f, over := findingOf(b.Findings, "lye-undissolved")
		if over != test.over {
			t.Errorf("two alkalis in %s: %+v", test.water, f)
		}
		// 100 g of 190.6663 g is 52.4477 %
		if over && f.Limit.PercentText(3) != "52.448" {
			t.Errorf("two alkalis: a limit of %s", f.Limit)
		}
	}
}

// A share of a jug is the share of its alkali only where all of it is dissolved: the water
// goes in first. Of olive oil planned at v the alkali is 800 g × v × 0.94 × 39.997/56.105/0.98,
// and the water 68/32 of it. Of 142 g of alkali the share that is used is planned/142, and the
// whole jug needs 142 × 68/32 = 301.75 g of water, 201.75 g more than the 100 g in it; with
// it the jug is 443.75 g, and what is used is the plan's lye, planned × 100/32.
func TestAnUndissolvedLyeGetsItsWaterBeforeItIsShared(t *testing.T) {
	plan := weighedAt(t, "lye", "98 %", "142 g", "100 g")
	r := plan.Weighed.Remedies
	if len(r) != 1 || !r[0].WaterFirst {
		t.Fatalf("%+v", r)
	}
	if !within(massFrac(r[0].AddWater.Mass), frac("201.75"), frac("0.0001")) || !within(massFrac(r[0].OfLye),
		frac("443.75"), frac("0.05001")) {
		t.Errorf("%s of water, %s of lye", r[0].AddWater.Mass, r[0].OfLye)
	}
	lye := over(times(massFrac(plan.Alkalis[0].Dry.Mass), whole(100)), whole(32))
	if !within(massFrac(r[0].UseLye.Weigh), lye, frac("0.15")) || !within(ratioFrac(r[0].Superfat.Planned), frac("0.06"),
		frac("0.001")) {
		t.Errorf("%s used, want %s; superfat %s", r[0].UseLye.Weigh, lye.FloatString(3), r[0].Superfat.Planned)
	}
	// what is left is the plan's lye and all of the oils
	if want := plan.OilsTotal.Add(r[0].UseLye.Weigh); r[0].Batter != want || r[0].Poured != want {
		t.Errorf("batter %s, poured %s, want %s", r[0].Batter, r[0].Poured, want)
	}
	// A lye that dissolves is used as it stands, and its water made up afterwards.
	if r := weighedAt(t, "lye", "98 %", "142 g", "250 g").Weighed.Remedies; len(r) != 1 || r[0].WaterFirst ||
		r[0].UseLye.Weigh == (units.Mass{}) {
		t.Errorf("%+v", r)
	}
}

// Of 200 g of alkali half the mass is 100 g: with so much water it is a lye that lacks water, with a milligram less
// water must not be poured on it. That is said in the finding, the remedy has a key of its own in the JSON, and
// water_g, which is poured into the jug, is not there. The whole jug needs 200 × 68/32 = 425 g of water. 50 g are
// below a third of the water that is planned (some 230 g): nothing is offered before they are sure, and the finding
// says no other.
func TestNoWaterIsPouredOnDryAlkali(t *testing.T) {
	for water, dry := range map[string]bool{"0 g": true, "50 g": true, "99.999 g": true, "100 g": false, "150 g": false} {
		b := weighedAt(t, "lye", "98 %", "200 g", water)
		f, _ := findingOf(b.Findings, "lye-undissolved")
		detail, second := "jug", strings.Contains(f.Message(),
			"weigh the water into a second vessel and add the alkali to it")
		if dry {
			detail = "dry"
		}
		if f.Severity != soap.Danger || f.Detail != detail || second != dry || b.Weighed.Lye.Dry != dry ||
			strings.Contains(f.Message(), "make up the water") == dry {
			t.Errorf("%s: %s: %s", water, f.Detail, f.Message())
		}
		text, err := b.MarshalJSON()
		if err != nil {
			t.Fatal(err)
		}
		var object struct {
			Weighed struct{ Remedies []map[string]any }
		}
		if err := json.Unmarshal(text, &object); err != nil {
			t.Fatal(err)
		}
		if water == "50 g" {
			continue
		}
		if len(object.Weighed.Remedies) != 1 {
			t.Fatalf("%s: %v", water, object.Weighed.Remedies)
		}
		remedy := object.Weighed.Remedies[0]
		poured, stands := remedy["water_g"]
		aside, apart := remedy["second_vessel_water_g"]
		if stands == dry || apart != dry || b.Weighed.Remedies[0].SecondVessel != dry {
			t.Errorf("%s: %v is poured, %v into a second vessel", water, poured, aside)
		}
		if water == "0 g" && (aside != 425.0 || remedy["second_vessel_water_weigh_g"] != 425.0) {
			t.Errorf("%v, %v", aside, remedy["second_vessel_water_weigh_g"])
		}
	}
	// All of the water as milk that was forgotten, and alkali that lacks some as well: 100 g in place of some 108 g.
	milk := batchOf(t, `{"formula": "Lantern walk", "oils": [{"oil": "olive", "share": "100 %"}],
		"alkali": [{"kind": "sodium-hydroxide", "purity": "98 %"}], "superfat": "6 %", "size": {"oils": "800 g"},
		"water": {"lye_concentration": "32 %", "liquids": [{"liquid": "oat milk", "share": "100 %", "water": "90 %"}]},
		"weighed": {"stage": "lye", "alkali": {"sodium-hydroxide": "90 g"}, "liquids": {"oat milk": "0 g"}}}`)
	if r := milk.Weighed.Remedies; len(r) != 1 || !r[0].SecondVessel || r[0].AddWater.Weigh.Sign() <= 0 ||
		r[0].AddAlkali.Weigh.Sign() <= 0 {
		t.Errorf("milk: %+v", r)
	}
	// In the batter there is no jug any more, and nothing is offered.
	if f, _ := findingOf(weighedAt(t, "pot", "98 %", "142 g", "0 g").Findings, "lye-undissolved"); f.Detail != "batter" {
		t.Errorf("pot: %s", f.Detail)
	}
}
