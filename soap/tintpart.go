package soap

import (
	"cmp"
	"slices"

	"example.com/lyewright/colour"
	"example.com/lyewright/colour/tint"
	"example.com/lyewright/units"
)

// tint predicts the colour of a part.
func (b *Batch) tint(i int, fit tint.Calibration, shelf colour.Shelf) (PartTint, error) {
	p := b.judgedPart(i)
	amounts := p.amounts()
	t := PartTint{Name: p.Name}
	var line Part
	if i < len(b.Formula.Parts) {
		line = b.Formula.Parts[i]
	}
	var matched sought
	if b.matching != nil {
		matched = b.matching.parts[i]
	}
	t.Look, t.Unpriced = line.Look, matched.unpriced
	t.load(p, &matched, amounts, shelf)
	t.price(shelf)
	t.outside(p)
	if lab, ok := line.Target.lab(fit.Bands()); ok {
		t.Target, t.Lightness, t.Lit = &lab, lab.L, true
	}
	if !fit.Given() {
		return t, nil
	}
	for _, load := range t.Loads {
		switch most := fit.Most(load.Colourant); {
		case load.Weighed.Sign() == 0:
		case !most.Given():
			t.Unknown = append(t.Unknown, load.Name)
		case load.OfBatter.Compare(most) > 0:
			t.Beyond = append(t.Beyond, load.Name)
		}
	}
	if len(t.Unknown) > 0 {
		return t, nil
	}
	predicted, err := fit.Predict(t.mixture())
	if err != nil {
		return PartTint{}, err
	}
	t.Colour, t.Lightness, t.Lit = &predicted, predicted.L, true
	if t.Target != nil {
		t.Difference = t.Target.Difference(predicted.Lab)
		t.Reachable = t.Difference <= max(just, fit.Floor())
	}
	if matched.found != nil {
		t.Reachable = matched.found.Best <= max(just, fit.Floor())
		t.Matched = matchedOf(&matched)
	}
	return t, t.whiter(amounts, matched.lines, fit, shelf)
}

// load lists the part's colourants as they are weighed: those with a load, then those that
// were sought, each in the order of the file.
func (t *PartTint) load(p *PartBatch, matched *sought, amounts colour.Amounts, shelf colour.Shelf) {
	of := make([]units.Mass, len(matched.lines)) // what is weighed of those that were sought
	for k := range p.Additions {
		a := &p.Additions[k]
		if a.Kind != Colourant {
			continue
		}
		if m := slices.IndexFunc(matched.lines, func(m Match) bool { return m.Colourant == a.Name }); m >= 0 {
			of[m] = a.Pigment()
			continue
		}
		t.Loads = append(t.Loads, loadOf(a.Name, nameOf(a.Colourant, a.Name), a.Pigment(), amounts))
	}
	for m := range matched.lines {
		id := matched.lines[m].Colourant
		c, _ := shelf.Find(id)
		l := loadOf(id, nameOf(c, id), of[m], amounts)
		l.Sought, l.At, l.Found = true, matched.found.At[m], matched.found.Loads[m]
		t.Loads = append(t.Loads, l)
	}
}

func nameOf(c colour.Colourant, id string) string {
	if !c.Given() {
		return id
	}
	return c.Name()
}

func loadOf(id, name string, weighed units.Mass, of colour.Amounts) TintLoad {
	return TintLoad{
		Colourant: id, Name: name, Weighed: weighed,
		OfBatter: of.Load(weighed, colour.OfBatter).Share, OfOils: of.Load(weighed, colour.OfOils).Share, OfDry: of.Load(weighed, colour.OfDry).Share,
	}
}

// mixture gives the part's colourants as the swatches name them.
func (t *PartTint) mixture() []tint.Load {
	var list []tint.Load
	for _, l := range t.Loads {
		if l.Weighed.Sign() > 0 {
			list = append(list, tint.Load{Colourant: l.Colourant, OfBatter: l.OfBatter})
		}
	}
	return list
}

// price adds up what the part's colourants cost.
func (t *PartTint) price(shelf colour.Shelf) {
	if len(t.Loads) == 0 {
		return
	}
	cost := units.Whole(0)
	for _, l := range t.Loads {
		c, _ := shelf.Find(l.Colourant)
		price := c.Price()
		if !price.Given() {
			return
		}
		cost = cost.Add(price.Of(l.Weighed))
	}
	t.Cost = cost
}

// outside lists what the model does not know of.
func (t *PartTint) outside(p *PartBatch) {
	for k := range p.Additions {
		a := &p.Additions[k]
		switch {
		case a.Kind == Colourant && a.Colourant.Is(colour.Pearl):
			t.Pearls = append(t.Pearls, a.Colourant.Name())
		case a.Kind == Additive:
			t.Additives = append(t.Additives, a.Name)
		case a.Kind == Fragrance && a.Material.Given() && len(a.Material.Colours()) > 0:
			t.Browning = append(t.Browning, a.Name)
		}
	}
}

// just is the smallest difference that counts: about what people see side by side.
const just = 1

// lack is how far a target lies beyond reach in one direction, and its names.
type lack struct {
	by         float64
	more, less string
}

func matchedOf(s *sought) *Matched {
	found, target := s.found, s.target
	m := &Matched{Best: found.Best}
	for i, at := range found.Nearest {
		if at == tint.AtMost {
			m.AtMost = append(m.AtMost, s.lines[i].Colourant)
		}
	}
	lacks := []lack{
		{target.L - found.Lab.L, "lighter", "darker"},
		{target.A - found.Lab.A, "redder", "greener"},
		{target.B - found.Lab.B, "yellower", "bluer"},
	}
	slices.SortStableFunc(lacks, func(a, b lack) int { return cmp.Compare(max(b.by, -b.by), max(a.by, -a.by)) })
	for i, lack := range lacks {
		switch {
		case lack.by == 0 || i > 0 && lack.by < just && lack.by > -just:
		case lack.by > 0:
			m.Missing = append(m.Missing, lack.more)
		default:
			m.Missing = append(m.Missing, lack.less)
		}
	}
	return m
}

// whiter asks how much more of the white would be seen, up to the most that was set for
// it, or to the end of what is usual.
func (t *PartTint) whiter(amounts colour.Amounts, lines []Match, fit tint.Calibration, shelf colour.Shelf) error {
	id := fit.White()
	c, _ := shelf.Find(id)
	w := &Whiter{Colourant: id, Now: units.Whole(0)}
	if m := slices.IndexFunc(lines, func(m Match) bool { return m.Colourant == id }); id != "" && m >= 0 {
		w.Most = lines[m].Most.share(amounts)
	} else if usual, given := c.Usual(false); given {
		w.Most = amounts.Convert(usual.High, colour.OfBatter).Share
	} else {
		return nil // no white, or none of which anything is usual
	}
	for _, l := range t.Loads {
		if l.Colourant == id {
			w.Now = l.OfBatter
		}
	}
	var err error
	if w.More, w.Seen, err = fit.Whiter(t.mixture(), w.Most); err != nil {
		return err
	}
	w.Mass = product(amounts.Batter, w.More.Or(units.Whole(0)), units.Nearest)
	t.Whiter = w
	return nil
}
