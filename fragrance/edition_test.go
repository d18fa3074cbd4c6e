package fragrance_test

import (
	"strings"
	"testing"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/units"
)

// The next amendment is a change of data alone. This one is made up: eugenol at 1 %, a
// new Standard for isoamyl acetate, carvone gone, clove's methyl eugenol prohibited.
const madeUpStandards = `# Made up for a test
# edition	2027-01-01
# title	Lantern Standards
# amendment	52
# issued	52nd of its kind, made up
# category	9
# place	nowhere
# how	read
035	Eugenol	limit	1			annex	52	none	97-53-0
100	Methyl eugenol	prohibited				annex	52	none	93-15-2
301	Isoamyl acetate	limit	0.5			annex	52	none	123-92-2
`

const madeUpEntries = `# Made up for a test
# title	Lantern Act
# issued	made up
# threshold	0.01
# placed	2030-01-01
# available	2032-01-01
071	Eugenol	limit	0.4		new	97-53-0			added	read
`

func TestAnotherEditionIsAnotherTable(t *testing.T) {
	under := func(law fragrance.Law, supplied ...fragrance.Supplied) fragrance.Shelf {
		s, err := fragrance.ShelfUnder(madeUpStandards, madeUpEntries, supplied, law)
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	most := func(m fragrance.Material, law fragrance.Law) string {
		caps := m.Caps(law)
		if len(caps) == 0 {
			return ""
		}
		return caps[0].Rule.Name() + " " + caps[0].Most.PercentText(6) + " by " + caps[0].Rule.Source().Title
	}
	s := under(fragrance.IFRAAndEU, listed(t, "pear", "123-92-2", "10"), listed(t, "herb", "99-49-0", "50"))
	for _, row := range []struct {
		id   string
		law  fragrance.Law
		want string
	}{
		{"pear", fragrance.IFRAAndEU, "Isoamyl acetate 5 by Lantern Standards"},      // 0.5/0.1
		{"herb", fragrance.IFRAAndEU, ""},                                            // carvone has no Standard any more
		{"clove-bud", fragrance.IFRAAlone, "Eugenol 1.111111 by Lantern Standards"},  // 1/0.9
		{"clove-bud", fragrance.IFRAAndEU, "Eugenol 0.444444 by Lantern Act"},        // 0.4/0.9
		{"rose-otto", fragrance.IFRAAlone, "Eugenol 87.719298 by Lantern Standards"}, // 1/0.0114
	} {
		m := find(t, s, row.id)
		if got := most(m, row.law); got != row.want {
			t.Errorf("%s under %v: %q, want %q", row.id, row.law, got, row.want)
		}
	}
	if free := find(t, s, "herb").Free(); len(free) != 1 {
		t.Errorf("carvone is not free: %v", free)
	}
	// A natural trace of what is prohibited without a ceiling is left open, by name.
	if u := find(t, s, "clove-bud").Unjudged(fragrance.IFRAAlone); len(u) != 1 || u[0].Why != fragrance.NaturalTrace || u[0].Rules[0].Name() != "Methyl eugenol" {
		t.Errorf("%+v", u)
	}
	// Added it is an error, which cites the new edition.
	_, err := fragrance.ShelfUnder(madeUpStandards, madeUpEntries, []fragrance.Supplied{listed(t, "fig", "93-15-2", "1")}, 0)
	if err == nil || !strings.Contains(err.Error(), "Lantern Standards, 52nd of its kind, made up, Standard 100") {
		t.Errorf("%v", err)
	}
	// The built-in edition is as it was.
	if got := most(builtIn(t, "clove-bud"), fragrance.IFRAAlone); !strings.HasPrefix(got, "Methyl eugenol 1.7 by IFRA Standards") {
		t.Error(got)
	}
}

func TestTheEditionIsSpelledOut(t *testing.T) {
	ifra := fragrance.Edition(fragrance.IFRAAlone)
	both := fragrance.Edition(fragrance.IFRAAndEU)
	if ifra != "IFRA Standards, 51st Amendment, 30 June 2023" || !strings.HasPrefix(both, ifra+"; Regulation (EC) 1223/2009 with Regulation (EU) 2023/1545") {
		t.Errorf("%q, %q", ifra, both)
	}
}

// A bar knows no order: the verdict is the same for the materials in any order, and for
// a dose in two halves; twice of everything in twice the bar is the same.
func TestTheVerdictKnowsNoOrderAndNoSize(t *testing.T) {
	s := shelf(t, certified("pear", "3.7"), listed(t, "fig", "97-53-0", "12.5", "5392-40-5", "3"))
	dose := func(id, mass string) fragrance.Dose {
		return fragrance.Dose{Material: find(t, s, id), Mass: grams(t, mass)}
	}
	doses := []fragrance.Dose{dose("pear", "7.7"), dose("fig", "4"), dose("clove-leaf", "2.2"), dose("lemongrass", "1.5"), dose("lime-expressed", "3")}
	want := fragrance.Judge(0, units.Grams(777), doses)
	same := func(what string, got fragrance.Verdict) {
		t.Helper()
		x, _ := want.Most()
		y, _ := got.Most()
		a, _ := allergensOf(want)
		b, _ := allergensOf(got)
		if x.Rule != y.Rule || !x.Used.Equal(y.Used) || want.Passed() != got.Passed() || !want.Fragrance().Equal(got.Fragrance()) || len(a) != len(b) || len(want.Ceilings()) != len(got.Ceilings()) {
			t.Errorf("%s: %s of %s, want %s of %s", what, y.Used, y.Rule.Name(), x.Used, x.Rule.Name())
		}
		for name := range a {
			if a[name] != b[name] {
				t.Errorf("%s: %s %s, want %s", what, name, b[name], a[name])
			}
		}
	}
	reversed := []fragrance.Dose{doses[4], doses[3], doses[2], doses[1], doses[0]}
	same("reversed", fragrance.Judge(0, units.Grams(777), reversed))
	halves := append([]fragrance.Dose{dose("clove-leaf", "1.1"), dose("pear", "3.85")}, dose("clove-leaf", "1.1"), dose("pear", "3.85"), doses[1], doses[3], doses[4])
	same("halved", fragrance.Judge(0, units.Grams(777), halves))
	var twice []fragrance.Dose
	for _, d := range doses {
		twice = append(twice, fragrance.Dose{Material: d.Material, Mass: d.Mass.Add(d.Mass)})
	}
	same("doubled", fragrance.Judge(0, units.Grams(1554), twice))
}

// The same constituent over two materials is the same constituent.
func TestAConstituentSplitOverTwoMaterialsCountsOnce(t *testing.T) {
	s := shelf(t, listed(t, "whole", "97-53-0", "20"), listed(t, "left", "97-53-0", "10"), listed(t, "right", "97-53-0", "30"))
	one := fragrance.Judge(0, units.Grams(100), []fragrance.Dose{{Material: find(t, s, "whole"), Mass: units.Grams(20)}})
	two := fragrance.Judge(0, units.Grams(100), []fragrance.Dose{{Material: find(t, s, "left"), Mass: units.Grams(10)}, {Material: find(t, s, "right"), Mass: units.Grams(10)}})
	x, _ := one.Most()
	y, _ := two.Most()
	if !x.Used.Equal(y.Used) || x.Used.PercentFixed(4) != "81.6327" { // 4 % of 4.9 %
		t.Errorf("%s and %s", x.Used, y.Used)
	}
}
