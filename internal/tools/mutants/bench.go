package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"
)

// A mutant is a wrong program: some files in place of the checkout's.
type mutant struct {
	name    string
	changed map[string]string
	tests   []string // packages to test, in order, as "./soap"
	first   first    // asked before all others; may be empty
}

// A verdict is what came of a mutant.
type verdict int

const (
	lived        verdict = iota // every test passed
	killed                      // a test failed
	panicked                    // a test stopped the program
	timedOut                    // the tests did not end
	notCompiling                // it is no program
	notApplying                 // the patch does not fit the checkout
	setupFailed                 // no test of it ran
)

func (v verdict) String() string {
	return [...]string{"LIVED", "killed", "PANICKED", "TIMED OUT", "DOES NOT COMPILE", "DOES NOT APPLY", "NO TEST RAN"}[v]
}

// An outcome is a verdict, and what it rests on.
type outcome struct {
	verdict verdict
	by      string // the package and the test that failed first, or what went wrong
	dir     string // that package, as "./soap"
	test    string // that test; empty where none failed
	took    time.Duration
}

// A bench builds and tests programs in a directory of its own.
type bench struct {
	program *program
	dir     string
	timeout time.Duration // of one package's tests
	aimed   bool          // try each mutant with the tests that reach it alone, the quick ones first

	mu sync.Mutex
}

// A testBinary holds the tests of a package.
type testBinary struct {
	path      string
	dir       string // that its tests run in
	goldenOff bool   // it knows the switch

	// What a survey found: the tests that reach each mutant, the quickest first.
	surveyed bool
	reach    map[int][]aimedTest
}

// An aimedTest is a test by its name, and how long it takes.
type aimedTest struct {
	name string
	took time.Duration
}

// testsAndFuzz leaves examples out: what they print is our own output. Ceilings of allocations are skipped: functions
// that hold several bodies keep more on the heap, so they would fail without being wrong.
const (
	testsAndFuzz = "^(Test|Fuzz)"
	ceilings     = "AllocatesLittle" // the end of their names
)

// build builds the tests of packages, with files in place of the checkout's.
func (b *bench) build(into string, files map[string]string, packages []string) (map[string]*testBinary, error) {
	out := filepath.Join(b.dir, into)
	if err := os.MkdirAll(out, 0o755); err != nil {
		return nil, err
	}
	overlay := struct{ Replace map[string]string }{map[string]string{}}
	n := 0
	for file, text := range files {
		n++
		copied := filepath.Join(out, strconv.Itoa(n)+"-"+filepath.Base(file))
		if err := os.WriteFile(copied, []byte(text), 0o644); err != nil {
			return nil, err
		}
		overlay.Replace[filepath.Join(b.program.root, filepath.FromSlash(file))] = copied
	}
	text, err := json.Marshal(overlay)
	if err != nil {
		return nil, err
	}
	list := filepath.Join(out, "overlay.json")
	if err := os.WriteFile(list, text, 0o644); err != nil {
		return nil, err
	}
	args := []string{"test", "-c", "-vet=off", "-overlay", list, "-o", out + string(filepath.Separator)}
	build := exec.Command("go", append(args, packages...)...)
	build.Dir = b.program.root
	if said, err := build.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("%s: %w\n%s", strings.Join(packages, " "), err, said)
	}
	built := map[string]*testBinary{}
	for _, dir := range packages {
		t := &testBinary{
			path: filepath.Join(out, path.Base(dir)+".test"),
			dir:  filepath.Join(b.program.root, filepath.FromSlash(dir)),
		}
		if _, err := os.Stat(t.path); err != nil {
			return nil, fmt.Errorf("%s has no tests", dir)
		}
		ask := exec.Command(t.path, "-golden=off", "-test.list", "^$")
		ask.Dir = t.dir
		t.goldenOff = ask.Run() == nil
		built[dir] = t
	}
	return built, nil
}

// run runs tests of a package with a mutant switched on; 0 is none.
func (b *bench) run(t *testBinary, mutant int, tests string) outcome {
	ctx, stop := context.WithTimeout(context.Background(), b.timeout)
	defer stop()
	args := []string{"-test.run", tests, "-test.skip", ceilings + "$", "-test.failfast"}
	if t.goldenOff {
		args = append(args, "-golden=off")
	}
	test := exec.CommandContext(ctx, t.path, args...)
	test.Dir = t.dir
	test.Env = append(os.Environ(), switchEnvironment+"="+strconv.Itoa(mutant), reachedEnvironment+"="+t.reached())
	test.WaitDelay = time.Second
	var said bytes.Buffer
	test.Stdout, test.Stderr = &said, &said
	begun := time.Now()
	err := test.Run()
	o := judged(said.String(), err, ctx.Err() != nil)
	o.took = time.Since(begun)
	return o
}

