package soap

import (
	"example.com/lyewright/internal/jsonwrite"
	"example.com/lyewright/units"
)

// MarshalJSON writes what is known of the oil: saponification and acid values
// in mg KOH/g, iodine values in g per 100 g, unsaponifiable matter in g/kg. A
// missing figure is a missing key; an oil without a range has no low and high.
func (o Oil) MarshalJSON() ([]byte, error) {
	w := jsonWriter{jsonwrite.New()}
	w.Object("", func() { w.oil(o) })
	return w.Bytes(), nil
}

func (w jsonWriter) text(key, text string) {
	if text != "" {
		w.Text(key, text)
	}
}

func (w jsonWriter) oil(o Oil) {
	w.Text("oil", o.ID())
	w.text("asked", o.Asked())
	w.text("name_note", o.NameNote())
	w.Text("data_edition", DataEdition())
	w.Text("name", o.Name())
	w.text("latin", o.Latin())
	w.text("inci", o.INCI())
	w.Text("kind", o.Kind().String())
	if value := o.Saponification(); value.Typical.Given() {
		w.Object("saponification", func() {
			if o.HasRange() {
				w.Number("low", value.Low.MilligramsPerGramText(6))
			}
			w.Number("typical", value.Typical.MilligramsPerGramText(6))
			if o.HasRange() {
				w.Number("high", value.High.MilligramsPerGramText(6))
			}
			w.Number("middle", o.Middle().MilligramsPerGramText(6))
			w.Number("profile", o.ProfileValue().MilligramsPerGramText(6))
			w.Text("how", o.How().String())
			w.Text("choice", o.Choice().String())
		})
	}
	if low, high := o.Iodine(); low.Given() || high.Given() {
		w.Object("iodine", func() {
			w.Number("low", low.PercentText(6))
			w.Number("high", high.PercentText(6))
		})
	}
	w.Text("source", o.ValueSource().String())
	w.List("figures", func() {
		for _, f := range o.Figures() {
			w.Object("", func() { w.figure(f) })
		}
	})
	w.List("profiles", func() {
		for _, p := range o.Profiles() {
			w.Object("", func() {
				w.Text("source", p.Source.String())
				w.Text("how", p.Source.How.String())
				w.List("acids", func() {
					for _, share := range p.Acids {
						w.Object("", func() {
							w.Text("acid", share.Acid)
							w.share("low_pct", share.Low)
							w.share("high_pct", share.High)
						})
					}
				})
			})
		}
	})
	w.Texts("notes", o.Notes())
}

func (w jsonWriter) figure(f Figure) {
	w.Text("figure", f.Name)
	digits := func(r units.Ratio) string { return r.Text(6) }
	switch f.Unit {
	case "mg KOH/g", "g/kg":
		digits = func(r units.Ratio) string { return r.MilligramsPerGramText(6) }
	case "g iodine/100 g":
		digits = func(r units.Ratio) string { return r.PercentText(6) }
	}
	w.Number("low", digits(f.Low))
	w.Number("high", digits(f.High))
	w.Text("unit", f.Unit)
	w.text("remark", f.Remark)
	w.Text("source", f.Source.String())
	w.Text("how", f.Source.How.String())
}
