package madeup

import (
	"strconv"
	"strings"

	"example.com/lyewright/colour"
	"example.com/lyewright/colour/tint"
	"example.com/lyewright/fragrance"
	"example.com/lyewright/internal/jsonwrite"
	"example.com/lyewright/soap"
	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

// Text writes a formula of a [Maker]'s as the file that a maker would write, in one line.
// Every figure is written in full, so that the file reads back as the formula. It knows
// what makers make up and no more: no profiles, grades or spectra.
func Text(f soap.Formula) []byte {
	w := writer{jsonwrite.New()}
	w.Object("", func() {
		w.Text("formula", f.Name)
		w.List("oils", func() {
			for _, line := range f.Oils {
				w.oil(line)
			}
		})
		w.List("alkali", func() {
			for _, line := range f.Alkalis {
				w.Object("", func() {
					w.Text("kind", line.Alkali.String())
					w.span("purity", line.Purity, percent)
					if line.Stock.Given() {
						w.Object("stock", func() { w.span("strength", line.Stock, percent) })
					}
					w.percent("saponifies", line.Saponifies)
				})
			}
		})
		if f.Superfat.AtLeast.Given() {
			w.Object("superfat", func() { w.percent("at_least", f.Superfat.AtLeast) })
		}
		w.percent("superfat", f.Superfat.Planned)
		w.water(f.Water)
		w.size(f)
		w.Object("scale", func() { w.mass("oils", f.Scale); w.mass("small", f.Small) })
		w.acids(f.Acids)
		if f.Temperature.Pour.Given() {
			w.Object("temperature", func() { w.Text("pour", f.Temperature.Pour.String()) })
		}
		if len(f.Markets) > 0 {
			w.List("markets", func() {
				for _, market := range f.Markets {
					w.Text("", market.String())
				}
			})
		}
		w.materials(f.Materials)
		w.Text("gel", f.Gel.String())
		w.pigments(f.Pigments)
		w.swatches(f.Swatches)
		if len(f.Parts) > 0 {
			w.List("parts", func() {
				for i := range f.Parts {
					w.part(&f.Parts[i])
				}
			})
		}
		w.weighed(f.Weighed)
	})
	return w.Bytes()
}

type writer struct{ *jsonwrite.Writer }

func percent(r units.Ratio) string { return r.PercentText(34) + " %" }

func milligrams(r units.Ratio) string { return r.MilligramsPerGramText(34) }

func (w writer) percent(key string, r units.Ratio) {
	if r.Given() {
		w.Text(key, percent(r))
	}
}

func (w writer) mass(key string, m units.Mass) {
	if m.Sign() != 0 {
		w.Text(key, m.String())
	}
}

func (w writer) count(key string, n int) {
	if n != 0 {
		w.Int(key, n)
	}
}

func (w writer) share(r units.Ratio, rest bool) {
	if rest {
		w.Text("share", "rest")
	}
	w.percent("share", r)
}

// span writes a range, one without width as its figure alone.
func (w writer) span(key string, r units.Range, text func(units.Ratio) string) {
	switch {
	case !r.Given():
	case r.Low.Equal(r.High):
		w.Text(key, text(r.Low))
	default:
		w.Object(key, func() {
			w.Text("low", text(r.Low))
			if r.Typical.Given() {
				w.Text("typical", text(r.Typical))
			}
			w.Text("high", text(r.High))
		})
	}
}

func (w writer) oil(line soap.OilLine) {
	w.Object("", func() {
		w.Text("oil", line.Oil.ID())
		w.share(line.Share, line.Rest)
		w.mass("mass", line.Mass)
		value := line.Oil.Saponification()
		if plain, err := soap.LookUpOil(line.Oil.ID()); err != nil || !plain.Saponification().Typical.Equal(value.Typical) {
			w.span("saponification", value, milligrams)
		}
	})
}

func (w writer) water(water soap.Water) {
	w.Object("water", func() {
		w.percent("lye_concentration", water.LyeConcentration)
		if water.PerAlkali.Given() {
			w.Text("per_alkali", water.PerAlkali.Text(34))
		}
		w.percent("per_oils", water.PerOils)
		if len(water.Liquids) == 0 {
			return
		}
		w.List("liquids", func() {
			for _, l := range water.Liquids {
				w.Object("", func() {
					w.Text("liquid", l.Name)
					w.percent("share", l.Share)
					w.mass("mass", l.Mass)
					w.percent("water", l.Water)
					w.percent("fat", l.Fat)
					w.percent("sugar", l.Sugar)
					w.percent("alcohol", l.Alcohol)
					w.span("saponification", l.Saponification, milligrams)
				})
			}
		})
	})
}

func (w writer) acids(acids []soap.AcidLine) {
	if len(acids) == 0 {
		return
	}
	w.List("acids", func() {
		for _, a := range acids {
			w.Object("", func() {
				w.Text("acid", a.Acid.ID)
				w.load("load", a.Load)
				w.span("strength", a.Strength, percent)
				w.Bool("compensate", a.Compensate == soap.Compensated)
			})
		}
	})
}

func (w writer) load(key string, l soap.Load) {
	switch {
	case l.Max:
		w.Text(key, "max")
	case l.OfOils.Given():
		w.Text(key, percent(l.OfOils)+" of oils")
	case l.OfBatter.Given():
		w.Text(key, percent(l.OfBatter)+" of batter")
	default:
		w.mass(key, l.Mass)
	}
}

func (w writer) unlisted(yes bool) {
	if yes {
		w.Bool("unlisted", yes)
	}
}

func (w writer) carrier(c soap.Carrier) {
	if c.In == soap.NoLiquid {
		return
	}
	w.Object("carrier", func() {
		switch c.In {
		case soap.InWater:
			w.Text("liquid", "water")
		case soap.InGlycerin:
			w.Text("liquid", "glycerin")
		default:
			w.Text("liquid", c.Oil.ID())
		}
		w.Text("ratio", c.Ratio.Text(34))
		if c.From != soap.Usual {
			w.Text("from", c.From.String())
		}
		if c.Paste {
			w.Bool("paste", true)
		}
	})
}

func (w writer) part(p *soap.Part) {
	w.Object("", func() {
		w.Text("part", p.Name)
		w.share(p.Share, p.Rest)
		w.Text("work", p.Work.String())
		w.Text("look", p.Look.String())
		w.percent("reserve", p.Reserve)
		w.mass("loss", p.Loss)
		for _, list := range []struct {
			key, name string
			additions []soap.Addition
		}{{"colourants", "colourant", p.Colourants}, {"fragrances", "fragrance", p.Fragrances}, {"additives", "additive", p.Additives}} {
			w.List(list.key, func() {
				for _, a := range list.additions {
					w.Object("", func() {
						w.Text(list.name, a.Name)
						w.load("load", a.Load)
						w.unlisted(a.Unlisted)
						w.percent("margin", a.Margin)
						w.carrier(a.Carrier)
					})
				}
			})
		}
		if p.Target.Given() {
			w.Object("target", func() {
				if lab := p.Target.Lab; lab != nil {
					w.floats("lab", lab.L, lab.A, lab.B)
				} else {
					w.Text("srgb", p.Target.SRGB.String())
				}
			})
		}
		if len(p.Match) > 0 {
			w.List("match", func() {
				for _, m := range p.Match {
					w.Object("", func() {
						w.Text("colourant", m.Colourant)
						w.unlisted(m.Unlisted)
						w.load("most", m.Most)
						w.carrier(m.Carrier)
					})
				}
			})
		}
	})
}

func (w writer) floats(key string, figures ...float64) {
	w.List(key, func() {
		for _, figure := range figures {
			w.Number("", strconv.FormatFloat(figure, 'f', -1, 64))
		}
	})
}

func (w writer) materials(list []fragrance.Supplied) {
	if len(list) == 0 {
		return
	}
	w.List("materials", func() {
		for i := range list {
			w.material(&list[i])
		}
	})
}

func (w writer) material(m *fragrance.Supplied) {
	w.Object("", func() {
		w.Text("fragrance", m.ID)
		if len(m.Blend) > 0 {
			w.List("blend", func() {
				for _, b := range m.Blend {
					w.Object("", func() { w.Text("fragrance", b.Fragrance); w.percent("share", b.Share) })
				}
			})
			return
		}
		w.Bool("natural", m.Natural)
		w.Bool("complete", m.Complete)
		w.List("certificates", func() {
			for _, c := range m.Certificates {
				w.Object("", func() {
					w.Text("category", c.Category)
					w.percent("limit", c.Limit)
					w.Text("amendment", strconv.Itoa(c.Amendment))
				})
			}
		})
		w.List("constituents", func() {
			for _, c := range m.Constituents {
				w.Object("", func() {
					w.Text("cas", c.CAS.String())
					w.span("share", units.Range{Low: c.Share.Low, High: c.Share.High}, percent)
					if c.Origin != fragrance.AsMaterial {
						w.Bool("natural", c.Origin == fragrance.FromNature)
					}
				})
			}
		})
		if m.AllergensListed {
			w.Texts("allergens", m.Allergens)
		}
		if words := m.Behaviour.Words(); len(words) > 0 {
			w.Texts("behaviour", words)
		}
	})
}

func (w writer) pigments(list []colour.Supplied) {
	if len(list) == 0 {
		return
	}
	w.List("pigments", func() {
		for i := range list {
			p := &list[i]
			w.Object("", func() {
				w.Text("colourant", p.ID)
				if p.Name != "" {
					w.Text("name", p.Name)
				}
				if len(p.CI) > 0 {
					w.Texts("ci", p.CI)
				}
				if p.DispersesIn != 0 {
					w.Texts("disperses_in", strings.Split(p.DispersesIn.String(), ", "))
				}
				w.Bool("nano", p.Nano)
				if p.Usual.Low.Share.Given() {
					w.Object("usual", func() { w.Text("low", p.Usual.Low.Text(34)); w.Text("high", p.Usual.High.Text(34)) })
				}
				if p.Price.Given() {
					w.Text("price", p.Price.Amount.Text(34)+" per "+p.Price.Per.String())
				}
			})
		}
	})
}

func (w writer) swatches(s *tint.Swatches) {
	if s == nil {
		return
	}
	w.Object("swatches", func() {
		w.Text("name", s.Name)
		if s.Surface != nil {
			w.Object("surface", func() {
				w.Number("outside", strconv.FormatFloat(s.Surface.Outside, 'f', -1, 64))
				w.Number("inside", strconv.FormatFloat(s.Surface.Inside, 'f', -1, 64))
			})
		}
		w.List("read", func() {
			for _, read := range s.Read {
				w.Object("", func() {
					w.Text("swatch", read.Name)
					w.Text("srgb", read.SRGB.String())
					w.Object("loads", func() {
						for _, l := range read.Loads {
							w.Text(l.Colourant, percent(l.OfBatter)+" of batter")
						}
					})
				})
			}
		})
	})
}

func (w writer) weighed(weighed soap.Weighed) {
	if weighed.Stage == soap.NotWeighed {
		return
	}
	w.Object("weighed", func() {
		w.Text("stage", weighed.Stage.String())
		w.Object("oils", func() {
			for _, o := range weighed.Oils {
				w.Text(o.Oil, o.Mass.String())
			}
		})
		w.Object("alkali", func() {
			for _, a := range weighed.Alkalis {
				w.Text(a.Alkali.String(), a.Mass.String())
			}
		})
		if weighed.Water.Read {
			w.Text("water", weighed.Water.Mass.String())
		}
		w.Object("acids", func() {
			for _, a := range weighed.Acids {
				w.Text(a.Acid, a.Mass.String())
			}
		})
		w.Object("liquids", func() {
			for _, l := range weighed.Liquids {
				w.Text(l.Liquid, l.Mass.String())
			}
		})
		w.Object("parts", func() {
			for _, p := range weighed.Parts {
				w.Object(p.Part, func() {
					if p.Batter.Read {
						w.Text("batter", p.Batter.Mass.String())
					}
					w.Object("additions", func() {
						for _, a := range p.Additions {
							w.Text(a.Name, a.Mass.String())
						}
					})
					w.Object("carriers", func() {
						for _, c := range p.Carriers {
							w.Text(c.Liquid, c.Mass.String())
						}
					})
				})
			}
		})
	})
}

func (w writer) size(f soap.Formula) {
	if len(f.Size.Vessels) == 0 {
		if f.Size.Oils.Sign() > 0 || f.Size.Batter.Sign() > 0 {
			w.Object("size", func() { w.mass("oils", f.Size.Oils); w.mass("batter", f.Size.Batter) })
		}
		return
	}
	w.Object("size", func() {
		w.List("vessels", func() {
			for i := range f.Size.Vessels {
				w.vessel(&f.Size.Vessels[i])
			}
		})
		w.count("pieces", f.Size.Pieces)
	})
	if len(f.Embeds) > 0 {
		w.List("embeds", func() {
			for _, e := range f.Embeds {
				w.Object("", func() {
					w.Text("embed", e.Name)
					w.Text("vessel", e.Vessel)
					w.count("each", e.Each)
					w.count("spares", e.Spares)
					w.mass("mass", e.Mass)
					if e.Volume.Sign() > 0 {
						w.Text("volume", e.Volume.String())
					}
					w.Bool("sunk", e.Sunk)
				})
			}
		})
	}
	if len(f.Toppings) > 0 {
		w.List("toppings", func() {
			for _, t := range f.Toppings {
				w.Object("", func() { w.Text("topping", t.Name); w.Text("vessel", t.Vessel); w.mass("mass", t.Mass) })
			}
		})
	}
}

func (w writer) vessel(v *soap.Vessel) {
	w.Object("", func() {
		w.Text("vessel", v.Name)
		if v.Part != "" {
			w.Text("part", v.Part)
		}
		if len(v.Layers) > 0 {
			w.Object("parts", func() {
				for _, l := range v.Layers {
					if l.Rest {
						w.Text(l.Part, "rest")
					} else {
						w.percent(l.Part, l.Share)
					}
				}
			})
		}
		w.count("count", v.Count)
		w.count("cuts", v.Cuts)
		w.count("moulds", v.Moulds)
		if v.On != "" {
			w.Text("on", v.On)
		}
		if v.Trial != (mould.Trial{}) {
			w.Object("trial", func() { w.count("count", v.Trial.Count); w.mass("mass", v.Trial.Mass) })
		}
		w.shape(v.Shape)
	})
}

func (w writer) shape(shape mould.Shape) {
	fields := func(key string, fill units.Ratio, lengths ...any) {
		w.Object(key, func() {
			for i := 0; i < len(lengths); i += 2 {
				w.Text(lengths[i].(string), lengths[i+1].(units.Length).String())
			}
			w.percent("fill", fill)
		})
	}
	switch s := shape.(type) {
	case mould.Measured:
		w.Text("volume", s.Content.String())
	case mould.WaterFill:
		w.Object("water_fill", func() { w.mass("mass", s.Mass); w.Text("temperature", s.At.String()) })
	case mould.Box:
		fields("box", s.Fill, "length", s.Length, "width", s.Width, "depth", s.Depth)
	case mould.TaperedBox:
		fields("tapered_box", s.Fill, "top_length", s.TopLength, "top_width", s.TopWidth, "bottom_length", s.BottomLength, "bottom_width", s.BottomWidth, "depth", s.Depth)
	case mould.Cylinder:
		fields("cylinder", s.Fill, "diameter", s.Diameter, "height", s.Height)
	case mould.Frustum:
		fields("frustum", s.Fill, "top", s.Top, "bottom", s.Bottom, "height", s.Height)
	case mould.HalfSphere:
		fields("half_sphere", s.Fill, "diameter", s.Diameter)
	case mould.Slab:
		fields("slab", s.Fill, "length", s.Length, "width", s.Width, "height", s.Height, "liner", s.Liner)
	case mould.Cone:
		fields("cone", s.Fill, "base", s.Base, "tip", s.Tip, "height", s.Height)
	case mould.Coat:
		w.Object("coat", func() { w.Text("area", s.Area.String()); w.Text("thickness", s.Thickness.String()) })
	}
}
