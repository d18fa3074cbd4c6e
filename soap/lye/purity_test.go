package lye_test

import (
	"strings"
	"testing"

	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
	"example.com/lyewright/units/fault"
)

// The limits as printed: total alkali at the least and at the most, carbonate at
// the most, in percent. A text without an upper limit counts as 100 %.
var printedLimits = []struct {
	id                            string
	alkali                        lye.Alkali
	assayMin, assayMax, carbonate string
	how                           cite.How
	worst                         string // the least hydroxide that complies, %
}{
	{"acs-2017", lye.SodiumHydroxide, "97", "100", "1", cite.Memory, "96.2"},      // 97.0 − 0.7547
	{"acs-2017", lye.PotassiumHydroxide, "85", "100", "2", cite.Read, "83.4"},     // 85 − 1.6238
	{"jecfa-2002", lye.SodiumHydroxide, "95", "100", "3", cite.Read, "92.7"},      // 95.0 − 2.2641
	{"jecfa-2002", lye.PotassiumHydroxide, "85", "100", "3.5", cite.Read, "82.2"}, // 85.0 − 2.84165
	{"ph-eur-7", lye.SodiumHydroxide, "97", "100.5", "2", cite.Read, "95.5"},      // 97.0 − 1.5094
	{"usp-nf-35", lye.SodiumHydroxide, "95", "100.5", "3", cite.Read, "92.7"},
	{"usp-nf-35", lye.PotassiumHydroxide, "85", "100", "3.5", cite.Read, "82.2"},
}

func TestGradesHaveThePrintedLimits(t *testing.T) {
	if n := len(lye.Grades()); n != len(printedLimits) {
		t.Errorf("%d grades, %d printed", n, len(printedLimits))
	}
	for _, c := range printedLimits {
		g, err := lye.LookUpGrade(c.id, c.alkali)
		if err != nil {
			t.Fatal(err)
		}
		if !g.AssayMin.Equal(percent(c.assayMin)) || !g.AssayMax.Equal(percent(c.assayMax)) ||
			!g.CarbonateMax.Equal(percent(c.carbonate)) {
			t.Errorf("%s, %v: %+v", c.id, c.alkali, g)
		}
		if g.ID != c.id || g.Alkali != c.alkali || g.Source.How != c.how || g.Source.Title == "" || g.Source.Edition == "" {
			t.Errorf("%s, %v: %+v", c.id, c.alkali, g)
		}
		// 88 % lies inside the limits of potassium hydroxide; sodium hydroxide plans high.
		typical := units.Ratio{}
		if c.alkali == lye.PotassiumHydroxide {
			typical = units.Percent(88)
			none, err := g.Purity(units.Ratio{})
			refused(t, none, err, "typical", fault.ErrMissing)
		}
		r, err := g.Purity(typical)
		if err != nil || r.Low.PercentText(1) != c.worst || !r.High.Equal(units.Whole(1)) ||
			!r.Typical.Equal(typical.Or(units.Whole(1))) {
			t.Errorf("%s, %v: %v, %v, want from %s %%", c.id, c.alkali, r, err, c.worst)
		}
	}
}

// Whose limits they are, and of which edition, typed in again from the texts.
func TestGradesNameTheirTextAndItsEdition(t *testing.T) {
	texts := map[string][2]string{
		"acs-2017":   {"ACS Reagent Chemicals", "2017"},
		"jecfa-2002": {"JECFA (FAO/WHO), specifications", "FNP 52 1992, metals revised 2002"},
		"ph-eur-7": {"European Pharmacopoeia", "carbonate limit read in 7.0, assay limit in a British Pharmacopoeia text " +
			"of unstated edition"},
		"usp-nf-35": {"United States Pharmacopeia and National Formulary", "USP 35, NF 30"},
	}
	for _, g := range lye.Grades() {
		if want := texts[g.ID]; g.Source.Title != want[0] || g.Source.Edition != want[1] || !strings.Contains(g.Source.Place,
			"Hydroxide") {
			t.Errorf("%s: %q, edition %q, place %q", g.ID, g.Source.Title, g.Source.Edition, g.Source.Place)
		}
	}
}

