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

// lyeTopic is one of the things that lye works out.
type lyeTopic struct {
	name    string
	options []string // besides -json
	work    func(*lyeOptions) (lyeAnswer, error)
}

func lyeTopics() []lyeTopic {
	return []lyeTopic{
		{"titration", []string{"alkali", "sample", "normality", "first", "total", "balance", "burette", "titrant", "carbonate-max"}, titration},
		{"heat", []string{"alkali", "water", "water-temperature", "alkali-mass", "purity", "ice", "room", "heat"}, heat},
		{"density", []string{"alkali", "strength", "reading", "temperature", "mass"}, density},
		{"stock", []string{"alkali", "strength", "make", "purity", "hydroxide", "lye"}, stock},
	}
}

// lye works out what is known of a lye alone.
func (c *command) lye(args []string) int {
	c.json = slices.ContainsFunc(args, asksJSON)
	if len(args) == 0 {
		return c.lyeAlone()
	}
	if args[0] == "acids" {
		return c.acids(args[1:])
	}
	var names []string
	for _, topic := range lyeTopics() {
		if topic.name == args[0] {
			return c.lyeOn(topic, args[1:])
		}
		names = append(names, topic.name)
	}
	asked, names := args[0], append(names, "acids")
	switch {
	case slices.Contains([]string{"-h", "-help", "--help", "help"}, asked):
		return c.help([]string{"lye"})
	case strings.HasPrefix(asked, "-"):
		return c.usage(asked, "stands where lye is told what is asked", "write one of "+strings.Join(names, ", ")+" in front of it")
	}
	remedy := nearest.Remedy(asked, names)
	if remedy == "" {
		remedy = "write one of " + strings.Join(names, ", ")
	}
	return c.usage(asked, "is nothing that lye knows", remedy)
}

// lyeAlone answers lye without a word behind it: what is missing, and the help.
func (c *command) lyeAlone() int {
	status := c.usage("", "lye needs to know what is asked", "write titration, heat, density, stock or acids behind it")
	text, _ := section("lye")
	if _, err := io.WriteString(c.stderr, "\n"+text); err != nil {
		return cannotIO
	}
	return status
}

func (c *command) lyeOn(topic lyeTopic, args []string) int {
	o := lyeOptions{flags: flag.NewFlagSet("lye "+topic.name, flag.ContinueOnError), texts: map[string]*string{}}
	o.flags.Bool("json", false, "")
	for _, name := range topic.options {
		o.texts[name] = o.flags.String(name, "", "")
	}
	more, status, ok := c.parse(o.flags, args)
	if !ok {
		return status
	}
	if len(more) > 0 {
		return c.usage(more[0], "is more than lye "+topic.name+" needs", "write options such as -alkali in front of their values")
	}
	answer, err := topic.work(&o)
	answer.asked = o.asked
	if faults := o.all(err); len(faults) > 0 {
		return c.fail(wrongInput, faults...)
	}
	var page bytes.Buffer
	if c.json {
		page.Write(answer.object())
		page.WriteByte('\n')
	} else if err := answer.write(&page); err != nil {
		return c.fail(cannotIO, soap.Fault{Reason: err.Error(), Kind: err})
	}
	return c.print(page.Bytes(), done)
}

// lyeAnswer is what is printed: as text, or the figures of an object.
type lyeAnswer struct {
	page    func(w io.Writer) error
	schema  string
	alkali  soap.Alkali
	asked   string // the name that it was asked for by, where that is not its usual one
	figures func(w *jsonwrite.Writer)
	source  cite.Source
}

// write prints the page, behind a line on the name of the alkali where that is not its usual one.
func (a *lyeAnswer) write(w io.Writer) error {
	if a.asked != "" {
		read := soap.Finding{Code: "name-note", Names: []string{a.alkali.String(), a.asked}, Detail: "alkali"}
		if _, err := io.WriteString(w, read.Message()+"\n\n"); err != nil {
			return err
		}
	}
	return a.page(w)
}

