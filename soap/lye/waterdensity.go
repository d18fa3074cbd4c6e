package lye

import (
	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

// DensityOfWater gives the density of pure water at 0 °C to 100 °C, within 0.01 kg/m³ of
// the recommended values of IAPWS-95 (recalled; see the tests). Its source is
// [LaliberteSource]. The error is [fault.Faults].
func DensityOfWater(at units.Temperature) (units.Density, error) {
	if faults := checkTemperature(fault.Faults{}, "temperature", at, true); len(faults) > 0 {
		return units.Density{}, faults
	}
	d, _ := units.DensityOfFloat(densityOfWater(at.Celsius()))
	return d, nil
}
