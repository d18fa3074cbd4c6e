package tint_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"

	"example.com/lyewright/colour/tint"
)

// The referee of a match looks for mixtures by a method of its own: differential evolution
// (Storn and Price, J. Global Optimization 11 (1997) 341; recalled) over all loads at once,
// without slopes and without turns, in an optics of its own: the constants of the invented
// world, the textbook forms of the equations, and the observer as it shows in the colours of
// single bands. It shares with the library the difference between two colours alone.

// A court is a world with its constants band by band, for many mixtures.
type court struct {
	world
	k, s [][]float64 // band by band: of the base, then of each colourant per percent
	xyz  [][3]float64
}

// court makes the constants of a world plain.
func (w world) court(t testing.TB) court {
	t.Helper()
	c := court{world: w}
	white := w.tristimulus(t, -1)
	for j := range w.count() {
		k, s := []float64{w.base[0](w.nm(j))}, []float64{w.base[1](w.nm(j))}
		for _, id := range w.ids {
			k, s = append(k, w.per[id][0](w.nm(j))), append(s, w.per[id][1](w.nm(j)))
		}
		c.k, c.s = append(c.k, k), append(c.s, s)
		of := w.tristimulus(t, j)
		for i := range of {
			of[i] /= white[i]
		}
		c.xyz = append(c.xyz, of)
	}
	return c
}

// tristimulus gives X, Y and Z of one band alone, as shares of the white's; of all bands where
// band is below 0. It turns the definition of CIELAB round.
func (w world) tristimulus(t testing.TB, band int) (of [3]float64) {
	read := make([]float64, w.count())
	for j := range read {
		if j == band || band < 0 {
			read[j] = 1
		}
	}
	lab := w.seen(t, read)
	y := (lab.L + 16) / 116
	for i, f := range []float64{y + lab.A/500, y, y - lab.B/200} {
		if of[i] = f * f * f; f <= 6.0/29 {
			of[i] = 3 * 36 / 841.0 * (f - 4.0/29)
		}
	}
	return of
}

// lab gives the colour of loads in percent, in the order of the world's colourants.
func (c *court) lab(percent []float64) tint.Lab {
	var sum [3]float64
	for j := range c.k {
		k, s := c.k[j][0], c.s[j][0]
		for i, load := range percent {
			k += load * c.k[j][i+1]
			s += load * c.s[j][i+1]
		}
		q := k / s
		read := c.read(1 / (1 + q + math.Sqrt(q*(q+2)))) // 1 + q − √(q² + 2q), for large q
		for i := range sum {
			sum[i] += c.xyz[j][i] * read
		}
	}
	f := func(v float64) float64 {
		if v > 216.0/24389 {
			return math.Cbrt(v)
		}
		return v*841/108 + 4.0/29
	}
	x, y, z := f(sum[0]), f(sum[1]), f(sum[2])
	return tint.Lab{L: 116*y - 16, A: 500 * (x - y), B: 200 * (y - z)}
}

// A candidate is a mixture, how far it is and what it costs.
type candidate struct {
	at        []float64 // each load as the square root of its share of the most
	far, cost float64
}

