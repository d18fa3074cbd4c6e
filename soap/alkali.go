package soap

import (
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// Alkali is a hydroxide that is weighed dry. The zero value is none, which
// [Formula.Check] refuses.
type Alkali uint8

const (
	SodiumHydroxide    Alkali = iota + 1 // NaOH, for bars
	PotassiumHydroxide                   // KOH, for soft soap and part of a bar
)

// String gives the name a formula file uses: "sodium-hydroxide",
// "potassium-hydroxide".
func (a Alkali) String() string {
	switch a {
	case SodiumHydroxide:
		return "sodium-hydroxide"
	case PotassiumHydroxide:
		return "potassium-hydroxide"
	default:
		return ""
	}
}

// Name gives the name in English: "Sodium hydroxide", "Potassium hydroxide".
func (a Alkali) Name() string {
	switch a {
	case SodiumHydroxide:
		return "Sodium hydroxide"
	case PotassiumHydroxide:
		return "Potassium hydroxide"
	default:
		return ""
	}
}

// Symbol gives the chemical formula: "NaOH", "KOH".
func (a Alkali) Symbol() string {
	switch a {
	case SodiumHydroxide:
		return "NaOH"
	case PotassiumHydroxide:
		return "KOH"
	default:
		return ""
	}
}

// MolarMass gives the molar mass in g/mol: NaOH 39.997, KOH 56.105, from the
// IUPAC abridged atomic weights of 2021.
func (a Alkali) MolarMass() units.Ratio { return thousandths(int(a.molar())) }

// molar is the molar mass in mg/mol.
func (a Alkali) molar() int64 {
	if a == PotassiumHydroxide {
		return molarKOH
	}
	return molarNaOH
}

// other is the molar mass of the other hydroxide in mg/mol: the whole number
// that brings an amount of this one to the scale both are compared on.
func (a Alkali) other() int64 {
	if a == PotassiumHydroxide {
		return molarNaOH
	}
	return molarKOH
}

// saturation is how much of the pure hydroxide 1000 g of solution hold at
// 20 °C, in grams. NaOH 521: a table of its solubility, University of Campinas,
// edition not stated (a compilation; read). KOH 528: Great Soviet Encyclopedia,
// article potassium hydroxide, edition not stated (read).
func (a Alkali) saturation() int64 {
	if a == PotassiumHydroxide {
		return 528
	}
	return 521
}

// AlkaliLine is one alkali of a formula.
type AlkaliLine struct {
	Alkali Alkali

	// Purity is the mass fraction of hydroxide in what is weighed, 50 % to
	// 100 %. A carbonate in it is not hydroxide, although an assay counts it:
	// see [Certificate.Purity]. The zero Range is allowed for sodium hydroxide
	// alone, and means planned at 100 %, and from 95.5 % up.
	Purity units.Range

	// Saponifies is the share of the saponification that this alkali does,
	// over 0 % and below 100 %. Given with two alkalis, left out with one.
	Saponifies units.Ratio
}

// purityFloor is the least hydroxide that the European Pharmacopoeia lets pass,
// 95.5 %: worked out from 97.0 % total alkali (read in a British Pharmacopoeia
// text of the monograph, edition not stated) less 2.0 % sodium carbonate (read in
// Ph. Eur. 7.0) counted as hydroxide.
func purityFloor() units.Ratio { return thousandths(955) }

// AssumedPuritySource is the source of the low end that is assumed of sodium
// hydroxide without a purity.
func AssumedPuritySource() cite.Source {
	return cite.Source{
		Title:   "European Pharmacopoeia, monograph Sodium hydroxide",
		Edition: "carbonate limit read in 7.0, assay limit in a British Pharmacopoeia text of unstated edition",
		How:     cite.Computed,
	}
}

// assumed reports whether no purity was given.
func (line AlkaliLine) assumed() bool {
	return !line.Purity.Low.Given() && !line.Purity.Typical.Given() && !line.Purity.High.Given()
}

// planned gives the purity to reckon with: too little alkali is the safe
// mistake, so a purity that was not given is planned at its high end.
func (line AlkaliLine) planned() units.Range {
	if line.assumed() {
		return units.Range{Low: purityFloor(), Typical: units.Whole(1), High: units.Whole(1)}
	}
	return units.Range{Low: line.Purity.Low, Typical: line.Purity.Plan(), High: line.Purity.High}
}

// Certificate is what a supplier's certificate of limits says of an alkali.
// All shares are of what is weighed.
type Certificate struct {
	AssayMin     units.Ratio // least total alkali, counted as hydroxide
	AssayMax     units.Ratio // most total alkali; pharmacopoeias print up to 100.5 %
	CarbonateMax units.Ratio // most carbonate
	Typical      units.Ratio // the lot's own hydroxide, where it is known
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
// error is [Faults], with the keys of a formula file as paths.
func (c Certificate) Purity(alkali Alkali) (units.Range, error) {
	var faults Faults
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
			faults = append(faults, Fault{Path: figure.path, Reason: "is missing", Remedy: figure.remedy, Kind: ErrMissing})
		case figure.value.Sign() < 0 || figure.value.Compare(figure.most) > 0:
			faults = append(faults, Fault{Path: figure.path, Text: figure.value.PercentText(10) + " %", Reason: "is not between 0 % and " + figure.most.PercentText(0) + " %", Kind: ErrRange})
		}
	}
	if len(faults) == 0 && c.AssayMin.Compare(c.AssayMax) > 0 {
		faults = append(faults, Fault{Path: "assay_min", Text: c.AssayMin.PercentText(10) + " %", Reason: "is above assay_max", Remedy: "give the lower limit first", Kind: ErrRange})
	}
	if alkali != SodiumHydroxide && alkali != PotassiumHydroxide {
		faults = append(faults, Fault{Path: "kind", Reason: "is missing", Remedy: "say which hydroxide it is", Kind: ErrMissing})
	}
	if alkali == PotassiumHydroxide && !c.Typical.Given() {
		faults = append(faults, Fault{Path: "typical", Reason: "is missing", Remedy: "potassium hydroxide is sold with 10 to 15 % of water: give the hydroxide of this lot", Kind: ErrMissing})
	}
	if len(faults) > 0 {
		return units.Range{}, faults
	}
	carbonate := int64(molarSodiumCarbonate)
	if alkali == PotassiumHydroxide {
		carbonate = molarPotassiumCarbonate
	}
	factor := units.Whole(2*alkali.molar()).Over(units.Whole(carbonate)).Round(4, units.Nearest)
	purity := units.Range{Low: c.AssayMin.Sub(c.CarbonateMax.Times(factor)), High: c.AssayMax}
	if purity.High.Compare(whole) > 0 {
		purity.High = whole
	}
	purity.Typical = c.Typical.Or(purity.High)
	switch {
	case purity.Low.Sign() <= 0:
		return units.Range{}, Faults{{Path: "carbonate_max", Text: percentText(c.CarbonateMax), Reason: "leaves no hydroxide of the assay", Remedy: "give both as the certificate does", Kind: ErrRange}}
	case !purity.Ordered():
		return units.Range{}, Faults{{
			Path: "typical", Text: percentText(purity.Typical), Kind: ErrRange,
			Reason: "is not between " + percentText(purity.Low) + " and " + percentText(purity.High) + ", the hydroxide that the limits allow",
			Remedy: "give the hydroxide of this lot, carbonate not counted",
		}}
	}
	return purity, nil
}
