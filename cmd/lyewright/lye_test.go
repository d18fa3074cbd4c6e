package main

import (
	"encoding/json"
	"io"
	"maps"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/soap"
)

// asked gives what `lyewright lye` answers in JSON, a figure at most so far off.
func asked(t *testing.T, args ...string) map[string]any {
	t.Helper()
	stdout, stderr, status := lyewright("", append([]string{"lye"}, append(args, "-json")...)...)
	if status != done || stderr != "" {
		t.Fatalf("%v: exit %d, %s", args, status, stderr)
	}
	var object map[string]any
	if err := json.Unmarshal([]byte(stdout), &object); err != nil {
		t.Fatal(err)
	}
	return object
}

func near(t *testing.T, object map[string]any, key string, want, within float64) {
	t.Helper()
	got, ok := object[key].(float64)
	if !ok || math.Abs(got-want) > within {
		t.Errorf("%s is %v, want %v within %v", key, object[key], want, within)
	}
}

func absent(t *testing.T, object map[string]any, keys ...string) {
	t.Helper()
	for _, key := range keys {
		if value, found := object[key]; found {
			t.Errorf("%s is %v, must be left out", key, value)
		}
	}
}

// A printed exercise on two end points: 0.4 g of NaOH and Na2CO3, 0.1 N acid,
// 17.5 mL to phenolphthalein and 1.5 mL more to methyl orange, 4 % of carbonate
// (3.97 %; read). The hydroxide follows by arithmetic: (2 × 17.5 − 19.0) × 0.1 ×
// 39.997 / 400. To give it all 17.5 mL, 17.5 %, is a known mistake.
func TestATitrationToTwoEndPoints(t *testing.T) {
	found := asked(t, "titration", "-sample", "0.4 g", "-normality", "0.1", "-first", "17.5 mL", "-total", "19.0 mL")
	for _, key := range []string{"hydroxide_pct", "low_pct", "high_pct"} {
		near(t, found, key, 16.0*39.997/40, 1e-6)
	}
	near(t, found, "carbonate_pct", 3.97, 0.005)

	// Outer bounds by hand: the burette counts four times, the sample and the
	// normality stand at their unlucky ends.
	found = asked(t, "titration", "-sample", "1.5 g", "-normality", "1", "-first", "36.3 mL", "-total", "36.6 mL",
		"-balance", "0.01 g", "-burette", "0.05 mL", "-titrant", "0.2 %")
	near(t, found, "hydroxide_pct", 95.99, 0.005)
	near(t, found, "carbonate_pct", 2.12, 0.005)
	near(t, found, "low_pct", 35.8*0.998*39.997/15.1, 1e-6)
	near(t, found, "high_pct", 36.2*1.002*39.997/14.9, 1e-6)
}

func TestATitrationToOneEndPoint(t *testing.T) {
	one := []string{
		"titration", "-alkali", "potassium-hydroxide", "-sample", "1.5 g", "-normality", "1", "-total",
		"24 mL",
	}
	found := asked(t, one...)
	near(t, found, "high_pct", 24*56.105/15, 1e-6)
	absent(t, found, "hydroxide_pct", "carbonate_pct", "low_pct")
	found = asked(t, append(one, "-carbonate-max", "2 %")...)
	near(t, found, "low_pct", 24*56.105/15-2*0.8119, 1e-6) // an assay counts 0.8119 g of KOH for a gram of K2CO3
	absent(t, found, "hydroxide_pct", "carbonate_pct")
}

// 33.33 % from 20 °C: 108.2 °C with the heat of 1982, 104.4 °C with the older one
// (reckoned by hand with a mean heat capacity, everything at 20 °C), boiling at
// 121 °C. Here the alkali comes from the room's 20 °C, too.
func TestHowHotALyeGets(t *testing.T) {
	base := []string{"heat", "-water", "200 g", "-water-temperature", "20 °C", "-alkali-mass", "100 g", "-room", "20 °C"}
	found := asked(t, base...)
	near(t, found, "final_c", 108.2, 0.7)
	near(t, found, "rise_k", 88.2, 0.7)
	near(t, found, "boiling_c", 121, 0.5)
	found = asked(t, append(base, "-heat", "older")...)
	near(t, found, "final_c", 104.4, 0.7)
	found = asked(t, append(base, "-alkali", "potassium-hydroxide", "-purity", "85 %")...)
	absent(t, found, "boiling_c")
	if found["hot"] != true {
		t.Errorf("a bound of %v °C is not hot", found["final_c"])
	}
}

