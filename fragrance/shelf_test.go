package fragrance_test

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
	"example.com/lyewright/units/fault"
)

// faultsOf gives what is wrong with materials.
func faultsOf(t *testing.T, law fragrance.Law, supplied ...fragrance.Supplied) fault.Faults {
	t.Helper()
	s, err := fragrance.NewShelf(supplied, law)
	var faults fault.Faults
	if err != nil && !errors.As(err, &faults) {
		t.Fatalf("%T", err)
	}
	if _, found := s.Find("pear"); err != nil && found {
		t.Error("a shelf beside an error")
	}
	return faults
}

func pathsOf(faults fault.Faults) []string {
	var paths []string
	for _, f := range faults {
		paths = append(paths, f.Path)
	}
	return paths
}

func TestWhatIsWrongWithMaterialsComesAllAtOnce(t *testing.T) {
	between := func(low, high string) units.Range { return units.Between(pct(low), pct(high)) }
	faults := faultsOf(t, fragrance.IFRAAndEU,
		fragrance.Supplied{ID: "pear", Certificates: []fragrance.Certificate{
			{Category: "4", Limit: pct("2"), Amendment: 51},
			{Limit: pct("101"), Amendment: 100},
			{Category: "9", Limit: pct("0"), Amendment: -1},
			{Category: "9"},
		}},
		fragrance.Supplied{ID: "pear", Constituents: []fragrance.Constituent{
			{CAS: number(t, "97-53-0"), Share: units.Between(units.Percent(-1), pct("2"))},
			{CAS: number(t, "97-53-0"), Share: between("3", "2")},
			{Share: between("0", "100.1")},
			{CAS: number(t, "91-64-5")},
			{CAS: number(t, "78-70-6"), Share: between("0", "0")},
			{CAS: number(t, "121-33-5"), Share: between("1", "2"), Origin: 9},
		}},
		fragrance.Supplied{ID: "clove-bud", Complete: true, Allergens: []string{"Linalool", "linaloo"}},
		fragrance.Supplied{ID: "fig", Constituents: []fragrance.Constituent{{
			CAS:   number(t, "97-53-0"),
			Share: between("70", "90"),
		}, {CAS: number(t, "91-64-5"), Share: between("31", "32")}}},
		fragrance.Supplied{ID: "moss", Natural: true, Blend: []fragrance.Share{
			{"fig", pct("50")},
			{"fig", pct("50")},
			{"", pct("1")},
			{"quince", units.Ratio{}},
			{"fig", pct("101")},
		}},
		fragrance.Supplied{ID: "dusk", Blend: []fragrance.Share{{"fig", pct("50")}, {"clove-leaf", pct("49.9")}}},
	)
	paths := pathsOf(faults)
	want := []string{
		"[0].certificates[0].category", "[0].certificates[1].category", "[0].certificates[1].limit",
		"[0].certificates[1].amendment",
		"[0].certificates[2].limit", "[0].certificates[2].amendment", "[0].certificates[3].limit",
		"[0].certificates[3].amendment",
		"[1].fragrance", "[1].constituents[0].share.low", "[1].constituents[1].cas", "[1].constituents[1].share.low",
		"[1].constituents[2].cas", "[1].constituents[2].share.high",
		"[1].constituents[3].share", "[1].constituents[4].share", "[1].constituents[5].natural",
		"[2].fragrance", "[2].allergens[1]", "[2].constituents", "[3].constituents",
		"[4].natural", "[4].blend[1].fragrance", "[4].blend[2].fragrance", "[4].blend[3].fragrance", "[4].blend[3].share",
		"[4].blend[4].fragrance", "[4].blend[4].share", "[5].blend",
	}
	if !slices.Equal(paths, want) {
		t.Errorf("faults\n%v\nat %v,\nwant %v", faults, paths, want)
	}
	for _, f := range faults {
		if f.Reason == "" || f.Remedy == "" || f.Kind == nil {
			t.Errorf("%+v", f)
		}
	}
}

func TestAMaterialNeedsAName(t *testing.T) {
	if faults := faultsOf(t, 0, certified("", "2"), certified("", "3")); len(faults) != 2 ||
		faults[1].Path != "[1].fragrance" || !errors.Is(faults[1].Kind, fault.ErrMissing) {
		t.Errorf("%v", faults)
	}
}

