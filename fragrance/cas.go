package fragrance

import (
	"strconv"
	"strings"

	"example.com/lyewright/units/fault"
)

// CAS is the number of a substance in the registry of the Chemical Abstracts Service,
// such as 97-53-0. The zero value is none; get one from [ParseCAS].
type CAS struct{ text string }

// String gives the number as it is written.
func (c CAS) String() string { return c.text }

// ParseCAS reads a registry number: two to seven digits, two, and a check digit, with
// hyphens. The check digit is the sum of the others, each times its place from the
// right, modulo 10. The error is a [fault.Fault], of kind [fault.ErrFormat], or
// [fault.ErrRange] where the check digit alone is wrong. That a number is in order does not
// say that there is such a substance.
func ParseCAS(text string) (CAS, error) {
	bad := func(reason, remedy string, kind error) (CAS, error) {
		return CAS{}, fault.Fault{Text: text, Reason: reason, Remedy: remedy, Kind: kind}
	}
	parts := strings.Split(text[:min(len(text), 40)], "-")
	if len(parts) != 3 || len(parts[0]) < 2 || len(parts[0]) > 7 || len(parts[1]) != 2 || len(parts[2]) != 1 {
		return bad("is not a CAS number", `write it with its hyphens, such as "97-53-0"`, fault.ErrFormat)
	}
	if text[0] == '0' {
		return bad("is not a CAS number: none begins with 0", "leave the zeros out: "+strings.TrimLeft(text, "0"), fault.ErrFormat)
	}
	digits := parts[0] + parts[1]
	sum := 0
	for i := range len(digits) {
		d := digits[len(digits)-1-i]
		if d < '0' || d > '9' || parts[2][0] < '0' || parts[2][0] > '9' {
			return bad("is not a CAS number", `write it with its hyphens, such as "97-53-0"`, fault.ErrFormat)
		}
		sum += (i + 1) * int(d-'0')
	}
	if check := strconv.Itoa(sum % 10); check != parts[2] {
		return bad("is not a CAS number: its check digit is wrong", "compare it with the supplier's list; if the other digits are right the last is "+check, fault.ErrRange)
	}
	return CAS{text}, nil
}
