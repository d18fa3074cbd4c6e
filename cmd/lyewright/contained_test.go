package main

import (
	"bytes"
	"encoding/json"
	"io"
	"os"
	"strings"
	"testing"

	"example.com/lyewright/soap"
)

// A stream of three lines, and the program fails on the second: an error/1 object stands in
// its place, the other two are answered, and the largest exit status says so.
func TestAPanicTakesNoOtherLineWithIt(t *testing.T) {
	good, err := os.ReadFile("../../testdata/formulas/single-bar.json")
	if err != nil {
		t.Fatal(err)
	}
	var line bytes.Buffer
	if err := json.Compact(&line, good); err != nil {
		t.Fatal(err)
	}
	b := &bundle{first: 1, lines: [][]byte{line.Bytes(), []byte("fails"), line.Bytes()}}
	answers := b.work(func(text []byte) answer {
		if string(text) == "fails" {
			panic("index out of range")
		}
		return answerOf(text, batchOptions{json: true})
	})
	if len(answers) != 3 {
		t.Fatalf("%d answers", len(answers))
	}
	for i, a := range answers {
		var object bytes.Buffer
		if err := a.writeObject(&object, "lantern.ndjson"); err != nil {
			t.Fatal(err)
		}
		var read struct {
			Schema string
			Errors []struct{ Text, Reason, Remedy, Kind string }
			Line   int `json:"input_line"`
		}
		if err := json.Unmarshal(object.Bytes(), &read); err != nil || read.Line != i+1 {
			t.Fatalf("line %d: %v in %s", i+1, err, object.Bytes())
		}
		if want := []string{"batch/1", "error/1", "batch/1"}[i]; read.Schema != want {
			t.Errorf("line %d is %s, want %s", i+1, read.Schema, want)
		}
		if i == 1 && (len(read.Errors) != 1 || !strings.Contains(read.Errors[0].Reason, "a mistake of the program") ||
			!strings.Contains(read.Errors[0].Remedy, "weigh nothing by it")) {
			t.Errorf("it says %+v", read.Errors)
		}
		if i == 1 && len(read.Errors) == 1 && read.Errors[0].Kind != "internal" {
			t.Errorf("its kind is %q", read.Errors[0].Kind)
		}
		if (a.status == 4) != (i == 1) {
			t.Errorf("line %d ends with %d", i+1, a.status)
		}
	}
}

// bomb is an input on which the program fails.
type bomb struct{}

func (bomb) Read([]byte) (int, error) { panic("lantern") }

func TestWhatFailsOnAFileIsSaid(t *testing.T) {
	for _, verb := range []string{"batch", "check"} {
		var out, said bytes.Buffer
		var input io.Reader = bomb{}
		if verb == "batch" { // a first line is looked at, to see whether there are many
			input = io.MultiReader(strings.NewReader("{\n"+strings.Repeat(" ", 1<<17)), bomb{})
		}
		status := run([]string{verb, "-"}, input, &out, &said)
		if all := out.String() + said.String(); status != 4 || !strings.Contains(all, `"lantern" stopped the program`) {
			t.Errorf("%s: status %d, %s", verb, status, all)
		}
		if verb == "check" && !strings.Contains(out.String(), "error internal file:") {
			t.Errorf("check says %s", out.String())
		}
	}
}

// A finding of this code without a name has no sentence, and the program fails where check writes it. The line of
// the file says so, with no line of a batch beside it, and other files are checked all the same.
func TestAFindingWithoutASentenceTakesNoOtherFileWithIt(t *testing.T) {
	const name = "lantern.json"
	a := checked(name, func() (soap.Batch, soap.Places, soap.Faults) {
		return soap.Batch{Findings: []soap.Finding{{Code: "potassium-only", Subject: "alkali"}, {
			Code:    "fragrance-behaviour",
			Subject: "parts[0]",
		}}}, soap.Places{}, nil
	})
	lines := strings.Split(strings.TrimSuffix(string(a.out), "\n"), "\n")
	if a.status != 4 || len(lines) != 1 || !strings.HasPrefix(lines[0], name+":") || !strings.Contains(lines[0],
		"error internal file: ") || !strings.Contains(lines[0], "weigh nothing by it") {
		t.Errorf("status %d, %q", a.status, a.out)
	}
	// One that has its sentence is told, with the status of a batch in order.
	a = checked(name, func() (soap.Batch, soap.Places, soap.Faults) {
		return soap.Batch{Findings: []soap.Finding{{Code: "potassium-only", Subject: "alkali"}}}, soap.Places{}, nil
	})
	if a.status != 0 || !strings.HasPrefix(string(a.out), name+":") || !strings.Contains(string(a.out),
		"note potassium-only alkali: ") {
		t.Errorf("status %d, %q", a.status, a.out)
	}
}
