package fault_test

import (
	"encoding/json"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/lyewright/units/fault"
)

// Faults quote what a stranger wrote. As JSON they read back as they were; as a line of
// text they stay one line, however long or odd the quoted text.
func FuzzFaultsAsJSON(f *testing.F) {
	f.Add("oils[0].oil", "olvie", 3, 14) // as most are
	f.Fuzz(func(t *testing.T, path, text string, line, column int) {
		const reason, remedy = "is not a known oil", "did you mean olive?"
		placed := fault.Fault{
			Path: path, Text: text, Reason: reason, Remedy: remedy, Line: line, Column: column,
			Kind: fault.ErrUnknown,
		}
		faults := fault.Faults{placed, {Path: path, Reason: reason, Kind: fault.ErrMissing}}
		object, err := faults.MarshalJSON()
		if err != nil {
			t.Fatal(err)
		}
		type one struct {
			Path, Text, Reason, Remedy, Message, Kind *string
			Line, Column                              *int
		}
		var got struct {
			Schema string
			Errors []one
		}
		decoder := json.NewDecoder(strings.NewReader(string(object)))
		decoder.DisallowUnknownFields()
		if err := decoder.Decode(&got); err != nil || got.Schema != "error/1" || len(got.Errors) != 2 {
			t.Fatalf("%v: %s", err, object)
		}
		for i, want := range faults {
			read := got.Errors[i]
			for _, pair := range []struct {
				got  *string
				want string
			}{
				{read.Path, want.Path},
				{read.Text, want.Text},
				{read.Reason, want.Reason},
				{read.Remedy, want.Remedy},
				{read.Message, want.Message()},
				{read.Kind, want.Word()},
			} {
				if pair.got == nil || *pair.got != string([]rune(pair.want)) {
					t.Errorf("%q came back otherwise: %s", pair.want, object)
				}
			}
			placed := want.Line > 0 // without a file there is no place
			if (read.Line != nil) != placed || (read.Column != nil) != placed || placed && (*read.Line != want.Line ||
				*read.Column != want.Column) {
				t.Errorf("%d:%d came back otherwise: %s", want.Line, want.Column, object)
			}
		}
		sentence := placed.Sentence()
		odd := func(r rune) bool { return r < ' ' || r == 0x7f || r == '\u2028' || r == '\u202e' }
		if strings.ContainsFunc(sentence, odd) || len(sentence) > 300 {
			t.Errorf("%q is said as %q", text, sentence)
		}
		said := faults.Error()
		if strings.ContainsFunc(strings.Replace(said, "\n", "", 1), odd) || !utf8.ValidString(said) ||
			len(said) > 2*(10*len(path)+300) {
			t.Errorf("%q, %q: said as %q", path, text, said)
		}
		if strings.Count(said, reason) < 2 {
			t.Errorf("not each fault is said: %q", said)
		}
	})
}
