package soap_test

import (
	"fmt"
	"math/big"
	"slices"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
)

// benched is a formula as [maker.formula] makes it, with what stands on a bench
// beside it: acids, liquids other than water, stock lyes.
func (m *maker) benched() soap.Formula {
	f := m.formula()
	size := about(f)
	acids := lye.Acids()
	m.Shuffle(len(acids), func(i, j int) { acids[i], acids[j] = acids[j], acids[i] })
	for i := range m.IntN(3) {
		a := soap.AcidLine{Acid: acids[i], Compensate: soap.Compensated}
		switch m.IntN(3) {
		case 0:
			a.Load.OfOils = basis(m.between(10, 100))
		case 1:
			a.Load.OfBatter = basis(m.between(5, 80))
		default:
			a.Load.Mass = size.Times(basis(m.between(10, 100)), units.Nearest)
		}
		if m.IntN(2) == 0 {
			a.Strength = basis(m.between(7000, 9500))
		}
		if m.IntN(2) == 0 {
			a.Compensate = soap.Uncompensated
		}
		f.Acids = append(f.Acids, a)
	}
	for i := range m.IntN(3) {
		solids := m.between(500, 4000)
		l := soap.LiquidLine{Name: fmt.Sprintf("hall milk %d", i+1), Water: basis(10000 - solids)}
		if m.IntN(2) == 0 {
			l.Share = basis(m.between(300, 2000))
		} else {
			l.Mass = size.Times(basis(m.between(100, 400)), units.Nearest)
		}
		if m.IntN(3) > 0 {
			l.Fat, l.Saponification = basis(m.between(50, solids/2)), span(218, 226, 235)
			if m.IntN(3) == 0 {
				l.Saponification = units.Exactly(units.MilligramsPerGram(225))
			}
		}
		if m.IntN(2) == 0 {
			l.Sugar = basis(m.between(10, solids/4))
		}
		if m.IntN(2) == 0 {
			l.Alcohol = basis(m.between(10, solids/4))
		}
		f.Water.Liquids = append(f.Water.Liquids, l)
	}
	if m.IntN(3) == 0 {
		for i := range f.Alkalis {
			f.Alkalis[i].Purity = units.Range{}
			f.Alkalis[i].Stock = units.Exactly(basis(m.between(4900, 5150)))
			if m.IntN(2) == 0 {
				f.Alkalis[i].Stock = units.Range{Low: units.Percent(48), High: units.Percent(50)}
			}
		}
	}
	return f
}

// about is how much a formula makes, more or less.
func about(f soap.Formula) units.Mass {
	size := f.Size.Oils.Add(f.Size.Batter)
	for _, line := range f.Oils {
		size = size.Add(line.Mass)
	}
	return size
}

// stages in the order of the work.
var stages = []soap.Stage{soap.AtLye, soap.AtPot, soap.AtParts, soap.AtMoulds}

// slip gives a mass as it was really weighed: some percent off.
func (m *maker) slip(mass units.Mass, percent int) units.Mass {
	return mass.Times(basis(m.between(10000-100*percent, 10000+100*percent)), units.Nearest)
}

// weigh makes up the real weighings of a batch, each line up to some percent off;
// not every line was written down.
func (m *maker) weigh(b soap.Batch, stage soap.Stage, percent int) soap.Weighed {
	w := soap.Weighed{Stage: stage}
	for _, o := range b.Oils {
		if m.IntN(3) > 0 {
			w.Oils = append(w.Oils, soap.WeighedOil{Oil: o.Oil.ID(), Mass: m.slip(o.Mass, percent)})
		}
	}
	for _, a := range b.Alkalis {
		if weighing, _ := a.ToWeigh(); m.IntN(3) > 0 {
			w.Alkalis = append(w.Alkalis, soap.WeighedAlkali{Alkali: a.Alkali, Mass: m.slip(weighing.Mass, percent)})
		}
	}
	if m.IntN(2) == 0 {
		w.Water = soap.Read(m.slip(b.Water.Mass, percent))
	}
	for _, p := range b.Parts {
		part := soap.WeighedPart{Part: p.Name}
		if m.IntN(2) == 0 {
			part.Batter = soap.Read(m.slip(p.Batter, percent))
		}
		for name, mass := range carriersOf(p) {
			if m.IntN(2) == 0 {
				part.Carriers = append(part.Carriers, soap.WeighedCarrier{Liquid: name, Mass: m.slip(mass, percent)})
			}
		}
		slices.SortFunc(part.Carriers, func(a, b soap.WeighedCarrier) int { return len(a.Liquid) - len(b.Liquid) })
		if part.Batter.Read || len(part.Carriers) > 0 {
			w.Parts = append(w.Parts, part)
		}
	}
	return w
}

