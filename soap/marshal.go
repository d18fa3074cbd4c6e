package soap

import "errors"

// Quantities, lines and weighings go into JSON and gob, and come back. A batch and its views
// go into JSON one way, since they are worked out from a formula. A formula has its file:
// what a Go program makes of its fields would be a second form of it, and is refused. Each
// refusal is a sentence that says what to do.
var (
	errFormula = errors.New("soap: a Formula is not written by encoding/json or encoding/gob: keep the formula file " +
		"that it was read from, or the code that makes it")
	errRead  = errors.New("soap: a Formula is not read by encoding/json: call ReadFormula or ParseFormula")
	errBatch = errors.New("soap: a Batch is not read back, nor written with gob: keep its formula, and call " +
		"Formula.Batch")
	errPart = errors.New("soap: a part of a Batch is not read back, nor written with gob: keep the formula, and " +
		"call Formula.Batch")
	errCaps = errors.New("soap: a Caps is not read back: keep the formula, and call Batch.Caps")
	errTint = errors.New("soap: a Tint is not read back: keep the formula, and call Batch.Tint")
	errOil  = errors.New("soap: an Oil is not read back, nor written with gob: keep its ID, or the OwnOil that it " +
		"was made of, and call LookUpOil or OwnOil.Oil")
	errPosition = errors.New("soap: Places are not written: keep the formula file, and read it again")
)

// MarshalJSON refuses: a formula is kept as its file, which [ParseFormula] reads back.
func (f Formula) MarshalJSON() ([]byte, error) { return nil, errFormula }

// UnmarshalJSON refuses: a formula file is read by [ReadFormula] or [ParseFormula], which
// know where everything stands and say all that is wrong.
func (f *Formula) UnmarshalJSON([]byte) error { return errRead }

// MarshalText refuses, as MarshalJSON does, so that no log holds half a formula.
func (f Formula) MarshalText() ([]byte, error) { return nil, errFormula }

// GobEncode refuses, as MarshalJSON does.
func (f Formula) GobEncode() ([]byte, error) { return nil, errFormula }

// MarshalText gives what MarshalJSON does, for a log of plain text.
func (b Batch) MarshalText() ([]byte, error) { return b.MarshalJSON() }

// UnmarshalJSON refuses: the JSON of a batch goes one way.
func (b *Batch) UnmarshalJSON([]byte) error { return errBatch }

// GobEncode refuses: see [Batch.UnmarshalJSON].
func (b Batch) GobEncode() ([]byte, error) { return nil, errBatch }

// UnmarshalJSON refuses: what is weighed follows from the formula. JSON goes one way, as
// part of a [Batch].
func (a *AdditionWeighing) UnmarshalJSON([]byte) error { return errPart }

// GobEncode refuses: see [AdditionWeighing.UnmarshalJSON].
func (a AdditionWeighing) GobEncode() ([]byte, error) { return nil, errPart }

// UnmarshalJSON refuses: the last batch follows from the formula. JSON goes one way, as
// part of a [Batch].
func (l *LastBatch) UnmarshalJSON([]byte) error { return errPart }

// GobEncode refuses: see [LastBatch.UnmarshalJSON].
func (l LastBatch) GobEncode() ([]byte, error) { return nil, errPart }

// MarshalText gives what MarshalJSON does, for a log of plain text.
func (c Caps) MarshalText() ([]byte, error) { return c.MarshalJSON() }

// UnmarshalJSON refuses: the JSON of caps goes one way.
func (c *Caps) UnmarshalJSON([]byte) error { return errCaps }

// MarshalText gives what MarshalJSON does, for a log of plain text.
func (t Tint) MarshalText() ([]byte, error) { return t.MarshalJSON() }

// UnmarshalJSON refuses: the JSON of a tint goes one way.
func (t *Tint) UnmarshalJSON([]byte) error { return errTint }

// String gives the oil's ID.
func (o Oil) String() string { return o.ID() }

// UnmarshalJSON refuses: the JSON of an oil goes one way.
func (o *Oil) UnmarshalJSON([]byte) error { return errOil }

// GobEncode refuses: see [Oil.UnmarshalJSON].
func (o Oil) GobEncode() ([]byte, error) { return nil, errOil }

// MarshalJSON refuses: places are those of a file.
func (p Places) MarshalJSON() ([]byte, error) { return nil, errPosition }

// GobEncode refuses, as MarshalJSON does.
func (p Places) GobEncode() ([]byte, error) { return nil, errPosition }
