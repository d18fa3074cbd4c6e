package soap_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// photographed are swatches of three bands, so that a fit is fast.
const photographed = `{"name":"dusk","surface":{"outside":0.02,"inside":0.4,"gloss":"excluded"},"read":[{"swatch":"plain","srgb":"#e8dcc0"},
	{"swatch":"w1","loads":{"titanium-dioxide":"0.3 % of batter"},"srgb":"#efe8d8"},{"swatch":"w2","loads":{"titanium-dioxide":"1 % of batter"},"srgb":"#f4f0e8"},
	{"swatch":"d1","loads":{"titanium-dioxide":"0.5 % of batter","dusk":"0.3 % of batter"},"srgb":"#b9c3da"},{"swatch":"d2","loads":{"titanium-dioxide":"0.5 % of batter","dusk":"1 % of batter"},"srgb":"#7f93c6"}]}`

func FuzzParseSwatches(f *testing.F) {
	for _, seed := range []string{
		photographed,
		`{"swatches":` + photographed + `}`,
		`{"read":[{"swatch":"plain","lab":[88,1,12]}]}`,
		`{"bands":{"from":"400 nm","step":"20 nm"},"read":[{"swatch":"plain","thickness":"2 mm","backing":[0.05,0.88],
		"over_black":[0.5,0.5,0.5,0.5,0.5,0.5,0.5,0.5,0.5,0.5,0.5,0.5,0.5,0.5,0.5,0.5],"over_white":[0.6,0.6,0.6,0.6,0.6,0.6,0.6,0.6,0.6,0.6,0.6,0.6,0.6,0.6,0.6,0.6]}]}`,
		`{"read":[{"swatch":"plain","reflectance":[1e-3,0.5,1E400]}]}`, // a figure that no float holds
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		swatches, places, err := soap.ParseSwatches(text)
		if err != nil {
			mustBeFaults(t, err)
			mustStandIn(t, text, places, err)
			if swatches != nil {
				t.Errorf("swatches beside %v", err)
			}
			return
		}
		swatches.White = "titanium-dioxide"
		if _, err := swatches.Calibrate(); err != nil {
			mustBeFaults(t, err) // what it lacks of the white
		}
	})
}

