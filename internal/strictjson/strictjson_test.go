package strictjson_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"example.com/lyewright/internal/strictjson"
	"github.com/google/go-cmp/cmp"
)

func TestEveryNodeKnowsWhereItBegins(t *testing.T) {
	//       0         1         2         3
	//       0123456789012345678901234567890123456789
	text := ` {"a" : [1, "b\u0063", {}], "\u0064":-1.5e2 ,"é":null,"z":true }`
	got, err := strictjson.Parse([]byte(text), 3)
	if err != nil {
		t.Fatal(err)
	}
	want := strictjson.Node{Kind: strictjson.Object, Offset: 1, Members: []strictjson.Member{
		{Key: "a", Offset: 2, Value: strictjson.Node{Kind: strictjson.Array, Offset: 8, Items: []strictjson.Node{
			{Kind: strictjson.Number, Text: "1", Offset: 9},
			{Kind: strictjson.String, Text: "bc", Offset: 12},
			{Kind: strictjson.Object, Offset: 23},
		}}},
		{Key: "d", Offset: 28, Value: strictjson.Node{Kind: strictjson.Number, Text: "-1.5e2", Offset: 37}},
		{Key: "é", Offset: 45, Value: strictjson.Node{Kind: strictjson.Null, Offset: 50}}, // é is two bytes
		{Key: "z", Offset: 55, Value: strictjson.Node{Kind: strictjson.Bool, Text: "true", Offset: 59}},
	}}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	if z := got.Get("z"); z == nil || z.Offset != 59 {
		t.Errorf("Get finds %v", z)
	}
	for _, key := range []string{"Z", "", "a.b"} { // unlike encoding/json, the case counts
		if n := got.Get(key); n != nil {
			t.Errorf("Get(%q) finds %v", key, n)
		}
	}
}

func TestWhatEncodingJSONLetsPassIsRefusedWhereItStands(t *testing.T) {
	tests := []struct {
		name, text string
		path       string
		offset     int
		says       string
	}{
		{"a key twice", `{"a":1,"a":2}`, "a", 7, "twice"},
		{"a key twice by an escape", `{"a":1,"\u0061":2}`, "a", 7, "twice"},
		{"a key twice, deep down", `{"x":[{},{"k":{"a":1,"b":2,"a":1}}]}`, "x[1].k.a", 27, "twice"},
		{"the empty key twice", `{"":1,"":1}`, "", 6, "twice"},
		{"a second value", `{} {}`, "", 3, "after its end"},
		{"a bracket too many", `[]]`, "", 2, "after its end"},
		{"a letter too many", `1x`, "", 1, ""},
		{"half of a surrogate pair", `["\ud83d"]`, "[0]", 1, "surrogate"},
		{"the other half", `{"a":"x\udca7"}`, "a", 5, "surrogate"},
		{"two first halves", `"\ud83d\ud83d"`, "", 0, "surrogate"},
		{"halves the wrong way round", `"\udca7\ud83d"`, "", 0, "surrogate"},
		{"half beside a replacement character", `"\ufffd\ud83d"`, "", 0, "surrogate"},
		{"half beside an escaped backslash", `"\\ufffd\ud83d"`, "", 0, "surrogate"},
		{"half of a pair in a key", `{"\ud83d":1}`, "", 1, "surrogate"},
		{"a control character in a key", `{"x":{"a\u001b":1}}`, "x", 6, "has a key with a control character"},
		{"a line separator in a key", "{\"a\u2028\":1}", "", 1, "has a key with a line separator"},
		{"a bidirectional control in a key", "[{\"\u202e\":1}]", "[0]", 2, "has a key with a bidirectional control"},
		{"a byte that is not UTF-8", "{\"a\":\"b\xff\"}", "", 7, "UTF-8"},
		{"a letter of Latin-1 in a key", "{\"\xe9\":1}", "", 2, "UTF-8"},
		{"a letter cut off", "\"é\xc3", "", 3, "UTF-8"},
		{"a surrogate in UTF-8", "\"\xed\xa0\x80\"", "", 1, "UTF-8"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			_, err := strictjson.Parse([]byte(test.text), 8)
			if err == nil {
				t.Fatalf("%s is accepted", test.text)
			}
			if err.Path != test.path || err.Offset != test.offset || !strings.Contains(err.Reason, test.says) || err.Remedy == "" {
				t.Errorf("%s: path %q, offset %d, %q, remedy %q; want path %q, offset %d, %q",
					test.text, err.Path, err.Offset, err.Reason, err.Remedy, test.path, test.offset, test.says)
			}
		})
	}
}

