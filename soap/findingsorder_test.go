package soap_test

import (
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/lyewright/soap"
)

// The most severe come first and those alike stay as they were found, as the library's stable sort has it: of few, and
// of more than the 64 whose places need no memory of their own.
func TestTheMostSevereFindingsComeFirstAndThoseAlikeStayInOrder(t *testing.T) {
	source := rand.New(rand.NewPCG(64, 2026))
	for _, n := range []int{0, 1, 2, 3, 10, 63, 64, 65, 100, 300} {
		for round := range 50 {
			found := make([]soap.Finding, n)
			for i := range found {
				severity := soap.Note + soap.Severity(source.IntN(1+round%3))
				found[i] = soap.Finding{Severity: severity, Subject: strconv.Itoa(i)}
			}
			want := slices.Clone(found)
			slices.SortStableFunc(want, func(a, b soap.Finding) int { return int(b.Severity) - int(a.Severity) })
			got := soap.BySeverity(found)
			if diff := cmp.Diff(listed(want), listed(got)); diff != "" {
				t.Fatalf("%d findings (-want +got):\n%s", n, diff)
			}
		}
	}
}

func listed(findings []soap.Finding) (list []string) {
	for i := range findings {
		list = append(list, findings[i].Severity.String()+" "+findings[i].Subject)
	}
	return list
}
