package soap_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

func faultsOf(t *testing.T, err error) soap.Faults {
	t.Helper()
	var faults soap.Faults
	if err != nil && !errors.As(err, &faults) {
		t.Fatalf("%T: %v", err, err)
	}
	return faults
}

func read(t *testing.T, text string) (soap.Formula, soap.Faults) {
	t.Helper()
	f, err := soap.ReadFormula(strings.NewReader(text))
	return f, faultsOf(t, err)
}

func paths(faults soap.Faults) (list []string) {
	for _, f := range faults {
		list = append(list, f.Path)
	}
	return list
}

// One wrong value in a formula that is otherwise in order: one fault, at the
// value's path and place, of its kind.
func TestEachFaultNamesItsPathItsPlaceAndItsKind(t *testing.T) {
	colourant := func(rest string) string {
		return `{"part": "lantern", "share": "100 %", "colourants": [{"colourant": "dusk", "unlisted": true, "load": "1 %` +
			rest
	}
	for _, test := range []struct {
		change []string
		path   string
		at     string // the text that begins at the fault's place
		kind   error
	}{
		{[]string{"superfat", `"five %"`}, "superfat", `"five %"`, units.ErrSyntax},
		{[]string{"superfat", `"5"`}, "superfat", `"5"`, units.ErrUnit},
		{[]string{"superfat", `5`}, "superfat", `5,`, soap.ErrFormat},
		{[]string{"superfat", `true`}, "superfat", `true`, soap.ErrFormat},
		{[]string{"superfat", `"100.0 %"`}, "superfat", `"100.0 %"`, soap.ErrRange},
		{[]string{"superfat", `{}`}, "superfat", `{}`, soap.ErrMissing},
		{[]string{"superfat", `{"at_lest": "2 %"}`}, "superfat.at_lest", `"at_lest"`, soap.ErrUnknown},
		{[]string{"superfat", ""}, "superfat", `{"formula"`, soap.ErrMissing},
		{[]string{"water", `{"lye_concentration": "0 %"}`}, "water.lye_concentration", `"0 %"`, soap.ErrRange},
		{[]string{"water", `{"per_alkali": "100.1"}`}, "water.per_alkali", `"100.1"`, soap.ErrRange},
		{[]string{"water", `{"per_oils": "1000.1 %"}`}, "water.per_oils", `"1000.1 %"`, soap.ErrRange},
		{[]string{"water", `{}`}, "water", `{}`, soap.ErrMissing},
		{[]string{"water", `{"per_oils": "30 %", "per_alkali": "2"}`}, "water", `{"per_oils"`, soap.ErrConflict},
		{[]string{"size", `{"oils": "1000 g", "batter": "1 kg"}`}, "size", `{"oils": "1000 g"`, soap.ErrConflict},
		{[]string{"size", `{"oils": "1.0000001 t"}`}, "size.oils", `"1.0000001 t"`, units.ErrUnit},
		{[]string{"size", `{"oils": "1000000.1 g"}`}, "size.oils", `"1000000.1 g"`, units.ErrSize},
		{[]string{"scale", `"0.9 mg"`}, "scale", `"0.9 mg"`, soap.ErrRange},
		{[]string{"scale", `{"oils": "100.1 g"}`}, "scale.oils", `"100.1 g"`, soap.ErrRange},
		{[]string{"alkali", `{"kind": "soda"}`}, "alkali[0].kind", `"soda"`, soap.ErrUnknown},
		{
			[]string{"alkali", `{"kind": "sodium-hydroxide", "purity": "49.9 %"}`},
			"alkali[0].purity", `"49.9 %"`,
			soap.ErrRange,
		},
		{
			[]string{"alkali", `{"kind": "sodium-hydroxide", "purity": "100.1 %"}`},
			"alkali[0].purity", `"100.1 %"`,
			soap.ErrRange,
		},
		{
			[]string{"alkali", `{"kind": "sodium-hydroxide", "purity": {"low": "97 %"}}`},
			"alkali[0].purity", `{"low"`,
			soap.ErrMissing,
		},
		{
			[]string{"alkali", `{"kind": "sodium-hydroxide", "purity": {"low": "97 %", "typical": "99.5 %", "high": "99 %"}}`},
			"alkali[0].purity", `{"low"`, soap.ErrRange,
		},
		{
			[]string{"alkali", `{"kind": "sodium-hydroxide", "saponifies": "50 %"}`},
			"alkali[0].saponifies", `"50 %"`,
			soap.ErrConflict,
		},
		{
			[]string{"alkali", `{"kind": "sodium-hydroxide", "purity": {"assay_min": "97 %", "assay_max": "100.5 %"}}`},
			"alkali[0].purity.carbonate_max", `{"assay_min"`, soap.ErrMissing,
		},
		{[]string{"alkali", `{"kind": "potassium-hydroxide"}`}, "alkali[0].purity", `{"kind"`, soap.ErrMissing},
		{
			[]string{"parts", `{"part": "lantern", "share": "0 %"}, {"part": "glow", "share": "rest"}`},
			"parts[0].share",
			`"0 %"`, soap.ErrRange,
		},
		{
			[]string{"parts", `{"part": "lantern", "share": "100 %"}, {"part": "glow", "share": "rest"}`},
			"parts", `[{"part"`,
			soap.ErrRange,
		},
		{[]string{"parts", colourant(`"}]}`)}, "parts[0].colourants[0].load", `"1 %"`, units.ErrUnit},
		{[]string{"parts", colourant(` of wax"}]}`)}, "parts[0].colourants[0].load", `"1 % of wax"`, units.ErrUnit},
		{
			[]string{"parts", colourant(` of oils", "carrier": {"ratio": "2"}}]}`)},
			"parts[0].colourants[0].carrier",
			`{"ratio"`, soap.ErrMissing,
		},
		{
			[]string{"parts", colourant(` of oils", "carrier": {"liquid": "water"}}]}`)},
			"parts[0].colourants[0].carrier.ratio",
			`{"liquid"`, soap.ErrMissing,
		},
		{
			[]string{"parts", colourant(` of oils", "carrier": {"liquid": "water", "ratio": "1000.1"}}]}`)},
			"parts[0].colourants[0].carrier.ratio", `"1000.1"`, soap.ErrRange,
		},
		{
			[]string{"parts", colourant(` of oils", "carrier": {"liquid": "water", "ratio": "2", "from": "tap"}}]}`)},
			"parts[0].colourants[0].carrier.from", `"tap"`, soap.ErrUnknown,
		},
		{
			[]string{"parts", colourant(` of oils", "carrier": {"liquid": "olive", "ratio": "2", "from": "formula"}}]}`)},
			"parts[0].colourants[0].carrier.liquid", `"olive"`, soap.ErrConflict,
		},
		{
			[]string{"parts", colourant(` of oils", "carrier": {"liquid": "macadamia", "ratio": "2"}}]}`)},
			"parts[0].colourants[0].carrier.liquid", `"macadamia"`, soap.ErrMissing,
		},
		{
			[]string{"parts", colourant(` of oils", "carrier": "water"}]}`)},
			"parts[0].colourants[0].carrier", `"water"`,
			soap.ErrFormat,
		},
	} {
		text := plainFormula().with(test.change...).text()
		_, faults := read(t, text)
		if len(faults) != 1 {
			t.Errorf("%v: %d faults, want one: %v", test.change, len(faults), faults)
			continue
		}
		f := faults[0]
		// All of the text stands in lines; the place is that of the value.
		value := max(0, strings.Index(text, test.change[1]))
		offset := value + strings.Index(text[value:], test.at)
		line := 1 + strings.Count(text[:offset], "\n")
		column := offset - strings.LastIndex(text[:offset], "\n")
		if f.Path != test.path || f.Line != line || f.Column != column || !errors.Is(f, test.kind) || f.Reason == "" {
			t.Errorf("%v: %s at %d:%d (%v), want %s at %d:%d (%v)", test.change, f.Path, f.Line, f.Column, f.Kind, test.path,
				line, column, test.kind)
		}
	}
}

