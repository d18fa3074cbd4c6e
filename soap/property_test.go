package soap_test

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"math/big"
	"reflect"
	"slices"
	"testing"

	"example.com/lyewright/internal/madeup"
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// asked lists what is added to part i.
func asked(f soap.Formula, i int) []soap.Addition {
	if len(f.Parts) == 0 {
		return nil
	}
	p := f.Parts[i]
	return slices.Concat(p.Colourants, p.Fragrances, p.Additives)
}

// held reports whether a carrier comes out of the formula.
func held(c soap.Carrier) bool {
	return c.From == soap.FromFormula || c.From == soap.Usual && c.In == soap.InWater
}

// lineOf finds the line of an oil, or -1.
func lineOf(f soap.Formula, id string) int {
	return slices.IndexFunc(f.Oils, func(l soap.OilLine) bool { return l.Oil.ID() == id })
}

func sum(masses ...units.Mass) (total units.Mass) {
	for _, m := range masses {
		total = total.Add(m)
	}
	return total
}

func TestWhatIsAskedForIsTheSumOfItsLines(t *testing.T) {
	madeup.Each(t, madeup.New(1).Formula, 600, func(t *testing.T, f soap.Formula, b soap.Batch) {
		equal := func(what string, got, want units.Mass) {
			if got != want {
				t.Errorf("%s: %s, want %s", what, got, want)
			}
		}
		var oils, pot, alkali, heldOil units.Mass
		for i, o := range b.Oils {
			oils, pot, heldOil = oils.Add(o.Total()), pot.Add(o.Mass), heldOil.Add(o.Withheld)
			if f.Oils[i].Mass != (units.Mass{}) {
				equal("oil line", o.Total(), f.Oils[i].Mass)
			}
		}
		for _, a := range b.Alkalis {
			alkali = alkali.Add(a.Dry.Mass)
		}
		equal("total of the oils", b.OilsTotal, oils)
		if f.Size.Oils != (units.Mass{}) {
			equal("oils asked for", oils, f.Size.Oils)
		}
		equal("batter", b.Batter, sum(pot, alkali, b.Water.Mass))
		if f.Size.Batter != (units.Mass{}) {
			equal("batter asked for", b.Batter, f.Size.Batter)
		}
		equal("lye", b.Lye.Mass, sum(alkali, b.Water.Mass))
		equal("water asked for", b.Water.Asked, sum(b.Water.Mass, b.Water.Withheld))

		var batters, partOils, waters, poured, dry, added, waterCarriers, heldWater, oilJugs units.Mass
		for i, p := range b.Parts {
			batters, partOils, waters = batters.Add(p.Batter), partOils.Add(p.Oils), waters.Add(p.Water)
			poured, dry = poured.Add(p.Poured), dry.Add(p.Dry)
			own := units.Mass{}
			for j, a := range p.Additions {
				own = own.Add(a.Mass)
				if a.Carrier == nil {
					continue
				}
				own = own.Add(a.Carrier.Mass)
				formula := held(asked(f, i)[j].Carrier)
				if formula != (a.Carrier.From == soap.FromFormula) {
					t.Errorf("carrier %q is taken %s, want from the formula: %v", a.Carrier.Name, a.Carrier.From, formula)
				}
				switch {
				case a.Carrier.In == soap.InWater:
					waterCarriers = waterCarriers.Add(a.Carrier.Mass)
					if formula {
						heldWater = heldWater.Add(a.Carrier.Mass)
					}
				case formula:
					oilJugs = oilJugs.Add(a.Carrier.Mass)
				}
			}
			equal("poured part", p.Poured, sum(p.Batter, own))
			added = added.Add(own)
		}
		equal("batter of the parts", batters, b.Batter)
		equal("oils of the parts", partOils, b.OilsTotal)
		equal("poured parts", poured, b.Poured)
		equal("poured", b.Poured, sum(b.Batter, added))
		equal("dry parts", dry, b.Dry)
		equal("water of the parts", waters, sum(b.Water.Mass, waterCarriers))
		equal("water held back", b.Water.Withheld, heldWater)
		equal("oil held back", heldOil, oilJugs)
	})
}

