// Package strictjson reads JSON (RFC 8259) into a small tree that remembers
// where everything stood. Beyond the grammar it refuses what encoding/json lets
// pass: repeated keys, text that is not UTF-8, halves of surrogate pairs, keys
// that do not show as they are, anything after the value, and nesting or objects
// beyond a bound.
package strictjson

import (
	"encoding/json"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf16"
	"unicode/utf8"
)

// Kind is the kind of a JSON value.
type Kind uint8

const (
	Null Kind = iota
	Bool
	Number
	String
	Array
	Object
)

// Name gives the kind in English, with its article.
func (k Kind) Name() string {
	return [...]string{"null", "true or false", "a bare number", "a text", "a list", "an object"}[k]
}

// Node is a JSON value and where it begins.
type Node struct {
	Kind    Kind
	Text    string // of a String, decoded; of a Number or a Bool, as written
	Offset  int    // in bytes from the beginning of the text
	Items   []Node
	Members []Member
}

// Member is a key of an object and its value.
type Member struct {
	Key    string
	Offset int // of the key
	Value  Node
}

// Get finds the value of a key; nil where there is none.
func (n *Node) Get(key string) *Node { return valueOf(n.Members, key) }

func valueOf(members []Member, key string) *Node {
	for i := range members {
		if members[i].Key == key {
			return &members[i].Value
		}
	}
	return nil
}

// Error says what is wrong with a JSON text, and where.
type Error struct {
	Path           string // of the value, where it is known
	Offset         int
	Reason, Remedy string
	Limit          bool // more of something than is taken: items, keys, levels, a longer key
}

// inside puts a key or an index before the path of what is wrong.
func (e *Error) inside(step string) *Error {
	if e.Path != "" && e.Path[0] != '[' {
		step += "."
	}
	e.Path = step + e.Path
	return e
}

// Bounds far beyond any formula, so that a hostile text costs little: keys are
// looked for one by one, and every value takes a hundred bytes.
const (
	mostKeys  = 200 // in an object
	mostItems = 500 // in a list
	mostKey   = 200 // bytes of a key
)

// Parse reads a whole JSON text. Values may nest to the given depth.
func Parse(text []byte, depth int) (Node, *Error) {
	if bad := invalidUTF8(text); bad >= 0 {
		return Node{}, &Error{Offset: bad, Reason: "is not UTF-8 here", Remedy: "save the file as UTF-8"}
	}
	p := parser{text: string(text), depth: depth}
	if strings.HasPrefix(p.text, "\uFEFF") {
		return Node{}, &Error{Reason: "begins with a byte order mark", Remedy: "save the file as UTF-8 without one"}
	}
	if p.space(); p.at == len(p.text) {
		return Node{}, &Error{Reason: "is empty", Remedy: "write a formula"}
	}
	node, err := p.value(0)
	if err != nil {
		return Node{}, err
	}
	if p.space(); p.at < len(p.text) {
		return Node{}, &Error{
			Offset: p.at, Reason: "has more after its end",
			Remedy: "put one formula in a file, or one to a line",
		}
	}
	return node, nil
}

func invalidUTF8(text []byte) int {
	if utf8.Valid(text) {
		return -1
	}
	for i := 0; ; {
		r, size := utf8.DecodeRune(text[i:])
		if r == utf8.RuneError && size == 1 {
			return i
		}
		i += size
	}
}

// Hidden says which character of a text would do something where the text is printed,
// a control, a line separator or a bidirectional control, and what to do about it;
// nothing where there is none.
func Hidden(text string) (what, remedy string) {
	for _, r := range text {
		switch {
		case r >= ' ' && r <= '~': // most are
		case unicode.IsControl(r):
			return "a control character", "write plain letters"
		case r == '\u2028' || r == '\u2029':
			return "a line separator", "write it in one line"
		case unicode.Is(unicode.Bidi_Control, r):
			return "a bidirectional control", "leave it out"
		}
	}
	return "", ""
}

type parser struct {
	text  string
	at    int
	depth int
	// What is being read of the lists and objects that are still open, each behind
	// those around it; on closing one its own are copied out, in just the room they need.
	items   []Node
	members []Member
}

// space skips white space.
func (p *parser) space() {
	for p.at < len(p.text) {
		switch p.text[p.at] {
		case ' ', '\t', '\r', '\n':
			p.at++
		default:
			return
		}
	}
}

