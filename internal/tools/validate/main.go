// Command validate holds JSON instances against JSON Schemas, for the tests of the
// schemas. It reads requests, one JSON object to a line, and answers each with one line,
// a JSON text: empty where the instance is valid, else what is wrong.
//
//	{"name": "batch/1", "schema": {…}}         makes a schema known; it must be valid itself
//	{"name": "batch/1", "instance": {…}}       holds an instance against it, and keeps it
//	{"name": "batch/1", "changes": [{"at": ["parts", 0], "drop": "part"}]}
//	                                           holds a changed copy of the kept one against it
//
// A change drops a key of the object that stands at a place, or sets one to a value, in
// order. It keeps nothing but the schemas and the last instance.
package main

import (
	"bufio"
	"encoding/json"
	"fmt"
	"os"
	"strings"

	"github.com/santhosh-tekuri/jsonschema/v6"
)

type request struct {
	Name             string
	Schema, Instance json.RawMessage
	Changes          []change
}

type change struct {
	At    []any
	Drop  string
	Set   string
	Value json.RawMessage
}

func main() {
	if err := answerAll(); err != nil {
		fmt.Fprintln(os.Stderr, "validate:", err)
		os.Exit(1)
	}
}

func answerAll() error {
	in := bufio.NewReaderSize(os.Stdin, 1<<20)
	out := bufio.NewWriter(os.Stdout)
	v := validator{schemas: map[string]*jsonschema.Schema{}}
	for requests := json.NewDecoder(in); requests.More(); {
		var r request
		if err := requests.Decode(&r); err != nil {
			return err
		}
		said, err := v.answer(r)
		if err != nil {
			return err
		}
		line, err := json.Marshal(said)
		if err != nil {
			return err
		}
		if _, err := out.Write(append(line, '\n')); err != nil {
			return err
		}
	}
	return out.Flush()
}

type validator struct {
	schemas map[string]*jsonschema.Schema
	kept    any
}

// answer gives what is wrong; the error is that the request itself is.
func (v *validator) answer(r request) (said string, err error) {
	if r.Schema != nil {
		return v.learn(r)
	}
	schema := v.schemas[r.Name]
	if schema == nil {
		return "", fmt.Errorf("no schema is called %q", r.Name)
	}
	if r.Instance != nil {
		if v.kept, err = read(r.Instance); err != nil {
			return "", err
		}
	}
	instance := v.kept
	for _, c := range r.Changes {
		if instance, err = c.in(instance, c.At); err != nil {
			return "", err
		}
	}
	if err := schema.Validate(instance); err != nil {
		return err.Error(), nil
	}
	return "", nil
}

// learn compiles a schema: it is held against its own meta-schema first.
func (v *validator) learn(r request) (string, error) {
	document, err := read(r.Schema)
	if err != nil {
		return "", err
	}
	compiler := jsonschema.NewCompiler()
	compiler.DefaultDraft(jsonschema.Draft2020)
	where := "mem:///" + r.Name
	if err := compiler.AddResource(where, document); err != nil {
		return err.Error(), nil
	}
	schema, err := compiler.Compile(where)
	if err != nil {
		return err.Error(), nil
	}
	v.schemas[r.Name] = schema
	return "", nil
}

// in gives a copy of a value with the change made, alike where nothing changes.
func (c change) in(value any, at []any) (any, error) {
	if len(at) > 0 {
		if list, ok := value.([]any); ok {
			i, ok := at[0].(float64)
			if !ok || int(i) >= len(list) {
				return nil, fmt.Errorf("%v is no item of a list of %d", at[0], len(list))
			}
			changed, err := c.in(list[int(i)], at[1:])
			list = append([]any(nil), list...)
			list[int(i)] = changed
			return list, err
		}
	}
	object, ok := value.(map[string]any)
	if !ok {
		return nil, fmt.Errorf("%v is no object", c.At)
	}
	next := make(map[string]any, len(object)+1)
	for key, member := range object {
		next[key] = member
	}
	if len(at) > 0 {
		key, _ := at[0].(string)
		member, there := object[key]
		if !there {
			return nil, fmt.Errorf("there is no %v in %v", at[0], c.At)
		}
		changed, err := c.in(member, at[1:])
		next[key] = changed
		return next, err
	}
	if c.Drop != "" {
		delete(next, c.Drop)
	}
	if c.Set != "" {
		set, err := read(c.Value)
		if err != nil {
			return nil, err
		}
		next[c.Set] = set
	}
	return next, nil
}

func read(text json.RawMessage) (any, error) {
	return jsonschema.UnmarshalJSON(strings.NewReader(string(text)))
}
