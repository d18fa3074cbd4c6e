package main

import (
	"bytes"
	"encoding/json"
	"errors"
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
)

// A program is the checkout as it stands. Nothing of it is ever written.
type program struct {
	root     string
	packages map[string]*sourcePackage // by directory below the root, as "soap/lye"
	set      *token.FileSet
	imports  types.Importer
}

// A sourcePackage is one package of the program, without its tests.
type sourcePackage struct {
	Dir        string
	ImportPath string
	GoFiles    []string
	Export     string
	Standard   bool
	Deps       []string

	TestGoFiles, XTestGoFiles []string

	dir   string // below the root
	files map[string]*ast.File
}

// tested reports whether the package has tests of its own.
func (pkg *sourcePackage) tested() bool { return len(pkg.TestGoFiles)+len(pkg.XTestGoFiles) > 0 }

// load reads the program. It builds what it does not find built, for the types of what is
// imported.
func load(root string) (*program, error) {
	root, err := filepath.Abs(root)
	if err != nil {
		return nil, err
	}
	list := exec.Command("go", "list", "-export", "-deps", "-json=Dir,ImportPath,GoFiles,Export,Standard,Deps,TestGoFiles,XTestGoFiles", "./...")
	list.Dir = root
	var said bytes.Buffer
	list.Stderr = &said
	out, err := list.Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w\n%s", err, said.String())
	}
	p := &program{root: root, packages: map[string]*sourcePackage{}, set: token.NewFileSet()}
	exports := map[string]string{}
	for decoder := json.NewDecoder(bytes.NewReader(out)); ; {
		pkg := &sourcePackage{files: map[string]*ast.File{}}
		if err := decoder.Decode(pkg); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return nil, err
		}
		exports[pkg.ImportPath] = pkg.Export
		if dir, err := filepath.Rel(root, pkg.Dir); err == nil && !pkg.Standard && !strings.HasPrefix(dir, "..") {
			pkg.dir = filepath.ToSlash(dir)
			p.packages[pkg.dir] = pkg
		}
	}
	for _, pkg := range p.packages {
		for _, name := range pkg.GoFiles {
			file, err := parser.ParseFile(p.set, filepath.Join(pkg.Dir, name), nil, parser.ParseComments|parser.SkipObjectResolution)
			if err != nil {
				return nil, err
			}
			pkg.files[name] = file
		}
	}
	p.imports = importer.ForCompiler(p.set, "gc", func(path string) (io.ReadCloser, error) { return os.Open(exports[path]) })
	return p, nil
}

// read gives a file as it stands.
func (p *program) read(file string) (string, error) {
	text, err := os.ReadFile(filepath.Join(p.root, filepath.FromSlash(file)))
	return string(text), err
}

// dependents lists the directories of the packages that import one, the nearest first,
// itself first of all.
func (p *program) dependents(dir string) []string {
	path := p.packages[dir].ImportPath
	list := []string{dir}
	for _, other := range p.packages {
		if slices.Contains(other.Deps, path) {
			list = append(list, other.dir)
		}
	}
	slices.SortFunc(list[1:], func(a, b string) int {
		if n := len(p.packages[a].Deps) - len(p.packages[b].Deps); n != 0 {
			return n
		}
		return strings.Compare(a, b)
	})
	return list
}

// check type-checks a package with some of its files replaced (by name), as the compiler
// would. info may be nil.
func (p *program) check(pkg *sourcePackage, replaced map[string]string, info *types.Info) (*types.Package, error) {
	var files []*ast.File
	for _, name := range pkg.GoFiles {
		file := pkg.files[name]
		if text, ok := replaced[name]; ok {
			var err error
			if file, err = parser.ParseFile(p.set, name, text, parser.SkipObjectResolution); err != nil {
				return nil, err
			}
		}
		files = append(files, file)
	}
	config := types.Config{Importer: p.imports}
	return config.Check(pkg.ImportPath, p.set, files, info)
}

// compiles says what is wrong with changed files, other than what they do.
func (p *program) compiles(changed map[string]string) error {
	byPackage := map[string]map[string]string{}
	for file, text := range changed {
		if !strings.HasSuffix(file, ".go") {
			continue
		}
		dir, name := filepath.ToSlash(filepath.Dir(file)), filepath.Base(file)
		if byPackage[dir] == nil {
			byPackage[dir] = map[string]string{}
		}
		byPackage[dir][name] = text
	}
	for dir, replaced := range byPackage {
		pkg := p.packages[dir]
		if pkg == nil {
			return fmt.Errorf("%s is no package of the program", dir)
		}
		if _, err := p.check(pkg, replaced, nil); err != nil {
			return err
		}
	}
	return nil
}
