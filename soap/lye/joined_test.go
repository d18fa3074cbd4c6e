package lye_test

import (
	"testing"

	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

// 1000 g of oils at 40 °C, 1.807 + 0.002492 × 40 = 1.907 to 2.566 + 0.003477 × 40 =
// 2.705 J/(g K), and 400 g of 30 % lye at 25 °C, 3.61 J/(g K): 1907 and 1444 J/K make
// 33.54 °C, 2705 and 1444 make 34.78 °C. The other way round, oils at 25 °C (1.869 and
// 2.653) and lye at 40 °C (3.61 still): 31.54 and 30.29 °C. 10 % lye at 5 °C counts
// as it does at 25 °C, below which its equation does not reach: 3.87 J/(g K), 1548
// J/K, 24.32 and 27.26 °C.
func TestOilsAndLyeMeetWhereWorkedByHand(t *testing.T) {
	for _, c := range []struct {
		oils, lye, strength int
		low, high           float64
	}{
		{40, 25, 30, 33.54, 34.78},
		{25, 40, 30, 30.29, 31.54},
		{35, 35, 30, 35, 35},
		{40, 5, 10, 24.32, 27.26},
	} {
		low, high, err := lye.Joining{
			Oils: units.Grams(1000), OilsAt: units.Celsius(c.oils), Lye: units.Grams(400), LyeAt: units.Celsius(c.lye),
			Alkali: lye.SodiumHydroxide, Strength: units.Percent(c.strength),
		}.Temperature()
		if err != nil || !near(low.Celsius(), c.low, 0.02) || !near(high.Celsius(), c.high, 0.02) {
			t.Errorf("oils %d °C, lye %d °C: %v to %v, %v, want %v to %v °C", c.oils, c.lye, low, high, err, c.low, c.high)
		}
	}
}

// Water's heat capacity is 4.19 J/(g K), as the equation for potassium hydroxide has
// it at 0 %: 4190 and 1907 J/K for a kilogram of each.
func TestWaterCountsAsALyeOfNoStrength(t *testing.T) {
	low, high, err := lye.Joining{
		Oils: units.Grams(1000), OilsAt: units.Celsius(40), Lye: units.Grams(1000), LyeAt: units.Celsius(20),
		Alkali: lye.PotassiumHydroxide, Strength: units.Percent(0),
	}.Temperature()
	// (1906.68 × 40 + 4190 × 20)/6096.68 and (2705.08 × 40 + 4190 × 20)/6895.08.
	if err != nil || !near(low.Celsius(), 26.255, 0.001) || !near(high.Celsius(), 27.846, 0.001) {
		t.Errorf("%v to %v, %v", low, high, err)
	}
}

func TestJoiningLiesBetweenTheTwo(t *testing.T) {
	for _, alkali := range both {
		for oils := 0; oils <= 100; oils += 10 {
			for at := 0; at <= 100; at += 10 {
				for strength := 0; strength <= 50; strength += 10 {
					low, high, err := lye.Joining{
						Oils: units.Grams(700), OilsAt: units.Celsius(oils), Lye: units.Grams(300), LyeAt: units.Celsius(at),
						Alkali: alkali, Strength: units.Percent(strength),
					}.Temperature()
					if err != nil {
						t.Fatal(err)
					}
					if low.Compare(high) > 0 || low.Celsius() < float64(min(oils, at))-1e-6 || high.Celsius() > float64(max(oils, at))+1e-6 {
						t.Errorf("%v %d %%: oils %d °C, lye %d °C make %v to %v", alkali, strength, oils, at, low, high)
					}
				}
			}
		}
	}
}

func TestJoiningsThatCannotBeAreRefused(t *testing.T) {
	good := lye.Joining{
		Oils: units.Grams(1000), OilsAt: units.Celsius(40), Lye: units.Grams(400), LyeAt: units.Celsius(25),
		Alkali: lye.SodiumHydroxide, Strength: units.Percent(30),
	}
	for _, c := range []struct {
		spoil func(*lye.Joining)
		path  string
		kind  error
	}{
		{func(j *lye.Joining) { j.Alkali = 0 }, "alkali", fault.ErrMissing},
		{func(j *lye.Joining) { j.Oils = units.Mass{} }, "oils", fault.ErrRange},
		{func(j *lye.Joining) { j.Lye = units.Grams(-1) }, "lye", fault.ErrRange},
		{func(j *lye.Joining) { j.OilsAt = units.Temperature{} }, "oils_temperature", fault.ErrMissing},
		{func(j *lye.Joining) { j.OilsAt = units.Celsius(101) }, "oils_temperature", fault.ErrRange},
		{func(j *lye.Joining) { j.LyeAt = units.Temperature{} }, "lye_temperature", fault.ErrMissing},
		{func(j *lye.Joining) { j.LyeAt = units.Celsius(-1) }, "lye_temperature", fault.ErrRange},
		{func(j *lye.Joining) { j.Strength = units.Ratio{} }, "strength", fault.ErrMissing},
		{func(j *lye.Joining) { j.Strength = percent("50.1") }, "strength", fault.ErrRange},
	} {
		bad := good
		c.spoil(&bad)
		low, high, err := bad.Temperature()
		refused(t, [2]units.Temperature{low, high}, err, c.path, c.kind)
	}
}

// 10 °F exactly are not over 10 °F, wherever a thermometer in °F stands and however
// the microkelvins round.
func TestTenDegreesFahrenheitAreNotTooFarApart(t *testing.T) {
	at := func(tenths int) units.Temperature {
		f, err := units.ParseTemperature(share(t, float64(tenths)/10).Text(1) + " °F")
		if err != nil {
			t.Fatal(err)
		}
		return f
	}
	for tenths := 320; tenths <= 2020; tenths++ {
		for _, pair := range [][2]units.Temperature{{at(tenths), at(tenths + 100)}, {at(tenths + 100), at(tenths)}} {
			apart, limit, over := lye.Apart(pair[0], pair[1])
			if over || limit.Text(1) != "5.6" || apart.Text(4) != "5.5556" {
				t.Fatalf("%v and %v: %v apart, over %v: %t", pair[0], pair[1], apart, limit, over)
			}
		}
		if apart, limit, over := lye.Apart(at(tenths), at(tenths+101)); !over {
			t.Fatalf("10.1 °F: %v apart, not over %v", apart, limit)
		}
	}
}
