package main

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/soap"
)

// toldNowhereElse are outputs that no other golden file holds: command lines as they are
// typed among the files of testdata/formulas and one of swatches, by their golden file,
// which has what is said on either side and the exit status. Behind "<" stands what is
// given on standard input.
var toldNowhereElse = map[string][]string{
	"batch-pieces":            {"batch -pieces 30 lantern-cups.json", "batch -pieces 30 -working -units oz few-moulds.json"},
	"batch-swatches":          {"batch -swatches swatches.json lantern-walk.json"},
	"batch-several":           {"batch single-bar.json wrong/unknown-oil.json none.json ounces.json"},
	"batch-lines":             {"batch -lines - <two-lines"},
	"batch-streamed":          {"batch -json - <two-lines"},
	"batch-several-json":      {"batch -json single-bar.json wrong/unknown-oil.json none.json"},
	"batch-wrong-json":        {"batch -json wrong/unknown-oil.json", "batch -json none.json", "batch -jsno -json single-bar.json"},
	"batch-unreadable":        {"batch none.json", "batch wrong", "check none.json wrong"},
	"check-several":           {"check single-bar.json wrong/unknown-oil.json wrong/cut-short.json too-much-alkali.json", "check -swatches swatches.json lantern-walk.json", "check -swatches wrong/cut-short.json lantern-walk.json"},
	"cap-of-no-fragrance":     {"cap single-bar.json"},
	"cap-eu":                  {"cap -law eu scented-cups.json"},
	"cap-swatches-and-lines":  {"cap -swatches swatches.json scented-cups.json", "cap -lines - <two-lines"},
	"tint-swatches":           {"tint -swatches swatches.json lantern-walk.json"},
	"tint-without-swatches":   {"tint single-bar.json"},
	"tint-lines":              {"tint -lines - <two-lines", "tint -lines -html page.html -"},
	"oils-json":               {"oils -json olive beeswax goose-fat stearic-acid-95"},
	"lye-wrong":               {"lye", "lye titrate", "lye titration", "lye heat -water 200", "lye density -strength 70% -temperature 40C", "lye stock -strength 50% -make 1kg -hydroxide 100g", "lye titration -json -sample 1.5g"},
	"help-of-options-astray":  {"batch -h none.json", "lye heat -h", "oils -units oz -h"},
	"colourants-and-mistakes": {"colourants titanium", "colourants -law eu"},
}

// Commands of the other golden tests, by what they show.
var toldElsewhere = []string{
	"batch -json", "batch -working", "batch -units oz", "check", "cap -json", "cap -law ifra", "cap -units oz",
	"tint -json", "tint -units oz", "tint -html", "oils", "fragrance", "fragrance -json", "colourants", "colourants -json",
	"lye", "lye -json", "version", "help",
}

// In what is shown, what depends on where and from what the program was built.
func masked(text, dir string) string {
	text = strings.ReplaceAll(text, dir+string(filepath.Separator), "")
	return regexp.MustCompile(`^lyewright \S+,`).ReplaceAllString(text, "lyewright VERSION,")
}

func TestEveryOtherOutputIsAsItsGoldenFile(t *testing.T) {
	_, swatches := apart(t)
	twoLines := oneLine(t, "lantern-walk.json", "first cups") + "\n{\"formula\": \"astray\"}\n" + oneLine(t, "single-bar.json", "second bar") + "\n"
	for name, commands := range toldNowhereElse {
		t.Run(name, func(t *testing.T) {
			wd, err := filepath.Abs(golden)
			if err != nil {
				t.Fatal(err)
			}
			dir := t.TempDir()
			if err := os.CopyFS(dir, os.DirFS(formulas)); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(filepath.Join(dir, "swatches.json"), []byte(swatches), 0o600); err != nil {
				t.Fatal(err)
			}
			t.Chdir(dir)
			var said strings.Builder
			for _, line := range commands {
				typed, _, piped := strings.Cut(line, " <")
				stdin := ""
				if piped {
					stdin = twoLines
				}
				stdout, stderr, status := lyewright(stdin, strings.Fields(typed)...)
				said.WriteString("$ lyewright " + line + "\n" + stdout)
				if stderr != "" {
					said.WriteString("-- on standard error:\n" + stderr)
				}
				said.WriteString("exit " + string(rune('0'+status)) + "\n\n")
			}
			matchGolden(t, filepath.Join(wd, name+".txt"), masked(said.String(), dir))
		})
	}
}

func TestEveryTopicOfTheHelpIsAsItsGoldenFile(t *testing.T) {
	_, topics := section("")
	for _, topic := range topics {
		stdout, stderr, status := lyewright("", "help", topic)
		if status != done || stderr != "" {
			t.Errorf("%s: exit %d, %q", topic, status, stderr)
		}
		matchGolden(t, golden+"/help-"+topic+".txt", stdout)
		for line := range strings.Lines(stdout) {
			if len([]rune(line)) > 79 {
				t.Errorf("%s: a line of %d columns: %s", topic, len([]rune(line))-1, line)
			}
		}
	}
	for _, verb := range verbs() {
		if verb != "help" && !slices.Contains(topics, verb) {
			t.Errorf("there is no help on %s", verb)
		}
	}
}

func TestTheVersionIsAsItsGoldenFile(t *testing.T) {
	stdout, _, _ := lyewright("", "version")
	matchGolden(t, golden+"/version.txt", strings.Replace(masked(stdout, ""), soap.DataEdition(), "EDITION", 1))
}

var optionOfHelp = regexp.MustCompile(`(?m)^  (?:lyewright \w+ )?\s*(-[a-z-]+)`)

// Every command and every option that its help explains has a golden file: what people
// see does not change unseen.
func TestEveryCommandAndOptionHasAGoldenFile(t *testing.T) {
	var lines []string
	for _, commands := range toldNowhereElse {
		lines = append(lines, commands...)
	}
	lines = append(lines, toldElsewhere...)
	for _, args := range lyeQuestions {
		lines = append(lines, "lye "+strings.ReplaceAll(args, "|", " "))
	}
	has := func(verb, option string) bool {
		return slices.ContainsFunc(lines, func(line string) bool {
			words := strings.Fields(line)
			return words[0] == verb && (option == "" || slices.Contains(words[1:], option))
		})
	}
	options := 0
	for _, verb := range verbs() {
		if !has(verb, "") {
			t.Errorf("no golden file shows %s", verb)
		}
		text, _ := section(verb)
		for _, match := range optionOfHelp.FindAllStringSubmatch(text, -1) {
			options++
			if !has(verb, match[1]) {
				t.Errorf("no golden file shows %s %s", verb, match[1])
			}
		}
	}
	if options < 25 {
		t.Errorf("%d options were found in the help", options)
	}
}
