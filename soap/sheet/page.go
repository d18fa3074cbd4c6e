package sheet

import (
	"io"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.com/lyewright/units/cite"
)

// width is how many columns a page has.
const width = 78

// page collects a text, and the sources it cites.
type page struct {
	strings.Builder
	prefix  string // of the keys of its sources
	sources []string

	sourceless bool // another page lists the sources
}

func (p *page) line(text string) {
	p.WriteString(strings.TrimRight(text, " "))
	p.WriteByte('\n')
}

func (p *page) heading(text string) {
	p.line("")
	p.wrap("", strings.ToUpper(text)) // a part's name may be longer than a line
}

// wrap writes a text over as many lines as it needs, the first behind a lead,
// the others indented as far.
func (p *page) wrap(lead, text string) {
	indent := utf8.RuneCountInString(lead)
	for _, line := range broken(text, width-indent) {
		p.line(lead + line)
		lead = strings.Repeat(" ", indent)
	}
}

// broken breaks a text into lines of at most so many letters: between words, and
// inside a word only where it is longer than a line.
func broken(text string, most int) []string {
	var lines []string
	line, used := "", 0
	for _, word := range words(text) {
		letters := []rune(word)
		if used > 0 && used+1+len(letters) > most {
			lines = append(lines, line)
			line, used = "", 0
		}
		for len(letters) > most {
			lines = append(lines, string(letters[:most]))
			letters = letters[most:]
		}
		if used > 0 {
			line += " "
			used++
		}
		line += string(letters)
		used += len(letters)
	}
	return append(lines, line)
}

// words are those of a text; a percent sign stays with its number.
func words(text string) []string {
	var list []string
	for word := range strings.FieldsSeq(text) {
		if n := len(list); n > 0 && strings.HasPrefix(word, "%") {
			list[n-1] += " " + word
			continue
		}
		list = append(list, word)
	}
	return list
}

// cite gives the key of a source, listed at the foot of the page; nothing where
// the figure comes from the formula itself.
func (p *page) cite(source cite.Source) string {
	if p.sourceless || source.Title == "" && source.How != cite.CommonPractice {
		return ""
	}
	text := source.String()
	for i, known := range p.sources {
		if known == text {
			return p.key(i)
		}
	}
	p.sources = append(p.sources, text)
	return p.key(len(p.sources) - 1)
}

func (p *page) key(i int) string { return "[" + p.prefix + strconv.Itoa(i+1) + "]" }

// foot lists the sources that were cited.
func (p *page) foot() {
	if len(p.sources) == 0 {
		return
	}
	p.heading("Sources")
	for i, source := range p.sources {
		p.wrap(pad(p.key(i)+" ", -5), source)
	}
}

// edition says at the end of a page which edition of the data its figures are of.
func (p *page) edition(edition string) {
	p.line("")
	p.line("Data edition " + edition)
}

func (p *page) writeTo(w io.Writer) error {
	_, err := io.WriteString(w, p.String())
	return err
}

// pad fills a text with spaces to a width: on its left, or on its right where
// the width is negative.
func pad(text string, width int) string {
	space := func(n int) string { return strings.Repeat(" ", max(0, n-utf8.RuneCountInString(text))) }
	if width < 0 {
		return text + space(-width)
	}
	return space(width) + text
}

// shorten cuts a name that would break a column.
func shorten(text string, most int) string {
	if utf8.RuneCountInString(text) <= most {
		return text
	}
	return string([]rune(text)[:most-1]) + "…"
}
