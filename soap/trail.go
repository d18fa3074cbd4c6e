package soap

import "strconv"

// A trail says where something stands in a formula, without spelling it: most of what is looked
// at is in order. It is a value; the zero value is the formula itself.
type trail struct {
	keys  [deepest]string
	items [deepest]int // of the list under each key, from 1; 0: the list itself, or no list
	depth int
}

// deepest is how many keys stand above each other at most, as in weighed.parts[0].additions[1].carrier.
const deepest = 5

// at is the place of a key of what stands here.
func (t trail) at(key string) trail {
	t.keys[t.depth], t.items[t.depth] = key, 0
	t.depth++
	return t
}

// item is the place of an item of the list that stands here.
func (t trail) item(i int) trail {
	t.items[t.depth-1] = i + 1
	return t
}

// top is the trail of a key of the formula itself.
func top(key string) trail { return trail{}.at(key) }

// String spells the trail as in a file: "parts[1].colourants[0].carrier.ratio".
func (t trail) String() string {
	var room [80]byte
	text := room[:0]
	for i := range t.depth {
		if i > 0 {
			text = append(text, '.')
		}
		text = append(text, t.keys[i]...)
		if t.items[i] > 0 {
			text = append(text, '[')
			text = strconv.AppendInt(text, int64(t.items[i]-1), 10)
			text = append(text, ']')
		}
	}
	return string(text)
}
