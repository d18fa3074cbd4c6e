package soap_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/units/cite"
)

// Melting points typed in a second time: upper ends in °C, recalled but for that of
// myristic acid.
const (
	blend    = `{"oil": "hall-blend", "share": "rest", "saponification": {"low": "189", "high": "191"}}`
	beeswax  = `{"oil": "beeswax", "share": "1 %"}`          // to 66 °C: up to 76 °C
	tallow   = `{"oil": "tallow-edible", "share": "50 %"}`   // to 50 °C: 60 °C, no more than for any oil
	stearin  = `{"oil": "palm-stearin", "share": "20 %"}`    // to 56 °C: up to 66 °C
	stearic  = `{"oil": "stearic-acid-95", "share": "70 %"}` // to 69 °C: up to 79 °C
	olive100 = `{"oil": "olive", "share": "100 %"}`
)

func oils(lines ...string) string { return strings.Join(lines, ", ") }

// Both sides of each limit: 60 °C of oils and batter, or 10 K above what has to be melted;
// 80 °C of the lye; 40 °C of the water that alkali goes into, the figure of the chapter for such water; and from above
// 80 °C on the question whether °F were meant.
func TestATemperatureIsHighAboveItsLimit(t *testing.T) {
	for _, row := range []struct {
		oils, at string
		subject  string // "" for no finding
		limit    string
		asks     bool
	}{
		{olive100, `{"oils": "60 °C"}`, "", "", false},
		{olive100, `{"oils": "60.01 °C"}`, "temperature.oils", "60", false},
		{olive100, `{"oils": "80 °C"}`, "temperature.oils", "60", false},
		{olive100, `{"oils": "80.01 °C"}`, "temperature.oils", "60", true},
		{olive100, `{"oils": "100 °F"}`, "", "", false}, // 37.8 °C
		{olive100, `{"oils": "176.1 °F"}`, "temperature.oils", "60", true},
		{olive100, `{"pour": "60 °C"}`, "", "", false},
		{olive100, `{"pour": "60.01 °C"}`, "temperature.pour", "60", false},
		{olive100, `{"lye": "80 °C"}`, "", "", false},
		{olive100, `{"lye": "80.01 °C"}`, "temperature.lye", "80", true},
		{olive100, `{"water": "40 °C", "room": "100 °C"}`, "", "", false},
		{olive100, `{"water": "40.01 °C"}`, "temperature.water", "40", false},
		{olive100, `{"water": "80 °C"}`, "temperature.water", "40", false},
		{olive100, `{"water": "80.01 °C"}`, "temperature.water", "40", true},
		{olive100, `{"water": "100 °C"}`, "temperature.water", "40", true},
		{oils(blend, beeswax), `{"water": "40.01 °C"}`, "temperature.water", "40", false}, // oils say nothing of the water
		{oils(blend, beeswax), `{"oils": "76 °C"}`, "", "", false},
		{oils(blend, beeswax), `{"oils": "76.01 °C"}`, "temperature.oils", "76", false},
		{oils(blend, beeswax), `{"pour": "76.01 °C"}`, "temperature.pour", "76", false},
		{oils(blend, beeswax), `{"lye": "80.01 °C"}`, "temperature.lye", "80", true}, // oils say nothing of the lye
		{oils(blend, tallow), `{"oils": "60 °C"}`, "", "", false},
		{oils(blend, tallow), `{"oils": "60.01 °C"}`, "temperature.oils", "60", false},
		{oils(blend, stearin), `{"oils": "66 °C"}`, "", "", false},
		{oils(blend, stearin), `{"oils": "66.01 °C"}`, "temperature.oils", "66", false},
		{oils(blend, beeswax, stearin), `{"oils": "76 °C"}`, "", "", false}, // the highest counts, wherever it stands
		{oils(blend, stearin, beeswax), `{"oils": "76 °C"}`, "", "", false},
		{blend, `{"oils": "60.01 °C"}`, "temperature.oils", "60", false}, // nothing is known of an own oil
	} {
		got := found(plainFormula().with("oils", row.oils, "temperature", row.at).batch(t), "temperature-high")
		if row.subject == "" {
			if len(got) > 0 {
				t.Errorf("%s of %s: %+v", row.at, row.oils, got)
			}
			continue
		}
		if len(got) != 1 || got[0].Severity != warning || got[0].Subject != row.subject ||
			got[0].Limit.Text(2) != row.limit || got[0].Unit != "°C" || got[0].Source.How != cite.CommonPractice {
			t.Errorf("%s of %s: %+v, want %s against %s", row.at, row.oils, got, row.subject, row.limit)
			continue
		}
		if strings.Contains(got[0].Message(), "°F") != row.asks {
			t.Errorf("%s: %s", row.at, got[0].Message())
		}
	}
	// A slip for °F is told of oils and of lye.
	both := found(plainFormula().with("temperature", `{"oils": "100 °C", "lye": "100 °C"}`).batch(t), "temperature-high")
	if len(both) != 2 || !strings.HasPrefix(both[0].Message(), "The oils at 100 °C") ||
		!strings.HasPrefix(both[1].Message(), "The lye at 100 °C") {
		t.Errorf("%+v", both)
	}
}

