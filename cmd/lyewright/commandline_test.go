package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/lyewright/soap"
)

// A golden file of what people see when they mistype.
func TestEachWrongCommandLineHasItsMessage(t *testing.T) {
	var said strings.Builder
	for _, args := range [][]string{
		{},
		{"bacth"},
		{"Batch"},
		{"weigh"},
		{"-json"},
		{"batch"},
		{"batch", "--"},
		{"batch", "-jsno", "cups.json"},
		{"batch", "cups.json", "--wroking"},
		{"batch", "-colour", "cups.json"},
		{"batch", "-=5", "cups.json"},
		{"batch", "-json=perhaps", "cups.json"},
		{"batch", "-units", "lb", "cups.json"},
		{"batch", "-json", "-units", "oz", "cups.json"},
		{"check"},
		{"check", "-lines", "cups.json"},
		{"cap"},
		{"cap", "-law", "efra", "cups.json"},
		{"cap", "-law", "moon", "cups.json"},
		{"cap", "-json", "-units", "oz", "cups.json"},
		{"cap", "-working", "cups.json"},
		{"fragrance", "clove-but", "lavendar"},
		{"fragrance", "moonlight"},
		{"fragrance", "-law", "ifra"},
		{"oils", "olvie"},
		{"oils", "shea", "olive-oil"},
		{"oils", "-units", "oz"},
		{"version", "please"},
		{"help", "formla"},
		{"help", "weather"},
		{"help", "schema", "bacth/1"},
		{"help", "schema", "soup"},
		{"help", "schema", "cap/1", "tint/1"},
	} {
		stdout, stderr, status := lyewright("", args...)
		if stdout != "" || status < wrongInput {
			t.Errorf("%v: exit %d, %q", args, status, stdout)
		}
		fmt.Fprintf(&said, "$ lyewright %s\n%sexit %d\n\n", strings.Join(args, " "), stderr, status)
	}
	matchGolden(t, golden+"/usage.txt", strings.ReplaceAll(said.String(), "lyewright \n", "lyewright\n"))
}

func TestOptionsStandAnywhereAmongTheFiles(t *testing.T) {
	one, two := formulas+"/single-bar.json", formulas+"/ounces.json"
	want, _, _ := lyewright("", "batch", "-units", "oz", "-working", one, two)
	for _, args := range [][]string{
		{one, "-units", "oz", two, "-working"},
		{one, two, "--units=oz", "--working"},
		{"-working", one, "-units=oz", "--", two},
		{"-working=true", "-lines=false", one, two, "-units", "g", "-units", "oz"},
	} {
		if got, stderr, status := lyewright("", append([]string{"batch"}, args...)...); got != want || status != done {
			t.Errorf("%v: exit %d, %q", args, status, stderr)
		}
	}
	grams, _, _ := lyewright("", "batch", one)
	asked, _, _ := lyewright("", "batch", one, "-units", "g")
	if asked != grams {
		t.Error("-units g is not what is printed without it")
	}
}

func TestBehindTwoDashesEverythingIsAFile(t *testing.T) {
	dir := t.TempDir()
	t.Chdir(dir)
	for _, name := range []string{"-json", "-h", "--"} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(`{`), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for _, args := range [][]string{{"--", "-json"}, {"--", "-h"}, {"--", "--"}, {"-units", "oz", "--", "-json"}} {
		stdout, stderr, status := lyewright("", append([]string{"batch"}, args...)...)
		if status != wrongInput || stdout != "" || !strings.HasPrefix(stderr, args[len(args)-1]+":1:2: ") {
			t.Errorf("%v: exit %d, %q", args, status, stderr)
		}
	}
}

