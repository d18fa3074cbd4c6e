package fragrance_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/internal/refdata"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

func ruleOf(t *testing.T, body fragrance.Body, number string) fragrance.Rule {
	t.Helper()
	for _, r := range fragrance.Rules() {
		if r.Body() == body && r.Number() == number {
			return r
		}
	}
	t.Fatalf("no rule %v %s", body, number)
	return fragrance.Rule{}
}

// Typed in by hand from an account of how the limits apply to soap that compares both
// laws, in which each Standard was read on its own: name, IFRA category 9, EU rinse-off.
func TestLimitsAgainstAnAccountOfBothLaws(t *testing.T) {
	for _, row := range []struct{ name, standard, ifra, entry, eu string }{
		{"methyl eugenol", "100", "0.0017", "102", "0.001"},
		{"isoeugenol", "048", "0.21", "073", "0.02"},
		{"hydroxycitronellal", "043", "4.1", "072", "1"},
		{"rose ketones", "077", "0.084", "157", "0.02"},
		{"methyl 2-octynoate", "062", "0.092", "089", "0.01"},
		{"3-propylidenephthalide", "076", "0.79", "175", "0.01"},
		{"Peru balsam", "071", "0.8", "154", "0.4"},
		{"verbena absolute", "083", "1.3", "196", "0.2"},
		{"methyl N-methylanthranilate", "094", "0.5", "323", "0.2"},
		{"tagetes", "097", "0.1", "308", "0.1"},
		{"HMPCC", "044", "0.2", "079", ""},
		{"p-BMHCA", "015", "0.1", "083", ""},
	} {
		ifra, eu := ruleOf(t, fragrance.IFRA, row.standard), ruleOf(t, fragrance.EU, row.entry)
		if got := ifra.Limit().PercentText(12); got != row.ifra || ifra.Standing() != fragrance.Limited {
			t.Errorf("%s: IFRA %s (%v), want %s", row.name, got, ifra.Standing(), row.ifra)
		}
		if got := eu.Limit().PercentText(12); got != row.eu {
			t.Errorf("%s: EU %s, want %s", row.name, got, row.eu)
		}
		if (row.eu == "") != (eu.Standing() == fragrance.Prohibited) {
			t.Errorf("%s: the EU has it %v", row.name, eu.Standing())
		}
	}
}

// The natural ceilings, the example of cassia oil and the figures that other lines of
// the same account give for category 9, typed in by hand.
func TestFurtherLimitsOfTheAccount(t *testing.T) {
	for number, want := range map[string]string{
		"179": "0.01", "110": "0.01", "112": "0.01", "158": "0.01", "154": "0.0013", // ceilings: safrole, asarone, benzyl cyanide, 7-methoxycoumarin, isophorone
		"018": "0.49", "055": "0.84", "023": "0.52", "007": "0.49", // cassia: cinnamal, 2-methoxycinnamaldehyde, coumarin, benzaldehyde
		"067": "0.1", "080": "0.1", "206": "1.4", // oakmoss, treemoss, citronellal
	} {
		r := ruleOf(t, fragrance.IFRA, number)
		if got := r.Limit().PercentText(12); got != want {
			t.Errorf("%s %s: %s, want %s", number, r.Name(), got, want)
		}
		ceiling := slices.Contains([]string{"179", "110", "112", "158", "154"}, number)
		if ceiling != (r.Standing() == fragrance.Ceiling) {
			t.Errorf("%s %s: %v", number, r.Name(), r.Standing())
		}
	}
}

// An older edition is not this one: methyl eugenol stood at 0.00087 % in the 49th
// Amendment (read in a copy of that Standard).
func TestTheEditionIsNotTheOneBefore(t *testing.T) {
	if got := ruleOf(t, fragrance.IFRA, "100").Limit(); got.Equal(units.MustRatio("0.00087 %")) {
		t.Errorf("methyl eugenol is at %s", got)
	}
	if fragrance.Amendment() != 51 || fragrance.Category() != "9" {
		t.Errorf("amendment %d, category %s, want 51 and 9", fragrance.Amendment(), fragrance.Category())
	}
}

