package fault

import (
	"errors"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.com/lyewright/units"
)

// Kinds of fault, for errors.Is. A [Fault] wraps one of them or one of the
// errors of package units.
var (
	// ErrUnknown: a name that is not known.
	ErrUnknown = errors.New("unknown name")
	// ErrMissing: something that must be given is not.
	ErrMissing = errors.New("missing")
	// ErrConflict: things that cannot stand together, or twice.
	ErrConflict = errors.New("conflict")
	// ErrRange: a figure outside its bounds, or figures that do not add up.
	ErrRange = errors.New("outside its bounds")
	// ErrFormat: a text that is not in the form asked for.
	ErrFormat = errors.New("wrong form")
	// ErrImpossible: an input in order that nothing can be made of.
	ErrImpossible = errors.New("cannot be made")
	// ErrLimit: more of something than is taken: lines of a list, bytes, levels of nesting.
	ErrLimit = errors.New("more than is taken")
	// ErrInternal: the program failed, and nothing is wrong with the input. No reader gives it: it is for whoever
	// catches a panic and answers with a fault.
	ErrInternal = errors.New("the program failed")
)

// A Fault is one thing that is wrong with an input: where, what, and what would
// be right. It is an error by itself, of a function that looks one thing up. The zero
// value says nothing.
type Fault struct {
	Path   string // as in the file: "parts[1].colourants[0].carrier.ratio"; empty for the whole
	Text   string // the offending text; empty where something is missing
	Reason string // what is wrong with this value: lower case, no full stop
	Remedy string // what would be right; may be empty
	Line   int    // from 1; 0 where there is no file
	Column int    // from 1, in bytes; 0 where there is no file
	Kind   error  // what errors.Is finds: one of the Err… of this package or of units
}

// Error gives place, path, text, reason and remedy in one line, such as
//
//	3:14: oils[1].share: "120 %" is above 100 %; write its share of the oils
//
// Of the text at most forty bytes are quoted (see [units.Quote]).
func (f Fault) Error() string {
	var b strings.Builder
	if f.Line > 0 {
		b.WriteString(strconv.Itoa(f.Line) + ":" + strconv.Itoa(f.Column) + ": ")
	}
	if f.Path != "" {
		b.WriteString(printable(f.Path) + ": ")
	}
	b.WriteString(f.Sentence())
	return b.String()
}

// printable is a path as it is said: a key of a file may hold anything, and what a
// terminal would not show or would act upon is escaped.
func printable(path string) string {
	odd := func(r rune) bool { return r == utf8.RuneError || !strconv.IsPrint(r) }
	if !strings.ContainsFunc(path, odd) {
		return path
	}
	quoted := strconv.Quote(path)
	return quoted[1 : len(quoted)-1]
}

// Sentence gives text, reason and remedy, without the place and the path.
func (f Fault) Sentence() string {
	s := f.Reason
	if f.Text != "" {
		s = units.Quote(f.Text) + " " + s
	}
	if f.Remedy != "" {
		s += "; " + f.Remedy
	}
	return s
}

// Message gives the fault as a whole sentence that stands alone, with its path and without
// line and column, such as
//
//	In oils[1].share, "120 %" is above 100 %; write its share of the oils.
//
// Where something is missing, its path is what the sentence is about; without a path, the
// input as a whole is. The wording may change; Kind does not.
func (f Fault) Message() string {
	said, path := f.Sentence(), printable(f.Path)
	switch {
	case f.Path != "" && f.Text != "":
		said = "In " + path + ", " + said
	case f.Path != "":
		said = path + " " + said
	case f.Text == "":
		said = "The input " + said
	}
	if strings.HasSuffix(said, "?") || strings.HasSuffix(said, ".") {
		return said
	}
	return said + "."
}

// Word gives the kind of the fault in one word, as JSON has it: unknown, missing, range,
// syntax, conflict, impossible, limit or internal. It is empty where the kind is none of this package
// or of package units, as for a file that cannot be read.
func (f Fault) Word() string {
	for _, kind := range []struct {
		err  error
		word string
	}{
		{ErrUnknown, "unknown"},
		{ErrMissing, "missing"},
		{ErrRange, "range"},
		{units.ErrSize, "range"},
		{ErrFormat, "syntax"},
		{units.ErrSyntax, "syntax"},
		{units.ErrUnit, "syntax"},
		{ErrConflict, "conflict"},
		{ErrImpossible, "impossible"},
		{ErrLimit, "limit"},
		{ErrInternal, "internal"},
	} {
		if errors.Is(f.Kind, kind.err) {
			return kind.word
		}
	}
	return ""
}

// Unwrap returns Kind, for errors.Is.
func (f Fault) Unwrap() error { return f.Kind }

// Faults are all the things wrong with an input, in its order. It is the error of
// a reader, a check and a computation; [errors.As] takes it out. The zero value is none:
// return [Faults.OrNil], since an empty list in an error is not nil.
type Faults []Fault

// Error gives one fault a line.
func (fs Faults) Error() string {
	lines := make([]string, len(fs))
	for i, f := range fs {
		lines[i] = f.Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap returns the faults one by one, for errors.Is and errors.As.
func (fs Faults) Unwrap() []error {
	errs := make([]error, len(fs))
	for i, f := range fs {
		errs[i] = f
	}
	return errs
}

// OrNil returns the faults as an error, nil when there are none.
func (fs Faults) OrNil() error {
	if len(fs) == 0 {
		return nil
	}
	return fs
}

// Add appends a fault without a line and column of a file. The texts are as in the fields
// of [Fault], in their order.
func (fs *Faults) Add(path, text, reason, remedy string, kind error) {
	*fs = append(*fs, Fault{Path: path, Text: text, Reason: reason, Remedy: remedy, Kind: kind})
}
