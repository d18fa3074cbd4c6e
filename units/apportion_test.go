package units_test

import (
	"math/big"
	"testing"

	"example.com/lyewright/units"
	"github.com/google/go-cmp/cmp"
)

// Worked by hand. The largest share, the first of equals, takes what is left.
func TestApportionedPartsAreRoundedAndTheLargestTakesTheRest(t *testing.T) {
	third := units.Whole(1).Over(units.Whole(3))
	tests := []struct {
		name   string
		total  string
		shares []units.Ratio
		want   []string
	}{
		{"thirds", "100 g", []units.Ratio{third, third, third}, []string{"33.333333334 g", "33.333333333 g", "33.333333333 g"}},
		{"halves of an odd nanogram", "0.000000003 g", []units.Ratio{units.Percent(50), units.Percent(50)}, []string{"0.000000001 g", "0.000000002 g"}},
		{"largest in the middle", "10 g", []units.Ratio{units.Percent(20), units.Percent(60), units.Percent(10)}, []string{"2 g", "7 g", "1 g"}},
		{"shares beyond a whole", "10 g", []units.Ratio{units.Percent(60), units.Percent(70)}, []string{"6 g", "4 g"}},
		{"a share not given", "10 g", []units.Ratio{{}, units.Percent(0)}, []string{"0 g", "10 g"}},
		{"one share", "10 g", []units.Ratio{units.Percent(1)}, []string{"10 g"}},
		{"nothing to apportion", "0 g", []units.Ratio{units.Percent(40), units.Percent(60)}, []string{"0 g", "0 g"}},
		{"no shares", "10 g", nil, nil},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			var got []string
			for _, part := range units.Apportion(mass(t, test.total), test.shares) {
				got = append(got, part.String())
			}
			if diff := cmp.Diff(test.want, got); diff != "" {
				t.Errorf("parts (-want +got):\n%s", diff)
			}
		})
	}
}

func TestApportionedPartsAddUpToTheNanogram(t *testing.T) {
	s := newSource(20)
	for range 3_000 {
		ng := s.Int64N(1_000_000_000_000_001) // to a tonne
		if s.IntN(4) == 0 {
			ng = -s.Int64N(1000)
		}
		total := nanograms(t, ng)
		shares := make([]units.Ratio, 1+s.IntN(12))
		exact := make([]*big.Rat, len(shares))
		left := units.Whole(1)
		scheme := s.IntN(4)
		for i := range shares {
			switch {
			case scheme == 0: // equal
				shares[i] = units.Whole(1).Over(units.Whole(len(shares)))
			case scheme == 1 && i == len(shares)-1: // exactly a whole
				shares[i] = left
			case scheme == 1:
				shares[i] = left.Times(units.MustRatio("0." + s.digits(1+s.IntN(12))))
				left = left.Sub(shares[i])
			case scheme == 2: // wide, and whatever sum
				shares[i] = units.MustRatio("0." + s.digits(13+s.IntN(22)))
			default: // far beyond a whole
				shares[i] = units.MustRatio(s.digits(1+s.IntN(3)) + "." + s.digits(1+s.IntN(20)))
			}
			exact[i] = exactly(t, shares[i])
		}
		parts := units.Apportion(total, shares)
		if len(parts) != len(shares) {
			t.Fatalf("%d parts of %d shares", len(parts), len(shares))
		}
		largest := 0
		for i := range exact {
			if exact[i].Cmp(exact[largest]) > 0 {
				largest = i
			}
		}
		var sum units.Mass
		for i, part := range parts {
			sum = sum.Add(part)
			if i == largest {
				continue
			}
			want := new(big.Rat).SetFrac(rounded(times(exact[i], big.NewRat(ng, 1)), units.Nearest), big.NewInt(1_000_000_000))
			if !agrees(part, want) {
				t.Fatalf("%v × %s is %v", total, plain(exact[i], 34), part)
			}
		}
		if sum != total {
			t.Fatalf("the parts of %v add up to %v", total, sum)
		}
	}
}
