package sheet

import (
	"io"
	"strings"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
)

func (p *page) figure(name, value string) { p.line(pad(name, -34) + value) }

// WriteTitration prints what a titration found, in percent of what was weighed, and as the
// purity of a formula file, below 50 % as the strength of a stock lye, with a note where an
// accuracy was left out: found is the [lye.Titration.Result] of asked. The error is the
// writer's.
func WriteTitration(w io.Writer, asked lye.Titration, found lye.Titrated) error {
	var p page
	p.wrap("", asked.Alkali.Name()+" by titration, % of what was weighed "+p.cite(lye.TitrationSource()))
	p.line("")
	if found.Hydroxide.Given() {
		p.figure("Hydroxide", found.Hydroxide.PercentText(2)+" %")
		p.figure("Carbonate", found.Carbonate.PercentText(2)+" %")
		if found.Hydroxide.Compare(units.Whole(1)) > 0 {
			p.wrap("", "More than there can be: the readings are off, if by no more than their bounds. 100 % is taken.")
		}
	}
	switch {
	case found.Low.Given() && !found.Low.Equal(found.High):
		p.figure("Hydroxide, outer bounds", found.Low.Round(4, units.Down).PercentText(2)+" to "+
			found.High.Round(4, units.Up).PercentText(2)+" %")
	case !found.Low.Given():
		p.figure("Hydroxide, at most", found.High.PercentText(2)+" %")
		p.wrap("", "One end point counts carbonate as hydroxide: titrate on to the second, or give the most carbonate that "+
			"the bottle may hold, for a low end.")
	}
	for _, f := range soap.TitrationFindings(asked) {
		p.wrap("-  ", f.Message()+" "+p.cite(f.Source))
	}
	if r, ok := found.Range(); ok {
		p.line("")
		p.line("In a formula file:")
		ends := `{"low": "` + r.Low.Round(6, units.Down).PercentText(4) + ` %", "typical": "` +
			r.Typical.Round(6, units.Nearest).PercentText(4) + ` %", "high": "` + r.High.Round(6, units.Up).PercentText(4) +
			` %"}`
		if r.Low.Compare(units.Percent(50)) < 0 { // a solution
			p.line(`  "stock": {"strength":`)
			p.line("    " + ends + "}")
		} else {
			p.line(`  "purity": ` + ends)
		}
	}
	p.cautions()
	p.foot()
	p.edition(soap.DataEdition())
	return p.writeTo(w)
}

// WriteHeat prints how hot a lye gets if no heat is lost, in °C rounded up, with a warning
// where it may boil: h is the [lye.Mixing.Bound] of m. The error is the writer's.
func WriteHeat(w io.Writer, m lye.Mixing, h lye.Heat) error {
	var p page
	p.wrap("", "How hot the lye gets if no heat is lost: a bound for caution, not a promise "+p.cite(lye.HeatSource()))
	p.line("")
	p.figure("Strength of the lye", h.Strength.PercentText(2)+" % hydroxide")
	p.figure("It reaches up to", h.Final.Ratio().Round(1, units.Up).Text(1)+" °C")
	if h.Rise.Compare(units.Kelvins(0)) >= 0 {
		p.figure("A rise of", h.Rise.Text(1)+" K")
	}
	if h.Boils.Given() {
		p.figure("It boils near", h.Boils.Text(0)+" °C "+p.cite(lye.BoilsSource()))
	}
	if limit, hot := h.Hot(); hot {
		p.wrap("WARNING  ", "That is above "+limit.Text(0)+" °C: it may boil and spit. Take colder water or ice, and add "+
			"the alkali in small portions.")
	}
	if h.Extrapolated {
		p.wrap("-  ", "Above 42.5 % the heat of solution is extrapolated.")
	}
	for _, a := range m.Alkalis {
		if a.Alkali == soap.PotassiumHydroxide {
			p.wrap("-  ", "Of potassium hydroxide only the heat at infinite dilution is held here, the largest: it is likely "+
				"less. Its boiling temperature is not known here.")
		}
	}
	p.cautions()
	p.foot()
	p.edition(soap.DataEdition())
	return p.writeTo(w)
}

// WriteSolution prints what a lye is like: its strength in percent of hydroxide, its density,
// when it crystallises and boils, and the volume of a mass of it, which may be 0 g: none.
// upper says that the strength is an upper figure, as one from a hydrometer is. The error
// is that of the density, or the writer's.
func WriteSolution(w io.Writer, s lye.Solution, mass units.Mass, upper bool) error {
	density, err := s.Density()
	if err != nil {
		return err
	}
	var p page
	p.wrap("", "Lye of "+s.Alkali.Symbol()+" at "+s.At.Text(2)+" °C "+p.cite(s.Source()))
	p.line("")
	strength := s.Strength.PercentText(2) + " % hydroxide"
	if upper {
		strength += " at most"
	}
	p.figure("Strength", strength)
	if upper {
		p.wrap("", "A hydrometer counts carbonate as hydroxide: it is an upper figure.")
	}
	p.figure("Density", density.Text(4)+" g/mL")
	if mass.Sign() > 0 {
		if v, ok := density.Volume(mass); ok {
			p.figure("Volume of "+mass.Text(units.Gram, 3)+" g", v.Text(1)+" mL")
		}
	}
	if t, ok := s.Crystallises(); ok {
		p.figure("It begins to crystallise at", t.Text(1)+" °C, give or take 1 K "+p.cite(lye.CrystallisesSource()))
	} else if note := s.CrystallisesNote(); note != "" {
		p.wrap("", note)
	}
	if t, ok := s.Boils(); ok {
		p.figure("It boils near", t.Text(0)+" °C "+p.cite(lye.BoilsSource()))
	}
	p.cautions()
	p.foot()
	p.edition(soap.DataEdition())
	return p.writeTo(w)
}

// WriteStock prints two masses that make a lye, in grams: under a heading, what is weighed
// first by its name, then the water. The error is the writer's.
func WriteStock(w io.Writer, heading, first string, weigh, water units.Mass) error {
	var p page
	p.wrap("", heading)
	p.line("")
	p.figure(first, weigh.Text(units.Gram, 3)+" g")
	p.figure("Water", water.Text(units.Gram, 3)+" g")
	p.cautions()
	p.edition(soap.DataEdition())
	return p.writeTo(w)
}

// WriteAcids lists acids: by which id and which names a formula calls each, its chemical formula, and whether its
// strength must be written. The error is the writer's.
func WriteAcids(w io.Writer, acids []lye.Acid) error {
	var p page
	p.wrap("", "Acids: the ids that a formula and lye know, with the names in everyday use that mean each alone. The "+
		"strength of an acid as bought is over 0 % to 100 %, one value or a range; where nothing is said of it, 100 % "+
		"counts when it is left out. Molar masses "+p.cite(lye.AtomicWeights())+"; names: common knowledge.")
	for _, a := range acids {
		p.line("")
		p.line(pad(a.ID, -26) + pad(a.Formula, -12) + a.Molar.Text(3) + " g/mol")
		if a.Dissolved {
			p.line("   strength must be written")
		}
		if names := a.Names(); len(names) > 0 {
			p.wrap("   ", strings.Join(names, ", "))
		}
	}
	p.foot()
	return p.writeTo(w)
}
