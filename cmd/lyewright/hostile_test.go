package main

import (
	"bytes"
	"fmt"
	"io"
	"runtime"
	"strings"
	"testing"
	"time"

	"example.com/lyewright/soap"
)

// flood gives a beginning and then the same text over and over, a hundred million
// bytes in all, and counts what is taken.
type flood struct {
	begin, again string
	taken        int
}

const floodBytes = 100_000_000

func (f *flood) Read(p []byte) (int, error) {
	if f.taken >= floodBytes {
		return 0, io.EOF
	}
	n := 0
	if f.taken < len(f.begin) {
		n = copy(p, f.begin[f.taken:])
	} else {
		n = copy(p, f.again[(f.taken-len(f.begin))%len(f.again):])
	}
	f.taken += n
	return n, nil
}

// allocated gives how many bytes something allocates.
func allocated(what func()) uint64 {
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	what()
	runtime.ReadMemStats(&after)
	return after.TotalAlloc - before.TotalAlloc
}

// Beyond the mebibyte one buffer may be taken, for the first look at whether the
// input is lines.
const (
	mostTaken     = soap.MostBytes + 1<<16 + 1
	mostAllocated = 32 << 20
)

func floods(t *testing.T) map[string]*flood {
	list := map[string]*flood{
		"a name without an end":           {begin: `{"formula": "`, again: "lantern "},
		"a list of many lines":            {begin: "{\n\"oils\": [", again: "0,\n"},
		"brackets":                        {again: "["},
		"braces":                          {again: `{"a":`},
		"digits":                          {begin: `{"superfat": `, again: "7"},
		"blanks in one line":              {again: " "},
		"a formula and then blanks":       {begin: oneLine(t, "single-bar.json", "one"), again: " "},
		"NUL bytes":                       {again: "\x00"},
		"bytes that are no UTF-8":         {again: "\xff"},
		"halves of pairs":                 {begin: `{"formula": "`, again: `\ud800`},
		"one key, again and again":        {begin: `{`, again: `"oils":[],`},
		"what was never meant as formula": {begin: "<!DOCTYPE html>", again: "<p>lantern</p>"},
	}
	for _, f := range list {
		f.again = strings.Repeat(f.again, 1<<15/len(f.again))
	}
	return list
}

func TestAHundredMegabytesAreRefusedAfterAMebibyte(t *testing.T) {
	for _, args := range [][]string{
		{"batch", "-"},
		{"batch", "-json", "-"},
		{"batch", "-working", "-"},
		{"check", "-"},
		{"cap", "-"},
		{"tint", "-"},
		{"batch", "-swatches", "-", formulas + "/single-bar.json"},
	} {
		for name, f := range floods(t) {
			var stdout, stderr bytes.Buffer
			status := -1
			bytes := allocated(func() { status = run(args, f, &stdout, &stderr) })
			said := stderr.Len()
			if args[0] == "check" {
				said, stdout = stdout.Len(), stderr // it says on standard output what is wrong
			}
			if status != wrongInput || stdout.Len() != 0 || said == 0 || said > 1000 {
				t.Errorf("%v of %s: exit %d, %d bytes printed, %d said", args, name, status, stdout.Len(), said)
			}
			if f.taken > mostTaken || bytes > mostAllocated {
				t.Errorf("%v of %s: takes %d bytes and allocates %d", args, name, f.taken, bytes)
			}
		}
	}
}

// unanswered is an input that gives no more than its share until something was
// answered.
type unanswered struct {
	io.Reader
	left     int
	answered chan struct{}
	t        *testing.T
}

func (u *unanswered) Read(p []byte) (int, error) {
	if u.left <= 0 {
		select {
		case <-u.answered:
		case <-time.After(20 * time.Second):
			u.t.Error("no answer before more is read")
			return 0, io.EOF
		}
	}
	n, err := u.Reader.Read(p[:min(len(p), 1<<12)])
	u.left -= n
	return n, err
}

// firstWrite tells that something was written.
type firstWrite struct {
	bytes.Buffer
	told chan struct{}
}

func (w *firstWrite) Write(p []byte) (int, error) {
	if w.Len() == 0 && len(p) > 0 {
		close(w.told)
	}
	return w.Buffer.Write(p)
}

