package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestEveryWrongFormulaHasItsMessageAndEveryMessageItsFormula(t *testing.T) {
	counts := map[string]int{}
	for _, path := range names(t, formulas+"/wrong/*") {
		ext := filepath.Ext(path)
		other := map[string]string{".json": ".txt", ".txt": ".json"}[ext]
		if other == "" {
			t.Errorf("%s is neither a formula nor a message", path)
			continue
		}
		counts[ext]++
		if _, err := os.Stat(strings.TrimSuffix(path, ext) + other); err != nil {
			t.Errorf("%s stands alone: %v", path, err)
		}
	}
	if counts[".json"] < 60 {
		t.Errorf("only %d wrong formulas", counts[".json"])
	}
}

// Faults that quote something other than the value they stand at.
var aboutAnother = map[string]bool{
	"superfat.at_least":     true, // the oil that has no range, or the promise itself
	"oils[0].profile.C18:9": true, // its key
}

// Line and column, counted as a text editor does (in bytes), lead to the value
// that is complained about, or to what should hold it.
func TestEveryPlaceIsWhereTheTroubleIs(t *testing.T) {
	quoted := 0
	for _, path := range names(t, formulas+"/wrong/*.json") {
		source := []byte(readFile(t, path))
		_, stderr, _ := lyewright("", "batch", "-json", path)
		var object struct {
			Errors []struct {
				Path, Text, Reason string
				Line, Column       int
			}
		}
		if err := json.Unmarshal([]byte(stderr), &object); err != nil {
			t.Fatal(err)
		}
		for _, e := range object.Errors {
			lines := bytes.SplitAfter(source, []byte("\n"))
			if e.Line < 1 || e.Line > len(lines) || e.Column < 1 || e.Column > len(lines[e.Line-1])+1 {
				t.Errorf("%s: %d:%d is outside the file", path, e.Line, e.Column)
				continue
			}
			here := lines[e.Line-1][e.Column-1:]
			if e.Text == "" || bytes.HasPrefix(here, []byte("[")) || bytes.HasPrefix(here, []byte("{")) {
				continue // about what is missing, or about all that a list or an object holds
			}
			var value any
			decoder := json.NewDecoder(bytes.NewReader(here))
			decoder.UseNumber()
			if err := decoder.Decode(&value); err != nil {
				t.Errorf("%s: %d:%d: %.20q is no value: %v", path, e.Line, e.Column, here, err)
				continue
			}
			if got := fmt.Sprint(value); !strings.HasPrefix(got, strings.TrimSuffix(e.Text, "…")) && !aboutAnother[e.Path] {
				t.Errorf("%s: %d:%d has %.60q, the message quotes %.60q", path, e.Line, e.Column, got, e.Text)
			}
			quoted++
		}
	}
	if quoted < 40 {
		t.Errorf("only %d values were compared", quoted)
	}
}

// A reader finds the place in a message whatever ends the lines.
func TestPlacesDoNotDependOnTheLineEnds(t *testing.T) {
	for _, path := range names(t, formulas+"/wrong/*.json") {
		source := readFile(t, path)
		_, want, _ := lyewright(source, "batch", "-")
		_, got, status := lyewright(strings.ReplaceAll(source, "\n", "\r\n"), "batch", "-")
		if status != wrongInput || got != want {
			t.Errorf("%s: with CR LF %q, with LF %q", path, got, want)
		}
	}
}

// formulaWith gives a formula in which one key has another value.
func formulaWith(key, value string) string {
	var b strings.Builder
	b.WriteString("{")
	for _, line := range [][2]string{
		{"formula", `"cups"`},
		{"oils", `[{"oil":"olive","share":"60 %"},{"oil":"coconut","share":"rest"}]`},
		{"alkali", `[{"kind":"sodium-hydroxide","purity":{"low":"97 %","high":"99 %"}}]`},
		{"superfat", `"6 %"`},
		{"water", `{"lye_concentration":"32 %"}`},
		{"size", `{"oils":"800 g"}`},
		{"markets", ""},
		{"materials", ""}, // left out, unless asked for
		{"parts", `[{"part":"whole","share":"100 %"}]`},
	} {
		if line[0] == key {
			line[1] = value
		}
		if line[1] == "" {
			continue
		}
		fmt.Fprintf(&b, "%q:%s,\n", line[0], line[1])
	}
	return strings.TrimSuffix(b.String(), ",\n") + "}"
}

