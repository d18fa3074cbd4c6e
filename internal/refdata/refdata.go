// Package refdata reads reference tables that are embedded as text: sorted
// records with tab-separated fields. An [Index] finds a record, which is read only
// when it is asked for, so that a program pays for nothing at start-up.
package refdata

import (
	"iter"
	"strings"
)

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
