// Package cite names the published source of a figure: what was published,
// which edition, where in it the figure stands, and how the figure was
// obtained. A figure without these does not enter the library.
package cite

import "strings"

// How says how a figure was obtained. The zero value is Unknown, which no
// figure of the library carries.
type How uint8

const (
	Unknown        How = iota
	Read               // seen in a copy of the publication named
	Memory             // recalled from the publication named; nobody saw it
	CommonPractice     // a habit of the trade, without a source
	Computed           // worked out from other figures
	Given              // brought by the caller
)

// String gives the word used in tables and JSON: "read", "memory",
// "common practice", "computed", "given", "unknown".
func (h How) String() string {
	switch h {
	case Read:
		return "read"
	case Memory:
		return "memory"
	case CommonPractice:
		return "common practice"
	case Computed:
		return "computed"
	case Given:
		return "given"
	default:
		return "unknown"
	}
}

// ParseHow reads the word that String gives; Unknown for any other.
func ParseHow(word string) How {
	for h := Read; h <= Given; h++ {
		if h.String() == word {
			return h
		}
	}
	return Unknown
}

// Source is where a figure stands. The zero value names nothing.
type Source struct {
	Title   string // the publication
	Edition string // edition, year or state; may say "not stated"
	Place   string // table, clause, monograph or page
	How     How
}

// String gives the source in one line, "memory" and "common practice" spelled
// out so that they are never mistaken for something that was read.
func (s Source) String() string {
	var parts []string
	for _, part := range []string{s.Title, s.Edition, s.Place} {
		if part != "" {
			parts = append(parts, part)
		}
	}
	text := strings.Join(parts, ", ")
	switch {
	case text == "":
		return s.How.String()
	case s.How == Unknown || s.How == Read:
		return text
	case s.How == Memory:
		return text + " (recalled, not read)"
	default:
		return text + " (" + s.How.String() + ")"
	}
}