// The bounds of the table of fields, at the last value that passes.
func TestTheLastValueWithinEachBoundPasses(t *testing.T) {
	oils := func(extra string) string {
		return `{"oil": "hall-blend", "share": "99 %", "saponification": {"low": "189", "high": "191"}}, {"oil": "pressed", "share": "1 %", ` + extra + `}`
	}
	for _, change := range [][]string{
		{"superfat", `"0 %"`},
		{"superfat", `"99.9999999999 %"`},
		{"water", `{"per_alkali": "100"}`},
		{"water", `{"per_oils": "1000 %"}`},
		{"water", `{"lye_concentration": "0.1 %"}`},
		{"size", `{"oils": "1000 kg"}`},
		{"size", `{"batter": "1000 kg"}`},
		{"scale", `"1 mg"`},
		{"scale", `{"oils": "100 g", "small": "1 mg"}`},
		{"alkali", `{"kind": "sodium-hydroxide", "purity": "50 %"}`},
		{"alkali", `{"kind": "sodium-hydroxide", "purity": "100 %"}`},
		{"alkali", `{"kind": "sodium-hydroxide", "purity": {"assay_min": "97 %", "assay_max": "101 %", "carbonate_max": "2 %"}}`},
		{"oils", oils(`"saponification": {"low": "5", "high": "450"}`)},
		{"oils", oils(`"saponification": "190", "iodine": "300", "density": "1.2 g/mL", "inci": "Lantern Oil"`)},
		{"oils", oils(`"saponification": "190", "iodine": "0", "density": "0.7 g/mL", "unsaponifiables": "0 %"`)},
		{"oils", oils(`"profile": {"C18:1": "90 %"}`)},
		{"parts", part("100 % of oils", `{"liquid": "glycerin", "ratio": "9"}`)},
		{"parts", part("1 mg", `{"liquid": "olive", "ratio": "1000"}`)},
		{"parts", `{"part": "Laternenlauf", "share": "30 %"}, {"part": "提灯", "share": "30 %"}, {"part": "فانوس", "share": "rest"}`},
		{"parts", `{"part": "` + strings.Repeat("l", 200) + `", "share": "100 %"}`},
	} {
		if f, faults := read(t, plainFormula().with(change...).text()); faults != nil {
			t.Errorf("%v: %v", change, faults)
		} else if _, err := f.Batch(); err != nil {
			t.Errorf("%v: %v", change, err)
		}
	}
}

