package soap

import (
	"math"

	"example.com/lyewright/internal/molar"

	"example.com/lyewright/units"
)

// line is a mass on a scale, and how far off it may be: a line that is planned by
// two halves of a division, one for rounding to the scale and one for what its
// display hides; one that was weighed by the second alone.
type line struct {
	mass     units.Mass
	division units.Mass
	halves   int
	shown    units.Mass // of a planned line: what its scale is asked to show
}

func plannedLine(mass, division units.Mass) line {
	return line{mass: mass, division: division, halves: 2, shown: mass.Round(division, units.Nearest)}
}

func readLine(mass, division units.Mass) line { return line{mass: mass, division: division, halves: 1} }

// off is how far off the line may be.
func (l line) off() units.Mass {
	switch l.halves {
	case 0:
		return units.Mass{}
	case 1:
		return product(l.division, units.Percent(50), units.Nearest)
	default:
		return l.division
	}
}

// drawn is one oil as it goes into a part: its mass in the whole pot, and the
// part's own jugs of it. However it gets there it has one saponification value.
type drawn struct {
	oil  Oil
	pot  line
	jugs []line
}

// drawnAlkali is an alkali as it is weighed, dry or as stock.
type drawnAlkali struct {
	alkali  Alkali
	line    line
	content units.Range // of hydroxide
}

// drawnLiquid is a liquid with fat, drawnAcid an acid: both go into the pot.
type (
	drawnLiquid struct {
		line   line
		demand units.Range // KOH per gram of the liquid
	}
	drawnAcid struct {
		line  line
		takes units.Range // KOH per gram of the acid as bought
	}
)

// prospect is what a superfat is judged from: what is in the pot, of which the
// part takes a share, and the part's own oils.
type prospect struct {
	share   units.Ratio
	oils    []drawn
	alkalis []drawnAlkali
	liquids []drawnLiquid
	acids   []drawnAcid
	// ranged is false where a liquid's fat has no range.
	ranged bool
}

// ofBatch gives the prospect of the batch: every oil of the formula is one
// weighing, however many jugs it fills.
func (s *solved) ofBatch() prospect {
	p := s.prospect(units.Whole(1), len(s.oils))
	for i := range s.oils {
		p.oils = append(p.oils, drawn{oil: s.f.Oils[i].Oil, pot: s.oilLine(i, s.oils[i])})
	}
	return p
}

// oilLine is the weighing of an oil into the pot.
func (s *solved) oilLine(i int, mass units.Mass) line {
	if s.read != nil && s.read.oils[i] {
		return readLine(mass, s.scale)
	}
	return plannedLine(mass, s.scale)
}

// ofPart gives the prospect of a part.
func (s *solved) ofPart(part int) prospect {
	p := s.inParts()
	s.takeInto(&p, part)
	return p
}

// inParts gives what the prospects of all parts have in common: what is in the pot. It has room
// for the oils that one part brings.
func (s *solved) inParts() prospect {
	most := 0
	for i := range s.loads {
		most = max(most, len(s.loads[i]))
	}
	p := s.prospect(units.Ratio{}, len(s.oils)+most)
	for i := range s.oils {
		p.oils = append(p.oils, drawn{oil: s.f.Oils[i].Oil, pot: s.oilLine(i, s.inPot(i))})
	}
	return p
}

// takeInto makes a prospect of the pot that of a part, with its share and its own oils.
func (s *solved) takeInto(p *prospect, part int) {
	p.share = s.parts[part].Share
	for i := range s.loads[part] {
		l := &s.loads[part][i]
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
		jug := plannedLine(l.carrier, l.grain(s.small))
		jug.shown = l.shown(s.small)
		if l.read {
			jug = readLine(l.carrier, s.small)
		}
		p.oils[at].jugs = append(p.oils[at].jugs, jug)
	}
}