var (
	failed = regexp.MustCompile(`(?m)^--- FAIL: (\S+)`)
	panics = regexp.MustCompile(`(?m)^(panic: .*|fatal error: .*)`)
)

// judged tells from what a test binary said what came of it.
func judged(said string, err error, late bool) outcome {
	switch {
	case late:
		return outcome{verdict: timedOut}
	case err == nil:
		if strings.Contains(said, "no tests to run") {
			return outcome{verdict: setupFailed, by: "no such test"}
		}
		return outcome{verdict: lived}
	}
	by := ""
	if m := failed.FindStringSubmatch(said); m != nil {
		by = m[1]
	}
	if m := panics.FindStringSubmatch(said); m != nil {
		if by == "" {
			return outcome{verdict: setupFailed, by: m[1]}
		}
		return outcome{verdict: panicked, by: by + ": " + m[1]}
	}
	var exit *exec.ExitError
	if by == "" || !errors.As(err, &exit) {
		return outcome{verdict: setupFailed, by: strings.TrimSpace(err.Error() + " " + said)}
	}
	return outcome{verdict: killed, by: by, test: by}
}

// try tests one mutant, package by package, until one of them stops it.
func (b *bench) try(m *mutant, binaries map[string]*testBinary, number int) outcome {
	type question struct{ dir, tests string }
	var asked []question
	if m.first.test != "" {
		asked = append(asked, question{m.first.dir, "^" + m.first.test + "$"})
	}
	for _, dir := range m.tests {
		for _, tests := range binaries[dir].questions(number) {
			asked = append(asked, question{dir, tests})
		}
	}
	all := outcome{verdict: lived}
	for _, q := range asked {
		o := b.run(binaries[q.dir], number, q.tests)
		all.took += o.took
		if o.verdict == lived || o.verdict == setupFailed && q.tests != testsAndFuzz {
			continue
		}
		all.verdict, all.by = o.verdict, strings.TrimPrefix(q.dir, "./")+" "+o.by
		all.dir, all.test = q.dir, o.test
		return all
	}
	return all
}

// tryAll tests mutants, so many at a time. each is called with every outcome as it comes. What kills a mutant counts
// for nothing where it fails of the right program, too: that is an error.
func (b *bench) tryAll(mutants []mutant, workers int, each func(i int, o outcome)) error {
	files, alone, err := together(b.program, mutants)
	if err != nil {
		return err
	}
	var packages []string
	for i := range mutants {
		for _, dir := range mutants[i].tests {
			if !slices.Contains(packages, dir) {
				packages = append(packages, dir)
			}
		}
	}
	binaries, err := b.build("together", files, packages)
	if err != nil {
		return fmt.Errorf("the mutants do not build together: %w", err)
	}
	if b.aimed {
		err := b.passes(packages, workers, func(dir string) outcome { return b.survey(binaries[dir]) })
		if err != nil {
			return err
		}
	}
	outcomes := make([]outcome, len(mutants))
	parallel(len(mutants), workers, func(i int) {
		m, with, number := &mutants[i], binaries, i+1
		if alone[i] {
			number = 0
			own, err := b.build("alone-"+strconv.Itoa(i), m.changed, m.tests)
			if err != nil {
				outcomes[i] = outcome{verdict: notCompiling, by: err.Error()}
				each(i, outcomes[i])
				return
			}
			with = own
		}
		outcomes[i] = b.try(m, with, number)
		each(i, outcomes[i])
	})
	if b.aimed {
		return nil
	}
	killers := map[string][]string{}
	for i := range outcomes {
		if o := &outcomes[i]; o.test != "" && !slices.Contains(killers[o.dir], o.test) {
			killers[o.dir] = append(killers[o.dir], o.test)
		}
	}
	return b.passes(packages, workers, func(dir string) outcome {
		if killers[dir] == nil {
			return outcome{verdict: lived}
		}
		return b.run(binaries[dir], 0, "^("+strings.Join(killers[dir], "|")+")$")
	})
}

// passes runs tests of packages on the right program. The error names what does not pass.
func (b *bench) passes(packages []string, workers int, run func(dir string) outcome) error {
	failures := make([]error, len(packages))
	parallel(len(packages), workers, func(i int) {
		if o := run(packages[i]); o.verdict != lived {
			failures[i] = fmt.Errorf("%s: the right program does not pass: %s %s", packages[i], o.verdict, o.by)
		}
	})
	return errors.Join(failures...)
}

// parallel does n things, so many at a time.
func parallel(n, workers int, do func(i int)) {
	next, wait := make(chan int), sync.WaitGroup{}
	for range workers {
		wait.Go(func() {
			for i := range next {
				do(i)
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	wait.Wait()
}
