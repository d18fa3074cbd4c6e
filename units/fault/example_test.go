package fault_test

import (
	"encoding/json"
	"errors"
	"fmt"

	"example.com/lyewright/units/fault"
)

// One thing that is wrong, with its place in a file.
func ExampleFault() {
	f := fault.Fault{
		Path: "oils[1].share", Text: "120 %", Line: 3, Column: 14,
		Reason: "is above 100 %", Remedy: "write its share of the oils", Kind: fault.ErrRange,
	}
	fmt.Println(f)
	fmt.Println(f.Sentence())
	// Output:
	// 3:14: oils[1].share: "120 %" is above 100 %; write its share of the oils
	// "120 %" is above 100 %; write its share of the oils
}

// Everything that is wrong comes together, as one error; a form shows each fault beside
// its field.
func ExampleFaults() {
	check := func() error {
		var faults fault.Faults
		faults.Add("oils[1].share", "120 %", "is above 100 %", "write its share of the oils", fault.ErrRange)
		faults.Add("water", "", "is missing", "say how much water", fault.ErrMissing)
		return faults.OrNil()
	}
	err := check()
	fmt.Println(errors.Is(err, fault.ErrMissing), errors.Is(err, fault.ErrUnknown))
	var faults fault.Faults
	if errors.As(err, &faults) {
		for _, f := range faults {
			fmt.Println(f.Path, "-", f.Sentence())
		}
	}
	// Output:
	// true false
	// oils[1].share - "120 %" is above 100 %; write its share of the oils
	// water - is missing; say how much water
}

// No faults are no error.
func ExampleFaults_OrNil() {
	var faults fault.Faults
	fmt.Println(faults.OrNil() == nil)
	// Output: true
}

// As a program behind a form gets them.
func ExampleFaults_MarshalJSON() {
	var faults fault.Faults
	faults.Add("water", "", "is missing", "say how much water", fault.ErrMissing)
	text, err := json.Marshal(faults)
	fmt.Println(string(text), err)
	// Output: {"schema":"error/1","errors":[{"path":"water","text":"","reason":"is missing","remedy":"say how much water","message":"water is missing; say how much water.","kind":"missing"}]} <nil>
}
