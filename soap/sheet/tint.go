package sheet

import (
	"io"
	"strconv"
	"strings"

	"example.com/lyewright/colour/tint"
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// WriteTint prints what colour the parts of a batch will have, and in which order to work:
// [soap.Batch.Tint] as text of 78 columns, masses in the given unit, differences as
// CIEDE2000. The error is the writer's, or [soap.Faults] of [soap.Batch.Tint], and then
// nothing is written.
func WriteTint(w io.Writer, b soap.Batch, unit units.Unit) error {
	t, err := b.Tint()
	if err != nil {
		return err
	}
	s := tintSheet{sheet: newSheet(b, unit), t: &t}
	s.b.Findings = t.Findings
	s.wrap("", t.Formula)
	s.line("Colour, data edition " + soap.DataEdition())
	s.fit()
	s.findings("Before you use it", soap.Danger, soap.Warning)
	for i := range t.Parts {
		s.part(&t.Parts[i])
	}
	s.order()
	s.residuals()
	s.findings("Worth knowing", soap.Note, soap.Note)
	s.heading("Mind")
	for _, notice := range soap.TintNotices() {
		s.wrap("-  ", notice)
	}
	s.foot()
	return s.writeTo(w)
}

type tintSheet struct {
	*sheet
	t *soap.Tint
}

// decimal prints an estimate with two decimals, and no minus sign before zero.
func decimal(v float64) string {
	r, _ := units.RatioOfFloat(v)
	return r.Round(2, units.Nearest).Fixed(2)
}

func labText(c tint.Lab) string {
	return "L* " + decimal(c.L) + ", a* " + decimal(c.A) + ", b* " + decimal(c.B)
}

// picture names the colour of a screen that comes nearest.
func picture(c tint.Lab) string {
	shown, inGamut := c.SRGB()
	if !inGamut {
		return "picture " + shown.String() + ", brought into what a screen shows"
	}
	return "picture " + shown.String()
}

func (s *tintSheet) fit() {
	for _, text := range fitTexts(s.t) {
		s.wrap("", text)
	}
}

// fitTexts say what colours are predicted from, and how sure that is.
func fitTexts(t *soap.Tint) []string {
	fit := t.Fit
	if !fit.Given() {
		return []string{"No swatches: no colour is predicted. Loads and the order of work are those of the formula."}
	}
	of := "swatches"
	if t.Swatches != "" {
		of += " \"" + t.Swatches + "\""
	}
	text := "Predicted from " + of + ": " + fit.String() + ". Differences are CIEDE2000, of which about 1 is just seen."
	if fit.Spare() > 0 || len(fit.Residuals()) == 1 {
		text += " No prediction is surer than what the swatches are met within."
	} else {
		text += " Cast and read one more of each colourant to learn how sure a prediction is."
	}
	texts := []string{text}
	if !fit.Thin() {
		texts = append(texts, "Thin layers cannot be predicted: no base was read over black and over white.")
	}
	return texts
}

// The columns of a table of loads: name, mass, percentages.
const (
	loadColumn  = 42
	shareColumn = 13
)

func (s *tintSheet) part(p *soap.PartTint) {
	s.heading(p.Name)
	if p.Colour != nil {
		s.wrap("Predicted  ", labText(p.Colour.Lab)+" ("+picture(p.Colour.Lab)+")")
	}
	if p.Target != nil {
		s.wrap("Target     ", labText(*p.Target)+" ("+picture(*p.Target)+")")
	}
	if len(p.Loads) == 0 {
		s.line("No colourant.")
	} else {
		s.loads(p)
	}
	for _, text := range remarks(p, s.unit) {
		s.wrap("", text)
	}
}

// remarks are the sentences on a part, masses in the given unit.
func remarks(p *soap.PartTint, unit units.Unit) []string {
	var texts []string
	if len(p.Unknown) > 0 {
		texts = append(texts, "Not predicted, since no swatch has it: "+strings.Join(p.Unknown, ", ")+".")
	}
	if len(p.Beyond) > 0 {
		texts = append(texts, "More than in any swatch, so that the prediction has nothing to go by: "+strings.Join(p.Beyond, ", ")+".")
	}
	if p.Colour != nil && p.Target != nil {
		texts = append(texts, differenceText(p))
	}
	if p.Cost.Given() {
		texts = append(texts, "Colourants cost "+p.Cost.Fixed(2)+", in the currency of their prices.")
	}
	if p.Unpriced {
		texts = append(texts, "Not every colourant that was matched has a price: the least pigment was looked for.")
	}
	switch w := p.Whiter; {
	case w == nil:
	case w.Seen:
		texts = append(texts, "Whiter: "+w.More.PercentText(4)+" % of batter ("+w.Mass.Text(unit, 3)+" "+unit.String()+") more "+w.Colourant+" makes the next difference of 1.")
	case w.Now.Compare(w.Most) >= 0:
		texts = append(texts, "Whiter: "+w.Colourant+" is at "+w.Now.PercentText(4)+" % of batter, and "+w.Most.PercentText(4)+" % is the most that is looked at.")
	default:
		texts = append(texts, "Whiter: no load of "+w.Colourant+" up to "+w.Most.PercentText(4)+" % of batter makes another difference of 1.")
	}
	for _, c := range p.Coats {
		text := c.Vessel + ", " + c.Thickness.String() + " on " + c.On + " (" + c.Under + "): "
		if c.Colour == nil {
			texts = append(texts, text+"its colour cannot be predicted.")
			continue
		}
		texts = append(texts, text+labText(c.Colour.Lab)+" ("+picture(c.Colour.Lab)+"). A thin layer is less sure than the rest.")
	}
	if p.Colour == nil {
		return texts
	}
	if len(p.Pearls) > 0 {
		texts = append(texts, "The colour of "+strings.Join(p.Pearls, ", ")+" depends on the angle: the prediction is a guess.")
	}
	if len(p.Additives) > 0 {
		texts = append(texts, "Not counted: "+strings.Join(p.Additives, ", ")+".")
	}
	if len(p.Browning) > 0 {
		texts = append(texts, "Will darken or yellow, which is not predicted, with "+strings.Join(p.Browning, ", ")+".")
	}
	return texts
}

// inWords lists words as a sentence does: "lighter, redder and yellower".
func inWords(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// differenceText says how far a part is from its target, and why.
func differenceText(p *soap.PartTint) string {
	m := p.Matched
	if m == nil {
		text := "Difference " + decimal(p.Difference) + "."
		if p.Reachable {
			text += " That is the target, as far as can be told."
		}
		return text
	}
	text := "Difference " + decimal(p.Difference) + " as it is weighed; the nearest within reach is " + decimal(m.Best) + "."
	if p.Reachable {
		text += " The target can be reached."
	} else {
		text += " The target is out of reach: the part would have to be " + inWords(m.Missing) + "."
		if len(m.AtMost) > 0 {
			text += " In the nearest mixture at their most: " + strings.Join(m.AtMost, ", ") + "."
			if p.Difference <= m.Best+tint.Slack {
				text += " What is weighed is the cheapest that looks like it."
			}
		}
	}
	for _, l := range p.Loads {
		if l.Sought && l.At != tint.AtNone && l.Weighed.Sign() == 0 {
			text += " On this scale " + l.Name + " weighs nothing."
		}
	}
	if p.Difference > m.Best+1 {
		text += " A finer scale would come nearer."
	}
	return text
}

func (s *tintSheet) loads(p *soap.PartTint) {
	s.line(pad("", -loadColumn) + pad(s.unit.String(), width-loadColumn-2*shareColumn) + pad("% of batter", shareColumn) + pad("% of oils", shareColumn))
	for _, l := range p.Loads {
		lead := pad(shorten(l.Name, loadColumn-1), -loadColumn)
		s.line(lead + pad(l.Weighed.Fixed(s.unit, columnFor(s.unit, s.small).places), width-loadColumn-2*shareColumn) + pad(l.OfBatter.PercentFixed(4), shareColumn) + pad(l.OfOils.PercentFixed(4), shareColumn))
		if l.Sought {
			s.line("   " + soughtText(&l))
		}
	}
}

func soughtText(l *soap.TintLoad) string {
	switch l.At {
	case tint.AtMost:
		return "looked for: at its most, " + l.Found.PercentText(6) + " % of batter"
	case tint.AtNone:
		return "looked for: none is needed"
	default:
		return "looked for: " + l.Found.PercentText(6) + " % of batter"
	}
}

// orderText says by what the parts are ordered.
func orderText(t *soap.Tint) string {
	for i := range t.Parts {
		if p := &t.Parts[i]; p.Lit || p.Look != soap.AnyLook {
			return "The lightest first, so that the blender need not be washed between (common practice); what is not known comes last:"
		}
	}
	return "Not known: no part has swatches for its colour, a target, or a look. Work the lightest first, so that the blender need not be washed between (common practice). In the order of the formula:"
}

// order prints the order of work.
func (s *tintSheet) order() {
	if len(s.t.Order) < 2 {
		return
	}
	s.heading("Order of work")
	s.wrap("", orderText(s.t))
	for i, p := range inOrder(s.t) {
		s.wrap(pad(strconv.Itoa(i+1), 3)+"  ", p.Name+", "+lightness(p))
	}
}

// inOrder lists the parts in the order of work.
func inOrder(t *soap.Tint) []*soap.PartTint {
	var parts []*soap.PartTint
	for _, name := range t.Order {
		for i := range t.Parts {
			if t.Parts[i].Name == name {
				parts = append(parts, &t.Parts[i])
			}
		}
	}
	return parts
}

// lightness says what a part's place in the order rests on.
func lightness(p *soap.PartTint) string {
	switch {
	case p.Colour != nil:
		return "predicted L* " + decimal(p.Lightness)
	case p.Lit:
		return "target L* " + decimal(p.Lightness)
	case p.Look != soap.AnyLook:
		return "meant to look " + p.Look.String()
	default:
		return "colour not known"
	}
}

// residuals prints how well each swatch is met.
func (s *tintSheet) residuals() {
	if !s.t.Fit.Given() {
		return
	}
	s.heading("How well the swatches are met")
	for _, r := range s.t.Fit.Residuals() {
		s.line(pad(shorten(r.Swatch, 59), -60) + pad(decimal(r.Difference), 8))
	}
}
