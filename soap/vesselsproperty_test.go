package soap_test

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"example.com/lyewright/internal/madeup"
	"example.com/lyewright/soap"
	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

// filledParts are those that fill vessels.
func filledParts(f soap.Formula) map[int]bool {
	filled := map[int]bool{}
	for _, v := range f.Size.Vessels {
		for part := range sharesOf(f, v) {
			filled[part] = true
		}
	}
	return filled
}

// Of every part what is poured is filled, kept back and lost, to the nanogram; what is
// kept back is its share of what is filled.
func TestNothingIsLostBetweenPotAndMoulds(t *testing.T) {
	madeup.Each(t, madeup.New(401).Shelved, 500, func(t *testing.T, f soap.Formula, b soap.Batch) {
		var filled, reserve, loss, poured units.Mass
		for i, p := range b.Parts {
			if got := sum(p.Filled, p.Reserve, p.Loss); got != p.Poured {
				t.Errorf("%s: %s + %s + %s is %s, poured %s", p.Name, p.Filled, p.Reserve, p.Loss, got, p.Poured)
			}
			filled, reserve, loss, poured = filled.Add(p.Filled), reserve.Add(p.Reserve), loss.Add(p.Loss), poured.Add(p.Poured)
			want := units.Percent(5) // usual
			if len(f.Parts) > 0 {
				if f.Parts[i].Work == mould.Piped {
					want = units.Percent(15)
				}
				want = f.Parts[i].Reserve.Or(want)
				if p.Loss != f.Parts[i].Loss {
					t.Errorf("%s: loses %s, asked %s", p.Name, p.Loss, f.Parts[i].Loss)
				}
			}
			if !within(massFrac(p.Reserve), times(massFrac(p.Filled), ratioFrac(want)), frac("0.000000001")) {
				t.Errorf("%s: %s kept back of %s, asked %s", p.Name, p.Reserve, p.Filled, want)
			}
		}
		if b.Filled != filled || b.Reserve != reserve || b.Loss != loss || b.Poured != poured || sum(b.Filled, b.Reserve, b.Loss) != b.Poured {
			t.Errorf("the batch: %s + %s + %s, poured %s", b.Filled, b.Reserve, b.Loss, b.Poured)
		}
	})
}

// The batch, summed up afresh from its masses and densities, fills its vessels.
func TestEveryVesselIsFullOfWhatWasSummedUpAfresh(t *testing.T) {
	check := func(t *testing.T, f soap.Formula, b soap.Batch) {
		// Densities are handed out to 10^-9 g/mL: half of that is 0.6 × 10^-9 of an oil's.
		const tolerance = 1e-9
		const nanolitre = 1e-6 // in millilitres
		s := sumUp(t, b)
		if got := b.Volumes.Density.Float(); off(got, s.batter) > tolerance {
			t.Errorf("batter of %v g/mL, summed up %.12f", got, s.batter)
		}
		if got, want := b.Volumes.Pot.Millilitres(), b.Batter.Grams()/s.batter; math.Abs(got-want) > nanolitre+tolerance*want {
			t.Errorf("%v mL in the pot, summed up %.9f", got, want)
		}
		takes, holds := s.takes(t, f)
		filled := filledParts(f)
		for i, p := range b.Parts {
			if got := p.Density.Float(); off(got, s.density[i]) > tolerance {
				t.Errorf("%s: %v g/mL, summed up %.12f", p.Name, got, s.density[i])
			}
			if got := p.Volume.Millilitres(); math.Abs(got-s.volume[i]) > nanolitre+tolerance*s.volume[i] {
				t.Errorf("%s: %v mL, summed up %.9f", p.Name, got, s.volume[i])
			}
			if filled[i] && off(p.Filled.Grams(), takes[i]) > tolerance {
				t.Errorf("%s: %s filled, its vessels take %.9f g", p.Name, p.Filled, takes[i])
			}
		}
		cavities, cuts := cavitiesOf(f)
		inAll, at := 0, 0
		for i, v := range f.Size.Vessels {
			if v.On == "" {
				inAll += v.Count * cuts[i]
			}
			for range max(1, len(v.Layers)) {
				p := b.Pieces[at]
				at++
				if p.Vessel != v.Name || p.Top != (v.On != "") || p.Count != cavities[i]*cuts[i] || p.Filled != p.Count || p.Short.Sign() != 0 {
					t.Errorf("%+v of %+v", p, v)
				}
				part := max(0, slices.IndexFunc(b.Parts, func(q soap.PartBatch) bool { return q.Name == p.Part }))
				want := holds[i] / float64(cuts[i]) * sharesOf(f, v)[part]
				if got := p.Volume.Millilitres(); math.Abs(got-want) > nanolitre+tolerance*want {
					t.Errorf("%s: %v mL in a piece, by hand %.9f", v.Name, got, want)
				}
				fresh := want * s.density[part]
				if at == len(b.Pieces) || b.Pieces[at].Vessel != v.Name {
					for _, e := range f.Embeds {
						if e.Vessel == v.Name {
							fresh += float64(max(1, e.Each)) * (e.Mass.Grams() + e.Volume.Millilitres()*s.batter)
						}
					}
					for _, topping := range f.Toppings {
						if topping.Vessel == v.Name {
							fresh += topping.Mass.Grams()
						}
					}
				}
				if got := p.Fresh.Grams(); off(got, fresh) > 5e-9 {
					t.Errorf("%s: %v g in a piece, by hand %.9f", v.Name, got, fresh)
				}
			}
		}
		if at != len(b.Pieces) || b.PiecesInAll() != inAll {
			t.Errorf("%d of %d lines, %d pieces in all, want %d", at, len(b.Pieces), b.PiecesInAll(), inAll)
		}
	}
	madeup.Each(t, madeup.New(402).Shelved, 600, check)
	madeup.Each(t, madeup.Ranged(403).Promised, 120, check)
}

