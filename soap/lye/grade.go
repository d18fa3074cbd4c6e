package lye

import (
	"strings"

	"example.com/lyewright/internal/nearest"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
	"example.com/lyewright/units/fault"
)

// Grade is a published grade of an alkali: limits that say what may be in the
// bottle, not what is. All shares are of what is weighed, by mass. The zero value is
// none. Get one from [LookUpGrade] or [Grades].
type Grade struct {
	ID           string      // as a formula file calls it: "ph-eur-7"
	Alkali       Alkali      // which it is of: one ID may have limits for both
	AssayMin     units.Ratio // least total alkali, counted as hydroxide
	AssayMax     units.Ratio // most total alkali; 100 % where the text sets no limit
	CarbonateMax units.Ratio // most carbonate
	Source       cite.Source // says so where it was recalled and not read
}

// Grades lists the grades that are known, sorted by ID, sodium hydroxide first: of ACS
// reagent chemicals (2017), JECFA (2002), the European Pharmacopoeia (7.0) and USP-NF
// (USP 35). Each carries its source; that of "acs-2017" sodium hydroxide is recalled.
func Grades() []Grade {
	tenths := units.MilligramsPerGram[int] // of a percent
	monograph := func(title, edition, place string, how cite.How) cite.Source {
		return cite.Source{Title: title, Edition: edition, Place: place, How: how}
	}
	const naoh, koh = "Sodium Hydroxide", "Potassium Hydroxide"
	return []Grade{
		{"acs-2017", SodiumHydroxide, tenths(970), tenths(1000), tenths(10), monograph("ACS Reagent Chemicals", "2017", "monograph "+naoh, cite.Memory)},
		{"acs-2017", PotassiumHydroxide, tenths(850), tenths(1000), tenths(20), monograph("ACS Reagent Chemicals", "2017", "monograph "+koh, cite.Read)},
		{"jecfa-2002", SodiumHydroxide, tenths(950), tenths(1000), tenths(30), monograph("JECFA (FAO/WHO), specifications", "FNP 52 1992, metals revised 2002", naoh+", INS 524", cite.Read)},
		{"jecfa-2002", PotassiumHydroxide, tenths(850), tenths(1000), tenths(35), monograph("JECFA (FAO/WHO), specifications", "FNP 52 1992, metals revised 2002", koh+", INS 525", cite.Read)},
		{"ph-eur-7", SodiumHydroxide, tenths(970), tenths(1005), tenths(20), monograph("European Pharmacopoeia", "carbonate limit read in 7.0, assay limit in a British Pharmacopoeia text of unstated edition", "monograph "+naoh, cite.Read)},
		{"usp-nf-35", SodiumHydroxide, tenths(950), tenths(1005), tenths(30), monograph("United States Pharmacopeia and National Formulary", "USP 35, NF 30", "monograph "+naoh, cite.Read)},
		{"usp-nf-35", PotassiumHydroxide, tenths(850), tenths(1000), tenths(35), monograph("United States Pharmacopeia and National Formulary", "USP 35, NF 30", "monograph "+koh, cite.Read)},
	}
}

// LookUpGrade gives the grade of an alkali by its ID. The error is [fault.Faults] of kind
// [fault.ErrUnknown]: it offers the nearest known IDs, or says that the grade has no limits
// for this alkali.
func LookUpGrade(id string, alkali Alkali) (Grade, error) {
	var ids []string
	other := false
	for _, g := range Grades() {
		if g.Alkali == alkali {
			ids = append(ids, g.ID)
			if g.ID == id {
				return g, nil
			}
		}
		other = other || g.ID == id
	}
	f := fault.Fault{Path: "grade", Text: id, Reason: "is not a grade that is known", Remedy: nearest.Remedy(id, ids), Kind: fault.ErrUnknown}
	switch {
	case !alkali.known():
		f.Remedy = "say which hydroxide it is of"
	case other:
		f.Reason, f.Remedy = "has no limits for "+alkali.String()+" that are known here", ""
		fallthrough
	case f.Remedy == "":
		f.Remedy = "the grades are " + strings.Join(ids, ", ")
	}
	return Grade{}, fault.Faults{f}
}

// Purity gives the hydroxide that the grade allows, as a [Certificate] of its
// limits does. typical is the lot's own hydroxide, where it is known, or not given:
// potassium hydroxide by grade alone is refused, since it is sold with 10 to 15 % of
// water. The error is that of [Certificate.Purity].
func (g Grade) Purity(typical units.Ratio) (units.Range, error) {
	return Certificate{AssayMin: g.AssayMin, AssayMax: g.AssayMax, CarbonateMax: g.CarbonateMax, Typical: typical}.Purity(g.Alkali)
}
