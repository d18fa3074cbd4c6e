package cite

import "strings"

// How says how a figure was obtained. The zero value is [Unknown], which no
// figure of the library carries.
type How uint8

// The ways in which a figure was obtained.
const (
	Unknown        How = iota // nobody said
	Read                      // seen in a copy of the publication named
	Memory                    // recalled from the publication named; nobody saw it
	CommonPractice            // a habit of the trade, without a source
	Computed                  // worked out from other figures
	Given                     // brought by the caller
)

// String gives the word used in tables and JSON: "read", "memory",
// "common practice", "computed", "given"; "unknown" for anything else.
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

// ParseHow reads the word that String gives, letter for letter; [Unknown] for any other.
func ParseHow(word string) How {
	for h := Read; h <= Given; h++ {
		if h.String() == word {
			return h
		}
	}
	return Unknown
}

// Source is where a figure stands. The zero value names nothing. It is plain data, and
// can be compared with ==.
type Source struct {
	Title   string // the publication; empty of common practice and of what a caller brings
	Edition string // edition, year or state; may say "edition not stated"
	Place   string // table, clause, monograph or page; may be empty
	How     How    // how the figure was obtained from it
}

// String gives the source in one line: title, edition and place, parted by commas, and
// behind them in brackets how the figure was obtained, unless it was read, so that what
// was recalled or is a habit of the trade is never mistaken for something that was read.
// Where nothing is named it is the word of How.
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
