package sheet

import (
	"strings"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
)

// bound says how hot the lye may get, in a sentence for the caution; empty where it
// is not known.
func (s *sheet) bound() string {
	if !s.b.Formula.Temperature.Water.Given() {
		return ""
	}
	h := s.b.Lye.Heat
	if !h.Final.Given() && s.b.Water.Weigh.Sign() == 0 && len(s.b.Liquids) == 0 {
		return "" // no water is added: the stock lye is the lye
	}
	if !h.Final.Given() {
		return "How hot it gets is not known: nothing is published on thinning such a stock lye. "
	}
	text := "With water at " + s.b.Formula.Temperature.Water.Text(1) + " °C it reaches up to " + upwards(h.Final) +
		" °C, if no heat is lost"
	if h.Boils.Given() {
		text += " (it boils near " + h.Boils.Text(0) + " °C)"
	}
	if h.Extrapolated {
		text += "; above 42.5 % that is extrapolated"
	}
	for _, a := range s.b.Alkalis {
		if a.Alkali == soap.PotassiumHydroxide {
			text += "; of KOH only the largest heat is published, so it is likely less"
		}
	}
	return text + ". " + s.cite(lye.HeatSource()) + " "
}

// mixing says how the lye is mixed of what there is: dry alkali or stock lye, in water, in
// other liquids alone, or in neither. That milk and its like are used frozen or cold is
// common practice.
func (s *sheet) mixing() string {
	dry, stock := false, false
	for _, a := range s.b.Alkalis {
		dry, stock = dry || !a.Strength.Given(), stock || a.Strength.Given()
	}
	var liquids []string
	for _, l := range s.b.Liquids {
		liquids = append(liquids, l.Name)
	}
	in, into := "the water", "the cold water"
	if s.b.Water.Weigh.Sign() == 0 && len(liquids) > 0 {
		in = "the liquid"
		if len(liquids) > 1 {
			in = "the liquids"
		}
		into = in + ", well chilled or frozen (" + strings.Join(liquids, "; ") + "),"
	}
	switch nothing := s.b.Water.Weigh.Sign() == 0 && len(liquids) == 0; {
	case dry && nothing && stock:
		return "Add the dry alkali to the stock lye a little at a time: it gets very hot and may boil. "
	case nothing && stock:
		return "Nothing is mixed: the stock lye is the lye. "
	case dry && in != "the water":
		return "Add the alkali to " + into + " a little at a time, never " + in +
			" to the alkali: it gets very hot, and may boil and foam over. "
	case dry:
		return mixing
	default:
		return "Pour the stock lye into " + into + " a little at a time, never " + in +
			" into the stock lye: it gets hot and may spit. "
	}
}

// upwards prints a bound on a temperature in whole degrees.
func upwards(t units.Temperature) string { return t.Ratio().Round(0, units.Up).Text(0) }

// bench says what is known of the lye as it stands on the bench.
func (s *sheet) bench() {
	l := s.b.Lye
	if l.VolumeKnown {
		s.line("Its volume at " + s.b.Formula.Temperature.Lye.Text(1) + " °C: " + l.Volume.Text(0) + " mL")
	}
	if s.b.Formula.Temperature.Lye.Given() && len(s.b.Alkalis) == 1 {
		if note := (lye.Solution{Alkali: s.b.Alkalis[0].Alkali, Strength: l.Strength}).CrystallisesNote(); note != "" {
			s.wrap("", note)
		}
		if l.Crystallises.Compare(units.Celsius(0)) > 0 {
			s.line("It begins to crystallise at " + l.Crystallises.Text(0) + " °C, give or take 1 K " +
				s.cite(lye.CrystallisesSource()))
		}
	}
	if len(s.b.Liquids) > 0 {
		s.wrap("", "Keep liquids other than water cold, even frozen: sugar and fat burn in hot lye.")
	}
}

// acids lists the acids that go into the batch, before the lye is mixed: they must
// not meet it undiluted.
func (s *sheet) acids() {
	if len(s.b.Acids) == 0 {
		return
	}
	hotter := "which makes the lye hotter"
	if s.b.Lye.Heat.Final.Given() {
		hotter += " (the bound below counts that)"
	}
	where := "stir them into the oils"
	if s.b.Water.Weigh.Sign() > 0 {
		where += ", or dissolve them in the water before the alkali, " + hotter
	}
	s.wrap("", "Acids burn too, and lye spits on them: "+where+"; never pour them into finished lye.")
	s.header("")
	column := columnFor(s.unit, s.small)
	for i, a := range s.b.Acids {
		alkali := "compensated"
		if s.b.Formula.Acids[i].Compensate == soap.Uncompensated {
			alkali = "uncompensated"
		}
		s.weigh(a.Acid.Name, column.mass(a.Weigh), alkali)
	}
}
