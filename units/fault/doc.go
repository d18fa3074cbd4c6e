// Package fault holds what is wrong with an input: where it stands, what is wrong with it,
// and what would be right. All the faults of one input come back together, as one error,
// and nothing partial beside them.
//
// A [Fault] is one of them. [Faults] are all of them, in the order of the input: the error
// of whatever reads, checks or computes. errors.As takes them out, errors.Is finds the
// kind of any of them: one of this package ([ErrUnknown], [ErrMissing], [ErrConflict],
// [ErrRange], [ErrFormat], [ErrImpossible], [ErrLimit], [ErrInternal]) or of package units. As JSON they are one
// object of schema error/1, which the command prints.
//
//	var faults fault.Faults
//	faults.Add("oils[1].share", "120 %", "is above 100 %", "write its share of the oils", fault.ErrRange)
//	faults.Add("water", "", "is missing", "say how much water, such as 33 % of lye", fault.ErrMissing)
//	err := faults.OrNil() // nil where there are none
//	fmt.Println(errors.Is(err, fault.ErrMissing))
//
// A fault is about a wrong input. What is unsafe or unwise about an input in order is no
// fault; package soap calls it a finding.
//
// Reason, Remedy and Message are for people; a program looks at Path and Kind. A long or
// hostile text is cut and escaped where it is printed, not where it is held.
package fault
