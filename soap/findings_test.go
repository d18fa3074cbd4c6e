package soap_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// A plain formula without a single finding, in pieces that a test replaces.
type pieces map[string]string

func plainFormula() pieces {
	return pieces{
		"oils": `{"oil": "hall-blend", "share": "50 %", "saponification": {"low": "189", "high": "191"}},
		         {"oil": "yard-blend", "share": "50 %", "saponification": {"low": "189", "high": "191"}}`,
		"alkali":   `{"kind": "sodium-hydroxide", "purity": {"low": "99.9 %", "high": "100 %"}}`,
		"superfat": `"5 %"`,
		"water":    `{"lye_concentration": "33 %"}`,
		"size":     `{"oils": "1000 g"}`,
		"scale":    `"1 mg"`,
		"parts":    `{"part": "lantern", "share": "100 %"}`,
	}
}

func (p pieces) with(changes ...string) pieces {
	for i := 0; i < len(changes); i += 2 {
		p[changes[i]] = changes[i+1]
	}
	return p
}

func (p pieces) text() string {
	var b strings.Builder
	b.WriteString(`{"formula": "Lantern walk"`)
	for _, key := range []string{
		"note", "oils", "alkali", "superfat", "water", "size", "scale", "markets", "materials",
		"gel", "pigments", "swatches", "parts", "acids", "temperature", "embeds", "toppings", "weighed",
	} {
		value := p[key]
		if slices.Contains([]string{"oils", "alkali", "parts"}, key) ||
			slices.Contains([]string{"markets", "materials", "pigments", "acids", "embeds", "toppings"}, key) && value != "" {
			value = "[" + value + "]"
		}
		if value != "" {
			b.WriteString(", \"" + key + "\": " + value)
		}
	}
	return b.String() + "}"
}

func (p pieces) batch(t *testing.T) soap.Batch {
	t.Helper()
	f, err := soap.ReadFormula(strings.NewReader(p.text()))
	if err != nil {
		t.Fatalf("%v\n%s", err, p.text())
	}
	b, err := f.Batch()
	if err != nil {
		t.Fatalf("%v\n%s", err, p.text())
	}
	return b
}

func TestAPlainFormulaHasNoFindings(t *testing.T) {
	if found := plainFormula().batch(t).Findings; len(found) != 0 {
		t.Errorf("%+v", found)
	}
}

// part gives one part with a colourant of a load, in a carrier.
func part(load, carrier string) string {
	if carrier != "" {
		carrier = `, "carrier": ` + carrier
	}
	return `{"part": "lantern", "share": "100 %", "colourants": [{"colourant": "dusk", "unlisted": true, "load": "` +
		load + `"` + carrier + `}]}`
}

const (
	note    = soap.Note
	warning = soap.Warning
	danger  = soap.Danger
)

