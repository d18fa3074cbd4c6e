package fragrance

import (
	_ "embed"
	"strconv"
	"strings"
	"sync"

	"example.com/lyewright/internal/refdata"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

//go:embed data/standards.txt
var standardsTable string

//go:embed data/entries.txt
var entriesTable string

//go:embed data/schiff.txt
var schiffTable string

//go:embed data/colouring.txt
var colouringTable string

// rules are an edition of all rules, read once and never changed.
type rules struct {
	all       []*rule
	bySubject map[CAS][]*rule
	schiff    map[CAS]schiffBase
	bases     string             // where the shares of the Schiff bases stand
	colouring map[CAS]*Colouring // isomers share one

	ifra, eu  string // the editions in words
	amendment int
	category  string
	threshold units.Ratio // above which the label names an allergen
	lists     Lists
}

// schiffBase counts as the aldehyde that it can release.
type schiffBase struct {
	aldehyde CAS
	share    units.Ratio
}

// Lists are the threshold and the dates of the lists of allergens of European law. It comes
// from [AllergenLists].
type Lists struct {
	Threshold units.Ratio // of a rinse-off product: above it a label names an allergen
	Placed    string      // until then what does not name the new list may be placed on the market: year-month-day
	Available string      // until then it may be made available there: year-month-day
	Source    cite.Source // where they stand
}

// AllergenLists gives the threshold and the dates of the lists of allergens.
func AllergenLists() Lists { return current().lists }

// current are the rules that the library holds.
var current = sync.OnceValue(func() *rules { return readRules(standardsTable, entriesTable, schiffTable) })

// Edition names the publications whose limits count under a law, with their edition.
func Edition(law Law) string { return current().edition(law) }

func (rs *rules) edition(law Law) string {
	if law == IFRAAlone {
		return rs.ifra
	}
	return rs.ifra + "; " + rs.eu
}

// Category is the category of the IFRA Standards whose limits are held, "9": bar soap.
func Category() string { return refdata.Header(standardsTable, "category") }

// Amendment is the amendment of the IFRA Standards whose limits are held, such as 51. A
// certificate to an older one may allow more than it.
func Amendment() int { return number(refdata.Header(standardsTable, "amendment")) }

// DataEdition is the date of the built-in tables, as year-month-day. A figure of them
// changes only with this date.
func DataEdition() string { return refdata.Edition(standardsTable) }

func number(text string) int {
	n, _ := strconv.Atoi(text) // a table without it has none
	return n
}

// percentage reads a figure of a table; not given where there is none.
func percentage(figure string) units.Ratio {
	r, _ := units.ParsePercent(figure + " %") // a broken table fails a test
	return r
}

// readRules reads an edition of the rules from its tables.
func readRules(standards, entries, schiff string) *rules {
	rs := &rules{
		bySubject: map[CAS][]*rule{}, schiff: map[CAS]schiffBase{}, colouring: map[CAS]*Colouring{},
		ifra:      refdata.Header(standards, "title") + ", " + refdata.Header(standards, "issued"),
		eu:        refdata.Header(entries, "title") + " " + refdata.Header(entries, "issued"),
		amendment: number(refdata.Header(standards, "amendment")), category: refdata.Header(standards, "category"),
		threshold: percentage(refdata.Header(entries, "threshold")),
	}
	rs.readStandards(standards)
	rs.readEntries(entries)
	rs.lists = Lists{
		Threshold: rs.threshold, Placed: refdata.Header(entries, "placed"), Available: refdata.Header(entries, "available"),
		Source: cite.Source{
			Title: refdata.Header(entries, "title"), Edition: refdata.Header(entries, "issued"),
			Place: "Annex III", How: cite.Read,
		},
	}
	rs.bases = cite.Source{
		Title: refdata.Header(schiff, "title"), Edition: refdata.Header(schiff, "issued"),
		Place: refdata.Header(schiff, "place"),
		How:   cite.ParseHow(refdata.Header(schiff, "how")),
	}.String()
	for line := range refdata.Lines(schiff) {
		rs.schiff[CAS{refdata.Field(line, 0)}] = schiffBase{
			aldehyde: CAS{refdata.Field(line, 1)},
			share:    percentage(refdata.Field(line, 2)),
		}
	}
	substances := map[string]*Colouring{}
	for line := range refdata.Lines(colouringTable) {
		name := refdata.Field(line, 1)
		if substances[name] == nil {
			substances[name] = &Colouring{
				Substance: name, Does: refdata.Field(line, 2),
				How: cite.ParseHow(refdata.Field(line, 3)),
			}
		}
		rs.colouring[CAS{refdata.Field(line, 0)}] = substances[name]
	}
	for _, r := range rs.all {
		for _, other := range r.with {
			other.within = append(other.within, r)
		}
	}
	return rs
}

func (rs *rules) readStandards(table string) {
	source := cite.Source{
		Title: refdata.Header(table, "title"), Edition: refdata.Header(table, "issued"),
		How: cite.ParseHow(refdata.Header(table, "how")),
	}
	place := refdata.Header(table, "place")
	shared := map[*rule]string{}
	byNumber := map[string]*rule{}
	for line := range refdata.Lines(table) {
		f := strings.Split(line+strings.Repeat("\t", 13), "\t")
		r := &rule{
			body: IFRA, number: f[0], name: f[1], standing: standingOf(f[2]), limit: percentage(f[3]), extract: f[5] != "",
			effect: f[8], ask: f[10], remark: f[11], source: source,
		}
		r.source.Place = "Standard " + r.number + ", " + r.name + "; " + place
		shared[r], byNumber[r.number] = f[4], r
		rs.add(r, f[9]+";"+f[12])
	}
	join(shared, byNumber)
}

func (rs *rules) readEntries(table string) {
	source := cite.Source{Title: refdata.Header(table, "title"), Edition: refdata.Header(table, "issued")}
	shared := map[*rule]string{}
	byNumber := map[string]*rule{}
	for line := range refdata.Lines(table) {
		f := strings.Split(line+strings.Repeat("\t", 13), "\t")
		r := &rule{
			body: EU, number: f[0], name: f[1], standing: standingOf(f[2]), limit: percentage(f[3]), extract: f[12] != "",
			members: f[7], remark: f[8], source: source,
		}
		switch f[5] {
		case "old":
			r.list = OldList
		case "new":
			r.list = NewList
		}
		r.source.How = cite.ParseHow(f[10])
		r.source.Place = placeOf(r.number, f[9])
		shared[r], byNumber[r.number] = f[4], r
		rs.add(r, f[6]+";"+f[11])
	}
	join(shared, byNumber)
}

// placeOf spells out where an entry of European law stands.
func placeOf(number, act string) string {
	if of, second := strings.CutPrefix(number, "ii-"); second {
		return "Annex II entry " + of
	}
	switch plain := strings.TrimLeft(number, "0"); {
	case strings.HasPrefix(number, "x"):
		return "Annex III, entry not recalled"
	case act == "annex-ii":
		return "Annex II (once entry " + plain + " of Annex III)"
	default:
		return "Annex III entry " + plain
	}
}

// join ties rules whose limits are shared.
func join(shared map[*rule]string, byNumber map[string]*rule) {
	for r, numbers := range shared {
		for number := range strings.FieldsSeq(numbers) {
			if other := byNumber[number]; other != nil {
				r.with = append(r.with, other)
			}
		}
	}
}

// add gives a rule its place and its substances.
func (rs *rules) add(r *rule, substances string) {
	r.index = len(rs.all)
	rs.all = append(rs.all, r)
	for text := range strings.SplitSeq(substances, ";") {
		if text != "" {
			cas := CAS{text}
			r.cas = append(r.cas, cas)
			rs.bySubject[cas] = append(rs.bySubject[cas], r)
		}
	}
}

// numbered finds a rule by its number.
func (rs *rules) numbered(body Body, number string) *rule {
	for _, r := range rs.all {
		if r.body == body && r.number == number {
			return r
		}
	}
	return nil
}

// of lists the rules about a substance, and what share of it each counts: a Schiff base
// counts as the aldehyde that it can release. That is a rule of the Standards; that it holds
// for the limits of European law, too, is our reading, the stricter one.
func (rs *rules) of(cas CAS, each func(r *rule, share units.Ratio, base bool)) {
	for _, r := range rs.bySubject[cas] {
		each(r, units.Whole(1), false)
	}
	if base, found := rs.schiff[cas]; found {
		for _, r := range rs.bySubject[base.aldehyde] {
			each(r, base.share, true)
		}
	}
}

// known reports whether a rule or the table of Schiff bases names a substance.
func (rs *rules) known(cas CAS) bool {
	_, base := rs.schiff[cas]
	return base || len(rs.bySubject[cas]) > 0
}
