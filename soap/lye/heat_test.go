package lye_test

import (
	"errors"
	"math"
	"reflect"
	"testing"

	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

// dry is an alkali of 100 %.
func dry(alkali lye.Alkali, m units.Mass) lye.Portion {
	return lye.Portion{Alkali: alkali, Mass: m, Hydroxide: units.Whole(1)}
}

// mixing is a kilogram of lye of a strength in percent, all of it at one
// temperature in °C before.
func mixing(alkali lye.Alkali, strength, at float64, heat lye.HeatOfSolution) lye.Mixing {
	weighed := units.Milligrams(int64(math.Round(10_000 * strength)))
	return lye.Mixing{
		Water: units.Grams(1000).Sub(weighed), WaterAt: units.Celsius(int(at)), Room: units.Celsius(int(at)), Heat: heat,
		Alkalis: []lye.Portion{dry(alkali, weighed)},
	}
}

func bound(t testing.TB, m lye.Mixing) lye.Heat {
	t.Helper()
	h, err := m.Bound()
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// Worked by hand from the heats at 25 °C and a mean heat capacity: 300 of them
// are h kJ/mol × 1000 w/39.997 over c. The mean capacities have two decimals,
// 0.15 % each; the heats at 25 °C are counted from 20 °C, worth 0.5 K: 0.7 K.
func TestAKilogramOfLyeFromTwentyDegreesGetsAsHotAsWorkedByHand(t *testing.T) {
	for _, c := range []struct{ strength, older, newer, boils float64 }{
		{25, 89.5, 92.3, 112},
		{100.0 / 3, 104.4, 108.2, 121},
		{40, 109.6, 114.3, 130},
		{50, 106.7, 113.2, 146},
	} {
		for heat, want := range map[lye.HeatOfSolution]float64{lye.Older: c.older, lye.Cautious: c.newer} {
			h := bound(t, mixing(lye.SodiumHydroxide, c.strength, 20, heat))
			if !near(h.Final.Celsius(), want, 0.7) {
				t.Errorf("%.2f %%, heat %d: %v, want %v °C", c.strength, heat, h.Final, want)
			}
			if !near(h.Rise.Kelvin(), h.Final.Celsius()-20, 1e-6) {
				t.Errorf("%.2f %%: a rise of %v to %v", c.strength, h.Rise, h.Final)
			}
			if !near(h.Boils.Celsius(), c.boils, 0.01) || !near(100*h.Strength.Float(), c.strength, 0.0001) || h.Extrapolated != (c.strength > 42.5) {
				t.Errorf("%.2f %%: %+v", c.strength, h)
			}
		}
	}
}

// The same from 5 °C and 25 °C. The hand calculation lets the rise start at 5 °C
// although heats of solution hold at 25 °C; there the parts, not the lye, are to
// be warmed by 20 K: 4.19 J/(g K) of the water and 1.49 of the alkali, in place of
// the c of the lye. That makes it hotter, at 40 % by (20 × (3.47 − 0.6 × 4.19 − 0.4
// × 1.49))/3.47 = 2.1 K, so that a 40 % lye from 5 °C does pass 100 °C.
func TestColdWaterHelpsAsMuchAsWorkedByHand(t *testing.T) {
	for _, c := range []struct {
		strength, from float64
		heat           lye.HeatOfSolution
		want, capacity float64 // J/(g K), of the lye at 25 °C
	}{
		{25, 25, lye.Cautious, 97.3, 3.65},
		{100.0 / 3, 25, lye.Older, 109, 3.57},
		{100.0 / 3, 5, lye.Older, 89, 3.57},
		{40, 5, lye.Cautious, 99.3, 3.47},
	} {
		w := c.strength / 100
		parts := (1-w)*4.19 + w*1.49
		want := c.want + (25-c.from)*(c.capacity-parts)/c.capacity
		if h := bound(t, mixing(lye.SodiumHydroxide, c.strength, c.from, c.heat)); !near(h.Final.Celsius(), want, 0.7) {
			t.Errorf("%.2f %% from %v °C: %v, want %.1f °C", c.strength, c.from, h.Final, want)
		}
	}
}

// Where the lye ends at 25 °C nothing but the heats counts. A mole of NaOH in five
// of water gives off 37 761 J (NBS Circular 500; read). With all the water as ice:
// 90.075 g × (333.6 + 25 × 4.19) J/g = 39 484 J, 1723 J too few; 130.072 g of 30.75 %
// lye, 3.60 J/(g K) at 25 °C (the slope of the enthalpy equation), fall 3.68 K short:
// 21.32 °C. The newer heat is 1640 J more: 83 J, 0.18 K, 24.82 °C. Alkali from a
// room of 10 °C takes 39.997 × 1.49 × 15 = 894 J, 1.91 K.
func TestIceTakesTheHeatThatItMeltsWith(t *testing.T) {
	for _, c := range []struct {
		heat lye.HeatOfSolution
		room int
		want float64
	}{
		{lye.Older, 25, 21.32},
		{lye.Cautious, 25, 24.82},
		{lye.Older, 10, 19.41},
	} {
		m := lye.Mixing{
			Ice: mass(t, "90.075 g"), Room: units.Celsius(c.room), Heat: c.heat,
			Alkalis: []lye.Portion{dry(lye.SodiumHydroxide, mass(t, "39.997 g"))},
		}
		h := bound(t, m)
		if !near(h.Final.Celsius(), c.want, 0.03) || h.Rise.Kelvin() != h.Final.Celsius() {
			t.Errorf("room %d °C: %v, a rise of %v, want %v °C", c.room, h.Final, h.Rise, c.want)
		}
		m.Room = units.Temperature{} // 25 °C
		if c.room == 25 && !reflect.DeepEqual(bound(t, m), h) {
			t.Errorf("without a room %v, with one of 25 °C %v", bound(t, m).Final, h.Final)
		}
	}
}

// In twenty moles of water the mole gives off 42 865 J (NBS Circular 500), and
// 360.3 g of ice take 333.6 J/g to melt alone: 120 kJ.
func TestMoreIceThanCanMeltIsRefused(t *testing.T) {
	m := lye.Mixing{Ice: mass(t, "360.3 g"), Alkalis: []lye.Portion{dry(lye.SodiumHydroxide, mass(t, "39.997 g"))}}
	h, err := m.Bound()
	refused(t, h, err, "ice", fault.ErrImpossible)
	// What melts all the same: (42 865 + 1640)/333.6 = 133.4 g of it, less what the
	// water at 20 °C gives as it cools, 226.9 × 4.19 × 20 = 19.0 kJ: 190 g in all. The
	// lye is then at 0 °C.
	last := 0
	for grams := 0; grams <= 360; grams += 2 {
		m.Ice, m.Water, m.WaterAt = units.Grams(grams), units.Grams(360-grams), units.Celsius(20)
		if _, err := m.Bound(); err == nil {
			last = grams
		}
	}
	// g × 333.6 = 44 505 + (360 − g) × 4.19 × 20: g = (44 505 + 30 168)/(333.6 + 83.8) =
	// 178.9. The alkali's own 1.49 × 25 J/g and the lye's lower capacity shift it a little.
	if last < 170 || last > 188 {
		t.Errorf("up to %d g of ice melt, want about 179 g", last)
	}
}

// A stock is dissolved dry and thinned later; how the water was divided cannot
// change the heat. The ice is chosen so that the stock stands at 25 °C, where it is
// reckoned exactly.
func TestThinningAStockGivesTheRestOfTheHeat(t *testing.T) {
	alkali := units.Grams(100)
	stock := func(ice units.Mass) lye.Mixing { // of 30 %
		return lye.Mixing{
			Ice: ice, Water: mass(t, "233.333333333 g").Sub(ice), WaterAt: units.Celsius(20), Heat: lye.Older,
			Alkalis: []lye.Portion{dry(lye.SodiumHydroxide, alkali)},
		}
	}
	low, high := 0.0, 233.0
	for range 60 {
		ice := mass(t, share(t, (low+high)/2).Text(9)+" g")
		if bound(t, stock(ice)).Final.Celsius() > 25 {
			low = (low + high) / 2
		} else {
			high = (low + high) / 2
		}
	}
	ice := mass(t, share(t, low).Text(9)+" g")
	if h := bound(t, stock(ice)); !near(h.Final.Celsius(), 25, 1e-5) {
		t.Fatalf("with %v of ice %v", ice, h.Final)
	}
	for _, more := range []int{50, 200, 700, 3000} {
		straight := stock(ice)
		straight.Water = straight.Water.Add(units.Grams(more))
		thinned := lye.Mixing{
			Water: units.Grams(more), WaterAt: units.Celsius(20), Heat: lye.Older,
			Alkalis: []lye.Portion{{Alkali: lye.SodiumHydroxide, Mass: mass(t, "333.333333333 g"), Hydroxide: units.Percent(30), Dissolved: true}},
		}
		a, b := bound(t, straight), bound(t, thinned)
		if !near(a.Final.Celsius(), b.Final.Celsius(), 2e-5) || !near(a.Strength.Float(), b.Strength.Float(), 1e-9) {
			t.Errorf("%d g more: %v at once, %v in two steps", more, a.Final, b.Final)
		}
		// A stock has given its heat of solution off already, whichever it is.
		thinned.Heat = lye.Cautious
		if c := bound(t, thinned); !reflect.DeepEqual(c, b) {
			t.Errorf("%d g more: %v by the newer heat, %v by the older", more, c.Final, b.Final)
		}
	}
}

// By the constant heat of 57.8 kJ/mol and the published equation of the heat
// capacity, integrated outside the library in steps of 0.0005 K, from 120 °C on
// constant. A mole in twenty of water, all at 25 °C: 57 800 J in 416.405 g. The
// library takes Simpson's rule in one step, worth 0.03 K over 100 K.
func TestPotassiumHydroxideGetsAsHotAsWorkedOutOutside(t *testing.T) {
	for _, c := range []struct {
		water, alkali string
		from          int
		want, within  float64
	}{
		{"360.3 g", "56.105 g", 25, 64.0645, 0.001},
		{"200 g", "100 g", 20, 136.487, 0.04},
		{"100 g", "100 g", 40, 242.249, 0.04}, // beyond the fit's 46.5 %
	} {
		h := bound(t, lye.Mixing{
			Water: mass(t, c.water), WaterAt: units.Celsius(c.from), Room: units.Celsius(c.from),
			Alkalis: []lye.Portion{dry(lye.PotassiumHydroxide, mass(t, c.alkali))},
		})
		if !near(h.Final.Celsius(), c.want, c.within) || h.Boils.Given() {
			t.Errorf("%s in %s: %v, boils at %v, want %v °C", c.alkali, c.water, h.Final, h.Boils, c.want)
		}
	}
}

// A mole of each hydroxide, all the water as ice: 5 × 18.015 g of it to 39.997 g of
// NaOH, and for a lye of the same strength 126.353 g to 56.105 g of KOH. 37 761 + 57
// 800 J less 216.428 × 438.35 = 94 871 J leave 690 J; the lye is 130.072 g of 3.60 and
// 182.458 g of 2.96 J/(g K) (the two equations at 25 °C): 0.68 K above 25 °C.
func TestTwoAlkalisAreTwoLyesOfOneStrength(t *testing.T) {
	m := lye.Mixing{
		Ice: mass(t, "216.428 g"), Heat: lye.Older,
		Alkalis: []lye.Portion{dry(lye.SodiumHydroxide, mass(t, "39.997 g")), dry(lye.PotassiumHydroxide, mass(t, "56.105 g"))},
	}
	h := bound(t, m)
	if !near(h.Final.Celsius(), 25.68, 0.03) || h.Boils.Given() {
		t.Errorf("%v, boils at %v, want 25.68 °C", h.Final, h.Boils)
	}
	if h.Strength.PercentText(2) != "30.75" {
		t.Errorf("%s %%, want 30.75 %%", h.Strength.PercentText(2))
	}
	// One alkali in two portions is that alkali.
	m.Alkalis = []lye.Portion{dry(lye.SodiumHydroxide, units.Grams(40)), dry(lye.SodiumHydroxide, units.Grams(60))}
	two := bound(t, m)
	m.Alkalis = []lye.Portion{dry(lye.SodiumHydroxide, units.Grams(100))}
	if one := bound(t, m); !near(two.Final.Celsius(), one.Final.Celsius(), 2e-6) {
		t.Errorf("%v in two portions, %v in one", two.Final, one.Final)
	}
}

// What is not hydroxide counts as water: 100 g of 98 % in 200 g are 98 g of pure
// alkali in 202 g.
func TestTheRestOfAnAlkaliCountsAsWater(t *testing.T) {
	m := lye.Mixing{Water: units.Grams(200), WaterAt: units.Celsius(25), Alkalis: []lye.Portion{dry(lye.SodiumHydroxide, units.Grams(100))}}
	m.Alkalis[0].Hydroxide = units.Percent(98)
	h := bound(t, m)
	m.Water, m.Alkalis[0] = units.Grams(202), dry(lye.SodiumHydroxide, units.Grams(98))
	if pure := bound(t, m); !reflect.DeepEqual(h, pure) {
		t.Errorf("%v and %v", h, pure)
	}
}

func TestWarmerWaterAndMoreAlkaliMakeAHotterLye(t *testing.T) {
	for _, alkali := range both {
		for _, strength := range []float64{1, 10, 25, 40, 50} {
			before := units.Temperature{}
			for at := range 101 {
				m := mixing(alkali, strength, float64(at), lye.Cautious)
				m.Room = units.Celsius(25)
				h := bound(t, m)
				if h.Final.Compare(before) <= 0 {
					t.Fatalf("%v %v %% from %d °C: %v, not above %v", alkali, strength, at, h.Final, before)
				}
				before = h.Final
			}
		}
		// Sodium hydroxide up to 40 %: stronger lye gives less heat per mole.
		for _, at := range []float64{0, 20, 60, 100} {
			before := units.Temperature{}
			for strength := 0.5; strength <= 40; strength += 0.5 {
				h := bound(t, mixing(alkali, strength, at, lye.Cautious))
				if h.Final.Compare(before) <= 0 {
					t.Fatalf("%v %v %% from %v °C: %v, not above %v", alkali, strength, at, h.Final, before)
				}
				before = h.Final
			}
		}
	}
}

// Thinning a weak stock near 0 °C gives off nothing. Without ice there is none to
// complain of.
func TestThinningAColdStockIsNoMatterOfIce(t *testing.T) {
	h := bound(t, lye.Mixing{
		Water: units.Grams(9), WaterAt: units.Celsius(0), Room: units.Celsius(0),
		Alkalis: []lye.Portion{{Alkali: lye.SodiumHydroxide, Mass: units.Grams(100), Hydroxide: units.Percent(8), Dissolved: true}},
	})
	if h.Final != units.Celsius(0) {
		t.Errorf("%v", h.Final)
	}
}

func TestHotIsWithinTenKelvinsOfBoilingOrAboveAHundredDegrees(t *testing.T) {
	for _, c := range []struct {
		final string
		boils units.Temperature
		limit int
		hot   bool
	}{
		{"110 °C", units.Celsius(120), 110, true},
		{"109.999999 °C", units.Celsius(120), 110, false},
		{"100 °C", units.Temperature{}, 100, false}, // potassium hydroxide
		{"100.000001 °C", units.Temperature{}, 100, true},
	} {
		final, err := units.ParseTemperature(c.final)
		if err != nil {
			t.Fatal(err)
		}
		if limit, hot := (lye.Heat{Final: final, Boils: c.boils}).Hot(); limit != units.Celsius(c.limit) || hot != c.hot {
			t.Errorf("%s against %v: %t, held against %v", c.final, c.boils, hot, limit)
		}
	}
}

// Hydroxides fill parts of what the water can hold: 52.1 % and 52.8 % at 20 °C.
func TestALyeStrongerThanDissolvesIsRefused(t *testing.T) {
	for _, c := range []struct {
		alkali lye.Alkali
		grams  string // in a kilogram of lye
		ok     bool
	}{
		{lye.SodiumHydroxide, "521 g", true},
		{lye.SodiumHydroxide, "521.001 g", false},
		{lye.PotassiumHydroxide, "528 g", true},
		{lye.PotassiumHydroxide, "528.001 g", false},
	} {
		m := mass(t, c.grams)
		h, err := lye.Mixing{Water: units.Grams(1000).Sub(m), WaterAt: units.Celsius(20), Alkalis: []lye.Portion{dry(c.alkali, m)}}.Bound()
		if (err == nil) != c.ok {
			t.Errorf("%s of %v: %v", c.grams, c.alkali, err)
		}
		if !c.ok {
			refused(t, h, err, "alkali_mass", fault.ErrImpossible)
		}
	}
	// Half of the one's share and half of the other's: 260.5 + 264 g.
	m := lye.Mixing{Water: mass(t, "475.5 g"), WaterAt: units.Celsius(20), Alkalis: []lye.Portion{
		dry(lye.SodiumHydroxide, mass(t, "260.5 g")), dry(lye.PotassiumHydroxide, mass(t, "263.9 g")),
	}}
	if _, err := m.Bound(); err != nil {
		t.Error(err)
	}
	m.Alkalis[1].Mass = mass(t, "264.6 g")
	if _, err := m.Bound(); !errors.Is(err, fault.ErrImpossible) {
		t.Errorf("%v", err)
	}
}

func TestAnAlkaliWithoutHydroxideGivesOffNoHeatThatIsTold(t *testing.T) {
	m := lye.Mixing{Water: units.Grams(500), WaterAt: units.Celsius(20), Alkalis: []lye.Portion{{Alkali: lye.SodiumHydroxide, Mass: units.Grams(100), Hydroxide: units.Whole(0)}}}
	h, err := m.Bound()
	refused(t, h, err, "purity", fault.ErrRange)
}