// Low ends of just 100 % are in order: 70 + 30.
func TestLowEndsMayAddUpToTheWhole(t *testing.T) {
	s := fragrance.Supplied{ID: "pear", Constituents: []fragrance.Constituent{
		{CAS: number(t, "97-53-0"), Share: units.Between(pct("70"), pct("90"))}, {
			CAS:   number(t, "91-64-5"),
			Share: units.Between(pct("30"), pct("40")),
		},
	}}
	if faults := faultsOf(t, fragrance.IFRAAndEU, s); len(faults) > 0 {
		t.Error(faults)
	}
}

func TestMoreThanTheBoundsIsRefused(t *testing.T) {
	if faults := faultsOf(t, 0, make([]fragrance.Supplied, 101)...); len(faults) != 1 {
		t.Errorf("101 materials: %v", faults)
	}
	for _, s := range []fragrance.Supplied{
		{ID: "pear", Certificates: make([]fragrance.Certificate, 21)},
		{ID: "pear", Constituents: make([]fragrance.Constituent, 301)},
		{ID: "pear", Allergens: make([]string, 301)},
		{ID: "pear", Blend: make([]fragrance.Share, 51)},
	} {
		if faults := faultsOf(t, 0, s); len(faults) != 1 || !errors.Is(faults[0].Kind, fault.ErrLimit) {
			t.Errorf("%v", faults)
		}
	}
}

// Safrole (94-59-7) is prohibited as added and has a natural ceiling; allyl isothiocyanate
// (57-06-7) is prohibited and has none; costus root oil (8023-88-9) is a material itself;
// HMPCC (31906-04-4) is limited by the IFRA and prohibited by the EU.
func TestProhibitedSubstances(t *testing.T) {
	for _, row := range []struct {
		cas               string
		natural           bool
		origin            fragrance.Origin
		underBoth, onIFRA bool // refused
	}{
		{"94-59-7", false, fragrance.AsMaterial, true, true},
		{"94-59-7", true, fragrance.AsMaterial, false, false},
		{"94-59-7", false, fragrance.FromNature, false, false},
		{"94-59-7", true, fragrance.Added, true, true},
		{"57-06-7", false, fragrance.AsMaterial, true, true},
		{"57-06-7", true, fragrance.AsMaterial, false, false},
		{"8023-88-9", false, fragrance.AsMaterial, true, true},
		{"8023-88-9", true, fragrance.AsMaterial, true, true},
		{"31906-04-4", false, fragrance.AsMaterial, true, false},
		{"31906-04-4", true, fragrance.AsMaterial, false, false},
		{"71-43-2", false, fragrance.AsMaterial, false, false}, // benzene: unless a specification is met
		{"97-53-0", false, fragrance.AsMaterial, false, false},
	} {
		s := listed(t, "pear", row.cas, "1")
		s.Natural, s.Constituents[0].Origin = row.natural, row.origin
		for law, want := range map[fragrance.Law]bool{fragrance.IFRAAndEU: row.underBoth, fragrance.IFRAAlone: row.onIFRA} {
			faults := faultsOf(t, law, s)
			if refused := len(faults) > 0; refused != want {
				t.Errorf("%+v under %v: %v", row, law, faults)
			} else if refused && (len(faults) != 1 || faults[0].Path != "[0].constituents[0].cas" || faults[0].Text != row.cas) {
				t.Errorf("%+v: %v", row, faults)
			}
		}
	}
}

