package soap

import (
	"cmp"
	"slices"

	"example.com/lyewright/colour"
	"example.com/lyewright/colour/tint"
	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

// Tint is what colour the parts of a batch will have, and in which order to work: a view
// of the batch. Colours are those of what is weighed. They are known of parts whose
// colourants all stood in the formula's swatches.
type Tint struct {
	Formula string
	Fit     tint.Calibration // not given where the formula has no swatches
	Parts   []PartTint
	Order   []string // the parts, the lightest first

	Findings []Finding // those on colour
}

// PartTint is what colour a part will have.
type PartTint struct {
	Name   string
	Colour *tint.Colour // nil where it is not known
	// Unknown are the colourants that stood in no swatch.
	Unknown []string

	Target     *tint.Lab // nil: none
	Difference float64   // of the colour from the target, as CIEDE2000
	// Reachable: the target is met within 1, or within the floor of the calibration, by what
	// is weighed, or where loads were looked for by the nearest mixture.
	Reachable bool
	Matched   *Matched // nil where no loads were looked for

	Loads []TintLoad
	Cost  units.Ratio // of all the part's colourants; not given where a price is lacking

	// Lightness is what Order goes by, L from 0 to 100: of the colour, or of the target;
	// Lit is false where both are lacking. Look is what the part is declared to look like.
	Lightness float64
	Lit       bool
	Look      Look

	Whiter *Whiter // nil where nothing is known of more white
	Coats  []Coat  // its thin layers; colours need a base that was read over black and white

	// What the model does not know of: pearls, what is added besides, and fragrances that
	// colour it later, each by name.
	Pearls, Additives, Browning []string
}

// Matched is what came of a part's match.
type Matched struct {
	Best float64 // the smallest difference from the target within reach
	// Missing says in which direction the target lies from the nearest: "lighter", "darker", "redder",
	// "greener", "yellower", "bluer", the most lacking first.
	Missing []string
	// AtMost are the colourants of which the nearest mixture has the most: where the target
	// is out of reach they may be what holds it back.
	AtMost []string
}

// TintLoad is a colourant of a part.
type TintLoad struct {
	Colourant string
	Name      string
	Weighed   units.Mass // of the pigment itself, as the scale shows it
	// What is weighed, of the part's batter, oils and dry mass.
	OfBatter, OfOils, OfDry units.Ratio

	Sought bool        // its load was looked for
	At     tint.At     // of what was sought: where its load stands
	Found  units.Ratio // of batter: the load that was found, before it is weighed
}

// Whiter is how much more white makes the next visible difference, CIEDE2000 of 1.
type Whiter struct {
	Colourant string
	More      units.Ratio // of batter
	Mass      units.Mass
	Seen      bool        // false: no load up to Most makes one
	Most      units.Ratio // of batter
}

// Coat is a thin layer of the part on another.
type Coat struct {
	Vessel, On, Under string // the vessel, the one that it stands on, and the part in that
	Thickness         units.Length
	Colour            *tint.Colour // nil where it is not known
}

// Tint predicts the colours. The error is [Faults], where the batch's formula was changed
// so that its swatches no longer say anything.
func (b *Batch) Tint() (Tint, error) {
	t := Tint{Formula: b.Formula.Name}
	for _, f := range b.Findings {
		if OnColour(f) {
			t.Findings = append(t.Findings, f)
		}
	}
	shelf, err := colour.NewShelf(b.Formula.Pigments)
	if err != nil {
		return Tint{}, under("pigments", err)
	}
	if b.matching != nil {
		t.Fit = b.matching.calibration
	} else if b.Formula.Swatches != nil {
		swatches := b.Formula.swatches(shelf)
		if t.Fit, err = swatches.Calibrate(); err != nil {
			return Tint{}, under("swatches", err)
		}
	}
	for i := range b.Parts {
		p, err := b.tint(i, t.Fit, shelf)
		if err != nil {
			return Tint{}, under(itemPath("parts", i), err)
		}
		t.Parts = append(t.Parts, p)
	}
	if err := t.coats(b.Formula.Size.Vessels); err != nil {
		return Tint{}, under("size.vessels", err)
	}
	t.Order = t.lightestFirst()
	return t, nil
}

// tint predicts the colour of a part.
func (b *Batch) tint(i int, fit tint.Calibration, shelf colour.Shelf) (PartTint, error) {
	p := &b.Parts[i]
	t := PartTint{Name: p.Name}
	var line Part
	if i < len(b.Formula.Parts) {
		line = b.Formula.Parts[i]
	}
	t.Look = line.Look
	t.load(b, i, &line, shelf)
	t.price(&line, shelf)
	t.beyond(p)
	if lab, ok := line.Target.lab(fit.Bands()); ok {
		t.Target, t.Lightness, t.Lit = &lab, lab.L, true
	}
	if !fit.Given() {
		return t, nil
	}
	for _, load := range t.Loads {
		if !fit.Knows(load.Colourant) && load.Weighed.Sign() > 0 {
			t.Unknown = append(t.Unknown, load.Name)
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
	if b.matching != nil && b.matching.parts[i] != nil {
		found := b.matching.parts[i]
		t.Reachable = found.Best <= max(just, fit.Floor())
		t.Matched = matchedOf(found, line.Match, *t.Target)
	}
	return t, t.whiter(p, &line, fit, shelf)
}

// load lists the part's colourants as they are weighed: those with a load, then those that
// were sought, each in the order of the file.
func (t *PartTint) load(b *Batch, i int, line *Part, shelf colour.Shelf) {
	p := &b.Parts[i]
	amounts := p.amounts()
	var found *tint.Matched
	if b.matching != nil {
		found = b.matching.parts[i]
	}
	for k := range p.Additions {
		a := &p.Additions[k]
		if a.Kind == Colourant && (found == nil || line.lists(a.Name)) {
			t.Loads = append(t.Loads, loadOf(a.Name, nameOf(a.Colourant, a.Name), a.Pigment(), amounts))
		}
	}
	if found == nil {
		return
	}
	for m := range line.Match {
		id := line.Match[m].Colourant
		weighed := units.Mass{}
		for k := range p.Additions {
			if a := &p.Additions[k]; a.Kind == Colourant && a.Name == id {
				weighed = a.Pigment()
			}
		}
		c, _ := shelf.Find(id)
		l := loadOf(id, nameOf(c, id), weighed, amounts)
		l.Sought, l.At, l.Found = true, found.At[m], found.Loads[m]
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
func (t *PartTint) price(line *Part, shelf colour.Shelf) {
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

// beyond lists what the model does not know of.
func (t *PartTint) beyond(p *PartBatch) {
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

func matchedOf(found *tint.Matched, lines []Match, target tint.Lab) *Matched {
	m := &Matched{Best: found.Best}
	for i, at := range found.Nearest {
		if at == tint.AtMost {
			m.AtMost = append(m.AtMost, lines[i].Colourant)
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
func (t *PartTint) whiter(p *PartBatch, line *Part, fit tint.Calibration, shelf colour.Shelf) error {
	id := fit.White()
	if id == "" {
		return nil
	}
	amounts := p.amounts()
	w := &Whiter{Colourant: id}
	if m := slices.IndexFunc(line.Match, func(m Match) bool { return m.Colourant == id }); m >= 0 {
		w.Most = line.Match[m].Most.share(amounts)
	} else if c, _ := shelf.Find(id); c.Given() {
		usual, given := c.Usual(false)
		if !given {
			return nil
		}
		w.Most = amounts.Convert(usual.High, colour.OfBatter).Share
	} else {
		return nil
	}
	var err error
	if w.More, w.Seen, err = fit.Whiter(t.mixture(), w.Most); err != nil {
		return err
	}
	w.Mass = p.Batter.Times(w.More.Or(units.Whole(0)), units.Nearest)
	t.Whiter = w
	return nil
}

// coats predicts the thin layers that vessels ask of a part, each on what fills the vessel
// below it.
func (t *Tint) coats(vessels []Vessel) error {
	for i := range vessels {
		v := &vessels[i]
		coat, thin := v.Shape.(mould.Coat)
		below := vesselOf(vessels, v.On)
		if !thin || v.On == "" || below < 0 {
			continue
		}
		top, under := t.part(v.Part), t.part(vessels[below].top())
		if top == nil || under == nil {
			continue
		}
		c := Coat{Vessel: v.Name, On: v.On, Under: under.Name, Thickness: coat.Thickness}
		if t.Fit.Thin() && top.Colour != nil && under.Colour != nil {
			colour, err := t.Fit.Layer(top.mixture(), coat.Thickness, under.mixture())
			if err != nil {
				return err
			}
			c.Colour = &colour
		}
		top.Coats = append(top.Coats, c)
	}
	return nil
}

// top is the part that lies uppermost in a vessel.
func (v *Vessel) top() string {
	if len(v.Layers) > 0 {
		return v.Layers[len(v.Layers)-1].Part
	}
	return v.Part
}

// part finds a part by its name; in a batch of one part that is always it.
func (t *Tint) part(name string) *PartTint {
	for i := range t.Parts {
		if t.Parts[i].Name == name || len(t.Parts) == 1 {
			return &t.Parts[i]
		}
	}
	return nil
}

// lightestFirst orders the parts, so that the blender need not be washed between them:
// common practice. A part whose colour is not known goes by what it is declared to look
// like: white before all, pale after those that are lighter than the middle of the scale,
// any last, each in the formula's order.
func (t *Tint) lightestFirst() []string {
	order := make([]*PartTint, len(t.Parts))
	for i := range t.Parts {
		order[i] = &t.Parts[i]
	}
	slices.SortStableFunc(order, func(a, b *PartTint) int { return cmp.Compare(b.place(), a.place()) })
	names := make([]string, len(order))
	for i, p := range order {
		names[i] = p.Name
	}
	return names
}

// place is where a part comes in the order: its lightness, or what stands in for it.
func (t *PartTint) place() float64 {
	switch {
	case t.Lit:
		return t.Lightness
	case t.Look == White:
		return 101
	case t.Look == Pale:
		return 50
	default:
		return -1
	}
}
