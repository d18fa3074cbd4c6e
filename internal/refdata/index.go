package refdata

import (
	"slices"
	"strings"
)

// Index finds the records of a table by their ids. It is made once, when a table is
// first asked for something: that reads where every record begins, and no record.
type Index struct{ ids, records []string }

// IndexStanzas indexes a table of stanzas whose first lines are key TAB id. Stanzas are
// separated by one blank line and sorted by id; what stands before the first blank line
// is the table's header.
func IndexStanzas(table, key string) Index {
	var x Index
	for stanza := range Stanzas(table) {
		id, keyed := strings.CutPrefix(stanza, key+"\t")
		if !keyed {
			continue
		}
		if end := strings.IndexAny(id, "\t\n"); end >= 0 {
			id = id[:end]
		}
		x.ids, x.records = append(x.ids, id), append(x.records, stanza)
	}
	return x
}

// IndexLines indexes a table of lines whose first fields are ids. Lines are sorted by
// that field; lines that begin with # are comments.
func IndexLines(table string) Index {
	var x Index
	for line := range Lines(table) {
		if line != "" {
			x.ids, x.records = append(x.ids, Field(line, 0)), append(x.records, line)
		}
	}
	return x
}

// Find returns the record of an id.
func (x Index) Find(id string) (record string, found bool) {
	i, found := slices.BinarySearch(x.ids, id)
	if !found {
		return "", false
	}
	return x.records[i], true
}

// IDs lists the ids in order. The list is the index's own and not to be changed.
func (x Index) IDs() []string { return x.ids }
