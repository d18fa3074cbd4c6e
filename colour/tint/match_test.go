package tint_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/colour/tint"
	"example.com/lyewright/units"
)

// hundred are questions of three pigments and white: half of them known mixtures, half
// colours from anywhere, most of them out of reach; prices differ.
func (w world) hundred(t testing.TB, c tint.Calibration) []tint.Wanted {
	source := rand.New(rand.NewPCG(6, 2026))
	list := make([]tint.Wanted, 100)
	for i := range list {
		q, mixture := &list[i], map[string]float64{}
		for _, id := range w.ids {
			q.Free = append(q.Free, tint.Free{Colourant: id, Most: share(1.5), Price: 1 + 20*source.Float64()})
			if source.IntN(3) > 0 {
				mixture[id] = math.Round(1e6*(0.01+1.4*source.Float64()*source.Float64())) / 1e6
			}
		}
		if i%2 == 0 {
			q.Target = predicted(t, c, w.loads(mixture)).Lab
			continue
		}
		q.Target = tint.Lab{L: 20 + 75*source.Float64(), A: -60 + 120*source.Float64(), B: -60 + 120*source.Float64()}
	}
	return list
}

func matched(t testing.TB, c tint.Calibration, q tint.Wanted) tint.Matched {
	t.Helper()
	m, err := c.Match(q)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// mixture gives what was found as loads, beside what is fixed.
func mixture(q tint.Wanted, m tint.Matched) []tint.Load {
	loads := slices.Clone(q.Fixed)
	for i, load := range m.Loads {
		loads = append(loads, tint.Load{Colourant: q.Free[i].Colourant, OfBatter: load})
	}
	return loads
}

func cost(q tint.Wanted, loads []units.Ratio) float64 {
	sum := 0.0
	for i, load := range loads {
		price := q.Free[i].Price
		if price == 0 {
			price = 1
		}
		sum += price * load.Float()
	}
	return sum
}

// kept checks what holds of every answer: loads between none and their most, where they
// are said to stand, the colour that they give, and no farther from the target than said.
func kept(t *testing.T, c tint.Calibration, q tint.Wanted, m tint.Matched) {
	t.Helper()
	for i, load := range m.Loads {
		at := tint.AtFree
		switch {
		case load.Sign() == 0:
			at = tint.AtNone
		case load.Equal(q.Free[i].Most):
			at = tint.AtMost
		}
		if load.Sign() < 0 || load.Compare(q.Free[i].Most) > 0 || m.At[i] != at {
			t.Errorf("%s: %v of %v, %v", q.Free[i].Colourant, load, q.Free[i].Most, m.At[i])
		}
	}
	if d := predicted(t, c, mixture(q, m)).Difference(m.Lab); d > 1e-6 {
		t.Errorf("the colour is %v, off by %g", m.Lab, d)
	}
	if d := q.Target.Difference(m.Lab); d > m.Best+0.1+1e-9 {
		t.Errorf("%g from the target, the nearest is %g", d, m.Best)
	}
}

// A known mixture is met, and no dearer answer comes than it: that is one, too.
func TestAKnownMixtureIsMetAndNotDearer(t *testing.T) {
	w := dusk()
	c := calibrated(t, w.swatches(twelve, 0.003, 1))
	source := rand.New(rand.NewPCG(7, 2026))
	for range 60 {
		var q tint.Wanted
		var loads []tint.Load
		var known []units.Ratio
		for _, id := range w.ids {
			load := share(math.Round(1e4*(0.02+1.2*source.Float64()*source.Float64())) / 1e4)
			if source.IntN(3) == 0 {
				load = units.Whole(0)
			}
			q.Free = append(q.Free, tint.Free{Colourant: id, Most: share(1.5), Price: 1 + 20*source.Float64()})
			loads, known = append(loads, tint.Load{Colourant: id, OfBatter: load}), append(known, load)
		}
		if source.IntN(2) == 0 {
			for i := range q.Free {
				q.Free[i].Price = 0
			}
		}
		q.Target = predicted(t, c, loads).Lab
		m := matched(t, c, q)
		kept(t, c, q, m)
		if m.Best > 1e-3 {
			t.Errorf("the nearest is %g away", m.Best)
		}
		if d := q.Target.Difference(m.Lab); d < 0.09 && cost(q, m.Loads) > 0 {
			t.Errorf("only %g of 0.1 is spent on the price", d)
		}
		if got, most := cost(q, m.Loads), cost(q, known); got > 1.01*most {
			t.Errorf("%v costs %g, and the known %v costs %g", m.Loads, got, known, most)
		}
	}
}

// What is said to be the nearest, and the cheapest, is held against a fine grid of all
// mixtures: none is nearer by more than 0.02, none as near is cheaper by more than 1 %.
func TestNoMixtureOfAGridIsNearerOrCheaper(t *testing.T) {
	w := dusk()
	c := calibrated(t, w.swatches(twelve, 0.003, 1))
	targets := []tint.Lab{{L: 70, A: 10, B: 18}, {L: 60, A: -5, B: -20}, {L: 45, A: 20, B: 15}, {L: 88, A: 0, B: 20}, {L: 60, A: -30, B: 20}, {L: 30, A: 5, B: 5}, {L: 97, A: 0, B: 2}}
	for n, target := range targets {
		for _, ids := range [][]string{{white, red, yellow}, {white, blue, yellow}, {blue, red}} {
			q := tint.Wanted{Target: target, Fixed: []tint.Load{{Colourant: yellow, OfBatter: share(0.02)}}}
			if slices.Contains(ids, yellow) {
				q.Fixed = nil
			}
			for i, id := range ids {
				q.Free = append(q.Free, tint.Free{Colourant: id, Most: share(1), Price: float64(1 + (3*i+n)%5)})
			}
			m := matched(t, c, q)
			kept(t, c, q, m)
			const steps = 24
			loads := make([]units.Ratio, len(ids))
			var walk func(i int)
			walk = func(i int) {
				if i < len(ids) {
					for k := range steps + 1 {
						part := float64(k) / steps
						loads[i] = share(math.Round(1e6*part*part) / 1e6)
						walk(i + 1)
					}
					return
				}
				d := target.Difference(predicted(t, c, mixture(q, tint.Matched{Loads: loads})).Lab)
				if d < m.Best-0.02 {
					t.Errorf("%v with %v: %v is %g away, the nearest should be %g", target, ids, loads, d, m.Best)
				}
				if d < m.Best+tint.Slack-0.002 && cost(q, loads) < 0.99*cost(q, m.Loads) {
					t.Errorf("%v with %v: %v (%g away) costs %g, and %v %g", target, ids, loads, d, cost(q, loads), m.Loads, cost(q, m.Loads))
				}
			}
			walk(0)
		}
	}
}

func TestAnswersToAHundredQuestions(t *testing.T) {
	w := dusk()
	c := calibrated(t, w.swatches(twelve, 0.003, 1))
	for _, q := range w.hundred(t, c) {
		m := matched(t, c, q)
		kept(t, c, q, m)
		if again := matched(t, c, q); !slices.EqualFunc(m.Loads, again.Loads, units.Ratio.Equal) {
			t.Errorf("%v, and then %v", m.Loads, again.Loads)
		}
	}
}

// Six loads at once, and one.
func TestSixLoadsAndOne(t *testing.T) {
	w := dusk()
	w.ids = append(w.ids, "chromium-oxide-green", "iron-oxide-black")
	w.per[w.ids[4]] = [2]func(float64) float64{plus(bump(4, 450, 50), bump(4, 620, 60), flat(0.2)), flat(0.4)}
	w.per[w.ids[5]] = [2]func(float64) float64{flat(12), flat(0.3)}
	mixtures := slices.Clone(twelve)
	for _, id := range w.ids[4:] {
		mixtures = append(mixtures, map[string]float64{white: 0.5, id: 0.1}, map[string]float64{white: 0.5, id: 0.4}, map[string]float64{id: 0.2})
	}
	c := calibrated(t, w.swatches(mixtures, 0, 0))
	var q tint.Wanted
	loads := map[string]float64{}
	for i, id := range w.ids {
		loads[id] = 0.05 + 0.03*float64(i)
		q.Free = append(q.Free, tint.Free{Colourant: id, Most: share(1), Price: float64(1 + (i*4)%7)})
	}
	q.Target = predicted(t, c, w.loads(loads)).Lab
	m := matched(t, c, q)
	kept(t, c, q, m)
	known := make([]units.Ratio, len(w.ids))
	for i, id := range w.ids {
		known[i] = share(loads[id])
	}
	if m.Best > 1e-3 || cost(q, m.Loads) > cost(q, known) {
		t.Errorf("%v at %g costs %g, and the known mixture %g", m.Loads, m.Best, cost(q, m.Loads), cost(q, known))
	}
	q.Free, q.Fixed = q.Free[:1], []tint.Load{{Colourant: blue, OfBatter: share(0.3)}}
	q.Target = predicted(t, c, w.loads(map[string]float64{white: 0.62, blue: 0.3})).Lab
	if m = matched(t, c, q); math.Abs(100*m.Loads[0].Float()-0.62) > 0.01 {
		t.Errorf("%v", m.Loads)
	}
}

// Of two colourants that do the same the first is taken, and of unlike prices the cheaper.
func TestTiesGoByOrder(t *testing.T) {
	w := dusk()
	w.ids = append(w.ids, "dusk-blue")
	w.per["dusk-blue"] = w.per[blue]
	mixtures := append(slices.Clone(twelve), map[string]float64{white: 0.5, "dusk-blue": 0.3}, map[string]float64{"dusk-blue": 0.8})
	c := calibrated(t, w.swatches(mixtures, 0, 0))
	q := tint.Wanted{Target: predicted(t, c, w.loads(map[string]float64{white: 0.5, blue: 0.4})).Lab}
	for _, row := range []struct {
		first, second string
		prices        [2]float64
		none          int
	}{{blue, "dusk-blue", [2]float64{1, 1}, 2}, {"dusk-blue", blue, [2]float64{1, 1}, 2}, {blue, "dusk-blue", [2]float64{2, 1}, 1}} {
		q.Free = []tint.Free{{Colourant: white, Most: share(1), Price: 1}, {Colourant: row.first, Most: share(1), Price: row.prices[0]}, {Colourant: row.second, Most: share(1), Price: row.prices[1]}}
		m := matched(t, c, q)
		kept(t, c, q, m)
		if row.prices[0] != row.prices[1] && m.At[row.none] != tint.AtNone {
			t.Errorf("%s before %s: %v", row.first, row.second, m.Loads)
		}
	}
}

// Where the base hardly counts, the colour is that of the proportions: a tenth of the loads
// looks the same, and is taken.
func TestAThinMixtureThatLooksTheSameIsTaken(t *testing.T) {
	w := dusk()
	w.base = [2]func(float64) float64{flat(1e-6), flat(2e-6)}
	c := calibrated(t, w.swatches(twelve, 0, 0))
	for _, proportions := range []map[string]float64{{white: 0.8, blue: 0.4, red: 0.1}, {white: 1.2, yellow: 0.3}, {blue: 1, red: 0.5, yellow: 0.2}} {
		var q tint.Wanted
		var thin []units.Ratio
		mixed := map[string]float64{}
		for _, id := range w.ids {
			q.Free = append(q.Free, tint.Free{Colourant: id, Most: share(1.5)})
			mixed[id] = math.Round(1e6*proportions[id]/50) / 1e6
			thin = append(thin, share(mixed[id]))
		}
		q.Target = predicted(t, c, w.loads(proportions)).Lab
		if d := q.Target.Difference(predicted(t, c, w.loads(mixed)).Lab); d > 0.09 {
			t.Fatalf("a fiftieth is %g away", d)
		}
		m := matched(t, c, q)
		kept(t, c, q, m)
		if got, most := cost(q, m.Loads), cost(q, thin); got > most {
			t.Errorf("%v are %g in all, and %v, which look the same, %g", m.Loads, got, thin, most)
		}
	}
}

func TestQuestionsThatAreNone(t *testing.T) {
	w := dusk()
	c := calibrated(t, w.swatches(twelve, 0, 0))
	free := tint.Free{Colourant: blue, Most: share(1)}
	for _, row := range []struct {
		q    tint.Wanted
		want string
	}{
		{tint.Wanted{Target: tint.Lab{L: 50}}, "match: are 0 colourants"},
		{tint.Wanted{Target: tint.Lab{L: 50}, Free: make([]tint.Free, 7)}, "match: are 7 colourants"},
		{tint.Wanted{Target: tint.Lab{L: math.NaN()}, Free: []tint.Free{free}}, `target: "NaN, 0, 0" is not a colour`},
		{tint.Wanted{Target: tint.Lab{L: 50}, Free: []tint.Free{free, free}}, `match[1]: "ultramarine-blue" stands twice`},
		{tint.Wanted{Target: tint.Lab{L: 50}, Free: []tint.Free{free}, Fixed: []tint.Load{{Colourant: blue, OfBatter: share(0.1)}}}, `match[0]: "ultramarine-blue" has a load besides`},
		{tint.Wanted{Target: tint.Lab{L: 50}, Free: []tint.Free{{Colourant: "dusk-mica", Most: share(1)}}}, `match[0]: "dusk-mica" stood in no swatch`},
		{tint.Wanted{Target: tint.Lab{L: 50}, Free: []tint.Free{{Colourant: blue}}}, `match[0]: " %" is not over 0 %`},
		{tint.Wanted{Target: tint.Lab{L: 50}, Free: []tint.Free{{Colourant: blue, Most: units.Percent(101)}}}, `match[0]: "101 %" is not over 0 %`},
		{tint.Wanted{Target: tint.Lab{L: 50}, Free: []tint.Free{{Colourant: blue, Most: share(1), Price: math.NaN()}}}, `match[0]: "NaN" is no price`},
		{tint.Wanted{Target: tint.Lab{L: 50}, Free: []tint.Free{{Colourant: blue, Most: share(1), Price: math.Inf(1)}}}, `match[0]: "+Inf" is no price`},
		{tint.Wanted{Target: tint.Lab{L: 50}, Free: []tint.Free{{Colourant: blue, Most: share(1), Price: -1}}}, `match[0]: "-1" is no price`},
		{tint.Wanted{Target: tint.Lab{L: 50}, Free: []tint.Free{free}, Fixed: []tint.Load{{Colourant: "dusk-mica"}}}, `[0]: "dusk-mica" stood in no swatch`},
	} {
		if m, err := c.Match(row.q); err == nil || !strings.Contains(err.Error(), row.want) || m.Loads != nil {
			t.Errorf("%v, want %s", err, row.want)
		}
	}
}

// More white makes a difference of 1, and just that; where there is no room for it, none.
func TestWhiterMakesADifferenceOfOne(t *testing.T) {
	w := dusk()
	c := calibrated(t, w.swatches(twelve, 0.003, 1))
	for _, loads := range append(slices.Clone(others), map[string]float64{}, map[string]float64{white: 0.3}) {
		list := w.loads(loads)
		more, seen, err := c.Whiter(list, share(2))
		if err != nil || !seen {
			t.Fatalf("%v: %t, %v", loads, seen, err)
		}
		now := predicted(t, c, list)
		if d := now.Difference(predicted(t, c, append(slices.Clone(list), tint.Load{Colourant: white, OfBatter: more})).Lab); math.Abs(d-1) > 1e-3 {
			t.Errorf("%v: %v more makes %g", loads, more, d)
		}
		room := share(loads[white]).Add(more.Times(units.MustRatio("90 %")))
		if more, seen, err := c.Whiter(list, room); seen || err != nil || more.Given() {
			t.Errorf("%v: up to %v there is %v, %t, %v", loads, room, more, seen, err)
		}
	}
	if _, seen, err := c.Whiter(w.loads(map[string]float64{white: 1}), share(0.5)); seen || err != nil {
		t.Errorf("beyond its most: %t, %v", seen, err)
	}
	if _, _, err := c.Whiter([]tint.Load{{Colourant: "dusk-mica", OfBatter: share(1)}}, share(1)); err == nil {
		t.Error("whiter of what stood in no swatch")
	}
}

// A white that dulls what it is in makes it no whiter, however much the colour changes; one
// that first dulls and then lightens does, in the end.
func TestWhiterIsLighter(t *testing.T) {
	w := dusk()
	w.base = [2]func(float64) float64{flat(0.0005), flat(0.25)}
	w.per[white] = [2]func(float64) float64{flat(0.05), flat(1)}
	c := calibrated(t, w.swatches(twelve, 0, 0))
	if more, seen, err := c.Whiter(nil, share(2)); err != nil || seen || more.Given() {
		t.Errorf("%v of a white that darkens, %t, %v", more, seen, err)
	}
	more, seen, err := c.Whiter(w.loads(map[string]float64{red: 0.3}), share(2))
	if err != nil || !seen {
		t.Fatalf("%t, %v", seen, err)
	}
	before, after := predicted(t, c, w.loads(map[string]float64{red: 0.3})), predicted(t, c, append(w.loads(map[string]float64{red: 0.3}), tint.Load{Colourant: white, OfBatter: more}))
	if after.L <= before.L {
		t.Errorf("%v, and with more white %v", before.Lab, after.Lab)
	}
}

// In every band where the white's K/S is below the mixture's, more white never darkens;
// elsewhere the reflectance falls towards the white's own, and never below it.
func TestMoreWhiteNeverDarkensButTowardsItself(t *testing.T) {
	w := dusk()
	c := calibrated(t, w.swatches(twelve, 0, 0))
	for _, loads := range append(slices.Clone(others), map[string]float64{}) {
		var before []float64
		for _, load := range []float64{0, 0.05, 0.3, 1, 4, 20, 60} {
			mixed := map[string]float64{white: load}
			for id, of := range loads {
				if id != white {
					mixed[id] = of / 10
				}
			}
			now := predicted(t, c, w.loads(mixed)).Reflectance
			for j := range before {
				nm := w.nm(j)
				q := w.per[white][0](nm) / w.per[white][1](nm)
				own := w.read(1 + q - math.Sqrt(q*q+2*q))
				if before[j] < own-1e-9 && now[j] < before[j]-1e-9 {
					t.Errorf("%v, band %d: %g, and with more white %g", loads, j, before[j], now[j])
				}
				if before[j] > own+1e-9 && (now[j] > before[j]+1e-9 || now[j] < own-1e-9) {
					t.Errorf("%v, band %d: %g, and with more white %g; white is %g", loads, j, before[j], now[j], own)
				}
			}
			before = now
		}
	}
}
