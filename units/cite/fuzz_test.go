package cite_test

import (
	"slices"
	"testing"

	"example.com/lyewright/units/cite"
)

func FuzzParseHow(f *testing.F) {
	f.Add("read") // one of the five words
	words := []string{"read", "memory", "common practice", "computed", "given"}
	f.Fuzz(func(t *testing.T, word string) {
		how := cite.ParseHow(word)
		switch {
		case slices.Contains(words, word):
			if how == cite.Unknown || how.String() != word {
				t.Errorf("%q is %v", word, how)
			}
		case how != cite.Unknown || how.String() != "unknown":
			t.Errorf("%q is %v", word, how)
		}
	})
}