func TestTheFirstValueBeyondAnOwnOilsBoundsIsRefused(t *testing.T) {
	for _, test := range [][2]string{
		{`"saponification": "4.9"`, "saponification"},
		{`"saponification": "450.1"`, "saponification"},
		{`"saponification": "0.135"`, "saponification"},
		{`"saponification": {"low": "190", "high": "189"}`, "saponification"},
		{`"saponification": {"low": "190", "typical": "192", "high": "191"}`, "saponification"},
		{`"saponification": "190", "profile": {"C18:1": "100 %"}`, "profile"},
		{`"profile": {"C18:1": "89.9 %"}`, "profile"},
		{`"profile": {"C18:1": "60 %", "C18:2": "50.1 %"}`, "profile"},
		{`"profile": {"C18:1": "101 %"}`, "profile.C18:1"},
		{`"profile": {"C18:I": "100 %"}`, "profile.C18:I"},
		{`"profile": {"C18:1": "100 %"}, "unsaponifiables": "100.1 %"`, "unsaponifiables"},
		{`"profile": {"C18:1": "100 %"}, "unsaponifiables": "99 %"`, "unsaponifiables"},
		{`"saponification": "190", "iodine": "300.1"`, "iodine"},
		{`"saponification": "190", "density": "1.21 g/mL"`, "density"},
		{`"saponification": "190", "density": "0.9"`, "density"},
		{`"saponification": "190", "name": "a\nb"`, "name"},
		{`"saponification": "190", "inci": " "`, "inci"},
		{`"iodine": "80"`, "oil"},
	} {
		text := plainFormula().with("oils", `{"oil": "hall-blend", "share": "99 %", "saponification": {"low": "189", "high": "191"}}, {"oil": "pressed", "share": "1 %", `+test[0]+`}`).text()
		if _, faults := read(t, text); !slices.Equal(paths(faults), []string{"oils[1]." + test[1]}) {
			t.Errorf("%s: %v", test[0], faults)
		}
	}
}

func TestTheCheckIsSilentWhereItsInputIsAlreadyFaulty(t *testing.T) {
	for _, test := range []struct {
		change []string
		want   string
	}{
		// no word of what the shares add up to
		{[]string{"oils", `{"oil": "olive", "share": "60"}, {"oil": "coconut", "share": "30 %"}`}, "oils[0].share"},
		// no word of a missing share
		{[]string{"oils", `{"oil": "olive", "shar": "60 %"}, {"oil": "coconut", "share": "40 %"}`}, "oils[0].shar"},
		{[]string{"oils", `{"oil": "olive", "share": "60 %"}, 7`}, "oils[1]"},
		// but of an unknown oil the share still counts
		{[]string{"oils", `{"oil": "oliv", "share": "60 %"}, {"oil": "coconut", "share": "30 %"}`}, "oils oils[0].oil"},
		// and a carrier that names the line is not called unknown
		{[]string{
			"oils", `{"oil": "pressed", "share": "100 %", "saponification": "0.135"}`, "parts",
			part("1 g", `{"liquid": "pressed", "ratio": "2", "from": "formula"}`),
		}, "oils[0].saponification"},
		{[]string{"water", `{"lye_concentraton": "33 %"}`}, "water.lye_concentraton"},
		{[]string{"size", `{"oil": "1000 g"}`}, "size.oil"},
		{[]string{"parts", `{"part": "lantern", "share": "60"}, {"part": "glow", "share": "60 %"}`}, "parts[0].share"},
		{[]string{"alkali", `{"kind": "potash"}`}, "alkali[0].kind"},
		{
			[]string{"alkali", `{"kind": "sodium-hydroxide", "purity": {"lo": "97 %", "high": "99 %"}}`},
			"alkali[0].purity alkali[0].purity.lo",
		},
	} {
		_, faults := read(t, plainFormula().with(test.change...).text())
		if got := strings.Join(paths(faults), " "); got != test.want {
			t.Errorf("%v: %s, want %s\n%v", test.change, got, test.want, faults)
		}
	}
}

