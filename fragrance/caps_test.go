package fragrance_test

import (
	"strings"
	"testing"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/units"
)

func pct(text string) units.Ratio { return units.MustRatio(text + " %") }

func grams(t testing.TB, text string) units.Mass {
	t.Helper()
	m, err := units.ParseMass(text + " g")
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func builtIn(t testing.TB, id string) fragrance.Material {
	t.Helper()
	m, err := fragrance.LookUp(id)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func number(t testing.TB, text string) fragrance.CAS {
	t.Helper()
	cas, err := fragrance.ParseCAS(text)
	if err != nil {
		t.Fatal(err)
	}
	return cas
}

// shelf puts materials on a shelf under IFRA and European law.
func shelf(t testing.TB, supplied ...fragrance.Supplied) fragrance.Shelf {
	t.Helper()
	s, err := fragrance.NewShelf(supplied, fragrance.IFRAAndEU)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func find(t testing.TB, s fragrance.Shelf, id string) fragrance.Material {
	t.Helper()
	m, found := s.Find(id)
	if !found {
		t.Fatalf("%s is not on the shelf", id)
	}
	return m
}

func certified(id, limit string) fragrance.Supplied {
	return fragrance.Supplied{ID: id, Certificates: []fragrance.Certificate{{
		Category: "9", Limit: pct(limit),
		Amendment: 51,
	}}}
}

// listed is a fragrance with a list: pairs of a registry number and a share in percent.
func listed(t testing.TB, id string, pairs ...string) fragrance.Supplied {
	t.Helper()
	s := fragrance.Supplied{ID: id}
	for i := 0; i < len(pairs); i += 2 {
		s.Constituents = append(s.Constituents, fragrance.Constituent{
			CAS:   number(t, pairs[i]),
			Share: units.Exactly(pct(pairs[i+1])),
		})
	}
	return s
}

// The worked example of cassia oil in an account of how the limits apply to soap:
// cinnamal 79.5 %, 2-methoxycinnamaldehyde 9.0 %, coumarin 2.0 %, benzaldehyde 1.0 %
// (Annex); caps 0.49/0.795 = 0.616 %, 0.84/0.09 = 9.33 %, 0.52/0.02 = 26 % and
// 0.49/0.01 = 49 %. At 0.3 % in the bar, cinnamal is at 48.7 % of its limit.
func TestTheWorkedExampleOfCassiaOil(t *testing.T) {
	cassia := builtIn(t, "cassia")
	want := []struct{ cas, limit, brings, most string }{
		{"104-55-2", "0.49", "79.5", "0.616352"},
		{"1504-74-1", "0.84", "9", "9.333333"},
		{"91-64-5", "0.52", "2", "26"},
		{"100-52-7", "0.49", "1", "49"},
	}
	caps := cassia.Caps(fragrance.IFRAAlone)
	if len(caps) != len(want) {
		t.Fatalf("%d caps", len(caps))
	}
	for i, w := range want {
		c := caps[i]
		if c.Rule.Substances()[0].String() != w.cas || c.Limit.PercentText(6) != w.limit ||
			c.Brings.PercentText(6) != w.brings || c.Most.PercentText(6) != w.most {
			t.Errorf("%s: %s over %s is %s, want %+v", c.Rule.Name(), c.Limit.PercentText(6), c.Brings.PercentText(6),
				c.Most.PercentText(6), w)
		}
	}
	v := fragrance.Judge(fragrance.IFRAAlone, units.Grams(1000),
		[]fragrance.Dose{{Material: cassia, Mass: units.Grams(3)}})
	most, _ := v.Most()
	// 0.3 % × 79.5 % = 0.2385 %; 0.2385/0.49 = 48.673 %
	if most.Rule.Name() != "Cinnamic aldehyde" || most.Used.PercentFixed(3) != "48.673" || v.Passed() != 0 {
		t.Errorf("%s is used to %s", most.Rule.Name(), most.Used.PercentFixed(3))
	}
}

// By hand: limit in %, over the highest share of any source in %.
func TestCapsOfSingleOilsByHand(t *testing.T) {
	for id, want := range map[string]struct{ both, ifra string }{
		// methyl eugenol 0.1 % (Annex): EU 0.001/0.001 = 1; IFRA 0.0017/0.001 = 1.7
		"clove-bud": {"1", "1.7"},
		// methyl eugenol 2.0 % (Annex): EU 0.001/0.02 = 0.05; IFRA 0.0017/0.02 = 0.085
		"rose-otto": {"0.05", "0.085"},
		// carvone 66.07 % (Annex): 0.18/0.6607 = 0.27243..., rounded down
		"spearmint": {"0.272438", "0.272438"},
		// estragole 81.87 % (Annex): 0.0041/0.8187 = 0.0050079...
		"basil-estragole-type": {"0.005007", "0.005007"},
		// citral 75 to 85 % (Merck), the high end: 1.2/0.85 = 1.41176...
		"lemongrass": {"1.411764", "1.411764"},
		// geranial 41.42 % and neral 30.54 % together (Annex): 1.2/0.7196 = 1.66759...
		"lemongrass-east-indian": {"1.667593", "1.667593"},
		// safrole up to 3.0 % (Ph. Eur.) beats 1.2 % (Annex): 0.01/0.03 = 0.3333...
		"cinnamon-leaf": {"0.333333", "0.333333"},
		// carvone up to 1.0 % (Ph. Eur.) beats 0.1 % (Annex): 0.18/0.01 = 18
		"peppermint": {"18", "18"},
		// 7-methoxycoumarin 3.8 % (Annex), its natural ceiling: 0.01/0.038 = 0.26315...
		"lavender-absolute": {"0.263157", "0.263157"},
		// alpha- and beta-thujone 25.0 + 8.0 % (Annex): 0.13/0.33 = 0.393939...
		"sage-dalmatian": {"0.393939", "0.393939"},
		// its own Standard, 1.4 %, before isoeugenol 0.99 % (EU: 0.02/0.0099 = 2.02)
		"ylang-ylang-extra": {"1.4", "1.4"},
		// the EU's 0.2 % for the absolute, the IFRA's 1.3 %
		"verbena-absolute": {"0.2", "1.3"},
		// melissa's own Standard, 1.2 %, before citral: 1.2/(0.296 + 0.1668) = 2.59
		"melissa": {"1.2", "1.2"},
		// cresol 0.7 % binds before jasmine's own 1.2 %: 0.005/0.007 = 0.714285...
		"jasmine-absolute-grandiflorum": {"0.714285", "0.714285"},
		// Peru balsam: EU 0.4, IFRA 0.8
		"peru-balsam-extract": {"0.4", "0.8"},
		// oakmoss and treemoss alike: 0.1
		"treemoss-extract": {"0.1", "0.1"},
		// methyl N-methylanthranilate 0.4 %: EU 0.2/0.004 = 50, IFRA 0.5/0.004 = 125: none
		"mandarin": {"50", ""},
		// 7-methoxycoumarin 0.01 %: 0.01/0.0001 = 100, which still is one
		"lavandin": {"100", "100"},
		// citral 0.15 + neral ... of the Annex and 0.1 + 0.2 of Ph. Eur.: 1.2/0.003 = 400
		"sweet-orange": {"", ""},
		// the furocoumarins of bergamot do not bind what is rinsed off
		"bergamot-expressed": {"", ""}, "lavender": {"", ""}, "patchouli": {"", ""},
		// citronellol as ISO 4731 counts it, 55 and 58 %: 24/0.55 = 43.6363..., 24/0.58 = 41.3793...
		"geranium-bourbon": {"43.636363", "43.636363"}, "geranium-moroccan": {"41.37931", "41.37931"},
		"geranium-egyptian": {"41.37931", "41.37931"}, "geranium-chinese": {"41.37931", "41.37931"},
	} {
		for law, cap := range map[fragrance.Law]string{fragrance.IFRAAndEU: want.both, fragrance.IFRAAlone: want.ifra} {
			got := ""
			if caps := builtIn(t, id).Caps(law); len(caps) > 0 {
				got = caps[0].Most.PercentText(6)
			}
			if got != cap {
				t.Errorf("%s under %v: %s, want %s", id, law, got, cap)
			}
		}
	}
}

// What a cap names as its source is the one with the highest figure.
func TestACapNamesTheSourceWithTheHighestFigure(t *testing.T) {
	for id, title := range map[string]string{
		"cinnamon-leaf": "European Pharmacopoeia, Cinnamon leaf oil, Ceylon (1608)",
		"peppermint":    "European Pharmacopoeia, Peppermint oil",
		"clove-bud":     "IFRA Standards, Annex on contributions from other sources",
	} {
		if got := builtIn(t, id).Caps(fragrance.IFRAAlone)[0].Source.Title; got != title {
			t.Errorf("%s: %s, want %s", id, got, title)
		}
	}
}

// Conversions of an account of usage rates, its own example: oils 800 g, NaOH 112 g,
// clay 8 g, fragrance 24 g: the dry bound is 944 g, of which the fragrance is 2.542 %,
// and 3.000 % of the oils. A certificate of 2.40 % is passed; the most is
// 0.024 × 920/(1 − 0.024) = 22.62 g, 2.828 % of oils.
func TestTheWorkedExampleOfUsageRates(t *testing.T) {
	pear := find(t, shelf(t, certified("lantern-pear", "2.4")), "lantern-pear")
	v := fragrance.Judge(fragrance.IFRAAndEU, units.Grams(944), []fragrance.Dose{{Material: pear, Mass: units.Grams(24)}})
	r := v.Of(0)
	if got := r.OfDry.PercentFixed(3); got != "2.542" || v.Passed() != 1 {
		t.Errorf("%s %% of the dry bar, %d limits passed", got, v.Passed())
	}
	ofOils, _ := r.Most.Per(units.Grams(800))
	if got := r.Most.Fixed(units.Gram, 2); got != "22.62" || ofOils.PercentFixed(3) != "2.828" || !r.Limited {
		t.Errorf("at most %s g, %s %% of oils", got, ofOils.PercentFixed(3))
	}
	// And back: 3 g on 100 g of oils with 14 g of alkali are 3/117 = 2.564 %.
	v = fragrance.Judge(fragrance.IFRAAndEU, units.Grams(117), []fragrance.Dose{{Material: pear, Mass: units.Grams(3)}})
	if got := v.Fragrance().PercentFixed(3); got != "2.564" {
		t.Errorf("%s %%", got)
	}
}

// A fragrance oil at 83 % of its certificate beside clove at 53 % of methyl eugenol's
// limit: for methyl eugenol the certificate stands, and 83 + 53 = 136 %.
func TestACertificateAndAListAddUp(t *testing.T) {
	pear := find(t, shelf(t, certified("lantern-pear", "2")), "lantern-pear")
	clove := builtIn(t, "clove-bud") // 0.1 % methyl eugenol: 1.7 % of clove is all of 0.0017 %
	// In 1000 g: 83 % of 2 % is 16.6 g; 53 % of 1.7 % is 9.01 g.
	doses := []fragrance.Dose{{Material: pear, Mass: grams(t, "16.6")}, {Material: clove, Mass: grams(t, "9.01")}}
	v := fragrance.Judge(fragrance.IFRAAlone, units.Grams(1000), doses)
	most, _ := v.Most()
	if most.Used.PercentText(6) != "136" || most.Rule.Name() != "Methyl eugenol" || v.Passed() == 0 {
		t.Errorf("%s %% of %s", most.Used.PercentText(6), most.Rule.Name())
	}
	for i := range doses {
		if alone := fragrance.Judge(fragrance.IFRAAlone, units.Grams(1000), doses[i:i+1]); alone.Passed() != 0 {
			t.Errorf("%s alone passes a limit", doses[i].Material.ID())
		}
	}
	// What the list names is the list's own: a pear that lists its methyl eugenol brings
	// that, and its certificate alone.
	s := certified("listed-pear", "2")
	s.Constituents = listed(t, "", "93-15-2", "0.001").Constituents
	doses[0].Material = find(t, shelf(t, s), "listed-pear")
	v = fragrance.Judge(fragrance.IFRAAlone, units.Grams(1000), doses)
	most, _ = v.Most()
	// clove's eugenol: 9.01 × 0.9 / 49 = 16.55 %, and 83 % for the certificate: 99.55 %;
	// methyl eugenol: 53 % + 16.6 × 0.00001/0.017 = 53.98 %
	if most.Used.PercentFixed(2) != "99.55" || most.Rule.Name() != "Eugenol" || v.Passed() != 0 {
		t.Errorf("%s %% of %s", most.Used.PercentText(6), most.Rule.Name())
	}
}

func TestTwoCertificatesAddUp(t *testing.T) {
	s := shelf(t, certified("pear", "2"), certified("fig", "5"))
	dose := func(id, mass string) fragrance.Dose {
		return fragrance.Dose{Material: find(t, s, id), Mass: grams(t, mass)}
	}
	// 12/20 + 20/50 = 100 %, and a nanogram more
	for mass, passed := range map[string]int{"20": 0, "20.000000001": 1} {
		v := fragrance.Judge(fragrance.IFRAAndEU, units.Grams(1000), []fragrance.Dose{dose("pear", "12"), dose("fig", mass)})
		most, _ := v.Most()
		if v.Passed() != passed || most.Rule.Given() || most.Used.PercentText(6) != "100" {
			t.Errorf("%s g: %d passed, %s", mass, v.Passed(), most.Used.PercentText(9))
		}
	}
}

// Of several certificates the strictest counts.
func TestTheStrictestCertificateCounts(t *testing.T) {
	two := certified("pear", "5")
	two.Certificates = append(two.Certificates, fragrance.Certificate{Category: "9", Limit: pct("3"), Amendment: 49})
	c := find(t, shelf(t, two), "pear").Certificates()
	if len(c) != 1 || !c[0].Limit.Equal(pct("3")) || c[0].Amendment != 51 || c[0].Of.ID() != "pear" {
		t.Errorf("%+v", c)
	}
}

// Limits that Standards share: oakmoss with treemoss within 0.1 %; methyl octine
// carbonate within methyl heptine carbonate's 0.092 % as well as its own 0.02 %.
func TestSharedLimits(t *testing.T) {
	use := func(doses ...fragrance.Dose) (fragrance.Use, int) {
		v := fragrance.Judge(fragrance.IFRAAlone, units.Grams(1000), doses)
		most, _ := v.Most()
		return most, v.Passed()
	}
	oak, tree := builtIn(t, "oakmoss-extract"), builtIn(t, "treemoss-extract")
	if most, passed := use(fragrance.Dose{Material: oak, Mass: grams(t, "0.6")}, fragrance.Dose{
		Material: tree,
		Mass:     grams(t, "0.6"),
	}); most.Used.PercentText(6) != "120" || passed != 2 {
		t.Errorf("0.06 %% of each moss: %s %%, %d passed", most.Used.PercentText(6), passed)
	}
	own := func(heptine, octine string) fragrance.Dose {
		s := fragrance.Supplied{ID: "green", Constituents: listed(t, "", "111-12-6", heptine, "111-80-8",
			octine).Constituents}
		return fragrance.Dose{Material: find(t, shelf(t, s), "green"), Mass: units.Grams(10)} // 1 % of 1000 g
	}
	// 1 % of a material with 5 % and 1.5 %: 0.05 + 0.015 of 0.092 is 70.65 %; 0.015 of 0.02 is 75 %
	if most, passed := use(own("5", "1.5")); most.Rule.Name() != "Methyl octine carbonate" ||
		most.Used.PercentText(6) != "75" || passed != 0 {
		t.Errorf("%s: %s, %d passed", most.Rule.Name(), most.Used.PercentText(6), passed)
	}
	// with 9 % and 1 %: 0.10 of 0.092 is 108.7 %, though each alone keeps its limit
	if most, passed := use(own("9", "1")); most.Rule.Name() != "Methyl heptine carbonate" ||
		most.Used.PercentFixed(2) != "108.70" || passed != 1 {
		t.Errorf("%s: %s, %d passed", most.Rule.Name(), most.Used.PercentText(6), passed)
	}
}

// A list that names only what shares a limit does not clear the rest of it: the
// certificate stands for that.
func TestASharedLimitThatIsNotNamedKeepsTheCertificate(t *testing.T) {
	s := certified("green", "2")
	s.Constituents = listed(t, "", "111-80-8", "0.1").Constituents
	v := fragrance.Judge(fragrance.IFRAAlone, units.Grams(1000), []fragrance.Dose{
		// 90 % of the certificate
		{Material: find(t, shelf(t, s), "green"), Mass: units.Grams(18)},
		// 0.01 % of 0.092 %: 10.87 %
		{Material: find(t, shelf(t, listed(t, "leaf", "111-12-6", "1")), "leaf"), Mass: units.Grams(10)},
	})
	most, _ := v.Most()
	if most.Rule.Name() != "Methyl heptine carbonate" || most.Used.PercentFixed(2) != "100.87" || v.Passed() != 1 {
		t.Errorf("%s: %s", most.Rule.Name(), most.Used.PercentText(6))
	}
	// One that names both brings what it lists: 18 × 0.2 % of 0.092 % is 3.91 %, and
	// 10.87 %; its certificate is used to 90 %.
	s.Constituents = listed(t, "", "111-80-8", "0.1", "111-12-6", "0.1").Constituents
	v = fragrance.Judge(fragrance.IFRAAlone, units.Grams(1000), []fragrance.Dose{
		{Material: find(t, shelf(t, s), "green"), Mass: units.Grams(18)},
		{Material: find(t, shelf(t, listed(t, "leaf", "111-12-6", "1")), "leaf"), Mass: units.Grams(10)},
	})
	if most, _ := v.Most(); most.Rule.Given() || most.Used.PercentText(6) != "90" || v.Passed() != 0 {
		t.Errorf("%s: %s", most.Rule.Name(), most.Used.PercentText(6))
	}
}

// Of two limits that leave a material the same room, the one that the part uses more of
// is what binds. Both mosses count within either limit; of the tree, certified for 2 % and
// listing a little oakmoss alone, the certificate stands for treemoss: 10/20 = 50 %, and
// 10 g × 0.5 % of 1 g for the dusk is 5 % more.
func TestOfTwoEqualCapsTheFullerBinds(t *testing.T) {
	tree := certified("tree", "2")
	tree.Constituents = listed(t, "", "90028-68-5", "0.1").Constituents
	s := shelf(t, listed(t, "dusk", "90028-68-5", "0.5"), tree)
	v := fragrance.Judge(fragrance.IFRAAlone, units.Grams(1000), []fragrance.Dose{
		{Material: find(t, s, "dusk"), Mass: units.Grams(10)}, {Material: find(t, s, "tree"), Mass: units.Grams(10)},
	})
	if c := v.Of(0).Caps[0]; c.Rule.Name() != "Treemoss extracts" || c.Used.PercentText(6) != "55" {
		t.Errorf("%s, used to %s", c.Rule.Name(), c.Used.PercentText(6))
	}
}

// A Schiff base on a list does not name its aldehyde: the certificate stands for that. 24 g
// of 2 % in 1000 g are 120 %, with 0.01 % of the Schiff base or without.
func TestASchiffBaseDoesNotNameItsAldehyde(t *testing.T) {
	s := certified("hall", "2")
	s.Constituents = listed(t, "", "89-43-0", "0.01").Constituents
	v := fragrance.Judge(fragrance.IFRAAlone, units.Grams(1000), []fragrance.Dose{
		// 75 % of the certificate
		{Material: find(t, shelf(t, s), "hall"), Mass: units.Grams(15)},
		// 20.5 g of 41 g: 50 %
		{Material: find(t, shelf(t, listed(t, "lily", "107-75-5", "41")), "lily"), Mass: units.Grams(50)},
	})
	if most, _ := v.Most(); most.Rule.Name() != "Hydroxycitronellal" || most.Used.PercentText(6) != "125" {
		t.Errorf("%s: %s", most.Rule.Name(), most.Used)
	}
}

// Unlucky ends that add up to more than all of a material are all of it.
func TestUnluckyEndsAreAtMostTheWhole(t *testing.T) {
	s := fragrance.Supplied{ID: "leaf"}
	for _, cas := range []string{"141-27-5", "106-26-3"} {
		s.Constituents = append(s.Constituents, fragrance.Constituent{CAS: number(t, cas), Share: units.Between(pct("10"),
			pct("80"))})
	}
	if c := find(t, shelf(t, s), "leaf").Caps(fragrance.IFRAAlone)[0]; !c.Brings.Equal(units.Whole(1)) ||
		c.Most.PercentText(6) != "1.2" {
		t.Errorf("%s: %s %% brings %s %%, at most %s %%, want 1.2, 100 and 1.2", c.Rule.Name(), c.Limit.PercentText(6),
			c.Brings.PercentText(6), c.Most.PercentText(6))
	}
}

// A Schiff base counts as its aldehyde under both laws: under the Standards as their Annex
// says, under European law as the stricter reading. Of 89-43-0 56.4 % are hydroxycitronellal,
// whose limits are 4.1 % (Standard 043) and 1 % (entry 72).
//
//	50 % of it:                    4.1/(0.5 × 0.564) = 14.539007..., 1/0.282 = 3.546099...
//	4 % of it and 1 % of 107-75-5: 4 × 0.564 + 1 = 3.256 %, 1/0.03256 = 30.712530..., and not 100
//
// The source of what it brings says by whose list it counts, and under European law that this
// is a reading. Of a list without a Schiff base it says nothing of the kind.
func TestSchiffBasesCountAsTheirAldehydesUnderBothLaws(t *testing.T) {
	for _, row := range []struct {
		constituents []string
		law          fragrance.Law
		most         string
		base         bool
	}{
		{[]string{"89-43-0", "50"}, fragrance.IFRAAlone, "14.539007", true},
		{[]string{"89-43-0", "50"}, fragrance.IFRAAndEU, "3.546099", true},
		{[]string{"89-43-0", "4", "107-75-5", "1"}, fragrance.IFRAAndEU, "30.71253", true},
		{[]string{"107-75-5", "1", "89-43-0", "4"}, fragrance.IFRAAndEU, "30.71253", true},
		{[]string{"107-75-5", "1"}, fragrance.IFRAAndEU, "100", false},
	} {
		caps := find(t, shelf(t, listed(t, "hall", row.constituents...)), "hall").Caps(row.law)
		if len(caps) == 0 {
			t.Errorf("%v under %v: nothing binds, want %s", row.constituents, row.law, row.most)
			continue
		}
		c := caps[0]
		if c.Most.PercentText(6) != row.most || c.Rule.Name() != "Hydroxycitronellal" ||
			c.Rule.Body() == fragrance.EU != (row.law != fragrance.IFRAAlone) {
			t.Errorf("%v under %v: %s by %s (%v), want %s", row.constituents, row.law, c.Most.PercentText(6), c.Rule.Name(),
				c.Rule.Body(), row.most)
		}
		source := c.Source.String()
		for text, want := range map[string]bool{
			"hall, supplier's list": true, "(given)": true, "our reading": row.base && row.law != fragrance.IFRAAlone,
			"IFRA Standards, Annex on contributions from other sources, 51st Amendment, 30 June 2023, second sheet": row.base,
		} {
			if strings.Contains(source, text) != want {
				t.Errorf("%v under %v: %q in the source %q: %v", row.constituents, row.law, text, source, !want)
			}
		}
	}
}

// 3 % of that fragrance in the bar brings 3 % × 3.256 % = 0.09768 %, and
// 9.768 % of the European limit; what the two bring to the label is hydroxycitronellal as such
// alone, 0.03 %, since a label names what is in the soap.
func TestASchiffBaseInAPartUsesTheEuropeanLimit(t *testing.T) {
	m := find(t, shelf(t, listed(t, "hall", "89-43-0", "4", "107-75-5", "1")), "hall")
	v := fragrance.Judge(fragrance.IFRAAndEU, units.Grams(1000), []fragrance.Dose{{Material: m, Mass: units.Grams(30)}})
	if most, _ := v.Most(); most.Rule.Body() != fragrance.EU || most.Used.PercentText(6) != "9.768" {
		t.Errorf("%s uses %s %%", most.Rule.Name(), most.Used.PercentText(6))
	}
	if got, _ := allergensOf(v); len(got) != 1 || got["Hydroxycitronellal"] != "0.03" {
		t.Errorf("on the label: %v", got)
	}
	// 67801-47-2 counts as 53.3 % of citral, whose European entry asks for the label alone.
	leaf := find(t, shelf(t, listed(t, "leaf", "67801-47-2", "50")), "leaf")
	if got, _ := allergensOf(fragrance.Judge(0, units.Grams(100),
		[]fragrance.Dose{{Material: leaf, Mass: units.Grams(5)}})); len(got) != 0 {
		t.Errorf("on the label: %v", got)
	}
}

// Isomers count together, by the Standard: citral as such, geranial and neral; the
// unlucky end of a range; a Schiff base as 53.3 % of citral.
func TestIsomersAndSchiffBasesCountByTheStandard(t *testing.T) {
	s := listed(t, "leaf", "5392-40-5", "10", "141-27-5", "20", "67801-47-2", "10")
	s.Constituents = append(s.Constituents, fragrance.Constituent{
		CAS:   number(t, "106-26-3"),
		Share: units.Between(pct("1"), pct("4.67")),
	})
	c := find(t, shelf(t, s), "leaf").Caps(fragrance.IFRAAlone)[0]
	// 10 + 20 + 4.67 + 5.33 = 40 %: 1.2/0.4 = 3 %
	if c.Rule.Name() != "Citral" || c.Brings.PercentText(6) != "40" || c.Most.PercentText(6) != "3" {
		t.Errorf("%s: %s of it, %s", c.Rule.Name(), c.Brings.PercentText(6), c.Most.PercentText(6))
	}
}

// Groups are each law's own: of the rose ketones, the European entry has eight numbers
// and the Standard sixteen. 57378-68-4 is in both, 35087-49-1 in the Standard alone.
func TestGroupsAreEachLawsOwn(t *testing.T) {
	for cas, want := range map[string]string{"57378-68-4": "0.2", "35087-49-1": "0.84"} { // 0.02/0.1 and 0.084/0.1
		m := find(t, shelf(t, listed(t, "rose-like", cas, "10")), "rose-like")
		if c := m.Caps(fragrance.IFRAAndEU); len(c) != 1 || c[0].Most.PercentText(6) != want {
			t.Errorf("%s: %+v", cas, c)
		}
		if c := m.Caps(fragrance.IFRAAlone); len(c) != 1 || c[0].Most.PercentText(6) != "0.84" {
			t.Errorf("%s under IFRA: %+v", cas, c)
		}
	}
}

// cis-Isoeugenol by its own number, which the Standard's list as read lacks, counts all
// the same: by the Standard, not by the number.
func TestAnIsomerCountsThoughItsNumberIsNotListed(t *testing.T) {
	m := find(t, shelf(t, listed(t, "clove-like", "5912-86-7", "10")), "clove-like")
	if c := m.Caps(fragrance.IFRAAlone); len(c) != 1 || c[0].Most.PercentText(6) != "2.1" { // 0.21/0.1
		t.Errorf("IFRA: %+v", c)
	}
	if c := m.Caps(fragrance.IFRAAndEU); len(c) != 1 || c[0].Most.PercentText(6) != "0.2" { // 0.02/0.1
		t.Errorf("EU: %+v", c)
	}
	got, _ := allergensOf(fragrance.Judge(0, units.Grams(100),
		[]fragrance.Dose{{Material: find(t, shelf(t, listed(t, "wood", "106-28-5", "8")), "wood"), Mass: units.Grams(1)}}))
	if got["Farnesol"] != "0.08" {
		t.Errorf("trans,trans-farnesol: %v", got)
	}
}

// A certificate that binds is named as such, not as the limit that it stands in for.
func TestACertificateThatBindsIsNamed(t *testing.T) {
	s := certified("moss-like", "2")
	s.Constituents = listed(t, "", "90028-68-5", "0.5").Constituents
	m := find(t, shelf(t, s), "moss-like")
	if c := m.Caps(fragrance.IFRAAlone); c[0].Rule.Given() || !c[0].Limit.Equal(pct("2")) ||
		c[0].Most.PercentText(6) != "2" {
		t.Errorf("%+v", c)
	}
	mix := find(t, shelf(t, certified("pear", "2"), certified("fig", "4"), fragrance.Supplied{
		ID:    "mix",
		Blend: []fragrance.Share{{"pear", pct("50")}, {"fig", pct("50")}},
	}), "mix")
	// 0.5/2 + 0.5/4 = 0.375 per %: 2.6666 %
	if c := mix.Caps(fragrance.IFRAAlone); c[0].Limit.PercentText(6) != "2.666666" ||
		c[0].Most.PercentText(6) != "2.666666" {
		t.Errorf("%+v", c)
	}
}

// A cap above the whole is none; one of exactly the whole is.
func TestNoCapIsAboveTheWhole(t *testing.T) {
	for share, most := range map[string]string{"0.49": "100", "0.48": "", "0.5": "98"} { // benzaldehyde's limit is 0.49 %
		caps := find(t, shelf(t, listed(t, "almond-like", "100-52-7", share)), "almond-like").Caps(fragrance.IFRAAlone)
		got := ""
		if len(caps) > 0 {
			got = caps[0].Most.PercentText(6)
		}
		if got != most {
			t.Errorf("%s %%: %q, want %q", share, got, most)
		}
	}
}

// What comes and goes with a fragrance counts in its base.
func TestACarrierComesAndGoesWithItsFragrance(t *testing.T) {
	pear := find(t, shelf(t, certified("pear", "10")), "pear")
	// 100 g dry, of it 5 g of pear in 10 g of oil: 85 g without them.
	// x ≤ 0.1 × (85 + 3x): x = 8.5/0.7 = 12.142857142857..., rounded down
	r := fragrance.Judge(fragrance.IFRAAlone, units.Grams(100), []fragrance.Dose{{
		Material: pear, Mass: units.Grams(5),
		Beside: units.Whole(2),
	}}).Of(0)
	if got := r.Most.Text(units.Gram, 9); got != "12.142857142" {
		t.Errorf("%s g", got)
	}
	// In 20 times its mass of oil it never reaches a tenth of the bar.
	if r := fragrance.Judge(fragrance.IFRAAlone, units.Grams(1000), []fragrance.Dose{{
		Material: pear, Mass: units.Grams(5),
		Beside: units.Whole(20),
	}}).Of(0); r.Limited {
		t.Errorf("limited to %v", r.Most)
	}
}

// Others that use a limit up leave nothing.
func TestOthersMayLeaveNothing(t *testing.T) {
	rose, clove := builtIn(t, "rose-otto"), builtIn(t, "clove-bud")
	v := fragrance.Judge(fragrance.IFRAAlone, units.Grams(1000), []fragrance.Dose{
		{Material: rose, Mass: units.Grams(2)},
		{Material: clove, Mass: units.Grams(1)},
	})
	if r := v.Of(1); !r.Limited || r.Most.Sign() != 0 {
		t.Errorf("%v of clove beside 0.2 %% of rose", r.Most)
	}
}

// Where the others pass a limit whatever there is of a material, there is room for none.
func TestThereIsNoRoomBesideOthersThatPassALimit(t *testing.T) {
	rose, cassia := builtIn(t, "rose-otto"), builtIn(t, "cassia")        // cassia brings no methyl eugenol
	for mass, room := range map[string]bool{"8.4": true, "8.6": false} { // 0.0017 % of methyl eugenol is 0.085 % of rose
		v := fragrance.Judge(fragrance.IFRAAlone, units.Grams(10_000),
			[]fragrance.Dose{{Material: rose, Mass: grams(t, mass)}, {Material: cassia, Mass: units.Grams(1)}})
		if r := v.Of(1); !r.Limited || (r.Most.Sign() > 0) != room {
			t.Errorf("beside %s g of rose: %v", mass, r.Most)
		}
	}
}

// All limits that are passed, the worst first; of the two laws on one substance the
// stricter. In 1000 g: 20 g of spearmint bring 13.214 g of carvone to 1.8 g (734 %);
// 10 g of cassia 7.95 g of cinnamal to 4.9 g (162 %); 12 g of clove bud 0.012 g of methyl
// eugenol to 0.01 g (120 %).
func TestEveryLimitThatIsPassedIsListed(t *testing.T) {
	v := fragrance.Judge(fragrance.IFRAAndEU, units.Grams(1000), []fragrance.Dose{
		{Material: builtIn(t, "clove-bud"), Mass: units.Grams(12)},
		{Material: builtIn(t, "cassia"), Mass: units.Grams(10)},
		{Material: builtIn(t, "spearmint"), Mass: units.Grams(20)},
	})
	want := []struct {
		name, used string
		by         int
	}{{"Carvone", "734.1111", 2}, {"Cinnamic aldehyde", "162.2449", 1}, {"Methyl Eugenol", "120", 0}}
	over := v.Over()
	if len(over) != len(want) || v.Passed() != 3 {
		t.Fatalf("%+v", over)
	}
	for i, w := range want {
		if u := over[i]; u.Rule.Name() != w.name || u.Used.PercentText(4) != w.used || u.By != w.by {
			t.Errorf("%s %s by %d, want %+v", u.Rule.Name(), u.Used.PercentText(4), u.By, w)
		}
	}
}

// To a nanogram: benzaldehyde 0.98 % of a material leaves room for half the bar, so that
// 1000 g without it become 2000 g, in which 1.7 g of rose are all of methyl eugenol's limit
// (2 % of 1.7 g is 0.034 g, 0.0017 %).
func TestTheLimitOfTheOthersIsHeldExactly(t *testing.T) {
	s := shelf(t, listed(t, "almond-like", "100-52-7", "0.98"), listed(t, "rose-like", "93-15-2", "2"))
	for mass, want := range map[string]string{"1.7": "1000", "1.700000001": "0"} {
		v := fragrance.Judge(fragrance.IFRAAlone, units.Grams(1000), []fragrance.Dose{{
			Material: find(t, s, "rose-like"),
			Mass:     grams(t, mass),
		}, {Material: find(t, s, "almond-like")}})
		if r := v.Of(1); r.Most.Text(units.Gram, 9) != want || !r.Limited {
			t.Errorf("beside %s g of rose: %s g", mass, r.Most.Text(units.Gram, 9))
		}
	}
}

func TestAVerdictIsItsOwn(t *testing.T) {
	clove, err := fragrance.LookUp("clove-bud")
	if err != nil {
		t.Fatal(err)
	}
	doses := []fragrance.Dose{{Material: clove, Mass: units.Grams(20)}}
	v := fragrance.Judge(fragrance.IFRAAlone, units.Grams(1000), doses)
	share, over := v.Fragrance(), len(v.Over())
	doses[0].Mass = units.Milligrams(1)
	if over == 0 || len(v.Over()) != over || !v.Fragrance().Equal(share) {
		t.Errorf("it moved with the caller's list: %d limits passed, then %d; %v of the bar, then %v", over, len(v.Over()),
			share, v.Fragrance())
	}
}