// A puck of 70 % stearic acid poured at 40 °C sets in the pot: above 10 % of what melts above
// 40 °C, poured below the highest of their melting points or nobody knows how hot.
func TestWhatIsSolidWhenItIsPoured(t *testing.T) {
	acid := func(id, share string) string { return `{"oil": "` + id + `", "share": "` + share + `"}` }
	for _, row := range []struct {
		oils, pour string
		value      string // "" for no finding
		acids      bool
	}{
		{oils(blend, stearic), "40 °C", "69", true},
		{oils(blend, stearic), "68.99 °C", "69", true},
		{oils(blend, stearic), "69 °C", "", false},
		{oils(blend, stearic), "", "69", true},
		{oils(blend, acid("stearic-acid-95", "10 %")), "40 °C", "", false},
		{oils(blend, acid("stearic-acid-95", "10.0001 %")), "40 °C", "69", true},
		{oils(blend, acid("stearic-acid-95", "6 %"), acid("beeswax", "4 %")), "40 °C", "", false}, // together 10 %
		{oils(blend, acid("stearic-acid-95", "6 %"), acid("beeswax", "4.0001 %")), "40 °C", "69", true},
		{oils(blend, acid("beeswax", "11 %")), "40 °C", "66", false},
		{oils(blend, acid("beeswax", "11 %"), acid("stearic-acid-50", "1 %")), "60 °C", "66", true},
		{oils(blend, acid("myristic-acid", "11 %")), "54.4 °C", "", false},
		{oils(blend, acid("myristic-acid", "11 %")), "54.39 °C", "54.4", true},
		// liquid: to 16 °C
		{oils(blend, acid("oleic-acid", "50 %")), "20 °C", "", false},
		// a liquid wax: to 11 °C
		{oils(blend, acid("jojoba", "50 %")), "20 °C", "", false},
		// to 50 °C, no hardened fat
		{oils(blend, acid("tallow-edible", "50 %")), "35 °C", "", false},
		// a fraction, iodine 28 to 48
		{oils(blend, acid("palm-stearin", "50 %")), "35 °C", "", false},
		// to 35 °C
		{oils(blend, acid("cocoa-butter", "50 %")), "25 °C", "", false},
		// own: no melting point is known
		{
			`{"oil": "hall-hard", "share": "100 %", "saponification": {"low": "189", "high": "191"}, "iodine": "2"}`, "30 °C",
			"", false,
		},
		// A lot of palm stearin that was hardened in full, to 56 °C.
		{oils(blend, `{"oil": "palm-stearin", "share": "50 %", "iodine": "5"}`), "35 °C", "56", false},
		{oils(blend, `{"oil": "palm-stearin", "share": "50 %", "iodine": "5.01"}`), "35 °C", "", false},
	} {
		p := plainFormula().with("oils", row.oils)
		if row.pour != "" {
			p.with("temperature", `{"pour": "`+row.pour+`"}`)
		}
		got := found(p.batch(t), "solid-at-pour")
		if row.value == "" {
			if len(got) > 0 {
				t.Errorf("%s at %q: %+v", row.oils, row.pour, got)
			}
			continue
		}
		if len(got) != 1 || got[0].Severity != warning || got[0].Subject != "oils" || got[0].Value.Text(2) != row.value ||
			got[0].Limit.Given() != (row.pour != "") || got[0].Source.How != cite.Memory {
			t.Errorf("%s at %q: %+v", row.oils, row.pour, got)
			continue
		}
		if message := got[0].Message(); strings.Contains(message, "seizes") != row.acids ||
			strings.Contains(message, "nothing is said") != (row.pour == "") {
			t.Error(message)
		}
	}
}