func TestWhatIsNotJSONIsRefused(t *testing.T) {
	tests := []string{
		`{},`, `1 ,`, `[]:`, "null,,::\n", `,1`, `:1`, // stray commas and colons
		`[1,]`, `[,1]`, `[1,,2]`, `[1 2]`, `[1:2]`, `[`, `]`, `[}`, `[1`, `[1,`,
		`{"a":1,}`, `{,}`, `{"a"}`, `{"a" 1}`, `{"a",1}`, `{"a":}`, `{"a":1 "b":2}`, `{"a"::1}`, `{1:2}`, `{a:1}`, `{'a':1}`, `{`, `{"a`, `{"a":`, `{]`,
		`01`, `-`, `+1`, `.5`, `5.`, `1e`, `1e+`, `0x10`, `--1`, `1.2.3`, `NaN`, `Infinity`, `-Infinity`, `-a`, `1_000`,
		`tru`, `True`, `nul`, `nulll`, `truefalse`, `undefined`,
		`"`, `"\"`, `"\x41"`, `"\u12"`, `"\u12g4"`, "\"a\nb\"", "\"a\tb\"", "\"\x00\"", `'a'`,
		"/* c */ 1", "1 // c", "# c\n1", "\f1", "\u00a01", "1\u2028",
		"\ufeff{}", // a byte order mark, which RFC 8259 lets a reader refuse
	}
	for _, text := range tests {
		if json.Valid([]byte(text)) {
			t.Fatalf("%q is JSON", text)
		}
		node, err := strictjson.Parse([]byte(text), 8)
		if err == nil {
			t.Errorf("%q is accepted as %v", text, node)
			continue
		}
		if err.Offset < 0 || err.Offset > len(text) || err.Reason == "" || err.Remedy == "" {
			t.Errorf("%q: %+v", text, err)
		}
	}
}

func TestFaultOfSyntaxIsPointedAt(t *testing.T) {
	tests := []struct {
		text   string
		path   string
		offset int
	}{
		{`[1,,2]`, "[1]", 3},
		{`[1 2]`, "", 3},
		{`{"a":[1,x]}`, "a[1]", 8},
		{`{"a":[1,[2,3,x]]}`, "a[1][2]", 13},
		{`{"a" 1}`, "a", 5},
		{`{"a":01}`, "", 6},
		{`{"a":1`, "", 6}, // at the end
		{"\ufeff{}", "", 0},
	}
	for _, test := range tests {
		_, err := strictjson.Parse([]byte(test.text), 8)
		if err == nil || err.Offset != test.offset || err.Path != test.path {
			t.Errorf("%q: %+v, want path %q, offset %d", test.text, err, test.path, test.offset)
		}
	}
}

func TestNothingIsEmpty(t *testing.T) {
	for _, text := range []string{"", " ", "\n\t\r \n"} {
		_, err := strictjson.Parse([]byte(text), 8)
		if err == nil || err.Offset != 0 || !strings.Contains(err.Reason, "empty") {
			t.Errorf("%q: %+v", text, err)
		}
	}
	if _, err := strictjson.Parse(nil, 8); err == nil {
		t.Error("nil is accepted")
	}
}

func TestPairsAndReplacementCharactersAreText(t *testing.T) {
	for text, want := range map[string]string{
		`"\ud83d\udca7"`:           "\U0001f4a7", // a drop of water, as a pair
		`"\uD83D\uDCA7"`:           "\U0001f4a7",
		`"\ufffd"`:                 "\ufffd",
		`"\uFFFD` + "\ufffd" + `"`: "\ufffd\ufffd",
		`"\\ufffd\ufffd"`:          "\\ufffd\ufffd", // the letters, and the character
		`"\\ud83d"`:                `\ud83d`,        // a backslash and letters
		`"\"\\\/\b\f\n\r\t"`:       "\"\\/\b\f\n\r\t",
		`"\u0000"`:                 "\x00",
	} {
		got, err := strictjson.Parse([]byte(text), 0)
		if err != nil || got.Text != want {
			t.Errorf("%s is %q, %v; want %q", text, got.Text, err, want)
		}
	}
}

func TestDepthIsBoundedExactly(t *testing.T) {
	open, shut := map[bool]string{true: "[", false: `{"a":`}, map[bool]string{true: "]", false: "}"}
	for _, list := range []bool{true, false} {
		for depth := range 6 {
			text := strings.Repeat(open[list], depth) + "1" + strings.Repeat(shut[list], depth)
			if _, err := strictjson.Parse([]byte(text), depth); err != nil {
				t.Errorf("%s at depth %d: %v", text, depth, err)
			}
			if depth == 0 {
				continue
			}
			_, err := strictjson.Parse([]byte(text), depth-1)
			if want := (depth - 1) * len(open[list]); err == nil || err.Offset != want || !strings.Contains(err.Reason, "deep") {
				t.Errorf("%s at depth %d: %+v, want offset %d", text, depth-1, err, want)
			}
		}
	}
}

