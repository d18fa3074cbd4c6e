package fragrance_test

import (
	"bytes"
	"encoding/json"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/units"
)

// The JSON of a material holds what the library says of it, and no more: a figure that is
// missing is a missing key.
func TestTheJSONOfAMaterialIsWhatTheLibrarySays(t *testing.T) {
	own, err := fragrance.NewShelf([]fragrance.Supplied{{
		ID: "lantern-pear", Certificates: certified("", "2.4").Certificates, Allergens: []string{"Linalool"},
		Constituents: []fragrance.Constituent{{CAS: number(t, "97-53-0"), Share: units.Between(pct("0.5"), pct("1.2"))}},
	}}, fragrance.IFRAAndEU)
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range append(fragrance.Materials(), find(t, own, "lantern-pear")) {
		text, err := json.Marshal(m)
		if err != nil {
			t.Fatal(err)
		}
		decoder := json.NewDecoder(bytes.NewReader(text))
		decoder.UseNumber()
		var got map[string]any
		if err := decoder.Decode(&got); err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(viewOf(m), got); diff != "" {
			t.Fatalf("%s:\n%s", m.ID(), diff)
		}
	}
}

// object makes an object of keys and values in turn, without the texts and figures that are
// empty.
func object(pairs ...any) map[string]any {
	o := map[string]any{}
	for i := 0; i < len(pairs); i += 2 {
		if value := pairs[i+1]; value != "" && value != json.Number("") {
			o[pairs[i].(string)] = value
		}
	}
	return o
}

func percent(r units.Ratio) json.Number { return json.Number(r.PercentText(6)) }

func texts(list []string) []any {
	values := []any{}
	for _, text := range list {
		values = append(values, text)
	}
	return values
}

func viewOf(m fragrance.Material) map[string]any {
	unjudged, rules, constituents := []any{}, []any{}, []any{}
	for _, u := range m.Unjudged(fragrance.IFRAAndEU) {
		unjudged = append(unjudged, object("why", u.Why.String(), "of", texts(u.Names())))
	}
	caps := func(law fragrance.Law) []any {
		list := []any{}
		for _, c := range m.Caps(law) {
			cap := object("cap_of_dry_bar_pct", percent(c.Most), "binding", c.Rule.Name(), "limit_pct", percent(c.Limit), "brings_pct", percent(c.Brings), "source", c.Source.String())
			if c.Rule.Given() {
				cap["binding_law"], cap["limit_source"] = c.Rule.Body().String(), c.Rule.Source().String()
			}
			list = append(list, cap)
		}
		return list
	}
	for _, r := range m.Own() {
		rules = append(rules, object("name", r.Name(), "law", r.Body().String(), "number", r.Number(), "standing", r.Standing().String(),
			"limit_pct", percent(r.Limit()), "list", r.List().String(), "ask", r.Ask(), "source", r.Source().String()))
	}
	for _, f := range m.Figures() {
		figure := object("cas", f.CAS.String(), "name", f.Name, "low_pct", percent(f.Low), "high_pct", percent(f.High), "source", f.Source.String(), "how", f.Source.How.String())
		constituents = append(constituents, figure)
	}
	return object("fragrance", m.ID(), "asked", m.Asked(), "name_note", m.NameNote(), "data_edition",
		fragrance.DataEdition(), "name", m.Name(), "latin", m.Latin(), "category", "9", "in_annex", m.InAnnex(), "complete",
		m.Complete(),
		"unjudged", unjudged, "caps", caps(fragrance.IFRAAndEU), "caps_ifra_alone", caps(fragrance.IFRAAlone), "rules", rules, "constituents", constituents, "notes", texts(m.Notes()))
}

