package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

func base(path string) string { return strings.TrimSuffix(filepath.Base(path), ".json") }

func TestEveryFormulaPrintsAsItsGoldenFiles(t *testing.T) {
	for _, path := range names(t, formulas+"/*.json") {
		for suffix, args := range map[string][]string{
			".txt":         {"batch"},
			".oz.txt":      {"batch", "-units", "oz"},
			".working.txt": {"batch", "-working"},
			".json":        {"batch", "-json"},
			".check.txt":   {"check"},
		} {
			stdout, stderr, status := lyewright("", append(args, path)...)
			if want := map[bool]int{true: dangerous, false: done}[base(path) == "benchmark" || strings.HasPrefix(base(path), "too-much-")]; status != want || stderr != "" {
				t.Errorf("%v %s: exit %d, %q", args, path, status, stderr)
			}
			matchGolden(t, filepath.Join(golden, base(path)+suffix), strings.ReplaceAll(stdout, path, filepath.Base(path)))
		}
	}
}

func TestEveryScentedFormulaPrintsItsCapsAsItsGoldenFiles(t *testing.T) {
	for _, name := range []string{"scented-cups", "too-much-clove"} {
		for suffix, args := range map[string][]string{
			".cap.txt":      {"cap"},
			".cap.oz.txt":   {"cap", "-units", "oz"},
			".cap.ifra.txt": {"cap", "-law", "ifra"},
			".cap.json":     {"cap", "-json"},
			".cap.eu.json":  {"cap", "-json", "-law", "eu"},
		} {
			stdout, stderr, status := lyewright("", append(args, formulas+"/"+name+".json")...)
			if want := map[bool]int{true: dangerous, false: done}[name == "too-much-clove"]; status != want || stderr != "" {
				t.Errorf("%v %s: exit %d, %q", args, name, status, stderr)
			}
			matchGolden(t, golden+"/"+name+suffix, stdout)
		}
	}
}

func TestTheFragrancesPrintAsTheirGoldenFiles(t *testing.T) {
	table, _, _ := lyewright("", "fragrance")
	matchGolden(t, golden+"/fragrances.txt", table)
	ids := []string{"clove-bud", "geranium-bourbon", "lavender", "oakmoss-extract", "verbena-absolute", "ylang-ylang-extra"}
	full, _, _ := lyewright("", append([]string{"fragrance"}, ids...)...)
	matchGolden(t, golden+"/fragrances-in-full.txt", full)
	object, _, _ := lyewright("", append([]string{"fragrance", "-json"}, ids...)...)
	matchGolden(t, golden+"/fragrances.json", object)
}

func TestATintedFormulaPrintsAsItsGoldenFiles(t *testing.T) {
	for _, name := range []string{"lantern-dusk", "lantern-cups"} {
		for suffix, args := range map[string][]string{
			".tint.txt":    {"tint"},
			".tint.oz.txt": {"tint", "-units", "oz"},
			".tint.json":   {"tint", "-json"},
		} {
			stdout, stderr, status := lyewright("", append(args, formulas+"/"+name+".json")...)
			if status != done || stderr != "" {
				t.Errorf("%v %s: exit %d, %q", args, name, status, stderr)
			}
			matchGolden(t, golden+"/"+name+suffix, stdout)
		}
		page := filepath.Join(t.TempDir(), "page.html")
		if _, stderr, status := lyewright("", "tint", "-html", page, formulas+"/"+name+".json"); status != done || stderr != "" {
			t.Errorf("%s: exit %d, %q", name, status, stderr)
		}
		text, err := os.ReadFile(page)
		if err != nil {
			t.Fatal(err)
		}
		matchGolden(t, golden+"/"+name+".tint.html", string(text))
	}
}

