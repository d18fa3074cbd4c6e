package soap

import (
	"example.com/lyewright/internal/molar"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// Alkali is a hydroxide: see [lye.Alkali]. The zero value is none, which
// [Formula.Check] refuses.
type Alkali = lye.Alkali

// The two hydroxides.
const (
	SodiumHydroxide    = lye.SodiumHydroxide    // NaOH, for bars
	PotassiumHydroxide = lye.PotassiumHydroxide // KOH, for soft soap and part of a bar
)

// Certificate is what a supplier's certificate of limits says of an alkali: see
// [lye.Certificate].
type Certificate = lye.Certificate

// molarOf is the molar mass of a hydroxide in mg/mol.
func molarOf(a Alkali) int64 {
	if a == PotassiumHydroxide {
		return molar.KOH
	}
	return molar.NaOH
}

// otherMolar is the molar mass of the other hydroxide in mg/mol: the whole number
// that brings an amount of this one to the scale both are compared on.
func otherMolar(a Alkali) int64 { return molar.NaOH + molar.KOH - molarOf(a) }

// AlkaliLine is one alkali of a formula.
type AlkaliLine struct {
	Alkali Alkali // the zero value is refused
	Note   string // as of a [Formula]

	// Asked is the name that it was asked for by, where that is not the alkali's own, such
	// as "caustic soda": a finding says both. It may be empty.
	Asked string

	// Purity is the mass fraction of hydroxide in what is weighed, 50 % to
	// 100 %. A carbonate in it is not hydroxide, although an assay counts it:
	// see [Certificate.Purity]. The zero Range is allowed for sodium hydroxide
	// alone, and means planned at 100 %, and from 95.5 % up: see
	// [AssumedPuritySource]. Where Typical is left out the middle is planned.
	Purity units.Range

	// PuritySource says where the purity comes from, such as a [lye.Grade]; the zero
	// value: from the caller.
	PuritySource cite.Source

	// Stock, in place of Purity, says that a stock lye is weighed: its strength, the
	// mass fraction of hydroxide in it, over 0 % and up to what dissolves at 20 °C.
	// The alkali's mass is then that of pure hydroxide.
	Stock units.Range

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
// hydroxide without a purity, 95.5 %: the least that the limits of a pharmacopoeia let
// pass, 97.0 % of total alkali less 2.0 % of carbonate counted as hydroxide.
func AssumedPuritySource() cite.Source {
	return cite.Source{
		Title:   "European Pharmacopoeia, monograph Sodium hydroxide",
		Edition: "carbonate limit read in 7.0, assay limit in a British Pharmacopoeia text of unstated edition",
		How:     cite.Computed,
	}
}

// assumed reports whether no purity was given, where one is needed.
func (line AlkaliLine) assumed() bool {
	return !line.stocked() && !line.Purity.Low.Given() && !line.Purity.Typical.Given() && !line.Purity.High.Given()
}

// planned gives the purity to reckon with: too little alkali is the safe
// mistake, so a purity that was not given is planned at its high end.
func (line AlkaliLine) planned() units.Range {
	if line.stocked() {
		return units.Exactly(units.Whole(1))
	}
	if line.assumed() {
		return units.Range{Low: purityFloor(), Typical: units.Whole(1), High: units.Whole(1)}
	}
	return units.Range{Low: line.Purity.Low, Typical: line.Purity.Plan(), High: line.Purity.High}
}

// stocked reports whether a stock lye is weighed.
func (line AlkaliLine) stocked() bool {
	return line.Stock.Low.Given() || line.Stock.Typical.Given() || line.Stock.High.Given()
}