// wrong says that the text is not JSON here, and what is wanted instead. The
// path of an error is filled in on the way out.
func (p *parser) wrong(wanted string) *Error {
	if p.at == len(p.text) {
		return &Error{Offset: p.at, Reason: "ends too early", Remedy: "close every bracket and quotation mark"}
	}
	r, _ := utf8.DecodeRuneInString(p.text[p.at:])
	if reason, remedy := slip(r, p.text[p.at:]); reason != "" {
		return &Error{Offset: p.at, Reason: reason, Remedy: remedy}
	}
	return &Error{
		Offset: p.at, Reason: "is not JSON here: " + strconv.QuoteRune(r) + " where " + wanted + " is needed",
		Remedy: "look for a missing comma, bracket or quotation mark",
	}
}

// slip says in words what stands where JSON has no place for it, of what people write by
// habit or their editor puts there.
func slip(r rune, rest string) (reason, remedy string) {
	switch {
	case strings.HasPrefix(rest, "//") || strings.HasPrefix(rest, "/*") || r == '#':
		return "has a comment, which a formula file cannot have", `leave it out, or write it as a "note"`
	case strings.ContainsRune("“”„‟«»‘’‚", r):
		return "has a curly quotation mark, " + string(r), `write straight ones, ", as a plain text editor does`
	case r == '\'' || r == '`':
		return "has a single quotation mark, " + string(r), `write double ones, "`
	case r > ' ' && unicode.IsSpace(r):
		return "has a no-break space or another space that is none to JSON", "write a plain space"
	case r == '%':
		return "has a quantity without quotation marks", `write a quantity as a text, such as "5 %"`
	}
	return "", ""
}

// spareComma says that a comma stands before a closing bracket, where nothing follows it.
func (p *parser) spareComma(comma int) *Error {
	return &Error{
		Offset: comma, Reason: "has a comma before the closing " + p.text[p.at:p.at+1],
		Remedy: "leave out that comma: nothing follows the last of a list",
	}
}

// byte takes one byte if it comes next.
func (p *parser) byte(c byte) bool {
	if p.at < len(p.text) && p.text[p.at] == c {
		p.at++
		return true
	}
	return false
}

// word takes a literal name.
func (p *parser) word(word string) bool {
	if strings.HasPrefix(p.text[p.at:], word) {
		p.at += len(word)
		return true
	}
	return false
}

func (p *parser) value(depth int) (Node, *Error) {
	p.space()
	node := Node{Offset: p.at}
	if p.at == len(p.text) {
		return node, p.wrong("a value")
	}
	var err *Error
	switch c := p.text[p.at]; {
	case c == '"':
		node.Kind = String
		node.Text, err = p.string()
	case c == '{' || c == '[':
		if depth == p.depth {
			return node, &Error{Offset: p.at, Limit: true, Reason: "is nested too deeply", Remedy: "a formula nests to " +
				strconv.Itoa(p.depth) + " levels at most"}
		}
		p.at++
		if c == '{' {
			node.Kind = Object
			err = p.object(&node, depth+1)
		} else {
			node.Kind = Array
			err = p.array(&node, depth+1)
		}
	case c == '-' || c >= '0' && c <= '9':
		node.Kind = Number
		node.Text, err = p.number()
	case p.word("true"), p.word("false"):
		node.Kind, node.Text = Bool, string(p.text[node.Offset:p.at])
	case p.word("null"):
		node.Kind = Null
	default:
		err = p.wrong("a value")
	}
	return node, err
}

func (p *parser) array(node *Node, depth int) *Error {
	if p.space(); p.byte(']') {
		return nil
	}
	first := len(p.items)
	for {
		n := len(p.items) - first // before an item that cannot be read leaves its own behind
		item, err := p.value(depth)
		if err != nil {
			return err.inside("[" + strconv.Itoa(n) + "]")
		}
		if n == mostItems {
			return &Error{
				Offset: item.Offset, Limit: true, Reason: "has more than " + strconv.Itoa(mostItems) + " items",
				Remedy: "leave out what is not part of a formula",
			}
		}
		p.items = append(p.items, item)
		if p.space(); p.byte(']') {
			node.Items = slices.Clone(p.items[first:])
			p.items = p.items[:first]
			return nil
		}
		comma := p.at
		if !p.byte(',') {
			return p.wrong("a comma or ]")
		}
		if p.space(); p.at < len(p.text) && p.text[p.at] == ']' {
			return p.spareComma(comma)
		}
	}
}

