package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestAReasonStaysWithItsMutantWhereverItsLineMoves(t *testing.T) {
	here := change{operator: "constant", file: "scale/scale.go", line: 12, function: "Twice", from: "2", to: "3", start: 100}
	there := change{operator: "dropped", file: "scale/scale.go", line: 14, function: "Twice", from: "x = 1", to: "", start: 140}
	r := &report{options: &options{}, results: []result{{here, outcome{verdict: lived}}, {there, outcome{verdict: lived}}}}
	if n := len(r.unexplained()); n != 2 {
		t.Fatalf("%d without a reason", n)
	}
	path := filepath.Join(t.TempDir(), "report.txt")
	text := strings.Replace(r.text(), why+unknown, why+"it does nothing", 1)
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	reasons, err := readReasons(path)
	if err != nil {
		t.Fatal(err)
	}
	here.line = 20
	r = &report{options: &options{}, reasons: reasons, results: []result{{here, outcome{verdict: lived}}, {there, outcome{verdict: lived}}}}
	left := r.unexplained()
	if len(left) != 1 || left[0] != there || !strings.Contains(r.text(), "scale/scale.go:20 "+here.what()+"\n"+why+"it does nothing\n") {
		t.Errorf("%+v in\n%s", left, r.text())
	}
}

func TestANewReportHasNoReasons(t *testing.T) {
	if reasons, err := readReasons(filepath.Join(t.TempDir(), "none.txt")); err != nil || len(reasons) > 0 {
		t.Error(reasons, err)
	}
}