// Every row of the table of findings, on both sides of its trigger. An empty
// subject means that the code must not be found.
func TestEachFindingFiresBeyondItsTriggerAndNotBefore(t *testing.T) {
	oil := func(rest string) string {
		return `{"oil": "hall-blend", "share": "50 %", "saponification": {"low": "189", "high": "191"}}, ` + rest
	}
	single := func(id string) string { return oil(`{"oil": "` + id + `", "share": "50 %"}`) }
	beeswax := func(share string) string {
		return `{"oil": "hall-blend", "share": "rest", "saponification": {"low": "189", "high": "191"}}, {"oil": "beeswax", "share": "` + share + `"}`
	}
	// Half of each of two oils, each 189 to 191: 2u = 2 × √2 × (0.5/190)/√3 ×
	// (1 − superfat) = 0.42974 % × (1 − superfat); the purity is one figure and a
	// milligram on either scale counts for nothing here.
	exact := `{"kind": "sodium-hydroxide", "purity": "100 %"}`
	for _, test := range []struct {
		name          string
		code          string
		change        []string
		severity      soap.Severity
		subject       string
		value, limit  string // in the finding's unit, to four decimals
		unit, mention string
	}{
		// 0.43 − 0.42974 × 0.9957 = +0.0021
		{
			"likely low above zero", "superfat-likely-negative",
			[]string{"superfat", `"0.43 %"`, "alkali", exact},
			0, "", "",
			"", "", "",
		},
		// 0.42 − 0.42974 × 0.9958 = −0.0079
		{
			"likely low below zero", "superfat-likely-negative",
			[]string{"superfat", `"0.42 %"`, "alkali", exact},
			danger,
			"parts[0]", "-0.0079", "0", "%", "lantern",
		},
		// worst: 1 − 0.9947 × 190/189 = +0.0036 %, less what two milligrams do (0.0001 + 0.0007)
		{
			"worst case above zero", "free-alkali-worst",
			[]string{"superfat", `"0.53 %"`, "alkali", exact},
			0, "", "", "", "",
			"",
		},
		// alkali 0.9989 × 190 × 39.997/56.105 = 135.30114 g and a milligram; demand at
		// the low end (1000 − 2 × 0.001) × 0.189 × 39.997/56.105 = 134.73697 g; of
		// 1135.30114 g dry that leaves 0.0498 %
		{
			"free alkali within the limit", "free-alkali-worst",
			[]string{"superfat", `"0.11 %"`, "alkali", exact},
			note,
			"parts[0]", "0.0498", "0.05", "%", "lantern",
		},
		// 0.999 × … = 135.31469 g: 0.57872 of 1135.31469 g
		{
			"free alkali beyond the limit", "free-alkali-worst",
			[]string{"superfat", `"0.1 %"`, "alkali", exact},
			warning,
			"parts[0]", "0.051", "0.05", "%", "lantern",
		},
		// 50.5 % of the demand in alkali; 10 g of oil on 1000 g: 50.5 × (1 − 1/1.01) = 0.5 points
		{"a part moved by half a point", "part-superfat-shifted", []string{
			"superfat", `"49.5 %"`, "parts",
			part("5 g", `{"liquid": "hall-blend", "ratio": "2", "from": "extra"}`),
		}, 0, "", "", "", "", ""},
		// 10.0005 g: 50.5 × (1 − 1/1.0100005) = 0.50002
		{
			"a part moved by more", "part-superfat-shifted",
			[]string{
				"superfat", `"49.5 %"`, "parts",
				part("5 g", `{"liquid": "hall-blend", "ratio": "2.0001", "from": "extra"}`),
			},
			note, "parts[0]", "0.5", "0.5",
			"points", "lantern",
		},
		{"superfat of 2 %", "superfat-unusual", []string{"superfat", `"2 %"`}, 0, "", "", "", "", ""},
		{
			"superfat below 2 %", "superfat-unusual",
			[]string{"superfat", `"1.9999 %"`},
			note, "superfat", "1.9999", "2", "%",
			"",
		},
		{"superfat of 10 %", "superfat-unusual", []string{"superfat", `"10 %"`}, 0, "", "", "", "", ""},
		{
			"superfat above 10 %", "superfat-unusual",
			[]string{"superfat", `"10.0001 %"`},
			note, "superfat", "10.0001", "10",
			"%", "",
		},
		{"a purity given", "purity-assumed", nil, 0, "", "", "", "", ""},
		{
			"no purity", "purity-assumed",
			[]string{"alkali", `{"kind": "sodium-hydroxide"}`},
			warning, "alkali[0]", "100",
			"95.5", "%", "Sodium hydroxide",
		},
		{"a purity with a range", "purity-single", nil, 0, "", "", "", "", ""},
		{
			"an assumed purity is not a single one", "purity-single",
			[]string{"alkali", `{"kind": "sodium-hydroxide"}`},
			0, "",
			"", "", "", "",
		},
		{"one purity", "purity-single", []string{"alkali", exact}, note, "alkali[0]", "100", "", "%", "Sodium hydroxide"},
		{
			"a range of no width", "purity-single",
			[]string{
				"alkali",
				`{"kind": "sodium-hydroxide", "purity": {"low": "98 %", "high": "98 %"}}`,
			},
			note, "alkali[0]", "98", "", "%",
			"Sodium hydroxide",
		},
		{"an oil with a range", "range-missing", []string{"oils", single("olive")}, 0, "", "", "", "", ""},
		{
			"an oil of one sample", "range-missing",
			[]string{"oils", single("neem")},
			warning, "oils[1]", "194.9544", "",
			"mg KOH/g", "Neem oil",
		},
		{
			"an oil without a value", "range-missing",
			[]string{"oils", single("goose-fat")},
			warning, "oils[1]", "194.4054", "",
			"mg KOH/g", "Goose fat",
		},
		{
			"such an oil with a value of one's own", "range-missing",
			[]string{"oils", oil(`{"oil": "goose-fat", "share": "50 %", "saponification": "194"}`)},
			0, "", "", "", "", "",
		},
		{"a capped value", "value-computed", []string{"oils", single("coconut")}, 0, "", "", "", "", ""},
		{
			"a computed value", "value-computed",
			[]string{"oils", single("goose-fat")},
			warning, "oils[1]", "194.4054", "",
			"mg KOH/g", "Goose fat",
		},
		// pure triolein, 3 × 56105/885.453 = 190.08914
		{
			"an own composition", "value-computed",
			[]string{
				"oils",
				oil(`{"oil": "pressed", "share": "50 %", "profile": {"C18:1": "100 %"}}`),
			},
			warning, "oils[1]", "190.0891", "",
			"mg KOH/g", "pressed",
		},
		{"an own value with a range", "saponification-single", nil, 0, "", "", "", "", ""},
		{
			"an own value without one", "saponification-single",
			[]string{"oils", oil(`{"oil": "pressed", "share": "50 %", "saponification": "190"}`)},
			note, "oils[1]", "190", "",
			"mg KOH/g", "pressed",
		},
		{"an own oil", "saponification-replaced", nil, 0, "", "", "", "", ""},
		{
			"an own value on a built-in oil", "saponification-replaced",
			[]string{"oils", oil(`{"oil": "olive", "share": "50 %", "saponification": {"low": "189", "high": "192"}}`)},
			note,
			"oils[1]", "190.5", "", "mg KOH/g", "Olive oil",
		},
		// middle 191.5 against 194.307468: 1.466 %
		{
			"middle and acids 1.47 % apart", "typical-disputed",
			[]string{"oils", single("cocoa-butter")},
			0, "", "", "", "",
			"",
		},
		// 187.5 against 190.547239: 1.6252 %
		{
			"middle and acids 1.63 % apart", "typical-disputed",
			[]string{"oils", single("canola")},
			note, "oils[1]", "1.6252",
			"1.5", "%", "canola",
		},
		{
			"but with an own value", "typical-disputed",
			[]string{"oils", oil(`{"oil": "canola", "share": "50 %", "saponification": {"low": "186", "high": "190"}}`)},
			0, "",
			"", "", "", "",
		},
		{"no wax", "wax-reacts-slowly", nil, 0, "", "", "", "", ""},
		{"a wax up to 3 %", "wax-reacts-slowly", []string{"oils", beeswax("3 %")}, note, "oils", "3", "3", "%", "Beeswax"},
		{
			"a wax above 3 %", "wax-reacts-slowly",
			[]string{"oils", beeswax("3.0001 %")},
			warning, "oils", "3.0001", "3", "%",
			"Beeswax",
		},
		{"figures that were read", "figure-from-memory", []string{"oils", single("olive")}, 0, "", "", "", "", ""},
		{
			"a figure recalled", "figure-from-memory",
			[]string{"oils", single("palm-kernel")},
			note, "oils", "", "", "",
			"Palm kernel oil",
		},
		{
			"capped by a composition recalled", "figure-from-memory",
			[]string{"oils", single("lard")},
			note, "oils", "", "", "",
			"Lard (pure rendered)",
		},
		{
			"a jug of it", "figure-from-memory",
			[]string{"parts", part("5 g", `{"liquid": "palm-kernel", "ratio": "2"}`)},
			note,
			"oils", "", "", "", "Palm kernel oil",
		},
		{"lye of 45 %", "lye-strong", []string{"water", `{"lye_concentration": "45 %"}`}, 0, "", "", "", "", ""},
		{
			"lye above 45 %", "lye-strong",
			[]string{"water", `{"lye_concentration": "45.0001 %"}`},
			note, "water", "45.0001",
			"45", "%", "",
		},
		{"lye of 25 %", "lye-weak", []string{"water", `{"lye_concentration": "25 %"}`}, 0, "", "", "", "", ""},
		{
			"lye below 25 %", "lye-weak",
			[]string{"water", `{"lye_concentration": "24.9999 %"}`},
			note, "water", "24.9999",
			"25", "%", "",
		},
		// a gram on a division of 1.02 g is weighed as 1.02 g: 2 % exactly
		{"a colourant changed by 2 %", "rounding-coarse", []string{
			"scale", `{"oils": "1 mg", "small": "1.02 g"}`, "parts",
			part("1 g", ""),
		}, 0, "", "", "", "", ""},
		{"a colourant changed by more", "rounding-coarse", []string{
			"scale", `{"oils": "1 mg", "small": "1.0201 g"}`, "parts",
			part("1 g", ""),
		}, note, "parts[0].colourants[0]", "2.01", "2", "%", "dusk"},
		{
			"a carrier changed by more", "rounding-coarse",
			[]string{
				"scale", `{"oils": "1 mg", "small": "1.0201 g"}`, "parts",
				part("51.005 g", `{"liquid": "glycerin", "ratio": "0.019605921"}`),
			},
			note, "parts[0].colourants[0].carrier", "2.01",
			"2", "%", "glycerin",
		},
		// the first oil is 1 g of 1000 g
		{"an oil changed by more", "rounding-coarse", []string{
			"scale", `{"oils": "1.0201 g", "small": "1 mg"}`, "oils",
			`{"oil": "hall-blend", "share": "0.1 %", "saponification": {"low": "189", "high": "191"}}, {"oil": "yard-blend",
				"share": "rest", "saponification": {"low": "189", "high": "191"}}`,
		}, note, "oils[0]", "2.01", "2", "%", "hall-blend"},
		// 128.7 g of alkali down to 120 g: 8.7/128.67763 = 6.7437 %
		{"alkali changed by more", "rounding-coarse", []string{
			"scale", `{"oils": "1 mg", "small": "20 g"}`, "water",
			`{"per_oils": "28 %"}`,
		}, note, "alkali[0]", "", "2", "%", "Sodium hydroxide"},
		// 245 g to 250 g on a scale of 10 g: 2.0408 %
		{"water changed by more", "rounding-coarse", []string{
			"scale", `{"oils": "1 mg", "small": "10 g"}`, "water",
			`{"per_oils": "24.5 %"}`,
		}, note, "water", "2.0408", "2", "%", "water"},
		// 0.4 g on a scale of 1 g
		{"a line that rounds to nothing", "rounding-coarse", []string{
			"scale", `{"oils": "1 mg", "small": "1 g"}`, "parts",
			part("0.4 g", ""),
		}, warning, "parts[0].colourants[0]", "100", "2", "%", "dusk"},
		// 0.99 g of a fragrance is rounded down, where a colourant would be 1 g
		{"a fragrance rounded down to nothing", "rounding-coarse", []string{
			"scale", `{"oils": "1 mg", "small": "1 g"}`,
			"parts", `{"part": "lantern", "share": "100 %", "fragrances": [{"fragrance": "pear", "unlisted": true,
				"load": "0.99 g"}]}`,
		}, warning, "parts[0].fragrances[0]", "100", "2", "%", "pear"},
		{"no addition", "colourant-unjudged", nil, 0, "", "", "", "", ""},
		{
			"a colourant", "colourant-unjudged",
			[]string{"parts", part("1 g", "")},
			warning, "parts[0].colourants[0]", "", "",
			"", "dusk",
		},
		{"a colourant is no fragrance", "fragrance-unjudged", []string{"parts", part("1 g", "")}, 0, "", "", "", "", ""},
		{
			"a fragrance", "fragrance-unjudged",
			[]string{
				"parts",
				`{"part": "lantern", "share": "100 %", "fragrances": [{"fragrance": "pear", "unlisted": true, "load": "1 g"}]}`,
			},
			warning, "parts[0].fragrances[0]", "", "", "", "pear",
		},
		{
			"an additive", "additive-unjudged",
			[]string{
				"parts",
				`{"part": "lantern", "share": "100 %", "additives": [{"additive": "salt", "load": "1 g"}]}`,
			},
			note,
			"parts[0].additives[0]", "", "", "", "salt",
		},
		// 34.25 % is a row of the phase diagram: 10.1 °C, of which 1 K is 11.1 °C
		{"a lye above what it crystallises at", "lye-crystallises", []string{
			"alkali", exact, "water",
			`{"lye_concentration": "34.25 %"}`, "temperature", `{"lye": "11.100001 °C"}`,
		}, 0, "", "", "", "", ""},
		{"a lye within 1 K of it", "lye-crystallises", []string{
			"alkali", exact, "water", `{"lye_concentration": "34.25 %"}`,
			"temperature", `{"lye": "11.1 °C"}`,
		}, warning, "temperature.lye", "1110", "1010", "°C", "crystallise"},
		{"a lye whose temperature nobody took", "lye-crystallises", []string{
			"alkali", exact, "water",
			`{"lye_concentration": "34.25 %"}`, "temperature", `{"oils": "5 °C"}`,
		}, 0, "", "", "", "", ""},
		// Published bounds of a lye of 1 : 2 that boils at 121 °C: 108.2 °C from 20 °C,
		// and from 25 °C 109 °C by a heat of solution that is 3.8 K too small
		{"a lye that stays 10 K below boiling", "lye-hot", []string{
			"alkali", exact, "water", `{"per_alkali": "2"}`,
			"temperature", `{"water": "20 °C", "room": "20 °C"}`,
		}, 0, "", "", "", "", ""},
		{"a lye that comes within 10 K", "lye-hot", []string{
			"alkali", exact, "water", `{"per_alkali": "2"}`, "temperature",
			`{"water": "25 °C", "room": "25 °C"}`,
		}, warning, "temperature.water", "", "11100", "°C", "ice"},
		{"a lye of which nothing is known", "lye-hot", []string{
			"alkali", exact, "water", `{"per_alkali": "2"}`,
			"temperature", `{"lye": "99 °C"}`,
		}, 0, "", "", "", "", ""},
		// 10 % KOH: 1.78 mol × 57.8 kJ = 103 kJ/kg, some 28 K; 45 %: 8.02 mol, 464 kJ/kg
		{"a weak potash lye", "lye-hot", []string{
			"alkali", evenAlkali, "water", `{"lye_concentration": "10 %"}`,
			"temperature", `{"water": "25 °C"}`,
		}, 0, "", "", "", "", ""},
		{"a strong potash lye", "lye-hot", []string{
			"alkali", evenAlkali, "water", `{"lye_concentration": "45 %"}`,
			"temperature", `{"water": "25 °C"}`,
		}, warning, "temperature.water", "", "10000", "°C", "ice"},
		// 10 °F are 5.555556 K; 104 °F is 40 °C
		{
			"oils and lye 10 °F apart", "temperatures-apart",
			[]string{"temperature", `{"oils": "104 °F", "lye": "114 °F"}`},
			0,
			"", "", "", "", "",
		},
		{
			"the other way round", "temperatures-apart",
			[]string{"temperature", `{"oils": "100 °F", "lye": "90 °F"}`},
			0, "",
			"", "", "", "",
		},
		{
			"oils and lye further apart", "temperatures-apart",
			[]string{"temperature", `{"oils": "40 °C", "lye": "45.555557 °C"}`},
			note, "temperature", "555.5557", "555.5556",
			"K", "",
		},
		{
			"the colder lye further apart", "temperatures-apart",
			[]string{"temperature", `{"oils": "40 °C", "lye": "34.4 °C"}`},
			note, "temperature", "560", "555.5556", "K", "",
		},
		{
			"an acid that alkali is added for", "acid-compensated",
			[]string{"acids", `{"acid": "citric-acid-anhydrous", "load": "1 % of oils", "compensate": true}`},
			note, "acids[0]",
			"", "", "", "Citric acid, anhydrous",
		},
		{
			"an acid that it is not added for", "acid-compensated",
			[]string{"acids", `{"acid": "citric-acid-anhydrous", "load": "1 % of oils", "compensate": false}`},
			0, "", "", "",
			"", "",
		},
		// The oils need 1000 g × 0.190 × 39.997/56.105 × 0.95 = 128.6776 g of NaOH, a ninth of which is
		// 14.2975 g: by citric acid (three protons, 192.124 g/mol) 14.2975 × 192.124/(3 × 39.997) = 22.8925 g.
		// Acetic acid (one, 60.052), 80 g: 53.2832 g of 181.9608 g is 29.2828 %; 8 g: 5.3283 of 134.0059, 4 %.
		{
			"an acid that takes a tenth", "acid-unusual",
			[]string{"acids", `{"acid": "citric-acid-anhydrous", "load": "22.892 g", "compensate": true}`},
			0, "", "", "", "",
			"",
		},
		{
			"an acid that takes more", "acid-unusual",
			[]string{"acids", `{"acid": "citric-acid-anhydrous", "load": "22.893 g", "compensate": true}`},
			warning, "acids[0]",
			"10.0002", "10", "%", "burn skin",
		},
		{"vinegar of 8 %", "acid-unusual", []string{
			"acids",
			`{"acid": "acetic-acid", "load": "10 % of oils", "strength": "8 %", "compensate": true}`,
		}, 0, "", "", "", "", ""},
		{
			"vinegar of 80 %", "acid-unusual",
			[]string{
				"acids",
				`{"acid": "acetic-acid", "load": "10 % of oils", "strength": "80 %", "compensate": true}`,
			},
			warning, "acids[0]",
			"29.2828", "10", "%", "strength against the label",
		},
		{
			"as much that alkali is not added for", "acid-unusual",
			[]string{"acids", `{"acid": "citric-acid-anhydrous", "load": "22.893 g", "compensate": false}`},
			0, "", "", "", "",
			"",
		},
		{"a liquid without sugar", "liquid-sugar", []string{
			"water",
			`{"lye_concentration": "33 %", "liquids": [{"liquid": "hall tea", "share": "50 %", "water": "99 %",
				"sugar": "0 %"}]}`,
		}, 0, "", "", "", "", ""},
		{"a liquid with sugar", "liquid-sugar", []string{
			"water",
			`{"lye_concentration": "33 %", "liquids": [{"liquid": "hall tea", "share": "50 %", "water": "99 %",
				"sugar": "0.1 %"}]}`,
		}, note, "water.liquids[0]", "0.1", "", "%", "hall tea"},
		{
			"a liquid without alcohol", "liquid-alcohol",
			[]string{"water", `{"lye_concentration": "33 %", "liquids": [{"liquid": "hall ale", "share": "50 %",
				"water": "90 %", "alcohol": "0 %"}]}`},
			0, "", "", "", "", "",
		},
		{
			"a liquid with alcohol", "liquid-alcohol",
			[]string{"water", `{"lye_concentration": "33 %", "liquids": [{"liquid": "hall ale", "share": "50 %",
				"water": "90 %", "alcohol": "4.8 %"}]}`},
			note, "water.liquids[0]", "4.8", "", "%", "hall ale",
		},
		{
			"a fat without a range in a liquid", "saponification-single",
			[]string{"water", `{"lye_concentration": "33 %", "liquids": [{"liquid": "goat milk", "share": "50 %",
				"water": "87 %", "fat": "4 %", "saponification": "225"}]}`},
			note, "water.liquids[0]", "225", "", "mg KOH/g", "goat milk",
		},
		{
			"a fat with a range", "saponification-single",
			[]string{"water", `{"lye_concentration": "33 %", "liquids": [{"liquid": "goat milk", "share": "50 %",
				"water": "87 %", "fat": "4 %", "saponification": {"low": "218", "high": "235"}}]}`},
			0, "", "", "", "", "",
		},
		{
			"a strength of a stock lye without a range", "purity-single",
			[]string{"alkali", `{"kind": "sodium-hydroxide", "stock": {"strength": "50 %"}}`},
			note, "alkali[0]", "50", "", "%",
			"stock",
		},
		{"a strength with one", "purity-single", []string{
			"alkali",
			`{"kind": "sodium-hydroxide", "stock": {"strength": {"low": "49 %", "high": "50 %"}}}`,
		}, 0, "", "", "", "", ""},
		{
			"a stock lye is not an alkali without purity", "purity-assumed",
			[]string{"alkali", `{"kind": "sodium-hydroxide", "stock": {"strength": "50 %"}}`},
			0, "", "", "", "", "",
		},
		// 1 g on a division of 1.02 g is weighed as 1.02 g: 2 % off
		{"an acid changed by 2 %", "rounding-coarse", []string{
			"scale", `{"oils": "1 mg", "small": "1.02 g"}`, "acids",
			`{"acid": "lactic-acid", "load": "1 g", "strength": "80 %", "compensate": true}`,
		}, 0, "", "", "", "", ""},
		{
			"an acid changed by more", "rounding-coarse",
			[]string{
				"scale", `{"oils": "1 mg", "small": "1.0201 g"}`, "acids",
				`{"acid": "lactic-acid", "load": "1 g", "strength": "80 %", "compensate": true}`,
			},
			note, "acids[0]", "2.01", "2",
			"%", "Lactic acid",
		},
		{
			"a liquid changed by more", "rounding-coarse",
			[]string{
				"scale", `{"oils": "1 mg", "small": "1.0201 g"}`, "water",
				`{"lye_concentration": "33 %", "liquids": [{"liquid": "hall tea", "mass": "1 g", "water": "99 %"}]}`,
			},
			note,
			"water.liquids[0]", "2.01", "2", "%", "hall tea",
		},
		{
			"a fragrance is no additive", "additive-unjudged",
			[]string{"parts", `{"part": "lantern", "share": "100 %", "fragrances": [{"fragrance": "pear", "unlisted": true,
				"load": "1 g"}]}`},
			0, "", "", "", "", "",
		},
	} {
		t.Run(test.code+", "+test.name, func(t *testing.T) {
			found := plainFormula().with(test.change...).batch(t).Findings
			at := slices.IndexFunc(found, func(f soap.Finding) bool {
				return f.Code == test.code && (test.subject == "" || f.Subject == test.subject)
			})
			if test.subject == "" {
				if at >= 0 {
					t.Errorf("found all the same: %+v", found[at])
				}
				return
			}
			if at < 0 {
				t.Fatalf("not found; there are %v", codes(found))
			}
			f := found[at]
			figure := func(r interface{ PercentText(int) string }) string { return r.PercentText(4) }
			value, limit := figure(f.Value), figure(f.Limit)
			if f.Unit == "mg KOH/g" {
				value, limit = f.Value.MilligramsPerGramText(4), f.Limit.MilligramsPerGramText(4)
			}
			if f.Severity != test.severity || test.value != "" && value != test.value || limit != test.limit ||
				f.Unit != test.unit {
				t.Errorf("severity %v, value %s, limit %s, unit %q; want %v, %s, %s, %q", f.Severity, value, limit, f.Unit,
					test.severity, test.value, test.limit, test.unit)
			}
			if message := f.Message(); !strings.HasSuffix(message, ".") || !strings.Contains(message, test.mention) ||
				message == f.Code {
				t.Errorf("the sentence is %q", message)
			}
			if f.Source.String() == "unknown" {
				t.Errorf("no source: %+v", f.Source)
			}
		})
	}
}

