package main

import (
	"fmt"
	"io"
	"os"
	"path"
	"path/filepath"
	"strconv"
	"time"
)

// rooms are the packages in which mistakes are made.
var rooms = []string{"units", "soap", "soap/lye", "soap/mould", "fragrance", "colour", "colour/tint"}

// generated tries a sample of the mistakes that rules make, and writes the report. ok is
// false where one was not noticed and the report does not say why.
func generated(o *options, out io.Writer) (ok bool, err error) {
	p, err := load(o.root)
	if err != nil {
		return false, err
	}
	r := &report{options: o, of: map[string]int{}}
	reportPath := filepath.Join(p.root, filepath.FromSlash(o.report))
	if r.reasons, err = readReasons(reportPath); err != nil {
		return false, err
	}
	known, err := readLog(o.log)
	if err != nil {
		return false, err
	}
	var byPackage [][]change
	for _, dir := range rooms {
		found, err := p.changesIn(p.packages[dir])
		if err != nil {
			return false, err
		}
		r.generated += len(found)
		r.of[dir] = len(found)
		byPackage = append(byPackage, found)
	}
	var mutants []mutant
	var tried []change
	for _, c := range chosen(byPackage, o.sample, o.seed) {
		if !o.only.MatchString(c.key()) {
			continue
		}
		if v, ok := known[logged(&c)]; ok {
			r.add(c, v)
			continue
		}
		m, err := p.mutant(&c)
		if err != nil {
			return false, err
		}
		if err := p.compiles(m.changed); err != nil {
			r.add(c, outcome{verdict: notCompiling, by: err.Error()})
			continue
		}
		mutants, tried = append(mutants, m), append(tried, c)
	}
	if err := r.try(p, mutants, tried, out); err != nil {
		return false, err
	}
	unexplained := r.unexplained()
	for i := range unexplained {
		_, _ = fmt.Fprintf(out, "no reason: %s\n", unexplained[i].String())
	}
	if o.only.String() == "" { // a part is no report
		if err := os.WriteFile(reportPath, []byte(r.text()), 0o644); err != nil {
			return false, err
		}
	}
	return len(unexplained) == 0, nil
}

// try tries what is not known yet.
func (r *report) try(p *program, mutants []mutant, tried []change, out io.Writer) error {
	if len(mutants) == 0 {
		return nil
	}
	dir, err := os.MkdirTemp("", "mutants-")
	if err != nil {
		return err
	}
	defer func() { _ = os.RemoveAll(dir) }()
	var log io.Writer = io.Discard
	if r.options.log != "" {
		file, err := os.OpenFile(r.options.log, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o644)
		if err != nil {
			return err
		}
		defer func() { _ = file.Close() }()
		log = file
	}
	b := &bench{program: p, dir: dir, timeout: r.options.timeout, aimed: true}
	begun := time.Now()
	var failed error
	err = b.tryAll(mutants, r.options.workers, func(i int, v outcome) {
		b.mu.Lock()
		defer b.mu.Unlock()
		r.add(tried[i], v)
		_, _ = fmt.Fprintf(out, "%-10s %s  %s (%.1f s)\n", v.verdict, tried[i].String(), short(v.by), v.took.Seconds())
		if _, err := fmt.Fprintf(log, "%s\t%s\t%s\n", v.verdict, logged(&tried[i]), short(v.by)); err != nil {
			failed = err
		}
	})
	if err != nil {
		return err
	}
	_, _ = fmt.Fprintf(out, "%d tried in %.0f s\n", len(mutants), time.Since(begun).Seconds())
	return failed
}

// logged names a change in the log of a run: where it stands, to the byte.
func logged(c *change) string { return c.String() + " @" + strconv.Itoa(c.start) }

// mutant makes a change a program to be tried: with the tests of its package, and then of
// all that import it.
func (p *program) mutant(c *change) (mutant, error) {
	text, err := p.read(c.file)
	if err != nil {
		return mutant{}, err
	}
	m := mutant{name: c.key(), changed: map[string]string{c.file: c.apply(text)}}
	for _, dir := range p.dependents(path.Dir(c.file)) {
		if p.packages[dir].tested() {
			m.tests = append(m.tests, "./"+dir)
		}
	}
	return m, nil
}