// Refused at the bound, without reading on.
func TestManyBracketsAreRefusedWithoutWork(t *testing.T) {
	for _, bracket := range []string{"[", `{"a":`} {
		text := []byte(strings.Repeat(bracket, 200_000))
		_, err := strictjson.Parse(text, 16)
		if err == nil || err.Offset != 16*len(bracket) || !strings.Contains(err.Reason, "deep") {
			t.Errorf("%q: %+v", bracket, err)
		}
		if allocs := testing.AllocsPerRun(10, func() { _, _ = strictjson.Parse(text, 16) }); allocs > 200 {
			t.Errorf("%q allocates %v times", bracket, allocs)
		}
	}
}

func TestObjectHasAtMost200Keys(t *testing.T) {
	object := func(n int) (text string, last int) {
		var b strings.Builder
		for i := range n {
			last = b.Len() + 1
			fmt.Fprintf(&b, `,"k%d":%d`, i, i)
		}
		return "{" + b.String()[1:] + "}", last
	}
	text, _ := object(200)
	node, err := strictjson.Parse([]byte(text), 1)
	if err != nil || len(node.Members) != 200 || node.Get("k199").Text != "199" {
		t.Errorf("200 keys: %v, and %d of them read", err, len(node.Members))
	}
	text, last := object(201)
	if _, err := strictjson.Parse([]byte(text), 1); err == nil || err.Offset != last || !strings.Contains(err.Reason, "200") {
		t.Errorf("201 keys: %+v, want offset %d", err, last)
	}
	text, _ = object(20_000)
	if _, err := strictjson.Parse([]byte(text), 1); err == nil || err.Offset != last {
		t.Errorf("20,000 keys: %+v, want offset %d", err, last)
	}
}

func TestKindsHaveNames(t *testing.T) {
	seen := map[string]bool{}
	for kind := strictjson.Null; kind <= strictjson.Object; kind++ {
		if name := kind.Name(); name == "" || seen[name] {
			t.Errorf("kind %d is called %q", kind, name)
		} else {
			seen[name] = true
		}
	}
}

// content gives a node as encoding/json would.
func content(t *testing.T, text []byte, n strictjson.Node) any {
	switch n.Kind {
	case strictjson.Bool:
		return text[n.Offset] == 't'
	case strictjson.Number:
		return json.Number(n.Text)
	case strictjson.String:
		return n.Text
	case strictjson.Array:
		list := []any{}
		for _, item := range n.Items {
			list = append(list, content(t, text, item))
		}
		return list
	case strictjson.Object:
		object := map[string]any{}
		for _, m := range n.Members {
			if _, twice := object[m.Key]; twice {
				t.Errorf("%q has the key %q twice", text, m.Key)
			}
			object[m.Key] = content(t, text, m.Value)
		}
		return object
	}
	return nil
}

// checkOffsets makes sure that every offset points at what it belongs to: read
// from there, encoding/json finds the same key.
func checkOffsets(t *testing.T, text []byte, n strictjson.Node) {
	first := map[strictjson.Kind]string{
		strictjson.Null: "n", strictjson.Bool: "tf", strictjson.Number: "-0123456789",
		strictjson.String: `"`, strictjson.Array: "[", strictjson.Object: "{",
	}
	if !strings.ContainsRune(first[n.Kind], rune(text[n.Offset])) {
		t.Errorf("%q: %s begins at %d", text, n.Kind.Name(), n.Offset)
	}
	for _, item := range n.Items {
		checkOffsets(t, text, item)
	}
	for _, m := range n.Members {
		var key string
		if err := json.NewDecoder(strings.NewReader(string(text[m.Offset:]))).Decode(&key); err != nil || key != m.Key {
			t.Errorf("%q: the key %q is said to stand at %d", text, m.Key, m.Offset)
		}
		checkOffsets(t, text, m.Value)
	}
}

// everyKey gives all keys of a JSON text, decoded, in one.
func everyKey(text []byte) string {
	var all strings.Builder
	var walk func(value any)
	walk = func(value any) {
		switch value := value.(type) {
		case []any:
			for _, item := range value {
				walk(item)
			}
		case map[string]any:
			for key, item := range value {
				all.WriteString(key)
				walk(item)
			}
		}
	}
	var value any
	_ = json.Unmarshal(text, &value) // what is no JSON has no keys
	walk(value)
	return all.String()
}

func hidden(r rune) bool {
	return unicode.IsControl(r) || unicode.In(r, unicode.Zl, unicode.Zp, unicode.Bidi_Control)
}

