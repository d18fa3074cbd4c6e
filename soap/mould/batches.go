package mould

// Shelf are the cavities of one kind: how many are wanted, and how many moulds
// there are for them. The zero value wants none.
type Shelf struct {
	Count  int // wanted: 0 to Most
	Moulds int // that can be filled at a time, to Most; 0: enough
}

// Batches tells how many batches the moulds ask for, since a batter cannot wait,
// and how many cavities of each kind, in the order of shelves, one batch and the last
// one fill. All batches but the last are alike: the kind that is shortest of moulds
// fills them all, of the others a batch takes as large a part, up to the next whole one.
// Where no kind is short it is one batch, and the last is like it.
func Batches(shelves []Shelf) (n int, each, last []int) {
	n = 1
	short := -1
	for i, s := range shelves {
		if s.Moulds <= 0 || s.Count <= s.Moulds {
			continue
		}
		// count/moulds, the larger one, without a quotient.
		if short < 0 || s.Count*shelves[short].Moulds > shelves[short].Count*s.Moulds {
			short = i
			n = over(s.Count, s.Moulds)
		}
	}
	each, last = make([]int, len(shelves)), make([]int, len(shelves))
	for i, s := range shelves {
		each[i], last[i] = s.Count, s.Count
		if short >= 0 {
			each[i] = over(s.Count*shelves[short].Moulds, shelves[short].Count)
			last[i] = max(0, s.Count-(n-1)*each[i])
		}
	}
	return n, each, last
}

// Scaled gives the counts that make so many pieces as are wanted of what now makes
// another number of them: each up to the next whole one, all 0 where
// there are none of them now.
func Scaled(counts []int, pieces, wanted int) []int {
	scaled := make([]int, len(counts))
	if pieces <= 0 {
		return scaled
	}
	for i, count := range counts {
		scaled[i] = over(count*wanted, pieces)
	}
	return scaled
}

// over gives a quotient of whole numbers, rounded up.
func over(a, b int) int { return (a + b - 1) / b }
