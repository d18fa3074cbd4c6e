package sheet

import (
	"io"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// WriteOils prints a table of oils: what each is planned at and the range that is
// kept in mind, in mg of KOH per g, and the iodine value, in g per 100 g. The error is the
// writer's.
func WriteOils(w io.Writer, oils []soap.Oil) error {
	var p page
	p.line("Saponification value in mg KOH/g, iodine value in g of iodine per 100 g.")
	p.line("Data edition " + soap.DataEdition() + ". How: read in the publication, or recalled (memory).")
	p.wrap("", "Choice: the middle of the published range; the value of its own fatty acids (profile) where that is lower, but no lower than the low end; computed from the fatty acids where no value is published.")
	p.line("")
	p.line(pad("oil", -23) + pad("planned", 8) + pad("range", 15) + pad("iodine", 15) + "  " + "how, choice")
	for _, oil := range oils {
		value := oil.Saponification()
		span, planned := "-", "-"
		if value.Typical.Given() {
			planned = value.Typical.Times(units.Whole(1000)).Fixed(1)
		}
		if oil.HasRange() {
			span = value.Low.MilligramsPerGramText(1) + " to " + value.High.MilligramsPerGramText(1)
		}
		low, high := oil.Iodine()
		choice := "bring your own"
		if value.Typical.Given() {
			choice = oil.How().String()
			if oil.Choice() != soap.FromProfile {
				choice += ", " + oil.Choice().String()
			}
		}
		p.line(pad(oil.ID(), -23) + pad(planned, 8) + pad(span, 15) + pad(ends(low.PercentText(1), high.PercentText(1)), 15) + "  " + choice)
	}
	return p.writeTo(w)
}

// ends prints a range of which either end may be missing.
func ends(low, high string) string {
	switch {
	case low == "" && high == "":
		return "-"
	case low == "":
		return "up to " + high
	case high == "":
		return "from " + low
	case low == high:
		return low
	default:
		return low + " to " + high
	}
}

// asked says what a row was asked for as, and what the table of names says of that.
func (p *page) asked(name, id, note string) {
	if name != "" {
		p.wrap("", "The name "+units.Quote(name)+" is read as "+id+".")
	}
	if note != "" {
		p.wrap("", "A note on the name (memory): "+note+".")
	}
}

// WriteOil prints everything that is known of an oil, with its sources. The
// error is the writer's.
func WriteOil(w io.Writer, oil soap.Oil) error {
	var p page
	p.wrap("", oil.Name()+" ("+oil.ID()+")")
	p.asked(oil.Asked(), oil.ID(), oil.NameNote())
	p.line(oil.Kind().String())
	if oil.Latin() != "" {
		p.line(oil.Latin())
	}
	if oil.INCI() != "" {
		p.line("Name for an ingredient list (INCI): " + oil.INCI())
	}
	p.line("")
	if value := oil.Saponification(); value.Typical.Given() {
		p.wrap("", "Planned at "+milligrams(value.Typical)+" mg KOH/g: "+because(oil)+".")
	} else {
		p.wrap("", "Not planned: neither a saponification value nor enough of its fatty acids is published. Bring the value of your lot.")
	}
	p.heading("Published figures")
	for _, f := range oil.Figures() {
		text := figureText(f)
		if f.Remark != "" {
			text += " (" + f.Remark + ")"
		}
		p.wrap(pad(f.Name, -18), text+" "+p.cite(f.Source))
	}
	for _, profile := range oil.Profiles() {
		p.heading("Fatty acids, % " + p.cite(profile.Source))
		for _, share := range profile.Acids {
			acid, _ := soap.LookUpFattyAcid(share.Acid)
			p.line(pad(acid.Symbol, -9) + pad(acid.Name, -44) + ends(share.Low.PercentText(2), share.High.PercentText(2)))
		}
	}
	if notes := oil.Notes(); len(notes) > 0 {
		p.heading("Notes")
		for _, note := range notes {
			p.wrap("-  ", note)
		}
	}
	p.foot()
	p.edition(soap.DataEdition())
	p.line("")
	return p.writeTo(w)
}

func figureText(f soap.Figure) string {
	digits := func(r units.Ratio) string { return r.Text(4) }
	switch f.Name {
	case "saponification", "acid-value", "unsaponifiable":
		digits = func(r units.Ratio) string { return r.MilligramsPerGramText(4) }
	case "iodine":
		digits = func(r units.Ratio) string { return r.PercentText(4) }
	}
	return ends(digits(f.Low), digits(f.High)) + " " + f.Unit
}
