package soap

import (
	"example.com/lyewright/fragrance"
	"example.com/lyewright/internal/jsonwrite"
	"example.com/lyewright/units"
)

// Notices are what every answer about fragrance says under a law, in sentences: that the
// supplier's certificate comes first, and what is not held here.
func Notices(law fragrance.Law) []string {
	notices := []string{
		"The supplier's certificate and local law come first. This is not a safety assessment.",
		"Limits are those of category " + fragrance.Category() + " of the IFRA Standards, body and hands, mostly rinsed off; others are not held.",
	}
	if law != fragrance.IFRAAlone {
		notices = append(notices, "The European Union's lists of prohibited and of restricted substances are not held in full.")
	}
	return append(notices, "What alkali may split off in the bar is not counted, such as eugenol from eugenyl acetate or linalool from linalyl acetate.")
}

// MarshalJSON writes the caps as one JSON object of schema cap/1: masses in grams with
// at most six decimals, shares in percent. binding is null where no limit binds; any
// other missing figure is a missing key.
func (c Caps) MarshalJSON() ([]byte, error) {
	w := jsonWriter{jsonwrite.New()}
	w.Object("", func() { w.caps(&c) })
	return w.Bytes(), nil
}

func (w jsonWriter) caps(c *Caps) {
	w.Text("schema", "cap/1")
	w.Text("data_edition", DataEdition())
	w.Text("formula", c.Formula)
	w.Text("category", fragrance.Category())
	w.Text("law", c.Law.String())
	w.Text("edition", fragrance.Edition(c.Law))
	w.List("parts", func() {
		for i := range c.Parts {
			w.Object("", func() { w.partCaps(&c.Parts[i], c.Law) })
		}
	})
	labels, complete := c.Labels()
	w.Object("piece", func() {
		var most Scented
		for i := range c.Pieces {
			p := &c.Pieces[i].Scented
			if !most.Fragrance.Given() || p.Fragrance.Compare(most.Fragrance) > 0 {
				most.Fragrance = p.Fragrance
			}
			if p.Limited && (!most.Limited || p.Most.Used.Compare(most.Most.Used) > 0) {
				most.Most, most.Limited = p.Most, true
			}
		}
		w.share("fragrance_of_dry_pct", most.Fragrance)
		w.mostUsed(&most)
		w.List("allergens", func() {
			for i := range labels {
				w.Object("", func() {
					w.allergen(&labels[i].Allergen)
					w.Bool("only_in_part", labels[i].OnlyInPart != "")
					w.text("part", labels[i].OnlyInPart)
				})
			}
		})
		w.Bool("allergens_complete", complete)
	})
	if len(c.Pieces) > 1 {
		w.List("pieces", func() {
			for i := range c.Pieces {
				p := &c.Pieces[i]
				w.Object("", func() {
					w.Text("vessel", p.Name)
					if p.Last {
						w.Bool("in_last_batch", true)
					}
					w.mass("dry_g", p.Dry)
					w.share("fragrance_of_dry_pct", p.Fragrance)
					w.scented(&p.Scented)
				})
			}
		})
	}
	lists := fragrance.AllergenLists()
	w.Object("allergen_lists", func() {
		w.share("above_pct", lists.Threshold)
		w.Text("new_placed_until", lists.Placed)
		w.Text("new_available_until", lists.Available)
		w.Text("source", lists.Source.String())
	})
	w.List("findings", func() {
		for i := range c.Findings {
			w.Object("", func() { w.finding(&c.Findings[i]) })
		}
	})
	w.Texts("notices", Notices(c.Law))
}

func (w jsonWriter) partCaps(p *PartCaps, law fragrance.Law) {
	w.Text("part", p.Name)
	w.Bool("judged_as_a_whole", len(p.Unjudged) == 0)
	w.Texts("unjudged", p.Unjudged)
	w.mass("dry_g", p.Dry)
	w.mass("oils_g", p.Oils)
	w.List("fragrances", func() {
		for i := range p.Fragrances {
			w.Object("", func() { w.fragranceCap(&p.Fragrances[i], law) })
		}
	})
	if len(p.Dried) > 0 {
		w.Texts("counted_as_dry", p.Dried)
	}
	w.share("fragrance_of_dry_bar_pct", p.Fragrance)
	w.scented(&p.Scented)
}

func (w jsonWriter) scented(s *Scented) {
	w.mostUsed(s)
	w.List("allergens", func() {
		for i := range s.Allergens {
			w.Object("", func() { w.allergen(&s.Allergens[i]) })
		}
	})
	w.Bool("allergens_complete", s.AllergensComplete)
}

// mostUsed writes the limit that is used most.
func (w jsonWriter) mostUsed(s *Scented) {
	if s.Limited {
		w.Text("most_used", limitName(s.Most.Rule))
		w.share("most_used_share_pct", s.Most.Used)
	}
}

// limitName names a limit: the substance of a rule, or the certificate.
func limitName(r fragrance.Rule) string {
	if !r.Given() {
		return "certificate"
	}
	return r.Name()
}

func (w jsonWriter) allergen(a *fragrance.Allergen) {
	w.Text("name", a.Rule.Name())
	w.share("of_dry_pct", a.OfDry)
	if a.Bound {
		w.Bool("at_most", true)
	}
	w.Text("list", a.Rule.List().String())
	w.text("members", a.Rule.Members())
	w.Text("source", a.Rule.Source().String())
}

func (w jsonWriter) fragranceCap(f *FragranceCap, law fragrance.Law) {
	m := f.Material
	w.Text("fragrance", m.ID())
	w.mass("dose_g", f.Mass)
	w.share("of_oils_pct", f.OfOils)
	w.share("of_dry_bar_pct", f.OfDry)
	w.share("of_dry_piece_pct", f.OfPiece)
	if len(f.Caps) > 0 {
		w.capOf(&f.Caps[0])
	} else {
		w.Null("binding")
	}
	if f.Limited {
		w.mass("cap_g", f.Most.Round(microgram(), units.Down))
		w.share("cap_of_oils_pct", f.MostOfOils)
	}
	w.List("next", func() {
		for i := 1; i < len(f.Caps); i++ {
			w.Object("", func() { w.capOf(&f.Caps[i]) })
		}
	})
	w.Bool("judged", !m.OnlyAName())
	w.Bool("complete", m.Complete())
	w.List("certificates", func() {
		for _, c := range m.Certificates() {
			w.Object("", func() {
				w.Text("fragrance", c.Of.ID())
				w.share("limit_pct", c.Limit)
				w.Int("amendment", c.Amendment)
			})
		}
	})
	w.List("unjudged", func() {
		for _, u := range m.Unjudged(law) {
			w.Object("", func() {
				w.Text("why", u.Why.String())
				w.Texts("of", u.Names())
			})
		}
	})
	w.List("no_limit_known", func() {
		for _, f := range m.Free() {
			w.Text("", f.CAS.String())
		}
	})
}

func (w jsonWriter) capOf(c *fragrance.Cap) {
	w.share("cap_of_dry_bar_pct", c.Most)
	w.Text("binding", limitName(c.Rule))
	if c.Rule.Given() {
		w.Text("binding_law", c.Rule.Body().String())
	}
	w.share("limit_pct", c.Limit)
	w.share("brings_pct", c.Brings)
	w.share("share_of_limit_pct", c.Used)
	if c.Rule.Given() {
		w.Text("limit_source", c.Rule.Source().String())
	}
	w.Text("source", c.Source.String())
}
