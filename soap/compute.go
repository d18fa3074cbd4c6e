package soap

import (
	"strconv"

	"example.com/lyewright/units"
)

// Batch works the formula out. It is a pure function: the same formula always
// gives the same batch. The error is [Faults]: those of [Formula.Check], or,
// where there are none, what only the working shows (carriers that take more
// than there is, a lye too strong to dissolve, a scale too coarse). A formula
// that is in order but unsafe or unwise gives a batch with findings.
func (f Formula) Batch() (Batch, error) {
	if err := f.Check(); err != nil {
		return Batch{}, err
	}
	s := f.layout()
	superfat := f.Superfat.Planned
	if f.Superfat.AtLeast.Given() {
		least, ok := s.leastSuperfat(f.Superfat.AtLeast)
		if !ok {
			return Batch{}, Faults{{
				Path: "superfat.at_least", Text: f.Superfat.AtLeast.PercentText(12) + " %", Kind: ErrImpossible,
				Reason: "is more than any planned superfat below 100 % can promise",
				Remedy: "use a finer scale, oils with narrower ranges, or less",
			}}
		}
		superfat = least
	}
	s.solve(superfat)
	if faults := s.impossible(); len(faults) > 0 {
		return Batch{}, faults
	}
	b := s.batch()
	if faults := s.judge(&b); len(faults) > 0 {
		return Batch{}, faults
	}
	b.Findings = findings(s, &b)
	return b, nil
}

// batch writes the masses down.
func (s *solved) batch() Batch {
	scale, small := s.f.Scales()
	b := Batch{
		Formula: s.f.clone(),
		Oils:    make([]OilWeighing, len(s.oils)),
		Alkalis: s.alkalis,
		Water: WaterWeighing{
			Asked:    s.waterAsked,
			Weighing: weighed(s.lyeWater, small, units.Nearest),
			Withheld: s.waterHeld,
		},
		Lye:       Lye{Mass: s.alkali.Add(s.lyeWater)},
		OilsTotal: s.oilTotal,
		Batter:    s.pot,
		Parts:     make([]PartBatch, len(s.parts)),
	}
	for i := range s.oils {
		b.Oils[i] = OilWeighing{
			Oil:      s.f.Oils[i].Oil,
			Weighing: weighed(s.inPot(i), scale, units.Nearest),
			Withheld: s.oilHeld[i],
		}
	}
	for i := range b.Alkalis {
		b.Alkalis[i].Weighing = weighed(b.Alkalis[i].Mass, small, units.Down)
	}
	b.Lye.Concentration, _ = s.alkali.Per(b.Lye.Mass)
	b.Lye.WaterPerAlkali, _ = s.lyeWater.Per(s.alkali)
	dry := units.Apportion(s.dryPot(), s.shares)
	for i := range s.parts {
		b.Parts[i] = s.part(i, small, dry[i])
		b.Poured = b.Poured.Add(b.Parts[i].Poured)
		b.Dry = b.Dry.Add(b.Parts[i].Dry)
	}
	return b
}

func weighed(mass, division units.Mass, how units.Rounding) Weighing {
	return Weighing{Mass: mass, Weigh: mass.Round(division, how)}
}

// part writes the masses of a part down; dry is its share of the dry pot.
func (s *solved) part(i int, small, dry units.Mass) PartBatch {
	p := PartBatch{
		Name: s.parts[i].Name, Share: s.parts[i].Share,
		Batter: s.partPot[i], Oils: s.partOils[i], Water: s.partWater[i], Poured: s.partPot[i],
		Dry:       dry.Add(s.dryOwn(i)),
		Additions: make([]AdditionWeighing, 0, len(s.loads[i])),
	}
	for _, l := range s.loads[i] {
		how := units.Nearest
		if l.kind == Fragrance {
			how = units.Down
		}
		a := AdditionWeighing{Name: l.addition.Name, Kind: l.kind, Weighing: weighed(l.mass, small, how)}
		p.Poured = p.Poured.Add(l.mass)
		if carrier := l.addition.Carrier; carrier.In != NoLiquid {
			p.Poured = p.Poured.Add(l.carrier)
			if carrier.In == InWater {
				p.Water = p.Water.Add(l.carrier)
			}
			from := Extra
			if carrier.fromFormula() {
				from = FromFormula
			}
			a.Carrier = &CarrierWeighing{
				In: carrier.In, Oil: l.oil, Name: carrier.liquid(),
				Weighing: weighed(l.carrier, small, units.Nearest), From: from,
			}
		}
		p.Additions = append(p.Additions, a)
	}
	return p
}

// judge works out the superfat of the batch and of every part.
func (s *solved) judge(b *Batch) Faults {
	var faults Faults
	all := s.ofBatch()
	var ok bool
	if b.Superfat, ok = all.outlook(s.superfat, b.Dry); !ok {
		return Faults{s.noDemand(&all, "the batch")}
	}
	for i := range s.parts {
		p := s.ofPart(i)
		if b.Parts[i].Superfat, ok = p.outlook(units.Ratio{}, b.Parts[i].Dry); !ok {
			faults = append(faults, s.noDemand(&p, "part "+strconv.Quote(s.parts[i].Name)))
		}
	}
	return faults
}
