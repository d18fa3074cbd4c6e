package soap

import (
	"errors"
	"slices"
	"strconv"

	"example.com/lyewright/internal/nearest"
	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

// More is refused before it costs anything.
const (
	mostVessels = 100
	mostEmbeds  = 50 // and as many toppings
)

func (c *checker) vessels() {
	size, t := &c.f.Size, top("size")
	pieces := t.at("pieces")
	switch {
	case size.Pieces == 0:
	case size.Pieces < 0 || size.Pieces > mould.Most:
		c.fault(pieces, strconv.Itoa(size.Pieces), "is not between 1 and 10000", "say how many pieces are wanted", ErrRange)
	case len(size.Vessels) == 0:
		c.fault(pieces, strconv.Itoa(size.Pieces), "are asked for, and there are no vessels to count", `list "vessels" in size`, ErrConflict, "size.vessels")
	case c.f.SizeKnown():
		c.fault(pieces, strconv.Itoa(size.Pieces), "are asked for of a batch whose mass is known", "leave out the mass, or the pieces", ErrConflict, "size.oils", "size.batter", "oils[].mass")
	}
	vessels, list := size.Vessels, t.at("vessels")
	if len(vessels) > mostVessels {
		c.fault(list, "", "are "+strconv.Itoa(len(vessels))+" vessels", "list at most 100", ErrLimit)
		return
	}
	for i := range vessels {
		if c.ended() {
			return
		}
		v, t := &vessels[i], list.item(i)
		c.name(t.at("vessel"), v.Name)
		c.note(t, v.Note)
		c.twice(list, "vessel", i, v.Name, func(j int) bool { return vessels[j].Name == v.Name }, "give each vessel a name of its own")
		c.filledBy(t, v)
		c.counts(t, v)
		c.content(t, v)
	}
	if pour := c.f.Temperature.Pour; len(vessels) > 0 && pour.Given() && (pour.Compare(units.Celsius(15)) < 0 || pour.Compare(units.Celsius(60)) > 0) {
		at := top("temperature")
		c.fault(at.at("pour"), pour.Text(2)+" °C", "is not between 15 °C and 60 °C, where the densities of oils are known", "give the batter's when it is poured", ErrRange)
	}
	c.extras()
}

// filledBy checks which parts fill a vessel.
func (c *checker) filledBy(t trail, v *Vessel) {
	parts := c.f.Parts
	if len(parts) == 0 {
		parts = c.f.parts()
	}
	known := func(t trail, text, name, reason string) {
		if partOf(parts, name) >= 0 {
			return
		}
		names := make([]string, len(parts))
		for i := range parts {
			names[i] = parts[i].Name
		}
		c.unknown(t, text, name, reason+"is not a part of this formula", "parts", names, "parts[].part")
	}
	switch at := t.at("part"); {
	case v.Part != "" && len(v.Layers) > 0:
		c.fault(at, v.Part, "is given beside the shares of several parts", "name one part, or the shares of several", ErrConflict, t.String()+".parts")
	case v.Part != "":
		known(at, v.Part, v.Part, "")
	case len(v.Layers) == 0 && len(c.f.Parts) > 0:
		c.fault(at, "", "is missing: the vessel fills no part", `name the part that fills it, or the shares of several in "parts"`, ErrMissing, t.String()+".parts")
	}
	layers := t.at("parts")
	for i := range v.Layers {
		layer := &v.Layers[i]
		at := layers.at(layer.Part)
		known(at, "", layer.Part, units.Quote(layer.Part)+" ") // a key: no text stands there
		for j := range i {
			if v.Layers[j].Part == layer.Part {
				c.fault(at, layer.Part, "stands twice", "put both into one layer", ErrConflict)
				break
			}
		}
		switch {
		case layer.Rest && layer.Share.Given():
			c.fault(at, "", "is given in more than one way", `give a percentage or "rest"`, ErrConflict)
		case !layer.Rest && !layer.Share.Given():
			c.fault(at, "", "is missing", `give a percentage of the vessel's volume, or "rest"`, ErrMissing)
		case !layer.Rest:
			c.percent(at, layer.Share, 100, false, false)
		}
	}
	if len(v.Layers) > 0 {
		c.addUp(layers, layers.String(), len(v.Layers), func(i int) (units.Ratio, bool) { return v.Layers[i].Share, v.Layers[i].Rest },
			func(i int) trail { return layers.at(v.Layers[i].Part) })
	}
}

// unknown refuses a name that is not there, and offers those that are.
func (c *checker) unknown(t trail, text, name, reason, what string, names []string, inputs ...string) {
	remedy := nearest.Remedy(name, names)
	if remedy == "" {
		remedy = "the " + what + " are"
		for i, n := range names {
			if i > 0 {
				remedy += ","
			}
			remedy += " " + units.Quote(n)
		}
		if len(names) == 0 {
			remedy = "list the " + what
		}
	}
	c.fault(t, text, reason, remedy, ErrUnknown, inputs...)
}

// counts checks how many there are of a vessel.
func (c *checker) counts(t trail, v *Vessel) {
	number := func(key string, n int) {
		if n < 0 || n > mould.Most {
			c.fault(t.at(key), strconv.Itoa(n), "is not between 1 and 10000", "write how many there are", ErrRange)
		}
	}
	number("cuts", v.Cuts)
	number("moulds", v.Moulds)
	if v.On == "" {
		if number("count", v.Count); v.Count == 0 {
			c.fault(t.at("count"), "", "is missing", "say how many are wanted", ErrMissing)
		}
		if v.Count > 0 && v.Cuts > 0 && v.Count <= mould.Most && v.Cuts <= mould.Most && v.Count*v.Cuts > mould.Most {
			c.fault(t.at("cuts"), strconv.Itoa(v.Cuts), "makes more than 10000 pieces", "make several batches", ErrRange, t.String()+".count")
		}
		return
	}
	for _, own := range []struct {
		key string
		n   int
	}{{"count", v.Count}, {"cuts", v.Cuts}, {"moulds", v.Moulds}} {
		if own.n != 0 {
			c.fault(t.at(own.key), strconv.Itoa(own.n), "is given for a top, of which there is one on every piece below", "leave it out", ErrConflict, t.String()+".on")
		}
	}
	vessels := c.f.Size.Vessels
	switch below := vesselOf(vessels, v.On); {
	case v.On == v.Name:
		c.fault(t.at("on"), v.On, "is the vessel itself", "name the vessel whose pieces it stands on", ErrConflict)
	case below < 0:
		c.noVessel(t.at("on"), v.On)
	case vessels[below].On != "":
		c.fault(t.at("on"), v.On, "is a top itself", "name the vessel whose pieces both stand on", ErrConflict, "size.vessels[].on")
	}
}

// noVessel refuses the name of a vessel that is not there.
func (c *checker) noVessel(t trail, name string) {
	var names []string
	for i := range c.f.Size.Vessels {
		if known := c.f.Size.Vessels[i].Name; known != "" && !slices.Contains(names, known) {
			names = append(names, known)
		}
	}
	c.unknown(t, name, name, "is not a vessel of this formula", "vessels", names, "size.vessels", "size.vessels[].vessel")
}

// content checks the shape of a vessel and its trial.
func (c *checker) content(t trail, v *Vessel) {
	under := func(key string, err error) {
		var faults Faults
		if !errors.As(err, &faults) {
			if err != nil {
				c.fault(t.at(key), "", err.Error(), "", err)
			}
			return
		}
		for _, f := range faults {
			at := t
			if key != "" {
				at = t.at(key)
			}
			if f.Path != "" {
				above := at
				at = above.at(f.Path)
			}
			c.fault(at, f.Text, f.Reason, f.Remedy, f.Kind)
		}
	}
	switch {
	case v.Shape != nil:
		_, err := v.Shape.Volume()
		under(shapeKey(v.Shape), err)
	case !v.Trial.Given():
		inputs := []string{t.String() + ".trial"}
		for _, key := range shapeKeys() {
			inputs = append(inputs, t.String()+"."+key)
		}
		c.fault(t.at("volume"), "", "is missing, and nothing else says what it holds", `give its "volume", the water that fills it, its dimensions, or a trial`, ErrMissing, inputs...)
	}
	if v.Trial.Given() {
		_, err := v.Trial.Each()
		under("trial", err)
	}
}

// partSize checks how much of a part is made: by its vessels, or by a share.
func (c *checker) partSize(t trail, p *Part) {
	filled := p.Name != "" && c.f.fills(p.Name)
	share := t.at("share")
	vessels := []string{"size", "size.vessels", "size.vessels[].part", "size.vessels[].parts"}
	switch {
	case p.Rest:
		c.fault(share, "rest", "is asked for where the vessels say how much is made", "leave it out for a part that fills vessels; give a percentage of the batter for one that does not", ErrConflict, vessels...)
	case filled && p.Share.Given():
		c.fault(share, percentText(p.Share), "is given for a part whose vessels say how much is made", "leave it out, or give the oils or the batter to ask how far they go", ErrConflict, vessels...)
	case p.Share.Given():
		c.percent(share, p.Share, 100, false, true)
	case !filled:
		c.fault(t, p.Name, "has neither a vessel nor a share", "name it in a vessel, or give its share of the batter", ErrMissing, append(vessels, share.String())...)
	}
}

// sharesBesideVessels checks that the parts with shares leave something for those
// with vessels.
func (c *checker) sharesBesideVessels() {
	all := units.Whole(0)
	for i := range c.f.Parts {
		all = all.Add(c.f.Parts[i].Share.Or(units.Whole(0)))
	}
	if all.Compare(units.Whole(1)) >= 0 {
		c.fault(top("parts"), percentText(all), "of the batter goes to parts without vessels: nothing is left for the others", "lower their shares", ErrRange, "parts[].share")
	}
}

// filling checks what a part is made beyond what is filled.
func (c *checker) filling(t trail, p *Part) {
	if p.Work <= mould.Piped && !p.Reserve.Given() && p.Loss.Sign() == 0 {
		return
	}
	line := t // a copy, so that a part that says nothing of it costs nothing
	if p.Work > mould.Piped {
		c.fault(line.at("work"), "", "is not known", "use mould.Poured or mould.Piped", ErrUnknown)
	}
	if p.Reserve.Given() {
		c.percent(line.at("reserve"), p.Reserve, 100, true, false)
	}
	if p.Loss.Sign() != 0 {
		c.mass(line.at("loss"), p.Loss)
	}
}

// extras checks embeds and toppings.
func (c *checker) extras() {
	embeds, list := c.f.Embeds, top("embeds")
	if len(embeds) > mostEmbeds {
		c.fault(list, "", "are "+strconv.Itoa(len(embeds))+" lines", "list at most 50", ErrLimit)
		embeds = nil
	}
	for i := range embeds {
		e, t := &embeds[i], list.item(i)
		c.name(t.at("embed"), e.Name)
		c.noAlkali(t.at("embed"), e.Name)
		c.inVessel(t.at("vessel"), e.Vessel)
		switch {
		case !c.exactlyOne(t.at("mass"), `give the "mass" or the "volume" of one`, e.Mass.Sign() != 0, e.Volume.Sign() != 0):
		case e.Mass.Sign() != 0:
			c.mass(t.at("mass"), e.Mass)
		default:
			if _, err := (mould.Measured{Content: e.Volume}).Volume(); err != nil {
				c.fault(t.at("volume"), e.Volume.String(), "is not between 0 mL and 1000 L", "give what one takes up", ErrRange)
			}
		}
		if e.Each < 0 || e.Each > mould.Most {
			c.fault(t.at("each"), strconv.Itoa(e.Each), "is not between 1 and 10000", "say how many are in a piece", ErrRange)
		}
		if e.Spares < 0 || e.Spares > mould.Most {
			c.fault(t.at("spares"), strconv.Itoa(e.Spares), "is not between 0 and 10000", "say how many are cast besides", ErrRange)
		}
	}
	toppings, list := c.f.Toppings, top("toppings")
	if len(toppings) > mostEmbeds {
		c.fault(list, "", "are "+strconv.Itoa(len(toppings))+" lines", "list at most 50", ErrLimit)
		return
	}
	for i := range toppings {
		p, t := &toppings[i], list.item(i)
		c.name(t.at("topping"), p.Name)
		c.noAlkali(t.at("topping"), p.Name)
		c.inVessel(t.at("vessel"), p.Vessel)
		if at := t.at("mass"); p.Mass.Sign() == 0 {
			c.fault(at, "", "is missing", "give what goes on one piece", ErrMissing)
		} else {
			c.mass(at, p.Mass)
		}
		c.glitter(t, p.Glitter, p.Foil)
	}
}

func (c *checker) inVessel(t trail, name string) {
	if name == "" {
		c.fault(t, "", "is missing", "name the vessel whose pieces get it", ErrMissing)
	} else if vesselOf(c.f.Size.Vessels, name) < 0 {
		c.noVessel(t, name)
	}
}

func (c *checker) glitter(t trail, glitter Glitter, foil Foil) {
	if glitter == NoGlitter && foil == FoilUnknown {
		return
	}
	line := t // a copy, so that what is no glitter costs nothing
	switch {
	case glitter > DegradableGlitter || foil > WithoutAluminium:
		c.fault(line.at("glitter"), "", "is not known", "use PolymerGlitter, MineralGlitter or DegradableGlitter", ErrUnknown)
	case glitter == NoGlitter:
		c.fault(line.at("aluminium"), "", "is said of something that is not glitter", `say what it is made of: "glitter": "polymer", "mineral" or "degradable-tested"`, ErrConflict, line.String()+".glitter")
	}
}
