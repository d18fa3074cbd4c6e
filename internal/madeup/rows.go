package madeup

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// Drawn gives n of a table's rows by chance, the same ones from the same seed: those that
// a test types in a second time. Keys name the rows; their order does not matter.
func Drawn(seed uint64, n int, keys []string) []string {
	keys = slices.Clone(keys)
	slices.Sort(keys)
	r := rand.New(rand.NewPCG(seed, 11))
	r.Shuffle(len(keys), func(i, j int) { keys[i], keys[j] = keys[j], keys[i] })
	return keys[:min(n, len(keys))]
}

// Covered checks how many of a table's rows a test checks against something outside: as
// many as were counted when it was written. Where there are more, the count is to be
// raised with them; it never falls.
func Covered(t *testing.T, table string, checked map[string]bool, rows, counted int) {
	t.Helper()
	n := 0
	for _, is := range checked {
		if is {
			n++
		}
	}
	t.Logf("%s: %d of %d rows, %d %%", table, n, rows, 100*n/max(1, rows))
	switch {
	case n < counted:
		t.Errorf("%s: %d of %d rows are checked, were %d", table, n, rows, counted)
	case n > counted:
		t.Errorf("%s: %d of %d rows are checked, and %d counted: raise the count", table, n, rows, counted)
	}
}
