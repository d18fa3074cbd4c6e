package jsonwrite_test

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"example.com/lyewright/internal/jsonwrite"
)

// Whatever stands in a name, it reads back as the text it is; what is not UTF-8 becomes
// replacement characters, byte by byte. encoding/json is the reference.
func FuzzText(f *testing.F) {
	f.Add("Lantern walk cups", 3) // as most are
	f.Fuzz(func(t *testing.T, text string, n int) {
		w := jsonwrite.New()
		w.Object("", func() {
			w.Text("text", text)
			w.Texts("texts", []string{text, "", text})
			w.List("list", func() {
				w.Object("", func() { w.Int("n", n) })
				w.Bool("", n > 0)
				w.Null("")
			})
			w.Text("last", text)
		})
		type object struct {
			Text, Last string
			Texts      []string
			List       []json.RawMessage
		}
		var got object
		decoder := json.NewDecoder(bytes.NewReader(w.Bytes()))
		decoder.DisallowUnknownFields()
		if err := decoder.Decode(&got); err != nil || decoder.More() {
			t.Fatalf("%v: %s", err, w.Bytes())
		}
		want := string([]rune(text)) // each byte that is no text is one replacement character
		if got.Text != want || got.Last != want || len(got.Texts) != 3 || got.Texts[0] != want || got.Texts[1] != "" || got.Texts[2] != want {
			t.Errorf("%q came back as %+q", text, got)
		}
		var inner struct{ N int }
		if len(got.List) != 3 || json.Unmarshal(got.List[0], &inner) != nil || inner.N != n || string(got.List[2]) != "null" {
			t.Errorf("%d came back as %s", n, got.List)
		}
		// Nothing that ends a line, an HTML element or a script.
		if i := bytes.IndexFunc(w.Bytes(), func(r rune) bool { return r < ' ' || strings.ContainsRune("<>&\u2028\u2029", r) }); i >= 0 {
			t.Errorf("%q is written as %s", text, w.Bytes())
		}
		if limit := 4*6*len(text) + 200; len(w.Bytes()) > limit {
			t.Errorf("%d bytes for %d", len(w.Bytes()), len(text))
		}
	})
}
