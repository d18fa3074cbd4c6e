package soap

import (
	"example.com/lyewright/colour/tint"
	"example.com/lyewright/internal/jsonwrite"
	"example.com/lyewright/units"
)

// TintNotices are what every prediction of a colour says, in sentences: what it is for,
// and what it knows nothing of.
func TintNotices() []string {
	return []string{
		"A prediction is for soap made and read as the swatches were. It knows nothing of micas and other pearls, whose colour depends on the angle, of gelled soap from ungelled swatches or the other way round, or of what fragrance and time do to the colour.",
		"No usual load is a limit: loads are a habit of the trade. Powders raise dust: weigh them away from draughts, with a mask.",
	}
}

// MarshalJSON writes the colours as one JSON object of schema tint/1: L*, a*, b* and
// differences with two decimals, loads in percent with six. A missing figure is a missing
// key.
func (t Tint) MarshalJSON() ([]byte, error) {
	w := jsonWriter{jsonwrite.New()}
	w.Object("", func() { w.tint(&t) })
	return w.Bytes(), nil
}

// estimate writes a figure that is an estimate, with a few decimals.
func (w jsonWriter) estimate(key string, v float64, decimals int) {
	r, _ := units.RatioOfFloat(v)
	w.Number(key, r.Text(decimals))
}

func (w jsonWriter) tint(t *Tint) {
	w.Text("schema", "tint/1")
	w.Text("data_edition", DataEdition())
	w.Text("formula", t.Formula)
	if t.Fit.Given() {
		w.Object("fit", func() {
			w.Int("bands", t.Fit.Count())
			w.text("name", t.Swatches)
			w.Text("of", t.Fit.Bands().String())
			w.estimate("delta_e00_mean", t.Fit.Floor(), 2)
			w.estimate("delta_e00_max", t.Fit.Worst(), 2)
			w.Int("spare_swatches", t.Fit.Spare())
			w.Bool("thin_layers", t.Fit.Thin())
			w.List("swatches", func() {
				for _, r := range t.Fit.Residuals() {
					w.Object("", func() {
						w.Text("swatch", r.Swatch)
						w.estimate("delta_e00", r.Difference, 2)
					})
				}
			})
		})
	}
	w.List("parts", func() {
		for i := range t.Parts {
			w.Object("", func() { w.partTint(&t.Parts[i], t.Fit) })
		}
	})
	w.Texts("order", t.Order)
	w.List("findings", func() {
		for i := range t.Findings {
			w.Object("", func() { w.finding(&t.Findings[i]) })
		}
	})
	w.Texts("notices", TintNotices())
}

func (w jsonWriter) lab(key string, c tint.Lab) {
	w.List(key, func() {
		for _, v := range [3]float64{c.L, c.A, c.B} {
			w.estimate("", v, 2)
		}
	})
}

// colour writes a colour and its picture.
func (w jsonWriter) colour(c tint.Lab) {
	picture, inGamut := c.SRGB()
	w.lab("lab", c)
	w.Text("srgb", picture.String())
	w.Bool("in_gamut", inGamut)
}

func (w jsonWriter) partTint(p *PartTint, fit tint.Calibration) {
	w.Text("part", p.Name)
	if p.Colour != nil {
		w.colour(p.Colour.Lab)
	}
	if p.Target != nil {
		w.Object("target", func() { w.colour(*p.Target) })
	}
	if p.Colour != nil && p.Target != nil {
		w.estimate("delta_e00", p.Difference, 2)
		w.Bool("reachable", p.Reachable)
	}
	if p.Colour != nil {
		w.estimate("floor", fit.Floor(), 2)
	}
	if m := p.Matched; m != nil {
		w.estimate("best_delta_e00", m.Best, 3)
		if !p.Reachable {
			w.Texts("missing", m.Missing)
			w.Texts("at_most", m.AtMost)
		}
	}
	w.List("loads", func() {
		for i := range p.Loads {
			l := &p.Loads[i]
			w.Object("", func() {
				w.Text("colourant", l.Colourant)
				w.mass("weigh_g", l.Weighed)
				w.share("load_of_batter_pct", l.OfBatter)
				w.share("load_of_oils_pct", l.OfOils)
				w.share("load_of_dry_pct", l.OfDry)
				if l.Sought {
					w.share("found_of_batter_pct", l.Found)
					w.Text("at", l.At.String())
				}
			})
		}
	})
	w.Number("cost", p.Cost.Text(4))
	if p.Unpriced {
		w.Bool("prices_lacking", true)
	}
	if white := p.Whiter; white != nil {
		w.Object("whiter", func() {
			w.Text("colourant", white.Colourant)
			w.share("now_of_batter_pct", white.Now)
			w.Bool("seen", white.Seen)
			if white.Seen {
				w.share("more_of_batter_pct", white.More)
				w.mass("more_g", white.Mass)
			}
			w.share("most_of_batter_pct", white.Most)
		})
	}
	if len(p.Coats) > 0 {
		w.List("coats", func() {
			for i := range p.Coats {
				c := &p.Coats[i]
				w.Object("", func() {
					w.Text("vessel", c.Vessel)
					w.Text("on", c.On)
					w.Text("under", c.Under)
					w.Number("thickness_mm", c.Thickness.Text(6))
					if c.Colour != nil {
						w.colour(c.Colour.Lab)
					}
				})
			}
		})
	}
	for _, list := range []struct {
		key   string
		names []string
	}{{"in_no_swatch", p.Unknown}, {"beyond_swatches", p.Beyond}, {"pearls", p.Pearls}, {"additives_not_counted", p.Additives}, {"browned_by", p.Browning}} {
		if len(list.names) > 0 {
			w.Texts(list.key, list.names)
		}
	}
}