func TestGradesAreSortedAndOwnedByTheCaller(t *testing.T) {
	grades := lye.Grades()
	for i := 1; i < len(grades); i++ {
		a, b := grades[i-1], grades[i]
		if a.ID > b.ID || a.ID == b.ID && a.Alkali >= b.Alkali {
			t.Errorf("%s, %v before %s, %v", a.ID, a.Alkali, b.ID, b.Alkali)
		}
	}
	grades[0].AssayMin = units.Whole(0)
	if lye.Grades()[0].AssayMin.Sign() == 0 {
		t.Error("one caller's change reaches the next")
	}
}

func TestAnUnknownGradeOffersWhatIsKnown(t *testing.T) {
	for _, c := range []struct {
		id      string
		alkali  lye.Alkali
		offered string
	}{
		{"usp-nf-53", lye.SodiumHydroxide, "usp-nf-35"},
		{"lantern", lye.PotassiumHydroxide, "acs-2017, jecfa-2002, usp-nf-35"},
		{"ph-eur-7", lye.PotassiumHydroxide, "usp-nf-35"}, // of sodium hydroxide alone
		{"usp-nf-35", 0, "which hydroxide"},
	} {
		g, err := lye.LookUpGrade(c.id, c.alkali)
		refused(t, g, err, "grade", fault.ErrUnknown)
		if err == nil || !strings.Contains(err.Error(), c.offered) {
			t.Errorf("%s: %v, want %s", c.id, err, c.offered)
		}
	}
}

// 2 M(hydroxide)/M(carbonate): 79.994/105.988 and 112.210/138.204, to four places.
// A certificate of 100 % with 10 % of carbonate shows a tenth of it.
func TestACertificateTakesCarbonateFromTheAssay(t *testing.T) {
	for alkali, factor := range map[lye.Alkali]string{lye.SodiumHydroxide: "0.7547", lye.PotassiumHydroxide: "0.8119"} {
		r, err := lye.Certificate{
			AssayMin: units.Whole(1), AssayMax: percent("100.5"), CarbonateMax: units.Percent(10),
			Typical: units.Percent(95),
		}.Purity(alkali)
		if err != nil {
			t.Fatal(err)
		}
		if got := r.Low.Rest().Times(units.Whole(10)).Text(8); got != factor {
			t.Errorf("%v: %s, want %s", alkali, got, factor)
		}
	}
}

func TestCertificatesOutOfOrderAreRefused(t *testing.T) {
	good := lye.Certificate{AssayMin: units.Percent(95), AssayMax: percent("100.5"), CarbonateMax: units.Percent(3)}
	if _, err := good.Purity(lye.SodiumHydroxide); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		spoil  func(*lye.Certificate)
		alkali lye.Alkali
		path   string
		kind   error
	}{
		{func(*lye.Certificate) {}, 0, "kind", fault.ErrMissing},
		{func(*lye.Certificate) {}, lye.PotassiumHydroxide, "typical", fault.ErrMissing},
		{func(c *lye.Certificate) { c.AssayMin = units.Ratio{} }, lye.SodiumHydroxide, "assay_min", fault.ErrMissing},
		{func(c *lye.Certificate) { c.AssayMax = units.Ratio{} }, lye.SodiumHydroxide, "assay_max", fault.ErrMissing},
		{func(c *lye.Certificate) { c.CarbonateMax = units.Ratio{} }, lye.SodiumHydroxide, "carbonate_max", fault.ErrMissing},
		{func(c *lye.Certificate) { c.AssayMin = units.Whole(-1) }, lye.SodiumHydroxide, "assay_min", fault.ErrRange},
		{func(c *lye.Certificate) { c.AssayMax = percent("101.1") }, lye.SodiumHydroxide, "assay_max", fault.ErrRange},
		{func(c *lye.Certificate) { c.AssayMax = units.Percent(94) }, lye.SodiumHydroxide, "assay_min", fault.ErrRange},
		{
			func(c *lye.Certificate) { c.AssayMin, c.CarbonateMax = units.Percent(5), units.Percent(10) }, lye.SodiumHydroxide,
			"carbonate_max", fault.ErrRange,
		},
		// the least is 92.7
		{func(c *lye.Certificate) { c.Typical = units.Percent(92) }, lye.SodiumHydroxide, "typical", fault.ErrRange},
		{func(c *lye.Certificate) { c.Typical = percent("100.1") }, lye.SodiumHydroxide, "typical", fault.ErrRange},
	} {
		bad := good
		c.spoil(&bad)
		r, err := bad.Purity(c.alkali)
		refused(t, r, err, c.path, c.kind)
	}
}

