package colour

import (
	"errors"

	"example.com/lyewright/internal/jsonwrite"
)

// What a colourant is, and what is published of it, goes into JSON one way, with its
// sources: the figures are the table's, or those of the Supplied that it was made of.

var (
	errColourant = errors.New("colour: a Colourant is not read back, nor written with gob: keep its ID, or the Supplied " +
		"that it was made of, and ask LookUp or a Shelf")
	errFact = errors.New("colour: what is published of a colourant is not read back, nor written with gob: ask the " +
		"Colourant for it again")
	errShelf = errors.New("colour: a Shelf is not written: keep the Supplied values that it was made of")
)

// String gives the colourant's ID.
func (c Colourant) String() string { return c.ID() }

// UnmarshalJSON refuses: the JSON of a colourant goes one way.
func (c *Colourant) UnmarshalJSON([]byte) error { return errColourant }

// GobEncode refuses: see [Colourant.UnmarshalJSON].
func (c Colourant) GobEncode() ([]byte, error) { return nil, errColourant }

// MarshalJSON writes the standing, the clause and the remark, and the source. The error is
// nil.
func (s Status) MarshalJSON() ([]byte, error) { return object(s.write), nil }

// UnmarshalJSON refuses: the JSON goes one way. Ask [Colourant.Under] again.
func (s *Status) UnmarshalJSON([]byte) error { return errFact }

// GobEncode refuses: see [Status.UnmarshalJSON].
func (s Status) GobEncode() ([]byte, error) { return nil, errFact }

// MarshalJSON writes the stability, what happens, and the source. The error is nil.
func (f Fastness) MarshalJSON() ([]byte, error) { return object(f.write), nil }

// UnmarshalJSON refuses: the JSON goes one way. Ask [Colourant.InAlkali] again.
func (f *Fastness) UnmarshalJSON([]byte) error { return errFact }

// GobEncode refuses: see [Fastness.UnmarshalJSON].
func (f Fastness) GobEncode() ([]byte, error) { return nil, errFact }

// MarshalJSON refuses: what a shelf holds is kept as the [Supplied] values it was made of.
func (s Shelf) MarshalJSON() ([]byte, error) { return nil, errShelf }

// GobEncode refuses, as MarshalJSON does.
func (s Shelf) GobEncode() ([]byte, error) { return nil, errShelf }

func object(write func(*jsonwrite.Writer)) []byte {
	w := jsonwrite.New()
	w.Object("", func() { write(w) })
	return w.Bytes()
}
