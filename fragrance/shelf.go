package fragrance

import (
	"context"
	"strconv"
	"strings"

	"example.com/lyewright/internal/nearest"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
	"example.com/lyewright/units/fault"
)

// The bounds of a shelf. More is refused before it costs anything.
const (
	MostMaterials    = 100 // of the maker's own
	MostCertificates = 20  // of a material
	MostConstituents = 300 // of a material; as many allergens
	MostBlended      = 50  // materials of a blend
)

// Shelf holds a maker's own materials, beside the built-in ones. It is immutable; the
// zero value holds none of the maker's.
type Shelf struct {
	own []*material
	rs  *rules
}

// NewShelf puts materials on a shelf, under a law: what that prohibits is refused. Refused
// are also an ID that is missing, stands twice or is a built-in one; a certificate of
// another category, or without its limit or amendment; a constituent without a number or a
// share, or twice; low ends above 100 % together; an allergen that the lists do not name; a
// blend that does not add up to 100 %, leads back to itself, or has papers of its own. The
// error is [fault.Faults], all that is wrong together, with paths such as
// "[0].constituents[1].cas".
func NewShelf(supplied []Supplied, law Law) (Shelf, error) {
	return newShelf(context.Background(), current(), supplied, law)
}

// NewShelfContext is NewShelf for as long as somebody waits for it: work stops within 10 ms of the end of ctx, and the
// error is then ctx.Err().
func NewShelfContext(ctx context.Context, supplied []Supplied, law Law) (Shelf, error) {
	return newShelf(ctx, current(), supplied, law)
}

func newShelf(ctx context.Context, rs *rules, supplied []Supplied, law Law) (Shelf, error) {
	b := shelver{Shelf: Shelf{rs: rs}, supplied: supplied, law: law, ctx: ctx}
	if len(supplied) > MostMaterials {
		b.faults.Add("", "", "are "+strconv.Itoa(len(supplied))+" materials", "list at most 100", fault.ErrLimit)
		return Shelf{}, b.faults
	}
	b.own = make([]*material, len(supplied))
	for i := range supplied {
		if ctx.Err() != nil {
			return Shelf{}, ctx.Err()
		}
		b.own[i] = b.material(i)
	}
	b.blends()
	if ctx.Err() != nil {
		return Shelf{}, ctx.Err()
	}
	if len(b.faults) > 0 {
		return Shelf{}, b.faults
	}
	return b.Shelf, nil
}

// Find gives the material of an id: of the shelf, or built-in. found is false of an id that
// is neither.
func (s Shelf) Find(id string) (m Material, found bool) {
	for _, own := range s.own {
		if own.id == id {
			return Material{own}, true
		}
	}
	rs := s.rs
	if rs == nil {
		if !Known(id) {
			return Material{}, false
		}
		rs = current()
	}
	built, found := builtIn(rs, id)
	return Material{built}, found
}

// shelver builds a shelf, and says what is wrong with what goes on it.
type shelver struct {
	Shelf
	supplied []Supplied
	law      Law
	meant    [][]string // the ids that the lines of each blend mean
	faults   fault.Faults
	ctx      context.Context

	offers                       int
	allergenNames, materialNames []string
}

func (b *shelver) fault(path, text, reason, remedy string, kind error) {
	b.faults.Add(path, text, reason, remedy, kind)
}

func item(path string, i int) string { return path + "[" + strconv.Itoa(i) + "]" }

// material checks a material and makes it; blends are filled later.
func (b *shelver) material(i int) *material {
	s, path := &b.supplied[i], item("", i)
	m := &material{id: s.ID, name: s.ID, complete: s.Complete, behaviour: s.Behaviour}
	switch {
	case s.ID == "":
		b.fault(path+".fragrance", "", "is missing", "give it a name", fault.ErrMissing)
	case Known(s.ID):
		b.fault(path+".fragrance", s.ID, "is the id of a built-in fragrance", `give your own an id of its own, such as "`+
			s.ID+`-lot-1"; a blend of 100 % of a built-in one may say how it behaves`, fault.ErrConflict)
	}
	for j := range i {
		if s.ID != "" && b.supplied[j].ID == s.ID {
			b.fault(path+".fragrance", s.ID, "stands twice, first at materials"+item("", j),
				"give each material an id of its own", fault.ErrConflict)
			break
		}
	}
	if len(s.Blend) > 0 {
		b.blendAlone(s, path)
		return m
	}
	m.certificate = b.certificates(s, path)
	b.constituents(s, m, path)
	b.allergens(s, m, path)
	if s.Complete && len(s.Constituents) == 0 && !s.ConstituentsListed {
		b.fault(path+".constituents", "", "is missing, though the list is said to be complete",
			"list what is restricted in it, or give an empty list where nothing is, as in a diluent, or leave out complete",
			fault.ErrMissing)
	}
	m.alone()
	return m
}

