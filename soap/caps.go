package soap

import (
	"context"
	"slices"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/units"
)

// Caps is how much fragrance a batch may hold: a view of it. Every share is of a dry
// mass, when all water is gone: stricter than the rules, which speak of the finished
// product.
type Caps struct {
	Formula string        // its name
	Law     fragrance.Law // whose limits count
	Parts   []PartCaps    // in the formula's order

	// Pieces are the kinds of pieces that the vessels make, one of the whole batch where
	// there are none; those of the last of several batches stand apart, since loads by mass
	// are the same in it. A piece is a weighted mean of its parts: where these keep their
	// limits, it does. Embeds and toppings are not counted.
	Pieces []PieceCaps
	// Embedded: there are embeds, of whose fragrance nothing is known here.
	Embedded bool

	Findings []Finding // those on fragrance, and every danger: see [OnFragrance]
}

// PartCaps is how much fragrance a part may hold.
type PartCaps struct {
	Name       string
	Dry        units.Mass     // with all fragrances in it, as weighed where that was
	Oils       units.Mass     // the base of "of oils", as planned: what is written back is of it
	Fragrances []FragranceCap // in the part's order
	// Dried are its additives, which count as dry: water in them would make the dry mass,
	// and with it every cap, too large.
	Dried   []string
	Scented // of the part

	// Unjudged are its fragrances of which something is left open: see
	// [fragrance.Material.Unjudged], and its additives and colourants that are only a name, and one that a fragrance
	// bears. Where there is one, the part's fragrances are not judged as a whole, whatever their figures come to.
	Unjudged []string
}

// FragranceCap is how much of a fragrance a part may hold: what there is of it (Mass, and
// OfDry of the part's dry mass), the caps of it alone (Caps, what binds first), and the
// most of it beside the part's other fragrances (Most, where Limited).
type FragranceCap struct {
	fragrance.Reckoned
	OfOils  units.Ratio // what there is of it, of the part's oils
	OfPiece units.Ratio // of the dry piece that holds most of it
	// MostOfOils is Reckoned.Most as a share of the part's oils, rounded down; not given
	// where nothing binds.
	MostOfOils units.Ratio
}

// Scented is what the fragrances of a part or of a piece come to.
type Scented struct {
	Fragrance units.Ratio   // all of them, of the dry mass of the part or piece
	Most      fragrance.Use // the limit that is used most; Used above 100 % passes it
	Limited   bool          // whether there is one
	// Allergens are those above the threshold of the label, as far as they are known: see
	// [fragrance.AllergenLists].
	Allergens         []fragrance.Allergen
	AllergensComplete bool // false: there may be others
}

// PieceCaps is what a kind of piece holds.
type PieceCaps struct {
	Name string     // the vessel; empty of the batch
	Last bool       // of the last of several batches
	Dry  units.Mass // of one piece; of the batch all of it
	Scented
}

// Caps reckons how much fragrance the batch may hold. What its rules leave open stands in
// its findings, and [Notices] goes with whatever is shown of it.
func (b *Batch) Caps() Caps {
	c, _ := b.CapsContext(context.Background())
	return c
}

// CapsContext is [Batch.Caps] with a context: work stops within 10 ms of its end, and the
// error then wraps that of the context.
func (b *Batch) CapsContext(ctx context.Context) (Caps, error) {
	c := Caps{Formula: b.Formula.Name, Law: b.Formula.law(), Embedded: len(b.Formula.Embeds) > 0}
	c.Findings = b.selected(OnFragrance)
	kinds := b.kinds()
	dry := make([]units.Mass, len(kinds))
	for k := range kinds {
		if ctx.Err() != nil {
			return Caps{}, stopped("the caps are", ctx)
		}
		p := b.piece(&kinds[k])
		dry[k] = p.Dry
		c.Pieces = append(c.Pieces, p)
	}
	if last := b.lastBatch(); last != nil {
		for _, k := range last.kinds() {
			if ctx.Err() != nil {
				return Caps{}, stopped("the caps are", ctx)
			}
			p := last.piece(&k)
			p.Last = true
			c.Pieces = append(c.Pieces, p)
		}
	}
	for i := range b.Parts {
		if ctx.Err() != nil {
			return Caps{}, stopped("the caps are", ctx)
		}
		v := b.verdict(i)
		p := PartCaps{Name: b.Parts[i].Name, Dry: b.judgedPart(i).Dry, Oils: b.Parts[i].Oils, Scented: scented(v)}
		for _, reckoned := range v.All() {
			if ctx.Err() != nil { // each is held against every piece
				return Caps{}, stopped("the caps are", ctx)
			}
			f := FragranceCap{Reckoned: reckoned}
			f.OfOils = shareOf(f.Mass, p.Oils, units.Nearest)
			if f.Limited {
				f.MostOfOils = shareOf(f.Most, p.Oils, units.Down)
			}
			for k := range kinds {
				of := shareOf(product(f.Mass, kinds[k].of[i], units.Nearest), dry[k], units.Nearest)
				if !f.OfPiece.Given() || of.Compare(f.OfPiece) > 0 {
					f.OfPiece = of
				}
			}
			if f.Material.OnlyAName() || len(f.Material.Unjudged(c.Law)) > 0 {
				p.Unjudged = append(p.Unjudged, f.Material.ID())
			}
			p.Fragrances = append(p.Fragrances, f)
		}
		for k := range b.Parts[i].Additions {
			a := &b.Parts[i].Additions[k]
			if a.Kind == Additive {
				p.Dried = append(p.Dried, a.Name)
			}
			if a.maybeFragrance() { // with allergens that nothing here lists
				p.Unjudged, p.AllergensComplete = append(p.Unjudged, a.Name), false
			}
		}
		c.Parts = append(c.Parts, p)
	}
	return c, nil
}

