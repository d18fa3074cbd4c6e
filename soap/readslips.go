package soap

import (
	"strings"

	"example.com/lyewright/internal/nearest"
	"example.com/lyewright/internal/strictjson"
	"example.com/lyewright/units"
)

// misplaced says where a key belongs that makers write in another place than it has; empty
// where nothing better is known than the keys of the place.
func misplaced(place, key string) string {
	switch list := anyIndex(place, "[]"); {
	case place == "":
		switch key {
		case "fragrance", "fragrances", "colourant", "colourants", "additive", "additives":
			list := strings.TrimSuffix(key, "s")
			return `list it in a part, such as "parts": [{"part": "base", "share": "100 %", "` + list + `s": [{"` + list +
				`": …, "load": …}]}]`
		}
	case list == "materials[]" && (key == "name" || key == "material" || key == "id"):
		return `an own fragrance is named by "fragrance", as the parts name it`
	case place == "size" && (key == "bars" || key == "count"):
		return `say in "vessels" what one holds and how many there are, such as {"vessels": [{"vessel": "bar", "count": 12, "volume": "90 mL"}]}, or give "oils" or "batter"`
	}
	return ""
}

// keyRemedy says what to write in place of a key that is not known.
func keyRemedy(place, key string, known []string) string {
	if remedy := misplaced(place, key); remedy != "" {
		return remedy
	}
	if remedy := nearest.Remedy(key, known); remedy != "" {
		return remedy
	}
	return "the keys here are " + strings.Join(known, ", ")
}

// quoted says how a bare number is written as a text: of a share below one as the
// percentage that it is, since followed to the letter it would be a hundredth of that.
func quoted(number, example string) string {
	if n, err := units.ParseNumber(number); err == nil && strings.HasSuffix(example, " %") {
		if n.Sign() > 0 && n.Compare(units.Whole(1)) < 0 {
			return "write it as a percentage, in quotation marks: " + units.Quote(n.PercentText(12)+" %")
		}
		return "write it in quotation marks, with its unit: " + units.Quote(number+" %")
	}
	return "write it in quotation marks, such as " + units.Quote(example)
}

// concentration reads the concentration of the lye: of a text such as "1:2", which other
// books give in its place, it says where that belongs.
func (r *reader) concentration(s *spot) units.Ratio {
	if s.is(strictjson.String) {
		if a, b, found := strings.Cut(s.node.Text, ":"); found && plainNumber(a) && plainNumber(b) {
			r.fault(s, s.node.Text, "is a ratio of alkali and water where a percentage is needed",
				`write in its place how many parts of water go to one part of alkali, such as "per_alkali": "2"`, units.ErrUnit)
			return units.Ratio{}
		}
	}
	return r.percent(s)
}

func plainNumber(text string) bool {
	_, err := units.ParseNumber(strings.TrimSpace(text))
	return err == nil
}

// wholeSize says what to write for a size that is no object.
func (r *reader) wholeSize(s *spot) bool {
	if !s.is(strictjson.String) {
		return false
	}
	remedy := misplaced("size", s.node.Text)
	if _, err := units.ParseMass(s.node.Text); err == nil {
		remedy = `say of what: {"oils": ` + units.Quote(s.node.Text) + `} or {"batter": ` + units.Quote(s.node.Text) + `}`
	}
	if remedy == "" {
		return false
	}
	r.fault(s, s.node.Text, "is a text where an object is needed", remedy, ErrFormat)
	return true
}