func TestFaultsStandInTheOrderOfTheirPlaces(t *testing.T) {
	text := `{"size": {"oils": "0 g"},
"superfat": "-1 %",
 "parts": [{"part": "", "share": "rest"}],
"oils": [{"oil": "oliv", "share": "100 %"}], "formula": 7, "alkali": [{"kind": "sodium-hydroxide"}]}`
	_, faults := read(t, text)
	want := []string{"water", "size.oils", "superfat", "parts[0].part", "oils[0].oil", "formula"}
	if !slices.Equal(paths(faults), want) {
		t.Errorf("got %v, want %v", paths(faults), want)
	}
	if !slices.IsSortedFunc(faults, func(a, b soap.Fault) int { return (a.Line-b.Line)*1000 + a.Column - b.Column }) {
		t.Errorf("not sorted: %v", faults)
	}
}

// Where something of the swatches cannot be read, only that is said: not that others are
// too few, nor that there are no bands. Rungs that are missing are all said together.
func TestWhatIsSaidOfSwatches(t *testing.T) {
	load := `"loads": {"titanium-dioxide": "0.3 % of batter"}, `
	for swatches, want := range map[string][]string{
		`{"read": [{"swatch": "plain", "srgb": "#e8dcc0"}, {"swatch": "a", "loads": {"mica": "0.3 %"},
			"srgb": "#e8dcc0"}]}`: {"swatches.read[1].loads.mica"},
		`{"bands": {"from": "400 nm", "step": "10 nm"}, "read": [{"swatch": "plain", "reflectance": "0.4"}, {"swatch": "a",
			` + load + `"reflectance": 0.5}]}`: {"swatches.read[0].reflectance", "swatches.read[1].reflectance"},
		`{"read": [{"swatch": "plain", "srgb": "#e8dcc0"}, {"swatch": "a", ` + load +
			`"srgb": "#e8dcc8"}, {"swatch": "b", "loads": {"mica": "1 % of batter"},
				"srgb": "#e8dcc4"}]}`: {"swatches.read[1].loads.titanium-dioxide", "swatches.read[2].loads.mica"},
		`{"read": [{"swatch": "plain", "srgb": "#e8dcc0", "colour": "x"}]}`: {"swatches.read[0].colour"},
		`[]`:                          {"swatches"},
		`{"read": {}}`:                {"swatches.read"},
		`{"read": [{"srgb": "#e8"}]}`: {"swatches.read[0].srgb", "swatches.read[0].swatch"},
	} {
		_, faults := read(t, plainFormula().with("swatches", swatches).text())
		got := paths(faults)
		slices.Sort(got)
		if !slices.Equal(got, want) {
			t.Errorf("%s: %v, want %v", swatches, faults, want)
		}
	}
}

func TestAMistypedNameIsOfferedTheNearest(t *testing.T) {
	for text, want := range map[string]string{
		plainFormula().with("oils", `{"oil": "suflower", "share": "100 %"}`).text():                               "did you mean sunflower",
		plainFormula().with("parts", part("1 g", `{"liquid": "glycerine", "ratio": "2"}`)).text():                 "did you mean glycerin?",
		plainFormula().with("alkali", `{"kind": "sodium hydroxid"}`).text():                                       "did you mean sodium-hydroxide?",
		plainFormula().with("oils", `{"oil": "pressed", "share": "100 %", "profile": {"C18-1": "100 %"}}`).text(): "did you mean C18:1",
		strings.Replace(plainFormula().text(), `"formula"`, `"forumla"`,
			1): "did you mean formula?",
		plainFormula().with("oils", `{"oil": "xyzzy",
			"share": "100 %"}`).text(): `bring its own "saponification" in mg KOH/g`,
	} {
		if _, faults := read(t, text); len(faults) == 0 || !strings.Contains(faults.Error(), want) {
			t.Errorf("%v, want %q", faults, want)
		}
	}
}

