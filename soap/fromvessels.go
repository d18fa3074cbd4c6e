package soap

import (
	"math"
	"strconv"

	"example.com/lyewright/units"
)

// What fills the vessels decides how much of each part is made, that decides how
// much water and oil is held back for carriers, that decides how dense the batter is,
// and that how much fills the vessels. fromVessels goes round until nothing changes,
// in float64, and only then are masses born: of the oils, and of each part's batter,
// whose ratios are the shares. From there on it is the formula with these oils and
// shares.

// filling is the search for the masses that fill the vessels.
type filling struct {
	s       *solved
	b       *bulk
	c       contents
	fixed   []float64 // the share of a part without vessels; −1 of one with
	needs   [3]linear // alkali, water asked for, others: per oils, per pot, fixed
	purity  float64   // hydroxide per alkali as weighed
	shares  []float64 // of the formula's oils
	rates   [][]rate  // of each part's additions
	density []float64 // of the parts
	full    []float64 // what fills their vessels
}

// linear is a mass in grams that depends on all oils and on what is in the pot.
type linear struct{ oils, pot, fixed float64 }

func (l linear) at(oils, pot float64) float64 {
	return float64(l.oils*oils) + float64(l.pot*pot) + l.fixed
}

func (f form) float() linear { return linear{f.oils.Float(), f.pot.Float(), f.fixed.Float()} }

// rate is an addition's mass, as a part of the part's oils and batter, and of its
// carrier.
type rate struct {
	perOils, perBatter, fixed float64
	carrier                   float64 // per addition
	held                      bool    // the carrier comes out of the formula
	line                      int     // the oil line that it comes out of; −1: of the water
}

func (a alkaliFactor) float() float64 { return a.times.Float() / a.over.Float() }

// fromVessels gives the formula its oils and its parts their shares.
func (s *solved) fromVessels(superfat units.Ratio) Faults {
	factors := s.alkaliFactors()
	w := filling{s: s, b: s.bulk}
	if !w.layout(superfat, factors) {
		s.unbalanced = true
		return s.impossible()
	}
	each := len(w.c.oils)
	for i := range s.loads {
		each += 1 + len(s.loads[i])
	}
	for i := range s.seated.layers {
		each += 1 + len(s.seated.layers[i])
	}
	for range mostRounds {
		if faults := s.run.spend(each / 4); len(faults) > 0 { // in float64 a line costs less
			return faults
		}
		change, faults := w.round()
		if len(faults) > 0 {
			return faults
		}
		if change < 1e-13 {
			if w.c.pot > gramsInTonne {
				return Faults{{
					Path: "size.vessels", Text: strconv.FormatFloat(w.c.pot/1000, 'f', 0, 64) + " kg", Kind: ErrRange,
					Reason: "of batter is what they take, more than a tonne", Remedy: "check the units, or make several batches",
				}}
			}
			s.f = w.resolved()
			s.parts = s.f.parts()
			for i := range s.parts {
				s.shares[i] = s.parts[i].Share
			}
			return nil
		}
	}
	return Faults{{
		Path: "size.vessels", Kind: ErrImpossible, Reason: "cannot be filled: what carriers hold back and what fills the vessels do not come to rest",
		Remedy: "lower the loads, or the ratios of their carriers",
	}}
}

const (
	mostRounds   = 200
	gramsInTonne = 1e6
)

