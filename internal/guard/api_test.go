package guard_test

import (
	"flag"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "rewrite the listings of what is promised")

const promised = "../../testdata/promised/api"

// libraryPackages are those that a program outside may import.
func libraryPackages(t *testing.T) []string {
	t.Helper()
	var paths []string
	for _, p := range goList(t, module+"/...") {
		if room := strings.TrimPrefix(p.ImportPath, module); !strings.HasPrefix(room, "/internal/") && !strings.HasPrefix(room, "/cmd/") {
			paths = append(paths, p.ImportPath)
		}
	}
	return paths
}

// load gives the library's packages as the compiler sees them.
func load(t *testing.T, paths []string) map[string]*types.Package {
	t.Helper()
	list := exec.Command("go", append([]string{"list", "-export", "-deps", "-f", "{{.ImportPath}}\t{{.Export}}"}, paths...)...)
	list.Stderr = os.Stderr
	out, err := list.Output()
	if err != nil {
		t.Fatal(err)
	}
	exports := map[string]string{}
	for line := range strings.Lines(string(out)) {
		path, file, _ := strings.Cut(strings.TrimSpace(line), "\t")
		exports[path] = file
	}
	compiled := importer.ForCompiler(token.NewFileSet(), "gc", func(path string) (io.ReadCloser, error) { return os.Open(exports[path]) })
	loaded := map[string]*types.Package{}
	for _, path := range paths {
		p, err := compiled.Import(path)
		if err != nil {
			t.Fatal(err)
		}
		loaded[path] = p
	}
	return loaded
}

// surface lists what a package exports, a line for each name that a program could
// write, sorted.
func surface(p *types.Package) []string {
	within := func(other *types.Package) string {
		if other == p {
			return ""
		}
		return other.Name()
	}
	var lines []string
	say := func(format string, args ...any) { lines = append(lines, fmt.Sprintf(format, args...)) }
	for _, name := range p.Scope().Names() {
		object := p.Scope().Lookup(name)
		if !object.Exported() {
			continue
		}
		switch object := object.(type) {
		case *types.TypeName:
			typeSurface(object, within, say)
		case *types.Const:
			say("const %s %s = %s", name, types.TypeString(object.Type(), within), object.Val())
		default:
			say("%s", types.ObjectString(object, within))
		}
	}
	slices.Sort(lines)
	return lines
}

func typeSurface(object *types.TypeName, within types.Qualifier, say func(string, ...any)) {
	name := object.Name()
	if object.IsAlias() {
		say("type %s = %s", name, types.TypeString(types.Unalias(object.Type()), within))
		return
	}
	kind := "struct"
	switch under := object.Type().Underlying().(type) {
	case *types.Struct:
		for field := range under.Fields() {
			if field.Exported() {
				say("type %s: field %s %s", name, field.Name(), types.TypeString(field.Type(), within))
			}
		}
	case *types.Interface:
		kind = "interface"
		for method := range under.Methods() {
			say("type %s: asks for %s%s", name, method.Name(), signature(method, within))
		}
	default:
		kind = types.TypeString(under, within)
	}
	if types.Comparable(object.Type()) {
		kind += ", comparable"
	}
	say("type %s %s", name, kind)
	for _, receiver := range []types.Type{object.Type(), types.NewPointer(object.Type())} {
		methods := types.NewMethodSet(receiver)
		for i := range methods.Len() {
			method := methods.At(i)
			line := fmt.Sprintf("type %s: method %s%s", name, method.Obj().Name(), signature(method.Obj().(*types.Func), within))
			if !method.Obj().Exported() || types.IsInterface(object.Type()) {
				continue
			}
			if _, pointer := receiver.(*types.Pointer); !pointer {
				say("%s", line)
			} else if types.NewMethodSet(object.Type()).Lookup(object.Pkg(), method.Obj().Name()) == nil {
				say("%s, of a pointer", line)
			}
		}
	}
}

func signature(f *types.Func, within types.Qualifier) string {
	return strings.TrimPrefix(types.TypeString(f.Signature(), within), "func")
}

// What the library exports stands in a file for each package. To add a line is
// additive; a line that goes or changes breaks somebody's program: see the README.
func TestTheSurfaceIsTheListedOne(t *testing.T) {
	paths := libraryPackages(t)
	packages := load(t, paths)
	var files []string
	for _, path := range paths {
		name := strings.ReplaceAll(strings.TrimPrefix(path, module+"/"), "/", ".") + ".txt"
		files = append(files, name)
		got := strings.Join(surface(packages[path]), "\n") + "\n"
		if *update {
			if err := os.WriteFile(filepath.Join(promised, name), []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		want, err := os.ReadFile(filepath.Join(promised, name))
		if err != nil {
			t.Errorf("%v: run go test ./internal/guard -update, and read what is new", err)
			continue
		}
		differences(t, name, string(want), got)
	}
	listed, err := filepath.Glob(filepath.Join(promised, "*.txt"))
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range listed {
		if !slices.Contains(files, filepath.Base(file)) {
			t.Errorf("%s lists a package that is not there", file)
		}
	}
}

// A name of every sort, changed in every way that breaks a program outside.
func TestASurfaceShowsEveryChange(t *testing.T) {
	const source = `package p
		const Most = 5
		type Mass struct{ ng int64 }
		type Line struct{ Oil string; Share float64; row *int }
		type Shape interface{ Volume() int }
		type Kind uint8
		func Parse(text string) (Mass, error) { return Mass{}, nil }
		func (m Mass) Add(n Mass) Mass { return n }
		func (l *Line) Read(text string) {}
		func quiet() {}`
	before := surface(typed(t, source))
	for _, change := range [][2]string{
		{"Most = 5", "Most = 6"},
		{"Oil string", "Fat string"},
		{"Share float64", "Share int"},
		{"ng int64", "ng []int64"}, // no longer comparable
		{"Volume() int", "Volume() int64"},
		{"Kind uint8", "Kind string"},
		{"Parse(text string)", "Parse(text []byte)"},
		{"(m Mass) Add", "(m Mass) Plus"},
		{"(m Mass) Add", "(m *Mass) Add"},
		{"(l *Line) Read", "(l *Line) read"},
	} {
		if after := surface(typed(t, strings.Replace(source, change[0], change[1], 1))); slices.Equal(before, after) {
			t.Errorf("%s in place of %s is not seen", change[1], change[0])
		}
	}
	for _, change := range [][2]string{{"quiet()", "silent()"}, {"row *int", "row *string"}} {
		if after := surface(typed(t, strings.Replace(source, change[0], change[1], 1))); !slices.Equal(before, after) {
			t.Errorf("%s in place of %s is nobody's concern, and is seen", change[1], change[0])
		}
	}
}

func typed(t *testing.T, source string) *types.Package {
	t.Helper()
	set := token.NewFileSet()
	file, err := parser.ParseFile(set, "p.go", source, 0)
	if err != nil {
		t.Fatal(err)
	}
	var config types.Config
	p, err := config.Check("p", set, []*ast.File{file}, nil)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// differences says which lines went and which came.
func differences(t *testing.T, name, want, got string) {
	t.Helper()
	before, after := strings.Split(want, "\n"), strings.Split(got, "\n")
	for _, line := range before {
		if !slices.Contains(after, line) {
			t.Errorf("%s: gone or changed: %s", name, line)
		}
	}
	for _, line := range after {
		if !slices.Contains(before, line) {
			t.Errorf("%s: new: %s", name, line)
		}
	}
	if want != got && !t.Failed() {
		t.Errorf("%s: out of order, or a line stands twice", name)
	}
}
