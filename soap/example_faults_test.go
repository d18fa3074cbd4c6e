package soap_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"

	"example.com/lyewright/soap"
)

// Everything that is wrong comes back together.
func ExampleFaults() {
	_, err := soap.ReadFormula(strings.NewReader(`{"formula": "Bars", "oils": [{"oil": "oliv", "share": "60 %"}],
"alkali": [{"kind": "sodium-hydroxide"}], "superfat": "6", "water": {"per_oils": "30 %"}, "size": {"oils": "800 g"}}`))
	var faults soap.Faults
	if errors.As(err, &faults) {
		for _, f := range faults {
			fmt.Printf("line %d, %s: %s\n", f.Line, f.Path, f.Sentence())
		}
	}
	// Output:
	// line 1, oils: "60 %" is what the shares add up to, 40 % short of 100 %; raise a share, or make one "rest"
	// line 1, oils[0].oil: "oliv" is not a built-in oil; did you mean olive?
	// line 2, superfat: "6" has no unit; write "6 %" if a percentage is meant
}

// For a program that reads on: one object of schema error/1.
func ExampleFaults_asJSON() {
	_, err := soap.ReadFormula(strings.NewReader(`{"formula": "Bars"`))
	var faults soap.Faults
	if errors.As(err, &faults) {
		fmt.Println(string(must(json.Marshal(faults))))
	}
	// Output: {"schema":"error/1","errors":[{"path":"","text":"","reason":"ends too early","remedy":"close every bracket and quotation mark","message":"The input ends too early; close every bracket and quotation mark.","kind":"syntax","line":1,"column":19}]}
}

// A fault says where, what and what would be right; its kind is for errors.Is.
func ExampleFault() {
	_, err := soap.LookUpOil("coconnut")
	var fault soap.Fault
	if errors.As(err, &fault) {
		fmt.Printf("%s: %q %s (%s)\n", fault.Path, fault.Text, fault.Reason, fault.Remedy)
	}
	fmt.Println(errors.Is(err, soap.ErrUnknown), errors.Is(err, soap.ErrRange))
	// Output:
	// oil: "coconnut" is not a built-in oil (did you mean coconut?)
	// true false
}
