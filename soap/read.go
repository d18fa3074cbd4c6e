package soap

import (
	"context"
	"errors"
	"io"
	"slices"
	"strings"

	"example.com/lyewright/colour/tint"
	"example.com/lyewright/internal/nearest"
	"example.com/lyewright/internal/strictjson"
	"example.com/lyewright/units"
)

// MostBytes is the size of the largest formula file that is read, 1 MiB.
const MostBytes = 1 << 20

// mostDepth is how deep its values may nest.
const mostDepth = 16

// ReadFormula reads a formula file (JSON, version 1). It is strict: an unknown
// or repeated key, a wrong unit or a missing field is an error. The error is
// [Faults], with the reader's own and those of [Formula.Check] on what it could
// read, sorted by place, as many as Check tells; or the error of r, as it is, where that
// could not be read. Of more than [MostBytes], or values nested deeper than 16, nothing
// else is read: an [ErrLimit].
func ReadFormula(r io.Reader) (Formula, error) {
	text, err := io.ReadAll(io.LimitReader(r, MostBytes+1))
	if err != nil {
		return Formula{}, err
	}
	f, _, err := ParseFormula(text)
	return f, err
}

// ParseFormula is ReadFormula on a text that is already there. It also returns
// where everything stands, for those who report what they find later: the faults and
// findings of [Formula.Batch] name paths, and [Places.Find] gives their line.
func ParseFormula(text []byte) (Formula, Places, error) { return ParseFormulaBeside(Beside{}, text) }

// Beside is what is known beside the text of a formula. The zero value is nothing.
type Beside struct {
	Law      Law            // whose limits on fragrance count: becomes the formula's Law
	Swatches *tint.Swatches // of a formula that has none of its own
}

// ParseFormulaBeside is ParseFormula where something is known beside the text: whose law
// counts, or swatches from a file of their own, which are checked with the formula.
func ParseFormulaBeside(known Beside, text []byte) (Formula, Places, error) {
	places, root, faults := parsed(text, "a formula is")
	if faults != nil {
		return Formula{}, places, faults
	}
	r := reader{places: places}
	f := r.formula(&spot{node: root})
	f.Law = known.Law
	if f.Swatches == nil && root.Get("swatches") == nil {
		f.Swatches = known.Swatches
	}
	if r.full() {
		return Formula{}, places, bounded(places.Place(r.faults), true)
	}
	c := checker{f: f.named(), ctx: context.Background(), lostSwatch: r.lostSwatch}
	c.check()
	if faults := c.after(r.faults, r.meant); len(faults) > 0 {
		return Formula{}, places, bounded(places.Place(faults), c.full())
	}
	return f, places, nil
}

// parsed reads a text as one JSON object; what says what that should be.
func parsed(text []byte, what string) (Places, *strictjson.Node, Faults) {
	places := Places{text: text}
	if len(text) > MostBytes {
		return places, nil, Faults{{
			Line: 1, Column: 1, Reason: "is larger than 1 MiB",
			Remedy: "a formula needs a few thousand bytes", Kind: ErrLimit,
		}}
	}
	root, bad := strictjson.Parse(text, mostDepth)
	if bad != nil {
		f := Fault{Path: bad.Path, Reason: bad.Reason, Remedy: bad.Remedy, Kind: ErrFormat}
		if bad.Limit {
			f.Kind = ErrLimit
		}
		f.Line, f.Column = places.position(bad.Offset)
		return places, nil, Faults{f}
	}
	places.root = &root
	if root.Kind != strictjson.Object {
		f := Fault{
			Reason: "is " + root.Kind.Name() + " where " + what + " needed",
			Remedy: "write {…}, as the help on the formula shows", Kind: ErrFormat,
		}
		f.Line, f.Column = places.position(root.Offset)
		return places, nil, Faults{f}
	}
	return places, &root, nil
}

// A spot is a value of the file and the trail that led to it.
type spot struct {
	trail
	node *strictjson.Node
}

func (s *spot) path() string { return s.trail.String() }

// item gives an item of a list.
func (s *spot) item(i int) *spot {
	return &spot{trail: s.trail.item(i), node: &s.node.Items[i]}
}

