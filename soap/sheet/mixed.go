package sheet

import (
	"strings"

	"example.com/lyewright/units"
)

// mixed says how strong the lye is, of what that is a share, and where stock or liquids
// bring some of it, what it follows from.
func (s *sheet) mixed() {
	l := &s.b.Lye
	var alkali, stock, stockWater units.Mass
	for _, a := range s.b.Alkalis {
		alkali = alkali.Add(a.Dry.Mass)
		if a.Strength.Given() {
			stock, stockWater = stock.Add(a.Dry.Mass), stockWater.Add(a.Stock.Mass.Sub(a.Dry.Mass))
		}
	}
	text := "Lye as mixed: " + l.Concentration.PercentText(2) + " %, alkali over alkali and water: " + s.figure(alkali) +
		" of " + s.figure(l.Mass) + "."
	if stock.Sign() > 0 {
		text += " Of a stock lye the alkali is its hydroxide alone."
	}
	if len(s.b.Liquids) > 0 || stock.Sign() > 0 {
		water := []string{s.figure(s.b.Water.Mass) + " as such"}
		for _, liquid := range s.b.Liquids {
			water = append(water, s.figure(liquid.Water)+" in "+liquid.Name)
		}
		if stock.Sign() > 0 {
			water = append(water, s.figure(stockWater)+" in the stock lye")
		}
		text += " The water is " + strings.Join(water, ", ") + "."
	}
	s.wrap("", text)
}

// printed says what superfat the masses give that are printed, where that is over a tenth
// of a point from the plan: the scales round the rest away.
func (s *sheet) printed() {
	var lines []string
	far := func(name string, planned, printed units.Ratio) {
		apart := printed.Sub(planned)
		if apart.Sign() < 0 {
			apart = planned.Sub(printed)
		}
		if printed.Given() && apart.Compare(units.MustRatio("0.1 %")) > 0 {
			lines = append(lines, name+" "+printed.PercentFixed(2)+" %")
		}
	}
	far("batch", s.b.Superfat.Planned, s.b.Superfat.AsPrinted)
	if len(s.b.Parts) > 1 {
		for i := range s.b.Parts {
			p := &s.b.Parts[i]
			far(p.Name, p.Superfat.Planned, p.Superfat.AsPrinted)
		}
	}
	if len(lines) > 0 {
		s.wrap("", "Weighed as it is printed, at typical values: "+strings.Join(lines, ", ")+
			". A finer scale comes nearer to the plan.")
	}
}