// What is left open of a material: never said to be nothing.
func TestWhatIsNotJudgedIsSaid(t *testing.T) {
	whole := listed(t, "whole", "97-53-0", "1")
	whole.Complete = true
	trace := listed(t, "trace", "57-06-7", "1", "97-53-0", "1")
	trace.Natural, trace.Complete = true, true
	winter := listed(t, "winter", "119-36-8", "98")
	winter.Complete = true
	tar := listed(t, "tar", "8001-88-5", "1")
	tar.Complete = true
	s := shelf(t, whole, trace, winter, tar, certified("pear", "2"), listed(t, "fig", "97-53-0", "1"),
		fragrance.Supplied{ID: "mix", Blend: []fragrance.Share{{"pear", pct("50")}, {"whole", pct("50")}}},
		fragrance.Supplied{ID: "worse", Blend: []fragrance.Share{{"mix", pct("50")}, {"fig", pct("50")}}})
	const both, alone = fragrance.IFRAAndEU, fragrance.IFRAAlone
	for _, row := range []struct {
		id   string
		law  fragrance.Law
		want string
	}{
		{"whole", both, "[]"},
		{"pear", both, "[1]"},
		{"pear", alone, "[]"},
		{"fig", both, "[0]"},
		{"fig", alone, "[0]"},
		{"trace", both, "[3 Allyl isothiocyanate]"},
		{"winter", both, "[2 Methyl Salicylate]"},
		{"winter", alone, "[]"},
		{"tar", alone, "[4 Birch wood pyrolysate 5 Birch wood pyrolysate]"},
		{"mix", both, "[1]"},
		{"mix", alone, "[]"},
		{"worse", alone, "[0]"},
		{"clove-bud", both, "[]"},
		{"patchouli", both, "[0]"},
		{"oakmoss-extract", alone, "[0 5 Oakmoss extracts]"},
	} {
		var said []string
		for _, u := range find(t, s, row.id).Unjudged(row.law) {
			said = append(said, fmt.Sprint(int(u.Why)))
			for _, r := range u.Rules {
				said = append(said, r.Name())
			}
		}
		if got := fmt.Sprint(said); got != row.want {
			t.Errorf("%s under %v: %s, want %s", row.id, row.law, got, row.want)
		}
	}
	// A natural material by its own number, and its constituents nowhere: clove and, in the
	// Standards, oakmoss; whatever is said of the list.
	within := listed(t, "within", "8000-34-8", "40", "90028-68-5", "1")
	within.Complete = true
	if u := find(t, shelf(t, within), "within").Unjudged(alone); len(u) != 2 || u[0].Why != fragrance.NaturalWithin ||
		len(u[0].Rules) != 3 || u[1].Why != fragrance.Specification {
		t.Errorf("%+v", u)
	}
	if u := (fragrance.Material{}).Unjudged(both); len(u) != 1 {
		t.Errorf("no material: %+v", u)
	}
	if u := fragrance.Unknown("moonlight").Unjudged(both); len(u) != 1 || u[0].Why != fragrance.Unlisted ||
		!fragrance.Unknown("moonlight").OnlyAName() || find(t, s, "fig").OnlyAName() {
		t.Errorf("%+v", u)
	}
}

func TestNumbersThatNoRuleNamesAreFree(t *testing.T) {
	// isoamyl acetate alone: limonene and bergamot have Standards without a limit
	s := shelf(t, listed(t, "pear", "123-92-2", "2", "97-53-0", "1", "138-86-3", "3", "8007-75-8", "1"))
	if free := find(t, s, "pear").Free(); len(free) != 1 || free[0].CAS.String() != "123-92-2" {
		t.Errorf("%v", free)
	}
}

// A blend is its parts: the same verdict, whether they are blended or not.
func TestABlendIsItsParts(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 9))
	for range 60 {
		a, b, c := 1+random.IntN(9_999), 1+random.IntN(9_999), 1+random.IntN(9_999)
		share := func(n int) units.Ratio { return pct(decimal(n, 2)) }
		s := shelf(t,
			certified("pear", decimal(1+random.IntN(5_000), 3)),
			listed(t, "fig", "97-53-0", decimal(1+random.IntN(90_000), 3), "93-15-2", "0.01"),
			fragrance.Supplied{ID: "inner", Blend: []fragrance.Share{{"pear", share(a)}, {"nutmeg", share(10_000 - a)}}},
			fragrance.Supplied{ID: "outer", Blend: []fragrance.Share{{"inner", share(b)}, {"fig", share(10_000 - b)}}},
			fragrance.Supplied{ID: "twice", Blend: []fragrance.Share{{"outer", share(c)}, {"pear", share(10_000 - c)}}},
		)
		mass := units.Grams(10)
		part := func(id string, shares ...int) fragrance.Dose {
			m := mass
			for _, n := range shares {
				m = units.Sum{}.Plus(m, share(n)).Mass(units.Nearest)
			}
			return fragrance.Dose{Material: find(t, s, id), Mass: m}
		}
		blended := fragrance.Judge(0, units.Grams(1000), []fragrance.Dose{part("twice")})
		apart := fragrance.Judge(0, units.Grams(1000), []fragrance.Dose{
			part("pear", a, b, c), part("nutmeg", 10_000-a, b, c),
			part("fig", 10_000-b, c), part("pear", 10_000-c),
		})
		x, _ := blended.Most()
		y, _ := apart.Most()
		// roundings to a nanogram of 10 g
		if difference := x.Used.Float() - y.Used.Float(); x.Rule != y.Rule || difference > 2e-8 || difference < -2e-8 {
			t.Fatalf("blended %s of %s, apart %s of %s", x.Used, x.Rule.Name(), y.Used, y.Rule.Name())
		}
		if m := find(t, s, "twice"); len(m.Certificates()) != 1 || m.Complete() {
			t.Fatalf("%+v", m.Certificates())
		}
	}
}

