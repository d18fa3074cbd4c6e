package soap_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"slices"
	"strings"
	"testing"
)

// everyDetail gives the words of Finding.Detail with their codes. They are part of the
// library's interface, as codes are.
func everyDetail(t *testing.T) []string {
	t.Helper()
	text, err := os.ReadFile("../testdata/promised/details.txt")
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSuffix(string(text), "\n"), "\n")
	if !slices.IsSorted(lines) {
		t.Error("the listed details are out of order")
	}
	return lines
}

// The comment of Finding.Detail has a line for each code, with each word of it.
func TestTheDetailsAreListedInTheComment(t *testing.T) {
	file, err := parser.ParseFile(token.NewFileSet(), "finding.go", nil, parser.ParseComments)
	if err != nil {
		t.Fatal(err)
	}
	said := map[string]string{}
	ast.Inspect(file, func(n ast.Node) bool {
		field, ok := n.(*ast.Field)
		if !ok || len(field.Names) != 1 || field.Names[0].Name != "Detail" {
			return true
		}
		_, list, _ := strings.Cut(field.Doc.Text(), "\n  - ")
		for line := range strings.SplitSeq(list, "\n  - ") {
			code, words, _ := strings.Cut(strings.Join(strings.Fields(line), " "), ": ")
			said[code] = words
		}
		return false
	})
	codes := map[string]bool{}
	for _, entry := range everyDetail(t) {
		code, word, _ := strings.Cut(entry, " ")
		codes[code] = true
		inWords := strings.FieldsFunc(said[code], func(r rune) bool { return r != '-' && (r < 'a' || r > 'z') })
		for part := range strings.SplitSeq(word, "-") { // of two words, or one with a hyphen
			if slices.Contains(inWords, part) {
				word = part
			}
		}
		if !slices.Contains(inWords, word) {
			t.Errorf("the comment says nothing of %s, %s", code, word)
		}
	}
	for code := range said {
		if !codes[code] {
			t.Errorf("the comment speaks of %s, which has no details", code)
		}
	}
}

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
