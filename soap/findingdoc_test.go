package soap_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"slices"
	"strings"
	"testing"
)

// The comment of Finding lists the codes, and no word that looks like one is none.
func TestTheCommentOfAFindingListsEveryCode(t *testing.T) {
	file, err := parser.ParseFile(token.NewFileSet(), "finding.go", nil, parser.ParseComments)
	if err != nil {
		t.Fatal(err)
	}
	var codes []string
	for _, entry := range everyCode(t) {
		code, _, _ := strings.Cut(entry, " ")
		codes = append(codes, code)
	}
	var listed []string
	for _, d := range file.Decls {
		g, ok := d.(*ast.GenDecl)
		if !ok || g.Tok != token.TYPE || g.Specs[0].(*ast.TypeSpec).Name.Name != "Finding" {
			continue
		}
		_, list, _ := strings.Cut(g.Doc.Text(), "All codes")
		for _, word := range strings.FieldsFunc(list, func(r rune) bool { return r != '-' && (r < 'a' || r > 'z') }) {
			if strings.Contains(strings.Trim(word, "-"), "-") || slices.Contains(codes, word) {
				listed = append(listed, word)
			}
		}
	}
	slices.Sort(listed)
	slices.Sort(codes)
	if codes = slices.Compact(codes); !slices.Equal(listed, codes) {
		t.Errorf("listed are %v\nthere are %v", listed, codes)
	}
}
