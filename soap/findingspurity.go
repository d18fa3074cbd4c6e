package soap

import (
	"example.com/lyewright/units"
)

// usualPurity is what is in most bottles of an alkali, and the purity below which a plan is
// doubted: 98 and 95.5 % of NaOH (95.5 % is the least that the European Pharmacopoeia lets
// pass), 90 and 82 % of KOH (common practice).
func usualPurity(a Alkali) (usual, least units.Ratio) {
	if a == PotassiumHydroxide {
		return units.Percent(90), units.Percent(82)
	}
	return units.Percent(98), purityFloor()
}

// hasLowPurity reports whether an alkali is planned at less hydroxide than is usual.
func (a *AlkaliWeighing) hasLowPurity() bool {
	_, least := usualPurity(a.Alkali)
	return !a.Strength.Given() && a.Purity.Typical.Compare(least) < 0
}

// lowPurities counts the alkalis of a low purity.
func (j *judge) lowPurities() int {
	n := 0
	for i := range j.b.Alkalis {
		if j.b.Alkalis[i].hasLowPurity() {
			n++
		}
	}
	return n
}

// usualBottles puts the usual purity in place of every low one.
func (j *judge) usualBottles(p *prospect) {
	for i := range j.b.Alkalis {
		if a := &j.b.Alkalis[i]; a.hasLowPurity() {
			usual, _ := usualPurity(a.Alkali)
			p.alkalis[i].content = units.Exactly(usual)
		}
	}
}

// lowPurity judges an alkali that is planned at less hydroxide than is usual. The lower the
// purity, the more is weighed: where it is a slip, alkali is left over. Where other figures are
// doubted too, the superfat is told with all of them at what is usual, if that is lower.
func (j *judge) lowPurity(t trail, alkali int) {
	a := &j.b.Alkalis[alkali]
	if !a.hasLowPurity() {
		return
	}
	usual, least := usualPurity(a.Alkali)
	superfat, detail := j.prospects().with(func(p *prospect) { p.alkalis[alkali].content = units.Exactly(usual) }), ""
	if j.lowPurities() > 1 {
		if bottles := j.prospects().with(j.usualBottles); bottles.worse(&superfat) {
			superfat, detail = bottles, allDoubts
		}
	}
	if j.together != nil && j.together.worse(&superfat) {
		superfat, detail = *j.together, allDoubts
	}
	source := commonSource()
	if a.Alkali == SodiumHydroxide {
		source = AssumedPuritySource()
	}
	f := Finding{
		Code: "purity-low", Severity: Warning, Subject: t.String(), Value: a.Purity.Typical, Limit: least, Unit: "%",
		Names: []string{a.Alkali.Name()}, Source: source, SuperfatIf: &superfat, Detail: detail,
	}
	if width := a.Purity.High.Sub(a.Purity.Low); width.Sign() > 0 && width.Compare(units.Percent(2)) <= 0 {
		f.Severity = Note
	}
	j.add(f)
}