func FuzzParseFormula(f *testing.F) {
	for _, pattern := range []string{
		"../testdata/formulas/*.json",       // what a maker writes
		"../testdata/formulas/wrong/*.json", // each kind of fault
		"../testdata/worked/*.json",         // every way to say an amount
	} {
		paths, err := filepath.Glob(pattern)
		if err != nil || len(paths) == 0 {
			f.Fatal(pattern, err)
		}
		for _, path := range paths {
			text, err := os.ReadFile(path)
			if err != nil {
				f.Fatal(err)
			}
			if len(text) < 6_000 { // larger ones are slow to work out, and say no more
				f.Add(text)
			}
		}
	}
	for _, seed := range []string{
		`{"formula":"\ud83d"}`,                            // half of a pair
		`{"oils":[{"oil":"x","profile":{"C18:1":"0%"}}]}`, // a composition of nothing
		`{"size":{"oils":"0.0000000001 g"}}`,              // less than a nanogram
		// every key of the bench at once, in each of its spellings
		`{"formula":"x","oils":[{"oil":"olive","mass":"500 g"},{"oil":"beeswax","mass":"10 g"}],
		"alkali":[{"kind":"sodium-hydroxide","purity":{"grade":"acs-2017","typical":"98 %"},"saponifies":"60 %"},
		{"kind":"potassium-hydroxide","stock":{"strength":{"low":"45 %","typical":"46 %","high":"47 %"}},"saponifies":"40 %"}],
		"superfat":"5 %","scale":"0.1 g","acids":[{"acid":"citric-acid-anhydrous","load":"1 % of oils","compensate":true},
		{"acid":"lactic-acid","load":"0.5 % of batter","strength":"80 %","compensate":false},{"acid":"acetic-acid","load":"2 g","compensate":false}],
		"water":{"per_oils":"40 %","liquids":[{"liquid":"milk","share":"20 %","water":"87 %","fat":"4 %","sugar":"5 %","alcohol":"0 %","saponification":{"low":"218","high":"235"}},
		{"liquid":"ale","mass":"10 g","water":"95 %","alcohol":"5 %"}]},
		"temperature":{"oils":"104 °F","lye":"313.15 K","water":"0 °C","room":"20C","pour":"38 °C"},
		"parts":[{"part":"base","share":"60 %","colourants":[{"colourant":"dusk","load":"1 g","carrier":{"liquid":"olive","ratio":"3","from":"formula"}}]},{"part":"cloud","share":"rest"}],
		"weighed":{"stage":"parts","oils":{"olive":"480 g","beeswax":"0 g"},"alkali":{"sodium-hydroxide":"50 g","potassium-hydroxide":"120 g"},"water":"70 g",
		"parts":{"base":{"batter":"400 g","carriers":{"olive":"3.1 g"}},"cloud":{"batter":"300 g"}}}}`,
		`{"formula":"x","oils":[{"oil":"olive","share":"rest"}],"alkali":[{"kind":"sodium-hydroxide","stock":{"strength":"50 %"}}],"superfat":{"at_least":"1 %"},
		"water":{"per_alkali":"2","liquids":[{"liquid":"ale","share":"40 %","water":"95 %"}]},"size":{"batter":"1 kg"},"weighed":{"stage":"lye","water":"0 g","alkali":{"sodium-hydroxide":"500 g"}}}`,
		// every key of the fragrances, in each of its spellings, and the most of one
		`{"formula":"x","oils":[{"oil":"olive","share":"rest"}],"alkali":[{"kind":"sodium-hydroxide","purity":"98 %"}],"superfat":"5 %","water":{"per_alkali":"2"},"size":{"oils":"500 g"},
		"markets":["us"],"materials":[{"fragrance":"pear","natural":true,"complete":true,"certificates":[{"category":"9","limit":"2.4 %","amendment":"49"}],
		"constituents":[{"cas":"97-53-0","share":"1.2 %","natural":false},{"cas":"94-59-7","share":{"low":"0 %","high":"0.1 %"}},{"cas":"57-06-7","share":"1 %"},{"cas":"123-92-2","share":"1 %"}],
		"allergens":["Linalool"],"behaviour":["accelerates","browns"]},{"fragrance":"mix","behaviour":["rices"],"blend":[{"fragrance":"pear","share":"40 %"},{"fragrance":"lime-expressed","share":"60 %"}]}],
		"parts":[{"part":"base","share":"60 %","look":"pale","work":"piped","fragrances":[{"fragrance":"mix","load":"max","margin":"10 %","carrier":{"liquid":"olive","ratio":"2","from":"formula"}},
		{"fragrance":"moonlight","unlisted":true,"load":"1 % of batter"}]},{"part":"cloud","share":"rest","look":"white","fragrances":[{"fragrance":"clove-bud","load":"3 % of oils"}]}]}`,
		// every key of the colours, and loads that are looked for
		`{"formula":"x","oils":[{"oil":"olive","share":"rest"}],"alkali":[{"kind":"sodium-hydroxide","purity":"98 %"}],"superfat":"5 %","water":{"per_alkali":"2"},"size":{"oils":"500 g"},
		"gel":"yes","pigments":[{"colourant":"titanium-dioxide","price":"9 per 100 g"},{"colourant":"dusk","name":"Dusk","ci":["77007","99999"],"density":"2.4 g/mL","disperses_in":["oil"],"nano":true,
		"usual":{"low":"0.5 % of oils","high":"2 % of oils"},"price":"12.40 per 100 g"}],"swatches":` + photographed + `,
		"parts":[{"part":"a","share":"60 %","target":{"lab":[70,0,-12]},"colourants":[{"colourant":"dusk","load":"1 % of batter","carrier":{"liquid":"olive","ratio":"2","paste":true}}],
		"match":[{"colourant":"titanium-dioxide","most":"1 % of oils","carrier":{"liquid":"water","ratio":"2"}}]},{"part":"b","share":"rest","target":{"srgb":"#102030"}}]}`,
		`{"formula":"x","oils":[{"oil":"olive","mass":"0.000000001 g"}],"alkali":[{"kind":"sodium-hydroxide","purity":"98 %"}],"superfat":"5 %","water":{"per_alkali":"2"},
		"parts":[{"part":"a","share":"1 %","fragrances":[{"fragrance":"clove-bud","load":"1 % of oils"}]},{"part":"b","share":"rest"}]}`, // a part of nothing
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		formula, places, err := soap.ParseFormula(text)
		if err != nil {
			mustBeFaults(t, err)
			mustStandIn(t, text, places, err)
			if !reflect.DeepEqual(formula, soap.Formula{}) {
				t.Errorf("a formula beside %v", err)
			}
			return
		}
		if err := formula.Check(); err != nil {
			t.Fatalf("what was read does not pass its check: %v", err)
		}
		batch, err := formula.Batch()
		if err != nil {
			mustBeFaults(t, err)
			mustStandIn(t, text, places, err)
			return
		}
		object, err := batch.MarshalJSON()
		if err != nil || !json.Valid(object) {
			t.Fatalf("%v: %s", err, object)
		}
		caps := batch.Caps()
		object, err = caps.MarshalJSON()
		if err != nil || !json.Valid(object) {
			t.Fatalf("%v: %s", err, object)
		}
		passed, found := false, false
		for _, part := range caps.Parts {
			passed = passed || part.Most.Used.Compare(units.MustRatio("1.0000001")) > 0
		}
		for _, finding := range batch.Findings {
			found = found || finding.Code == "fragrance-over-cap"
		}
		if passed && !found {
			t.Fatalf("a limit is passed and not found: %s", object)
		}
		var batter, poured, dry units.Mass
		outlooks := []soap.Outlook{batch.Superfat}
		if w := batch.Weighed; w != nil {
			outlooks = append(outlooks, w.Superfat)
			for _, part := range w.Parts {
				outlooks = append(outlooks, part.Superfat)
			}
			for _, r := range w.Remedies {
				outlooks = append(outlooks, r.Superfat)
				if r.Oil != "" && w.Stage != soap.AtPot && w.Stage != soap.AtParts || r.Oil == "" && w.Stage != soap.AtLye {
					t.Fatalf("at %s: %+v", w.Stage, r)
				}
			}
		}
		for _, part := range batch.Parts {
			batter, poured, dry = batter.Add(part.Batter), poured.Add(part.Poured), dry.Add(part.Dry)
			outlooks = append(outlooks, part.Superfat)
		}
		for _, o := range outlooks {
			ends := []units.Ratio{o.Low, o.LikelyLow, o.Planned, o.LikelyHigh, o.High}
			for i := 1; i < len(ends); i++ {
				if ends[i-1].Round(9, units.Nearest).Compare(ends[i].Round(9, units.Nearest)) > 0 {
					t.Fatalf("the outlook does not rise: %v", ends)
				}
			}
		}
		inPot := batch.Lye.Mass
		for _, o := range batch.Oils {
			inPot = inPot.Add(o.Mass)
		}
		for _, a := range batch.Acids {
			inPot = inPot.Add(a.Mass)
		}
		for _, l := range batch.Liquids {
			inPot = inPot.Add(l.Mass.Sub(l.Water)) // the water is in the lye
		}
		if batter != batch.Batter || poured != batch.Poured || dry != batch.Dry || inPot != batch.Batter {
			t.Fatalf("mass is lost: batter %v of %v, poured %v of %v, dry %v of %v, in the pot %v", batter, batch.Batter, poured, batch.Poured, dry, batch.Dry, inPot)
		}
		for i, finding := range batch.Findings {
			if line, column := places.Find(finding.Subject); !standsIn(text, line, column) {
				t.Fatalf("%s stands nowhere", finding.Subject)
			}
			if i > 0 && finding.Severity > batch.Findings[i-1].Severity {
				t.Fatalf("%s stands behind %s, which is less grave", finding.Code, batch.Findings[i-1].Code)
			}
		}
	})
}

