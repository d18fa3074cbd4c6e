package schema_test

import (
	"encoding/json"
	"errors"
	"go/ast"
	"go/parser"
	"go/token"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/lyewright/soap"
)

// nobodysKey is so far from every key that the reader lists those it knows.
const nobodysKey = "qqqqqqqqqqqqqqqq"

// put gives a copy of an instance with a value at the end of some steps.
func put(t testing.TB, instance any, steps []any, v any) any {
	t.Helper()
	if len(steps) == 0 {
		return v
	}
	switch of := instance.(type) {
	case map[string]any:
		key := steps[0].(string)
		next := map[string]any{}
		for k, member := range of {
			next[k] = member
		}
		next[key] = put(t, of[key], steps[1:], v)
		return next
	case []any:
		i := steps[0].(int)
		next := slices.Clone(of)
		next[i] = put(t, of[i], steps[1:], v)
		return next
	}
	t.Fatalf("there is no %v", steps)
	return nil
}

// faultsOf gives what the reader says of a formula.
func faultsOf(t testing.TB, text string) soap.Faults {
	t.Helper()
	_, _, err := soap.ParseFormula([]byte(text))
	var faults soap.Faults
	if err != nil && !errors.As(err, &faults) {
		t.Fatal(err)
	}
	return faults
}

// keysKnown asks the reader which keys it knows in an object of a formula.
func keysKnown(t testing.TB, instance any, s spot) []string {
	t.Helper()
	text := encoded(t, put(t, instance, append(slices.Clip(s.steps), nobodysKey), json.Number("1")))
	for _, f := range faultsOf(t, text) {
		if f.Path != joined(s.path, nobodysKey) {
			continue
		}
		if list, found := strings.CutPrefix(f.Remedy, "the keys here are "); found && f.Reason == "is not a key of a formula" {
			return strings.Split(list, ", ")
		}
	}
	t.Errorf("%s: the reader does not say which keys it knows:\n%v", s.path, faultsOf(t, text))
	return nil
}

// saidElsewhere are keys that the reader knows only to say where they belong.
func saidElsewhere() map[string]string {
	return map[string]string{
		"parts[].match[].load": "always refused: the load is looked for",
	}
}

// Both ways: a key that only one of the two knows is named.
func TestTheFormulaSchemaKnowsTheKeysOfTheReaderAtEveryPlace(t *testing.T) {
	d := documentOf(t, "formula/1")
	elsewhere := saidElsewhere()
	missing := map[string]bool{} // shapes of which no example has been seen, by their keys
	for place, v := range d.values() {
		for _, s := range v.shapes() {
			if s.others() == nil {
				missing[place+" "+strings.Join(s.keys(), ",")] = true
			}
		}
	}
	places := len(missing)
	var requests []request // the same key is put to the schema
	for _, text := range examples(t) {
		instance := decoded(t, []byte(text))
		for s := range d.spots(instance) {
			of, ok := s.value.(map[string]any)
			if !ok {
				continue
			}
			var among []string // the keys of every form
			var own []string   // those of the form that this is
			for _, shape := range s.says.shapes() {
				among = append(among, shape.keys()...)
				if own == nil && shape.others() == nil && shape.knows(of) {
					own = shape.keys()
				}
			}
			seen := s.place + " " + strings.Join(own, ",")
			if !missing[seen] {
				continue
			}
			delete(missing, seen)
			known := keysKnown(t, instance, s)
			requests = append(requests, request{Name: d.name, Instance: json.RawMessage(text), Changes: []change{{At: s.steps, Set: nobodysKey, Value: json.RawMessage("1")}}})
			for _, key := range own {
				if !slices.Contains(known, key) {
					t.Errorf("%s.%s stands in the schema, and the reader does not know it", s.place, key)
				}
			}
			for _, key := range known {
				at := joined(s.place, key)
				if elsewhere[at] != "" {
					delete(elsewhere, at)
				} else if !slices.Contains(among, key) {
					t.Errorf("the reader knows %s, and the schema does not", at)
				}
			}
		}
	}
	for i, said := range verdicts(t, requests...) {
		if said == "" {
			t.Errorf("%v: the schema takes a key that nobody knows", requests[i].Changes[0].At)
		}
	}
	for place := range missing {
		t.Errorf("no example has an object %s", place)
	}
	for at := range elsewhere {
		t.Errorf("%s is listed as said elsewhere, and the reader does not know it", at)
	}
	if places < 45 {
		t.Errorf("%d kinds of object: not all were found", places)
	}
}

// Every key that stands in the reader's source, wherever it looks for one.
func TestNoKeyOfTheReaderIsMissingFromTheFormulaSchema(t *testing.T) {
	described := map[string]bool{}
	for _, s := range shapesOf(t, "formula/1") {
		for _, key := range s.keys() {
			described[key] = true
		}
	}
	found := map[string]bool{}
	for _, path := range glob(t, "../read*.go") {
		file, err := parser.ParseFile(token.NewFileSet(), path, read(t, path), 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(node ast.Node) bool {
			call, ok := node.(*ast.CallExpr)
			if !ok {
				return true
			}
			name := ""
			switch of := call.Fun.(type) {
			case *ast.SelectorExpr:
				name = of.Sel.Name
			case *ast.Ident:
				name = of.Name
			}
			if !slices.Contains([]string{"object", "at", "fields", "needs", "length"}, name) {
				return true
			}
			for _, argument := range call.Args {
				if literal, ok := argument.(*ast.BasicLit); ok && literal.Kind == token.STRING {
					key, err := strconv.Unquote(literal.Value)
					if err != nil {
						t.Fatal(err)
					}
					found[key] = true
				}
			}
			return true
		})
	}
	for key := range found {
		if !described[key] {
			t.Errorf("the reader knows %q somewhere, and the schema has no such key", key)
		}
	}
	if len(found) < 100 {
		t.Errorf("%d keys found in the source: not all", len(found))
	}
}