// blendAlone refuses what a blend has from its parts.
func (b *shelver) blendAlone(s *Supplied, path string) {
	for _, own := range []struct {
		key   string
		given bool
	}{
		{"certificates", len(s.Certificates) > 0},
		{"constituents", len(s.Constituents) > 0},
		{"allergens", len(s.Allergens) > 0 || s.AllergensListed},
		{"complete", s.Complete},
		{"natural", s.Natural},
	} {
		if own.given {
			b.fault(path+"."+own.key, "", "is given beside a blend, which has it from its parts",
				"leave it out, or describe the mixture in place of blending it", fault.ErrConflict)
		}
	}
}

// certificates checks them, and gives the strictest.
func (b *shelver) certificates(s *Supplied, path string) (strictest certificate) {
	list := path + ".certificates"
	if len(s.Certificates) > MostCertificates {
		b.fault(list, "", "are "+strconv.Itoa(len(s.Certificates))+" certificates", "list at most 20", fault.ErrLimit)
		return certificate{}
	}
	for j, c := range s.Certificates {
		at := item(list, j)
		if c.Category != b.rs.category {
			reason, kind := "is another category: limits are held for "+b.rs.category+
				" alone, body and hands, mostly rinsed off", fault.ErrUnknown
			if c.Category == "" {
				reason, kind = "is missing", fault.ErrMissing
			}
			b.fault(at+".category", c.Category, reason, `give the certificate's limit for category "`+b.rs.category+
				`", or ask the supplier for it`, kind)
		}
		switch {
		case !c.Limit.Given():
			b.fault(at+".limit", "", "is missing", "give the limit that the certificate states", fault.ErrMissing)
		case c.Limit.Sign() <= 0:
			b.fault(at+".limit", c.Limit.PercentText(12)+" %", "is not above 0 %",
				"what is certified for nothing does not go into soap", fault.ErrRange)
		case c.Limit.Compare(units.Whole(1)) > 0:
			b.fault(at+".limit", c.Limit.PercentText(12)+" %", "is above 100 %", "write at most 100 %: no more is certified",
				fault.ErrRange)
		case !strictest.limit.Given() || c.Limit.Compare(strictest.limit) < 0:
			strictest.limit, strictest.use = c.Limit, 1/c.Limit.Float()
		}
		switch {
		case c.Amendment == 0:
			b.fault(at+".amendment", "", "is missing", "give the amendment of the IFRA Standards that it is to, such as "+
				strconv.Itoa(b.rs.amendment), fault.ErrMissing)
		case c.Amendment < 0 || c.Amendment > 99:
			b.fault(at+".amendment", strconv.Itoa(c.Amendment), "is not between 1 and 99", "give the number of the amendment",
				fault.ErrRange)
		}
		strictest.amendment = max(strictest.amendment, c.Amendment)
	}
	return strictest
}

// constituents checks what is in a material, and works out what that brings.
func (b *shelver) constituents(s *Supplied, m *material, path string) {
	list := path + ".constituents"
	if len(s.Constituents) > MostConstituents {
		b.fault(list, "", "are "+strconv.Itoa(len(s.Constituents))+" constituents", "list at most 300", fault.ErrLimit)
		return
	}
	least, before := units.Whole(0), len(b.faults)
	seen := make(map[CAS]int, len(s.Constituents))
	for j := range s.Constituents {
		c, at := &s.Constituents[j], item(list, j)
		if c.CAS == (CAS{}) {
			b.fault(at+".cas", "", "is missing", "give its CAS number, as the supplier lists it", fault.ErrMissing)
		} else if first, twice := seen[c.CAS]; twice {
			b.fault(at+".cas", c.CAS.text, "stands twice, first at materials"+item(list, first), "put both into one",
				fault.ErrConflict)
		} else {
			seen[c.CAS] = j
		}
		if c.Origin > Added {
			b.fault(at+".natural", "", "is not known", "use AsMaterial, FromNature or Added", fault.ErrUnknown)
		}
		b.share(at+".share", c.Share)
		if c.Share.Low.Given() {
			least = least.Add(c.Share.Low)
		}
		m.figures = append(m.figures, Figure{
			CAS: c.CAS, Low: c.Share.Low, High: c.Share.High,
			Source: cite.Source{Title: s.ID, Place: "supplier's list", How: cite.Given},
		})
		b.prohibited(at+".cas", c.CAS, natural(s, j))
	}
	if len(b.faults) > before {
		return
	}
	if least.Compare(units.Whole(1)) > 0 {
		b.fault(list, least.PercentText(12)+" %", "is what their low ends add up to, above 100 %", "check the shares",
			fault.ErrRange)
	}
	m.assemble(b.rs)
}

// natural reports whether a constituent is a natural trace.
func natural(s *Supplied, constituent int) bool {
	switch s.Constituents[constituent].Origin {
	case FromNature:
		return true
	case Added:
		return false
	default:
		return s.Natural
	}
}

