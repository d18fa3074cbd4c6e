package schema_test

// rareFormulas hold, together with the formulas of testdata, every key that a formula may
// have, at every place, and every form of what may be written in several. All invented.
func rareFormulas() map[string]string {
	return map[string]string{
		"every shape": `{"formula": "Lantern shelf", "note": "for the hall", "oils": [{"oil": "olive", "share": "70 %", "note": "tin by the door"}, {"oil": "coconut", "share": "rest"}],
  "alkali": [{"kind": "sodium-hydroxide", "purity": {"low": "97 %", "high": "99 %"}, "note": "opened in May"}], "superfat": "6 %", "water": {"lye_concentration": "32 %"},
  "temperature": {"oils": "40 °C", "lye": "104 °F", "water": "293.15 K", "room": "20 °C", "pour": "38 °C"},
  "size": {"pieces": 60, "vessels": [
    {"vessel": "tray", "part": "base", "count": 1, "cuts": 4, "moulds": 5, "slab": {"length": "30 cm", "width": "20 cm", "height": "50 mm", "liner": "1 mm", "fill": "90 %"}},
    {"vessel": "brick", "part": "base", "count": 2, "tapered_box": {"top_length": "80 mm", "top_width": "60 mm", "bottom_length": "70 mm", "bottom_width": "50 mm", "depth": "40 mm", "fill": "95 %"}},
    {"vessel": "loaf", "parts": {"base": "70 %", "night": "rest"}, "count": 1, "cuts": 9, "box": {"length": "25 cm", "width": "8 cm", "depth": "7 cm", "fill": "80 %"}},
    {"vessel": "tube", "part": "base", "count": 3, "cylinder": {"diameter": "50 mm", "height": "0.1 m", "fill": "100 %"}},
    {"vessel": "moon", "part": "base", "count": 4, "half_sphere": {"diameter": "2.5 in", "fill": "99 %"}},
    {"vessel": "cup", "part": "base", "count": 5, "frustum": {"top": "60 mm", "bottom": "45 mm", "height": "40 mm", "fill": "90 %"}},
    {"vessel": "bowl", "part": "base", "count": 1, "water_fill": {"mass": "120 g", "temperature": "20 °C"}},
    {"vessel": "dip", "part": "base", "count": 1, "volume": "45 mL", "note": "the blue one"},
    {"vessel": "try", "part": "base", "count": 2, "trial": {"count": 6, "mass": "210 g"}},
    {"vessel": "swirl", "part": "night", "on": "cup", "cone": {"base": "45 mm", "tip": "8 mm", "height": "35 mm", "fill": "85 %"}},
    {"vessel": "glaze", "part": "night", "on": "tray", "coat": {"area": "60 cm²", "thickness": "1 mm"}}]},
  "embeds": [{"embed": "moon sliver", "vessel": "cup", "each": 2, "spares": 3, "mass": "4 g", "sunk": true}, {"embed": "star", "vessel": "loaf", "volume": "2 mL"}],
  "toppings": [{"topping": "frost", "vessel": "cup", "mass": "0.2 g", "glitter": "mineral", "aluminium": false}],
  "parts": [{"part": "base", "note": "stir by hand", "work": "poured", "look": "pale", "reserve": "4 %", "loss": "12 g",
      "additives": [{"additive": "avocado", "unlisted": true, "load": "1 g"}, {"additive": "spark", "load": "1 g",
	"note": "sift it", "carrier": {"liquid": "glycerin", "ratio": "2", "from": "extra", "paste": true},
	"glitter": "degradable-tested", "aluminium": true}]},
    {"part": "night", "work": "piped", "look": "any"}, {"part": "trimmings", "share": "5 %"}]}`,

		"weighed parts": `{"formula": "Lantern night", "oils": [{"oil": "olive", "share": "100 %"}],
  "alkali": [{"kind": "sodium-hydroxide", "stock": {"strength": {"low": "49 %", "typical": "49.6 %", "high": "50 %"}}}], "superfat": {"at_least": "2 %"}, "water": {"per_oils": "38 %",
    "liquids": [{"liquid": "oat milk", "share": "20 %", "water": "88 %", "fat": "3 %", "sugar": "4 %", "alcohol": "0 %", "saponification": {"low": "185", "typical": "190", "high": "195"}}, {"liquid": "cream", "mass": "10 g", "water": "60 %", "fat": "30 %", "saponification": {"low": "218", "high": "235"}}]},
  "size": {"batter": "1 kg"}, "scale": {"oils": "1 g", "small": "0.01 g"}, "gel": "no", "markets": ["eu", "us"],
  "acids": [{"acid": "lactic-acid", "load": "1 % of oils", "strength": {"low": "78 %", "typical": "80 %", "high": "82 %"}, "compensate": true}],
  "weighed": {"stage": "parts", "oils": {"olive": "640 g"}, "alkali": {"sodium-hydroxide": "160 g"}, "water": "150 g", "acids": {"lactic-acid": "6 g"}, "liquids": {"cream": "12 g"}, "parts": {"base": {"batter": "600 g", "additions": {"dusk": "2 g"}, "carriers": {"sunflower": "11.6 g"}}}},
  "parts": [{"part": "base", "share": "60 %", "colourants": [{"colourant": "dusk", "unlisted": true,
	"load": "0.5 % of oils", "note": "soak it", "carrier": {"liquid": "sunflower", "ratio": "3", "from": "extra",
	"paste": false}}],
      "fragrances": [{"fragrance": "lantern-lot", "note": "lot 12", "load": "max", "margin": "10 %", "carrier": {"liquid": "olive", "ratio": "1", "from": "formula", "paste": false}}]},
    {"part": "cloud", "share": "rest"}],
  "materials": [{"fragrance": "lantern-lot", "natural": true, "complete": true, "certificates": [{"category": "9", "limit": "2.4 %", "amendment": "51"}],
      "constituents": [{"cas": "97-53-0", "share": "1.2 %", "natural": true}, {"cas": "121-33-5", "share": {"low": "0.5 %", "high": "1 %"}}], "allergens": ["Linalool"], "behaviour": ["accelerates"]},
    {"fragrance": "walk", "blend": [{"fragrance": "lantern-lot", "share": "40 %"}, {"fragrance": "lavender", "share": "60 %"}], "behaviour": ["browns"]}]}`,

		"a layer over black and white": `{"formula": "Lantern glow", "oils": [{"oil": "lantern-nut", "name": "Lantern nut", "inci": "Lucerna Seed Oil", "share": "80 %", "profile": {"C18:1": "71 %", "C16:0": "24 %"}, "unsaponifiables": "1 %", "iodine": "80", "density": "0.915 g/mL"},
    {"oil": "moth-butter", "share": "20 %", "saponification": {"low": "180", "typical": "185", "high": "190"}}],
  "alkali": [{"kind": "sodium-hydroxide", "purity": {"grade": "ph-eur-7", "typical": "98 %"}, "saponifies": "95 %"}, {"kind": "potassium-hydroxide", "purity": {"assay_min": "85 %", "assay_max": "100.5 %", "carbonate_max": "2 %", "typical": "88 %"}, "saponifies": "5 %"}],
  "superfat": "6 %", "water": {"per_alkali": "2.1"}, "size": {"oils": "1 kg"}, "scale": "0.1 g",
  "pigments": [{"colourant": "dusk-mica", "name": "Dusk mica", "ci": ["77019", "77891:1"], "density": "2.9 g/mL", "disperses_in": ["oil", "glycerin"], "nano": false, "usual": {"low": "0.5 % of oils", "high": "2 % of oils"}, "price": "12.40 per 100 g"}],
  "swatches": {"name": "glow", "bands": {"from": "400 nm", "step": "20 nm"}, "surface": {"outside": 0.04, "inside": 0.6, "gloss": "excluded"}, "read": [
    {"swatch": "plain", "thickness": "2 mm", "backing": [0.05, 0.88], "over_black": [0.55,0.55,0.55,0.55,0.55,0.55,0.55,0.55,0.55,0.55,0.55,0.55,0.55,0.55,0.55,0.55], "over_white": [0.6,0.6,0.6,0.6,0.6,0.6,0.6,0.6,0.6,0.6,0.6,0.6,0.6,0.6,0.6,0.6]},
    {"swatch": "white 0.3", "loads": {"titanium-dioxide": "0.3 % of batter"}, "reflectance": [0.7,0.7,0.7,0.7,0.7,0.7,0.7,0.7,0.7,0.7,0.7,0.7,0.7,0.7,0.7,0.7]},
    {"swatch": "white 1", "loads": {"titanium-dioxide": "1 % of batter"}, "reflectance": [0.8,0.8,0.8,0.8,0.8,0.8,0.8,0.8,0.8,0.8,0.8,0.8,0.8,0.8,0.8,0.8]}]},
  "parts": [{"part": "glow", "share": "rest", "target": {"reflectance": [0.75,0.75,0.75,0.75,0.75,0.75,0.75,0.75,0.75,0.75,0.75,0.75,0.75,0.75,0.75,0.75]},
    "match": [{"colourant": "titanium-dioxide", "unlisted": false, "most": "1.5 % of oils",
	"carrier": {"liquid": "water", "ratio": "2", "from": "formula", "paste": true}}]}]}`,

		"swatches as colours":  swatchesOf(`"lab": [90, 1, 8]`, `"lab": [92, 0.5, 6]`, `"lab": [94, 0, 4]`, `{"lab": [93, 0, 5]}`),
		"swatches of a screen": swatchesOf(`"srgb": "#e8e0d0"`, `"srgb": "#f0ebe0"`, `"srgb": "#f5f2ec"`, `{"srgb": "#F2EEE6"}`),

		"every oil with a mass": `{"formula": "Lantern jars", "oils": [{"oil": "olive", "mass": "1 lb", "saponification": {"low": "188", "high": "191"}, "measured": true}, {"oil": "coconut", "mass": "8 oz"}], "alkali": [{"kind": "sodium-hydroxide", "purity": "98 %"}],
  "superfat": "6 %", "water": {"lye_concentration": "32 %"}, "size": {"vessels": [{"vessel": "jar", "count": 3, "volume": "0.2 L"}]}}`,
	}
}

// swatchesOf gives a formula whose swatches, and whose target, were read in one way.
func swatchesOf(plain, white03, white1, target string) string {
	return `{"formula": "Lantern paper", "oils": [{"oil": "olive", "share": "rest"}], "alkali": [{"kind": "potassium-hydroxide", "stock": {"strength": "45 %"}}], "superfat": "5 %", "water": {"lye_concentration": "30 %"}, "size": {"oils": "500 g"},
  "swatches": {"read": [{"swatch": "plain", ` + plain + `}, {"swatch": "white 0.3", "loads": {"titanium-dioxide": "0.3 % of batter"}, ` + white03 + `}, {"swatch": "white 1", "loads": {"titanium-dioxide": "1 % of batter"}, ` + white1 + `}]},
  "parts": [{"part": "lid", "share": "100 %", "target": ` + target + `, "match": [{"colourant": "titanium-dioxide", "most": "1.5 % of batter"}]}]}`
}
