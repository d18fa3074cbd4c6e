package soap_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// inCups is a formula of oils with densities that fills twelve cups: without any
// finding of the vessels.
func inCups() pieces {
	return plainFormula().with(
		"oils", `{"oil": "hall-blend", "share": "50 %", "saponification": {"low": "189", "high": "191"}, "density": "0.9 g/mL"},
		         {"oil": "yard-blend", "share": "50 %", "saponification": {"low": "189", "high": "191"}, "iodine": "80"}`,
		"size", `{"vessels": [{"vessel": "cup", "part": "lantern", "count": 12, "volume": "45 mL"}]}`,
		"parts", `{"part": "lantern"}`)
}

func found(b soap.Batch, code string) (list []soap.Finding) {
	for _, f := range b.Findings {
		if f.Code == code {
			list = append(list, f)
		}
	}
	return list
}

func TestPlainCupsHaveNoFindings(t *testing.T) {
	if got := inCups().batch(t).Findings; len(got) != 0 {
		t.Errorf("%+v", got)
	}
}

// What is in the volumes without a density is listed, each once, in one note; what
// does not count in them is not.
func TestWhatHasNoDensityIsListedOnce(t *testing.T) {
	added := func(kind, list string) string { return `{"part": "lantern", "` + kind + `": [` + list + `]}` }
	for _, test := range []struct {
		what   string
		change []string
		want   []string
	}{
		{"a wax, and a free acid", []string{
			"oils",
			`{"oil": "hall-blend", "share": "90 %", "saponification": {"low": "189", "high": "191"}, "density": "0.9 g/mL"},
				{"oil": "lanolin", "share": "5 %"}, {"oil": "stearic-acid-50", "share": "5 %"}`,
		}, []string{lookUp(t, "lanolin").Name(), lookUp(t, "stearic-acid-50").Name()}},
		{
			"an own oil with neither density nor iodine value",
			[]string{"oils", `{"oil": "hall-blend", "share": "90 %", "saponification": {"low": "189", "high": "191"},
				"density": "0.9 g/mL"}, {"oil": "lot-7", "name": "Lot 7", "share": "10 %", "saponification": {"low": "189",
				"high": "191"}}`},
			[]string{"Lot 7"},
		},
		{"a colourant that is known", []string{
			"parts",
			added("colourants", `{"colourant": "titanium-dioxide", "load": "1 % of oils"}`),
		}, nil},
		{
			"a clay among the additives",
			[]string{"parts", added("additives", `{"additive": "kaolin", "load": "1 % of oils"}`)},
			nil,
		},
		{"a plain colourant in glycerin", []string{
			"parts",
			added("colourants", `{"colourant": "dusk", "unlisted": true, "load": "1 % of oils",
				"carrier": {"liquid": "glycerin", "ratio": "2"}}`),
		}, []string{"dusk"}},
		{"a fragrance of a pigment's name", []string{
			"parts",
			added("fragrances", `{"fragrance": "kaolin", "unlisted": true, "load": "1 % of oils"}`),
		}, []string{"kaolin"}},
		{
			"a carrier",
			[]string{"parts", added("colourants",
				`{"colourant": "mica", "load": "1 % of oils", "carrier": {"liquid": "goose-fat", "ratio": "2"}}`)},
			[]string{"Goose fat"},
		},
		{"in two parts", []string{
			"size", `{"vessels": [{"vessel": "cup", "parts": {"lantern": "50 %", "dusk": "rest"}, "count": 12, "volume": "45 mL"}]}`,
			"parts", added("fragrances", `{"fragrance": "pear", "unlisted": true, "load": "1 % of oils"}`) +
				`, {"part": "dusk", "fragrances": [{"fragrance": "pear", "unlisted": true, "load": "2 % of oils"}]}`,
		}, []string{"pear"}},
		{
			"an acid",
			[]string{"acids", `{"acid": "citric-acid-anhydrous", "load": "1 % of oils", "compensate": true}`},
			[]string{"Citric acid, anhydrous"},
		},
		{"a liquid with solids", []string{"water", `{"lye_concentration": "33 %", "liquids": [{"liquid": "oat water", "share": "20 %", "water": "95 %"}]}`}, []string{"oat water"}},
		{"a liquid that is all water", []string{
			"water",
			`{"lye_concentration": "33 %", "liquids": [{"liquid": "well water", "share": "20 %", "water": "100 %"}]}`,
		}, nil},
		{"an embed weighed, on top", []string{"embeds", `{"embed": "moon", "vessel": "cup", "mass": "2 g"}`}, nil},
		{
			"an embed weighed, sunk",
			[]string{"embeds", `{"embed": "moon", "vessel": "cup", "mass": "2 g", "sunk": true}`},
			[]string{"moon"},
		},
		{"an embed by volume", []string{"embeds", `{"embed": "moon", "vessel": "cup", "volume": "2 mL"}`}, []string{"moon"}},
		{"a topping", []string{"toppings", `{"topping": "petals", "vessel": "cup", "mass": "0.3 g"}`}, nil},
	} {
		got := found(inCups().with(test.change...).batch(t), "density-unknown")
		switch {
		case test.want == nil:
			if got != nil {
				t.Errorf("%s: %+v", test.what, got)
			}
		case len(got) != 1 || got[0].Severity != note || got[0].Subject != "size" || !slices.Equal(got[0].Names, test.want):
			t.Errorf("%s: %+v, want %q", test.what, got, test.want)
		case !strings.Contains(got[0].Message(), test.want[0]):
			t.Errorf("%s: %s", test.what, got[0].Message())
		}
	}
	// Without vessels nobody asks for volumes.
	b := inCups().with("size", `{"oils": "1 kg"}`, "parts",
		`{"part": "lantern", "share": "100 %", "fragrances": [{"fragrance": "pear", "unlisted": true,
			"load": "1 % of oils"}]}`).batch(t)
	if got := found(b, "density-unknown"); got != nil || b.Volumes != nil {
		t.Errorf("%+v, %+v", got, b.Volumes)
	}
}

