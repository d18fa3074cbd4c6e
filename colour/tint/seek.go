package tint

import (
	"cmp"
	"context"
	"iter"
	"math"
	"slices"
)

// A point is the loads looked for, each as a share of its most.
type point [MostFree]float64

// seeker looks for loads.
type seeker struct {
	ctx    context.Context // of one search: each loop of it stops when this ends
	c      *calibration
	wanted Wanted
	n      int
	bands  []blend
	metric [3][3]float64
	price  point // of each at its most
	grid   grid
	// toTarget is CIEDE2000 in its three terms.
	toTarget func(Lab) [3]float64
	ends     []arrival // where the searches for the nearest came to
	jumps    []jump
}

// A blend is one band: what is fixed there, what each load adds at its most, and what the
// band adds to the colour. Everything that a band needs lies together.
type blend struct {
	k, s         float64
	fullK, fullS point
	sees         [3]float64
}

// at adds up what absorbs and scatters at a point.
func (b *blend) at(x *point, n int) (k, s float64) {
	k, s = b.k, b.s
	for i := range n {
		k += x[i] * b.fullK[i]
		s += x[i] * b.fullS[i]
	}
	return k, s
}

func newSeeker(c *calibration, w Wanted, fixed []float64) *seeker {
	s := &seeker{c: c, wanted: w, n: len(w.Free), metric: w.Target.metric(), toTarget: w.Target.apart}
	s.bands = make([]blend, len(c.eye))
	for j := range s.bands {
		s.bands[j].k, s.bands[j].s = c.band(j, fixed)
		s.bands[j].sees = c.eye[j]
	}
	priced := false
	for _, free := range w.Free {
		priced = priced || free.Price > 0
	}
	for i, free := range w.Free {
		at, most := 0, 100*free.Most.Float()
		for c.ids[at] != free.Colourant {
			at++
		}
		for j := range s.bands {
			s.bands[j].fullK[i], s.bands[j].fullS[i] = most*c.per[at].k[j], most*c.per[at].s[j]
		}
		s.price[i] = most
		if priced {
			s.price[i] *= free.Price
		}
	}
	return s
}

// ended reports whether the caller's context has ended: what was found by then is dropped.
func (s *seeker) ended() bool { return s.ctx.Err() != nil }

// lab gives the colour at a point.
func (s *seeker) lab(x point) Lab {
	var seen stimulus
	for j := range s.bands {
		b := &s.bands[j]
		r := s.c.surface.reads(b.at(&x, s.n))
		for a := range seen {
			seen[a] += b.sees[a] * r
		}
	}
	return seen.lab()
}

// slopes gives the colour at a point, and how it changes with each load.
func (s *seeker) slopes(x point) (Lab, [3]point) {
	var seen stimulus
	var d [3]point
	for j := range s.bands {
		b := &s.bands[j]
		k, sc := b.at(&x, s.n)
		sc = max(sc, leastOfAll)
		inside := opaque(k / sc)
		r := s.c.surface.measured(inside)
		fall := -s.c.surface.slope(inside) * slopeOfOpaque(inside) / (sc * sc)
		for a := range seen {
			seen[a] += b.sees[a] * r
		}
		for i := range s.n {
			change := fall * (b.fullK[i]*sc - k*b.fullS[i])
			d[0][i] += b.sees[0] * change
			d[1][i] += b.sees[1] * change
			d[2][i] += b.sees[2] * change
		}
	}
	fx, fy, fz := labFunctionSlope(seen[0]), labFunctionSlope(seen[1]), labFunctionSlope(seen[2])
	var lab [3]point
	for i := range s.n {
		x, y, z := fx*d[0][i], fy*d[1][i], fz*d[2][i]
		lab[0][i], lab[1][i], lab[2][i] = 116*y, 500*(x-y), 200*(y-z)
	}
	return seen.lab(), lab
}

// far is the difference from the target as CIEDE2000.
func (s *seeker) far(x point) float64 { return s.wanted.Target.Difference(s.lab(x)) }