// The published density of 50 % NaOH at 20 °C is 1.5253 g/mL, and it begins to
// crystallise near 11 to 12 °C (Perry, recalled; phase diagram, read off a plot).
func TestWhatALyeIsLike(t *testing.T) {
	found := asked(t, "density", "-strength", "50 %", "-temperature", "20 °C", "-mass", "100 g")
	near(t, found, "density_g_per_ml", 1.5253, 0.004*1.5253)
	near(t, found, "volume_ml", 100/1.5253, 0.4)
	near(t, found, "crystallises_c", 11.5, 1)
	near(t, found, "boiling_c", 146, 0.1)
	// A hydrometer in the same lye reads the strength back.
	read := asked(t, "density", "-reading", "1.5229 g/mL", "-temperature", "68 °F")
	near(t, read, "strength_pct", 50, 0.01)
	if read["upper"] != true {
		t.Error("a reading is not marked as an upper figure")
	}
	potassium := asked(t, "density", "-alkali", "potassium-hydroxide", "-strength", "30 %", "-temperature", "20 °C")
	// CRC Handbook, 102nd edition: 1.2819; ICT, recalled: 1.2905 at 15 °C
	near(t, potassium, "density_g_per_ml", 1.2905, 0.01)
	absent(t, potassium, "crystallises_c", "boiling_c")
	if note, _ := potassium["note"].(string); !strings.Contains(note, "does not crystallise") {
		t.Errorf("nothing says why: %q", note)
	}
	strong := asked(t, "density", "-alkali", "potassium-hydroxide", "-strength", "46 %", "-temperature", "20 °C")
	absent(t, strong, "crystallises_c")
	if note, _ := strong["note"].(string); !strings.Contains(note, "not known") {
		t.Errorf("above 45 %% nothing says that no figure is held: %q", note)
	}
}

func TestAStockLyeIsMadeAndThinned(t *testing.T) {
	made := asked(t, "stock", "-strength", "49 %", "-make", "1 kg", "-purity", "98 %")
	near(t, made, "alkali_g", 500, 1e-6)
	near(t, made, "water_g", 500, 1e-6)
	thinned := asked(t, "stock", "-strength", "50 %", "-hydroxide", "100 g", "-lye", "25 %")
	near(t, thinned, "stock_g", 200, 1e-6)
	near(t, thinned, "water_g", 200, 1e-6)
}

// Each is answered as text and as an object.
var lyeQuestions = map[string]string{
	"titration": "titration|-sample|1.5 g|-normality|1|-first|36.3 mL|-total|36.6 mL|-balance|0.01 g|-burette|0.05 " +
		"mL|-titrant|0.2 %",
	"exact":         "titration|-sample|0.4 g|-normality|0.1|-first|17.5 mL|-total|19.0 mL",
	"one-point":     "titration|-sample|1.5 g|-normality|1|-total|36.6 mL",
	"one-point-koh": "titration|-sample|1.5 g|-normality|1|-total|24 mL|-carbonate-max|2 %|-alkali|potassium-hydroxide",
	"solution":      "titration|-sample|2 g|-normality|1|-first|25 mL|-total|25.1 mL|-burette|0.05 mL",
	"heat":          "heat|-water|200 g|-water-temperature|20 °C|-alkali-mass|100 g",
	"heat-ice":      "heat|-water|100 g|-water-temperature|59 °F|-alkali-mass|100 g|-ice|40 g|-room|20 °C|-heat|older",
	"heat-koh": "heat|-water|200 g|-water-temperature|20 °C|-alkali-mass|100 " +
		"g|-alkali|potassium-hydroxide|-purity|86 %",
	"density":        "density|-strength|33 %|-temperature|40 °C|-mass|350 g",
	"density-cold":   "density|-strength|20 %|-temperature|0 °C",
	"hydrometer":     "density|-reading|1.33 g/mL|-temperature|25 °C",
	"density-koh":    "density|-strength|48 %|-temperature|20 °C|-alkali|potassium-hydroxide",
	"hydrometer-koh": "density|-reading|1.3 g/mL|-temperature|20 °C|-alkali|potassium-hydroxide",
	"stock":          "stock|-strength|50 %|-make|1 kg|-purity|98 %",
	"stock-koh":      "stock|-strength|45 %|-make|500 g|-alkali|potassium-hydroxide",
	"everyday-name":  "stock|-strength|45 %|-make|500 g|-alkali|Caustic Soda",
	"thinned":        "stock|-strength|50 %|-hydroxide|100 g|-lye|33 %",
}

