package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"sync"
	"time"
)

// written tries the patches. ok is false where one did not make a test fail.
func written(o *options, out io.Writer) (ok bool, err error) {
	begun := time.Now()
	p, err := load(o.root)
	if err != nil {
		return false, err
	}
	patches, err := readPatches(filepath.Join(p.root, "testdata", "mutants"))
	if err != nil {
		return false, err
	}
	dir, err := os.MkdirTemp("", "mutants-")
	if err != nil {
		return false, err
	}
	defer func() { _ = os.RemoveAll(dir) }()

	var mutants []mutant
	counts := map[verdict]int{}
	var mu sync.Mutex
	say := func(name string, v outcome) {
		mu.Lock()
		defer mu.Unlock()
		counts[v.verdict]++
		_, _ = fmt.Fprintf(out, "%-16s %-44s %s (%.1f s)\n", v.verdict, name, v.by, v.took.Seconds())
	}
	for i := range patches {
		if !o.only.MatchString(patches[i].name) {
			continue
		}
		m, v := patches[i].mutant(p)
		if v.verdict != lived {
			say(patches[i].name, v)
			continue
		}
		mutants = append(mutants, m)
	}
	b := &bench{program: p, dir: dir, timeout: o.timeout}
	if err := b.tryAll(mutants, o.workers, func(i int, v outcome) { say(mutants[i].name, v) }); err != nil {
		return false, err
	}
	total := 0
	for _, n := range counts {
		total += n
	}
	_, _ = fmt.Fprintf(out, "%d wrong programs, %d killed, %.0f s\n", total, counts[killed], time.Since(begun).Seconds())
	return total > 0 && counts[killed] == total, nil
}

// mutant applies a patch. The verdict is lived where it is a program to be tried.
func (p *patch) mutant(prog *program) (mutant, outcome) {
	changed, err := p.apply(prog.read)
	if err != nil {
		return mutant{}, outcome{verdict: notApplying, by: err.Error()}
	}
	if err := prog.compiles(changed); err != nil {
		return mutant{}, outcome{verdict: notCompiling, by: err.Error()}
	}
	return mutant{name: p.name, changed: changed, tests: p.tests, first: p.first}, outcome{verdict: lived}
}
