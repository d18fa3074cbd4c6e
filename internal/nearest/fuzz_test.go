package nearest_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/internal/nearest"
)

// changes counts by trying them all how many letters turn one word into another: one
// changed, added or dropped, or two neighbours swapped and then left alone.
func changes(a, b string, seen map[[2]int]int) int {
	if a == "" || b == "" {
		return len(a) + len(b)
	}
	at := [2]int{len(a), len(b)}
	if n, done := seen[at]; done {
		return n
	}
	n := changes(a[1:], b[1:], seen)
	if a[0] != b[0] {
		n = 1 + min(n, changes(a[1:], b, seen), changes(a, b[1:], seen))
		if len(a) > 1 && len(b) > 1 && a[0] == b[1] && a[1] == b[0] {
			n = min(n, 1+changes(a[2:], b[2:], seen))
		}
	}
	seen[at] = n
	return n
}

func FuzzNames(f *testing.F) {
	f.Add("olvie", "olive\nolive-pomace\npalm") // two neighbours swapped
	f.Fuzz(func(t *testing.T, name, list string) {
		known := strings.Split(list, "\n")
		if len(known) > 20 || len(list) > 400 {
			return
		}
		names := nearest.Names(name, known)
		if len(names) > 3 {
			t.Fatalf("%q for %q", names, name)
		}
		lower := strings.ToLower(name)
		off := func(k string) int { return changes(lower, strings.ToLower(k), map[[2]int]int{}) }
		for i, n := range names {
			if !slices.Contains(known, n) {
				t.Errorf("%q is offered, and not known", n)
			}
			if i > 0 && off(names[i-1]) > off(n) && off(n) <= max(1, len(lower)/3) {
				t.Errorf("%q stands before %q, which is nearer to %q", names[i-1], n, name)
			}
		}
		// Whoever types a name that there is, in whatever case, is offered it first.
		if i := slices.IndexFunc(known, func(k string) bool { return strings.ToLower(k) == lower }); i >= 0 && name != "" && len(name) <= 64 {
			if len(names) == 0 || strings.ToLower(names[0]) != lower {
				t.Errorf("%q is known, and %q offered", name, names)
			}
		}
		// Less than three are offered only where no other is near.
		if len(names) < 3 && name != "" && len(name) <= 64 {
			near := 0
			for _, k := range known {
				if off(k) <= max(1, len(lower)/3) {
					near++
				}
			}
			if near > len(names) {
				t.Errorf("%d of %q are near to %q, and %q offered", near, known, name, names)
			}
		}
		remedy := nearest.Remedy(name, known)
		if (remedy == "") != (len(names) == 0) || remedy != "" && (!strings.HasPrefix(remedy, "did you mean "+names[0]) || !strings.HasSuffix(remedy, names[len(names)-1]+"?")) {
			t.Errorf("%q for %q", remedy, names)
		}
		if begun := nearest.Begun(name, known); begun != "" && !strings.Contains(begun, "did you mean ") {
			t.Errorf("%q for %q", begun, name)
		}
	})
}