// A typed formula is checked as the file would be, under the same paths.
func TestATypedFormulaHasTheFaultsOfItsFile(t *testing.T) {
	olive := builtIn(t, "olive")
	f := soap.Formula{
		Oils: []soap.OilLine{
			{Oil: olive, Share: units.Percent(60)},
			{Oil: olive, Mass: units.Grams(1)},
			{Share: units.Percent(0)},
		},
		Alkalis:  []soap.AlkaliLine{{Alkali: soap.PotassiumHydroxide, Saponifies: units.Percent(50)}, {}},
		Superfat: soap.Superfat{Planned: units.Percent(100)},
		Water:    soap.Water{PerAlkali: units.Whole(101)},
		Size:     soap.Size{Oils: units.Grams(-1)},
		Scale:    units.Grams(101),
		Parts: []soap.Part{
			{Name: "a\tb", Share: units.Percent(50), Rest: true},
			{Name: "glow", Colourants: []soap.Addition{
				{
					Name: "dusk", Unlisted: true, Load: soap.Load{OfOils: units.Percent(1), Mass: units.Grams(1)},
					Carrier: soap.Carrier{Ratio: units.Whole(2)},
				},
				{Name: "dusk", Unlisted: true, Carrier: soap.Carrier{In: soap.InOil, Ratio: units.Whole(0)}},
			}},
		},
	}
	want := []string{
		"formula",
		"oils[1].oil", "oils[2].oil", "oils[2].share",
		"alkali[0].purity", "alkali[1].kind", "alkali[1].saponifies",
		"superfat", "water.per_alkali", "size.oils", "scale.oils",
		"parts[0].part", "parts[0].share", "parts[1].share",
		"parts[1].colourants[0].load", "parts[1].colourants[0].carrier.liquid",
		"parts[1].colourants[1].colourant", "parts[1].colourants[1].load", "parts[1].colourants[1].carrier.ratio",
		"parts[1].colourants[1].carrier.liquid",
	}
	if got := paths(faultsOf(t, f.Check())); !slices.Equal(got, want) {
		t.Errorf("got\n%v, want\n%v", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	if _, err := f.Batch(); fmt.Sprint(err) != fmt.Sprint(f.Check()) {
		t.Errorf("Batch says %v", err)
	}
}

func TestZeroValuesAreRefusedOrEmptyAndNeverPanic(t *testing.T) {
	if got := paths(faultsOf(t, soap.Formula{}.Check())); !slices.Equal(got, []string{
		"formula", "oils", "alkali",
		"superfat", "water", "size",
	}) {
		t.Errorf("an empty formula: %v", got)
	}
	var oil soap.Oil
	if oil.ID() != "" || oil.Saponification().Given() || oil.Figures() != nil || oil.Profiles() != nil ||
		oil.Notes() != nil || oil.FreeAcid().Given() {
		t.Error("no oil has figures")
	}
	if _, err := oil.WithSaponification(units.Exactly(units.MilligramsPerGram(190))); !errors.Is(err, soap.ErrMissing) {
		t.Errorf("no oil takes a value: %v", err)
	}
	if _, err := (soap.OwnOil{}).Oil(); !errors.Is(err, soap.ErrMissing) {
		t.Errorf("an own oil of nothing: %v", err)
	}
	if text, err := (soap.Batch{}).MarshalJSON(); err != nil || strings.Contains(string(text), "null") {
		t.Errorf("%v: %s", err, text)
	}
	if line, column := (soap.Places{}).Find("oils[0]"); line != 0 || column != 0 {
		t.Errorf("nowhere is %d:%d", line, column)
	}
	_ = (soap.Batch{}).Composition()
	_ = (soap.Finding{}).Message()
	_ = (soap.Faults{}).Error()
}

// A carrier that names an oil of the formula takes the value it has there.
func TestACarrierTakesTheValueThatItsOilHasInTheFormula(t *testing.T) {
	b := plainFormula().with("oils", `{"oil": "olive", "share": "100 %", "saponification": "170"}`,
		"parts", part("10 g", `{"liquid": "olive", "ratio": "2", "from": "extra"}`)).batch(t)
	// 20 g on 1000 g, both at 170: 1 − 0.95/1.02
	if got := b.Parts[0].Superfat.Planned.PercentText(4); got != "6.8627" {
		t.Errorf("planned %s %%, want 6.8627", got)
	}
}
