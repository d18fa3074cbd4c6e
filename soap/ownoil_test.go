package soap_test

import (
	"errors"
	"slices"
	"strings"
	"sync"
	"testing"

	"example.com/lyewright/internal/madeup"
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// oilOf reads a formula of one oil line and gives its oil.
func oilOf(t *testing.T, line string) soap.Oil {
	t.Helper()
	f, faults := read(t, plainFormula().with("oils", line).text())
	if faults != nil {
		t.Fatalf("%s: %v", line, faults)
	}
	return f.Oils[0].Oil
}

func rangeOf(r units.Range) string {
	return r.Low.MilligramsPerGramText(6) + " " + r.Plan().MilligramsPerGramText(6) + " " + r.High.MilligramsPerGramText(6)
}

func TestASaponificationValueIsReadInEveryForm(t *testing.T) {
	for form, want := range map[string]struct {
		value  string
		ranged bool
	}{
		`"192.5"`:                           {"192.5 192.5 192.5", false},
		`"192.5 mg/g"`:                      {"192.5 192.5 192.5", false},
		`"192.5mg/g"`:                       {"192.5 192.5 192.5", false},
		`{"low": "190", "high": "195"}`:     {"190 192.5 195", true},
		`{"low": "190", "high": "190"}`:     {"190 190 190", false},
		`{"low": "190 mg/g", "high": "2e"}`: {},

		`{"low": "190", "typical": "190", "high": "195"}`: {"190 190 195", true},
		`{"high": "195", "typical": "194", "low": "190"}`: {"190 194 195", true},
	} {
		text := plainFormula().with("oils", `{"oil": "pressed", "share": "100 %", "saponification": `+form+`}`).text()
		f, faults := read(t, text)
		if want.value == "" {
			if !slices.Equal(paths(faults), []string{"oils[0].saponification.high"}) {
				t.Errorf("%s: %v", form, faults)
			}
			continue
		}
		if faults != nil {
			t.Errorf("%s: %v", form, faults)
			continue
		}
		oil := f.Oils[0].Oil
		if got := rangeOf(oil.Saponification()); got != want.value || oil.HasRange() != want.ranged ||
			oil.Choice() != soap.AsGiven || oil.BuiltIn() {
			t.Errorf("%s: %s, ranged %v, %v; want %s, %v", form, got, oil.HasRange(), oil.Choice(), want.value, want.ranged)
		}
	}
}

// n = Σ w/M of the middles scaled to a whole, 56105 n/(1 + 38.049/3 n), less the
// unsaponifiable matter; the molar masses stand in the comment of each.
func TestAnOwnCompositionIsComputedAsGlycerides(t *testing.T) {
	glycerides := func(moles string, saponifiable string) string {
		n := frac("0")
		for term := range strings.SplitSeq(moles, " + ") {
			w, m, _ := strings.Cut(term, "/")
			n = plus(n, over(frac(w), frac(m)))
		}
		value := over(times(frac("56105"), n), plus(whole(1), times(over(frac("38.049"), whole(3)), n)))
		return times(value, frac(saponifiable)).FloatString(6)
	}
	for _, test := range []struct{ line, want string }{
		// oleic acid 282.468
		{`"profile": {"C18:1": "100 %"}`, glycerides("1/282.468", "1")},
		// palmitic acid 256.430: by hand n = 0.001770112 + 0.001949850 = 0.003719962,
		// 208.7085/1.0471803 = 199.3052
		{`"profile": {"C18:1": "50 %", "C16:0": "50 %"}`, glycerides("0.5/282.468 + 0.5/256.430", "1")},
		// 45 and 45 of 90 are half and half
		{`"profile": {"C18:1": "45 %", "C16:0": "45 %"}`, glycerides("0.5/282.468 + 0.5/256.430", "1")},
		{`"profile": {"C18:1": "55 %", "C16:0": "55 %"}`, glycerides("0.5/282.468 + 0.5/256.430", "1")},
		// 6 % of unsaponifiable matter leave 94 %
		{`"profile": {"C18:1": "50 %", "C16:0": "50 %"}, "unsaponifiables": "6 %"`, glycerides("0.5/282.468 + 0.5/256.430",
			"0.94")},
		{`"profile": {"C18:1": "100 %"}, "unsaponifiables": "0 %"`, glycerides("1/282.468", "1")},
		// lauric acid 200.322, myristic acid 228.376
		{`"profile": {"C12:0": "75 %", "C14:0": "25 %"}`, glycerides("0.75/200.322 + 0.25/228.376", "1")},
	} {
		oil := oilOf(t, `{"oil": "pressed", "share": "100 %", `+test.line+`}`)
		got := oil.Saponification()
		want := units.MustRatio(test.want + " mg/g")
		if !got.Plan().Equal(want) || !got.Single() || oil.HasRange() || oil.Choice() != soap.FromProfile {
			t.Errorf("%s: %s, ranged %v, %v; want %s", test.line, rangeOf(got), oil.HasRange(), oil.Choice(), test.want)
		}
	}
	// what the comment says by hand
	if oil := oilOf(t, `{"oil": "pressed", "share": "100 %", "profile": {"C18:1": "50 %", "C16:0": "50 %"}}`); oil.Saponification().Plan().MilligramsPerGramText(2) != "199.31" {
		t.Errorf("half oleic, half palmitic: %s", rangeOf(oil.Saponification()))
	}
}

func TestWhatAnOilBringsStandsInItsFigures(t *testing.T) {
	oil := oilOf(t, `{"oil": "pressed", "name": "Pressed at the hall", "share": "100 %", "saponification": {"low": "189", "high": "191"},
		"iodine": "84.5", "density": "0.915 g/mL", "inci": "Lantern Seed Oil", "unsaponifiables": "1.5 %"}`)
	if oil.ID() != "pressed" || oil.Name() != "Pressed at the hall" || oil.INCI() != "Lantern Seed Oil" {
		t.Errorf("%q, %q, %q", oil.ID(), oil.Name(), oil.INCI())
	}
	if low, high := oil.Iodine(); low.PercentText(4) != "84.5" || high.PercentText(4) != "84.5" {
		t.Errorf("iodine value %s to %s", low.PercentText(4), high.PercentText(4))
	}
	text, err := oil.MarshalJSON()
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		`"figure":"saponification","low":189,"high":191,"unit":"mg KOH/g"`,
		`"figure":"iodine","low":84.5,"high":84.5,"unit":"g iodine/100 g"`,
		`"figure":"density","low":0.915,"high":0.915,"unit":"g/mL"`,
		`"figure":"unsaponifiable","low":15,"high":15,"unit":"g/kg"`, // 1.5 % are 15 g/kg
		`"iodine":{"low":84.5,"high":84.5}`,
	} {
		if squeezed := strings.NewReplacer(" ", "", "\n", "").Replace(string(text)); !strings.Contains(squeezed,
			strings.ReplaceAll(want, " ", "")) {
			t.Errorf("%s is not in\n%s", want, text)
		}
	}
	if plain := oilOf(t, `{"oil": "pressed", "share": "100 %", "saponification": "190"}`); plain.Name() != "pressed" ||
		plain.INCI() != "" {
		t.Errorf("without a name: %q, %q", plain.Name(), plain.INCI())
	}
}

