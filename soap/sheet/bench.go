package sheet

import (
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
	text := "With water at " + s.b.Formula.Temperature.Water.Text(1) + " °C it reaches up to " + upwards(h.Final) + " °C, if no heat is lost"
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
			s.line("It begins to crystallise at " + l.Crystallises.Text(0) + " °C, give or take 1 K " + s.cite(lye.CrystallisesSource()))
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
