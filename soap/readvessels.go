package soap

import (
	"slices"
	"strconv"
	"strings"

	"example.com/lyewright/internal/strictjson"
	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

// shapeKeys are the keys of a formula file that say what a vessel holds, a trial
// apart.
func shapeKeys() []string {
	return []string{
		"volume", "water_fill", "box", "tapered_box", "cylinder", "frustum", "half_sphere", "slab", "cone",
		"coat",
	}
}

func (r *reader) vessels(s *spot) []Vessel {
	if s == nil || !r.list(s, mostVessels, "vessels") {
		return nil
	}
	if len(s.node.Items) == 0 {
		r.fault(s, "", "is an empty list", "list the vessels, or give the oils or the batter", ErrMissing)
	}
	vessels := make([]Vessel, len(s.node.Items))
	for i := range vessels {
		vessels[i] = r.vessel(s.item(i))
	}
	return vessels
}

func (r *reader) vessel(s *spot) Vessel {
	var v Vessel
	if !r.object(s, slices.Concat([]string{"vessel", "part", "parts", "on", "count", "cuts", "moulds", "trial", "note"},
		shapeKeys())...) {
		return v
	}
	v.Name, v.Part, v.On, v.Note = r.label(s.at("vessel")), r.label(s.at("part")), r.label(s.at("on")),
		r.note(s.at("note"))
	v.Count, v.Cuts, v.Moulds = r.count(s.at("count"), 1), r.count(s.at("cuts"), 1), r.count(s.at("moulds"), 1)
	if layers := s.at("parts"); layers != nil {
		v.Layers = r.layers(layers)
		if v.Part != "" {
			r.fault(layers, "", "are given beside one part", "name one part, or the shares of several", ErrConflict)
		}
	}
	if trial := s.at("trial"); trial != nil && r.object(trial, "count", "mass") {
		v.Trial = mould.Trial{Count: r.count(trial.at("count"), 1), Mass: r.mass(trial.at("mass"))}
		r.needs(trial, "count", "mass")
	}
	for _, key := range shapeKeys() {
		shape := s.at(key)
		if shape == nil {
			continue
		}
		if v.Shape != nil {
			r.fault(shape, "", "is a second shape", "give a vessel one shape", ErrConflict)
			continue
		}
		v.Shape = r.shape(shape, key)
	}
	return v
}

// layers reads the shares of the parts that share a vessel.
func (r *reader) layers(s *spot) []Layer {
	if s.node.Kind != strictjson.Object {
		r.fault(s, "", "is "+s.node.Kind.Name()+" where an object is needed",
			`write the shares of the parts, such as {"base": "60 %", "cloud": "rest"}`, ErrFormat)
		return nil
	}
	if len(s.node.Members) == 0 {
		r.fault(s, "", "is empty", `write the shares of the parts, such as {"base": "60 %", "cloud": "rest"}`, ErrMissing)
	}
	layers := make([]Layer, len(s.node.Members))
	for i := range layers {
		key := s.node.Members[i].Key
		layers[i].Part = key
		layers[i].Share, layers[i].Rest = r.share(s.at(key))
	}
	return layers
}

// shape reads what a vessel holds. Where a dimension is missing it says so and gives a
// shape all the same, so that whatever else is wrong with it is said too.
func (r *reader) shape(s *spot, key string) mould.Shape {
	length := func(key string) units.Length { return r.length(s.at(key)) }
	fill := func() units.Ratio { return r.percent(s.at("fill")) }
	fields := func(keys ...string) bool {
		needed := slices.DeleteFunc(slices.Clone(keys), func(key string) bool { return key == "fill" || key == "liner" })
		if !r.object(s, keys...) {
			return false
		}
		r.needs(s, needed...)
		return true
	}
	switch key {
	case "volume":
		return mould.Measured{Content: r.volume(s)}
	case "water_fill":
		if fields("mass", "temperature") {
			return mould.WaterFill{Mass: r.mass(s.at("mass")), At: r.temperature(s.at("temperature"))}
		}
	case "box":
		if fields("length", "width", "depth", "fill") {
			return mould.Box{Length: length("length"), Width: length("width"), Depth: length("depth"), Fill: fill()}
		}
	case "tapered_box":
		if fields("top_length", "top_width", "bottom_length", "bottom_width", "depth", "fill") {
			return mould.TaperedBox{
				TopLength: length("top_length"), TopWidth: length("top_width"),
				BottomLength: length("bottom_length"), BottomWidth: length("bottom_width"), Depth: length("depth"), Fill: fill(),
			}
		}
	case "cylinder":
		if fields("diameter", "height", "fill") {
			return mould.Cylinder{Diameter: length("diameter"), Height: length("height"), Fill: fill()}
		}
	case "frustum":
		if fields("top", "bottom", "height", "fill") {
			return mould.Frustum{Top: length("top"), Bottom: length("bottom"), Height: length("height"), Fill: fill()}
		}
	case "half_sphere":
		if fields("diameter", "fill") {
			return mould.HalfSphere{Diameter: length("diameter"), Fill: fill()}
		}
	case "slab":
		if fields("length", "width", "height", "liner", "fill") {
			return mould.Slab{
				Length: length("length"), Width: length("width"), Height: length("height"), Liner: length("liner"),
				Fill: fill(),
			}
		}
	case "cone":
		if fields("base", "tip", "height", "fill") {
			return mould.Cone{Base: length("base"), Tip: length("tip"), Height: length("height"), Fill: fill()}
		}
	case "coat":
		if fields("area", "thickness") {
			area := measure(r, s.at("area"), units.ParseArea, "120 cm²")
			return mould.Coat{Area: area, Thickness: length("thickness")}
		}
	}
	return nil
}

// shapeKey is the key of a shape in a formula file; empty for a caller's own.
func shapeKey(shape mould.Shape) string {
	switch shape.(type) {
	case mould.Measured:
		return "volume"
	case mould.WaterFill:
		return "water_fill"
	case mould.Box:
		return "box"
	case mould.TaperedBox:
		return "tapered_box"
	case mould.Cylinder:
		return "cylinder"
	case mould.Frustum:
		return "frustum"
	case mould.HalfSphere:
		return "half_sphere"
	case mould.Slab:
		return "slab"
	case mould.Cone:
		return "cone"
	case mould.Coat:
		return "coat"
	default:
		return ""
	}
}

func (r *reader) embeds(s *spot) []Embed {
	if s == nil || !r.list(s, mostEmbeds, "embeds") {
		return nil
	}
	embeds := make([]Embed, len(s.node.Items))
	for i := range embeds {
		line := s.item(i)
		if !r.object(line, "embed", "vessel", "each", "spares", "mass", "volume", "sunk") {
			continue
		}
		embeds[i] = Embed{
			Name: r.label(line.at("embed")), Vessel: r.label(line.at("vessel")),
			Each: r.count(line.at("each"), 1), Spares: r.count(line.at("spares"), 0),
			Mass: r.mass(line.at("mass")), Volume: r.volume(line.at("volume")), Sunk: r.yes(line.at("sunk"),
				"write true where it displaces batter, false where it stands on top") == affirmed,
		}
	}
	return embeds
}

func (r *reader) toppings(s *spot) []Topping {
	if s == nil || !r.list(s, mostEmbeds, "toppings") {
		return nil
	}
	toppings := make([]Topping, len(s.node.Items))
	for i := range toppings {
		line := s.item(i)
		if !r.object(line, "topping", "vessel", "mass", "glitter", "aluminium") {
			continue
		}
		toppings[i] = Topping{
			Name: r.label(line.at("topping")), Vessel: r.label(line.at("vessel")),
			Mass: r.mass(line.at("mass")),
		}
		toppings[i].Glitter, toppings[i].Foil = r.glitter(line)
	}
	return toppings
}

// glitter reads what a glitter is made of.
func (r *reader) glitter(s *spot) (Glitter, Foil) {
	var glitter Glitter
	if kind := s.at("glitter"); kind != nil {
		glitter = Glitter(1 + r.word(kind, glitters()...))
	}
	switch r.yes(s.at("aluminium"), "write true where it has a layer of aluminium") {
	case affirmed:
		return glitter, WithAluminium
	case denied:
		return glitter, WithoutAluminium
	default:
		return glitter, FoilUnknown
	}
}

// An answer is true, false, or none.
type answer uint8

const (
	silent answer = iota
	affirmed
	denied
)

// yes reads true or false; the remedy says what true means.
func (r *reader) yes(s *spot, remedy string) answer {
	switch {
	case s == nil:
		return silent
	case s.node.Kind != strictjson.Bool:
		r.fault(s, s.node.Text, "is "+s.node.Kind.Name()+" where true or false is needed", remedy, ErrFormat)
		return silent
	case s.node.Text == "true":
		return affirmed
	default:
		return denied
	}
}

// needs says which keys of an object are missing.
func (r *reader) needs(s *spot, keys ...string) {
	for _, key := range keys {
		if s.at(key) == nil {
			missing := &spot{trail: s.trail.at(key), node: s.node}
			if !slices.Contains(r.meant, missing.path()) {
				r.fault(missing, "", "is missing", "give it", ErrMissing)
			}
		}
	}
}

// count reads how many there are: a whole number from a least one to 10,000.
func (r *reader) count(s *spot, least int) int {
	if s == nil {
		return 0
	}
	if s.node.Kind != strictjson.Number {
		r.fault(s, s.node.Text, "is "+s.node.Kind.Name()+" where a number is needed",
			"write a whole number without quotation marks, such as 12", ErrFormat)
		return 0
	}
	text := s.node.Text
	if n, err := strconv.Atoi(text); err == nil && n >= least && n <= mould.Most &&
		strings.TrimLeft(text, "-0123456789") == "" {
		return n
	}
	r.fault(s, text, "is not a whole number from "+strconv.Itoa(least)+" to "+strconv.Itoa(mould.Most),
		"write how many there are", ErrRange)
	return 0
}

func (r *reader) length(s *spot) units.Length { return measure(r, s, units.ParseLength, "45 mm") }

func (r *reader) volume(s *spot) units.Volume {
	v := measure(r, s, units.ParseVolume, "45 mL")
	if s.is(strictjson.String) && v.Sign() == 0 && !r.faulty(s) {
		r.fault(s, s.node.Text, "is not above 0 mL", "write more, or leave it out", ErrRange)
	}
	return v
}

// faulty reports whether something was said of a value.
func (r *reader) faulty(s *spot) bool {
	path := s.path()
	return slices.ContainsFunc(r.faults, func(f Fault) bool { return f.Path == path })
}
