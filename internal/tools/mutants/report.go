package main

import (
	"bufio"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"regexp"
	"slices"
	"strings"
)

// A report is what came of a sample.
type report struct {
	options   *options
	generated int
	of        map[string]int // how many each package has
	reasons   map[string]string
	results   []result
}

type result struct {
	change
	outcome
}

func (r *report) add(c change, o outcome) { r.results = append(r.results, result{c, o}) }

// noticed reports whether something of the tests said no.
func (v verdict) noticed() bool { return v == killed || v == panicked || v == timedOut }

// unexplained lists what lived without a reason.
func (r *report) unexplained() (list []change) {
	for _, x := range r.results {
		if x.verdict != notCompiling && !x.verdict.noticed() && r.reasons[x.key()] == "" {
			list = append(list, x.change)
		}
	}
	return list
}

// The report says under every survivor why it lives; whoever reads it puts a reason in
// place of the mark.
const (
	why     = "    why: "
	unknown = "?"
)

// placed is a line of the report that names a mutant: its file, its line, the rest.
var placed = regexp.MustCompile(`^(\S+\.go):\d+ (.* → .*)$`)

// readReasons reads why mutants live from an earlier report; there need not be one.
func readReasons(path string) (map[string]string, error) {
	reasons := map[string]string{}
	text, err := os.ReadFile(path)
	if errors.Is(err, fs.ErrNotExist) {
		return reasons, nil
	} else if err != nil {
		return nil, err
	}
	key := ""
	for line := range strings.Lines(string(text)) {
		line = strings.TrimSuffix(line, "\n")
		if reason, ok := strings.CutPrefix(line, why); ok {
			if reason = strings.TrimSpace(reason); reason != unknown {
				reasons[key] = reason
			}
		} else if m := placed.FindStringSubmatch(line); m != nil {
			key = m[1] + " " + m[2]
		}
	}
	return reasons, nil
}

// text writes the report.
func (r *report) text() string {
	var b strings.Builder
	say := func(format string, a ...any) { _, _ = fmt.Fprintf(&b, format+"\n", a...) }
	counts := map[verdict]int{}
	type tally struct{ tried, noticed int }
	byOperator := map[string]*tally{}
	for _, o := range operatorNames {
		byOperator[o.name] = &tally{}
	}
	survived := 0
	for _, x := range r.results {
		counts[x.verdict]++
		if x.verdict == notCompiling {
			continue
		}
		t := byOperator[x.operator]
		t.tried++
		if x.verdict.noticed() {
			t.noticed++
		} else {
			survived++
		}
	}
	say("Wrong programs made by rule, and what the tests made of them. Golden files were")
	say("switched off and examples left out. Made again by hand, with its reasons kept, by")
	say("")
	say("    go -C internal/tools run ./mutants -seed %d -sample %d -timeout %s generated", r.options.seed, r.options.sample, r.options.timeout)
	say("")
	say("A mutant is tried with the tests of its own package, then with those of every package")
	say("that imports it, until one fails; tests that never come to its function are left out.")
	say("The sample is drawn from each package by the root of how many the rules make there.")
	say("")
	var made []string
	for _, dir := range rooms {
		made = append(made, fmt.Sprintf("%s %d", dir, r.of[dir]))
	}
	say("seed            %5d", r.options.seed)
	say("generated       %5d  (%s)", r.generated, strings.Join(made, ", "))
	say("sampled         %5d", len(r.results))
	say("not compiling   %5d", counts[notCompiling])
	say("killed          %5d  a test failed", counts[killed])
	say("panicked        %5d  a test was stopped by a panic", counts[panicked])
	say("timed out       %5d  the tests did not end", counts[timedOut])
	say("survived        %5d  listed below, each with the reason", survived)
	say("")
	say("operator      tried  noticed  survived")
	for _, o := range operatorNames {
		t := byOperator[o.name]
		say("%-12s %6d %8d %9d  %s", o.name, t.tried, t.noticed, t.tried-t.noticed, o.means)
	}
	say("")
	say("Survivors")
	slices.SortStableFunc(r.results, func(a, b result) int {
		if a.file != b.file {
			return strings.Compare(a.file, b.file)
		}
		return a.start - b.start
	})
	for _, x := range r.results {
		if x.verdict == notCompiling || x.verdict.noticed() {
			continue
		}
		say("")
		say("%s", x.String())
		reason := r.reasons[x.key()]
		if reason == "" {
			reason = unknown
		}
		say("%s%s", why, reason)
	}
	if counts[timedOut] > 0 {
		say("")
		say("Timed out")
		say("")
		for _, x := range r.results {
			if x.verdict == timedOut {
				say("%s", x.String())
			}
		}
	}
	return b.String()
}

// readLog reads the outcomes of an earlier run; there need not be one.
func readLog(path string) (map[string]outcome, error) {
	known := map[string]outcome{}
	if path == "" {
		return known, nil
	}
	file, err := os.Open(path)
	if errors.Is(err, fs.ErrNotExist) {
		return known, nil
	} else if err != nil {
		return nil, err
	}
	defer func() { _ = file.Close() }()
	lines := bufio.NewScanner(file)
	for lines.Scan() {
		fields := strings.Split(lines.Text(), "\t")
		for v := lived; v <= setupFailed; v++ {
			if len(fields) == 3 && fields[0] == v.String() && v.noticed() {
				known[fields[1]] = outcome{verdict: v, by: fields[2]}
			}
		}
	}
	return known, lines.Err()
}