// at gives the value of a key, nil where there is none.
func (s *spot) at(key string) *spot {
	if s == nil || s.node.Kind != strictjson.Object {
		return nil
	}
	node := s.node.Get(key)
	if node == nil {
		return nil
	}
	return &spot{trail: s.trail.at(key), node: node}
}

func (s *spot) is(kind strictjson.Kind) bool { return s != nil && s.node.Kind == kind }

// reader turns a file into a formula and collects what is wrong with it.
type reader struct {
	places Places
	faults Faults
	meant  []string // paths of what a mistyped key probably meant
	ids    []string // the ids of the formula's oil lines, read or not
	lost   bool     // the id of some oil line could not be read

	lostSwatch bool // something of the swatches could not be read
}

// full reports whether more is wrong than is told: nothing more is read then, since
// that, too, would cost.
func (r *reader) full() bool { return len(r.faults) > mostFaults }

func (r *reader) fault(s *spot, text, reason, remedy string, kind error) {
	if r.full() {
		return
	}
	f := Fault{Path: s.path(), Text: clip(text), Reason: reason, Remedy: remedy, Kind: kind}
	f.Line, f.Column = r.places.position(s.node.Offset)
	r.faults = append(r.faults, f)
}

// clip cuts a text for a fault, so that no file can flood a log.
func clip(text string) string {
	if len(text) <= mostName {
		return text
	}
	return strings.ToValidUTF8(text[:mostName], "") + "…"
}

// touches reports whether a fault of the check rests on something that is
// already said, or that the reader could not read.
func (found *checked) touches(said Faults, meant []string) bool {
	related := func(bad string) bool {
		if within(bad, found.Path) || within(found.Path, bad) {
			return true
		}
		for _, input := range found.inputs {
			if plain := anyIndex(bad, input); within(plain, input) || within(input, plain) {
				return true
			}
		}
		return false
	}
	for _, f := range said {
		if f.Path != "" && related(f.Path) {
			return true
		}
	}
	return slices.ContainsFunc(meant, related)
}

// within reports whether a path is another or inside it. The path of a list
// does not count as holding its lines: what is wrong with one line says
// nothing of the list as a whole.
func within(path, outer string) bool {
	rest, ok := strings.CutPrefix(path, outer)
	return ok && (rest == "" || rest[0] == '.')
}

// anyIndex writes a path's indices as "[]" where the pattern does.
func anyIndex(path, pattern string) string {
	if !strings.Contains(pattern, "[]") {
		return path
	}
	var b strings.Builder
	for {
		open := strings.IndexByte(path, '[')
		if open < 0 {
			return b.String() + path
		}
		b.WriteString(path[:open] + "[]")
		_, path, _ = strings.Cut(path[open:], "]")
	}
}

// object checks that a value is an object with none but known keys.
func (r *reader) object(s *spot, known ...string) bool {
	if r.full() {
		return false
	}
	if s.node.Kind != strictjson.Object {
		r.fault(s, "", "is "+s.node.Kind.Name()+" where an object is needed", "write {…} with "+strings.Join(known, ", "),
			ErrFormat)
		return false
	}
	for i := range s.node.Members {
		m := &s.node.Members[i]
		if slices.Contains(known, m.Key) {
			continue
		}
		bad := &spot{trail: s.trail.at(m.Key), node: &strictjson.Node{Offset: m.Offset}}
		remedy := keyRemedy(s.path(), m.Key, known)
		means := nearest.Names(m.Key, known)
		if at := anyIndex(s.path(), "[]"); at == "materials[]" && misplaced(at, m.Key) != "" {
			means = []string{"fragrance"}
		}
		for _, meant := range means {
			where := s.trail.at(meant)
			r.meant = append(r.meant, where.String())
		}
		if r.fault(bad, "", "is not a key of a formula", remedy, ErrUnknown); r.full() {
			return false
		}
	}
	return true
}