func TestTheColourantsPrintAsTheirGoldenFiles(t *testing.T) {
	table, _, _ := lyewright("", "colourants")
	matchGolden(t, golden+"/colourants.txt", table)
	ids := []string{"aluminium-powder", "ferric-ferrocyanide", "madder", "mica", "titanium-dioxide", "ultramarine-blue"}
	full, _, _ := lyewright("", append([]string{"colourants"}, ids...)...)
	matchGolden(t, golden+"/colourants-in-full.txt", full)
	object, _, _ := lyewright("", append([]string{"colourants", "-json"}, ids...)...)
	matchGolden(t, golden+"/colourants.json", object)
}

func TestTheOilsPrintAsTheirGoldenFiles(t *testing.T) {
	table, _, _ := lyewright("", "oils")
	matchGolden(t, golden+"/oils.txt", table)
	full, _, _ := lyewright("", "oils", "olive", "macadamia", "stearic-acid-95")
	matchGolden(t, golden+"/oils-in-full.txt", full)
}

// number finds the mass of a line of the sheet: the first figure behind the
// name.
var massOfLine = regexp.MustCompile(`^(\[ \] |    )(.{46})\s*([0-9.]+)`)

func TestEveryTotalOfASheetIsTheSumOfTheLinesAboveIt(t *testing.T) {
	totals := 0
	for _, path := range names(t, formulas+"/*.json") {
		for _, unit := range []string{"g", "oz"} {
			stdout, _, _ := lyewright("", "batch", "-units", unit, path)
			sum, inAll, places := int64(0), int64(0), 0
			for line := range strings.Lines(stdout) {
				if strings.HasSuffix(line, "% hydroxide\n") {
					sum = 0 // acids are weighed before the lye, and are not of it
				}
				m := massOfLine.FindStringSubmatch(line)
				if m == nil {
					continue
				}
				whole, part, _ := strings.Cut(m[3], ".")
				mass, err := strconv.ParseInt(whole+part, 10, 64)
				if err != nil {
					t.Fatal(err)
				}
				name := strings.TrimSpace(m[2])
				switch name {
				case "Oils into the pot", "Lye", "Poured":
					if mass != sum || len(part) != places {
						t.Errorf("%s in %s: %s is %s, its lines add up to %d of the last place", path, unit, name, m[3], sum)
					}
					if name == "Poured" {
						inAll += sum
					}
					sum = 0
					totals++
				case "Poured in all":
					if mass != inAll {
						t.Errorf("%s in %s: %s is %s, the parts add up to %d", path, unit, name, m[3], inAll)
					}
				default:
					if m[1] == "[ ] " || strings.HasPrefix(name, "Batter") {
						sum += mass
						places = len(part)
					}
				}
			}
		}
	}
	if totals < 30 {
		t.Errorf("only %d totals were found", totals)
	}
}

func TestASheetIsSafeToRead(t *testing.T) {
	for _, path := range names(t, formulas+"/*.json") {
		for _, args := range [][]string{{"batch", "-working", path}, {"batch", "-units", "oz", path}} {
			stdout, _, status := lyewright("", args...)
			for line := range strings.Lines(stdout) {
				if n := len([]rune(strings.TrimSuffix(line, "\n"))); n > 78 {
					t.Errorf("%s: a line of %d columns: %q", path, n, line)
				}
			}
			for _, never := range []string{"NaN", "Inf", "not given", "%!", "  %\n"} {
				if strings.Contains(stdout, never) {
					t.Errorf("%s: prints %q", path, never)
				}
			}
			flat := strings.Join(strings.Fields(stdout), " ")
			mixed := "never the water to the alkali"
			if strings.Contains(stdout, ", stock lye") {
				mixed = "never the water into the stock lye"
			}
			for _, caution := range []string{
				"Alkali burns skin and can blind", "tight goggles, alkali-proof gloves", "no aluminium", mixed,
				"plenty of running water for 15 minutes", "get medical help", "local rules, come before this sheet",
			} {
				if !strings.Contains(flat, caution) {
					t.Errorf("%s: the sheet does not say %q", path, caution)
				}
			}
			firstMass := strings.Index(stdout, "[ ] ")
			for _, grave := range []string{"DANGER ", "WARNING "} {
				if at := strings.Index(stdout, grave); at > firstMass {
					t.Errorf("%s: %s stands behind the first mass", path, grave)
				}
			}
			if status == dangerous && strings.LastIndex(stdout, "DANGER ") < firstMass {
				t.Errorf("%s: the danger is not said again at the end", path)
			}
		}
	}
}

