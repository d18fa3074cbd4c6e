package mould

import (
	"math"

	"example.com/lyewright/units"
)

// Wanted are cavities of one kind that a batter is to fill. The zero value wants none.
type Wanted struct {
	Content units.Mass // of batter in one of them, filled as asked
	Count   int        // how many: 0 or more
}

// Filled is how far a batter goes with the cavities of one kind.
type Filled struct {
	Whole int        // filled as asked; of the last kind it may be more than its count
	Short units.Mass // what the first that is not whole lacks; 0 g where all are whole
}

// Fill tells how far a batter goes: it fills the cavities in their order, and what
// is left fills more of the last kind, beyond its count. There is one [Filled] for each
// of wanted. A content that is not above 0 g is filled by nothing; a batter below 0 g
// fills nothing.
func Fill(batter units.Mass, wanted []Wanted) []Filled {
	filled := make([]Filled, len(wanted))
	if batter.Sign() < 0 {
		batter = units.Mass{}
	}
	for i, w := range wanted {
		f := &filled[i]
		if w.Content.Sign() <= 0 {
			f.Whole = w.Count
			continue
		}
		whole, _ := batter.Round(w.Content, units.Down).Per(w.Content)
		f.Whole = int(min(whole.Float(), math.MaxInt32)) // exact: a float64 holds it, and an int anywhere
		if i < len(wanted)-1 {
			f.Whole = min(f.Whole, w.Count)
		}
		left := batter.Sub(units.Sum{}.Plus(w.Content, units.Whole(f.Whole)).Mass(units.Nearest))
		if f.Whole < w.Count {
			f.Short = w.Content.Sub(left)
			left = units.Mass{} // it stands in the one that is not whole
		}
		batter = left
	}
	return filled
}
