package soap

import (
	"cmp"
	"strings"

	"example.com/lyewright/internal/molar"
	"example.com/lyewright/internal/names"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// liquids judges the liquids other than water.
func (j *judge) liquids() {
	water := top("water")
	list := water.at("liquids")
	fatty := 0
	for i := range j.b.Liquids {
		line, t := j.s.liquids[i].line, list.item(i)
		note := func(code string, share units.Ratio) {
			if share.Sign() > 0 {
				j.add(Finding{Code: code, Subject: t.String(), Value: share, Unit: "%", Names: []string{line.Name}, Source: commonSource()})
			}
		}
		if line.fatty() && line.Saponification.Single() {
			j.add(Finding{Code: "saponification-single", Subject: t.String(), Value: line.Saponification.Plan(), Unit: "mg KOH/g", Names: []string{line.Name}, Source: cite.Source{How: cite.Given}})
		}
		if line.fatty() {
			j.liquidFat(t, line, fatty)
			fatty++
		}
		j.metalByName(t, NoGlitter, line.Name)
		note("liquid-sugar", line.Sugar)
		note("liquid-alcohol", line.Alcohol)
		j.coarse(t, line.Name, j.b.Liquids[i].Weighing)
	}
}

// acids judges the acids. They are planned at a few percent of the oils (common practice): one
// that alkali is added for and that takes more than a tenth of it all may be a slip.
func (j *judge) acids() {
	list := top("acids")
	var alkali units.Sum // all of it, as KOH × the molar mass of NaOH
	for i := range j.b.Alkalis {
		a := &j.b.Alkalis[i]
		alkali = alkali.Add(a.Hydroxide().TimesWhole(otherMolar(a.Alkali)))
	}
	for i := range j.b.Acids {
		a, t := &j.b.Acids[i], list.item(i)
		asked := j.s.f.Acids[i].Asked
		j.named(t, names.Acid, a.Acid.ID, asked, names.Note(names.Acid, cmp.Or(asked, a.Acid.ID)))
		if j.s.acids[i].line.Compensate == Compensated {
			j.add(Finding{
				Code: "acid-compensated", Subject: t.String(), Names: []string{a.Acid.Name}, Source: lye.AtomicWeights(),
				Quoted: a.Takes.Text(units.Gram, 2) + " g of " + j.b.Alkalis[0].Alkali.Symbol(),
			})
			share, _ := j.s.acids[i].koh.TimesWhole(molar.NaOH).Per(alkali)
			if limit := units.Percent(10); share.Compare(limit) > 0 {
				j.add(Finding{
					Code: "acid-unusual", Severity: Warning, Subject: t.String(), Value: share, Limit: limit, Unit: "%",
					Names: []string{a.Acid.Name}, Source: commonSource(),
				})
			}
		}
		j.strongAcid(t, i)
		j.coarse(t, a.Acid.Name, a.Weighing)
	}
}

// strongAcid judges the strength of an acid that is mostly sold weaker: a vinegar of over 10 %, which has about 5 %,
// and a lactic acid of over 90 %, which has 80 to 90 % (memory, as the notes on their names). Less of it takes less
// alkali, and the rest of what is added for it is left over.
func (j *judge) strongAcid(t trail, acid int) {
	line, a := j.s.acids[acid].line, &j.b.Acids[acid]
	note := names.Note(names.Acid, cmp.Or(j.s.f.Acids[acid].Asked, a.Acid.ID))
	var usual, most units.Ratio
	switch {
	case a.Acid.ID == "acetic-acid" && strings.HasPrefix(note, "about 5 %"):
		usual, most = units.Percent(5), units.Percent(10)
	case a.Acid.ID == "lactic-acid":
		usual, most = units.Percent(80), units.Percent(90)
	default:
		return
	}
	if strength := line.strength(); strength.Compare(most) > 0 {
		weak := *line
		weak.Strength = units.Exactly(usual)
		superfat := j.prospects().with(func(p *prospect) { p.acids[acid].takes = weak.takesUp() })
		f := Finding{
			Code: "acid-unusual", Severity: Warning, Subject: t.String(), Value: strength, Limit: most, Unit: "%",
			Names: []string{a.Acid.Name}, Source: cite.Source{How: cite.Memory}, Detail: acidStrength, SuperfatIf: &superfat,
			Quoted: usual.PercentText(2) + " %",
		}
		if superfat.negative() {
			f.Severity = Danger
		}
		j.add(f)
	}
}

// temperatures judges what is known of the bench.
func (j *judge) temperatures() {
	t, at := top("temperature"), j.s.f.Temperature
	begins := j.lyeOfBatch().Crystallises
	if at.Lye.Given() && begins.Given() && at.Lye.Compare(begins.Add(lye.CrystallisesWithin())) <= 0 {
		subject := t.at("lye")
		j.add(Finding{Code: "lye-crystallises", Severity: Warning, Subject: subject.String(), Value: at.Lye.Ratio(), Limit: begins.Ratio(), Unit: "°C", Source: lye.CrystallisesSource()})
	}
	if heat := j.lyeOfBatch().Heat; heat.Final.Given() {
		if limit, hot := heat.Hot(); hot {
			subject := t.at("water")
			j.add(Finding{Code: "lye-hot", Severity: Warning, Subject: subject.String(), Value: heat.Final.Ratio(), Limit: limit.Ratio(), Unit: "°C", Source: lye.HeatSource()})
		}
	}
	if at.Oils.Given() && at.Lye.Given() {
		if apart, limit, over := lye.Apart(at.Oils, at.Lye); over {
			j.add(Finding{Code: "temperatures-apart", Subject: t.String(), Value: apart.Ratio(), Limit: limit.Ratio(), Unit: "K", Source: commonSource()})
		}
	}
}