func TestEveryLineIsWhatTheFormulaAsksFor(t *testing.T) {
	nanogram := frac("0.000000001")
	madeup.Each(t, madeup.New(3).Formula, 400, func(t *testing.T, f soap.Formula, b soap.Batch) {
		near := func(what string, got units.Mass, want *big.Rat, nanograms int64, why string) {
			if !within(massFrac(got), want, times(whole(nanograms), nanogram)) {
				t.Errorf("%s: %s, want %s to %d ng (%s)", what, got, want.FloatString(10), nanograms, why)
			}
		}
		// shares of the oils, the rest worked out
		total, left, pure, alkali := massFrac(b.OilsTotal), whole(1), new(big.Rat), new(big.Rat)
		for _, l := range f.Oils {
			left = minus(left, ratioFrac(l.Share))
		}
		shares := make([]*big.Rat, len(f.Oils))
		largest := 0
		for i, l := range f.Oils {
			shares[i] = ratioFrac(l.Share)
			if l.Rest {
				shares[i] = left
			}
			if shares[i].Cmp(shares[largest]) > 0 {
				largest = i
			}
		}
		for i, l := range f.Oils {
			if l.Mass.Sign() > 0 {
				continue
			}
			off := minus(massFrac(b.Oils[i].Total()), times(shares[i], total))
			most := over(nanogram, whole(2)) // the largest alone takes what rounding leaves
			if i == largest {
				most = times(whole(2), nanogram) // of at most four others
			}
			if off.Abs(off).Cmp(most) > 0 {
				t.Errorf("%s: %s, off by %s", l.Oil.ID(), b.Oils[i].Total(), off.FloatString(12))
			}
		}
		// alkali: demand × (1 − superfat) × saponifies × M/(56.105 × purity)
		demand := new(big.Rat)
		for i, o := range b.Oils {
			demand = plus(demand, times(massFrac(o.Total()), ratioFrac(f.Oils[i].Oil.Saponification().Typical)))
		}
		_, lines := tableau(f, b, -1)
		for i, a := range b.Alkalis {
			w := lines[len(lines)-len(b.Alkalis)+i]
			does := whole(1)
			if f.Alkalis[i].Saponifies.Given() {
				does = ratioFrac(f.Alkalis[i].Saponifies)
			}
			want := over(times(times(demand, minus(whole(1), ratioFrac(f.Superfat.Planned))), does), w.typical)
			short := minus(want, massFrac(a.Dry.Mass))
			if short.Sign() < 0 || short.Cmp(nanogram) >= 0 {
				t.Errorf("%s: %s, want %s rounded down to a nanogram", a.Alkali, a.Dry.Mass, want.FloatString(12))
			}
			alkali = plus(alkali, massFrac(a.Dry.Mass))
			// w.typical is KOH per gram; the hydroxide itself is the purity
			purity := w.typical
			if a.Alkali == soap.SodiumHydroxide {
				purity = times(w.typical, over(frac("39.997"), frac("56.105")))
			}
			pure = plus(pure, times(massFrac(a.Dry.Mass), purity))
		}
		// water
		var water *big.Rat
		switch {
		case f.Water.LyeConcentration.Given():
			c := ratioFrac(f.Water.LyeConcentration)
			water = over(times(alkali, minus(whole(1), c)), c)
		case f.Water.PerAlkali.Given():
			water = times(alkali, ratioFrac(f.Water.PerAlkali))
		default:
			water = times(total, ratioFrac(f.Water.PerOils))
		}
		if f.Size.Batter.Sign() > 0 {
			near("water asked for", b.Water.Asked, water, 40, "of a batter asked for it takes what oils, alkali (times 3.2) and up to 12 carriers were rounded by")
		} else {
			near("water asked for", b.Water.Asked, water, 1, "rounded once")
		}
		if !within(ratioFrac(b.Lye.Concentration), over(alkali, massFrac(b.Lye.Mass)), frac(quotientTolerance)) {
			t.Errorf("lye of %s %%", b.Lye.Concentration.PercentText(6))
		}
		// parts
		pot, acid := pure, new(big.Rat)
		freeAcid := func(o soap.Oil, mass *big.Rat) *big.Rat { // as KOH
			return times(mass, ratioFrac(o.FreeAcid()))
		}
		for i, o := range b.Oils {
			pot = plus(pot, massFrac(o.Mass))
			acid = plus(acid, freeAcid(f.Oils[i].Oil, massFrac(o.Mass)))
		}
		formed := over(frac("18.015"), frac("56.105")) // water per KOH
		for i, p := range b.Parts {
			share := ratioFrac(p.Share)
			const remainder = "the largest part takes what rounding leaves"
			near(p.Name+" batter", p.Batter, times(share, massFrac(b.Batter)), 3, remainder)
			near(p.Name+" oils", p.Oils, times(share, total), 3, remainder)
			dry := times(share, minus(pot, times(acid, formed)))
			for j, a := range p.Additions {
				load := asked(f, i)[j].Load
				want := massFrac(load.Mass)
				if load.OfOils.Given() {
					want = times(times(share, total), ratioFrac(load.OfOils))
				}
				if load.OfBatter.Given() {
					want = times(times(share, massFrac(b.Batter)), ratioFrac(load.OfBatter))
				}
				near(a.Name, a.Mass, want, 1, "rounded once; the batter it was worked out of may be some ng off")
				dry = plus(dry, massFrac(a.Mass))
				c := a.Carrier
				if c == nil {
					continue
				}
				near(a.Name+" carrier", c.Mass, times(massFrac(a.Mass), ratioFrac(asked(f, i)[j].Carrier.Ratio)), 1, "rounded once")
				if c.In != soap.InWater {
					dry = plus(dry, massFrac(c.Mass))
				}
				if c.In == soap.InOil {
					oil := asked(f, i)[j].Carrier.Oil
					if at := lineOf(f, oil.ID()); at >= 0 {
						oil = f.Oils[at].Oil
					}
					if !c.Oil.Saponification().Equal(oil.Saponification()) || c.Oil.ID() != oil.ID() {
						t.Errorf("carrier %s counts as %s of %v", c.Name, c.Oil.ID(), c.Oil.Saponification())
					}
					dry = minus(dry, times(freeAcid(oil, massFrac(c.Mass)), formed))
				}
			}
			near(p.Name+" dry", p.Dry, dry, 4, remainder)
		}
	})
}

