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

// lowPurity judges an alkali that is planned at less hydroxide than is usual. The lower the
// purity, the more is weighed: where it is a slip, alkali is left over.
func (j *judge) lowPurity(t trail, alkali int) {
	a := &j.b.Alkalis[alkali]
	usual, least := usualPurity(a.Alkali)
	if a.Strength.Given() || a.Purity.Typical.Compare(least) >= 0 {
		return
	}
	superfat := j.prospects().with(func(p *prospect) { p.alkalis[alkali].content = units.Exactly(usual) })
	source := commonSource()
	if a.Alkali == SodiumHydroxide {
		source = AssumedPuritySource()
	}
	f := Finding{
		Code: "purity-low", Severity: Warning, Subject: t.String(), Value: a.Purity.Typical, Limit: least, Unit: "%",
		Names: []string{a.Alkali.Name()}, Source: source, SuperfatIf: &superfat,
	}
	if width := a.Purity.High.Sub(a.Purity.Low); width.Sign() > 0 && width.Compare(units.Percent(2)) <= 0 {
		f.Severity = Note
	}
	j.add(f)
}
