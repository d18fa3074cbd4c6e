package tint_test

import (
	"slices"
	"testing"

	"example.com/lyewright/colour/tint"
)

// A soap as blue as 1.2 % of ultramarine makes it, where at most 0.3 % may be used: the
// nearest has all the blue that it may, and no yellow, the hue that is opposite. Where each stands is said in the order
// in which they were asked for.
func TestWhatHoldsTheNearestBackIsNamedInItsPlace(t *testing.T) {
	w := dusk()
	c := calibrated(t, w.swatches(twelve, 0, 0))
	target := predicted(t, c, w.loads(map[string]float64{blue: 1.2})).Lab
	for _, order := range [][]string{{blue, yellow}, {yellow, blue}} {
		q := tint.Wanted{Target: target}
		var want []tint.At
		for _, id := range order {
			most, at := share(1.5), tint.AtNone
			if id == blue {
				most, at = share(0.3), tint.AtMost
			}
			q.Free = append(q.Free, tint.Free{Colourant: id, Most: most, Price: 1})
			want = append(want, at)
		}
		if m := matched(t, c, q); !slices.Equal(m.Nearest, want) {
			t.Errorf("%v stand at %v, want %v", order, m.Nearest, want)
		}
	}
}
