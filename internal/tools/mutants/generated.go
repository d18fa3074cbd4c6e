package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// rooms are the packages in which mistakes are made, by room.
var rooms = []string{"units", "soap", "soap/lye", "soap/mould", "fragrance", "colour", "colour/tint"}

// generated tries a sample of the mistakes that rules make, and writes the report. ok is
// false where one was not noticed and the report does not say why.
func generated(o *options, out io.Writer) (ok bool, err error) {
	p, err := load(o.root)
	if err != nil {
		return false, err
	}
	var byPackage [][]change
	r := &report{options: o, edition: map[string]int{}}
	for _, dir := range rooms {
		found, err := p.changesIn(p.packages[dir])
		if err != nil {
			return false, err
		}
		r.generated += len(found)
		r.edition[dir] = len(found)
		byPackage = append(byPackage, found)
	}
	path := filepath.Join(p.root, filepath.FromSlash(o.report))
	if r.reasons, err = readReasons(path); err != nil {
		return false, err
	}
	var mutants []mutant
	var tried []change
	for _, c := range chosen(byPackage, o.sample, o.seed) {
		if !strings.Contains(c.key(), o.only) {
			continue
		}
		text, err := p.read(c.file)
		if err != nil {
			return false, err
		}
		m := mutant{name: c.key(), changed: map[string]string{c.file: c.apply(text)}}
		if err := p.compiles(m.changed); err != nil {
			r.add(c, outcome{verdict: notCompiling, by: err.Error()})
			continue
		}
		for _, dir := range p.dependents(strings.TrimSuffix(filepath.ToSlash(filepath.Dir(c.file)), "/")) {
			if p.packages[dir].tested() {
				m.tests = append(m.tests, "./"+dir)
			}
		}
		mutants, tried = append(mutants, m), append(tried, c)
	}
	dir, err := os.MkdirTemp("", "mutants-")
	if err != nil {
		return false, err
	}
	defer func() { _ = os.RemoveAll(dir) }()
	b := &bench{program: p, dir: dir, timeout: o.timeout}
	begun := time.Now()
	err = b.tryAll(mutants, o.workers, func(i int, v outcome) {
		b.mu.Lock()
		defer b.mu.Unlock()
		r.add(tried[i], v)
		_, _ = fmt.Fprintf(out, "%-10s %s:%d %s  %s (%.1f s)\n", v.verdict, tried[i].file, tried[i].line, tried[i].key(), v.by, v.took.Seconds())
	})
	if err != nil {
		return false, err
	}
	_, _ = fmt.Fprintf(out, "%d tried in %.0f s\n", len(mutants), time.Since(begun).Seconds())
	if o.only != "" { // a part is no report
		return len(r.unexplained()) == 0, nil
	}
	if err := os.WriteFile(path, []byte(r.text()), 0o644); err != nil {
		return false, err
	}
	unexplained := r.unexplained()
	for _, c := range unexplained {
		_, _ = fmt.Fprintf(out, "no reason: %s:%d %s\n", c.file, c.line, c.key())
	}
	return len(unexplained) == 0, nil
}

// report is what came of a sample.
type report struct {
	options   *options
	generated int
	edition   map[string]int // how many each package has
	reasons   map[string]string
	results   []result
}

type result struct {
	change
	outcome
}

func (r *report) add(c change, o outcome) { r.results = append(r.results, result{c, o}) }

// unexplained lists what lived without a reason.
func (r *report) unexplained() (list []change) {
	for _, x := range r.results {
		if (x.verdict == lived || x.verdict == setupFailed) && r.reasons[x.key()] == "" {
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

// readReasons reads why mutants live from an earlier report; there need not be one.
func readReasons(path string) (map[string]string, error) {
	reasons := map[string]string{}
	text, err := os.ReadFile(path)
	if os.IsNotExist(err) {
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
			continue
		}
		_, key, _ = strings.Cut(line, " | ")
	}
	return reasons, nil
}

// text writes the report.
func (r *report) text() string {
	var b strings.Builder
	say := func(format string, a ...any) { _, _ = fmt.Fprintf(&b, format+"\n", a...) }
	counts := map[verdict]int{}
	type tally struct{ tried, noticed, lived int }
	byOperator := map[string]*tally{}
	for _, o := range operatorNames {
		byOperator[o.name] = &tally{}
	}
	for _, x := range r.results {
		counts[x.verdict]++
		if x.verdict == notCompiling {
			continue
		}
		t := byOperator[x.operator]
		t.tried++
		if x.verdict == lived || x.verdict == setupFailed {
			t.lived++
		} else {
			t.noticed++
		}
	}
	say("Wrong programs made by rule, and what the tests made of them. Golden files were")
	say("switched off and examples left out. Made again by hand, reasons kept, by")
	say("")
	say("    go -C internal/tools run ./mutants -seed %d -sample %d -timeout %s generated", r.options.seed, r.options.sample, r.options.timeout)
	say("")
	say("A mutant is tried with the tests of its own package, then with those of every package")
	say("that imports it, until one fails. The sample is drawn from each package by the root of")
	say("how many the rules make there.")
	say("")
	var made []string
	for _, dir := range rooms {
		made = append(made, fmt.Sprintf("%s %d", dir, r.edition[dir]))
	}
	say("generated       %5d  (%s)", r.generated, strings.Join(made, ", "))
	say("sampled         %5d", len(r.results))
	say("not compiling   %5d", counts[notCompiling])
	say("killed          %5d  a test failed", counts[killed])
	say("panicked        %5d  a test was stopped by a panic", counts[panicked])
	say("timed out       %5d  the tests did not end", counts[timedOut])
	say("survived        %5d", counts[lived]+counts[setupFailed])
	say("")
	say("operator      tried  noticed  survived")
	for _, o := range operatorNames {
		t := byOperator[o.name]
		say("%-12s %6d %8d %9d  %s", o.name, t.tried, t.noticed, t.lived, o.means)
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
		if x.verdict != lived && x.verdict != setupFailed {
			continue
		}
		say("")
		say("%s:%d | %s", x.file, x.line, x.key())
		reason := r.reasons[x.key()]
		if reason == "" {
			reason = unknown
		}
		say("%s%s", why, reason)
	}
	say("")
	say("Timed out")
	for _, x := range r.results {
		if x.verdict == timedOut {
			say("%s:%d | %s", x.file, x.line, x.key())
		}
	}
	return b.String()
}