func TestEveryWeighingIsAMultipleOfItsScale(t *testing.T) {
	madeup.Each(t, madeup.New(5).Formula, 300, func(t *testing.T, f soap.Formula, b soap.Batch) {
		onScale := func(what string, w soap.Weighing, scale units.Mass, down bool) {
			division := frac("0.1") // where the formula does not say
			if scale.Sign() > 0 {
				division = massFrac(scale)
			}
			steps := over(massFrac(w.Mass), division)
			if !down {
				steps = plus(steps, frac("0.5")) // nearest, halves away from zero
			}
			whole := new(big.Rat).SetInt(new(big.Int).Div(steps.Num(), steps.Denom()))
			if want := times(whole, division); massFrac(w.Weigh).Cmp(want) != 0 {
				t.Errorf("%s: %s is weighed as %s, want %s", what, w.Mass, w.Weigh, want.FloatString(9))
			}
		}
		for _, o := range b.Oils {
			onScale(o.Oil.ID(), o.Weighing, f.Scale, false)
		}
		for _, a := range b.Alkalis {
			onScale(a.Alkali.String(), a.Dry, f.Small, true)
		}
		onScale("water", b.Water.Weighing, f.Small, false)
		for _, p := range b.Parts {
			for _, a := range p.Additions {
				onScale(a.Kind.String(), a.Weighing, f.Small, a.Kind == soap.Fragrance)
				if a.Carrier != nil {
					onScale("carrier", a.Carrier.Weighing, f.Small, false)
				}
			}
		}
	})
}

func TestFormulasMadeUpCoverWhatAFormulaCanSay(t *testing.T) {
	seen := map[string]int{}
	madeup.Each(t, madeup.New(1).Formula, 600, func(t *testing.T, f soap.Formula, b soap.Batch) {
		note := func(what string, is bool) {
			if is {
				seen[what]++
			}
		}
		note("oils asked for", f.Size.Oils.Sign() > 0)
		note("batter asked for", f.Size.Batter.Sign() > 0)
		note("oils by mass", f.Oils[0].Mass.Sign() > 0)
		note("rest of the oils", slices.ContainsFunc(f.Oils, func(l soap.OilLine) bool { return l.Rest }))
		note("two alkalis", len(f.Alkalis) == 2)
		note("purity assumed", !f.Alkalis[0].Purity.Given())
		note("water by concentration", f.Water.LyeConcentration.Given())
		note("water per alkali", f.Water.PerAlkali.Given())
		note("water per oils", f.Water.PerOils.Given())
		note("no parts", len(f.Parts) == 0)
		note("four parts", len(f.Parts) == 4)
		note("rest of the batter", slices.ContainsFunc(f.Parts, func(p soap.Part) bool { return p.Rest }))
		note("no range", !b.Superfat.Complete)
		note("worst case below zero", b.Superfat.FreeAlkaliWorst.Given())
		for i := range f.Parts {
			for _, a := range asked(f, i) {
				note("load of oils", a.Load.OfOils.Given())
				note("load of batter", a.Load.OfBatter.Given())
				note("load by mass", a.Load.Mass.Sign() > 0)
				note("no carrier", a.Carrier.In == soap.NoLiquid)
				note("glycerin", a.Carrier.In == soap.InGlycerin)
				note("water held back", a.Carrier.In == soap.InWater && held(a.Carrier))
				note("water on top", a.Carrier.In == soap.InWater && !held(a.Carrier))
				if a.Carrier.In == soap.InOil {
					note("oil held back", held(a.Carrier))
					note("oil of the formula on top", !held(a.Carrier) && lineOf(f, a.Carrier.Oil.ID()) >= 0)
					note("another oil on top", lineOf(f, a.Carrier.Oil.ID()) < 0)
				}
			}
		}
	})
	if len(seen) != 24 {
		t.Errorf("%d kinds of thing seen, want 24: %v", len(seen), seen)
	}
	for what, n := range seen {
		if n < 20 {
			t.Errorf("%s: %d times, want 20 or more", what, n)
		}
	}
}

