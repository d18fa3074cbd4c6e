package main

import (
	"cmp"
	"go/ast"
	"go/token"
	"go/types"
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
)

// A change is one small mistake that a rule makes: some text in place of other text, inside
// a function.
type change struct {
	operator string
	file     string // below the root
	line     int
	function string
	from, to string // what stands there, and what is put there
	start    int    // where, in bytes
	nth      int    // of those that read the same in one function, counted from 1
}

// apply gives the file as the change leaves it.
func (c *change) apply(text string) string { return text[:c.start] + c.to + text[c.start+len(c.from):] }

// key names a change wherever its line has moved to.
func (c *change) key() string { return c.file + " " + c.what() }

// what says what is changed.
func (c *change) what() string {
	text := c.function + " [" + c.operator + "] " + short(c.from) + " → " + short(c.to)
	if c.nth > 1 {
		text += " #" + strconv.Itoa(c.nth)
	}
	return text
}

// String gives the key with the line.
func (c *change) String() string { return c.file + ":" + strconv.Itoa(c.line) + " " + c.what() }

// short gives text on one line, cut where it is long.
func short(text string) string {
	text = strings.Join(strings.Fields(text), " ")
	if text == "" {
		return "(nothing)"
	}
	if letters := []rune(text); len(letters) > 70 {
		return string(letters[:69]) + "…"
	}
	return text
}

// A finder lists the changes that the operators make in one function.
type finder struct {
	file     string
	text     string
	base     token.Pos // of the file's first byte
	set      *token.FileSet
	info     *types.Info
	pkg      *types.Package
	function string
	found    []change
}

// changesIn lists every change of a package, in order of file and place.
func (p *program) changesIn(pkg *sourcePackage) ([]change, error) {
	info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}, Uses: map[*ast.Ident]types.Object{}, Selections: map[*ast.SelectorExpr]*types.Selection{}}
	checked, err := p.check(pkg, nil, info)
	if err != nil {
		return nil, err
	}
	var all []change
	for _, name := range slices.Sorted(slices.Values(pkg.GoFiles)) {
		file := pkg.files[name]
		path := name
		if pkg.dir != "." {
			path = pkg.dir + "/" + name
		}
		text, err := p.read(path)
		if err != nil {
			return nil, err
		}
		for _, decl := range file.Decls {
			f, ok := decl.(*ast.FuncDecl)
			if !ok || f.Body == nil {
				continue
			}
			finder := finder{file: path, text: text, base: file.FileStart, set: p.set, info: info, pkg: checked, function: nameOf(f)}
			finder.walk(f.Body)
			all = append(all, finder.found...)
		}
	}
	slices.SortStableFunc(all, func(a, b change) int { return cmp.Or(cmp.Compare(a.file, b.file), cmp.Compare(a.start, b.start)) })
	seen := map[string]int{}
	for i := range all {
		key := all[i].key()
		seen[key]++
		all[i].nth = seen[key]
	}
	return all, nil
}

// nameOf gives a function's name, with its receiver's type.
func nameOf(f *ast.FuncDecl) string {
	if f.Recv == nil || len(f.Recv.List) == 0 {
		return f.Name.Name
	}
	of := f.Recv.List[0].Type
	for {
		switch t := of.(type) {
		case *ast.StarExpr:
			of = t.X
			continue
		case *ast.IndexExpr:
			of = t.X
			continue
		case *ast.Ident:
			return t.Name + "." + f.Name.Name
		}
		return f.Name.Name
	}
}

func (f *finder) source(n ast.Node) string { return f.text[n.Pos()-f.base : n.End()-f.base] }

// put notes that a node may be replaced.
func (f *finder) put(operator string, n ast.Node, to string) {
	f.replace(operator, n.Pos(), n.End(), to)
}

func (f *finder) replace(operator string, from, end token.Pos, to string) {
	was := f.text[from-f.base : end-f.base]
	if was == to {
		return
	}
	f.found = append(f.found, change{operator: operator, file: f.file, line: f.set.Position(from).Line, function: f.function, from: was, to: to, start: int(from - f.base)})
}

// token notes that an operator may be another one.
func (f *finder) token(operator string, at token.Pos, was, to token.Token) {
	f.replace(operator, at, at+token.Pos(len(was.String())), to.String())
}

// chosen takes a seeded sample: of every package so many as goes with the root of how many
// there are, so that the largest does not crowd out the others.
func chosen(byPackage [][]change, sample int, seed uint64) []change {
	total := 0.0
	for _, list := range byPackage {
		total += math.Sqrt(float64(len(list)))
	}
	var all []change
	for i, list := range byPackage {
		list = slices.Clone(list)
		random := rand.New(rand.NewPCG(seed, uint64(i)))
		random.Shuffle(len(list), func(a, b int) { list[a], list[b] = list[b], list[a] })
		n := int(math.Round(float64(sample) * math.Sqrt(float64(len(list))) / total))
		all = append(all, list[:min(n, len(list))]...)
	}
	slices.SortStableFunc(all, func(a, b change) int { return cmp.Or(cmp.Compare(a.file, b.file), cmp.Compare(a.start, b.start)) })
	return all
}

func plusOne(literal string) (string, bool) {
	n, err := strconv.ParseInt(strings.ReplaceAll(literal, "_", ""), 0, 64)
	if err != nil || n == math.MaxInt64 {
		return "", false
	}
	return strconv.FormatInt(n+1, 10), true
}
