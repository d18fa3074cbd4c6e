package soap_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"example.com/lyewright/soap"
)

// wanted is a row of the table that ends a hand calculation: a path into the
// batch as JSON, what must stand there, and how far off it may be: a number,
// or "exact" for a word, true, false or "absent".
type wanted struct{ key, value, within string }

// readWanted reads the table at the end of a hand calculation.
func readWanted(t *testing.T, file string) []wanted {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	_, table, found := strings.Cut(string(text), "\n| key | value | within |\n| --- | --- | --- |\n")
	if !found {
		t.Fatalf("%s: no table of what must come out", file)
	}
	var rows []wanted
	for line := range strings.Lines(table) {
		cells := strings.Split(strings.TrimSpace(line), "|")
		if len(cells) != 5 {
			t.Fatalf("%s: %q is not a row of three cells", file, line)
		}
		rows = append(rows, wanted{strings.TrimSpace(cells[1]), strings.TrimSpace(cells[2]), strings.TrimSpace(cells[3])})
	}
	return rows
}

// follow finds what a path such as parts[1].superfat.low_pct names.
func follow(node any, path string) (any, bool) {
	for _, step := range strings.Split(strings.ReplaceAll(path, "[", ".["), ".") {
		if index, isIndex := strings.CutPrefix(step, "["); isIndex {
			i, err := strconv.Atoi(strings.TrimSuffix(index, "]"))
			list, isList := node.([]any)
			if err != nil || !isList || i >= len(list) {
				return nil, false
			}
			node = list[i]
			continue
		}
		object, isObject := node.(map[string]any)
		if !isObject {
			return nil, false
		}
		if node, isObject = object[step]; !isObject {
			return nil, false
		}
	}
	return node, true
}

// disagrees says how what stands in the batch differs from a row; empty where
// it does not.
func (w wanted) disagrees(batch any) string {
	got, found := follow(batch, w.key)
	if w.value == "absent" {
		if found {
			return fmt.Sprintf("is %v, must be left out", got)
		}
		return ""
	}
	if !found {
		return "is not there"
	}
	number, isNumber := got.(json.Number)
	if w.within == "exact" {
		if isNumber || fmt.Sprint(got) != w.value {
			return fmt.Sprintf("is %v, by hand %s", got, w.value)
		}
		return ""
	}
	if !isNumber {
		return fmt.Sprintf("is %v, not a number", got)
	}
	if !within(frac(number.String()), frac(w.value), frac(w.within)) {
		return fmt.Sprintf("is %s, by hand %s within %s", number, w.value, w.within)
	}
	return ""
}

// workOut reads a formula file and gives its batch as decoded JSON, with its caps
// under "cap".
func workOut(t *testing.T, file string) any {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	formula, err := soap.ReadFormula(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	batch, err := formula.Batch()
	if err != nil {
		t.Fatal(err)
	}
	out, err := batch.MarshalJSON()
	if err != nil {
		t.Fatal(err)
	}
	caps, err := batch.Caps().MarshalJSON()
	if err != nil {
		t.Fatal(err)
	}
	decoder := json.NewDecoder(io.MultiReader(bytes.NewReader(out), bytes.NewReader(caps)))
	decoder.UseNumber()
	var decoded map[string]any
	var cap any
	if err := errors.Join(decoder.Decode(&decoded), decoder.Decode(&cap)); err != nil {
		t.Fatal(err)
	}
	decoded["cap"] = cap
	return decoded
}

func TestWorkedExamplesComeOutAsByHand(t *testing.T) {
	sheets, err := filepath.Glob("../testdata/worked/*.md")
	if err != nil {
		t.Fatal(err)
	}
	formulas, err := filepath.Glob("../testdata/worked/*.json")
	if err != nil {
		t.Fatal(err)
	}
	if len(sheets) < 10 || len(sheets) != len(formulas) {
		t.Fatalf("%d hand calculations of %d formulas, want at least 10, one each", len(sheets), len(formulas))
	}
	for _, sheet := range sheets {
		name := strings.TrimSuffix(filepath.Base(sheet), ".md")
		t.Run(name, func(t *testing.T) {
			batch := workOut(t, strings.TrimSuffix(sheet, ".md")+".json")
			rows := readWanted(t, sheet)
			if len(rows) < 8 {
				t.Errorf("%d rows, want at least 8", len(rows))
			}
			for _, row := range rows {
				if fault := row.disagrees(batch); fault != "" {
					t.Errorf("%s %s", row.key, fault)
				}
			}
		})
	}
}
