package lye_test

import (
	"math/big"
	"math/rand/v2"
	"testing"

	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

func titrated(t testing.TB, titration lye.Titration) lye.Titrated {
	t.Helper()
	found, err := titration.Result()
	if err != nil {
		t.Fatal(err)
	}
	return found
}

// Each mL of 1 N acid is 40.00 mg of total alkali as NaOH, and each between the end
// points 106.0 mg of Na2CO3; of KOH 56.11 and 138.2 mg (USP 35 and JECFA,
// monographs Sodium Hydroxide and Potassium Hydroxide; read). Half a unit of the
// last printed place.
func TestAMillilitreOfAcidIsWhatTheMonographsSay(t *testing.T) {
	for _, c := range []struct {
		alkali               lye.Alkali
		hydroxide, carbonate float64 // mg
	}{
		{lye.SodiumHydroxide, 40.00, 106.0},
		{lye.PotassiumHydroxide, 56.11, 138.2},
	} {
		one := titrated(t, lye.Titration{
			Alkali: c.alkali, Sample: units.Grams(1), Normality: units.Whole(1),
			Total: units.Millilitres(1),
		})
		if got := 1000 * one.High.Float(); !near(got, c.hydroxide, 0.0050001) {
			t.Errorf("%v: %v mg of total alkali, printed %v", c.alkali, got, c.hydroxide)
		}
		two := titrated(t, lye.Titration{
			Alkali: c.alkali, Sample: units.Grams(1), Normality: units.Whole(1),
			First: units.Millilitres(3), Total: units.Millilitres(4),
		})
		if got := 1000 * two.Carbonate.Float(); !near(got, c.carbonate, 0.050001) {
			t.Errorf("%v: %v mg of carbonate, printed %v", c.alkali, got, c.carbonate)
		}
		// 2 × 3 − 4 = 2 mL are hydroxide.
		if !two.Hydroxide.Equal(one.High.Times(units.Whole(2))) {
			t.Errorf("%v: %v of hydroxide, %v a millilitre", c.alkali, two.Hydroxide, one.High)
		}
	}
}

// An exercise of school chemistry, printed with its answer (read): 0.4 g of a mixture
// of NaOH and Na2CO3, 0.1 N acid, 17.5 mL to phenolphthalein and 1.5 mL more to
// methyl orange; 0.0159 g of carbonate, 3.97 %. Of the 17.5 mL carbonate took 1.5, so
// the hydroxide is 16.0 × 0.1 × 39.997/400 = 16.0 %. Another printed solution gives
// all 17.5 mL to the hydroxide and arrives at 17.5 %: the mistake to be made here.
func TestThePrintedExerciseOfTwoEndPoints(t *testing.T) {
	found := titrated(t, lye.Titration{
		Alkali: lye.SodiumHydroxide, Sample: mass(t, "0.4 g"), Normality: units.MustRatio("0.1"),
		First: volume(t, "17.5 mL"), Total: volume(t, "19.0 mL"),
	})
	if got := found.Hydroxide.PercentText(1); got != "16" {
		t.Errorf("%s %% of hydroxide, want 16.0 and not 17.5", got)
	}
	if got := found.Carbonate.PercentText(2); got != "3.97" {
		t.Errorf("%s %% of carbonate, want 3.97", got)
	}
	if got, _ := (units.Sum{}).Plus(mass(t, "0.4 g"),
		found.Carbonate).Mass(units.Nearest).Per(units.Grams(1)); got.Text(4) != "0.0159" {
		t.Errorf("%s g of carbonate, want 0.0159", got.Text(4))
	}
	// No reading is off: the bounds are the figure itself.
	if !found.Low.Equal(found.Hydroxide) || !found.High.Equal(found.Hydroxide) {
		t.Errorf("%v to %v", found.Low, found.High)
	}
}

// By hand: 1.500 g of flakes, 1.000 N acid, 36.30 and 36.60 mL. Carbonate 0.30 ×
// 105.988/1500 = 2.12 %, hydroxide (72.60 − 36.60) × 39.997/1500 = 95.99 %, total
// alkali 36.60 × 39.997/1500 = 97.59 %.
func TestFlakesOfUsualPurity(t *testing.T) {
	flakes := lye.Titration{
		Alkali: lye.SodiumHydroxide, Sample: mass(t, "1.5 g"), Normality: units.Whole(1),
		First: volume(t, "36.30 mL"), Total: volume(t, "36.60 mL"),
	}
	found := titrated(t, flakes)
	if found.Hydroxide.PercentText(2) != "95.99" || found.Carbonate.PercentText(2) != "2.12" {
		t.Errorf("%s %% and %s %%", found.Hydroxide.PercentText(2), found.Carbonate.PercentText(2))
	}
	r, ok := found.Range()
	if !ok || !r.Typical.Equal(found.Hydroxide) || !r.Low.Equal(found.Low) || !r.High.Equal(found.High) {
		t.Errorf("%+v, %t of %+v", r, ok, found)
	}
	// The balance off by 0.01 g, the burette by 0.05 mL at each of four readings, the
	// acid by 0.2 %: (36.00 − 0.20) × 0.998 × 39.997/1510 and (36.00 + 0.20) × 1.002 ×
	// 39.997/1490 = 94.64 to 97.37 %.
	flakes.Balance, flakes.Burette, flakes.Titrant = mass(t, "0.01 g"), volume(t, "0.05 mL"), percent("0.2")
	if off := titrated(t, flakes); off.Low.PercentText(2) != "94.64" || off.High.PercentText(2) != "97.37" ||
		!off.Hydroxide.Equal(found.Hydroxide) {
		t.Errorf("%s to %s %%", off.Low.PercentText(2), off.High.PercentText(2))
	}
	// Methyl orange alone: 97.59 % is the most.
	flakes = lye.Titration{Alkali: flakes.Alkali, Sample: flakes.Sample, Normality: flakes.Normality, Total: flakes.Total}
	one := titrated(t, flakes)
	if one.High.PercentText(2) != "97.59" || one.Hydroxide.Given() || one.Carbonate.Given() || one.Low.Given() {
		t.Errorf("%+v", one)
	}
	if r, ok := one.Range(); ok || r.Given() {
		t.Errorf("%v without a low end", r)
	}
	// With at most 3 % of carbonate as on a certificate: 97.59 − 0.7547 × 3 = 95.33 %.
	flakes.CarbonateMax = units.Percent(3)
	limited := titrated(t, flakes)
	if limited.Low.PercentText(2) != "95.33" || limited.High.PercentText(2) != "97.59" {
		t.Errorf("%s to %s %%", limited.Low.PercentText(2), limited.High.PercentText(2))
	}
	if r, ok := limited.Range(); !ok || !r.Typical.Equal(limited.High) {
		t.Errorf("%v, %t: planned at the high end", r, ok)
	}
	// Phenolphthalein alone sees half of it: 36.30 mL are 96.79 %, less 1.13 %.
	flakes.First, flakes.Total = volume(t, "36.30 mL"), units.Volume{}
	half := titrated(t, flakes)
	if half.Low.PercentText(2) != "95.66" || half.High.PercentText(2) != "96.79" {
		t.Errorf("%s to %s %%", half.Low.PercentText(2), half.High.PercentText(2))
	}
}

// A pure alkali and a reading a little high: 101.2 % was found, not less than 99 %.
// There cannot be more than all.
func TestMoreThanAllIsCutAtAll(t *testing.T) {
	found := titrated(t, lye.Titration{
		Alkali: lye.SodiumHydroxide, Sample: units.Grams(1), Normality: units.Whole(1),
		First: volume(t, "25.3 mL"), Total: volume(t, "25.3 mL"), Burette: volume(t, "0.2 mL"),
	})
	if found.Hydroxide.PercentText(1) != "101.2" || !found.High.Equal(units.Whole(1)) || found.Carbonate.Sign() != 0 {
		t.Errorf("%+v", found)
	}
	if r, ok := found.Range(); !ok || !r.Typical.Equal(units.Whole(1)) || !r.Ordered() {
		t.Errorf("%+v, %t", r, ok)
	}
}

// fraction is an exact number.
func fraction(t testing.TB, text string) *big.Rat {
	t.Helper()
	x, ok := new(big.Rat).SetString(text)
	if !ok {
		t.Fatal(text)
	}
	return x
}

// Every corner of the readings, in exact fractions: the start of the burette, each
// end point, the balance, the acid, and no carbonate or the most.
func TestBoundsAreTheUnluckiestCornersOfAllReadings(t *testing.T) {
	random := rand.New(rand.NewPCG(2, 2026))
	for range 300 {
		n := func(low, high int64) int64 { return low + random.Int64N(high-low) }
		sample, normality := n(1_500, 3_000), n(800, 1_100) // mg, thousandths
		first := n(20_000, 28_000)                          // µL
		total := first + n(0, 3_000)
		balance, burette, titrant := n(0, 20), n(0, 100), n(0, 20) // mg, µL, thousandths
		carbonate := n(0, 50)                                      // thousandths
		alkali := both[random.IntN(2)]
		ends := random.IntN(3) // both, phenolphthalein alone, methyl orange alone
		thousandths := func(k int64) units.Ratio { return units.MilligramsPerGram(k) }
		microlitres := func(k int64) units.Volume { return volume(t, big.NewRat(k, 1000).FloatString(3)+" mL") }
		titration := lye.Titration{
			Alkali: alkali, Sample: units.Milligrams(sample), Normality: thousandths(normality),
			Balance: units.Milligrams(balance), Burette: microlitres(burette), Titrant: thousandths(titrant),
		}
		if ends < 2 {
			titration.First = microlitres(first)
		}
		if ends != 1 {
			titration.Total = microlitres(total)
		}
		counted := big.NewRat(0, 1) // at most, as hydroxide
		if ends > 0 {
			titration.CarbonateMax = thousandths(carbonate)
			counted = big.NewRat(carbonate, 1000)
			factor := "0.7547"
			if alkali == lye.PotassiumHydroxide {
				factor = "0.8119"
			}
			counted.Mul(counted, fraction(t, factor))
			if ends == 1 {
				counted.Mul(counted, big.NewRat(1, 2))
			}
		}
		grams := fraction(t, "39.997")
		if alkali == lye.PotassiumHydroxide {
			grams = fraction(t, "56.105")
		}
		var low, high *big.Rat
		for corner := range 64 {
			side := func(bit int) int64 { return int64(corner>>bit&1)*2 - 1 }
			start, phenolphthalein, orange := side(0)*burette, first+side(1)*burette, total+side(2)*burette
			acid := 2*(phenolphthalein-start) - (orange - start)
			switch ends {
			case 1:
				acid = phenolphthalein - start
			case 2:
				acid = orange - start
			}
			// µL × mol/L × g/mol / mg are thousandths.
			x := new(big.Rat).Mul(big.NewRat(acid, 1000), big.NewRat(normality*(1000+side(3)*titrant), 1_000_000))
			x.Mul(x, grams).Mul(x, big.NewRat(1, sample+side(4)*balance))
			if corner>>5 == 1 {
				x.Sub(x, counted)
			}
			if low == nil || x.Cmp(low) < 0 {
				low = x
			}
			if high == nil || x.Cmp(high) > 0 {
				high = x
			}
		}
		all := big.NewRat(1, 1)
		found, err := titration.Result()
		if low.Cmp(all) > 0 {
			refused(t, found, err, "sample", fault.ErrRange)
			continue
		}
		if err != nil {
			t.Fatalf("%+v: %v", titration, err)
		}
		if high.Cmp(all) > 0 {
			high = all
		}
		for _, end := range []struct {
			got  units.Ratio
			want *big.Rat
		}{{found.Low, low}, {found.High, high}} {
			off := fraction(t, end.got.Text(12))
			if off.Sub(off, end.want).Abs(off).Cmp(big.NewRat(1, 1_000_000_000_000)) > 0 { // rounds to 10^-12
				t.Errorf("%+v: %s, want %s", titration, end.got.Text(12), end.want.FloatString(12))
			}
		}
	}
}

func TestTitrationsThatCannotBeWorkedOutAreRefused(t *testing.T) {
	good := lye.Titration{
		Alkali: lye.SodiumHydroxide, Sample: mass(t, "1.5 g"), Normality: units.Whole(1),
		First: volume(t, "36.30 mL"), Total: volume(t, "36.60 mL"),
	}
	titrated(t, good)
	less := units.Volume{}.Sub(volume(t, "1 mL"))
	for name, c := range map[string]struct {
		spoil func(*lye.Titration)
		path  string
		kind  error
	}{
		"no alkali":            {func(x *lye.Titration) { x.Alkali = 0 }, "alkali", fault.ErrMissing},
		"an unknown alkali":    {func(x *lye.Titration) { x.Alkali = 9 }, "alkali", fault.ErrMissing},
		"no sample":            {func(x *lye.Titration) { x.Sample = units.Mass{} }, "sample", fault.ErrMissing},
		"a negative sample":    {func(x *lye.Titration) { x.Sample = units.Grams(-1) }, "sample", fault.ErrRange},
		"a balance off by all": {func(x *lye.Titration) { x.Balance = x.Sample }, "balance", fault.ErrRange},
		"a negative balance":   {func(x *lye.Titration) { x.Balance = units.Grams(-1) }, "balance", fault.ErrRange},
		"no normality":         {func(x *lye.Titration) { x.Normality = units.Ratio{} }, "normality", fault.ErrMissing},
		"no acid":              {func(x *lye.Titration) { x.Normality = units.Whole(0) }, "normality", fault.ErrRange},
		"too strong an acid": {
			func(x *lye.Titration) { x.Normality = units.MustRatio("20.001") }, "normality",
			fault.ErrRange,
		},
		"a negative titrant":    {func(x *lye.Titration) { x.Titrant = units.Whole(-1) }, "titrant", fault.ErrRange},
		"a titrant off by half": {func(x *lye.Titration) { x.Titrant = percent("50.1") }, "titrant", fault.ErrRange},
		"a negative burette":    {func(x *lye.Titration) { x.Burette = less }, "burette", fault.ErrRange},
		"a negative first":      {func(x *lye.Titration) { x.First = less }, "first", fault.ErrRange},
		"a negative total":      {func(x *lye.Titration) { x.Total = less }, "total", fault.ErrRange},
		"no end point": {
			func(x *lye.Titration) { x.First, x.Total = units.Volume{}, units.Volume{} }, "total",
			fault.ErrMissing,
		},
		"end points out of turn": {func(x *lye.Titration) { x.First, x.Total = x.Total, x.First }, "total", fault.ErrRange},
		"half of the total":      {func(x *lye.Titration) { x.First = volume(t, "18.30 mL") }, "first", fault.ErrRange},
		"carbonate measured": {
			func(x *lye.Titration) { x.CarbonateMax = units.Percent(3) }, "carbonate_max",
			fault.ErrConflict,
		},
		"carbonate below none": {
			func(x *lye.Titration) { x.First, x.CarbonateMax = units.Volume{}, units.Whole(-1) },
			"carbonate_max", fault.ErrRange,
		},
		"carbonate above all": {
			func(x *lye.Titration) { x.First, x.CarbonateMax = units.Volume{}, percent("100.1") },
			"carbonate_max", fault.ErrRange,
		},
		"carbonate and no more": {func(x *lye.Titration) {
			x.First, x.Total, x.CarbonateMax = units.Volume{}, volume(t, "20 mL"), units.Percent(80)
		}, "carbonate_max", fault.ErrRange},
		"more than there can be": {func(x *lye.Titration) { x.Sample = mass(t, "0.5 g") }, "sample", fault.ErrRange},
		"readings too coarse":    {func(x *lye.Titration) { x.Burette = volume(t, "9 mL") }, "sample", fault.ErrRange},
	} {
		bad := good
		c.spoil(&bad)
		t.Run(name, func(t *testing.T) {
			found, err := bad.Result()
			refused(t, found, err, c.path, c.kind)
		})
	}
	// A hair above half of the total there is a trace of hydroxide.
	good.First = volume(t, "18.300001 mL")
	if found := titrated(t, good); found.Hydroxide.Sign() <= 0 {
		t.Errorf("%v", found.Hydroxide)
	}
}

func TestEverythingThatIsWrongIsSaidTogether(t *testing.T) {
	_, err := lye.Titration{}.Result()
	for _, path := range []string{"alkali", "sample", "normality", "total"} {
		refused(t, lye.Titrated{}, err, path, fault.ErrMissing)
	}
}
