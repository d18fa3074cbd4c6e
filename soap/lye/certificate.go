package lye

import (
	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

// Certificate is what a supplier's certificate of limits says of an alkali.
// All shares are of what is weighed, by mass. The zero value lacks everything.
type Certificate struct {
	AssayMin     units.Ratio // least total alkali, counted as hydroxide: 0 % to 100 %
	AssayMax     units.Ratio // most total alkali, to 101 %; pharmacopoeias print up to 100.5 %
	CarbonateMax units.Ratio // most carbonate: 0 % to 100 %
	Typical      units.Ratio // the lot's own hydroxide, where it is known; not given otherwise
}

// Purity gives the hydroxide that the certificate allows. An assay counts
// carbonate as hydroxide, so the hydroxide lies between AssayMin −
// f × CarbonateMax, with f = 0.7547 for sodium and 0.8119 for potassium
// (2 M(hydroxide)/M(carbonate)), and AssayMax, and never above 100 %.
//
// A certificate of limits says what may be in the bottle, not what is. Sodium
// hydroxide is therefore planned at the high end unless Typical is given;
// potassium hydroxide needs Typical. Refused are limits out of order, a carbonate
// that leaves no hydroxide, and a Typical outside what the limits allow. The
// error is [fault.Faults], with the keys of a formula file as paths.
func (c Certificate) Purity(alkali Alkali) (units.Range, error) {
	var faults fault.Faults
	whole, most := units.Whole(1), units.Percent(101)
	for _, figure := range []struct {
		path   string
		value  units.Ratio
		most   units.Ratio
		remedy string
	}{
		{"assay_min", c.AssayMin, whole, "give the least assay as the certificate does"},
		{"assay_max", c.AssayMax, most, `give the most as the certificate does, "100 %" where it sets no upper assay`},
		{"carbonate_max", c.CarbonateMax, whole, "give the most carbonate as the certificate does: an assay counts it as hydroxide"},
	} {
		switch {
		case !figure.value.Given():
			faults = append(faults, fault.Fault{Path: figure.path, Reason: "is missing", Remedy: figure.remedy, Kind: fault.ErrMissing})
		case figure.value.Sign() < 0 || figure.value.Compare(figure.most) > 0:
			faults = append(faults, fault.Fault{Path: figure.path, Text: figure.value.PercentText(10) + " %", Reason: "is not between 0 % and " + figure.most.PercentText(0) + " %", Kind: fault.ErrRange})
		}
	}
	if len(faults) == 0 && c.AssayMin.Compare(c.AssayMax) > 0 {
		faults = append(faults, fault.Fault{Path: "assay_min", Text: c.AssayMin.PercentText(10) + " %", Reason: "is above assay_max", Remedy: "give the lower limit first", Kind: fault.ErrRange})
	}
	if !alkali.known() {
		faults = append(faults, fault.Fault{Path: "kind", Reason: "is missing", Remedy: "say which hydroxide it is", Kind: fault.ErrMissing})
	}
	if alkali == PotassiumHydroxide && !c.Typical.Given() {
		faults = append(faults, fault.Fault{Path: "typical", Reason: "is missing", Remedy: "potassium hydroxide is sold with 10 to 15 % of water: give the hydroxide of this lot", Kind: fault.ErrMissing})
	}
	if len(faults) > 0 {
		return units.Range{}, faults
	}
	purity := units.Range{Low: c.AssayMin.Sub(c.CarbonateMax.Times(alkali.carbonateFactor())), High: c.AssayMax}
	if purity.High.Compare(whole) > 0 {
		purity.High = whole
	}
	purity.Typical = c.Typical.Or(purity.High)
	switch {
	case purity.Low.Sign() <= 0:
		return units.Range{}, fault.Faults{{Path: "carbonate_max", Text: percentText(c.CarbonateMax), Reason: "leaves no hydroxide of the assay", Remedy: "give both as the certificate does", Kind: fault.ErrRange}}
	case !purity.Ordered():
		return units.Range{}, fault.Faults{{
			Path: "typical", Text: percentText(purity.Typical), Kind: fault.ErrRange,
			Reason: "is not between " + percentText(purity.Low) + " and " + percentText(purity.High) + ", the hydroxide that the limits allow",
			Remedy: "give the hydroxide of this lot, carbonate not counted",
		}}
	}
	return purity, nil
}

// carbonateFactor is the hydroxide that an assay counts for each gram of
// carbonate, to four decimals as the monographs' factors are: 0.7547 for sodium,
// 0.8119 for potassium.
func (a Alkali) carbonateFactor() units.Ratio {
	return units.Whole(2*a.milligrams()).Over(units.Whole(a.carbonate())).Round(4, units.Nearest)
}

func percentText(r units.Ratio) string { return r.PercentText(12) + " %" }