// A line of a hundred megabytes is refused when its first mebibyte is there. Its end
// is looked for afterwards, in bounded memory, and the next line counts again.
func TestALineWithoutAnEndIsRefusedBeforeItEnds(t *testing.T) {
	one := oneLine(t, "single-bar.json", "one")
	all := floods(t)
	for _, name := range []string{"a name without an end", "brackets", "blanks in one line"} {
		f := all[name]
		told := make(chan struct{})
		stdout, input := &firstWrite{told: told}, io.MultiReader(f, strings.NewReader("\n"+one+"\n"))
		var stderr strings.Builder
		status := -1
		bytes := allocated(func() {
			status = run([]string{"batch", "-json", "-lines", "-"}, &unanswered{input, mostTaken, told, t}, stdout, &stderr)
		})
		want := []origin{{"error/1", "", "", 1}, {"batch/1", "one", "", 2}}
		if got := origins(t, stdout.String()); fmt.Sprint(got) != fmt.Sprint(want) || status != wrongInput || stderr.Len() != 0 || !strings.Contains(stdout.String(), "is larger than 1 MiB") {
			t.Errorf("%s: exit %d, %v, %.200q", name, status, got, stderr.String())
		}
		if bytes > mostAllocated {
			t.Errorf("%s: allocates %d bytes", name, bytes)
		}
	}
}

// The byte at which a line is cut does not make two lines one, nor one blank, nor
// hide what stands behind it.
func TestALineAtTheLimitStaysALine(t *testing.T) {
	one := oneLine(t, "single-bar.json", "one")
	at := func(length int, end string) string { return one + strings.Repeat(" ", length-len(one)) + end }
	good, long, more := origin{"batch/1", "one", "", 0}, origin{"error/1", "", "", 0}, origin{"batch/1", "one", "", 0}
	for name, test := range map[string]struct {
		first string
		want  origin
	}{
		"at the limit":                         {at(soap.MostBytes, "\n"), good},
		"at the limit with a carriage return":  {at(soap.MostBytes, "\r\n"), good},
		"a byte beyond":                        {at(soap.MostBytes+1, "\n"), long},
		"two bytes beyond":                     {at(soap.MostBytes+2, "\n"), long},
		"three bytes beyond":                   {at(soap.MostBytes+3, "\r\n"), long},
		"far beyond":                           {at(2*soap.MostBytes, "\n"), long},
		"a carriage return and more behind it": {at(soap.MostBytes, "\r\r\r[[[\n"), long},
		"a formula behind many blanks":         {strings.Repeat(" ", soap.MostBytes+10) + one + "\n", long},
		"many blanks alone":                    {strings.Repeat(" ", soap.MostBytes+10) + "\n", long},
	} {
		second := more
		for _, args := range [][]string{{"batch", "-json", "-lines", "-"}, {"batch", "-json", "-"}} {
			// the second time it is the second line, where it is not yet known that there are lines
			text, want := test.first+one+"\n"+one+"\n", []origin{test.want, second, second}
			if len(args) == 3 {
				text, want = one+"\n"+test.first+one+"\n", []origin{second, test.want, second}
			}
			for i := range want {
				want[i].InputLine = i + 1
			}
			stdout, stderr, _ := lyewright(text, args...)
			if got := origins(t, stdout); fmt.Sprint(got) != fmt.Sprint(want) || stderr != "" {
				t.Errorf("%s, %v: %v, want %v; %.200q", name, args, got, want, stderr)
			}
		}
	}
}

// What is said of a hostile file cannot write over a screen, nor pass for more lines.
func TestNoMessageCarriesTheControlsOfItsFile(t *testing.T) {
	for _, text := range []string{
		`{"lantern\u001b[31m\n": 1}`,
		`{"\u202elantern": {"a": [1`,
		`{"a\u2028": 1, "a\u2028": 2}`,
		`{"formula": "\u001b[2J\u0085"}`,
		`{"oils": [{"oil": "\u0007"}], "parts": [{"part": "\u2066", "colourants": [{"colourant": "a", "unlisted": true, "load": "\u001b\n%"}]}]}`,
		`{"oils": [{"oil": "own", "profile": {"C18:1\u0000": "100 %"}}], "weighed": {"oils": {"\u200f": "1 g"}}}`,
		"{\"formula\": \"a\u009b\", \"\u202a\": 1}",
	} {
		path := file(t, "hostile.json", text)
		for _, args := range [][]string{{"batch", path}, {"check", path}, {"batch", "-json", path}} {
			stdout, stderr, status := lyewright("", args...)
			if status != wrongInput {
				t.Errorf("%v of %s: exit %d", args, text, status)
			}
			for line := range strings.Lines(stdout + stderr) {
				if !strings.HasPrefix(line, path+":") && args[1] == path {
					t.Errorf("%v of %s: %q is a line of its own", args, text, line)
				}
				if i := strings.IndexFunc(strings.TrimSuffix(line, "\n"), unfit); i >= 0 && args[1] == path {
					t.Errorf("%v of %s: %q", args, text, line)
				}
			}
		}
	}
}

// unfit reports whether a character does something to a screen, typed in here from
// what terminals and Unicode's bidirectional algorithm know.
func unfit(r rune) bool {
	return r < ' ' || r >= 0x7f && r < 0xa0 || strings.ContainsRune("\u061c\u200e\u200f\u2028\u2029\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069", r)
}
