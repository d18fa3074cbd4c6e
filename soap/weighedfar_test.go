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
