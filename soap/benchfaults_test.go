package soap_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
)

// made reads a formula and works it out: the faults of either.
func made(t *testing.T, text string) soap.Faults {
	t.Helper()
	f, faults := read(t, text)
	if len(faults) > 0 {
		return faults
	}
	if _, err := f.Batch(); err != nil {
		return faultsOf(t, err)
	}
	return nil
}

// What is wrong on the bench, and what would be right. Where a limit can be hit
// exactly, what lies on it is allowed.
func TestWhatIsWrongOnABenchIsSaidWithWhatWouldBeRight(t *testing.T) {
	dry := func(rest string) []string { return []string{"alkali", `{"kind": "sodium-hydroxide", ` + rest + `}`} }
	stock := func(strength string) []string { return dry(`"stock": {"strength": ` + strength + `}`) }
	acid := func(lines string) []string { return []string{"acids", lines} }
	liquid := func(lines string) []string {
		return []string{"water", `{"lye_concentration": "33 %", "liquids": [` + lines + `]}`}
	}
	weighed := func(rest string) []string { return []string{"weighed", `{` + rest + `}`} }
	jug := []string{"parts", part("10 g", `{"liquid": "olive", "ratio": "3"}`)}
	for _, test := range []struct {
		change []string
		path   string // "" for no fault
		kind   error
		says   string
	}{
		{[]string{"temperature", `{"oils": "-0.1 °C"}`}, "temperature.oils", soap.ErrRange, "between 0 °C and 100 °C"},
		{[]string{"temperature", `{"lye": "100.1 °C"}`}, "temperature.lye", soap.ErrRange, "between 0 °C and 100 °C"},
		{[]string{"temperature", `{"water": "212.1 °F"}`}, "temperature.water", soap.ErrRange, `"100.06 °C"`},
		{[]string{"temperature", `{"room": "31 °F"}`}, "temperature.room", soap.ErrRange, `"-0.56 °C"`},
		{[]string{"temperature", `{"pour": "273.1 K"}`}, "temperature.pour", soap.ErrRange, "thermometer"},
		{
			[]string{
				"temperature",
				`{"oils": "0 °C", "lye": "100 °C", "water": "32 °F", "room": "212 °F", "pour": "273.15 K"}`,
			},
			"", nil, "",
		},
		{[]string{"temperature", `{"oils": "40"}`}, "temperature.oils", units.ErrUnit, "write °C or °F"},
		{[]string{"temperature", `{"lye": 40}`}, "temperature.lye", soap.ErrFormat, `"40 °C"`},
		{[]string{"temperature", `"40 °C"`}, "temperature", soap.ErrFormat, "oils, lye, water, room, pour"},

		{
			dry(`"purity": "98 %", "stock": {"strength": "50 %"}`), "alkali[0].stock", soap.ErrConflict,
			"purity of a dry alkali, or the strength",
		},
		// a lye of 33 % out of a stock of 33 % takes no other water; one of 32.9 % brings too much
		{stock(`"33 %"`), "", nil, ""},
		{stock(`"32.9 %"`), "alkali[0].stock.strength", soap.ErrImpossible, "take a stronger stock"},
		{stock(`"52.1 %"`), "", nil, ""},
		{stock(`"52.2 %"`), "alkali[0].stock.strength", soap.ErrRange, "52.1 %"},
		{stock(`{"low": "50 %", "high": "52.2 %"}`), "alkali[0].stock.strength", soap.ErrRange, "52.1 %"},
		{stock(`"0 %"`), "alkali[0].stock.strength", soap.ErrRange, "above 0 %"},
		{stock(`{"low": "50 %", "high": "49 %"}`), "alkali[0].stock.strength", soap.ErrRange, "out of order"},
		{stock(`{"low": "50 %"}`), "alkali[0].stock.strength", soap.ErrMissing, "high"},
		{stock(`"50"`), "alkali[0].stock.strength", units.ErrUnit, `"50 %"`},
		{dry(`"stock": {}`), "alkali[0].stock", soap.ErrMissing, `{"strength": "49.6 %"}`},
		{
			[]string{"alkali", `{"kind": "potassium-hydroxide", "purity": {"grade": "usp-nf-35"}}`},
			"alkali[0].purity.typical",
			soap.ErrMissing, "this lot",
		},
		{
			[]string{"alkali", `{"kind": "potassium-hydroxide", "purity": {"grade": "usp-nf-35", "typical": "90 %"}}`},
			"", nil,
			"",
		},
		{
			[]string{"alkali", `{"kind": "potassium-hydroxide", "purity": {"grade": "ph-eur-7"}}`},
			"alkali[0].purity.grade",
			soap.ErrUnknown, "usp-nf-35",
		},
		{dry(`"purity": {"grade": "ph-eur7"}`), "alkali[0].purity.grade", soap.ErrUnknown, "did you mean ph-eur-7?"},
		{
			dry(`"purity": {"grade": "hall"}`), "alkali[0].purity.grade", soap.ErrUnknown,
			"acs-2017, jecfa-2002, ph-eur-7, usp-nf-35",
		},
		{dry(`"purity": {"grade": "ph-eur-7", "low": "97 %"}`), "alkali[0].purity.low", soap.ErrUnknown, "grade, typical"},
		// 97 − 0.7547 × 2 = 95.4906
		{dry(`"purity": {"grade": "ph-eur-7", "typical": "95.4906 %"}`), "", nil, ""},
		{
			dry(`"purity": {"grade": "ph-eur-7", "typical": "95.4905 %"}`), "alkali[0].purity.typical", soap.ErrRange,
			"95.4906 %",
		},

		{
			acid(`{"acid": "lactic-acid", "strength": "80 %", "load": "1 g"}`), "acids[0].compensate", soap.ErrMissing,
			"true to add the alkali",
		},
		{
			acid(`{"acid": "lactic-acid", "strength": "80 %", "load": "1 g", "compensate": "yes"}`), "acids[0].compensate",
			soap.ErrFormat, "true or false",
		},
		{
			acid(`{"acid": "lactic-acid", "strength": "80 %", "load": "1 g", "compensate": 1}`), "acids[0].compensate",
			soap.ErrFormat, "true or false",
		},
		{
			acid(`{"acid": "lactic-acid", "strength": "80 %", "load": "1 g", "compensate": null}`), "acids[0].compensate",
			soap.ErrFormat, "true or false",
		},
		// 180.5 g of KOH is there; 300 g of it take 300 × 3 × 56.105/192.123 = 262.82 g,
		// 206.1 g take 180.559 g and 206 g take 180.472 g
		{
			acid(`{"acid": "citric-acid-anhydrous", "load": "300 g", "compensate": false}`), "acids", soap.ErrImpossible,
			`"262.82 g" of KOH is what they take up, more than the 180.5 g`,
		},
		{
			acid(`{"acid": "citric-acid-anhydrous", "load": "206.1 g", "compensate": false}`), "acids", soap.ErrImpossible,
			`"compensate": true`,
		},
		{acid(`{"acid": "citric-acid-anhydrous", "load": "206 g", "compensate": false}`), "", nil, ""},
		{acid(`{"acid": "citric-acid-anhydrous", "load": "300 g", "compensate": true}`), "", nil, ""},
		// 95 % of 500 g; the acid asks for 25 × 39.997/60.052 g of alkali more, and water for it
		{
			acid(`{"acid": "acetic-acid", "load": "500 g", "strength": "5 %", "compensate": true}`), "acids", soap.ErrImpossible,
			`"475 g" of water is in them`,
		},
		{
			acid(`{"acid": "citric-acid-anhydros", "load": "1 g", "compensate": true}`), "acids[0].acid", soap.ErrUnknown,
			"did you mean citric-acid-anhydrous",
		},
		{acid(`{"load": "1 g", "compensate": true}`), "acids[0].acid", soap.ErrMissing, "lactic-acid"},
		{
			acid(`{"acid": "lactic-acid", "strength": "80 %", "compensate": true}`), "acids[0].load", soap.ErrMissing,
			"of batter",
		},
		{
			acid(`{"acid": "lactic-acid", "load": "1 g", "strength": "100.1 %", "compensate": true}`), "acids[0].strength",
			soap.ErrRange, "at most 100 %",
		},
		{
			acid(`{"acid": "lactic-acid", "load": "1 g", "strength": "0 %", "compensate": true}`), "acids[0].strength",
			soap.ErrRange, "above 0 %",
		},
		{acid(`{"acid": "lactic-acid", "strength": "80 %", "load": "1 g", "compensate": true}, {"acid": "lactic-acid", "strength": "80 %", "load": "2 g", "compensate": true}`), "acids[1].acid", soap.ErrConflict, "first at acids[0]"},
		{acid(`{"acid": "anhydrous citric acid", "load": "1 g", "compensate": true}, {"acid": "citric-acid-anhydrous",
			"load": "2 g", "compensate": true}`), "acids[1].acid", soap.ErrConflict, "first at acids[0]"},

		{
			liquid(`{"liquid": "milk", "share": "50 %", "mass": "10 g", "water": "87 %"}`), "water.liquids[0]", soap.ErrConflict,
			`"share" (of the water asked for) or "mass"`,
		},
		{
			liquid(`{"liquid": "milk", "water": "87 %"}`), "water.liquids[0]", soap.ErrMissing,
			`"share" (of the water asked for) or "mass"`,
		},
		{liquid(`{"share": "50 %", "water": "87 %"}`), "water.liquids[0].liquid", soap.ErrMissing, ""},
		{liquid(`{"liquid": "milk", "share": "50 %"}`), "water.liquids[0].water", soap.ErrMissing, "label"},
		{liquid(`{"liquid": "milk", "share": "50 %", "water": "0 %"}`), "water.liquids[0].water", soap.ErrRange, "above 0 %"},
		{
			liquid(`{"liquid": "milk", "share": "50 %", "water": "87 %", "fat": "4 %"}`), "water.liquids[0].saponification",
			soap.ErrMissing, "the liquid has fat",
		},
		{
			liquid(`{"liquid": "milk", "share": "50 %", "water": "87 %", "fat": "0 %", "saponification": "225"}`),
			"water.liquids[0].saponification", soap.ErrConflict, "no fat",
		},
		{
			liquid(`{"liquid": "milk", "share": "50 %", "water": "87 %", "fat": "4 %", "saponification": "0.2"}`),
			"water.liquids[0].saponification", soap.ErrRange, "5 and 450",
		},
		{liquid(`{"liquid": "milk", "share": "50 %", "water": "90 %", "fat": "4 %", "sugar": "4 %", "alcohol": "2 %", "saponification": "225"}`), "", nil, ""},
		{liquid(`{"liquid": "milk", "share": "50 %", "water": "87 %", "fat": "4 %", "saponification": {"low": "5", "high": "450"}}`), "", nil, ""},
		{liquid(`{"liquid": "milk", "share": "50 %", "water": "90 %", "fat": "4 %", "sugar": "4 %", "alcohol": "2.1 %", "saponification": "225"}`), "water.liquids[0]", soap.ErrRange, `"100.1 %"`},
		{
			liquid(`{"liquid": "milk", "share": "60 %", "water": "87 %"}, {"liquid": "ale", "share": "40 %", "water": "95 %"}`),
			"", nil, "",
		},
		{liquid(`{"liquid": "milk", "share": "60 %", "water": "87 %"}, {"liquid": "ale", "share": "40.1 %", "water": "95 %"}`), "water.liquids", soap.ErrRange, `"100.1 %"`},
		{
			liquid(`{"liquid": "milk", "share": "60 %", "water": "87 %"}, {"liquid": "milk", "share": "30 %", "water": "95 %"}`),
			"water.liquids[1].liquid", soap.ErrConflict, "first at water.liquids[0]",
		},
		// 0.87 × 400 g; of a lye of 33 %, 128.7 g of alkali ask for 261.4 g
		{
			liquid(`{"liquid": "milk", "mass": "400 g", "water": "87 %"}`), "water.liquids", soap.ErrImpossible,
			`"348 g" of water is in them, more than the 261.39 g`,
		},
		{
			liquid(`{"liquid": "cream", "share": "90 %", "water": "5 %", "fat": "90 %", "saponification": "225"}`),
			"water.liquids", soap.ErrImpossible, "less fat",
		},

		// each oil is 500 g
		{weighed(`"stage": "lye", "oils": {"hall-blend": "1500 g"}`), "", nil, ""},
		{
			weighed(`"stage": "lye", "oils": {"hall-blend": "1500.000001 g"}`), "weighed.oils.hall-blend", soap.ErrRange,
			"slipped point",
		},
		{
			weighed(`"stage": "lye", "alkali": {"sodium-hydroxide": "1287 g"}`), "weighed.alkali.sodium-hydroxide",
			soap.ErrRange, "128.7",
		},
		{weighed(`"stage": "lye", "water": "2613 g"`), "weighed.water", soap.ErrRange, "261.39 g"},
		{
			weighed(`"stage": "parts", "parts": {"lantern": {"batter": "13901 g"}}`), "weighed.parts.lantern.batter",
			soap.ErrRange, "1390.13 g",
		},
		{slices.Concat(weighed(`"stage": "parts", "parts": {"lantern": {"carriers": {"olive": "90 g"}}}`), jug), "", nil, ""},
		{
			slices.Concat(weighed(`"stage": "parts", "parts": {"lantern": {"carriers": {"olive": "90.000001 g"}}}`), jug),
			"weighed.parts.lantern.carriers.olive", soap.ErrRange, "30 g",
		},
		{weighed(`"stage": "pots"`), "weighed.stage", soap.ErrUnknown, "did you mean pot"},
		{weighed(`"stage": "oven"`), "weighed.stage", soap.ErrUnknown, "lye or pot or parts or moulds"},
		{weighed(`"oils": {"hall-blend": "500 g"}`), "weighed.stage", soap.ErrMissing, "lye, pot, parts or moulds"},
		{weighed(`"water": "0 g"`), "weighed.stage", soap.ErrMissing, "lye, pot, parts or moulds"},
		{
			weighed(`"stage": "lye", "oils": {"hal-blend": "500 g"}`), "weighed.oils.hal-blend", soap.ErrUnknown,
			"did you mean hall-blend",
		},
		{
			weighed(`"stage": "lye", "oils": {"olive": "500 g"}`), "weighed.oils.olive", soap.ErrUnknown,
			"not an oil of this formula",
		},
		{
			weighed(`"stage": "lye", "alkali": {"potassium-hydroxide": "5 g"}`), "weighed.alkali.potassium-hydroxide",
			soap.ErrUnknown, "not an alkali of this formula",
		},
		{
			weighed(`"stage": "lye", "alkali": {"sodium-hydroxid": "5 g"}`), "weighed.alkali.sodium-hydroxid", soap.ErrUnknown,
			"did you mean sodium-hydroxide?",
		},
		{
			weighed(`"stage": "parts", "parts": {"lanten": {"batter": "500 g"}}`), "weighed.parts.lanten", soap.ErrUnknown,
			"not a part",
		},
		{
			weighed(`"stage": "parts", "parts": {"lantern": {"carriers": {"water": "5 g"}}}`),
			"weighed.parts.lantern.carriers.water", soap.ErrUnknown, "not a carrier",
		},
		{
			weighed(`"stage": "parts", "parts": {"lantern": {"batr": "5 g"}}`), "weighed.parts.lantern.batr", soap.ErrUnknown,
			"batter",
		},
		{weighed(`"stage": "pot", "oils": {"hall-blend": "-1 g"}`), "weighed.oils.hall-blend", units.ErrSize, "negative"},
		{weighed(`"stage": "pot", "oils": {"hall-blend": "0 g"}`), "", nil, ""}, // it was forgotten
		{
			weighed(`"stage": "pot", "oils": {"hall-blend": "0 g", "yard-blend": "0 g"}`), "weighed", soap.ErrImpossible,
			"no oil for the alkali",
		},
		{
			weighed(`"stage": "pot", "oils": {"hall-blend": "500 g", "hall-blend": "500 g"}`), "weighed.oils.hall-blend",
			soap.ErrFormat, "twice",
		},
		{weighed(`"stage": "pot", "oils": ["hall-blend"]`), "weighed.oils", soap.ErrFormat, `{"olive": "366 g"}`},
		{weighed(`"stage": "pot", "water": 230`), "weighed.water", soap.ErrFormat, "366 g"},
		{weighed(`"stage": "pot", "parts": ["lantern"]`), "weighed.parts", soap.ErrFormat, "batter"},
	} {
		faults := made(t, plainFormula().with(test.change...).text())
		if test.path == "" {
			if len(faults) > 0 {
				t.Errorf("%v: %v", test.change, faults)
			}
			continue
		}
		if len(faults) != 1 || faults[0].Path != test.path || !errors.Is(faults[0], test.kind) ||
			!strings.Contains(faults[0].Sentence(), test.says) {
			t.Errorf("%v: want %s, %v, %q; got %v", test.change, test.path, test.kind, test.says, faults)
		}
	}
}