// lastBatch is the last of several batches, as far as its pieces ask for it; nil of one.
func (b *Batch) lastBatch() *Batch {
	if b.Last == nil {
		return nil
	}
	return &Batch{Formula: b.Formula, Parts: b.Last.parts, Pieces: b.Last.Pieces}
}

func shareOf(of, all units.Mass, how units.Rounding) units.Ratio {
	r, _ := of.Per(all)
	return r.Round(8, how)
}

func scented(v fragrance.Verdict) Scented {
	s := Scented{Fragrance: v.Fragrance()}
	s.Most, s.Limited = v.Most()
	s.Allergens, s.AllergensComplete = v.Allergens()
	return s
}

// kind is a kind of piece: how much of each part of the batch is in it.
type kind struct {
	name string
	of   []units.Ratio
}

// kinds lists the kinds of pieces; without vessels, the batch as a whole.
func (b *Batch) kinds() []kind {
	if len(b.Pieces) == 0 {
		whole := kind{of: make([]units.Ratio, len(b.Parts))}
		for i := range whole.of {
			whole.of[i] = units.Whole(1)
		}
		return []kind{whole}
	}
	vessels := b.Formula.Size.Vessels
	below := make(map[string]int, len(vessels)) // where a piece ends: its vessel, or what that stands on
	for i := range vessels {
		below[vessels[i].Name] = i
	}
	parts := make(map[string]int, len(b.Parts))
	for i := range b.Parts {
		parts[b.Parts[i].Name] = i
	}
	of := make([][]units.Ratio, len(vessels)) // nil: in the last batch not every vessel is filled
	for j := range b.Pieces {
		p := &b.Pieces[j]
		i, there := parts[p.Part]
		at, known := below[p.Vessel]
		if !there || !known {
			continue
		}
		if vessels[at].On != "" {
			at = below[vessels[at].On]
		}
		if of[at] == nil {
			of[at] = make([]units.Ratio, len(b.Parts))
			for k := range of[at] {
				of[at][k] = units.Whole(0)
			}
		}
		part := b.judgedPart(i)
		mass, _ := part.Density.Of(p.Volume) // with vessels every part has a density
		share, _ := mass.Per(part.Poured)
		of[at][i] = of[at][i].Add(share)
	}
	var kinds []kind
	for i := range vessels {
		if of[i] != nil {
			kinds = append(kinds, kind{name: vessels[i].Name, of: of[i]})
		}
	}
	return kinds
}

// piece reckons a kind of piece, all its parts together.
func (b *Batch) piece(k *kind) PieceCaps {
	p := PieceCaps{Name: k.name}
	var doses []fragrance.Dose
	listed := true // the allergens of all that may be a fragrance
	for i := range b.Parts {
		if k.of[i].Sign() == 0 {
			continue // nothing of the part is in it
		}
		for j := range b.Parts[i].Additions {
			listed = listed && !b.Parts[i].Additions[j].maybeFragrance()
		}
		part := b.judgedPart(i)
		p.Dry = p.Dry.Add(product(part.Dry, k.of[i], units.Nearest))
		for _, d := range part.doses() {
			d.Mass = product(d.Mass, k.of[i], units.Nearest)
			// The same fragrance of several layers is one dose: what it brings is reckoned once.
			id := d.Material.ID()
			same := slices.IndexFunc(doses, func(known fragrance.Dose) bool { return known.Material.ID() == id })
			if same >= 0 {
				doses[same].Mass = doses[same].Mass.Add(d.Mass)
				continue
			}
			doses = append(doses, d)
		}
	}
	p.Scented = scented(fragrance.Judge(b.Formula.law(), p.Dry, doses))
	p.AllergensComplete = p.AllergensComplete && listed
	return p
}

// Label is an allergen for the label.
type Label struct {
	fragrance.Allergen
	OnlyInPart string // the part that holds so much of it, where no piece does; else empty
}

// Labels lists the allergens of all kinds of pieces, each at the most that one of them
// holds; then those that are above the threshold in a part alone. complete is false
// where there may be others, as with embeds.
func (c *Caps) Labels() (labels []Label, complete bool) {
	complete = !c.Embedded
	add := func(list []fragrance.Allergen, part string) {
		for _, a := range list {
			i := slices.IndexFunc(labels, func(known Label) bool { return known.Rule == a.Rule })
			switch {
			case i < 0:
				labels = append(labels, Label{a, part})
			case labels[i].OnlyInPart == "" && part != "":
			case a.OfDry.Compare(labels[i].OfDry) > 0:
				labels[i] = Label{a, part}
			}
		}
	}
	for i := range c.Pieces {
		complete = complete && c.Pieces[i].AllergensComplete
		add(c.Pieces[i].Allergens, "")
	}
	for i := range c.Parts {
		complete = complete && c.Parts[i].AllergensComplete
		add(c.Parts[i].Allergens, c.Parts[i].Name)
	}
	return labels, complete
}
