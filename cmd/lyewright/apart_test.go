package main

import (
	"strings"
	"testing"
)

// Spelt with its value an option is the same option.
func TestAnOptionMayBeSpeltWithItsValue(t *testing.T) {
	want, _, _ := lyewright("", "oils", "-json", "olive")
	if got, _, _ := lyewright("", "oils", "-json=true", "olive"); got != want {
		t.Errorf("oils -json=true prints %.40q", got)
	}
	_, want, _ = lyewright("", "batch", "-json", "none.json")
	if _, got, _ := lyewright("", "batch", "-json=true", "none.json"); got != want {
		t.Errorf("batch -json=true says %.60q", got)
	}
}

// A failing disk is told once.
func TestAFullDiskIsToldOnce(t *testing.T) {
	line := oneLine(t, "lantern-walk.json", "cups") + "\n"
	for _, args := range [][]string{{"batch", "-json", "-lines", "-"}, {"batch", "-lines", "-"}, {"batch", formulas + "/single-bar.json", formulas + "/ounces.json"}, {"check", formulas + "/single-bar.json", formulas + "/ounces.json"}} {
		var stderr strings.Builder
		run(args, strings.NewReader(strings.Repeat(line, 200)), fails{}, &stderr)
		if n := strings.Count(stderr.String(), "\n"); n != 1 {
			t.Errorf("%v: %d messages", args, n)
		}
	}
}

// Among several inputs, too, standard input is looked at.
func TestStandardInputAmongFilesIsReadByTheLineToo(t *testing.T) {
	line := oneLine(t, "lantern-walk.json", "cups") + "\n"
	stdout, _, status := lyewright(line+line, "batch", "-json", "-", formulas+"/single-bar.json")
	if status != done || len(origins(t, stdout)) != 3 {
		t.Errorf("exit %d, %.200s", status, stdout)
	}
}

// A line of exactly 1 MiB fits, with and without a line behind it.
func TestALineOfAMebibyteFits(t *testing.T) {
	one := oneLine(t, "single-bar.json", "one")
	line := one + strings.Repeat(" ", 1<<20-len(one))
	for _, end := range []string{"", "\n", "\r\n"} {
		if _, _, status := lyewright(line+end, "batch", "-json", "-lines", "-"); status != done {
			t.Errorf("ended by %q: exit %d", end, status)
		}
	}
}

// Two sheets are parted.
func TestSheetsArePartedFromEachOther(t *testing.T) {
	stdout, _, _ := lyewright("", "batch", formulas+"/single-bar.json", formulas+"/ounces.json")
	if !strings.Contains(stdout, "\n\nLantern walk bar, weighed in ounces\n") && !strings.Contains(stdout, "\fLantern walk bar") {
		t.Error("the second sheet begins on the line below the first")
	}
}

func TestNoPageIsWiderThan78Columns(t *testing.T) {
	oils, _, _ := lyewright("", "oils")
	sheets := oils
	for _, text := range []string{
		formulaWith("formula", `"`+strings.Repeat("L", 200)+`"`),
		formulaWith("parts", `[{"part":"`+strings.Repeat("lantern ", 15)+`","share":"100 %"}]`),
	} {
		stdout, _, _ := lyewright(text, "batch", "-")
		sheets += stdout
	}
	for line := range strings.Lines(sheets) {
		if n := len([]rune(line)) - 1; n > 78 {
			t.Errorf("%d columns: %s", n, line)
		}
	}
}

// Two lots are told apart.
func TestTwoLotsOfLongNamesAreToldApart(t *testing.T) {
	lot := `{"oil":"lot-%d","name":"Lard from the farm behind the hill, of the autumn lot %d","share":"50 %%","saponification":"196"}`
	text := formulaWith("oils", "["+strings.ReplaceAll(strings.ReplaceAll(lot, "%d", "1"), "%%", "%")+","+strings.ReplaceAll(strings.ReplaceAll(lot, "%d", "2"), "%%", "%")+"]")
	stdout, stderr, _ := lyewright(text, "batch", "-")
	for _, lot := range []string{"[ ] Lard from the farm behind the hill, of the\n    autumn lot 1  ", "[ ] Lard from the farm behind the hill, of the\n    autumn lot 2  "} {
		if !strings.Contains(stdout, lot) {
			t.Errorf("the sheet lacks %q: %s%s", lot, stdout, stderr)
		}
	}
}