// The workbook of the 51st Amendment counts 263 Standards: 156 restrictions, 68
// prohibitions, 10 specifications, 29 combinations. In category 9 the combinations are
// limits or ceilings, or prohibitions unless a specification is met, and twelve
// phototoxicity Standards have no restriction. The sum of all limits shows any edit.
func TestEveryStandardIsThere(t *testing.T) {
	standing := map[fragrance.Standing]int{}
	sum, n := units.Whole(0), 0
	for _, r := range fragrance.Rules() {
		if r.Body() != fragrance.IFRA {
			continue
		}
		n++
		standing[r.Standing()]++
		quantified := r.Standing() == fragrance.Limited || r.Standing() == fragrance.Ceiling
		if r.Limit().Given() != quantified {
			t.Errorf("%s: %v with the limit %s", r.Number(), r.Standing(), r.Limit())
		}
		sum = sum.Add(r.Limit().Or(units.Whole(0)))
		if r.Source().How != cite.Read || r.Name() == "" {
			t.Errorf("%s %s: %v", r.Number(), r.Name(), r.Source())
		}
	}
	want := map[fragrance.Standing]int{
		fragrance.Limited: 160, fragrance.Unrestricted: 12, fragrance.Prohibited: 68, fragrance.Ceiling: 5, fragrance.Conditional: 8, fragrance.Purity: 10,
	}
	for s, count := range want {
		if standing[s] != count {
			t.Errorf("%v: %d Standards, want %d", s, standing[s], count)
		}
	}
	if n != 263 {
		t.Errorf("%d Standards, want 263", n)
	}
	if got := sum.PercentText(12); got != "344.796" {
		t.Errorf("the limits add up to %s %%, want 344.796", got)
	}
}

// The annex as amended lists 81 allergens for the label of a rinse-off product, of
// which 24 stood there before 2023 (26, less two that are prohibited since).
func TestEveryAllergenIsThere(t *testing.T) {
	old, recent := 0, 0
	for _, r := range fragrance.Rules() {
		switch r.List() {
		case fragrance.OldList:
			old++
		case fragrance.NewList:
			recent++
		}
		if r.Body() == fragrance.EU && (r.Source().How != cite.Read && r.Source().How != cite.Memory || len(r.Substances()) == 0) {
			t.Errorf("%s %s: %v, %v", r.Number(), r.Name(), r.Source(), r.Substances())
		}
		if r.Body() == fragrance.EU && (r.Standing() == fragrance.Limited) != r.Limit().Given() {
			t.Errorf("%s %s: %v, %v", r.Number(), r.Name(), r.Standing(), r.Limit())
		}
	}
	if old != 24 || recent != 57 {
		t.Errorf("%d of the old list, %d of the new, want 24 and 57", old, recent)
	}
	lists := fragrance.AllergenLists()
	if lists.Threshold.PercentText(6) != "0.01" || lists.Placed != "2026-07-31" || lists.Available != "2028-07-31" {
		t.Errorf("%+v", lists)
	}
}

// Names of the old list, typed in from the label rules as everyone knows them.
func TestTheOldListHasItsNames(t *testing.T) {
	names := map[string]bool{}
	for _, r := range fragrance.Rules() {
		if r.List() == fragrance.OldList {
			names[r.Name()] = true
		}
	}
	for _, name := range []string{
		"Amyl Cinnamal", "Benzyl Alcohol", "Cinnamyl Alcohol", "Citral", "Eugenol", "Hydroxycitronellal", "Isoeugenol", "Amylcinnamyl Alcohol", "Benzyl Salicylate",
		"Cinnamal", "Coumarin", "Geraniol", "Anise Alcohol", "Benzyl Cinnamate", "Farnesol", "Linalool", "Benzyl Benzoate", "Citronellol", "Hexyl Cinnamal", "Limonene",
		"Methyl 2-Octynoate", "Alpha-Isomethyl Ionone", "Evernia Prunastri Extract", "Evernia Furfuracea Extract",
	} {
		if !names[name] {
			t.Errorf("%s is missing", name)
		}
	}
}

func TestEveryRegistryNumberOfTheTablesIsOne(t *testing.T) {
	n := 0
	check := func(where, text string) {
		if n++; text == "" {
			t.Errorf("%s: none", where)
		}
		if _, err := fragrance.ParseCAS(text); err != nil {
			t.Errorf("%s: %v", where, err)
		}
	}
	for _, r := range fragrance.Rules() {
		for _, cas := range r.Substances() {
			check(r.Name(), cas.String())
		}
	}
	for _, m := range fragrance.Materials() {
		for _, f := range m.Figures() {
			check(m.ID(), f.CAS.String())
		}
	}
	for base, of := range fragrance.SchiffBases() {
		check("Schiff base", base)
		check("aldehyde", of[0])
	}
	for line := range refdata.Lines(fragrance.Tables()["colouring"]) {
		check(line, refdata.Field(line, 0))
	}
	if n < 1000 {
		t.Errorf("only %d numbers were seen", n)
	}
}

