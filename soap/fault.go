package soap

import "example.com/lyewright/units/fault"

// A Fault is one thing that is wrong with a formula: where (its path, and line and column
// where there is a file), what, and what would be right. Its kind is one of those below or
// of those of package units, for [errors.Is]. See [fault.Fault].
type Fault = fault.Fault

// Faults are all the things wrong with a formula, in input order. It is the
// error of a reader, a check and a batch; [errors.As] takes it out, and as JSON they are
// one object of schema error/1. See [fault.Faults].
type Faults = fault.Faults

// Kinds of fault, for errors.Is. A text that is no quantity has one of [units.ErrSyntax],
// [units.ErrUnit] and [units.ErrSize] instead.
var (
	ErrUnknown    = fault.ErrUnknown    // a name that is not known
	ErrMissing    = fault.ErrMissing    // something that must be given is not
	ErrConflict   = fault.ErrConflict   // things that cannot stand together, or twice
	ErrRange      = fault.ErrRange      // a figure outside its bounds, or figures that do not add up
	ErrFormat     = fault.ErrFormat     // a file that is not a formula in form
	ErrImpossible = fault.ErrImpossible // a formula in order that no pot can make
)
