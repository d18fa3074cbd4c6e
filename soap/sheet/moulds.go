package sheet

import (
	"strconv"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// moulds prints what goes into which vessel, and what is made beyond it.
func (s *sheet) moulds() {
	b := &s.b
	v := b.Volumes
	if v == nil && b.Filled.Add(b.Loss).Sign() == 0 {
		return
	}
	s.heading("Moulds")
	if v == nil {
		s.divided()
		return
	}
	s.asPlanned()
	s.scaled()
	s.line(pad("", -nameColumn) + pad("pieces", massColumn) + pad("pour, "+s.unit.String(), restColumn))
	for i := range b.Pieces {
		p := &b.Pieces[i]
		s.row("", p.Vessel+", "+p.Part, strconv.Itoa(p.Filled), s.each(p.Pour))
		if p.Fresh != p.Pour {
			s.wrap(belowBox, "with its embeds and toppings "+s.each(p.Fresh)+" "+s.unit.String()+" a piece")
		}
		if i == 0 || b.Pieces[i-1].Vessel != p.Vessel {
			s.note(belowBox, b.Formula.VesselNamed(p.Vessel).Note)
		}
	}
	if b.Formula.SizeKnown() {
		s.goesFar()
	}
	s.line("")
	s.divided()
	s.line("")
	rest := ""
	if v.Pot.Sub(v.Oils.Add(v.Lye)).Compare(units.Millilitres(1)) > 0 {
		rest = ", and what has no density here"
	}
	s.wrap("", "The pot must hold "+v.Pot.Text(0)+" mL, and room to stir: oils "+v.Oils.Text(0)+" mL, lye "+v.Lye.Text(0)+" mL"+rest+". Batter "+
		v.Density.Text(3)+" g/mL at "+v.At.Text(1)+" °C, give or take "+v.Spread.PercentText(1)+" % by the ranges of its oils; air is not counted. A trial with your own moulds is better.")
	s.models()
	s.batches()
	s.extras("Embeds", b.Embeds)
	s.extras("Toppings", b.Toppings)
}

// asPlanned says of a batch that was weighed that its pieces are those of the plan, and what is there of each part
// in place of what they take.
func (s *sheet) asPlanned() {
	r := s.b.Weighed
	if r == nil {
		return
	}
	text := "The pieces are those of the plan."
	lead := " As weighed, there is"
	for i := range r.Parts {
		there, plan := s.figure(r.Parts[i].Poured), s.figure(s.b.Parts[i].Poured)
		if there != plan {
			text += lead + " of " + r.Parts[i].Name + " " + there + " to pour in place of " + plan
			lead = ","
		}
	}
	if lead == "," {
		text += ": look whether it fills them."
	}
	s.wrap("", text)
}

// divided prints how what is poured of each part is divided.
func (s *sheet) divided() {
	volume := ""
	if s.b.Volumes != nil {
		volume = "mL"
	}
	s.line(pad("Poured, in "+s.unit.String(), -30) + pad("filled", massColumn) + pad("reserve", massColumn) + pad("loss", massColumn) + pad(volume, massColumn))
	for i := range s.b.Parts {
		p := &s.b.Parts[i]
		if s.b.Volumes != nil {
			volume = p.Volume.Text(0)
		}
		s.line(pad(shorten(p.Name, 29), -30) + pad(s.plain(p.Filled), massColumn) + pad(s.plain(p.Reserve), massColumn) + pad(s.plain(p.Loss), massColumn) + pad(volume, massColumn))
	}
}

// plain prints a mass without its unit, as finely as the small scale shows.
func (s *sheet) plain(m units.Mass) string { return m.Fixed(s.unit, columnFor(s.unit, s.small).places) }

// each prints the mass of a piece, a place finer.
func (s *sheet) each(m units.Mass) string {
	return m.Fixed(s.unit, columnFor(s.unit, s.small).places+1)
}

func (s *sheet) scaled() {
	if asked := s.b.Formula.Size.Pieces; asked > 0 {
		s.wrap("", "Scaled to "+pieces(asked)+" asked for: "+pieces(s.b.PiecesInAll())+", every count up to the next whole one.")
	}
}

// goesFar says how far a known batch goes with the vessels.
func (s *sheet) goesFar() {
	for i := range s.b.Pieces {
		p := &s.b.Pieces[i]
		text := p.Vessel + ", " + p.Part + ": fills " + strconv.Itoa(p.Filled) + ", of " + strconv.Itoa(p.Count) + " hoped for"
		switch {
		case p.Filled > p.Count:
			text = p.Vessel + ", " + p.Part + ": fills the " + strconv.Itoa(p.Count) + " hoped for and " + strconv.Itoa(p.Filled-p.Count) + " more"
		case p.Short.Sign() > 0:
			text += "; the next one lacks " + s.figure(p.Short)
		}
		s.wrap("", text+".")
	}
	s.wrap("", "Complete, with every layer and top: "+pieces(s.b.PiecesComplete)+".")
	if better := s.b.Better; better != nil {
		text := "The same batter would complete " + pieces(better.PiecesComplete) + " if its parts shared it so:"
		for i, p := range better.Parts {
			if i > 0 {
				text += ","
			}
			text += " " + p.Name + " " + p.Share.PercentText(2) + " %"
		}
		s.wrap("", text+".")
	}
}

// models names the vessels whose shape is only a model.
func (s *sheet) models() {
	for i := range s.b.Pieces {
		if p := &s.b.Pieces[i]; p.Spread.Sign() > 0 {
			s.wrap("", p.Vessel+": its shape is a model, give or take "+p.Spread.PercentText(0)+" % (a guess of ours). Pipe a few on a sheet, weigh them, and write it into the formula as a trial.")
		}
	}
}

// batches says that this is one of several.
func (s *sheet) batches() {
	last := s.b.Last
	if last == nil {
		return
	}
	text := "This is one of " + strconv.Itoa(s.b.Batches) + " batches, for want of moulds. The last one fills"
	for i := range last.Pieces {
		p := &last.Pieces[i]
		if i > 0 {
			text += ","
		}
		text += " " + strconv.Itoa(p.Filled) + " " + p.Vessel + " (" + p.Part + ")"
	}
	s.wrap("", text+", with "+s.figure(last.Oils)+" of oils, "+s.figure(last.Poured)+" poured.")
}

func (s *sheet) extras(heading string, extras []soap.ExtraCount) {
	if len(extras) == 0 {
		return
	}
	s.line("")
	s.line(pad(heading, -nameColumn) + pad("number", massColumn) + pad(s.unit.String(), restColumn))
	for _, e := range extras {
		s.row("", e.Name+", for "+e.Vessel, strconv.Itoa(e.Count), s.plain(e.Mass))
	}
}

func pieces(n int) string {
	if n == 1 {
		return "1 piece"
	}
	return strconv.Itoa(n) + " pieces"
}
