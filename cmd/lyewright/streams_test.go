package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"
)

// full takes so many bytes and then no more, as a disk does.
type full struct {
	left    int
	written strings.Builder
}

func (f *full) Write(p []byte) (int, error) {
	n := min(f.left, len(p))
	f.left -= n
	f.written.Write(p[:n])
	if n < len(p) {
		return n, errors.New("no space left")
	}
	return n, nil
}

func TestAResultCutShortAnywhereIsExit3(t *testing.T) {
	lantern := formulas + "/lantern-walk.json"
	for _, args := range [][]string{
		{"batch", lantern},
		{"batch", "-working", lantern},
		{"batch", "-json", lantern},
		{"batch", lantern, lantern},
		{"batch", "-json", lantern, lantern},
		{"batch", "-json", formulas + "/wrong/zero-mass.json", lantern},
		{"check", lantern},
		{"oils", "olive"},
		{"oils", "-json"},
		{"lye", "density", "-strength", "33 %", "-temperature", "40 °C"},
		{"lye", "density", "-strength", "33 %", "-temperature", "40 °C", "-json"},
		{"lye", "-h"},
		{"help", "formula"},
		{"batch", "-h"},
	} {
		whole, _, _ := lyewright("", args...)
		for _, room := range []int{0, 1, len(whole) / 2, len(whole) - 1} {
			var stderr strings.Builder
			out := &full{left: room}
			status := run(args, strings.NewReader(""), out, &stderr)
			if status != cannotIO || !strings.Contains(stderr.String(), "the result cannot be written: no space left") {
				t.Errorf("%v with room for %d bytes: exit %d, %q", args, room, status, stderr.String())
			}
			if got := out.written.String(); got != whole[:len(got)] {
				t.Errorf("%v with room for %d bytes: wrote something else", args, room)
			}
		}
		var stderr strings.Builder
		if status := run(args, strings.NewReader(""), &full{left: len(whole)}, &stderr); status == cannotIO {
			t.Errorf("%v with just enough room: exit %d, %q", args, status, stderr.String())
		}
	}
}

func TestAMessageThatCannotBeWrittenIsExit3(t *testing.T) {
	wrong, lantern := formulas+"/wrong/zero-mass.json", formulas+"/lantern-walk.json"
	for _, args := range [][]string{
		{},
		{"bacth"},
		{"batch"},
		{"batch", "-jsno"},
		{"batch", "-json"},
		{"batch", wrong},
		{"batch", "-json", wrong},
		{"batch", wrong, lantern},
		{"batch", "none.json"},
		{"check", "none.json"},
		{"oils", "olvie"},
		{"oils", "-json", "olvie"},
		{"lye"},
		{"lye", "dencity"},
		{"lye", "density", "-json"},
		{"help", "formla"},
	} {
		var stdout strings.Builder
		if status := run(args, strings.NewReader(""), &stdout, fails{}); status != cannotIO {
			t.Errorf("%v: exit %d", args, status)
		}
	}
	// where nothing has to be said, a broken standard error does no harm
	var stdout strings.Builder
	if status := run([]string{"batch", lantern}, strings.NewReader(""), &stdout, fails{}); status != done || stdout.Len() == 0 {
		t.Errorf("nothing to say: exit %d", status)
	}
	if status := run([]string{"batch", lantern}, strings.NewReader(""), fails{}, fails{}); status != cannotIO {
		t.Errorf("both broken: exit %d", status)
	}
}

func keysOf(object map[string]any) string {
	return strings.Join(slices.Sorted(maps.Keys(object)), " ")
}

