package schema_test

import (
	"encoding/json"
	"errors"
	"maps"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/colour"
	"example.com/lyewright/fragrance"
	"example.com/lyewright/soap"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/soap/mould"
)

// valuesTried stand at every place of a formula in turn: every type of JSON, quantities of
// every kind, and names.
func valuesTried() []string {
	list := []string{
		`null`, `true`, `false`, `0`, `1`, `-1`, `1.5`, `0.5`, `12`, `10000`, `10001`, `1e99`, `""`, `[]`, `{}`, `[1, 2]`, `{"low": "1 %"}`,
		`"x"`, `" "`, `"\u0007"`, `"a\u202eb"`, `"a\u2028b"`, `"` + strings.Repeat("x", 200) + `"`, `"` + strings.Repeat("x", 201) + `"`,
		`"5 %"`, `"0 %"`, `"100 %"`, `"101 %"`, `"60 %"`, `"5 g"`, `"0 g"`, `"1000 kg"`, `"1001 kg"`, `"5 mL"`, `"0 mL"`, `"5 mm"`, `"0 mm"`, `"11 m"`, `"5 °C"`, `"101 °C"`, `"5"`, `"0"`, `"192.5"`, `"192.5 mg/g"`, `"0.9 g/mL"`,
		`"5 cm²"`, `"5 % of oils"`, `"5 % of batter"`, `"1 per 1 g"`, `"400 nm"`, `"10 nm"`, `"0380nm"`, `"405 nm"`, `"15 nm"`, `"rest"`, `"max"`, `"#c8b49a"`, `"#C8B49"`, `"97-53-0"`, `"077-53-0"`, `"77891"`, `"77891:1"`, `"77891:"`, `"9"`, `"10"`, `"51"`, `"0"`, `"100"`,
	}
	return append(list, slices.Sorted(func(yield func(string) bool) {
		for value := range beyondATextAlone() {
			if !yield(value) {
				return
			}
		}
	})...)
}

// beyondATextAlone are values that the reader refuses and no schema can, and why.
func beyondATextAlone() map[string]string {
	return map[string]string{
		`1.0`:                                "a schema takes it for a whole number",
		`"` + strings.Repeat("é", 101) + `"`: "202 bytes, and a schema counts characters",
	}
}

// besideOthers are values that are right by themselves and wrong beside others of the
// example, and why.
func besideOthers() map[string]string {
	const order = "the low end is above the high one"
	return map[string]string{
		`materials[].constituents[].share.low "60 %"`:  order,
		`materials[].constituents[].share.low "100 %"`: order,
		`pigments[].usual.low "5 % of oils"`:           order,
		`alkali[].purity.typical "60 %"`:               "the limits of the grade leave more",
		`oils[].unsaponifiables "100 %"`:               "leaves nothing to saponify of what the profile gives",
		`size.vessels[].cuts 10000`:                    "together with the count more than 10,000 pieces",
	}
}

// smaller adds, of each example and each of its keys, what is left when the others are
// dropped that it can do without: less to read for each trial.
func smaller(t testing.TB, texts []string) []string {
	t.Helper()
	all := slices.Clone(texts)
	for _, text := range texts {
		whole := decoded(t, []byte(text)).(map[string]any)
		for kept := range whole {
			less := maps.Clone(whole)
			for _, key := range slices.Sorted(maps.Keys(whole)) {
				value := less[key]
				delete(less, key)
				if key == kept || faultsOf(t, encoded(t, less)) != nil {
					less[key] = value
				}
			}
			all = append(all, encoded(t, less))
		}
	}
	return all
}

// placesTried gives every place of the schema in the shortest example that has it.
func placesTried(t testing.TB, d *document, texts []string) (trials []trial) {
	t.Helper()
	order := make([]int, len(texts))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int { return len(texts[a]) - len(texts[b]) })
	missing := map[string]bool{}
	for place := range d.values() {
		missing[place] = true
	}
	for _, i := range order {
		for s := range d.spots(decoded(t, []byte(texts[i]))) {
			if missing[s.place] {
				delete(missing, s.place)
				trials = append(trials, trial{of: i, spot: s})
			}
		}
	}
	for place := range missing {
		t.Errorf("no example has %s", place)
	}
	if len(trials) < 150 {
		t.Errorf("%d places: not all were found", len(trials))
	}
	return trials
}

