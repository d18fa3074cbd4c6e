package lye_test

import (
	"math"
	"testing"

	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
)

// Recommended values of IAPWS-95 (recalled, nobody saw them): 999.975 kg/m³ at 4 °C,
// 998.207 at 20 °C, 997.047 at 25 °C.
func TestDensityOfWater(t *testing.T) {
	for celsius, want := range map[int]float64{4: 0.999975, 20: 0.998207, 25: 0.997047} {
		d, err := lye.DensityOfWater(units.Celsius(celsius))
		if err != nil || math.Abs(d.Float()-want) > 1e-5 {
			t.Errorf("at %d °C: %v, %v, want %v", celsius, d, err, want)
		}
	}
	for _, at := range []units.Temperature{{}, units.Celsius(-1), units.Celsius(101)} {
		if d, err := lye.DensityOfWater(at); err == nil || d.Given() {
			t.Errorf("at %v: %v, %v", at, d, err)
		}
	}
}

// The equation worked outside the library, kg/m³ to two decimals.
func TestDensityOfWaterByItsEquation(t *testing.T) {
	for celsius, want := range map[int]float64{0: 999.84, 10: 999.70, 15: 999.10, 30: 995.65, 40: 992.22, 50: 988.04, 60: 983.20, 70: 977.77, 80: 971.80, 90: 965.32} {
		d, err := lye.DensityOfWater(units.Celsius(celsius))
		if err != nil || math.Abs(1000*d.Float()-want) > 0.0051 {
			t.Errorf("at %d °C: %v, %v, want %v kg/m³", celsius, d, err, want)
		}
	}
	for _, at := range []units.Temperature{units.Celsius(0), units.Celsius(100)} {
		if d, err := lye.DensityOfWater(at); err != nil || !d.Given() {
			t.Errorf("at %v: %v, %v", at, d, err)
		}
	}
}
