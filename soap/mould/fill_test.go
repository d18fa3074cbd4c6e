package mould_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

func nano(n int64) units.Mass { // a nanogram is the smallest mass
	return units.Sum{}.Plus(units.Sum{}.Plus(units.Milligrams(1), units.MilligramsPerGram(1)).Mass(units.Nearest),
		units.MilligramsPerGram(n)).Mass(units.Nearest)
}

// oneByOne fills cavities one at a time, as a hand does.
func oneByOne(batter units.Mass, wanted []mould.Wanted) []mould.Filled {
	filled := make([]mould.Filled, len(wanted))
	for i, w := range wanted {
		for filled[i].Whole < w.Count || i == len(wanted)-1 {
			if batter.Compare(w.Content) < 0 {
				if filled[i].Whole < w.Count {
					filled[i].Short = w.Content.Sub(batter)
					batter = units.Mass{}
				}
				break
			}
			batter = batter.Sub(w.Content)
			filled[i].Whole++
		}
	}
	return filled
}

func TestFillAgainstAHandThatFillsOneByOne(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 3000 {
		wanted := make([]mould.Wanted, 1+r.IntN(4))
		for i := range wanted {
			wanted[i] = mould.Wanted{Content: nano(1 + r.Int64N(50)), Count: 1 + r.IntN(6)}
		}
		batter := nano(r.Int64N(600))
		got, want := mould.Fill(batter, wanted), oneByOne(batter, wanted)
		if !slices.Equal(got, want) {
			t.Fatalf("%v into %v: %v, by hand %v", batter, wanted, got, want)
		}
	}
}

func TestFillWorkedByHand(t *testing.T) {
	cups := []mould.Wanted{{Content: units.Grams(46), Count: 12}}
	// 11 × 46 = 506; 514 leaves 8 of the twelfth's 46.
	if got := mould.Fill(units.Grams(514), cups); got[0] != (mould.Filled{Whole: 11, Short: units.Grams(38)}) {
		t.Errorf("514 g: %+v", got)
	}
	if got := mould.Fill(units.Grams(12*46), cups); got[0] != (mould.Filled{Whole: 12}) {
		t.Errorf("552 g: %+v", got)
	}
	if got := mould.Fill(units.Grams(14*46+45), cups); got[0] != (mould.Filled{Whole: 14}) {
		t.Errorf("689 g: %+v", got)
	}
	if got := mould.Fill(units.Mass{}, cups); got[0] != (mould.Filled{Short: units.Grams(46)}) {
		t.Errorf("nothing: %+v", got)
	}
	if got := mould.Fill(units.Grams(1), nil); len(got) != 0 {
		t.Errorf("no vessels: %+v", got)
	}
	if got := mould.Fill(units.Grams(10), []mould.Wanted{
		{Count: 3},
		{Content: units.Grams(5), Count: 1},
	}); got[0].Whole != 3 || got[1].Whole != 2 {
		t.Errorf("cavities of nothing: %+v", got)
	}
}

func TestSharedAddsUp(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 3000 {
		poured, loss := nano(r.Int64N(1e12)), nano(r.Int64N(1e11))
		reserve := units.Percent(r.IntN(101))
		filled, kept, ok := mould.Shared(poured, loss, reserve)
		if ok != (poured.Compare(loss) >= 0) {
			t.Fatalf("%v less %v: %v", poured, loss, ok)
		}
		if !ok {
			continue
		}
		if filled.Add(kept).Add(loss) != poured {
			t.Fatalf("%v + %v + %v is not %v", filled, kept, loss, poured)
		}
		if off := kept.Sub((units.Sum{}).Plus(filled, reserve).Mass(units.Nearest)); off.Compare(nano(2)) > 0 ||
			off.Compare(nano(-2)) < 0 {
			t.Fatalf("%v kept of %v at %v", kept, filled, reserve)
		}
	}
	for work, want := range map[mould.Work]int{mould.Poured: 5, mould.Piped: 15} {
		if !work.Reserve().Equal(units.Percent(want)) {
			t.Errorf("%v: %v", work, work.Reserve())
		}
	}
}

