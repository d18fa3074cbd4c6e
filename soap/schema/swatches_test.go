package schema_test

import (
	"encoding/json"
	"testing"

	"example.com/lyewright/soap"
)

// The swatches of every example are a file of their own, with and without their key.
func TestTheSwatchesSchemaTakesWhatTheReaderOfSwatchesDoes(t *testing.T) {
	var requests []request
	var texts []string
	ask := func(text string) {
		texts, requests = append(texts, text), append(requests, request{Name: "swatches/1", Instance: json.RawMessage(text)})
	}
	for _, text := range examples(t) {
		swatches := decoded(t, []byte(text)).(map[string]any)["swatches"]
		if swatches == nil {
			continue
		}
		alone := encoded(t, swatches)
		ask(alone)
		ask(`{"swatches": ` + alone + `}`)
		ask(`{"swatches": ` + alone + `, "name": "dusk"}`)
		ask(encoded(t, put(t, swatches, []any{"white"}, "titanium-dioxide")))
		ask(encoded(t, put(t, swatches, []any{"read"}, []any{})))
		ask(encoded(t, put(t, swatches, []any{"read", 0, "swatch"}, 1)))
	}
	for _, text := range []string{`{}`, `[]`, `{"swatches": {}}`, `{"swatches": null}`, `{"read": {}}`} {
		ask(text)
	}
	takes := 0
	for i, said := range verdicts(t, requests...) {
		_, _, err := soap.ParseSwatches([]byte(texts[i]))
		if (said == "") != (err == nil) {
			t.Errorf("%.120s: the schema says %q, the reader %v", texts[i], said, err)
		}
		if err == nil {
			takes++
		}
	}
	if takes < 8 || takes > len(texts)/2 {
		t.Errorf("%d of %d were taken", takes, len(texts))
	}
}