func TestABlendBehavesAsItsPartsDoAndAsIsSaidOfIt(t *testing.T) {
	pear := certified("pear", "2")
	pear.Behaviour = fragrance.Rices
	s := shelf(t, pear, fragrance.Supplied{
		ID: "mix", Behaviour: fragrance.Seizes | fragrance.Browns,
		Blend: []fragrance.Share{{"pear", pct("100")}},
	},
		fragrance.Supplied{ID: "outer", Blend: []fragrance.Share{{"mix", pct("100")}}})
	for id, want := range map[string]string{
		"pear": "rices", "mix": "rices seizes browns", "outer": "rices seizes browns",
		"clove-bud": "accelerates", "lavender": "",
	} {
		if got := strings.Join(find(t, s, id).Behaviour().Words(), " "); got != want {
			t.Errorf("%s: %q, want %q", id, got, want)
		}
	}
}

// What is recalled of a built-in oil is told from what somebody says; a blend has both.
func TestHowABehaviourIsKnown(t *testing.T) {
	pear := certified("pear", "2")
	pear.Behaviour = fragrance.Rices
	s := shelf(t, pear, fragrance.Supplied{ID: "spice", Blend: []fragrance.Share{
		{"pear", pct("60")},
		{"clove-bud", pct("40")},
	}},
		fragrance.Supplied{ID: "bud", Behaviour: fragrance.Accelerates, Blend: []fragrance.Share{{"clove-bud", pct("100")}}})
	for _, row := range []struct {
		id   string
		of   fragrance.Behaviour
		want cite.How
	}{
		{"pear", fragrance.Rices, cite.Given},
		{"pear", fragrance.Accelerates, cite.Unknown},
		{"clove-bud", fragrance.Accelerates, cite.Memory},
		{"clove-bud", fragrance.Seizes, cite.Unknown},
		{"spice", fragrance.Accelerates, cite.Memory},
		{"spice", fragrance.Rices, cite.Given},
		{"spice", fragrance.Rices | fragrance.Accelerates, cite.Given},
		{"bud", fragrance.Accelerates, cite.Given}, // its maker saw it
	} {
		if got := find(t, s, row.id).BehaviourHow(row.of); got != row.want {
			t.Errorf("%s, %v: %s, want %s", row.id, row.of.Words(), got, row.want)
		}
	}
}

// Behind an allergen whose share is known, too, names are read on: one that no list has is
// refused, and one that has no share counts.
func TestEveryNameOfAnAllergenIsRead(t *testing.T) {
	lists := func(names ...string) fragrance.Supplied {
		s := listed(t, "pear", "78-70-6", "0.5") // linalool
		s.Complete, s.Allergens = false, names
		return s
	}
	faults := faultsOf(t, 0, lists("Linalool", "Moonlight"))
	if len(faults) != 1 || faults[0].Path != "[0].allergens[1]" || faults[0].Text != "Moonlight" {
		t.Errorf("%+v", faults)
	}
	s := shelf(t, lists("Linalool", "Limonene"))
	list, complete := fragrance.Judge(0, units.Grams(1000),
		[]fragrance.Dose{{Material: find(t, s, "pear"), Mass: units.Grams(50)}}).Allergens()
	var names []string
	for _, a := range list {
		names = append(names, a.Rule.Name())
	}
	slices.Sort(names)
	if !complete || !slices.Equal(names, []string{"Limonene", "Linalool"}) { // 0.025 % and at most 5 % of the dry bar
		t.Errorf("%v, complete %t", names, complete)
	}
}

