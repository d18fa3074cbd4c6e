package main

import (
	"bufio"
	"io"
	"strings"
	"testing"
)

// Whoever writes a formula and waits for its answer gets it before writing the
// next.
func TestALineIsAnsweredBeforeTheNextIsWritten(t *testing.T) {
	in, lines := io.Pipe()
	answers, out := io.Pipe()
	status := make(chan int)
	go func() {
		status <- run([]string{"batch", "-json", "-lines", "-"}, in, out, io.Discard)
	}()
	reader := bufio.NewReaderSize(answers, 1<<20)
	for _, name := range []string{"first", "second", "third"} {
		if _, err := io.WriteString(lines, oneLine(t, "lantern-walk.json", name)+"\n"); err != nil {
			t.Fatal(err)
		}
		answer, err := reader.ReadString('\n') // waits for ever where lines are kept back
		if err != nil || !strings.Contains(answer, `"formula":"`+name+`"`) {
			t.Fatalf("%v, %.100q", err, answer)
		}
	}
	if err := lines.Close(); err != nil {
		t.Fatal(err)
	}
	if got := <-status; got != done {
		t.Errorf("exit %d", got)
	}
}

// Blank lines are counted, however many, and take no room.
func TestAMillionBlankLinesTakeNoRoom(t *testing.T) {
	blank := func() io.Reader { return io.LimitReader(lineFeeds{}, 5_000_000) }
	line := oneLine(t, "lantern-walk.json", "cups") + "\n"
	var out, errs strings.Builder
	input := io.MultiReader(blank(), strings.NewReader(line), blank(), strings.NewReader(line))
	if status := run([]string{"batch", "-json", "-"}, input, &out, &errs); status != done {
		t.Fatalf("exit %d, %.200q", status, errs.String())
	}
	if got := origins(t, out.String()); len(got) != 2 || got[0].InputLine != 5_000_001 || got[1].InputLine != 10_000_002 {
		t.Errorf("lines %v", got)
	}
	out.Reset()
	if status := run([]string{"batch", "-"}, blank(), &out, &errs); status != wrongInput || out.Len() != 0 {
		t.Errorf("nothing but blank lines: exit %d", status)
	}
}

// A bundle is bounded by its bytes: 64 lines of a mebibyte, several times over,
// would fill the memory.
func TestLongLinesDoNotMakeALargeBundle(t *testing.T) {
	const length, lines = 40_000, 50
	input := strings.NewReader(strings.Repeat(strings.Repeat("x", length-1)+"\n", lines))
	got := 0
	err := bundles(input, func(b *bundle) bool {
		got += len(b.lines)
		if size := len(b.lines) * length; size >= bundleBytes+length {
			t.Errorf("a bundle of %d bytes", size)
		}
		return true
	})
	if err != nil || got != lines {
		t.Errorf("%v, %d lines of %d", err, got, lines)
	}
}
