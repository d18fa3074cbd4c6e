package soap

import (
	"strconv"

	"example.com/lyewright/units/fault"
)

// A Fault is one thing that is wrong with a formula: where (its path, and line and column
// where there is a file), what, and what would be right. Its kind is one of those below or
// of those of package units, for [errors.Is]. See [fault.Fault].
type Fault = fault.Fault

// Faults are all the things wrong with a formula, in input order. It is the
// error of a reader, a check and a batch; [errors.As] takes it out, and as JSON they are
// one object of schema error/1. See [fault.Faults].
type Faults = fault.Faults

// mostFaults is how many faults are told of one formula. More help nobody, and a
// hostile file could ask for a hundred thousand.
const mostFaults = 100

// bounded leaves out what goes beyond the most. Where there is more, found or not
// looked for, it says so at the end.
func bounded(faults Faults, more bool) Faults {
	if len(faults) <= mostFaults && !more {
		return faults
	}
	told := min(len(faults), mostFaults)
	last := &faults[told-1]
	return append(faults[:told:told], Fault{
		Line: last.Line, Column: last.Column, Reason: "has more wrong with it than these " + strconv.Itoa(told) + " faults",
		Remedy: "put these right first", Kind: ErrLimit,
	})
}

// Kinds of fault, for errors.Is. A text that is no quantity has one of [units.ErrSyntax],
// [units.ErrUnit] and [units.ErrSize] instead.
var (
	ErrUnknown    = fault.ErrUnknown    // a name that is not known
	ErrMissing    = fault.ErrMissing    // something that must be given is not
	ErrConflict   = fault.ErrConflict   // things that cannot stand together, or twice
	ErrRange      = fault.ErrRange      // a figure outside its bounds, or figures that do not add up
	ErrFormat     = fault.ErrFormat     // a file that is not a formula in form
	ErrImpossible = fault.ErrImpossible // a formula in order that no pot can make
	// more lines, bytes or levels than are taken, or more in all than one formula may ask for
	ErrLimit    = fault.ErrLimit
	ErrInternal = fault.ErrInternal // the program failed: of whoever catches a panic, never of a reader or a batch
)