// settled is the formula that a batch from vessels answers: its oils and its parts'
// shares, and no vessels.
func settled(f soap.Formula, b soap.Batch) soap.Formula {
	f.Size = soap.Size{Oils: b.OilsTotal}
	f.Parts, f.Embeds, f.Toppings = slices.Clone(f.Parts), nil, nil
	for i := range f.Parts {
		f.Parts[i].Share = b.Parts[i].Share
	}
	return f
}

func TestWithItsOilsAndSharesWrittenDownItIsTheSameBatch(t *testing.T) {
	check := func(t *testing.T, f soap.Formula, b soap.Batch) {
		same, err := settled(f, b).Batch()
		if err != nil {
			t.Error(err)
			return
		}
		sameMasses(t, same, b, 1, 0)
		for i, p := range b.Parts {
			// Without vessels, reserve or loss nothing is divided.
			if q := same.Parts[i]; q.Filled.Sign() != 0 && (q.Filled != p.Filled || q.Reserve != p.Reserve || q.Loss != p.Loss) {
				t.Errorf("%s: %s, %s, %s; was %s, %s, %s", p.Name, q.Filled, q.Reserve, q.Loss, p.Filled, p.Reserve, p.Loss)
			}
			sameOutlook(t, same.Parts[i].Superfat, p.Superfat, "0")
		}
		sameOutlook(t, same.Superfat, b.Superfat, "0")
	}
	madeup.Each(t, madeup.New(404).Shelved, 300, check)
	madeup.Each(t, madeup.Ranged(405).Promised, 100, check)
}

