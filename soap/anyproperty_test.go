package soap_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"math"
	"math/big"
	"slices"
	"strings"
	"sync"
	"testing"

	"example.com/lyewright/internal/madeup"
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// What holds of every batch, whatever its formula says: drawn from formulas of any scope.

// alwaysThere lists the keys of the batch's JSON that no batch lacks, by where they stand:
// those of the format's page that depend on nothing.
var alwaysThere = map[string][]string{
	"":                    {"schema", "formula", "oils", "alkali", "water", "lye", "batter_g", "poured_g", "dry_g", "superfat", "parts", "findings"},
	"oils[]":              {"oil", "name", "mass_g", "weigh_g", "withheld_g"},
	"alkali[]":            {"kind", "purity_pct", "mass_g"},
	"water":               {"asked_g", "mass_g", "weigh_g", "withheld_g"},
	"lye":                 {"concentration_pct", "water_per_alkali", "mass_g"},
	"superfat":            {"planned_pct", "low_pct", "likely_low_pct", "likely_high_pct", "high_pct", "complete"},
	"parts[]":             {"part", "share_pct", "batter_g", "oils_g", "water_g", "poured_g", "dry_g", "superfat", "additions"},
	"parts[].superfat":    {"planned_pct", "low_pct", "likely_low_pct", "likely_high_pct", "high_pct", "complete"},
	"parts[].additions[]": {"name", "kind", "mass_g", "weigh_g"},
	"findings[]":          {"code", "severity", "subject", "message", "source"},
}

// keyOrder remembers which key stood before which, object by object.
type keyOrder struct {
	before map[[3]string]bool // where, first, second
	kinds  map[string]bool
}

// walk reads one value and notes the keys of every object in it.
func (k *keyOrder) walk(t *testing.T, decoder *json.Decoder, where string) {
	t.Helper()
	token, err := decoder.Token()
	if err != nil {
		t.Fatal(err)
	}
	switch token {
	case json.Delim('['):
		for decoder.More() {
			k.walk(t, decoder, where+"[]")
		}
	case json.Delim('{'):
		var keys []string
		for decoder.More() {
			name, err := decoder.Token()
			if err != nil {
				t.Fatal(err)
			}
			keys = append(keys, name.(string))
			k.walk(t, decoder, strings.TrimPrefix(where+"."+name.(string), "."))
		}
		k.note(t, where, keys)
	default:
		if token == nil {
			t.Errorf("null at %s", where)
		}
		return
	}
	if _, err := decoder.Token(); err != nil {
		t.Fatal(err)
	}
}

func (k *keyOrder) note(t *testing.T, where string, keys []string) {
	t.Helper()
	k.kinds[where] = true
	for _, key := range alwaysThere[where] {
		if !slices.Contains(keys, key) {
			t.Errorf("%q lacks %s", where, key)
		}
	}
	for i, first := range keys {
		for _, second := range keys[i+1:] {
			if first == second || k.before[[3]string{where, second, first}] {
				t.Errorf("%q: %s stands before %s here, and behind it elsewhere", where, first, second)
			}
			k.before[[3]string{where, first, second}] = true
		}
	}
}

func TestTheJSONOfEveryBatchHasItsKeysInOneOrder(t *testing.T) {
	k := keyOrder{map[[3]string]bool{}, map[string]bool{}}
	madeup.Each(t, madeup.New(501).Any, 500, func(t *testing.T, _ soap.Formula, b soap.Batch) {
		object, err := b.MarshalJSON()
		if err != nil {
			t.Fatal(err)
		}
		decoder := json.NewDecoder(bytes.NewReader(object))
		decoder.UseNumber()
		k.walk(t, decoder, "")
		if _, err := decoder.Token(); !errors.Is(err, io.EOF) {
			t.Errorf("something stands behind the object: %v", err)
		}
	})
	for where := range alwaysThere {
		if !k.kinds[where] {
			t.Errorf("no batch has %q", where)
		}
	}
}

// printed is what a reader of the JSON sees of a batch, digit for digit.
type printed struct {
	Oils   []struct{ MassG, WithheldG json.Number }
	Alkali []struct{ MassG, StockG json.Number }
	Acids  []struct{ MassG json.Number }
	Water  struct {
		AskedG, MassG, WithheldG json.Number
		Liquids                  []struct{ MassG, WaterG json.Number }
	}
	Lye                      struct{ MassG json.Number }
	BatterG, PouredG, DryG   json.Number
	FilledG, ReserveG, LossG json.Number
	Parts                    []struct {
		BatterG, PouredG, DryG, FilledG, ReserveG, LossG json.Number
		Additions                                        []struct{ MassG, CarrierG json.Number }
	}
}

