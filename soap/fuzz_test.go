package soap_test

import (
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

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
			if len(text) < 10_000 {
				f.Add(text)
			}
		}
	}
	for _, seed := range []string{
		`{"formula":"\ud83d"}`,                            // half of a pair
		`{"oils":[{"oil":"x","profile":{"C18:1":"0%"}}]}`, // a composition of nothing
		`{"size":{"oils":"0.0000000001 g"}}`,              // less than a nanogram
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		formula, places, err := soap.ParseFormula(text)
		if err != nil {
			mustBeFaults(t, err)
			return
		}
		if err := formula.Check(); err != nil {
			t.Fatalf("what was read does not pass its check: %v", err)
		}
		batch, err := formula.Batch()
		if err != nil {
			mustBeFaults(t, err)
			return
		}
		object, err := batch.MarshalJSON()
		if err != nil || !json.Valid(object) {
			t.Fatalf("%v: %s", err, object)
		}
		var batter, poured, dry units.Mass
		for _, part := range batch.Parts {
			batter, poured, dry = batter.Add(part.Batter), poured.Add(part.Poured), dry.Add(part.Dry)
			for _, o := range []soap.Outlook{part.Superfat, batch.Superfat} {
				ends := []units.Ratio{o.Low, o.LikelyLow, o.Planned, o.LikelyHigh, o.High}
				for i := 1; i < len(ends); i++ {
					if ends[i-1].Round(9, units.Nearest).Compare(ends[i].Round(9, units.Nearest)) > 0 {
						t.Fatalf("the outlook does not rise: %v", ends)
					}
				}
			}
		}
		inPot := batch.Lye.Mass
		for _, o := range batch.Oils {
			inPot = inPot.Add(o.Mass)
		}
		if batter != batch.Batter || poured != batch.Poured || dry != batch.Dry || inPot != batch.Batter {
			t.Fatalf("mass is lost: batter %v of %v, poured %v of %v, dry %v of %v, in the pot %v", batter, batch.Batter, poured, batch.Poured, dry, batch.Dry, inPot)
		}
		for _, finding := range batch.Findings {
			if line, column := places.Find(finding.Subject); line < 1 || column < 1 {
				t.Fatalf("%s stands nowhere", finding.Subject)
			}
		}
	})
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
