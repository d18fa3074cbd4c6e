package lye

import (
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
	"example.com/lyewright/units/fault"
)

// Joining is oils and lye about to be poured together. The zero value lacks everything.
type Joining struct {
	Oils     units.Mass        // over 0 g
	OilsAt   units.Temperature // 0 °C to 100 °C
	Lye      units.Mass        // over 0 g
	LyeAt    units.Temperature // 0 °C to 100 °C
	Alkali   Alkali            // that the lye was made of
	Strength units.Ratio       // mass fraction of hydroxide in the lye, 0 % to 50 %
}

// OilHeatSource is the source of the heat capacities of oils that [Joining.Temperature]
// reckons with.
func OilHeatSource() cite.Source {
	return cite.Source{
		Title: "Fasina, Colley, Int. J. Food Properties 11, 738-746, heat capacities of twelve vegetable oils", Edition: "2008",
		Place: "linear fits from 35 °C, hazelnut 1.807 + 0.002492 t and sunflower 2.566 + 0.003477 t J/(g K) the ends, read as an open program holds them; its scaling is a reading", How: cite.Read,
	}
}

// Temperature gives the temperature that oils and lye have once they are stirred
// together, before they react, if no heat is lost: a span, since the heat
// capacities of oils differ (1.8 to 2.6 J/(g K) and a little more when warm). That of
// the lye follows from its strength and temperature. The sources are [OilHeatSource],
// [OlssonSource] and [LaliberteSource]. The error is [fault.Faults].
func (j Joining) Temperature() (low, high units.Temperature, err error) {
	faults := checkAlkali(nil, j.Alkali)
	for _, mass := range []struct {
		path string
		mass units.Mass
	}{{"oils", j.Oils}, {"lye", j.Lye}} {
		if mass.mass.Sign() <= 0 {
			faults.Add(mass.path, mass.mass.String(), "is not above 0 g", "give what was weighed", fault.ErrRange)
		}
	}
	faults = checkTemperature(faults, "oils_temperature", j.OilsAt, true)
	faults = checkTemperature(faults, "lye_temperature", j.LyeAt, true)
	switch {
	case !j.Strength.Given():
		faults.Add("strength", "", "is missing", `give the mass fraction of hydroxide in the lye, such as "33 %"`, fault.ErrMissing)
	case j.Strength.Sign() < 0 || j.Strength.Compare(strongest()) > 0:
		faults.Add("strength", percentText(j.Strength), "is not between 0 % and 50 %", "give the mass fraction of hydroxide in the lye", fault.ErrRange)
	}
	if len(faults) > 0 {
		return units.Temperature{}, units.Temperature{}, faults
	}
	capacity := capacityOfPotassium(j.Strength.Float(), j.LyeAt.Celsius())
	if j.Alkali == SodiumHydroxide {
		h := enthalpyOfSodium(j.Strength.Float())
		capacity = h.capacity(max(reference, j.LyeAt.Celsius()))
	}
	oils, lye := j.OilsAt.Celsius(), j.LyeAt.Celsius()
	mixed := func(perOil float64) units.Temperature {
		ofOils, ofLye := j.Oils.Grams()*perOil, j.Lye.Grams()*capacity
		t, _ := units.CelsiusOfFloat((float64(ofOils*oils) + float64(ofLye*lye)) / (ofOils + ofLye))
		return t
	}
	low, high = mixed(1.807+float64(0.002492*oils)), mixed(2.566+float64(0.003477*oils))
	if low.Compare(high) > 0 {
		low, high = high, low
	}
	return low, high, nil
}

// Apart reports whether oils and lye are more than 10 °F (5.6 K) apart in
// temperature, the most that is usual when they are joined (common practice, no
// source): over is then true. apart is how far they are, without a sign; limit is what
// that was held against. Both temperatures must be given.
func Apart(oils, lye units.Temperature) (apart, limit units.TemperatureDifference, over bool) {
	apart, limit = oils.Sub(lye).Size(), units.FahrenheitDegrees(10)
	return apart, limit, apart.Compare(limit) > 0
}
