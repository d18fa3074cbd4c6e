package soap

import (
	"math"

	"example.com/lyewright/internal/molar"

	"example.com/lyewright/units"
)

// drawn is one oil as it goes into a part: its mass in the whole pot, and the
// part's own jugs of it. However it gets there it has one saponification value.
type drawn struct {
	oil  Oil
	pot  units.Mass
	jugs []units.Mass
}

// prospect is what a superfat is judged from: the oils and alkali of the pot,
// of which the part takes a share, and the part's own oils.
type prospect struct {
	share        units.Ratio
	oils         []drawn
	alkalis      []AlkaliWeighing
	scale, small units.Mass
}

// ofBatch gives the prospect of the batch: every oil of the formula is one
// weighing, however many jugs it fills.
func (s *solved) ofBatch() prospect {
	p := s.prospect(units.Whole(1), len(s.oils))
	for i := range s.oils {
		p.oils = append(p.oils, drawn{oil: s.f.Oils[i].Oil, pot: s.oils[i]})
	}
	return p
}

// ofPart gives the prospect of a part.
func (s *solved) ofPart(part int) prospect {
	p := s.prospect(s.parts[part].Share, len(s.oils)+len(s.loads[part]))
	for i := range s.oils {
		p.oils = append(p.oils, drawn{oil: s.f.Oils[i].Oil, pot: s.inPot(i)})
	}
	for _, l := range s.loads[part] {
		if l.addition.Carrier.In != InOil {
			continue
		}
		at := l.line
		for i := len(s.oils); at < 0 && i < len(p.oils); i++ {
			if p.oils[i].oil.ID() == l.oil.ID() {
				at = i
			}
		}
		if at < 0 {
			at = len(p.oils)
			p.oils = append(p.oils, drawn{oil: l.oil})
		}
		p.oils[at].jugs = append(p.oils[at].jugs, l.carrier)
	}
	return p
}

func (s *solved) prospect(share units.Ratio, oils int) prospect {
	scale, small := s.f.Scales()
	return prospect{share: share, oils: make([]drawn, 0, oils), alkalis: s.alkalis, scale: scale, small: small}
}

// end is a way of looking at every input: its value to plan at, or the end of
// its range that makes the superfat low or high.
type end int

const (
	lowest  end = -1
	planned end = 0
	highest end = 1
)

// pick takes the value of a range at an end.
func (e end) pick(r units.Range) units.Ratio {
	switch e {
	case lowest:
		return r.Low
	case highest:
		return r.High
	default:
		return r.Typical
	}
}

// shift takes a weighing off by one division: half for rounding to the scale,
// half for what its display hides. It is cut at 0 g.
func (e end) shift(mass, division units.Mass) units.Mass {
	switch e {
	case lowest:
		mass = mass.Sub(division)
	case highest:
		mass = mass.Add(division)
	}
	if mass.Sign() < 0 {
		return units.Mass{}
	}
	return mass
}

// ledger holds alkali against demand, both as KOH times the molar mass of NaOH
// in mg/mol, the scale on which both hydroxides are whole numbers.
type ledger struct {
	alkali, demand units.Sum
	times          int64 // how many times over both are counted
}

// at draws up the ledger at an end: the superfat is lowest with the least
// demand and the most alkali.
func (p *prospect) at(e end) ledger {
	var pot, own, alkali units.Sum
	for i := range p.oils {
		oil := &p.oils[i]
		value := e.pick(oil.oil.Saponification())
		if oil.pot.Sign() > 0 {
			pot = pot.Plus(e.shift(oil.pot, p.scale), value)
		}
		for _, jug := range oil.jugs {
			own = own.Plus(e.shift(jug, p.small), value)
		}
	}
	for _, a := range p.alkalis {
		hydroxide := units.Sum{}.Plus((-e).shift(a.Mass, p.small), (-e).pick(a.Purity))
		alkali = alkali.Add(hydroxide.TimesWhole(otherMolar(a.Alkali)))
	}
	// Of a share n/d the pot and the alkali count n times, the part's own oils d
	// times: whole numbers keep the sums small.
	l := ledger{times: 1}
	if n, d, ok := p.share.Fraction(); ok {
		l.times = d
		pot, alkali, own = pot.TimesWhole(n), alkali.TimesWhole(n), own.TimesWhole(d)
	} else {
		pot, alkali = pot.Times(p.share), alkali.Times(p.share)
	}
	l.alkali, l.demand = alkali, pot.Add(own).TimesWhole(molar.NaOH)
	return l
}

// superfat gives the share of the demand left without alkali; ok is false
// where there is no demand.
func (l ledger) superfat() (share units.Ratio, ok bool) {
	used, ok := l.alkali.Per(l.demand)
	return used.Rest(), ok
}