// share checks a share, or both ends of a range.
func (b *shelver) share(path string, share units.Range) {
	low, high := path+".low", path+".high"
	if share.Low.Given() && share.Low.Equal(share.High) {
		low, high = path, path
	}
	percent := func(r units.Ratio) string { return r.PercentText(12) + " %" }
	switch {
	case !share.Low.Given() || !share.High.Given():
		b.fault(path, "", "is missing", `give its share, such as "1.2 %", or both ends of a range`, fault.ErrMissing)
	case share.Low.Sign() < 0:
		b.fault(low, percent(share.Low), "is below 0 %", "give a share of the fragrance", fault.ErrRange)
	case share.High.Compare(units.Whole(1)) > 0:
		b.fault(high, percent(share.High), "is above 100 %", "give a share of the fragrance", fault.ErrRange)
	case share.Low.Compare(share.High) > 0:
		b.fault(low, percent(share.Low), "is the low end, above the high end", "exchange the two", fault.ErrRange)
	case share.High.Sign() == 0:
		b.fault(high, percent(share.High), "is nothing", "leave the constituent out", fault.ErrRange)
	}
}

// prohibited refuses what a rule does not let anyone add. A natural trace is no
// addition, unless it is a prohibited material as a whole.
func (b *shelver) prohibited(path string, cas CAS, natural bool) {
	for _, r := range b.rs.bySubject[cas] {
		if !b.law.counts(r) || r.standing != Prohibited && r.standing != Ceiling || natural && !r.extract {
			continue
		}
		remedy := "do not use it in soap"
		if !r.extract {
			remedy += `; where it is a trace that came with a natural material, write "natural": true`
		}
		b.fault(path, cas.text, "is "+r.name+", prohibited as an added ingredient ("+r.source.String()+")", remedy,
			fault.ErrConflict)
		return
	}
}

// allergens checks the names that the supplier gives.
func (b *shelver) allergens(s *Supplied, m *material, path string) {
	m.listed = s.AllergensListed || len(s.Allergens) > 0
	list := path + ".allergens"
	if len(s.Allergens) > MostConstituents {
		b.fault(list, "", "are "+strconv.Itoa(len(s.Allergens))+" names", "list at most 300", fault.ErrLimit)
		return
	}
	for j, name := range s.Allergens {
		r := b.rs.allergen(name)
		bars := b.rs.bars(r, name, b.law)
		if bars != nil && s.Natural {
			m.traces = appendOnce(m.traces, bars)
		} else if bars != nil {
			b.fault(item(list, j), name, "is prohibited as an added ingredient ("+bars.source.String()+")",
				"do not use it in soap; where it is a trace of a natural material, say so of the material", fault.ErrConflict)
			continue
		}
		if r == nil {
			remedy := b.offer(name, &b.allergenNames, b.rs.allergens)
			if remedy == "" {
				remedy = "spell it as the European list does, such as Linalool"
			}
			b.fault(item(list, j), name, "is not on the lists of fragrance allergens", remedy, fault.ErrUnknown)
			continue
		}
		known := false
		for _, bring := range m.labels {
			known = known || bring.rule == r
		}
		if known {
			continue
		}
		if limited := b.rs.limited(r, b.law); s.Complete && limited != nil {
			b.fault(item(list, j), name, "is limited ("+limited.source.String()+
				"), and the list of constituents that is said to be complete lacks it",
				"add its share to the constituents, or leave out complete", fault.ErrConflict)
			continue
		}
		m.named = appendOnce(m.named, r)
		m.browns(b.rs, r)
	}
}

// bars gives a rule that counts and prohibits what an allergen's name stands for, nil where
// there is none. Names of entries that left the lists are known, too.
func (rs *rules) bars(entry *rule, name string, law Law) *rule {
	for _, r := range rs.all {
		if entry == nil && r.body == EU && r.standing == Prohibited && strings.EqualFold(r.name, name) {
			entry = r
		}
	}
	if entry == nil {
		return nil
	}
	for _, cas := range entry.cas {
		for _, r := range rs.bySubject[cas] {
			if law.counts(r) && r.standing == Prohibited {
				return r
			}
		}
	}
	return nil
}

// limited gives a rule that counts and limits what an entry is about, nil where there is
// none.
func (rs *rules) limited(entry *rule, law Law) *rule {
	for _, cas := range entry.cas {
		for _, r := range rs.bySubject[cas] {
			if law.counts(r) && (r.quantified() || r.standing == Unheld) {
				return r
			}
		}
	}
	return nil
}

// mostOffers is how many names are offered for unknown ones: more help nobody.
const mostOffers = 20

// offer says which known name may have been meant; the names are gathered once.
func (b *shelver) offer(name string, names *[]string, all func() []string) string {
	if b.offers++; b.offers > mostOffers {
		return ""
	}
	if *names == nil {
		*names = all()
	}
	return nearest.Remedy(name, *names)
}

// allergen finds the entry that a label name belongs to.
func (rs *rules) allergen(name string) *rule {
	for _, r := range rs.all {
		if r.list != NotListed && strings.EqualFold(r.name, name) {
			return r
		}
	}
	return nil
}

func (rs *rules) allergens() []string {
	var names []string
	for _, r := range rs.all {
		if r.list != NotListed {
			names = append(names, r.name)
		}
	}
	return names
}
