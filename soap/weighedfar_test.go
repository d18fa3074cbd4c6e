package soap_test

import (
	"encoding/json"
	"strings"
	"testing"
)

// 800 g of olive oil at 6 % need some 103 g of sodium hydroxide. A third of that is 34 g:
// a jug that reads 14.2 g may hold 142 g, and what is then "missing" would burn. A reading
// of 40 g is low, and not doubted.
func TestNoAlkaliIsAddedOnTheWordOfAReadingFarOff(t *testing.T) {
	for _, test := range []struct {
		stage, alkali, water string
		again, offered       bool
	}{
		{"lye", "14.2 g", "219 g", true, false},
		{"lye", "0 g", "219 g", true, false},
		{"lye", "40 g", "219 g", false, true},
		{"lye", "103 g", "21.9 g", true, false}, // water, of which 219 g is planned
		{"lye", "103 g", "0 g", false, true},    // forgotten: no point has slipped
		{"lye", "103 g", "80 g", false, true},
		{"pot", "14.2 g", "219 g", true, false},
		{"moulds", "14.2 g", "219 g", false, false},
	} {
		b := weighedAt(t, test.stage, "98 %", test.alkali, test.water)
		if offered := len(b.Weighed.Remedies) > 0; offered != test.offered {
			t.Errorf("%+v: %d remedies", test, len(b.Weighed.Remedies))
		}
		f, found := findingOf(b.Findings, "weighed-far")
		if again := found && f.Detail == "again"; again != test.again {
			t.Errorf("%+v: %+v", test, f)
		}
		if says := strings.Contains(f.Message(), "Weigh it again first"); found && says != test.again {
			t.Errorf("%+v: %s", test, f.Message())
		}
		text, err := b.MarshalJSON()
		if err != nil {
			t.Fatal(err)
		}
		var object struct {
			Weighed struct{ Remedies []any }
		}
		if err := json.Unmarshal(text, &object); err != nil || len(object.Weighed.Remedies) > 0 != test.offered {
			t.Errorf("%+v: %v, %d remedies in JSON", test, err, len(object.Weighed.Remedies))
		}
	}
}

// Of an oil 500 g are planned. One of which a tenth was read may be all there: no oil is offered on it.
func TestNoOilIsAddedOnTheWordOfAReadingFarOff(t *testing.T) {
	for oil, offered := range map[string]bool{"50 g": false, "430 g": true} {
		b := plainFormula().with("weighed", `{"stage": "pot", "oils": {"hall-blend": "`+oil+`"}}`).batch(t)
		if got := len(b.Weighed.Remedies) > 0; got != offered {
			t.Errorf("%s: %d remedies", oil, len(b.Weighed.Remedies))
		}
	}
}

// A kilogram of oils at 190 mg/g and 5 % takes 0.190 × 0.95 × 40.0/56.1 of it, 129 g of alkali. With 150 g it burns:
// every part needs more oil, by the mass of its batter. The pot holds some 1390 g, half of it for each part. What reads
// 70 g may be 695 g, and a tenth of its oil would leave it burning: nothing is offered then, nor on an oil that was to
// be 20 g in a jug and read 2 g. What brings no oil is not what a remedy rests on.
func TestNoOilIsAddedOnTheWordOfAPartsReadingFarOff(t *testing.T) {
	divided := plainFormula().with("parts", `{"part": "lantern", "share": "50 %", "colourants": [
			{"colourant": "dusk", "unlisted": true, "load": "10 g", "carrier": {"liquid": "hall-blend", "ratio": "2",
				"from": "formula"}},
			{"colourant": "mica", "load": "4 g", "carrier": {"liquid": "glycerin", "ratio": "2"}},
			{"colourant": "titanium-dioxide", "load": "6 g", "carrier": {"liquid": "sunflower", "ratio": "2", "paste": true}}]},
		{"part": "glow", "share": "rest"}`)
	for _, test := range []struct {
		lantern string // what of it was weighed
		again   string // where it is asked to weigh again
		far     int    // readings far off
	}{
		{`"batter": "70 g"`, "weighed.parts.lantern.batter", 1},
		{`"batter": "260 g"`, "", 0}, // over a third
		{`"batter": "695 g"`, "", 0},
		{`"carriers": {"hall-blend": "2 g"}`, "weighed.parts.lantern.carriers.hall-blend", 1},
		{`"carriers": {"hall-blend": "7 g"}`, "", 0},
		{`"carriers": {"hall-blend": "0 g"}`, "", 1}, // forgotten: no point has slipped
		{`"carriers": {"glycerin": "0.8 g"}`, "", 1},
		// of a paste of 18 g
		{`"additions": {"titanium-dioxide": "1.8 g"}`, "weighed.parts.lantern.additions.titanium-dioxide", 1},
		{`"additions": {"mica": "0.4 g"}`, "", 1},
	} {
		b := divided.with("weighed", `{"stage": "parts", "alkali": {"sodium-hydroxide": "150 g"}, "parts": {"lantern": {`+
			test.lantern+`}}}`).batch(t)
		if offered := len(b.Weighed.Remedies) > 0; offered != (test.again == "") {
			t.Errorf("%s: %d remedies", test.lantern, len(b.Weighed.Remedies))
		}
		far := found(b, "weighed-far")
		if len(far) != test.far {
			t.Errorf("%s: %+v", test.lantern, far)
		}
		for _, f := range far {
			if again := f.Detail == "again"; again != (test.again != "") || again && f.Subject != test.again {
				t.Errorf("%s: %+v", test.lantern, f)
			}
		}
		if len(found(b, "superfat-below-zero")) == 0 {
			t.Errorf("%s: nothing needs mending", test.lantern)
		}
	}
}
