package soap

import "example.com/lyewright/units"

// Batch is what to weigh and what it will be: the answer to a [Formula]. It is
// plain data, computed once, and its caller's own.
type Batch struct {
	Formula Formula // as asked, a copy of its own

	Oils    []OilWeighing
	Alkalis []AlkaliWeighing
	Water   WaterWeighing
	Lye     Lye

	OilsTotal units.Mass // all the formula's oils, held back or not: the base of "of oils"
	Batter    units.Mass // in the pot: oils in the pot, alkali and lye water
	Poured    units.Mass // what fills the moulds: batter, additions and carriers
	Dry       units.Mass // what is left when all water is gone

	Superfat Outlook // of the batch, every oil counted as one weighing
	Parts    []PartBatch
	Findings []Finding // most severe first, then in input order
}

// Weighing is a mass to weigh: as worked out, and as a scale can show it.
type Weighing struct {
	Mass  units.Mass
	Weigh units.Mass // the nearest multiple of the scale's division; alkali and fragrances downwards
}

// OilWeighing is an oil as it goes into the pot.
type OilWeighing struct {
	Oil      Oil
	Weighing            // into the pot
	Withheld units.Mass // held back for carriers
}

// Total is the oil's part in the formula: in the pot and held back.
func (o OilWeighing) Total() units.Mass { return o.Mass.Add(o.Withheld) }

// AlkaliWeighing is an alkali as it is weighed.
type AlkaliWeighing struct {
	Alkali     Alkali
	Purity     units.Range // of hydroxide in what is weighed; Typical is what was planned with
	Saponifies units.Ratio // the share of the saponification it does
	Weighing
}

// Hydroxide is the pure hydroxide in what is weighed, at the planned purity.
func (a AlkaliWeighing) Hydroxide() units.Sum {
	return units.Sum{}.Plus(a.Mass, a.Purity.Typical)
}

// WaterWeighing is the water that goes into the lye.
type WaterWeighing struct {
	Asked    units.Mass // by the formula's rule
	Weighing            // into the lye
	Withheld units.Mass // held back for carriers
}

// Lye is the lye as mixed.
type Lye struct {
	Mass           units.Mass
	Concentration  units.Ratio // alkali as weighed over the lye
	WaterPerAlkali units.Ratio // lye water over alkali as weighed
}

// Outlook is how sure a superfat is. Planned holds at typical values. Low and
// High are the worst cases: every oil and purity at the unlucky end of its
// range, every weighing off by one division of its scale. LikelyLow and
// LikelyHigh take the same inputs as independent rectangular distributions, to
// first order, with a coverage factor of 2, cut off at the worst case.
type Outlook struct {
	Low, LikelyLow, Planned, LikelyHigh, High units.Ratio

	// Complete is false where an oil has no range and was taken as exact.
	Complete bool
	// FreeAlkaliWorst is, where Low is below zero, the alkali left over then,
	// as NaOH, of the dry mass. Not given otherwise.
	FreeAlkaliWorst units.Ratio
}

// PartBatch is a part of the batch.
type PartBatch struct {
	Name   string
	Share  units.Ratio // of the batter
	Batter units.Mass  // its share of what is in the pot: the base of "of batter"
	Oils   units.Mass  // its share of all the formula's oils: the base of "of oils"
	Water  units.Mass  // its share of the lye water, and its own water carriers
	Poured units.Mass  // its batter, additions and carriers
	Dry    units.Mass  // its share of the dry pot, its additions, and carriers of glycerin or oil

	Superfat  Outlook
	Additions []AdditionWeighing // colourants, fragrances, additives, each in file order
}

// AdditionWeighing is an addition as it is weighed, and its carrier.
type AdditionWeighing struct {
	Name string
	Kind AdditionKind
	Weighing
	Carrier *CarrierWeighing // nil: none
}

// CarrierWeighing is the carrier of an addition.
type CarrierWeighing struct {
	In   Liquid
	Oil  Oil    // of InOil
	Name string // as a formula file writes it: "water", "glycerin", an oil's id
	Weighing
	From From // FromFormula or Extra
}
