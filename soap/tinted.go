package soap

import (
	"context"

	"example.com/lyewright/colour"
	"example.com/lyewright/colour/tint"
	"example.com/lyewright/units"
)

// Tint is what colour the parts of a batch will have, and in which order to work: a view
// of the batch. Colours are those of what is weighed. They are known of parts whose
// colourants all stood in the formula's swatches.
type Tint struct {
	Formula  string           // its name
	Fit      tint.Calibration // not given where the formula has no swatches
	Swatches string           // their name; may be empty
	Parts    []PartTint       // in the formula's order
	Order    []string         // the parts, the lightest first: the order to work in (common practice)

	Findings []Finding // those on colour, and every danger: see [OnColour]
}

// PartTint is what colour a part will have.
type PartTint struct {
	Name   string
	Colour *tint.Colour // nil where it is not known
	// Unknown are the colourants that stood in no swatch; of Beyond there is more than in any.
	Unknown, Beyond []string

	Target     *tint.Lab // nil: none
	Difference float64   // of the colour from the target, as CIEDE2000; 0 without either
	// Reachable: the target is met within 1, or within the floor of the calibration, by what
	// is weighed, or where loads were looked for by the nearest mixture.
	Reachable bool
	Matched   *Matched // nil where no loads were looked for

	Loads []TintLoad // its colourants: those with a load, then those of its match
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
	Best float64 // the smallest difference from the target within reach, as CIEDE2000
	// Missing says in which direction the target lies from the nearest: "lighter", "darker", "redder",
	// "greener", "yellower", "bluer", the most lacking first.
	Missing []string
	// AtMost are the colourants of which the nearest mixture has the most: where the target
	// is out of reach they may be what holds it back.
	AtMost []string
}

// TintLoad is a colourant of a part.
type TintLoad struct {
	Colourant string     // its id
	Name      string     // its common name
	Weighed   units.Mass // of the pigment itself, as the scale shows it
	// What is weighed, of the part's batter, oils and dry mass.
	OfBatter, OfOils, OfDry units.Ratio

	Sought bool        // its load was looked for
	At     tint.At     // of what was sought: where its load stands
	Found  units.Ratio // of batter: the load that was found, before it is weighed
}

// Whiter is how much more white makes the next visible difference, CIEDE2000 of 1.
type Whiter struct {
	Colourant string      // the white
	Now       units.Ratio // of batter: what there is of it
	More      units.Ratio // of batter: how much more it takes, where Seen
	Mass      units.Mass  // the same of this part
	Seen      bool        // false: no load up to Most makes one
	Most      units.Ratio // of batter: the most that was tried
}

// Coat is a thin layer of the part on another.
type Coat struct {
	Vessel, On, Under string       // the vessel, the one that it stands on, and the part in that
	Thickness         units.Length // of the layer
	Colour            *tint.Colour // nil where it is not known
}

// Tint predicts the colours of what is weighed, in the batter as weighed where that was. The
// error is [Faults], where the batch's formula was changed so that its swatches or pigments
// no longer say anything; loads that were looked for stay those of the batch.
func (b *Batch) Tint() (Tint, error) { return b.TintContext(context.Background()) }

// TintContext is [Batch.Tint] with a context: work stops within 10 ms of its end, and the
// error then wraps that of the context.
func (b *Batch) TintContext(ctx context.Context) (Tint, error) {
	t := Tint{Formula: b.Formula.Name}
	if b.Formula.Swatches != nil {
		t.Swatches = b.Formula.Swatches.Name
	}
	t.Findings = b.selected(OnColour)
	shelf, err := colour.NewShelf(b.Formula.Pigments)
	if err != nil {
		return Tint{}, under("pigments", err)
	}
	if b.matching != nil {
		t.Fit = b.matching.calibration
	} else if b.Formula.Swatches != nil {
		if t.Fit, err = b.Formula.calibrated(ctx, shelf, "the tint is"); err != nil {
			return Tint{}, err
		}
	}
	for i := range b.Parts {
		if ctx.Err() != nil {
			return Tint{}, stopped("the tint is", ctx)
		}
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