// seek evolves mixtures. With within below 0 the nearest wins; else of those no farther than
// that the cheapest, before all that are farther.
func (c *court) seek(q tint.Wanted, within float64, seed uint64, first ...[]float64) candidate {
	const many, turns = 60, 450
	source := rand.New(rand.NewPCG(seed, 1997))
	n := len(q.Free)
	most, price, priced := make([]float64, n), make([]float64, n), false
	index := make([]int, n)
	for i, free := range q.Free {
		most[i] = 100 * free.Most.Float()
		price[i] = free.Price
		priced = priced || free.Price > 0
		index[i] = slices.Index(c.ids, free.Colourant)
	}
	loads := make([]float64, len(c.ids))
	judge := func(at []float64) (far, cost float64) {
		for i, x := range at {
			loads[index[i]] = x * x * most[i]
			if priced {
				cost += x * x * most[i] * price[i]
			} else {
				cost += x * x * most[i]
			}
		}
		return q.Target.Difference(c.lab(loads)), cost
	}
	better := func(a, b candidate) bool {
		if within < 0 || a.far > within && b.far > within {
			return a.far < b.far
		}
		if (a.far > within) != (b.far > within) {
			return a.far <= within
		}
		return a.cost < b.cost
	}
	crowd := make([]candidate, many)
	for p := range crowd {
		at := make([]float64, n)
		for i := range at {
			switch at[i] = source.Float64(); source.IntN(5) {
			case 0, 1:
				at[i] = 0
			case 2:
				at[i] *= 0.2
			case 3:
				if source.IntN(3) == 0 {
					at[i] = 1
				}
			}
		}
		if p < len(first) {
			copy(at, first[p])
		}
		crowd[p].at = at
		crowd[p].far, crowd[p].cost = judge(at)
	}
	best := 0
	for range turns {
		for p := range crowd {
			a, b, d := &crowd[source.IntN(many)], &crowd[source.IntN(many)], &crowd[source.IntN(many)]
			from, step, cross := a, 0.4+0.5*source.Float64(), 0.9
			if source.IntN(2) == 0 {
				from = &crowd[best]
			}
			at := slices.Clone(crowd[p].at)
			sure := source.IntN(n)
			for i := range at {
				if i == sure || source.Float64() < cross {
					at[i] = max(0, min(1, from.at[i]+step*(b.at[i]-d.at[i])))
				}
			}
			trial := candidate{at: at}
			if trial.far, trial.cost = judge(at); better(trial, crowd[p]) {
				crowd[p] = trial
				if better(trial, crowd[best]) {
					best = p
				}
			}
		}
	}
	return crowd[best]
}

// drawnWorld is a world of six colourants: white and five drawn pigments.
func drawnWorld(source *rand.Rand) world {
	w := dusk()
	w.ids = []string{white}
	for i := range 5 {
		id := "lantern-pigment-" + strconv.Itoa(i)
		w.ids = append(w.ids, id)
		strong := math.Exp(3*source.Float64() - 0.5) // 0.6 to 12
		absorbs := []func(float64) float64{
			flat(0.02 + 0.2*source.Float64()*source.Float64()),
			bump(strong, 400+300*source.Float64(), 30+70*source.Float64()),
		}
		if source.IntN(2) == 0 {
			absorbs = append(absorbs, bump(strong*source.Float64(), 400+300*source.Float64(), 30+70*source.Float64()))
		}
		if source.IntN(6) == 0 {
			absorbs = append(absorbs, flat(strong))
		}
		w.per[id] = [2]func(float64) float64{plus(absorbs...), plus(flat(0.05+0.5*source.Float64()),
			bump(source.Float64(), 400+300*source.Float64(), 60))}
	}
	return w
}

// ladder are swatches that suffice for a world of any colourants.
func (w world) ladder() []map[string]float64 {
	list := []map[string]float64{{}, {white: 0.3}, {white: 1}}
	for _, id := range w.ids {
		if id != white {
			list = append(list, map[string]float64{white: 0.5, id: 0.1}, map[string]float64{white: 0.5, id: 0.5},
				map[string]float64{id: 0.3})
		}
	}
	return list
}

// Questions of four to six loads in worlds of drawn pigments, with prices up to 150 times each
// other or none: known mixtures, colours near one, and colours from anywhere, most of them far
// from reach. A known mixture is met; what is said to be the nearest is at most 0.05 farther
// than the referee's; and at its own distance the cheapest costs at most 4 % more than what
// the referee finds.
func TestMatchesOfUpToSixLoadsAgainstAReferee(t *testing.T) {
	askReferee(t, 15, 45, func(int) bool { return true })
}

// The nearest of these questions has the hue opposite to the target's, where the difference
// jumps, and lies just beside that jump.
func TestMatchesBesideTheJumpOfHuesAgainstAReferee(t *testing.T) {
	askReferee(t, 16, 185, func(round int) bool { return round == 79 || round == 178 || round == 184 })
}

