package guard_test

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// A look-up halves its way through a sorted table, and a line whose key no header names
// is passed over in silence: what a slip of the hand would lose is named here.
func TestEveryTableIsInOrderAndNamesItsKeys(t *testing.T) {
	for _, table := range []struct{ path, begins string }{ // begins: what a stanza begins with
		{"soap/data/oils.txt", "oil"},
		{"soap/data/sources.txt", ""},
		{"fragrance/data/materials.txt", "material"},
		{"fragrance/data/sources.txt", ""},
		{"fragrance/data/standards.txt", ""},
		{"fragrance/data/entries.txt", ""},
		{"colour/data/colourants.txt", "colourant"},
		{"colour/data/sources.txt", ""},
		{"internal/names/data/names.txt", ""},
		{"internal/names/data/notes.txt", ""},
	} {
		text, err := os.ReadFile(filepath.Join("..", "..", table.path))
		if err != nil {
			t.Fatal(err)
		}
		records, slips := tableSlips(string(text), table.begins)
		for _, slip := range slips {
			t.Errorf("%s, %s", table.path, slip)
		}
		if records < 20 {
			t.Errorf("%s: only %d records", table.path, records)
		}
	}
}

// headerKey finds what a header says of a key: "# key", and after two
// spaces or more its meaning, if that needs saying.
var headerKey = regexp.MustCompile(`(?m)^# ([a-z-]+)(?:  |$)`)

// tableSlips counts the records of a table and says what is wrong with it. Stanzas begin
// with a key; where there is none, every line is a record.
func tableSlips(table, begins string) (records int, slips []string) {
	keys := map[string]bool{}
	for _, found := range headerKey.FindAllStringSubmatch(table, -1) {
		keys[found[1]] = true
	}
	last, first := "", false // the id before; whether a stanza begins here
	for i, line := range strings.Split(strings.TrimRight(table, "\n"), "\n") {
		slip := func(format string, args ...any) {
			slips = append(slips, fmt.Sprintf("line %d: ", i+1)+fmt.Sprintf(format, args...))
		}
		key, id, _ := strings.Cut(line, "\t")
		switch {
		case strings.HasPrefix(line, "#"):
			continue
		case begins == "":
			id = key
		case line == "":
			first = true
			continue
		case !keys[key]:
			slip("%q is not a key that the header names (tabs part the fields), and would be passed over", key)
			continue
		case first != (key == begins):
			if first {
				slip("a stanza begins with %q, and not with %q", key, begins)
			} else {
				slip("%q stands within a stanza; a blank line parts it from the one before", key)
			}
			first = false
			continue
		case !first:
			continue
		}
		first = false
		if records++; id <= last {
			slip("%q stands after %q; records are sorted, and it would not be found", id, last)
		}
		last = id
	}
	return records, slips
}

func TestASlipInATableIsNamed(t *testing.T) {
	const stanzas = "# Lanterns\n#\n# oil   id\n# name  common name\n\noil\tfig\nname\tFig oil\n\noil\tpear\nname\tPear oil\n"
	const lines = "# Publications\na-book\tA\nb-book\tB\n"
	for _, c := range []struct{ table, begins, old, slip, want string }{
		{stanzas, "oil", "", "", ""},
		{lines, "", "", "", ""},
		{stanzas, "oil", "name\tFig", "name Fig", `line 7: "name Fig oil" is not a key that the header names (tabs part the fields), and would be passed over`},
		{stanzas, "oil", "name\tFig", "nmae\tFig", `line 7: "nmae" is not a key that the header names (tabs part the fields), and would be passed over`},
		{stanzas, "oil", "\tfig", "\tplum", `line 9: "pear" stands after "plum"; records are sorted, and it would not be found`},
		{stanzas, "oil", "oil\tpear", "name\tpear", `line 9: a stanza begins with "name", and not with "oil"`},
		{stanzas, "oil", "\n\noil\tpear", "\noil\tpear", `line 8: "oil" stands within a stanza; a blank line parts it from the one before`},
		{lines, "", "a-book", "c-book", `line 3: "b-book" stands after "c-book"; records are sorted, and it would not be found`},
		{lines, "", "a-book", "b-book", `line 3: "b-book" stands after "b-book"; records are sorted, and it would not be found`},
	} {
		_, slips := tableSlips(strings.Replace(c.table, c.old, c.slip, 1), c.begins)
		if got := strings.Join(slips, "; "); got != c.want {
			t.Errorf("%q in place of %q: %s, want %s", c.slip, c.old, got, c.want)
		}
	}
}
