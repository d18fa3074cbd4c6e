// Package refdata reads reference tables that are embedded as text: sorted
// records with tab-separated fields. A record is found by bisection and read
// only when it is asked for, so that a program pays for nothing at start-up.
package refdata

import (
	"iter"
	"strings"
)

// Stanza returns the stanza of a table whose first line is key TAB id. Stanzas
// are separated by one blank line and sorted by id; what stands before the
// first blank line is the table's header.
func Stanza(table, key, id string) (stanza string, found bool) {
	// The header is a record without the key: it stands before all others.
	return find(strings.TrimRight(table, "\n"), "\n\n", key+"\t", id)
}

// Line returns the line of a table whose first field is id. Lines are sorted
// by that field; lines that begin with # stand before them all.
func Line(table, id string) (line string, found bool) {
	for strings.HasPrefix(table, "#") {
		_, table, _ = strings.Cut(table, "\n")
	}
	return find(strings.TrimRight(table, "\n"), "\n", "", id)
}

func find(body, separator, prefix, id string) (string, bool) {
	for body != "" {
		// A record that begins in the second half need not be read to its end;
		// where there is none, the first of what is left goes.
		start, after := 0, ""
		if i := strings.Index(body[len(body)/2:], separator); i >= 0 {
			start = len(body)/2 + i + len(separator)
			after = body[start:]
		} else {
			_, after, _ = strings.Cut(body, separator)
		}
		name, keyed := strings.CutPrefix(body[start:], prefix)
		if !keyed {
			body = after
			continue
		}
		if end := strings.IndexAny(name, "\t\n"); end >= 0 {
			name = name[:end]
		}
		switch strings.Compare(id, name) {
		case 0:
			record, _, _ := strings.Cut(body[start:], separator)
			return record, true
		case -1:
			body = body[:max(0, start-len(separator))]
		default:
			body = after
		}
	}
	return "", false
}

// Stanzas yields every stanza of a table in order.
func Stanzas(table string) iter.Seq[string] {
	return func(yield func(string) bool) {
		_, body, _ := strings.Cut(table, "\n\n")
		for stanza := range strings.SplitSeq(strings.TrimRight(body, "\n"), "\n\n") {
			if !yield(stanza) {
				return
			}
		}
	}
}

// IDs lists the ids of a table's stanzas, in order.
func IDs(table string) []string {
	var ids []string
	for stanza := range Stanzas(table) {
		line, _, _ := strings.Cut(stanza, "\n")
		ids = append(ids, Field(line, 1))
	}
	return ids
}

// Lines yields the lines of a stanza, or of a table without its comments.
func Lines(text string) iter.Seq[string] {
	return func(yield func(string) bool) {
		for line := range strings.SplitSeq(strings.TrimRight(text, "\n"), "\n") {
			if !strings.HasPrefix(line, "#") && !yield(line) {
				return
			}
		}
	}
}

// Field returns the n-th tab-separated field of a line, the empty text where
// the line has fewer.
func Field(line string, n int) string {
	for ; n > 0; n-- {
		_, rest, found := strings.Cut(line, "\t")
		if !found {
			return ""
		}
		line = rest
	}
	field, _, _ := strings.Cut(line, "\t")
	return field
}

// Edition returns what a table's header gives as its edition.
func Edition(table string) string { return Header(table, "edition") }

// Header returns what a line of a table's header gives for a key: "# key TAB value".
func Header(table, key string) string {
	for line := range strings.SplitSeq(table, "\n") {
		field, isHeader := strings.CutPrefix(line, "# ")
		if value, found := strings.CutPrefix(field, key+"\t"); isHeader && found {
			return value
		}
		if !strings.HasPrefix(line, "#") && line != "" {
			break
		}
	}
	return ""
}
