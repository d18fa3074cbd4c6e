package schema_test

import (
	"bytes"
	"encoding/json"
	"iter"
	"maps"
	"slices"
	"strings"
	"testing"
)

// A document is a schema that is walked along: what it says of an object or a value at a
// place. Places are written as the paths of faults are, "parts[].carrier.ratio", with "{}"
// for a key of the maker's own.
type document struct {
	name        string
	root        map[string]any
	definitions map[string]any
}

func documentOf(t testing.TB, name string) *document {
	t.Helper()
	root := decoded(t, text(t, name)).(map[string]any)
	definitions, _ := root["$defs"].(map[string]any)
	return &document{name, root, definitions}
}

// target follows references to what says what a value is.
func (d *document) target(node map[string]any) map[string]any {
	for {
		to, refers := node["$ref"].(string)
		if !refers {
			return node
		}
		node = d.definitions[strings.TrimPrefix(to, "#/$defs/")].(map[string]any)
	}
}

// description gives the words of a node, or of what it refers to.
func (d *document) description(node map[string]any) (string, bool) {
	for {
		words, found := node["description"].(string)
		to, refers := node["$ref"].(string)
		if found || !refers {
			return words, found
		}
		node = d.definitions[strings.TrimPrefix(to, "#/$defs/")].(map[string]any)
	}
}

// A shape is an object that a schema describes.
type shape struct {
	document *document
	node     map[string]any
}

func (s shape) properties() map[string]map[string]any {
	properties := map[string]map[string]any{}
	members, _ := s.node["properties"].(map[string]any)
	for key, member := range members {
		if node, ok := member.(map[string]any); ok {
			properties[key] = node
		}
	}
	return properties
}

func (s shape) keys() []string { return slices.Sorted(maps.Keys(s.properties())) }

// others is what the keys of the maker's own have; nil where there are none such.
func (s shape) others() map[string]any {
	node, _ := s.node["additionalProperties"].(map[string]any)
	return node
}

// A value is a node of a schema and all that may stand in its place.
type value struct {
	document *document
	node     map[string]any
}

// alternatives gives what a value may be: one by one what "anyOf" lists.
func (v value) alternatives() []value {
	node := v.document.target(v.node)
	list, _ := node["anyOf"].([]any)
	if list == nil || node["type"] != nil {
		return []value{{v.document, node}}
	}
	var all []value
	for _, one := range list {
		all = append(all, value{v.document, one.(map[string]any)}.alternatives()...)
	}
	return all
}

// shapes gives the objects that a value may be.
func (v value) shapes() []shape {
	var shapes []shape
	for _, one := range v.alternatives() {
		if one.node["properties"] != nil || one.node["additionalProperties"] != nil {
			shapes = append(shapes, shape{v.document, one.node})
		}
		if then, ok := one.node["then"].(map[string]any); ok && one.node["properties"] == nil { // a file of swatches is one of two
			for _, node := range []any{then, one.node["else"]} {
				shapes = append(shapes, value{v.document, node.(map[string]any)}.shapes()...)
			}
		}
	}
	return shapes
}

// items gives what the items of a list are; ok is false where a value is no list.
func (v value) items() (items value, ok bool) {
	for _, one := range v.alternatives() {
		if node, found := one.node["items"].(map[string]any); found {
			return value{v.document, node}, true
		}
	}
	return value{}, false
}

// values walks along all values of a schema with their places.
func (d *document) values() iter.Seq2[string, value] {
	return func(yield func(string, value) bool) {
		var walk func(place string, v value) bool
		walk = func(place string, v value) bool {
			if !yield(place, v) {
				return false
			}
			for _, s := range v.shapes() {
				for _, key := range s.keys() {
					if !walk(joined(place, key), value{d, s.properties()[key]}) {
						return false
					}
				}
				if others := s.others(); others != nil && !walk(place+"{}", value{d, others}) {
					return false
				}
			}
			if items, ok := v.items(); ok {
				return walk(place+"[]", items)
			}
			return true
		}
		walk("", value{d, d.root})
	}
}

func joined(place, key string) string {
	if place == "" {
		return key
	}
	return place + "." + key
}

// shapesOf walks along all objects of a schema with their places.
func shapesOf(t testing.TB, name string) iter.Seq2[string, shape] {
	d := documentOf(t, name)
	return func(yield func(string, shape) bool) {
		for place, v := range d.values() {
			for _, s := range v.shapes() {
				if !yield(place, s) {
					return
				}
			}
		}
	}
}

// A spot is a value of an instance: where it stands, what the schema says of it, and the
// object or list that holds it.
type spot struct {
	place string // as of a schema
	path  string // as of a fault
	steps []any  // as of a change
	value any
	says  value
}

// spots walks along an instance together with its schema.
func (d *document) spots(instance any) iter.Seq[spot] {
	return func(yield func(spot) bool) {
		var walk func(s spot) bool
		walk = func(s spot) bool {
			if !yield(s) {
				return false
			}
			switch of := s.value.(type) {
			case map[string]any:
				for _, key := range slices.Sorted(maps.Keys(of)) {
					step := append(slices.Clip(s.steps), key)
					next, ok := s.says.member(of, key)
					place := joined(s.place, key)
					if next.free {
						place = s.place + "{}"
					}
					if ok && !walk(spot{place, joined(s.path, key), step, of[key], next.value}) {
						return false
					}
				}
			case []any:
				items, ok := s.says.items()
				for i := range of {
					if ok && !walk(spot{s.place + "[]", s.path + "[" + encodedInt(i) + "]", append(slices.Clip(s.steps), i), of[i], items}) {
						return false
					}
				}
			}
			return true
		}
		walk(spot{value: instance, says: value{d, d.root}})
	}
}

func encodedInt(i int) string {
	text, _ := json.Marshal(i)
	return string(text)
}

// A member is what a schema says of a key; free where the key is the maker's own.
type member struct {
	value
	free bool
}

// member finds what is said of a key of an object, by the shape that knows all its keys.
func (v value) member(of map[string]any, key string) (member, bool) {
	for _, s := range v.shapes() {
		if s.knows(of) {
			if node, found := s.properties()[key]; found {
				return member{value{v.document, node}, false}, true
			}
			if others := s.others(); others != nil {
				return member{value{v.document, others}, true}, true
			}
		}
	}
	return member{}, false
}

// knows reports whether an object's keys are all known here; where keys may be added, too.
func (s shape) knows(of map[string]any) bool {
	if s.node["additionalProperties"] != false {
		return true
	}
	properties := s.properties()
	for key := range of {
		if _, known := properties[key]; !known {
			return false
		}
	}
	return true
}

func decoded(t testing.TB, text []byte) any {
	t.Helper()
	from := json.NewDecoder(bytes.NewReader(text))
	from.UseNumber()
	var v any
	if err := from.Decode(&v); err != nil {
		t.Fatalf("%v in %.80q", err, text)
	}
	return v
}

func encoded(t testing.TB, v any) string {
	t.Helper()
	var b strings.Builder
	to := json.NewEncoder(&b)
	to.SetEscapeHTML(false)
	encode(t, to, v)
	return strings.TrimSuffix(b.String(), "\n")
}