func TestHelpIsToldOnStandardOutput(t *testing.T) {
	whole, stderr, status := lyewright("", "help")
	if status != done || stderr != "" || !strings.HasPrefix(whole, "lyewright works out") {
		t.Errorf("exit %d, %q, %q", status, stderr, whole)
	}
	for _, args := range [][]string{{"-h"}, {"--help"}, {"-help"}, {"help", "lyewright"}} {
		if got, _, status := lyewright("", args...); got != whole || status != done {
			t.Errorf("%v: exit %d, %.60q", args, status, got)
		}
	}
	// asking for help comes before doing anything
	for _, args := range [][]string{{"batch", "none.json", "-h"}, {"check", "--help"}, {"oils", "-json", "-h", "olvie"}, {"version", "-help"}} {
		want, _, _ := lyewright("", "help", args[0])
		if got, stderr, status := lyewright("", args...); got != want || status != done || stderr != "" {
			t.Errorf("%v: exit %d, %.60q, %q", args, status, got, stderr)
		}
	}
	// every topic is named in the overview, every option in its topic
	for section := range strings.SplitSeq(helpText, "== ") {
		if topic, _, found := strings.Cut(section, "\n"); found && !strings.Contains(whole, topic) {
			t.Errorf("the overview does not name %s", topic)
		}
	}
	batch, _, _ := lyewright("", "help", "batch")
	for _, option := range []string{"-json", "-working", "-units", "-lines"} {
		if !strings.Contains(batch, "  "+option) {
			t.Errorf("the help on batch does not explain %s", option)
		}
	}
	exit, _, _ := lyewright("", "help", "exit")
	for status := range 4 {
		if !strings.Contains(exit, fmt.Sprintf("\n  %d  ", status)) {
			t.Errorf("the help does not explain exit status %d", status)
		}
	}
	for _, verb := range verbs() {
		if !strings.Contains(whole, "lyewright "+verb) {
			t.Errorf("the overview does not name %s", verb)
		}
	}
}

// What the help shows as a formula works in every way it can be asked for.
func TestTheFormulaOfTheHelpWorks(t *testing.T) {
	text, _, _ := lyewright("", "help", "formula")
	_, after, _ := strings.Cut(text, "\n\n")
	example, rest, found := strings.Cut(after, "\n\n")
	if !found || !strings.HasPrefix(example, "  {") || !strings.HasSuffix(example, "\n  }") {
		t.Fatalf("no example in %q", text)
	}
	for _, args := range [][]string{{"batch", "-"}, {"batch", "-json", "-"}, {"batch", "-working", "-"}, {"check", "-"}} {
		if stdout, stderr, status := lyewright(example, args...); status != done || stdout == "" || stderr != "" {
			t.Errorf("%v: exit %d, %q", args, status, stderr)
		}
	}
	// and every key of it is explained below
	f, _, err := soap.ParseFormula([]byte(example))
	if err != nil || len(f.Parts) != 2 {
		t.Fatal(err)
	}
	for _, key := range []string{
		"formula", "oils", "alkali", "superfat", "water", "size", "scale", "parts", "saponification", "purity", "saponifies",
		"lye_concentration", "per_alkali", "per_oils", "at_least", "rest", "carrier", "ratio", "from", "profile", "unsaponifiables", "density",
		"iodine", "inci", "assay_min", "assay_max", "carbonate_max",
	} {
		if !strings.Contains(rest, key) {
			t.Errorf("the help does not explain %s", key)
		}
	}
}

func TestVersionIsOneLine(t *testing.T) {
	want, stderr, status := lyewright("", "version")
	if status != done || stderr != "" || strings.Count(want, "\n") != 1 || !strings.HasSuffix(want, ", data edition "+soap.DataEdition()+"\n") {
		t.Errorf("exit %d, %q, %q", status, want, stderr)
	}
	for _, args := range [][]string{{"-version"}, {"--version"}} {
		if got, _, status := lyewright("", args...); got != want || status != done {
			t.Errorf("%v: exit %d, %q", args, status, got)
		}
	}
	// the sheet and the JSON name the same edition
	sheet, _, _ := lyewright("", "batch", formulas+"/single-bar.json")
	object, _, _ := lyewright("", "batch", "-json", formulas+"/single-bar.json")
	if !strings.Contains(sheet, "data edition "+soap.DataEdition()+"\n") || !strings.Contains(object, `"data_edition":"`+soap.DataEdition()+`"`) {
		t.Error("the batch does not name the edition of the data")
	}
}

func TestSeveralMistypedOilsAreAllNamed(t *testing.T) {
	stdout, stderr, status := lyewright("", "oils", "olvie", "olive", "cocnut")
	if status != wrongInput || stdout != "" || strings.Count(stderr, "\n") != 2 || !strings.Contains(stderr, "did you mean olive?") || !strings.Contains(stderr, "did you mean coconut?") {
		t.Errorf("exit %d, %q, %q", status, stdout, stderr)
	}
}