// set is the change that puts a value at a spot; ok is false for the items of lists, which
// are set with their list.
func (s spot) set(t testing.TB, instance any, value string) change {
	t.Helper()
	steps := s.steps
	text := value
	for len(steps) > 0 {
		last := len(steps) - 1
		if key, ok := steps[last].(string); ok {
			return change{At: steps[:last], Set: key, Value: json.RawMessage(text)}
		}
		list := instance // the list that the item stands in
		for _, step := range steps[:last] {
			switch step := step.(type) {
			case string:
				list = list.(map[string]any)[step]
			case int:
				list = list.([]any)[step]
			}
		}
		items := slices.Clone(list.([]any))
		items[steps[last].(int)] = json.RawMessage(text)
		text, steps = encoded(t, items), steps[:last]
	}
	t.Fatalf("%s is no key of anything", s.path)
	return change{}
}

// Whatever the schema refuses, the reader refuses, too; and where the reader finds fault
// with a value for what it is, so does the schema.
func TestAtEveryPlaceTheSchemaRefusesWhatTheReaderDoes(t *testing.T) {
	t.Parallel()
	d, texts := documentOf(t, "formula/1"), smaller(t, examples(t))
	beyond := beyondATextAlone()
	for at, why := range besideOthers() {
		beyond[at] = why
	}
	used := map[string]bool{}
	var trials []trial
	for _, at := range placesTried(t, d, texts) {
		if at.spot.place == "" {
			continue
		}
		instance := decoded(t, []byte(texts[at.of]))
		values := valuesTried()
		if len(at.spot.says.alternatives()) == 1 && typeOf(at.spot.value) != "string" && typeOf(at.spot.value) != "number" {
			values = values[:18] // one text is as wrong as another where none may stand
		}
		for _, value := range values {
			trials = append(trials, trial{
				of: at.of, spot: at.spot, key: value, change: at.spot.set(t, instance, value),
				text: encoded(t, put(t, instance, at.spot.steps, json.RawMessage(value))),
			})
		}
	}
	tried(t, texts, trials)
	takes, refuses := 0, 0
	for _, trial := range trials {
		path := trial.spot.path
		wrong := slices.ContainsFunc(trial.faults, func(f soap.Fault) bool {
			return (f.Path == path || within(f.Path, path)) && !errors.Is(f.Kind, soap.ErrUnknown) && !errors.Is(f.Kind, soap.ErrConflict)
		})
		switch {
		case trial.said != "" && len(trial.faults) == 0:
			t.Errorf("%s is %s: the schema refuses it, and the reader does not: %s", path, trial.key, trial.said)
		case trial.said == "" && wrong && beyond[trial.key] != "":
			used[trial.key] = true
		case trial.said == "" && wrong && beyond[trial.spot.place+" "+trial.key] != "":
			used[trial.spot.place+" "+trial.key] = true
		case trial.said == "" && wrong:
			t.Errorf("%s is %s: the reader refuses it, and the schema does not: %v", path, trial.key, trial.faults)
		case trial.said == "":
			takes++
		default:
			refuses++
		}
	}
	for value := range beyond {
		if !used[value] {
			t.Errorf("%s is listed as beyond a schema, and is not", value)
		}
	}
	if takes < 500 || refuses < 4000 {
		t.Errorf("%d taken, %d refused", takes, refuses)
	}
}

// boundedOtherwise are lists of which the reader bounds more than their length, and why.
func boundedOtherwise() map[string]string {
	return map[string]string{
		"markets": "there are two, each once",
		"alkali":  "there are two, each once",
	}
}

// Each list is filled to its bound, and beyond it by one: the reader counts as the schema does.
func TestTheListsOfTheSchemaAreAsLongAsThoseOfTheReader(t *testing.T) {
	d, texts := documentOf(t, "formula/1"), examples(t)
	otherwise := boundedOtherwise()
	bounded := map[string]bool{}
	for _, text := range texts {
		instance := decoded(t, []byte(text))
		for at := range d.spots(instance) {
			list, ok := at.value.([]any)
			if !ok || len(list) == 0 || bounded[at.place] {
				continue
			}
			bounded[at.place] = true
			if otherwise[at.place] != "" {
				delete(otherwise, at.place)
				continue
			}
			bound, _ := d.target(at.says.node)["maxItems"].(json.Number)
			most, err := bound.Int64()
			if err != nil {
				t.Errorf("%s has no bound", at.place)
				continue
			}
			tooLong := func(n int) bool {
				for len(list) < n {
					list = append(list, list[0])
				}
				return slices.ContainsFunc(faultsOf(t, encoded(t, put(t, instance, at.steps, list[:n]))), func(f soap.Fault) bool {
					return f.Path == at.path && strings.HasPrefix(f.Reason, "has more than ")
				})
			}
			if n := int(most); tooLong(n) || !tooLong(n+1) {
				t.Errorf("%s: the schema's bound of %d is not the reader's", at.place, n)
			}
		}
	}
	for place := range d.values() {
		if list, found := strings.CutSuffix(place, "[]"); found && !bounded[list] {
			t.Errorf("no example has an item in %s", list)
		}
	}
	for place := range otherwise {
		t.Errorf("%s is listed as bounded otherwise, and is no list", place)
	}
	if len(bounded) < 20 {
		t.Errorf("%d lists", len(bounded))
	}
}