// masses lists every mass of a batch that is worked out.
func masses(b soap.Batch) map[string]units.Mass {
	all := map[string]units.Mass{
		"water": b.Water.Mass, "water asked": b.Water.Asked, "water held back": b.Water.Withheld,
		"batter": b.Batter, "poured": b.Poured, "dry": b.Dry, "oils": b.OilsTotal, "lye": b.Lye.Mass,
	}
	for _, o := range b.Oils {
		all["oil "+o.Oil.ID()], all["held "+o.Oil.ID()] = o.Mass, o.Withheld
	}
	for _, a := range b.Alkalis {
		all[a.Alkali.String()] = a.Dry.Mass
	}
	for _, p := range b.Parts {
		all[p.Name+" batter"], all[p.Name+" oils"], all[p.Name+" water"] = p.Batter, p.Oils, p.Water
		all[p.Name+" poured"], all[p.Name+" dry"] = p.Poured, p.Dry
		for j, a := range p.Additions {
			name := fmt.Sprint(p.Name, " addition ", j)
			all[name] = a.Mass
			if a.Carrier != nil {
				all[name+" carrier"] = a.Carrier.Mass
			}
		}
	}
	return all
}

// sameMasses compares two batches, the second times k, to so many nanograms.
func sameMasses(t *testing.T, got, want soap.Batch, k, nanograms int64) {
	t.Helper()
	g, w := masses(got), masses(want)
	if len(g) != len(w) {
		t.Errorf("%d masses, want %d", len(g), len(w))
	}
	for name, mass := range w {
		other, found := g[name]
		if !found {
			t.Errorf("%s is missing", name)
			continue
		}
		apart := minus(massFrac(other), times(whole(k), massFrac(mass)))
		if apart.Abs(apart).Cmp(times(whole(nanograms), frac("0.000000001"))) > 0 {
			t.Errorf("%s: %s, want %d × %s to %d ng", name, other, k, mass, nanograms)
		}
	}
}

func TestScalingEveryMassScalesTheBatch(t *testing.T) {
	scaled := func(m units.Mass, k int) units.Mass { return units.Sum{}.Plus(m, units.Whole(k)).Mass(units.Nearest) }
	for _, k := range []int{2, 3, 10} {
		madeup.Each(t, madeup.New(uint64(10+k)).Formula, 150, func(t *testing.T, f soap.Formula, b soap.Batch) {
			g := f
			g.Size = soap.Size{Oils: scaled(f.Size.Oils, k), Batter: scaled(f.Size.Batter, k)}
			g.Oils = slices.Clone(f.Oils)
			for i := range g.Oils {
				g.Oils[i].Mass = scaled(f.Oils[i].Mass, k)
			}
			g.Parts = slices.Clone(f.Parts)
			for i := range f.Parts {
				for _, list := range []*[]soap.Addition{&g.Parts[i].Colourants, &g.Parts[i].Fragrances, &g.Parts[i].Additives} {
					*list = slices.Clone(*list)
					for j := range *list {
						(*list)[j].Load.Mass = scaled((*list)[j].Load.Mass, k)
					}
				}
			}
			larger, err := g.Batch()
			if err != nil {
				t.Errorf("times %d: %v", k, err)
				return
			}
			// Each line is rounded once, by at most a nanogram, in the small batch
			// (then times k) and in the large one. A sum, and a line that takes what
			// is left over (the largest oil, the lye water), gathers those of at most
			// 25 lines, water up to 3.2 times that of its alkali.
			sameMasses(t, larger, b, int64(k), 30*int64(k+1))
		})
	}
}

func TestTheOrderOfTheOilsDoesNotMatter(t *testing.T) {
	madeup.Each(t, madeup.New(20).Formula, 200, func(t *testing.T, f soap.Formula, b soap.Batch) {
		g := f
		g.Oils = slices.Clone(f.Oils)
		slices.Reverse(g.Oils)
		turned, err := g.Batch()
		if err != nil {
			t.Error(err)
			return
		}
		// Of two equally large oils the first takes the remainder, so that some
		// nanograms may change places: one for each of at most five lines, and what
		// follows from them.
		sameMasses(t, turned, b, 1, 15)
		for i := range b.Parts {
			// 15 ng of at least 10 g in a part, over a superfat
			sameOutlook(t, turned.Parts[i].Superfat, b.Parts[i].Superfat, "0.00000001")
		}
		sameOutlook(t, turned.Superfat, b.Superfat, "0.00000001")
	})
}

func sameOutlook(t *testing.T, got, want soap.Outlook, tolerance string) {
	t.Helper()
	for i, r := range figures(got) {
		if !within(ratioFrac(r), ratioFrac(figures(want)[i]), frac(tolerance)) {
			t.Errorf("superfat figure %d: %s, want %s", i, r, figures(want)[i])
		}
	}
	if got.Complete != want.Complete {
		t.Errorf("complete: %v, want %v", got.Complete, want.Complete)
	}
}

func figures(o soap.Outlook) []units.Ratio {
	return []units.Ratio{o.Low, o.LikelyLow, o.Planned, o.LikelyHigh, o.High}
}

// weighing is one thing on a scale that a superfat rests on: an oil into the
// pot or into a jug, or an alkali.
type weighing struct {
	oil                   string // its id; an oil has one value, wherever it goes
	mass, weigh, division *big.Rat
	low, typical, high    *big.Rat // value in mg KOH/g; of an alkali, mol per gram times 56105
	pot, alkali, single   bool
}

