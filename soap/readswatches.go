package soap

import (
	"strconv"
	"strings"

	"example.com/lyewright/colour/tint"
	"example.com/lyewright/internal/strictjson"
	"example.com/lyewright/units"
)

// ParseSwatches reads swatches that stand in a file of their own: the value of "swatches"
// of a formula, or an object with that key alone. The error is [Faults], with what is
// wrong with each swatch; whether they suffice the formula says, whose pigments tell which
// is the white. Hand them to [ParseFormulaBeside].
func ParseSwatches(text []byte) (*tint.Swatches, Places, error) {
	places, root, faults := parsed(text, "swatches are")
	if faults != nil {
		return nil, places, faults
	}
	r, s := reader{places: places}, &spot{node: root}
	if len(root.Members) == 1 && root.Members[0].Key == "swatches" {
		s = s.at("swatches")
	}
	swatches := r.swatches(s)
	if len(r.faults) == 0 {
		if err := under(s.path(), swatches.CheckEach()); err != nil {
			var ok bool
			if r.faults, ok = err.(Faults); !ok {
				return nil, places, err
			}
		}
	}
	if len(r.faults) > 0 {
		return nil, places, bounded(places.Place(r.faults), r.full())
	}
	return swatches, places, nil
}

func (r *reader) swatches(s *spot) *tint.Swatches {
	before := len(r.faults)
	defer func() { r.lostSwatch = len(r.faults) > before }()
	if s == nil || !r.object(s, "name", "bands", "surface", "read") {
		return nil
	}
	set := &tint.Swatches{Name: r.label(s.at("name"))}
	bands := s.at("bands")
	if bands != nil && r.object(bands, "from", "step") {
		set.Bands = tint.Bands{From: r.nanometres(bands.at("from")), Step: r.nanometres(bands.at("step"))}
		for _, key := range []string{"from", "step"} {
			if bands.at(key) == nil {
				r.fault(bands, "", "does not say "+key, `write {"from": "400 nm", "step": "10 nm"}`, ErrMissing)
			}
		}
	}
	if surface := s.at("surface"); surface != nil {
		set.Surface = r.surface(surface)
	}
	read := s.at("read")
	if read == nil || !r.list(read, tint.MostSwatches, "swatches") {
		return set
	}
	for i := range read.node.Items {
		set.Read = append(set.Read, r.swatch(read.item(i)))
	}
	for i := range set.Read { // how many bands there are, the first spectrum says
		if n := max(len(set.Read[i].Reflectance), len(set.Read[i].OverBlack)); n > 0 && bands != nil {
			set.Bands.Count = n
			break
		}
	}
	return set
}

// nanometres reads a wavelength, a whole number.
func (r *reader) nanometres(s *spot) int {
	text := r.text(s, "400 nm")
	if !s.is(strictjson.String) {
		return 0
	}
	digits := strings.TrimSuffix(strings.TrimSuffix(text, "nm"), " ")
	n, err := strconv.Atoi(digits)
	if err != nil || len(digits) > 4 || strings.Trim(digits, "0123456789") != "" || !strings.HasSuffix(text, "nm") {
		r.fault(s, text, "is not a wavelength", `write a whole number of nm, such as "400 nm"`, units.ErrUnit)
		return 0
	}
	return n
}

func (r *reader) surface(s *spot) *tint.Surface {
	surface := tint.UsualSurface()
	if !r.object(s, "outside", "inside", "gloss") {
		return &surface
	}
	if outside := s.at("outside"); outside != nil {
		surface.Outside = r.float(outside)
	}
	if inside := s.at("inside"); inside != nil {
		surface.Inside = r.float(inside)
	}
	if gloss := s.at("gloss"); gloss != nil {
		surface.NoGloss = r.word(gloss, "included", "excluded") == 1
	}
	return &surface
}