func TestTheLyePrintsAsItsGoldenFiles(t *testing.T) {
	for name, args := range lyeQuestions {
		stdout, stderr, status := lyewright("", append([]string{"lye"}, strings.Split(args, "|")...)...)
		if status != done || stderr != "" {
			t.Errorf("%s: exit %d, %q", name, status, stderr)
		}
		matchGolden(t, golden+"/lye-"+name+".txt", stdout)
		for line := range strings.Lines(stdout) {
			if len([]rune(line)) > 79 {
				t.Errorf("%s: a line of %d letters: %s", name, len([]rune(line))-1, line)
			}
		}
		flat := strings.Join(strings.Fields(stdout), " ")
		for _, caution := range []string{
			"Alkali burns skin and can blind", "tight goggles, alkali-proof gloves and long sleeves",
			"never the water to the alkali", "no aluminium",
			"15 minutes or more", "get medical help", "do not neutralise", "labels and safety data sheets", "local rules",
		} {
			if !strings.Contains(flat, caution) {
				t.Errorf("%s: shows a lye without saying %q", name, caution)
			}
		}
		for _, never := range []string{"NaN", "not given", "%!", "  %"} {
			if strings.Contains(stdout, never) {
				t.Errorf("%s: prints %q", name, never)
			}
		}
	}
}

func TestTheLyeAnswersInJSONWithItsKeysInOrder(t *testing.T) {
	keys := map[string]string{
		"titration": "hydroxide_pct:n? carbonate_pct:n? low_pct:n? high_pct:n findings:l source:t",
		"heat":      "strength_pct:n final_c:n rise_k:n boiling_c:n? hot:b extrapolated:b source:t",
		"density": "strength_pct:n upper:b? density_g_per_ml:n volume_ml:n? crystallises_c:n? note:t? boiling_c:n? " +
			"source:t",
		"stock": "strength_pct:n alkali_g:n? stock_g:n? water_g:n",
	}
	for name, args := range lyeQuestions {
		list := strings.Split(args, "|")
		stdout, stderr, status := lyewright("", append(append([]string{"lye"}, list...), "-json")...)
		if status != done || stderr != "" || strings.Count(stdout, "\n") != 1 {
			t.Errorf("%s: exit %d, %q, %q", name, status, stderr, stdout)
			continue
		}
		matchGolden(t, golden+"/lye-"+name+".json", stdout)
		o := keyed(t, name, decode(t, stdout), "schema:t data_edition:t alkali:t asked:t? "+keys[list[0]])
		for _, key := range o.keys {
			if !strings.Contains(" schema:t data_edition:t alkali:t asked:t? "+keys[list[0]], " "+key+":") {
				t.Errorf("%s: %s is no key of it", name, key)
			}
			figure, isNumber := o.values[key].(json.Number)
			_, decimals, _ := strings.Cut(figure.String(), ".")
			if temperature := strings.HasSuffix(key, "_c") || strings.HasSuffix(key, "_k"); isNumber && temperature &&
				len(decimals) > 2 {
				t.Errorf("%s: %s is %s, at most two decimals", name, key, figure)
			}
		}
		if o.values["schema"] != "lye-"+list[0]+"/1" || o.values["data_edition"] != soap.DataEdition() ||
			(o.values["alkali"] == "potassium-hydroxide") != strings.HasSuffix(name, "koh") {
			t.Errorf("%s: %v, %v, %v", name, o.values["schema"], o.values["data_edition"], o.values["alkali"])
		}
		if _, found := o.values["crystallises_c"]; list[0] == "density" && found == (o.values["note"] != nil) {
			t.Errorf("%s: a note stands where, and only where, no temperature of crystallising does", name)
		}
	}
}