// The keys of the format, section "Out".
func TestTheJSONHasEveryKeyOfTheFormat(t *testing.T) {
	outlook := "planned_pct low_pct likely_low_pct likely_high_pct high_pct complete"
	for _, path := range names(t, formulas+"/*.json") {
		stdout, _, _ := lyewright("", "batch", "-json", path)
		decoder := json.NewDecoder(strings.NewReader(stdout))
		decoder.UseNumber()
		var b map[string]any
		if err := decoder.Decode(&b); err != nil {
			t.Fatal(err)
		}
		if !strings.HasPrefix(stdout, `{"schema":"batch/1",`) || strings.Contains(stdout, "null") {
			t.Errorf("%s: schema first, and no null: %.80s", path, stdout)
		}
		has := func(where string, v any, keys string) map[string]any {
			object, ok := v.(map[string]any)
			if !ok {
				t.Fatalf("%s: %s is %T", path, where, v)
			}
			for key := range strings.FieldsSeq(keys) {
				if _, stock := object["stock_g"]; stock && key == "weigh_g" {
					key = "stock_weigh_g" // what is weighed of a stock lye
				}
				value, there := object[key]
				if !there {
					t.Errorf("%s: %s lacks %s", path, where, key)
				}
				figure := strings.HasSuffix(key, "_g") || strings.HasSuffix(key, "_pct") || key == "water_per_alkali"
				if digits, isNumber := value.(json.Number); figure != isNumber {
					t.Errorf("%s: %s.%s is %T", path, where, key, value)
				} else if _, decimals, _ := strings.Cut(digits.String(), "."); len(decimals) > 6 || strings.ContainsAny(digits.String(), "eE") {
					t.Errorf("%s: %s.%s is %s: at most six decimals", path, where, key, digits)
				}
			}
			return object
		}
		list := func(object map[string]any, key string) []any {
			items, ok := object[key].([]any)
			if !ok {
				t.Fatalf("%s: %s is %T", path, key, object[key])
			}
			return items
		}
		has("batch", b, "schema formula oils alkali water lye batter_g poured_g dry_g superfat parts findings")
		for _, o := range list(b, "oils") {
			has("oil", o, "oil name mass_g weigh_g withheld_g")
		}
		for _, a := range list(b, "alkali") {
			has("alkali", a, "kind purity_pct mass_g weigh_g")
		}
		has("water", b["water"], "asked_g mass_g weigh_g withheld_g")
		has("lye", b["lye"], "concentration_pct water_per_alkali mass_g")
		has("superfat", b["superfat"], outlook)
		for _, p := range list(b, "parts") {
			part := has("part", p, "part share_pct batter_g oils_g water_g poured_g dry_g superfat additions")
			has("part.superfat", part["superfat"], outlook)
			for _, a := range list(part, "additions") {
				addition := has("addition", a, "name kind mass_g weigh_g")
				if _, carried := addition["carrier"]; carried {
					has("addition", a, "carrier carrier_g carrier_weigh_g from")
				}
			}
		}
		for _, f := range list(b, "findings") {
			has("finding", f, "code severity subject message source")
		}
	}
}

// What is printed depends on nothing but the formula.
func TestTheSheetIsTheSameUnderAnyEnvironment(t *testing.T) {
	path := formulas + "/benchmark.json"
	want, _, _ := lyewright("", "batch", "-working", path)
	for _, setting := range [][2]string{{"LANG", "de_DE.UTF-8"}, {"LC_ALL", "tr_TR.UTF-8"}, {"TZ", "Asia/Kathmandu"}, {"NO_COLOR", "1"}, {"TERM", "dumb"}} {
		t.Setenv(setting[0], setting[1])
	}
	if got, _, _ := lyewright("", "batch", "-working", path); got != want {
		t.Error("the sheet changed with the environment")
	}
}
