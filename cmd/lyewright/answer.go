package main

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.com/lyewright/internal/jsonwrite"
	"example.com/lyewright/soap"
	"example.com/lyewright/soap/sheet"
)

// answer is what became of one formula.
type answer struct {
	out    []byte // what is printed of its batch
	page   []byte // a page of its colours, where one was asked for
	faults soap.Faults
	status int
	line   int // of the input; 0 where it is a file of its own
}

func refused(faults soap.Faults) answer { return answer{faults: faults, status: statusOf(faults)} }

// answerTo reads a formula from a file, at most a byte more than one may have.
func answerTo(file io.Reader, o batchOptions) answer {
	return contained(func() answer {
		text, err := io.ReadAll(io.LimitReader(file, soap.MostBytes+1))
		if err != nil {
			return refused(soap.Faults{unreadable(err)})
		}
		return answerOf(text, o)
	})
}

// contained works on one formula. A panic is a mistake of the program; it becomes a fault of
// that formula alone, so that the others of a stream are answered.
func contained(work func() answer) (a answer) {
	defer func() {
		if what := recover(); what != nil {
			a = refused(soap.Faults{{
				Text: fmt.Sprint(what),
				Reason: "stopped the program in the middle of this formula: a mistake of the program, and nothing of the formula " +
					"was worked out",
				Remedy: "weigh nothing by it, and report it with the formula",
				Kind:   soap.ErrInternal,
			}})
		}
	}()
	return work()
}

// answerOf works out the text of a formula.
func answerOf(text []byte, o batchOptions) answer {
	b, _, faults := batchOf(text, o)
	if faults != nil {
		return refused(faults)
	}
	out, err := printed(b, o)
	if err != nil {
		return refused(soap.Faults{{Reason: err.Error(), Kind: err}})
	}
	a := answer{out: out, status: statusOfBatch(b)}
	if o.page != "" {
		var page bytes.Buffer
		if err := sheet.WriteTintPage(&page, b); err != nil {
			return refused(soap.Faults{{Reason: err.Error(), Kind: err}})
		}
		a.page = page.Bytes()
	}
	return a
}

func printed(b soap.Batch, o batchOptions) ([]byte, error) {
	if o.json {
		return printedJSON(b, o.view)
	}
	write := sheet.Write
	switch o.view {
	case itsCaps:
		write = sheet.WriteCaps
	case itsTint:
		write = sheet.WriteTint
	}
	var page bytes.Buffer
	if err := write(&page, b, o.unit); err != nil {
		return nil, err
	}
	if o.working {
		if err := sheet.WriteWorking(&page, b); err != nil {
			return nil, err
		}
	}
	return page.Bytes(), nil
}

func printedJSON(b soap.Batch, of view) (object []byte, err error) {
	switch of {
	case itsCaps:
		object, err = b.Caps().MarshalJSON()
	case itsTint:
		var t soap.Tint
		if t, err = b.Tint(); err == nil {
			object, err = t.MarshalJSON()
		}
	default:
		object, err = b.MarshalJSON()
	}
	return append(object, '\n'), err
}

// batchOf reads a formula and works it out, for so many pieces where there are any
// asked for, and beside what is known besides, every fault in its place.
func batchOf(text []byte, o batchOptions) (soap.Batch, soap.Places, soap.Faults) {
	f, places, err := soap.ParseFormulaBeside(o.beside, text)
	if err == nil {
		if o.pieces > 0 {
			f.Size.Pieces = o.pieces
		}
		var b soap.Batch
		if b, err = f.Batch(); err == nil {
			return b, places, nil
		}
	}
	var faults soap.Faults
	if !errors.As(err, &faults) {
		faults = soap.Faults{{Reason: err.Error(), Kind: err}}
	}
	return soap.Batch{}, places, places.Place(faults)
}

func statusOfBatch(b soap.Batch) int {
	if len(b.Findings) > 0 && b.Findings[0].Severity == soap.Danger {
		return dangerous
	}
	return done
}

// writeObject writes the answer as a line of JSON that also says where the
// formula came from.
func (a answer) writeObject(w io.Writer, name string) error {
	object := a.out
	if a.faults != nil {
		var err error
		if object, err = a.faults.MarshalJSON(); err != nil {
			return err
		}
	}
	origin := jsonwrite.New()
	origin.Object("", func() {
		if name != "" {
			origin.Text("file", name)
		}
		if a.line > 0 {
			origin.Int("input_line", a.line)
		}
	})
	object = bytes.TrimSuffix(bytes.TrimSuffix(object, []byte("\n")), []byte("}"))
	comma := []byte{','}
	if len(origin.Bytes()) == len("{}") { // a file may be named by nothing at all
		comma = nil
	}
	for _, piece := range [][]byte{object, comma, origin.Bytes()[1:], {'\n'}} {
		if _, err := w.Write(piece); err != nil {
			return err
		}
	}
	return nil
}

// writeComplaint says what is wrong with a file, or with a line of one: one
// line a fault.
func (a answer) writeComplaint(w io.Writer, name string) error {
	name = shown(name)
	var b strings.Builder
	for _, f := range a.faults {
		switch {
		case a.line > 0:
			column := max(1, f.Column)
			f.Line = 0
			fmt.Fprintf(&b, "%s:%d:%d: %s\n", cmp.Or(name, "-"), a.line, column, f.Error())
		case f.Line > 0:
			fmt.Fprintf(&b, "%s:%s\n", name, f.Error())
		default:
			fmt.Fprintf(&b, "%s: %s\n", name, f.Error())
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// shown is a file's name as it is said: as it is, and quoted where it holds what a
// terminal would not show or would act upon.
func shown(name string) string {
	if !utf8.ValidString(name) || strings.ContainsFunc(name, func(r rune) bool { return !strconv.IsPrint(r) }) {
		return strconv.Quote(name)
	}
	return name
}