func (a *lyeAnswer) object() []byte {
	w := jsonwrite.New()
	w.Object("", func() {
		w.Text("schema", a.schema)
		w.Text("data_edition", soap.DataEdition())
		w.Text("alkali", a.alkali.String())
		if a.asked != "" {
			w.Text("asked", a.asked)
		}
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
	unread bool     // a quantity could not be read
	unsure []string // options of which nothing can be said, since another could not be read
	asked  string   // the name of the alkali, where that is not its usual one
}

// given reports whether an option was written, be it with an empty text.
func (o *lyeOptions) given(name string) (given bool) {
	o.flags.Visit(func(f *flag.Flag) { given = given || f.Name == name })
	return given
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
		if o.unread && errors.Is(f.Kind, soap.ErrImpossible) {
			continue // it is said of quantities together, and not all of them are known
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
	if !o.given(name) {
		var none T
		return none
	}
	value, err := parse(*o.texts[name])
	var bad *units.ParseError
	if errors.As(err, &bad) {
		o.unread = true
		o.faults.Add("-"+name, bad.Text, bad.Reason, bad.Remedy, bad.Kind)
	}
	return value
}

// aboveZero refuses an option that was given as nothing, where the library takes
// nothing for left out.
func (o *lyeOptions) aboveZero(name string, sign int, reason, remedy string) {
	if o.given(name) && !o.failed(name) && sign == 0 {
		o.faults.Add("-"+name, *o.texts[name], reason, remedy, soap.ErrRange)
	}
}

// choice reads an option that is one of a few words, the first where it is left
// out; no word where it is another.
func (o *lyeOptions) choice(name, reason string, words ...string) string {
	text := *o.texts[name]
	switch {
	case !o.given(name):
		return words[0]
	case slices.Contains(words, text):
		return text
	}
	remedy := nearest.Remedy(text, words)
	if remedy == "" {
		remedy = "write " + strings.Join(words, " or ")
	}
	o.faults.Add("-"+name, text, reason, remedy, soap.ErrUnknown)
	return ""
}

// alkali reads the hydroxide, by whatever name it is called; none where it is not known.
func (o *lyeOptions) alkali() soap.Alkali {
	if !o.given("alkali") {
		return soap.SodiumHydroxide
	}
	name := *o.texts["alkali"]
	alkali, err := lye.LookUpAlkali(name)
	var bad soap.Fault
	switch {
	case errors.As(err, &bad):
		if lye.AlkaliNamed(name) == "a solution of an alkali" {
			bad.Remedy = "write the hydroxide that is in it, sodium-hydroxide or potassium-hydroxide"
		}
		o.faults.Add("-alkali", name, bad.Reason, bad.Remedy, bad.Kind)
	case name != alkali.String():
		o.asked = name
	}
	return alkali
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
	const unread = "leave it out where it was not read; no acid at all means no hydroxide"
	o.aboveZero("first", t.First.Sign(), "is not above 0 mL", unread)
	o.aboveZero("total", t.Total.Sign(), "is not above 0 mL", unread)
	found, err := t.Result()
	if o.failed("first") || o.failed("total") {
		o.unsure = []string{"-first", "-total"}
	}
	return lyeAnswer{
		page:   func(w io.Writer) error { return sheet.WriteTitration(w, t, found) },
		schema: "lye-titration/1", alkali: t.Alkali, source: lye.TitrationSource(),
		figures: func(w *jsonwrite.Writer) {
			w.Number("hydroxide_pct", found.Hydroxide.PercentText(6))
			w.Number("carbonate_pct", found.Carbonate.PercentText(6))
			w.Number("low_pct", found.Low.PercentText(6))
			w.Number("high_pct", found.High.PercentText(6))
			w.List("findings", func() {
				for _, f := range soap.TitrationFindings(t) {
					w.Object("", func() { writeFinding(w, &f) })
				}
			})
		},
	}, err
}

// writeFinding writes what is worth knowing of a lye, with the keys that a finding of a
// batch has.
func writeFinding(w *jsonwrite.Writer, f *soap.Finding) {
	w.Text("code", f.Code)
	w.Text("severity", f.Severity.String())
	w.Text("subject", f.Subject)
	w.Texts("names", f.Names)
	w.Text("message", f.Message())
	w.Text("source", f.Source.String())
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
	if o.choice("heat", "is not a heat of solution that is known", "cautious", "older") == "older" {
		m.Heat = lye.Older
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
	o.aboveZero("mass", mass.Sign(), "is not above 0 g", "leave it out where no volume is asked for")
	upper := o.given("reading")
	switch {
	case upper && o.given("strength"):
		o.faults.Add("-reading", *o.texts["reading"], "does not go with -strength", "give the strength, or a hydrometer's reading", soap.ErrConflict)
	case upper:
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
	making, thinning := o.given("make"), o.given("hydroxide") || o.given("lye")
	if making == thinning {
		o.faults.Add("", "", "lye stock makes a stock, or thins one", "give -make, or -hydroxide and -lye", soap.ErrConflict)
		return lyeAnswer{}, nil
	}
	if thinning && o.given("purity") {
		o.faults.Add("-purity", *o.texts["purity"], "does not go with -hydroxide and -lye", "leave it out: the strength of the stock says what is in it", soap.ErrConflict)
	}
	var heading, first, key string
	var weigh, water units.Mass
	var err error
	if making {
		heading = mass.Text(units.Gram, 3) + " g of a stock lye of " + percent(s.Strength) + " " + s.Alkali.Symbol() + ", from an alkali of " + percent(purity.Or(units.Whole(1))) + " hydroxide"
		if !o.given("purity") {
			heading += ", as no other purity was given"
		}
		first, key = s.Alkali.Name(), "alkali_g"
		weigh, water, err = s.Make(mass, purity.Or(units.Whole(1)))
	} else {
		heading = "A lye of " + percent(weaker) + " that holds " + hydroxide.Text(units.Gram, 3) + " g of " + s.Alkali.Symbol() + ", from a stock lye of " + percent(s.Strength)
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

func percent(r units.Ratio) string { return r.PercentText(4) + " %" }