func TestTrials(t *testing.T) {
	if each, err := (mould.Trial{Count: 6, Mass: units.Grams(210)}).Each(); err != nil || each != units.Grams(35) {
		t.Errorf("6 swirls of 210 g: %v, %v", each, err)
	}
	if (mould.Trial{}).Given() || !(mould.Trial{Count: 1}).Given() || !(mould.Trial{Mass: units.Grams(1)}).Given() {
		t.Error("Given is wrong")
	}
	for _, test := range []struct {
		trial mould.Trial
		want  []string
	}{
		{mould.Trial{Count: 0, Mass: units.Grams(1)}, []string{"count"}},
		{mould.Trial{Count: 10_001, Mass: units.Grams(-1)}, []string{"count", "mass"}},
		{mould.Trial{Count: -1, Mass: units.Grams(2_000_000)}, []string{"count", "mass"}},
		{mould.Trial{Count: 3}, []string{"mass"}},
	} {
		if each, err := test.trial.Each(); !slices.Equal(paths(err), test.want) || each != (units.Mass{}) {
			t.Errorf("%+v: %v, %v", test.trial, each, err)
		}
	}
}

// Batches, by what they must be: enough, never above the moulds, and no batch too many.
func TestBatches(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 9))
	for range 5000 {
		shelves := make([]mould.Shelf, 1+r.IntN(4))
		least := 1
		for i := range shelves {
			shelves[i] = mould.Shelf{Count: 1 + r.IntN(40), Moulds: r.IntN(15)}
			if m := shelves[i].Moulds; m > 0 {
				least = max(least, (shelves[i].Count+m-1)/m)
			}
		}
		n, each, last := mould.Batches(shelves)
		if n != least {
			t.Fatalf("%v: %d batches, want %d", shelves, n, least)
		}
		filled := false
		for i, s := range shelves {
			if s.Moulds > 0 && (each[i] > s.Moulds || last[i] > s.Moulds) {
				t.Fatalf("%v: %v and %v need more moulds", shelves, each, last)
			}
			if made := (n-1)*each[i] + last[i]; made < s.Count || n == 1 && made != s.Count || last[i] > each[i] || last[i] < 0 {
				t.Fatalf("%v: %d times %v and %v", shelves, n-1, each, last)
			}
			filled = filled || n == 1 || each[i] == s.Moulds && last[i] > 0
		}
		if !filled {
			t.Fatalf("%v: %v fills no kind's moulds", shelves, each)
		}
	}
	n, each, last := mould.Batches([]mould.Shelf{{Count: 13, Moulds: 6}, {Count: 4}})
	if n != 3 || !slices.Equal(each, []int{6, 2}) || !slices.Equal(last, []int{1, 0}) {
		t.Errorf("13 cups in 6 moulds and 4 hearts: %d, %v, %v", n, each, last)
	}
}

func TestScaled(t *testing.T) {
	if got := mould.Scaled([]int{12, 1, 3}, 12, 30); !slices.Equal(got, []int{30, 3, 8}) { // 30, 2.5, 7.5
		t.Errorf("to 30: %v", got)
	}
	if got := mould.Scaled([]int{12, 1, 3}, 16, 16); !slices.Equal(got, []int{12, 1, 3}) {
		t.Errorf("to as many: %v", got)
	}
	for _, pieces := range []int{0, -3} {
		if got := mould.Scaled([]int{12, 1}, pieces, 30); !slices.Equal(got, []int{0, 0}) {
			t.Errorf("of %d pieces: %v", pieces, got)
		}
	}
}

// A batter below 0 g, as a sum may give it, fills nothing, and each kind lacks a whole cavity;
// a hand could not pour it back out of the moulds.
func TestABatterBelowNothingFillsNothing(t *testing.T) {
	wanted := []mould.Wanted{{Content: units.Grams(50), Count: 3}, {Content: units.Grams(80), Count: 2}}
	for _, batter := range []units.Mass{{}, nano(-1), units.Grams(-49), units.Grams(-500)} {
		want := []mould.Filled{{Short: units.Grams(50)}, {Short: units.Grams(80)}}
		if got := mould.Fill(batter, wanted); !slices.Equal(got, want) {
			t.Errorf("%v fills %+v, want %+v", batter, got, want)
		}
	}
}
