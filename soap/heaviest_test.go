package soap_test

import (
	"encoding/json"
	"os"
	"testing"

	"example.com/lyewright/internal/madeup"
	"example.com/lyewright/soap"
)

// heaviest are the settings of formulas that cost the most of their kind, of all that lists and totals allow: what a
// search found, see TestSearchForTheHeaviestFormulas.
var heaviest = readHeaviest()

const heaviestFile = "../testdata/heaviest.json"

func readHeaviest() (all map[string]madeup.Heavy) {
	text, err := os.ReadFile(heaviestFile)
	if err == nil {
		err = json.Unmarshal(text, &all)
	}
	if err != nil {
		panic(err)
	}
	return all
}

// mustHeavy reads such a formula and works it out.
func mustHeavy(t testing.TB, heavy madeup.Heavy) (soap.Formula, soap.Batch) {
	t.Helper()
	f, _, err := soap.ParseFormula(heavy.Text())
	if err != nil {
		t.Fatalf("%.300v", err)
	}
	b, err := f.Batch()
	if err != nil {
		t.Fatalf("%.300v", err)
	}
	return f, b
}
