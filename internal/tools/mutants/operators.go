package main

import (
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"slices"
	"strconv"
)

// operatorNames are the mistakes that the rules make, with what they are.
var operatorNames = []struct{ name, means string }{
	{"arithmetic", "+ for −, * for /, and the reverse"},
	{"relation", "< for <=, == for !=, and the like"},
	{"compared", "the same, and < for >, of what Compare, Cmp or Sign gives"},
	{"boolean", "&& for ||, and the reverse; a ! left out; true for false"},
	{"negation", "a condition turned round"},
	{"constant", "a whole number one larger, a fraction a hundredth larger"},
	{"dropped", "a statement left out"},
	{"method", "Add for Sub, Times for Over, Mul for a quotient, min for max, and the like"},
	{"rounding", "Nearest, Down and Up for each other"},
	{"arguments", "two arguments of one type exchanged, or a receiver with its argument"},
	{"end", "the low end of a range for its high end, and the reverse"},
}

var (
	arithmetic = map[token.Token]token.Token{
		token.ADD: token.SUB, token.SUB: token.ADD, token.MUL: token.QUO, token.QUO: token.MUL, token.REM: token.MUL,
		token.ADD_ASSIGN: token.SUB_ASSIGN, token.SUB_ASSIGN: token.ADD_ASSIGN, token.MUL_ASSIGN: token.QUO_ASSIGN, token.QUO_ASSIGN: token.MUL_ASSIGN,
		token.INC: token.DEC, token.DEC: token.INC,
	}
	relations = map[token.Token]token.Token{
		token.LSS: token.LEQ, token.LEQ: token.LSS, token.GTR: token.GEQ, token.GEQ: token.GTR, token.EQL: token.NEQ, token.NEQ: token.EQL,
	}
	reversed = map[token.Token]token.Token{token.LSS: token.GTR, token.GTR: token.LSS, token.LEQ: token.GEQ, token.GEQ: token.LEQ}
	methods  = map[string]string{
		"Add": "Sub", "Sub": "Add", "Times": "Over", "Over": "Times", "Mul": "Quo", "Quo": "Mul", "Lsh": "Rsh", "Rsh": "Lsh",
		"Div": "Mul", "Middle": "Plan", "Plan": "Middle",
	}
	functions = map[string]string{"min": "max", "max": "min", "Add64": "Sub64", "Sub64": "Add64", "Sin": "Cos", "Cos": "Sin"}
	roundings = []string{"Nearest", "Down", "Up"}
	ends      = map[string]string{"Low": "High", "High": "Low", "LikelyLow": "LikelyHigh", "LikelyHigh": "LikelyLow"}
	ordering  = []string{"Compare", "Cmp", "CmpAbs", "Sign"}
	// symmetric take their arguments in any order.
	symmetric = []string{"min", "max", "Hypot", "Add", "Equal", "append", "copy", "Mul64", "Add64", "Mul", "Times", "Difference"}
)

// walk finds the changes in what lies under a node.
func (f *finder) walk(root ast.Node) {
	ast.Inspect(root, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.ArrayType:
			return false
		case *ast.BinaryExpr:
			f.binary(n)
		case *ast.UnaryExpr:
			if n.Op == token.NOT {
				f.put("boolean", n, f.source(n.X))
			}
		case *ast.AssignStmt:
			if to, ok := arithmetic[n.Tok]; ok && f.numeric(n.Lhs[0]) {
				f.token("arithmetic", n.TokPos, n.Tok, to)
			}
		case *ast.IncDecStmt:
			f.token("arithmetic", n.TokPos, n.Tok, arithmetic[n.Tok])
		case *ast.IfStmt:
			f.put("negation", n.Cond, "!("+f.source(n.Cond)+")")
		case *ast.BasicLit:
			f.literal(n)
		case *ast.Ident:
			f.identifier(n)
		case *ast.BlockStmt:
			f.statements(n.List)
		case *ast.CaseClause:
			f.statements(n.Body)
		case *ast.CallExpr:
			f.call(n)
		case *ast.SelectorExpr:
			f.field(n)
		}
		return true
	})
}

// numeric reports whether an expression is a number that is not constant.
func (f *finder) numeric(e ast.Expr) bool {
	t := f.info.Types[e]
	if t.Type == nil {
		return false
	}
	basic, ok := t.Type.Underlying().(*types.Basic)
	return ok && basic.Info()&types.IsNumeric != 0
}

func (f *finder) binary(n *ast.BinaryExpr) {
	if to, ok := arithmetic[n.Op]; ok && f.numeric(n.X) && f.info.Types[n].Value == nil {
		f.token("arithmetic", n.OpPos, n.Op, to)
	}
	switch n.Op {
	case token.LAND:
		f.token("boolean", n.OpPos, n.Op, token.LOR)
	case token.LOR:
		f.token("boolean", n.OpPos, n.Op, token.LAND)
	}
	to, ok := relations[n.Op]
	if !ok || f.info.Types[n.X].IsNil() || f.info.Types[n.Y].IsNil() {
		return
	}
	if f.ordered(n.X) || f.ordered(n.Y) {
		f.token("compared", n.OpPos, n.Op, to)
		if back, ok := reversed[n.Op]; ok {
			f.token("compared", n.OpPos, n.Op, back)
		}
		return
	}
	f.token("relation", n.OpPos, n.Op, to)
}

// ordered reports whether an expression is what Compare and its like give.
func (f *finder) ordered(e ast.Expr) bool {
	call, ok := e.(*ast.CallExpr)
	return ok && slices.Contains(ordering, nameCalled(call))
}

