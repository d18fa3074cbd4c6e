package soap

import "strconv"

// A trail is where something stands in a formula: a key of what is above it,
// or an index where the key is empty. It is spelled out only when something is
// to be said of it, so that a formula in order pays for no text.
type trail struct {
	up    *trail // nil: the formula itself is above
	key   string
	index int
}

func (t *trail) at(key string) trail { return trail{up: t, key: key} }

func (t *trail) item(i int) trail { return trail{up: t, index: i} }

// top is the trail of a key of the formula itself.
func top(key string) trail { return trail{key: key} }

// String spells the trail as in a file: "parts[1].colourants[0].carrier.ratio".
func (t *trail) String() string {
	switch {
	case t.up == nil:
		return t.key
	case t.key == "":
		return t.up.String() + "[" + strconv.Itoa(t.index) + "]"
	default:
		above := t.up.String()
		if above == "" {
			return t.key
		}
		return above + "." + t.key
	}
}