func (s *seeker) weighed(c Lab) [3]float64 {
	t := s.wanted.Target
	return times(s.metric, [3]float64{c.L - t.L, c.A - t.A, c.B - t.B})
}

// A measure is a way to tell how far a colour is from the target: three terms whose
// squares are added up, and how they change with the colour.
type measure func(Lab) (terms [3]float64, slopes [3][3]float64)

// atTarget measures with the weights that the difference has at the target: smooth, and
// right close to it.
func (s *seeker) atTarget(c Lab) (terms [3]float64, slopes [3][3]float64) {
	return s.weighed(c), s.metric
}

// exactly measures CIEDE2000 itself.
func (s *seeker) exactly(c Lab) (terms [3]float64, slopes [3][3]float64) {
	return sloped(s.toTarget, c)
}

// nearest gives the point that comes nearest to the target, and its difference.
func (s *seeker) nearest() (point, float64) {
	var best point
	least := math.Inf(1)
	try := func(x point, free []int) {
		if s.ended() {
			return
		}
		x, d := s.reach(x, free, reached)
		s.ends = append(s.ends, arrival{x, d})
		if d < least-1e-9 {
			best, least = x, d
		}
	}
	for _, start := range s.grid.lows(s.n) {
		if try(start, s.all()); least < reached {
			return best, least
		}
	}
	if s.n > few {
		for _, low := range s.faces() {
			if try(low, s.all()); least < reached {
				break
			}
		}
	}
	if s.n > few && least > reached && s.turnedAway(s.lab(best)) {
		slices.SortStableFunc(s.ends, func(a, b arrival) int { return cmp.Compare(a.far, b.far) })
		starts := s.ends[:min(len(s.ends), 12)]
		for _, side := range []float64{1, -1} {
			for _, start := range starts {
				x := s.descend(start.point, s.all(), s.besideJump(side*closeBeside), 0)
				d := s.far(x)
				s.jumps = append(s.jumps, jump{arrival{x, d}, side})
				if d < least-1e-9 {
					best, least = x, d
				}
			}
		}
	}
	return best, least
}

// A jump is an arrival beside the jump of hues, on one side of it.
type jump struct {
	arrival
	side float64
}

// few is the number of loads up to which the grid alone suffices, since it is fine enough.
const few = 4

// faces gives points from which no neighbour is nearer to the target where two loads are free
// and the others at none or at their most, the nearest first: the colours that lie outermost
// are those of such mixtures, but for the little that colour bends.
func (s *seeker) faces() []point {
	levels := [...]float64{0, 0.015, 0.05, 0.15, 0.35, 0.65, 1}
	const many = len(levels)
	var lows []arrival
	for _, free := range choices(s.n, 2) {
		for x := range s.holdings(free) {
			if s.ended() {
				return nil
			}
			var far [many][many]float64
			for i := range far {
				for k := range far {
					x[free[0]], x[free[1]] = levels[i], levels[k]
					far[i][k] = s.far(x)
				}
			}
			for i := range far {
				for k, d := range far[i] {
					if (i == 0 || d <= far[i-1][k]) && (i == many-1 || d <= far[i+1][k]) && (k == 0 || d <= far[i][k-1]) &&
						(k == many-1 || d <= far[i][k+1]) {
						x[free[0]], x[free[1]] = levels[i], levels[k]
						lows = append(lows, arrival{x, d})
					}
				}
			}
		}
	}
	slices.SortStableFunc(lows, func(a, b arrival) int { return cmp.Compare(a.far, b.far) })
	const kept = 40
	var list []point
	for _, low := range lows {
		if len(list) < kept && !slices.Contains(list, low.point) {
			list = append(list, low.point)
		}
	}
	return list
}

// An arrival is where a search for the nearest came to, and how far that is from the target.
type arrival struct {
	point
	far float64
}

// reached is a difference that counts as none.
const reached = 1e-7