// An own value on a built-in oil replaces the value and keeps the rest of the row.
func TestAnOwnValueOnABuiltInOilKeepsTheRestOfItsRow(t *testing.T) {
	olive := builtIn(t, "olive")
	lot := oilOf(t, `{"oil": "olive", "share": "100 %", "saponification": {"low": "188", "high": "190"}}`)
	if rangeOf(lot.Saponification()) != "188 189 190" || lot.Choice() != soap.AsGiven || !lot.BuiltIn() {
		t.Errorf("planned at %s, %v", rangeOf(lot.Saponification()), lot.Choice())
	}
	if lot.Name() != olive.Name() || lot.INCI() != olive.INCI() || lot.Latin() != olive.Latin() ||
		lot.Kind() != olive.Kind() || len(lot.Profiles()) != len(olive.Profiles()) {
		t.Error("the rest of the row is not kept")
	}
	low, high := lot.Iodine()
	if wantLow, wantHigh := olive.Iodine(); !low.Equal(wantLow) || !high.Equal(wantHigh) || !low.Given() {
		t.Errorf("iodine value %s to %s", low.PercentText(2), high.PercentText(2))
	}
	if rangeOf(builtIn(t, "olive").Saponification()) != rangeOf(olive.Saponification()) ||
		rangeOf(olive.Saponification()) == rangeOf(lot.Saponification()) {
		t.Error("the table's oil is not left alone")
	}
	// a name, an ingredient name or an iodine value do not replace the value
	named := oilOf(t, `{"oil": "olive", "share": "100 %", "name": "Olive from the hall", "iodine": "82"}`)
	if rangeOf(named.Saponification()) != rangeOf(olive.Saponification()) || named.Choice() != olive.Choice() ||
		named.Name() != "Olive from the hall" {
		t.Errorf("with a name: %s, %v, %q", rangeOf(named.Saponification()), named.Choice(), named.Name())
	}
	b := plainFormula().with("oils", `{"oil": "olive", "share": "100 %", "name": "Olive from the hall"}`).batch(t)
	if got := codes(b.Findings); slices.ContainsFunc(got, func(s string) bool { return strings.Contains(s, "replaced") }) {
		t.Errorf("a name replaces no value: %v", got)
	}
	// a composition on a built-in oil replaces its value too: computed and replaced
	b = plainFormula().with("oils", `{"oil": "olive", "share": "100 %", "profile": {"C18:1": "100 %"}}`).batch(t)
	if got := codes(b.Findings); !slices.Equal(got, []string{
		"warning value-computed oils[0]",
		"note saponification-replaced oils[0]",
	}) {
		t.Errorf("an own composition on a built-in oil: %v", got)
	}
	// of an own oil, a later value replaces nothing built in
	own := oilOf(t, `{"oil": "pressed", "share": "100 %", "saponification": "190"}`)
	again, err := own.WithSaponification(units.Between(units.MilligramsPerGram(180), units.MilligramsPerGram(184)))
	if err != nil || rangeOf(again.Saponification()) != "180 182 184" {
		t.Fatalf("%v, %s", err, rangeOf(again.Saponification()))
	}
	f := typedFormula(t)
	f.Oils = []soap.OilLine{{Oil: again, Share: units.Percent(100)}}
	later, err := f.Batch()
	if err != nil || len(later.Findings) != 0 {
		t.Errorf("%v, %v", err, codes(later.Findings))
	}
}

