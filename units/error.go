package units

import (
	"errors"
	"strconv"
	"strings"
)

// What can be wrong with a text that should be a quantity. A [*ParseError]
// wraps one of them, so that errors.Is tells them apart.
var (
	// ErrSyntax: the text is not a number and a unit, or not in the form asked for.
	ErrSyntax = errors.New("not a quantity")
	// ErrUnit: the unit is missing, unknown, or of another kind of quantity.
	ErrUnit = errors.New("wrong unit")
	// ErrSize: too many digits, negative, or beyond what is read of its kind.
	ErrSize = errors.New("out of bounds")
)

// ParseError says what is wrong with a text that should be a quantity, and
// what would be right. It is the error of every reader of this package;
// errors.As takes it out, errors.Is finds its Kind. The zero value says nothing.
type ParseError struct {
	Text   string // the offending text, as it stood
	Reason string // what is wrong with this text: lower case, no full stop
	Remedy string // what would be right: lower case, no full stop
	Kind   error  // ErrSyntax, ErrUnit or ErrSize
}

// Error gives text, reason and remedy in one line. It quotes at most the
// first forty bytes of the text.
func (e *ParseError) Error() string {
	return Quote(e.Text) + " " + e.Reason + "; " + e.Remedy
}

// Unwrap returns Kind, for errors.Is.
func (e *ParseError) Unwrap() error { return e.Kind }

// Quote quotes a text for an error message, in Go's double quotes: control characters
// escaped, and cut after forty bytes, with "…" behind the quotes, so that a hostile
// input cannot flood a log.
func Quote(text string) string {
	const most = 40
	if len(text) <= most {
		return strconv.Quote(text)
	}
	return strconv.Quote(strings.ToValidUTF8(text[:most], "")) + "…"
}
