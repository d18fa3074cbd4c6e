package refdata_test

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/internal/refdata"
	"github.com/google/go-cmp/cmp"
)

func read(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "soap", "data", name))
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// records reads a table from its beginning to its end, by its own means: the
// reference of the index.
func records(t *testing.T, body, separator, prefix string) map[string]string {
	t.Helper()
	found, last := map[string]string{}, ""
	for _, record := range strings.Split(strings.TrimRight(body, "\n"), separator) {
		first := strings.Split(record, "\n")[0]
		id := strings.Split(strings.TrimPrefix(first, prefix), "\t")[0]
		if id <= last {
			t.Fatalf("%q follows %q: not sorted", id, last)
		}
		found[id], last = record, id
	}
	return found
}

// checkAll looks up every id, and names that are none: before, after and
// between the ids, parts of them, and nothing at all.
func checkAll(t *testing.T, want map[string]string, find func(id string) (string, bool)) {
	t.Helper()
	names := []string{"", "\n", "\t", "!", "#", "\x00", "~~~~"}
	for id, record := range want {
		names = append(names, id, id+"!", id+"~", id[:len(id)-1], id[:len(id)/2], id[1:], id+"\t", record)
	}
	for _, name := range names {
		record, isID := want[name]
		if got, found := find(name); found != isID || got != record {
			t.Errorf("%.40q: found is %t, and the record %.60q; want %t, %.60q", name, found, got, isID, record)
		}
	}
}

func TestEveryOilIsFoundAndNothingElse(t *testing.T) {
	table := read(t, "oils.txt")
	_, body, _ := strings.Cut(table, "\n\n")
	want := records(t, body, "\n\n", "oil\t")
	if len(want) < 50 {
		t.Fatalf("only %d oils", len(want))
	}
	checkAll(t, want, refdata.IndexStanzas(table, "oil").Find)

	var got []string
	for stanza := range refdata.Stanzas(table) {
		got = append(got, stanza)
	}
	all := strings.Split(strings.TrimRight(body, "\n"), "\n\n")
	if diff := cmp.Diff(all, got); diff != "" {
		t.Errorf("stanzas (-want +got):\n%s", diff)
	}
}

func TestEverySourceIsFoundAndNothingElse(t *testing.T) {
	table := read(t, "sources.txt")
	var lines []string
	for _, line := range strings.Split(strings.TrimRight(table, "\n"), "\n") {
		if !strings.HasPrefix(line, "#") {
			lines = append(lines, line)
		}
	}
	want := records(t, strings.Join(lines, "\n"), "\n", "")
	if len(want) < 40 {
		t.Fatalf("only %d sources", len(want))
	}
	checkAll(t, want, refdata.IndexLines(table).Find)
	if diff := cmp.Diff(lines, slices.Collect(refdata.Lines(table))); diff != "" {
		t.Errorf("lines (-want +got):\n%s", diff)
	}
}

// Tables of every small size and of uneven records.
func TestRecordIsFoundInTablesOfEverySize(t *testing.T) {
	source := rand.New(rand.NewPCG(40, 2026))
	for range 2_000 {
		ids := map[string]bool{}
		for range 1 + source.IntN(8) {
			id := make([]byte, 1+source.IntN(4))
			for i := range id {
				id[i] = "abc-"[source.IntN(4)]
			}
			ids[string(id)] = true
		}
		var lines, stanzas []string
		lineOf, stanzaOf := map[string]string{}, map[string]string{}
		for _, id := range slices.Sorted(func(yield func(string) bool) {
			for id := range ids {
				if !yield(id) {
					return
				}
			}
		}) {
			line, stanza := id, "oil\t"+id
			if source.IntN(3) > 0 {
				line += "\t" + strings.Repeat("x", source.IntN(40))
			}
			for range source.IntN(4) {
				stanza += "\nnote\t" + strings.Repeat("y", source.IntN(40))
			}
			lines, stanzas = append(lines, line), append(stanzas, stanza)
			lineOf[id], stanzaOf[id] = line, stanza
		}
		for _, end := range []string{"", "\n"} {
			table := "# comment\n#\n" + strings.Join(lines, "\n") + end
			checkAll(t, lineOf, refdata.IndexLines(table).Find)
			table = "# comment\n# a\tb\n\n" + strings.Join(stanzas, "\n\n") + end
			checkAll(t, stanzaOf, refdata.IndexStanzas(table, "oil").Find)
			if t.Failed() {
				t.Fatalf("the lines were %q, the stanzas %q", lines, stanzas)
			}
		}
	}
}

func TestTableWithoutRecordsHasNone(t *testing.T) {
	for _, table := range []string{"", "# only a header\n", "# edition\t2026-01-01"} {
		if got, found := refdata.IndexStanzas(table, "oil").Find("olive"); found {
			t.Errorf("%q has the stanza %q", table, got)
		}
		if got, found := refdata.IndexLines(table).Find(""); found {
			t.Errorf("%q has the line %q", table, got)
		}
		if got, found := refdata.IndexLines(table).Find("olive"); found {
			t.Errorf("%q has the line %q", table, got)
		}
	}
}

func TestFieldsAreCountedFromNoughtAndMissingOnesAreEmpty(t *testing.T) {
	for n, want := range []string{"olive", "", "187", "", ""} {
		if got := refdata.Field("olive\t\t187\t", n); got != want {
			t.Errorf("field %d is %q, want %q", n, got, want)
		}
	}
	if got := refdata.Field("", 0) + refdata.Field("", 7); got != "" {
		t.Errorf("an empty line has the field %q", got)
	}
}

func TestEditionIsTheOneInTheHeader(t *testing.T) {
	tests := []struct{ table, want string }{
		{"# Oils\n# edition\t2026-11-25\n#\n\noil\tolive\n", "2026-11-25"},
		{"# edition\t7", "7"},
		{"# Oils\n\noil\tolive\n", ""},
		{"", ""},
	}
	for _, test := range tests {
		if got := refdata.Edition(test.table); got != test.want {
			t.Errorf("%q has the edition %q, want %q", test.table, got, test.want)
		}
	}
}

// A look-up reads a record, not the table.
func TestLookUpDoesNotAllocate(t *testing.T) {
	oils, sources := refdata.IndexStanzas(read(t, "oils.txt"), "oil"), refdata.IndexLines(read(t, "sources.txt"))
	for _, id := range []string{"almond", "olive", "wheat-germ", "absent"} {
		allocs := testing.AllocsPerRun(100, func() {
			oils.Find(id)
			sources.Find(id)
		})
		if allocs > 0 {
			t.Errorf("looking %s up allocates %v times", id, allocs)
		}
	}
}