// tableau lists what the superfat of a part rests on; part −1 is the batch,
// where every oil of the formula counts as one weighing.
func tableau(f soap.Formula, b soap.Batch, part int) (share *big.Rat, lines []weighing) {
	division := func(m units.Mass) *big.Rat {
		if m.Sign() == 0 {
			return frac("0.1") // where the formula does not say
		}
		return massFrac(m)
	}
	oils, small := division(f.Scale), division(f.Small)
	value := func(o soap.Oil, w *weighing) {
		v := o.Saponification()
		w.oil, w.single = o.ID(), !o.HasRange()
		w.low, w.typical, w.high = ratioFrac(v.Low), ratioFrac(v.Typical), ratioFrac(v.High)
	}
	share = whole(1)
	if part >= 0 {
		share = ratioFrac(b.Parts[part].Share)
	}
	for i, o := range b.Oils {
		mass := o.Mass
		if part < 0 {
			mass = o.Total()
		}
		if mass.Sign() == 0 {
			continue // nothing of it is weighed
		}
		w := weighing{mass: massFrac(mass), weigh: massFrac(o.Weigh), division: oils, pot: true}
		value(f.Oils[i].Oil, &w)
		lines = append(lines, w)
	}
	if part >= 0 {
		for j, a := range b.Parts[part].Additions {
			if a.Carrier == nil || a.Carrier.In != soap.InOil {
				continue
			}
			oil := asked(f, part)[j].Carrier.Oil
			if at := lineOf(f, oil.ID()); at >= 0 {
				oil = f.Oils[at].Oil // the value it has in the formula
			}
			w := weighing{mass: massFrac(a.Carrier.Mass), weigh: massFrac(a.Carrier.Weigh), division: small}
			value(oil, &w)
			lines = append(lines, w)
		}
	}
	for i, a := range b.Alkalis {
		line := f.Alkalis[i]
		low, typical, high := frac("0.955"), whole(1), whole(1) // sodium hydroxide without purity
		if line.Purity.Given() {
			low, high = ratioFrac(line.Purity.Low), ratioFrac(line.Purity.High)
			typical = over(plus(low, high), whole(2))
			if line.Purity.Typical.Given() {
				typical = ratioFrac(line.Purity.Typical)
			}
		}
		perGram := over(frac("56.105"), frac("39.997")) // KOH that does the work of a gram
		if line.Alkali == soap.PotassiumHydroxide {
			perGram = whole(1)
		}
		lines = append(lines, weighing{
			mass: massFrac(a.Dry.Mass), weigh: massFrac(a.Dry.Weigh), division: small, pot: true, alkali: true,
			low: times(low, perGram), typical: times(typical, perGram), high: times(high, perGram),
		})
	}
	return share, lines
}

// superfatOf is 1 − alkali/demand, with a mass and a value chosen for each line.
func superfatOf(share *big.Rat, lines []weighing, choose func(w weighing) (mass, value *big.Rat)) (superfat, demand, alkali *big.Rat) {
	demand, alkali = new(big.Rat), new(big.Rat)
	for _, w := range lines {
		mass, value := choose(w)
		if mass.Sign() < 0 {
			mass = new(big.Rat) // a weighing is cut at 0 g
		}
		product := times(mass, value)
		if w.pot {
			product = times(product, share)
		}
		if w.alkali {
			alkali = plus(alkali, product)
		} else {
			demand = plus(demand, product)
		}
	}
	return minus(whole(1), over(alkali, demand)), demand, alkali
}

func asPlanned(w weighing) (mass, value *big.Rat) { return w.mass, w.typical }
func asWeighed(w weighing) (mass, value *big.Rat) { return w.weigh, w.typical }

func unlucky(w weighing) (mass, value *big.Rat) {
	if w.alkali {
		return plus(w.mass, w.division), w.high
	}
	return minus(w.mass, w.division), w.low
}

func lucky(w weighing) (mass, value *big.Rat) {
	if w.alkali {
		return minus(w.mass, w.division), w.low
	}
	return plus(w.mass, w.division), w.high
}

// outlookOf is the outlook of a part, or of the batch (−1).
func outlookOf(b soap.Batch, part int) soap.Outlook {
	if part < 0 {
		return b.Superfat
	}
	return b.Parts[part].Superfat
}

// A figure of an outlook is rounded to twelve decimals: half of the last.
const quotientTolerance = "0.0000000000005"

func TestThePlannedSuperfatIsWhatTheMassesGive(t *testing.T) {
	madeup.Each(t, madeup.New(30).Formula, 400, func(t *testing.T, f soap.Formula, b soap.Batch) {
		for part := -1; part < len(b.Parts); part++ {
			share, lines := tableau(f, b, part)
			got, demand, _ := superfatOf(share, lines, asPlanned)
			planned := ratioFrac(outlookOf(b, part).Planned)
			if part >= 0 {
				if !within(planned, got, frac(quotientTolerance)) {
					t.Errorf("part %d: planned %s, its masses give %s", part, planned.FloatString(15), got.FloatString(15))
				}
				continue
			}
			if planned.Cmp(ratioFrac(f.Superfat.Planned)) != 0 {
				t.Errorf("batch: planned %s, asked %s", planned.FloatString(15), f.Superfat.Planned)
			}
			// Alkali is born rounded down: each alkali may lack up to a nanogram, so
			// the masses give the plan or a trace more.
			most := new(big.Rat)
			for _, w := range lines {
				if w.alkali {
					most = plus(most, times(frac("0.000000001"), w.typical))
				}
			}
			excess := minus(got, planned)
			if excess.Sign() < 0 || excess.Cmp(over(most, demand)) >= 0 {
				t.Errorf("batch: planned %s, its masses give %s, which no nanogram explains", planned.FloatString(15), got.FloatString(15))
			}
		}
	})
}