// Asked backwards how far its own oils go, a batch fills what it was made for.
func TestAskedBackwardsTheAnswerFillsItsVessels(t *testing.T) {
	madeup.Each(t, madeup.New(406).Shelved, 300, func(t *testing.T, f soap.Formula, b soap.Batch) {
		back := settled(f, b)
		back.Size.Vessels, back.Embeds, back.Toppings = f.Size.Vessels, f.Embeds, f.Toppings
		far, err := back.Batch()
		if err != nil {
			t.Error(err)
			return
		}
		sameMasses(t, far, b, 1, 0)
		if far.PiecesInAll() != b.PiecesInAll() || len(far.Pieces) != len(b.Pieces) {
			t.Fatalf("%d pieces in %d lines, was %d in %d", far.PiecesInAll(), len(far.Pieces), b.PiecesInAll(), len(b.Pieces))
		}
		_, cuts := cavitiesOf(f)
		cut := map[string]int{}
		for i, v := range f.Size.Vessels {
			cut[v.Name] = cuts[i]
		}
		for i, p := range far.Pieces {
			want := b.Pieces[i]
			// Contents are whole nanograms: half of one for each of 5000 cavities, of two or
			// three vessels.
			short := p.Filled == p.Count-cut[p.Vessel] && p.Short.Compare(units.Nanograms(20_000)) < 0
			if p.Count != want.Count || p.Fresh.Sub(want.Fresh).Compare(units.Mass{}) != 0 && off(p.Fresh.Grams(), want.Fresh.Grams()) > 1e-8 || p.Filled != p.Count && !short {
				t.Errorf("%+v, forwards %+v", p, want)
			}
		}
	})
}

func TestTheOrderOfVesselsDoesNotMatter(t *testing.T) {
	m := madeup.New(407)
	madeup.Each(t, m.Shelved, 200, func(t *testing.T, f soap.Formula, b soap.Batch) {
		f.Size.Vessels = slices.Clone(f.Size.Vessels)
		m.Shuffle(len(f.Size.Vessels), func(i, j int) {
			f.Size.Vessels[i], f.Size.Vessels[j] = f.Size.Vessels[j], f.Size.Vessels[i]
		})
		other, err := f.Batch()
		if err != nil {
			t.Error(err)
			return
		}
		sameMasses(t, other, b, 1, 50) // a float64 sums in another order: 10^-13 of some hundred kilograms at most
		if other.PiecesInAll() != b.PiecesInAll() {
			t.Errorf("%d pieces, was %d", other.PiecesInAll(), b.PiecesInAll())
		}
	})
}

// withoutMasses takes out of a formula what does not grow with it.
func withoutMasses(f soap.Formula) soap.Formula {
	f.Parts, f.Acids, f.Water.Liquids = slices.Clone(f.Parts), slices.Clone(f.Acids), slices.Clone(f.Water.Liquids)
	for i := range f.Acids {
		if f.Acids[i].Load.Mass.Sign() > 0 {
			f.Acids[i].Load = soap.Load{OfOils: madeup.Basis(80)}
		}
	}
	for i := range f.Water.Liquids {
		if f.Water.Liquids[i].Mass.Sign() > 0 {
			f.Water.Liquids[i].Mass, f.Water.Liquids[i].Share = units.Mass{}, madeup.Basis(500)
		}
	}
	for i := range f.Parts {
		p := &f.Parts[i]
		p.Loss = units.Mass{}
		for _, list := range []*[]soap.Addition{&p.Colourants, &p.Fragrances, &p.Additives} {
			*list = slices.Clone(*list)
			for j := range *list {
				if (*list)[j].Load.Mass.Sign() > 0 {
					(*list)[j].Load = soap.Load{OfOils: madeup.Basis(70)}
				}
			}
		}
	}
	return f
}

func TestTwiceTheVesselsTakeTwiceTheOils(t *testing.T) {
	m := madeup.New(408)
	madeup.Each(t, func() soap.Formula { return withoutMasses(m.Shelved()) }, 300, func(t *testing.T, f soap.Formula, b soap.Batch) {
		f.Size.Vessels = slices.Clone(f.Size.Vessels)
		for i := range f.Size.Vessels {
			f.Size.Vessels[i].Count *= 2
			if v := f.Size.Vessels[i]; v.Count*max(1, v.Cuts) > mould.Most {
				return
			}
		}
		twice, err := f.Batch()
		if err != nil {
			t.Error(err)
			return
		}
		// Some thirty lines, each rounded once on either side.
		const rounding = 60e-9 // g
		if math.Abs(twice.OilsTotal.Grams()-2*b.OilsTotal.Grams()) > rounding {
			t.Errorf("%s of oils, half of it takes %s", twice.OilsTotal, b.OilsTotal)
		}
		for i, p := range twice.Parts {
			if math.Abs(p.Filled.Grams()-2*b.Parts[i].Filled.Grams()) > rounding {
				t.Errorf("%s: %s, half of it takes %s", p.Name, p.Filled, b.Parts[i].Filled)
			}
		}
	})
}