// askReferee draws so many rounds from a seed, and asks some of them.
func askReferee(t *testing.T, seed uint64, rounds int, asks func(round int) bool) {
	t.Helper()
	source := rand.New(rand.NewPCG(seed, 2026))
	asked, compared, level := 0, 0, 0
	for round := range rounds {
		w := drawnWorld(source)
		if round%5 == 0 { // a base that hardly counts
			w.base = [2]func(float64) float64{flat(1e-5), flat(2e-5)}
		}
		court := w.court(t)
		n, unpriced := 4+source.IntN(3), round%4 == 0
		var q tint.Wanted
		known := make([]float64, len(w.ids))
		for i, id := range w.ids[:n] {
			free := tint.Free{
				Colourant: id, Most: share(math.Round(100*(0.3+2*source.Float64())) / 100),
				Price: math.Exp(5 * source.Float64()),
			}
			if unpriced {
				free.Price = 0
			}
			q.Free = append(q.Free, free)
			if source.IntN(4) > 0 {
				known[i] = math.Round(1e6*100*free.Most.Float()*source.Float64()*source.Float64()) / 1e6
			}
		}
		q.Target = court.lab(known)
		switch round % 3 {
		case 1:
			q.Target = tint.Lab{L: 15 + 80*source.Float64(), A: -60 + 120*source.Float64(), B: -60 + 120*source.Float64()}
		case 2:
			q.Target.A += 10*source.Float64() - 5
			q.Target.B += 10*source.Float64() - 5
			q.Target.L = min(99, q.Target.L+4*source.Float64())
		}
		if !asks(round) {
			continue
		}
		asked++
		c := calibrated(t, w.swatches(w.ladder(), 0, 0))
		m := matched(t, c, q)
		kept(t, c, q, m)
		var loads []float64
		for _, load := range m.Loads {
			loads = append(loads, 100*load.Float())
		}
		if d := court.lab(loads).Difference(m.Lab); d > 1e-6 {
			t.Errorf("round %d: the referee's optics are off by %g", round, d)
		}
		if round%3 == 0 && m.Best > 1e-3 {
			t.Errorf("round %d: a known mixture of %d is missed by %g", round, n, m.Best)
		}
		near := court.seek(q, -1, uint64(round))
		if missed := m.Best - near.far; missed > 0.05 {
			t.Errorf("round %d: the nearest of %d is %.4f away, the referee's %.4f", round, n, m.Best, near.far)
		}
		within := q.Target.Difference(m.Lab)
		cheap := court.seek(q, within, uint64(round)+1000, near.at)
		if cheap.far > within {
			continue // the referee found none as near
		}
		compared++
		paid := 100 * cost(q, m.Loads)
		if paid > 1.04*cheap.cost {
			t.Errorf("round %d: %v at %.4f cost %g, the referee's %v at %.4f %g", round, m.Loads, within, paid,
				court.percents(q, cheap), cheap.far, cheap.cost)
		}
		if paid > 0.98*cheap.cost {
			level++
		}
	}
	if compared < asked/2 || level < compared/2 {
		t.Errorf("%d asked, %d compared; the referee came within 2 %% in %d", asked, compared, level)
	}
}

// percents gives a candidate's loads in percent, in the order of the world's colourants.
func (c *court) percents(q tint.Wanted, of candidate) []float64 {
	loads := make([]float64, len(c.ids))
	for i, free := range q.Free {
		loads[slices.Index(c.ids, free.Colourant)] = 100 * free.Most.Float() * of.at[i] * of.at[i]
	}
	return loads
}

// Six loads: half the questions far from reach.
func BenchmarkMatchOfSix(b *testing.B) {
	source := rand.New(rand.NewPCG(15, 2026))
	var calibrations []tint.Calibration
	var questions []tint.Wanted
	for i := range 40 {
		w := drawnWorld(source)
		c := calibrated(b, w.swatches(w.ladder(), 0, 0))
		var q tint.Wanted
		for _, id := range w.ids {
			q.Free = append(q.Free, tint.Free{Colourant: id, Most: share(1.5), Price: math.Exp(5 * source.Float64())})
		}
		q.Target = tint.Lab{L: 15 + 80*source.Float64(), A: -60 + 120*source.Float64(), B: -60 + 120*source.Float64()}
		if i%2 == 0 {
			q.Target.A /= 6
			q.Target.B /= 6
		}
		calibrations, questions = append(calibrations, c), append(questions, q)
	}
	b.ResetTimer()
	for i := 0; b.Loop(); i++ {
		if _, err := calibrations[i%40].Match(questions[i%40]); err != nil {
			b.Fatal(err)
		}
	}
}