// keeps reports whether the superfat is no lower than a floor, exactly: without
// the rounding of a quotient.
func (l ledger) keeps(floor units.Ratio) bool {
	return l.demand.Sign() > 0 && l.alkali.Compare(l.demand.Times(floor.Rest())) <= 0
}

// freeAlkali gives the alkali that the demand leaves over, as NaOH, of a dry
// mass.
func (l ledger) freeAlkali(dry units.Mass) units.Ratio {
	share, _ := l.alkali.Sub(l.demand).Per(units.Sum{}.Plus(dry, units.Whole(1)).TimesWhole(molar.KOH).TimesWhole(l.times))
	return share
}

// outlook judges the superfat. The planned figure may be given (the batch's,
// as asked); otherwise it is worked out from the masses. dry is the mass that
// alkali left over is a share of. ok is false where there may be no demand.
func (p *prospect) outlook(asked units.Ratio, dry units.Mass) (o Outlook, ok bool) {
	worst := p.at(lowest)
	if o.Low, ok = worst.superfat(); !ok {
		return Outlook{}, false
	}
	o.Planned = asked
	if !asked.Given() {
		o.Planned, _ = p.at(planned).superfat()
	}
	o.High, _ = p.at(highest).superfat()
	o.Complete = p.complete()
	o.LikelyLow, o.LikelyHigh = o.Low, o.High
	if margin, ok := units.RatioOfFloat(2 * p.uncertainty()); ok {
		if likely := o.Planned.Sub(margin); likely.Compare(o.Low) > 0 {
			o.LikelyLow = likely
		}
		if likely := o.Planned.Add(margin); likely.Compare(o.High) < 0 {
			o.LikelyHigh = likely
		}
	}
	if o.Low.Sign() < 0 {
		o.FreeAlkaliWorst = worst.freeAlkali(dry)
	}
	return o, true
}

// complete reports whether every oil has a range.
func (p *prospect) complete() bool {
	for i := range p.oils {
		oil := &p.oils[i]
		if (oil.pot.Sign() > 0 || len(oil.jugs) > 0) && !oil.oil.HasRange() {
			return false
		}
	}
	return true
}

// uncertainty gives the standard uncertainty of the superfat to first order
// about the plan, 1 − G/E with G the alkali and E the demand, both as KOH.
// Every range is a rectangular distribution, so a half-width h counts h²/3;
// a weighing is two of half a division, d²/6. The products stand in explicit
// conversions so that no platform fuses them.
func (p *prospect) uncertainty() float64 {
	share := p.share.Float()
	var alkali, demand float64
	for _, a := range p.alkalis {
		alkali += float64(share * a.Mass.Grams() * a.Purity.Typical.Float() * a.toKOH())
	}
	for i := range p.oils {
		oil := &p.oils[i]
		demand += float64(oil.grams(share) * oil.oil.Saponification().Typical.Float())
	}
	perDemand := alkali / (demand * demand) // −d superfat / d demand, reversed in sign
	perAlkali := share / demand

	scale, small := p.scale.Grams(), p.small.Grams()
	var variance float64
	add := func(sensitivity, halfWidth float64) {
		variance += float64(sensitivity * sensitivity * halfWidth * halfWidth / 3)
	}
	weigh := func(sensitivity, division float64) {
		add(sensitivity, division/2)
		add(sensitivity, division/2)
	}
	for i := range p.oils {
		oil := &p.oils[i]
		value := oil.oil.Saponification()
		add(perDemand*oil.grams(share), halfWidth(value))
		if oil.pot.Sign() > 0 {
			weigh(perDemand*share*value.Typical.Float(), scale)
		}
		for range oil.jugs {
			weigh(perDemand*value.Typical.Float(), small)
		}
	}
	for _, a := range p.alkalis {
		add(perAlkali*a.Mass.Grams()*a.toKOH(), halfWidth(a.Purity))
		weigh(perAlkali*a.Purity.Typical.Float()*a.toKOH(), small)
	}
	return math.Sqrt(variance)
}

// grams gives the mass of the oil in the part.
func (d *drawn) grams(share float64) float64 {
	grams := share * d.pot.Grams()
	for _, jug := range d.jugs {
		grams += jug.Grams()
	}
	return grams
}

// toKOH gives the mass of KOH that does the work of a gram of the hydroxide.
func (a AlkaliWeighing) toKOH() float64 {
	return float64(otherMolar(a.Alkali)) / molar.NaOH
}

func halfWidth(r units.Range) float64 { return (r.High.Float() - r.Low.Float()) / 2 }