func TestMoreLinesThanABenchHoldsAreRefused(t *testing.T) {
	lines := func(n int, line string) string { return strings.TrimSuffix(strings.Repeat(line+", ", n), ", ") }
	for path, changes := range map[string][]string{
		"acids": {"acids", lines(21, `{"acid": "lactic-acid", "strength": "80 %", "load": "1 g", "compensate": true}`)},
		"water.liquids": {"water", `{"lye_concentration": "33 %", "liquids": [` +
			lines(21, `{"liquid": "milk", "mass": "1 g", "water": "87 %"}`) + `]}`},
	} {
		if _, faults := read(t, plainFormula().with(changes...).text()); !slices.Contains(paths(faults), path) ||
			!strings.Contains(faults.Error(), "20") {
			t.Errorf("%s: %v", path, faults)
		}
	}
}

// What a file cannot say, a program can.
func TestATypedBenchIsChecked(t *testing.T) {
	lactic, err := lye.LookUpAcid("lactic-acid")
	if err != nil {
		t.Fatal(err)
	}
	unnamed, neutral := lactic, lactic
	unnamed.ID, neutral.ID, neutral.Protons = "", "salt", 0
	load, strength := soap.Load{Mass: units.Grams(1)}, units.Exactly(units.Percent(80))
	f := lanternBars()
	f.Acids = []soap.AcidLine{
		{Acid: unnamed, Load: load, Strength: strength, Compensate: soap.Compensated},
		{Acid: neutral, Load: load, Strength: strength, Compensate: soap.Compensated},
		{Acid: lactic, Load: load, Strength: strength},
		{Acid: lactic, Load: load, Strength: strength, Compensate: soap.Compensation(9)}, // twice, and neither
	}
	f.Alkalis[0].Stock = units.Exactly(units.Percent(50)) // beside a purity
	f.Water.Liquids = []soap.LiquidLine{{}}
	f.Weighed = soap.Weighed{
		Stage: soap.AtPot,
		Oils:  []soap.WeighedOil{{Oil: "hall-blend", Mass: units.Grams(1)}, {Oil: "hall-blend", Mass: units.Grams(2)}},
		Alkalis: []soap.WeighedAlkali{{Alkali: soap.PotassiumHydroxide}, {
			Alkali: soap.SodiumHydroxide,
			Mass:   units.Grams(-1),
		}},
		Water: soap.Read(units.Grams(-1)),
		Parts: []soap.WeighedPart{{Part: "whole"}, {Part: "whole"}, {Part: "glow"}},
	}
	want := []string{
		"alkali[0].stock",
		"water.liquids[0].liquid", "water.liquids[0].water",
		"acids[0].acid", "acids[1].acid", "acids[2].compensate", "acids[3].acid", "acids[3].compensate",
		"weighed.oils.hall-blend", "weighed.alkali.potassium-hydroxide", "weighed.alkali.sodium-hydroxide", "weighed.water",
		"weighed.parts.whole", "weighed.parts.glow",
	}
	got := paths(faultsOf(t, f.Check()))
	slices.Sort(got)
	slices.Sort(want)
	if !slices.Equal(got, want) {
		t.Errorf("got\n%v, want\n%v", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	f = lanternBars()
	f.Weighed.Stage = soap.Stage(9)
	if got := paths(faultsOf(t, f.Check())); !slices.Equal(got, []string{"weighed.stage"}) {
		t.Errorf("a stage that is none: %v", got)
	}
	if soap.Stage(9).String() != "" || soap.NotWeighed.String() != "" {
		t.Error("a stage that is none has a name")
	}
}

// A fat without a range counts as exact, and the outlook says so.
func TestAFatWithoutARangeLeavesTheOutlookIncomplete(t *testing.T) {
	for value, complete := range map[string]bool{
		`{"low": "218", "high": "235"}`: true, `"225"`: false,
		`{"low": "225", "high": "225"}`: false,
	} {
		b := plainFormula().with("water", `{"lye_concentration": "33 %", "liquids": [{"liquid": "milk", "share": "50 %", "water": "87 %", "fat": "4 %", "saponification": `+value+`}]}`).batch(t)
		if b.Superfat.Complete != complete || b.Parts[0].Superfat.Complete != complete {
			t.Errorf("%s: complete %v, %v", value, b.Superfat.Complete, b.Parts[0].Superfat.Complete)
		}
	}
}