// Masses are printed to a millionth of a gram, each rounded by itself: as printed, lines
// add up to their total within half a millionth for each of them and for the total.
func TestThePrintedMassesOfEveryBatchAddUp(t *testing.T) {
	sums := 0
	madeup.Each(t, madeup.New(502).Any, 500, func(t *testing.T, _ soap.Formula, b soap.Batch) {
		object, err := b.MarshalJSON()
		if err != nil {
			t.Fatal(err)
		}
		// encoding/json knows a field by its name without underscores
		var p printed
		if err := json.Unmarshal(bytes.ReplaceAll(object, []byte("_g\":"), []byte("g\":")), &p); err != nil {
			t.Fatal(err)
		}
		add := func(what string, total json.Number, lines ...json.Number) {
			sum := new(big.Rat)
			for _, line := range lines {
				if line != "" {
					sum = plus(sum, frac(line.String()))
				}
			}
			sums++
			if !within(sum, frac(total.String()), times(whole(int64(len(lines)+1)), frac("0.0000005"))) {
				t.Errorf("%s: %s, its lines are %s", what, total, sum.FloatString(7))
			}
		}
		pot, lye := []json.Number{p.Lye.MassG}, []json.Number{p.Water.MassG}
		for _, o := range p.Oils {
			pot = append(pot, o.MassG)
		}
		for _, a := range p.Acids {
			pot = append(pot, a.MassG)
		}
		for _, l := range p.Water.Liquids {
			pot, lye = append(pot, l.MassG, "-"+l.WaterG), append(lye, l.WaterG)
		}
		for _, a := range p.Alkali {
			if a.StockG != "" { // with its own water
				a.MassG = a.StockG
			}
			lye = append(lye, a.MassG)
		}
		add("batter", p.BatterG, pot...)
		add("lye", p.Lye.MassG, lye...)
		var batter, poured, dry, filled, reserve, loss []json.Number
		for _, part := range p.Parts {
			batter, poured, dry = append(batter, part.BatterG), append(poured, part.PouredG), append(dry, part.DryG)
			filled, reserve, loss = append(filled, part.FilledG), append(reserve, part.ReserveG), append(loss, part.LossG)
			own := []json.Number{part.BatterG}
			for _, a := range part.Additions {
				own = append(own, a.MassG, a.CarrierG)
			}
			add("poured part", part.PouredG, own...)
			if part.FilledG != "" {
				add("poured part, divided", part.PouredG, part.FilledG, part.ReserveG, part.LossG)
			}
		}
		add("batter of the parts", p.BatterG, batter...)
		add("poured", p.PouredG, poured...)
		add("dry", p.DryG, dry...)
		if p.FilledG != "" {
			add("filled", p.FilledG, filled...)
			add("reserve", p.ReserveG, reserve...)
			add("loss", p.LossG, loss...)
		}
	})
	if sums < 3000 {
		t.Errorf("%d sums", sums)
	}
}

func TestEveryFindingOfEveryBatchIsKnownAndTheGravestComesFirst(t *testing.T) {
	found := map[string]bool{}
	madeup.Each(t, madeup.New(503).Any, 400, func(t *testing.T, _ soap.Formula, b soap.Batch) {
		view := b.Caps()
		tinted, err := b.Tint()
		if err != nil {
			t.Fatal(err)
		}
		for _, list := range [][]soap.Finding{b.Findings, view.Findings, tinted.Findings} {
			for i, f := range list {
				found[f.Code] = true
				if !subjectKnown(f.Code, f.Subject) {
					t.Errorf("%s at %s is not in the list of codes", f.Code, f.Subject)
				}
				if i > 0 && f.Severity > list[i-1].Severity {
					t.Errorf("%s, a %s, stands behind %s, a %s", f.Code, f.Severity, list[i-1].Code, list[i-1].Severity)
				}
				if !isSentence(f.Message()) {
					t.Errorf("%s says %q", f.Code, f.Message())
				}
			}
		}
	})
	if len(found) < 30 {
		t.Errorf("only %d codes were found: %v", len(found), found)
	}
}

// One formula worked out by many at a time gives the same bytes, whichever view: nothing
// is shared that changes. The race detector reads along.
func TestManyAtATimeGetTheSameBytes(t *testing.T) {
	views := func(f soap.Formula) (all []byte) {
		b, err := f.Batch()
		if err != nil {
			return []byte(err.Error())
		}
		tinted, err := b.Tint()
		if err != nil {
			return []byte(err.Error())
		}
		for _, view := range []json.Marshaler{b, b.Caps(), tinted} {
			object, err := view.MarshalJSON()
			if err != nil {
				return []byte(err.Error())
			}
			all = append(all, object...)
		}
		return all
	}
	m := madeup.New(504)
	for range 25 {
		f := m.Any()
		want := views(f)
		var all sync.WaitGroup
		for range 16 {
			all.Go(func() {
				if got := views(f); !bytes.Equal(got, want) {
					t.Errorf("got %s, alone %s", got, want)
				}
			})
		}
		all.Wait()
	}
}

