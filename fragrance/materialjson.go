package fragrance

import "example.com/lyewright/internal/jsonwrite"

// MarshalJSON writes what is known of a material: shares in percent, its caps alone in
// the dry bar under both laws. A missing figure is a missing key.
func (m Material) MarshalJSON() ([]byte, error) {
	w := jsonwrite.New()
	w.Object("", func() { m.write(w) })
	return w.Bytes(), nil
}

func (m Material) write(w *jsonwrite.Writer) {
	text := func(key, text string) {
		if text != "" {
			w.Text(key, text)
		}
	}
	w.Text("fragrance", m.ID())
	text("asked", m.Asked())
	text("name_note", m.NameNote())
	w.Text("data_edition", DataEdition())
	w.Text("name", m.Name())
	text("latin", m.Latin())
	w.Text("category", Category())
	w.Bool("in_annex", m.InAnnex())
	w.Bool("complete", m.Complete())
	w.List("unjudged", func() {
		for _, u := range m.Unjudged(IFRAAndEU) {
			w.Object("", func() {
				w.Text("why", u.Why.String())
				w.Texts("of", u.Names())
			})
		}
	})
	for _, law := range []Law{IFRAAndEU, IFRAAlone} {
		key := "caps"
		if law == IFRAAlone {
			key = "caps_ifra_alone"
		}
		w.List(key, func() {
			for _, c := range m.Caps(law) {
				w.Object("", func() {
					w.Number("cap_of_dry_bar_pct", c.Most.PercentText(6))
					text("binding", c.Rule.Name())
					if c.Rule.Given() {
						w.Text("binding_law", c.Rule.Body().String())
					}
					w.Number("limit_pct", c.Limit.PercentText(6))
					w.Number("brings_pct", c.Brings.PercentText(6))
					if c.Rule.Given() {
						w.Text("limit_source", c.Rule.Source().String())
					}
					w.Text("source", c.Source.String())
				})
			}
		})
	}
	w.List("rules", func() {
		for _, r := range m.Own() {
			w.Object("", func() {
				w.Text("name", r.Name())
				w.Text("law", r.Body().String())
				w.Text("number", r.Number())
				w.Text("standing", r.Standing().String())
				w.Number("limit_pct", r.Limit().PercentText(6))
				text("list", r.List().String())
				text("ask", r.Ask())
				w.Text("source", r.Source().String())
			})
		}
	})
	w.List("constituents", func() {
		for _, f := range m.Figures() {
			w.Object("", func() {
				w.Text("cas", f.CAS.String())
				text("name", f.Name)
				w.Number("low_pct", f.Low.PercentText(6))
				w.Number("high_pct", f.High.PercentText(6))
				w.Text("source", f.Source.String())
				w.Text("how", f.Source.How.String())
			})
		}
	})
	w.Texts("notes", m.Notes())
}