func TestTheWorstCaseIsEveryInputAtItsUnluckyEnd(t *testing.T) {
	madeup.Each(t, madeup.New(40).Formula, 400, func(t *testing.T, f soap.Formula, b soap.Batch) {
		for part := -1; part < len(b.Parts); part++ {
			share, lines := tableau(f, b, part)
			o := outlookOf(b, part)
			low, demand, alkali := superfatOf(share, lines, unlucky)
			high, _, _ := superfatOf(share, lines, lucky)
			if !within(ratioFrac(o.Low), low, frac(quotientTolerance)) || !within(ratioFrac(o.High), high, frac(quotientTolerance)) {
				t.Errorf("part %d: from %s to %s, want %s to %s", part, o.Low, o.High, low.FloatString(12), high.FloatString(12))
			}
			single := false
			for _, w := range lines {
				single = single || w.single
			}
			if o.Complete == single {
				t.Errorf("part %d: complete %v, an oil without a range: %v", part, o.Complete, single)
			}
			// Alkali left over, as NaOH, of the dry mass.
			if (low.Sign() < 0) != o.FreeAlkaliWorst.Given() {
				t.Errorf("part %d: low %s, free alkali %s", part, o.Low, o.FreeAlkaliWorst)
			}
			if low.Sign() < 0 {
				dry := b.Dry
				if part >= 0 {
					dry = b.Parts[part].Dry
				}
				free := over(times(minus(alkali, demand), over(frac("39.997"), frac("56.105"))), massFrac(dry))
				if !within(ratioFrac(o.FreeAlkaliWorst), free, frac(quotientTolerance)) {
					t.Errorf("part %d: free alkali %s, want %s", part, o.FreeAlkaliWorst, free.FloatString(12))
				}
			}
		}
	})
}

func TestWhatIsWeighedStaysWithinTheWorstCase(t *testing.T) {
	checked := 0
	madeup.Each(t, madeup.New(50).Formula, 400, func(t *testing.T, f soap.Formula, b soap.Batch) {
		for part := -1; part < len(b.Parts); part++ {
			if part < 0 && b.OilsTotal != potOf(b) {
				continue // with jugs, what is weighed of an oil is more than one weighing
			}
			share, lines := tableau(f, b, part)
			weighs := false
			for _, w := range lines {
				weighs = weighs || !w.alkali && w.weigh.Sign() > 0
			}
			if !weighs {
				continue // a scale so coarse that no oil shows on it
			}
			checked++
			got, _, _ := superfatOf(share, lines, asWeighed)
			o := outlookOf(b, part)
			if got.Cmp(ratioFrac(o.Low)) < 0 || got.Cmp(ratioFrac(o.High)) > 0 {
				t.Errorf("part %d: as weighed %s, outside %s to %s", part, got.FloatString(12), o.Low, o.High)
			}
		}
	})
	if checked < 400 {
		t.Errorf("%d superfats as weighed, want 400 or more", checked)
	}
}

func potOf(b soap.Batch) (pot units.Mass) {
	for _, o := range b.Oils {
		pot = pot.Add(o.Mass)
	}
	return pot
}

func TestAnOutlookIsInOrder(t *testing.T) {
	madeup.Each(t, madeup.New(60).Formula, 600, func(t *testing.T, f soap.Formula, b soap.Batch) {
		for part := -1; part < len(b.Parts); part++ {
			fs := figures(outlookOf(b, part))
			for i := range fs[1:] {
				if !fs[i].Given() || fs[i].Compare(fs[i+1]) > 0 {
					t.Errorf("part %d: low, likely, planned, likely, high: %v", part, fs)
				}
			}
		}
	})
}

