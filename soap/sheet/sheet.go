package sheet

import (
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// Write prints the sheet of a batch as text of 78 columns, masses in the given unit and
// as finely as the scales show: room to write date, lot and times; dangers and warnings,
// what repeats in one line; what was weighed and what mends it; the lines to weigh, each
// part, the moulds, the superfat. A danger stands at its end once more. Sources, fatty
// acids and derivations are those of [WriteWorking]. The error is the writer's.
func Write(w io.Writer, b soap.Batch, unit units.Unit) error {
	s := newSheet(b, unit)
	s.sourceless = true
	s.title()
	s.record()
	s.findings(s.grave(), soap.Danger, soap.Warning)
	s.weighed()
	s.oils()
	s.lye()
	s.parts()
	s.moulds()
	s.superfat()
	s.findings("Worth knowing", soap.Note, soap.Note)
	s.findings("Once more, before it is used", soap.Danger, soap.Danger)
	s.line("")
	s.line("Sources: -working, with the fatty acids and how each figure comes about")
	return s.writeTo(w)
}

type sheet struct {
	page
	b            soap.Batch
	unit         units.Unit
	scale, small units.Mass
}

func newSheet(b soap.Batch, unit units.Unit) *sheet {
	scale, small := b.Formula.Scales()
	return &sheet{b: b, unit: unit, scale: scale, small: small}
}

func (s *sheet) title() {
	s.wrap("", s.b.Formula.Name)
	s.note("", s.b.Formula.Note)
	s.line("Batch sheet, data edition " + soap.DataEdition())
	if n := s.b.Batches; s.b.Last != nil {
		s.line("One of " + strconv.Itoa(n) + " batches: see Moulds for the last one")
	}
	s.line("Scales: " + s.division(s.scale) + " for oils, " + s.division(s.small) + " for everything else")
}

// note prints a maker's remark, below the line that it is on.
func (s *sheet) note(lead, note string) {
	if note != "" {
		s.wrap(lead, "Note: "+note)
	}
}

// record leaves room for what is written by hand.
func (s *sheet) record() {
	s.line("")
	s.line("Date ______________  Lot ______________________________________")
	s.line("Lye mixed at ________  Joined at ________  Poured at ________  Cut ________")
}

// target says what a thermometer should show, where the formula says so, with room for
// what it does show.
func (s *sheet) target(what string, t units.Temperature) {
	if t.Given() {
		s.line("Target: " + what + " " + t.Text(1) + " °C. Measured: ________ °C")
	}
}

// division prints what a scale counts in, in the unit that its maker wrote on
// it: the one in which it is the shorter number.
func (s *sheet) division(m units.Mass) string {
	unit := units.Gram
	if len(m.Text(units.Ounce, 9)) < len(m.Text(units.Gram, 9)) {
		unit = units.Ounce
	}
	return m.Text(unit, 9) + " " + unit.String()
}

// The columns of a line to weigh: box, name, mass, percentage.
const (
	nameColumn = 46
	massColumn = 12
	restColumn = 14
)

// belowBox indents what belongs to a line to weigh.
const belowBox = "      "

// header prints the heading of a table of weighings.
func (s *sheet) header(of string) {
	s.line(pad("", 4+nameColumn) + pad(s.unit.String(), massColumn) + pad(of, restColumn))
}

// weigh prints a line to weigh, with a box to tick.
func (s *sheet) weigh(name, mass, rest string) { s.row("[ ] ", name, mass, rest) }

// total prints a line that is not weighed.
func (s *sheet) total(name, mass, rest string) { s.row("    ", name, mass, rest) }

// row prints a name in its column, over several lines where it is long: two lots
// must not look alike because their names were cut.
func (s *sheet) row(box, name, mass, rest string) {
	if utf8.RuneCountInString(name) >= nameColumn {
		indent := name[:len(name)-len(strings.TrimLeft(name, " "))]
		lines := broken(name, nameColumn-1-len(indent))
		for _, line := range lines[:len(lines)-1] {
			s.line(box + indent + line)
			box = "    "
		}
		name = indent + lines[len(lines)-1]
	}
	s.line(box + pad(name, -nameColumn) + pad(mass, massColumn) + pad(rest, restColumn))
}

func (s *sheet) oils() {
	s.heading("Oils")
	s.wrap("", "Melt what is solid and weigh all oils into one pot, of stainless steel or heat-proof plastic.")
	s.header("% of all oils")
	column := columnFor(s.unit, s.scale)
	held := units.Mass{}
	for _, o := range s.b.Oils {
		share, _ := o.Total().Per(s.b.OilsTotal)
		s.weigh(o.Oil.Name(), column.mass(o.Weigh), share.PercentFixed(1))
		s.note(belowBox, o.Note)
		held = held.Add(o.Withheld)
	}
	s.total("Oils into the pot", column.sum(), "")
	s.target("oils at", s.b.Formula.Temperature.Oils)
	if held.Sign() > 0 {
		s.wrap("", "Held back for carriers, and weighed with their parts:")
		for _, o := range s.b.Oils {
			if o.Withheld.Sign() > 0 {
				s.total(o.Oil.Name(), o.Withheld.Fixed(s.unit, columnFor(s.unit, s.small).places), "")
			}
		}
	}
}

func (s *sheet) lye() {
	s.heading("Lye")
	s.wrap("", protect)
	s.acids()
	s.header("% hydroxide")
	column := columnFor(s.unit, s.small)
	if s.b.Water.Weigh.Sign() != 0 {
		s.weigh("Water", column.mass(s.b.Water.Weigh), "")
	}
	for _, l := range s.b.Liquids {
		s.weigh(l.Name, column.mass(l.Weigh), "liquid")
	}
	for _, a := range s.b.Alkalis {
		weighing, content := a.ToWeigh()
		name := alkaliName(a.Alkali)
		if a.Strength.Given() {
			name += ", stock lye"
		}
		s.weigh(name, column.mass(weighing.Weigh), content.Typical.PercentText(2))
		if len(s.b.Alkalis) > 1 {
			s.wrap("        ", bottle(a))
		}
		s.note(belowBox, a.Note)
	}
	s.total("Lye", column.sum(), "")
	for _, a := range s.b.Alkalis {
		if a.Source.Title != "" {
			s.wrap("", a.Alkali.Name()+": "+a.Purity.Low.PercentText(2)+" to "+a.Purity.High.PercentText(2)+
				" % is what the grade allows, not what is in this bottle. "+s.cite(a.Source))
		}
	}
	s.wrap("", s.mixing()+s.bound())
	s.bench()
	s.mixed()
	if s.b.Water.Withheld.Sign() > 0 {
		s.line("Water held back for carriers: " + s.b.Water.Withheld.Fixed(s.unit, column.places) + " " + s.unit.String())
	}
	s.target("lye at", s.b.Formula.Temperature.Lye)
	s.firstAid()
}

// bottle says of one of two alkalis what stands on its bottle, so that the two are not
// confused: 40 g of one do the work of 56 g of the other.
func bottle(a soap.AlkaliWeighing) string {
	_, content := a.ToWeigh()
	what := "purity"
	if a.Strength.Given() {
		what = "strength"
	}
	text := "from the bottle whose label says " + a.Alkali.Symbol() + ", " + what + " " + content.Typical.PercentText(2) +
		" %"
	if !content.Single() {
		text += " (" + content.Low.PercentText(2) + " to " + content.High.PercentText(2) + " %)"
	}
	return text
}

func alkaliName(a soap.Alkali) string {
	return a.Name() + " (" + a.Symbol() + ")"
}

func (s *sheet) parts() {
	s.heading("Batter and parts")
	s.wrap("", "Raw batter burns like lye: keep goggles and gloves on until it is poured and everything is washed.")
	s.wrap("", s.joining())
	if s.hasPowders() {
		s.wrap("", "Weigh powders without raising dust, or wet them first; wear a dust mask where dust cannot be helped.")
	}
	s.target("batter poured at", s.b.Formula.Temperature.Pour)
	poured := columnFor(s.unit, s.small)
	for i := range s.b.Parts {
		p := &s.b.Parts[i]
		column := columnFor(s.unit, s.small)
		s.line("")
		if len(s.b.Formula.Parts) > 0 { // else the maker named none
			s.wrap("", p.Name)
		}
		s.note("", p.Note)
		s.header("")
		if len(s.b.Parts) > 1 {
			s.weigh("Batter, "+p.Share.PercentFixed(1)+" % of the pot", column.mass(p.Batter.Round(s.small, units.Nearest)), "")
		} else {
			s.total("Batter, the whole pot", column.mass(p.Batter.Round(s.small, units.Nearest)), "")
		}
		for _, a := range p.Additions {
			if a.Paste.Mass.Sign() > 0 {
				s.weigh(a.Name+" paste", column.mass(a.Paste.Weigh), "colourant")
				s.wrap("      ", "1 part in "+a.CarrierRatio().Text(3)+" of "+carrierName(a.Carrier)+", "+carrierFrom(a.Carrier))
				s.note(belowBox, a.Note)
				continue
			}
			s.weigh(a.Name, column.mass(a.Weigh), a.Kind.String())
			s.note(belowBox, a.Note)
			if c := a.Carrier; c != nil {
				s.weigh("  in "+carrierName(c), column.mass(c.Weigh), carrierFrom(c))
			}
		}
		s.total("Poured", column.sum(), "")
		poured.total += column.total
	}
	if len(s.b.Parts) > 1 {
		s.line("")
		s.total("Poured in all", poured.sum(), "")
	}
}

func carrierName(c *soap.CarrierWeighing) string {
	if c.In == soap.InOil {
		return c.Oil.Name()
	}
	return c.Name
}

func carrierFrom(c *soap.CarrierWeighing) string {
	if c.From == soap.FromFormula {
		return "held back"
	}
	return "extra"
}

// hasPowders reports whether something may dust: any addition but a fragrance.
func (s *sheet) hasPowders() bool {
	for i := range s.b.Parts {
		for _, a := range s.b.Parts[i].Additions {
			if a.Kind != soap.Fragrance {
				return true
			}
		}
	}
	return false
}

func (s *sheet) superfat() {
	s.heading("How sure the superfat is")
	if s.b.Weighed != nil {
		s.wrap("", "These figures are those of the plan; as weighed they stand further up.")
	}
	s.wrap("", "Share of the saponification left without alkali, in %. Likely: all ranges and scales taken together "+
		"(coverage factor 2). Worst: every one at its unlucky end.")
	s.outlookHeader("planned")
	s.outlook("batch", s.b.Superfat)
	for i := range s.b.Parts {
		p := &s.b.Parts[i]
		// One part without oil of its own says nothing that the batch does not.
		if len(s.b.Parts) > 1 || p.Superfat.Planned.PercentFixed(2) != s.b.Superfat.Planned.PercentFixed(2) {
			s.outlook(p.Name, p.Superfat)
		}
	}
	if names := s.rangeless(); len(names) > 0 {
		s.wrap("", "Not complete: no range of saponification values is known of "+strings.Join(names, "; ")+
			". The one figure was taken as exact.")
	}
	s.printed()
	s.line("")
	s.dryMass()
	if s.scented() {
		s.wrap("", "Fragrances are held to their limits in that dry mass, part by part. "+
			soap.Notices(fragrance.IFRAAlone)[0])
	}
	s.wrap("", "Test a bar before it is used or given away. The labels and safety data sheets of what you bought, and "+
		"local rules, come before this sheet.")
}

// rangeless names the oils, and the liquids with fat, that have no range: in the pot, and
// in jugs of a part.
func (s *sheet) rangeless() []string {
	var names []string
	add := func(name string, ranged bool) {
		if !ranged && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	for _, o := range s.b.Oils {
		add(o.Oil.Name(), o.Oil.HasRange())
	}
	for _, l := range s.b.Formula.Water.Liquids {
		add(l.Name, l.Fat.Sign() <= 0 || !l.Saponification.Single())
	}
	for i := range s.b.Parts {
		for _, a := range s.b.Parts[i].Additions {
			if c := a.Carrier; c != nil && c.In == soap.InOil {
				add(c.Oil.Name(), c.Oil.HasRange())
			}
		}
	}
	return names
}

// scented reports whether something is known of a fragrance.
func (s *sheet) scented() bool {
	for i := range s.b.Parts {
		for _, a := range s.b.Parts[i].Additions {
			if a.Material.Given() {
				return true
			}
		}
	}
	return false
}

func (s *sheet) figure(m units.Mass) string {
	return m.Fixed(s.unit, columnFor(s.unit, s.small).places) + " " + s.unit.String()
}

// outlookHeader heads a table of superfats: the first column is what they are at typical values, of the plan or as
// weighed.
func (s *sheet) outlookHeader(at string) {
	s.line(pad("", -30) + pad(at, 10) + pad("likely", 18) + pad("worst", 18))
}

func (s *sheet) outlook(name string, o soap.Outlook) {
	span := func(low, high units.Ratio) string { return low.PercentFixed(2) + " to " + high.PercentFixed(2) }
	s.line(pad(shorten(name, 29), -30) + pad(o.Planned.PercentFixed(2), 10) +
		pad(" "+span(o.LikelyLow, o.LikelyHigh), 18) + pad(" "+span(o.Low, o.High), 18))
}
