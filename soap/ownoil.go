package soap

import (
	"slices"

	"example.com/lyewright/internal/names"
	"example.com/lyewright/internal/nearest"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// OwnOil is an oil of the caller's own: a lot with its certificate or its
// titration, or a composition. Turn it into an [Oil] with its Oil method. The zero value
// is refused: an ID and a value or a composition must be given.
type OwnOil struct {
	ID   string // the name the formula calls it by; not that of a built-in oil
	Name string // the ID where empty
	INCI string // the name for an ingredient list; may be empty

	// Saponification is the alkali it demands: a ratio of 0.005 to 0.45, that
	// is 5 to 450 mg KOH per g. A range of no width is taken as exact, and no
	// worst case is known of it.
	Saponification units.Range

	// Profile, in place of Saponification, is its composition: the fatty acids
	// and their shares, 90 % of the acids or more. The value is then computed
	// as glycerides (on a built-in fatty acid as free acid), less the
	// unsaponifiable matter, and has no range. A wax has none.
	Profile []AcidShare

	Unsaponifiables units.Ratio // of the oil, with Profile: 0 % to 100 %
	Iodine          units.Ratio // times 100: g of iodine per 100 g, 0 to 300
	Density         units.Ratio // g/mL, 0.7 to 1.2, taken as it stands at any temperature
}

// Oil checks the figures and gives the oil. An id of the built-in table is
// refused: see [Oil.WithSaponification]. The error is [Faults], with the keys of
// a formula file's oil line as paths: [ErrMissing], [ErrRange] or [ErrConflict], of a
// fatty acid that is not known [ErrUnknown].
func (o OwnOil) Oil() (Oil, error) {
	if _, found := builtIn(o.ID); found {
		return Oil{}, Faults{{Path: "oil", Text: o.ID, Reason: "is the id of a built-in oil", Remedy: "look it up and give it a saponification value, or choose another id", Kind: ErrConflict}}
	}
	return o.on("", true)
}

// WithSaponification gives the oil with a value of the caller's own in place of
// the built-in one, 5 to 450 mg KOH per g. A range of no width is taken as exact. The oil
// itself stays as it is. The error is [Faults]: [ErrMissing] of the zero Oil or a range
// without its ends, [ErrRange] of a value out of bounds or order.
func (o Oil) WithSaponification(value units.Range) (Oil, error) {
	if o.row == nil {
		return Oil{}, Faults{{Path: "oil", Reason: "is missing", Remedy: "look one up, or bring an own oil", Kind: ErrMissing}}
	}
	if !value.Given() {
		return Oil{}, Faults{{Path: "saponification", Reason: "is missing", Remedy: "give both ends of its range, equal for one figure", Kind: ErrMissing}}
	}
	own := OwnOil{ID: o.ID(), Saponification: value}
	row := *o.row
	faults := own.apply(&row)
	row.replaced = row.builtIn
	if len(faults) > 0 {
		return Oil{}, faults
	}
	return Oil{row: &row}, nil
}

// on gives the own oil, on the row of a built-in one where base names such.
// needed says that a value is brought or there must be one; a built-in oil
// without any figure of the caller's own is just looked up.
func (o OwnOil) on(base string, needed bool) (Oil, error) {
	built, found := builtIn(base)
	if !found && !needed { // what brings a value of its own is an oil of its own
		var unknown *Fault
		if built, unknown = namedOil(base); unknown != nil {
			return Oil{}, Faults{*unknown}
		}
		found = true
	}
	if found {
		if o.plain() && !needed {
			return built, nil
		}
		row := *built.row
		row.replaced = needed
		if faults := o.apply(&row); len(faults) > 0 {
			return Oil{}, faults
		}
		return Oil{row: &row}, nil
	}
	row := &oilRow{id: o.ID, name: o.ID, foldedID: names.Fold(o.ID), foldedName: names.Fold(o.ID)}
	var faults Faults
	if reason, remedy := nameFault(o.ID); o.ID == "" {
		faults = append(faults, Fault{Path: "oil", Reason: "is missing", Remedy: "give it a name", Kind: ErrMissing})
	} else if reason != "" {
		faults = append(faults, Fault{Path: "oil", Text: o.ID, Reason: reason, Remedy: remedy, Kind: ErrRange})
	}
	if !o.Saponification.Given() && o.Profile == nil {
		faults = append(faults, Fault{Path: "saponification", Reason: "is missing", Remedy: "give its value in mg KOH/g, or its profile", Kind: ErrMissing})
	}
	for _, said := range [...]struct{ path, name string }{{"oil", o.ID}, {"name", o.Name}, {"inci", o.INCI}} {
		if reason, remedy := noFatFault(said.name); reason != "" {
			faults = append(faults, Fault{Path: said.path, Text: said.name, Reason: reason, Remedy: remedy, Kind: ErrConflict})
		}
	}
	faults = append(faults, o.apply(row)...)
	if len(faults) > 0 {
		return Oil{}, faults
	}
	row.like = liken(o.ID, o.Name, o.INCI)
	if built, known := builtIn(row.meant()); known { // a wax stays one under any name
		row.kind, row.melting = built.row.kind, built.row.melting
	} else if row.like.ids == nil && (isWaxByName(o.ID) || isWaxByName(o.Name) || isWaxByName(o.INCI)) {
		row.kind = Wax
	}
	return Oil{row: row}, nil
}

// bring puts a figure of the caller's own in place of what it had brought of that name,
// in a list of its own: the row may be a copy, whose list is still another oil's.
func (row *oilRow) bring(f Figure) {
	figures := make([]Figure, 0, len(row.figures)+1)
	for _, old := range row.figures {
		if old.Name != f.Name {
			figures = append(figures, old)
		}
	}
	row.figures = append(figures, f)
}

// plain reports whether nothing but the id is given.
func (o OwnOil) plain() bool {
	return o.Name == "" && o.INCI == "" && !o.Unsaponifiables.Given() && !o.Iodine.Given() && !o.Density.Given()
}

// apply checks the figures and writes them into a row.
func (o OwnOil) apply(row *oilRow) Faults {
	c := ownChecker{}
	given := cite.Source{How: cite.Given}
	if o.Name != "" {
		c.name("name", o.Name)
		row.name, row.foldedName = o.Name, names.Fold(o.Name)
	}
	if o.INCI != "" {
		c.name("inci", o.INCI)
		row.inci = o.INCI
	}
	value := o.Saponification
	if value.Low.Given() || value.High.Given() || value.Typical.Given() {
		c.saponification(value)
		row.saponification = units.Range{Low: value.Low, Typical: value.Plan(), High: value.High}
		row.ranged = !value.Single()
		row.choice, row.how = AsGiven, cite.Given
		row.bring(Figure{Name: "saponification", Low: value.Low, High: value.High, Unit: "mg KOH/g", Source: given})
		if o.Profile != nil {
			c.fault("profile", "", "is given beside a saponification value", "give one of the two", ErrConflict)
		}
	} else if o.Profile != nil {
		unsaponifiables := o.Unsaponifiables
		if unsaponifiables.Compare(units.Whole(1)) > 0 {
			unsaponifiables = units.Ratio{} // said below
		}
		computed := c.profile(row.kind, o.Profile, unsaponifiables)
		row.saponification, row.ranged = units.Exactly(computed), false
		row.profileValue, row.own = computed, slices.Clone(o.Profile)
		row.profileHow, row.profileKey, row.profilePlace = cite.Given, "", ""
		row.choice, row.how = FromProfile, cite.Computed
	}
	if o.Unsaponifiables.Given() {
		c.between("unsaponifiables", o.Unsaponifiables, units.Whole(0), units.Whole(1), o.Unsaponifiables.PercentText(12)+" %", "0 % and 100 %")
		row.bring(Figure{Name: "unsaponifiable", Low: o.Unsaponifiables, High: o.Unsaponifiables, Unit: "g/kg", Source: given})
	}
	if o.Iodine.Given() {
		c.between("iodine", o.Iodine, units.Whole(0), units.Whole(3), o.Iodine.PercentText(12), "0 and 300 g of iodine per 100 g")
		row.iodineLow, row.iodineHigh = o.Iodine, o.Iodine
		row.bring(Figure{Name: "iodine", Low: o.Iodine, High: o.Iodine, Unit: "g iodine/100 g", Source: given})
	}
	if o.Density.Given() {
		c.between("density", o.Density, thousandths(700), thousandths(1200), o.Density.Text(12)+" g/mL", "0.7 and 1.2 g/mL")
		row.bring(Figure{Name: "density", Low: o.Density, High: o.Density, Unit: "g/mL", Source: given})
	}
	return c.faults
}

type ownChecker struct{ faults Faults }

func (c *ownChecker) fault(path, text, reason, remedy string, kind error) {
	c.faults = append(c.faults, Fault{Path: path, Text: text, Reason: reason, Remedy: remedy, Kind: kind})
}

func (c *ownChecker) name(path, name string) {
	if reason, remedy := nameFault(name); reason != "" {
		c.fault(path, name, reason, remedy, ErrRange)
	}
}

func (c *ownChecker) between(path string, value, low, high units.Ratio, text, bounds string) bool {
	if value.Compare(low) < 0 || value.Compare(high) > 0 {
		c.fault(path, text, "is not between "+bounds, "", ErrRange)
		return false
	}
	return true
}

func (c *ownChecker) saponification(value units.Range) {
	if !value.Given() {
		c.fault("saponification", "", "lacks an end of its range", `give both "low" and "high", or one value`, ErrMissing)
		return
	}
	for _, v := range []units.Ratio{value.Low, value.Plan(), value.High} {
		text := v.MilligramsPerGramText(12)
		if v.Compare(units.MilligramsPerGram(1)) < 0 {
			// Some books print grams of alkali per gram of oil instead.
			c.fault("saponification", text, "is too small for mg KOH/g: it looks like grams of alkali per gram of oil",
				"write milligrams of KOH per gram; grams of KOH per gram times 1000, grams of NaOH per gram times 1402.7", ErrRange)
			return
		}
		if !c.between("saponification", v, units.MilligramsPerGram(5), units.MilligramsPerGram(450), text, "5 and 450 mg KOH/g") {
			return
		}
	}
	if !value.Ordered() {
		c.fault("saponification", "", "is out of order", "let low, typical and high rise, or stay equal", ErrRange)
	}
}

// profile checks a composition and computes the saponification value.
func (c *ownChecker) profile(kind Kind, acids []AcidShare, unsaponifiables units.Ratio) units.Ratio {
	before := len(c.faults)
	if kind == Wax {
		c.fault("profile", "", "is given for a wax, whose acids say nothing of its esters", "give its saponification value", ErrConflict)
		return units.Ratio{}
	}
	var known []string
	for _, acid := range FattyAcids() {
		known = append(known, acid.Symbol)
	}
	for i, share := range acids {
		path := "profile." + share.Acid
		if _, found := LookUpFattyAcid(share.Acid); !found {
			remedy := nearest.Remedy(share.Acid, known)
			if remedy == "" {
				remedy = `name it by chain length and double bonds, such as "C18:1"`
			}
			c.fault(path, share.Acid, "is not a fatty acid that is known", remedy, ErrUnknown)
		}
		for j := range i {
			if acids[j].Acid == share.Acid {
				c.fault(path, share.Acid, "stands twice", "put both into one", ErrConflict)
			}
		}
		if !share.Low.Given() || !share.High.Given() {
			c.fault(path, "", "lacks an end of its range", "give Low and High, equal for one figure", ErrMissing)
			continue
		}
		if share.Low.Compare(share.High) > 0 {
			c.fault(path, "", "is out of order", "let Low be no higher than High", ErrRange)
		}
		for _, v := range []units.Ratio{share.Low, share.High} {
			if !c.between(path, v, units.Whole(0), units.Whole(1), v.PercentText(12)+" %", "0 % and 100 %") {
				break
			}
		}
	}
	if len(c.faults) > before {
		return units.Ratio{}
	}
	p := Profile{Acids: acids}
	coverage := p.Coverage()
	switch text := coverage.PercentText(12) + " %"; {
	case coverage.Compare(leastCoverage()) < 0:
		c.fault("profile", text, "of the fatty acids is named, less than 90 %", "name more of them, or give the saponification value", ErrRange)
		return units.Ratio{}
	case coverage.Compare(units.Percent(110)) > 0:
		c.fault("profile", text, "is what the acids add up to", "shares of one oil add up to 100 %, give or take what analysis leaves open", ErrRange)
		return units.Ratio{}
	}
	value := p.unrounded()
	if kind == Acid {
		value = p.AcidValue()
	}
	if unsaponifiables.Given() {
		value = value.Times(unsaponifiables.Rest())
	}
	value = value.Round(9, units.Nearest)
	if value.Compare(units.MilligramsPerGram(5)) < 0 {
		c.fault("unsaponifiables", unsaponifiables.PercentText(12)+" %", "leaves almost nothing to saponify: "+value.MilligramsPerGramText(3)+" mg KOH/g", "at least 5 mg KOH/g is needed", ErrRange)
	}
	return value
}
