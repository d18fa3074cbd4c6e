package soap

import (
	"example.com/lyewright/colour"
	"example.com/lyewright/fragrance"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// Batch is what to weigh and what it will be: the answer to a [Formula]. It is
// plain data, computed once, and its caller's own. The zero value is what stands beside
// an error.
type Batch struct {
	Formula Formula // as asked, a copy of its own

	// What to weigh, each list in the order of the formula.
	Oils    []OilWeighing
	Alkalis []AlkaliWeighing
	Water   WaterWeighing
	Liquids []LiquidWeighing // other than water
	Acids   []AcidWeighing
	Lye     Lye // what alkali, water and liquids make together

	OilsTotal units.Mass // all the formula's oils, held back or not: the base of "of oils"
	Batter    units.Mass // in the pot: oils, alkali, lye water, acids and liquids, what is held back apart
	Poured    units.Mass // what fills the moulds: batter, additions and carriers
	Dry       units.Mass // what is left when all water is gone, and all alcohol

	// Worked is the superfat that the alkali is worked out with, of the oils' demand: as
	// asked, or the least that keeps a promise. Superfat.Planned lies above it where an
	// acid is not compensated.
	Worked   units.Ratio
	Superfat Outlook     // of the batch, every oil counted as one weighing
	Parts    []PartBatch // in the formula's order; one named "whole" where it has none

	// What is poured, divided: zero where there are neither vessels nor a part's
	// reserve or loss. The three add up to Poured, to the nanogram.
	Filled, Reserve, Loss units.Mass

	// With vessels, what fills them; nil and zero without. They are those of the plan, of a batch that was weighed
	// too: what is really poured of a part, and its volume, stand in Weighed.
	Volumes          *Volumes
	Pieces           []Piece      // vessel by vessel, in each part by part
	Embeds, Toppings []ExtraCount // of one batch, vessel by vessel
	// PiecesComplete are the pieces of a batch whose mass is known whose every layer and top
	// can be filled, vessel by vessel in the formula's order, beyond what is hoped for in the
	// last. Better says how else the parts would share the batter to complete more; nil where
	// nothing is known to.
	PiecesComplete int
	Better         *Split
	Batches        int        // how many the moulds ask for; the masses are those of one full batch
	Last           *LastBatch // the last of several; nil of one

	matching *matching // what came of the loads that were looked for; nil where none were

	Weighed *Reckoning // what the real weighings come to; nil where there are none
	// Findings stand most severe first, then in input order: at most 200, the last of which says how many more there
	// are.
	Findings []Finding
	more     []Finding // those
}

// Weighing is a mass to weigh: as worked out, and as a scale can show it.
type Weighing struct {
	Mass  units.Mass // to the nanogram
	Weigh units.Mass // the nearest multiple of the scale's division; alkali and fragrances downwards
}

// OilWeighing is an oil as it goes into the pot.
type OilWeighing struct {
	Oil      Oil
	Weighing            // into the pot
	Withheld units.Mass // held back for carriers
	Note     string     // the maker's remark on the line; empty: none
}

// Total is the oil's part in the formula: in the pot and held back.
func (o OilWeighing) Total() units.Mass { return o.Mass.Add(o.Withheld) }

// AlkaliWeighing is an alkali as it is weighed. What to put on the scale is what ToWeigh
// gives, of a dry alkali and of a stock lye alike.
type AlkaliWeighing struct {
	Alkali Alkali
	// Purity is the mass fraction of hydroxide in what is weighed, Typical what was planned with: 100 % of a stock lye.
	Purity     units.Range
	Source     cite.Source // of the purity; the zero value: from the caller
	Saponifies units.Ratio // the share of the saponification it does
	Dry        Weighing    // the dry alkali; of a stock lye the pure hydroxide in it, which is not weighed: see ToWeigh

	// Stock is the stock lye that is weighed in place of dry alkali, and Strength the mass
	// fraction of hydroxide in it; zero and not given where the alkali is dry.
	Stock    Weighing
	Strength units.Range

	Note  string // the maker's remark on the line; empty: none
	Asked string // the name that the formula has for it, where that is not the alkali's own
}

// ToWeigh gives what is weighed, the stock lye or the dry alkali, and the mass
// fraction of hydroxide in it.
func (a AlkaliWeighing) ToWeigh() (Weighing, units.Range) {
	if a.Strength.Given() {
		return a.Stock, a.Strength
	}
	return a.Dry, a.Purity
}

// LiquidWeighing is a liquid other than water, as it goes into the batch.
type LiquidWeighing struct {
	Name     string
	Weighing            // of the liquid
	Water    units.Mass // in it
}

// AcidWeighing is an acid as it goes into the batch.
type AcidWeighing struct {
	Acid     lye.Acid
	Asked    string     // the name that the formula has for it, where that is not its ID
	Weighing            // as bought
	Water    units.Mass // in it as bought, crystal water apart: it comes out of the lye water
	Takes    units.Mass // the alkali it takes up, as the first of the formula's alkalis, pure
}

// Hydroxide is the pure hydroxide in what is worked out (Dry.Mass, which no scale has
// rounded), at the planned purity.
func (a AlkaliWeighing) Hydroxide() units.Sum {
	return units.Sum{}.Plus(a.Dry.Mass, a.Purity.Typical)
}

// WaterWeighing is the water that goes into the lye.
type WaterWeighing struct {
	Asked    units.Mass // by the formula's rule: here, in stock, liquids and acids, and held back
	Weighing            // into the lye, still to add to stock and liquids
	Withheld units.Mass // held back for carriers
}

// Lye is the lye as mixed: the alkali (of a stock its hydroxide) and all the water
// it is mixed in, that of stock and liquids included.
type Lye struct {
	Mass           units.Mass  // of alkali and water; acids, and what is not water in liquids, are not in it
	Concentration  units.Ratio // alkali as weighed over the lye
	WaterPerAlkali units.Ratio // lye water over alkali as weighed
	Strength       units.Ratio // hydroxide over the lye, at the planned purity

	// Undissolved: more hydroxide than dissolves at 20 °C. Never so as planned, which
	// is refused; as weighed it may be.
	Undissolved bool
	// Dry: as weighed, the water is less than half the mass of the alkali, or none. Water that is poured on such
	// alkali boils and spits, so what is missing is weighed into a second vessel, and the alkali goes into it. No
	// publication gives that bound. It is our choice, on the safe side of the monohydrate of sodium hydroxide, which
	// is solid and has 18.015/39.997 = 0.45 of water to one of alkali (atomic weights).
	Dry bool

	// Volume is that at the formula's lye temperature. VolumeKnown is false where that is
	// not given, above 50 % of hydroxide, and with liquids other than water.
	Volume      units.Volume
	VolumeKnown bool
	// Crystallises is where the lye begins to freeze or crystallise; not given where
	// it is not known, as of two alkalis: see [lye.Solution.Crystallises].
	Crystallises units.Temperature
	// Heat is how hot the lye gets if no heat is lost: a bound. The zero value where
	// no water temperature is given, or the heat is not known.
	Heat lye.Heat
	// Mixing is what Heat is the bound of, with which it may be derived; the zero value where Heat is that.
	Mixing lye.Mixing
}

// Outlook is how sure a superfat is, each figure a share of the oils' saponification
// demand: below zero alkali is left over. Planned holds at typical values. Low and
// High are the worst cases: every oil and purity at the unlucky end of its
// range, every weighing off by one division of its scale (half for what was really
// weighed). LikelyLow and LikelyHigh take the same inputs as independent rectangular
// distributions, to first order, with a coverage factor of 2, cut off at the worst case.
type Outlook struct {
	Low, LikelyLow, Planned, LikelyHigh, High units.Ratio

	// AsPrinted is the superfat at typical values where every line is weighed as it is
	// printed, dry alkali and stock lye too: as Planned, but for what the scales round away.
	// Not given of what was really weighed, and where a scale shows nothing of the oils.
	AsPrinted units.Ratio

	// Complete is false where an oil, or a liquid's fat, has no range and was taken as
	// exact: the worst case may then be worse.
	Complete bool
	// FreeAlkaliWorst is, where Low is below zero, the alkali left over then,
	// as NaOH, of the dry mass. Not given otherwise.
	FreeAlkaliWorst units.Ratio
}

// PartBatch is a part of the batch, as planned.
type PartBatch struct {
	Name   string
	Note   string      // the maker's remark on the part; empty: none
	Share  units.Ratio // of the batter
	Batter units.Mass  // its share of what is in the pot: the base of "of batter"
	Oils   units.Mass  // its share of all the formula's oils: the base of "of oils"
	Water  units.Mass  // its share of the lye water, and its own water carriers
	Poured units.Mass  // its batter, additions and carriers
	Dry    units.Mass  // its share of the dry pot, its additions, and carriers of glycerin or oil: the base of fragrance

	Filled, Reserve, Loss units.Mass // of what is poured, as in Batch

	// With vessels: of what is poured, at the temperature it is poured at. Zero and not
	// given without.
	Volume  units.Volume
	Density units.Density

	Superfat  Outlook            // its own: carriers of oil, and oil held back, move it
	Additions []AdditionWeighing // colourants, fragrances, additives, each in file order
}

// AdditionWeighing is an addition as it is weighed, and its carrier.
type AdditionWeighing struct {
	Name     string // the id of what is known, else as the formula has it
	Asked    string // as the formula has it, where that is not Name; else empty
	Kind     AdditionKind
	Weighing                  // by itself
	Carrier  *CarrierWeighing // nil: none

	// Paste is the addition and its carrier where they are weighed as one, and not by
	// themselves; zero where they are weighed apart.
	Paste Weighing

	// Material is what is known of a fragrance, Colourant of a colourant, or of an additive
	// that is one; not given of anything else, and of what is only a name.
	Material  fragrance.Material
	Colourant colour.Colourant
	Note      string      // the maker's remark on the line; empty: none
	ratio     units.Ratio // of the carrier to one
}

// CarrierWeighing is the carrier of an addition.
type CarrierWeighing struct {
	In   Liquid // what it is
	Oil  Oil    // of InOil
	Name string // as a formula file writes it: "water", "glycerin", an oil's id
	Weighing
	From From // FromFormula or Extra
}