func TestAMacadamiaLotIsAcceptedWithItsOwnValue(t *testing.T) {
	if _, faults := read(t, plainFormula().with("oils",
		`{"oil": "macadamia", "share": "100 %"}`).text()); !slices.Equal(paths(faults), []string{"oils[0].saponification"}) {
		t.Errorf("without a value: %v", faults)
	}
	oil := oilOf(t, `{"oil": "macadamia", "share": "100 %", "saponification": {"low": "193", "high": "197"}}`)
	if rangeOf(oil.Saponification()) != "193 195 197" {
		t.Errorf("with a value: %s", rangeOf(oil.Saponification()))
	}
}

// Certificates, their factors printed in FORMULA.md: NaOH 0.7547, KOH 0.8119.
func TestAPurityIsReadInEveryForm(t *testing.T) {
	for _, test := range []struct{ kind, purity, want string }{
		{"sodium-hydroxide", `"98.5 %"`, "98.5 98.5 98.5"},
		{"sodium-hydroxide", `{"low": "97 %", "high": "99 %"}`, "97 98 99"},
		{"sodium-hydroxide", `{"low": "97 %", "typical": "98.7 %", "high": "99 %"}`, "97 98.7 99"},
		{"sodium-hydroxide", "", "95.5 100 100"},
		// 97 − 0.7547 × 2 = 95.4906; 100.5 is cut at 100; planned at the high end
		{"sodium-hydroxide", `{"assay_min": "97 %", "assay_max": "100.5 %", "carbonate_max": "2 %"}`, "95.4906 100 100"},
		{
			"sodium-hydroxide", `{"assay_min": "97 %", "assay_max": "100.5 %", "carbonate_max": "2 %", "typical": "98.2 %"}`,
			"95.4906 98.2 100",
		},
		// 98 − 0.7547 × 1 = 97.2453; 99.4 stays
		{"sodium-hydroxide", `{"assay_min": "98 %", "assay_max": "99.4 %", "carbonate_max": "1 %"}`, "97.2453 99.4 99.4"},
		{"sodium-hydroxide", `{"assay_min": "98 %", "assay_max": "99 %", "carbonate_max": "0 %"}`, "98 99 99"},
		// 85 − 0.8119 × 3.5 = 82.15835
		{
			"potassium-hydroxide", `{"assay_min": "85 %", "assay_max": "100.5 %", "carbonate_max": "3.5 %", "typical": "88 %"}`,
			"82.15835 88 100",
		},
		{"potassium-hydroxide", `"90 %"`, "90 90 90"},
		{"potassium-hydroxide", `{"low": "88 %", "high": "92 %"}`, "88 90 92"},
	} {
		purity := test.purity
		if purity != "" {
			purity = `, "purity": ` + purity
		}
		b := plainFormula().with("alkali", `{"kind": "`+test.kind+`"`+purity+`}`).batch(t)
		p := b.Alkalis[0].Purity
		if got := p.Low.PercentText(8) + " " + p.Typical.PercentText(8) + " " + p.High.PercentText(8); got != test.want {
			t.Errorf("%s %s: %s, want %s", test.kind, test.purity, got, test.want)
		}
	}
}

