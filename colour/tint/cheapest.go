package tint

import (
	"math"
	"slices"
)

// inTurn is how many loads are free at once: a colour is three figures.
const inTurn = 3

// cost is the price of a point.
func (s *seeker) cost(x point) float64 {
	sum := 0.0
	for i := range s.n {
		sum += x[i] * s.price[i]
	}
	return sum
}

// cheapest looks, among the points no farther from the target than that, for the cheapest.
// What comes nearest is one of them. Since the colour of a mixture bends with its loads,
// all of them may lower the price a little in the end.
func (s *seeker) cheapest(nearest point, farthest float64) point {
	best, least := nearest, s.cost(nearest)
	along := s.exactly
	try := func(x point, free []int) {
		x = s.trim(x, free, farthest, along)
		if c := s.cost(x); c < least*(1-1e-9) {
			best, least = x, c
		}
	}
	for _, free := range choices(s.n, inTurn) {
		for held := range s.holdings(free) {
			if s.cost(held) >= least {
				continue
			}
			// From the nearest, from nothing, and of many loads from the best of the grid: of two
			// mixtures that look alike the one may have ten times the loads of the other.
			from := held
			for _, i := range free {
				from[i] = nearest[i]
			}
			starts := []point{from, held}
			if s.n > few {
				starts = append(starts, s.grid.lowest(held, free, s.n))
			}
			for _, x := range starts {
				if y, d := s.reach(x, free, farthest); d <= farthest {
					try(y, free)
				}
			}
		}
	}
	if s.n > inTurn {
		try(nearest, s.all())
		try(best, s.all())
	}
	if s.n > few {
		for _, end := range s.ends {
			if end.far <= farthest {
				try(end.point, s.all())
			}
		}
		s.polish(func() float64 { return least }, func(free []int) { try(best, free) })
	}
	for _, side := range []float64{1, -1} {
		from := slices.IndexFunc(s.jumps, func(j jump) bool { return j.side == side && j.far <= farthest })
		if from < 0 {
			continue
		}
		// The same beside the jump.
		overall, paid := best, least
		best, least = s.jumps[from].point, s.cost(s.jumps[from].point)
		along = s.besideJump(side * looseBeside)
		for _, j := range s.jumps {
			if j.side == side && j.far <= farthest {
				try(j.point, s.all())
			}
		}
		for _, free := range choices(s.n, inTurn) {
			for held := range s.holdings(free) {
				if s.cost(held) >= least {
					continue
				}
				for _, x := range []point{held, s.grid.lowest(held, free, s.n)} {
					if y := s.descend(x, free, along, farthest); s.far(y) <= farthest {
						try(y, free)
					}
				}
			}
		}
		s.polish(func() float64 { return least }, func(free []int) { try(best, free) })
		along = s.exactly
		s.polish(func() float64 { return least }, func(free []int) { try(best, free) })
		if least >= paid {
			best, least = overall, paid
		}
	}
	return best
}

// polish tries three loads in turn and all of them, as long as that saves something.
func (s *seeker) polish(least func() float64, try func(free []int)) {
	for range 4 {
		before := least()
		for _, free := range choices(s.n, inTurn) {
			try(free)
		}
		if try(s.all()); least() > before*(1-1e-4) {
			break
		}
	}
}

// reach comes as near to the target as the free loads can from a point, and gives the
// difference: by that itself, and then by the smooth measure where it is not near enough.
func (s *seeker) reach(x point, free []int, enough float64) (point, float64) {
	x = s.descend(x, free, s.exactly, enough)
	d := s.far(x)
	if d <= enough {
		return x, d
	}
	y := s.descend(s.descend(x, free, s.atTarget, 0), free, s.exactly, enough)
	if then := s.far(y); then < d {
		return y, then
	}
	return x, d
}

// choices lists every choice of so many of n, in order; of fewer than that all together.
func choices(n, of int) [][]int {
	var list [][]int
	var choose func(from int, chosen []int)
	choose = func(from int, chosen []int) {
		if len(chosen) == min(of, n) {
			list = append(list, slices.Clone(chosen))
			return
		}
		for i := from; i < n; i++ {
			choose(i+1, append(chosen, i))
		}
	}
	choose(0, nil)
	return list
}