// What a Schiff base counts as is the ratio of the molar masses, which the Annex rounds
// to a tenth of a percent. Molar masses from the formulas, with the abridged atomic
// weights of IUPAC (C 12.011, H 1.008, N 14.007, O 15.999).
func TestSchiffBasesCountAsTheRatioOfTheMolarMasses(t *testing.T) {
	mass := func(c, h, n, o float64) float64 { return 12.011*c + 1.008*h + 14.007*n + 15.999*o }
	for cas, want := range map[string]float64{
		"89-43-0":    mass(10, 20, 0, 2) / mass(18, 27, 1, 3), // hydroxycitronellal with methyl anthranilate, less water
		"68527-78-6": mass(14, 18, 0, 1) / mass(22, 25, 1, 2), // amyl cinnamal
		"67924-13-4": mass(15, 20, 0, 1) / mass(23, 27, 1, 2), // hexyl cinnamal
		"67801-47-2": mass(10, 16, 0, 1) / mass(18, 23, 1, 2), // citral
		"94386-48-8": mass(9, 8, 0, 1) / mass(17, 15, 1, 2),   // cinnamal
		"67845-42-5": mass(10, 18, 0, 1) / mass(18, 25, 1, 2), // citronellal
		"91-50-9":    mass(13, 18, 0, 1) / mass(21, 25, 1, 2), // cyclamen aldehyde
		"37837-44-8": mass(7, 6, 0, 1) / mass(15, 13, 1, 2),   // benzaldehyde
		"39129-16-3": mass(7, 6, 0, 1) / mass(15, 13, 1, 2),
	} {
		got := units.MustRatio(fragrance.SchiffBases()[cas][1] + " %").Float()
		if math.Abs(got-want) > 0.0011 { // hexyl cinnamal is printed as 61.8 %, and is 61.9 %
			t.Errorf("%s: %.4f, by the molar masses %.4f", cas, got, want)
		}
	}
	if n := len(fragrance.SchiffBases()); n != 9 {
		t.Errorf("%d Schiff bases", n)
	}
}

func TestEveryMaterialIsWhole(t *testing.T) {
	all := fragrance.Materials()
	if len(all) != 105 {
		t.Errorf("%d materials, want 105", len(all))
	}
	annexRows, others := 0, 0
	low, high, annexed := units.Whole(0), units.Whole(0), units.Whole(0)
	for i, m := range all {
		if i > 0 && all[i-1].ID() >= m.ID() {
			t.Errorf("%s is out of order", m.ID())
		}
		if m.Name() == "" || m.ID() == "" || strings.ToLower(m.ID()) != m.ID() || strings.Contains(m.ID(), " ") {
			t.Errorf("%q, %q", m.ID(), m.Name())
		}
		if same, err := fragrance.LookUp(m.ID()); err != nil || same.Name() != m.Name() || !fragrance.Known(m.ID()) {
			t.Errorf("%s is not found: %v", m.ID(), err)
		}
		if len(m.Figures()) == 0 && len(m.Own()) == 0 {
			t.Errorf("%s: nothing is known of it", m.ID())
		}
		done := map[cite.Source]bool{}
		var now cite.Source
		annex := false
		for _, f := range m.Figures() {
			if f.Source != now {
				if done[f.Source] {
					t.Errorf("%s: the figures of %v do not stand together", m.ID(), f.Source)
				}
				done[now] = true
				now = f.Source
			}
			if f.Source.Title == "" || f.Source.How != cite.Read && f.Source.How != cite.Memory {
				t.Errorf("%s: %s has the source %+v", m.ID(), f.CAS, f.Source)
			}
			if !f.Low.Given() && !f.High.Given() || f.Low.Given() && f.High.Given() && f.Low.Compare(f.High) > 0 || f.High.Given() && f.High.Compare(units.Whole(1)) > 0 {
				t.Errorf("%s: %s from %s to %s", m.ID(), f.CAS, f.Low, f.High)
			}
			if strings.Contains(f.Source.Title, "Annex") {
				annex = true
				annexRows++
				annexed = annexed.Add(f.High)
			} else {
				others++
				low, high = low.Add(f.Low.Or(units.Whole(0))), high.Add(f.High.Or(units.Whole(0)))
			}
		}
		if annex != m.InAnnex() || m.Complete() != annex {
			t.Errorf("%s: in the Annex %v, complete %v, rows of it %v", m.ID(), m.InAnnex(), m.Complete(), annex)
		}
		if m.AllergensListed() {
			t.Errorf("%s: its allergens are said to be all listed", m.ID())
		}
	}
	// The columns of the table that this one was made from: any edit shows here.
	if low.PercentText(6) != "1527.85" || high.PercentText(6) != "2494.9" || annexed.PercentText(6) != "2032.6" {
		t.Errorf("the low ends add up to %s, the high ends to %s, the Annex to %s, want 1527.85, 2494.9 and 2032.6", low.PercentText(6), high.PercentText(6), annexed.PercentText(6))
	}
	if annexRows != 408 || others != 181 {
		t.Errorf("%d rows of the Annex and %d others, want 408 and 181", annexRows, others)
	}
}

