package jsonwrite_test

import (
	"encoding/json"
	"strings"
	"testing"

	"example.com/lyewright/internal/jsonwrite"
)

func write(text string) string {
	w := jsonwrite.New()
	w.Object("", func() { w.Text("t", text) })
	return string(w.Bytes())
}

func TestKeysKeepTheirOrderAndAnAbsentNumberItsKey(t *testing.T) {
	w := jsonwrite.New()
	w.Object("", func() {
		w.Text("schema", "batch/1")
		w.Number("mass_g", "12.50")
		w.Number("missing", "")
		w.List("none", func() {})
		w.List("list", func() {
			w.Object("", func() { w.Int("line", 3) })
			w.Text("", "last")
		})
		w.Bool("complete", false)
	})
	const want = `{"schema":"batch/1","mass_g":12.50,"none":[],"list":[{"line":3},"last"],"complete":false}`
	if got := string(w.Bytes()); got != want || !json.Valid([]byte(got)) {
		t.Errorf("got %s", got)
	}
}

// encoding/json is the reference for what a text is.
func TestTextsReadBackAsTheyWere(t *testing.T) {
	for _, text := range []string{"", "plain", `"`, `\`, "a\tb\nc", "\x00\x1f", "<b>&amp;</b>", "提灯 Laterne", "\u2028\u2029", "\U0001F3EE", "é"} {
		var got struct{ T string }
		if err := json.Unmarshal([]byte(write(text)), &got); err != nil || got.T != text {
			t.Errorf("%q came back as %q (%v) from %s", text, got.T, err, write(text))
		}
	}
	if got := write("a\xffb"); !json.Valid([]byte(got)) || strings.Contains(got, "\xff") {
		t.Errorf("bytes that are no text: %q", got)
	}
	// what a terminal acts upon: DEL, a one-character CSI, an override and an isolate
	for _, text := range []string{"\x7f", "a\u009bb", "a\u202eb", "\u2066\u200f", "\u061c"} {
		var got struct{ T string }
		written := write(text)
		if err := json.Unmarshal([]byte(written), &got); err != nil || got.T != text || strings.ContainsFunc(written, func(r rune) bool { return r > '~' }) {
			t.Errorf("%q is written %q (%v)", text, written, err)
		}
	}
	if got := write("</script>"); strings.Contains(got, "<") {
		t.Errorf("unsafe inside HTML: %s", got)
	}
}
