package soap

import (
	_ "embed"
	"strings"
	"sync"

	"example.com/lyewright/colour"
	"example.com/lyewright/colour/tint"
	"example.com/lyewright/fragrance"
	"example.com/lyewright/internal/names"
	"example.com/lyewright/internal/refdata"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

//go:embed data/oils.txt
var oilTable string

//go:embed data/sources.txt
var sourceTable string

// DataEdition is the date of the built-in tables, as year-month-day: the newest of those that a batch rests
// on: oils, fragrances, colourants, the observer. A number that the library gives may
// change only with it.
func DataEdition() string {
	return max(refdata.Edition(oilTable), fragrance.DataEdition(), colour.DataEdition(), tint.DataEdition())
}

// Oils lists the built-in oils in order of id. Some have no value to plan at: see
// [Oil.Choice].
func Oils() []Oil {
	var oils []Oil
	for _, id := range oilIDs() {
		oil, _ := builtIn(id)
		oils = append(oils, oil)
	}
	return oils
}

// LookUpOil finds a built-in oil by its id, such as "olive", or by a name in everyday use
// that means it alone, such as "Olivenöl" or "olive oil": case, accents, hyphens and
// apostrophes do not count, and [Oil.Asked] tells the name. Of several oils whose planned values lie within
// 3 % the first is taken, and [Oil.NameNote] says so. The error is a [Fault] (path "oil", kind [ErrUnknown]): the
// name has several meanings, which it lists, or one that is not held, or is not known,
// and then it offers the nearest ids that are harmless to confuse.
func LookUpOil(name string) (Oil, error) {
	oil, found := builtIn(name) // an id as it stands, which should cost nothing
	if found {
		return oil, nil
	}
	oil, unknown := namedOil(name)
	if unknown != nil {
		return Oil{}, *unknown
	}
	return oil, nil
}

// oilRows holds the built-in oils, each read when it is first asked for, and once: a
// row does not change, and is copied before a maker's own figures go into it.
var oilRows = sync.OnceValue(func() map[string]func() Oil {
	rows := map[string]func() Oil{}
	index := oilIndex()
	for _, id := range index.IDs() {
		stanza, _ := index.Find(id)
		rows[id] = sync.OnceValue(func() Oil { return readOil(stanza) })
	}
	return rows
})

var (
	oilIndex    = sync.OnceValue(func() refdata.Index { return refdata.IndexStanzas(oilTable, "oil") })
	sourceIndex = sync.OnceValue(func() refdata.Index { return refdata.IndexLines(sourceTable) })
)

func builtIn(id string) (oil Oil, found bool) {
	row, found := oilRows()[id]
	if !found {
		return Oil{}, false
	}
	return row(), true
}

func oilIDs() []string { return oilIndex().IDs() }

// readOil reads a stanza of the table. The table is part of the program and
// its tests read every row, so a fault in it is a fault of the program.
func readOil(stanza string) Oil {
	row := &oilRow{builtIn: true, stanza: stanza}
	var sv, acid tableRange
	for line := range refdata.Lines(stanza) {
		key, value, _ := strings.Cut(line, "\t")
		switch key {
		case "oil":
			row.id = value
		case "name":
			row.name = value
		case "latin":
			row.latin = value
		case "kind":
			row.kind = kindOf(value)
		case "inci":
			row.inci = refdata.Field(value, 0)
		case "saponification":
			sv = readRange(value, " mg/g")
		case "acid-value":
			acid = readRange(value, " mg/g")
		case "iodine":
			iodine := readRange(value, "%")
			row.iodineLow, row.iodineHigh = iodine.low, iodine.high
		case "melting":
			row.melting = readRange(value, "").high
		case "profile-value":
			row.profileValue = units.MustRatio(refdata.Field(value, 0) + " mg/g")
			row.profileHow = cite.ParseHow(refdata.Field(value, 1))
			row.profileKey, row.profilePlace = refdata.Field(value, 2), refdata.Field(value, 3)
		}
	}
	if acid.low.Given() && acid.high.Given() {
		row.freeAcid = units.Between(acid.low, acid.high).Middle()
	}
	row.plan(sv, acid)
	row.nameNote = names.Note(names.Oil, row.id)
	row.foldedID, row.foldedName = names.Fold(row.id), names.Fold(row.name)
	return Oil{row: row}
}

// plan chooses the value to plan at, as the comment of Oil.Saponification says.
func (row *oilRow) plan(sv, acid tableRange) {
	printed := sv
	switch {
	case row.kind == Acid && acid.high.Given():
		printed = acid
	case row.kind == Wax && sv.high.Given():
		printed.low = acid.low.Or(units.Whole(0))
	}
	row.how, row.sourceKey, row.sourcePlace = printed.how, printed.key, printed.place
	if !printed.high.Given() {
		if row.profileValue.Given() {
			row.saponification = units.Exactly(row.profileValue)
			row.choice, row.how = FromProfile, cite.Computed
		}
		return
	}
	row.saponification = units.Between(printed.low, printed.high)
	row.middle = row.saponification.Middle()
	row.saponification.Typical = row.middle
	row.choice = AtMiddle
	row.ranged = row.kind == Wax || !row.saponification.Single()
	if row.kind != Wax && row.profileValue.Given() && row.profileValue.Compare(row.middle) < 0 {
		row.choice = AtProfile
		row.saponification.Typical = row.profileValue
		if row.ranged && row.profileValue.Compare(printed.low) < 0 {
			row.choice = AtLowEnd
			row.saponification.Typical = printed.low
		}
	}
	if !row.ranged {
		row.saponification = units.Exactly(row.saponification.Typical)
	}
}

// tableRange is two ends as the table gives them; either may be missing.
type tableRange struct {
	low, high  units.Ratio
	how        cite.How
	key, place string // of the source
}

func readRange(value, unit string) tableRange {
	end := func(n int) units.Ratio {
		if text := refdata.Field(value, n); text != "" {
			return units.MustRatio(text + unit)
		}
		return units.Ratio{}
	}
	return tableRange{
		low: end(0), high: end(1), how: cite.ParseHow(refdata.Field(value, 2)),
		key: refdata.Field(value, 3), place: refdata.Field(value, 4),
	}
}

func kindOf(word string) Kind {
	for k := VegetableOil; k < Acid; k++ {
		if k.String() == word {
			return k
		}
	}
	return Acid
}

// figureUnits are the figures of the table in their order there, with the unit
// in which they are published and the one in which they are read.
var figureUnits = [...]struct{ name, unit, suffix string }{
	{"saponification", "mg KOH/g", " mg/g"},
	{"acid-value", "mg KOH/g", " mg/g"},
	{"iodine", "g iodine/100 g", "%"},
	{"density", "", ""},
	{"melting", "°C", ""},
	{"unsaponifiable", "g/kg", " mg/g"},
}

func readFigures(stanza string) []Figure {
	var figures []Figure
	for line := range refdata.Lines(stanza) {
		key, value, _ := strings.Cut(line, "\t")
		for _, known := range figureUnits {
			if key != known.name {
				continue
			}
			ends := readRange(value, known.suffix)
			f := Figure{
				Name: key, Low: ends.low, High: ends.high, Unit: known.unit,
				Source: sourceOf(refdata.Field(value, 3), refdata.Field(value, 4), ends.how),
				Remark: refdata.Field(value, 5),
			}
			if f.Unit == "" {
				f.Unit, f.Remark = f.Remark, ""
			}
			figures = append(figures, f)
		}
	}
	return figures
}

func readNotes(stanza string) []string {
	var notes []string
	for line := range refdata.Lines(stanza) {
		switch key, value, _ := strings.Cut(line, "\t"); key {
		case "missing":
			notes = append(notes, "No "+refdata.Field(value, 0)+": "+refdata.Field(value, 1)+".")
		case "note":
			notes = append(notes, value)
		}
	}
	return notes
}

func sourceOf(key, place string, how cite.How) cite.Source {
	line, _ := sourceIndex().Find(key)
	return cite.Source{
		Title:   refdata.Field(line, 1),
		Edition: refdata.Field(line, 2),
		Place:   place,
		How:     how,
	}
}
