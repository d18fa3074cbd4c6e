package main

import (
	"cmp"
	"go/ast"
	"go/parser"
	"go/token"
	"path"
	"slices"
	"strconv"
	"strings"
)

// Building every wrong program by itself would take minutes, nearly all of it for what
// they share. Mutants that change the insides of functions alone are therefore built
// together: every function holds its wrong bodies beside the right one, and a variable of
// its package, set from the environment, says which is meant.

// The variable, what it is set from, and the file that holds it. Set to survey, no mutant
// is meant, and every function with mutants says once that it was reached.
const (
	switchVariable     = "mutant_"
	switchEnvironment  = "MUTANT"
	reachedEnvironment = "MUTANT_REACHED"
	switchFile         = "mutant_.go"
	survey             = -1
)

// switchSource is the file that every package with mutants gets.
func switchSource(name string, mutants int) string {
	return "package " + name + `

import (
	"os"
	"strconv"
	"sync/atomic"
)

var mutant_, _ = strconv.Atoi(os.Getenv("` + switchEnvironment + `"))

var reached_ [` + strconv.Itoa(mutants+1) + `]atomic.Bool

func reach_(mutant int) {
	if reached_[mutant].Swap(true) {
		return
	}
	file, err := os.OpenFile(os.Getenv("` + reachedEnvironment + `"), os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o644)
	if err != nil {
		panic(err)
	}
	if _, err := file.WriteString(strconv.Itoa(mutant) + "\n"); err != nil {
		panic(err)
	}
	if err := file.Close(); err != nil {
		panic(err)
	}
}
`
}

// A wrongBody is one function as a mutant has it.
type wrongBody struct {
	mutant int
	index  int    // of the function among the file's declarations
	text   string // the body with its braces
}

// bodies finds the functions that differ between two versions of a file. ok is false
// where more than the insides of functions differs.
func bodies(right, wrong string, mutant int) (found []wrongBody, ok bool) {
	a, err := parser.ParseFile(token.NewFileSet(), "", right, parser.SkipObjectResolution)
	if err != nil {
		return nil, false
	}
	set := token.NewFileSet()
	b, err := parser.ParseFile(set, "", wrong, parser.SkipObjectResolution)
	if err != nil || len(a.Decls) != len(b.Decls) {
		return nil, false
	}
	inside := func(text string, file *ast.File, n ast.Node) string {
		return text[n.Pos()-file.FileStart : n.End()-file.FileStart]
	}
	for i := range a.Decls {
		was, is := inside(right, a, a.Decls[i]), inside(wrong, b, b.Decls[i])
		if was == is {
			continue
		}
		f, isFunc := a.Decls[i].(*ast.FuncDecl)
		g, _ := b.Decls[i].(*ast.FuncDecl)
		if !isFunc || g == nil || f.Body == nil || g.Body == nil || labelled(g) {
			return nil, false
		}
		before := right[f.Pos()-a.FileStart : f.Body.Pos()-a.FileStart]
		after := wrong[g.Pos()-b.FileStart : g.Body.Pos()-b.FileStart]
		if withoutComment(before) != withoutComment(after) {
			return nil, false
		}
		found = append(found, wrongBody{mutant, i, inside(wrong, b, g.Body)})
	}
	return found, true
}

// withoutComment drops what stands before a declaration.
func withoutComment(signature string) string {
	if i := strings.Index(signature, "func "); i >= 0 {
		return signature[i:]
	}
	return signature
}

// labelled reports whether a function has labels: they belong to the whole of it.
func labelled(f *ast.FuncDecl) bool {
	has := false
	ast.Inspect(f, func(n ast.Node) bool {
		_, is := n.(*ast.LabeledStmt)
		has = has || is
		return true
	})
	return has
}

// switched gives a file whose functions hold all these bodies.
func switched(right string, wrong []wrongBody) (string, error) {
	file, err := parser.ParseFile(token.NewFileSet(), "", right, parser.SkipObjectResolution)
	if err != nil {
		return "", err
	}
	wrong = slices.Clone(wrong)
	slices.SortStableFunc(wrong, func(a, b wrongBody) int { return cmp.Compare(a.index, b.index) })
	var out strings.Builder
	at := 0
	for _, w := range wrong {
		f := file.Decls[w.index].(*ast.FuncDecl)
		inside := int(f.Body.Lbrace-file.FileStart) + 1
		out.WriteString(right[at:inside])
		at = inside
		n := strconv.Itoa(w.mutant)
		out.WriteString(" if " + switchVariable + " != 0 { if " + switchVariable + " == " + n + " { " + called(right, file, f, w.text) + " }; if " + switchVariable + " == -1 { reach_(" + n + ") } }; ")
	}
	out.WriteString(right[at:])
	return out.String(), nil
}

// called is a body as a function of its own that is called at once: what it declares and
// defers stays its own.
func called(right string, file *ast.File, f *ast.FuncDecl, body string) string {
	text := func(n ast.Node) string { return right[n.Pos()-file.FileStart : n.End()-file.FileStart] }
	var takes, gets []string
	for _, list := range []*ast.FieldList{f.Recv, f.Type.Params} {
		if list == nil {
			continue
		}
		for _, field := range list.List {
			for _, name := range field.Names {
				if name.Name == "_" {
					continue
				}
				takes = append(takes, name.Name+" "+text(field.Type))
				given := name.Name
				if _, variadic := field.Type.(*ast.Ellipsis); variadic {
					given += "..."
				}
				gets = append(gets, given)
			}
		}
	}
	results := ""
	if f.Type.Results != nil {
		results = text(f.Type.Results) + " "
	}
	call := "func(" + strings.Join(takes, ", ") + ") " + results + body + "(" + strings.Join(gets, ", ") + ")"
	if f.Type.Results != nil {
		return "return " + call
	}
	return call + "; return"
}

// together gives the files of a program that holds all of some mutants, in place of those
// of the checkout, and tells which mutants must be built by themselves.
func together(p *program, mutants []mutant) (files map[string]string, alone map[int]bool, err error) {
	byFile := map[string][]wrongBody{}
	alone = map[int]bool{}
	for i := range mutants {
		m := &mutants[i]
		all := map[string][]wrongBody{}
		for file, wrong := range m.changed {
			right, err := p.read(file)
			if err != nil {
				return nil, nil, err
			}
			found, ok := bodies(right, wrong, i+1)
			if !ok || !strings.HasSuffix(file, ".go") {
				alone[i] = true
			}
			all[file] = found
		}
		if alone[i] {
			continue
		}
		for file, found := range all {
			byFile[file] = append(byFile[file], found...)
		}
	}
	files = map[string]string{}
	for file, wrong := range byFile {
		right, err := p.read(file)
		if err != nil {
			return nil, nil, err
		}
		if files[file], err = switched(right, wrong); err != nil {
			return nil, nil, err
		}
		pkg := p.packages[path.Dir(file)]
		files[path.Join(path.Dir(file), switchFile)] = switchSource(pkg.files[path.Base(file)].Name.Name, len(mutants))
	}
	return files, alone, nil
}