// What can be pasted into a formula file is taken there.
func TestARangeFromATitrationGoesIntoAFormula(t *testing.T) {
	for name, stands := range map[string]string{
		"titration": `"purity": {"low":`, "one-point-koh": `"purity": {"low":`,
		"solution": `"stock": {"strength":`,
	} {
		args := strings.Split(lyeQuestions[name], "|")
		stdout, _, _ := lyewright("", append([]string{"lye"}, args...)...)
		_, pasted, found := strings.Cut(stdout, "In a formula file:\n")
		pasted, _, _ = strings.Cut(pasted, "\n\n")
		if !found || !strings.Contains(strings.Join(strings.Fields(pasted), " "), stands) {
			t.Errorf("%s: offers %q", name, pasted)
			continue
		}
		kind := "sodium-hydroxide"
		if strings.HasSuffix(name, "koh") {
			kind = "potassium-hydroxide"
		}
		formula := `{"formula": "bars", "oils": [{"oil": "olive", "share": "rest"}], "alkali": [{"kind": "` + kind + `", ` + pasted + `}],
			"superfat": "6 %", "water": {"per_alkali": "3.5"}, "size": {"oils": "800 g"}, "parts": [{"part": "base", "share": "rest"}]}`
		if _, stderr, status := lyewright(formula, "batch", "-json", "-"); status > dangerous || stderr != "" {
			t.Errorf("%s: exit %d, %s", name, status, stderr)
		}
	}
}

// Every option of a topic is explained in its paragraph, and every one that is
// named there is an option of it; what the help shows works.
func TestTheHelpOnLyeNamesItsOptions(t *testing.T) {
	help, _, _ := lyewright("", "help", "lye")
	for _, args := range [][]string{
		{"lye", "-h"},
		{"lye", "--help"},
		{"lye", "help"},
		{"lye", "heat", "-h"},
		{"lye", "stock", "-json", "--help"},
		{"help", "lye", "heat"},
	} {
		if got, stderr, status := lyewright("", args...); got != help || status != done || stderr != "" {
			t.Errorf("%v: exit %d, %.60q, %q", args, status, got, stderr)
		}
	}
	paragraphs := strings.Split(help, "\n\n")
	general := paragraphs[1]
	for _, option := range []string{"-alkali ", "-json"} {
		if !strings.Contains(general, option) {
			t.Errorf("%q does not explain %s", general, option)
		}
	}
	option := regexp.MustCompile(`(?m)(?:^|\s|\()-([a-z][a-z-]*)`)
	word := regexp.MustCompile(`"[^"]*"|\S+`)
	explained := 0
	for _, topic := range lyeTopics() {
		at := slices.IndexFunc(paragraphs, func(p string) bool {
			return strings.HasPrefix(p, "  lyewright lye "+topic.name+
				" ")
		})
		if at < 0 {
			t.Errorf("the help does not show lye %s", topic.name)
			continue
		}
		explained++
		named := map[string]bool{"alkali": true}
		for _, m := range option.FindAllStringSubmatch(paragraphs[at], -1) {
			named[m[1]] = true
		}
		if got, want := slices.Sorted(maps.Keys(named)), slices.Sorted(slices.Values(topic.options)); !slices.Equal(got,
			want) {
			t.Errorf("lye %s takes %v, the help names %v", topic.name, want, got)
		}
		shown := strings.ReplaceAll(paragraphs[at], "\n                    ", " ")
		for line := range strings.Lines(shown) {
			if args := word.FindAllString(line, -1); args[0] == "lyewright" {
				for i := range args {
					args[i] = strings.Trim(args[i], `"`)
				}
				if stdout, stderr, status := lyewright("", args[1:]...); status != done || stdout == "" || stderr != "" {
					t.Errorf("%v: exit %d, %q", args, status, stderr)
				}
			}
		}
	}
	if explained != 4 {
		t.Errorf("%d topics are shown", explained)
	}
}

func TestLyeAloneSaysWhatIsMissingAndHelps(t *testing.T) {
	help, _, _ := lyewright("", "help", "lye")
	stdout, stderr, status := lyewright("", "lye")
	if want := "lyewright: lye needs to know what is asked; write titration, heat, density, stock or acids behind it\n\n" +
		help; status != wrongInput || stdout != "" || stderr != want {
		t.Errorf("exit %d, %q, %q", status, stdout, stderr)
	}
	// standard error that breaks off within the help
	if status := run([]string{"lye"}, strings.NewReader(""), io.Discard,
		&full{left: len(stderr) - 1}); status != cannotIO {
		t.Errorf("cut short: exit %d", status)
	}
}

