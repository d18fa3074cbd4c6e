package soap

import (
	"example.com/lyewright/internal/jsonwrite"
	"example.com/lyewright/units"
)

// MarshalJSON writes the batch as one JSON object of schema batch/1: masses in
// grams with at most six decimals, shares in percent. A missing figure is a
// missing key; keys may be added, but a key never changes its meaning. The error is nil.
func (b Batch) MarshalJSON() ([]byte, error) {
	w := jsonWriter{jsonwrite.New()}
	w.Object("", func() { w.batch(&b) })
	return w.Bytes(), nil
}

type jsonWriter struct{ *jsonwrite.Writer }

func (w jsonWriter) mass(key string, m units.Mass)   { w.Number(key, m.Text(units.Gram, 6)) }
func (w jsonWriter) share(key string, r units.Ratio) { w.Number(key, r.PercentText(6)) }

func (w jsonWriter) weighing(m Weighing) {
	w.mass("mass_g", m.Mass)
	w.mass("weigh_g", m.Weigh)
}

func (w jsonWriter) batch(b *Batch) {
	w.Text("schema", "batch/1")
	w.Text("data_edition", DataEdition())
	w.Text("formula", b.Formula.Name)
	w.text("note", b.Formula.Note)
	w.List("oils", func() {
		for i := range b.Oils {
			o := &b.Oils[i]
			w.Object("", func() {
				w.Text("oil", o.Oil.ID())
				w.text("asked", o.Oil.Asked())
				w.Text("name", o.Oil.Name())
				w.weighing(o.Weighing)
				w.mass("withheld_g", o.Withheld)
				w.text("note", o.Note)
			})
		}
	})
	w.List("alkali", func() {
		for i := range b.Alkalis {
			a := &b.Alkalis[i]
			w.Object("", func() {
				w.Text("kind", a.Alkali.String())
				w.text("asked", a.Asked)
				w.text("note", a.Note)
				w.share("purity_pct", a.Purity.Typical)
				if a.Source.Title != "" {
					w.Text("purity_source", a.Source.String())
				}
				if !a.Strength.Given() {
					w.weighing(a.Dry)
					return
				}
				w.mass("mass_g", a.Dry.Mass)
				w.share("strength_pct", a.Strength.Typical)
				w.mass("stock_g", a.Stock.Mass)
				w.mass("stock_weigh_g", a.Stock.Weigh)
			})
		}
	})
	w.Object("water", func() {
		w.mass("asked_g", b.Water.Asked)
		w.weighing(b.Water.Weighing)
		w.mass("withheld_g", b.Water.Withheld)
		if len(b.Liquids) > 0 {
			w.List("liquids", func() { w.liquids(b.Liquids) })
		}
	})
	if len(b.Acids) > 0 {
		w.List("acids", func() { w.acids(b.Acids) })
	}
	w.Object("lye", func() { w.lye(&b.Lye) })
	w.mass("batter_g", b.Batter)
	w.mass("poured_g", b.Poured)
	w.mass("dry_g", b.Dry)
	divided := b.Formula.keepsBack()
	if divided {
		w.filled(b.Filled, b.Reserve, b.Loss)
	}
	if b.Volumes != nil {
		w.Object("size", func() { w.size(b.Volumes) })
	}
	w.outlook(&b.Superfat)
	w.List("parts", func() {
		for i := range b.Parts {
			w.Object("", func() { w.part(&b.Parts[i], divided) })
		}
	})
	if b.Volumes != nil {
		w.vessels(b)
	}
	if b.Weighed != nil {
		w.Object("weighed", func() { w.reckoning(b.Weighed) })
	}
	w.List("findings", func() {
		for i := range b.Findings {
			w.Object("", func() { w.finding(&b.Findings[i]) })
		}
	})
}

func (w jsonWriter) outlook(o *Outlook) {
	w.Object("superfat", func() {
		w.share("planned_pct", o.Planned)
		w.share("as_printed_pct", o.AsPrinted)
		w.share("low_pct", o.Low)
		w.share("likely_low_pct", o.LikelyLow)
		w.share("likely_high_pct", o.LikelyHigh)
		w.share("high_pct", o.High)
		w.Bool("complete", o.Complete)
		w.share("free_alkali_worst_pct", o.FreeAlkaliWorst)
	})
}

func (w jsonWriter) part(p *PartBatch, divided bool) {
	w.Text("part", p.Name)
	w.text("note", p.Note)
	w.share("share_pct", p.Share)
	w.mass("batter_g", p.Batter)
	w.mass("oils_g", p.Oils)
	w.mass("water_g", p.Water)
	w.mass("poured_g", p.Poured)
	w.mass("dry_g", p.Dry)
	if divided {
		w.filled(p.Filled, p.Reserve, p.Loss)
	}
	if p.Density.Given() {
		w.volume("volume_ml", p.Volume)
		w.Number("density_g_per_ml", p.Density.Text(6))
	}
	w.outlook(&p.Superfat)
	w.additions(p.Additions)
}

func (w jsonWriter) additions(additions []AdditionWeighing) {
	w.List("additions", func() {
		for i := range additions {
			a := &additions[i]
			w.Object("", func() {
				w.Text("name", a.Name)
				w.text("asked", a.Asked)
				w.Text("kind", a.Kind.String())
				w.text("note", a.Note)
				w.weighing(a.Weighing)
				if c := a.Carrier; c != nil {
					w.Text("carrier", c.Name)
					w.mass("carrier_g", c.Mass)
					w.mass("carrier_weigh_g", c.Weigh)
					w.Text("from", c.From.String())
				}
				if a.Paste.Mass.Sign() > 0 {
					w.mass("paste_g", a.Paste.Mass)
					w.mass("paste_weigh_g", a.Paste.Weigh)
				}
			})
		}
	})
}

func (w jsonWriter) finding(f *Finding) {
	w.Text("code", f.Code)
	w.Text("severity", f.Severity.String())
	w.Text("subject", f.Subject)
	w.Text("message", f.Message())
	w.Texts("names", f.Names)
	if f.Detail != "" {
		w.Text("detail", f.Detail)
	}
	switch f.Unit {
	case "":
	case "K", "°C", "moulds", "amendment", "findings":
		w.Number("value", f.Value.Text(6))
		w.Number("limit", f.Limit.Text(6))
		w.Text("unit", f.Unit)
	case "mg KOH/g":
		w.Number("value", f.Value.MilligramsPerGramText(6))
		w.Number("limit", f.Limit.MilligramsPerGramText(6))
		w.Text("unit", f.Unit)
	default:
		w.share("value", f.Value)
		w.share("limit", f.Limit)
		w.Text("unit", f.Unit)
	}
	if s := f.SuperfatIf; s != nil {
		w.Object("superfat_if", func() {
			w.share("batch_pct", s.Batch)
			w.Text("part", s.Part)
			w.share("part_pct", s.OfPart)
			w.share("likely_low_pct", s.LikelyLow)
		})
	}
	w.Text("source", f.Source.String())
}
