package lye_test

import (
	"math/rand/v2"
	"testing"

	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

// A kilogram of 50 % from flakes of 98 %: 500/0.98 = 510.2040816326... g, rounded
// down, and the rest of the kilogram.
func TestAStockIsMadeAsWorkedByHand(t *testing.T) {
	for _, c := range []struct {
		strength, make, purity, alkali, water string
	}{
		{"50", "1000 g", "98", "510.204081632 g", "489.795918368 g"},
		{"50", "1000 g", "100", "500 g", "500 g"},
		{"25", "400 g", "100", "100 g", "300 g"},
	} {
		s := lye.Stock{Alkali: lye.SodiumHydroxide, Strength: percent(c.strength)}
		alkali, water, err := s.Make(mass(t, c.make), percent(c.purity))
		if err != nil || alkali.String() != c.alkali || water.String() != c.water {
			t.Errorf("%s of %s %% from %s %%: %v and %v, %v, want %s and %s", c.make, c.strength, c.purity, alkali, water, err,
				c.alkali, c.water)
		}
	}
}

// 100 g of hydroxide are in 200 g of 50 % stock; a lye of 25 % weighs 400 g, one of
// 30 % 333.333... g.
func TestAStockIsThinnedAsWorkedByHand(t *testing.T) {
	for _, c := range []struct{ strength, hydroxide, lye, stock, water string }{
		{"50", "100 g", "25", "200 g", "200 g"},
		{"50", "100 g", "30", "200 g", "133.333333333 g"},
		{"50", "100 g", "50", "200 g", "0 g"},
		{"30", "100 g", "30", "333.333333333 g", "0 g"}, // rounded down
		{"45", "64.3 g", "33", "142.888888888 g", "51.95959596 g"},
	} {
		s := lye.Stock{Alkali: lye.PotassiumHydroxide, Strength: percent(c.strength)}
		stock, water, err := s.For(mass(t, c.hydroxide), percent(c.lye))
		if err != nil || stock.String() != c.stock || water.String() != c.water {
			t.Errorf("%s to %s %% from %s %%: %v and %v, %v, want %s and %s", c.hydroxide, c.lye, c.strength, stock, water, err,
				c.stock, c.water)
		}
	}
}

// What was made holds what is taken from it again, less than a few nanograms of
// rounding down; the thinned lye has the strength asked for; never more alkali.
func TestStockMadeAndTakenComesBack(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 2026))
	nanogram := mass(t, "0.000000001 g")
	for range 500 {
		alkali := both[random.IntN(2)]
		strength := units.MilligramsPerGram(10 + random.IntN(500))
		s := lye.Stock{Alkali: alkali, Strength: strength}
		purity := units.MilligramsPerGram(850 + random.IntN(151))
		want := units.Milligrams(1000 + random.IntN(5_000_000))
		weighed, water, err := s.Make(want, purity)
		if err != nil {
			t.Fatal(err)
		}
		if weighed.Add(water) != want {
			t.Errorf("%v and %v are not %v", weighed, water, want)
		}
		holds := units.Sum{}.Plus(weighed, purity).Mass(units.Down)
		if wanted := (units.Sum{}).Plus(want, strength).Mass(units.Up); holds.Compare(wanted) > 0 ||
			wanted.Sub(holds).Compare((units.Sum{}).Plus(nanogram, units.Whole(3)).Mass(units.Up)) > 0 {
			t.Errorf("%v of %v hold %v, not %v", weighed, purity, holds, wanted)
		}
		thin := strength.Times(units.MilligramsPerGram(100 + random.IntN(901)))
		taken, more, err := s.For(holds, thin)
		if err != nil {
			t.Fatal(err)
		}
		if back := (units.Sum{}).Plus(taken, strength).Mass(units.Up); back.Compare(holds) > 0 ||
			holds.Sub(back).Compare(nanogram) > 0 {
			t.Errorf("%v of stock for %v hold %v", taken, holds, back)
		}
		if more.Sign() < 0 {
			t.Errorf("%v of water", more)
		}
		got, _ := holds.Per(taken.Add(more))
		// A nanogram of 10 mg of hydroxide or more.
		if !near(got.Float()/thin.Float(), 1, 1e-6) {
			t.Errorf("%v is thinned to %v, want %v", strength, got, thin)
		}
	}
}

func TestStocksThatCannotBeAreRefused(t *testing.T) {
	good := lye.Stock{Alkali: lye.SodiumHydroxide, Strength: units.Percent(50)}
	gram := units.Grams(1)
	for _, c := range []struct {
		stock  lye.Stock
		mass   units.Mass
		purity units.Ratio
		path   string
		kind   error
	}{
		{lye.Stock{Strength: units.Percent(50)}, gram, units.Whole(1), "alkali", fault.ErrMissing},
		{lye.Stock{Alkali: lye.SodiumHydroxide}, gram, units.Whole(1), "strength", fault.ErrMissing},
		{lye.Stock{Alkali: lye.SodiumHydroxide, Strength: units.Whole(0)}, gram, units.Whole(1), "strength", fault.ErrRange},
		{
			lye.Stock{Alkali: lye.SodiumHydroxide, Strength: percent("52.11")},
			gram, units.Whole(1), "strength",
			fault.ErrRange,
		},
		{
			lye.Stock{Alkali: lye.PotassiumHydroxide, Strength: percent("52.81")},
			gram, units.Whole(1), "strength",
			fault.ErrRange,
		},
		{good, units.Mass{}, units.Whole(1), "make", fault.ErrMissing},
		{good, units.Grams(-1), units.Whole(1), "make", fault.ErrRange},
		{good, gram, units.Ratio{}, "purity", fault.ErrMissing},
		{good, gram, units.Whole(0), "purity", fault.ErrRange},
		{good, gram, percent("100.1"), "purity", fault.ErrRange},
		{good, gram, percent("49.9"), "purity", fault.ErrImpossible},
	} {
		alkali, water, err := c.stock.Make(c.mass, c.purity)
		refused(t, [2]units.Mass{alkali, water}, err, c.path, c.kind)
	}
	for _, c := range []struct {
		stock lye.Stock
		mass  units.Mass
		lye   units.Ratio
		path  string
		kind  error
	}{
		{lye.Stock{}, gram, units.Percent(30), "alkali", fault.ErrMissing},
		{lye.Stock{}, gram, units.Percent(30), "strength", fault.ErrMissing},
		{good, units.Mass{}, units.Percent(30), "hydroxide", fault.ErrMissing},
		{good, units.Grams(-1), units.Percent(30), "hydroxide", fault.ErrRange},
		{good, gram, units.Ratio{}, "lye", fault.ErrMissing},
		{good, gram, units.Whole(0), "lye", fault.ErrRange},
		{good, gram, percent("50.1"), "strength", fault.ErrImpossible},
	} {
		stock, water, err := c.stock.For(c.mass, c.lye)
		refused(t, [2]units.Mass{stock, water}, err, c.path, c.kind)
	}
	// What just dissolves is a stock.
	for alkali, most := range map[lye.Alkali]string{lye.SodiumHydroxide: "52.1", lye.PotassiumHydroxide: "52.8"} {
		if _, _, err := (lye.Stock{Alkali: alkali, Strength: percent(most)}).Make(gram, units.Whole(1)); err != nil {
			t.Error(err)
		}
	}
}