func (s *solved) prospect(share units.Ratio, oils int) prospect {
	p := prospect{share: share, oils: make([]drawn, 0, oils), alkalis: make([]drawnAlkali, len(s.alkalis)), ranged: true}
	for i := range s.alkalis {
		weighing, content := s.alkalis[i].ToWeigh()
		p.alkalis[i] = drawnAlkali{alkali: s.alkalis[i].Alkali, line: plannedLine(weighing.Mass, s.small), content: content}
		p.alkalis[i].line.shown = weighing.Mass.Round(s.small, units.Down)
		if s.read != nil && s.read.alkalis[i] {
			p.alkalis[i].line.halves = 1
		}
	}
	for i := range s.liquids {
		if l := &s.liquids[i]; l.line.fatty() {
			demand := l.line.fatDemand()
			p.liquids = append(p.liquids, drawnLiquid{s.smallLine(l.mass, s.read != nil && s.read.liquids[i]), demand})
			p.ranged = p.ranged && !demand.Single()
		}
	}
	for i := range s.acids {
		p.acids = append(p.acids, drawnAcid{
			s.smallLine(s.acids[i].mass, s.read != nil && s.read.acids[i]),
			s.acids[i].line.takesUp(),
		})
	}
	return p
}

// smallLine is a weighing on the small scale.
func (s *solved) smallLine(mass units.Mass, read bool) line {
	if read {
		return readLine(mass, s.small)
	}
	return plannedLine(mass, s.small)
}

// end is a way of looking at every input: its value to plan at, or the end of
// its range that makes the superfat low or high.
type end int

