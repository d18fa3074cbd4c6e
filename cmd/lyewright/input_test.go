package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"testing/iotest"

	"example.com/lyewright/soap"
)

func TestLinesAnswerAlikeHoweverTheyEnd(t *testing.T) {
	one, two := oneLine(t, "lantern-walk.json", "one"), oneLine(t, "ounces.json", "two")
	want, _, _ := lyewright(one+"\n"+two+"\n", "batch", "-json", "-lines", "-")
	if got := origins(t, want); len(got) != 2 || got[0].InputLine != 1 || got[1].InputLine != 2 {
		t.Fatalf("%v", got)
	}
	for name, stdin := range map[string]string{
		"no newline at the end": one + "\n" + two,
		"carriage returns":      one + "\r\n" + two + "\r\n",
		"blanks around":         "  " + one + "\t\n" + two + "  ",
		"blank lines behind":    one + "\n" + two + "\n\n \r\n\n",
	} {
		for _, args := range [][]string{
			{"batch", "-json", "-"},
			{"batch", "-json", "-lines", "-"},
			{"batch", "-lines", "-", "-json"},
		} {
			if got, stderr, status := lyewright(stdin, args...); got != want || status != done {
				t.Errorf("%s, %v: exit %d, %.100q, %q", name, args, status, got, stderr)
			}
		}
	}
	// a byte at a time, as a slow pipe gives it
	var slowly bytes.Buffer
	if status := run([]string{"batch", "-json", "-"}, iotest.OneByteReader(strings.NewReader(one+"\n"+two)), &slowly,
		io.Discard); status != done || slowly.String() != want {
		t.Errorf("a byte at a time: exit %d, %.100q", status, slowly.String())
	}
}

func TestAFormulaAloneIsNoLine(t *testing.T) {
	one := oneLine(t, "lantern-walk.json", "one")
	fromFile, _, _ := lyewright("", "batch", "-json", formulas+"/lantern-walk.json")
	pretty, _, _ := lyewright(readFile(t, formulas+"/lantern-walk.json"), "batch", "-json", "-")
	if pretty != fromFile {
		t.Error("a file and standard input answer differently")
	}
	for _, stdin := range []string{one, one + "\n", "\n" + one, one + "\r\n\r\n"} {
		stdout, _, status := lyewright(stdin, "batch", "-json", "-")
		var object map[string]any
		if err := json.Unmarshal([]byte(stdout), &object); err != nil || status != done || strings.Count(stdout, "\n") != 1 {
			t.Fatalf("exit %d, %v, %q", status, err, stdout)
		}
		if object["input_line"] != nil || object["file"] != nil {
			t.Errorf("says where it came from: %v, %v", object["file"], object["input_line"])
		}
	}
}

func TestNothingToReadIsNoAnswer(t *testing.T) {
	for _, stdin := range []string{"", "\n\n", " \r\n"} {
		stdout, stderr, status := lyewright(stdin, "batch", "-json", "-lines", "-")
		if status != done || stdout != "" || stderr != "" {
			t.Errorf("no lines: exit %d, %q, %q", status, stdout, stderr)
		}
	}
}

func TestALineBeyondTheLimitDoesNotHurtTheNext(t *testing.T) {
	one := oneLine(t, "single-bar.json", "one")
	for _, extra := range []int{0, 1, 1 << 16, 3 << 20} {
		long := `{"formula":"` + strings.Repeat("x", soap.MostBytes+extra) + `"}`
		stdout, stderr, status := lyewright(one+"\n"+long+"\n"+one+"\n"+long, "batch", "-json", "-lines", "-")
		want := []origin{{"batch/1", "one", "", 1}, {"error/1", "", "", 2}, {"batch/1", "one", "", 3}, {"error/1", "", "", 4}}
		if got := origins(t, stdout); fmt.Sprint(got) != fmt.Sprint(want) || status != wrongInput || stderr != "" ||
			strings.Count(stdout, `"reason":"is larger than 1 MiB"`) != 2 {
			t.Errorf("%d beyond: exit %d, %v, %q", extra, status, got, stderr)
		}
	}
	// just within
	within := one + strings.Repeat(" ", soap.MostBytes-1-len(one))
	if stdout, _, status := lyewright(within+"\n"+one, "batch", "-json", "-lines", "-"); status != done ||
		len(origins(t, stdout)) != 2 {
		t.Errorf("just within: exit %d", status)
	}
}