// layout writes down what does not change from round to round. It is false where a
// liquid's fat asks for more water than brings it.
func (w *filling) layout(superfat units.Ratio, factors []alkaliFactor) bool {
	s, f := w.s, w.s.f
	perDemand, hydroxide := 0.0, 0.0
	for i := range factors {
		factor := factors[i].float()
		perDemand += factor
		hydroxide += float64(factor * f.Alkalis[i].planned().Typical.Float())
	}
	w.purity = hydroxide / perDemand
	for _, share := range f.oilShares() {
		w.shares = append(w.shares, share.Float())
	}
	if len(f.Acids)+len(f.Water.Liquids) > 0 {
		demand := nothing()
		demand.oils = f.demandPerOils()
		for i := range s.parts {
			s.parts[i].Share = s.parts[i].Share.Or(units.Whole(0))
		}
		s.superfat = superfat
		t := s.system(demand, factors)
		if !t.ok {
			return false
		}
		w.needs = [3]linear{t.alkali.float(), t.asked.float(), t.others.float()}
	} else {
		demand := 0.0
		for i := range f.Oils {
			demand += float64(w.shares[i] * f.Oils[i].Oil.Saponification().Typical.Float())
		}
		alkali := perDemand * demand * (1 - superfat.Float())
		w.needs[0].oils = alkali
		switch rule := &f.Water; {
		case rule.PerOils.Given():
			w.needs[1].oils = rule.PerOils.Float()
		case rule.PerAlkali.Given():
			w.needs[1].oils = alkali * rule.PerAlkali.Float()
		default:
			c := rule.LyeConcentration.Float()
			w.needs[1].oils = alkali * (1 - c) / c
		}
	}
	n := len(s.parts)
	w.fixed, w.density, w.full = make([]float64, n), make([]float64, n), make([]float64, n)
	w.c = contents{oils: make([]float64, len(f.Oils)), batter: make([]float64, n), poured: make([]float64, n), loads: make([][]float64, n), carriers: make([][]float64, n)}
	w.rates = make([][]rate, n)
	for i := range s.parts {
		w.fixed[i] = -1
		w.density[i] = 1
		if len(f.Parts) > 0 && f.Parts[i].Share.Given() {
			w.fixed[i] = f.Parts[i].Share.Float()
		}
		loads := s.loads[i]
		w.c.loads[i], w.c.carriers[i], w.rates[i] = make([]float64, len(loads)), make([]float64, len(loads)), make([]rate, len(loads))
		for j := range loads {
			w.rates[i][j] = loads[j].rate()
		}
	}
	for i, grams := range w.filled(1) { // a first guess: 1 g/mL
		w.c.batter[i] = max(grams, 1)
	}
	return true
}

func (l *loaded) rate() rate {
	load, carrier := &l.addition.Load, &l.addition.Carrier
	r := rate{line: -1}
	switch {
	case load.OfOils.Given():
		r.perOils = load.OfOils.Float()
	case load.OfBatter.Given():
		r.perBatter = load.OfBatter.Float()
	default:
		r.fixed = load.Mass.Grams()
	}
	if carrier.In != NoLiquid {
		r.carrier, r.held = carrier.Ratio.Float(), carrier.fromFormula()
		if carrier.In == InOil {
			r.line = l.line
		}
	}
	return r
}

// round goes round once; change is by how much the masses of the parts changed, of
// all of it.
func (w *filling) round() (change float64, faults Faults) {
	c := &w.c
	vessels, shared := 0.0, 0.0
	for i, fixed := range w.fixed {
		if fixed < 0 {
			vessels += c.batter[i]
		} else {
			shared += fixed
		}
	}
	c.pot = vessels / (1 - shared)
	for i, fixed := range w.fixed {
		if fixed >= 0 {
			c.batter[i] = fixed * c.pot
		}
	}
	oils := w.oils()
	if !(oils > 0) || math.IsInf(oils, 0) {
		return 0, Faults{{
			Path: "size.vessels", Kind: ErrImpossible, Reason: "leave no room for oils beside what is loaded, or held back for carriers",
			Remedy: "lower the loads or the ratios of their carriers, or fill more",
		}}
	}
	w.divide(oils)
	_, _, volume, ok := w.b.pot(c, planned)
	if !ok {
		return 0, w.s.tooStrongForDensity(c.hydroxide / (c.alkali + c.asked))
	}
	batter := c.pot / volume
	for i := range c.batter {
		mass, volume := w.b.part(c, i, batter, planned)
		c.poured[i], w.density[i] = mass, mass/volume
	}
	for i, filled := range w.filled(batter) {
		if w.fixed[i] >= 0 {
			continue
		}
		part := &w.s.parts[i]
		want := filled*(1+part.ReserveOrUsual().Float()) + part.Loss.Grams()
		next := c.batter[i] * want / c.poured[i]
		if !(next > 1e-6) {
			if faults := w.s.drowned(w.density, batter); len(faults) > 0 {
				return 0, faults
			}
			return 0, Faults{{
				Path: itemPath("parts", i), Text: part.Name, Kind: ErrImpossible, Reason: "is all additions: they alone are more than its vessels hold",
				Remedy: "lower its loads, or fill more vessels with it",
			}}
		}
		change += math.Abs(next - c.batter[i])
		c.batter[i] = next
	}
	return change / vessels, nil
}