// A hydroxide is found by whatever name a formula may have for it, and the answer has both names. A name of several,
// and one of a solution, is refused with what is right here.
func TestTheLyeTakesTheNamesOfAnAlkaliThatAFormulaTakes(t *testing.T) {
	for name, want := range map[string]string{
		"caustic soda": "sodium-hydroxide", "NaOH": "sodium-hydroxide", "Ätznatron": "sodium-hydroxide",
		"Sodium Hydroxide": "sodium-hydroxide",
		"KOH":              "potassium-hydroxide", "potasse caustique": "potassium-hydroxide",
		"hidróxido de potasio": "potassium-hydroxide",
	} {
		question := []string{"lye", "stock", "-strength", "40 %", "-make", "1 kg", "-alkali", name}
		stdout, stderr, status := lyewright("", append(question, "-json")...)
		o, _ := decode(t, stdout).(object)
		if status != done || stderr != "" || o.values["alkali"] != want || o.values["asked"] != name {
			t.Errorf("%s: exit %d, %s%s", name, status, stdout, stderr)
		}
		page, _, _ := lyewright("", question...)
		if says := `The name "` + name + `" is read as ` + want + "."; !strings.HasPrefix(page, says) {
			t.Errorf("%s: %s", name, page)
		}
	}
	for name, want := range map[string]string{
		"lye":         "may mean potassium-hydroxide; or sodium-hydroxide",
		"soda":        "may mean sodium-hydroxide; or something else",
		"baking soda": "no hydroxide",
		"Natronlauge": "is a solution: enter as stock lye with its strength; write the hydroxide that is in it, " +
			"sodium-hydroxide or",
		"caustic": "is not an alkali that is known",
	} {
		stdout, stderr, status := lyewright("", "lye", "stock", "-strength", "40 %", "-make", "1 kg", "-alkali", name)
		if status != wrongInput || stdout != "" || !strings.Contains(stderr, `-alkali: "`+name+`" `) ||
			!strings.Contains(stderr, want) {
			t.Errorf("%s: exit %d, %s%s", name, status, stdout, stderr)
		}
	}
}

