package lye

import (
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
	"example.com/lyewright/units/fault"
)

// Titration is a sample of alkali, or of a lye, titrated with an acid of known
// normality to one end point or two: to phenolphthalein, where the hydroxide and
// half of the carbonate are used up, and on to methyl orange, where the rest of
// the carbonate is (the two-end-point method of Warder).
//
// Both volumes are counted from the start of the titration. Balance, Burette and
// Titrant are half-widths: a reading is that much off at most. Left out, they are 0, and
// what was read is taken as exact, which no reading is: see [Titration.TakenAsExact]. The source of the method is
// [TitrationSource]. The zero value lacks everything.
type Titration struct {
	Alkali    Alkali       // that the sample is of
	Sample    units.Mass   // of alkali as weighed, or of lye: over 0 g
	Normality units.Ratio  // of the acid, mol of protons per litre, over 0 to 20
	First     units.Volume // to phenolphthalein; 0 mL where it was not read
	Total     units.Volume // to methyl orange; 0 mL where it was not read

	Balance units.Mass   // half-width of the sample's mass, below that
	Burette units.Volume // half-width of each reading: at the start, at each end point
	Titrant units.Ratio  // half-width of the normality, as a share of it: 0 % to 50 %

	// CarbonateMax is the most carbonate that the bottle may hold, a mass fraction of
	// what is weighed. With one end point it gives the hydroxide a low end, as in a
	// Certificate. It does not go with two end points, which measure it.
	CarbonateMax units.Ratio
}

// Titrated is what a titration found, as mass fractions of the sample. Low and
// High are outer bounds: every reading at its unlucky end. High is cut at 100 %. It
// comes from [Titration.Result].
type Titrated struct {
	Hydroxide units.Ratio // not given with one end point
	Carbonate units.Ratio // not given with one end point
	Low       units.Ratio // of the hydroxide; not given with one end point and no CarbonateMax
	High      units.Ratio // of the hydroxide
}

// Range gives the hydroxide as a range for a formula: the purity of an alkali or
// the strength of a stock lye. With two end points it is planned at what was
// found, at most 100 %. With one it is planned at the high end, since too little alkali
// is the safe mistake; without a low end there is no range, and ok is false.
func (t Titrated) Range() (r units.Range, ok bool) {
	if !t.Low.Given() {
		return units.Range{}, false
	}
	r = units.Range{Low: t.Low, Typical: t.Hydroxide.Or(t.High), High: t.High}
	if r.Typical.Compare(r.High) > 0 {
		r.Typical = r.High // above 100 %: more than there can be
	}
	return r, true
}

// TakenAsExact names the accuracies that were left out, of "balance", "burette" and
// "titrant": what they would bound is taken as exact, and the bounds of the result are too
// narrow by it. It is empty where all three are given.
func (t Titration) TakenAsExact() []string {
	var names []string
	if t.Balance.Sign() == 0 {
		names = append(names, "balance")
	}
	if t.Burette.Sign() == 0 {
		names = append(names, "burette")
	}
	if t.Titrant.Sign() == 0 {
		names = append(names, "titrant")
	}
	return names
}

// TitrationSource is the source of the method: the factors 40.00 and 106.0 mg per
// mL of 1 N acid (KOH 56.11 and 138.2) are those of the monographs.
func TitrationSource() cite.Source {
	return cite.Source{
		Title: "United States Pharmacopeia and National Formulary, and JECFA, monographs Sodium Hydroxide and Potassium " +
			"Hydroxide", Edition: "USP 35, NF 30; JECFA 2002",
		Place: "assay, titration to two end points", How: cite.Read,
	}
}

// Result works the titration out, each share rounded to 10^-12. With two end points the
// hydroxide is (2 × First − Total) × Normality × M(hydroxide) over the sample, and the
// carbonate (Total − First) × Normality × M(carbonate): mL times mol/L times g/mol are mg.
// With one, all that the acid takes up counts as hydroxide, and is its high end.
//
// Refused are a missing alkali, sample, normality or end point; end points out of order;
// 2 × First not above Total, for then no hydroxide is left; readings too coarse to find
// any; a low end above 100 %; and CarbonateMax beside two end points
// ([fault.ErrConflict]), or leaving no hydroxide. The error is [fault.Faults].
func (t Titration) Result() (Titrated, error) {
	if faults := t.check(); len(faults) > 0 {
		return Titrated{}, faults
	}
	// Hydroxide as acid takes it up: twice the first end point less the total, one
	// end point alone counting carbonate too. The start is read once for both.
	acid, readings := t.First.Add(t.First).Sub(t.Total), int64(4)
	two := t.First.Sign() > 0 && t.Total.Sign() > 0
	if !two {
		acid, readings = t.First.Add(t.Total), 2
	}
	off := units.Volume{}
	for range readings {
		off = off.Add(t.Burette)
	}
	none, one := units.Whole(0), units.Whole(1)
	width := t.Titrant.Or(none)
	found := Titrated{
		Low:  t.share(acid.Sub(off), t.Alkali.milligrams(), one.Sub(width), t.Sample.Add(t.Balance)),
		High: t.share(acid.Add(off), t.Alkali.milligrams(), one.Add(width), t.Sample.Sub(t.Balance)),
	}
	if two {
		found.Hydroxide = t.share(acid, t.Alkali.milligrams(), one, t.Sample)
		found.Carbonate = t.share(t.Total.Sub(t.First), t.Alkali.carbonate(), one, t.Sample)
	} else if t.CarbonateMax.Given() {
		counted := t.CarbonateMax.Times(t.Alkali.carbonateFactor())
		if t.First.Sign() > 0 { // phenolphthalein sees half of the carbonate
			counted = counted.Times(units.Percent(50))
		}
		found.Low = found.Low.Sub(counted)
	}
	var faults fault.Faults
	switch {
	case found.Low.Sign() <= 0 && t.CarbonateMax.Given():
		faults.Add("carbonate_max", percentText(t.CarbonateMax), "leaves no hydroxide of what was titrated",
			"give the most carbonate that the bottle may hold", fault.ErrRange)
	case found.Low.Sign() <= 0:
		faults.Add("sample", t.Sample.String(), "is too small for readings so coarse: at their unlucky ends no hydroxide "+
			"is left", "take a larger sample, or read more finely", fault.ErrRange)
	case found.Low.Compare(one) > 0:
		faults.Add("sample", t.Sample.String(), "would hold "+percentText(found.Low.Round(4, units.Nearest))+
			" of hydroxide at the least, which is more than there can be",
			"check the sample's mass, the normality and the volumes", fault.ErrRange)
	}
	if len(faults) > 0 {
		return Titrated{}, faults
	}
	if found.High.Compare(one) > 0 {
		found.High = one
	}
	if !two && !t.CarbonateMax.Given() {
		found.Low = units.Ratio{}
	}
	return found, nil
}