// list checks that a value is a list of at most so many items.
func (r *reader) list(s *spot, most int, what string) bool {
	if r.full() {
		return false
	}
	if s.node.Kind != strictjson.Array {
		r.fault(s, "", "is "+s.node.Kind.Name()+" where a list is needed", "write […]", ErrFormat)
		return false
	}
	if len(s.node.Items) > most {
		r.fault(s, "", "has more than "+units.Whole(most).Text(0)+" "+what, "use at most "+units.Whole(most).Text(0),
			ErrLimit)
		return false
	}
	return true
}

// text reads a text; empty where the value is missing or something else.
func (r *reader) text(s *spot, example string) string {
	if s == nil {
		return ""
	}
	if s.node.Kind != strictjson.String {
		remedy := "write it in quotation marks, such as " + units.Quote(example)
		if s.node.Kind == strictjson.Number {
			remedy = quoted(s.node.Text, example)
		}
		r.fault(s, s.node.Text, "is "+s.node.Kind.Name()+" where a text is needed", remedy, ErrFormat)
		return ""
	}
	return s.node.Text
}

// label reads a name.
func (r *reader) label(s *spot) string { return r.labelled(s, "a name") }

// labelled reads a name of which an example is given.
func (r *reader) labelled(s *spot, example string) string {
	name := r.text(s, example)
	if s.is(strictjson.String) {
		if name == "" {
			r.fault(s, "", "is empty", "write a name", ErrMissing)
		} else if reason, remedy := nameFault(name); reason != "" {
			r.fault(s, name, reason, remedy, ErrRange)
			return ""
		}
	}
	return name
}

// note reads a maker's remark.
func (r *reader) note(s *spot) string {
	note := r.text(s, "a remark")
	if s.is(strictjson.String) {
		if note == "" {
			r.fault(s, "", "is empty", "write a note, or leave it out", ErrMissing)
		} else if reason, remedy := noteFault(note); reason != "" {
			r.fault(s, note, reason, remedy, ErrRange)
			return ""
		}
	}
	return note
}

// word reads one of a few words; its index, or -1.
func (r *reader) word(s *spot, words ...string) int {
	text := r.text(s, words[0])
	if i := slices.Index(words, text); i >= 0 {
		return i
	}
	if s.is(strictjson.String) {
		remedy := nearest.Remedy(text, words)
		if remedy == "" {
			remedy = "write " + strings.Join(words, " or ")
		}
		r.fault(s, text, "is not known here", remedy, ErrUnknown)
	}
	return -1
}

// measure reads a quantity with one of the parsers of package units.
func measure[Q any](r *reader, s *spot, parse func(string) (Q, error), example string) (q Q) {
	if s == nil {
		return q
	}
	text := r.text(s, example)
	if !s.is(strictjson.String) {
		return q
	}
	q, err := parse(text)
	if err != nil {
		r.parseFault(s, err)
	}
	return q
}

func (r *reader) percent(s *spot) units.Ratio { return measure(r, s, units.ParsePercent, "5 %") }
func (r *reader) number(s *spot) units.Ratio  { return measure(r, s, units.ParseNumber, "2") }

// mass reads a mass above 0 g.
func (r *reader) mass(s *spot) units.Mass {
	if s == nil {
		return units.Mass{}
	}
	text := r.text(s, "800 g")
	if !s.is(strictjson.String) {
		return units.Mass{}
	}
	return r.massOf(s, text)
}

func (r *reader) massOf(s *spot, text string) units.Mass {
	value, err := units.ParseMass(text)
	if err != nil {
		r.parseFault(s, err)
	} else if value.Sign() == 0 && strings.Trim(text, "0. kmgozlb") != "" {
		r.fault(s, text, "is less than half a nanogram", "write more, or leave it out", ErrRange)
	} else if value.Sign() == 0 {
		r.fault(s, text, "is not above 0 g", "write more, or leave it out", ErrRange)
	}
	return value
}

func (r *reader) parseFault(s *spot, err error) {
	var bad *units.ParseError
	if errors.As(err, &bad) {
		r.fault(s, bad.Text, bad.Reason, bad.Remedy, bad.Kind)
		return
	}
	r.fault(s, "", err.Error(), "", err)
}