// 0.98/1.02 = 96.08 % where all of it is water, (0.98 − 0.02 × 1.8177)/1.02 = 92.51 %
// where all is carbon dioxide. 5 % of water alone take 98 % to 93.3 %.
func TestABottleThatGainedMassHoldsLess(t *testing.T) {
	r, err := lye.Aged(lye.SodiumHydroxide, units.Exactly(units.Percent(98)), units.Percent(2))
	if err != nil {
		t.Fatal(err)
	}
	if r.Low.PercentText(1) != "92.5" || r.High.PercentText(1) != "96.1" || !r.Typical.Equal(r.High) {
		t.Errorf("%v", r)
	}
	r, err = lye.Aged(lye.SodiumHydroxide, units.Exactly(units.Percent(98)), units.Percent(5))
	if err != nil || r.High.PercentText(1) != "93.3" {
		t.Errorf("%v, %v", r, err)
	}
	// Nothing gained, nothing changed, and planned at the high end.
	was := units.Range{Low: units.Percent(90), Typical: units.Percent(91), High: units.Percent(95)}
	r, err = lye.Aged(lye.PotassiumHydroxide, was, units.Percent(0))
	if err != nil || !r.Low.Equal(was.Low) || !r.High.Equal(was.High) || !r.Typical.Equal(was.High) {
		t.Errorf("%v, %v", r, err)
	}
}

// A gram of carbon dioxide uses up 2 × 39.997/44.009 = 1.8177 g of NaOH, or 2 ×
// 56.105/44.009 = 2.5497 g of KOH: read back from what is left of 100 %.
func TestCarbonDioxideUsesUpTwoMolesOfHydroxide(t *testing.T) {
	for alkali, want := range map[lye.Alkali]string{lye.SodiumHydroxide: "1.8177", lye.PotassiumHydroxide: "2.5497"} {
		gain := units.Percent(10)
		r, err := lye.Aged(alkali, units.Exactly(units.Whole(1)), gain)
		if err != nil {
			t.Fatal(err)
		}
		used := units.Whole(1).Sub(r.Low.Times(units.Whole(1).Add(gain))).Over(gain)
		if got := used.Text(4); got != want {
			t.Errorf("%v: %s g, want %s", alkali, got, want)
		}
	}
}

func TestBottlesThatCannotBeWorkedOutAreRefused(t *testing.T) {
	good := units.Between(units.Percent(95), units.Percent(98))
	for _, c := range []struct {
		alkali lye.Alkali
		purity units.Range
		gain   units.Ratio
		path   string
		kind   error
	}{
		{0, good, units.Percent(2), "alkali", fault.ErrMissing},
		{lye.SodiumHydroxide, units.Range{}, units.Percent(2), "purity", fault.ErrMissing},
		{
			lye.SodiumHydroxide, units.Between(units.Percent(98), units.Percent(95)), units.Percent(2), "purity",
			fault.ErrRange,
		},
		{lye.SodiumHydroxide, units.Between(units.Percent(0), units.Percent(95)), units.Percent(2), "purity", fault.ErrRange},
		{lye.SodiumHydroxide, units.Between(units.Percent(95), percent("100.1")), units.Percent(2), "purity", fault.ErrRange},
		{lye.SodiumHydroxide, good, units.Ratio{}, "gain", fault.ErrMissing},
		{lye.SodiumHydroxide, good, units.Whole(-1), "gain", fault.ErrRange},
		{lye.SodiumHydroxide, good, percent("100.1"), "gain", fault.ErrRange},
		{lye.SodiumHydroxide, good, units.Percent(53), "gain", fault.ErrRange}, // 0.53 × 1.8177 = 0.963, more than the 95 %
	} {
		r, err := lye.Aged(c.alkali, c.purity, c.gain)
		refused(t, r, err, c.path, c.kind)
	}
	if _, err := lye.Aged(lye.SodiumHydroxide, good, units.Percent(52)); err != nil { // 0.945 of 0.95
		t.Error(err)
	}
}