// Circles of every length are found, each once.
func TestBlendsInACircleAreRefused(t *testing.T) {
	for n := 1; n <= 6; n++ {
		var supplied []fragrance.Supplied
		for i := range n {
			supplied = append(supplied, fragrance.Supplied{
				ID:    fmt.Sprint("m", i),
				Blend: []fragrance.Share{{fmt.Sprint("m", (i+1)%n), pct("60")}, {"clove-bud", pct("40")}},
			})
		}
		supplied = append(supplied, fragrance.Supplied{ID: "into", Blend: []fragrance.Share{{"m0", pct("100")}}})
		faults := faultsOf(t, 0, supplied...)
		if len(faults) != 1 || faults[0].Path != "[0].blend[0].fragrance" || !strings.Contains(faults[0].Reason, "m0 → ") ||
			!strings.HasSuffix(faults[0].Reason, "→ m0") {
			t.Errorf("%d: %v", n, faults)
		}
	}
	// A long way is told by its ends, and of twenty strangers more than enough is offered.
	var ring []fragrance.Supplied
	stranger := certified("stranger", "2")
	for i := range 30 {
		ring = append(ring, fragrance.Supplied{ID: fmt.Sprint("m", i), Blend: []fragrance.Share{{
			fmt.Sprint("m", (i+1)%30),
			pct("100"),
		}}})
		stranger.Allergens = append(stranger.Allergens, fmt.Sprint("Linaloo", i))
	}
	faults := faultsOf(t, 0, append(ring, stranger)...)
	offered := 0
	for _, f := range faults {
		if strings.Contains(f.Remedy, "did you mean Linalool?") {
			offered++
		}
	}
	if last := faults[len(faults)-1]; len(faults) != 31 || offered != 20 || !strings.HasSuffix(last.Reason,
		"m0 → m1 → m2 → m3 → … → m28 → m29 → m0") {
		t.Errorf("%d faults, %d offered: %s", len(faults), offered, last.Reason)
	}
	// What meets again is no circle.
	if faults := faultsOf(t, 0,
		fragrance.Supplied{ID: "top", Blend: []fragrance.Share{{"left", pct("50")}, {"right", pct("50")}}},
		fragrance.Supplied{ID: "left", Blend: []fragrance.Share{{"clove-bud", pct("100")}}},
		fragrance.Supplied{ID: "right", Blend: []fragrance.Share{{"left", pct("100")}}}); len(faults) > 0 {
		t.Error(faults)
	}
}

// An empty list that is said to be complete is that of a diluent: nothing in it is restricted,
// and nothing is left open. Where no list is given that is missing. Of
// hydroxycitronellal 4.1 % may be in the bar: 4.1/0.082 = 50 %, and 4.1/0.041 = 100 % half and
// half with a diluent.
func TestAnEmptyCompleteListIsThatOfADiluent(t *testing.T) {
	diluent := fragrance.Supplied{ID: "diluent", Complete: true, ConstituentsListed: true, AllergensListed: true}
	lily := listed(t, "lily", "107-75-5", "8.2")
	lily.Complete = true
	mix := fragrance.Supplied{ID: "mix", Blend: []fragrance.Share{{"lily", pct("50")}, {"diluent", pct("50")}}}
	s := shelf(t, diluent, lily, mix)
	for id, want := range map[string]string{"diluent": "", "lily": "50", "mix": "100"} {
		m := find(t, s, id)
		got := ""
		if caps := m.Caps(fragrance.IFRAAlone); len(caps) > 0 {
			got = caps[0].Most.PercentText(6)
		}
		if open := m.Unjudged(fragrance.IFRAAndEU); got != want || len(open) > 0 || !m.Complete() {
			t.Errorf("%s: at most %q, want %q; left open: %v", id, got, want, open)
		}
	}
	if !find(t, s, "diluent").AllergensListed() {
		t.Error("its allergens are not listed")
	}
	for _, row := range []struct {
		listed, complete bool
		fault            string
	}{{false, true, "[0].constituents"}, {true, true, ""}, {true, false, ""}, {false, false, ""}} {
		faults := faultsOf(t, 0, fragrance.Supplied{ID: "diluent", Complete: row.complete, ConstituentsListed: row.listed})
		if got := strings.Join(pathsOf(faults), " "); got != row.fault {
			t.Errorf("%+v: %v", row, faults)
		}
	}
	if open := find(t, shelf(t, fragrance.Supplied{ID: "quiet", ConstituentsListed: true}),
		"quiet").Unjudged(0); len(open) != 1 || open[0].Why != fragrance.Unlisted {
		t.Errorf("an empty list that is not complete leaves open %v", open)
	}
}