func TestALinesFileIsNamedAndNumbered(t *testing.T) {
	path := filepath.Join(t.TempDir(), "bench.ndjson")
	one := oneLine(t, "single-bar.json", "one")
	if err := os.WriteFile(path, []byte("\n"+one+"\n{\n"+one), 0o600); err != nil {
		t.Fatal(err)
	}
	want := []origin{{"batch/1", "one", path, 2}, {"error/1", "", path, 3}, {"batch/1", "one", path, 4}}
	stdout, stderr, status := lyewright("", "batch", "-json", path, "-lines")
	if got := origins(t, stdout); fmt.Sprint(got) != fmt.Sprint(want) || status != wrongInput || stderr != "" {
		t.Errorf("exit %d, %v, %q", status, got, stderr)
	}
	// and again for each of several files
	stdout, _, status = lyewright(one, "batch", "-json", "-lines", path, "-")
	if got := origins(t, stdout); fmt.Sprint(got) != fmt.Sprint(append(want, origin{"batch/1", "one", "", 1})) ||
		status != wrongInput {
		t.Errorf("exit %d, %v", status, got)
	}
	// as text: the sheets on one stream, what is wrong on the other
	stdout, stderr, status = lyewright("", "batch", "-lines", path)
	if strings.Count(stdout, "Batch sheet") != 2 || !strings.HasPrefix(stderr, path+":3:2: ") ||
		strings.Count(stderr, "\n") != 1 || status != wrongInput {
		t.Errorf("as text: exit %d, %q", status, stderr)
	}
	// with the column of the fault in its line
	faulty := strings.Replace(one, `"per_alkali"`, `"per_alkalli"`, 1)
	if faulty == one {
		t.Fatal("the formula has changed")
	}
	_, stderr, _ = lyewright(one+"\n"+faulty, "batch", "-")
	if want := fmt.Sprintf("-:2:%d: water.per_alkalli: ", strings.Index(faulty, `"per_alkalli"`)+
		1); !strings.HasPrefix(stderr, want) {
		t.Errorf("%q, want %q", stderr, want)
	}
	// without -lines it is one file with too much in it
	if stdout, stderr, status := lyewright("", "batch", path); status != wrongInput || stdout != "" ||
		!strings.Contains(stderr, "one to a line") {
		t.Errorf("without -lines: exit %d, %q", status, stderr)
	}
	if stdout, _, status := lyewright("", "batch", "-json", "-lines", "none.ndjson"); status != cannotIO ||
		len(origins(t, stdout)) != 1 {
		t.Errorf("a missing file: exit %d, %q", status, stdout)
	}
}

func TestTheSheetsOfLinesAreThoseOfTheFormulas(t *testing.T) {
	one, two := oneLine(t, "lantern-walk.json", "one"), oneLine(t, "benchmark.json", "two")
	for _, options := range [][]string{nil, {"-working"}, {"-units", "oz"}} {
		args := append([]string{"batch", "-"}, options...)
		first, _, _ := lyewright(one, args...)
		second, _, _ := lyewright(two, args...)
		both, stderr, status := lyewright(one+"\n"+two, args...)
		if status != dangerous || stderr != "" || !strings.HasPrefix(both, first) || !strings.HasSuffix(both, second) {
			t.Errorf("%v: exit %d, %q", args, status, stderr)
		}
	}
}

// Good and wrong lines of very different cost, so that they finish out of order.
func TestFiveHundredLinesComeBackInOrder(t *testing.T) {
	lines := []string{
		oneLine(t, "benchmark.json", "long"),
		`{"formula":"short"}`,
		oneLine(t, "single-bar.json", "promise"),
		"not a formula",
		strings.Repeat("[", 200_000),
		oneLine(t, "oil-held-back.json", "held"),
	}
	alone := make([]string, len(lines))
	for i, line := range lines {
		alone[i], _, _ = lyewright(line, "batch", "-json", "-lines", "-")
	}
	var input strings.Builder
	for i := range 500 {
		input.WriteString(lines[i%len(lines)] + "\n")
	}
	for _, processors := range []int{1, 2, 16} {
		was := runtime.GOMAXPROCS(processors)
		stdout, stderr, status := lyewright(input.String(), "batch", "-json", "-lines", "-")
		runtime.GOMAXPROCS(was)
		if status != wrongInput || stderr != "" {
			t.Errorf("exit %d, %.200q", status, stderr)
		}
		i := 0
		for got := range strings.Lines(stdout) {
			want := strings.Replace(alone[i%len(lines)], `"input_line":1}`, fmt.Sprintf(`"input_line":%d}`, i+1), 1)
			if got != want {
				t.Fatalf("%d processors, line %d: %.200q, want %.200q", processors, i+1, got, want)
			}
			i++
		}
		if i != 500 {
			t.Errorf("%d answers", i)
		}
	}
}

// The largest of all exit statuses counts, wherever it stands.
func TestTheLargestExitStatusCounts(t *testing.T) {
	good, danger, wrong, missing := formulas+"/single-bar.json", formulas+"/benchmark.json", formulas+
		"/wrong/zero-mass.json", "none.json"
	for _, verb := range []string{"batch", "check"} {
		for _, test := range []struct {
			status int
			files  []string
		}{
			{done, []string{good, good}},
			{dangerous, []string{danger, good}},
			{dangerous, []string{good, danger}},
			{wrongInput, []string{wrong, danger, good}},
			{wrongInput, []string{danger, wrong}},
			{cannotIO, []string{missing, wrong, danger, good}},
			{cannotIO, []string{good, danger, wrong, missing}},
		} {
			if _, _, status := lyewright("", append([]string{verb}, test.files...)...); status != test.status {
				t.Errorf("%s %v: exit %d, want %d", verb, test.files, status, test.status)
			}
		}
	}
}

// What a formula costs on its way through the command, in memory above all.
func BenchmarkStreamPerFormula(b *testing.B) {
	for _, file := range []string{"single-bar.json", "lantern-walk.json", "benchmark.json"} {
		b.Run(base(file), func(b *testing.B) {
			const lines = 512
			input := strings.Repeat(oneLine(b, file, "bench")+"\n", lines)
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			for b.Loop() {
				if status := run([]string{"batch", "-json", "-lines", "-"}, strings.NewReader(input), io.Discard,
					io.Discard); status > dangerous {
					b.Fatal(status)
				}
			}
			runtime.ReadMemStats(&after)
			each := float64(b.N) * lines
			b.ReportMetric(float64(after.TotalAlloc-before.TotalAlloc)/each, "B/formula")
			b.ReportMetric(float64(after.Mallocs-before.Mallocs)/each, "allocs/formula")
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/each, "ns/formula")
		})
	}
}
