package schema_test

import (
	"encoding/json"
	"errors"
	"maps"
	"slices"
	"testing"

	"example.com/lyewright/soap"
)

// A trial is a change to an example that both the reader and the schema are asked about.
type trial struct {
	of     int // which example
	spot   spot
	key    string
	change change
	text   string // the changed formula
	faults soap.Faults
	said   string // by the validator
}

// tried asks both about changes to examples.
func tried(t testing.TB, texts []string, trials []trial) {
	t.Helper()
	var requests []request
	last := -1
	var asked []int // the answer to each
	for _, trial := range trials {
		if trial.of != last {
			requests = append(requests, request{Name: "formula/1", Instance: json.RawMessage(texts[trial.of])})
			last = trial.of
		}
		asked = append(asked, len(requests))
		requests = append(requests, request{Name: "formula/1", Changes: []change{trial.change}})
	}
	said := verdicts(t, requests...)
	for i := range trials {
		trials[i].said = said[asked[i]]
		trials[i].faults = faultsOf(t, trials[i].text)
	}
}

// neededByTheReader are keys that the reader wants and the schema does not ask for, and why.
func neededByTheReader() map[string]string {
	return map[string]string{
		"parts[].share": "beside vessels a part that fills none needs it, and a schema does not know which these are",
	}
}

// Whatever stands in an example is left out, key by key. The schema asks for it exactly
// where the reader does.
func TestTheFormulaSchemaRequiresWhatTheReaderDoes(t *testing.T) {
	t.Parallel()
	d, texts := documentOf(t, "formula/1"), examples(t)
	var trials []trial
	for i, text := range texts {
		instance := decoded(t, []byte(text))
		for s := range d.spots(instance) {
			of, ok := s.value.(map[string]any)
			if !ok {
				continue
			}
			for _, key := range slices.Sorted(maps.Keys(of)) {
				less := maps.Clone(of)
				delete(less, key)
				trials = append(trials, trial{of: i, spot: s, key: key, change: change{At: s.steps, Drop: key}, text: encoded(t, put(t, instance, s.steps, less))})
			}
		}
	}
	tried(t, texts, trials)
	beyond := neededByTheReader()
	required, used := map[string]bool{}, map[string]bool{}
	for _, trial := range trials {
		at, path := joined(trial.spot.place, trial.key), joined(trial.spot.path, trial.key)
		missing := slices.ContainsFunc(trial.faults, func(f soap.Fault) bool {
			return errors.Is(f.Kind, soap.ErrMissing) && (f.Path == path || f.Path == trial.spot.path)
		})
		switch {
		case trial.said != "" && len(trial.faults) == 0:
			t.Errorf("%s: the schema requires it, and the reader does not: %s\n%s", at, trial.said, trial.text)
		case trial.said == "" && missing && beyond[at] != "":
			used[at] = true
		case trial.said == "" && missing:
			t.Errorf("%s: the reader requires it, and the schema does not: %v", at, trial.faults)
		}
		if trial.said != "" {
			required[at] = true
		}
	}
	for at := range beyond {
		if !used[at] {
			t.Errorf("%s is listed as needed by the reader alone, and is not", at)
		}
	}
	for place, s := range shapesOf(t, "formula/1") {
		list, _ := s.node["required"].([]any)
		for _, key := range list {
			if at := joined(place, key.(string)); !required[at] {
				t.Errorf("%s is required, and no example without it was refused", at)
			}
		}
	}
	if len(trials) < 1500 {
		t.Errorf("%d keys left out: not all", len(trials))
	}
}