// So many pieces are those counts, each up to the next whole one, and nothing else.
func TestScalingIsCountingOtherwise(t *testing.T) {
	m := madeup.New(409)
	madeup.Each(t, m.Shelved, 250, func(t *testing.T, f soap.Formula, b soap.Batch) {
		pieces := b.PiecesInAll()
		asked := m.Between(max(1, pieces/3), min(mould.Most, 2*pieces))
		scaled := f
		scaled.Size.Pieces = asked
		got, err := scaled.Batch()
		counted := f
		counted.Size.Vessels = slices.Clone(f.Size.Vessels)
		inAll := 0
		for i := range counted.Size.Vessels {
			v := &counted.Size.Vessels[i]
			if v.On == "" {
				v.Count = (v.Count*asked + pieces - 1) / pieces
				inAll += v.Count * max(1, v.Cuts)
			}
		}
		want, err2 := counted.Batch()
		if (err == nil) != (err2 == nil) {
			t.Errorf("%d of %d pieces: %v; counted so: %v", asked, pieces, err, err2)
		}
		if err != nil || err2 != nil {
			return
		}
		sameMasses(t, got, want, 1, 0)
		if got.PiecesInAll() != inAll || inAll < asked || !reflect.DeepEqual(got.Pieces, want.Pieces) || !slices.Equal(got.Embeds, want.Embeds) || !slices.Equal(got.Toppings, want.Toppings) {
			t.Errorf("%d pieces of %d asked: %+v, counted so %+v", got.PiecesInAll(), asked, got.Pieces, want.Pieces)
		}
	})
}

// One vessel more fills more of its own part; the others fill what they filled.
func TestOneVesselMoreRaisesItsPartAlone(t *testing.T) {
	m := madeup.New(410)
	madeup.Each(t, m.Shelved, 250, func(t *testing.T, f soap.Formula, b soap.Batch) {
		f.Size.Vessels = slices.Clone(f.Size.Vessels)
		grown := max(0, m.IntN(max(1, len(f.Parts))))
		part := ""
		if len(f.Parts) > 0 {
			if part = f.Parts[grown].Name; f.Parts[grown].Share.Given() {
				return
			}
		}
		f.Size.Vessels = append(f.Size.Vessels, soap.Vessel{Name: "one more", Part: part, Count: 2, Shape: mould.Measured{Content: units.Millilitres(40)}})
		more, err := f.Batch()
		if err != nil {
			t.Error(err)
			return
		}
		filled := filledParts(f)
		for i, p := range more.Parts {
			was := b.Parts[i]
			got, want := p.Filled.Grams(), was.Filled.Grams()
			switch {
			case i == grown:
				// 80 mL of it; what else it fills may grow denser or lighter by a little.
				if rise := (got - want) / (80 * p.Density.Float()); rise < 0.9 || rise > 1.1 {
					t.Errorf("%s: %s, was %s: %.4f of what was added", p.Name, p.Filled, was.Filled, rise)
				}
			case !filled[i]: // its share of all of the batter
				if p.Batter.Compare(was.Batter) <= 0 {
					t.Errorf("%s: %s of batter, was %s", p.Name, p.Batter, was.Batter)
				}
			case off(got/p.Density.Float(), want/was.Density.Float()) > 0.002:
				t.Errorf("%s: %s of %s, was %s of %s", p.Name, p.Filled, p.Density, was.Filled, was.Density)
			}
		}
		if more.OilsTotal.Compare(b.OilsTotal) <= 0 || more.PiecesInAll() != b.PiecesInAll()+2 {
			t.Errorf("%s of oils and %d pieces, was %s and %d", more.OilsTotal, more.PiecesInAll(), b.OilsTotal, b.PiecesInAll())
		}
	})
}

