package soap

import (
	"slices"

	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// Kind says what an oil is to an alkali. The zero value is VegetableOil.
type Kind uint8

// What an oil may be to an alkali.
const (
	VegetableOil Kind = iota // glycerides
	AnimalFat                // glycerides
	Wax                      // esters that react slowly, if at all, in a cold process
	Acid                     // free fatty acid: reacts at once, and forms water
)

// String gives "vegetable oil", "animal fat", "wax" or "fatty acid".
func (k Kind) String() string {
	switch k {
	case AnimalFat:
		return "animal fat"
	case Wax:
		return "wax"
	case Acid:
		return "fatty acid"
	default:
		return "vegetable oil"
	}
}

// Choice says which saponification value an oil is planned at. The zero value is NoValue.
type Choice uint8

// The values that an oil may be planned at.
const (
	NoValue     Choice = iota // nothing: neither a value nor enough of the acids is published
	AtMiddle                  // the middle of the published range
	AtProfile                 // the value of the oil's own fatty acids, below that middle
	AtLowEnd                  // the low end of the range: the acids' value lies below it
	FromProfile               // computed from the fatty acids alone: no value is published
	AsGiven                   // brought by the caller
)

// String gives a word for tables and JSON: "none", "middle", "profile",
// "low end", "computed", "own".
func (c Choice) String() string {
	switch c {
	case AtProfile:
		return "profile"
	case AtLowEnd:
		return "low end"
	case FromProfile:
		return "computed"
	case AsGiven:
		return "own"
	case AtMiddle:
		return "middle"
	default:
		return "none"
	}
}

// Oil is an oil, fat, wax or fatty acid: one of the built-in table, or the
// caller's own. It is immutable and safe for concurrent use. The zero value is no oil:
// its methods give nothing, and [Formula.Check] refuses it. Get one from [LookUpOil],
// [Oils] or [OwnOil.Oil].
type Oil struct {
	_   [0]func()
	row *oilRow
}

// oilRow is what an Oil holds. It is written once, before the Oil is returned.
type oilRow struct {
	id, name, latin, inci string
	kind                  Kind

	saponification units.Range // as planned: Low and High equal where there is no range
	ranged         bool        // the range is one, not a single figure
	middle         units.Ratio // of the published figures
	profileValue   units.Ratio // computed from the fatty acids, the lowest of several
	profileHow     cite.How    // how the composition behind profileValue was obtained
	choice         Choice
	how            cite.How // how the published value was obtained

	sourceKey, sourcePlace   string // of the published value
	profileKey, profilePlace string // of the composition behind profileValue

	freeAcid units.Ratio // middle of the acid value, where both ends are printed

	iodineLow, iodineHigh units.Ratio
	melting               units.Ratio // °C, the upper end; not given where it is liquid, or not known

	builtIn  bool
	like     likeness    // which built-in oils an own one means, or may mean
	replaced bool        // a built-in row whose value the caller replaced
	figures  []Figure    // the caller's own
	own      []AcidShare // the caller's composition
	stanza   string      // the row of the table

	asked    string // the name that it was looked up by, where that is not the id
	nameNote string // what the table of names says of that name

	foldedID, foldedName string // as names are compared
}

// A Figure is one published figure of an oil with its source, or one that the caller
// brought.
type Figure struct {
	Name string // "saponification", "acid-value", "iodine", "density", "melting", "unsaponifiable"

	// Low and High are ratios: times 1000 they are mg KOH/g or g/kg, times 100 g of iodine
	// per 100 g; a density and a melting point stand as they are. One is not given where the source sets only
	// the other end; a single value has both the same.
	Low, High units.Ratio

	Unit   string      // "mg KOH/g", "g iodine/100 g", "g/kg", "°C"; of a density, its basis
	Source cite.Source // where it stands, and how it was obtained
	Remark string      // what else the source says of it; mostly empty
}

// ID is the name a formula file uses: of a built-in oil lower case, hyphenated.
func (o Oil) ID() string { return o.get().id }

// Name is the common English name.
func (o Oil) Name() string { return o.get().name }

// Latin is the botanical or zoological name; empty where there is none.
func (o Oil) Latin() string { return o.get().latin }

// INCI is the name for an ingredient list, from the European Commission's
// inventory of cosmetic ingredients; empty where that has none.
func (o Oil) INCI() string { return o.get().inci }

// Kind says whether it is an oil, a fat, a wax or a free fatty acid.
func (o Oil) Kind() Kind { return o.get().kind }

// BuiltIn reports whether the oil stands in the built-in table, whatever value the caller
// gave it.
func (o Oil) BuiltIn() bool { return o.get().builtIn }

// Saponification is the alkali the oil demands, as a ratio of masses (times
// 1000: mg KOH per g of oil). Typical is the value that is planned at; Low and
// High are equal to it where no range is known (see HasRange). The zero Range
// where no value is known at all.
//
// A built-in oil's Typical is the middle of its published range, but not above
// the value of its own fatty acids (see [Profile.SaponificationValue]; the
// lowest where several compositions are published), and not below the range.
// A wax's range runs from its acid value to its saponification value, since a
// cold process may leave its esters alone. A fatty acid's is its acid value.
func (o Oil) Saponification() units.Range { return o.get().saponification }

// HasRange reports whether Saponification is a range and not a single figure
// taken as exact.
func (o Oil) HasRange() bool { return o.get().ranged }

// Middle is the middle of the published range, as Saponification; not given where none is.
func (o Oil) Middle() units.Ratio { return o.get().middle }

// ProfileValue is the saponification value computed from the fatty acids, the
// lowest where several compositions are published; not given where none names
// 90 % of the acids. A ratio of masses, as Saponification.
func (o Oil) ProfileValue() units.Ratio { return o.get().profileValue }

// Choice says which value Saponification plans with: Middle, ProfileValue, the low end of
// the range, or the caller's own.
func (o Oil) Choice() Choice { return o.get().choice }

// How says how the published saponification value was obtained; [cite.Computed] where
// there is none and the value is that of the fatty acids, [cite.Given] of the caller's
// own. How the fatty acids were, ProfileSource says.
func (o Oil) How() cite.How { return o.get().how }

// ValueSource is where the published saponification value stands, or how there is one:
// of a computed value, the source of the fatty acids.
func (o Oil) ValueSource() cite.Source {
	row := o.get()
	switch row.choice {
	case AsGiven:
		return cite.Source{How: cite.Given}
	case FromProfile:
		return sourceOf(row.profileKey, row.profilePlace, cite.Computed)
	}
	return sourceOf(row.sourceKey, row.sourcePlace, row.how)
}

// ProfileSource is where the fatty acids stand that ProfileValue is computed
// from.
func (o Oil) ProfileSource() cite.Source {
	row := o.get()
	return sourceOf(row.profileKey, row.profilePlace, row.profileHow)
}

// FreeAcid is the part of the alkali demand that free fatty acids make, as
// Saponification: the middle of the acid value where both its ends are
// published, never above the value planned at. Not given otherwise.
func (o Oil) FreeAcid() units.Ratio {
	row := o.get()
	if row.freeAcid.Compare(row.saponification.Plan()) > 0 {
		return row.saponification.Plan()
	}
	return row.freeAcid
}

// Iodine is the iodine value as a ratio (times 100: g of iodine per 100 g of
// oil). An end is not given where none is known.
func (o Oil) Iodine() (low, high units.Ratio) { return o.get().iodineLow, o.get().iodineHigh }

// Figures lists what is published of the oil, each figure with its source.
// Where the caller brought a figure it stands instead.
func (o Oil) Figures() []Figure {
	row := o.get()
	figures := append([]Figure(nil), row.figures...)
	for _, f := range readFigures(row.stanza) {
		if !slices.ContainsFunc(row.figures, func(own Figure) bool { return own.Name == f.Name }) {
			figures = append(figures, f)
		}
	}
	return figures
}

// Profiles lists the published fatty-acid compositions of the oil, or the one
// that the caller gave in place of them.
func (o Oil) Profiles() []Profile {
	row := o.get()
	if row.own != nil {
		return []Profile{{Acids: append([]AcidShare(nil), row.own...), Source: cite.Source{How: cite.Given}}}
	}
	return profiles(row.stanza)
}

// Profile is the composition to reckon with: the caller's own, else the first
// that was read and names 90 % of the acids, else the first that names as
// much, else none.
func (o Oil) Profile() Profile {
	var second Profile
	for _, p := range o.Profiles() {
		if p.Coverage().Compare(leastCoverage()) < 0 {
			continue
		}
		if p.Source.How != cite.Memory {
			return p
		}
		if second.Acids == nil {
			second = p
		}
	}
	return second
}

// Notes lists remarks on the figures: other published values that conflict,
// what no source gives, and why.
func (o Oil) Notes() []string { return readNotes(o.get().stanza) }

// planned reports whether the oil is there and has a value to plan at.
func (o Oil) planned() bool { return o.row != nil && o.row.saponification.Plan().Given() }

func (o Oil) get() *oilRow {
	if o.row == nil {
		return new(oilRow)
	}
	return o.row
}
