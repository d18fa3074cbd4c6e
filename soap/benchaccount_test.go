package soap_test

import (
	"math/big"
	"testing"

	"example.com/lyewright/internal/madeup"
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

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
func neutralised(a soap.AcidLine) *big.Rat { return neutralisedAt(a, a.Strength.Plan()) }

// neutralisedAt is the same at a strength, 100 % where none is given.
func neutralisedAt(a soap.AcidLine, given units.Ratio) *big.Rat {
	strength := whole(1)
	if given.Given() {
		strength = ratioFrac(given)
	}
	return times(strength, over(times(whole(int64(a.Acid.Protons)), frac("56.105")), ratioFrac(a.Acid.Molar)))
}

// acidOf is what of an acid is in the pot, and whether it was weighed.
func acidOf(w soap.Weighed, a soap.AcidWeighing) (units.Mass, bool) {
	for _, read := range w.Acids {
		if read.Acid == a.Acid.ID {
			return read.Mass, true
		}
	}
	return a.Mass, false
}

// liquidOf is what of a liquid is in the pot, and whether it was weighed.
func liquidOf(w soap.Weighed, l soap.LiquidWeighing) (units.Mass, bool) {
	for _, read := range w.Liquids {
		if read.Liquid == l.Name {
			return read.Mass, true
		}
	}
	return l.Mass, false
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
		mass, _ := acidOf(w, a)
		alkali, pot = minus(alkali, times(massFrac(mass), neutralised(f.Acids[i]))), plus(pot, massFrac(mass))
	}
	for i, l := range b.Liquids {
		line := f.Water.Liquids[i]
		mass, _ := liquidOf(w, l)
		pot = plus(pot, massFrac(mass))
		if line.Fat.Given() {
			fat = plus(fat, times(times(massFrac(mass), ratioFrac(line.Fat)), ratioFrac(line.Saponification.Plan())))
		}
	}
	// own is the demand of a part's jugs: all of them, or those held back alone.
	own := func(i int, heldAlone bool) *big.Rat {
		sum := new(big.Rat)
		planned := madeup.Carriers(b.Parts[i])
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
