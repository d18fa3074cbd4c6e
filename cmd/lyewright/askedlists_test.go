package main

import "testing"

// What a table gives of a name in everyday use has the id and that name; of an id, nothing stands beside it.
func TestTheTablesSayWhatWasAskedFor(t *testing.T) {
	for _, test := range []struct{ verb, key, name, id string }{
		{"oils", "oil", "Olivenöl", "olive"},
		{"fragrance", "fragrance", "Peppermint Oil", "peppermint"},
		{"fragrance", "fragrance", "cinnamon bark", "cinnamon-bark"},
		{"colourants", "colourant", "charcoal", "activated-charcoal"},
	} {
		for _, name := range []string{test.name, test.id} {
			stdout, stderr, status := lyewright("", test.verb, "-json", name)
			list, _ := decode(t, stdout).([]any)
			if status != done || len(list) != 1 {
				t.Errorf("%s: exit %d, %s%s", name, status, stdout, stderr)
				continue
			}
			o := list[0].(object)
			asked, said := o.values["asked"]
			if o.values[test.key] != test.id || said != (name != test.id) || said && asked != name {
				t.Errorf("%s: %v, asked for as %v", name, o.values[test.key], asked)
			}
		}
	}
}