// 10 K from boiling to the millionth of a kelvin: the trigger lies just where the
// bound reaches it, wherever that is.
func TestALyeIsHotFromJustTenKelvinsBelowBoiling(t *testing.T) {
	seen := map[bool]int{}
	for tenth := 200; tenth <= 260; tenth++ {
		b := plainFormula().with("alkali", `{"kind": "sodium-hydroxide", "purity": "100 %"}`, "water", `{"per_alkali": "2"}`,
			"temperature", fmt.Sprintf(`{"water": "%d.%d °C"}`, tenth/10, tenth%10)).batch(t)
		hot := slices.ContainsFunc(b.Findings, func(f soap.Finding) bool { return f.Code == "lye-hot" })
		seen[hot]++
		if below := b.Lye.Heat.Boils.Sub(b.Lye.Heat.Final); hot != (below.Compare(units.Kelvins(10)) <= 0) {
			t.Errorf("%s below boiling, found: %v", below, hot)
		}
	}
	if seen[true] == 0 || seen[false] == 0 {
		t.Errorf("hot and not: %v", seen)
	}
}

func codes(found []soap.Finding) (list []string) {
	for _, f := range found {
		list = append(list, f.Severity.String()+" "+f.Code+" "+f.Subject)
	}
	return list
}

func TestFindingsStandMostSevereFirstThenInInputOrder(t *testing.T) {
	b := plainFormula().with(
		"superfat", `"0.1 %"`,
		"oils", `{"oil": "canola", "share": "50 %"}, {"oil": "goose-fat", "share": "50 %"}`,
		"alkali", `{"kind": "sodium-hydroxide"}`,
		"water", `{"lye_concentration": "24 %"}`,
		"parts", part("1 g", ""),
	).batch(t)
	want := []string{
		"danger superfat-likely-negative parts[0]",
		"warning range-missing oils[1]",
		"warning value-computed oils[1]",
		"warning purity-assumed alkali[0]",
		"warning free-alkali-worst parts[0]",
		"warning colourant-unjudged parts[0].colourants[0]",
		"note typical-disputed oils[0]",
		"note superfat-unusual superfat",
		"note lye-weak water",
	}
	if got := codes(b.Findings); !slices.Equal(got, want) {
		t.Errorf("got  %v\nwant %v", got, want)
	}
}