// share gives the mass fraction of a substance of so many mg/mol of which a mole
// takes up a mole of acid: volume × normality × molar mass / sample.
func (t Titration) share(acid units.Volume, molarMass int64, times units.Ratio, sample units.Mass) units.Ratio {
	litres, _ := acid.Per(units.Millilitres(1000))
	grams, _ := sample.Per(units.Grams(1))
	return litres.Times(t.Normality).Times(times).Times(units.MilligramsPerGram(molarMass)).Over(grams).Round(12,
		units.Nearest)
}

func (t Titration) check() fault.Faults {
	var faults fault.Faults
	if !t.Alkali.known() {
		faults.Add("alkali", "", "is missing", "say which hydroxide it is", fault.ErrMissing)
	}
	switch {
	case t.Sample.Sign() == 0:
		faults.Add("sample", "", "is missing", `give the mass of the sample, such as "1.5 g"`, fault.ErrMissing)
	case t.Sample.Sign() < 0:
		faults.Add("sample", t.Sample.String(), "is not above 0 g", "give the mass of the sample", fault.ErrRange)
	case t.Balance.Sign() < 0 || t.Balance.Compare(t.Sample) >= 0:
		faults.Add("balance", t.Balance.String(), "is not between 0 g and the sample's mass",
			`give half the width of what a reading may be, such as "0.01 g"`, fault.ErrRange)
	}
	switch {
	case !t.Normality.Given():
		faults.Add("normality", "", "is missing", `give the acid's mol of protons per litre, such as "0.1"`, fault.ErrMissing)
	case t.Normality.Sign() <= 0 || t.Normality.Compare(units.Whole(20)) > 0:
		faults.Add("normality", t.Normality.Text(12), "is not above 0 and up to 20 mol/L",
			"give the acid's mol of protons per litre", fault.ErrRange)
	}
	if t.Titrant.Sign() < 0 || t.Titrant.Compare(units.Percent(50)) > 0 {
		faults.Add("titrant", percentText(t.Titrant), "is not between 0 % and 50 %",
			"give half the width of what the normality may be", fault.ErrRange)
	}
	if t.Burette.Sign() < 0 {
		faults.Add("burette", t.Burette.String(), "is negative", "give half the width of what a reading may be",
			fault.ErrRange)
	}
	first, total := t.First.Sign(), t.Total.Sign()
	switch {
	case first < 0:
		faults.Add("first", t.First.String(), "is not above 0 mL", "count from the start of the titration", fault.ErrRange)
	case total < 0:
		faults.Add("total", t.Total.String(), "is not above 0 mL", "count from the start of the titration", fault.ErrRange)
	case first == 0 && total == 0:
		faults.Add("total", "", "is missing", "give the volumes to both end points, or to one", fault.ErrMissing)
	case first == 0 || total == 0:
	case t.Total.Compare(t.First) < 0:
		faults.Add("total", t.Total.String(), "is below the volume to the first end point",
			"count both from the start of the titration", fault.ErrRange)
	case t.First.Add(t.First).Compare(t.Total) <= 0:
		faults.Add("first", t.First.String(), "is not above half of the total: no hydroxide is left in the sample",
			"do not use it, or titrate again", fault.ErrRange)
	}
	if carbonate := t.CarbonateMax; carbonate.Given() {
		if carbonate.Sign() < 0 || carbonate.Compare(units.Whole(1)) > 0 {
			faults.Add("carbonate_max", percentText(carbonate), "is not between 0 % and 100 %",
				"give the most carbonate that the bottle may hold", fault.ErrRange)
		} else if first > 0 && total > 0 {
			faults.Add("carbonate_max", percentText(carbonate), "does not go with two end points, which measure the carbonate",
				"leave it out", fault.ErrConflict)
		}
	}
	return faults
}