func TestTheFaultsOfACertificateStandAtItsFigures(t *testing.T) {
	for _, test := range []struct {
		kind, purity string
		want         []string
		line         error
	}{
		{"sodium-hydroxide", `{"assay_min": "97 %"}`, []string{"assay_max", "carbonate_max"}, soap.ErrMissing},
		{"sodium-hydroxide", `{"carbonate_max": "2 %"}`, []string{"assay_min", "assay_max"}, soap.ErrMissing},
		{
			"sodium-hydroxide", `{"assay_min": "99 %", "assay_max": "98 %", "carbonate_max": "2 %"}`,
			[]string{"assay_min"},
			soap.ErrRange,
		},
		{
			"sodium-hydroxide", `{"assay_min": "100.1 %", "assay_max": "100.5 %", "carbonate_max": "2 %"}`,
			[]string{"assay_min"},
			soap.ErrRange,
		},
		{
			"sodium-hydroxide", `{"assay_min": "97 %", "assay_max": "100 %", "carbonate_max": "100.1 %"}`,
			[]string{"carbonate_max"},
			soap.ErrRange,
		},
		{
			"potassium-hydroxide", `{"assay_min": "85 %", "assay_max": "100 %", "carbonate_max": "2 %"}`,
			[]string{"typical"},
			soap.ErrMissing,
		},
		{
			"sodium-hydroxide", `{"assay_min": "97", "assay_max": "100 %", "carbonate_max": "2 %"}`,
			[]string{"assay_min"},
			units.ErrUnit,
		},
		{
			"sodium-hydroxide", `{"assay_min": "97 %", "assay_max": "100 %", "carbonate_max": "2 %", "low": "97 %"}`,
			[]string{"low"},
			soap.ErrUnknown,
		},
	} {
		_, faults := read(t, plainFormula().with("alkali", `{"kind": "`+test.kind+`", "purity": `+test.purity+`}`).text())
		var want []string
		for _, key := range test.want {
			want = append(want, "alkali[0].purity."+key)
		}
		if got := paths(faults); !slices.Equal(got, want) || !errors.Is(faults, test.line) {
			t.Errorf("%s: %v, want %v\n%v", test.purity, got, want, faults)
		}
	}
	// what the certificate gives may still be no purity: 55 − 0.7547 × 7 = 49.7 %,
	// 20 − 0.7547 × 90 = −47.9 %, and a typical value outside its ends
	for purity, path := range map[string]string{
		`{"assay_min": "55 %", "assay_max": "60 %", "carbonate_max": "7 %"}`:                      "alkali[0].purity",
		`{"assay_min": "20 %", "assay_max": "60 %", "carbonate_max": "90 %"}`:                     "alkali[0].purity.carbonate_max",
		`{"assay_min": "97 %", "assay_max": "99 %", "carbonate_max": "1 %", "typical": "99.5 %"}`: "alkali[0].purity.typical",
		`{"assay_min": "97 %", "assay_max": "99 %", "carbonate_max": "1 %", "typical": "96 %"}`:   "alkali[0].purity.typical",
	} {
		_, faults := read(t, plainFormula().with("alkali", `{"kind": "sodium-hydroxide", "purity": `+purity+`}`).text())
		if !slices.Equal(paths(faults), []string{path}) || !errors.Is(faults, soap.ErrRange) {
			t.Errorf("%s: %v", purity, faults)
		}
	}
}

