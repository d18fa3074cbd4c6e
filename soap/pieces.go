package soap

import (
	"slices"

	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

// Volumes are those of a batch at the temperature it is poured at: estimates, that
// take every volume as the sum of its parts' and know of no air. A trial of the
// maker's own is better.
type Volumes struct {
	At      units.Temperature // as the formula has it, or 40 °C
	Density units.Density     // of what is in the pot
	// Spread is how far off Density may be either way, as a share of it: what the
	// published ranges of the oils' densities leave open, and no more.
	Spread units.Ratio

	Pot  units.Volume // what the pot must hold, before any room to stir
	Oils units.Volume // those in the pot whose density is known
	Lye  units.Volume // what is in the pot of it
	// LyeAsked is the density of the lye with all the water asked for, before any is
	// held back.
	LyeAsked units.Density
	// Unknown are the names of what has no density here: it counts at the batter's own.
	Unknown []string
}

// Piece is how far a part goes with a vessel: a vessel that several parts share has a line
// for each.
type Piece struct {
	Vessel string
	Part   string // the part that fills it, or its layer of it
	Top    bool   // it stands on other pieces
	Count  int    // pieces that are wanted, in all batches
	Filled int    // pieces that this batch fills to the brim

	// Short is what the first cavity that is not full lacks of the part; 0 g where
	// all that is wanted is there.
	Short units.Mass
	// Fresh is the mass of the part in one piece when it is poured; the last part of a
	// vessel counts its embeds and toppings too.
	Fresh units.Mass
	// Pour is what to pour into one piece: batter of the part with its additions, sunk embeds
	// and toppings not counted.
	Pour units.Mass
	// Volume is that of the part in one piece, without embeds.
	Volume units.Volume
	// Spread is how far off the model of the vessel's shape may be either way, as a
	// share of the volume; 0 % with a trial.
	Spread units.Ratio
}

// ExtraCount is how many embeds to cast, or pieces to strew on, for one batch.
type ExtraCount struct {
	Name, Vessel string     // as the formula has them
	Count        int        // with the spares
	Mass         units.Mass // of all of them
}

// LastBatch is the last of several batches, which makes what the others leave.
type LastBatch struct {
	Pieces       []Piece    // Count and Filled are those of this batch
	Oils, Poured units.Mass // all its oils, and all that it pours

	parts []PartBatch // to be judged
}

// measured gives the masses of the batch to the model of its volumes.
func (s *solved) measured() *contents {
	n := len(s.parts)
	c := &contents{
		alkali: s.alkali.Grams(), asked: s.waterAsked.Grams(), held: s.waterHeld.Grams(), pot: s.pot.Grams(),
		oils: make([]float64, len(s.oils)), batter: make([]float64, n), poured: make([]float64, n),
		loads: make([][]float64, n), carriers: make([][]float64, n),
	}
	for i := range s.oils {
		c.oils[i] = s.inPot(i).Grams()
	}
	for i := range s.alkalis {
		c.hydroxide += s.alkalis[i].Hydroxide().Grams()
	}
	for i := range s.parts {
		c.batter[i] = s.partPot[i].Grams()
		c.loads[i], c.carriers[i] = make([]float64, len(s.loads[i])), make([]float64, len(s.loads[i]))
		for j := range s.loads[i] {
			c.loads[i][j], c.carriers[i][j] = s.loads[i][j].mass.Grams(), s.loads[i][j].carrier.Grams()
		}
	}
	return c
}

// intoVessels works out volumes and pieces, once it is known what is filled.
func (s *solved) intoVessels(b *Batch) Faults {
	c := s.measured()
	volumes, batter, ok := s.volumes(c)
	if !ok {
		return s.tooStrongForDensity(c.hydroxide / (c.alkali + c.asked))
	}
	b.Volumes = volumes
	density := make([]float64, len(s.parts))
	for i := range s.parts {
		if faults := s.run.look(); len(faults) > 0 {
			return faults
		}
		p := &b.Parts[i]
		p.Volume, p.Density, density[i] = s.bulk.poured(c, i, batter)
	}
	if faults := s.drowned(density, batter); len(faults) > 0 {
		return faults
	}
	s.pieces(b, density, batter)
	return nil
}

// volumes gives the volumes of what is in the pot, and how dense it is in g/mL; ok is false
// where the lye's density is not known.
func (s *solved) volumes(c *contents) (v *Volumes, batter float64, ok bool) {
	oils, lye, pot, ok := s.bulk.pot(c, planned)
	if !ok {
		return nil, 0, false
	}
	_, _, most, _ := s.bulk.pot(c, lowest)
	_, _, least, _ := s.bulk.pot(c, highest)
	batter = c.pot / pot
	v = &Volumes{
		At: s.bulk.at, Pot: millilitres(pot), Oils: millilitres(oils), Lye: millilitres(lye),
		Unknown: s.bulk.unknown,
	}
	v.LyeAsked, _ = units.DensityOfFloat(s.bulk.lye)
	v.Density, _ = units.DensityOfFloat(batter)
	v.Spread, _ = units.RatioOfFloat((c.pot/least - c.pot/most) / 2 / batter)
	return v, batter, true
}

// keepsBack reports whether what is poured is divided: there are vessels to fill, or a
// part says what is kept back or lost.
func (f *Formula) keepsBack() bool {
	return len(f.Size.Vessels) > 0 ||
		slices.ContainsFunc(f.Parts, func(p Part) bool { return p.Reserve.Given() || p.Loss.Sign() > 0 })
}

// share divides what is poured of every part: filled, reserve, loss.
func (s *solved) share(b *Batch) (faults Faults) {
	for i := range s.parts {
		p, part := &b.Parts[i], &s.parts[i]
		var ok bool
		p.Loss = part.Loss
		if p.Filled, p.Reserve, ok = mould.Shared(p.Poured, part.Loss, part.ReserveOrUsual()); !ok {
			faults = append(faults, Fault{
				Path: itemPath("parts", i) + ".loss", Kind: ErrImpossible,
				Reason: "takes " + part.Loss.Text(units.Gram, 2) + " g, more than the " + p.Poured.Text(units.Gram, 2) +
					" g that there is of the part", Remedy: "lower it, or make more",
			})
		}
		b.Filled, b.Reserve, b.Loss = b.Filled.Add(p.Filled), b.Reserve.Add(p.Reserve), b.Loss.Add(p.Loss)
	}
	return faults
}

// pieces tells how far every part goes with its vessels.
func (s *solved) pieces(b *Batch, density []float64, batter float64) {
	cavities := s.seated.cavities
	wanted := make([][]mould.Wanted, len(s.parts)) // of each part
	at := make([][]int, len(s.parts))              // and where its pieces stand
	contents := make([][]units.Mass, len(cavities))
	for i := range cavities {
		v, k := &s.seated.vessels[i], &cavities[i]
		volume := k.net(density, batter)
		cuts := units.Whole(v.cuts())
		for j, seat := range k.seats {
			content := gramsOf(volume * k.parts[j] * density[seat.part])
			if k.trial > 0 && len(k.seats) == 1 && k.sunk+k.sunkGrams == 0 {
				content, _ = v.Trial.Each() // as it was weighed
			}
			fresh, _ := content.Over(cuts, units.Nearest) // of one cut at least
			p := Piece{
				Vessel: v.Name, Part: s.parts[seat.part].Name, Top: v.On != "", Count: s.seated.wanted[i] * v.cuts(),
				Filled: s.seated.each[i] * v.cuts(),
				Fresh:  fresh, Volume: millilitres(volume * k.parts[j] / float64(v.cuts())), Spread: units.Whole(0),
			}
			p.Pour = p.Fresh
			if !v.Trial.Given() {
				p.Spread = v.Shape.Spread()
			}
			if j == len(k.seats)-1 {
				p.Fresh = p.Fresh.Add(s.extras(b, v, batter))
			}
			contents[i] = append(contents[i], content)
			wanted[seat.part] = append(wanted[seat.part], mould.Wanted{Content: content, Count: s.seated.wanted[i]})
			at[seat.part] = append(at[seat.part], len(b.Pieces))
			b.Pieces = append(b.Pieces, p)
		}
	}
	if s.asked.fromVessels() {
		return
	}
	for i := range s.parts {
		for j, filled := range mould.Fill(b.Parts[i].Filled, wanted[i]) {
			p := &b.Pieces[at[i][j]]
			p.Filled = filled.Whole * s.seated.vessels[vesselOf(s.seated.vessels, p.Vessel)].cuts()
			p.Short = filled.Short
		}
	}
	s.contents = contents
	left := make([]units.Mass, len(s.parts))
	for i := range left {
		left[i] = b.Parts[i].Filled
	}
	b.PiecesComplete = s.complete(left)
}

// drowned finds vessels whose embeds displace all that they hold.
func (s *solved) drowned(density []float64, batter float64) (faults Faults) {
	for i := range s.seated.cavities {
		if !(s.seated.cavities[i].net(density, batter) > 0) {
			faults = append(faults, Fault{
				Path: itemPath("size.vessels", i), Text: s.seated.vessels[i].Name, Kind: ErrImpossible,
				Reason: "is all embeds: they displace all that it holds", Remedy: "sink less into it",
			})
		}
	}
	return faults
}

// extras counts the embeds and toppings of a vessel, and gives their mass in one
// piece.
func (s *solved) extras(b *Batch, v *Vessel, batter float64) (mass units.Mass) {
	pieces := s.seated.each[vesselOf(s.seated.vessels, v.Name)] * v.cuts()
	for i := range s.f.Embeds {
		e := &s.f.Embeds[i]
		if e.Vessel != v.Name {
			continue
		}
		one := e.Mass.Add(gramsOf(e.Volume.Millilitres() * batter))
		mass = mass.Add(product(one, units.Whole(e.each()), units.Nearest))
		count := pieces*e.each() + e.Spares
		b.Embeds = append(b.Embeds, ExtraCount{e.Name, v.Name, count, product(one, units.Whole(count), units.Nearest)})
	}
	for i := range s.f.Toppings {
		if t := &s.f.Toppings[i]; t.Vessel == v.Name {
			mass = mass.Add(t.Mass)
			b.Toppings = append(b.Toppings, ExtraCount{t.Name, v.Name, pieces, product(t.Mass, units.Whole(pieces),
				units.Nearest)})
		}
	}
	return mass
}

func millilitres(v float64) units.Volume {
	volume, _ := units.VolumeOfFloat(v)
	return volume
}

// PiecesInAll gives how many pieces are wanted of the vessels, in all batches; tops make
// none of their own. 0 without vessels.
func (b Batch) PiecesInAll() (n int) {
	for i := range b.Pieces {
		p := &b.Pieces[i] // one of a vessel's parts says it
		if !p.Top && (i == 0 || b.Pieces[i-1].Vessel != p.Vessel) {
			n += p.Count
		}
	}
	return n
}

// last works out the last of several batches, at the superfat of the others.
func (s *solved) last() (*LastBatch, Faults) {
	f := *s.asked
	f.Size.Pieces, f.Size.Vessels, f.Parts, f.Embeds = 0, nil, nil, nil
	for i, v := range s.seated.vessels {
		if s.seated.last[i] == 0 {
			continue
		}
		if v.On == "" {
			v.Count = s.seated.last[i]
		}
		f.Size.Vessels = append(f.Size.Vessels, v)
	}
	for _, e := range s.asked.Embeds {
		if vesselOf(f.Size.Vessels, e.Vessel) >= 0 {
			f.Embeds = append(f.Embeds, e)
		}
	}
	for _, p := range s.asked.Parts { // of those whose vessels are full, none is made
		if p.Share.Given() || f.fills(p.Name) {
			f.Parts = append(f.Parts, p)
		}
	}
	l := f.layout(s.mine)
	if faults := s.run.look(); len(faults) > 0 {
		return nil, faults
	}
	if faults := l.fromVessels(s.superfat); len(faults) > 0 {
		for i := range faults {
			faults[i].Path, faults[i].Reason = "size.vessels", "give a last batch that cannot be made: it "+faults[i].Reason
		}
		return nil, faults
	}
	l.solve(s.superfat)
	if faults := l.impossible(); len(faults) > 0 {
		return nil, faults
	}
	if faults := s.run.look(); len(faults) > 0 {
		return nil, faults
	}
	b := l.batch()
	faults := l.share(b)
	if len(faults) == 0 {
		faults = l.intoVessels(b)
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return &LastBatch{Pieces: b.Pieces, Oils: b.OilsTotal, Poured: b.Poured, parts: b.Parts}, nil
}

// fills reports whether a part fills a vessel.
func (f *Formula) fills(part string) bool {
	for i := range f.Size.Vessels {
		v := &f.Size.Vessels[i]
		if v.Part == part {
			return true
		}
		for _, layer := range v.Layers {
			if layer.Part == part {
				return true
			}
		}
	}
	return false
}
