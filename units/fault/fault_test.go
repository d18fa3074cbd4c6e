package fault_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
	"github.com/google/go-cmp/cmp"
)

var share = fault.Fault{
	Path: "oils[1].share", Text: "120 %", Reason: "is above 100 %", Remedy: "write what it is of the oils", Line: 3,
	Column: 14, Kind: fault.ErrRange,
}

func TestAFaultSaysWhereWhatAndWhatWouldBeRight(t *testing.T) {
	without := func(change func(*fault.Fault)) fault.Fault {
		f := share
		change(&f)
		return f
	}
	for _, c := range []struct {
		fault           fault.Fault
		error, sentence string
	}{
		{
			share, `3:14: oils[1].share: "120 %" is above 100 %; write what it is of the oils`,
			`"120 %" is above 100 %; write what it is of the oils`,
		},
		{
			without(func(f *fault.Fault) { f.Line, f.Column = 0, 0 }),
			`oils[1].share: "120 %" is above 100 %; write what it is of the oils`,
			`"120 %" is above 100 %; write what it is of the oils`,
		},
		{
			without(func(f *fault.Fault) { f.Path = "" }), `3:14: "120 %" is above 100 %; write what it is of the oils`,
			`"120 %" is above 100 %; write what it is of the oils`,
		},
		{
			without(func(f *fault.Fault) { f.Text, f.Reason = "", "is missing" }),
			`3:14: oils[1].share: is missing; write what it is of the oils`, `is missing; write what it is of the oils`,
		},
		{
			without(func(f *fault.Fault) { f.Remedy = "" }), `3:14: oils[1].share: "120 %" is above 100 %`,
			`"120 %" is above 100 %`,
		},
		{fault.Fault{Reason: "is wrong"}, "is wrong", "is wrong"},
	} {
		if got := c.fault.Error(); got != c.error {
			t.Errorf("%s, want %s", got, c.error)
		}
		if got := c.fault.Sentence(); got != c.sentence {
			t.Errorf("%s, want %s", got, c.sentence)
		}
	}
}

func TestALongTextIsCutAndEscaped(t *testing.T) {
	f := fault.Fault{Text: strings.Repeat("o", 1<<20) + "\x00", Reason: "is wrong"}
	if got := f.Error(); len(got) > 100 || !strings.Contains(got, "…") {
		t.Errorf("%d bytes", len(got))
	}
	f.Text = "a\nb\x00"
	if got, want := f.Error(), `"a\nb\x00" is wrong`; got != want {
		t.Errorf("%s, want %s", got, want)
	}
}

func TestKindsAreFoundThroughFaults(t *testing.T) {
	var faults fault.Faults
	if err := faults.OrNil(); err != nil {
		t.Errorf("no faults are the error %v", err)
	}
	faults.Add("water", "", "is missing", "give it", fault.ErrMissing)
	faults.Add("sample", "5 mL", "is a volume", "weigh it", units.ErrUnit)
	err := faults.OrNil()
	for _, kind := range []error{fault.ErrMissing, units.ErrUnit} {
		if !errors.Is(err, kind) {
			t.Errorf("%v is not found", kind)
		}
	}
	for _, kind := range []error{
		fault.ErrUnknown, fault.ErrConflict, fault.ErrRange, fault.ErrFormat, fault.ErrImpossible,
		units.ErrSize,
	} {
		if errors.Is(err, kind) {
			t.Errorf("%v is found", kind)
		}
	}
	wrapped := fmt.Errorf("lantern walk: %w", err)
	var got fault.Faults
	if !errors.As(wrapped, &got) || len(got) != 2 || got[1].Path != "sample" {
		t.Errorf("%v", got)
	}
	if n := len(faults.Unwrap()); n != 2 {
		t.Errorf("%d errors, want 2", n)
	}
	if !errors.Is(faults[0], fault.ErrMissing) || errors.Is(faults[0], units.ErrUnit) {
		t.Errorf("%v", faults[0])
	}
	if got, want := err.Error(), "water: is missing; give it\nsample: \"5 mL\" is a volume; weigh it"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
}

// A message is a sentence without what stands around it: it has a subject and an end.
func TestTheMessageOfAFaultStandsAlone(t *testing.T) {
	for _, c := range []struct {
		fault fault.Fault
		want  string
	}{
		{share, `In oils[1].share, "120 %" is above 100 %; write what it is of the oils.`},
		{
			fault.Fault{Path: "water", Reason: "is missing", Remedy: "say how much water"},
			"water is missing; say how much water.",
		},
		{
			fault.Fault{Path: "oils[0].oil", Text: "oliv", Reason: "is not a built-in oil", Remedy: "did you mean olive?"},
			`In oils[0].oil, "oliv" is not a built-in oil; did you mean olive?`,
		},
		{fault.Fault{Text: "oliv", Reason: "is not a built-in oil"}, `"oliv" is not a built-in oil.`},
		{fault.Fault{Reason: "is empty", Remedy: "write a formula"}, "The input is empty; write a formula."},
		{fault.Fault{Path: "a\nb", Reason: "is not a key of a formula"}, `a\nb is not a key of a formula.`},
	} {
		if got := c.fault.Message(); got != c.want {
			t.Errorf("%s, want %s", got, c.want)
		}
	}
}

// The words are those of the format; no other kind has one.
func TestEveryKindHasItsWord(t *testing.T) {
	for kind, want := range map[error]string{
		fault.ErrUnknown: "unknown", fault.ErrMissing: "missing", fault.ErrRange: "range", fault.ErrFormat: "syntax",
		fault.ErrConflict: "conflict", fault.ErrImpossible: "impossible", fault.ErrLimit: "limit",
		fault.ErrInternal: "internal",
		units.ErrSyntax:   "syntax", units.ErrUnit: "syntax", units.ErrSize: "range", errors.ErrUnsupported: "", nil: "",
	} {
		if got := (fault.Fault{Reason: "is wrong", Kind: kind}).Word(); got != want {
			t.Errorf("%v: %q, want %q", kind, got, want)
		}
	}
	var faults fault.Faults
	faults.Add("", "", "cannot be read", "", errors.ErrUnsupported)
	if text, err := faults.MarshalJSON(); err != nil || strings.Contains(string(text), `"kind"`) {
		t.Errorf("%v: %s", err, text)
	}
}

func TestFaultsAreOneObjectOfJSON(t *testing.T) {
	var faults fault.Faults
	faults.Add("water", "", "is missing", "", fault.ErrMissing)
	text, err := json.Marshal(append(faults, share))
	if err != nil {
		t.Fatal(err)
	}
	var got, want any
	if err := json.Unmarshal(text, &got); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal([]byte(`{"schema": "error/1", "errors": [
		{"path": "water", "text": "", "reason": "is missing", "remedy": "", "message": "water is missing.", "kind": "missing"},
		{"path": "oils[1].share", "text": "120 %", "reason": "is above 100 %", "remedy": "write what it is of the oils",
		 "message": "In oils[1].share, \"120 %\" is above 100 %; write what it is of the oils.", "kind": "range", "line": 3, "column": 14}
	]}`), &want); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}
