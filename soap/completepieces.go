package soap

import (
	"slices"

	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

// Split is how the parts would share the batter of a batch whose mass is known so that it
// completes more pieces than as the formula divides it.
type Split struct {
	PiecesComplete int         // that it completes, worked out with these shares
	Parts          []PartShare // in the formula's order; together 100 %
}

// PartShare is a part's share of the batter.
type PartShare struct {
	Name  string
	Share units.Ratio // in hundredths of a percent, but for one that no vessel takes: that stays as it is
}

// pieceNeeds is what the parts give to the pieces of one vessel: to a whole cavity, and in
// the tops on each piece.
type pieceNeeds struct {
	cavity, piece []units.Mass
	cuts, most    int // pieces of a cavity; pieces that are hoped for
}

// needs lists what the vessels need that stand on no other.
func (s *solved) needs() []pieceNeeds {
	var all []pieceNeeds
	vessels := s.seated.vessels
	add := func(to []units.Mass, vessel int) {
		for j, seat := range s.seated.layers[vessel] {
			to[seat.part] = to[seat.part].Add(s.contents[vessel][j])
		}
	}
	for i := range vessels {
		v := &vessels[i]
		if v.On != "" {
			continue
		}
		n := pieceNeeds{
			cavity: make([]units.Mass, len(s.parts)), piece: make([]units.Mass, len(s.parts)), cuts: v.cuts(),
			most: s.seated.wanted[i] * v.cuts(),
		}
		add(n.cavity, i)
		for k := range vessels {
			if vessels[k].On == v.Name {
				add(n.piece, k)
			}
		}
		all = append(all, n)
	}
	return all
}

// of gives what so many pieces take of a part: whole cavities, and a top for each.
func (n *pieceNeeds) of(part, pieces int) units.Mass {
	cavities := (pieces + n.cuts - 1) / n.cuts
	tops := product(n.piece[part], units.Whole(pieces), units.Nearest)
	return product(n.cavity[part], units.Whole(cavities), units.Nearest).Add(tops)
}

// mostPieces is more than a tonne makes of a gram each.
const mostPieces = 1_000_000_000

// complete gives how many pieces what is left of each part completes: the vessels in their
// order up to what is hoped for, the last one beyond it.
func (s *solved) complete(left []units.Mass) (pieces int) {
	needs := s.needs()
	for i := range needs {
		n := &needs[i]
		most := n.most
		if i == len(needs)-1 {
			most = mostPieces
		}
		for part := range left {
			most = min(most, n.upTo(part, left[part]))
		}
		if most == mostPieces {
			most = n.most // nothing bounds it
		}
		fits := func(pieces int) bool {
			for part := range left {
				if n.of(part, pieces).Compare(left[part]) > 0 {
					return false
				}
			}
			return true
		}
		made := 0
		for step := most; step > 0; step /= 2 { // the largest that fits
			for made+step <= most && fits(made+step) {
				made += step
			}
		}
		for part := range left {
			left[part] = left[part].Sub(n.of(part, made))
		}
		pieces += made
	}
	return pieces
}

// upTo bounds how many pieces a part gives for.
func (n *pieceNeeds) upTo(part int, left units.Mass) int {
	most := mostPieces
	whole := func(content units.Mass) int { return mould.Fill(left, []mould.Wanted{{Content: content}})[0].Whole }
	if content := n.cavity[part]; content.Sign() > 0 {
		most = min(most, min(whole(content), mostPieces/n.cuts)*n.cuts)
	}
	if content := n.piece[part]; content.Sign() > 0 {
		most = min(most, whole(content))
	}
	return most
}

// better looks for shares of the parts that complete more pieces than the batch does. They
// are guessed from what the pieces need of each part, and then worked out: what comes of
// that is what is said. nil where that is no more.
func (s *solved) better(b *Batch) *Split {
	if len(s.parts) < 2 {
		return nil
	}
	used := make([]bool, len(s.parts))
	free := units.Whole(0)
	for i := range s.parts {
		if used[i] = s.asked.fills(s.parts[i].Name); used[i] {
			free = free.Add(s.parts[i].Share)
		}
	}
	needs := s.needs()
	// batter gives what so many pieces ask for of the batter, part by part, in grams: what is
	// filled, with reserve and loss, without additions.
	batter := func(pieces int) (each []float64, all float64) {
		filled := make([]units.Mass, len(s.parts))
		for i := range needs {
			n := &needs[i]
			made := pieces
			if i < len(needs)-1 {
				made = min(pieces, n.most)
			}
			pieces -= made
			for part := range filled {
				filled[part] = filled[part].Add(n.of(part, made))
			}
		}
		each = make([]float64, len(s.parts))
		for i := range each {
			if p := &b.Parts[i]; used[i] && p.Poured.Sign() > 0 {
				poured := filled[i].Grams()*(1+s.parts[i].ReserveOrUsual().Float()) + p.Loss.Grams()
				each[i] = poured * p.Batter.Grams() / p.Poured.Grams()
				all += each[i]
			}
		}
		return each, all
	}
	there := s.pot.Grams() * free.Float()
	most := b.PiecesComplete
	for step := 1 << 20; step > 0; step /= 2 {
		if _, all := batter(most + step); all <= there {
			most += step
		}
	}
	if most == b.PiecesComplete {
		return nil
	}
	each, all := batter(most)
	return s.shared(b, each, all, used, free)
}

// shared works the batch out with the batter divided in proportion.
func (s *solved) shared(b *Batch, each []float64, all float64, used []bool, free units.Ratio) *Split {
	f := *s.asked
	f.Parts = slices.Clone(s.asked.Parts)
	split := &Split{Parts: make([]PartShare, len(f.Parts))}
	left, last := free, -1
	for i := range f.Parts {
		share := s.parts[i].Share
		if used[i] {
			of, ok := units.RatioOfFloat(each[i] / all)
			if share = of.Times(free).Round(4, units.Nearest); !ok || share.Sign() <= 0 {
				return nil
			}
			left, last = left.Sub(share), i
		}
		f.Parts[i].Share, f.Parts[i].Rest = share, false
	}
	if f.Parts[last].Share = f.Parts[last].Share.Add(left); f.Parts[last].Share.Sign() <= 0 {
		return nil
	}
	l := f.layout(s.mine)
	l.solve(s.superfat)
	if len(l.impossible()) > 0 {
		return nil
	}
	again := l.batch()
	if len(l.share(again)) > 0 || len(l.intoVessels(again)) > 0 || again.PiecesComplete <= b.PiecesComplete {
		return nil
	}
	split.PiecesComplete = again.PiecesComplete
	for i := range f.Parts {
		split.Parts[i] = PartShare{Name: f.Parts[i].Name, Share: f.Parts[i].Share}
	}
	return split
}
