package sheet

import (
	"strconv"
	"strings"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// moulds gives the steps from densities to what fills the vessels.
func (w *working) moulds() {
	v := w.b.Volumes
	if v == nil {
		return
	}
	for _, o := range w.b.Oils {
		w.oilDensity(o.Oil, v.At)
	}
	w.potVolume(v)
	for i := range w.b.Parts {
		w.filled(&w.b.Parts[i], w.b.Formula.PartNamed(w.b.Parts[i].Name))
	}
}

// oilDensity moves the figure of an oil to the temperature of pouring.
func (w *working) oilDensity(oil soap.Oil, at units.Temperature) {
	d, known := oil.Density(at)
	if !known {
		return
	}
	s := Step{
		Of: oil.Name(), Formula: "density of an oil = its figure × density of water − 0.00064 × (temperature − that of the " +
			"figure)",
		Figures: d.Figure.Text(5),
		Result:  d.Planned.Text(5) + " g/mL at " + at.Text(1) + " °C, " + d.Low.Text(5) + " to " + d.High.Text(5),
		Sources: []cite.Source{d.Source},
	}
	if d.Computed {
		s.Formula = "density of an oil without a figure = (0.8475 + 0.0003 × saponification value + 0.00014 × iodine " +
			"value) × density of water − 0.00064 × (temperature − 15)"
		s.Figures = "(0.8475 + 0.0003 × " + milligrams(d.Saponification) + " + 0.00014 × " + d.Iodine.PercentText(4) + ")"
	} else if d.From.Given() {
		s.Sources = append(s.Sources, soap.DensitySource())
	}
	if d.Water.Given() {
		water, _ := lye.DensityOfWater(d.Water)
		s.Figures += " × " + water.Text(6)
	}
	if d.From.Given() {
		s.Figures += " − 0.00064 × (" + at.Text(2) + " − " + d.From.Text(2) + ")"
	}
	for _, f := range oil.Figures() {
		if f.Name == "density" {
			s.Because = "the middle of " + f.Low.Text(5) + " to " + f.High.Text(5) + ", " + f.Unit
		}
	}
	w.add(s)
}

// potVolume adds up what is in the pot.
func (w *working) potVolume(v *soap.Volumes) {
	var alkali units.Mass
	for _, a := range w.b.Alkalis {
		alkali = alkali.Add(a.Dry.Mass)
	}
	text := func(m units.Mass) string { return m.Text(units.Gram, 5) }
	water, _ := lye.DensityOfWater(v.At)
	var hydroxide units.Sum
	for _, a := range w.b.Alkalis {
		hydroxide = hydroxide.Add(a.Hydroxide())
	}
	var sources []cite.Source
	var each []string
	strength, _ := hydroxide.Per(units.Sum{}.Plus(alkali.Add(w.b.Water.Asked), units.Whole(1)))
	for _, a := range w.b.Alkalis {
		solution := lye.Solution{Alkali: a.Alkali, Strength: strength, At: v.At}
		sources = append(sources, solution.Source())
		w.density(a.Alkali, strength, v.At)
		if d, err := solution.Density(); err == nil {
			each = append(each, grams(a.Hydroxide())+" / "+grams(hydroxide)+" / "+d.Text(8))
		}
	}
	if len(each) > 1 {
		w.add(Step{
			Of: "Lye", Formula: "density of a lye of two alkalis = 1 / the sum of their shares of the hydroxide / their " +
				"densities",
			Figures: "1 / (" + strings.Join(each, " + ") + ")", Result: v.LyeAsked.Text(6) + " g/mL",
		})
	}
	w.add(Step{
		Of: "Lye", Formula: "volume of the lye = (alkali + water asked for) / density of that lye − water held back / " +
			"density of water",
		Figures: "(" + text(alkali) + " + " + text(w.b.Water.Asked) + ") / " + v.LyeAsked.Text(8) + " − " +
			text(w.b.Water.Withheld) + " / " + water.Text(8),
		Result: v.Lye.Text(4) + " mL", Because: "volumes add up, wherever the water goes",
		Sources: append(sources, lye.LaliberteSource()),
	})
	s := Step{
		Of: "Batter", Formula: "density of the batter = batter / (volume of oils + volume of lye), of what has a density",
		Figures: text(w.b.Batter) + " / " + v.Pot.Text(5), Result: v.Density.Text(5) + " g/mL",
		Because: "oils " + v.Oils.Text(3) + " mL, lye " + v.Lye.Text(3) + " mL",
	}
	if len(v.Unknown) > 0 {
		s.Because += "; at the batter's own density, for want of another: " + strings.Join(v.Unknown, "; ")
	}
	w.add(s)
}

// filled divides what is poured of a part.
func (w *working) filled(p *soap.PartBatch, part soap.Part) {
	var figures []string
	for i := range w.b.Pieces {
		if piece := &w.b.Pieces[i]; piece.Part == p.Name {
			figures = append(figures, strconv.Itoa(piece.Filled)+" × "+piece.Volume.Text(4)+" mL "+piece.Vessel)
		}
	}
	s := Step{
		Of: p.Name, Formula: "poured = filled × (1 + reserve) + loss",
		Figures: p.Filled.Text(units.Gram, 5) + " × (1 + " + part.ReserveOrUsual().Text(6) + ") + " +
			p.Loss.Text(units.Gram, 5),
		Result: p.Poured.Text(units.Gram, 5) + " g, at " + p.Density.Text(5) + " g/mL " + p.Volume.Text(3) + " mL",
	}
	if len(figures) > 0 {
		s.Because = "pieces: " + strings.Join(figures, ", ")
	}
	if !part.Reserve.Given() {
		s.Sources = []cite.Source{mould.ReserveSource()}
	}
	w.add(s)
}
