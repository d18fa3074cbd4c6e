package soap

import "example.com/lyewright/units"

// leastSuperfat finds the smallest planned superfat, in steps of 0.000001 %,
// at which neither the batch nor any part lies below a floor in the worst case.
// The worst case rises all but evenly with the plan, so a line through two
// plans lands beside the answer; it is then confirmed exactly, step by step.
func (s *solved) leastSuperfat(floor units.Ratio) (superfat units.Ratio, ok bool, faults Faults) {
	const steps = 100_000_000 // to a whole
	plan := func(n int) units.Ratio { return units.Whole(n).Over(units.Whole(steps)) }
	// margins gives how far the batch and each part lie above the floor.
	each := len(s.parts) * (1 + len(s.oils))
	for i := range s.loads {
		each += len(s.loads[i])
	}
	margins := func(n int) (worst []float64, holds bool) {
		if len(faults) == 0 {
			faults = s.run.spend(each)
		}
		if len(faults) > 0 { // come to an end without more work
			return make([]float64, 1+len(s.parts)), true
		}
		if s.solve(plan(n)); s.unbalanced || s.overfull { // nothing is there to be judged
			return make([]float64, 1+len(s.parts)), false
		}
		holds = true
		for i := -1; i < len(s.parts); i++ {
			p := s.ofBatch()
			if i >= 0 {
				p = s.ofPart(i)
			}
			l := p.at(lowest)
			holds = holds && l.keeps(floor)
			low, _ := l.superfat()
			worst = append(worst, low.Sub(floor).Float())
		}
		return worst, holds
	}
	first := int(floor.Times(units.Whole(steps)).Round(0, units.Up).Float())
	if s.uncompensated() {
		first = 0 // an acid lifts the superfat above the plan
	}
	last := steps - 1
	guess := first
	rounds := 3
	if s.run.least >= first { // once it was found it moves by little
		guess, rounds = s.run.least, 0
	}
	for range rounds {
		other := min(guess+steps/100, last)
		if other == guess {
			break
		}
		a, _ := margins(guess)
		b, _ := margins(other)
		next := first
		for i := range a {
			if rise := b[i] - a[i]; rise > 0 {
				root := float64(guess) - a[i]/rise*float64(other-guess)
				next = max(next, int(min(root, float64(last))))
			}
		}
		guess = next
	}
	n, ok := firstBeside(guess, first, last, func(n int) bool { _, holds := margins(n); return holds })
	s.run.least = n
	return plan(n), ok, faults
}

// firstBeside finds the first of first..last at which holds is true, from a
// guess outwards; holds must be false up to some point and true from there. ok
// is false where it is nowhere true.
func firstBeside(guess, first, last int, holds func(int) bool) (n int, ok bool) {
	low, high, step := first-1, last+1, 1 // holds is false at low, true at high
	if holds(guess) {
		high = guess
		for ; high-step > low; step *= 2 {
			if !holds(high - step) {
				low = high - step
				break
			}
			high -= step
		}
	} else {
		low = guess
		for ; low+step < high; step *= 2 {
			if holds(low + step) {
				high = low + step
				break
			}
			low += step
		}
	}
	for high-low > 1 {
		if middle := low + (high-low)/2; holds(middle) {
			high = middle
		} else {
			low = middle
		}
	}
	return high, high <= last
}
