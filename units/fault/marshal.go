package fault

import "errors"

var errFault = errors.New("fault: a Fault is not read back, nor written with gob: check the input that it is " +
	"about again")

// MarshalJSON writes the fault as [Faults.MarshalJSON] writes a list of one.
func (f Fault) MarshalJSON() ([]byte, error) { return Faults{f}.MarshalJSON() }

// UnmarshalJSON refuses: the JSON of a fault goes one way.
func (f *Fault) UnmarshalJSON([]byte) error { return errFault }

// GobEncode refuses: see [Fault.UnmarshalJSON].
func (f Fault) GobEncode() ([]byte, error) { return nil, errFault }

// UnmarshalJSON refuses: the JSON of faults goes one way.
func (fs *Faults) UnmarshalJSON([]byte) error { return errFault }
