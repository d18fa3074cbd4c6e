package lye

import (
	"math"

	"example.com/lyewright/units/cite"
)

// LaliberteSource is the source of the equations for the density (fitted to strengths up
// to 51.9 %, 4 to 95 °C) and the heat capacity (up to 46.5 %, 4 to 120 °C) of potassium
// hydroxide lyes, and for the density of water.
func LaliberteSource() cite.Source {
	return cite.Source{
		Title: "Laliberté, A model for calculating the heat capacity of aqueous solutions, with updated density and viscosity data, J. Chem. Eng. Data 54, 1725-1760", Edition: "2009",
		Place: "equations and coefficients, read as an open program holds them; the paper's tables were not seen", How: cite.Read,
	}
}

// densityOfWater gives the density of water in g/mL at a temperature in °C, by
// the equation that Laliberté and Cooper use (J. Chem. Eng. Data 49 (2004)
// 1141-1151; read as an open program holds it).
func densityOfWater(celsius float64) float64 {
	kilograms := polynomial(celsius, 999.83952, 16.945176, -0.0079870401, -4.6170461e-5, 1.0556302e-7, -2.8054253e-10) / (1 + float64(0.01687985*celsius))
	return kilograms / 1000
}

// densityOfPotassium gives the density of a KOH lye in g/mL, of a strength from 0
// to 1 and at a temperature in °C. Fitted to strengths up to 51.9 %, 4 to 95 °C.
func densityOfPotassium(strength, celsius float64) float64 {
	_, apparent := apparentPotassium(strength, celsius)
	return 1 / ((1-strength)/densityOfWater(celsius) + 1000*strength/apparent)
}

// potassium holds the coefficients of the density of KOH lyes.
var potassium = struct{ c0, c1, c2, c3, c4 float64 }{
	821.119043254761, 1043.20173374381, 0.112873330222752, 0.00124023636407386, 539.630388368877,
}

// apparentPotassium gives the apparent density of KOH in a lye in kg/m³, and the exponent in it.
func apparentPotassium(strength, celsius float64) (exponent, density float64) {
	p := &potassium
	exponent = 1e-6 * (celsius + p.c4) * (celsius + p.c4)
	return exponent, (float64(p.c0*strength) + p.c1) * math.Exp(exponent) / (strength + p.c2 + float64(p.c3*celsius))
}

// warmestOfPotassium is where the fit of the heat capacity ends, in °C. Not far
// beyond, its exponentials make the capacity fall below zero.
const warmestOfPotassium = 120

// capacityOfPotassium gives the heat capacity of a KOH lye in J/(g K). Fitted to
// strengths up to 46.5 %, 4 to 120 °C.
func capacityOfPotassium(strength, celsius float64) float64 {
	const a1, a2, a3, a4, a5, a6 = -0.612709529812129, -0.0454225316920391, 1.87598005977999, -5.62731016809735, 2.42547035549534, 1.24500822569176
	solute := float64(a1*math.Exp(float64(a2*celsius)+float64(a3*math.Exp(0.01*celsius))+float64(a4*strength))) + float64(a5*math.Pow(strength, a6))
	return float64((1-strength)*capacityOfWater) + float64(strength*solute)
}
