package soap

import (
	"slices"
	"strings"

	"example.com/lyewright/colour"
	"example.com/lyewright/colour/tint"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// rivers judges the titanium dioxide of a part of soap that gels: all of it together.
func (j *judge) rivers(i int, t trail) {
	p := j.b.judgedPart(i)
	if j.s.f.Gel != Gelled {
		return
	}
	var whites units.Mass
	f := Finding{Code: "rivers-likely", Limit: units.Percent(1), Unit: "%", Source: commonSource()}
	part := t // a copy, so that soap that does not gel costs nothing
	for k := range p.Additions {
		a, l := &p.Additions[k], &j.s.loads[i][k]
		if a.Kind != Colourant || !a.Colourant.IsWhite() {
			continue
		}
		whites = whites.Add(a.Mass)
		if f.Subject == "" {
			list := part.at(l.list())
			line := list.item(l.at())
			f.Subject, f.Names = line.String(), []string{a.Colourant.Name()}
		}
	}
	f.Value = settled(p.amounts().Load(whites, colour.OfOils).Share)
	if f.Subject != "" && f.Value.Compare(f.Limit) >= 0 {
		j.add(f)
	}
}

// list and at are where an addition stands in its part: in the list of its kind, or where
// its load is looked for.
func (l *loaded) list() string {
	if l.addition.match > 0 {
		return "match"
	}
	return l.kind.list()
}

func (l *loaded) at() int {
	if l.addition.match > 0 {
		return l.addition.match - 1
	}
	return l.index
}

// colourant judges what is known of a colourant, wherever it goes: of a maker's own what is
// known of its Colour Index numbers.
func (j *judge) colourant(t trail, a *AdditionWeighing) {
	own := a.Colourant.Supplied()
	if !own {
		j.facts(t, a, a.Colourant)
	} else {
		parts, unknown := a.Colourant.Parts()
		if len(unknown) > 0 || len(parts) == 0 {
			j.add(Finding{Code: unjudged(Colourant), Subject: t.String(), Names: append([]string{a.Colourant.Name()},
				unknown...), Detail: numbersUnknown, Source: cite.Source{How: cite.Given}})
		}
		for _, part := range parts {
			j.facts(t, a, part)
		}
		if a.Colourant.Nano() {
			f := Finding{
				Code: "nano-grade", Subject: t.String(), Names: []string{a.Colourant.Name()},
				Source: cite.Source{How: cite.Given},
			}
			if a.Colourant.Is("77891") {
				f.Detail = hardlyWhitens
			}
			j.add(f)
		}
	}
	if a.Carrier == nil {
		return
	}
	if in := a.Colourant.Disperses(); !in.Takes(mediumOf(a.Carrier.In)) {
		j.add(Finding{
			Code: "carrier-unlike", Subject: t.String(), Names: []string{a.Colourant.Name()},
			Quoted: in.In.String() + ", not in " + mediumOf(a.Carrier.In).String(), Source: in.Source,
		})
	}
}

// facts judges what alkali and the law make of a colourant, or of a part of it.
func (j *judge) facts(t trail, a *AdditionWeighing, part colour.Colourant) {
	found := func(code string, severity Severity, detail, quoted string, source cite.Source) {
		f := Finding{
			Code: code, Severity: severity, Subject: t.String(), Names: []string{a.Colourant.Name()}, Detail: detail,
			Quoted: quoted, Source: source,
		}
		if part.Name() != f.Names[0] {
			f.Names = append(f.Names, part.Name())
		}
		j.add(f)
	}
	fast := part.InAlkali()
	if fast.Stability >= colour.Doubtful && fast.Stability != colour.Gassing { // that is said by metal
		found("colourant-unstable", Warning, "", fast.Text, fast.Source())
	}
	eu, us := part.Under(colour.EU), part.Under(colour.US)
	if eu.Standing == colour.NotPermitted && j.sold(EuropeanUnion) {
		found("colourant-not-permitted", Warning, inEU, "", eu.Source())
	}
	if us.Standing == colour.NotPermitted && j.sold(UnitedStates) {
		found("colourant-not-permitted", Note, inUS, us.Remark, us.Source())
	}
	var unheld []string
	if eu.Standing == colour.Unknown && j.sold(EuropeanUnion) {
		unheld = append(unheld, "its standing in the European Union")
	}
	if us.Standing == colour.Unknown && j.sold(UnitedStates) {
		unheld = append(unheld, "its standing in the United States")
	}
	if fast.Stability == colour.StabilityUnknown {
		unheld = append(unheld, "its stability in alkali")
	}
	if len(unheld) > 0 {
		found(unjudged(Colourant), Note, nothingHeld, strings.Join(unheld, ", nor of "), cite.Source{How: cite.Given})
	}
}

// sold reports whether the rules of a market count: they do where no market is named.
func (j *judge) sold(m Market) bool {
	return len(j.s.f.Markets) == 0 || slices.Contains(j.s.f.Markets, m)
}

func mediumOf(l Liquid) colour.Medium {
	switch l {
	case InWater:
		return colour.Water
	case InGlycerin:
		return colour.Glycerin
	case InOil:
		return colour.Oil
	default:
		return 0
	}
}

// usual judges a load by what is usual. A white has two roles: alone it whitens, beside
// another colourant it lightens that.
func (j *judge) usual(t trail, p *PartBatch, k int) {
	a := &p.Additions[k]
	beside := slices.ContainsFunc(p.Additions, func(other AdditionWeighing) bool {
		weighs := other.Pigment()
		return other.Kind == Colourant && weighs.Sign() > 0 && other.Name != a.Name && !other.Colourant.IsWhite()
	})
	usual, given := a.Colourant.Usual(beside)
	if weighs := a.Pigment(); !given || weighs.Sign() == 0 {
		return // of what is weighed as nothing another finding says so
	}
	if a.Colourant.Nano() && a.Colourant.Whitens() {
		return // it hardly whitens: what is usual of whitening says nothing
	}
	f := Finding{
		Code: "load-unusual", Subject: t.String(), Unit: "%", Names: []string{a.Colourant.Name()},
		Source: usual.Source,
	}
	f.Quoted = usual.Low.Share.PercentText(4) + " to " + usual.High.Share.PercentText(4) + " % " + usual.Low.Of.String()
	f.Detail = strings.TrimPrefix(usual.Low.Of.String(), "of ")
	switch f.Value = settled(p.amounts().Load(a.Mass, usual.Low.Of).Share); {
	case f.Value.Compare(usual.Low.Share) < 0:
		f.Limit = usual.Low.Share
	case f.Value.Compare(usual.High.Share) > 0:
		f.Limit = usual.High.Share
	default:
		return
	}
	j.add(f)
}

// target judges the colour that a part is meant to have.
func (j *judge) target(i int, t trail) {
	if i >= len(j.s.asked.Parts) {
		return
	}
	bands := tint.Bands{}
	if j.s.asked.Swatches != nil {
		bands = j.s.asked.Swatches.Bands
	}
	lab, ok := j.s.asked.Parts[i].Target.lab(bands)
	if !ok {
		return
	}
	if picture, inGamut := lab.SRGB(); !inGamut {
		part := t // a copy, so that a part without costs nothing
		at := part.at("target")
		j.add(Finding{
			Code: "target-out-of-gamut", Subject: at.String(), Names: []string{j.b.Parts[i].Name},
			Quoted: picture.String(), Source: cite.Source{How: cite.Computed},
		})
	}
}

// OnColour reports whether a finding is about colour, or a danger, which nobody who weighs
// colourants may miss: those that a [Tint] carries.
func OnColour(f Finding) bool {
	if f.Severity == Danger {
		return true
	}
	switch f.Code {
	case "load-unusual", "rivers-likely", "colourant-unstable", "colourant-not-permitted", "nano-grade", "carrier-unlike",
		"target-out-of-gamut", "colourant-unjudged":
		return true
	case "rounding-coarse": // of what colours: the colour is that of what is weighed
		pigment := strings.Contains(f.Subject, ".colourants[") || strings.Contains(f.Subject, ".match[")
		return pigment && !strings.HasSuffix(f.Subject, ".carrier")
	default:
		return false
	}
}
