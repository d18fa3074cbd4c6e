package soap_test

import (
	"encoding/csv"
	"errors"
	"os"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/soap"
)

// conflicts are names for which a search by letters alone offers something that it could
// be harmful to take: the name, what it means, and what the letters offer.
func conflicts(t *testing.T) [][]string {
	t.Helper()
	file, err := os.Open("testdata/suggestion-conflicts.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows[1:]
}

func TestNoNameIsAnsweredWithOneThatOnlyLooksLikeIt(t *testing.T) {
	tried := 0
	for _, row := range conflicts(t) {
		kind, name := row[0], row[1]
		right := strings.Fields(strings.ReplaceAll(row[2], "(none held)", ""))
		id, err := "", error(nil)
		switch tried++; kind {
		case "oil":
			oil, bad := soap.LookUpOil(name)
			id, err = oil.ID(), bad
		case "fragrance":
			var material fragrance.Material
			if material, err = fragrance.LookUp(name); err == nil {
				id = material.ID()
			}
		default:
			t.Fatalf("%q is no kind that this test knows", kind)
		}
		if err == nil {
			if !slices.Contains(right, id) || strings.Contains(row[2], "(none held)") {
				t.Errorf("%s %q is read as %s, and means %s", kind, name, id, row[2])
			}
			continue
		}
		var fault soap.Fault
		if !errors.As(err, &fault) || !errors.Is(err, soap.ErrUnknown) {
			t.Errorf("%s %q: %v, want a fault", kind, name, err)
			continue
		}
		// Only what the name means may be written in its place.
		for _, word := range strings.FieldsFunc(fault.Remedy, func(r rune) bool { return strings.ContainsRune(" ,;?", r) }) {
			if offered := strings.Fields(row[3]); slices.Contains(offered, word) && !slices.Contains(right, word) {
				t.Errorf("%s %q, which means %s: %s", kind, name, row[2], fault.Remedy)
			}
		}
		for _, id := range right {
			if !strings.Contains(fault.Reason, id) {
				t.Errorf("%s %q: %q does not say %s", kind, name, fault.Reason, id)
			}
		}
	}
	if tried != 80 {
		t.Errorf("%d names were tried", tried)
	}
}

func TestAnOilIsFoundByNamesInEverydayUse(t *testing.T) {
	for _, test := range []struct{ name, id, note string }{
		{"olive", "olive", ""},
		{"Olive", "olive", ""},
		{"olive oil", "olive", ""},
		{"OLIVE OIL", "olive", ""},
		{"Olivenöl", "olive", ""},
		{"olivenol", "olive", ""},
		{"huile d'olive", "olive", ""},
		{"huile d’olive", "olive", ""},
		{"aceite de oliva", "olive", ""},
		{"Olea europaea", "olive", ""},
		{"shea butter", "shea-butter", ""},
		{"shea-butter", "shea-butter", ""},
		{"lanolin", "lanolin", "the old word lanolin meant the hydrous one"},
		{"anhydrous lanolin", "lanolin", ""},
		// Two, planned alike: 196 (the middle of 190 to 202) either.
		{"tallow", "tallow-edible", "beef or mutton"},
	} {
		oil, err := soap.LookUpOil(test.name)
		if err != nil || oil.ID() != test.id {
			t.Errorf("%q is %s, want %s: %v", test.name, oil.ID(), test.id, err)
			continue
		}
		asked := test.name
		if asked == test.id {
			asked = ""
		}
		if oil.Asked() != asked || (oil.NameNote() == "") != (test.note == "") || !strings.Contains(oil.NameNote(),
			test.note) {
			t.Errorf("%q is asked for as %q, with the note %q", test.name, oil.Asked(), oil.NameNote())
		}
	}
}

func TestANameOfSeveralOilsOrOfNoneThatIsHeldIsAnErrorThatSaysSo(t *testing.T) {
	for _, test := range []struct {
		name   string
		reason []string
		remedy string
	}{
		{
			"rape seed",
			[]string{"may mean canola, planned at ", "rapeseed-high-erucic, planned at ", "6 % apart"},
			"write canola or rapeseed-high-erucic, or bring",
		},
		{
			"palm nut oil",
			[]string{"may mean palm, planned at ", "palm-kernel, planned at ", "a fifth apart"},
			"write palm or palm-kernel, or bring",
		},
		{"vegetable oil", []string{"may mean ", "read the label"}, `bring its own "saponification"`},
		{
			"baby oil",
			[]string{"is known, and nothing of it is held", "no fat: takes no alkali"},
			`bring its own "saponification"`,
		},
		{
			"moonlight oil",
			[]string{"is not a built-in oil"},
			`bring its own "saponification" in mg KOH/g, or see the list of oils`,
		},
	} {
		_, err := soap.LookUpOil(test.name)
		var fault soap.Fault
		if !errors.As(err, &fault) || !errors.Is(err, soap.ErrUnknown) || fault.Text != test.name {
			t.Errorf("%q: %v", test.name, err)
			continue
		}
		for _, part := range test.reason {
			if !strings.Contains(fault.Reason, part) {
				t.Errorf("%q: %q lacks %q", test.name, fault.Reason, part)
			}
		}
		if !strings.Contains(fault.Remedy, test.remedy) {
			t.Errorf("%q: %q lacks %q", test.name, fault.Remedy, test.remedy)
		}
	}
}

func TestTwoSpellingsOfOneOilAreTheSameTwice(t *testing.T) {
	for _, lines := range []string{
		`{"oil": "olive", "share": "60 %"}, {"oil": "Olivenöl", "share": "40 %"}`,
		`{"oil": "olive oil", "share": "60 %"}, {"oil": "Olive-Oil", "share": "40 %"}`,
	} {
		_, faults := read(t, plainFormula().with("oils", lines).text())
		if len(faults) != 1 || faults[0].Path != "oils[1].oil" || !errors.Is(faults[0].Kind, soap.ErrConflict) {
			t.Errorf("%s: %v", lines, faults)
		}
	}
	weighed := `{"stage": "pot", "oils": {"olive": "500 g", "Olive oil": "510 g"}}`
	_, faults := read(t, plainFormula().with("oils", `{"oil": "olive", "share": "100 %"}`).with("weighed", weighed).text())
	if len(faults) != 1 || !strings.Contains(faults[0].Reason, "stands twice") {
		t.Errorf("%v", faults)
	}
}

// A name is the formula's own before it is a built-in one.
func TestAnOilOfTheFormulasOwnIsMeantFirst(t *testing.T) {
	f, faults := read(t, plainFormula().with("oils",
		`{"oil": "Olive oil", "share": "100 %", "saponification": {"low": "180", "high": "190"}}`).
		with("parts", part("1 g", `{"liquid": "olive oil", "ratio": "2"}`)).text())
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	if oil := f.Oils[0].Oil; oil.ID() != "Olive oil" || oil.BuiltIn() {
		t.Errorf("%s, built in: %t", oil.ID(), oil.BuiltIn())
	}
	carrier := f.Parts[0].Colourants[0].Carrier.Oil
	// the middle of 180 and 190
	if got := carrier.Saponification().Plan().MilligramsPerGramText(3); carrier.ID() != "Olive oil" || got != "185" {
		t.Errorf("the carrier is %s at %s", carrier.ID(), got)
	}
}

// Whatever it is called, an oil is weighed, and its carriers and weighings are found.
func TestABatchSaysWhatAnOilWasCalledAndWhatItIs(t *testing.T) {
	text := plainFormula().with("oils", `{"oil": "Olivenöl", "share": "60 %"}, {"oil": "tallow", "share": "40 %"}`).
		with("parts", part("1 g", `{"liquid": "huile d'olive", "ratio": "2"}`)).
		with("weighed", `{"stage": "pot", "oils": {"Olive": "601 g"}}`).text()
	f, faults := read(t, text)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	b, err := f.Batch()
	if err != nil {
		t.Fatal(err)
	}
	var said []string
	for _, finding := range b.Findings {
		if finding.Code == "name-note" {
			said = append(said, finding.Subject+": "+finding.Message())
		}
	}
	want := []string{
		`oils[0]: The name "Olivenöl" is read as olive.`,
		`oils[1]: The name "tallow" is read as tallow-edible, with this note: beef or mutton, kidney fat (premier jus) or any: saponification value 190-202, the range covers all.`,
		`parts[0].colourants[0].carrier: The name "huile d'olive" is read as olive.`,
	}
	if !slices.Equal(said, want) {
		t.Errorf("%s\nwant %s", strings.Join(said, "\n"), strings.Join(want, "\n"))
	}
	object, err := b.MarshalJSON()
	if err != nil || !strings.Contains(string(object), `"asked":"Olivenöl"`) {
		t.Errorf("%v: no name in %.300s", err, object)
	}
}
