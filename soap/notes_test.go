package soap_test

import (
	"encoding/json"
	"errors"
	"os"
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// noted is a formula with a note wherever one may stand, each its own.
func noted() pieces {
	return pieces{
		"note":     `"for the hall"`,
		"oils":     `{"oil": "olive", "share": "70 %", "note": "tin by the door"}, {"oil": "coconut", "share": "rest"}`,
		"alkali":   `{"kind": "sodium-hydroxide", "purity": {"low": "97 %", "high": "99 %"}, "note": "opened in May"}`,
		"superfat": `"5 %"`,
		"water":    `{"lye_concentration": "33 %"}`,
		"size":     `{"vessels": [{"vessel": "cup", "part": "glow", "count": 12, "volume": "45 mL", "note": "the blue set"}]}`,
		"parts": `{"part": "glow", "note": "stir by hand", "colourants": [{"colourant": "mica", "load": "1 g", "note": "sift it"}],
			"fragrances": [{"fragrance": "lavender", "load": "2 g", "note": "lot 12"}], "additives": [{"additive": "fine salt", "load": "1 g", "note": "dry it"}]}`,
	}
}

// A note stands in the JSON beside its line, and changes nothing else.
func TestANoteStandsBesideItsLineAndChangesNothing(t *testing.T) {
	text := noted().text()
	plain := text
	for _, note := range []string{
		"for the hall", "tin by the door", "opened in May", "the blue set", "stir by hand",
		"sift it", "lot 12", "dry it",
	} {
		plain = strings.Replace(plain, `, "note": "`+note+`"`, "", 1)
	}
	if strings.Contains(plain, "note") {
		t.Fatal(plain)
	}
	object := func(text string) map[string]any {
		f, err := soap.ReadFormula(strings.NewReader(text))
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		b, err := f.Batch()
		if err != nil {
			t.Fatal(err)
		}
		out, err := b.MarshalJSON()
		if err != nil {
			t.Fatal(err)
		}
		var tree map[string]any
		if err := json.Unmarshal(out, &tree); err != nil {
			t.Fatal(err)
		}
		return tree
	}
	with, without := object(text), object(plain)
	took := map[string]string{}
	take := func(where string, of any) {
		line := of.(map[string]any)
		took[where], _ = line["note"].(string)
		delete(line, "note")
	}
	first := func(of map[string]any, list string, i int) any { return of[list].([]any)[i] }
	part := first(with, "parts", 0).(map[string]any)
	take("formula", with)
	take("olive", first(with, "oils", 0))
	take("coconut", first(with, "oils", 1))
	take("alkali", first(with, "alkali", 0))
	take("part", part)
	take("mica", first(part, "additions", 0))
	take("lavender", first(part, "additions", 1))
	take("salt", first(part, "additions", 2))
	take("cup", first(with, "pieces", 0))
	for where, want := range map[string]string{
		"formula": "for the hall", "olive": "tin by the door", "coconut": "", "alkali": "opened in May",
		"part": "stir by hand",
		"mica": "sift it", "lavender": "lot 12", "salt": "dry it", "cup": "the blue set",
	} {
		if took[where] != want {
			t.Errorf("%s: %q, want %q", where, took[where], want)
		}
	}
	a, errA := json.Marshal(with)
	b, errB := json.Marshal(without)
	if errA != nil || errB != nil || string(a) != string(b) {
		t.Errorf("without its notes\n%s\nthe same formula without notes\n%s", a, b)
	}
}

// 1 to 500 bytes, with the characters of a name, in a file and in Go.
func TestANoteHasTheBoundsAndCharactersOfItsKind(t *testing.T) {
	for note, want := range map[string]string{
		strings.Repeat("a", 500):       "",
		strings.Repeat("a", 501):       "is 501 bytes long",
		strings.Repeat("ä", 250):       "", // two bytes each
		strings.Repeat("ä", 250) + "a": "is 501 bytes long",
		"  ":                           "is blank",
		`two\nlines`:                   "has ",
		`\u202eback`:                   "has ",
		`"quoted\" and <b>`:            "",
	} {
		note = strings.TrimPrefix(note, `"`)
		for place, path := range map[string]string{
			"for the hall": "note", "tin by the door": "oils[0].note", "opened in May": "alkali[0].note",
			"the blue set": "size.vessels[0].note",
			"stir by hand": "parts[0].note", "sift it": "parts[0].colourants[0].note", "lot 12": "parts[0].fragrances[0].note",
			"dry it": "parts[0].additives[0].note",
		} {
			_, _, err := soap.ParseFormula([]byte(strings.Replace(noted().text(), `"`+place+`"`, `"`+note+`"`, 1)))
			noteFault(t, err, path, want)
		}
	}
	_, _, err := soap.ParseFormula([]byte(strings.Replace(noted().text(), "sift it", "", 1)))
	noteFault(t, err, "parts[0].colourants[0].note", "is empty")

	read := func() soap.Formula {
		f, err := soap.ReadFormula(strings.NewReader(noted().text()))
		if err != nil {
			t.Fatal(err)
		}
		return f
	}
	for note, want := range map[string]string{
		strings.Repeat("a", 501): "is 501 bytes long", strings.Repeat("a", 500): "",
		" ": "is blank", "a\nb": "has ", "\xff": "is not UTF-8", "": "",
	} {
		for path, set := range map[string]func(f *soap.Formula){
			"note":                        func(f *soap.Formula) { f.Note = note },
			"oils[1].note":                func(f *soap.Formula) { f.Oils[1].Note = note },
			"alkali[0].note":              func(f *soap.Formula) { f.Alkalis[0].Note = note },
			"size.vessels[0].note":        func(f *soap.Formula) { f.Size.Vessels[0].Note = note },
			"parts[0].note":               func(f *soap.Formula) { f.Parts[0].Note = note },
			"parts[0].fragrances[0].note": func(f *soap.Formula) { f.Parts[0].Fragrances[0].Note = note },
		} {
			f := read()
			set(&f)
			noteFault(t, f.Check(), path, want)
		}
	}
}

// noteFault holds that a note is refused for a reason at a path, or "" that it is taken.
func noteFault(t *testing.T, err error, path, want string) {
	t.Helper()
	var faults soap.Faults
	if want == "" && err != nil || want != "" && !errors.As(err, &faults) {
		t.Errorf("%s: %v, want %q", path, err, want)
		return
	}
	if want != "" && (len(faults) != 1 || faults[0].Path != path || !strings.HasPrefix(faults[0].Reason, want)) {
		t.Errorf("%s: %+v, want %q", path, faults, want)
	}
}

// A vessel is found by its name.
func TestAVesselIsFoundByItsName(t *testing.T) {
	f, err := soap.ReadFormula(strings.NewReader(noted().text()))
	if err != nil {
		t.Fatal(err)
	}
	if v := f.VesselNamed("cup"); v.Count != 12 || v.Note != "the blue set" {
		t.Errorf("%+v", v)
	}
	if v := f.VesselNamed("loaf"); v.Name != "" || v.Shape != nil {
		t.Errorf("%+v", v)
	}
}

// What may be noted keeps its note where loads are looked for, and the most.
func TestNotesOutliveTheSearchForLoads(t *testing.T) {
	text, err := os.ReadFile("../testdata/names/every-name.json")
	if err != nil {
		t.Fatal(err)
	}
	f, _, err := soap.ParseFormula(text)
	if err != nil {
		t.Fatal(err)
	}
	b, err := f.Batch()
	if err != nil {
		t.Fatal(err)
	}
	if b.Formula.Note != "for the hall, by the east door" || b.Oils[0].Note != "the tin behind the door" ||
		b.Alkalis[0].Note != "opened in May" || b.Parts[0].Note != "stir by hand" ||
		b.Parts[0].Additions[1].Note != "sift it twice" {
		t.Errorf("%q, %q, %q, %q, %+v", b.Formula.Note, b.Oils[0].Note, b.Alkalis[0].Note, b.Parts[0].Note,
			b.Parts[0].Additions)
	}
	most := f
	most.Parts[0].Fragrances[0].Load = soap.Load{Max: true}
	if b, err = most.Batch(); err != nil || b.Parts[0].Additions[1].Note != "sift it twice" ||
		b.Parts[0].Additions[2].Mass.Compare(units.Mass{}) <= 0 {
		t.Errorf("%v: %+v", err, b.Parts)
	}
}
