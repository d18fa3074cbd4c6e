package fragrance_test

import (
	"fmt"
	"testing"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/units"
)

// A part with 6 materials and 60 constituents.
func sixtyConstituents(tb testing.TB) []fragrance.Dose {
	tb.Helper()
	var numbers []string
	for _, r := range fragrance.Rules() {
		if r.Body() == fragrance.IFRA && r.Standing() == fragrance.Limited && len(numbers) < 60 && len(r.Substances()) > 0 && !prohibitedInEU(r) {
			numbers = append(numbers, r.Substances()[0].String())
		}
	}
	var supplied []fragrance.Supplied
	for i := range 6 {
		s := certified(fmt.Sprint("scent-", i), "5")
		for _, cas := range numbers[10*i : 10*i+10] {
			s.Constituents = append(s.Constituents, listed(tb, "", cas, "0.5").Constituents...)
		}
		supplied = append(supplied, s)
	}
	shelf := shelf(tb, supplied...)
	doses := make([]fragrance.Dose, 6)
	for i := range doses {
		doses[i] = fragrance.Dose{Material: find(tb, shelf, fmt.Sprint("scent-", i)), Mass: units.Grams(2)}
	}
	return doses
}

func prohibitedInEU(r fragrance.Rule) bool {
	for _, other := range fragrance.Rules() {
		if other.Body() != fragrance.EU || other.Standing() != fragrance.Prohibited {
			continue
		}
		for _, a := range other.Substances() {
			for _, b := range r.Substances() {
				if a == b {
					return true
				}
			}
		}
	}
	return false
}

func BenchmarkJudge(b *testing.B) {
	doses := sixtyConstituents(b)
	b.ReportAllocs()
	for b.Loop() {
		v := fragrance.Judge(fragrance.IFRAAndEU, units.Grams(1000), doses)
		if v.Passed() != 0 {
			b.Fatal(v.Most())
		}
	}
}

func BenchmarkLookUp(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := fragrance.LookUp("lavender"); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkReadRules(b *testing.B) {
	tables := fragrance.Tables()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := fragrance.ShelfUnder(tables["standards"], tables["entries"], nil, fragrance.IFRAAndEU); err != nil {
			b.Fatal(err)
		}
	}
}
