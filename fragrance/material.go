package fragrance

import (
	"cmp"

	"example.com/lyewright/internal/names"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// Material is what scents a soap: an essential oil or extract, a fragrance oil, or a
// blend of these. It is immutable. The zero value is none; get one from [LookUp] or a
// [Shelf], or take [Unknown].
type Material struct{ m *material }

type material struct {
	id, name, latin string
	asked           string // the name that it was looked up by, where that is not the id
	nameOnly        bool
	annex           bool // the IFRA Annex lists it
	complete        bool // its list names everything that is restricted
	coloured        bool // from the start
	own             []*rule
	figures         []Figure
	notes           []string

	limits    []bring  // what its list brings to rules with a limit, in the rules' order
	labels    []bring  // to the lists of allergens
	traces    []*rule  // prohibited substances, as natural traces, without a ceiling
	asks      []*rule  // for which the supplier must give its word
	unheld    []*rule  // whose maxima are not held
	naturals  []*rule  // natural materials in it, whose own constituents are not listed
	free      []Figure // that no rule names
	colouring []Colouring

	certificate certificate
	listed      bool      // its allergens are listed
	named       []*rule   // allergens that are present in an unknown share
	behaviour   Behaviour // of a maker's own, as is said of it; of a blend that of its parts, too
	recalled    Behaviour // of a built-in one, which nobody read; of a blend as before

	parts []portion // of a blend, its leaves; of anything else, itself
}

// portion is a material in another.
type portion struct {
	m     *material
	share units.Ratio
	part  float64 // the share
}

// bring is a share of a material that counts for a rule.
type bring struct {
	rule   *rule
	share  units.Ratio
	use    float64 // share over limit
	aside  bool    // its list names none but what shares the rule's limit, or a Schiff base
	source cite.Source
}

// certificate is the strictest of a material's certificates; the zero value is none.
type certificate struct {
	limit     units.Ratio
	use       float64 // 1 over limit
	amendment int     // the newest
}

// Figure is a published, or a supplied, share of a constituent in a material, as it
// was printed. An end that is not given was not printed.
type Figure struct {
	CAS       CAS         // which substance it is
	Name      string      // as printed; empty where only the number is given
	Low, High units.Ratio // of the material, by mass; for limits and label High counts
	Source    cite.Source // where it stands, or whose list it is
}

func (m Material) get() *material {
	if m.m == nil {
		return &material{}
	}
	return m.m
}

// Given reports whether it is a material.
func (m Material) Given() bool { return m.m != nil }

// ID is the name that a formula calls it by; of a built-in one lower case, hyphenated.
func (m Material) ID() string { return m.get().id }

// Name is its common name; the ID of a maker's own.
func (m Material) Name() string { return m.get().name }

// Asked is the name that it was looked up by where that is not its ID, such as "cinnamon
// bark" of cinnamon-bark; empty otherwise.
func (m Material) Asked() string { return m.get().asked }

// NameNote is what should be known of the name that a built-in one was looked up by, or of
// its id: what else goes by that name. It is empty where nothing is to be said. It
// is common knowledge, and was not read anywhere.
func (m Material) NameNote() string {
	if !Known(m.ID()) {
		return ""
	}
	return names.Note(names.Fragrance, cmp.Or(m.Asked(), m.ID()))
}

// Latin is the botanical name; empty where there is none.
func (m Material) Latin() string { return m.get().latin }

// InAnnex reports whether the IFRA Annex on contributions from other sources lists
// the material: what the Standards restrict in it is known then.
func (m Material) InAnnex() bool { return m.get().annex }

// Complete reports whether everything that the IFRA Standards restrict in it is known:
// it stands in the IFRA Annex, or whoever brought it said so. Of a blend, all of it.
func (m Material) Complete() bool {
	for _, p := range m.get().parts {
		if !p.m.annex && !p.m.complete {
			return false
		}
	}
	return m.Given()
}

// Certified is a certified material. It comes from [Material.Certificates].
type Certified struct {
	Of        Material    // what is certified: of a blend one of its parts
	Limit     units.Ratio // of the finished product: the strictest of its certificates
	Amendment int         // the newest of these
}

// Certificates lists what is certified of it: of a blend, its parts that are.
func (m Material) Certificates() []Certified {
	var list []Certified
	for _, p := range m.get().parts {
		if c := p.m.certificate; c.limit.Given() {
			list = append(list, Certified{Material{p.m}, c.limit, c.amendment})
		}
	}
	return list
}

// Own lists the rules that are of this very material, such as the Standard for ylang
// ylang extracts. They count beside those of its constituents.
func (m Material) Own() []Rule { return rulesOf(m.get().own) }

// Figures lists what is published, or supplied, of its composition, source by source; none
// of a blend, whose parts have them.
func (m Material) Figures() []Figure { return append([]Figure(nil), m.get().figures...) }

// Notes lists what else is to be known of its figures.
func (m Material) Notes() []string { return append([]string(nil), m.get().notes...) }

// Free lists the constituents that neither a Standard nor an entry of the editions
// held here names, each once, those of a blend's parts one part after the other.
func (m Material) Free() []Figure {
	var free []Figure
	for _, p := range m.get().parts {
		free = append(free, p.m.free...)
	}
	return free
}

// Behaviour is what it does in soap, as whoever brought it, or one of its parts, says; of
// built-in ones what is recalled of them.
func (m Material) Behaviour() Behaviour { return m.get().behaviour | m.get().recalled }

// BehaviourHow says how one or more behaviours of it are known: [cite.Given] where
// whoever brought it, or one of its parts, says one of them, [cite.Memory] where they are
// recalled, [cite.Unknown] where it has none of them.
func (m Material) BehaviourHow(of Behaviour) cite.How {
	switch {
	case m.get().behaviour&of != 0:
		return cite.Given
	case m.get().recalled&of != 0:
		return cite.Memory
	default:
		return cite.Unknown
	}
}

// AllergensListed reports whether all allergens in it are named. Of built-in materials
// they never are: neither the Annex nor a monograph lists them all.
func (m Material) AllergensListed() bool {
	for _, p := range m.get().parts {
		if !p.m.listed {
			return false
		}
	}
	return m.Given()
}

// Unknown is a fragrance of which nothing is known but its name: it may be weighed, and
// [Material.Unjudged] says that it is not judged.
func Unknown(name string) Material {
	m := &material{id: name, name: name, nameOnly: true}
	m.alone()
	return Material{m}
}

// OnlyAName reports whether nothing else is known of it, as of [Unknown] ones.
func (m Material) OnlyAName() bool { return m.get().nameOnly }

// alone makes a material its own only part.
func (m *material) alone() { m.parts = []portion{{m: m, share: units.Whole(1), part: 1}} }

func rulesOf(rs []*rule) []Rule {
	list := make([]Rule, len(rs))
	for i, r := range rs {
		list[i] = Rule{r}
	}
	return list
}

// Behaviour is what a fragrance does in soap: what its supplier says, or what the
// maker saw, several put together with |. It is not predicted here. The zero value says
// nothing.
type Behaviour uint8

// What a fragrance may do in soap, each a bit.
const (
	Accelerates Behaviour = 1 << iota // the batter thickens fast
	Rices                             // small hard grains
	Seizes                            // the batter sets at once
	Browns                            // it colours the soap brown
)

// Behaviours are the words for them, as a formula file writes them, in order of their bits.
func Behaviours() []string { return []string{"accelerates", "rices", "seizes", "browns"} }

// Words gives the words for what is said, in the order of [Behaviours]; none where nothing
// is.
func (b Behaviour) Words() []string {
	var words []string
	for i, word := range Behaviours() {
		if b&(1<<i) != 0 {
			words = append(words, word)
		}
	}
	return words
}
