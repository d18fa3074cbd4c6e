package sheet

import (
	"slices"
	"strings"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// weighed says what the real weighings come to, and what would mend it.
func (s *sheet) weighed() {
	r := s.b.Weighed
	if r == nil {
		return
	}
	s.heading("As weighed")
	s.outlookHeader("typical")
	s.outlook("batch", r.Superfat)
	if len(r.Parts) > 1 {
		for i := range r.Parts {
			s.outlook(r.Parts[i].Name, r.Parts[i].Superfat)
		}
	}
	s.poured(r)
	s.line("")
	s.wrap("", s.advice(r))
	s.remedies(r)
	s.line("")
	s.line("The steps below, with their masses, are those of the plan.")
}

// remedies prints what mends it, and what comes of each.
func (s *sheet) remedies(r *soap.Reckoning) {
	if len(r.Remedies) == 0 {
		return
	}
	s.line("")
	s.line(pad("Then:", -30) + pad(s.unit.String(), 10) + pad("batter", 10) + pad("superfat", 10) + pad("worst", 18))
	if r.Stage == soap.AtParts {
		s.unmended(r)
	}
	part := ""
	for i := range r.Remedies {
		m := &r.Remedies[i]
		if m.Part != part {
			part = m.Part
			s.wrap("", "For "+part+":")
		}
		s.remedy(m)
	}
}

// poured prints what the parts came to, where more than their pot was weighed.
func (s *sheet) poured(r *soap.Reckoning) {
	if len(s.b.Formula.Weighed.Parts) == 0 {
		return
	}
	s.line("")
	s.line(pad("As weighed, in "+s.unit.String(), -30) + pad("batter", massColumn) + pad("poured", massColumn) +
		pad("dry", massColumn))
	for i := range r.Parts {
		p := &r.Parts[i]
		s.line(pad(shorten(p.Name, 29), -30) + pad(s.plain(p.Batter), massColumn) + pad(s.plain(p.Poured), massColumn) +
			pad(s.plain(p.Dry), massColumn))
	}
}

// dryMass says what is left when all water is gone: as weighed, where something was.
func (s *sheet) dryMass() {
	if r := s.b.Weighed; r != nil {
		s.line("Dry mass as weighed, when all water is gone: " + s.figure(r.Dry))
		return
	}
	s.line("Dry mass, when all water is gone: " + s.figure(s.b.Dry))
}

// unmended names the parts that lie below their plan and that nothing is offered
// for.
func (s *sheet) unmended(r *soap.Reckoning) {
	for i := range r.Parts {
		offered := slices.ContainsFunc(r.Remedies, func(m soap.Remedy) bool { return m.Part == r.Parts[i].Name })
		if !offered && r.Parts[i].Superfat.Planned.Compare(s.b.Parts[i].Superfat.Planned) < 0 {
			s.wrap("", r.Parts[i].Name+": no addition of up to a quarter of its oils brings it back to its plan. Do not use "+
				"it on skin.")
		}
	}
}

// waxes says that waxes are not offered, where the formula has one.
func (s *sheet) waxes() string {
	for _, o := range s.b.Oils {
		if o.Oil.Kind() == soap.Wax {
			return " Waxes are not offered alone: they react slowly."
		}
	}
	return ""
}

// belowPlan reports whether the batch, or a part of it, has less superfat than is planned.
func (s *sheet) belowPlan(r *soap.Reckoning) bool {
	below := r.Superfat.Planned.Compare(s.b.Superfat.Planned) < 0
	for i := range r.Parts {
		below = below || r.Parts[i].Superfat.Planned.Compare(s.b.Parts[i].Superfat.Planned) < 0
	}
	return below
}

// advice says what can still be done at a stage.
func (s *sheet) advice(r *soap.Reckoning) string {
	below := s.belowPlan(r)
	offered, negative := len(r.Remedies) > 0, false
	for i := range r.Parts {
		negative = negative || r.Parts[i].Superfat.Low.Sign() < 0
	}
	if names := s.doubted(); len(names) > 0 {
		return "Weigh again first, jug and all: " + strings.Join(names, ", ") +
			". The reading lies far below its plan, and where a point has slipped, what would mend it would spoil the batch " +
			"or burn: nothing is offered, and nothing may be added, before it is sure."
	}
	if r.Lye.Undissolved {
		return undissolved(r)
	}
	switch {
	case r.Stage == soap.AtLye && offered && r.Remedies[0].AddAlkali.Mass.Sign() > 0:
		return "The lye lacks alkali. Dissolve what is missing in it, a little at a time, before it meets the oils:"
	case r.Stage == soap.AtLye && offered && r.Remedies[0].UseLye.Mass.Sign() > 0:
		text := "The lye holds too much alkali for the oils. Use part of it, and make up the water." + aside
		if len(s.b.Acids) > 0 {
			text += " This is reckoned without the acids in it: where they are dissolved in the lye already, it does not hold."
		}
		return text
	case r.Stage == soap.AtLye && offered:
		return "The lye lacks water: make it up before it meets the oils."
	case r.Stage == soap.AtMoulds && negative:
		return "It is poured: nothing can be mended. In the worst case its superfat lies below zero: do not use it on skin."
	case r.Stage == soap.AtMoulds:
		return "It is poured: nothing can be mended, and in the worst case no alkali is left over."
	case offered && r.Stage == soap.AtPot:
		return "Too much alkali for the oils. Any one of these brings the batter back to its plan (an addition of more " +
			"than a quarter of the oils is not offered)." + s.waxes() + " Never add alkali to batter:"
	case offered:
		return "Too much alkali for the oils. For each part alone, any one of its lines brings it back to its own plan (an " +
			"addition of more than a quarter of its oils is not offered)." + s.waxes() + " Never add alkali to batter:"
	case below && r.Stage != soap.AtLye:
		return "No addition of up to a quarter of the oils brings it back to the plan: do not use it on skin."
	case r.Stage == soap.AtLye:
		return "There is nothing to mend that the scale would show."
	default:
		return "The superfat needs no mending: it is no less than planned. Alkali is never added to batter."
	}
}

// doubted names what must be weighed again before anything is offered.
func (s *sheet) doubted() []string {
	var names []string
	for _, f := range s.b.Findings {
		if f.Code == "weighed-far" && f.Detail != "" && !slices.Contains(names, f.Names[0]) {
			names = append(names, f.Names[0])
		}
	}
	return names
}

// aside says what becomes of lye that is left over.
const aside = " Keep what is left of it labelled and locked away, or dispose of it as its data sheet says."

// undissolved says what can still be done about a lye that holds more alkali than dissolves.
func undissolved(r *soap.Reckoning) string {
	const clear = "a little at a time, since it heats up once more, and stir until it is clear"
	if r.Lye.Dry && r.Stage == soap.AtLye {
		return dry(r)
	}
	switch {
	case r.Stage != soap.AtLye:
		return "Nothing mends it: the lye holds more alkali than dissolves, and grains of it stay in the batter. Do not " +
			"use it on skin."
	case len(r.Remedies) > 0 && r.Remedies[0].UseLye.Mass.Sign() > 0:
		return "The lye holds more alkali than dissolves, and too much for the oils. First make up its water, " + clear +
			"; then use part of it." + aside
	case len(r.Remedies) > 0 && r.Remedies[0].AddAlkali.Mass.Sign() > 0:
		return "The lye lacks water, so that it does not dissolve, and alkali. First make up its water, " + clear +
			"; then dissolve the alkali that is missing in it:"
	default:
		return "The lye lacks water, so that it does not dissolve: make it up before it meets the oils, " + clear + "."
	}
}

// secondVessel says how alkali that stands in hardly any water, or in none, gets its water.
const secondVessel = "weigh the water into a second vessel and add the alkali to it, a little at a time, never the " +
	"water to the alkali"

// dry says what can still be done about alkali that stands in its jug with hardly any water, or with none.
func dry(r *soap.Reckoning) string {
	const text = "Hardly any water is in the jug, or none, so that the alkali does not dissolve. Do not pour water " +
		"on it: it boils and spits. Before it meets the oils, " + secondVessel + ", since it gets very hot, and stir " +
		"until it is clear"
	switch {
	case len(r.Remedies) > 0 && r.Remedies[0].UseLye.Mass.Sign() > 0:
		return text + ". It is too much for the oils: then use part of it." + aside
	case len(r.Remedies) > 0 && r.Remedies[0].AddAlkali.Mass.Sign() > 0:
		return text + ". Then dissolve the alkali that is missing in it:"
	default:
		return text + "."
	}
}

// waterLine names the line of the water that a lye still needs: usual, but for alkali that stands in hardly any.
func waterLine(m *soap.Remedy, usual string) string {
	if m.SecondVessel {
		return "water, in a second vessel"
	}
	return usual
}

func (s *sheet) remedy(m *soap.Remedy) {
	line := func(name string, mass, division units.Mass) {
		worst := m.Superfat.Low.PercentFixed(2) + " to " + m.Superfat.High.PercentFixed(2)
		s.line(pad(shorten(name, 29), -30) + pad(mass.Fixed(s.unit, columnFor(s.unit, division).places), 10) +
			pad(m.Batter.Fixed(s.unit, columnFor(s.unit, s.small).places), 10) + pad(m.Superfat.Planned.PercentFixed(2), 10) +
			pad(" "+worst, 18))
	}
	switch {
	case m.Oil == soap.Blend:
		line("all oils, as in the formula", m.Add.Weigh, s.scale)
	case m.Oil != "":
		line(s.oilName(m.Oil), m.Add.Weigh, s.scale)
	case m.AddAlkali.Mass.Sign() > 0:
		if m.AddWater.Mass.Sign() > 0 {
			line(waterLine(m, "first add water"), m.AddWater.Weigh, s.small)
		}
		line("add "+m.Alkali.Name(), m.AddAlkali.Weigh, s.small)
	case m.UseLye.Mass.Sign() == 0:
		line(waterLine(m, "water to add"), m.AddWater.Weigh, s.small)
	case m.WaterFirst:
		line(waterLine(m, "first add water"), m.AddWater.Weigh, s.small)
		line("lye to use, of "+m.OfLye.Fixed(s.unit, columnFor(s.unit, s.small).places), m.UseLye.Weigh, s.small)
	default:
		line("lye to use, of "+m.OfLye.Fixed(s.unit, columnFor(s.unit, s.small).places), m.UseLye.Weigh, s.small)
		if m.AddWater.Mass.Sign() > 0 {
			line(waterLine(m, "and water to add"), m.AddWater.Weigh, s.small)
		}
	}
}

func (s *sheet) oilName(id string) string {
	for _, o := range s.b.Oils {
		if o.Oil.ID() == id {
			return o.Oil.Name()
		}
	}
	return id
}
