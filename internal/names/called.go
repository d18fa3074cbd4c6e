package names

import "strings"

// Called lists the names of the table that mean an id alone, as they are written there, in the order of the table.
func Called(kind Kind, id string) (called []string) {
	for _, l := range listed()[kind] {
		e := read(l.line)
		if e.Several || len(e.Meanings) != 1 || e.Meanings[0].ID != id {
			continue
		}
		_, rest, _ := strings.Cut(l.line, "\t")
		written, _, _ := strings.Cut(rest, "\t")
		if written == "" {
			written = l.name
		}
		called = append(called, strings.Split(written, " = ")...)
	}
	return called
}
