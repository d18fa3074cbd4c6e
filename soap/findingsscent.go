package soap

import (
	"slices"
	"strings"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/internal/names"
	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// scent judges the fragrances of a part of which something is known.
func (j *judge) scent(i int, t trail) {
	p := j.b.judgedPart(i)
	if !p.scented() {
		return
	}
	part := t // a copy, so that a part without costs nothing
	list := part.at(Fragrance.list())
	use := func(code string, u fragrance.Use) Finding {
		line := list.item(u.By)
		f := Finding{
			Code: code, Subject: line.String(), Value: u.Used, Limit: units.Whole(1), Unit: "%",
			Source: u.Rule.Source(), Names: []string{p.Name},
		}
		if !u.Rule.Given() {
			f.Source = cite.Source{Title: "the suppliers' certificates", How: cite.Given}
			return f
		}
		f.Names = append(f.Names, u.Rule.Name())
		return f
	}
	over := func(v fragrance.Verdict, detail string) {
		for _, u := range v.Over() {
			f := use("fragrance-over-cap", u)
			f.Severity, f.Detail = Danger, detail
			j.add(f)
		}
	}
	v := j.b.verdict(i)
	over(v, j.howFar(i))
	if last := j.b.Last; last != nil {
		for k := range last.parts { // loads by mass are the same there, in less batter
			if q := &last.parts[k]; q.Name == p.Name {
				over(fragrance.Judge(j.b.Formula.law(), q.Dry, q.doses()), inLastBatch)
			}
		}
	}
	for _, u := range v.Ceilings() {
		j.add(use("natural-ceiling-used", u))
	}
	line := 0
	for k := range p.Additions {
		a := &p.Additions[k]
		if a.Kind != Fragrance {
			continue
		}
		of := list.item(line)
		line++
		if a.Material.Given() {
			j.material(of.String(), a)
			j.intoPart(of.String(), i, a)
		}
	}
}

// blends says which materials of a blend are asked for by another name than their id.
func (j *judge) blends() {
	list := top("materials")
	for i := range j.b.Formula.Materials {
		blend := j.b.Formula.Materials[i].Blend
		for k := range blend {
			asked := blend[k].Fragrance
			if id := j.b.Formula.idOf(Fragrance, asked); id != asked {
				note := ""
				if fragrance.Known(id) {
					note = names.Note(names.Fragrance, asked)
				}
				t := list.item(i).at("blend")
				j.named(t.item(k), names.Fragrance, id, asked, note)
			}
		}
	}
}

// howFar says what can still be done about the fragrances of a part: nothing where it is poured, and where one of
// them is in the batter no lower load.
func (j *judge) howFar(part int) string {
	r := j.b.Weighed
	switch {
	case r == nil || r.Stage == AtLye:
		return ""
	case r.Stage == AtMoulds:
		return pouredSo
	}
	p := &j.b.Parts[part]
	for k := range p.Additions {
		if a := &p.Additions[k]; a.Kind == Fragrance && j.b.Formula.Weighed.adds(p.Name, a.Name) {
			return weighedSo
		}
	}
	return ""
}

// material judges what is known of a fragrance, wherever it goes.
func (j *judge) material(subject string, a *AdditionWeighing) {
	for _, u := range a.Material.Unjudged(j.b.Formula.law()) {
		f := Finding{
			Code: unjudged(Fragrance), Subject: subject, Names: []string{a.Name}, Detail: whyUnjudged(u.Why),
			Source: cite.Source{How: cite.Given},
		}
		var asks []string
		for i, r := range u.Rules {
			if i == 0 {
				f.Source = r.Source()
			}
			f.Names = append(f.Names, r.Name())
			said := r.Name()
			if ask := r.Ask(); ask != "" {
				said += ": " + ask
			}
			asks = append(asks, said)
		}
		if u.Why == fragrance.Specification {
			f.Quoted = strings.Join(asks, "; ")
		}
		j.add(f)
	}
	for _, c := range a.Material.Certificates() {
		if c.Amendment < fragrance.Amendment() {
			j.add(Finding{
				Code: "certificate-older", Severity: Warning, Subject: subject, Names: []string{c.Of.ID()},
				Value: units.Whole(c.Amendment), Limit: units.Whole(fragrance.Amendment()), Unit: "amendment",
				Source: cite.Source{Title: "the supplier's certificate", How: cite.Given},
			})
		}
	}
}

// whyUnjudged gives the word of [Finding.Detail] for a reason.
func whyUnjudged(why fragrance.Why) string {
	switch why {
	case fragrance.UnlistedForEU:
		return "not-listed-eu"
	case fragrance.MaximumUnheld:
		return "maximum-not-held"
	case fragrance.NaturalTrace:
		return "natural-trace"
	case fragrance.NaturalWithin:
		return "natural-within"
	case fragrance.Specification:
		return "specification"
	default:
		return "not-listed"
	}
}

// intoPart judges what a fragrance does to the look and the work of a part.
func (j *judge) intoPart(subject string, i int, a *AdditionWeighing) {
	look, work := AnyLook, mould.Poured
	if len(j.b.Formula.Parts) > 0 {
		look, work = j.b.Formula.Parts[i].Look, j.b.Formula.Parts[i].Work
	}
	if colours := a.Material.Colours(); look != AnyLook && len(colours) > 0 {
		f := Finding{
			Code: "fragrance-browns", Severity: Warning, Subject: subject, Names: []string{a.Name},
			Detail: look.String(),
		}
		ofDry, _ := a.Mass.Per(j.b.judgedPart(i).Dry)
		var said []string
		for _, c := range colours {
			f.Source.How = c.How
			if !c.Share.Given() {
				said = append(said, "it "+c.Does)
				continue
			}
			ofBar := c.Share.Times(ofDry)
			f.Value, f.Unit = ofBar.Add(f.Value.Or(units.Whole(0))), "%"
			said = append(said, c.Substance+" ("+ofBar.PercentText(4)+" % of the bar) "+c.Does)
		}
		f.Quoted = strings.Join(said, "; ")
		j.add(f)
	}
	if does := a.Material.Behaviour() &^ fragrance.Browns; does != 0 {
		f := Finding{
			Code: "fragrance-behaviour", Subject: subject, Names: []string{a.Name}, Detail: gravest(does),
			Quoted: strings.Join(does.Words(), ", "), Source: cite.Source{How: a.Material.BehaviourHow(does)},
		}
		if does&fragrance.Seizes != 0 || work == mould.Piped {
			f.Severity = Warning
		}
		j.add(f)
	}
}

// gravest gives the word for the worst of what a fragrance does: the words are in that order.
func gravest(does fragrance.Behaviour) string {
	words := does.Words()
	return words[len(words)-1]
}

// dose judges how much fragrance a part has, whatever its limits leave room for.
func (j *judge) dose(i int, t trail) {
	p := j.b.judgedPart(i)
	var all units.Mass
	for k := range p.Additions {
		if a := &p.Additions[k]; a.Kind == Fragrance {
			all = all.Add(a.Mass)
		}
	}
	if all.Sign() == 0 {
		return
	}
	f := Finding{Code: "dose-unusual", Limit: units.Percent(6), Unit: "%", Source: commonSource(), Names: []string{p.Name}}
	f.Value, _ = all.Per(p.Oils)
	if f.Value = settled(f.Value); f.Value.Compare(f.Limit) > 0 {
		part := t // a copy, so that a part in order costs nothing
		f.Subject = part.String()
		j.add(f)
	}
}

// allergens judges whether the label can be written: once for all fragrances, and where
// nobody asks for a list, not at all.
func (j *judge) allergens() {
	if !j.sold(EuropeanUnion) {
		return
	}
	f := Finding{Code: "allergens-unknown", Severity: Warning, Subject: "parts"}
	for i := range j.b.Parts {
		for k := range j.b.Parts[i].Additions {
			a := &j.b.Parts[i].Additions[k]
			if a.Material.Given() && !a.Material.AllergensListed() && !slices.Contains(f.Names, a.Name) {
				f.Names = append(f.Names, a.Name)
			}
		}
	}
	if len(f.Names) > 0 {
		f.Source = fragrance.AllergenLists().Source // which reads the rules
		j.add(f)
	}
}

// OnFragrance reports whether a finding is about fragrance, or a danger, which nobody who
// scents a bar may miss: those that [Caps] carries.
func OnFragrance(f Finding) bool {
	if f.Severity == Danger {
		return true
	}
	switch f.Code {
	case "fragrance-over-cap", "fragrance-unjudged", "natural-ceiling-used", "certificate-older", "allergens-unknown",
		"fragrance-browns", "fragrance-behaviour", "dose-unusual":
		return true
	case "additive-unjudged", "colourant-unjudged":
		return f.Detail == maybeFragrance
	default:
		return false
	}
}