// Caps differ where what binds first is another figure under European law than under the
// Standards alone. Of built-in materials there are both kinds.
func TestWhetherCapsDifferIsSaid(t *testing.T) {
	seen := map[bool]int{}
	for _, m := range fragrance.Materials() {
		most := func(law fragrance.Law) string {
			if caps := m.Caps(law); len(caps) > 0 {
				return caps[0].Most.Text(12)
			}
			return "nothing binds"
		}
		differ := most(fragrance.IFRAAndEU) != most(fragrance.IFRAAlone)
		seen[differ]++
		if m.CapsDiffer() != differ {
			t.Errorf("%s: %s with European law, %s without, and they differ: %t", m.ID(), most(fragrance.IFRAAndEU), most(fragrance.IFRAAlone), m.CapsDiffer())
		}
	}
	if seen[true] == 0 || seen[false] == 0 {
		t.Errorf("%v", seen)
	}
}

// One name is a list of allergens.
func TestOneAllergenIsAList(t *testing.T) {
	for names, want := range map[int]bool{0: false, 1: true, 2: true} {
		s, err := fragrance.NewShelf([]fragrance.Supplied{{ID: "lantern-pear", Allergens: []string{"Linalool", "Limonene"}[:names]}}, fragrance.IFRAAndEU)
		if err != nil {
			t.Fatal(err)
		}
		if got := find(t, s, "lantern-pear").AllergensListed(); got != want {
			t.Errorf("%d names: listed is %t", names, got)
		}
	}
}

// Under the Standards alone nothing of European law is left open, and under both all that is
// left open under the Standards is.
func TestWhatIsLeftOpenIsOfTheLawThatCounts(t *testing.T) {
	of := func(m fragrance.Material, law fragrance.Law) map[string]bool {
		open := map[string]bool{}
		for _, u := range m.Unjudged(law) {
			for _, r := range u.Rules {
				if u.Why != fragrance.NaturalWithin && law == fragrance.IFRAAlone && r.Body() != fragrance.IFRA {
					t.Errorf("%s: %s of %s is left open under the Standards alone", m.ID(), r.Name(), r.Body())
				}
				open[u.Why.String()+": "+r.Body().String()+" "+r.Number()] = true
			}
		}
		return open
	}
	more := 0
	for _, m := range fragrance.Materials() {
		alone, both := of(m, fragrance.IFRAAlone), of(m, fragrance.IFRAAndEU)
		for rule := range alone {
			if !both[rule] {
				t.Errorf("%s: %s is left open under the Standards alone, not under both laws", m.ID(), rule)
			}
		}
		more += len(both) - len(alone)
	}
	if more == 0 {
		t.Error("European law leaves nothing open")
	}
}

func TestAllOfAFragranceMayBeOneConstituent(t *testing.T) {
	s := shelf(t, fragrance.Supplied{ID: "lantern-clove", Complete: true, Constituents: []fragrance.Constituent{{CAS: number(t, "97-53-0"), Share: units.Exactly(pct("100"))}}})
	if caps := find(t, s, "lantern-clove").Caps(fragrance.IFRAAlone); len(caps) == 0 || caps[0].Most.PercentText(6) != "4.9" { // the limit of eugenol itself
		t.Errorf("%+v", caps)
	}
}

// Bergapten (484-20-8) is prohibited by European law alone: as a natural trace it is left
// open where that law counts, in a blend too, and not where the Standards stand alone.
func TestATraceIsLeftOpenUnderTheLawThatProhibitsIt(t *testing.T) {
	supplied := []fragrance.Supplied{
		{ID: "lantern-peel", Natural: true, Constituents: []fragrance.Constituent{{CAS: number(t, "484-20-8"), Share: units.Exactly(pct("0.1"))}}},
		{ID: "dusk", Blend: []fragrance.Share{{Fragrance: "lantern-peel", Share: pct("50")}, {Fragrance: "clove-bud", Share: pct("50")}}},
	}
	for law, want := range map[fragrance.Law]int{fragrance.IFRAAlone: 0, fragrance.IFRAAndEU: 1} {
		s, err := fragrance.NewShelf(supplied, law)
		if err != nil {
			t.Fatal(err)
		}
		for _, id := range []string{"lantern-peel", "dusk"} {
			traces := 0
			for _, u := range find(t, s, id).Unjudged(law) {
				if u.Why == fragrance.NaturalTrace {
					traces += len(u.Rules)
				}
			}
			if traces != want {
				t.Errorf("%s under law %v: %d traces are left open, want %d", id, law, traces, want)
			}
		}
	}
}