// Alcohol at all, sugar above 5 %, where the lye gets above 40 °C or nobody says how cold its water is.
//
// By hand: 100 g of sodium hydroxide, 2.5 mol, give off about 107 kJ in 900 g of water at 25 °C (42.9 kJ a mole,
// recalled), and a kilogram of such lye takes about 3.76 kJ to warm by a kelvin (recalled): it gets to 53.5 °C. Water
// that is colder by a kelvin brings that down by 900 × 4.18 J / 3.76 kJ = 1.0 K. So the lye reaches 38.5 °C from water
// at 10 °C, and 41.5 °C from water at 13 °C. A lye of a third, of 8.3 mol, gets above 80 °C from ice water.
func TestWhatBoilsOverInHotLye(t *testing.T) {
	sugar, alcohol := `"water": "94 %", "sugar": "5.0001 %"`, `"water": "95 %", "alcohol": "4.8 %"`
	for _, row := range []struct {
		holds, lye, water string
		names             []string
	}{
		{`"water": "95 %", "sugar": "5 %"`, "33 %", "", nil},
		{`"water": "95 %", "sugar": "5 %"`, "33 %", "100 °C", nil},
		{sugar, "33 %", "", []string{"hall brew"}},
		{sugar, "33 %", "40.01 °C", []string{"hall brew"}},
		{sugar, "33 %", "40 °C", []string{"hall brew"}}, // the alkali heats it
		{sugar, "33 %", "0 °C", []string{"hall brew"}},
		{sugar, "10 %", "13 °C", []string{"hall brew"}},
		{sugar, "10 %", "10 °C", nil},
		{sugar, "10 %", "", []string{"hall brew"}},
		{`"water": "95 %", "alcohol": "0.0001 %"`, "33 %", "", []string{"hall brew"}},
		{alcohol, "33 %", "60 °C", []string{"hall brew"}},
		{alcohol, "33 %", "20 °C", []string{"hall brew"}},
		{alcohol, "10 %", "13 °C", []string{"hall brew"}},
		{alcohol, "10 %", "10 °C", nil},
		{`"water": "87 %", "fat": "4 %", "sugar": "4.8 %", "saponification": "225"`, "33 %", "", nil}, // milk
		{`"water": "18 %", "sugar": "80 %"`, "33 %", "", []string{"hall brew"}},                       // honey
	} {
		p := plainFormula().with("water", `{"lye_concentration": "`+row.lye+
			`", "liquids": [{"liquid": "plain tea", "share": "10 %", "water": "99 %"}, {"liquid": "hall brew", "share": "20 %", `+row.holds+`}]}`)
		if row.water != "" {
			p.with("temperature", `{"water": "`+row.water+`"}`)
		}
		got := found(p.batch(t), "wet-into-hot-lye")
		if len(row.names) == 0 {
			if len(got) > 0 {
				t.Errorf("%s at %q: %+v", row.holds, row.water, got)
			}
			continue
		}
		if len(got) != 1 || got[0].Severity != warning || got[0].Subject != "water" || got[0].Detail != "" ||
			!slices.Equal(got[0].Names, row.names) || got[0].Value.Given() != (row.water != "") ||
			!strings.Contains(got[0].Message(), "boil over") {
			t.Errorf("%s at %q: %+v", row.holds, row.water, got)
			continue
		}
		if row.lye == "10 %" && row.water != "" {
			if reached := got[0].Value.Float(); reached < 40.5 || reached > 42.5 {
				t.Errorf("%s of a lye of 10 %% from %s reaches %v °C, want about 41.5 °C", row.holds, row.water, reached)
			}
		}
	}
	// Of a stock of potassium hydroxide it is not known how warm it gets: that is no reason to pass it.
	b := plainFormula().with("alkali", `{"kind": "potassium-hydroxide", "stock": {"strength": "45 %"}}`, "temperature",
		`{"water": "20 °C"}`,
		"water", `{"lye_concentration": "25 %", "liquids": [{"liquid": "hall brew", "share": "20 %", `+sugar+`}]}`).batch(t)
	if got := found(b, "wet-into-hot-lye"); len(got) != 1 || !strings.Contains(got[0].Message(),
		"how hot the alkali makes it is not known") {
		t.Errorf("%+v", got)
	}
}

