package main

import (
	"bytes"
	"errors"
	"flag"
	"io"
	"slices"
	"strings"

	"example.com/lyewright/internal/jsonwrite"
	"example.com/lyewright/internal/nearest"
	"example.com/lyewright/soap"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/soap/sheet"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

func lyeTopics() []string { return []string{"titration", "heat", "density", "stock"} }

// lye works out what is known of a lye alone.
func (c *command) lye(args []string) int {
	c.json = slices.ContainsFunc(args, func(arg string) bool { return strings.TrimLeft(arg, "-") == "json" })
	if len(args) == 0 {
		return c.usage("", "lye needs to know what is asked", "write one of "+strings.Join(lyeTopics(), ", ")+" behind it")
	}
	o := lyeOptions{flags: flag.NewFlagSet("lye", flag.ContinueOnError), texts: map[string]*string{}}
	o.flags.Bool("json", false, "")
	var work func(*lyeOptions) (lyeAnswer, error)
	switch topic := args[0]; topic {
	case "titration":
		o.text("alkali", "sample", "normality", "first", "total", "balance", "burette", "titrant", "carbonate-max")
		work = titration
	case "heat":
		o.text("alkali", "water", "water-temperature", "alkali-mass", "purity", "ice", "room", "heat")
		work = heat
	case "density":
		o.text("alkali", "strength", "reading", "temperature", "mass")
		work = density
	case "stock":
		o.text("alkali", "strength", "make", "purity", "hydroxide", "lye")
		work = stock
	case "-h", "-help", "--help", "help":
		return c.help([]string{"lye"})
	default:
		remedy := nearest.Remedy(topic, lyeTopics())
		if remedy == "" {
			remedy = "write one of " + strings.Join(lyeTopics(), ", ")
		}
		return c.usage(topic, "is nothing that lye knows", remedy)
	}
	names, status, ok := c.parse(o.flags, args[1:])
	if !ok {
		return status
	}
	if len(names) > 0 {
		return c.usage(names[0], "is more than lye "+args[0]+" needs", "write options such as -alkali in front of their values")
	}
	answer, err := work(&o)
	if faults := o.all(err); len(faults) > 0 {
		return c.fail(wrongInput, faults...)
	}
	var page bytes.Buffer
	if c.json {
		page.Write(answer.object())
		page.WriteByte('\n')
	} else if err := answer.page(&page); err != nil {
		return c.fail(cannotIO, soap.Fault{Reason: err.Error(), Kind: err})
	}
	return c.print(page.Bytes(), done)
}

// lyeAnswer is what is printed: as text, or the figures of an object.
type lyeAnswer struct {
	page    func(w io.Writer) error
	schema  string
	alkali  soap.Alkali
	figures func(w *jsonwrite.Writer)
	source  cite.Source
}

func (a *lyeAnswer) object() []byte {
	w := jsonwrite.New()
	w.Object("", func() {
		w.Text("schema", a.schema)
		w.Text("data_edition", soap.DataEdition())
		w.Text("alkali", a.alkali.String())
		a.figures(w)
		if a.source.Title != "" {
			w.Text("source", a.source.String())
		}
	})
	return w.Bytes()
}

// lyeOptions reads options that are quantities, and collects what is wrong with
// them.
type lyeOptions struct {
	flags  *flag.FlagSet
	texts  map[string]*string
	faults soap.Faults
	unsure []string // options of which nothing can be said, since another could not be read
}

func (o *lyeOptions) text(names ...string) {
	for _, name := range names {
		o.texts[name] = o.flags.String(name, "", "")
	}
}

// all gives what is wrong: first with the options, then what the library says of
// those that could be read.
func (o *lyeOptions) all(err error) soap.Faults {
	var faults soap.Faults
	if err != nil && !errors.As(err, &faults) {
		faults = soap.Faults{{Reason: err.Error(), Kind: err}}
	}
	all := o.faults
	for _, f := range faults {
		if f.Path != "" {
			f.Path = "-" + strings.ReplaceAll(f.Path, "_", "-")
		}
		if f.Path == "-density" {
			f.Path = "-reading"
		}
		if !o.failed(strings.TrimPrefix(f.Path, "-")) && !slices.Contains(o.unsure, f.Path) {
			all = append(all, f)
		}
	}
	return all
}

// failed reports whether an option could not be read.
func (o *lyeOptions) failed(name string) bool {
	return slices.ContainsFunc(o.faults, func(said soap.Fault) bool { return said.Path == "-"+name })
}

// read reads an option with a parser of package units; the zero value where it is
// left out.
func read[T any](o *lyeOptions, name string, parse func(string) (T, error)) T {
	text := *o.texts[name]
	if text == "" {
		var none T
		return none
	}
	value, err := parse(text)
	var bad *units.ParseError
	if errors.As(err, &bad) {
		o.faults.Add("-"+name, bad.Text, bad.Reason, bad.Remedy, bad.Kind)
	}
	return value
}

func (o *lyeOptions) alkali() soap.Alkali {
	switch text := *o.texts["alkali"]; text {
	case "", soap.SodiumHydroxide.String():
		return soap.SodiumHydroxide
	case soap.PotassiumHydroxide.String():
		return soap.PotassiumHydroxide
	default:
		kinds := []string{soap.SodiumHydroxide.String(), soap.PotassiumHydroxide.String()}
		remedy := nearest.Remedy(text, kinds)
		if remedy == "" {
			remedy = "write " + strings.Join(kinds, " or ")
		}
		o.faults.Add("-alkali", text, "is not an alkali that is known", remedy, soap.ErrUnknown)
		return soap.SodiumHydroxide
	}
}

func titration(o *lyeOptions) (lyeAnswer, error) {
	t := lye.Titration{
		Alkali:       o.alkali(),
		Sample:       read(o, "sample", units.ParseMass),
		Normality:    read(o, "normality", units.ParseNumber),
		First:        read(o, "first", units.ParseVolume),
		Total:        read(o, "total", units.ParseVolume),
		Balance:      read(o, "balance", units.ParseMass),
		Burette:      read(o, "burette", units.ParseVolume),
		Titrant:      read(o, "titrant", units.ParsePercent),
		CarbonateMax: read(o, "carbonate-max", units.ParsePercent),
	}
	found, err := t.Result()
	if o.failed("first") || o.failed("total") {
		o.unsure = []string{"-first", "-total"}
	}
	return lyeAnswer{
		page:   func(w io.Writer) error { return sheet.WriteTitration(w, t.Alkali, found) },
		schema: "lye-titration/1", alkali: t.Alkali, source: lye.TitrationSource(),
		figures: func(w *jsonwrite.Writer) {
			w.Number("hydroxide_pct", found.Hydroxide.PercentText(6))
			w.Number("carbonate_pct", found.Carbonate.PercentText(6))
			w.Number("low_pct", found.Low.PercentText(6))
			w.Number("high_pct", found.High.PercentText(6))
		},
	}, err
}

func heat(o *lyeOptions) (lyeAnswer, error) {
	portion := lye.Portion{
		Alkali:    o.alkali(),
		Mass:      read(o, "alkali-mass", units.ParseMass),
		Hydroxide: read(o, "purity", units.ParsePercent).Or(units.Whole(1)),
	}
	m := lye.Mixing{
		Water:   read(o, "water", units.ParseMass),
		WaterAt: read(o, "water-temperature", units.ParseTemperature),
		Ice:     read(o, "ice", units.ParseMass),
		Room:    read(o, "room", units.ParseTemperature),
		Alkalis: []lye.Portion{portion},
	}
	switch text := *o.texts["heat"]; text {
	case "", "cautious":
	case "older":
		m.Heat = lye.Older
	default:
		o.faults.Add("-heat", text, "is not known", "write cautious or older", soap.ErrUnknown)
	}
	h, err := m.Bound()
	return lyeAnswer{
		page:   func(w io.Writer) error { return sheet.WriteHeat(w, m, h) },
		schema: "lye-heat/1", alkali: portion.Alkali, source: lye.HeatSource(),
		figures: func(w *jsonwrite.Writer) {
			w.Number("strength_pct", h.Strength.PercentText(6))
			w.Number("final_c", h.Final.Text(2))
			w.Number("rise_k", h.Rise.Text(2))
			w.Number("boiling_c", h.Boils.Text(2))
			_, hot := h.Hot()
			w.Bool("hot", hot)
			w.Bool("extrapolated", h.Extrapolated)
		},
	}, err
}

func density(o *lyeOptions) (lyeAnswer, error) {
	s := lye.Solution{
		Alkali:   o.alkali(),
		Strength: read(o, "strength", units.ParsePercent),
		At:       read(o, "temperature", units.ParseTemperature),
	}
	reading, mass := read(o, "reading", units.ParseDensity), read(o, "mass", units.ParseMass)
	upper := *o.texts["reading"] != ""
	if upper && *o.texts["strength"] != "" {
		o.faults.Add("-reading", *o.texts["reading"], "does not go with -strength", "give the strength, or a hydrometer's reading", soap.ErrConflict)
		return lyeAnswer{}, nil
	}
	if upper {
		var err error
		if s.Strength, err = (lye.Hydrometer{Alkali: s.Alkali, Reading: reading, At: s.At}).Strength(); err != nil {
			return lyeAnswer{}, err
		}
	}
	d, err := s.Density()
	return lyeAnswer{
		page:   func(w io.Writer) error { return sheet.WriteSolution(w, s, mass, upper) },
		schema: "lye-density/1", alkali: s.Alkali, source: s.Source(),
		figures: func(w *jsonwrite.Writer) {
			w.Number("strength_pct", s.Strength.PercentText(6))
			if upper {
				w.Bool("upper", true)
			}
			w.Number("density_g_per_ml", d.Text(6))
			if v, ok := d.Volume(mass); ok && mass.Sign() > 0 {
				w.Number("volume_ml", v.Text(3))
			}
			if t, ok := s.Crystallises(); ok {
				w.Number("crystallises_c", t.Text(2))
			} else {
				w.Text("note", s.CrystallisesNote())
			}
			if t, ok := s.Boils(); ok {
				w.Number("boiling_c", t.Text(2))
			}
		},
	}, err
}

func stock(o *lyeOptions) (lyeAnswer, error) {
	s := lye.Stock{Alkali: o.alkali(), Strength: read(o, "strength", units.ParsePercent)}
	mass, purity := read(o, "make", units.ParseMass), read(o, "purity", units.ParsePercent)
	hydroxide, weaker := read(o, "hydroxide", units.ParseMass), read(o, "lye", units.ParsePercent)
	making, thinning := *o.texts["make"] != "", *o.texts["hydroxide"] != "" || *o.texts["lye"] != ""
	if making == thinning {
		o.faults.Add("", "", "lye stock makes a stock, or thins one", "give -make, or -hydroxide and -lye", soap.ErrConflict)
		return lyeAnswer{}, nil
	}
	heading, first, key := "A stock lye of "+s.Strength.PercentText(4)+" % "+s.Alkali.Symbol(), s.Alkali.Name(), "alkali_g"
	var weigh, water units.Mass
	var err error
	if making {
		weigh, water, err = s.Make(mass, purity.Or(units.Whole(1)))
	} else {
		heading += ", thinned to " + weaker.PercentText(4) + " %"
		first, key = "Stock lye", "stock_g"
		weigh, water, err = s.For(hydroxide, weaker)
	}
	return lyeAnswer{
		page:   func(w io.Writer) error { return sheet.WriteStock(w, heading, first, weigh, water) },
		schema: "lye-stock/1", alkali: s.Alkali,
		figures: func(w *jsonwrite.Writer) {
			w.Number("strength_pct", s.Strength.PercentText(6))
			w.Number(key, weigh.Text(units.Gram, 6))
			w.Number("water_g", water.Text(units.Gram, 6))
		},
	}, err
}
