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
	Formula  string
	Fit      tint.Calibration // not given where the formula has no swatches
	Swatches string           // their name; may be empty
	Parts    []PartTint
	Order    []string // the parts, the lightest first

	Findings []Finding // those on colour
}

// PartTint is what colour a part will have.
type PartTint struct {
	Name   string
	Colour *tint.Colour // nil where it is not known
	// Unknown are the colourants that stood in no swatch; of Beyond there is more than in any.
	Unknown, Beyond []string

	Target     *tint.Lab // nil: none
	Difference float64   // of the colour from the target, as CIEDE2000
	// Reachable: the target is met within 1, or within the floor of the calibration, by what
	// is weighed, or where loads were looked for by the nearest mixture.
	Reachable bool
	Matched   *Matched // nil where no loads were looked for

	Loads []TintLoad
	// Cost is that of all the part's colourants as weighed, without carriers, in the currency
	// of their prices; not given where one is lacking.
	Cost     units.Ratio
	Unpriced bool // of what was matched some have a price and some have none: the least was looked for

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
	Now       units.Ratio // of batter: what there is of it
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

// Tint predicts the colours of what is weighed, in the batter as weighed where that was. The
// error is [Faults], where the batch's formula was changed so that its swatches or pigments
// no longer say anything; loads that were looked for stay those of the batch.
func (b *Batch) Tint() (Tint, error) {
	t := Tint{Formula: b.Formula.Name}
	if b.Formula.Swatches != nil {
		t.Swatches = b.Formula.Swatches.Name
	}
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

// amountsOf gives what loads of a part are shares of: its batter as weighed, where that was,
// and its oils in proportion.
func (b *Batch) amountsOf(part int) colour.Amounts {
	of := b.Parts[part].amounts()
	if b.Weighed == nil {
		return of
	}
	if changed, ok := b.Weighed.Parts[part].Batter.Per(of.Batter); ok {
		of.Oils = of.Oils.Times(changed, units.Nearest)
	}
	of.Batter, of.Dry = b.Weighed.Parts[part].Batter, b.dryOf(part)
	return of
}

// tint predicts the colour of a part.
func (b *Batch) tint(i int, fit tint.Calibration, shelf colour.Shelf) (PartTint, error) {
	p, amounts := &b.Parts[i], b.amountsOf(i)
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
	w.Mass = amounts.Batter.Times(w.More.Or(units.Whole(0)), units.Nearest)
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
