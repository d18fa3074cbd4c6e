package guard_test

import (
	"go/ast"
	"go/doc"
	"go/parser"
	"go/token"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// What is exported without an example, and why. It may only shrink: mostWithout goes
// down with it.
var withoutExample = map[string]string{}

const mostWithout = 0

// Every exported function and type has an example whose output is held to: of a type
// one of its own, or of a method.
func TestEveryFunctionAndTypeHasAnExample(t *testing.T) {
	seen := 0
	for _, path := range libraryPackages(t) {
		room := strings.TrimPrefix(path, module+"/")
		check := func(name string, examples ...*doc.Example) {
			seen++
			shown := false
			for _, example := range examples {
				shown = shown || example.Output != "" && !example.EmptyOutput
			}
			name = room + "." + name
			switch _, allowed := withoutExample[name]; {
			case !shown && !allowed:
				t.Errorf("%s has no example with an output", name)
			case shown && allowed:
				t.Errorf("%s has an example by now: take it off the list, and lower mostWithout", name)
			}
		}
		documented := documentation(t, room)
		for _, f := range documented.Funcs {
			check(f.Name, f.Examples...)
		}
		for _, typ := range documented.Types {
			examples := typ.Examples
			for _, m := range typ.Methods {
				examples = append(examples, m.Examples...)
			}
			check(typ.Name, examples...)
			for _, f := range typ.Funcs {
				check(f.Name, f.Examples...)
			}
		}
		if small := []string{"units/cite", "units/fault", "soap/schema"}; len(documented.Examples) == 0 && !slices.Contains(small, room) {
			t.Errorf("package %s has no example of its whole", room)
		}
	}
	if len(withoutExample) > mostWithout {
		t.Errorf("%d names without an example, where %d were", len(withoutExample), mostWithout)
	}
	if seen < 250 {
		t.Errorf("%d functions and types: not all were read", seen)
	}
}

// documentation reads a package as the documentation tools do.
func documentation(t *testing.T, room string) *doc.Package {
	t.Helper()
	names, err := filepath.Glob(filepath.Join("../..", room, "*.go"))
	if err != nil {
		t.Fatal(err)
	}
	set := token.NewFileSet()
	var files []*ast.File
	for _, name := range names {
		file, err := parser.ParseFile(set, name, nil, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, file)
	}
	p, err := doc.NewFromFiles(set, files, module+"/"+room)
	if err != nil {
		t.Fatal(err)
	}
	return p
}