func TestTheLikelyCaseIsTheRootOfTheSquares(t *testing.T) {
	madeup.Each(t, madeup.New(70).Formula, 300, func(t *testing.T, f soap.Formula, b soap.Batch) {
		for part := -1; part < len(b.Parts); part++ {
			share, lines := tableau(f, b, part)
			_, demand, alkali := superfatOf(share, lines, asPlanned)
			used := over(alkali, demand)
			square := new(big.Rat)
			add := func(move *big.Rat, divisor int64) { square = plus(square, over(times(move, move), whole(divisor))) }
			carried := map[string]*big.Rat{} // an oil's value counts once, over all that is in the part
			ends := map[string][2]*big.Rat{}
			for _, w := range lines {
				by := whole(1)
				if w.pot {
					by = share
				}
				// d superfat/d demand is used/demand, d superfat/d alkali 1/demand
				slope := over(by, demand)
				if !w.alkali {
					slope = times(slope, used)
					if carried[w.oil] == nil {
						carried[w.oil] = new(big.Rat)
					}
					carried[w.oil] = plus(carried[w.oil], times(by, w.mass))
					ends[w.oil] = [2]*big.Rat{w.low, w.high}
				} else {
					add(times(times(slope, w.mass), over(minus(w.high, w.low), whole(2))), 3)
				}
				// two halves of a division: 2 (d/2)²/3 = d²/6
				add(times(times(slope, w.typical), w.division), 6)
			}
			for oil, mass := range carried {
				add(times(times(over(used, demand), mass), over(minus(ends[oil][1], ends[oil][0]), whole(2))), 3)
			}
			f64, _ := square.Float64()
			margin := 2 * math.Sqrt(f64)
			o := outlookOf(b, part)
			low := math.Max(o.Planned.Float()-margin, o.Low.Float())
			high := math.Min(o.Planned.Float()+margin, o.High.Float())
			// The library rounds this estimate to 10^-12; the rest is float64.
			if math.Abs(o.LikelyLow.Float()-low) > 3e-12 || math.Abs(o.LikelyHigh.Float()-high) > 3e-12 {
				t.Errorf("part %d: likely %s to %s, want %.13f to %.13f", part, o.LikelyLow, o.LikelyHigh, low, high)
			}
		}
	})
}

func TestNoAlkaliAndNoDemandIsLostBetweenTheParts(t *testing.T) {
	madeup.Each(t, madeup.New(80).Formula, 300, func(t *testing.T, f soap.Formula, b soap.Batch) {
		_, lines := tableau(f, b, -1)
		_, formula, alkali := superfatOf(whole(1), lines, asPlanned)
		used, demand, allDemand, shares := new(big.Rat), new(big.Rat), new(big.Rat), new(big.Rat)
		for i, p := range b.Parts {
			share, lines := tableau(f, b, i)
			_, d, _ := superfatOf(share, lines, asPlanned)
			shares = plus(shares, share)
			used = plus(used, times(minus(whole(1), ratioFrac(p.Superfat.Planned)), d))
			demand, allDemand = plus(demand, d), plus(allDemand, d)
			for j, a := range p.Additions { // what is on top of the formula
				if c := a.Carrier; c != nil && c.In == soap.InOil && !held(asked(f, i)[j].Carrier) {
					oil := asked(f, i)[j].Carrier.Oil
					if at := lineOf(f, oil.ID()); at >= 0 {
						oil = f.Oils[at].Oil
					}
					demand = minus(demand, times(massFrac(c.Mass), ratioFrac(oil.Saponification().Typical)))
				}
			}
		}
		if shares.Cmp(whole(1)) != 0 {
			t.Errorf("shares add up to %s", shares.FloatString(12))
		}
		if demand.Cmp(formula) != 0 {
			t.Errorf("demand of the parts %s, of the formula %s", demand.FloatString(15), formula.FloatString(15))
		}
		// every part's figure is rounded, and is a share of the part's demand
		if !within(used, alkali, times(frac(quotientTolerance), allDemand)) {
			t.Errorf("alkali used in the parts %s, in the pot %s", used.FloatString(30), alkali.FloatString(30))
		}
	})
}

func TestAtLeastIsTheSmallestPlanThatKeepsItsPromise(t *testing.T) {
	// worst is the lowest worst case of the batch and its parts.
	worst := func(f soap.Formula, b soap.Batch) *big.Rat {
		var least *big.Rat
		for part := -1; part < len(b.Parts); part++ {
			share, lines := tableau(f, b, part)
			low, _, _ := superfatOf(share, lines, unlucky)
			if least == nil || low.Cmp(least) < 0 {
				least = low
			}
		}
		return least
	}
	step := units.MustRatio("0.000001 %")
	m := madeup.Ranged(90)
	made := 0
	for i := range 150 {
		f := m.Formula()
		floor := madeup.Basis([]int{0, 100, 250}[m.IntN(3)])
		f.Superfat = soap.Superfat{AtLeast: floor}
		b, err := f.Batch()
		if errors.Is(err, soap.ErrImpossible) {
			continue
		}
		if err != nil {
			t.Fatal(err)
		}
		made++
		planned := b.Superfat.Planned
		if !planned.Over(step).Equal(planned.Over(step).Round(0, units.Nearest)) {
			t.Errorf("formula %d: planned %s is no whole number of 0.000001 %%", i, planned)
		}
		if got := worst(f, b); got.Cmp(ratioFrac(floor)) < 0 {
			t.Errorf("formula %d: planned at %s, worst case %s, below %s", i, planned, got.FloatString(15), floor)
		}
		f.Superfat = soap.Superfat{Planned: planned.Sub(step)}
		below, err := f.Batch()
		if err != nil {
			t.Fatal(err)
		}
		if got := worst(f, below); got.Cmp(ratioFrac(floor)) >= 0 {
			t.Errorf("formula %d: 0.000001 %% below %s the worst case is still %s, %s or more", i, planned, got.FloatString(15), floor)
		}
	}
	if made < 120 {
		t.Errorf("%d of 150 formulas could be made, want 120", made)
	}
}