// all lists every load.
func (s *seeker) all() []int { return []int{0, 1, 2, 3, 4, 5}[:s.n] }

// A grid is the difference of a fixed grid of points from the target: colour changes fast with
// small loads, and slowly with large ones, so that its levels lie closer there.
type grid struct {
	levels []float64
	far    []float64 // by code: the digits to the base of the levels
}

// measure fills the grid.
func (s *seeker) measure() {
	levels := []float64{0, 0.02, 0.05, 0.1, 0.18, 0.3, 0.5, 0.75, 1}
	switch {
	case s.n > 5:
		levels = []float64{0, 0.04, 0.25, 1}
	case s.n > 4:
		levels = []float64{0, 0.03, 0.12, 0.4, 1}
	case s.n > 3:
		levels = []float64{0, 0.04, 0.15, 0.45, 1}
	}
	s.grid = grid{levels, make([]float64, power(len(levels), s.n))}
	for code := range s.grid.far {
		if s.ended() {
			break
		}
		s.grid.far[code] = s.far(s.grid.at(code, s.n))
	}
}

func (g *grid) at(code, n int) (x point) {
	for i := range n {
		x[i] = g.levels[code%len(g.levels)]
		code /= len(g.levels)
	}
	return x
}

// lows gives the points of the grid from which no neighbour is nearer to the target, the
// nearest first.
func (g *grid) lows(n int) []point {
	var lows []int
	for code := range g.far {
		low, step := true, 1
		for range n {
			level := code / step % len(g.levels)
			low = low && (level == 0 || g.far[code] <= g.far[code-step]) && (level == len(g.levels)-1 ||
				g.far[code] <= g.far[code+step])
			step *= len(g.levels)
		}
		if low {
			lows = append(lows, code)
		}
	}
	slices.SortStableFunc(lows, func(a, b int) int { return cmp.Compare(g.far[a], g.far[b]) })
	const kept = 6
	var list []point
	for _, code := range lows[:min(kept, len(lows))] {
		list = append(list, g.at(code, n))
	}
	return list
}

// lowest gives the nearest point of the grid with all but the free loads held.
func (g *grid) lowest(held point, free []int, n int) point {
	base, step := 0, 1
	var steps [MostFree]int
	for i := range n {
		steps[i] = step
		if held[i] == 1 {
			base += (len(g.levels) - 1) * step
		}
		step *= len(g.levels)
	}
	for _, i := range free {
		if held[i] == 1 {
			base -= (len(g.levels) - 1) * steps[i]
		}
	}
	best := base
	for k := range power(len(g.levels), len(free)) {
		code := base
		for _, i := range free {
			code += k % len(g.levels) * steps[i]
			k /= len(g.levels)
		}
		if g.far[code] < g.far[best] {
			best = code
		}
	}
	return g.at(best, n)
}

// holdings gives every way to hold all but the free loads at none or at their most; the free
// ones are at none.
func (s *seeker) holdings(free []int) iter.Seq[point] {
	return func(yield func(point) bool) {
		for code := range 1 << (s.n - len(free)) {
			var x point
			for i := range s.n {
				if !slices.Contains(free, i) {
					x[i] = float64(code & 1)
					code >>= 1
				}
			}
			if !yield(x) {
				return
			}
		}
	}
}

func power(base, exponent int) int {
	n := 1
	for range exponent {
		n *= base
	}
	return n
}