// Oils without a density that are more than a tenth of the batter are a warning: the
// share is that of the masses.
func TestMuchOilWithoutADensityIsAWarning(t *testing.T) {
	for share, severity := range map[string]soap.Severity{"5 %": note, "50 %": warning} {
		b := inCups().with("oils", `{"oil": "hall-blend", "share": "rest", "saponification": {"low": "189", "high": "191"}, "density": "0.9 g/mL"}, {"oil": "lot-7", "name": "Lot 7", "share": "`+share+`", "saponification": {"low": "189", "high": "191"}}`).batch(t)
		got := found(b, "density-unknown")
		if len(got) != 1 || got[0].Severity != severity {
			t.Fatalf("%s: %+v", share, got)
		}
		if want, _ := b.Oils[1].Mass.Per(b.Batter); severity == warning &&
			(!got[0].Value.Equal(want.Round(9, units.Nearest)) || !got[0].Limit.Equal(units.Percent(10)) ||
				!strings.Contains(got[0].Message(), "Give their density")) {
			t.Errorf("%s of the batter, want %s: %s", got[0].Value, want, got[0].Message())
		}
	}
}

func TestMouldsAreShortWhereMoreIsWanted(t *testing.T) {
	vessels := func(more, list string) string { return `{` + more + `"vessels": [` + list + `]}` }
	for _, test := range []struct {
		size, parts  string
		subjects     []string
		value, limit string
		says         string
	}{
		{
			vessels("", `{"vessel": "cup", "part": "lantern", "count": 12, "moulds": 12, "volume": "45 mL"}`),
			`{"part": "lantern"}`, nil, "", "", "",
		},
		{
			vessels("", `{"vessel": "cup", "part": "lantern", "count": 12, "moulds": 11, "volume": "45 mL"}`),
			`{"part": "lantern"}`,
			[]string{"size.vessels[0].moulds"},
			"12", "11 moulds", "several batches",
		},
		// two trays of four are eight pieces in two moulds
		{
			vessels("", `{"vessel": "tray", "part": "lantern", "count": 2, "cuts": 4, "moulds": 2, "volume": "300 mL"}`),
			`{"part": "lantern"}`, nil, "", "", "",
		},
		// scaled to 30 pieces: eight trays
		{vessels(`"pieces": 30, `, `{"vessel": "tray", "part": "lantern", "count": 2, "cuts": 4, "moulds": 2, "volume": "300 mL"}`), `{"part": "lantern"}`, []string{"size.vessels[0].moulds"}, "8", "2 moulds", "several batches"},
		// a batch that is there cannot be several
		{
			vessels(`"oils": "1 kg", `, `{"vessel": "cup", "part": "lantern", "count": 12, "moulds": 5, "volume": "45 mL"}`),
			`{"part": "lantern", "share": "100 %"}`,
			[]string{"size.vessels[0].moulds"},
			"12", "5 moulds", "hoped for",
		},
		{vessels("", `{"vessel": "cup", "part": "lantern", "count": 12, "moulds": 5, "volume": "45 mL"}, {"vessel": "jar", "part": "lantern", "count": 2, "volume": "45 mL"}, {"vessel": "tin", "part": "lantern", "count": 12, "moulds": 5, "volume": "45 mL"}`), `{"part": "lantern"}`, []string{"size.vessels[0].moulds", "size.vessels[2].moulds"}, "12", "5 moulds", "several batches"},
	} {
		got := found(inCups().with("size", test.size, "parts", test.parts).batch(t), "moulds-short")
		var subjects []string
		for _, f := range got {
			subjects = append(subjects, f.Subject)
			message := f.Message()
			if f.Severity != note || f.Unit != "moulds" || f.Value.Text(0) != test.value || f.Limit.Text(0)+" "+
				f.Unit != test.limit || !strings.Contains(message, test.says) ||
				strings.Contains(message, "several batches") == strings.Contains(message, "hoped for") {
				t.Errorf("%s: %+v: %s", test.size, f, message)
			}
		}
		if !slices.Equal(subjects, test.subjects) {
			t.Errorf("%s: %q, want %q", test.size, subjects, test.subjects)
		}
	}
}

