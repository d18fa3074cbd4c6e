package fragrance_test

import (
	"testing"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/units"
)

func allergensOf(v fragrance.Verdict) (map[string]string, bool) {
	list, complete := v.Allergens()
	shares := map[string]string{}
	for _, a := range list {
		shares[a.Rule.Name()] = a.OfDry.PercentText(6)
		if a.Bound {
			shares[a.Rule.Name()] += " at most"
		}
	}
	return shares, complete
}

// The label names what is above 0.01 %; what is equal to it is not. Eugenol at 1 % of a
// fragrance of which 1 % is in the bar is just at 0.01 %.
func TestTheLabelNamesWhatIsAboveTheThreshold(t *testing.T) {
	pear := find(t, shelf(t, listed(t, "pear", "97-53-0", "1")), "pear")
	for mass, named := range map[string]bool{"10": false, "10.000000001": true, "9.99": false} {
		got, complete := allergensOf(fragrance.Judge(0, units.Grams(1000),
			[]fragrance.Dose{{Material: pear, Mass: grams(t, mass)}}))
		if _, there := got["Eugenol"]; there != named || complete {
			t.Errorf("%s g: %v, complete %v", mass, got, complete)
		}
	}
}

// Groups are summed: citral as such, geranial and neral, over two materials, each at the
// unlucky end: 10 g × (2 + 1) % + 20 g × 0.5 % = 0.4 g in 1000 g.
func TestGroupsAreSummedOverMaterials(t *testing.T) {
	leaf := listed(t, "leaf", "5392-40-5", "2")
	leaf.Constituents = append(leaf.Constituents, fragrance.Constituent{
		CAS:   number(t, "141-27-5"),
		Share: units.Between(pct("0"), pct("1")),
	})
	s := shelf(t, leaf, listed(t, "peel", "106-26-3", "0.5"))
	got, _ := allergensOf(fragrance.Judge(0, units.Grams(1000), []fragrance.Dose{
		{Material: find(t, s, "leaf"), Mass: units.Grams(10)}, {Material: find(t, s, "peel"), Mass: units.Grams(20)},
	}))
	if len(got) != 1 || got["Citral"] != "0.04" {
		t.Errorf("%v", got)
	}
}

// Built-in oils: the oil itself where the list names it, and of each group the highest
// source. Lavender at 1 %: linalool up to 45 % (Ph. Eur.), linalyl acetate 47, camphor
// 1.5 (ISO), terpineol 2, limonene and geraniol below the threshold (1 % and 0.48 %).
func TestAllergensOfLavender(t *testing.T) {
	got, complete := allergensOf(fragrance.Judge(0, units.Grams(1000),
		[]fragrance.Dose{{Material: builtIn(t, "lavender"), Mass: units.Grams(10)}}))
	want := map[string]string{
		"Lavandula Oil/Extract": "1", "Linalool": "0.45", "Linalyl Acetate": "0.47",
		"Camphor": "0.015", "Terpineol": "0.02",
	}
	if len(got) != len(want) || complete {
		t.Errorf("%v, complete %v", got, complete)
	}
	for name, share := range want {
		if got[name] != share {
			t.Errorf("%s: %s, want %s", name, got[name], share)
		}
	}
}

// The citronellol of the old standard for geranium, up to 58 %, counts for the label and for
// the limit of 24 %: 10 g in 1000 g are 0.58 %, and use 0.58/24 = 2.416666... % of it.
func TestTheOldFigureForGeraniumCountsForLabelAndLimit(t *testing.T) {
	v := fragrance.Judge(0, units.Grams(1000), []fragrance.Dose{{
		Material: builtIn(t, "geranium-egyptian"),
		Mass:     units.Grams(10),
	}})
	got, _ := allergensOf(v)
	most, _ := v.Most()
	if got["Citronellol"] != "0.58" || most.Rule.Name() != "Citronellol" || most.Used.PercentText(6) != "2.416667" {
		t.Errorf("%v, %s uses %s %%", got, most.Rule.Name(), most.Used.PercentText(6))
	}
}