// descend lowers the measure from a point, some loads free between none and their most:
// damped least squares, a load at an end held there while the measure would push it out. It
// ends where the measure is low enough.
func (s *seeker) descend(x point, free []int, by measure, enough float64) point {
	damping := 1e-3
	lab, slopes := s.slopes(x)
	terms, rate := by(lab)
	now := square(terms)
	for range 40 {
		if now <= max(1e-16, enough*enough) || s.ended() {
			break
		}
		var gradient point
		var j [3]point
		for _, i := range free {
			for k := range 3 {
				j[k][i] = rate[k][0]*slopes[0][i] + rate[k][1]*slopes[1][i] + rate[k][2]*slopes[2][i]
				gradient[i] += j[k][i] * terms[k]
			}
		}
		var moving [MostFree]int
		n := 0
		for _, i := range free {
			if x[i] <= 0 && gradient[i] >= 0 || x[i] >= 1 && gradient[i] <= 0 {
				continue
			}
			moving[n] = i
			n++
		}
		if n == 0 {
			break
		}
		better, small := false, false
		for range 12 {
			next := x
			step := dampedStep(&x, &j, &gradient, moving[:n], damping)
			moved := 0.0
			for _, i := range moving[:n] {
				next[i] = max(0, min(1, x[i]+step[i]))
				moved = max(moved, math.Abs(next[i]-x[i]))
			}
			nextLab, nextSlopes := s.slopes(next)
			nextTerms, nextRate := by(nextLab)
			if then := square(nextTerms); then < now {
				small = now-then < 1e-10*now || moved < 1e-9
				x, slopes, terms, rate, now = next, nextSlopes, nextTerms, nextRate, then
				damping = max(damping/8, 1e-12)
				better = true
				break
			}
			if moved < 1e-9 {
				break
			}
			damping *= 6
		}
		if !better || small {
			break
		}
	}
	return x
}

func square(v [3]float64) float64 { return v[0]*v[0] + v[1]*v[1] + v[2]*v[2] }

// dampedStep solves (JᵀJ + damping·diagonal) step = −gradient for the loads that move, each
// between none and its most: what would leave first is put at that end, and the others go on
// from there.
func dampedStep(x *point, j *[3]point, gradient *point, moving []int, damping float64) (step point) {
	var left [MostFree]int
	n := copy(left[:], moving)
	slope := *gradient
	for n > 0 {
		var a [MostFree][MostFree + 1]float64
		for r, i := range left[:n] {
			for c, l := range left[:n] {
				a[r][c] = j[0][i]*j[0][l] + j[1][i]*j[1][l] + j[2][i]*j[2][l]
			}
			a[r][r] += damping*a[r][r] + 1e-14
			a[r][n] = -slope[i]
		}
		solved := eliminated(&a, n)
		first, soonest := -1, 1.0
		for r, i := range left[:n] {
			to := max(0, min(1, x[i]+solved[r]))
			if x[i]+solved[r] == to {
				continue
			}
			if when := (to - x[i]) / solved[r]; when < soonest {
				first, soonest = r, when
			}
		}
		if first < 0 {
			for r, i := range left[:n] {
				step[i] = solved[r]
			}
			break
		}
		i := left[first]
		step[i] = max(0, min(1, x[i]+solved[first])) - x[i]
		for l := range slope {
			slope[l] += (j[0][i]*j[0][l] + j[1][i]*j[1][l] + j[2][i]*j[2][l]) * step[i]
		}
		copy(left[first:], left[first+1:n])
		n--
	}
	return step
}

// eliminated solves a small system by Gauss's elimination, the largest pivot first; an
// unknown that nothing fixes gets zero.
func eliminated(a *[MostFree][MostFree + 1]float64, n int) (x point) {
	for c := range n {
		p := c
		for r := c + 1; r < n; r++ {
			if math.Abs(a[r][c]) > math.Abs(a[p][c]) {
				p = r
			}
		}
		a[c], a[p] = a[p], a[c]
		if a[c][c] == 0 {
			continue
		}
		for r := c + 1; r < n; r++ {
			f := a[r][c] / a[c][c]
			for k := c; k <= n; k++ {
				a[r][k] -= f * a[c][k]
			}
		}
	}
	for r := n - 1; r >= 0; r-- {
		if a[r][r] == 0 {
			continue
		}
		v := a[r][n]
		for c := r + 1; c < n; c++ {
			v -= a[r][c] * x[c]
		}
		x[r] = v / a[r][r]
	}
	return x
}