// Plastic is plastic whatever lies on it; aluminium is warned of where it is there, and
// where nobody said of a film that it is not.
func TestGlitterOnTopAndInThePot(t *testing.T) {
	for _, test := range []struct {
		says    string
		plastic bool
		foil    string // a word of what is said of aluminium
	}{
		{`"glitter": "polymer"`, true, "nothing is said"},
		{`"glitter": "polymer", "aluminium": true`, true, "hydrogen"},
		{`"glitter": "polymer", "aluminium": false`, true, ""},
		{`"glitter": "degradable-tested"`, false, "nothing is said"},
		{`"glitter": "degradable-tested", "aluminium": true`, false, "hydrogen"},
		{`"glitter": "degradable-tested", "aluminium": false`, false, ""},
		{`"glitter": "mineral"`, false, ""},
		{`"glitter": "mineral", "aluminium": true`, false, "hydrogen"},
		{`"glitter": "mineral", "aluminium": false`, false, ""},
	} {
		topping := inCups().with("toppings", `{"topping": "petals", "vessel": "cup", "mass": "0.3 g"}, {"topping": "star dust", "vessel": "cup", "mass": "0.2 g", `+test.says+`}`)
		additive := inCups().with(
			"size", `{"vessels": [{"vessel": "cup", "parts": {"lantern": "50 %", "dusk": "rest"}, "count": 12, "volume": "45 mL"}]}`,
			"parts", `{"part": "lantern"}, {"part": "dusk", "additives": [{"additive": "salt", "load": "1 g"}, {"additive": "star dust", "load": "2 g", `+test.says+`}]}`)
		for subject, p := range map[string]pieces{"toppings[1]": topping, "parts[1].additives[1]": additive} {
			b := p.batch(t)
			plastic, foil := found(b, "glitter-plastic"), found(b, "glitter-aluminium")
			if len(plastic) != map[bool]int{true: 1}[test.plastic] || len(foil) != map[bool]int{true: 1}[test.foil != ""] {
				t.Errorf("%s: %+v, %+v", test.says, plastic, foil)
				continue
			}
			for _, f := range slices.Concat(plastic, foil) {
				if f.Severity != warning || f.Subject != subject || !slices.Equal(f.Names, []string{"star dust"}) ||
					!strings.HasPrefix(f.Message(), "star dust: ") {
					t.Errorf("%s: %+v", test.says, f)
				}
			}
			if test.plastic && (!strings.Contains(plastic[0].Message(), "17 October 2027") ||
				!strings.Contains(plastic[0].Source.Title, "2023/2055")) {
				t.Errorf("%s: %s (%v)", test.says, plastic[0].Message(), plastic[0].Source)
			}
			if test.foil != "" && !strings.Contains(foil[0].Message(), test.foil) {
				t.Errorf("%s: %s", test.says, foil[0].Message())
			}
		}
	}
}

func TestEmbedsAreSaidOnceForAll(t *testing.T) {
	b := inCups().with("embeds", `{"embed": "moon", "vessel": "cup", "mass": "2 g"}, {"embed": "star", "vessel": "cup", "each": 2, "mass": "1 g", "spares": 3}`).batch(t)
	got := found(b, "embeds-present")
	if len(got) != 1 || got[0].Severity != note || got[0].Subject != "embeds" || !slices.Equal(got[0].Names,
		[]string{"moon", "star"}) || got[0].Source.How != cite.CommonPractice {
		t.Fatalf("%+v", got)
	}
	for _, word := range []string{"beforehand", "quarter of an hour", "sweat"} {
		if !strings.Contains(got[0].Message(), word) {
			t.Errorf("%q is not in %s", word, got[0].Message())
		}
	}
	// 12 moons; 24 stars and three
	if len(b.Embeds) != 2 || b.Embeds[0].Count != 12 || b.Embeds[0].Mass != units.Grams(24) || b.Embeds[1].Count != 27 ||
		b.Embeds[1].Mass != units.Grams(27) {
		t.Errorf("%+v", b.Embeds)
	}
}
