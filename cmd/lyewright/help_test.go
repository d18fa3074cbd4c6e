package main

import (
	"strings"
	"testing"

	"example.com/lyewright/soap/schema"
)

func TestHelpPrintsASchemaAsItShips(t *testing.T) {
	about, _, status := lyewright("", "help", "schema")
	if status != done || !strings.HasPrefix(about, "lyewright help schema NAME") {
		t.Errorf("exit %d, %.80q", status, about)
	}
	for _, name := range schema.Names() {
		want, err := schema.Of(name)
		if err != nil {
			t.Fatal(err)
		}
		if stdout, stderr, status := lyewright("", "help", "schema", name); stdout != string(want) || stderr != "" || status != done {
			t.Errorf("%s: exit %d, %.80q, %q", name, status, stdout, stderr)
		}
		if !strings.Contains(about, "\n  "+name+" ") {
			t.Errorf("the help on schemas does not name %s", name)
		}
	}
	if status := run([]string{"help", "schema", "batch/1"}, strings.NewReader(""), fails{}, &strings.Builder{}); status != cannotIO {
		t.Errorf("to a full disk: exit %d", status)
	}
}

func TestAnUnknownSchemaIsOneErrorWithTheNearestName(t *testing.T) {
	stdout, stderr, status := lyewright("", "help", "schema", "bacth/1")
	if want := "lyewright: \"bacth/1\" is not the name of a schema; did you mean batch/1?\n"; stdout != "" || stderr != want || status != wrongInput {
		t.Errorf("exit %d, %q, %q", status, stdout, stderr)
	}
}