// Everything that is wrong comes together, each with its option.
func TestWhatIsWrongWithALyeIsSaidTogether(t *testing.T) {
	for args, want := range map[string][]string{
		"titration": {"-sample: is missing", "-normality: is missing", "-total: is missing"},
		"titration|-sample|2|-normality|1|-first|1 g": {
			`-sample: "2" has no unit`,
			`-first: "1 g" has the wrong unit for a volume`,
		},
		"titration|-sample|1 g|-normality|1|-first|9 mL|-total|18 mL":  {"no hydroxide is left in the sample"},
		"titration|-sample|1 g|-normality|1|-first|40 mL|-total|40 mL": {"is more than there can be"},
		"heat|-alkali|sodium|-water|200 g":                             {`-alkali: "sodium" is not an alkali that is known; did you mean sodium-hydroxide`, "-water-temperature: is missing", "-alkali-mass: is missing"},
		"heat|-water|100 g|-water-temperature|120 °C|-alkali-mass|10 g|-room|-5 °C": {"-water-temperature: \"120 °C\" is " +
			"not between 0 °C and 100 °C", "-room: \"-5 °C\" is not between"},
		"heat|-water|100 g|-water-temperature|20 °C|-alkali-mass|50 " +
			"g|-ice|2 kg": {`-ice: "2000 g" is more than the heat can melt`},
		"heat|-water|100 g|-water-temperature|20 °C|-alkali-mass|150 g": {"stronger than dissolves at 20 °C"},
		"heat|-water|100 g|-water-temperature|20 °C|-alkali-mass|50 " +
			"g|-heat|warm": {`-heat: "warm" is not a heat of solution that is known; write cautious or older`},
		"density|-strength|51 %|-temperature|101 °C": {"-strength: \"51 %\" is not between " +
			"0 % and 50 %", "-temperature: \"101 °C\" is not between"},
		"density|-strength|30 %|-reading|1.3 g/mL|-temperature|20 °C": {"-reading: \"1.3 g/mL\" does not go " +
			"with -strength"},
		"density|-strength|30 %|-reading|1.3 g/mL": {"-reading: \"1.3 g/mL\" does not go " +
			"with -strength", "-temperature: is missing"},
		"density|-strength|30 %|-temperature|20 °C|-mass|0 g": {`-mass: "0 g" is not above 0 g`},
		"density|-reading|1.3|-temperature|20": {
			`-reading: "1.3" has no unit`,
			`-temperature: "20" has no unit`,
		},
		// and not that 100 g are too much for the ice alone
		"heat|-water|200|-ice|50 g|-water-temperature|20 °C|-alkali-mass|100 g":    {`-water: "200" has no unit`},
		"heat|-water|100 g|-water-temperature|20 °C|-alkali-mass|50 g|-heat|odler": {"did you mean older?"},
		// as of a script's variable that is not set: never 100 %
		"heat|-water|100 g|-water-temperature|20 °C|-alkali-mass|50 g|-purity|": {"-purity: is empty"},
		"heat|-water|100 g|-water-temperature|20 °C|-alkali-mass|50 g|-alkali|": {"-alkali: is not an alkali that " +
			"is known"},
		// 52.5 % is too strong of one of the two alone
		"stock|-alkali|caustic|-strength|52.5 %|-make|1 kg": {`-alkali: "caustic" is not an alkali that is known`},
		"stock|-strength|50 %|-make|1 kg|-lye|33 %":         {"give -make, or -hydroxide and -lye"},
		"stock|-strength|50 %|-hydroxide|1 kg|-lye|33 " +
			"%|-purity|98 %": {`-purity: "98 %" does not go with -hydroxide and -lye`},
		"stock|-strength|50 %|-make|1 kg|-purity|49 %":         {`-purity: "49 %" is below the strength asked for`},
		"density|-reading|2 g/mL|-temperature|20 °C":           {`-reading: "2 g/mL" is not between`},
		"density|-strength|30 %|-temperature|20 °C|-mass|-3 g": {`-mass: "-3 g" is negative`},
		"stock|-strength|50 %":                                 {"give -make, or -hydroxide and -lye"},
		"stock|-strength|30 %|-hydroxide|100 g|-lye|33 %":      {`-strength: "30 %" is weaker than the lye asked for, 33 %`},
		"stock|-strength|60 %|-make|1 kg":                      {`-strength: "60 %" is not above 0 % and up to what dissolves at 20 °C, 52.1 %`},
		"dencity":                                              {`"dencity" is nothing that lye knows; did you mean density?`},
		"density|-strengh|30 %":                                {`"-strengh" is not an option of lye density; did you mean -strength?`},
		// all of it carbonate
		"titration|-sample|1 g|-normality|1|-first|0 " +
			"mL|-total|20 mL": {`-first: "0 mL" is not above 0 mL; leave it out where it was not read`},
		"titration|-sample|1 g|-normality|1|-first|0 mL|-total|0 mL": {
			`-first: "0 mL" is not above 0 mL`,
			`-total: "0 mL" is not above 0 mL`,
		},
		"density|-ice|50 g": {`"-ice" is not an option of lye density; see lyewright help lye density`},
		"-json|density":     {`{"schema":"error/1"`},
		"-alkali|density":   {`"-alkali" stands where lye is told what is asked; write one of titration, heat, density, stock, acids in front of it`},
		"density|33 %":      {`"33 %" is more than lye density needs`},
	} {
		var list []string
		if args != "" {
			list = strings.Split(args, "|")
		}
		stdout, stderr, status := lyewright("", append([]string{"lye"}, list...)...)
		if status != wrongInput || stdout != "" {
			t.Errorf("%s: exit %d, printed %q", args, status, stdout)
		}
		for _, piece := range want {
			if !strings.Contains(stderr, piece) {
				t.Errorf("%s: %q does not say %q", args, stderr, piece)
			}
		}
		if lines := strings.Count(stderr, "\n"); lines != len(want) {
			t.Errorf("%s: %d lines, want %d: %s", args, lines, len(want), stderr)
		}
	}
	_, stderr, status := lyewright("", "lye", "heat", "-json")
	var object struct {
		Schema string
		Errors []struct{ Path, Reason string }
	}
	if err := json.Unmarshal([]byte(stderr), &object); err != nil || status != wrongInput || object.Schema != "error/1" ||
		len(object.Errors) != 3 || object.Errors[0].Path != "-water" {
		t.Errorf("exit %d, %s", status, stderr)
	}
}
