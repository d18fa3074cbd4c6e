package schema_test

import (
	"encoding/json"
	"testing"
)

// rareBatches are formulas whose batches print what those of the examples do not. All
// invented.
func rareBatches(t testing.TB) []string {
	t.Helper()
	plain := `{"formula": "Lantern walk, late", "oils": [{"oil": "olive", "share": "60 %"}, {"oil": "coconut", "share": "rest"}],
  "alkali": [{"kind": "sodium-hydroxide", "purity": {"low": "97 %", "high": "99 %"}}], "superfat": "6 %", "water": {"lye_concentration": "32 %"}`
	dusk := decoded(t, read(t, "../../testdata/formulas/lantern-dusk.json"))
	with := func(changes ...string) string { // keys and values in turn
		formula := dusk
		for i := 0; i < len(changes); i += 2 {
			formula = put(t, formula, []any{changes[i]}, json.RawMessage(changes[i+1]))
		}
		return encoded(t, formula)
	}
	thin := decoded(t, []byte(with()))
	base := thin.(map[string]any)["swatches"].(map[string]any)["read"].([]any)[0].(map[string]any)
	layer := map[string]any{"swatch": "plain", "thickness": "2 mm", "backing": []float64{0.05, 0.88}}
	for key, more := range map[string]float64{"over_black": -0.02, "over_white": 0.02} {
		var list []float64
		for _, r := range base["reflectance"].([]any) {
			v, err := r.(json.Number).Float64()
			if err != nil {
				t.Fatal(err)
			}
			list = append(list, v+more)
		}
		layer[key] = list
	}
	thin = put(t, thin, []any{"swatches", "read", 0}, layer)
	thin = put(t, thin, []any{"size"}, json.RawMessage(`{"vessels": [{"vessel": "cup", "part": "night", "count": 2, "volume": "80 mL"}, {"vessel": "veil", "part": "glow", "on": "cup", "coat": {"area": "20 cm²", "thickness": "0.5 mm"}}]}`))
	thin = put(t, thin, []any{"parts"}, json.RawMessage(`[{"part": "night", "colourants": [{"colourant": "ultramarine-blue", "load": "0.9 % of oils"}]}, {"part": "glow", "colourants": [{"colourant": "titanium-dioxide", "load": "0.3 % of oils"}]}]`))
	return []string{
		// a value that cannot be that of olive oil, a danger in every view
		with("oils", `[{"oil": "olive", "share": "70 %", "saponification": "250"}, {"oil": "coconut", "share": "rest"}]`),
		// too little alkali in the lye
		plain + `, "size": {"oils": "800 g"}, "weighed": {"stage": "lye", "alkali": {"sodium-hydroxide": "60 g"}}}`,
		// far too much of it, and the oils still to come
		plain + `, "size": {"oils": "800 g"}, "weighed": {"stage": "lye", "alkali": {"sodium-hydroxide": "140 g"}, "water": "100 g"}}`,
		// dry alkali, whose water was forgotten
		plain + `, "size": {"oils": "800 g"}, "weighed": {"stage": "lye", "water": "0 g"}}`,
		// a paste that was really weighed, beside vessels
		plain + `, "size": {"vessels": [{"vessel": "cup", "part": "base", "count": 6, "volume": "100 mL"}]},
  "weighed": {"stage": "moulds", "parts": {"base": {"additions": {"dusk": "21 g"}}}},
  "parts": [{"part": "base", "colourants": [{"colourant": "dusk", "unlisted": true, "load": "1 % of oils",
	"note": "stir it well", "carrier": {"liquid": "glycerin", "ratio": "3", "paste": true}}]}]}`,
		// a known mass, and fewer moulds than it fills
		plain + `, "size": {"oils": "5 kg", "vessels": [{"vessel": "cup", "count": 40, "moulds": 6, "volume": "100 mL"}]}}`,
		// several batches, for want of moulds, and a note wherever one may stand
		`{"formula": "Lantern walk, noted", "note": "for the hall", "oils": [{"oil": "olive", "share": "60 %", "note": "tin by the door"}, {"oil": "coconut", "share": "rest"}],
  "alkali": [{"kind": "sodium-hydroxide", "purity": {"low": "97 %", "high": "99 %"}, "note": "opened in May"}], "superfat": "6 %", "water": {"lye_concentration": "32 %"},
  "size": {"vessels": [{"vessel": "cup", "part": "base", "count": 10, "moulds": 6, "volume": "100 mL", "note": "the blue set"}]},
  "parts": [{"part": "base", "note": "stir by hand", "additives": [{"additive": "fine salt", "load": "4 g", "note": "dry it"}]}]}`,
		// a known mass that fills nothing
		plain + `, "size": {"oils": "50 g", "vessels": [{"vessel": "cup", "count": 4, "volume": "500 mL"}]}}`,
		// a layer so thin that its fragrance is above a threshold in itself alone
		plain + `, "size": {"vessels": [{"vessel": "loaf", "parts": {"base": "95 %", "glint": "rest"}, "count": 1, "cuts": 9, "volume": "1 L"}]},
  "parts": [{"part": "base"}, {"part": "glint", "fragrances": [{"fragrance": "lavender", "load": "0.1 % of oils"}]}]}`,
		// a colour that cannot be reached, a load beyond the swatches, colourants that stand in none
		with("parts", `[{"part": "night", "share": "60 %", "target": {"lab": [40, 60, 30]}, "match": [{"colourant": "titanium-dioxide", "most": "0.5 % of oils"}, {"colourant": "iron-oxide-red", "most": "0.1 % of oils"}]},
    {"part": "deep", "share": "10 %", "colourants": [{"colourant": "ultramarine-blue", "load": "4 % of oils"}]},
    {"part": "glow", "share": "rest", "colourants": [{"colourant": "mica", "load": "1 % of oils"},
	{"colourant": "dusk powder", "unlisted": true, "load": "1 % of oils"}], "target": {"srgb": "#c8b49a"}}]`,
			"pigments", `[{"colourant": "titanium-dioxide", "price": "9.80 per 100 g"}]`),
		// a thin layer on another part
		encoded(t, thin),
	}
}