// Where moulds are short every batch but the last is the one that fits them, and the
// last makes what is left.
func TestSeveralBatchesMakeAllPieces(t *testing.T) {
	several := 0
	m := madeup.New(411)
	check := func(t *testing.T, f soap.Formula, _ soap.Batch) {
		f.Size.Vessels = slices.Clone(f.Size.Vessels)
		batches := 1
		for i := range f.Size.Vessels {
			if v := &f.Size.Vessels[i]; v.On == "" && v.Count > 1 && m.IntN(2) == 0 {
				v.Moulds = m.Between(1, v.Count)
				batches = max(batches, (v.Count+v.Moulds-1)/v.Moulds)
			}
		}
		b, err := f.Batch()
		if err != nil {
			return // a last batch too small for what is loaded by mass
		}
		if b.Batches != batches || (b.Last != nil) != (batches > 1) {
			t.Errorf("%d batches, the last %+v, want %d", b.Batches, b.Last, batches)
		}
		if b.Last == nil {
			return
		}
		several++
		one, last := f, f
		one.Superfat, last.Superfat = soap.Superfat{Planned: b.Worked}, soap.Superfat{Planned: b.Worked}
		one.Size.Vessels, last.Size.Vessels, last.Parts, last.Embeds, last.Toppings = slices.Clone(f.Size.Vessels), nil, nil, nil, nil
		for i := range one.Size.Vessels {
			v := &one.Size.Vessels[i]
			left := 0
			if v.On == "" {
				at := slices.IndexFunc(b.Pieces, func(p soap.Piece) bool { return p.Vessel == v.Name })
				filled := b.Pieces[at].Filled / max(1, v.Cuts)
				if v.Moulds > 0 && filled > v.Moulds || filled < 1 || filled*batches < v.Count {
					t.Errorf("%s: %d batches of %d for %d, in %d moulds", v.Name, batches, filled, v.Count, v.Moulds)
				}
				left = max(0, v.Count-(batches-1)*filled)
				v.Count, v.Moulds = filled, 0
			}
			rest := *v
			rest.Count = left
			last.Size.Vessels = append(last.Size.Vessels, rest)
		}
		last.Size.Vessels = slices.DeleteFunc(last.Size.Vessels, func(v soap.Vessel) bool { return v.On == "" && v.Count == 0 })
		last.Size.Vessels = slices.DeleteFunc(last.Size.Vessels, func(v soap.Vessel) bool {
			return v.On != "" && !slices.ContainsFunc(last.Size.Vessels, func(w soap.Vessel) bool { return w.Name == v.On })
		})
		for _, p := range f.Parts {
			fills := slices.ContainsFunc(last.Size.Vessels, func(v soap.Vessel) bool {
				return v.Part == p.Name || slices.ContainsFunc(v.Layers, func(l soap.Layer) bool { return l.Part == p.Name })
			})
			if fills || p.Share.Given() {
				last.Parts = append(last.Parts, p)
			}
		}
		for _, e := range f.Embeds {
			if slices.ContainsFunc(last.Size.Vessels, func(v soap.Vessel) bool { return v.Name == e.Vessel }) {
				last.Embeds = append(last.Embeds, e)
			}
		}
		same, err := one.Batch()
		if err != nil {
			t.Error(err)
			return
		}
		// Of two promises a step of 0.000001 % apart each may make a size that asks for the
		// other; the masses then follow one and the superfat the other.
		apart := int64(0)
		if f.Superfat.AtLeast.Given() {
			apart = int64(10 * b.Poured.Grams())
		}
		sameMasses(t, same, b, 1, apart)
		end, err := last.Batch()
		if err != nil {
			t.Error(err)
			return
		}
		if b.Last.Oils != end.OilsTotal || b.Last.Poured != end.Poured || len(b.Last.Pieces) != len(end.Pieces) {
			t.Errorf("the last batch: %s of oils, %s poured, %d lines; by itself %s, %s, %d", b.Last.Oils, b.Last.Poured, len(b.Last.Pieces), end.OilsTotal, end.Poured, len(end.Pieces))
		}
	}
	madeup.Each(t, m.Shelved, 400, check)
	madeup.Each(t, madeup.Ranged(412).Promised, 80, check) // the last batch keeps the superfat of the others
	if several < 100 {
		t.Errorf("%d of several batches", several)
	}
}