// Whatever goes wrong, with -json standard error is one error/1 object.
func TestWithJSONWhateverGoesWrongIsOneErrorObject(t *testing.T) {
	dir := t.TempDir()
	for _, test := range []struct {
		status int
		placed bool // with a line and a column
		args   []string
	}{
		{wrongInput, false, []string{"batch", "-json"}},
		{wrongInput, false, []string{"batch", "-json", "-nope", "x.json"}},
		{wrongInput, false, []string{"batch", "x.json", "-json", "-units"}},
		{wrongInput, false, []string{"batch", "-json", "-working", "x.json"}},
		{wrongInput, false, []string{"batch", "-units", "stone", "--json", "x.json"}},
		{wrongInput, false, []string{"batch", "-json", dir}},
		{cannotIO, false, []string{"batch", "-json", dir + "/none.json"}},
		{wrongInput, true, []string{"batch", "-json", formulas + "/wrong/everything-at-once.json"}},
		{wrongInput, true, []string{"batch", "-json", "-"}},
		{wrongInput, false, []string{"oils", "-json", "olvie", "cocnut"}},
		{wrongInput, false, []string{"lye", "-json"}},
		{wrongInput, false, []string{"lye", "-json", "density"}},
		{wrongInput, false, []string{"lye", "dencity", "-json"}},
		{wrongInput, false, []string{"lye", "stock", "-json"}},
		{wrongInput, false, []string{"lye", "stock", "-strenght", "50 %", "-json"}},
		{wrongInput, false, []string{"lye", "heat", "-water", "200", "-room", "20", "-json"}},
		{wrongInput, false, []string{"lye", "density", "33 %", "-json"}},
	} {
		stdout, stderr, status := lyewright("{", test.args...)
		if status != test.status || stdout != "" || strings.Count(stderr, "\n") != 1 || !strings.HasPrefix(stderr, `{"schema":"error/1","errors":[{`) {
			t.Errorf("%v: exit %d, %q, %q", test.args, status, stdout, stderr)
			continue
		}
		var object struct {
			Schema string
			Errors []map[string]any
		}
		if err := json.Unmarshal([]byte(stderr), &object); err != nil {
			t.Errorf("%v: %v", test.args, err)
			continue
		}
		want := "kind message path reason remedy text"
		if test.placed {
			want = "column kind line message path reason remedy text"
		}
		if test.status == cannotIO { // of a file that cannot be read nothing is wrong that has a kind
			want = "message path reason remedy text"
		}
		for _, fault := range object.Errors {
			if keysOf(fault) != want {
				t.Errorf("%v: keys %s, want %s", test.args, keysOf(fault), want)
			}
			for key, value := range fault {
				if _, number := value.(float64); number != (key == "line" || key == "column") {
					t.Errorf("%v: %s is %v", test.args, key, value)
				}
			}
			if fault["reason"] == "" {
				t.Errorf("%v: no reason in %v", test.args, fault)
			}
		}
	}
}

// The text and the object say the same.
func TestTheErrorObjectSaysWhatTheTextSays(t *testing.T) {
	for _, path := range names(t, formulas+"/wrong/*.json") {
		_, text, _ := lyewright("", "batch", path)
		_, object, _ := lyewright("", "batch", "-json", path)
		var list struct {
			Errors []struct {
				Path, Text, Reason, Remedy string
				Line, Column               int
			}
		}
		if err := json.Unmarshal([]byte(object), &list); err != nil {
			t.Fatal(err)
		}
		lines := strings.Split(strings.TrimSuffix(text, "\n"), "\n")
		if len(lines) != len(list.Errors) {
			t.Errorf("%s: %d lines, %d errors", path, len(lines), len(list.Errors))
			continue
		}
		for i, e := range list.Errors {
			start := fmt.Sprintf("%s:%d:%d: ", path, e.Line, e.Column)
			if e.Path != "" {
				start += e.Path + ": "
			}
			end := e.Reason
			if e.Remedy != "" {
				end += "; " + e.Remedy
			}
			if !strings.HasPrefix(lines[i], start) || !strings.HasSuffix(lines[i], end) {
				t.Errorf("%s: %q is not %q … %q", path, lines[i], start, end)
			}
		}
	}
}
