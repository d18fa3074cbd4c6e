package schema_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"example.com/lyewright/soap/schema"
)

// A request asks the validator of internal/tools to hold an instance against a schema;
// with changes, a changed copy of the last instance.
type request struct {
	Name     string          `json:"name"`
	Schema   json.RawMessage `json:"schema,omitempty"`
	Instance json.RawMessage `json:"instance,omitempty"`
	Changes  []change        `json:"changes,omitempty"`
}

// A change drops a key of the object at a place, or sets one.
type change struct {
	At    []any           `json:"at"`
	Drop  string          `json:"drop,omitempty"`
	Set   string          `json:"set,omitempty"`
	Value json.RawMessage `json:"value,omitempty"`
}

const tools = "../../internal/tools"

// verdicts asks the validator, one process for all, and gives what is wrong with each,
// empty where nothing is. The schemas that ship need not be asked for.
func verdicts(t testing.TB, requests ...request) []string {
	t.Helper()
	if _, err := os.Stat(tools + "/go.mod"); errors.Is(err, fs.ErrNotExist) {
		t.Skip("the validator is a module of its own, which a copy from a module proxy lacks")
	}
	watch(t, tools+"/go.mod", tools+"/validate/*.go")
	var in bytes.Buffer
	to := json.NewEncoder(&in)
	to.SetEscapeHTML(false)
	shipped := schema.Names()
	for _, name := range shipped {
		encode(t, to, request{Name: name, Schema: text(t, name)})
	}
	for i := range requests {
		encode(t, to, &requests[i])
	}
	program, err := validator()
	if err != nil {
		t.Fatal("the validator does not build: ", err)
	}
	validate := exec.Command(program)
	validate.Stdin = &in
	var errs strings.Builder
	validate.Stderr = &errs
	out, err := validate.Output()
	if err != nil {
		t.Fatalf("the validator: %v, %s", err, errs.String())
	}
	var said []string
	for from := json.NewDecoder(bytes.NewReader(out)); from.More(); {
		var one string
		if err := from.Decode(&one); err != nil {
			t.Fatal(err)
		}
		said = append(said, one)
	}
	if len(said) != len(shipped)+len(requests) {
		t.Fatalf("%d answers to %d questions: %s", len(said), len(shipped)+len(requests), errs.String())
	}
	for i, name := range shipped {
		if said[i] != "" {
			t.Fatalf("%s is no schema: %s", name, said[i])
		}
	}
	return said[len(shipped):]
}

// scratch is where programs are built that a test runs.
var scratch string

func TestMain(m *testing.M) {
	var err error
	if scratch, err = os.MkdirTemp("", "lyewright-schema"); err != nil {
		panic(err)
	}
	status := m.Run()
	if err := os.RemoveAll(scratch); err != nil {
		panic(err)
	}
	os.Exit(status)
}

// validator builds the validator, once.
var validator = sync.OnceValues(func() (program string, err error) {
	program = filepath.Join(scratch, "validate.exe")
	build := exec.Command("go", "-C", tools, "build", "-o", program, "./validate")
	// The module of the tools has its own go.mod: flags that name another do not hold there.
	flags := slices.DeleteFunc(strings.Fields(os.Getenv("GOFLAGS")), func(flag string) bool {
		return strings.HasPrefix(strings.TrimLeft(flag, "-"), "mod") && !strings.HasPrefix(strings.TrimLeft(flag, "-"), "modcacherw")
	})
	build.Env = append(os.Environ(), "GOFLAGS="+strings.Join(flags, " "), "GOWORK=off")
	if said, err := build.CombinedOutput(); err != nil {
		return "", fmt.Errorf("%w: %s", err, said)
	}
	return program, nil
})

func encode(t testing.TB, to *json.Encoder, v any) {
	t.Helper()
	if err := to.Encode(v); err != nil {
		t.Fatal(err)
	}
}

func text(t testing.TB, name string) []byte {
	t.Helper()
	text, err := schema.Of(name)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// watch opens what another process is built from, so that the go command does not take a
// test's result from before it changed.
func watch(t testing.TB, patterns ...string) {
	t.Helper()
	for _, pattern := range patterns {
		for _, path := range glob(t, pattern) {
			read(t, path)
		}
	}
}

func glob(t testing.TB, pattern string) []string {
	t.Helper()
	found, err := filepath.Glob(pattern)
	if err != nil || len(found) == 0 {
		t.Fatalf("%s matches nothing (%v)", pattern, err)
	}
	return found
}

func read(t testing.TB, path string) []byte {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return text
}
