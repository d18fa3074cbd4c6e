package soap_test

import (
	"errors"
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

func lot(t *testing.T, id string, value int) soap.Oil {
	t.Helper()
	oil, err := soap.OwnOil{ID: id, Saponification: units.Exactly(units.MilligramsPerGram(value))}.Oil()
	if err != nil {
		t.Fatal(err)
	}
	return oil
}

// jugs gives a part with an additive in a carrier of each oil.
func jugs(oils ...soap.Oil) []soap.Part {
	part := soap.Part{Name: "glow", Share: units.Percent(100)}
	for i, oil := range oils {
		part.Additives = append(part.Additives, soap.Addition{
			Name: string(rune('a' + i)), Load: soap.Load{Mass: units.Grams(10)},
			Carrier: soap.Carrier{In: soap.InOil, Oil: oil, Ratio: units.Whole(5)},
		})
	}
	return []soap.Part{part}
}

func TestOneIDCannotStandForTwoValuesInTheJugs(t *testing.T) {
	f := lanternBars()
	f.Parts = jugs(lot(t, "lot", 100), lot(t, "lot", 400))
	_, err := f.Batch()
	if got := paths(faultsOf(t, err)); !slices.Equal(got, []string{"parts[0].additives[1].carrier.liquid"}) ||
		!errors.Is(err, soap.ErrConflict) {
		t.Errorf("got %v", err)
	}
	// the same lot twice is one oil, in whichever order
	a, b := lot(t, "lot", 150), lot(t, "other", 300)
	f.Parts = jugs(a, lot(t, "lot", 150), b)
	one, err := f.Batch()
	if err != nil {
		t.Fatal(err)
	}
	f.Parts = jugs(b, a, a)
	two, err := f.Batch()
	if err != nil {
		t.Fatal(err)
	}
	if !one.Parts[0].Superfat.Planned.Equal(two.Parts[0].Superfat.Planned) ||
		!one.Parts[0].Superfat.Low.Equal(two.Parts[0].Superfat.Low) {
		t.Errorf("the order of additions matters: %v and %v", one.Parts[0].Superfat, two.Parts[0].Superfat)
	}
}

func TestAnOilKeepsItsCompositionWhateverBecomesOfTheCallersList(t *testing.T) {
	all := units.Percent(100)
	acids := []soap.AcidShare{{Acid: "C18:1", Low: all, High: all}}
	oil, err := soap.OwnOil{ID: "lot", Profile: acids}.Oil()
	if err != nil {
		t.Fatal(err)
	}
	acids[0].Acid = "C12:0"
	oil.Profiles()[0].Acids[0].Acid = "C12:0"
	if got := oil.Profiles()[0].Acids[0].Acid; got != "C18:1" {
		t.Errorf("the composition became %s", got)
	}
}

func TestABatchKeepsItsFormulaWhateverBecomesOfTheCallers(t *testing.T) {
	f := lanternBars()
	f.Parts = jugs(lot(t, "lot", 190))
	b, err := f.Batch()
	if err != nil {
		t.Fatal(err)
	}
	f.Oils[0].Share, f.Alkalis[0].Alkali = units.Percent(1), soap.PotassiumHydroxide
	f.Parts[0].Name, f.Parts[0].Additives[0].Name = "changed", "changed"
	kept := b.Formula
	if !kept.Oils[0].Share.Equal(units.Percent(100)) || kept.Alkalis[0].Alkali != soap.SodiumHydroxide ||
		kept.Parts[0].Name != "glow" || kept.Parts[0].Additives[0].Name != "a" {
		t.Errorf("the batch's formula changed: %+v", kept)
	}
}

// Acids, liquids and what was weighed are lists as well: the batch has its own.
func TestABatchKeepsItsBenchWhateverBecomesOfTheCallers(t *testing.T) {
	bench := func() soap.Formula {
		f, faults := read(t, plainFormula().with(
			"water", `{"lye_concentration": "33 %", "liquids": [{"liquid": "hall ale", "mass": "20 g", "water": "90 %"}]}`,
			"acids", `{"acid": "lactic-acid", "load": "1 % of oils", "strength": "80 %", "compensate": true}`,
			"parts", part("10 g", `{"liquid": "olive", "ratio": "3"}`),
			"weighed", `{"stage": "pot", "oils": {"hall-blend": "510 g"}, "alkali": {"sodium-hydroxide": "140 g"}, "parts": {"lantern": {"carriers": {"olive": "31 g"}}}}`,
		).text())
		if faults != nil {
			t.Fatal(faults)
		}
		return f
	}
	change := func(f *soap.Formula) {
		f.Acids[0].Load.OfOils = units.Percent(2)
		f.Water.Liquids[0].Name = "changed"
		f.Weighed.Oils[0].Mass = units.Grams(1)
		f.Weighed.Alkalis[0].Mass = units.Grams(1)
		f.Weighed.Parts[0].Part = "changed"
		f.Weighed.Parts[0].Carriers[0].Liquid = "changed"
	}
	f, untouched := bench(), bench()
	b, err := f.Batch()
	if err != nil {
		t.Fatal(err)
	}
	change(&f)
	if !reflect.DeepEqual(b.Formula, untouched) {
		t.Errorf("the batch's formula changed with the caller's: %+v", b.Formula)
	}
	// and the other way round, with all that was worked out
	f = bench()
	if b, err = f.Batch(); err != nil {
		t.Fatal(err)
	}
	change(&b.Formula)
	b.Acids[0].Mass, b.Liquids[0].Mass = units.Mass{}, units.Mass{}
	b.Weighed.Parts[0].Batter, b.Weighed.Remedies[0].Oil = units.Mass{}, "changed"
	if !reflect.DeepEqual(f, untouched) {
		t.Errorf("the caller's formula changed with the batch's: %+v", f)
	}
	again, err := f.Batch()
	if err != nil {
		t.Fatal(err)
	}
	if again.Acids[0].Mass.Sign() == 0 || again.Liquids[0].Mass.Sign() == 0 || again.Weighed.Parts[0].Batter.Sign() == 0 ||
		again.Weighed.Remedies[0].Oil == "changed" {
		t.Error("a second batch came out of the first")
	}
}

func TestWhatIsNoLiquidAndNoPlaceIsRefused(t *testing.T) {
	f := lanternBars()
	f.Parts = jugs(lot(t, "lot", 190), lot(t, "lot", 190))
	f.Parts[0].Additives[0].Carrier.In = soap.Liquid(9)
	f.Parts[0].Additives[1].Carrier.From = soap.From(7)
	if got := paths(faultsOf(t, f.Check())); !slices.Equal(got, []string{
		"parts[0].additives[0].carrier.liquid",
		"parts[0].additives[1].carrier.from",
	}) {
		t.Errorf("got %v", got)
	}
	purity := units.Percent(97)
	if _, err := (soap.Certificate{
		AssayMin: purity, AssayMax: purity,
		CarbonateMax: units.Percent(0),
	}).Purity(0); !errors.Is(err, soap.ErrMissing) {
		t.Errorf("a certificate of no alkali: %v", err)
	}
}

// An oil that a jug brings without a range makes the part's outlook incomplete,
// and a finding names it.
func TestAJugWithoutARangeIsNamed(t *testing.T) {
	f := lanternBars()
	f.Parts = jugs(lot(t, "lot", 190))
	b, err := f.Batch()
	if err != nil {
		t.Fatal(err)
	}
	if got := codes(b.Findings); b.Parts[0].Superfat.Complete ||
		!slices.Contains(got, "note saponification-single parts[0].additives[0].carrier") {
		t.Errorf("complete %v, %v", b.Parts[0].Superfat.Complete, got)
	}
}

func TestACarrierOfMoreThanATonneIsRefused(t *testing.T) {
	f := lanternBars()
	f.Parts = jugs(lot(t, "lot", 190))
	f.Parts[0].Additives[0].Load.Mass = units.Grams(2000)
	f.Parts[0].Additives[0].Carrier.Ratio = units.Whole(501)
	if _, err := f.Batch(); !errors.Is(err, soap.ErrImpossible) || !strings.Contains(err.Error(), "is more than a tonne") {
		t.Errorf("got %v", err)
	}
}

func TestTheBlendHasNoIodineValueWhereAnOilHasNone(t *testing.T) {
	f := lanternBars()
	f.Oils = []soap.OilLine{{Oil: builtIn(t, "olive"), Share: units.Percent(50)}, {
		Oil:   builtIn(t, "beeswax"),
		Share: units.Percent(50),
	}}
	b, err := f.Batch()
	if err != nil {
		t.Fatal(err)
	}
	c := b.Composition()
	if c.Iodine.Given() || len(c.Missing) != 1 || c.Missing[0].ID() != "beeswax" || !c.Named.Equal(units.Percent(50)) {
		t.Errorf("%+v", c)
	}
}

// The sentence says what is true of the case at hand.
func TestASentenceTellsTheCasesOfACodeApart(t *testing.T) {
	half := `{"part": "plain", "share": "50 %"}, {"part": "glow", "share": "rest", "colourants": [{"colourant": "dusk",
		"unlisted": true, "load": "10 % of oils", "carrier": {"liquid": "yard-blend", "ratio": "3", "from": "formula"}}]}`
	for _, test := range []struct {
		change        []string
		code, subject string
		says          []string
		never         string
	}{
		// 150 g of 1000 g held back: 1 − 0.98/0.85 is below zero
		{
			[]string{"superfat", `"2 %"`, "parts", half},
			"superfat-below-zero", "parts[0]",
			[]string{"plain", "as planned, the superfat is -15.29 %, below zero", "held back"},
			"known values",
		},
		{[]string{"superfat", `"0 %"`}, "superfat-likely-negative", "parts[0]", []string{
			"may well be below zero",
			"raise the superfat",
		}, "as planned"},
		{
			[]string{"parts", half},
			"part-superfat-shifted", "parts[0]",
			[]string{"plain", "oil held back"},
			"its own carriers",
		},
		{[]string{"parts", half}, "part-superfat-shifted", "parts[1]", []string{"glow", "its own carriers"}, "held back"},
		{
			[]string{"oils", `{"oil": "olive", "share": "90 %"}, {"oil": "jojoba", "share": "rest"}`},
			"wax-reacts-slowly",
			"oils",
			[]string{"begins at its free acid"},
			"as it stands",
		},
		{
			[]string{"oils", `{"oil": "olive", "share": "90 %"}, {"oil": "jojoba", "share": "rest", "saponification": "95"}`},
			"wax-reacts-slowly", "oils",
			[]string{"does not allow for wax that does not react"},
			"begins at",
		},
		{
			[]string{"oils", `{"oil": "avocado", "share": "100 %"}`},
			"typical-disputed", "oils[0]",
			[]string{"recalled, not read"},
			"",
		},
		{
			[]string{"oils", `{"oil": "canola", "share": "100 %"}`},
			"typical-disputed", "oils[0]",
			[]string{"fatty acids"},
			"recalled",
		},
		{
			[]string{"parts", "", "superfat", `"0 %"`},
			"superfat-likely-negative", "parts[0]",
			[]string{"The batch: "},
			"whole",
		},
	} {
		p := plainFormula().with(test.change...)
		text := strings.Replace(p.text(), `, "parts": []`, "", 1)
		f, faults := read(t, text)
		if faults != nil {
			t.Fatal(faults)
		}
		b, err := f.Batch()
		if err != nil {
			t.Fatal(err)
		}
		at := slices.IndexFunc(b.Findings, func(f soap.Finding) bool {
			return f.Code == test.code &&
				f.Subject == test.subject
		})
		if at < 0 {
			t.Errorf("%v: no %s, but %v", test.change, test.code, codes(b.Findings))
			continue
		}
		message := b.Findings[at].Message()
		for _, says := range test.says {
			if !strings.Contains(message, says) {
				t.Errorf("%q does not say %q", message, says)
			}
		}
		if test.never != "" && strings.Contains(message, test.never) {
			t.Errorf("%q says %q", message, test.never)
		}
	}
}

// 3 % of masses that do not come out even is no more than 3 %.
func TestAShareAtItsLimitIsNotMovedBeyondItByItsNanograms(t *testing.T) {
	for _, size := range []string{"333.333333333 g", "0.777777777 g", "7 mg", "49.999999983 g"} {
		b := plainFormula().with("size", `{"oils": "`+size+`"}`, "scale", `"1 mg"`,
			"oils", `{"oil": "beeswax", "share": "3 %"}, {"oil": "olive", "share": "rest"}`).batch(t)
		for _, f := range b.Findings {
			if f.Code == "wax-reacts-slowly" && f.Severity != soap.Note {
				t.Errorf("%s: %+v", size, f)
			}
		}
	}
}

// A wax's esters are no glycerides: a composition says nothing of what it takes
// up. A fatty acid's composition counts as free acid, 56105 Σ w/M.
func TestACompositionIsForGlyceridesAndFreeAcids(t *testing.T) {
	oils := func(id string) string {
		return `{"oil": "olive", "share": "90 %"}, {"oil": "` + id +
			`", "share": "rest", "profile": {"C16:0": "50 %", "C18:0": "50 %"}}`
	}
	if _, faults := read(t, plainFormula().with("oils", oils("beeswax")).text()); !slices.Equal(paths(faults),
		[]string{"oils[1].profile"}) {
		t.Errorf("a wax: %v", faults)
	}
	f, faults := read(t, plainFormula().with("oils", oils("stearic-acid-50")).text())
	if faults != nil {
		t.Fatal(faults)
	}
	// 56105 × (0.5/256.430 + 0.5/284.484) = 109.3964 + 98.6084
	if got := f.Oils[1].Oil.Saponification().Typical.MilligramsPerGramText(3); got != "208.005" {
		t.Errorf("a fatty acid: %s, want 208.005", got)
	}
}

func TestATypedOilIsWhatItSays(t *testing.T) {
	value := units.Exactly(units.MilligramsPerGram(190))
	if _, err := (soap.OwnOil{ID: "olive", Saponification: value}).Oil(); !errors.Is(err, soap.ErrConflict) {
		t.Errorf("an own oil under a built-in id: %v", err)
	}
	if _, err := builtIn(t, "olive").WithSaponification(units.Range{}); !errors.Is(err, soap.ErrMissing) {
		t.Errorf("no value in place of one: %v", err)
	}
	all, most := units.Percent(99), units.Percent(95)
	for _, share := range []soap.AcidShare{{Acid: "C18:1", Low: all, High: most}, {Acid: "C18:1", Low: all}} {
		if _, err := (soap.OwnOil{ID: "lot", Profile: []soap.AcidShare{share}}).Oil(); err == nil {
			t.Errorf("%+v is accepted", share)
		}
	}
	f := lanternBars()
	f.Parts = jugs(lot(t, "lot", 190))
	f.Parts[0].Additives[0].Carrier.In = soap.NoLiquid
	if err := f.Check(); !errors.Is(err, soap.ErrConflict) {
		t.Errorf("an oil that is not said to be the carrier: %v", err)
	}
}

func TestAFileThatIsNoObjectIsOneFault(t *testing.T) {
	for _, text := range []string{"[1, 2]", "7", `"formula"`, "null", " true"} {
		if _, faults := read(t, text); len(faults) != 1 || !strings.Contains(faults[0].Reason, "where a formula is needed") {
			t.Errorf("%s: %v", text, faults)
		}
	}
}

func TestASlipOfTheKeyIsSaidWithWhatIsUsual(t *testing.T) {
	for text, want := range map[string]string{
		plainFormula().with("oils", `{"oil": "olive", "share": "100 %", "saponification": "290"}`).text(): "in place of " +
			"the built-in 185 to 196",
		plainFormula().with("alkali", `{"kind": "sodium-hydroxide", "purity": "57 %"}`).text(): "If the bottle " +
			"holds 98 %",
		plainFormula().with("superfat", `"87 %"`).text(): "far more than is usual",
	} {
		f, faults := read(t, text)
		if faults != nil {
			t.Fatal(faults)
		}
		b, err := f.Batch()
		if err != nil {
			t.Fatal(err)
		}
		if !slices.ContainsFunc(b.Findings, func(f soap.Finding) bool { return strings.Contains(f.Message(), want) }) {
			t.Errorf("nothing says %q: %v", want, codes(b.Findings))
		}
	}
}