// carriersOf adds up a part's carriers, liquid by liquid.
func carriersOf(p soap.PartBatch) map[string]units.Mass {
	all := map[string]units.Mass{}
	for _, a := range p.Additions {
		if a.Carrier != nil {
			all[a.Carrier.Name] = all[a.Carrier.Name].Add(a.Carrier.Mass)
		}
	}
	return all
}

// account is what a superfat is worked out from, in grams of KOH, and where it
// stands when it is weighed: nothing here but masses, values and fractions.
type account struct {
	demand, alkali *big.Rat
	pot            *big.Rat // grams in the pot
}

func (a account) superfat() *big.Rat { return minus(whole(1), over(a.alkali, a.demand)) }

// after is the superfat once so many grams of an oil are added.
func (a account) after(grams, value *big.Rat) *big.Rat {
	return minus(whole(1), over(a.alkali, plus(a.demand, times(grams, value))))
}

// neutralised is the KOH that a gram of an acid as bought takes up: its protons
// times 56.105 over its molar mass.
func neutralised(a soap.AcidLine) *big.Rat {
	strength := whole(1)
	if a.Strength.Given() {
		strength = ratioFrac(a.Strength)
	}
	return times(strength, over(times(whole(int64(a.Acid.Protons)), frac("56.105")), ratioFrac(a.Acid.Molar)))
}

// reckon draws up the account of a part, or of the batch (−1), from a batch's
// planned masses and, where they are given, what was weighed in their place.
func reckon(f soap.Formula, b soap.Batch, w soap.Weighed, part int) account {
	oils, fat, alkali, pot := new(big.Rat), new(big.Rat), new(big.Rat), new(big.Rat)
	typical := func(o soap.Oil) *big.Rat { return ratioFrac(o.Saponification().Typical) }
	for i, o := range b.Oils {
		mass := o.Mass
		for _, read := range w.Oils {
			if read.Oil == o.Oil.ID() {
				mass = read.Mass
			}
		}
		oils = plus(oils, times(massFrac(mass), typical(f.Oils[i].Oil)))
		pot = plus(pot, massFrac(mass))
	}
	water := b.Water.Mass
	if w.Water.Read {
		water = w.Water.Mass
	}
	pot = plus(pot, massFrac(water))
	for _, a := range b.Alkalis {
		weighing, content := a.ToWeigh()
		mass := weighing.Mass
		for _, read := range w.Alkalis {
			if read.Alkali == a.Alkali {
				mass = read.Mass
			}
		}
		koh := times(massFrac(mass), ratioFrac(content.Typical))
		if a.Alkali == soap.SodiumHydroxide {
			koh = times(koh, frac("56105/39997"))
		}
		alkali, pot = plus(alkali, koh), plus(pot, massFrac(mass))
	}
	for i, a := range b.Acids {
		alkali, pot = minus(alkali, times(massFrac(a.Mass), neutralised(f.Acids[i]))), plus(pot, massFrac(a.Mass))
	}
	for i, l := range b.Liquids {
		line := f.Water.Liquids[i]
		pot = plus(pot, massFrac(l.Mass))
		if line.Fat.Given() {
			fat = plus(fat, times(times(massFrac(l.Mass), ratioFrac(line.Fat)), ratioFrac(line.Saponification.Plan())))
		}
	}
	// own is the demand of a part's jugs: all of them, or those held back alone.
	own := func(i int, heldAlone bool) *big.Rat {
		sum := new(big.Rat)
		planned := carriersOf(b.Parts[i])
		for j, a := range b.Parts[i].Additions {
			if a.Carrier == nil || a.Carrier.In != soap.InOil || heldAlone && !held(asked(f, i)[j].Carrier) {
				continue
			}
			mass := massFrac(a.Carrier.Mass)
			for _, p := range w.Parts {
				for _, read := range p.Carriers {
					if p.Part == b.Parts[i].Name && read.Liquid == a.Carrier.Name {
						// jugs of one liquid share what was weighed as they share the plan
						mass = over(times(mass, massFrac(read.Mass)), massFrac(planned[read.Liquid]))
					}
				}
			}
			sum = plus(sum, times(mass, typical(a.Carrier.Oil)))
		}
		return sum
	}
	if part < 0 {
		for i := range b.Parts {
			oils = plus(oils, own(i, true))
		}
		return account{plus(oils, fat), alkali, pot}
	}
	share := ratioFrac(b.Parts[part].Share)
	for _, p := range w.Parts {
		if p.Part == b.Parts[part].Name && p.Batter.Read {
			share = over(massFrac(p.Batter.Mass), pot)
		}
	}
	return account{plus(times(share, plus(oils, fat)), own(part, false)), times(share, alkali), pot}
}

// percentOf gives a mass as a share of another.
func percentOf(t *testing.T, m, of units.Mass) units.Ratio {
	t.Helper()
	r, ok := m.Per(of)
	if !ok {
		t.Fatalf("a share of %s", of)
	}
	return r
}
