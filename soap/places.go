package soap

import (
	"bytes"
	"cmp"
	"slices"
	"strconv"
	"strings"

	"example.com/lyewright/internal/strictjson"
)

// Places knows where in a file every part of its formula stands. The zero
// value knows nothing.
type Places struct {
	text []byte
	root *strictjson.Node
}

// Find gives the line and column, both from 1 (the column in bytes), of what a
// path names, or of the innermost part of it that is there; 0, 0 without a
// file. A path is that of a [Fault] or the subject of a [Finding].
func (p Places) Find(path string) (line, column int) {
	if p.text == nil {
		return 0, 0
	}
	return p.position(p.offset(path))
}

// Place gives faults their line and column, where they have none, and sorts them by
// place. It leaves the list that it is given as it is.
func (p Places) Place(faults Faults) Faults {
	placed := slices.Clone(faults)
	for i, f := range placed {
		if f.Line == 0 {
			placed[i].Line, placed[i].Column = p.Find(f.Path)
		}
	}
	slices.SortStableFunc(placed, func(a, b Fault) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	return placed
}

// offset follows a path into the file as far as it goes.
func (p Places) offset(path string) int {
	node := p.root
	if node == nil {
		return 0
	}
	for path != "" {
		var next *strictjson.Node
		if rest, isIndex := strings.CutPrefix(path, "["); isIndex {
			digits, after, _ := strings.Cut(rest, "]")
			if i, err := strconv.Atoi(digits); err == nil && i < len(node.Items) {
				next = &node.Items[i]
			}
			path = after
		} else {
			end := strings.IndexAny(path, ".[")
			if end < 0 {
				end = len(path)
			}
			next = node.Get(path[:end])
			path = path[end:]
		}
		path = strings.TrimPrefix(path, ".")
		if next == nil {
			break
		}
		node = next
	}
	return node.Offset
}

func (p Places) position(offset int) (line, column int) {
	before := p.text[:min(offset, len(p.text))]
	return 1 + bytes.Count(before, []byte{'\n'}), len(before) - bytes.LastIndexByte(before, '\n')
}
