package sheet

import (
	"io"
	"strings"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// WriteCaps prints how much fragrance a batch may hold, what binds, and what the label
// may have to name: [soap.Batch.Caps] as text of 78 columns, masses in the given unit and
// the most of a fragrance rounded down, percentages of the dry bar. The error is the
// writer's.
func WriteCaps(w io.Writer, b soap.Batch, unit units.Unit) error {
	s := capSheet{sheet: newSheet(b, unit), caps: b.Caps()}
	s.wrap("", b.Formula.Name)
	s.line("Fragrance, data edition " + soap.DataEdition())
	s.wrap("", "Limits: "+fragrance.Edition(s.caps.Law)+".")
	s.scents("Before you use it", soap.Danger, soap.Warning)
	for i := range s.caps.Parts {
		s.part(&s.caps.Parts[i])
	}
	s.pieces()
	s.label()
	s.scents("Worth knowing", soap.Note, soap.Note)
	s.heading("Mind")
	for _, notice := range soap.Notices(s.caps.Law) {
		s.wrap("-  ", notice)
	}
	s.foot()
	return s.writeTo(w)
}

type capSheet struct {
	*sheet
	caps soap.Caps
}

// scents prints the findings on fragrance of one severity down to another.
func (s *capSheet) scents(heading string, from, to soap.Severity) {
	all := s.b.Findings
	s.b.Findings = s.caps.Findings
	s.findings(heading, from, to)
	s.b.Findings = all
}

func (s *capSheet) part(p *soap.PartCaps) {
	s.heading(p.Name)
	if len(p.Unjudged) > 0 {
		s.wrap("", "Its fragrances are not judged as a whole: not everything is known of "+strings.Join(p.Unjudged, ", ")+".")
	}
	s.line("Dry " + s.figure(p.Dry) + ", when all water is gone; its oils " + s.figure(p.Oils))
	if len(p.Fragrances) == 0 {
		s.line("No fragrance is listed.")
		return
	}
	if len(p.Dried) > 0 {
		s.wrap("", "Counted as dry: "+strings.Join(p.Dried, ", ")+". Water in it would make every cap here too large.")
	}
	s.line(pad("", -nameColumn+8) + pad(s.unit.String(), massColumn) + pad("% of oils", massColumn) + pad("% of dry part", restColumn))
	for i := range p.Fragrances {
		f := &p.Fragrances[i]
		s.line("")
		s.line(pad(shorten(f.Material.Name(), nameColumn-9), -nameColumn+8) + pad(f.Mass.FixedDown(s.unit, columnFor(s.unit, s.small).places), massColumn) + pad(f.OfOils.PercentFixed(3), massColumn) + pad(f.OfDry.PercentFixed(3), restColumn))
		s.fragrance(f)
	}
	s.line("")
	s.line("All fragrances: " + p.Fragrance.PercentText(4) + " % of the dry part")
	s.allergens(p.Allergens, p.AllergensComplete, "the dry part")
}

func (s *capSheet) fragrance(f *soap.FragranceCap) {
	const lead = "   "
	if f.Material.OnlyAName() {
		s.wrap(lead, "Not judged: nothing is known of it but its mass.")
		return
	}
	known := ofWhatIsKnown(f.Material, s.caps.Law)
	if len(f.Caps) == 0 {
		s.wrap(lead, "No limit binds"+known+".")
	}
	for i := range f.Caps {
		text := "Next: "
		if i == 0 {
			text = "Alone at most " + most(f.Caps[0].Most) + " % of the dry bar" + known + ": "
		}
		s.wrap(lead, text+s.cap(f.Material, &f.Caps[i])+".")
	}
	if f.Limited {
		s.wrap(lead, "Beside the part's other fragrances at most "+s.figureDown(f.Most)+known+": "+most(f.MostOfOils)+" % of oils.")
	}
	if free := f.Material.Free(); len(free) > 0 {
		var names []string
		for _, figure := range free {
			name := figure.CAS.String()
			if figure.Name != "" {
				name = figure.Name + " (" + name + ")"
			}
			names = append(names, name)
		}
		s.wrap(lead, "Named by no Standard and no European entry that is held: "+strings.Join(names, ", ")+".")
	}
}

// ofWhatIsKnown says that a cap is not of all that may bind: something is neither listed
// nor certified, or a limit of what is listed is not held.
func ofWhatIsKnown(m fragrance.Material, law fragrance.Law) string {
	for _, u := range m.Unjudged(law) {
		if u.Why != fragrance.UnlistedForEU && u.Why != fragrance.Specification {
			return ", of what is known"
		}
	}
	return ""
}

// cap prints how a cap comes about.
func (s *capSheet) cap(m fragrance.Material, c *fragrance.Cap) string {
	used := ". The part uses " + c.Used.PercentText(2) + " % of that limit"
	if !c.Rule.Given() {
		if certificates := m.Certificates(); len(certificates) > 1 || certificates[0].Of.ID() != m.ID() {
			return "the certificates of what it is blended of" + used
		}
		return "certified for " + c.Limit.PercentText(6) + " %" + used
	}
	return capText(&s.page, c) + used
}

// capText prints limit ÷ share, with both sources. In a blend a certificate may stand for
// what a part of it does not list.
func capText(p *page, c *fragrance.Cap) string {
	certified := ""
	if !c.Limit.Over(c.Brings).Round(8, units.Down).Equal(c.Most) {
		certified = " and what the certificates of its parts stand for"
	}
	return c.Rule.Name() + ", " + c.Limit.PercentText(6) + " % " + p.cite(c.Rule.Source()) + " ÷ " + c.Brings.PercentText(6) + " % of it " + citeShare(p, c) + certified +
		" = " + most(c.Most) + " %"
}

// citeShare cites what a material brings; the material as a whole needs no source.
func citeShare(p *page, c *fragrance.Cap) string {
	if c.Source == c.Rule.Source() {
		return "(all of it)"
	}
	return p.cite(c.Source)
}

// most prints a cap in percent, rounded down as a cap is.
func most(r units.Ratio) string { return r.Round(6, units.Down).PercentText(4) }

// figureDown prints a most, rounded down to what the scale shows.
func (s *sheet) figureDown(m units.Mass) string {
	return m.FixedDown(s.unit, columnFor(s.unit, s.small).places) + " " + s.unit.String()
}

func (s *capSheet) pieces() {
	heading := "The piece"
	if len(s.caps.Pieces) > 1 {
		heading = "The pieces"
	}
	s.heading(heading)
	kept := "Here every part keeps those that are held."
	for _, p := range s.caps.Parts {
		if len(p.Unjudged) > 0 {
			kept = "Here not every part is judged as a whole."
		}
	}
	for _, p := range s.caps.Parts {
		if p.Limited && p.Most.Used.Compare(units.Whole(1)) > 0 {
			kept = "Here not every part does."
		}
	}
	s.wrap("", "A piece is a weighted mean of its parts: where every part keeps its limits, so does the piece. "+kept+" Embeds and toppings are not counted.")
	for i := range s.caps.Pieces {
		p := &s.caps.Pieces[i]
		name := ""
		if len(s.caps.Pieces) > 1 {
			name = p.Name + ": "
			if p.Last {
				name = p.Name + ", in the last batch: "
			}
		}
		text := name + "fragrances are " + p.Fragrance.PercentText(4) + " % of the dry piece"
		if p.Limited {
			limit := "the certificates"
			if p.Most.Rule.Given() {
				limit = "the limit of " + p.Most.Rule.Name()
			}
			text += ", and use " + p.Most.Used.PercentText(2) + " % of " + limit
		}
		s.wrap("", strings.ToUpper(text[:1])+text[1:]+".")
	}
}

// label prints what the label may have to name.
func (s *capSheet) label() {
	s.heading("Allergens for the label")
	lists := fragrance.AllergenLists()
	s.wrap("", "Those above "+lists.Threshold.PercentText(4)+" % of the dry piece, at the unlucky end of what is known. A label names both lists; soap without the new one could be placed on the European market until "+
		lists.Placed+", and may be made available until "+lists.Available+". "+s.cite(lists.Source))
	labels, complete := s.caps.Labels()
	for _, l := range labels {
		only := ""
		if l.OnlyInPart != "" {
			only = ", only in " + l.OnlyInPart
		}
		s.wrap(pad("", 3), l.Rule.Name()+", "+allergenShare(&l.Allergen)+" ("+l.Rule.List().String()+" list)"+only)
	}
	if s.caps.Embedded {
		s.line("Embeds are not counted: add what theirs hold.")
	}
	s.line(others(len(labels), complete))
}

func allergenShare(a *fragrance.Allergen) string {
	share := a.OfDry.PercentText(4) + " %"
	if a.Bound {
		return "up to " + share
	}
	return share
}

// others says whether a list of allergens is all there are.
func others(n int, complete bool) string {
	switch {
	case !complete && n == 0:
		return "None is known, and there may be some: not everything lists its allergens."
	case !complete:
		return "There may be others: not everything lists its allergens."
	case n == 0:
		return "None, as the suppliers list them."
	default:
		return "No others, as the suppliers list them."
	}
}

func (s *capSheet) allergens(list []fragrance.Allergen, complete bool, of string) {
	var names []string
	for _, a := range list {
		names = append(names, a.Rule.Name()+" "+allergenShare(&a))
	}
	lists := fragrance.AllergenLists()
	text := "Allergens above " + lists.Threshold.PercentText(4) + " % of " + of + ": "
	if len(names) > 0 {
		text += strings.Join(names, ", ") + ". "
	}
	s.wrap("", text+others(len(list), complete))
}

// WriteFragrances prints a table of fragrance materials: the cap of each alone, in percent
// of the dry bar, and what binds. The error is the writer's.
func WriteFragrances(w io.Writer, materials []fragrance.Material) error {
	var p page
	p.wrap("", "Essential oils and extracts, and the most of each alone in a dry bar of soap: not a dose that is recommended, and no more than what is known. Data edition "+fragrance.DataEdition()+".")
	p.wrap("", "Limits: "+fragrance.Edition(fragrance.IFRAAndEU)+".")
	p.line("")
	p.line(pad("id", -36) + pad("cap, %", 10) + "  what binds")
	for _, m := range materials {
		limit, binds := "-", "no limit binds"
		if caps := m.Caps(fragrance.IFRAAndEU); len(caps) > 0 {
			limit, binds = most(caps[0].Most), caps[0].Rule.Name()+" ("+caps[0].Rule.Body().String()+")"
		}
		binds += ofWhatIsKnown(m, fragrance.IFRAAndEU)
		lead := pad(m.ID(), -36) + pad(limit, 10) + "  "
		p.wrap(lead, binds)
	}
	p.notices()
	return p.writeTo(w)
}

func (p *page) notices() {
	p.line("")
	for _, notice := range soap.Notices(fragrance.IFRAAndEU) {
		p.wrap("", notice)
	}
}

// WriteFragrance prints everything that is known of a fragrance material, with its
// sources. The error is the writer's.
func WriteFragrance(w io.Writer, m fragrance.Material) error {
	var p page
	p.wrap("", m.Name()+" ("+m.ID()+")")
	p.asked(m.Asked(), m.ID(), m.NameNote())
	if m.Latin() != "" {
		p.line(m.Latin())
	}
	p.heading("Cap in category " + fragrance.Category() + ", alone in the dry bar")
	if p.capsUnder(m, fragrance.IFRAAndEU); m.CapsDiffer() {
		p.capsUnder(m, fragrance.IFRAAlone)
	}
	p.open(m)
	if own := m.Own(); len(own) > 0 {
		p.heading("Rules of this very material")
		for _, r := range own {
			p.wrap("-  ", ruleText(&p, r))
		}
	}
	source := cite.Source{}
	for _, f := range m.Figures() {
		if f.Source != source {
			source = f.Source
			p.heading("Constituents, % " + p.cite(source))
		}
		p.line(pad(f.CAS.String(), -12) + pad(shorten(f.Name, 47), -48) + ends(f.Low.PercentText(4), f.High.PercentText(4)))
	}
	if notes := m.Notes(); len(notes) > 0 {
		p.heading("Notes")
		for _, note := range notes {
			p.wrap("-  ", note)
		}
	}
	p.notices()
	p.foot()
	p.edition(fragrance.DataEdition())
	p.line("")
	return p.writeTo(w)
}

// open prints what the rules leave open.
func (p *page) open(m fragrance.Material) {
	for _, u := range m.Unjudged(fragrance.IFRAAndEU) {
		text := "Its constituents are not all known: the IFRA Annex does not list it."
		if len(u.Rules) > 0 {
			var names []string
			for _, r := range u.Rules {
				names = append(names, r.Name()+" "+p.cite(r.Source()))
			}
			text = "Not judged, " + u.Why.String() + ": " + strings.Join(names, ", ") + "."
		}
		p.wrap("", text)
	}
}

func (p *page) capsUnder(m fragrance.Material, law fragrance.Law) {
	caps, known := m.Caps(law), ofWhatIsKnown(m, law)
	of := "IFRA and EU: "
	if law == fragrance.IFRAAlone {
		of = "IFRA alone: "
	}
	if len(caps) == 0 {
		p.wrap("", of+"no limit binds"+known+".")
		return
	}
	for i := range caps {
		lead := of + "at most " + most(caps[0].Most) + " %" + known + ". "
		if i > 0 {
			lead = "Next: "
		}
		p.wrap("", lead+capText(p, &caps[i])+".")
	}
}

// ruleText prints a rule.
func ruleText(p *page, r fragrance.Rule) string {
	text := r.Name() + ": " + r.Standing().String()
	if r.Limit().Given() {
		text += " to " + r.Limit().PercentText(6) + " %"
	}
	if r.List() != fragrance.NotListed && r.Standing() != fragrance.Named {
		text += ", named on the label"
	}
	if r.Effect() != "" {
		text += ", for " + r.Effect()
	}
	switch {
	case r.Ask() != "":
		text += "; the supplier's word is needed for: " + r.Ask()
	case r.Remark() != "":
		text += " (" + r.Remark() + ")"
	}
	return text + " " + p.cite(r.Source())
}