// A tie that names no rule would be lost in silence.
func TestEveryTieOfAMaterialNamesARule(t *testing.T) {
	ties := 0
	for stanza := range refdata.Stanzas(fragrance.Tables()["materials"]) {
		id := refdata.Field(strings.SplitN(stanza, "\n", 2)[0], 1)
		m, err := fragrance.LookUp(id)
		if err != nil {
			t.Fatal(err)
		}
		want := 0
		for line := range refdata.Lines(stanza) {
			if key := refdata.Field(line, 0); key == "standard" || key == "entry" {
				want++
			}
		}
		if len(m.Own()) != want {
			t.Errorf("%s: %d ties, %d rules", id, want, len(m.Own()))
		}
		ties += want
	}
	if ties < 50 {
		t.Errorf("only %d ties", ties)
	}
}

// The Standards of the extracts that the IFRA lists by name, each on its own material.
func TestExtractsKeepTheirOwnStandards(t *testing.T) {
	for id, number := range map[string]string{
		"ylang-ylang-i": "084", "ylang-ylang-ii": "084", "ylang-ylang-iii": "084", "ylang-ylang-complete": "084", "ylang-ylang-extra": "084", "cananga": "084",
		"jasmine-absolute-grandiflorum": "049", "jasmine-absolute-sambac": "050", "melissa": "051", "verbena-absolute": "083", "tea-leaf-absolute": "079",
		"oakmoss-extract": "067", "treemoss-extract": "080", "peru-balsam-extract": "071", "styrax-extract": "078", "tagetes": "097", "opoponax": "070",
	} {
		m, err := fragrance.LookUp(id)
		if err != nil || !slices.ContainsFunc(m.Own(), func(r fragrance.Rule) bool { return r.Number() == number && r.Body() == fragrance.IFRA }) {
			t.Errorf("%s: %v, %v", id, m.Own(), err)
		}
	}
}

func TestLookingUpAStrangerOffersTheNearest(t *testing.T) {
	_, err := fragrance.LookUp("clove-bub")
	if err == nil || !strings.Contains(err.Error(), "did you mean clove-bud?") {
		t.Errorf("%v", err)
	}
	if _, err := fragrance.LookUp("moonlight"); err == nil || !strings.Contains(err.Error(), "certificate") {
		t.Errorf("%v", err)
	}
	for _, id := range []string{"", "#", "lavender\n", "lavender-x", "material", "\n"} {
		if m, err := fragrance.LookUp(id); err == nil || m.Given() || fragrance.Known(id) {
			t.Errorf("%q is found: %v", id, m.ID())
		}
	}
}

func TestTheZeroMaterialIsNone(t *testing.T) {
	var m fragrance.Material
	if m.Given() || m.ID() != "" || m.Complete() || m.AllergensListed() || len(m.Figures())+len(m.Free())+len(m.Own())+len(m.Colours())+len(m.Certificates()) > 0 {
		t.Error("the zero value is something")
	}
	var r fragrance.Rule
	if r.Given() || r.Name() != "" || r.Limit().Given() {
		t.Error("the zero rule is something")
	}
}

// Every standing, law, list and reason has its word; a table is read by some of them.
func TestEveryWordIsItsOwn(t *testing.T) {
	seen := map[string]bool{}
	say := func(word string) {
		t.Helper()
		if word == "" || seen[word] {
			t.Errorf("%q is said twice, or empty", word)
		}
		seen[word] = true
	}
	for s := fragrance.Limited; s <= fragrance.Unheld; s++ {
		say(s.String())
	}
	for w := fragrance.Unlisted; w <= fragrance.Specification; w++ {
		say(w.String())
	}
	for _, law := range []fragrance.Law{fragrance.IFRAAndEU, fragrance.IFRAAlone} {
		say(law.String())
	}
	if fragrance.NotListed.String()+" "+fragrance.OldList.String()+" "+fragrance.NewList.String() != " old new" || fragrance.EU.String() != "eu" || fragrance.IFRA.String() != "ifra" {
		t.Error("lists or bodies")
	}
}
