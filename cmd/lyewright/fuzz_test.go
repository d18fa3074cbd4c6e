package main

import (
	"bytes"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/iotest"
	"unicode/utf8"

	"example.com/lyewright/soap"
)

// Every line that is not blank has one answer, in order, with its number: the answer
// that the line has by itself, however the bytes arrive.
func FuzzLines(f *testing.F) {
	f.Add([]byte("{\"formula\":\"one\"}\n{\"formula\":\"two\"}\n")) // as most are
	f.Fuzz(func(t *testing.T, text []byte) {
		if len(text) > 20_000 {
			return
		}
		want := ""
		for i, line := range bytes.Split(text, []byte("\n")) {
			if len(bytes.Trim(line, " \t\r\n")) == 0 {
				continue
			}
			line = bytes.TrimSuffix(line, []byte("\r")) // the end of a line is \n or \r\n
			a := answerOf(line, batchOptions{json: true})
			a.line = i + 1
			want += lineOf(t, a)
			placed(t, line, a.faults)
		}
		if got := streamed(t, bytes.NewReader(text)); got != want {
			t.Fatalf("got %.300q; line by line %.300q", got, want)
		}
		for line := range strings.Lines(want) {
			if !json.Valid([]byte(line)) {
				t.Errorf("%q is an answer", line)
			}
		}
		if got := streamed(t, iotest.OneByteReader(bytes.NewReader(text))); got != want {
			t.Errorf("byte by byte: %.300q, at once %.300q", got, want)
		}
		// It is taken for lines where the first is a whole object and another follows.
		lines, all, err := peek(bytes.NewReader(text))
		rows := slices.DeleteFunc(bytes.Split(text, []byte("\n")), func(line []byte) bool { return len(bytes.Trim(line, " \t\r\n")) == 0 })
		if err != nil || lines != (len(rows) > 1 && bytes.Trim(rows[0], " \t\r\n")[0] == '{' && json.Valid(rows[0])) {
			t.Errorf("%q is taken for lines: %t, %v", text, lines, err)
		}
		if got := streamed(t, all); got != want {
			t.Errorf("peeked at: %.300q, else %.300q", got, want)
		}
	})
}

// streamed answers a stream bundle by bundle, as the workers do, one after the other.
func streamed(t *testing.T, input io.Reader) (all string) {
	t.Helper()
	err := bundles(input, func(b *bundle) bool {
		for _, a := range b.work(func(line []byte) answer { return answerOf(line, batchOptions{json: true}) }) {
			all += lineOf(t, a)
		}
		return true
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

func lineOf(t *testing.T, a answer) string {
	t.Helper()
	var out bytes.Buffer
	if err := a.writeObject(&out, ""); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// placed checks that faults stand within the text, and are said in one line each.
func placed(t *testing.T, text []byte, faults soap.Faults) {
	t.Helper()
	rows := bytes.Split(text, []byte("\n"))
	for _, one := range faults {
		if one.Line < 1 || one.Column < 1 || one.Line > len(rows) || one.Column > len(rows[one.Line-1])+1 {
			t.Errorf("%q: %+v stands outside of it", text, one)
		}
		if said := one.Error(); !utf8.ValidString(said) || strings.ContainsFunc(said, unprintable) {
			t.Errorf("%q: a fault is said as %q", text, said)
		}
	}
}

// unprintable is what a line of a terminal must not carry: what ends it, moves about in
// it or turns its direction.
func unprintable(r rune) bool {
	return r < ' ' || r == 0x7f || r >= 0x80 && r < 0xa0 || r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069 || r == 0x2028 || r == 0x2029
}

// Whatever is typed ends with one of the four statuses; what went wrong is said, what is
// refused prints nothing, and nothing is written but the page that was asked for. The
// arguments are parted by line feeds.
func FuzzCommandLine(f *testing.F) {
	dir := f.TempDir()
	for name, from := range map[string]string{"a.json": formulas + "/single-bar.json", "tint.json": formulas + "/lantern-dusk.json", "wrong.json": formulas + "/wrong/unknown-oil.json"} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(readFile(f, from)), 0o600); err != nil {
			f.Fatal(err)
		}
	}
	f.Add("batch\na.json") // as most are
	f.Fuzz(func(t *testing.T, line string) {
		if len(line) > 300 || strings.ContainsAny(line, `/\`) || strings.Contains(line, "..") {
			return // only files in the directory of the test
		}
		args := strings.Split(line, "\n")
		t.Chdir(dir)
		stdout, stderr, status := lyewright(`{"formula":"x"}`, args...)
		again, errsAgain, statusAgain := lyewright(`{"formula":"x"}`, args...)
		if stdout != again || stderr != errsAgain || status != statusAgain {
			t.Errorf("%q gives one answer now and another then", args)
		}
		for _, page := range others(t, dir) {
			if !strings.Contains(line, "html") {
				t.Errorf("%q writes %s", args, page)
			}
			if err := os.Remove(page); err != nil {
				t.Error(err)
			}
		}
		switch {
		case status < done || status > cannotIO:
			t.Errorf("%q: exit %d", args, status)
		case status <= dangerous && stderr != "":
			t.Errorf("%q: exit %d, and %q", args, status, stderr)
		case status > dangerous && stderr == "" && stdout == "":
			t.Errorf("%q: exit %d, and nothing is said", args, status)
		}
		for _, said := range []string{stdout, stderr} {
			if !utf8.ValidString(said) || said != "" && !strings.HasSuffix(said, "\n") || len(said) > 300_000 {
				t.Errorf("%q prints %.300q", args, said)
			}
			for line := range strings.Lines(said) {
				switch {
				case strings.HasPrefix(line, `{"schema"`): // JSON is for programs, and is whole
					if !json.Valid([]byte(line)) {
						t.Errorf("%q: %.300q", args, line)
					}
				case strings.ContainsFunc(strings.TrimSuffix(line, "\n"), unprintable):
					t.Errorf("%q prints %.300q", args, line)
				}
			}
		}
	})
}

// others lists what else has come into a directory.
func others(t *testing.T, dir string) (found []string) {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, entry := range entries {
		if name := entry.Name(); name != "a.json" && name != "tint.json" && name != "wrong.json" {
			found = append(found, filepath.Join(dir, name))
		}
	}
	return found
}
