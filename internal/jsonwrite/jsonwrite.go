// Package jsonwrite writes JSON with a fixed key order and numbers digit for
// digit as they are given.
package jsonwrite

import (
	"encoding/json"
	"strconv"
	"unicode"
	"unicode/utf8"
)

// Writer collects a JSON text.
type Writer struct {
	buffer []byte
	comma  bool // something stands before at this level
}

// New gives a writer with room for a usual batch.
func New() *Writer { return &Writer{buffer: make([]byte, 0, 12<<10)} }

// Bytes gives what was written.
func (w *Writer) Bytes() []byte { return w.buffer }

func (w *Writer) next() {
	if w.comma {
		w.buffer = append(w.buffer, ',')
	}
	w.comma = true
}

func (w *Writer) key(key string) {
	w.next()
	if key != "" { // in a list there is none
		w.buffer = append(w.buffer, '"')
		w.buffer = append(w.buffer, key...)
		w.buffer = append(w.buffer, '"', ':')
	}
}

// Object writes an object; an empty key writes it as an item of a list.
func (w *Writer) Object(key string, members func()) { w.nest(key, '{', '}', members) }

// List writes a list; its items are written with empty keys.
func (w *Writer) List(key string, items func()) { w.nest(key, '[', ']', items) }

func (w *Writer) nest(key string, open, shut byte, inside func()) {
	w.key(key)
	w.buffer = append(w.buffer, open)
	w.comma = false
	inside()
	w.buffer = append(w.buffer, shut)
	w.comma = true
}

// Text writes a text.
func (w *Writer) Text(key, text string) {
	w.key(key)
	w.buffer = appendText(w.buffer, text)
}

// Texts writes a list of texts.
func (w *Writer) Texts(key string, texts []string) {
	w.List(key, func() {
		for _, text := range texts {
			w.Text("", text)
		}
	})
}

// Number writes the digits of a number; no digits leave its key out.
func (w *Writer) Number(key, digits string) {
	if digits != "" {
		w.key(key)
		w.buffer = append(w.buffer, digits...)
	}
}

// Int writes a whole number.
func (w *Writer) Int(key string, n int) {
	w.key(key)
	w.buffer = strconv.AppendInt(w.buffer, int64(n), 10)
}

// Bool writes true or false.
func (w *Writer) Bool(key string, b bool) {
	w.key(key)
	w.buffer = strconv.AppendBool(w.buffer, b)
}

// Null writes that there is none, where a key must stand all the same.
func (w *Writer) Null(key string) {
	w.key(key)
	w.buffer = append(w.buffer, "null"...)
}

// appendText quotes a text. Most are plain ASCII without escapes; the others go
// through encoding/json, which also escapes <, > and & for use in HTML. What a terminal
// would act upon, the controls beyond ASCII and those of direction, is escaped, too.
func appendText(dst []byte, text string) []byte {
	for i := 0; i < len(text); i++ {
		if c := text[i]; c < ' ' || c >= 0x7F || c == '"' || c == '\\' || c == '<' || c == '>' || c == '&' {
			return appendEscaped(dst, text)
		}
	}
	dst = append(dst, '"')
	dst = append(dst, text...)
	return append(dst, '"')
}

func appendEscaped(dst []byte, text string) []byte {
	quoted, err := json.Marshal(text)
	if err != nil {
		panic("jsonwrite: a string does not marshal: " + err.Error())
	}
	for _, r := range string(quoted) {
		if unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) {
			const digits = "0123456789abcdef"
			dst = append(dst, '\\', 'u', digits[r>>12&15], digits[r>>8&15], digits[r>>4&15], digits[r&15])
		} else {
			dst = utf8.AppendRune(dst, r)
		}
	}
	return dst
}
