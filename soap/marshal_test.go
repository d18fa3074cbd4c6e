package soap_test

import (
	"bytes"
	"encoding/gob"
	"encoding/json"
	"log/slog"
	"reflect"
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// 118.1 g of sodium hydroxide are in the jug. Saved and read again they are still there;
// read back as 0 g, the maker is told to add 118.1 g more.
func TestWhatIsInTheJugComesBack(t *testing.T) {
	weighed := soap.Weighed{
		Stage:   soap.AtLye,
		Oils:    []soap.WeighedOil{{Oil: "olive", Mass: units.Grams(800)}},
		Alkalis: []soap.WeighedAlkali{{Alkali: soap.SodiumHydroxide, Mass: units.Milligrams(118_100)}},
		Water:   soap.Read(units.Mass{}),
	}
	text, err := json.Marshal(weighed)
	if err != nil || !strings.Contains(string(text), `"Mass":"118.1 g"`) {
		t.Fatalf("%s, %v", text, err)
	}
	var read soap.Weighed
	if err := json.Unmarshal(text, &read); err != nil || !reflect.DeepEqual(read, weighed) {
		t.Errorf("%s comes back as %+v, %v", text, read, err)
	}
	var stream bytes.Buffer
	if err := gob.NewEncoder(&stream).Encode(weighed); err != nil {
		t.Fatal(err)
	}
	read = soap.Weighed{}
	if err := gob.NewDecoder(&stream).Decode(&read); err != nil || !reflect.DeepEqual(read, weighed) {
		t.Errorf("through gob it is %+v, %v", read, err)
	}
	old := strings.ReplaceAll(string(text), `"118.1 g"`, "{}") // as it was written before masses had a text
	if err := json.Unmarshal([]byte(old), &read); err == nil {
		t.Errorf("%s is read as %+v", old, read)
	}
}

// A formula and a batch are refused with a sentence that says what to do, and a log of text
// says so, too.
func TestWhatHasAFileOfItsOwnIsNotWrittenBesideIt(t *testing.T) {
	formula, _, err := soap.ParseFormula([]byte(`{"formula": "Lantern walk bars", "oils": [{"oil": "olive", "share": "100 %"}],
		"alkali": [{"kind": "sodium-hydroxide", "purity": {"low": "97 %", "high": "99 %"}}], "superfat": "5 %", "water": {"per_alkali": "2"}, "size": {"oils": "500 g"}}`))
	if err != nil {
		t.Fatal(err)
	}
	batch, err := formula.Batch()
	if err != nil {
		t.Fatal(err)
	}
	object, err := json.Marshal(batch)
	if err != nil {
		t.Fatal(err)
	}
	_, formulaError := json.Marshal(formula)
	_, lastError := json.Marshal([]soap.Formula{formula})
	var gobbed bytes.Buffer
	for name, c := range map[string]struct {
		err  error
		want string
	}{
		"a formula written":          {formulaError, "keep the formula file"},
		"a list of formulas written": {lastError, "keep the formula file"},
		"a formula read": {json.Unmarshal([]byte(`{"formula": "Lantern walk bars", "superfat": "5 %"}`),
			&soap.Formula{}), "ReadFormula"},
		"a formula through gob": {gob.NewEncoder(&gobbed).Encode(formula), "keep the formula file"},
		"a batch read":          {json.Unmarshal(object, &soap.Batch{}), "Formula.Batch"},
		"a batch through gob":   {gob.NewEncoder(&gobbed).Encode(batch), "Formula.Batch"},
		"caps read":             {json.Unmarshal([]byte(`{}`), &soap.Caps{}), "Batch.Caps"},
		"a tint read":           {json.Unmarshal([]byte(`{}`), &soap.Tint{}), "Batch.Tint"},
		"an oil read":           {json.Unmarshal([]byte(`{"oil": "olive"}`), &soap.Oil{}), "LookUpOil"},
		"what is weighed of a part": {
			json.Unmarshal([]byte(`{"Name": "lantern pear"}`), &soap.AdditionWeighing{}),
			"Formula.Batch",
		},
		"a part through gob": {gob.NewEncoder(&gobbed).Encode(soap.PartBatch{Additions: make([]soap.AdditionWeighing,
			1)}), "Formula.Batch"},
		"the last batch, through gob": {gob.NewEncoder(&gobbed).Encode(soap.LastBatch{}), "Formula.Batch"},
		"faults read": {
			json.Unmarshal([]byte(`{"schema": "error/1", "errors": []}`), &soap.Faults{}),
			"check the input",
		},
		"a formula in a batch of them": {json.Unmarshal([]byte(`[{"oils": []}]`), &[]soap.Formula{}), "ParseFormula"},
	} {
		if c.err == nil || !strings.Contains(c.err.Error(), c.want) {
			t.Errorf("%s: %v, want a word of %s", name, c.err, c.want)
		}
	}
	var log bytes.Buffer
	logger := slog.New(slog.NewTextHandler(&log, nil))
	logger.Info("as text", "formula", formula)
	logger.Info("as text", "batch", batch)
	lines := strings.Split(log.String(), "\n")
	if !strings.Contains(lines[0], "keep the formula file") || !strings.Contains(lines[1], `{\"schema\":\"batch/1\"`) {
		t.Errorf("%s", log.String())
	}
}