// Half the batter takes half of demand and alkali, and its jug's own demand.
func TestACarrierOfTheFormulasOwnOilTakesItsValue(t *testing.T) {
	parts := func(liquid, from string) string {
		return `{"part": "lantern", "share": "50 %", "colourants": [{"colourant": "dusk", "unlisted": true, "load": "10 g",
			"carrier": {"liquid": "` + liquid + `", "ratio": "2"` + from + `}}]}, {"part": "glow", "share": "rest"}`
	}
	oils := `{"oil": "pressed", "share": "10 %", "saponification": {"low": "149", "high": "151"}}, {"oil": "olive", "share": "20 %", "saponification": {"low": "169", "high": "171"}}, {"oil": "hall-blend", "share": "rest", "saponification": {"low": "199", "high": "201"}}`
	// demand: 100 × 0.15 + 200 × 0.17 + 700 × 0.2 = 189 g; alkali 0.95 × 189 = 179.55 g
	for _, test := range []struct{ liquid, from, lantern, glow string }{
		// extra, the usual way of an oil: 1 − 89.775/(94.5 + 20 × 0.15)
		{"pressed", "", over(minus(frac("97.5"), frac("89.775")), frac("97.5")).FloatString(9), "0.050000000"},
		{
			"pressed", `, "from": "extra"`, over(minus(frac("97.5"), frac("89.775")), frac("97.5")).FloatString(9),
			"0.050000000",
		},
		// a built-in id that stands in the formula with a value of its own, 170
		{"olive", "", over(minus(frac("97.9"), frac("89.775")), frac("97.9")).FloatString(9), "0.050000000"},
		// out of its line: 3 g of the demand are held back, half of 186 is 93;
		// the lantern gets them back
		{
			"pressed", `, "from": "formula"`, over(minus(frac("96"), frac("89.775")), frac("96")).FloatString(9),
			over(minus(frac("93"), frac("89.775")), frac("93")).FloatString(9),
		},
		// 3.4 g of 189: 92.8
		{
			"olive", `, "from": "formula"`, over(minus(frac("96.2"), frac("89.775")), frac("96.2")).FloatString(9),
			over(minus(frac("92.8"), frac("89.775")), frac("92.8")).FloatString(9),
		},
	} {
		b := plainFormula().with("alkali", evenAlkali, "oils", oils, "parts", parts(test.liquid, test.from)).batch(t)
		if got := []string{
			b.Parts[0].Superfat.Planned.Fixed(9),
			b.Parts[1].Superfat.Planned.Fixed(9),
		}; got[0] != test.lantern || got[1] != test.glow {
			t.Errorf("%s%s: %v, want %s and %s", test.liquid, test.from, got, test.lantern, test.glow)
		}
	}
}

// A typed carrier that names a line of the formula takes the line's value, even
// where it holds the oil of the table.
func TestATypedCarrierTakesTheValueOfItsLine(t *testing.T) {
	olive := builtIn(t, "olive")
	lot, err := olive.WithSaponification(madeup.Span(169, 170, 171))
	if err != nil {
		t.Fatal(err)
	}
	f := typedFormula(t)
	f.Alkalis[0].Purity = units.Exactly(units.Percent(100))
	f.Oils = []soap.OilLine{{Oil: lot, Share: units.Percent(100)}}
	f.Parts[0].Colourants = []soap.Addition{{
		Name: "dusk", Unlisted: true, Load: soap.Load{Mass: units.Grams(10)},
		Carrier: soap.Carrier{In: soap.InOil, Oil: olive, Ratio: units.Whole(2)},
	}}
	b, err := f.Batch()
	if err != nil {
		t.Fatal(err)
	}
	// 1 − 0.95/1.02, whatever the value, as long as it is one
	if got := b.Parts[0].Superfat.Planned.PercentText(5); got != "6.86275" {
		t.Errorf("planned %s %%, want 6.86275", got)
	}
	if got := rangeOf(b.Parts[0].Additions[0].Carrier.Oil.Saponification()); got != "169 170 171" {
		t.Errorf("the jug's oil has %s", got)
	}
}

// An oil does not change: not by another value, nor by what is made of it at the same time.
func TestAnOilStaysAsItIsWhateverIsMadeOfIt(t *testing.T) {
	lot, err := soap.OwnOil{
		ID: "hall-blend", Saponification: madeup.Span(188, 190, 192), Iodine: units.Percent(80),
		Density: units.MustRatio("0.915"),
	}.Oil()
	if err != nil {
		t.Fatal(err)
	}
	var lots [16]soap.Oil
	var group sync.WaitGroup
	for i := range lots {
		group.Go(func() {
			value := 150 + i
			if made, err := lot.WithSaponification(madeup.Span(value, value, value)); err == nil {
				lots[i] = made
			}
		})
	}
	group.Wait()
	for i, made := range lots {
		found := 0
		for _, f := range made.Figures() {
			if f.Name == "saponification" {
				found++
				if !f.Low.Equal(units.MilligramsPerGram(150 + i)) {
					t.Errorf("lot %d: a figure of %s mg/g", i, f.Low.MilligramsPerGramText(3))
				}
			}
		}
		if value := made.Saponification().Typical; found != 1 || !value.Equal(units.MilligramsPerGram(150+i)) ||
			len(made.Figures()) != 3 {
			t.Errorf("lot %d: %s, %d figures of it among %d", i, value.MilligramsPerGramText(3), found, len(made.Figures()))
		}
	}
	if f := lot.Figures(); len(f) != 3 || !f[0].High.Equal(units.MilligramsPerGram(192)) {
		t.Errorf("the lot itself has %v", f)
	}
}
