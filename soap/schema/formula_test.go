package schema_test

import (
	"encoding/json"
	"io/fs"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/lyewright/soap"
)

// examples are formulas that the reader takes: those of testdata, and more that hold what
// these do not.
func examples(t testing.TB) []string {
	t.Helper()
	var texts []string
	for _, pattern := range []string{"../../testdata/formulas/*.json", "../../testdata/worked/*.json"} {
		for _, path := range glob(t, pattern) {
			texts = append(texts, string(read(t, path)))
		}
	}
	for _, text := range rareFormulas() {
		texts = append(texts, text)
	}
	return texts
}

func TestTheFormulaSchemaTakesEveryExample(t *testing.T) {
	texts := examples(t)
	var requests []request
	for i, text := range texts {
		if _, _, err := soap.ParseFormula([]byte(text)); err != nil {
			t.Fatalf("example %d is no formula: %v\n%s", i, err, text)
		}
		requests = append(requests, request{Name: "formula/1", Instance: json.RawMessage(text)})
	}
	for i, said := range verdicts(t, requests...) {
		if said != "" {
			t.Errorf("%.60s: %s", texts[i], said)
		}
	}
}

// What the reader takes of a name, the schema takes, too: of every name of the table, and in every formula file of the
// project, wherever that lies.
func TestTheFormulaSchemaTakesEveryNameThatTheReaderTakes(t *testing.T) {
	var texts []string
	alkalis, acids := 0, 0
	for line := range strings.Lines(string(read(t, "../../internal/names/data/names.txt"))) {
		kind, name, _ := strings.Cut(strings.Split(line, "\t")[0], " ")
		key, alkali, acid := "kind", name, "citric-acid-anhydrous"
		switch kind {
		case "alkali":
			alkalis++
		case "acid":
			key, alkali, acid = "acid", "sodium-hydroxide", name
			acids++
		default:
			continue
		}
		for _, spelled := range []string{name, strings.ToUpper(name), strings.ReplaceAll(name, " ", "-")} {
			text := `{"formula": "Lantern names", "oils": [{"oil": "olive", "share": "rest"}],
				"alkali": [{"kind": "` + strings.Replace(alkali, name, spelled, 1) + `", "purity": "98 %"}], "superfat": "5 %",
				"water": {"lye_concentration": "30 %"}, "size": {"oils": "500 g"},
				"acids": [{"acid": "` + strings.Replace(acid, name, spelled, 1) + `", "strength": "5 %", "load": "1 % of oils",
					"compensate": true}]}`
			if _, _, err := soap.ParseFormula([]byte(text)); err == nil {
				texts = append(texts, text)
			} else if !strings.Contains(err.Error(), key) {
				t.Errorf("%s: %v", spelled, err)
			}
		}
	}
	if alkalis < 50 || acids < 30 || len(texts) < 150 {
		t.Errorf("%d names of alkalis and %d of acids give %d formulas", alkalis, acids, len(texts))
	}
	names := len(texts)
	err := filepath.WalkDir("../../testdata", func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || filepath.Ext(path) != ".json" {
			return err
		}
		text := read(t, path)
		if _, _, err := soap.ParseFormula(text); err == nil {
			texts = append(texts, string(text))
		}
		return nil
	})
	if err != nil || len(texts) < names+20 {
		t.Errorf("%d formulas under testdata, %v", len(texts)-names, err)
	}
	var requests []request
	for _, text := range texts {
		requests = append(requests, request{Name: "formula/1", Instance: json.RawMessage(text)})
	}
	for i, said := range verdicts(t, requests...) {
		if said != "" {
			t.Errorf("%s: %s", texts[i], said)
		}
	}
}

