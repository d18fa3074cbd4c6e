package soap_test

import (
	"errors"
	"math/big"
	"reflect"
	"slices"
	"testing"

	"example.com/lyewright/internal/madeup"
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

func TestNothingIsLostBetweenStockAcidsAndLiquids(t *testing.T) {
	madeup.Each(t, madeup.New(301).Benched, 600, func(t *testing.T, f soap.Formula, b soap.Batch) {
		equal := func(what string, got, want units.Mass) {
			if got != want {
				t.Errorf("%s: %s, want %s", what, got, want)
			}
		}
		alkali, stockWater, liquidWater, solids, acids := units.Mass{}, units.Mass{}, units.Mass{}, units.Mass{}, units.Mass{}
		for i, a := range b.Alkalis {
			alkali = alkali.Add(a.Dry.Mass)
			if !f.Alkalis[i].Stock.Low.Given() && !f.Alkalis[i].Stock.Typical.Given() {
				continue
			}
			stockWater = stockWater.Add(a.Stock.Mass.Sub(a.Dry.Mass))
			if a.Dry.Weigh.Sign() != 0 {
				t.Errorf("hydroxide of a stock lye is weighed as %s", a.Dry.Weigh)
			}
			// The stock is rounded down: it holds up to a nanogram's worth less.
			short := minus(massFrac(a.Dry.Mass), times(massFrac(a.Stock.Mass), ratioFrac(f.Alkalis[i].Stock.Plan())))
			if short.Sign() < 0 || short.Cmp(frac("0.000000001")) >= 0 {
				t.Errorf("%s of stock for %s of hydroxide", a.Stock.Mass, a.Dry.Mass)
			}
		}
		own := new(big.Rat)
		for i, a := range b.Acids {
			acids = acids.Add(a.Mass)
			if s := f.Acids[i].Strength; s.Given() {
				own = plus(own, times(massFrac(a.Mass), minus(whole(1), ratioFrac(s.Plan()))))
			}
		}
		for i, l := range b.Liquids {
			liquidWater, solids = liquidWater.Add(l.Water), solids.Add(l.Mass.Sub(l.Water))
			line := f.Water.Liquids[i]
			if !within(massFrac(l.Water), times(massFrac(l.Mass), ratioFrac(line.Water)), frac("0.0000000005")) {
				t.Errorf("%s of water in %s of liquid", l.Water, l.Mass)
			}
			if line.Share.Given() {
				// rounded twice, and the water asked for moves with what alkali is rounded by
				if !within(massFrac(l.Water), times(massFrac(b.Water.Asked), ratioFrac(line.Share)), frac("0.00000004")) {
					t.Errorf("%s of water out of a liquid, %s of %s asked for", l.Water, line.Share, b.Water.Asked)
				}
			} else {
				equal("liquid by mass", l.Mass, line.Mass)
			}
		}
		lyeWater := sum(b.Water.Mass, stockWater, liquidWater)
		equal("lye", b.Lye.Mass, sum(alkali, lyeWater))
		equal("batter", b.Batter, sum(potOf(b), alkali, lyeWater, acids, solids))
		if f.Size.Batter.Sign() > 0 {
			equal("batter asked for", b.Batter, f.Size.Batter)
		}
		// An acid's own water is rounded to a nanogram, of two acids at most.
		all := plus(massFrac(sum(lyeWater, b.Water.Withheld)), own)
		if !within(massFrac(b.Water.Asked), all, frac("0.000000001")) {
			t.Errorf("water asked for %s, all its sources %s", b.Water.Asked, all.FloatString(9))
		}
		batter, poured, dry, water, added := units.Mass{}, units.Mass{}, units.Mass{}, units.Mass{}, units.Mass{}
		for _, p := range b.Parts {
			batter, poured, dry, water = batter.Add(p.Batter), poured.Add(p.Poured), dry.Add(p.Dry), water.Add(p.Water)
			for _, a := range p.Additions {
				added = added.Add(a.Mass)
				if a.Carrier != nil {
					added = added.Add(a.Carrier.Mass)
					if a.Carrier.In == soap.InWater {
						water = water.Sub(a.Carrier.Mass)
					}
				}
			}
		}
		equal("batter of the parts", batter, b.Batter)
		equal("poured parts", poured, b.Poured)
		equal("poured", b.Poured, sum(b.Batter, added))
		equal("dry parts", dry, b.Dry)
		equal("lye water of the parts", water, lyeWater)
	})
}

// Alkali is what the oils and the fat of liquids ask for, less the superfat, and
// what compensated acids take up; the water follows its rule.
func TestEveryLineOfABenchIsWhatIsAskedFor(t *testing.T) {
	nanogram := frac("0.000000001")
	madeup.Each(t, madeup.New(302).Benched, 400, func(t *testing.T, f soap.Formula, b soap.Batch) {
		demand, taken := new(big.Rat), new(big.Rat)
		for i, o := range b.Oils {
			demand = plus(demand, times(massFrac(o.Total()), ratioFrac(f.Oils[i].Oil.Saponification().Typical)))
		}
		for i, l := range b.Liquids {
			if line := f.Water.Liquids[i]; line.Fat.Given() {
				demand = plus(demand, times(times(massFrac(l.Mass), ratioFrac(line.Fat)), ratioFrac(line.Saponification.Plan())))
			}
		}
		for i, a := range b.Acids {
			load, want := f.Acids[i].Load, massFrac(f.Acids[i].Load.Mass)
			if load.OfOils.Given() {
				want = times(massFrac(b.OilsTotal), ratioFrac(load.OfOils))
			}
			if load.OfBatter.Given() {
				want = times(massFrac(b.Batter), ratioFrac(load.OfBatter))
			}
			if !within(massFrac(a.Mass), want, nanogram) {
				t.Errorf("%s: %s, want %s", a.Acid.ID, a.Mass, want.FloatString(12))
			}
			takes := times(massFrac(a.Mass), neutralised(f.Acids[i]))
			if f.Acids[i].Compensate == soap.Compensated {
				taken = plus(taken, takes)
			}
			if b.Alkalis[0].Alkali == soap.SodiumHydroxide {
				takes = times(takes, frac("39997/56105"))
			}
			if !within(massFrac(a.Takes), takes, nanogram) {
				t.Errorf("%s takes up %s, want %s", a.Acid.ID, a.Takes, takes.FloatString(12))
			}
		}
		needed := plus(times(demand, minus(whole(1), ratioFrac(f.Superfat.Planned))), taken)
		all := units.Mass{}
		for i, a := range b.Alkalis {
			want := over(needed, ratioFrac(a.Purity.Typical))
			if a.Alkali == soap.SodiumHydroxide {
				want = times(want, frac("39997/56105"))
			}
			if f.Alkalis[i].Saponifies.Given() {
				want = times(want, ratioFrac(f.Alkalis[i].Saponifies))
			}
			short := minus(want, massFrac(a.Dry.Mass))
			if short.Sign() < 0 || short.Cmp(nanogram) >= 0 {
				t.Errorf("%s: %s, want %s rounded down to a nanogram", a.Alkali, a.Dry.Mass, want.FloatString(12))
			}
			all = all.Add(a.Dry.Mass)
		}
		water := times(massFrac(b.OilsTotal), ratioFrac(f.Water.PerOils))
		if c := f.Water.LyeConcentration; c.Given() {
			water = over(times(massFrac(all), minus(whole(1), ratioFrac(c))), ratioFrac(c))
		}
		if f.Water.PerAlkali.Given() {
			water = times(massFrac(all), ratioFrac(f.Water.PerAlkali))
		}
		if !within(massFrac(b.Water.Asked), water, times(whole(60), nanogram)) {
			t.Errorf("water asked for %s, want %s but for what the lines of a batter asked for are rounded by", b.Water.Asked,
				water.FloatString(12))
		}
		if dry := dryOf(f, b); !within(massFrac(b.Dry), dry, times(whole(40), nanogram)) {
			t.Errorf("dry %s, want %s to what its lines are rounded by", b.Dry, dry.FloatString(12))
		}
	})
}

// dryOf is what is left without any water: oils, pure hydroxide, additions and
// carriers but water; of an acid what is no water once it is neutralised, a mole a
// proton and that of its crystals; of a liquid neither water nor alcohol.
func dryOf(f soap.Formula, b soap.Batch) *big.Rat {
	dry, acid := new(big.Rat), new(big.Rat) // free fatty acids as KOH
	oil := func(o soap.Oil, mass units.Mass) {
		dry = plus(dry, massFrac(mass))
		acid = plus(acid, times(massFrac(mass), ratioFrac(o.FreeAcid())))
	}
	for i, o := range b.Oils {
		oil(f.Oils[i].Oil, o.Mass)
	}
	for _, a := range b.Alkalis {
		dry = plus(dry, times(massFrac(a.Dry.Mass), ratioFrac(a.Purity.Typical)))
	}
	for i, a := range b.Acids {
		strength := whole(1)
		if s := f.Acids[i].Strength; s.Given() {
			strength = ratioFrac(s.Plan())
		}
		water := int64(a.Acid.Protons)
		if a.Acid.ID == "citric-acid-monohydrate" {
			water++
		}
		kept := minus(whole(1), over(times(whole(water), frac("18.015")), ratioFrac(a.Acid.Molar)))
		dry = plus(dry, times(times(massFrac(a.Mass), strength), kept))
	}
	for i, l := range b.Liquids {
		line := f.Water.Liquids[i]
		dry = plus(dry, times(massFrac(l.Mass), minus(minus(whole(1), ratioFrac(line.Water)), ratioFrac(line.Alcohol))))
	}
	for _, p := range b.Parts {
		for _, a := range p.Additions {
			dry = plus(dry, massFrac(a.Mass))
			switch {
			case a.Carrier == nil || a.Carrier.In == soap.InWater:
			case a.Carrier.In == soap.InOil:
				oil(a.Carrier.Oil, a.Carrier.Mass)
			default:
				dry = plus(dry, massFrac(a.Carrier.Mass))
			}
		}
	}
	return minus(dry, times(acid, frac("18015/56105")))
}

// A compensated acid leaves the superfat as planned; one that is not raises it by
// what it takes up, of what the oils demand.
func TestAnAcidRaisesTheSuperfatOnlyWhereItIsNotCompensated(t *testing.T) {
	kept, raised := 0, 0
	madeup.Each(t, madeup.New(303).Benched, 500, func(t *testing.T, f soap.Formula, b soap.Batch) {
		account := reckon(f, b, soap.Weighed{}, -1)
		want := ratioFrac(f.Superfat.Planned)
		for i, a := range b.Acids {
			if f.Acids[i].Compensate == soap.Uncompensated {
				want = plus(want, over(times(massFrac(a.Mass), neutralised(f.Acids[i])), account.demand))
			}
		}
		switch {
		case want.Cmp(ratioFrac(f.Superfat.Planned)) != 0:
			raised++
		case len(b.Acids) > 0:
			kept++
			if b.Superfat.Planned.Compare(f.Superfat.Planned) != 0 {
				t.Errorf("planned %s, asked %s", b.Superfat.Planned, f.Superfat.Planned)
			}
		}
		// Of at least 100 g of oils: a nanogram of alkali is less than 10^-9 of the demand.
		if got := ratioFrac(b.Superfat.Planned); !within(got, want, frac("0.000000001")) || !within(account.superfat(), want,
			frac("0.000000001")) {
			t.Errorf("planned %s, its masses give %s, want %s", got.FloatString(12), account.superfat().FloatString(12),
				want.FloatString(12))
		}
		for i := range b.Parts {
			if got, want := ratioFrac(b.Parts[i].Superfat.Planned), reckon(f, b, soap.Weighed{}, i).superfat(); !within(got,
				want, frac(quotientTolerance)) {
				t.Errorf("part %d: planned %s, its masses give %s", i, got.FloatString(15), want.FloatString(15))
			}
		}
	})
	if kept < 50 || raised < 50 {
		t.Errorf("%d kept, %d raised", kept, raised)
	}
}

// tenfold is a formula with every mass of it times ten, the scales as well.
func tenfold(f soap.Formula) soap.Formula {
	tenfold := func(m units.Mass) units.Mass { return units.Sum{}.Plus(m, units.Whole(10)).Mass(units.Nearest) }
	g := f
	g.Scale, g.Small = f.Scales()
	g.Scale, g.Small = tenfold(g.Scale), tenfold(g.Small)
	g.Size = soap.Size{Oils: tenfold(f.Size.Oils), Batter: tenfold(f.Size.Batter)}
	g.Oils, g.Acids, g.Parts = slices.Clone(f.Oils), slices.Clone(f.Acids), slices.Clone(f.Parts)
	g.Water.Liquids = slices.Clone(f.Water.Liquids)
	for i := range g.Oils {
		g.Oils[i].Mass = tenfold(g.Oils[i].Mass)
	}
	for i := range g.Acids {
		g.Acids[i].Load.Mass = tenfold(g.Acids[i].Load.Mass)
	}
	for i := range g.Water.Liquids {
		g.Water.Liquids[i].Mass = tenfold(g.Water.Liquids[i].Mass)
	}
	for i := range g.Parts {
		for _, list := range []*[]soap.Addition{&g.Parts[i].Colourants, &g.Parts[i].Fragrances, &g.Parts[i].Additives} {
			*list = slices.Clone(*list)
			for j := range *list {
				(*list)[j].Load.Mass = tenfold((*list)[j].Load.Mass)
			}
		}
	}
	return g
}

// Everything times ten, the scales as well, leaves every share as it is.
func TestScalingABenchScalesItsBatch(t *testing.T) {
	madeup.Each(t, madeup.New(304).Benched, 200, func(t *testing.T, f soap.Formula, b soap.Batch) {
		larger, err := tenfold(f).Batch()
		if err != nil {
			t.Error(err)
			return
		}
		sameMasses(t, larger, b, 10, 1000) // a sum of some thirty lines, each rounded once on either side, and what follows
		sameOutlook(t, larger.Superfat, b.Superfat, "0.00000001")
		for i := range b.Parts {
			sameOutlook(t, larger.Parts[i].Superfat, b.Parts[i].Superfat, "0.00000001")
		}
	})
}

func TestTheOrderOfAcidsAndLiquidsDoesNotMatter(t *testing.T) {
	turned := 0
	madeup.Each(t, madeup.New(305).Benched, 300, func(t *testing.T, f soap.Formula, b soap.Batch) {
		if len(f.Acids) < 2 && len(f.Water.Liquids) < 2 {
			return
		}
		turned++
		g := f
		g.Acids, g.Water.Liquids = slices.Clone(f.Acids), slices.Clone(f.Water.Liquids)
		slices.Reverse(g.Acids)
		slices.Reverse(g.Water.Liquids)
		other, err := g.Batch()
		if err != nil {
			t.Error(err)
			return
		}
		sameMasses(t, other, b, 1, 0)
		for i, a := range b.Acids {
			if mirrored := other.Acids[len(b.Acids)-1-i]; mirrored.Acid.ID != a.Acid.ID || mirrored.Weighing != a.Weighing ||
				mirrored.Takes != a.Takes {
				t.Errorf("%+v, was %+v", mirrored, a)
			}
		}
		for i, l := range b.Liquids {
			if mirrored := other.Liquids[len(b.Liquids)-1-i]; mirrored != l {
				t.Errorf("%+v, was %+v", mirrored, l)
			}
		}
		sameOutlook(t, other.Superfat, b.Superfat, "0.000000000001")
	})
	if turned < 60 {
		t.Errorf("%d formulas with two of either", turned)
	}
}

// What was weighed as planned is as planned, and surer: a display hides half a
// division, and nothing is left to round.
func TestWeighingAsPlannedKeepsThePlanAndNarrowsTheBounds(t *testing.T) {
	m := madeup.New(306)
	madeup.Each(t, m.Benched, 300, func(t *testing.T, f soap.Formula, b soap.Batch) {
		f.Weighed = soap.Weighed{Stage: madeup.Stages()[m.IntN(4)], Water: soap.Read(b.Water.Mass)}
		for _, o := range b.Oils {
			f.Weighed.Oils = append(f.Weighed.Oils, soap.WeighedOil{Oil: o.Oil.ID(), Mass: o.Mass})
		}
		for _, a := range b.Alkalis {
			weighing, _ := a.ToWeigh()
			f.Weighed.Alkalis = append(f.Weighed.Alkalis, soap.WeighedAlkali{Alkali: a.Alkali, Mass: weighing.Mass})
		}
		for _, a := range b.Acids {
			f.Weighed.Acids = append(f.Weighed.Acids, soap.WeighedAcid{Acid: a.Acid.ID, Mass: a.Mass})
		}
		for _, l := range b.Liquids {
			f.Weighed.Liquids = append(f.Weighed.Liquids, soap.WeighedLiquid{Liquid: l.Name, Mass: l.Mass})
		}
		for _, p := range b.Parts {
			part := soap.WeighedPart{Part: p.Name, Batter: soap.Read(p.Batter)}
			for name, mass := range madeup.Additions(p) {
				part.Additions = append(part.Additions, soap.WeighedAddition{Name: name, Mass: mass})
			}
			for name, mass := range madeup.Carriers(p) {
				part.Carriers = append(part.Carriers, soap.WeighedCarrier{Liquid: name, Mass: mass})
			}
			f.Weighed.Parts = append(f.Weighed.Parts, part)
		}
		again, err := f.Batch()
		if err != nil {
			t.Error(err)
			return
		}
		if len(again.Weighed.Remedies) > 0 {
			t.Errorf("nothing is wrong, and offered is %+v", again.Weighed.Remedies)
		}
		narrower := func(what string, got, plan soap.Outlook) {
			if !within(ratioFrac(got.Planned), ratioFrac(plan.Planned), frac("0.000000001")) {
				t.Errorf("%s: weighed as planned %s, planned %s", what, got.Planned, plan.Planned)
			}
			if got.Low.Compare(plan.Low) <= 0 || got.High.Compare(plan.High) >= 0 {
				t.Errorf("%s: as weighed %s to %s, as planned %s to %s", what, got.Low, got.High, plan.Low, plan.High)
			}
			if got.LikelyHigh.Sub(got.LikelyLow).Compare(plan.LikelyHigh.Sub(plan.LikelyLow)) > 0 {
				t.Errorf("%s: likely %s to %s, was %s to %s", what, got.LikelyLow, got.LikelyHigh, plan.LikelyLow, plan.LikelyHigh)
			}
			if got.Complete != plan.Complete {
				t.Errorf("%s: complete %v, was %v", what, got.Complete, plan.Complete)
			}
		}
		narrower("the batch", again.Weighed.Superfat, b.Superfat)
		for i, p := range again.Weighed.Parts {
			narrower(p.Name, p.Superfat, b.Parts[i].Superfat)
		}
	})
}

// eachWeighed weighs batches wrong and hands each to a check; one that was
// weighed beyond what can be reckoned is passed over, few may be.
func eachWeighed(t *testing.T, m *madeup.Maker, n, percent int, check func(t *testing.T, f soap.Formula, plan,
	b soap.Batch),
) {
	t.Helper()
	weighed, refused := 0, 0
	madeup.Each(t, m.Benched, n, func(t *testing.T, f soap.Formula, plan soap.Batch) {
		f.Weighed = m.Weigh(plan, madeup.Stages()[m.IntN(4)], percent)
		b, err := f.Batch()
		if errors.Is(err, soap.ErrImpossible) {
			refused++
			return
		}
		if err != nil {
			t.Error(err)
			return
		}
		weighed++
		check(t, f, plan, b)
	})
	if refused*10 > weighed {
		t.Errorf("%d refused, %d weighed", refused, weighed)
	}
}

func TestAsWeighedIsWhatTheMassesGive(t *testing.T) {
	eachWeighed(t, madeup.New(307), 400, 30, func(t *testing.T, f soap.Formula, plan, b soap.Batch) {
		if !reflect.DeepEqual(b.Superfat, plan.Superfat) || !reflect.DeepEqual(b.Parts, plan.Parts) ||
			!reflect.DeepEqual(b.Alkalis, plan.Alkalis) {
			t.Error("the plan moved with what was weighed")
		}
		same := func(what string, o soap.Outlook, a account) {
			want := a.superfat()
			if a.alkali.Sign() < 0 {
				want = whole(1) // acids take all of it
			}
			// masses that are worked out of what was weighed are rounded to a nanogram
			if !within(ratioFrac(o.Planned), want, frac("0.000000001")) {
				t.Errorf("%s: as weighed %s, its masses give %s", what, o.Planned, want.FloatString(12))
			}
			for fs, i := figures(o), 1; i < len(fs); i++ {
				if fs[i-1].Compare(fs[i]) > 0 {
					t.Errorf("%s: low, likely, planned, likely, high: %v", what, fs)
				}
			}
		}
		same("the batch", b.Weighed.Superfat, reckon(f, plan, f.Weighed, -1))
		for i, p := range b.Weighed.Parts {
			same(p.Name, p.Superfat, reckon(f, plan, f.Weighed, i))
		}
	})
}

// What is offered goes with how far the batch has come.
func TestRemediesGoWithTheStage(t *testing.T) {
	seen := map[string]int{}
	eachWeighed(t, madeup.New(308), 500, 30, func(t *testing.T, f soap.Formula, plan, b soap.Batch) {
		w := b.Weighed
		if w.Stage != f.Weighed.Stage || len(w.Parts) != len(b.Parts) {
			t.Errorf("stage %s, %d parts", w.Stage, len(w.Parts))
		}
		parts := map[string]bool{}
		for _, p := range b.Parts {
			parts[p.Name] = true
		}
		for _, r := range w.Remedies {
			oil, lye, alkali := r.Oil != "", r.OfLye.Sign() != 0, r.AddAlkali.Weigh.Sign() != 0
			if n := slices.Index([]bool{oil, lye, alkali}, true); n < 0 || oil && lye || oil && alkali || lye && alkali {
				t.Errorf("not just one of oil, lye and alkali: %+v", r)
			}
			if (r.Part != "") != (w.Stage == soap.AtParts) || r.Part != "" && !parts[r.Part] {
				t.Errorf("%s: for part %q", w.Stage, r.Part)
			}
			if (lye || alkali) && w.Stage != soap.AtLye || oil && w.Stage != soap.AtPot && w.Stage != soap.AtParts {
				t.Errorf("%s: offered is %+v", w.Stage, r)
			}
			if oil && r.Oil != soap.Blend {
				line := lineOf(f, r.Oil)
				if line < 0 || f.Oils[line].Oil.Kind() == soap.Wax {
					t.Errorf("%s is offered", r.Oil)
				}
			}
			for fs, i := figures(r.Superfat), 1; i < len(fs); i++ {
				if fs[i-1].Compare(fs[i]) > 0 {
					t.Errorf("%+v: low, likely, planned, likely, high: %v", r, fs)
				}
			}
			kind := map[bool]string{oil: "oil", lye: "lye", alkali: "alkali"}[true]
			seen[w.Stage.String()+" "+kind]++
		}
		if w.Stage == soap.AtMoulds {
			seen["moulds"]++
		}
	})
	for _, what := range []string{"lye lye", "lye alkali", "pot oil", "parts oil", "moulds"} {
		if seen[what] < 20 {
			t.Errorf("%s: seen %d times, %v", what, seen[what], seen)
		}
	}
	if len(seen) != 5 {
		t.Errorf("%v", seen)
	}
}

// valueOf is the value of a remedy's oil: of the blend, that of the formula's oils
// in the proportions of the plan.
func valueOf(f soap.Formula, plan soap.Batch, oil string) *big.Rat {
	if oil != soap.Blend {
		return ratioFrac(f.Oils[lineOf(f, oil)].Oil.Saponification().Typical)
	}
	value := new(big.Rat)
	for i, o := range plan.Oils {
		value = plus(value, times(massFrac(o.Total()), ratioFrac(f.Oils[i].Oil.Saponification().Typical)))
	}
	return over(value, massFrac(plan.OilsTotal))
}

// An oil brings the batch, or the part that it is for, back to its own plan, to
// what a nanogram of it does; what the scale can show does so from above.
func TestAnOilBringsTheSuperfatBackToThePlan(t *testing.T) {
	checked := 0
	eachWeighed(t, madeup.New(309), 600, 25, func(t *testing.T, f soap.Formula, plan, b soap.Batch) {
		scale, _ := f.Scales()
		for _, r := range b.Weighed.Remedies {
			if r.Oil == "" {
				continue
			}
			checked++
			part := slices.IndexFunc(plan.Parts, func(p soap.PartBatch) bool { return p.Name == r.Part })
			account := reckon(f, plan, f.Weighed, part)
			want, value := ratioFrac(outlookOf(plan, part).Planned), valueOf(f, plan, r.Oil)
			if got := account.after(massFrac(r.Add.Mass), value); !within(got, want, frac("0.00000001")) {
				t.Errorf("%+v leads to %s, planned is %s", r, got.FloatString(12), want.FloatString(12))
			}
			if got := account.after(massFrac(r.Add.Weigh), value); !within(ratioFrac(r.Superfat.Planned), got,
				frac("0.000000001")) {
				t.Errorf("%+v says it leads to %s, the masses give %s", r, r.Superfat.Planned, got.FloatString(12))
			}
			more := r.Add.Weigh.Sub(r.Add.Mass)
			if more.Sign() < 0 || more.Compare(scale) >= 0 || r.Add.Weigh.Round(scale, units.Nearest) != r.Add.Weigh {
				t.Errorf("%s is weighed as %s on a scale of %s", r.Add.Mass, r.Add.Weigh, scale)
			}
			batter, poured := account.pot, new(big.Rat)
			if part >= 0 {
				batter, poured = massFrac(b.Weighed.Parts[part].Batter), massFrac(b.Weighed.Parts[part].Poured)
			} else {
				poured = plus(batter, minus(massFrac(r.Poured), massFrac(r.Batter)))
			}
			if massFrac(r.Batter).Cmp(plus(batter, massFrac(r.Add.Weigh))) != 0 ||
				massFrac(r.Poured).Cmp(plus(poured, massFrac(r.Add.Weigh))) != 0 {
				t.Errorf("%+v: of batter %s and poured %s", r, batter.FloatString(9), poured.FloatString(9))
			}
		}
	})
	if checked < 200 {
		t.Errorf("%d remedies", checked)
	}
}

// No remedy is more than a quarter of the oils, and one that is less is offered.
func TestNoOilAboveAQuarterIsOffered(t *testing.T) {
	offered, kept := 0, 0
	eachWeighed(t, madeup.New(310), 600, 60, func(t *testing.T, f soap.Formula, plan, b soap.Batch) {
		if b.Weighed.Stage != soap.AtPot || b.Weighed.Lye.Undissolved {
			return
		}
		account := reckon(f, plan, f.Weighed, -1)
		lack := minus(over(account.alkali, minus(whole(1), ratioFrac(plan.Superfat.Planned))), account.demand)
		oils := new(big.Rat)
		for i, o := range plan.Oils {
			oils = plus(oils, massFrac(o.Withheld))
			mass := massFrac(o.Mass)
			for _, read := range f.Weighed.Oils {
				if read.Oil == f.Oils[i].Oil.ID() {
					mass = massFrac(read.Mass)
				}
			}
			oils = plus(oils, mass)
		}
		for _, p := range f.Weighed.Parts { // what is held back was weighed as well
			i := slices.IndexFunc(plan.Parts, func(q soap.PartBatch) bool { return q.Name == p.Part })
			for _, c := range p.Carriers {
				planned := madeup.Carriers(plan.Parts[i])[c.Liquid]
				for j, a := range plan.Parts[i].Additions {
					if a.Carrier != nil && a.Carrier.Name == c.Liquid && a.Carrier.In == soap.InOil && held(asked(f, i)[j].Carrier) {
						mass := massFrac(a.Carrier.Mass)
						oils = plus(oils, minus(over(times(mass, massFrac(c.Mass)), massFrac(planned)), mass))
					}
				}
			}
		}
		quarter := over(oils, whole(4))
		ids := []string{soap.Blend}
		for _, line := range f.Oils {
			if line.Oil.Kind() != soap.Wax {
				ids = append(ids, line.Oil.ID())
			}
		}
		for _, id := range ids {
			add := over(lack, valueOf(f, plan, id))
			is := slices.ContainsFunc(b.Weighed.Remedies, func(r soap.Remedy) bool { return r.Oil == id })
			edge := minus(add, quarter)
			if edge.Abs(edge).Cmp(frac("0.000001")) < 0 || add.Sign() > 0 && add.Cmp(frac("0.000001")) < 0 {
				continue // decided by a nanogram
			}
			if is {
				offered++
			}
			if want := add.Sign() > 0 && add.Cmp(quarter) <= 0; is != want {
				t.Errorf("%s: %s g of a quarter of %s g, offered: %v", id, add.FloatString(6), quarter.FloatString(6), is)
			} else if add.Cmp(quarter) > 0 {
				kept++
			}
		}
	})
	if offered < 50 || kept < 50 {
		t.Errorf("%d offered, %d not", offered, kept)
	}
}

// Done and written down as further weighings, a remedy of the pot gives the plan,
// and there is nothing left to mend.
func TestAnOilOfThePotWrittenDownGivesThePlan(t *testing.T) {
	checked := 0
	eachWeighed(t, madeup.New(311), 500, 25, func(t *testing.T, f soap.Formula, plan, b soap.Batch) {
		if b.Weighed.Stage != soap.AtPot {
			return
		}
		for _, r := range b.Weighed.Remedies {
			g := f
			g.Weighed.Oils = nil
			for i, o := range plan.Oils {
				mass := o.Mass
				for _, read := range f.Weighed.Oils {
					if read.Oil == f.Oils[i].Oil.ID() {
						mass = read.Mass
					}
				}
				switch r.Oil {
				case f.Oils[i].Oil.ID():
					mass = mass.Add(r.Add.Mass)
				case soap.Blend:
					mass = mass.Add(units.Sum{}.Plus(r.Add.Mass, percentOf(t, o.Total(), plan.OilsTotal)).Mass(units.Nearest))
				}
				g.Weighed.Oils = append(g.Weighed.Oils, soap.WeighedOil{Oil: f.Oils[i].Oil.ID(), Mass: mass})
			}
			again, err := g.Batch()
			if errors.Is(err, soap.ErrRange) {
				continue // more than three times a small line's plan
			}
			if err != nil {
				t.Error(err)
				return
			}
			checked++
			if !within(ratioFrac(again.Weighed.Superfat.Planned), ratioFrac(plan.Superfat.Planned), frac("0.00000001")) {
				t.Errorf("%+v leads to %s, planned is %s", r, again.Weighed.Superfat.Planned, plan.Superfat.Planned)
			}
			for _, s := range again.Weighed.Remedies {
				if s.Add.Mass.Compare(units.Milligrams(1)) > 0 {
					t.Errorf("after %+v still %+v", r, s)
				}
			}
		}
	})
	if checked < 150 {
		t.Errorf("%d remedies", checked)
	}
}

// The same for the lye: of what is used its share of alkali and water, and the
// water or alkali that is added.
func TestALyeMendedAndWrittenDownGivesThePlan(t *testing.T) {
	used, made := 0, 0
	m := madeup.New(312)
	eachWeighed(t, m, 800, 25, func(t *testing.T, f soap.Formula, plan, b soap.Batch) {
		if b.Weighed.Stage != soap.AtLye || len(b.Weighed.Remedies) == 0 {
			return
		}
		as := func(a soap.AlkaliWeighing) units.Mass {
			weighing, _ := a.ToWeigh()
			for _, read := range f.Weighed.Alkalis {
				if read.Alkali == a.Alkali {
					return read.Mass
				}
			}
			return weighing.Mass
		}
		water := plan.Water.Mass
		if f.Weighed.Water.Read {
			water = f.Weighed.Water.Mass
		}
		g, r := f, b.Weighed.Remedies[0]
		g.Weighed.Alkalis = nil
		g.Weighed.Parts = slices.Clone(f.Weighed.Parts)
		for i := range g.Weighed.Parts { // what was divided was another pot
			g.Weighed.Parts[i].Batter = soap.Reading{}
		}
		if r.UseLye.Mass.Sign() == 0 && r.AddAlkali.Mass.Sign() == 0 {
			return // water alone
		}
		if r.UseLye.Mass.Sign() != 0 {
			used++
			share := percentOf(t, r.UseLye.Mass, r.OfLye)
			all, asked := water, plan.Water.Mass // of the jug, and the plan's water in it
			for _, l := range plan.Liquids {
				mass, _ := liquidOf(f.Weighed, l)
				all, asked = all.Add(mass), asked.Add(l.Water)
			}
			if r.WaterFirst { // it goes into the jug before a share of that is used
				all = all.Add(r.AddWater.Weigh)
				water = water.Add(r.AddWater.Weigh)
			}
			for _, a := range plan.Alkalis {
				all = all.Add(as(a))
				if a.Strength.Given() {
					asked = asked.Add(a.Stock.Mass.Sub(a.Dry.Mass))
				}
				g.Weighed.Alkalis = append(g.Weighed.Alkalis, soap.WeighedAlkali{Alkali: a.Alkali, Mass: units.Sum{}.Plus(as(a),
					share).Mass(units.Nearest)})
			}
			if r.OfLye != all {
				t.Errorf("the lye is %s, alkali, water and liquids are %s", r.OfLye, all)
			}
			g.Weighed.Water = soap.Read(units.Sum{}.Plus(water, share).Mass(units.Nearest).Add(r.AddWater.Mass))
			if r.WaterFirst {
				g.Weighed.Water = soap.Read(units.Sum{}.Plus(water, share).Mass(units.Nearest))
			}
			// the water per oils is that of the plan again, unless there is too much of it:
			// within what is too little to add, and what two roundings to the scale move
			_, small := f.Scales()
			planned, _ := asked.Per(plan.OilsTotal)
			slack, _ := small.Add(small).Add(small).Per(units.Sum{}.Plus(plan.OilsTotal, units.Percent(50)).Mass(units.Nearest))
			if r.WaterPerOils.Add(slack).Compare(planned) < 0 {
				t.Errorf("water per oils %s after it, planned %s", r.WaterPerOils, planned)
			}
			if floor := plan.Superfat.Planned.Sub(units.MustRatio("0.000001 %")); r.Superfat.Planned.Compare(floor) < 0 {
				t.Errorf("a lye used as offered leaves %s, planned is %s", r.Superfat.Planned, plan.Superfat.Planned)
			}
			if len(plan.Liquids) > 0 {
				return // what is left of them cannot be written down
			}
			if len(b.Weighed.Remedies) != 1 {
				t.Errorf("%+v", b.Weighed.Remedies)
			}
		} else {
			made++
			if len(b.Weighed.Remedies) < len(plan.Alkalis) {
				return // of one of the alkalis less is missing than its scale shows
			}
			for i, a := range plan.Alkalis {
				r := b.Weighed.Remedies[i]
				if r.Alkali != a.Alkali {
					t.Errorf("%+v for %s", r, a.Alkali)
				}
				g.Weighed.Alkalis = append(g.Weighed.Alkalis, soap.WeighedAlkali{
					Alkali: a.Alkali,
					Mass:   as(a).Add(r.AddAlkali.Mass),
				})
			}
		}
		again, err := g.Batch()
		if err != nil {
			t.Errorf("%+v: %v", r, err)
			return
		}
		if !within(ratioFrac(again.Weighed.Superfat.Planned), ratioFrac(plan.Superfat.Planned), frac("0.00000001")) {
			t.Errorf("%+v leads to %s, planned is %s", r, again.Weighed.Superfat.Planned, plan.Superfat.Planned)
		}
	})
	if used < 40 || made < 40 {
		t.Errorf("%d times less lye, %d times more alkali", used, made)
	}
}

// Poured into one of the part's own jugs and written down there, an oil gives the
// part its plan: the only place where a file can say that a part got more oil.
func TestAnOilOfAPartWrittenDownInItsJugGivesThePlan(t *testing.T) {
	checked := 0
	eachWeighed(t, madeup.New(313), 2500, 25, func(t *testing.T, f soap.Formula, plan, b soap.Batch) {
		if b.Weighed.Stage != soap.AtParts {
			return
		}
		for _, r := range b.Weighed.Remedies {
			i := slices.IndexFunc(plan.Parts, func(p soap.PartBatch) bool { return p.Name == r.Part })
			jug, found := madeup.Carriers(plan.Parts[i])[r.Oil]
			if !found {
				continue
			}
			at := slices.IndexFunc(f.Weighed.Parts, func(p soap.WeighedPart) bool { return p.Part == r.Part })
			read := soap.WeighedPart{Part: r.Part}
			g := f
			g.Weighed.Parts = slices.Clone(f.Weighed.Parts)
			if at < 0 {
				at, g.Weighed.Parts = len(g.Weighed.Parts), append(g.Weighed.Parts, read)
			}
			g.Weighed.Parts[at].Carriers = slices.Clone(g.Weighed.Parts[at].Carriers)
			carriers := &g.Weighed.Parts[at].Carriers
			if j := slices.IndexFunc(*carriers, func(c soap.WeighedCarrier) bool { return c.Liquid == r.Oil }); j >= 0 {
				(*carriers)[j].Mass = (*carriers)[j].Mass.Add(r.Add.Mass)
			} else {
				*carriers = append(*carriers, soap.WeighedCarrier{Liquid: r.Oil, Mass: jug.Add(r.Add.Mass)})
			}
			again, err := g.Batch()
			if errors.Is(err, soap.ErrRange) {
				continue // more than three times a small jug's plan
			}
			if err != nil {
				t.Error(err)
				return
			}
			checked++
			if got, want := again.Weighed.Parts[i].Superfat.Planned, plan.Parts[i].Superfat.Planned; !within(ratioFrac(got),
				ratioFrac(want), frac("0.00000001")) {
				t.Errorf("%+v leads to %s, planned is %s", r, got, want)
			}
		}
	})
	if checked < 20 {
		t.Errorf("%d remedies", checked)
	}
}

// The smallest plan that keeps its promise, acids, liquids and stock included.
func TestAtLeastKeepsItsPromiseOnABench(t *testing.T) {
	worst := func(f soap.Formula, b soap.Batch) *big.Rat {
		var least *big.Rat
		for part := -1; part < len(b.Parts); part++ {
			if low := superfatAt(scales(f, b, soap.Weighed{}, part), -1); least == nil || low.Cmp(least) < 0 {
				least = low
			}
		}
		return least
	}
	step := units.MustRatio("0.000001 %")
	m := madeup.Ranged(314)
	made := 0
	for i := range 60 {
		f := m.Benched()
		for j := range f.Water.Liquids {
			if l := &f.Water.Liquids[j]; l.Fat.Sign() > 0 {
				l.Saponification = madeup.Span(218, 226, 235)
			}
		}
		for j := range f.Acids {
			f.Acids[j].Compensate = soap.Compensated // one that is not raises what is asked for
		}
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
		if got := worst(f, b); got.Cmp(ratioFrac(floor)) < 0 {
			t.Errorf("formula %d: planned at %s, worst case %s, below %s", i, b.Superfat.Planned, got.FloatString(15), floor)
		}
		f.Superfat = soap.Superfat{Planned: b.Superfat.Planned.Sub(step)}
		below, err := f.Batch()
		if err != nil {
			t.Fatal(err)
		}
		if got := worst(f, below); got.Cmp(ratioFrac(floor)) >= 0 {
			t.Errorf("formula %d: 0.000001 %% below %s the worst case is still %s, %s or more", i, b.Superfat.Planned,
				got.FloatString(15), floor)
		}
	}
	if made < 40 {
		t.Errorf("%d of 60 formulas could be made, want 40", made)
	}
}

// Whatever a program writes into a formula, it gets a batch or faults.
func TestNothingOnABenchPanics(t *testing.T) {
	m := madeup.New(315)
	masses := []units.Mass{
		{},
		units.Grams(-1), units.Milligrams(1), units.Grams(1), units.Grams(units.Tonne),
		units.Sum{}.Plus(units.Grams(units.Tonne), units.Whole(3)).Mass(units.Nearest),
	}
	ratios := []units.Ratio{
		{},
		units.Whole(0), units.Whole(-1), units.Percent(1), units.Percent(99), units.Whole(1),
		units.Whole(2),
	}
	names := []string{"", "olive", "whole", "part 1", "water", "glycerin", "hall milk 1", "a.b[0]", "\xff"}
	mass := func() units.Mass { return masses[m.IntN(len(masses))] }
	ratio := func() units.Ratio { return ratios[m.IntN(len(ratios))] }
	name := func() string { return names[m.IntN(len(names))] }
	refused, worked := 0, 0
	for range 3000 {
		f := m.Benched()
		for range m.Between(1, 3) {
			switch m.IntN(9) {
			case 0:
				f.Acids = append(f.Acids, soap.AcidLine{})
			case 1:
				if len(f.Acids) > 0 {
					f.Acids[0].Load, f.Acids[0].Strength = soap.Load{OfBatter: ratio()}, units.Range{
						Low: ratio(), Typical: ratio(),
						High: ratio(),
					}
				}
			case 2:
				if len(f.Water.Liquids) > 0 {
					l := &f.Water.Liquids[0]
					l.Share, l.Mass, l.Water, l.Fat, l.Alcohol = ratio(), mass(), ratio(), ratio(), ratio()
				}
			case 3:
				f.Alkalis[0].Stock = units.Range{Low: ratio(), Typical: ratio(), High: ratio()}
			case 4:
				f.Weighed.Stage, f.Weighed.Water = soap.Stage(m.IntN(6)), soap.Read(mass())
			case 5:
				f.Weighed.Stage = madeup.Stages()[m.IntN(4)]
				for _, line := range f.Oils {
					f.Weighed.Oils = append(f.Weighed.Oils, soap.WeighedOil{Oil: line.Oil.ID(), Mass: mass()})
				}
			case 6:
				f.Weighed.Stage = madeup.Stages()[m.IntN(4)]
				f.Weighed.Alkalis = append(f.Weighed.Alkalis, soap.WeighedAlkali{Alkali: soap.Alkali(m.IntN(4)), Mass: mass()})
			case 7:
				f.Weighed.Stage = madeup.Stages()[m.IntN(4)]
				f.Weighed.Parts = append(f.Weighed.Parts, soap.WeighedPart{
					Part: name(), Batter: soap.Read(mass()),
					Carriers: []soap.WeighedCarrier{{Liquid: name(), Mass: mass()}},
				})
			default:
				f.Temperature = soap.Temperatures{
					Lye:   units.Celsius(m.Between(-10, 110)),
					Water: units.Celsius(m.Between(-10, 110)), Oils: units.Celsius(m.Between(-10, 110)),
				}
			}
		}
		b, err := f.Batch()
		if err != nil {
			refused++
			faultsOf(t, err)
			continue
		}
		worked++
		if _, err := b.MarshalJSON(); err != nil {
			t.Errorf("%+v: %v", f, err)
		}
		for _, finding := range b.Findings {
			if message := finding.Message(); !isSentence(message) {
				t.Errorf("%q", message)
			}
		}
	}
	if refused < 500 || worked < 300 {
		t.Errorf("%d refused, %d worked out", refused, worked)
	}
}
