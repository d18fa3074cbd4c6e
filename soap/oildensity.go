package soap

import (
	"strconv"
	"strings"

	"example.com/lyewright/internal/refdata"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// OilDensity is the density of an oil at a temperature. Low and High are what the
// published range leaves open.
type OilDensity struct {
	Low, Planned, High units.Density
	Source             cite.Source // of the figure, or of the relation it is computed by

	// How Planned comes about: Figure, in g/mL or relative to water at the temperature
	// Water, moved from the temperature From. Neither is given where the figure is not
	// relative, and where it is not moved.
	Figure      units.Ratio
	Water, From units.Temperature

	// Computed, for want of a published figure, from these values.
	Computed               bool
	Saponification, Iodine units.Ratio // as [Oil.Saponification] and [Oil.Iodine]
}

// Density gives the density of the oil, melted into others where it is solid by
// itself, at a temperature of 15 °C to 60 °C; known is false outside, and where there
// is nothing to go by.
//
// A relative density is multiplied by the density of water at its second
// temperature. Where that or the oil's own is not printed the figure counts as it
// stands. Where either was recalled or is missing, or is far from any pouring
// temperature, the range is widened by 0.5 % of the figure either way. From the
// temperature of the figure it is moved by -0.00064 g/mL per °C, unless the oil was
// solid then or the temperature is not known: see [DensitySource]. A density of the
// caller's own counts as it stands.
//
// An oil or fat without any figure has 0.8475 + 0.00030·SV + 0.00014·IV (relative,
// 15 °C over water at 15 °C), with the middle and the ends of its published
// saponification and iodine values. Not so waxes, free acids, and oils whose
// composition names a tenth or more of hydroxy acids: they are denser.
func (o Oil) Density(at units.Temperature) (d OilDensity, known bool) {
	if !at.Given() || at.Compare(units.Celsius(15)) < 0 || at.Compare(units.Celsius(60)) > 0 {
		return OilDensity{}, false
	}
	low, planned, high, known := o.densities(at.Celsius())
	if !known {
		return OilDensity{}, false
	}
	d.Low, _ = units.DensityOfFloat(low)
	d.Planned, _ = units.DensityOfFloat(planned)
	d.High, _ = units.DensityOfFloat(high)
	switch line := densityLine(o.row.stanza); {
	case o.row.ownDensity().Given():
		d.Figure, d.Source = o.row.ownDensity(), cite.Source{How: cite.Given}
	case line != "":
		d.Source = sourceOf(refdata.Field(line, 4), refdata.Field(line, 5), cite.ParseHow(refdata.Field(line, 3)))
		f := readDensity(line)
		d.Figure, _ = units.RatioOfFloat((f.low + f.high) / 2)
		if f.relative {
			d.Water, _ = units.CelsiusOfFloat(f.water)
		}
		if f.moves {
			d.From, _ = units.CelsiusOfFloat(f.at)
		}
	default:
		d.Source, d.Computed = DensitySource(), true
		d.Water, d.From = units.Celsius(lundAt), units.Celsius(lundAt)
		value, iodine := o.row.lundValues()
		d.Saponification, d.Iodine = value.Typical, iodine.Middle()
		d.Figure, _ = units.RatioOfFloat(lund(d.Saponification, d.Iodine))
	}
	return d, true
}

// DensitySource is the source of the slope of an oil's density with its temperature,
// and of the relation with saponification and iodine value.
func DensitySource() cite.Source {
	return cite.Source{
		Title: "J. Am. Oil Chem. Soc. 76, 1415-1419", Edition: "1999",
		Place: "the relation of Lund, and the slope of Noureddini and others (1992), as that paper quotes them", How: cite.Read,
	}
}

// How the density of an oil changes with its temperature, in g/mL per °C; how far
// off a figure may be whose basis is in doubt; and the factors of Lund's relation.
const (
	densitySlope     = -0.00064
	densityDoubt     = 0.005
	lundAt           = 15 // °C, of the oil and of the water
	lundBase         = 0.8475
	lundPerSapon     = 0.00030 // per mg KOH/g
	lundPerIodine    = 0.00014 // per g of iodine per 100 g
	mostHydroxyAcids = 10      // percent
)

// densities gives the density in g/mL at a temperature in °C.
func (o Oil) densities(celsius float64) (low, planned, high float64, known bool) {
	row := o.get()
	if own := row.ownDensity(); own.Given() {
		d := own.Float()
		return d, d, d, true
	}
	if line := densityLine(row.stanza); line != "" {
		f := readDensity(line)
		low, planned, high = f.low, (f.low+f.high)/2, f.high
		if f.doubt {
			low, high = low-float64(densityDoubt*planned), high+float64(densityDoubt*planned)
		}
		factor, moved := 1.0, 0.0
		if f.relative {
			factor = waterAt(f.water)
		}
		if f.moves {
			moved = densitySlope * (celsius - f.at)
		}
		return float64(low*factor) + moved, float64(planned*factor) + moved, float64(high*factor) + moved, true
	}
	if row.kind == Wax || row.kind == Acid || !row.iodineHigh.Given() || !row.saponification.Given() || row.hydroxy() {
		return 0, 0, 0, false
	}
	water := waterAt(lundAt)
	at := func(value, iodine units.Ratio) float64 {
		return float64(lund(value, iodine)*water) + float64(densitySlope*(celsius-lundAt))
	}
	value, iodine := row.lundValues()
	return at(value.Low, iodine.Low), at(value.Typical, iodine.Middle()), at(value.High, iodine.High), true
}

// lund gives the relative density at 15 °C.
func lund(value, iodine units.Ratio) float64 {
	return lundBase + float64(lundPerSapon*1000*value.Float()) + float64(lundPerIodine*100*iodine.Float())
}

// lundValues gives the saponification and iodine values that the relation takes: as
// published, whatever alkali is planned at.
func (row *oilRow) lundValues() (value, iodine units.Range) {
	iodine = units.Between(row.iodineLow.Or(units.Whole(0)), row.iodineHigh) // an upper limit alone
	value = row.saponification
	value.Typical = value.Plan()
	if row.middle.Given() && !row.replaced {
		value.Typical = row.middle
		if !row.ranged {
			value = units.Exactly(row.middle)
		}
	}
	return value, iodine
}

// waterAt gives the density of water in g/mL at a temperature in °C.
func waterAt(celsius float64) float64 {
	t, _ := units.CelsiusOfFloat(celsius)
	d, _ := lye.DensityOfWater(t)
	return d.Float()
}

// densityLine finds the line of a stanza that holds the density; empty where there
// is none.
func densityLine(stanza string) string {
	const key = "\ndensity\t"
	i := strings.Index(stanza, key)
	if i < 0 {
		return ""
	}
	line, _, _ := strings.Cut(stanza[i+1:], "\n")
	return line
}

// printedDensity is what a line of the table says of a density.
type printedDensity struct {
	low, high float64
	at, water float64 // °C
	moves     bool    // at is printed, and the oil was liquid then
	relative  bool    // to water at that temperature
	doubt     bool
}

// readDensity reads a line of the table, whose tests read every one.
func readDensity(line string) (f printedDensity) {
	for n := 0; line != ""; n++ {
		field, rest, _ := strings.Cut(line, "\t")
		line = rest
		if field == "" {
			continue
		}
		switch n {
		case 1:
			f.low, _ = strconv.ParseFloat(field, 64)
		case 2:
			f.high, _ = strconv.ParseFloat(field, 64)
		case 7:
			f.at, _ = strconv.ParseFloat(field, 64)
			f.moves = true
		case 8:
			f.water, _ = strconv.ParseFloat(field, 64)
			f.relative = true
		case 9:
			f.moves = false // solid
		case 10:
			f.doubt = true
		}
	}
	return f
}

// ownDensity is the density that the caller brought.
func (row *oilRow) ownDensity() units.Ratio {
	for i := range row.figures {
		if row.figures[i].Name == "density" {
			return row.figures[i].Low
		}
	}
	return units.Ratio{}
}

// hydroxy reports whether a tenth or more of the composition that the caller brought
// may be hydroxy acids. Every built-in oil of such acids has a published density.
func (row *oilRow) hydroxy() bool {
	all := units.Whole(0)
	for _, share := range row.own {
		if strings.HasSuffix(share.Acid, "-OH") {
			all = all.Add(share.High)
		}
	}
	return all.Compare(units.Percent(mostHydroxyAcids)) >= 0
}
