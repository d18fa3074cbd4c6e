package madeup

import "testing"

// Sampled checks how many rows of a table are typed in a second time: so many were drawn
// by chance when it had so many rows, and every row that has come since is typed, too.
func Sampled(t *testing.T, table string, typed, drawn, rows, atTheDraw int) {
	t.Helper()
	if since := rows - atTheDraw; typed < drawn+since {
		t.Errorf("%s: %d rows, %d more than at the draw, and %d of them all typed in again: type each new one from its source, too", table, rows, since, typed)
	}
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
