package refdata_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/internal/refdata"
)

// A table in order answers as a reader who goes through all of it would; one that is
// in no order may hide a record, but never makes one up.
func FuzzLookUp(f *testing.F) {
	f.Add("# Oils\n# edition\t2026-11-25\n\noil\tolive\nname\tOlive oil\n\noil\tshea\n", "olive") // a table as they are
	f.Fuzz(func(t *testing.T, table, id string) {
		inNoOrder(t, table, id)
		// a line that begins with # is a comment, and no record
		ids := slices.DeleteFunc(strings.Fields(table), func(id string) bool { return strings.HasPrefix(id, "#") })
		slices.Sort(ids)
		ids = slices.Compact(ids)
		if len(ids) == 0 {
			return
		}
		inOrder(t, ids, id)
	})
}

func inNoOrder(t *testing.T, table, id string) {
	t.Helper()
	stanza, found := refdata.IndexStanzas(table, "oil").Find(id)
	first, _, _ := strings.Cut(stanza, "\n")
	if found && (!strings.Contains(table, stanza) || strings.Contains(stanza, "\n\n") || refdata.Field(first, 0) != "oil" || refdata.Field(first, 1) != id) {
		t.Errorf("the stanza %q for %q", stanza, id)
	}
	line, foundLine := refdata.IndexLines(table).Find(id)
	if foundLine && (!strings.Contains(table, line) || strings.Contains(line, "\n") || refdata.Field(line, 0) != id) {
		t.Errorf("the line %q for %q", line, id)
	}
	if !found && stanza != "" || !foundLine && line != "" {
		t.Errorf("%q and %q were not found", stanza, line)
	}
	edition := refdata.Edition(table)
	if strings.Contains(edition, "\n") || edition != "" && !strings.Contains(table, "# edition\t"+edition) {
		t.Errorf("the edition %q", edition)
	}
	if n := len(refdata.IndexStanzas(table, "oil").IDs()); n > 1+strings.Count(table, "\n\n") {
		t.Errorf("%d ids", n)
	}
	for line := range refdata.Lines(table) {
		if strings.HasPrefix(line, "#") || strings.Contains(line, "\n") {
			t.Errorf("%q is a line", line)
		}
	}
}

// inOrder makes the table of these ids and asks it for each of them, and for another.
func inOrder(t *testing.T, ids []string, other string) {
	t.Helper()
	lines, stanzas := "# header\n", "# header\n\n"
	for i, id := range ids {
		lines += id + "\t" + strings.Repeat("x", i%7) + "\n"
		stanzas += "oil\t" + id + strings.Repeat("\nnote\tx", i%3) + "\n\n"
	}
	lineIndex, stanzaIndex := refdata.IndexLines(lines), refdata.IndexStanzas(stanzas, "oil")
	for i, id := range ids {
		if line, found := lineIndex.Find(id); !found || line != id+"\t"+strings.Repeat("x", i%7) {
			t.Errorf("the line of %q of %q is %q, %t", id, ids, line, found)
		}
		if stanza, found := stanzaIndex.Find(id); !found || stanza != "oil\t"+id+strings.Repeat("\nnote\tx", i%3) {
			t.Errorf("the stanza of %q of %q is %q, %t", id, ids, stanza, found)
		}
	}
	if !slices.Equal(stanzaIndex.IDs(), ids) {
		t.Errorf("the ids of %q are %q", ids, stanzaIndex.IDs())
	}
	_, held := slices.BinarySearch(ids, other)
	if _, found := lineIndex.Find(other); found != held {
		t.Errorf("the line of %q of %q: %t", other, ids, found)
	}
	if _, found := stanzaIndex.Find(other); found != held {
		t.Errorf("the stanza of %q of %q: %t", other, ids, found)
	}
}