func (p *parser) object(node *Node, depth int) *Error {
	if p.space(); p.byte('}') {
		return nil
	}
	first := len(p.members)
	for {
		p.space()
		member := Member{Offset: p.at}
		if p.at == len(p.text) || p.text[p.at] != '"' {
			return p.wrong("a key in quotation marks")
		}
		var err *Error
		if member.Key, err = p.string(); err != nil {
			return err
		}
		if len(member.Key) > mostKey {
			return &Error{
				Offset: member.Offset, Limit: true, Reason: "has a key of " + strconv.Itoa(len(member.Key)) + " bytes",
				Remedy: "leave out what is not part of a formula",
			}
		}
		if what, remedy := Hidden(member.Key); what != "" { // it would stand in a path, and on a screen
			return &Error{Offset: member.Offset, Reason: "has a key with " + what, Remedy: remedy}
		}
		if valueOf(p.members[first:], member.Key) != nil {
			return &Error{Path: member.Key, Offset: member.Offset, Reason: "stands twice", Remedy: "leave one of them out"}
		}
		if len(p.members)-first == mostKeys {
			return &Error{
				Offset: member.Offset, Limit: true, Reason: "has more than " + strconv.Itoa(mostKeys) + " keys",
				Remedy: "leave out what is not part of a formula",
			}
		}
		if p.space(); !p.byte(':') {
			return p.wrong("a colon").inside(member.Key)
		}
		if member.Value, err = p.value(depth); err != nil {
			return err.inside(member.Key)
		}
		p.members = append(p.members, member)
		if p.space(); p.byte('}') {
			node.Members = slices.Clone(p.members[first:])
			p.members = p.members[:first]
			return nil
		}
		comma := p.at
		if !p.byte(',') {
			return p.wrong("a comma or }")
		}
		if p.space(); p.at < len(p.text) && p.text[p.at] == '}' {
			return p.spareComma(comma)
		}
	}
}

// string reads a text. One without escapes is a piece of the whole; the others
// are decoded by encoding/json.
func (p *parser) string() (string, *Error) {
	start, escaped := p.at, false
	for p.at++; p.at < len(p.text); p.at++ {
		switch c := p.text[p.at]; {
		case c == '"':
			p.at++
			if !escaped {
				return p.text[start+1 : p.at-1], nil
			}
			return p.unescape(start)
		case c == '\\':
			escaped = true
			p.at++
		case c < ' ':
			return "", p.wrong("a text without raw control characters")
		}
	}
	p.at = len(p.text)
	return "", p.wrong("a quotation mark")
}

func (p *parser) unescape(start int) (decoded string, _ *Error) {
	raw := p.text[start:p.at]
	if err := json.Unmarshal([]byte(raw), &decoded); err != nil {
		return "", &Error{Offset: start, Reason: "is not JSON here: " + err.Error(), Remedy: `write \\ for a backslash`}
	}
	if halfPair(raw) {
		return "", &Error{Offset: start, Reason: "has half of a surrogate pair", Remedy: "write the character itself"}
	}
	return decoded, nil
}

// halfPair reports whether a quoted text has half of a surrogate pair, which
// encoding/json mends silently to U+FFFD.
func halfPair(raw string) bool {
	unit := func(at int) rune {
		if len(raw) < at+6 || raw[at] != '\\' || raw[at+1] != 'u' {
			return 0
		}
		n, _ := strconv.ParseUint(raw[at+2:at+6], 16, 16)
		return rune(n)
	}
	for i := 0; i < len(raw); i++ {
		if raw[i] != '\\' {
			continue
		}
		if first := unit(i); utf16.IsSurrogate(first) {
			if utf16.DecodeRune(first, unit(i+6)) == utf8.RuneError {
				return true
			}
			i += 6
		}
		i++ // what follows a backslash does not begin an escape
	}
	return false
}

// number reads a number as it is written.
func (p *parser) number() (string, *Error) {
	start := p.at
	p.byte('-')
	if !p.byte('0') && !p.digits() {
		return "", p.wrong("a digit")
	}
	if p.byte('.') && !p.digits() {
		return "", p.wrong("a digit")
	}
	if p.byte('e') || p.byte('E') {
		if !p.byte('+') {
			p.byte('-')
		}
		if !p.digits() {
			return "", p.wrong("a digit")
		}
	}
	return p.text[start:p.at], nil
}

// digits takes one digit or more.
func (p *parser) digits() bool {
	start := p.at
	for p.at < len(p.text) && p.text[p.at] >= '0' && p.text[p.at] <= '9' {
		p.at++
	}
	return p.at > start
}
