package main

import (
	"encoding/json"
	"strings"
	"testing"

	"example.com/lyewright/soap"
)

func TestAWrongCommandLineSaysWhatWouldBeRight(t *testing.T) {
	lantern := formulas + "/lantern-walk.json"
	for _, test := range []struct {
		args []string
		says string
	}{
		{nil, "write one of batch, check, cap, tint, oils, fragrance, colourants, lye, version, help"},
		{[]string{"bacth"}, "did you mean batch?"},
		{[]string{"weigh"}, "the commands are batch, check, cap, tint, oils, fragrance, colourants, lye, version, help"},
		{[]string{"batch"}, "no formula is named"},
		{[]string{"check"}, "no formula is named"},
		{[]string{"batch", "-jsno", lantern}, "did you mean -json?"},
		{[]string{"batch", lantern, "-wroking"}, "did you mean -working?"},
		{[]string{"batch", "-units", "stone", lantern}, "write -units g or -units oz"},
		{[]string{"batch", lantern, "-units"}, "needs a value behind it"},
		{[]string{"batch", "-json", "-units", "oz", lantern}, "the JSON is always in grams"},
		{[]string{"check", "-json", lantern}, "is not an option of check"},
		{[]string{"oils", "olvie"}, "did you mean olive?"},
		{[]string{"help", "formla"}, "did you mean formula?"},
		{[]string{"version", "please"}, "is more than version needs"},
	} {
		stdout, stderr, status := lyewright("", test.args...)
		if status != wrongInput || stdout != "" || !strings.Contains(stderr, test.says) {
			t.Errorf("%v: exit %d, %q, want %q", test.args, status, stderr, test.says)
		}
	}
}

func TestOptionsStandBeforeOrAfterTheFiles(t *testing.T) {
	lantern := formulas + "/lantern-walk.json"
	before, _, status := lyewright("", "batch", "-json", lantern)
	after, _, _ := lyewright("", "batch", lantern, "--json")
	ended, _, _ := lyewright("", "batch", "-json", "--", lantern)
	if status != done || before != after || before != ended || !strings.HasPrefix(before, `{"schema":"batch/1"`) {
		t.Errorf("exit %d: %.60q, %.60q, %.60q", status, before, after, ended)
	}
	if _, stderr, status := lyewright("", "batch", "--", "-json"); status != cannotIO || !strings.HasPrefix(stderr, "-json: cannot be read") {
		t.Errorf("after -- a file may be called -json: exit %d, %q", status, stderr)
	}
}

func TestEveryCommandHasHelp(t *testing.T) {
	for _, verb := range verbs() {
		if verb == "help" {
			continue
		}
		long, _, status := lyewright("", "help", verb)
		short, _, _ := lyewright("", verb, "-h")
		if status != done || long != short || !strings.Contains(long, "lyewright "+verb) {
			t.Errorf("help %s: exit %d, %.80q against %.80q", verb, status, long, short)
		}
	}
	for line := range strings.Lines(helpText) {
		if len([]rune(strings.TrimSuffix(line, "\n"))) > 80 {
			t.Errorf("a line of the help is wider than 80 columns: %q", line)
		}
	}
}

func TestTheFormulaInTheHelpIsAFormula(t *testing.T) {
	text, _, _ := lyewright("", "help", "formula")
	start, end := strings.Index(text, "  {\n"), strings.Index(text, "\n  }\n")
	stdout, stderr, status := lyewright(text[start:end]+"\n}", "batch", "-json", "-")
	if status != done || !json.Valid([]byte(stdout)) {
		t.Errorf("exit %d, %s", status, stderr)
	}
}

func TestVersionNamesTheDataEdition(t *testing.T) {
	stdout, _, status := lyewright("", "version")
	if status != done || !strings.HasPrefix(stdout, "lyewright ") || !strings.Contains(stdout, "data edition "+soap.DataEdition()) || soap.DataEdition() == "" {
		t.Errorf("exit %d, %q", status, stdout)
	}
}

func TestTheOilsInJSONAreThoseOfTheLibrary(t *testing.T) {
	stdout, _, status := lyewright("", "oils", "-json")
	var list []struct {
		Oil, Name, Kind, Source string
		Saponification          *struct {
			Low, Typical, High, Middle, Profile json.Number
			How                                 string
		}
		Iodine *struct{ Low, High json.Number }
	}
	if err := json.Unmarshal([]byte(stdout), &list); err != nil || status != done {
		t.Fatal(status, err)
	}
	if len(list) != 59 {
		t.Errorf("%d oils, want 59, as soap/oiltable_test.go counts them", len(list))
	}
	for _, row := range list {
		oil, err := soap.LookUpOil(row.Oil)
		if err != nil {
			t.Error(err)
			continue
		}
		value := oil.Saponification()
		switch {
		case row.Saponification == nil:
			if value.Typical.Given() {
				t.Errorf("%s lacks its value", row.Oil)
			}
		case row.Saponification.Typical.String() != value.Typical.MilligramsPerGramText(6),
			oil.HasRange() != (row.Saponification.Low != ""),
			oil.HasRange() && row.Saponification.High.String() != value.High.MilligramsPerGramText(6),
			row.Saponification.Middle.String() != oil.Middle().MilligramsPerGramText(6),
			row.Saponification.Profile.String() != oil.ProfileValue().MilligramsPerGramText(6):
			t.Errorf("%s: %+v, want %v", row.Oil, *row.Saponification, value)
		}
		if row.Name == "" || row.Kind == "" || row.Source == "" {
			t.Errorf("%+v lacks a name, a kind or a source", row)
		}
	}
}
