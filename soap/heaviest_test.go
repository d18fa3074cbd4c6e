package soap_test

import (
	"encoding/json"
	"os"

	"example.com/lyewright/internal/madeup"
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
