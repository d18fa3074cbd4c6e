package sheet

import (
	"html"
	"io"
	"strings"

	"example.com/lyewright/colour/tint"
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// WriteTintPage writes what colour the parts of a batch will have as a page of HTML that
// needs nothing else, no script and no other file: the figures first, then a swatch of each
// part, named beside its picture. Masses are in grams; names are escaped. The error is the
// writer's, or [soap.Faults] of [soap.Batch.Tint], and then nothing is written.
func WriteTintPage(w io.Writer, b soap.Batch) error {
	t, err := b.Tint()
	if err != nil {
		return err
	}
	var p htmlPage
	p.raw(pageHead)
	p.element("title", t.Formula+": colour")
	p.raw(pageStyle)
	p.element("h1", t.Formula)
	p.element("p", "Colour, data edition "+soap.DataEdition()+".")
	for _, text := range fitTexts(&t) {
		p.element("p", text)
	}
	p.findings("Before you use it", t.Findings, soap.Danger, soap.Warning)
	p.figures(&t)
	p.pictures(&t)
	p.loads(&t)
	p.remarks(&t)
	p.order(&t)
	p.residuals(t.Fit)
	p.findings("Worth knowing", t.Findings, soap.Note, soap.Note)
	p.element("h2", "Mind")
	p.items("ul", soap.TintNotices())
	p.raw("</main>\n</body>\n</html>\n")
	_, err = io.WriteString(w, p.String())
	return err
}

const pageHead = `<!DOCTYPE html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
`

const pageStyle = `<style>
body { margin: 0; background: #fff; color: #1a1a1a; font: 1rem/1.5 system-ui, sans-serif; }
main { max-width: 56rem; margin: 0 auto; padding: 1.5rem; }
h1 { font-size: 1.6rem; margin: 0 0 .25rem; }
h2 { font-size: 1.15rem; margin: 2rem 0 .5rem; }
.scroll { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; }
caption { text-align: left; color: #4a4a4a; padding-bottom: .25rem; }
th, td { padding: .3rem .6rem; border-bottom: 1px solid #c4c4c4; text-align: right; vertical-align: top; font-variant-numeric: tabular-nums; }
th:first-child, .text { text-align: left; }
.swatches { display: flex; flex-wrap: wrap; gap: 1.5rem; }
figure { margin: 0; }
figure svg { display: block; width: 15rem; max-width: 100%; height: auto; border: 1px solid #767676; }
figcaption { max-width: 15rem; padding-top: .25rem; }
@media print {
  main { max-width: none; padding: 0; }
  figure, tr { break-inside: avoid; }
  svg { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
}
</style>
</head>
<body>
<main>
`

// htmlPage collects a page; every text that goes in is escaped.
type htmlPage struct{ strings.Builder }

func (p *htmlPage) raw(markup string) { p.WriteString(markup) }

func (p *htmlPage) element(name, text string) {
	p.raw("<" + name + ">" + html.EscapeString(text) + "</" + name + ">\n")
}

func (p *htmlPage) items(list string, texts []string) {
	p.raw("<" + list + ">\n")
	for _, text := range texts {
		p.element("li", text)
	}
	p.raw("</" + list + ">\n")
}

// table writes a table whose first column names its rows; words are the columns that hold
// text.
func (p *htmlPage) table(caption string, heads []string, rows [][]string, words ...int) {
	p.raw("<div class=\"scroll\">\n<table>\n")
	p.element("caption", caption)
	p.raw("<thead><tr>")
	text := func(column int) string {
		for _, w := range words {
			if w == column {
				return ` class="text"`
			}
		}
		return ""
	}
	for i, head := range heads {
		p.raw(`<th scope="col"` + text(i) + ">" + html.EscapeString(head) + "</th>")
	}
	p.raw("</tr></thead>\n<tbody>\n")
	for _, row := range rows {
		p.raw(`<tr><th scope="row">` + html.EscapeString(row[0]) + "</th>")
		for i, cell := range row[1:] {
			p.raw("<td" + text(i+1) + ">" + html.EscapeString(cell) + "</td>")
		}
		p.raw("</tr>\n")
	}
	p.raw("</tbody>\n</table>\n</div>\n")
}

func (p *htmlPage) figures(t *soap.Tint) {
	var rows [][]string
	add := func(name, what string, c tint.Lab, difference string) {
		shown, inGamut := c.SRGB()
		text := shown.String()
		if !inGamut {
			text += ", brought into what a screen shows"
		}
		rows = append(rows, []string{name, what, decimal(c.L), decimal(c.A), decimal(c.B), difference, text})
	}
	for i := range t.Parts {
		part := &t.Parts[i]
		if part.Colour != nil {
			difference := ""
			if part.Target != nil {
				difference = decimal(part.Difference)
			}
			add(part.Name, "predicted", part.Colour.Lab, difference)
		} else {
			rows = append(rows, []string{part.Name, "not predicted", "", "", "", "", ""})
		}
		if part.Target != nil {
			add(part.Name, "target", *part.Target, "")
		}
		for _, c := range part.Coats {
			if c.Colour != nil {
				add(part.Name, c.Thickness.String()+" on "+c.On, c.Colour.Lab, "")
			}
		}
	}
	p.element("h2", "Figures")
	p.table("Colour of each part, and how far it is from its target", []string{"Part", "Colour", "L*", "a*", "b*", "Difference", "Picture"}, rows, 1, 6)
}

func (p *htmlPage) pictures(t *soap.Tint) {
	open := false
	for i := range t.Parts {
		part := &t.Parts[i]
		if part.Colour == nil {
			continue
		}
		if !open {
			p.element("h2", "Pictures")
			p.raw("<div class=\"swatches\">\n")
			open = true
		}
		shown, _ := part.Colour.SRGB()
		name := part.Name + ", predicted: " + labText(part.Colour.Lab)
		caption := part.Name + ": predicted, " + shown.String()
		p.raw(`<figure><svg viewBox="0 0 240 120" role="img"><title>` + html.EscapeString(name) + `</title><rect width="240" height="120" fill="` + shown.String() + `"/>`)
		if part.Target != nil {
			aim, _ := part.Target.SRGB()
			p.raw(`<rect x="160" width="80" height="120" fill="` + aim.String() + `"/>`)
			caption = part.Name + ": predicted on the left, " + shown.String() + "; target on the right, " + aim.String()
		}
		p.raw("</svg><figcaption>" + html.EscapeString(caption) + "</figcaption></figure>\n")
	}
	if open {
		p.raw("</div>\n")
	}
}

func (p *htmlPage) loads(t *soap.Tint) {
	var rows [][]string
	for i := range t.Parts {
		part := &t.Parts[i]
		for k := range part.Loads {
			l := &part.Loads[k]
			sought := "given"
			if l.Sought {
				sought = soughtText(l)
			}
			rows = append(rows, []string{part.Name, l.Name, l.Weighed.Text(units.Gram, 3), l.OfBatter.PercentFixed(4), l.OfOils.PercentFixed(4), l.OfDry.PercentFixed(4), sought})
		}
	}
	if len(rows) > 0 {
		p.element("h2", "Colourants")
		p.table("What is weighed for each part", []string{"Part", "Colourant", "g", "% of batter", "% of oils", "% of dry part", "Load"}, rows, 1, 6)
	}
}

// remarks writes the sentences on each part.
func (p *htmlPage) remarks(t *soap.Tint) {
	for i := range t.Parts {
		if texts := remarks(&t.Parts[i], units.Gram); len(texts) > 0 {
			p.element("h2", t.Parts[i].Name)
			p.items("ul", texts)
		}
	}
}

func (p *htmlPage) order(t *soap.Tint) {
	if len(t.Order) < 2 {
		return
	}
	p.element("h2", "Order of work")
	p.element("p", orderText(t))
	var texts []string
	for _, part := range inOrder(t) {
		texts = append(texts, part.Name+", "+lightness(part))
	}
	p.items("ol", texts)
}

func (p *htmlPage) residuals(fit tint.Calibration) {
	if !fit.Given() {
		return
	}
	var rows [][]string
	for _, r := range fit.Residuals() {
		rows = append(rows, []string{r.Swatch, decimal(r.Difference)})
	}
	p.element("h2", "How well the swatches are met")
	p.table("Difference of each swatch from what is predicted of it", []string{"Swatch", "Difference"}, rows)
}

// findings writes those of one severity down to another.
func (p *htmlPage) findings(heading string, list []soap.Finding, from, to soap.Severity) {
	var texts []string
	for i := range list {
		if f := &list[i]; f.Severity <= from && f.Severity >= to {
			severity := f.Severity.String()
			texts = append(texts, strings.ToUpper(severity[:1])+severity[1:]+": "+f.Message()+" ("+f.Source.String()+")")
		}
	}
	if len(texts) > 0 {
		p.element("h2", heading)
		p.items("ul", texts)
	}
}
