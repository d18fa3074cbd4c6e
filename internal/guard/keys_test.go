package guard_test

import (
	"encoding/json"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/soap/schema"
)

const promisedKeys = "../../testdata/promised/keys.txt"

// node is as much of a schema as says which keys there are.
type node struct {
	Ref        string           `json:"$ref"`
	Defs       map[string]*node `json:"$defs"`
	Properties map[string]*node `json:"properties"`
	Required   []string         `json:"required"`
	Additional *node            `json:"additionalProperties"`
	Items      *node            `json:"items"`
	AnyOf      []*node          `json:"anyOf"`
	OneOf      []*node          `json:"oneOf"`
	AllOf      []*node          `json:"allOf"`
	Then       *node            `json:"then"`
	Else       *node            `json:"else"`
}

// UnmarshalJSON takes the schemas true and false, too, which know no keys.
func (n *node) UnmarshalJSON(text []byte) error {
	if string(text) == "true" || string(text) == "false" {
		return nil
	}
	type plain node
	return json.Unmarshal(text, (*plain)(n))
}

// The keys of every form of JSON, in and out, as the schemas have them, which are held
// to what is read and written. A key that goes, or is no longer always there, breaks
// somebody's script.
func TestTheKeysAreTheListedOnes(t *testing.T) {
	var lines []string
	for _, name := range schema.Names() {
		text, err := schema.Of(name)
		if err != nil {
			t.Fatal(err)
		}
		var root node
		if err := json.Unmarshal(text, &root); err != nil {
			t.Fatal(err)
		}
		keys := map[string]bool{}
		keysOf(t, &root, &root, "", true, keys, 0)
		for _, key := range slices.Sorted(maps.Keys(keys)) {
			line := name + " " + key
			if keys[key] {
				line += ", always"
			}
			lines = append(lines, line)
		}
	}
	got := strings.Join(lines, "\n") + "\n"
	if *update {
		if err := os.WriteFile(promisedKeys, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(promisedKeys)
	if err != nil {
		t.Fatal(err)
	}
	differences(t, "keys.txt", string(want), got)
}

// keysOf collects the paths of keys, and whether each is always there in its object: sure
// is false where a schema is one of several, or hangs on a condition.
func keysOf(t *testing.T, root, n *node, path string, sure bool, keys map[string]bool, depth int) {
	t.Helper()
	if n == nil {
		return
	}
	if depth > 40 {
		t.Fatalf("%s goes round in circles", path)
	}
	if n.Ref != "" {
		name, ours := strings.CutPrefix(n.Ref, "#/$defs/")
		if !ours || root.Defs[name] == nil {
			t.Fatalf("%s: no %s", path, n.Ref)
		}
		keysOf(t, root, root.Defs[name], path, sure, keys, depth+1)
	}
	for key, value := range n.Properties {
		at := strings.TrimPrefix(path+"."+key, ".")
		keys[at] = keys[at] || sure && slices.Contains(n.Required, key)
		keysOf(t, root, value, at, true, keys, depth+1)
	}
	keysOf(t, root, n.Additional, path+".*", true, keys, depth+1)
	keysOf(t, root, n.Items, path+"[]", true, keys, depth+1)
	for _, more := range n.AllOf {
		keysOf(t, root, more, path, sure, keys, depth+1)
	}
	for _, more := range slices.Concat(n.AnyOf, n.OneOf, []*node{n.Then, n.Else}) {
		keysOf(t, root, more, path, false, keys, depth+1)
	}
}
