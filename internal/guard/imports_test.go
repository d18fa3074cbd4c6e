package guard_test

import (
	"encoding/json"
	"errors"
	"go/ast"
	"go/parser"
	"go/token"
	"io"
	"io/fs"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

const module = "example.com/lyewright"

type goPackage struct {
	ImportPath, Name                   string
	Imports, TestImports, XTestImports []string
}

func goList(t *testing.T, args ...string) []goPackage {
	t.Helper()
	out, err := exec.Command("go", append([]string{"list", "-json"}, args...)...).Output()
	if err != nil {
		t.Fatal(err)
	}
	var packages []goPackage
	for decoder := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p goPackage
		switch err := decoder.Decode(&p); {
		case errors.Is(err, io.EOF):
			return packages
		case err != nil:
			t.Fatal(err)
		}
		packages = append(packages, p)
	}
}

// The rooms in their order: imports go only to earlier ones.
var rooms = []string{
	"/internal/refdata", "/internal/strictjson", "/internal/jsonwrite", "/internal/nearest", "/internal/names",
	"/internal/molar", "/units", "/units/cite", "/units/fault", "/soap/lye", "/soap/mould", "/colour/tint", "/colour", "/fragrance", "/soap", "/internal/madeup", "/soap/schema", "/soap/sheet", "/cmd/lyewright", "/internal/guard",
}

func TestImportsGoOnlyToEarlierRooms(t *testing.T) {
	packages := goList(t, module+"/...")
	if len(packages) != len(rooms) {
		t.Errorf("%d packages, %d rooms: give the new one its place", len(packages), len(rooms))
	}
	for _, p := range packages {
		floor := slices.Index(rooms, strings.TrimPrefix(p.ImportPath, module))
		if floor < 0 {
			t.Errorf("%s is not a room", p.ImportPath)
		}
		for _, imported := range p.Imports {
			if room, ours := strings.CutPrefix(imported, module); ours && slices.Index(rooms, room) >= floor {
				t.Errorf("%s imports %s, a later room", p.ImportPath, imported)
			}
		}
	}
}

// testsAlone is the room that only tests import: nobody who imports the library compiles
// it, and it may do what a library must not.
const testsAlone = module + "/internal/madeup"

func TestOnlyTestsMakeFormulasUp(t *testing.T) {
	users := 0
	for _, p := range goList(t, module+"/...") {
		if slices.Contains(p.Imports, testsAlone) {
			t.Errorf("%s imports %s, and is no test", p.ImportPath, testsAlone)
		}
		if slices.Contains(p.TestImports, testsAlone) || slices.Contains(p.XTestImports, testsAlone) {
			users++
		}
	}
	if users < 3 {
		t.Errorf("the tests of %d packages use it, want soap, its sheets and the command", users)
	}
}

// A library package does not print, and reads no environment, file or clock.
func TestTheLibraryTouchesNothingOutside(t *testing.T) {
	forbidden := []string{"os", "os/exec", "log", "log/slog", "net", "net/http", "math/rand", "math/rand/v2", "syscall", "flag", "fmt", "unsafe", "plugin"}
	for _, p := range goList(t, module+"/units/...", module+"/colour/...", module+"/fragrance/...", module+"/soap/...", module+"/internal/...") {
		for _, imported := range p.Imports {
			if p.ImportPath != testsAlone && slices.Contains(forbidden, imported) {
				t.Errorf("%s imports %s", p.ImportPath, imported)
			}
		}
	}
}

// What importers inherit is two packages.
func TestTheLibraryStandsOnTwoPackages(t *testing.T) {
	out, err := exec.Command("go", "list", "-deps", "-f", "{{if not .Standard}}{{.ImportPath}}{{end}}", module+"/units/...", module+"/colour/...", module+"/fragrance/...", module+"/soap/...", module+"/internal/...").Output()
	if err != nil {
		t.Fatal(err)
	}
	var others []string
	for _, path := range strings.Fields(string(out)) {
		if !strings.HasPrefix(path, module+"/") {
			others = append(others, path)
		}
	}
	slices.Sort(others)
	if want := []string{"github.com/shopspring/decimal", "golang.org/x/exp/constraints"}; !slices.Equal(others, want) {
		t.Errorf("packages from elsewhere: %v, want %v", others, want)
	}
}

// A span is a number; what day it is, or when a time has gone by, is not the
// library's to know. Nor does it print.
func TestTheLibraryReadsNoClockAndDoesNotPrint(t *testing.T) {
	clocks := []string{"Now", "Since", "Until", "Sleep", "After", "AfterFunc", "Tick", "NewTimer", "NewTicker", "Local", "LoadLocation"}
	files, spans := 0, 0
	for _, room := range []string{"../../units", "../../colour", "../../fragrance", "../../soap", "../../internal"} {
		err := filepath.WalkDir(room, func(path string, entry fs.DirEntry, err error) error {
			if err == nil && entry.IsDir() && path == filepath.Join("..", "..", "internal", "tools") {
				return fs.SkipDir // a module of its own: it is no part of the library
			}
			if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			set := token.NewFileSet()
			file, err := parser.ParseFile(set, path, nil, 0)
			if err != nil {
				return err
			}
			files++
			name := importedAs(file, "time")
			if name == "." {
				t.Errorf("%s imports time without its name", path)
			}
			ast.Inspect(file, func(node ast.Node) bool {
				if call, ok := node.(*ast.CallExpr); ok {
					if f, ok := call.Fun.(*ast.Ident); ok && (f.Name == "print" || f.Name == "println") {
						t.Errorf("%s: %s", set.Position(call.Pos()), f.Name)
					}
				}
				selector, ok := node.(*ast.SelectorExpr)
				if !ok {
					return true
				}
				if of, ok := selector.X.(*ast.Ident); ok && name != "" && of.Name == name {
					spans++
					if slices.Contains(clocks, selector.Sel.Name) {
						t.Errorf("%s: time.%s", set.Position(selector.Pos()), selector.Sel.Name)
					}
				}
				return true
			})
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	if files < 50 || spans == 0 {
		t.Errorf("%d files, %d mentions of time: not all were read", files, spans)
	}
}

// importedAs gives the name by which a file knows a package, empty where it does
// not import it.
func importedAs(file *ast.File, path string) string {
	for _, imported := range file.Imports {
		if text, err := strconv.Unquote(imported.Path.Value); err == nil && text == path {
			if imported.Name != nil {
				return imported.Name.Name
			}
			return path
		}
	}
	return ""
}
