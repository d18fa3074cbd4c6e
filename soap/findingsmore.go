package soap

import (
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// mostFindings is how many findings of one formula are told. More are read by nobody, and
// a formula could ask for ten thousand.
const mostFindings = 200

// boundedFindings divides findings, the most severe first, into those that are told and
// those beyond the most. The last that is told then says how many more there are, and is as
// severe as the gravest of them: no danger is left out without a danger that says so.
func boundedFindings(all []Finding) (told, more []Finding) {
	if len(all) <= mostFindings {
		return all, nil
	}
	told, more = all[:mostFindings-1:mostFindings-1], all[mostFindings-1:]
	return append(told, beyond(len(more), more[0].Severity)), more
}

// beyond is the finding that says how many more there are, the gravest of a severity.
func beyond(n int, gravest Severity) Finding {
	f := Finding{
		Code: "findings-more", Severity: gravest, Subject: "formula", Value: units.Whole(n),
		Limit: units.Whole(mostFindings), Unit: "findings", Source: cite.Source{How: cite.Computed},
	}
	switch gravest {
	case Danger:
		f.Detail = dangersMore
	case Warning:
		f.Detail = warningsMore
	}
	return f
}

// selected gives the findings of a view, those beyond the most of the batch with them.
func (b *Batch) selected(wanted func(Finding) bool) []Finding {
	told := b.Findings
	if n := len(told); len(b.more) > 0 && n > 0 && told[n-1].Code == "findings-more" {
		told = told[:n-1]
	}
	var list []Finding
	more := 0 // those that there is no room for: there may be ten thousand
	for _, all := range [][]Finding{told, b.more} {
		for i := range all {
			switch {
			case !wanted(all[i]):
			case len(list) < mostFindings:
				list = append(list, all[i])
			default:
				more++
			}
		}
	}
	if more > 0 {
		list[mostFindings-1] = beyond(more+1, list[mostFindings-1].Severity)
	}
	return list
}
