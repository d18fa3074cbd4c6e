package soap_test

import (
	"bytes"
	"errors"
	"io"
	"math"
	"os"
	"runtime"
	"strings"
	"testing"

	"example.com/lyewright/soap"
)

// A ceiling, not a measure: eight oils, two alkalis, three parts, findings.
func TestABatchAllocatesLittle(t *testing.T) {
	text, err := os.ReadFile("../testdata/formulas/benchmark.json")
	if err != nil {
		t.Fatal(err)
	}
	f, _, err := soap.ParseFormula(text)
	if err != nil {
		t.Fatal(err)
	}
	least := math.Inf(1) // of several runs: what another test left running allocates, too, and only adds
	for range 10 {
		least = min(least, testing.AllocsPerRun(20, func() { _, _ = f.Batch() }))
	}
	if least > 130 {
		t.Errorf("%v allocations a batch", least)
	}
}

// endless gives the same byte for ever and counts what is taken.
type endless struct {
	with  byte
	taken int
}

func (e *endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = e.with
	}
	e.taken += len(p)
	return len(p), nil
}

func TestAnEndlessInputIsReadToTheLimitOnly(t *testing.T) {
	input := &endless{with: '['}
	if _, err := soap.ReadFormula(input); err == nil || !strings.Contains(err.Error(), "1 MiB") {
		t.Errorf("got %v", err)
	}
	if input.taken > 2<<20 { // the reader's buffer may ask for a little more
		t.Errorf("%d bytes were taken", input.taken)
	}
}

func TestHostileInputCostsBoundedMemory(t *testing.T) {
	mib := 1 << 20
	for name, text := range map[string]string{
		"open brackets":   strings.Repeat("[", 200_000),
		"open objects":    strings.Repeat(`{"oils":`, 100_000),
		"digits":          `{"size":{"oils":"` + strings.Repeat("9", mib-30) + `"}}`,
		"a bare number":   `{"size":` + strings.Repeat("9", mib-30) + `}`,
		"keys":            `{` + strings.Repeat(`"a":1,`, mib/6-2) + `"a":1}`,
		"oils":            `{"oils":[` + strings.Repeat(`{},`, mib/3-10) + `{}]}`,
		"empty lists":     `{"parts":[` + strings.Repeat(`[],`, mib/3-10) + `[]]}`,
		"unknown oils":    `{"oils":[` + strings.TrimSuffix(strings.Repeat(`{"oil":"`+strings.Repeat("z", 190)+`"},`, 100), ",") + `]}`,
		"escapes":         `{"formula":"` + strings.Repeat(`\u0041`, mib/6-20) + `"}`,
		"a name of names": `{"` + strings.Repeat("k", mib-20) + `":1}`,
	} {
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		_, err := soap.ReadFormula(strings.NewReader(text))
		runtime.ReadMemStats(&after)
		if err == nil {
			t.Errorf("%s: accepted", name)
		}
		if used := after.TotalAlloc - before.TotalAlloc; used > 128<<20 {
			t.Errorf("%s: %d MiB for a MiB of text", name, used>>20)
		}
		if message := len(err.Error()); message > mib/4 {
			t.Errorf("%s: a message of %d bytes", name, message)
		}
	}
}

func TestAReaderThatFailsIsNotAFaultOfTheFormula(t *testing.T) {
	_, err := soap.ReadFormula(io.MultiReader(bytes.NewReader([]byte("{")), failing{}))
	if !errors.Is(err, io.ErrClosedPipe) {
		t.Errorf("got %v", err)
	}
}

type failing struct{}

func (failing) Read([]byte) (int, error) { return 0, io.ErrClosedPipe }
