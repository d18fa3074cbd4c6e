package main

import (
	"strings"
	"sync"
	"testing"
	"time"
)

const (
	rightProgram = `package scale

func Twice(n int) int { return 2 * n }

const grain = 1

func Grain() int { return grain }

func unseen() int { return 1 }
`
	itsTests = `package scale

import "testing"

func TestTwice(t *testing.T) {
	if Twice(3) != 6 {
		t.Error(Twice(3))
	}
}

func TestGrain(t *testing.T) {
	if Grain() != 1 {
		t.Error(Grain())
	}
	_ = unseen()
}

func ExampleTwice() {
	println()
	// Output:
}
`
)

func outcomes(t *testing.T, p *program, mutants []mutant) []outcome {
	t.Helper()
	b := &bench{program: p, dir: t.TempDir(), timeout: 5 * time.Second}
	var mu sync.Mutex
	all := make([]outcome, len(mutants))
	if err := b.tryAll(mutants, 2, func(i int, o outcome) {
		mu.Lock()
		defer mu.Unlock()
		all[i] = o
	}); err != nil {
		t.Fatal(err)
	}
	return all
}

func TestEveryVerdictIsToldFromTheOthers(t *testing.T) {
	p := module(t, map[string]string{"scale/scale.go": rightProgram, "scale/scale_test.go": itsTests})
	rows := []struct {
		from, to string
		want     verdict
		by       string
	}{
		{"return 2 * n", "return 2 + n", killed, "TestTwice"},
		{"const grain = 1", "const grain = 2", killed, "TestGrain"}, // built alone
		{"unseen() int { return 1 }", "unseen() int { return 2 }", lived, ""},
		{"return 2 * n", "panic(n)", panicked, "TestTwice"},
		{"return 2 * n", "for {\n}", timedOut, ""},
		{"const grain = 1", "const grain = 1\nfunc init() { panic(1) }", setupFailed, "panic: 1"},
	}
	var mutants []mutant
	for _, row := range rows {
		mutants = append(mutants, mutant{changed: map[string]string{"scale/scale.go": strings.Replace(rightProgram, row.from, row.to, 1)}, tests: []string{"./scale"}})
	}
	for i, o := range outcomes(t, p, mutants) {
		if o.verdict != rows[i].want || !strings.Contains(o.by, rows[i].by) {
			t.Errorf("%s: %s %q, want %s %q", rows[i].to, o.verdict, o.by, rows[i].want, rows[i].by)
		}
	}
	if text, err := p.read("scale/scale.go"); err != nil || text != rightProgram {
		t.Errorf("the program was touched: %q, %v", text, err)
	}
}

func TestATestThatIsAskedFirstDoesNotStandForTheOthers(t *testing.T) {
	p := module(t, map[string]string{"scale/scale.go": rightProgram, "scale/scale_test.go": itsTests})
	wrong := map[string]string{"scale/scale.go": strings.Replace(rightProgram, "2 * n", "3 * n", 1)}
	for _, test := range []string{"TestTwice", "TestGrain", "TestThatIsGone"} {
		o := outcomes(t, p, []mutant{{changed: wrong, tests: []string{"./scale"}, first: first{"./scale", test}}})
		if o[0].verdict != killed || !strings.Contains(o[0].by, "TestTwice") {
			t.Errorf("after %s: %s %s", test, o[0].verdict, o[0].by)
		}
	}
}

func TestATestThatTheRightProgramFailsKillsNothing(t *testing.T) {
	right := strings.Replace(rightProgram, "2 * n", "2 + n", 1)
	p := module(t, map[string]string{"scale/scale.go": right, "scale/scale_test.go": itsTests})
	b := &bench{program: p, dir: t.TempDir(), timeout: 5 * time.Second}
	for _, change := range [][2]string{{"2 + n", "4 + n"}, {"grain = 1", "grain = 2"}} { // the second is built alone
		wrong := map[string]string{"scale/scale.go": strings.Replace(right, change[0], change[1], 1)}
		err := b.tryAll([]mutant{{changed: wrong, tests: []string{"./scale"}}}, 1, func(int, outcome) {})
		if err == nil || !strings.Contains(err.Error(), "does not pass") || !strings.Contains(err.Error(), "TestTwice") {
			t.Errorf("%s: %v", change[1], err)
		}
	}
}

// A mutant that does not compile is not killed: no test has noticed anything.
func TestWhatDoesNotCompileOrApplyIsNotKilled(t *testing.T) {
	p := module(t, map[string]string{"scale/scale.go": rightProgram, "scale/scale_test.go": itsTests})
	patched := func(old, now string) *patch {
		return &patch{name: "wrong", tests: []string{"./scale"}, hunks: []hunk{{"scale/scale.go", []string{old}, []string{now}}}}
	}
	for _, row := range []struct {
		patch *patch
		want  verdict
	}{
		{patched("func Twice(n int) int { return 2 * n }", "func Twice(n int) int { return 2 + n }"), lived}, // still to be tried
		{patched("func Twice(n int) int { return 2 * n }", "func Twice(n int) int { return two * n }"), notCompiling},
		{patched("func Twice(n int) int { return 2 * n }", "func Twice(n int) int { m := n; return 2 * n }"), notCompiling},
		{patched("func Thrice(n int) int { return 3 * n }", ""), notApplying},
	} {
		if _, o := row.patch.mutant(p); o.verdict != row.want {
			t.Errorf("%+v: %s %s, want %s", row.patch.hunks, o.verdict, o.by, row.want)
		}
	}
}

// Where it is known which tests reach a mutant, the others are not asked; one that no test
// reaches lives.
func TestASurveyAimsTheTests(t *testing.T) {
	p := module(t, map[string]string{"scale/scale.go": rightProgram, "scale/scale_test.go": itsTests})
	var mutants []mutant
	for _, change := range [][2]string{{"return 2 * n", "return 2 + n"}, {"return grain }", "return 2 }"}, {"unseen() int { return 1 }", "unseen() int { return 2 }"}} {
		mutants = append(mutants, mutant{changed: map[string]string{"scale/scale.go": strings.Replace(rightProgram, change[0], change[1], 1)}, tests: []string{"./scale"}})
	}
	files, _, err := together(p, mutants)
	if err != nil {
		t.Fatal(err)
	}
	b := &bench{program: p, dir: t.TempDir(), timeout: 5 * time.Second, aimed: true}
	binaries, err := b.build("together", files, []string{"./scale"})
	if err != nil {
		t.Fatal(err)
	}
	scale := binaries["./scale"]
	if o := b.survey(scale); o.verdict != lived {
		t.Fatal(o)
	}
	for i, want := range []string{"^(TestTwice)$", "^(TestGrain)$", "^(TestGrain)$"} {
		if got := strings.Join(scale.questions(i+1), " "); got != want {
			t.Errorf("mutant %d is asked %s, want %s", i+1, got, want)
		}
	}
	if got := strings.Join(scale.questions(0), " "); got != testsAndFuzz {
		t.Errorf("a program that was built alone is asked %s", got)
	}
	for i, want := range []verdict{killed, killed, lived} {
		if o := b.try(&mutants[i], binaries, i+1); o.verdict != want {
			t.Errorf("mutant %d: %s %s, want %s", i+1, o.verdict, o.by, want)
		}
	}
}
