package madeup

import "math/rand/v2"

// Climb looks for a formula that costs more than this one: step by step, each of one setting or two, and from wherever
// it costs most so far. cost is below zero of a formula that is refused. The same seed takes the same steps as long as
// the costs compare alike; it goes on while more says so.
func (h Heavy) Climb(seed uint64, more func() bool, cost func(Heavy) float64) (worst Heavy, most float64) {
	r := rand.New(rand.NewPCG(seed, 2026))
	worst, most = h, cost(h)
	for more() {
		next := worst.step(r)
		if r.IntN(2) == 0 {
			next = next.step(r)
		}
		if next == worst {
			continue
		}
		if c := cost(next); c > most {
			worst, most = next, c
		}
	}
	return worst, most
}

// step changes one setting, within what a formula's lists may hold.
func (h Heavy) step(r *rand.Rand) Heavy {
	const additions = 50 // of a part, all together
	room := additions - h.Fragrances - h.Additives - h.Tinted - h.Matched
	numbers := []struct {
		setting *int
		most    int
	}{
		{&h.Oils, 100},
		{&h.Acids, 3},
		{&h.Liquids, 20},
		{&h.Parts, 50},
		{&h.Fragrances, h.Fragrances + room},
		{&h.Additives, h.Additives + room},
		{&h.Tinted, h.Tinted + room},
		{&h.Matched, min(6, h.Matched+room)},
		{&h.Materials, 100},
		{&h.Constituents, 300},
		{&h.Blends, max(0, h.Materials-2)},
		{&h.Nested, 6},
		{&h.Vessels, 100},
		{&h.Moulds, 1000},
		{&h.Layers, 20},
		{&h.Swatches, 100},
	}
	flags := []*bool{&h.Promise, &h.Most, &h.OfBatter, &h.Held, &h.Weighed}
	switch k := r.IntN(len(numbers) + len(flags) + 1); {
	case k < len(numbers):
		n, most := numbers[k].setting, numbers[k].most
		switch r.IntN(4) {
		case 0:
			*n = most
		case 1:
			*n = r.IntN(most + 1)
		case 2:
			*n = min(most, *n+1+*n/4)
		default:
			*n -= (*n + 3) / 4
		}
	case k < len(numbers)+len(flags):
		*flags[k-len(numbers)] = !*flags[k-len(numbers)]
	default:
		h.Bands = []int{0, 36, 71}[r.IntN(3)]
	}
	h.Blends = min(h.Blends, max(0, h.Materials-2))
	return h
}