func TestAtLeastRefusesAnOilWithoutARange(t *testing.T) {
	m := madeup.Ranged(95)
	f := m.Formula()
	f.Parts = nil
	f.Superfat = soap.Superfat{AtLeast: units.Percent(2)}
	if _, err := f.Batch(); err != nil {
		t.Fatal(err)
	}
	f.Oils[0].Oil = builtIn(t, "goose-fat")
	if _, err := f.Batch(); err == nil {
		t.Error("goose fat has no range, and a promise was made of it")
	}
}

func TestTheWaterRulesConvertIntoEachOther(t *testing.T) {
	percent := func(text string) units.Ratio { return units.MustRatio(text + " %") }
	for _, c := range []struct {
		concentration, perAlkali string // (1 − c)/c
	}{{"25", "3"}, {"40", "1.5"}, {"50", "1"}, {"20", "4"}, {"32", "2.125"}} {
		if got := soap.WaterPerAlkali(percent(c.concentration)); got.Text(30) != c.perAlkali {
			t.Errorf("%s %%: %s of water per alkali, want %s", c.concentration, got, c.perAlkali)
		}
		if got := soap.LyeConcentration(units.MustRatio(c.perAlkali)); got.PercentText(30) != c.concentration {
			t.Errorf("%s of water per alkali: %s, want %s %%", c.perAlkali, got, c.concentration)
		}
	}
	// 1 : 2 is 33.33 %, of 0.13545 g of NaOH per g (value 190) 27.09 % of the oils.
	if got := soap.LyeConcentration(units.Whole(2)).PercentText(2); got != "33.33" {
		t.Errorf("1 : 2 is %s %%, want 33.33", got)
	}
	if got := soap.WaterPerOils(units.Whole(2), units.MustRatio("0.13545")).PercentText(4); got != "27.09" {
		t.Errorf("1 : 2 is %s %% of the oils, want 27.09", got)
	}
	if got := soap.WaterPerAlkaliFromOils(percent("27.09"), units.MustRatio("0.13545")).Text(20); got != "2" {
		t.Errorf("27.09 %% of the oils is 1 : %s, want 2", got)
	}
}

func TestTheThreeWaterRulesGiveTheSameBatch(t *testing.T) {
	madeup.Each(t, madeup.New(100).Formula, 200, func(t *testing.T, f soap.Formula, b soap.Batch) {
		alkali := units.Mass{}
		for _, a := range b.Alkalis {
			alkali = alkali.Add(a.Dry.Mass)
		}
		perOil, _ := alkali.Per(b.OilsTotal)
		var perAlkali units.Ratio
		switch {
		case f.Water.LyeConcentration.Given():
			perAlkali = soap.WaterPerAlkali(f.Water.LyeConcentration)
		case f.Water.PerAlkali.Given():
			perAlkali = f.Water.PerAlkali
		default:
			perAlkali = soap.WaterPerAlkaliFromOils(f.Water.PerOils, perOil)
		}
		for _, rule := range []soap.Water{
			{LyeConcentration: soap.LyeConcentration(perAlkali)},
			{PerAlkali: perAlkali},
			{PerOils: soap.WaterPerOils(perAlkali, perOil)},
		} {
			g := f
			g.Water = rule
			other, err := g.Batch()
			if err != nil {
				t.Errorf("%+v: %v", rule, err)
				continue
			}
			// The alkali per oils is taken from masses that were rounded to a
			// nanogram, the water is up to 3.2 times as much, and of a batter asked
			// for the oils follow.
			sameMasses(t, other, b, 1, 10)
		}
	})
}

func TestABatchIsAlwaysTheSameAndLeavesItsFormulaAlone(t *testing.T) {
	m, again := madeup.New(110), madeup.New(110)
	for i := range 100 {
		f, untouched := m.Formula(), again.Formula() // equal, and nothing shared but the oils
		if !reflect.DeepEqual(f, untouched) {
			t.Fatalf("formula %d differs from itself", i)
		}
		first, err := f.Batch()
		if err != nil {
			continue
		}
		one, err1 := first.MarshalJSON()
		for j := range first.Oils {
			first.Oils[j].Mass = units.Mass{} // a batch is its caller's own
		}
		for j := range first.Parts {
			first.Parts[j].Additions = nil
			first.Parts[j].Poured = units.Grams(1)
		}
		second, err := f.Batch()
		if err != nil {
			t.Fatal(err)
		}
		two, err2 := second.MarshalJSON()
		if err1 != nil || err2 != nil || !bytes.Equal(one, two) {
			t.Errorf("formula %d: two batches differ: %v, %v", i, err1, err2)
		}
		if !reflect.DeepEqual(f, untouched) {
			t.Errorf("formula %d was changed: %+v, was %+v", i, f, untouched)
		}
	}
}