const (
	lowest  end = -1
	planned end = 0
	highest end = 1
	printed end = 2 // values to plan at, and masses as the scales are asked to show them
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

// shift takes a weighing off as far as it may be. It is cut at 0 g.
func (e end) shift(l line) units.Mass {
	mass := l.mass
	switch e {
	case lowest:
		mass = mass.Sub(l.off())
	case highest:
		mass = mass.Add(l.off())
	case printed, -printed:
		return l.shown
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
		if oil.pot.mass.Sign() > 0 {
			pot = pot.Plus(e.shift(oil.pot), value)
		}
		for _, jug := range oil.jugs {
			own = own.Plus(e.shift(jug), value)
		}
	}
	for _, l := range p.liquids {
		pot = pot.Plus(e.shift(l.line), e.pick(l.demand))
	}
	for _, a := range p.alkalis {
		hydroxide := units.Sum{}.Plus((-e).shift(a.line), (-e).pick(a.content))
		alkali = alkali.Add(hydroxide.TimesWhole(otherMolar(a.alkali)))
	}
	for _, a := range p.acids { // an acid takes its alkali before any oil does
		alkali = alkali.Sub(units.Sum{}.Plus(e.shift(a.line), e.pick(a.takes)).TimesWhole(molar.NaOH))
	}
	if alkali.Sign() < 0 {
		alkali = units.Sum{} // it takes all there is
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

// evidence is all that a superfat is judged from: the ledger at both ends and at
// the plan, and the spread.
type evidence struct {
	low, planned, high ledger
	spread             spread
	complete           bool
}

func (p *prospect) evidence() evidence {
	return evidence{
		low: p.at(lowest), planned: p.at(planned), high: p.at(highest), spread: p.spread(),
		complete: p.complete(),
	}
}

// outlook judges the superfat: see [evidence.outlook].
func (p *prospect) outlook(asked units.Ratio, dry units.Mass) (o Outlook, ok bool) {
	e := p.evidence()
	return e.outlook(asked, dry)
}

// outlook judges the superfat. The planned figure may be given (the batch's,
// as asked); otherwise it is worked out from the masses. dry is the mass that
// alkali left over is a share of. ok is false where there may be no demand.
func (e *evidence) outlook(asked units.Ratio, dry units.Mass) (o Outlook, ok bool) {
	if o.Low, ok = e.low.superfat(); !ok {
		return Outlook{}, false
	}
	o.Planned = asked
	if !asked.Given() {
		o.Planned, _ = e.planned.superfat()
	}
	o.High, _ = e.high.superfat()
	o.Complete = e.complete
	o.LikelyLow, o.LikelyHigh = o.Low, o.High
	if margin, ok := units.RatioOfFloat(2 * e.spread.uncertainty()); ok {
		if likely := o.Planned.Sub(margin); likely.Compare(o.Low) > 0 {
			o.LikelyLow = likely
		}
		if likely := o.Planned.Add(margin); likely.Compare(o.High) < 0 {
			o.LikelyHigh = likely
		}
	}
	if o.Low.Sign() < 0 {
		o.FreeAlkaliWorst = e.low.freeAlkali(dry)
	}
	return o, true
}

// complete reports whether every oil has a range.
func (p *prospect) complete() bool {
	for i := range p.oils {
		oil := &p.oils[i]
		if (oil.pot.mass.Sign() > 0 || len(oil.jugs) > 0) && !oil.oil.HasRange() {
			return false
		}
	}
	return p.ranged
}

// spread holds what the superfat's uncertainty is made of: alkali and demand in
// grams of KOH, and the sums of the squares of what each may be off by, cause by cause.
type spread struct {
	share, alkali, demand float64
	// grams² of KOH, those of the alkali without the share
	demandRanges, demandScale float64
	alkaliPurity, alkaliScale float64
}

// uncertainty gives the standard uncertainty of the superfat to first order
// about the plan, 1 − G/E with G the alkali that acids leave and E the demand.
func (s *spread) uncertainty() float64 {
	perDemand, perAlkali := s.slopes()
	return math.Sqrt(float64(perDemand*(s.demandRanges+s.demandScale)) + float64(perAlkali*(s.alkaliPurity+s.alkaliScale)))
}

// slopes give the squares of d superfat / d demand and d superfat / d alkali.
func (s *spread) slopes() (perDemand, perAlkali float64) {
	perDemand = s.alkali / (s.demand * s.demand)
	perAlkali = s.share / s.demand
	return float64(perDemand * perDemand), float64(perAlkali * perAlkali)
}

// causes gives the variance of the superfat that each cause makes.
func (s *spread) causes() (scale, ranges, purity float64) {
	perDemand, perAlkali := s.slopes()
	scale = float64(perDemand*s.demandScale) + float64(perAlkali*s.alkaliScale)
	return scale, perDemand * s.demandRanges, perAlkali * s.alkaliPurity
}

// square gives what a half-width adds to a sum of squares: every range is a
// rectangular distribution, whose variance is a third of the half-width's square.
// The products stand in explicit conversions so that no platform fuses them.
func square(halfWidth float64) float64 { return float64(halfWidth * halfWidth / 3) }

// squares gives what a weighing adds, one or two of half a division, each worth so
// much.
func (l line) squares(worth float64) float64 {
	return float64(l.halves) * square(worth*l.division.Grams()/2)
}

// spread adds up what every input may be off by.
func (p *prospect) spread() spread {
	s := spread{share: p.share.Float()}
	for i := range p.alkalis {
		a := &p.alkalis[i]
		grams, content, koh := a.line.mass.Grams(), a.content.Typical.Float(), toKOH(a.alkali)
		s.alkali += float64(s.share * grams * content * koh)
		s.alkaliPurity += square(grams * koh * halfWidth(a.content))
		s.alkaliScale += a.line.squares(content * koh)
	}
	for i := range p.acids {
		a := &p.acids[i]
		grams, takes := a.line.mass.Grams(), a.takes.Typical.Float()
		s.alkali -= float64(s.share * grams * takes)
		s.alkaliPurity += square(grams * halfWidth(a.takes))
		s.alkaliScale += a.line.squares(takes)
	}
	s.alkali = max(0, s.alkali)
	for i := range p.oils {
		oil := &p.oils[i]
		value := oil.oil.Saponification()
		grams, typical := oil.grams(s.share), value.Typical.Float()
		s.demand += float64(grams * typical)
		s.demandRanges += square(grams * halfWidth(value))
		if oil.pot.mass.Sign() > 0 {
			s.demandScale += oil.pot.squares(s.share * typical)
		}
		for _, jug := range oil.jugs {
			s.demandScale += jug.squares(typical)
		}
	}
	for i := range p.liquids {
		l := &p.liquids[i]
		grams, typical := s.share*l.line.mass.Grams(), l.demand.Typical.Float()
		s.demand += float64(grams * typical)
		s.demandRanges += square(grams * halfWidth(l.demand))
		s.demandScale += l.line.squares(s.share * typical)
	}
	return s
}

// grams gives the mass of the oil in the part.
func (d *drawn) grams(share float64) float64 {
	grams := share * d.pot.mass.Grams()
	for _, jug := range d.jugs {
		grams += jug.mass.Grams()
	}
	return grams
}

// toKOH gives the mass of KOH that does the work of a gram of a hydroxide.
func toKOH(a Alkali) float64 { return float64(otherMolar(a)) / molar.NaOH }

func halfWidth(r units.Range) float64 { return (r.High.Float() - r.Low.Float()) / 2 }
