package soap_test

import (
	"encoding/json"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/lyewright/colour/tint"
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// duskSwatches are those of the shipped formula.
func duskSwatches(t testing.TB) string {
	t.Helper()
	text, err := os.ReadFile("../testdata/formulas/lantern-dusk.json")
	if err != nil {
		t.Fatal(err)
	}
	var f struct{ Swatches json.RawMessage }
	if err := json.Unmarshal(text, &f); err != nil {
		t.Fatal(err)
	}
	return string(f.Swatches)
}

func pigment(id, load string) string {
	return `{"colourant": "` + id + `", "load": "` + load + `"}`
}

// coloured is one part with colourants.
func coloured(colourants ...string) string {
	return `{"part": "glow", "share": "100 %", "colourants": [` + strings.Join(colourants, ", ") + `]}`
}

func colourCodes(b soap.Batch, subject string) (found []string) {
	for _, f := range b.Findings {
		if f.Subject == subject && soap.OnColour(f) {
			found = append(found, f.Severity.String()+" "+f.Code)
		}
	}
	return found
}

func tinted(t testing.TB, b soap.Batch) soap.Tint {
	t.Helper()
	c, err := b.Tint()
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// The usual loads of the table, percent of oils: both ends are within, and a hair beyond is
// not. White alone whitens (0.3 to 1.0), beside a colour it lightens that (0.1 to 0.5).
func TestUsualLoadsHaveTheirEdges(t *testing.T) {
	for _, row := range []struct{ id, low, high, below, above, beside string }{
		{"iron-oxide-red", "0.05", "0.5", "0.0499", "0.501", ""},
		{"ultramarine-blue", "0.2", "1.5", "0.199", "1.501", ""},
		{"chromium-oxide-green", "0.1", "1", "0.099", "1.001", ""},
		{"mica", "0.5", "2", "0.499", "2.001", ""},
		{"kaolin", "1", "4", "0.999", "4.001", ""},
		{"activated-charcoal", "0.1", "1", "0.099", "1.001", ""},
		{"turmeric", "0.2", "2", "0.199", "2.001", ""},
		{"red-30-lake", "0.05", "0.3", "0.0499", "0.301", ""},
		{"titanium-dioxide", "0.3", "1", "0.299", "1.001", ""},
		{"titanium-dioxide", "0.1", "0.5", "0.099", "0.501", pigment("ultramarine-blue", "0.5 % of oils")},
		{"titanium-dioxide-anatase", "0.3", "1", "0.299", "1.001", pigment("titanium-dioxide-rutile", "0.5 % of oils")}, // both are white
	} {
		for load, want := range map[string]bool{row.low: false, row.high: false, row.below: true, row.above: true} {
			list := []string{pigment(row.id, load+" % of oils")}
			if row.beside != "" {
				list = append(list, row.beside)
			}
			b := plainFormula().with("markets", `"eu"`, "parts", coloured(list...)).batch(t)
			if got := slices.Contains(colourCodes(b, "parts[0].colourants[0]"), "note load-unusual"); got != want {
				t.Errorf("%s at %s %% of oils: %t", row.id, load, got)
			}
		}
	}
	// What has no usual load is never unusual; an own one has its maker's, of batter here.
	b := plainFormula().with("pigments", `{"colourant": "star-mica", "usual": {"low": "0.5 % of batter", "high": "2 % of batter"}}`,
		"parts", coloured(pigment("zinc-oxide", "9 % of oils"), pigment("star-mica", "2.1 % of oils"))).batch(t)
	if found := colourCodes(b, "parts[0].colourants[0]"); len(found) > 0 {
		t.Error(found)
	}
	if found := colourCodes(b, "parts[0].colourants[1]"); slices.Contains(found, "note load-unusual") {
		t.Errorf("2.1 %% of oils is less than 2 %% of batter: %v", found)
	}
}

// From 1 % of oils on, all titanium dioxide of a part together, where the soap gels.
func TestRiversTriggerIsExact(t *testing.T) {
	for _, row := range []struct {
		gel, loads string
		want       bool
	}{
		{"yes", "1", true},
		{"yes", "0.9999", false},
		{"no", "3", false},
		{"unknown", "3", false},
		{"", "3", false},
		{"yes", "0.6 0.4", true},
		{"yes", "0.6 0.39", false},
	} {
		var list []string
		for i, load := range strings.Fields(row.loads) {
			list = append(list, pigment([]string{"titanium-dioxide", "titanium-dioxide-rutile"}[i], load+" % of oils"))
		}
		p := plainFormula().with("parts", coloured(list...))
		if row.gel != "" {
			p.with("gel", strconv.Quote(row.gel))
		}
		if got := slices.Contains(colourCodes(p.batch(t), "parts[0].colourants[0]"), "note rivers-likely"); got != row.want {
			t.Errorf("%+v: %t", row, got)
		}
	}
	nano := plainFormula().with("gel", `"yes"`, "pigments", `{"colourant": "titanium-dioxide", "nano": true}`, "parts", coloured(pigment("titanium-dioxide", "2 % of oils"))).batch(t)
	if found := colourCodes(nano, "parts[0].colourants[0]"); slices.Contains(found, "note rivers-likely") || !slices.Contains(found, "note nano-grade") {
		t.Error(found)
	}
}

// What alkali and the law make of colourants, as the table has it; the United States by a
// note, the European Union by a warning, each only where the soap is sold there.
func TestLawAndAlkali(t *testing.T) {
	for _, row := range []struct{ id, unstable, eu, us string }{
		{"iron-oxide-red", "", "", ""},
		{"ultramarine-blue", "", "", ""},
		{"ferric-ferrocyanide", "warning colourant-unstable", "", ""},
		{"manganese-violet", "warning colourant-unstable", "", ""},
		{"carmine", "warning colourant-unstable", "", ""},
		{"bismuth-oxychloride", "warning colourant-unstable", "", ""},
		{"aluminium-powder", "danger hydrogen", "", ""},
		{"phthalo-blue", "", "", "note colourant-not-permitted"},
		{"carbon-black", "", "", "note colourant-not-permitted"},
		{"turmeric", "warning colourant-unstable", "", "note colourant-not-permitted"},
		{"madder", "warning colourant-unstable", "warning colourant-not-permitted", "note colourant-unjudged"},
		{"alkanet", "warning colourant-unstable", "warning colourant-not-permitted", "note colourant-unjudged"},
		{"barium-sulfate", "", "", "note colourant-unjudged"},
		{"mica", "", "", ""},
	} {
		for markets, sold := range map[string][2]bool{"": {true, true}, `"eu"`: {true, false}, `"us"`: {false, true}, `"eu", "us"`: {true, true}} {
			p := plainFormula().with("parts", coloured(pigment(row.id, "1 g")))
			if markets != "" {
				p.with("markets", markets)
			}
			var want []string
			if row.unstable != "" {
				want = append(want, row.unstable)
			}
			if row.eu != "" && sold[0] {
				want = append(want, row.eu)
			}
			if row.us != "" && sold[1] {
				want = append(want, row.us)
			}
			var got []string
			for _, code := range colourCodes(p.batch(t), "parts[0].colourants[0]") {
				if code != "note load-unusual" {
					got = append(got, code)
				}
			}
			if !slices.Equal(got, want) {
				t.Errorf("%s in %s: %v, want %v", row.id, markets, got, want)
			}
		}
	}
}

// An own pigment is what its numbers say; a number that is not held is said to be open.
func TestAnOwnPigmentIsJudgedByItsNumbers(t *testing.T) {
	for _, row := range []struct {
		own  string
		want []string
	}{
		{`"ci": ["77019", "77510"]`, []string{"warning colourant-unstable"}}, // mica coated with iron blue
		{`"ci": ["77019", "77891", "77491"]`, nil},
		{`"ci": ["75330"]`, []string{"warning colourant-unstable", "warning colourant-not-permitted", "note colourant-unjudged"}},
		{`"ci": ["15850:1"]`, []string{"warning colourant-unstable"}}, // a lake of a dye that is held
		{`"ci": ["74160", "12345"]`, []string{"note colourant-unjudged", "note colourant-not-permitted"}},
		{`"name": "Dusk mica"`, []string{"note colourant-unjudged"}},
	} {
		b := plainFormula().with("pigments", `{"colourant": "dusk-mica", `+row.own+`}`, "parts", coloured(pigment("dusk-mica", "1 g"))).batch(t)
		if got := colourCodes(b, "parts[0].colourants[0]"); !slices.Equal(got, row.want) {
			t.Errorf("%s: %v, want %v", row.own, got, row.want)
		}
	}
}

// What nothing is held of is said, and not taken for permitted.
func TestWhatIsNotHeldIsSaid(t *testing.T) {
	for id, want := range map[string]string{
		"madder":      "Madder: nothing is held here of its standing in the United States.",
		"acid-red-52": "Acid Red 52: nothing is held here of its stability in alkali.",
	} {
		b := plainFormula().with("parts", coloured(pigment(id, "1 g"))).batch(t)
		if !slices.ContainsFunc(b.Findings, func(f soap.Finding) bool { return f.Code == "colourant-unjudged" && f.Message() == want }) {
			t.Errorf("%s: %v", id, b.Findings)
		}
	}
}

// A mica coated with titanium dioxide is no titanium dioxide: it makes no rivers, has no
// white's usual loads, and is never the unit of scattering.
func TestACoatedMicaIsNoWhite(t *testing.T) {
	own := `{"colourant": "dusk-mica", "ci": ["77019", "77891"]}`
	b := plainFormula().with("gel", `"yes"`, "pigments", own, "parts", coloured(pigment("dusk-mica", "2 % of oils"), pigment("titanium-dioxide", "0.3 % of oils"))).batch(t)
	for _, f := range b.Findings {
		if f.Code == "rivers-likely" {
			t.Error(f.Message())
		}
	}
	swatches := strings.Replace(duskSwatches(t), `"read": [`, `"read": [{"swatch": "mica 1", "loads": {"dusk-mica": "1 % of batter"}, "reflectance": [`+strings.Repeat("0.6, ", 30)+`0.6]},
		{"swatch": "mica 2", "loads": {"dusk-mica": "2 % of batter"}, "reflectance": [`+strings.Repeat("0.7, ", 30)+`0.7]}, `, 1)
	if got := tinted(t, plainFormula().with("swatches", swatches, "pigments", own).batch(t)).Fit.White(); got != "titanium-dioxide" {
		t.Errorf("%q", got)
	}
}

// What weighs nothing plays no role: the white beside it is alone.
func TestATraceThatWeighsNothingPlaysNoRole(t *testing.T) {
	b := plainFormula().with("scale", `"0.1 g"`, "markets", `"eu"`, "parts", coloured(pigment("titanium-dioxide", "0.9 % of oils"), pigment("iron-oxide-red", "0.01 g"))).batch(t)
	for i := range 2 {
		if found := colourCodes(b, "parts[0].colourants["+strconv.Itoa(i)+"]"); slices.Contains(found, "note load-unusual") {
			t.Errorf("%d: %v", i, found)
		}
	}
}

// Only where the table is definite; glycerin goes with any powder.
func TestCarriersThatAreUnlike(t *testing.T) {
	for _, row := range []struct {
		id, own, liquid string
		want            bool
	}{
		{"beta-carotene", "", "water", true},
		{"beta-carotene", "", "sunflower", false},
		{"beta-carotene", "", "glycerin", false},
		{"beetroot", "", "sunflower", true},
		{"beetroot", "", "water", false},
		{"ultramarine-blue", "", "sunflower", false}, // it depends on the treatment
		{"titanium-dioxide", "", "water", false},
		{"dusk-mica", `"disperses_in": ["oil"]`, "water", true},
		{"dusk-mica", `"disperses_in": ["oil"]`, "glycerin", true},
		{"dusk-mica", `"disperses_in": ["oil", "water"]`, "water", false},
		{"ultramarine-blue", `"disperses_in": ["oil"]`, "water", true}, // its maker's grade
	} {
		p := plainFormula().with("parts", coloured(`{"colourant": "`+row.id+`", "load": "1 g", "carrier": {"liquid": "`+row.liquid+`", "ratio": "2"}}`))
		if row.own != "" {
			p.with("pigments", `{"colourant": "`+row.id+`", `+row.own+`}`)
		}
		if got := slices.Contains(colourCodes(p.batch(t), "parts[0].colourants[0]"), "note carrier-unlike"); got != row.want {
			t.Errorf("%+v: %t", row, got)
		}
	}
	if found := colourCodes(plainFormula().with("parts", coloured(pigment("beetroot", "1 g"))).batch(t), "parts[0].colourants[0]"); slices.Contains(found, "note carrier-unlike") {
		t.Error("without a carrier")
	}
}

// A paste is one weighing: of 10 g with twice as much water 30 g, which a scale of 1 g
// shows; apart the pigment of 3.4 g would be 3 g. It is as far off as its oil is of it.
func TestAPasteIsOneWeighing(t *testing.T) {
	of := func(load, liquid, paste, small string) soap.Batch {
		return plainFormula().with("scale", `{"oils": "1 mg", "small": "`+small+`"}`, "parts",
			coloured(`{"colourant": "ultramarine-blue", "load": "`+load+`", "carrier": {"liquid": "`+liquid+`", "ratio": "2", "paste": `+paste+`}}`)).batch(t)
	}
	a := of("3.4 g", "water", "true", "1 g").Parts[0].Additions[0]
	if a.Mass.String() != "3.4 g" || a.Carrier.Mass.String() != "6.8 g" || a.Paste.Mass.String() != "10.2 g" || a.Paste.Weigh.String() != "10 g" {
		t.Errorf("%+v, %+v", a, a.Carrier)
	}
	if a.Pigment().Text(units.Gram, 6) != "3.333333" {
		t.Errorf("pigment in it: %v", a.Pigment())
	}
	if apart := of("3.4 g", "water", "false", "1 g").Parts[0].Additions[0]; apart.Weigh.String() != "3 g" || apart.Pigment().String() != "3 g" || apart.Paste != (soap.Weighing{}) {
		t.Errorf("%+v", apart)
	}
	// Water comes out of the lye, whoever weighs it.
	if paste, apart := of("3.4 g", "water", "true", "1 mg"), of("3.4 g", "water", "false", "1 mg"); paste.Water.Mass != apart.Water.Mass || !paste.Superfat.Low.Equal(apart.Superfat.Low) {
		t.Errorf("%v, %v", paste.Water, apart.Water)
	}
	// Oil weighed as paste is off by two thirds of what it is off by alone.
	// In the worst case 20 g of it are 0.9 g short as a jug, and 0.6 g as two thirds of a
	// paste; the pot's two oils, at 189 mg/g, are 1 mg short each. The alkali is the same.
	sunflower, err := soap.LookUpOil("sunflower")
	if err != nil {
		t.Fatal(err)
	}
	value := sunflower.Saponification().Low.Float()
	demand := func(short float64) float64 { return (1000-0.002)*0.189 + (20-short)*value }
	used := func(paste string) float64 {
		return 1 - of("10 g", "sunflower", paste, "0.9 g").Parts[0].Superfat.Low.Float()
	}
	if got, want := used("false")/used("true"), demand(0.6)/demand(0.9); math.Abs(got-want) > 1e-9 {
		t.Errorf("%.12f, want %.12f", got, want)
	}
	text, err := of("3.4 g", "water", "true", "1 g").MarshalJSON()
	if err != nil || !strings.Contains(string(text), `"mass_g":3.4,"weigh_g":3,"carrier":"water","carrier_g":6.8,"carrier_weigh_g":7,"from":"formula","paste_g":10.2,"paste_weigh_g":10}`) {
		t.Errorf("%s, %v", text, err)
	}
}

// 0.05 % of 320 g on a scale of 0.1 g is 0.2 g, 25 % more: the colour is that of 0.2 g.
func TestTheColourIsThatOfWhatIsWeighed(t *testing.T) {
	b := plainFormula().with("size", `{"batter": "320 g"}`, "scale", `"0.1 g"`, "swatches", duskSwatches(t), "parts", coloured(pigment("iron-oxide-red", "0.05 % of batter"))).batch(t)
	p := tinted(t, b).Parts[0]
	load := p.Loads[0]
	if load.Weighed.String() != "0.2 g" || load.OfBatter.PercentText(6) != "0.0625" {
		t.Errorf("%+v", load)
	}
	same := tinted(t, plainFormula().with("size", `{"batter": "320 g"}`, "scale", `"1 mg"`, "swatches", duskSwatches(t), "parts", coloured(pigment("iron-oxide-red", "0.0625 % of batter"))).batch(t)).Parts[0]
	meant := tinted(t, plainFormula().with("size", `{"batter": "320 g"}`, "scale", `"1 mg"`, "swatches", duskSwatches(t), "parts", coloured(pigment("iron-oxide-red", "0.05 % of batter"))).batch(t)).Parts[0]
	if d := p.Colour.Difference(same.Colour.Lab); d > 1e-9 {
		t.Errorf("%g from the same load", d)
	}
	if d := p.Colour.Difference(meant.Colour.Lab); d < 1 {
		t.Errorf("only %g from what was meant", d)
	}
}

// withMatch is one part whose colour is matched.
func withMatch(target string, lines ...string) string {
	return `{"part": "glow", "share": "100 %", "target": ` + target + `, "match": [` + strings.Join(lines, ", ") + `]}`
}

func most(id, load string) string { return `{"colourant": "` + id + `", "most": "` + load + `"}` }

// The colour of known loads, given as a target, is met with loads that cost no more, and
// the batch weighs them; all that holds of the loads holds of the masses.
func TestAMatchGoesThroughTheBatch(t *testing.T) {
	known := tinted(t, plainFormula().with("swatches", duskSwatches(t), "parts",
		coloured(pigment("titanium-dioxide", "0.4 % of batter"), pigment("iron-oxide-yellow", "0.06 % of batter"))).batch(t)).Parts[0].Colour
	target := `{"lab": [` + fixed(known.L) + ", " + fixed(known.A) + ", " + fixed(known.B) + `]}`
	carrier := `, "carrier": {"liquid": "water", "ratio": "2"}}`
	b := plainFormula().with("swatches", duskSwatches(t), "parts", withMatch(target,
		strings.TrimSuffix(most("titanium-dioxide", "1.5 % of oils"), "}")+carrier, most("iron-oxide-red", "0.5 % of batter"), most("iron-oxide-yellow", "2 g"))).batch(t)
	p := tinted(t, b).Parts[0]
	if p.Matched == nil || !p.Reachable || p.Matched.Best > 0.01 || p.Difference > 0.11 {
		t.Fatalf("%+v, %g", p.Matched, p.Difference)
	}
	additions := b.Parts[0].Additions
	if len(additions) < 2 || additions[0].Name != "titanium-dioxide" || additions[0].Carrier == nil || additions[0].Kind != soap.Colourant {
		t.Fatalf("%+v", additions)
	}
	needed := 0
	for i, l := range p.Loads {
		if !l.Sought || l.Colourant != b.Formula.Parts[0].Match[i].Colourant {
			t.Errorf("%+v", l)
		}
		if l.At != tint.AtNone {
			needed++
		}
	}
	if needed == len(p.Loads) || len(additions) != needed {
		t.Errorf("%d of %d loads are needed, and %d are weighed", needed, len(p.Loads), len(additions))
	}
	if got := p.Loads[0].OfBatter.Float(); math.Abs(got-0.004) > 0.0006 {
		t.Errorf("%v of white", p.Loads[0].OfBatter)
	}
	if len(b.Formula.Parts[0].Colourants) != 0 || len(b.Formula.Parts[0].Match) != 3 {
		t.Error("the formula of the batch is not the one asked for")
	}
	// What was found, typed back as loads, gives the same batch.
	var again []string
	for i, l := range p.Loads {
		if l.At == tint.AtNone {
			continue
		}
		line := pigment(l.Colourant, l.Found.PercentText(8)+" % of batter")
		if i == 0 {
			line = strings.TrimSuffix(line, "}") + carrier
		}
		again = append(again, line)
	}
	typed := plainFormula().with("swatches", duskSwatches(t), "parts", coloured(again...)).batch(t)
	if !typed.Superfat.Low.Equal(b.Superfat.Low) || typed.Water != b.Water || typed.Parts[0].Poured != b.Parts[0].Poured {
		t.Errorf("%v, %v", typed.Parts[0].Poured, b.Parts[0].Poured)
	}
}

func fixed(v float64) string { return strconv.FormatFloat(v, 'f', 6, 64) }

// Where a target is out of reach, what holds it back is said; and a load at its most is
// that load, as it is written, in the batch.
func TestALoadAtItsMostIsAsWritten(t *testing.T) {
	found := 0
	for _, load := range []string{"0.3 % of oils", "0.2 % of batter", "1.7 g"} {
		b := plainFormula().with("swatches", duskSwatches(t), "parts", withMatch(`{"lab": [10, 0, 0]}`, most("ultramarine-blue", load))).batch(t)
		p := tinted(t, b).Parts[0]
		if p.Reachable || !slices.Equal(p.Matched.AtMost, []string{"ultramarine-blue"}) || !slices.Contains(p.Matched.Missing, "darker") {
			t.Fatalf("%s: %+v, %+v", load, p.Loads[0], p.Matched)
		}
		// White that costs nothing is not spared: at its most it is in the batch as it is written.
		b = plainFormula().with("swatches", duskSwatches(t), "pigments", `{"colourant": "titanium-dioxide", "price": "0 per 1 kg"}, {"colourant": "ultramarine-blue", "price": "500 per 1 g"}`,
			"parts", withMatch(`{"lab": [97, 0, 2]}`, most("titanium-dioxide", load), most("ultramarine-blue", "1 g"))).batch(t)
		if p = tinted(t, b).Parts[0]; p.Loads[0].At != tint.AtMost {
			continue
		}
		found++
		if apart := p.Loads[0].Found.Float() - p.Loads[0].OfBatter.Float(); math.Abs(apart) > 1e-6 {
			t.Errorf("%s: found %v, weighed %v of batter", load, p.Loads[0].Found, p.Loads[0].OfBatter)
		}
		if w := p.Whiter; w == nil || w.Seen || math.Abs(w.Most.Float()-p.Loads[0].OfBatter.Float()) > 1e-6 {
			t.Errorf("%s: %+v", load, w)
		}
		same := plainFormula().with("swatches", duskSwatches(t), "parts", coloured(pigment("titanium-dioxide", load))).batch(t)
		if b.Parts[0].Additions[0].Mass != same.Parts[0].Additions[0].Mass {
			t.Errorf("%s: %v, %v", load, b.Parts[0].Additions[0].Mass, same.Parts[0].Additions[0].Mass)
		}
	}
	if found == 0 {
		t.Error("no load was at its most")
	}
}

// A target without a match is held against what is weighed; about 1 away it is met.
func TestATargetWithoutAMatch(t *testing.T) {
	is := tinted(t, plainFormula().with("swatches", duskSwatches(t), "parts", coloured(pigment("iron-oxide-red", "1 g"))).batch(t)).Parts[0].Colour.Lab
	for _, row := range []struct {
		by   float64
		want bool
	}{{0, true}, {0.9, true}, {1.2, false}} { // in L*, whose weight at about 48 is 1.01
		target := `{"lab": [` + fixed(is.L+row.by) + ", " + fixed(is.A) + ", " + fixed(is.B) + `]}`
		p := tinted(t, plainFormula().with("swatches", duskSwatches(t), "parts", strings.TrimSuffix(coloured(pigment("iron-oxide-red", "1 g")), "}")+`, "target": `+target+`}`).batch(t)).Parts[0]
		near := tinted(t, plainFormula().with("swatches", duskSwatches(t), "parts", strings.TrimSuffix(coloured(pigment("iron-oxide-red", "1 g")), "}")+`, "target": `+target+`, "match": [`+most("iron-oxide-yellow", "0.001 g")+`]}`).batch(t)).Parts[0]
		if near.Reachable != row.want || near.Matched == nil {
			t.Errorf("%g lighter, with next to nothing to match with: %+v", row.by, near.Matched)
		}
		if p.Reachable != row.want || p.Matched != nil || math.Abs(p.Difference-is.Difference(tint.Lab{L: is.L + row.by, A: is.A, B: is.B})) > 1e-5 {
			t.Errorf("%g lighter: %+v", row.by, p)
		}
	}
	// A target at the swatches' bands, and one that is of others.
	spectrum := strings.Repeat("0.4, ", 30) + "0.4"
	b := plainFormula().with("swatches", duskSwatches(t), "parts", `{"part": "glow", "share": "100 %", "target": {"reflectance": [`+spectrum+`]}}`).batch(t)
	if p := tinted(t, b).Parts[0]; p.Target == nil || math.Abs(p.Target.L-(116*math.Cbrt(0.4)-16)) > 1e-9 { // CIE 15
		t.Errorf("%+v", p.Target)
	}
	_, err := soap.ReadFormula(strings.NewReader(plainFormula().with("swatches", duskSwatches(t), "parts", `{"part": "glow", "share": "100 %", "target": {"reflectance": [0.4, 0.4]}}`).text()))
	if err == nil || !strings.Contains(err.Error(), "parts[0].target.reflectance: has 2 values, and the swatches 31 bands") {
		t.Error(err)
	}
}

// Prices decide between two ways to one colour, and the cost is that of what is weighed.
func TestPricesDecide(t *testing.T) {
	price := func(blue, night string) string {
		return `{"colourant": "titanium-dioxide", "price": "10 per 100 g"}, {"colourant": "ultramarine-blue", "price": "` + blue + ` per 100 g"}, {"colourant": "iron-oxide-red", "price": "` + night + ` per 100 g"}, {"colourant": "iron-oxide-yellow", "price": "8 per 100 g"}`
	}
	for _, prices := range [][2]string{{"1", "900"}, {"900", "1"}} {
		p := tinted(t, plainFormula().with("swatches", duskSwatches(t), "pigments", price(prices[0], prices[1]), "parts", withMatch(`{"lab": [60, 3, 2]}`,
			most("titanium-dioxide", "1 % of oils"), most("ultramarine-blue", "2 % of oils"), most("iron-oxide-red", "1 % of oils"), most("iron-oxide-yellow", "1 % of oils"))).batch(t)).Parts[0]
		want := 0.0
		for i, l := range p.Loads {
			per, _ := strconv.ParseFloat([]string{"10", prices[0], prices[1], "8"}[i], 64)
			want += per / 100 * l.Weighed.Grams()
		}
		if !p.Cost.Given() || math.Abs(p.Cost.Float()-want) > 1e-9 {
			t.Errorf("%v, want %g", p.Cost, want)
		}
	}
	if p := tinted(t, plainFormula().with("pigments", `{"colourant": "ultramarine-blue", "price": "3 per 10 g"}`, "parts", coloured(pigment("ultramarine-blue", "4 g"), pigment("mica", "1 g"))).batch(t)).Parts[0]; p.Cost.Given() {
		t.Errorf("a price is lacking, and the cost is %v", p.Cost)
	}
}

// Where one price is lacking, none counts: the least pigment is looked for.
func TestAPriceThatIsLackingMakesNoneCount(t *testing.T) {
	of := func(pigments string) []soap.TintLoad {
		p := plainFormula().with("swatches", duskSwatches(t), "parts", withMatch(`{"lab": [60, 3, 2]}`,
			most("titanium-dioxide", "1 % of oils"), most("ultramarine-blue", "2 % of oils"), most("iron-oxide-red", "1 % of oils"), most("iron-oxide-yellow", "1 % of oils")))
		if pigments != "" {
			p.with("pigments", pigments)
		}
		return tinted(t, p.batch(t)).Parts[0].Loads
	}
	without, some := of(""), of(`{"colourant": "titanium-dioxide", "price": "900 per 1 g"}, {"colourant": "iron-oxide-red", "price": "0 per 1 g"}`)
	for i := range without {
		if !without[i].Found.Equal(some[i].Found) {
			t.Errorf("%+v, %+v", without[i], some[i])
		}
	}
}

// What has a load beside a match counts as it is weighed: 0.05 % of 320 g is 0.2 g on a scale
// of 0.1 g, and the target is that with 1.6 g of white.
func TestBesideAMatchALoadCountsAsItIsWeighed(t *testing.T) {
	p := plainFormula().with("size", `{"batter": "320 g"}`, "scale", `"0.1 g"`, "swatches", duskSwatches(t))
	is := tinted(t, p.with("parts", coloured(pigment("iron-oxide-red", "0.2 g"), pigment("titanium-dioxide", "1.6 g"))).batch(t)).Parts[0].Colour.Lab
	target := `"target": {"lab": [` + fixed(is.L) + ", " + fixed(is.A) + ", " + fixed(is.B) + `]}, "match": [` + most("titanium-dioxide", "2 % of oils") + `]}`
	b := p.with("parts", strings.TrimSuffix(coloured(pigment("iron-oxide-red", "0.05 % of batter")), "}")+", "+target).batch(t)
	if m := tinted(t, b).Parts[0]; m.Matched.Best > 0.01 || m.Loads[1].Weighed.String() != "1.6 g" && m.Loads[1].Weighed.String() != "1.5 g" {
		t.Errorf("%+v, %+v", m.Matched, m.Loads)
	}
}

// The lightest first: by what is predicted, else by the target, else by the look.
func TestOrderOfWork(t *testing.T) {
	part := func(name, more string) string { return `{"part": "` + name + `", "share": "20 %"` + more + `}` }
	b := plainFormula().with("parts", strings.Join([]string{
		part("any", ""), part("dark", `, "target": {"srgb": "#203040"}`), part("pale", `, "look": "pale"`), part("white", `, "look": "white"`), part("light", `, "target": {"lab": [90, 0, 5]}`),
	}, ", ")).batch(t)
	if got := tinted(t, b).Order; !slices.Equal(got, []string{"white", "light", "pale", "dark", "any"}) {
		t.Error(got)
	}
	b = plainFormula().with("swatches", duskSwatches(t), "parts", strings.Join([]string{
		part("night", `, "look": "white", "colourants": [`+pigment("ultramarine-blue", "2 % of oils")+`]`), part("unknown", `, "target": {"lab": [50, 0, 0]}, "colourants": [`+pigment("mica", "1 g")+`]`),
		part("snow", `, "colourants": [`+pigment("titanium-dioxide", "1 % of oils")+`]`), part("plain", ""), part("rust", `, "colourants": [`+pigment("iron-oxide-red", "0.5 % of oils")+`]`),
	}, ", ")).batch(t)
	c := tinted(t, b)
	if c.Order[0] != "snow" || c.Order[1] != "plain" || c.Order[4] != "night" {
		t.Error(c.Order)
	}
	if p := c.Parts[1]; p.Colour != nil || !slices.Equal(p.Unknown, []string{"Mica"}) || !slices.Equal(p.Pearls, []string{"Mica"}) {
		t.Errorf("%+v", p)
	}
}

// A coat on a piece is predicted where the base was read over black and white.
func TestACoatIsAThinLayer(t *testing.T) {
	vessels := `{"vessels": [{"vessel": "cup", "part": "base", "count": 2, "volume": "80 mL"}, {"vessel": "veil", "part": "cloud", "on": "cup", "coat": {"area": "20 cm²", "thickness": "0.5 mm"}}]}`
	parts := `{"part": "base", "colourants": [` + pigment("ultramarine-blue", "1.5 % of oils") + `]}, {"part": "cloud", "colourants": [` + pigment("titanium-dioxide", "0.3 % of oils") + `]}`
	c := tinted(t, plainFormula().with("size", vessels, "swatches", duskSwatches(t), "parts", parts).batch(t))
	if coats := c.Parts[1].Coats; len(coats) != 1 || coats[0].Colour != nil || coats[0].Under != "base" || coats[0].Thickness.String() != "0.5 mm" {
		t.Fatalf("%+v", coats)
	}
	var set struct {
		Name  string           `json:"name"`
		Bands json.RawMessage  `json:"bands"`
		Read  []map[string]any `json:"read"`
	}
	if err := json.Unmarshal([]byte(duskSwatches(t)), &set); err != nil {
		t.Fatal(err)
	}
	base := set.Read[0]
	over := func(more float64) []float64 {
		var list []float64
		for _, r := range base["reflectance"].([]any) {
			list = append(list, math.Round(1e4*(r.(float64)+more))/1e4)
		}
		return list
	}
	base["over_black"], base["over_white"], base["thickness"], base["backing"] = over(-0.02), over(0.02), "2 mm", []float64{0.05, 0.88}
	delete(base, "reflectance")
	text, err := json.Marshal(set)
	if err != nil {
		t.Fatal(err)
	}
	c = tinted(t, plainFormula().with("size", vessels, "swatches", string(text), "parts", parts).batch(t))
	coat := c.Parts[1].Coats[0]
	if !c.Fit.Thin() || coat.Colour == nil || coat.Colour.L <= c.Parts[0].Colour.L || coat.Colour.L >= c.Parts[1].Colour.L {
		t.Errorf("%+v between %v and %v", coat.Colour, c.Parts[0].Colour.Lab, c.Parts[1].Colour.Lab)
	}
	// A breath of it leaves the colour of what lies below, a thick coat shows its own alone.
	for thickness, like := range map[string]int{"0.001 mm": 0, "20 mm": 1} {
		c := tinted(t, plainFormula().with("size", strings.ReplaceAll(vessels, "0.5 mm", thickness), "swatches", string(text), "parts", parts).batch(t))
		coat := c.Parts[1].Coats[0].Colour
		if near, far := coat.Difference(c.Parts[like].Colour.Lab), coat.Difference(c.Parts[1-like].Colour.Lab); near > 0.5 || far < 5 {
			t.Errorf("%s: %.2f from part %d, %.2f from the other", thickness, near, like, far)
		}
	}
}

// A batch without colour data, a view of it, and the zero value.
func TestTintWithoutSwatches(t *testing.T) {
	c := tinted(t, plainFormula().batch(t))
	if c.Fit.Given() || len(c.Parts) != 1 || c.Parts[0].Colour != nil || !slices.Equal(c.Order, []string{"lantern"}) {
		t.Errorf("%+v", c)
	}
	if _, err := (&soap.Batch{}).Tint(); err != nil {
		t.Error(err)
	}
	b := plainFormula().with("swatches", duskSwatches(t)).batch(t)
	b.Formula.Swatches.Read = nil
	if _, err := b.Tint(); err == nil || !strings.Contains(err.Error(), "swatches.read: is missing") {
		t.Error(err)
	}
}

// How much more white is looked at: to the end of what is usual of it alone, 1 % of oils.
func TestWhiterEndsAtWhatIsUsual(t *testing.T) {
	p := tinted(t, plainFormula().with("swatches", duskSwatches(t), "parts", coloured(pigment("titanium-dioxide", "0.2 % of oils"), pigment("iron-oxide-red", "1 g"))).batch(t)).Parts[0]
	one := tinted(t, plainFormula().with("swatches", duskSwatches(t), "parts", coloured(pigment("titanium-dioxide", "1 % of oils"))).batch(t)).Parts[0].Loads[0].OfBatter
	if p.Whiter == nil || math.Abs(p.Whiter.Most.Float()-one.Float()) > 1e-9 || math.Abs(p.Whiter.Now.Float()-one.Float()/5) > 1e-9 {
		t.Errorf("%+v, want up to %v", p.Whiter, one)
	}
}

// A danger is never left out of a view of the batch.
func TestATintCarriesTheDangers(t *testing.T) {
	b := plainFormula().with("superfat", `"0.1 %"`, "alkali", `{"kind": "sodium-hydroxide"}`, "scale", `"0.1 g"`, "parts", `{"part": "glow", "share": "40 %", "colourants": [{"colourant": "mica", "load": "0.01 g"}]},
		{"part": "dusk", "share": "rest", "colourants": [{"colourant": "kaolin", "load": "5 % of oils", "carrier": {"liquid": "hall-blend", "ratio": "3", "from": "formula"}}]}`).batch(t)
	codes := map[string]bool{}
	for _, f := range tinted(t, b).Findings {
		codes[f.Code] = true
	}
	if !codes["superfat-below-zero"] || !codes["rounding-coarse"] {
		t.Error(codes)
	}
}

// Where the batter was weighed, the colour is that of what is in it.
func TestTheColourIsThatOfTheBatterAsWeighed(t *testing.T) {
	p := plainFormula().with("swatches", duskSwatches(t), "parts", `{"part": "glow", "share": "50 %", "colourants": [`+pigment("iron-oxide-red", "1 g")+`]}, {"part": "dusk", "share": "rest"}`)
	plan := tinted(t, p.batch(t)).Parts[0].Loads[0]
	half := p.with("weighed", `{"stage": "parts", "parts": {"glow": {"batter": "350 g"}}}`).batch(t)
	got := tinted(t, half).Parts[0]
	batter := plan.OfOils.Float() / plan.OfBatter.Float() // the pot's, over its oils
	if l := got.Loads[0]; math.Abs(l.OfBatter.Float()-1.0/350) > 1e-9 || math.Abs(l.OfOils.Float()-batter/350) > 1e-9 {
		t.Errorf("%+v, planned %+v", l, plan)
	}
	same := plainFormula().with("swatches", duskSwatches(t), "parts", coloured(pigment("iron-oxide-red", fixed(100.0/350)+" % of batter"))).batch(t)
	if d := got.Colour.Difference(tinted(t, same).Parts[0].Colour.Lab); d > 0.01 {
		t.Errorf("%g from the same share", d)
	}
}

// A batch is its caller's own: whatever is done to its formula, nothing panics.
func TestATintOfAChangedBatch(t *testing.T) {
	of := func() soap.Batch {
		return plainFormula().with("swatches", duskSwatches(t), "parts", withMatch(`{"lab": [60, 0, 0]}`, most("titanium-dioxide", "1 % of oils"), most("ultramarine-blue", "1 g"))).batch(t)
	}
	for _, change := range []func(b *soap.Batch){
		func(b *soap.Batch) { b.Formula.Parts[0].Target = soap.Target{} },
		func(b *soap.Batch) { b.Formula.Parts = nil },
		func(b *soap.Batch) { b.Formula.Parts[0].Match = nil },
		func(b *soap.Batch) {
			b.Formula.Parts[0].Match = append(b.Formula.Parts[0].Match, soap.Match{Colourant: "mica"})
		},
		func(b *soap.Batch) { b.Formula.Swatches = nil },
		func(b *soap.Batch) { b.Formula.Pigments = nil },
	} {
		b := of()
		change(&b)
		if c, err := b.Tint(); err != nil || len(c.Parts[0].Loads) != 2 {
			t.Errorf("%v, %+v", err, c)
		}
	}
}

// More of a colourant than stood in any swatch is named.
func TestLoadsBeyondTheSwatches(t *testing.T) {
	for load, want := range map[string][]string{"0.3 % of batter": nil, "0.31 % of batter": {"Iron oxide red"}} {
		if p := tinted(t, plainFormula().with("swatches", duskSwatches(t), "parts", coloured(pigment("iron-oxide-red", load))).batch(t)).Parts[0]; !slices.Equal(p.Beyond, want) {
			t.Errorf("%s: %v", load, p.Beyond)
		}
	}
}

// What no pot can make of a match is said where it stands.
func TestAMatchThatTakesTooMuchWater(t *testing.T) {
	f, err := soap.ReadFormula(strings.NewReader(plainFormula().with("swatches", duskSwatches(t), "parts", withMatch(`{"lab": [97, 0, 2]}`,
		`{"colourant": "titanium-dioxide", "most": "1 % of oils", "carrier": {"liquid": "water", "ratio": "500"}}`)).text()))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := f.Batch(); err == nil || !strings.Contains(err.Error(), "parts[0].match[0].carrier") {
		t.Error(err)
	}
}

// A promise of a least superfat needs a range of an oil that a matched colourant comes in.
func TestAPromiseKnowsTheCarriersOfAMatch(t *testing.T) {
	_, err := soap.ReadFormula(strings.NewReader(plainFormula().with("superfat", `{"at_least": "1 %"}`, "swatches", duskSwatches(t), "parts", withMatch(`{"lab": [97, 0, 2]}`,
		`{"colourant": "titanium-dioxide", "most": "1 % of oils", "carrier": {"liquid": "goose-fat", "ratio": "2"}}`)).text()))
	if err == nil || !strings.Contains(err.Error(), `superfat.at_least: "goose-fat" has no range`) {
		t.Error(err)
	}
}

// Titanium dioxide by its Colour Index number is the white, an own one too, and nano is not.
func TestWhichColourantIsTheWhite(t *testing.T) {
	swatches := strings.ReplaceAll(duskSwatches(t), "titanium-dioxide", "moon-white")
	for own, want := range map[string]string{`"ci": ["77891"]`: "moon-white", `"ci": ["77891"], "nano": true`: "", `"ci": ["77947"]`: ""} {
		b := plainFormula().with("swatches", swatches, "pigments", `{"colourant": "moon-white", `+own+`}`).batch(t)
		if got := tinted(t, b).Fit.White(); got != want {
			t.Errorf("%s: %q", own, got)
		}
	}
}
