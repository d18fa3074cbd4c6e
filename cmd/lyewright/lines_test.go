package main

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"
	"testing"

	"example.com/lyewright/soap"
)

// oneLine gives a formula file as one line, under a name of its own.
func oneLine(t testing.TB, file, name string) string {
	t.Helper()
	line := strings.ReplaceAll(readFile(t, formulas+"/"+file), "\n", " ")
	start := strings.Index(line, `"formula": "`) + len(`"formula": "`)
	end := start + strings.Index(line[start:], `"`)
	return line[:start] + name + line[end:]
}

type origin struct {
	Schema    string
	Formula   string
	File      string
	InputLine int `json:"input_line"`
}

func origins(t *testing.T, stdout string) []origin {
	t.Helper()
	var list []origin
	for line := range strings.Lines(stdout) {
		var o origin
		if err := json.Unmarshal([]byte(line), &o); err != nil {
			t.Fatalf("%v in %.200q", err, line)
		}
		list = append(list, o)
	}
	return list
}

func TestSeveralFilesGiveAnObjectEachInOrder(t *testing.T) {
	good, wrong, bad := formulas+"/lantern-walk.json", formulas+"/wrong/unknown-oil.json", formulas+"/benchmark.json"
	stdout, stderr, status := lyewright("", "batch", "-json", good, wrong, "none.json", bad)
	if status != cannotIO || stderr != "" {
		t.Errorf("exit %d, %q: the largest status counts, and errors stand in place", status, stderr)
	}
	want := []origin{{"batch/1", "Lantern walk cups", good, 0}, {"error/1", "", wrong, 0}, {"error/1", "", "none.json", 0}, {"batch/1", "Lantern walk, the whole bench", bad, 0}}
	if got := origins(t, stdout); fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("got %v, want %v", got, want)
	}
	if _, _, status := lyewright("", "batch", "-json", good, bad); status != dangerous {
		t.Errorf("exit %d with a danger, want 1", status)
	}
	sheets, messages, _ := lyewright("", "batch", good, wrong, bad)
	if strings.Count(sheets, "Batch sheet") != 2 || strings.Count(messages, "\n") != 1 {
		t.Errorf("as text: %d sheets, messages %q", strings.Count(sheets, "Batch sheet"), messages)
	}
}

func TestStandardInputIsReadByTheLineWhenItsFirstLineIsWholeAndMoreFollows(t *testing.T) {
	line := oneLine(t, "lantern-walk.json", "cups")
	for _, test := range []struct {
		name, stdin string
		lines       bool
	}{
		{"a pretty formula", readFile(t, formulas+"/lantern-walk.json"), false},
		{"one line", line, false},
		{"one line and blank ones", "\n" + line + "\n\n \n", false},
		{"two lines", line + "\n" + line, true},
		{"two lines, blank ones and carriage returns", "\r\n" + line + "\r\n\r\n" + line + "\r\n", true},
	} {
		stdout, stderr, status := lyewright(test.stdin, "batch", "-json", "-")
		got := origins(t, stdout)
		if status != done || test.lines != (len(got) == 2) || test.lines != (got[0].InputLine > 0) {
			t.Errorf("%s: exit %d, %v, %q", test.name, status, got, stderr)
		}
	}
	if got := origins(t, first(lyewright("\n\n"+line+"\n\n"+line, "batch", "-json", "-"))); got[0].InputLine != 3 || got[1].InputLine != 5 {
		t.Errorf("lines %v, want 3 and 5: blank lines are counted", got)
	}
	if got := origins(t, first(lyewright(line, "batch", "-json", "-lines", "-"))); len(got) != 1 || got[0].InputLine != 1 {
		t.Errorf("with -lines a single line is a line: %v", got)
	}
}

func first(stdout, _ string, _ int) string { return stdout }

func TestAWrongLineGivesItsErrorInPlace(t *testing.T) {
	line := oneLine(t, "lantern-walk.json", "cups")
	long := `{"formula": "` + strings.Repeat("x", soap.MostBytes) + `"}`
	stdout, stderr, status := lyewright(strings.Join([]string{line, "{", long, line}, "\n"), "batch", "-json", "-lines", "-")
	want := []origin{{"batch/1", "cups", "", 1}, {"error/1", "", "", 2}, {"error/1", "", "", 3}, {"batch/1", "cups", "", 4}}
	if got := origins(t, stdout); fmt.Sprint(got) != fmt.Sprint(want) || status != wrongInput || stderr != "" {
		t.Errorf("exit %d, %v, %q", status, got, stderr)
	}
	stdout, stderr, status = lyewright(line+"\n{\n", "batch", "-lines", "-")
	if status != wrongInput || strings.Count(stdout, "Batch sheet") != 1 || !strings.HasPrefix(stderr, "-:2:") {
		t.Errorf("as text: exit %d, %q", status, stderr)
	}
}

// More bundles than workers, so that answers would come out of order if they
// could.
func TestManyLinesComeBackInOrderAndAsOneByOne(t *testing.T) {
	var input strings.Builder
	const lines = 20 * bundleLines
	kinds := []string{"lantern-walk.json", "dual-alkali.json", "benchmark.json", "ounces.json"}
	for i := range lines {
		input.WriteString(oneLine(t, kinds[i%len(kinds)], fmt.Sprintf("batch %d", i+1)) + "\n")
	}
	stdout, _, status := lyewright(input.String(), "batch", "-json", "-")
	if status != dangerous {
		t.Errorf("exit %d, want 1: some of them carry a danger", status)
	}
	i := 0
	for line := range strings.Lines(stdout) {
		i++
		alone, _, _ := lyewright(oneLine(t, kinds[(i-1)%len(kinds)], fmt.Sprintf("batch %d", i)), "batch", "-json", "-")
		want := strings.TrimSuffix(alone, "}\n") + fmt.Sprintf(",\"input_line\":%d}\n", i)
		if line != want {
			t.Fatalf("line %d is %.120q, want %.120q", i, line, want)
		}
	}
	if i != lines {
		t.Errorf("%d answers to %d lines", i, lines)
	}
}

type broken struct{ io.Reader }

func (b broken) Read(p []byte) (int, error) {
	n, err := b.Reader.Read(p)
	if err == io.EOF {
		err = fmt.Errorf("the disk went away")
	}
	return n, err
}

func TestAnInputThatBreaksOffIsExit3AfterWhatCameBefore(t *testing.T) {
	line := oneLine(t, "lantern-walk.json", "cups")
	var stdout, stderr strings.Builder
	status := run([]string{"batch", "-json", "-lines", "-"}, broken{strings.NewReader(line + "\n")}, &stdout, &stderr)
	if status != cannotIO || len(origins(t, stdout.String())) != 1 || !strings.Contains(stderr.String(), "the disk went away") {
		t.Errorf("exit %d, %d objects, %q", status, len(origins(t, stdout.String())), stderr.String())
	}
	if status := run([]string{"batch", "-"}, broken{strings.NewReader("")}, &stdout, &stderr); status != cannotIO {
		t.Errorf("one formula: exit %d", status)
	}
}

func BenchmarkStream(b *testing.B) {
	line := oneLine(b, "benchmark.json", "bench") + "\n"
	input := strings.Repeat(line, 1000)
	b.ReportAllocs()
	b.SetBytes(int64(len(input)))
	for b.Loop() {
		if status := run([]string{"batch", "-json", "-lines", "-"}, strings.NewReader(input), io.Discard, io.Discard); status != dangerous {
			b.Fatal(status)
		}
	}
}
