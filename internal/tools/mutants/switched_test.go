package main

import (
	"strings"
	"testing"
)

const rightFile = `package scale

// Weigh weighs.
func Weigh(a, b int, more ...int) (sum int, ok bool) {
	for _, m := range more {
		sum += m
	}
	return sum + a - b, true
}

func (s *scale) reset(_ int) { s.at = 0 }

const grain = 1
`

func TestFunctionsThatDifferAreBuiltBesideEachOther(t *testing.T) {
	wrong := strings.NewReplacer("a - b", "a + b", "// Weigh weighs.", "// Weigh does.").Replace(rightFile)
	found, ok := bodies(rightFile, wrong, 7)
	if !ok || len(found) != 1 || found[0].index != 0 {
		t.Fatalf("%+v, %t", found, ok)
	}
	other, ok := bodies(rightFile, strings.Replace(rightFile, "s.at = 0", "s.at = 1", 1), 8)
	if !ok || len(other) != 1 {
		t.Fatalf("%+v, %t", other, ok)
	}
	text, err := switched(rightFile, append(other, found...))
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		"(sum int, ok bool) { if mutant_ != 0 { if mutant_ == 7 { return func(a int, b int, more ...int) (sum int, ok bool) {",
		"return sum + a + b, true\n}(a, b, more...) }; if mutant_ == -1 { reach_(7) } };",
		"{ if mutant_ != 0 { if mutant_ == 8 { func(s *scale) { s.at = 1 }(s); return }; ",
		"return sum + a - b, true\n}",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in\n%s", want, text)
		}
	}
}

func TestWhatIsMoreThanTheInsideOfAFunctionIsBuiltAlone(t *testing.T) {
	for _, change := range [][2]string{
		{"const grain = 1", "const grain = 2"},
		{"a, b int", "b, a int"},
		{"func (s *scale) reset", "func (s scale) reset"},
		{"const grain = 1\n", ""},
		{"for _, m", "next:\n\tfor _, m"},
	} {
		if found, ok := bodies(rightFile, strings.Replace(rightFile, change[0], change[1], 1), 1); ok {
			t.Errorf("%q: %+v", change, found)
		}
	}
}
