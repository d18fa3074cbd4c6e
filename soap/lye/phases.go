package lye

import (
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// A point of a curve: strength in percent, temperature in °C.
type point struct{ strength, celsius float64 }

// freezing holds the temperature at which a NaOH lye begins to freeze or to
// crystallise. Between 18.7 % and 25 % it falls to -28 °C; 38 to 40 % lye, near
// the 3.5-hydrate, crystallises at 15 to 16 °C, 50 % lye at 11 to 12 °C.
var freezing = [...]point{
	{0, 0},
	{0.27, 0},
	{2.17, -1.3},
	{4.06, -2.9},
	{5.69, -4.5},
	{7.58, -6.7},
	{9.34, -8.5},
	{10.96, -10.9},
	{12.59, -13.3},
	{14.08, -16},
	{15.57, -18.9},
	{16.79, -21.9},
	{17.87, -24.8},
	{18.68, -28},
	{20.17, -26.4},
	{21.66, -24.8},
	{22.74, -22.4},
	{23.69, -20.5},
	{24.77, -18.7},
	{25.58, -14.1},
	{26.4, -9.6},
	{27.34, -5.3},
	{28.56, -1.3},
	{29.78, 1.9},
	{31.81, 5.1},
	{32.89, 7.7},
	{34.25, 10.1},
	{35.74, 12.5},
	{37.36, 14.7},
	{38.98, 15.7},
	{40.34, 15.5},
	{41.96, 13.9},
	{43.45, 11.7},
	{44.67, 8.8},
	{45.62, 6.1},
	{47.11, 8},
	{48.73, 9.9},
	{50.36, 11.7},
	{51.44, 12.5},
	{52.25, 17.3},
	{53.06, 22.1},
}

// CrystallisesSource is the source of the temperatures at which lyes freeze or
// crystallise.
func CrystallisesSource() cite.Source {
	return cite.Source{
		Title: "Phase diagram of NaOH and water, Wang", Edition: "2008",
		Place: "read off a plot, ±1 K and ±0.5 % of strength, as an open program holds it; the paper itself was not seen", How: cite.Read,
	}
}

// CrystallisesWithin is how far off [Solution.Crystallises] may be, either way: 1 K, what
// the plot could be read to.
func CrystallisesWithin() units.TemperatureDifference { return units.Kelvins(1) }

// Crystallises gives the temperature at which a NaOH lye of this strength begins
// to freeze or to crystallise as it cools, linear between the rows of the phase diagram
// ([CrystallisesSource]), from 0 % to 53 %, good to [CrystallisesWithin]; At plays no
// part. ok is false of other strengths. The reverse is not offered: several strengths
// begin at one temperature.
//
// For KOH ok is false. Up to 45 % nothing crystallises at 0 °C or above: a 45 %
// liquor stays liquid down to −29 °C (ASTM E291-09, sections 5 and 6; read), and
// weak lyes begin to freeze below 0 °C (1 %: −0.61 °C, 7 %: −4.92 °C; CRC
// Handbook, 102nd edition; read). Above 45 % no figure is held.
func (s Solution) Crystallises() (t units.Temperature, ok bool) {
	if s.Alkali != SodiumHydroxide || !s.Strength.Given() {
		return units.Temperature{}, false
	}
	return along(freezing[:], s.Strength)
}

// CrystallisesNote says in a sentence why [Solution.Crystallises] gives nothing; empty
// where it gives something, and where alkali or strength is missing.
func (s Solution) CrystallisesNote() string {
	switch _, ok := s.Crystallises(); {
	case ok || !s.Alkali.known() || !s.Strength.Given():
		return ""
	case s.Alkali == PotassiumHydroxide && s.Strength.Compare(units.Percent(45)) <= 0:
		return "A potassium hydroxide lye of up to 45 % does not crystallise at 0 °C or above."
	default:
		return "At what temperature so strong a lye crystallises is not known here."
	}
}

// boiling holds boiling temperatures of NaOH lyes at 101.325 kPa, from the vapour
// pressure equation of the same paper as the enthalpy.
var boiling = [...]point{{0, 100}, {25, 112}, {100.0 / 3, 121}, {40, 130}, {50, 146}}

// BoilsSource is the source of the boiling temperatures: the vapour pressure equation of the
// same paper as [OlssonSource], worked out.
func BoilsSource() cite.Source {
	s := OlssonSource()
	s.Place = "vapour pressure equation at 101.325 kPa, four rows, linear between them"
	s.How = cite.Computed
	return s
}

// Boils gives the temperature at which a NaOH lye of this strength boils at 101.325 kPa,
// linear between four computed rows ([BoilsSource]) and water's 100 °C; At plays no part.
// Above 50 % and for KOH no figure is held, and ok is false.
func (s Solution) Boils() (t units.Temperature, ok bool) {
	if s.Alkali != SodiumHydroxide || !s.Strength.Given() {
		return units.Temperature{}, false
	}
	return along(boiling[:], s.Strength)
}

// along finds the temperature of a strength on a curve; ok is false beyond it.
func along(curve []point, strength units.Ratio) (t units.Temperature, ok bool) {
	percent := 100 * strength.Float()
	for i := 1; i < len(curve); i++ {
		a, b := curve[i-1], curve[i]
		if percent >= a.strength && percent <= b.strength {
			rise := (b.celsius - a.celsius) / (b.strength - a.strength)
			return units.CelsiusOfFloat(a.celsius + float64(rise*(percent-a.strength)))
		}
	}
	return units.Temperature{}, false
}
