package fault

import "example.com/lyewright/internal/jsonwrite"

// MarshalJSON writes the faults as one JSON object of schema error/1, with a list
// "errors" of path, text, reason, remedy, message (see [Fault.Message]), kind (see
// [Fault.Word]; a missing key where that is empty) and, of a file, line and column. Texts
// are written whole, but in the message cut as in [Fault.Sentence].
func (fs Faults) MarshalJSON() ([]byte, error) {
	w := jsonwrite.New()
	w.Object("", func() {
		w.Text("schema", "error/1")
		w.List("errors", func() {
			for i := range fs {
				f := &fs[i]
				w.Object("", func() {
					w.Text("path", f.Path)
					w.Text("text", f.Text)
					w.Text("reason", f.Reason)
					w.Text("remedy", f.Remedy)
					w.Text("message", f.Message())
					if word := f.Word(); word != "" {
						w.Text("kind", word)
					}
					if f.Line > 0 {
						w.Int("line", f.Line)
						w.Int("column", f.Column)
					}
				})
			}
		})
	})
	return w.Bytes(), nil
}
