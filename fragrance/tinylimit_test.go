package fragrance_test

import (
	"testing"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/units"
)

// A certificate for 10^-12 % (a slip, or a paper that means none): 0.12 g in 100 g of a dry
// bar are 1.2 × 10^11 times that. It is far more than all of the limit, and never less than nothing.
func TestATinyLimitIsUsedManyTimesOver(t *testing.T) {
	s := shelf(t, fragrance.Supplied{ID: "lantern-trace", Certificates: []fragrance.Certificate{{
		Category: "9",
		Limit:    units.MustRatio("0.000000000001 %"), Amendment: 51,
	}}})
	material, found := s.Find("lantern-trace")
	if !found {
		t.Fatal("lantern-trace is not on its shelf")
	}
	for _, milligrams := range []int{120, 150, 1000, 5000} { // 0.12 g are 1.2 × 10^11 times it: times 10^8 no int64
		verdict := fragrance.Judge(fragrance.IFRAAndEU, units.Grams(100),
			[]fragrance.Dose{{Material: material, Mass: units.Milligrams(milligrams)}})
		over := verdict.Over()
		if len(over) == 0 {
			t.Fatal("the limit is passed by nothing")
		}
		for _, use := range over {
			if use.Used.Compare(units.Whole(1_000_000)) < 0 {
				t.Errorf("%d mg: %s of the limit is used, want a million times it or more", milligrams, use.Used.Text(8))
			}
		}
		for _, reckoned := range verdict.All() {
			for _, c := range reckoned.Caps {
				if c.Used.Sign() < 0 || c.Most.Sign() < 0 {
					t.Errorf("%d mg: %+v: below nothing", milligrams, c)
				}
			}
		}
	}
}
