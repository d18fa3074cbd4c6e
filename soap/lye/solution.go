package lye

import (
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
	"example.com/lyewright/units/fault"
)

// Solution is a lye of one hydroxide in water, without carbonate. The zero value lacks
// everything.
type Solution struct {
	Alkali   Alkali            // which hydroxide is in it
	Strength units.Ratio       // mass fraction of hydroxide, 0 % to 50 %
	At       units.Temperature // 0 °C to 100 °C
}

// Density gives the lye's density: for NaOH by the equation of Olsson and others,
// within 0.4 % of the published tables everywhere (the worst, 0.30 %, at 32 % and
// 0 °C; see the tests), for KOH by that of Laliberté, within 0.1 % of the table of
// the International Critical Tables and up to 0.7 % above that of the CRC
// Handbook, which disagree. It takes 0 % to 50 % and 0 °C to 100 °C. The error is
// [fault.Faults].
func (s Solution) Density() (units.Density, error) {
	if faults := s.check(); len(faults) > 0 {
		return units.Density{}, faults
	}
	d, _ := units.DensityOfFloat(density(s.Alkali, s.Strength.Float(), s.At.Celsius()))
	return d, nil
}

// Source is the source of the density: [LaliberteSource] of KOH, else [OlssonSource].
func (s Solution) Source() cite.Source {
	if s.Alkali == PotassiumHydroxide {
		return LaliberteSource()
	}
	return OlssonSource()
}

// Volume gives the volume of a mass of the lye, to the nearest nanolitre of what the
// model makes of it. The error is that of [Solution.Density].
func (s Solution) Volume(mass units.Mass) (units.Volume, error) {
	d, err := s.Density()
	if err != nil {
		return units.Volume{}, err
	}
	v, _ := d.Volume(mass)
	return v, nil
}

func density(alkali Alkali, strength, celsius float64) float64 {
	if alkali == PotassiumHydroxide {
		return densityOfPotassium(strength, celsius)
	}
	return densityOfSodium(strength, celsius)
}

// strongest is the strength up to which densities are known, 50 %.
func strongest() units.Ratio { return units.Percent(50) }

func (s Solution) check() fault.Faults {
	faults := checkAlkali(nil, s.Alkali)
	switch {
	case !s.Strength.Given():
		faults.Add("strength", "", "is missing", `give the mass fraction of hydroxide, such as "33 %"`, fault.ErrMissing)
	case s.Strength.Sign() < 0 || s.Strength.Compare(strongest()) > 0:
		faults.Add("strength", percentText(s.Strength), "is not between 0 % and 50 %, where densities are known", "give the mass fraction of hydroxide in the lye", fault.ErrRange)
	}
	return checkTemperature(faults, "temperature", s.At, true)
}

func checkAlkali(faults fault.Faults, alkali Alkali) fault.Faults {
	if !alkali.known() {
		faults.Add("alkali", "", "is missing", "write sodium-hydroxide or potassium-hydroxide", fault.ErrMissing)
	}
	return faults
}

// checkTemperature checks a temperature of 0 to 100 °C, which may be needed.
func checkTemperature(faults fault.Faults, path string, t units.Temperature, needed bool) fault.Faults {
	switch {
	case t.Given() && (t.Compare(units.Celsius(0)) < 0 || t.Compare(units.Celsius(100)) > 0):
		faults.Add(path, t.Text(2)+" °C", "is not between 0 °C and 100 °C", "give what a thermometer in it shows", fault.ErrRange)
	case !t.Given() && needed:
		faults.Add(path, "", "is missing", `give a temperature, such as "20 °C"`, fault.ErrMissing)
	}
	return faults
}

// Hydrometer is a reading of a lye's density at the lye's own temperature. The zero value
// lacks everything.
type Hydrometer struct {
	Alkali  Alkali            // that the lye was made of
	Reading units.Density     // in g/mL, as the lye has it, not taken to another temperature
	At      units.Temperature // of the lye, 0 °C to 100 °C
}

// Strength gives the strength of the lye as a mass fraction of hydroxide, rounded to
// 10^-8: the inverse of [Solution.Density], and no surer than that. Carbonate makes a lye
// denser, and counts as hydroxide here: it is an upper figure. Refused is a density that
// no strength from 0 % to 50 % has at this temperature. The error is [fault.Faults].
func (h Hydrometer) Strength() (units.Ratio, error) {
	faults := checkAlkali(nil, h.Alkali)
	if !h.Reading.Given() {
		faults.Add("density", "", "is missing", `give the reading, such as "1.33 g/mL"`, fault.ErrMissing)
	}
	if faults = checkTemperature(faults, "temperature", h.At, true); len(faults) > 0 {
		return units.Ratio{}, faults
	}
	at, want := h.At.Celsius(), h.Reading.Float()
	low, high := 0.0, strongest().Float()
	// The models need not give water its exact density: a nanogram is no fault.
	least, most := density(h.Alkali, low, at), density(h.Alkali, high, at)
	if want < least-1e-9 || want > most+1e-9 {
		bound := func(f float64) string { d, _ := units.DensityOfFloat(f); return d.Text(4) }
		return units.Ratio{}, fault.Faults{{
			Path: "density", Text: h.Reading.Text(4) + " g/mL", Kind: fault.ErrRange,
			Reason: "is not between " + bound(least) + " and " + bound(most) + " g/mL, what a lye of 0 % to 50 % has at this temperature",
			Remedy: "read it in g/mL, with the thermometer in the lye",
		}}
	}
	for range 40 { // to 10^-12
		middle := (low + high) / 2
		if density(h.Alkali, middle, at) < want {
			low = middle
		} else {
			high = middle
		}
	}
	strength, _ := units.RatioOfFloat((low + high) / 2)
	return strength.Round(8, units.Nearest), nil
}
