package main

import (
	"cmp"
	"fmt"
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

// The variable, and what it is set from.
const (
	switchVariable    = "mutant_"
	switchEnvironment = "MUTANT"
	switchFile        = "mutant_.go"
)

// switchSource is the file that every package with mutants gets.
func switchSource(name string) string {
	return fmt.Sprintf("package %s\n\nimport (\n\t\"os\"\n\t\"strconv\"\n)\n\nvar %s, _ = strconv.Atoi(os.Getenv(%q))\n", name, switchVariable, switchEnvironment)
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
		out.WriteString(" if " + switchVariable + " == " + strconv.Itoa(w.mutant) + " { " + called(right, file, f, w.text) + " }; ")
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
		files[path.Join(path.Dir(file), switchFile)] = switchSource(pkg.files[path.Base(file)].Name.Name)
	}
	return files, alone, nil
}
