package schema_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/soap/schema"
	"example.com/lyewright/units/fault"
)

func TestEverySchemaIsGivenByItsName(t *testing.T) {
	names := schema.Names()
	want := []string{
		"batch/1", "cap/1", "colourants/1", "error/1", "formula/1", "fragrance/1", "lye-acids/1", "lye-density/1",
		"lye-heat/1", "lye-stock/1", "lye-titration/1", "oils/1", "swatches/1", "tint/1",
	}
	if !slices.Equal(names, want) {
		t.Errorf("the schemas are %v, want %v", names, want)
	}
	for _, name := range names {
		root := decoded(t, text(t, name)).(map[string]any)
		id := "https://example.com/lyewright/schema/" + strings.ReplaceAll(name, "/", "-") + ".json"
		if root["$schema"] != "https://json-schema.org/draft/2020-12/schema" || root["$id"] != id || root["title"] == nil || root["description"] == nil {
			t.Errorf("%s: %v, %v, %v", name, root["$schema"], root["$id"], root["title"])
		}
		if key := constant(root, "schema"); key != "" && key != name {
			t.Errorf("%s is of what calls itself %s", name, key)
		}
	}
}

// constant gives the text that a key of an object must have, empty where there is none.
func constant(root map[string]any, key string) string {
	properties, _ := root["properties"].(map[string]any)
	member, _ := properties[key].(map[string]any)
	value, _ := member["const"].(string)
	return value
}

func TestAnUnknownSchemaOffersTheNearestNames(t *testing.T) {
	for name, remedy := range map[string]string{
		"bacth/1": "did you mean batch/1?",
		"batch-1": "did you mean batch/1?",
		"batch/2": "did you mean batch/1?",
		"soup":    "the schemas are batch/1, cap/1",
		"":        "the schemas are batch/1, cap/1",
		"../x":    "the schemas are batch/1, cap/1",
	} {
		text, err := schema.Of(name)
		var f fault.Fault
		if text != nil || !errors.As(err, &f) || !errors.Is(err, fault.ErrUnknown) || f.Text != name || !strings.HasPrefix(f.Remedy, remedy) {
			t.Errorf("%q: %.20q, %v", name, text, err)
		}
	}
}

func TestTheTextOfASchemaIsTheCallersOwn(t *testing.T) {
	text, err := schema.Of("error/1")
	if err != nil {
		t.Fatal(err)
	}
	before := string(text)
	for i := range text {
		text[i] = 'x'
	}
	schema.Names()[0] = "x"
	again, err := schema.Of("error/1")
	if err != nil || string(again) != before || schema.Names()[0] != "batch/1" {
		t.Errorf("a caller changed it: %.40q, %v, %s", again, err, schema.Names()[0])
	}
}

// Shared definitions stand in every schema that uses them, since each stands alone.
func TestWhatTwoSchemasShareIsTheSame(t *testing.T) {
	type first struct{ in, text string }
	seen := map[string]first{}
	shared := 0
	for _, name := range schema.Names() {
		definitions, _ := decoded(t, text(t, name)).(map[string]any)["$defs"].(map[string]any)
		for key, definition := range definitions {
			text := encoded(t, definition)
			before, twice := seen[key]
			switch {
			case !twice:
				seen[key] = first{name, text}
			case key == "cap": // of one material alone, and of a part
			case before.text != text:
				t.Errorf("%s is one thing in %s and another in %s", key, before.in, name)
			default:
				shared++
			}
		}
	}
	if shared < 8 {
		t.Errorf("%d definitions are shared: not all were compared", shared)
	}
}

// A definition that nothing refers to says nothing.
func TestEveryDefinitionIsUsedAndEveryReferenceStaysInItsSchema(t *testing.T) {
	for _, name := range schema.Names() {
		text := string(text(t, name))
		definitions, _ := decoded(t, []byte(text)).(map[string]any)["$defs"].(map[string]any)
		for key := range definitions {
			if !strings.Contains(text, `"#/$defs/`+key+`"`) {
				t.Errorf("%s defines %s and does not use it", name, key)
			}
		}
		for _, piece := range strings.Split(text, `"$ref": "`)[1:] {
			target, _, _ := strings.Cut(piece, `"`)
			if key, local := strings.CutPrefix(target, "#/$defs/"); !local || definitions[key] == nil {
				t.Errorf("%s refers to %s", name, target)
			}
		}
	}
}

func TestEveryKeyOfASchemaIsDescribed(t *testing.T) {
	for _, name := range schema.Names() {
		described := 0
		for place, shape := range shapesOf(t, name) {
			for key, member := range shape.properties() {
				described++
				if words, _ := shape.document.description(member); words == "" {
					t.Errorf("%s: %s.%s is not described", name, place, key)
				} else if !strings.HasSuffix(words, ".") || strings.Contains(words, "  ") {
					t.Errorf("%s: %s.%s is described as %q", name, place, key, words)
				}
			}
		}
		if described < 4 {
			t.Errorf("%s describes %d keys", name, described)
		}
	}
}

func TestEverySchemaIsValidAndTheValidatorRefusesWhatIsNot(t *testing.T) {
	verdicts(t) // refuses a shipped schema that is not valid
	broken := map[string]string{
		"a type that there is not":  `{"type": "text"}`,
		"required that is no list":  `{"required": "schema"}`,
		"a pattern that is none":    `{"pattern": "("}`,
		"a reference to nothing":    `{"$ref": "#/$defs/nothing"}`,
		"a count that is negative":  `{"minItems": -1}`,
		"properties that are texts": `{"properties": {"schema": "batch/1"}}`,
	}
	var requests []request
	var names []string
	for name, text := range broken {
		names, requests = append(names, name), append(requests, request{Name: name, Schema: []byte(text)})
	}
	for i, said := range verdicts(t, requests...) {
		if said == "" {
			t.Errorf("%s was taken", names[i])
		}
	}
	good := `{"schema": "error/1", "errors": [{"path": "", "text": "", "reason": "is empty", "remedy": "", "message": "The input is empty.", "kind": "missing"}]}`
	said := verdicts(
		t,
		request{Name: "error/1", Instance: []byte(good)},
		request{Name: "error/1", Changes: []change{{At: []any{"errors", 0}, Drop: "reason"}}},
		request{Name: "error/1", Changes: []change{{At: []any{"errors", 0}, Set: "line", Value: []byte("1.5")}}},
		request{Name: "error/1", Instance: []byte(`[]`)},
		request{Name: "error/1", Instance: []byte(strings.Replace(good, "error/1", "batch/1", 1))},
	)
	if said[0] != "" || slices.Contains(said[1:], "") {
		t.Errorf("a right instance and wrong ones: %q", said)
	}
}
