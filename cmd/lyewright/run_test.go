package main

import (
	"bytes"
	"errors"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Golden files hold what people see. They are read before they are kept: a
// golden file proves only that nothing changed unseen.
// A test that is to prove more is run with -golden=off.
var (
	update       = flag.Bool("update", false, "rewrite the golden files")
	goldenSwitch = flag.String("golden", "on", "off: do not compare with the golden files")
)

const (
	formulas = "../../testdata/formulas"
	golden   = "../../testdata/golden"
)

// lyewright runs the command and gives what it wrote and its exit status.
func lyewright(stdin string, args ...string) (stdout, stderr string, status int) {
	var out, errs bytes.Buffer
	status = run(args, strings.NewReader(stdin), &out, &errs)
	return out.String(), errs.String(), status
}

func readFile(t testing.TB, path string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// matchGolden compares a text with a golden file.
func matchGolden(t *testing.T, path, got string) {
	t.Helper()
	if *goldenSwitch == "off" {
		return
	}
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want := readFile(t, path)
	if got == want {
		return
	}
	gotLines, wantLines := strings.Split(got, "\n"), strings.Split(want, "\n")
	for i := range max(len(gotLines), len(wantLines)) {
		g, w := "(nothing)", "(nothing)"
		if i < len(gotLines) {
			g = gotLines[i]
		}
		if i < len(wantLines) {
			w = wantLines[i]
		}
		if g != w {
			t.Fatalf("%s, line %d:\n got %q\nwant %q", path, i+1, around(g, w), around(w, g))
		}
	}
}

// around gives what stands in a line where it begins to differ from another: a line of
// JSON may be as long as a book.
func around(line, other string) string {
	at := 0
	for at < min(len(line), len(other)) && line[at] == other[at] {
		at++
	}
	return line[max(0, at-80):min(len(line), at+80)]
}

func names(t testing.TB, pattern string) []string {
	t.Helper()
	found, err := filepath.Glob(pattern)
	if err != nil || len(found) == 0 {
		t.Fatalf("%s matches nothing (%v)", pattern, err)
	}
	return found
}

// fails is a writer that always fails.
type fails struct{}

func (fails) Write([]byte) (int, error) { return 0, errors.New("no space left") }