func (r *reader) swatch(s *spot) tint.Swatch {
	var w tint.Swatch
	if !r.object(s, "swatch", "loads", "reflectance", "thickness", "over_black", "over_white", "backing", "lab", "srgb") {
		return w
	}
	w.Name = r.label(s.at("swatch"))
	w.Loads = r.swatchLoads(s.at("loads"))
	w.Reflectance = r.floats(s.at("reflectance"), tint.MostBands)
	w.OverBlack, w.OverWhite = r.floats(s.at("over_black"), tint.MostBands), r.floats(s.at("over_white"), tint.MostBands)
	w.Thickness = measure(r, s.at("thickness"), units.ParseLength, "8 mm")
	if backing := s.at("backing"); backing != nil {
		if list := r.floats(backing, 2); len(list) == 2 {
			w.Backing = [2]float64(list)
		} else if backing.is(strictjson.Array) && len(backing.node.Items) < 2 {
			r.fault(backing, "", "does not have two figures", "give the reflectances of the black and the white ground, such as [0.05, 0.88]", ErrMissing)
		}
	}
	if lab := s.at("lab"); lab != nil {
		w.Lab = r.lab(lab)
	}
	if srgb := s.at("srgb"); srgb != nil {
		w.SRGB = r.srgb(srgb)
	}
	return w
}

func (r *reader) swatchLoads(s *spot) []tint.Load {
	if s == nil {
		return nil
	}
	if !s.is(strictjson.Object) {
		r.fault(s, "", "is "+s.node.Kind.Name()+" where an object is needed", `write {"titanium-dioxide": "0.3 % of batter"}`, ErrFormat)
		return nil
	}
	var loads []tint.Load
	for i := range s.node.Members {
		id := s.node.Members[i].Key
		at := s.at(id)
		if reason, remedy := nameFault(id); reason != "" {
			r.fault(at, id, reason, remedy, ErrRange)
			continue
		}
		const remedy = `write it as "0.3 % of batter"`
		before := len(r.faults)
		load := r.load(at)
		if len(r.faults) > before {
			r.faults[before].Remedy = remedy // a swatch's load is of nothing else
			continue
		}
		if !load.OfBatter.Given() {
			r.fault(at, at.node.Text, "is not a share of the batter, and a swatch does not say how much oil its batter has", remedy, units.ErrUnit)
			continue
		}
		loads = append(loads, tint.Load{Colourant: id, OfBatter: load.OfBatter})
	}
	return loads
}

func (r *reader) srgb(s *spot) *tint.SRGB {
	c := measure(r, s, tint.ParseSRGB, "#c8b49a")
	return &c
}

func (r *reader) lab(s *spot) *tint.Lab {
	list := r.floats(s, 3)
	if len(list) != 3 {
		if s.is(strictjson.Array) && len(s.node.Items) < 3 {
			r.fault(s, "", "does not have three figures", "give L, a and b, such as [62, -8, -24]", ErrMissing)
		}
		return &tint.Lab{}
	}
	return &tint.Lab{L: list[0], A: list[1], B: list[2]}
}

// floats reads a list of bare numbers: readings of an instrument.
func (r *reader) floats(s *spot, most int) []float64 {
	if s == nil || !r.list(s, most, "figures") {
		return nil
	}
	before, list := len(r.faults), make([]float64, len(s.node.Items))
	for i := range list {
		if list[i] = r.float(s.item(i)); len(r.faults) > before {
			return nil // one says it
		}
	}
	return list
}

// mostDigits is how long a bare number may be.
const mostDigits = 40

func (r *reader) float(s *spot) float64 {
	if !s.is(strictjson.Number) {
		r.fault(s, "", "is "+s.node.Kind.Name()+" where a bare number is needed", "write it without quotation marks, such as 0.62", ErrFormat)
		return 0
	}
	v, err := 0.0, error(nil)
	if len(s.node.Text) <= mostDigits {
		v, err = strconv.ParseFloat(s.node.Text, 64)
	}
	if err != nil || len(s.node.Text) > mostDigits {
		r.fault(s, s.node.Text, "is no figure that an instrument reads", "write it with a few digits, such as 0.62", ErrRange)
		return 0
	}
	return v
}
