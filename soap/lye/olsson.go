package lye

import (
	"math"

	"example.com/lyewright/units/cite"
)

// OlssonSource is the source of the equations for the density and the enthalpy of
// sodium hydroxide lyes; the heat capacity is the slope of the enthalpy.
func OlssonSource() cite.Source {
	return cite.Source{
		Title: "Olsson, Jernqvist, Aly, Thermophysical properties of aqueous NaOH-H2O solutions at high concentrations, Int. J. Thermophys. 18(3)", Edition: "1997",
		Place: "density and enthalpy equations, read as an open program ports them; the paper itself was not seen", How: cite.Read,
	}
}

// olssonDensity holds, for each power of the temperature in °C, the factors of
// the powers of the square root of the mass fraction of water.
var olssonDensity = [3][6]float64{
	{5007.2279636, -25131.164248, 74107.692582, -104657.48684, 69821.773186, -18145.91181},
	{-64.786269079, 525.34360564, -1608.4471903, 2350.9753235, -1660.9035108, 457.6437435},
	{0.24436776978, -1.9737722344, 6.04601497138, -8.9090614947, 6.37146769397, -1.7816083111},
}

// densityOfSodium gives the density of a NaOH lye in g/mL, of a strength from 0
// to 1 and at a temperature in °C.
func densityOfSodium(strength, celsius float64) float64 {
	root := math.Sqrt(1 - strength)
	kilograms := polynomial(celsius,
		polynomial(root, olssonDensity[0][:]...),
		polynomial(root, olssonDensity[1][:]...),
		polynomial(root, olssonDensity[2][:]...))
	return kilograms / 1000
}

// Factors of the powers of the mass fraction of water in the enthalpy's parts.
var (
	olssonAbove  = [4]float64{1288.4485, -4387.8908, 4938.2298, -1841.189}
	olssonBelow  = [5]float64{1, -0.49649131, -4.0915144, 7.2887292, -3.0202651}
	olssonLinear = [9]float64{2.3087919, -9.0004252, 167.59914, -1051.6368, 3394.3378, -6115.0986, 6220.8249, -3348.8098, 743.87432}
	olssonSquare = [8]float64{0.0230286, -0.37866056, 2.4529593, -8.2693542, 15.728833, -16.944427, 9.6254192, -2.2410628}
	olssonCube   = [8]float64{-8.5131313e-05, 0.0013652823, -0.0087568741, 0.029200398, -0.054882983, 0.058418034, -0.032787483, 0.0075445993}
)

// An enthalpy is that of a NaOH lye of one strength, in J per g of lye, as a
// polynomial in the temperature in °C.
type enthalpy [4]float64

func enthalpyOfSodium(strength float64) enthalpy {
	water := 1 - strength
	return enthalpy{
		polynomial(water, olssonAbove[:]...) / polynomial(water, olssonBelow[:]...),
		polynomial(water, olssonLinear[:]...),
		polynomial(water, olssonSquare[:]...),
		polynomial(water, olssonCube[:]...),
	}
}

func (h *enthalpy) at(celsius float64) float64 { return polynomial(celsius, h[:]...) }

// capacity gives the heat capacity in J/(g K): the slope of the enthalpy.
func (h *enthalpy) capacity(celsius float64) float64 {
	return h[1] + celsius*(2*h[2]+celsius*3*h[3])
}

// polynomial gives the value at x of the polynomial with these factors, that of
// the zeroth power first.
func polynomial(x float64, factors ...float64) float64 {
	sum := 0.0
	for i := len(factors) - 1; i >= 0; i-- {
		sum = float64(sum*x) + factors[i]
	}
	return sum
}
