package sheet

import (
	"io"
	"strings"

	"example.com/lyewright/colour"
	"example.com/lyewright/units/cite"
)

// WriteColourants prints a table of colourants: what alkali and the law of the European
// Union and the United States make of each, and how much of it is usual. The error is the
// writer's.
func WriteColourants(w io.Writer, colourants []colour.Colourant) error {
	var p page
	p.wrap("", "Colourants: what becomes of them in alkali, whether soap that is a cosmetic may have them in the EU and in the US, and the loads that are usual, in % of oils: a habit of the trade without a source, no limit. Data edition "+colour.DataEdition()+".")
	p.line("")
	p.line(pad("id", -27) + pad("CI", -8) + pad("alkali", -20) + pad("EU", -5) + pad("US", -5) + pad("usual", 13))
	for _, c := range colourants {
		ci := strings.Join(c.CI()[:min(1, len(c.CI()))], "")
		if len(c.CI()) > 1 {
			ci += "+"
		}
		usual := "-"
		if u, given := c.Usual(false); given {
			usual = ends(u.Low.Share.PercentText(4), u.High.Share.PercentText(4))
		}
		p.line(pad(c.ID(), -27) + pad(ci, -8) + pad(c.InAlkali().Stability.String(), -20) +
			pad(listed(c.Under(colour.EU)), -5) + pad(listed(c.Under(colour.US)), -5) + pad(usual, 13))
	}
	p.line("")
	p.wrap("", "yes: listed, with conditions that lyewright colourants ID names; no: not listed; ?: nothing is held, or it has no entry of its own. In the US that counts if it is sold as a cosmetic: true soap is none.")
	return p.writeTo(w)
}

// listed prints a status in a word.
func listed(s colour.Status) string {
	switch s.Standing {
	case colour.Permitted:
		return "yes"
	case colour.NotPermitted:
		return "no"
	default:
		return "?"
	}
}

// WriteColourant prints everything that is known of a colourant, with its sources. The
// error is the writer's.
func WriteColourant(w io.Writer, c colour.Colourant) error {
	var p page
	p.wrap("", c.Name()+" ("+c.ID()+")")
	p.asked(c.Asked(), c.ID(), c.NameNote())
	p.wrap("", c.Chemistry())
	if ci := c.CI(); len(ci) > 0 {
		p.wrap("", "Colour Index number: "+strings.Join(ci, ", "))
	}
	p.heading("In alkali")
	if fast := c.InAlkali(); fast.Stability != colour.StabilityUnknown {
		text := fast.Text
		if class := fast.Stability.String(); !strings.HasPrefix(text, class) {
			text = class + "; " + text
		}
		p.wrap("", text+" "+p.cite(fast.Source()))
	} else {
		p.line("Nothing is held.")
	}
	p.heading("The law, for soap that is a cosmetic")
	for _, law := range []colour.Law{colour.EU, colour.US} {
		p.status(law, c.Under(law))
	}
	p.line("In the US true soap is no cosmetic.")
	p.heading("Loads and dispersion")
	alone, given := c.Usual(false)
	beside, _ := c.Usual(true)
	switch {
	case !given:
		p.line("Usual loads: none is held.")
	case c.Whitens():
		p.wrap("", "Usual to whiten, "+usualText(alone)+"; to lighten another colourant, "+usualText(beside)+" "+p.cite(alone.Source))
	default:
		p.wrap("", "Usual load: "+usualText(alone)+" "+p.cite(alone.Source))
	}
	if in := c.Disperses(); in.Text != "" {
		how := in.Source.String()
		if in.Source.How == cite.Memory {
			how = "recalled, not read"
		}
		p.wrap("", "Disperses in: "+in.Text+" ("+how+")")
	}
	if _, planned, _ := c.Density(); planned.Given() {
		low, _, high := c.Density()
		text := "Density: " + planned.String()
		if low != high {
			text = "Density: " + ends(low.Text(9), high.Text(9)) + " g/mL, reckoned with " + planned.String()
		}
		if c.Remark() != "" {
			text += " (" + c.Remark() + ")"
		}
		p.wrap("", text+" "+p.cite(c.DensitySource()))
	}
	if note := c.Note(); note != "" {
		p.wrap("", "Note: "+note+".")
	}
	p.foot()
	p.edition(colour.DataEdition())
	p.line("")
	return p.writeTo(w)
}

func usualText(u colour.Usual) string {
	return ends(u.Low.Share.PercentText(4), u.High.Share.PercentText(4)) + " % " + u.Low.Of.String()
}

func (p *page) status(law colour.Law, s colour.Status) {
	text := law.String() + ": " + s.Standing.String()
	if s.Clause != "" {
		text += ", " + s.Clause
	}
	if s.Remark != "" {
		text += ": " + s.Remark
	}
	if source := s.Source(); source != (cite.Source{}) {
		text += " " + p.cite(source)
	}
	p.wrap("", text)
}