// nameCalled is the name of what is called, without what it belongs to.
func nameCalled(call *ast.CallExpr) string {
	switch fun := call.Fun.(type) {
	case *ast.Ident:
		return fun.Name
	case *ast.SelectorExpr:
		return fun.Sel.Name
	}
	return ""
}

func (f *finder) literal(n *ast.BasicLit) {
	switch n.Kind {
	case token.INT:
		if more, ok := plusOne(n.Value); ok {
			f.put("constant", n, more)
		}
	case token.FLOAT:
		v, _ := constant.Float64Val(constant.MakeFromLiteral(n.Value, token.FLOAT, 0))
		if v != 0 {
			f.put("constant", n, strconv.FormatFloat(v*1.01, 'g', 12, 64))
		} else {
			f.put("constant", n, "0.01")
		}
	}
}

// identifier finds true and false, and the ways to round.
func (f *finder) identifier(n *ast.Ident) {
	object := f.info.Uses[n]
	switch {
	case object == nil:
	case object == types.Universe.Lookup("true"):
		f.put("boolean", n, "false")
	case object == types.Universe.Lookup("false"):
		f.put("boolean", n, "true")
	default:
		if named, ok := object.Type().(*types.Named); ok && named.Obj().Name() == "Rounding" && slices.Contains(roundings, n.Name) {
			for _, other := range roundings {
				f.put("rounding", n, other)
			}
		}
	}
}

// statements finds those of a block that may be left out.
func (f *finder) statements(list []ast.Stmt) {
	for _, s := range list {
		switch s := s.(type) {
		case *ast.ExprStmt, *ast.IncDecStmt:
			f.put("dropped", s, "")
		case *ast.AssignStmt:
			if s.Tok != token.DEFINE {
				f.put("dropped", s, "")
			}
		}
	}
}

// field finds the ends of ranges.
func (f *finder) field(n *ast.SelectorExpr) {
	to, ok := ends[n.Sel.Name]
	of := f.info.Types[n.X].Type
	if !ok || of == nil {
		return
	}
	this, _, _ := types.LookupFieldOrMethod(of, true, f.pkg, n.Sel.Name)
	other, _, _ := types.LookupFieldOrMethod(of, true, f.pkg, to)
	if a, ok := this.(*types.Var); ok {
		if b, ok := other.(*types.Var); ok && types.Identical(a.Type(), b.Type()) {
			f.put("end", n.Sel, to)
		}
	}
}

func (f *finder) call(n *ast.CallExpr) {
	if f.info.Types[n.Fun].IsType() {
		return // a conversion
	}
	name := nameCalled(n)
	f.otherMethod(n, name)
	if to, ok := functions[name]; ok {
		switch fun := n.Fun.(type) {
		case *ast.Ident:
			f.put("method", fun, to)
		case *ast.SelectorExpr:
			if f.info.Selections[fun] == nil { // of a package
				f.put("method", fun.Sel, to)
			}
		}
	}
	if slices.Contains(symmetric, name) {
		return
	}
	for i := 0; i+1 < len(n.Args); i++ {
		a, b := n.Args[i], n.Args[i+1]
		if f.alike(a, b) {
			f.replace("arguments", a.Pos(), b.End(), f.source(b)+f.text[a.End()-f.base:b.Pos()-f.base]+f.source(a))
		}
	}
	if fun, ok := n.Fun.(*ast.SelectorExpr); ok && len(n.Args) > 0 && f.info.Selections[fun] != nil && f.alike(fun.X, n.Args[0]) {
		f.replace("arguments", fun.X.Pos(), n.Args[0].End(), "("+f.source(n.Args[0])+")"+f.text[fun.X.End()-f.base:n.Args[0].Pos()-f.base]+f.source(fun.X))
	}
}

// alike reports whether two expressions are of one type, other than text, and differ.
func (f *finder) alike(a, b ast.Expr) bool {
	x, y := f.info.Types[a], f.info.Types[b]
	if x.Type == nil || y.Type == nil || f.source(a) == f.source(b) || x.Value != nil && y.Value != nil {
		return false
	}
	if basic, ok := x.Type.Underlying().(*types.Basic); ok && basic.Info()&types.IsString != 0 {
		return false
	}
	return types.Identical(types.Default(x.Type), types.Default(y.Type))
}

// otherMethod finds a method that takes and gives the same, such as Sub for Add. A product of
// decimals may also be their quotient, and the reverse.
func (f *finder) otherMethod(n *ast.CallExpr, name string) {
	if name == "quotient" && len(n.Args) == 2 {
		f.put("method", n, "("+f.source(n.Args[0])+").Mul("+f.source(n.Args[1])+")")
		return
	}
	fun, ok := n.Fun.(*ast.SelectorExpr)
	if !ok {
		return
	}
	selection := f.info.Selections[fun]
	if selection == nil || selection.Kind() != types.MethodVal {
		return
	}
	if named, ok := selection.Recv().(*types.Named); ok && named.Obj().Name() == "Decimal" && name == "Mul" && f.pkg.Scope().Lookup("quotient") != nil {
		f.put("method", n, "quotient("+f.source(fun.X)+", "+f.source(n.Args[0])+")")
		return
	}
	to, ok := methods[name]
	if !ok {
		return
	}
	other, _, _ := types.LookupFieldOrMethod(selection.Recv(), true, f.pkg, to)
	method, ok := other.(*types.Func)
	if !ok {
		return
	}
	a, b := selection.Obj().Type().(*types.Signature), method.Type().(*types.Signature)
	if types.Identical(a.Params(), b.Params()) && types.Identical(a.Results(), b.Results()) {
		f.put("method", fun.Sel, to)
	}
}