// spelled lists the words of a type of the library: from its first value until there is none.
func spelled[T ~uint8](first T, end func(T) bool, word func(T) string) []string {
	var words []string
	for v := first; !end(v); v++ {
		words = append(words, word(v))
	}
	return words
}

// wordsOfTheLibrary are the words that the library has for each place of few words.
func wordsOfTheLibrary() map[string][]string {
	var grades, acids, fatty []string
	for _, g := range lye.Grades() {
		if !slices.Contains(grades, g.ID) {
			grades = append(grades, g.ID)
		}
	}
	for _, a := range lye.Acids() {
		acids = append(acids, a.ID)
	}
	for _, a := range soap.FattyAcids() {
		fatty = append(fatty, a.Symbol)
	}
	alkalis := spelled(soap.SodiumHydroxide, func(a soap.Alkali) bool { return a.String() == "" }, soap.Alkali.String)
	glitters := spelled(soap.PolymerGlitter, func(g soap.Glitter) bool { return g.String() == "" }, soap.Glitter.String)
	return map[string][]string{
		"acids[].acid":                        acids,
		"alkali[].kind":                       alkalis,
		"alkali[].purity.grade":               grades,
		"gel":                                 {soap.GelUnknown.String(), soap.Gelled.String(), soap.NotGelled.String()},
		"markets[]":                           spelled(soap.EuropeanUnion, func(m soap.Market) bool { return m.String() == "" }, soap.Market.String),
		"materials[].behaviour[]":             fragrance.Behaviours(),
		"materials[].certificates[].category": {fragrance.Category()},
		"oils[].profile{}":                    fatty,
		"parts[].additives[].carrier.from":    {soap.FromFormula.String(), soap.Extra.String()},
		"parts[].additives[].glitter":         glitters,
		"parts[].colourants[].carrier.from":   {soap.FromFormula.String(), soap.Extra.String()},
		"parts[].fragrances[].carrier.from":   {soap.FromFormula.String(), soap.Extra.String()},
		"parts[].look":                        {soap.AnyLook.String(), soap.White.String(), soap.Pale.String()},
		"parts[].match[].carrier.from":        {soap.FromFormula.String(), soap.Extra.String()},
		"parts[].work":                        {mould.Poured.String(), mould.Piped.String()},
		"pigments[].disperses_in[]":           colour.Media(),
		"swatches.surface.gloss":              {"included", "excluded"},
		"toppings[].glitter":                  glitters,
		"weighed.stage":                       {soap.AtLye.String(), soap.AtPot.String(), soap.AtParts.String(), soap.AtMoulds.String()},
	}
}

// Both ways, at every place of the schema that knows a few words alone.
func TestTheWordsOfTheSchemaAreThoseOfTheLibrary(t *testing.T) {
	words := wordsOfTheLibrary()
	d := documentOf(t, "formula/1")
	compare := func(place string, node map[string]any) {
		list, few := node["enum"].([]any)
		if one, single := node["const"].(string); single {
			list, few = []any{one}, true
		}
		if !few {
			return
		}
		var got []string
		for _, word := range list {
			got = append(got, word.(string))
		}
		want := slices.Clone(words[place])
		if !slices.Equal(slices.Sorted(slices.Values(got)), slices.Sorted(slices.Values(want))) {
			t.Errorf("%s: the schema knows %v, the library %v", place, got, want)
		}
		delete(words, place)
	}
	for place, v := range d.values() {
		for _, one := range v.alternatives() {
			if d.target(v.node)["anyOf"] == nil || one.node["enum"] != nil && words[place] != nil { // or other names
				compare(place, one.node)
			}
		}
		for _, s := range v.shapes() {
			if names, ok := s.node["propertyNames"].(map[string]any); ok {
				compare(place+"{}", names)
			}
		}
	}
	for place := range words {
		t.Errorf("the schema has no words at %s", place)
	}
	// and the reader takes each where it stands, but for what depends on another key
	texts := examples(t)
	for _, at := range placesTried(t, d, texts) {
		var list []any
		for _, one := range at.spot.says.alternatives() {
			few, _ := one.node["enum"].([]any)
			list = append(list, few...)
		}
		instance := decoded(t, []byte(texts[at.of]))
		for _, word := range list {
			for _, f := range faultsOf(t, encoded(t, put(t, instance, at.spot.steps, word))) {
				if f.Path == at.spot.path && errors.Is(f.Kind, soap.ErrUnknown) {
					t.Errorf("%s: the reader does not know %v: %v", at.spot.path, word, f)
				}
			}
		}
	}
}
