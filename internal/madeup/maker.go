// Package madeup makes valid formulas up for tests: the same ones from the same seed,
// today and on every machine. Tests of several rooms draw from it, so that what holds of
// a batch in one is asked of the same batches in the others. Only tests import it, and a
// test holds that, so that nobody who imports the library compiles it.
//
// A [Maker] makes formulas of growing scope: [Maker.Formula] is oils, alkalis, water,
// parts and what is added to them; [Maker.Benched] adds acids, liquids and stock lyes;
// [Maker.Shelved] fills vessels, and [Maker.Promised] promises a least superfat besides;
// [Maker.Scented] and [Maker.Coloured] judge what is added: a maker's own fragrances,
// pigments, swatches, loads that are looked for. [Maker.Any] is one of them all, at times
// with weighings ([Maker.Weigh]). [Text] writes a formula as a file.
//
// What is made up means nothing: no figure here is one of a real lot, and names are of
// our own lantern walk.
package madeup

import (
	"errors"
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// Maker makes valid formulas up. It is for one goroutine.
type Maker struct {
	*rand.Rand
	pool    []soap.Oil // what formulas are made of
	outside []soap.Oil // what else may fill a jug
	ranged  bool       // every figure has a range, so that a worst case can be promised
}

// New gives a maker of everything: oils with a range and without, waxes, free
// acids, own values, and a built-in oil with a replaced value, whose jug is
// asked for by the built-in one.
func New(seed uint64) *Maker {
	m := &Maker{Rand: rand.New(rand.NewPCG(seed, 7))}
	for _, id := range []string{"olive", "shea-butter", "palm-kernel", "beeswax", "stearic-acid-50", "goose-fat"} {
		m.pool = append(m.pool, builtIn(id))
	}
	m.pool = append(m.pool,
		must(builtIn("coconut").WithSaponification(Span(250, 256, 262))),
		must(soap.OwnOil{ID: "plain-lot", Saponification: units.Exactly(units.MilligramsPerGram(193))}.Oil()))
	m.outside = []soap.Oil{builtIn("sunflower"), builtIn("neem"), builtIn("castor")}
	return m
}

// Ranged gives a maker of formulas all of whose oils, alkalis and solutions have a range.
func Ranged(seed uint64) *Maker {
	m := New(seed)
	m.ranged = true
	m.pool = slices.DeleteFunc(m.pool, func(o soap.Oil) bool { return !o.HasRange() || o.Kind() == soap.Wax })
	m.outside = slices.DeleteFunc(m.outside, func(o soap.Oil) bool { return !o.HasRange() })
	return m
}

// Each works n made-up formulas out and hands each to a check. A formula that no
// pot can make (carriers that take more than there is) is passed over; few may
// be.
func Each(t *testing.T, formula func() soap.Formula, n int, check func(t *testing.T, f soap.Formula, b soap.Batch)) {
	t.Helper()
	made := 0
	for i := range n {
		f := formula()
		b, err := f.Batch()
		if errors.Is(err, soap.ErrImpossible) {
			continue
		}
		if err != nil {
			t.Fatalf("formula %d: %v", i, err)
		}
		made++
		before := t.Failed()
		check(t, f, b)
		if t.Failed() && !before {
			t.Fatalf("formula %d of this seed: %+v", i, f)
		}
	}
	if made < n*8/10 {
		t.Errorf("%d of %d formulas could be made, want eight in ten", made, n)
	}
}

// Between gives a whole number, both ends with it.
func (m *Maker) Between(low, high int) int { return low + m.IntN(high-low+1) }

// exactly gives a range of no width, of a maker of ranges one of half a percent below.
func (m *Maker) exactly(r units.Ratio) units.Range {
	if m.ranged {
		return units.Range{Low: r.Sub(Basis(50)), Typical: r, High: r}
	}
	return units.Exactly(r)
}

// Basis gives so many hundredths of a percent.
func Basis(n int) units.Ratio { return units.Whole(n).Over(units.Whole(10000)) }

// Span gives saponification values in mg KOH/g.
func Span(low, typical, high int) units.Range {
	return units.Range{Low: units.MilligramsPerGram(low), Typical: units.MilligramsPerGram(typical), High: units.MilligramsPerGram(high)}
}

// About is how much a formula makes, more or less.
func About(f soap.Formula) units.Mass {
	size := f.Size.Oils.Add(f.Size.Batter)
	for _, line := range f.Oils {
		size = size.Add(line.Mass)
	}
	return size
}

// Formula is one of oils, alkalis, water and parts, sized by oils or batter.
func (m *Maker) Formula() soap.Formula {
	f := soap.Formula{Name: "Lantern walk trial"}
	size := units.Milligrams(m.Between(300_000, 5_000_000))

	// The first oil always demands alkali; the others may be anything.
	pool := slices.Clone(m.pool)
	m.Shuffle(len(pool), func(i, j int) { pool[i], pool[j] = pool[j], pool[i] })
	first := slices.IndexFunc(pool, func(o soap.Oil) bool { return o.Kind() != soap.Wax })
	pool[0], pool[first] = pool[first], pool[0]
	n := m.Between(1, 5)
	shares := m.shares(n, 1000)
	byMass := m.IntN(4) == 0
	for i := range n {
		line := soap.OilLine{Oil: pool[i], Share: shares[i]}
		if byMass {
			line = soap.OilLine{Oil: pool[i], Mass: units.Sum{}.Plus(size, shares[i]).Mass(units.Nearest)}
		}
		f.Oils = append(f.Oils, line)
	}
	if !byMass {
		if m.IntN(2) == 0 {
			i := m.IntN(n)
			f.Oils[i] = soap.OilLine{Oil: pool[i], Rest: true}
		}
		if m.IntN(2) == 0 {
			f.Size.Oils = size
		} else {
			f.Size.Batter = size
		}
	}
	f.Alkalis = m.alkalis()
	f.Superfat.Planned = Basis(m.Between(0, 1500))
	switch m.IntN(3) {
	case 0:
		f.Water.LyeConcentration = Basis(m.Between(2400, 3400))
	case 1:
		f.Water.PerAlkali = units.Whole(m.Between(200, 320)).Over(units.Whole(100))
	default:
		f.Water.PerOils = Basis(m.Between(3000, 4500))
	}
	divisions := []units.Mass{{}, units.Milligrams(1), units.Milligrams(10), units.Grams(1)}
	f.Scale, f.Small = divisions[m.IntN(4)], divisions[m.IntN(4)]
	if parts := m.IntN(5); parts > 0 {
		shares := m.shares(parts, 1000)
		for i := range parts {
			f.Parts = append(f.Parts, m.part(&f, "part "+strconv.Itoa(i+1), shares[i], size))
		}
		if m.IntN(2) == 0 {
			i := m.IntN(parts)
			f.Parts[i].Share, f.Parts[i].Rest = units.Ratio{}, true
		}
	}
	return f
}

// shares splits a whole into shares of a hundredth of a percent.
func (m *Maker) shares(n, least int) []units.Ratio {
	left := 10000 - n*least
	shares := make([]units.Ratio, n)
	for i := range shares {
		part := left
		if i < n-1 {
			part = m.IntN(left + 1)
		}
		left -= part
		shares[i] = Basis(least + part)
	}
	m.Shuffle(n, func(i, j int) { shares[i], shares[j] = shares[j], shares[i] })
	return shares
}

func (m *Maker) alkalis() []soap.AlkaliLine {
	soda := soap.AlkaliLine{Alkali: soap.SodiumHydroxide}
	switch m.IntN(3) {
	case 0:
		soda.Purity = m.exactly(Basis(m.Between(9500, 9950)))
	case 1:
		soda.Purity = units.Between(units.Percent(97), units.Percent(99))
	} // else none given
	potash := soap.AlkaliLine{Alkali: soap.PotassiumHydroxide, Purity: units.Range{Low: units.Percent(88), Typical: units.Percent(90), High: units.Percent(91)}}
	switch m.IntN(4) {
	case 0:
		return []soap.AlkaliLine{potash}
	case 1:
		soda.Saponifies = Basis(m.Between(500, 9500))
		potash.Saponifies = soda.Saponifies.Rest()
		return []soap.AlkaliLine{soda, potash}
	}
	return []soap.AlkaliLine{soda}
}

func (m *Maker) part(f *soap.Formula, name string, share units.Ratio, size units.Mass) soap.Part {
	p := soap.Part{Name: name, Share: share}
	for i := range m.IntN(4) {
		a := soap.Addition{Name: "trial " + strconv.Itoa(i+1)}
		switch m.IntN(3) {
		case 0:
			a.Load.OfOils = Basis(m.Between(10, 150))
		case 1:
			a.Load.OfBatter = Basis(m.Between(10, 100))
		default:
			a.Load.Mass = units.Sum{}.Plus(size, Basis(m.Between(1, 20))).Mass(units.Nearest)
		}
		a.Carrier = m.carrier(f)
		switch m.IntN(3) {
		case 0:
			a.Unlisted = true
			p.Colourants = append(p.Colourants, a)
		case 1:
			a.Unlisted = true
			p.Fragrances = append(p.Fragrances, a)
		default:
			p.Additives = append(p.Additives, a)
		}
	}
	return p
}

func (m *Maker) carrier(f *soap.Formula) soap.Carrier {
	c := soap.Carrier{Ratio: units.Whole(m.Between(50, 350)).Over(units.Whole(100))}
	froms := []soap.From{soap.Usual, soap.FromFormula, soap.Extra}
	switch m.IntN(5) {
	case 0:
		return soap.Carrier{}
	case 1:
		c.In, c.From = soap.InWater, froms[m.IntN(3)]
	case 2:
		c.In, c.From = soap.InGlycerin, froms[2*m.IntN(2)]
	case 3:
		c.In, c.Oil, c.From = soap.InOil, f.Oils[m.IntN(len(f.Oils))].Oil, froms[m.IntN(3)]
		if plain, err := soap.LookUpOil(c.Oil.ID()); err == nil {
			c.Oil = plain // without a replaced value: the formula's must be taken
		}
	default:
		c.In, c.Oil, c.From = soap.InOil, m.outside[m.IntN(len(m.outside))], froms[2*m.IntN(2)]
	}
	return c
}

func builtIn(id string) soap.Oil { return must(soap.LookUpOil(id)) }

// must gives what is right by the way it is written here.
func must[T any](value T, err error) T {
	if err != nil {
		panic(err)
	}
	return value
}