// mustStandIn checks that what is wrong with a text has a place in it.
func mustStandIn(t *testing.T, text []byte, places soap.Places, err error) {
	t.Helper()
	var faults soap.Faults
	if !errors.As(err, &faults) {
		return
	}
	placed := places.Place(faults)
	if len(placed) != len(faults) {
		t.Errorf("%d faults have %d places", len(faults), len(placed))
	}
	for i, f := range placed {
		if !standsIn(text, f.Line, f.Column) {
			t.Errorf("%+v stands outside of the text", f)
		}
		if i > 0 && (f.Line < placed[i-1].Line || f.Line == placed[i-1].Line && f.Column < placed[i-1].Column) {
			t.Errorf("%+v stands behind what comes after it", f)
		}
	}
}

// standsIn reports whether a place, counted from 1, is in a text or just behind a line.
func standsIn(text []byte, line, column int) bool {
	rows := bytes.Split(text, []byte("\n"))
	return line >= 1 && line <= len(rows) && column >= 1 && column <= len(rows[line-1])+1
}

func mustBeFaults(t *testing.T, err error) {
	t.Helper()
	var faults soap.Faults
	if !errors.As(err, &faults) || len(faults) == 0 {
		t.Fatalf("%T is no list of faults: %v", err, err)
	}
	for _, f := range faults {
		if f.Reason == "" || f.Kind == nil {
			t.Fatalf("a fault without reason or kind: %+v", f)
		}
	}
	object, err := faults.MarshalJSON()
	if err != nil || !json.Valid(object) {
		t.Fatalf("%v: %s", err, object)
	}
}