func many(n int, item string) string {
	items := make([]string, n)
	for i := range items {
		items[i] = fmt.Sprintf(item, i)
	}
	return "[" + strings.Join(items, ",") + "]"
}

// Just within a limit a formula is fine, just beyond it is not.
func TestTheLimitsAreWhereTheyAreSaidToBe(t *testing.T) {
	own := `{"oil":"lot-%d","saponification":{"low":"190","high":"194"},"mass":"20 g"}`
	part := func(n int, kind, addition string) string {
		return `[{"part":"whole","share":"100 %","` + kind + `":` + many(n, addition) + `}]`
	}
	oils := func(n int) string {
		return strings.Replace(formulaWith("oils", many(n, own)), `"size":{"oils":"800 g"},`, "", 1)
	}
	for _, test := range []struct{ name, fits, over, says string }{
		{"oils", oils(100), oils(101), "-:2:8: oils: has more than 100 oils; use at most 100\n"},
		{
			"parts", formulaWith("parts", many(50, `{"part":"p%d","share":"2 %%"}`)),
			formulaWith("parts", many(51, `{"part":"p%d","share":"rest"}`)), "parts: has more than 50 parts",
		},
		{
			"colourants", formulaWith("parts", part(50, "colourants", `{"colourant":"c%d","unlisted":true,"load":"1 g"}`)),
			formulaWith("parts", part(51, "colourants", `{"colourant":"c%d","unlisted":true,"load":"1 g"}`)),
			"parts[0].colourants: has more than 50 colourants",
		},
		{"name", formulaWith("formula", `"`+strings.Repeat("ü", 100)+`"`), formulaWith("formula", `"`+
			strings.Repeat("ü", 100)+`x"`), "is 201 bytes long; use at most 200 bytes"},
		{
			"mass", formulaWith("size", `{"oils":"1000 kg"}`), formulaWith("size", `{"oils":"1000.000000001 kg"}`),
			`size.oils: "1000.000000001 kg" is more than a tonne; write at most 1000 kg`,
		},
		{
			"bytes", formulaWith("", "") + strings.Repeat(" ", 1<<20-len(formulaWith("", ""))), formulaWith("", "") +
				strings.Repeat(" ", 1<<20-len(formulaWith("", ""))+1),
			"-:1:1: is larger than 1 MiB; a formula needs a few thousand bytes\n",
		},
		{
			"scale", formulaWith("size", `{"oils":"8 kg"},"scale":"100 g"`),
			formulaWith("size", `{"oils":"8 kg"},"scale":"100.1 g"`), `"100.1 g" is not between 1 mg and 100 g`,
		},
		{
			"digits", formulaWith("size", `{"oils":"0000000000000800 g"}`),
			formulaWith("size", `{"oils":"00000000000000800 g"}`), "has too many digits",
		},
	} {
		if _, stderr, status := lyewright(test.fits, "batch", "-"); status > dangerous {
			t.Errorf("%s, just within: exit %d, %.300q", test.name, status, stderr)
		}
		stdout, stderr, status := lyewright(test.over, "batch", "-")
		if status != wrongInput || stdout != "" || !strings.Contains(stderr, test.says) {
			t.Errorf("%s, just beyond: exit %d, %.300q, want %q", test.name, status, stderr, test.says)
		}
	}
}

// The three kinds of addition of a part count together.
func TestTheAdditionsOfAPartCountTogether(t *testing.T) {
	of := func(n int) string {
		return formulaWith("parts", `[{"part":"whole","share":"100 %","colourants":`+
			many(20, `{"colourant":"c%d","unlisted":true,"load":"1 g"}`)+
			`,"fragrances":`+many(20, `{"fragrance":"f%d","unlisted":true,"load":"1 g"}`)+`,"additives":`+
			many(n, `{"additive":"a%d","load":"1 g"}`)+`}]`)
	}
	if _, stderr, status := lyewright(of(10), "batch", "-"); status > dangerous {
		t.Errorf("50: exit %d, %.200q", status, stderr)
	}
	if _, stderr, status := lyewright(of(11), "batch", "-"); status != wrongInput ||
		!strings.Contains(stderr, "parts[0]: has 51 additions; use at most 50 in a part") {
		t.Errorf("51: exit %d, %.200q", status, stderr)
	}
}

