package guard_test

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// detailsIn finds the words that a schema knows of findings[].detail.
var detailsIn = regexp.MustCompile(`(?s)("detail": \{\n[^\n]*\n +"enum": \[\n)(.*?)(\n +\]\n)`)

// The schemas of the outputs with findings know the words of findings[].detail, which are
// those of the list.
func TestTheSchemasKnowTheWordsOfDetails(t *testing.T) {
	text, err := os.ReadFile("../../testdata/promised/details.txt")
	if err != nil {
		t.Fatal(err)
	}
	var words []string
	for line := range strings.Lines(string(text)) {
		_, word, _ := strings.Cut(strings.TrimSpace(line), " ")
		words = append(words, `"`+word+`"`)
	}
	slices.Sort(words)
	words = slices.Compact(words)
	const indent = "            "
	list := indent + words[0]
	used := len(list)
	for _, word := range words[1:] {
		if used+2+len(word) > 92 {
			list += ",\n" + indent + word
			used = len(indent) + len(word)
			continue
		}
		list += ", " + word
		used += 2 + len(word)
	}
	for _, name := range []string{"batch", "cap", "tint"} {
		path := "../../soap/schema/" + name + "-1.json"
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		found := detailsIn.FindStringSubmatch(string(text))
		if found == nil {
			t.Fatalf("%s says nothing of details", name)
		}
		if found[2] == list {
			continue
		}
		if !*update {
			t.Errorf("%s knows other details than are listed:\n%s\nwant\n%s", name, found[2], list)
			continue
		}
		if err := os.WriteFile(path, []byte(strings.Replace(string(text), found[0], found[1]+list+found[3], 1)),
			0o644); err != nil {
			t.Fatal(err)
		}
	}
}
