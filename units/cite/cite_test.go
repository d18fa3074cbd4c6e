package cite_test

import (
	"testing"

	"example.com/lyewright/units/cite"
)

// The words stand in every table and in JSON: they are part of the interface.
func TestHowIsReadByTheWordItIsWrittenIn(t *testing.T) {
	words := map[cite.How]string{
		cite.Unknown: "unknown", cite.Read: "read", cite.Memory: "memory",
		cite.CommonPractice: "common practice", cite.Computed: "computed", cite.Given: "given",
	}
	for how, word := range words {
		if how.String() != word {
			t.Errorf("%q, want %q", how.String(), word)
		}
		if got := cite.ParseHow(word); got != how {
			t.Errorf("%q is read as %v", word, got)
		}
	}
	for _, word := range []string{"", "Read", "read ", "common-practice", "guess"} {
		if got := cite.ParseHow(word); got != cite.Unknown {
			t.Errorf("%q is read as %v", word, got)
		}
	}
	if got := cite.How(200).String(); got != "unknown" {
		t.Errorf("a value beyond the last is %q", got)
	}
}

func TestSourceNeverLooksReadUnlessItWas(t *testing.T) {
	named := cite.Source{Title: "Handbook 44", Edition: "2014", Place: "p. C-14"}
	with := func(how cite.How) cite.Source {
		s := named
		s.How = how
		return s
	}
	tests := []struct {
		source cite.Source
		want   string
	}{
		{with(cite.Read), "Handbook 44, 2014, p. C-14"},
		{with(cite.Memory), "Handbook 44, 2014, p. C-14 (recalled, not read)"},
		{with(cite.CommonPractice), "Handbook 44, 2014, p. C-14 (common practice)"},
		{with(cite.Computed), "Handbook 44, 2014, p. C-14 (computed)"},
		{with(cite.Given), "Handbook 44, 2014, p. C-14 (given)"},
		{cite.Source{Title: "Handbook 44", Place: "p. C-14", How: cite.Read}, "Handbook 44, p. C-14"},
		{cite.Source{How: cite.CommonPractice}, "common practice"},
		{cite.Source{How: cite.Memory}, "memory"},
		{cite.Source{}, "unknown"},
	}
	for _, test := range tests {
		if got := test.source.String(); got != test.want {
			t.Errorf("%q, want %q", got, test.want)
		}
	}
}