// hasLoneSurrogate looks for half of a pair in valid JSON.
func hasLoneSurrogate(text string) bool {
	half := func(at int) (unit uint64) {
		if at+6 <= len(text) && text[at:at+2] == `\u` {
			_, _ = fmt.Sscanf(text[at+2:at+6], "%x", &unit)
		}
		return unit
	}
	for at := 0; at < len(text); at++ {
		if text[at] != '\\' {
			continue
		}
		switch unit := half(at); {
		case unit >= 0xd800 && unit < 0xdc00:
			if second := half(at + 6); second < 0xdc00 || second >= 0xe000 {
				return true
			}
			at += 11
		case unit >= 0xdc00 && unit < 0xe000:
			return true
		default:
			at++
		}
	}
	return false
}

func FuzzParseJSON(f *testing.F) {
	for _, text := range []string{
		`{"formula":"x","oils":[{"oil":"olive","share":"60 %"}],"n":-1.5e+2}`, // the shape of a formula
		`[[[[]]],{},"",0,true,false,null]`,                                    // every kind, and depth
		"", " \n", "nul", `"`, `[1,`, `{"a":`,                                 // texts that end too early
		`{},`, `[1,,2]`, `[1 2]`, `{"a":1,}`, `{"a"::1}`, // commas and colons that a reader of tokens may skip
		`{"a":1,"a":2}`, `{"a":1,"\u0061":2}`, `{"a":1,"A":2}`, // repeated keys, and what only looks so
		`"\ud83d\udca7"`, `"\ud83d"`, `"\udca7\ud83d"`, `{"\ud800":1}`, // surrogates, whole and half
		`"\\ud83d"`, `"\\ufffd\ufffd"`, `"\\ufffd\ud800"`, `"\ufffd"`, "\"\ufffd\"", // what only looks like half of one
		"\"\xff\"", "\"\xed\xa0\x80\"", "\ufeff{}", // not UTF-8, a surrogate in UTF-8, a byte order mark
		`01`, `-`, `1.`, `1e`, `-0`, `0e0`, `1E400`, // numbers at the edge of the grammar
		"\"\x1f\"", "\"\x7f\"", `"\/"`, "\u00a01", // control characters and spaces
		strings.Repeat("[", 40) + strings.Repeat("]", 40), // deeper than the bound
		`{"\u202e":0}`, `{"` + strings.Repeat("0", 201) + `":0}`, "[" + strings.Repeat("0,", 500) + "0]", // a hidden key, a longer one, and a longer list
	} {
		f.Add([]byte(text))
	}
	const depth = 32
	f.Fuzz(func(t *testing.T, text []byte) {
		node, err := strictjson.Parse(text, depth)
		if err != nil {
			if err.Offset < 0 || err.Offset > len(text) || err.Reason == "" || err.Remedy == "" {
				t.Errorf("%q: %+v", text, err)
			}
			if !json.Valid(text) {
				return
			}
			// JSON, but refused: for one of the reasons this package is there for.
			switch reason := err.Reason; {
			case strings.Contains(reason, "UTF-8") && !utf8.Valid(text):
			case strings.Contains(reason, "surrogate") && hasLoneSurrogate(string(text)):
			case strings.Contains(reason, "deep") && strings.Count(string(text), "[")+strings.Count(string(text), "{") > depth:
			case strings.Contains(reason, "200 keys") && strings.Count(string(text), ":") > 200:
			case strings.Contains(reason, "has a key with") && strings.ContainsFunc(everyKey(text), hidden):
			case strings.Contains(reason, "has a key of") && len(text) > 200:
			case strings.Contains(reason, "500 items") && strings.Count(string(text), ",") >= 500:
			case strings.Contains(reason, "twice"):
			default:
				t.Errorf("%q is refused: %s", text, reason)
			}
			return
		}
		if !utf8.Valid(text) || hasLoneSurrogate(string(text)) {
			t.Errorf("%q is accepted", text)
		}
		decoder := json.NewDecoder(strings.NewReader(string(text)))
		decoder.UseNumber()
		var want any
		if !json.Valid(text) || decoder.Decode(&want) != nil {
			t.Fatalf("%q is accepted, and is not JSON", text)
		}
		if diff := cmp.Diff(want, content(t, text, node)); diff != "" {
			t.Errorf("%q (-encoding/json +strictjson):\n%s", text, diff)
		}
		checkOffsets(t, text, node)
	})
}

func TestATruthValueKeepsItsWord(t *testing.T) {
	for _, word := range []string{"true", "false"} {
		if n, err := strictjson.Parse([]byte(word), 3); err != nil || n.Kind != strictjson.Bool || n.Text != word {
			t.Errorf("%s: %+v, %v", word, n, err)
		}
	}
}