func TestTheBatchsOwnLikelyLowIsInformationOnly(t *testing.T) {
	// All the oil of the part's jug stands extra: the part is safe, the batch,
	// which does not count it, is not.
	b := plainFormula().with("superfat", `"0.1 %"`, "parts",
		part("30 g", `{"liquid": "hall-blend", "ratio": "3", "from": "extra"}`)).batch(t)
	if b.Superfat.LikelyLow.Sign() >= 0 {
		t.Fatalf("the batch's likely low is %s, no test", b.Superfat.LikelyLow)
	}
	for _, f := range b.Findings {
		if f.Severity == soap.Danger {
			t.Errorf("%+v", f)
		}
	}
}

func TestOneFindingNamesEveryFigureFromMemory(t *testing.T) {
	b := plainFormula().with("oils", `{"oil": "peanut", "share": "50 %"}, {"oil": "hazelnut", "share": "25 %"}, {"oil": "olive", "share": "25 %"}`).batch(t)
	var names []string
	for _, f := range b.Findings {
		if f.Code == "figure-from-memory" {
			names = append(names, f.Names...)
			names = append(names, ";")
		}
	}
	if got := strings.Join(names, ", "); got != "Peanut (arachis, groundnut) oil, Hazelnut oil, ;" {
		t.Errorf("got %s", got)
	}
}
