package sheet

import (
	"slices"
	"strings"

	"example.com/lyewright/colour"
	"example.com/lyewright/fragrance"
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// told is what one line says: a finding, and what else the same is so of.
type told struct {
	soap.Finding
	also []string
}

// together gives the findings of one severity down to another. Three warnings alike must not bury a fourth, so
// that those of one code that say the same stand in one line; a finding whose words differ in anything else has
// a line of its own. A finding whose sentence was said already adds nothing: what is so of a fragrance in every
// part is said once.
func together(found []soap.Finding, from, to soap.Severity) []told {
	var list []told
	said := map[string]bool{}
next:
	for _, f := range found {
		message := f.Message()
		if f.Severity > from || f.Severity < to || isUnjudged(f) || said[message] {
			continue
		}
		said[message] = true
		for i := range list {
			if t := &list[i]; t.Code == f.Code && t.Severity == f.Severity {
				if also := alike(t.Finding, f); also != "" {
					t.also = append(t.also, also)
					continue next
				}
			}
		}
		list = append(list, told{Finding: f})
	}
	return list
}

// alike says in a few words what f adds to the sentence of t, such that with these words and that sentence
// nothing of its own sentence is lost; empty where more than a few words differ.
func alike(t, f soap.Finding) string {
	if blanked(t) == blanked(f) {
		switch {
		case f.Code == "name-note" && len(f.Names) == 2:
			return units.Quote(f.Names[1]) + " as " + f.Names[0]
		case len(f.Names) == 1:
			return withFigures(f)
		}
	}
	return ownWords(t.Message(), f)
}

// blanked is the sentence of a finding without its name, its figure and what it quotes.
func blanked(f soap.Finding) string {
	own := append([]string{f.Figure(), f.Quoted}, f.Names...)
	slices.SortStableFunc(own, func(a, b string) int { return len(b) - len(a) }) // one may stand in another
	text := f.Message()
	for _, word := range own {
		if word != "" {
			text = strings.ReplaceAll(text, word, "\x00")
		}
	}
	return text
}

// withFigures names what a finding is about, with its figure and what its sentence quotes.
func withFigures(f soap.Finding) string {
	var with []string
	for _, text := range []string{f.Figure(), f.Quoted} {
		if text != "" && strings.Contains(f.Message(), text) {
			with = append(with, text)
		}
	}
	if len(with) == 0 {
		return f.Names[0]
	}
	return f.Names[0] + " (" + strings.Join(with, "; ") + ")"
}

// ownWords gives how the sentence of f begins, where from a comma, a colon or the end of a clause on it is that
// of another finding, and the longer part of it: "The lye at 91 °C". It is empty where that is not so.
func ownWords(said string, f soap.Finding) string {
	message := f.Message()
	same := 0
	for same < min(len(said), len(message)) && said[len(said)-1-same] == message[len(message)-1-same] {
		same++
	}
	for at := len(message) - same; at < len(message); at++ {
		begin, rest := message[:at], message[at:]
		ends := strings.HasPrefix(rest, ", ") || strings.HasPrefix(rest, ": ") || strings.HasPrefix(rest, "; ") ||
			strings.HasPrefix(rest, ". ") || strings.HasPrefix(rest, " (")
		whole := func(word string) bool { // it is not cut in two
			return strings.Contains(begin, word) || strings.Contains(rest, word) || !strings.Contains(message, word)
		}
		if !ends || !whole(f.Quoted) || !whole(f.Figure()) || !allOf(f.Names, whole) {
			continue
		}
		if len(rest) < len(begin) || strings.Contains(begin, ". ") {
			return ""
		}
		return begin
	}
	return ""
}

func allOf(names []string, hold func(string) bool) bool {
	return !slices.ContainsFunc(names, func(name string) bool { return !hold(name) })
}

// text is the sentence of the first, and what else it is so of.
func (t told) text() string {
	text := t.Message()
	if len(t.also) == 0 {
		return text
	}
	if t.Code == "name-note" {
		return text + " Likewise are read: " + strings.Join(t.also, "; ") + "."
	}
	return text + " The same holds for: " + strings.Join(t.also, "; ") + "."
}

// grave is the heading of dangers and warnings: of a batch that is under way it is late to
// speak of weighing.
func (s *sheet) grave() string {
	switch r := s.b.Weighed; {
	case r == nil:
		return "Before you weigh"
	case r.Stage == soap.AtMoulds:
		return "Of this batch, which is poured"
	default:
		return "Before you go on"
	}
}

// findings prints the findings of one severity down to another.
func (s *sheet) findings(heading string, from, to soap.Severity) {
	list, names := together(s.b.Findings, from, to), s.unjudged()
	if to != soap.Note {
		names = nil
	}
	if len(list)+len(names) > 0 {
		s.heading(heading)
	}
	for _, t := range list {
		lead := pad(strings.ToUpper(t.Severity.String()), -9)
		if t.Severity == soap.Note {
			lead = "-  "
		}
		s.wrap(lead, t.text()+" "+s.cite(t.Source))
	}
	if len(names) > 0 {
		s.wrap("-  ", "Weighed, but not judged (limits, behaviour and own chemistry are not known here): "+
			strings.Join(names, "; ")+".")
	}
}

// unjudged lists what is only weighed: one line of the sheet, where each has a
// finding of its own.
func (s *sheet) unjudged() []string {
	var names []string
	for _, f := range s.b.Findings {
		if isUnjudged(f) && !slices.Contains(names, f.Names[0]) {
			names = append(names, f.Names[0])
		}
	}
	return names
}

// isUnjudged reports whether a note says that nothing is known of an addition, not
// even a name that is near.
func isUnjudged(f soap.Finding) bool {
	if f.Severity != soap.Note || !strings.HasSuffix(f.Code, "-unjudged") || f.Detail != "" {
		return false
	}
	switch f.Code {
	case "fragrance-unjudged":
		return fragrance.Suggest(f.Names[0]) == ""
	case "colourant-unjudged":
		return colour.Suggest(f.Names[0]) == ""
	default:
		return true
	}
}
