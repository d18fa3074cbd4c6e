package main

import (
	"errors"
	"io/fs"
	"os"
	"os/exec"
	"slices"
	"strconv"
	"strings"
	"time"
)

// A test that never comes to the function that a mutant changes cannot notice it. Where
// many mutants are tried, each test of the right program is therefore run by itself first,
// to see which functions it reaches and how long it takes.

// reached is the file in which a survey writes down what is reached.
func (t *testBinary) reached() string { return t.path + ".reached" }

// survey runs every test of a package by itself.
func (b *bench) survey(t *testBinary) outcome {
	list := exec.Command(t.path, "-test.list", testsAndFuzz)
	list.Dir = t.dir
	names, err := list.Output()
	if err != nil {
		return outcome{verdict: setupFailed, by: err.Error()}
	}
	t.surveyed, t.reach = true, map[int][]aimedTest{}
	for _, name := range strings.Fields(string(names)) {
		if strings.HasSuffix(name, ceilings) {
			continue
		}
		if err := os.Remove(t.reached()); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return outcome{verdict: setupFailed, by: err.Error()}
		}
		o := b.run(t, survey, "^"+name+"$")
		if o.verdict != lived {
			return o
		}
		text, err := os.ReadFile(t.reached())
		if err != nil && !errors.Is(err, fs.ErrNotExist) {
			return outcome{verdict: setupFailed, by: err.Error()}
		}
		for _, line := range strings.Fields(string(text)) {
			if mutant, err := strconv.Atoi(line); err == nil && !slices.ContainsFunc(t.reach[mutant], func(known aimedTest) bool { return known.name == name }) {
				t.reach[mutant] = append(t.reach[mutant], aimedTest{name, o.took})
			}
		}
	}
	for _, tests := range t.reach {
		slices.SortStableFunc(tests, func(a, b aimedTest) int { return int(a.took - b.took) })
	}
	return outcome{verdict: lived}
}

// inOneRun is how long the tests of one run may take altogether.
const inOneRun = 300 * time.Millisecond

// questions are the runs that ask about a mutant: all tests at once, or those that reach it,
// in runs of growing length. A mutant that was built alone has no number.
func (t *testBinary) questions(mutant int) []string {
	if !t.surveyed || mutant == 0 {
		return []string{testsAndFuzz}
	}
	var runs []string
	var names []string
	var took time.Duration
	end := func() {
		if len(names) > 0 {
			runs = append(runs, "^("+strings.Join(names, "|")+")$")
			names, took = nil, 0
		}
	}
	for _, test := range t.reach[mutant] {
		if took > 0 && took+test.took > inOneRun {
			end()
		}
		names, took = append(names, test.name), took+test.took
	}
	end()
	return runs
}
