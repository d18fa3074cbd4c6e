package colour

import (
	"strings"

	"example.com/lyewright/internal/jsonwrite"
	"example.com/lyewright/units/cite"
)

// MarshalJSON writes what is known of a colourant: its standing under both laws, its
// stability, what it disperses in, usual loads in percent of their base, each with its
// source. A missing figure is a missing key.
func (c Colourant) MarshalJSON() ([]byte, error) {
	return object(c.write), nil
}

func (s Status) write(w *jsonwrite.Writer) {
	w.Text("standing", s.Standing.String())
	said(w, "clause", s.Clause)
	said(w, "remark", s.Remark)
	if s.Source() != (cite.Source{}) {
		w.Text("source", s.Source().String())
	}
}

func (f Fastness) write(w *jsonwrite.Writer) {
	w.Text("stability", f.Stability.String())
	w.Text("text", f.Text)
	w.Text("source", f.Source().String())
}

// said writes a text, where there is one.
func said(w *jsonwrite.Writer, key, text string) {
	if text != "" {
		w.Text(key, text)
	}
}

func (c Colourant) write(w *jsonwrite.Writer) {
	text := func(key, text string) { said(w, key, text) }
	w.Text("colourant", c.ID())
	text("asked", c.Asked())
	text("name_note", c.NameNote())
	w.Text("data_edition", DataEdition())
	w.Text("name", c.Name())
	text("chemistry", c.Chemistry())
	w.Texts("ci", c.CI())
	if low, planned, high := c.Density(); planned.Given() {
		w.Object("density_g_per_ml", func() {
			w.Number("low", low.Text(9))
			w.Number("planned", planned.Text(9))
			w.Number("high", high.Text(9))
			text("remark", c.Remark())
			w.Text("source", c.DensitySource().String())
		})
	}
	for _, law := range []Law{EU, US} {
		w.Object(strings.ToLower(law.String()), func() { c.Under(law).write(w) })
	}
	if fast := c.InAlkali(); fast.Stability != StabilityUnknown {
		w.Object("alkali", func() { fast.write(w) })
	}
	if in := c.Disperses(); in.In != 0 {
		w.Object("disperses", func() {
			w.Bool("only", in.Only)
			w.Text("text", in.Text)
			w.Text("source", in.Source.String())
		})
	}
	w.List("usual", func() {
		alone, given := c.Usual(false)
		if !given {
			return
		}
		of := func(u Usual, role string) {
			w.Object("", func() {
				text("role", role)
				w.Number("low_pct", u.Low.Share.PercentText(6))
				w.Number("high_pct", u.High.Share.PercentText(6))
				w.Text("base", u.Low.Of.String())
				w.Text("source", u.Source.String())
			})
		}
		if c.Whitens() {
			beside, _ := c.Usual(true)
			of(alone, "alone")
			of(beside, "beside another")
			return
		}
		of(alone, "")
	})
	text("note", c.Note())
}