// A list that is said to be complete and an allergen that is limited and not on it
// contradict each other; under the IFRA Standards alone, where these limit it.
func TestACompleteListThatLacksALimitedAllergenIsRefused(t *testing.T) {
	for _, row := range []struct {
		allergen            string
		complete            bool
		underBoth, underOne bool
	}{
		{"Isoeugenol", true, true, true},
		{"Isoeugenol", false, false, false},
		{"Methyl Salicylate", true, true, false},
		{"Linalool", true, false, false},
		{"Vanillin", true, false, false},
		{"Eugenol", true, false, false}, // eugenol is on the list
	} {
		s := listed(t, "pear", "123-92-2", "4", "97-53-0", "1")
		s.Complete, s.Allergens = row.complete, []string{row.allergen}
		for law, want := range map[fragrance.Law]bool{fragrance.IFRAAndEU: row.underBoth, fragrance.IFRAAlone: row.underOne} {
			if faults := faultsOf(t, law, s); (len(faults) > 0) != want || want && faults[0].Path != "[0].allergens[0]" {
				t.Errorf("%+v under %v: %v", row, law, faults)
			}
		}
	}
}

// What is prohibited is so by its label name, too, listed or no longer; in a natural
// material it is a trace.
func TestAProhibitedSubstanceByItsNameIsRefused(t *testing.T) {
	for name, onIFRA := range map[string]bool{
		"6-Methyl Coumarin": true, "Butylphenyl Methylpropional": false,
		"Hydroxyisohexyl 3-Cyclohexene Carboxaldehyde": false,
	} {
		s := certified("lily", "5")
		s.Allergens = []string{name}
		if faults := faultsOf(t, fragrance.IFRAAndEU, s); len(faults) != 1 || !strings.Contains(faults[0].Reason,
			"prohibited") || faults[0].Path != "[0].allergens[0]" {
			t.Errorf("%s: %v", name, faults)
		}
		if faults := faultsOf(t, fragrance.IFRAAlone, s); len(faults) != 1 || strings.Contains(faults[0].Reason,
			"prohibited") != onIFRA {
			t.Errorf("%s under IFRA: %v", name, faults)
		}
	}
	s := certified("herb", "5")
	s.Natural, s.Allergens = true, []string{"6-Methyl Coumarin"}
	if u := find(t, shelf(t, s), "herb").Unjudged(fragrance.IFRAAlone); len(u) != 1 || u[0].Why != fragrance.NaturalTrace {
		t.Errorf("%+v", u)
	}
}

// A hundred blends of fifty each, each of the ones before: 50^99 ways, and no more work
// than there are lines.
func TestDeepBlendsCostNoMoreThanTheirLines(t *testing.T) {
	var supplied []fragrance.Supplied
	for i := range 100 {
		s := fragrance.Supplied{ID: fmt.Sprint("m", i)}
		if i < 50 {
			s.Certificates = certified("", "2").Certificates
		} else {
			for j := i - 50; j < i; j++ {
				s.Blend = append(s.Blend, fragrance.Share{Fragrance: fmt.Sprint("m", j), Share: pct("2")})
			}
		}
		supplied = append(supplied, s)
	}
	slices.Reverse(supplied) // the deepest first
	m := find(t, shelf(t, supplied...), "m99")
	if n := len(m.Certificates()); n != 50 {
		t.Errorf("%d parts", n)
	}
	// All are certified for 2 %, and so is any mixture.
	v := fragrance.Judge(0, units.Grams(1000), []fragrance.Dose{{Material: m, Mass: units.Grams(20)}})
	if most, _ := v.Most(); most.Used.PercentText(6) != "100" || v.Passed() != 0 {
		t.Errorf("%s", most.Used.PercentText(6))
	}
}
