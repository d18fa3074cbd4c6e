// Package schema holds the JSON Schemas (draft 2020-12) of the formula file and of every
// JSON that the library and the command give, so that a program in any language can check
// what it writes and rely on what it reads. They document it, too: every key says what it
// is, its unit, and of what a percentage is one.
//
//   - [Names] lists them, and [Of] gives the text of one. A schema has the name that stands
//     behind "schema" in what it describes, such as "batch/1"; what has no such key has the
//     name of what it is: "formula/1", "swatches/1", and of the built-in tables "oils/1",
//     "fragrance/1" and "colourants/1".
//   - The schemas of what is read know every key and refuse any other. They say less than
//     ParseFormula of package soap does: not what depends on other lines, such as shares
//     that add up, nor what only the working shows.
//   - Those of what is given are open: keys may be added, and none changes its meaning. A
//     line of a stream has the schema of the object, and "file" or "input_line" besides.
//
// Each stands alone, without a reference to another. Their addresses ($id) are names, not
// places to fetch anything from.
package schema

import (
	"embed"
	"strings"

	"example.com/lyewright/internal/nearest"
	"example.com/lyewright/units/fault"
)

//go:embed *.json
var files embed.FS

// Names lists the schemas, sorted.
func Names() []string {
	entries, _ := files.ReadDir(".") // embedded: it is there
	names := make([]string, len(entries))
	for i, entry := range entries {
		kind, _ := strings.CutSuffix(entry.Name(), ".json")
		version := strings.LastIndexByte(kind, '-')
		names[i] = kind[:version] + "/" + kind[version+1:]
	}
	return names
}

// Of gives the text of the schema of a name, such as "batch/1": UTF-8, with a line feed at
// its end. It is the caller's own. The error is a [fault.Fault] and offers the nearest
// names.
func Of(name string) ([]byte, error) {
	for _, known := range Names() {
		if known == name {
			return files.ReadFile(strings.Replace(name, "/", "-", 1) + ".json")
		}
	}
	remedy := nearest.Remedy(name, Names())
	if remedy == "" {
		remedy = "the schemas are " + strings.Join(Names(), ", ")
	}
	return nil, fault.Fault{Text: name, Reason: "is not the name of a schema", Remedy: remedy, Kind: fault.ErrUnknown}
}