// What a name alone tells: alcohol or much sugar, wherever the label's figure of it is not given. A figure that is
// given counts, though it be zero: beer can be boiled.
func TestWhatBoilsOverIsKnownByItsName(t *testing.T) {
	for _, row := range []struct {
		name, figures string
		tells         bool
	}{
		{"honey", "", true},
		{"Honig", "", true},
		{"Bienenhonig", "", true},
		{"miel de lavande", "", true},
		{"honey water", "", true},
		{"rum", "", true},
		{"dark rum", "", true},
		{"beer", "", true},
		{"Beer, flat", "", true},
		{"Weizenbier", "", true},
		{"bière", "", true},
		{"cerveza", "", true},
		{"red wine", "", true},
		{"Rotwein", "", true},
		{"vin rouge", "", true},
		{"cider", "", true},
		{"mead", "", true},
		{"vodka", "", true},
		{"ethanol", "", true},
		{"spirits", "", true},
		{"milk powder", "", true},
		{"powdered goat milk", "", true},
		{"Magermilchpulver", "", true},
		{"lait en poudre", "", true},
		{"condensed milk", "", true},
		{"breast milk", "", true},
		{"maple syrup", "", true},
		{"Ahornsirup", "", true},
		{"sugar", "", true},
		{"azúcar", "", true},
		{"molasses", "", true},
		{"apple juice", "", true},
		{"Apfelsaft", "", true},
		{"alcohol-free beer", "", true}, // some have a little, and sugar
		{"beer", `, "alcohol": "0 %"`, false},
		{"beer", `, "sugar": "3 %"`, true}, // nothing is said of its alcohol
		{"honey water", `, "sugar": "5 %"`, false},
		{"honey water", `, "alcohol": "0 %"`, true},
		{"milk", "", false},
		{"goat milk", "", false},
		{"oat milk", "", false},
		{"buttermilk", "", false},
		{"coconut milk", "", false},
		{"tea", "", false},
		{"honeysuckle tea", "", false},
		{"rosemary tea", "", false},
		{"aloe vera juice", "", false},
		{"cucumber juice", "", false},
		{"Gurkensaft", "", false},
		{"rose water", "", false},
		{"rumpled rose tea", "", false},
		{"ginger tea", "", false},
		{"water without sugar", "", false},
		{"sugar-free tea", "", false},
		{"Tee, alkoholfrei", "", false},
		{"tea, alcohol free", "", false},
	} {
		b := plainFormula().with("water", `{"lye_concentration": "33 %", "liquids": [{"liquid": "`+row.name+
			`", "share": "20 %", "water": "90 %"`+row.figures+`}]}`).batch(t)
		got := found(b, "wet-into-hot-lye")
		if len(got) != map[bool]int{true: 1}[row.tells] {
			t.Errorf("%s%s: %+v", row.name, row.figures, got)
			continue
		}
		if row.tells && (got[0].Severity != warning || got[0].Detail != "name" || !slices.Equal(got[0].Names,
			[]string{row.name}) || !strings.Contains(got[0].Message(), "by its name")) {
			t.Errorf("%s%s: %+v", row.name, row.figures, got[0])
		}
	}
}

// The oils whose melting points are held, typed in again: all that are solid at room
// temperature, and the waxes and fatty acids.
func TestMeltingPointsTypedInAgain(t *testing.T) {
	for _, oil := range soap.Oils() {
		at := slices.IndexFunc(oil.Figures(), func(f soap.Figure) bool { return f.Name == "melting" })
		// that parts with its water first
		want := oil.Kind() == soap.Acid || oil.Kind() == soap.Wax && oil.ID() != "lanolin-hydrous"
		if at < 0 {
			if want {
				t.Errorf("%s has no melting point", oil.ID())
			}
			continue
		}
		f := oil.Figures()[at]
		if how := cite.Read; f.Unit != "°C" || (f.Source.How == how) != (oil.ID() == "myristic-acid") ||
			f.Source.How != how && f.Source.How != cite.Memory {
			t.Errorf("%s: %+v", oil.ID(), f)
		}
	}
}