// byName lists what a batch comes to, whatever order its formula was written in.
func byName(b soap.Batch) map[string]units.Mass {
	all := map[string]units.Mass{"batter": b.Batter, "poured": b.Poured, "dry": b.Dry, "oils": b.OilsTotal, "lye": b.Lye.Mass, "water": b.Water.Mass}
	for _, p := range b.Parts {
		all[p.Name], all[p.Name+" poured"], all[p.Name+" dry"] = p.Batter, p.Poured, p.Dry
		for _, a := range p.Additions {
			all[p.Name+" "+a.Kind.String()+" "+a.Name] = a.Mass
		}
	}
	return all
}

// What a maker writes first is a matter of taste: parts, additions, a maker's own
// materials and pigments, in any order.
func TestTheOrderOfPartsAdditionsAndOwnThingsDoesNotMatter(t *testing.T) {
	m := madeup.New(505)
	turned := 0
	madeup.Each(t, m.Any, 300, func(t *testing.T, f soap.Formula, b soap.Batch) {
		looked := slices.ContainsFunc(f.Parts, func(p soap.Part) bool {
			return len(p.Match) > 0 || slices.ContainsFunc(p.Fragrances, func(a soap.Addition) bool { return a.Load.Max })
		})
		g := f
		g.Parts, g.Materials, g.Pigments = slices.Clone(f.Parts), slices.Clone(f.Materials), slices.Clone(f.Pigments)
		slices.Reverse(g.Parts)
		slices.Reverse(g.Materials)
		slices.Reverse(g.Pigments)
		for i := range g.Parts {
			p := &g.Parts[i]
			for _, list := range []*[]soap.Addition{&p.Colourants, &p.Fragrances, &p.Additives} {
				*list = slices.Clone(*list)
				slices.Reverse(*list)
			}
		}
		other, err := g.Batch()
		if err != nil {
			t.Error(err)
			return
		}
		turned++
		// What is apportioned takes its nanograms from the first of equals, and the batter of
		// vessels is summed up in another order; a load that is looked for is one to 10^-8.
		most := int64(60)
		if looked {
			most += int64(math.Ceil(10 * b.Poured.Grams()))
		}
		got := byName(other)
		for name, mass := range byName(b) {
			if apart := minus(massFrac(got[name]), massFrac(mass)); apart.Abs(apart).Cmp(times(whole(most), frac("0.000000001"))) > 0 {
				t.Errorf("%s: %s, the other way round %s", name, mass, got[name])
			}
		}
		sameOutlook(t, other.Superfat, b.Superfat, "0.0000001")
		codes := func(list []soap.Finding) (codes []string) {
			for _, finding := range list {
				codes = append(codes, finding.Code)
			}
			slices.Sort(codes)
			return codes
		}
		if !slices.Equal(codes(other.Findings), codes(b.Findings)) {
			t.Errorf("%v, the other way round %v", codes(b.Findings), codes(other.Findings))
		}
	})
	if turned < 240 {
		t.Errorf("%d formulas were turned round", turned)
	}
}

// Ten times the batch has the same bars: what is used of each limit on fragrance, and what
// each fragrance may be at most, stay as they are.
func TestScalingLeavesTheCapsAsTheyAre(t *testing.T) {
	m, fragrances := madeup.New(506), 0
	madeup.Each(t, m.Scented, 200, func(t *testing.T, f soap.Formula, b soap.Batch) {
		if len(f.Size.Vessels) > 0 {
			return
		}
		larger, err := tenfold(f).Batch()
		if err != nil {
			t.Error(err)
			return
		}
		got, want := larger.Caps(), b.Caps()
		// The most of a fragrance is a whole number of micrograms, of some ten milligrams or more.
		near := func(what string, a, b units.Ratio) {
			if a.Given() != b.Given() || a.Given() && !within(ratioFrac(a), ratioFrac(b), frac("0.000001")) {
				t.Errorf("%s: %s, ten times as much: %s", what, b, a)
			}
		}
		for i, p := range want.Parts {
			near(p.Name, got.Parts[i].Fragrance, p.Fragrance)
			near(p.Name+", used", got.Parts[i].Most.Used, p.Most.Used)
			for k, one := range p.Fragrances {
				fragrances++
				near(one.Material.Name(), got.Parts[i].Fragrances[k].OfOils, one.OfOils)
				near(one.Material.Name()+", at most", got.Parts[i].Fragrances[k].MostOfOils, one.MostOfOils)
			}
		}
	})
	if fragrances < 150 {
		t.Errorf("%d fragrances", fragrances)
	}
}
