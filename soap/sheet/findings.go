package sheet

import (
	"slices"
	"strings"

	"example.com/lyewright/colour"
	"example.com/lyewright/fragrance"
	"example.com/lyewright/soap"
)

// told is what one line says: a finding, and what else the same is so of.
type told struct {
	soap.Finding
	also []string
}

// together gives the findings of one severity down to another, each case of a code once:
// three warnings alike must not bury a fourth. A finding whose sentence was said already
// adds nothing: what is so of a fragrance in every part is said once.
func together(found []soap.Finding, from, to soap.Severity) []told {
	var list []told
	said := map[string]bool{}
	for _, f := range found {
		message := f.Message()
		if f.Severity > from || f.Severity < to || isUnjudged(f) || said[message] {
			continue
		}
		said[message] = true
		same := func(t told) bool { return t.Code == f.Code && t.Severity == f.Severity && t.Detail == f.Detail }
		if i := slices.IndexFunc(list, same); i >= 0 {
			list[i].also = append(list[i].also, alike(f))
			continue
		}
		list = append(list, told{Finding: f})
	}
	return list
}

// alike names what a finding is about, with its figure and what its sentence would quote.
func alike(f soap.Finding) string {
	name := strings.Join(f.Names, ", ")
	if name == "" {
		name = f.Subject
	}
	var with []string
	for _, text := range []string{f.Figure(), f.Quoted} {
		if text != "" {
			with = append(with, text)
		}
	}
	if len(with) > 0 {
		name += " (" + strings.Join(with, "; ") + ")"
	}
	return name
}

// text is the sentence of the first, and what else it is so of.
func (t told) text() string {
	text := t.Message()
	if len(t.also) > 0 {
		text += " The same holds for: " + strings.Join(t.also, "; ") + "."
	}
	return text
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
		s.wrap("-  ", "Weighed, but not judged (limits, behaviour and own chemistry are not known here): "+strings.Join(names, "; ")+".")
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
