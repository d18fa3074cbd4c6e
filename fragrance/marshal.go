package fragrance

import (
	"errors"
	"strings"

	"example.com/lyewright/units/fault"
)

// A number and a rule are written as text and read back. A material's JSON goes one way,
// since the figures of a built-in one are the table's; a shelf and a verdict are made anew
// from what they were made of. All these refuse the other way with a sentence that says
// what to do.

// MarshalText writes the number as it is written on a list; none is the empty text. The
// error is nil.
func (c CAS) MarshalText() ([]byte, error) { return []byte(c.text), nil }

// UnmarshalText reads a number as [ParseCAS] does; the empty text is none. The error is that
// of ParseCAS.
func (c *CAS) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*c = CAS{}
		return nil
	}
	read, err := ParseCAS(string(text))
	if err == nil {
		*c = read
	}
	return err
}

// GobEncode writes what MarshalText does.
func (c CAS) GobEncode() ([]byte, error) { return c.MarshalText() }

// GobDecode reads what GobEncode wrote.
func (c *CAS) GobDecode(text []byte) error { return c.UnmarshalText(text) }

// String gives who makes the rule, and its number: "ifra 021"; empty where there is none.
func (r Rule) String() string {
	if !r.Given() {
		return ""
	}
	return r.Body().String() + " " + r.Number()
}

// MarshalText writes the rule as String gives it: what it asks is read from the tables
// again. The error is nil.
func (r Rule) MarshalText() ([]byte, error) { return []byte(r.String()), nil }

// UnmarshalText finds the rule that MarshalText wrote in the edition that is held now; the
// empty text is none. The error is a [fault.Fault], of kind [fault.ErrUnknown].
func (r *Rule) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*r = Rule{}
		return nil
	}
	body, number, _ := strings.Cut(string(text), " ")
	for _, b := range []Body{IFRA, EU} {
		if found := current().numbered(b, number); b.String() == body && found != nil {
			*r = Rule{found}
			return nil
		}
	}
	return fault.Fault{
		Text: string(text), Reason: "is no rule that is held",
		Remedy: `write who makes it and its number, such as "ifra 021"`, Kind: fault.ErrUnknown,
	}
}

// GobEncode writes what MarshalText does.
func (r Rule) GobEncode() ([]byte, error) { return r.MarshalText() }

// GobDecode reads what GobEncode wrote.
func (r *Rule) GobDecode(text []byte) error { return r.UnmarshalText(text) }

// String gives the material's ID.
func (m Material) String() string { return m.ID() }

var (
	errMaterial = errors.New("fragrance: a Material is not read back, nor written with gob: keep its ID, or the " +
		"Supplied that it was made of, and ask LookUp or a Shelf")
	errShelf   = errors.New("fragrance: a Shelf is not written: keep the Supplied values that it was made of")
	errVerdict = errors.New("fragrance: a Verdict is not written: keep what was judged, and call Judge")
)

// UnmarshalJSON refuses: the JSON of a material goes one way.
func (m *Material) UnmarshalJSON([]byte) error { return errMaterial }

// GobEncode refuses: see [Material.UnmarshalJSON].
func (m Material) GobEncode() ([]byte, error) { return nil, errMaterial }

// MarshalJSON refuses: what a shelf holds is kept as the [Supplied] values it was made of.
func (s Shelf) MarshalJSON() ([]byte, error) { return nil, errShelf }

// GobEncode refuses, as MarshalJSON does.
func (s Shelf) GobEncode() ([]byte, error) { return nil, errShelf }

// MarshalJSON refuses: a verdict is worked out anew from what was judged.
func (v Verdict) MarshalJSON() ([]byte, error) { return nil, errVerdict }

// GobEncode refuses, as MarshalJSON does.
func (v Verdict) GobEncode() ([]byte, error) { return nil, errVerdict }