// oils gives the mass of all oils that makes so much in the pot:
// pot = oils + alkali + water + others − what carriers hold back.
func (w *filling) oils() float64 {
	c := &w.c
	var held linear
	for i := range w.rates {
		share := c.batter[i] / c.pot
		for _, r := range w.rates[i] {
			if !r.held {
				continue
			}
			held.oils += float64(r.carrier * r.perOils * share)
			held.pot += float64(r.carrier * r.perBatter * share)
			held.fixed += float64(r.carrier * r.fixed)
		}
	}
	all := linear{oils: 1 - held.oils, pot: -held.pot, fixed: -held.fixed}
	for _, need := range w.needs {
		all.oils += need.oils
		all.pot += need.pot
		all.fixed += need.fixed
	}
	return (c.pot - float64(all.pot*c.pot) - all.fixed) / all.oils
}

// divide gives every mass of the batch that so much oil makes.
func (w *filling) divide(oils float64) {
	c := &w.c
	c.alkali, c.asked, c.others = w.needs[0].at(oils, c.pot), w.needs[1].at(oils, c.pot), w.needs[2].at(oils, c.pot)
	c.hydroxide, c.held = c.alkali*w.purity, 0
	for i, share := range w.shares {
		c.oils[i] = share * oils
	}
	for i := range w.rates {
		of := oils * c.batter[i] / c.pot
		for j, r := range w.rates[i] {
			mass := float64(r.perOils*of) + float64(r.perBatter*c.batter[i]) + r.fixed
			carrier := float64(mass * r.carrier)
			c.loads[i][j], c.carriers[i][j] = mass, carrier
			switch {
			case r.held && r.line >= 0:
				c.oils[r.line] -= carrier
			case r.held:
				c.held += carrier
			}
		}
	}
}

// filled gives what fills the vessels of each part, in grams.
func (w *filling) filled(batter float64) []float64 {
	filled := w.full
	clear(filled)
	for i := range w.s.seated.cavities {
		k := &w.s.seated.cavities[i]
		volume := k.net(w.density, batter)
		for j, seat := range k.seats {
			filled[seat.part] += float64(k.count * volume * k.parts[j] * w.density[seat.part])
		}
	}
	return filled
}

// resolved is the formula with the oils and the shares that fill its vessels.
func (w *filling) resolved() *Formula {
	f := *w.s.f
	f.Size.Oils = gramsOf(w.oils())
	if len(f.Parts) == 0 {
		return &f // one part: all of it
	}
	f.Parts = append([]Part(nil), w.s.parts...)
	left, largest := units.Whole(1), -1
	for i, fixed := range w.fixed {
		part := &f.Parts[i]
		part.Rest = false
		if fixed < 0 {
			if largest < 0 || w.c.batter[i] > w.c.batter[largest] {
				largest = i
			}
			part.Share, _ = gramsOf(w.c.batter[i]).Per(gramsOf(w.c.pot))
		} else {
			part.Share = w.s.f.Parts[i].Share
		}
	}
	for i := range f.Parts {
		if i != largest {
			left = left.Sub(f.Parts[i].Share)
		}
	}
	f.Parts[largest].Share = left
	return &f
}

// gramsOf takes grams of a model to a mass, rounded once, to a nanogram.
func gramsOf(grams float64) units.Mass {
	r, _ := units.RatioOfFloat(grams)
	return product(units.Grams(1), r.Or(units.Whole(0)), units.Nearest)
}

// tooStrongForDensity says that no density is known of a lye so strong.
func (s *solved) tooStrongForDensity(strength float64) Faults {
	text := strconv.FormatFloat(100*strength, 'f', 2, 64) + " %"
	return Faults{{
		Path: "water", Text: text, Kind: ErrImpossible, Reason: "of hydroxide is in the lye asked for, above the 50 % up to which densities are known",
		Remedy: "ask for more water, or leave out the vessels",
	}}
}
