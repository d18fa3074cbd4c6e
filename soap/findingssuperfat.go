package soap

import (
	"math"
	"strings"

	"example.com/lyewright/internal/names"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// superfat judges the superfat of the batch against what is usual.
func (j *judge) superfat() {
	plan := j.superfatOfBatch().Planned
	f := Finding{Code: "superfat-unusual", Subject: "superfat", Value: plan, Unit: "%", Source: commonSource()}
	switch {
	case j.b.Weighed != nil:
		f.Detail = weighedSo
	case j.b.Formula.Superfat.AtLeast.Given():
		f.Detail = byWorstCase
	}
	switch least, most := units.Percent(2), units.Percent(10); {
	case plan.Compare(least) < 0:
		f.Limit = least
		j.add(f)
	case plan.Compare(most) > 0:
		f.Limit = most
		if j.salted() {
			f.Detail = saltBar
		}
		j.add(f)
	}
}

// salted reports whether additives that are salt come to more than a quarter of the oils: a
// salt bar, which is hard and planned at 15 to 20 % (common practice).
func (j *judge) salted() bool {
	var salt units.Mass
	for i := range j.b.Parts {
		p := j.b.judgedPart(i)
		for k := range p.Additions {
			if a := &p.Additions[k]; a.Kind == Additive && isTableSalt(a.Name) {
				salt = salt.Add(a.Mass)
			}
		}
	}
	return salt.Compare(product(j.real().oilTotal, units.Percent(25), units.Nearest)) > 0
}

// isTableSalt reports whether an additive is sodium chloride by its name: salt, with nothing beside it but words of
// where it comes from and how fine it is. Epsom salt is none: its magnesium makes soap that does not dissolve.
func isTableSalt(name string) bool {
	const beside wordList = " table sea rock kitchen cooking pickling kosher fine finely coarse coarsely ground milled " +
		"extra pure white grey gray pink" +
		" dried dry flaked flakes iodised iodized non "
	salt := false
	words := names.Words(name)
	for _, word := range words {
		switch {
		case word == "salt", word == "halite":
			salt = true
		case !beside.has(word):
			return strings.Join(words, " ") == "sodium chloride"
		}
	}
	return salt
}

// negative judges whether a part has, or may well have, more alkali than it takes up.
func (j *judge) negative(t trail, part int, names []string) {
	superfat := j.superfatOf(part)
	low := superfat.LikelyLow
	waxes := low.Sign() >= 0
	if waxes {
		if low = j.lowByWaxes(part); low.Sign() >= 0 {
			return
		}
	}
	f := Finding{
		Severity: Danger, Subject: t.String(), Limit: units.Whole(0), Unit: "%",
		Source: cite.Source{How: cite.Computed}, Names: names,
	}
	state := ""
	switch {
	case j.b.Weighed != nil && (j.b.Weighed.Stage == AtMoulds || j.b.Weighed.Stage != AtLye &&
		j.b.Weighed.Lye.Undissolved):
		state = pouredSo
	case j.b.Weighed != nil:
		state = weighedSo
	}
	if settled(superfat.Planned).Sign() < 0 {
		f.Code, f.Value, f.Detail = "superfat-below-zero", superfat.Planned, state
		j.add(f)
		return
	}
	f.Code, f.Value, f.Detail = "superfat-likely-negative", low, waxUnspent
	if !waxes {
		f.Detail = j.causeOf(part, superfat.Planned)
	}
	if state != "" {
		f.Detail = state + "-" + f.Detail
	}
	j.add(f)
}

// lowByWaxes is the likely low of a part with the published range of each wax in place of the caller's own value,
// which a certificate prints of all its esters: a cold process may leave them as they are; a wax that is one by its
// name alone may take up anything from nothing to that value. It is 0 where no wax has a value of the caller's own
// that was not titrated, and of one that lies outside what is published, which is judged for itself.
func (j *judge) lowByWaxes(part int) units.Ratio {
	var built []Oil
	var ids []string
	for i := range j.b.Oils {
		oil := j.b.Oils[i].Oil
		if oil.Kind() != Wax || j.titrated(i) {
			continue
		}
		standards := oil.heldAgainst()
		if standards == nil && oil.Choice() == AsGiven {
			built, ids = append(built, oil.unspent()), append(ids, oil.ID())
			continue
		}
		if standards == nil {
			continue
		}
		if _, outside := passes(oil.Saponification().Typical, standards); !outside {
			built, ids = append(built, standards[0].oil), append(ids, oil.ID()) // a wax means one
		}
	}
	if len(built) == 0 {
		return units.Whole(0)
	}
	return j.prospects().ofPart(part, swapOils(built, ids)).LikelyLow
}

// unspent is a wax of the caller's own of which nothing is published: its value runs from nothing, as no free acid of
// it is known, and is planned at the middle, as those of the waxes that are built in.
func (o Oil) unspent() Oil {
	row := *o.get()
	high := row.saponification.High
	row.saponification = units.Range{Low: units.Whole(0), Typical: high.Over(units.Whole(2)), High: high}
	return Oil{row: &row}
}

// causeOf says why a part may well be below zero although it is not planned so: what makes
// most of the doubt, the scale, the oils' ranges or the purity of the alkali (with the
// strength of acids), where without it zero would not be reached; else the plan itself.
func (j *judge) causeOf(part int, plan units.Ratio) string {
	var spread spread
	if real := j.s.real; real != nil {
		p := real.ofPart(part)
		spread = p.spread()
	} else {
		spread = j.s.spreads[part]
	}
	scale, ranges, purity := spread.causes()
	cause, most := fromScale, scale
	if ranges > most {
		cause, most = fromRanges, ranges
	}
	if purity > most {
		cause, most = fromPurity, purity
	}
	if left := scale + ranges + purity - most; plan.Float() < 2*math.Sqrt(max(0, left)) {
		return fromPlan
	}
	return cause
}