// beyondASchema lists the wrong formulas whose fault a schema cannot see, and why.
func beyondASchema() map[string]string {
	const (
		sums     = "shares or loads of several lines do not add up"
		names    = "a name that is known nowhere, or to another list"
		twice    = "the same name on two lines"
		order    = "the ends of a range are out of order"
		working  = "only the working shows it"
		noJSON   = "is no JSON text"
		readings = "readings that do not tell the colourants apart"
		beside   = "needs something that may stand in a file of its own"
	)
	return map[string]string{
		"acids-take-all-the-alkali":          working,
		"alkali-of-several-meanings":         names,
		"alkali-under-another-name":          names,
		"carrier-misspelt":                   names,
		"carrier-not-in-the-formula":         names,
		"carriers-take-too-much-oil":         working,
		"carriers-take-too-much-water":       working,
		"comma-missing":                      noJSON,
		"cut-short":                          noJSON,
		"deep-nesting":                       noJSON,
		"embeds-take-all-the-cup":            working,
		"empty":                              noJSON,
		"lab-that-three-bands-cannot-hold":   working,
		"liquid-of-more-than-itself":         sums,
		"liquids-bring-too-much-water":       working,
		"liquids-of-more-than-the-water":     sums,
		"loads-leave-no-batter":              working,
		"loss-more-than-poured":              working,
		"lye-denser-than-known":              working,
		"lye-too-strong":                     working,
		"match-without-swatches":             beside,
		"materials-sum-above-the-whole":      sums,
		"not-utf-8":                          noJSON,
		"nothing-but-a-wax":                  working,
		"nothing-left-for-rest":              sums,
		"oil-without-a-value":                names,
		"part-shares-over":                   sums,
		"part-shares-short":                  sums,
		"profile-below-ninety":               sums,
		"emptied-pot":                        working,
		"promise-beside-a-kilo-of-acid":      working,
		"promise-beside-ten-kilos-of-milk":   working,
		"promise-beside-too-large-a-carrier": working,
		"promise-in-a-pot-of-acid":           working,
		"promise-too-great":                  working,
		"promise-of-waxes-alone":             names,
		"promise-on-a-single-purity":         names,
		"promise-without-a-range":            names,
		"purity-reversed":                    order,
		"same-oil-twice":                     twice,
		"same-part-and-addition-twice":       twice,
		"scale-too-coarse":                   working,
		"scale-too-coarse-for-a-part":        working,
		"shares-leave-nothing-for-vessels":   sums,
		"shares-over":                        sums,
		"shares-short":                       sums,
		"stock-weaker-than-the-lye":          working,
		"swatches-with-one-rung":             readings,
		"swatches-without-a-base":            readings,
		"the-most-without-a-limit":           working,
		"tops-on-tops":                       names,
		"trailing-data":                      noJSON,
		"comment":                            noJSON,
		"curly-quotes":                       noJSON,
		"no-break-space-between":             noJSON,
		"percentage-without-quotes":          noJSON,
		"single-quotes":                      noJSON,
		"trailing-comma-in-a-list":           noJSON,
		"trailing-comma":                     noJSON,
		"two-alkalis-short-of-the-whole":     sums,
		"unknown-acid":                       names,
		"unknown-oil":                        names,
		"weighed-by-unknown-names":           names,
		"weighed-of-a-part-not-there":        names,
		"weighed-with-a-slipped-point":       working,
		"parts-beyond-the-pot":               working,
		"weighed-what-was-not-added":         names,
		"aluminium-called-a-glitter":         names,
		"lye-as-a-liquid":                    names,
	}
}

func TestTheFormulaSchemaRefusesWhatIsWrongInItself(t *testing.T) {
	beyond := beyondASchema()
	var requests []request
	var names []string
	for _, path := range glob(t, "../../testdata/formulas/wrong/*.json") {
		name := strings.TrimSuffix(filepath.Base(path), ".json")
		text := read(t, path)
		if reason, listed := beyond[name]; !json.Valid(text) || !utf8.Valid(text) {
			if !listed {
				t.Errorf("%s is no JSON", name)
			} else if reason != "is no JSON text" {
				t.Errorf("%s is listed as: %s", name, reason)
			}
			delete(beyond, name)
			continue
		}
		names, requests = append(names, name), append(requests, request{Name: "formula/1", Instance: text})
	}
	for i, said := range verdicts(t, requests...) {
		switch _, listed := beyond[names[i]]; {
		case said == "" && !listed:
			t.Errorf("%s is taken", names[i])
		case said != "" && listed:
			t.Errorf("%s is refused, though it is listed: %s", names[i], said)
		}
		delete(beyond, names[i])
	}
	for name := range beyond {
		t.Errorf("%s is listed, and there is no such formula", name)
	}
	if len(names) < 60 {
		t.Errorf("%d wrong formulas were tried", len(names))
	}
}