// trim lowers the price from a point within reach of the target, until it is at the edge
// of that: each time as far as the slopes at the point allow.
func (s *seeker) trim(x point, free []int, farthest float64, by measure) point {
	x = s.thinned(x, free, farthest)
	now := s.cost(x)
	for range 40 {
		if s.ended() {
			break
		}
		lab, slopes := s.slopes(x)
		var p pull
		rate := [3][3]float64{}
		p.terms, rate = by(lab)
		for _, i := range free {
			for k := range 3 {
				p.slopes[k][i] = rate[k][0]*slopes[0][i] + rate[k][1]*slopes[1][i] + rate[k][2]*slopes[2][i]
			}
		}
		next, ok := s.within(x, free, &p, farthest)
		next = s.thinned(next, free, farthest)
		then := s.cost(next)
		if !ok || then > now*(1-worthwhile) {
			break
		}
		x, now = next, then
	}
	return x
}

// thinned takes all loads down together, as far as the colour stays within reach: where the
// base hardly counts it is that of their proportions.
func (s *seeker) thinned(x point, free []int, farthest float64) point {
	for by := 0.5; by < 0.99; {
		next := x
		for _, i := range free {
			next[i] *= by
		}
		if s.far(next) <= farthest && s.cost(next) < s.cost(x) {
			x = next
			continue
		}
		by = (1 + by) / 2
	}
	return x
}

// worthwhile is the share of the price that a further step must save.
const worthwhile = 1e-5

// within goes a step that lowers the price and stays within reach of the target. Where
// that bends away it aims as much farther in, and then goes a part of the way: what lies
// between two points within reach mostly is.
func (s *seeker) within(x point, free []int, p *pull, farthest float64) (next point, ok bool) {
	aim, now := farthest, s.cost(x)
	for range 2 {
		next = s.step(x, free, p, aim)
		beyond := s.far(next) - farthest
		if beyond <= 0 && s.cost(next) < now {
			return next, true
		}
		if aim -= 1.2 * max(0, beyond); aim <= 0 {
			break
		}
	}
	whole := s.step(x, free, p, farthest)
	for part := 0.5; part > 1e-3; part /= 2 {
		for _, i := range free {
			next[i] = x[i] + part*(whole[i]-x[i])
		}
		if s.far(next) <= farthest && s.cost(next) < now {
			return next, true
		}
	}
	return x, false
}

// pull is where a point lies from the target, and how that changes with each load.
type pull struct {
	terms  [3]float64
	slopes [3]point
}

// step gives the point of the lowest price at which the terms, taken as linear, reach so
// far. A load that would leave its bounds first is put there, and the others go on.
func (s *seeker) step(x point, free []int, p *pull, farthest float64) point {
	terms := p.terms
	var moving [MostFree]int
	n := copy(moving[:], free)
	for n > 0 {
		least, cheap := s.directions(p, terms, moving[:n])
		// From the least difference on, its square grows with the square of the way.
		rest, along := terms, [3]float64{}
		for k := range 3 {
			for r, i := range moving[:n] {
				rest[k] += p.slopes[k][i] * least[r]
				along[k] += p.slopes[k][i] * cheap[r]
			}
		}
		way := 0.0
		if room := farthest*farthest - square(rest); room > 0 && square(along) > 0 {
			way = math.Sqrt(room / square(along))
		}
		first, soonest, bound := -1, 1.0, 0.0
		for r, i := range moving[:n] {
			change := least[r] + way*cheap[r]
			to := max(0, min(1, x[i]+change))
			if x[i]+change == to {
				continue
			}
			if when := (to - x[i]) / change; when < soonest {
				first, soonest, bound = r, when, to
			}
		}
		if first < 0 {
			for r, i := range moving[:n] {
				x[i] += least[r] + way*cheap[r]
			}
			break
		}
		i := moving[first]
		for k := range 3 {
			terms[k] += p.slopes[k][i] * (bound - x[i])
		}
		x[i] = bound
		copy(moving[first:], moving[first+1:n])
		n--
	}
	return x
}

// directions gives the changes of loads that make the terms least, and those that lower
// the price the fastest for what they add to them.
func (s *seeker) directions(p *pull, terms [3]float64, moving []int) (least, cheap point) {
	var a, b [MostFree][MostFree + 1]float64
	trace := 0.0
	for r, i := range moving {
		for c, j := range moving {
			a[r][c] = p.slopes[0][i]*p.slopes[0][j] + p.slopes[1][i]*p.slopes[1][j] + p.slopes[2][i]*p.slopes[2][j]
		}
		trace += a[r][r]
	}
	b = a
	n := len(moving)
	for r, i := range moving {
		// With more loads than terms some change nothing together: they go far, and end at
		// a bound.
		a[r][r] += 1e-9 * trace
		b[r][r] = a[r][r]
		a[r][n] = -(p.slopes[0][i]*terms[0] + p.slopes[1][i]*terms[1] + p.slopes[2][i]*terms[2])
		b[r][n] = -s.price[i]
	}
	return eliminated(&a, n), eliminated(&b, n)
}