func TestHostileTextIsRefusedInOneShortLine(t *testing.T) {
	for _, test := range []struct{ name, text, says string }{
		{"200,000 open brackets", strings.Repeat("[", 200_000), "is nested too deeply; a formula nests to 16 levels at most"},
		{"200,000 open braces", strings.Repeat(`{"a":`, 200_000), "is nested too deeply"},
		{"200,000 closed brackets", strings.Repeat("]", 200_000), "-:1:1: is not JSON here"},
		{
			"half a million digits", formulaWith("superfat", `"`+strings.Repeat("7", 500_000)+` %"`),
			"is too long for a quantity",
		},
		{
			"an exponent of a thousand million", formulaWith("superfat", `"1e-1000000000 %"`),
			`superfat: "1e-1000000000 %" has an exponent; write the number out in digits`,
		},
		{"a bare exponent", formulaWith("superfat", `1e1000000000`), "is a bare number where a text is needed"},
		{"not a number", formulaWith("superfat", `"NaN %"`), `superfat: "NaN %" does not begin with a number`},
		{"a null byte", formulaWith("formula", "\"a\x00b\""), "-:1:"},
		{"an escape sequence", formulaWith("formula", `"\u001b[31mred"`), `formula: "\x1b[31mred" has a control character`},
		{"a line separator", formulaWith("formula", `"a\u2028b"`), "-:1:12: formula: "},
		{
			"a right-to-left mark", formulaWith("formula", `"a\u202eb"`),
			`"a\u202eb" has a bidirectional control; leave it out`,
		},
		{"bytes that are no UTF-8", formulaWith("formula", "\"a\xff\""), "-:1:14: is not UTF-8 here; save the file as UTF-8"},
		{"UTF-16", "\xff\xfe{\x00}\x00", "-:1:1: is not UTF-8 here"},
		{
			"the key of another case", strings.Replace(formulaWith("", ""), `"superfat"`, `"SUPERFAT"`, 1),
			"SUPERFAT: is not a key of a formula; did you mean superfat?",
		},
		{"nothing", "", "-:1:1: is empty; write a formula"},
		{"blanks", " \r\n\t\n", "is empty; write a formula"},
	} {
		for _, args := range [][]string{{"batch", "-"}, {"batch", "-json", "-"}} {
			stdout, stderr, status := lyewright(test.text, args...)
			if status != wrongInput || stdout != "" || strings.Count(stderr, "\n") != 1 || len(stderr) > 1000 {
				t.Errorf("%s: exit %d, %q, %d bytes: %.200q", test.name, status, stdout, len(stderr), stderr)
			}
			if len(args) == 2 && !strings.Contains(stderr, test.says) {
				t.Errorf("%s: %.200q, want %q", test.name, stderr, test.says)
			}
			// what the text quotes cannot move a terminal's cursor
			if len(args) == 2 && strings.ContainsFunc(strings.TrimSuffix(stderr, "\n"), func(r rune) bool {
				return r < ' ' ||
					r == '\u202e' || r == '\u2028'
			}) {
				t.Errorf("%s: prints the raw text: %.200q", test.name, stderr)
			}
		}
	}
}

// check says all that batch says, on standard output, with the same places.
func TestCheckNamesTheFaultsThatBatchNames(t *testing.T) {
	for _, path := range names(t, formulas+"/wrong/*.json") {
		_, stderr, _ := lyewright("", "batch", path)
		stdout, rest, status := lyewright("", "check", path)
		if status != wrongInput || rest != "" || strings.Count(stdout, "\n") != strings.Count(stderr, "\n") {
			t.Errorf("%s: exit %d, %q, %q", path, status, stdout, rest)
			continue
		}
		said := strings.Split(stderr, "\n")
		i := 0
		for line := range strings.Lines(stdout) {
			place, after, found := strings.Cut(strings.TrimSuffix(line, "\n"), ": error ")
			code, after, _ := strings.Cut(after, " ")
			subject, sentence, _ := strings.Cut(after, ": ")
			if !found || code == "" || code == "wrong" || subject == "" || !strings.HasPrefix(said[i], place+": ") ||
				!strings.HasSuffix(said[i], sentence) {
				t.Errorf("%s: %q against %q", path, line, said[i])
			}
			i++
		}
	}
}