// A supplier may name an allergen without its share: then all of the fragrance is the
// bound. Where the list gives the share, that counts. Names may be spelled in any case.
func TestNamedAllergens(t *testing.T) {
	pear := listed(t, "pear", "97-53-0", "5")
	pear.Allergens = []string{"LINALOOL", "Eugenol"}
	none := certified("plain", "5")
	none.AllergensListed = true
	s := shelf(t, pear, none, certified("quiet", "5"), fragrance.Supplied{
		ID:    "half",
		Blend: []fragrance.Share{{"pear", pct("50")}, {"plain", pct("50")}},
	})
	for _, row := range []struct {
		id, linalool, eugenol string
		complete              bool
	}{
		{"pear", "1 at most", "0.05", true},
		{"plain", "", "", true},
		{"quiet", "", "", false},
		{"half", "0.5 at most", "0.025", true},
	} {
		got, complete := allergensOf(fragrance.Judge(0, units.Grams(1000),
			[]fragrance.Dose{{Material: find(t, s, row.id), Mass: units.Grams(10)}}))
		if got["Linalool"] != row.linalool || got["Eugenol"] != row.eugenol || complete != row.complete {
			t.Errorf("%s: %v, complete %v", row.id, got, complete)
		}
	}
	// One that is not listed makes the whole incomplete, wherever it stands.
	for _, ids := range [][2]string{{"pear", "quiet"}, {"quiet", "pear"}} {
		_, complete := allergensOf(fragrance.Judge(0, units.Grams(1000), []fragrance.Dose{
			{Material: find(t, s, ids[0]), Mass: units.Grams(10)}, {Material: find(t, s, ids[1]), Mass: units.Grams(1)},
		}))
		if complete {
			t.Error("complete beside a material that lists nothing")
		}
	}
	if _, complete := fragrance.Judge(0, units.Grams(1000), nil).Allergens(); !complete {
		t.Error("without fragrance there are none, and that is known")
	}
}

// What colours, at the unlucky end; vanillin 2 to 3 %, of a blend its share; isomers of
// one name together; a stated browning, and materials that are coloured themselves.
func TestWhatColoursTheSoap(t *testing.T) {
	pear := fragrance.Supplied{ID: "pear", Behaviour: fragrance.Browns, Constituents: []fragrance.Constituent{
		{CAS: number(t, "121-33-5"), Share: units.Between(pct("2"), pct("3"))}, {
			CAS:   number(t, "97-54-1"),
			Share: units.Exactly(pct("1")),
		}, {CAS: number(t, "5932-68-3"), Share: units.Exactly(pct("1"))},
	}}
	named := certified("named", "5")
	named.Allergens = []string{"Vanillin", "Limonene"}
	s := shelf(t, pear, named, fragrance.Supplied{ID: "mix", Blend: []fragrance.Share{
		{"pear", pct("50")},
		{"clove-bud", pct("25")},
		{"patchouli", pct("25")},
	}},
		fragrance.Supplied{ID: "cloves", Blend: []fragrance.Share{{"clove-bud", pct("50")}, {"clove-stem", pct("50")}}})
	for id, want := range map[string][]string{
		"pear": {"vanillin 3", "isoeugenol 2", " is said"},
		// clove bud: up to 90 % of eugenol (Merck)
		"mix":    {"vanillin 1.5", "isoeugenol 1", "eugenol 22.5", " coloured", " is said"},
		"cloves": {"eugenol 89"}, // 90 and 88 %, half of each
		// vanillin, of which no share is given
		"named":     {" is said"},
		"patchouli": {" coloured"},
		"lavender":  nil,
	} {
		colours := find(t, s, id).Colours()
		var got []string
		for _, c := range colours {
			switch {
			case c.Share.Given():
				got = append(got, c.Substance+" "+c.Share.PercentText(6))
			case c.Does == "is coloured from the start":
				got = append(got, " coloured")
			default:
				got = append(got, " is said")
			}
		}
		if len(got) != len(want) {
			t.Errorf("%s: %v, want %v", id, got, want)
			continue
		}
		for i := range got {
			if got[i] != want[i] {
				t.Errorf("%s: %v, want %v", id, got, want)
			}
		}
	}
}
