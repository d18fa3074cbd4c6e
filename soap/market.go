package soap

import (
	"slices"

	"example.com/lyewright/fragrance"
)

// Market is where the soap is sold: its rules count. The zero value is none, which
// [Formula.Check] refuses in a list.
type Market uint8

// The markets whose rules are known.
const (
	EuropeanUnion Market = 1 + iota // its law on colourants and on fragrance
	UnitedStates                    // its law on colourants
)

// String gives the word a formula file uses: "eu", "us"; empty for none.
func (m Market) String() string {
	switch m {
	case EuropeanUnion:
		return "eu"
	case UnitedStates:
		return "us"
	default:
		return ""
	}
}

// Law says whose limits on fragrance count. The IFRA Standards always do. The zero value
// is ByMarkets.
type Law uint8

// Whose limits on fragrance count.
const (
	ByMarkets Law = iota // European law too, unless the markets leave the Union out
	IFRAAlone            // the IFRA Standards alone, whatever the markets are
	WithEU               // European law too, whatever the markets are
)

// law gives whose limits on fragrance count.
func (f *Formula) law() fragrance.Law {
	leftOut := len(f.Markets) > 0 && !slices.Contains(f.Markets, EuropeanUnion)
	if f.Law == IFRAAlone || f.Law == ByMarkets && leftOut {
		return fragrance.IFRAAlone
	}
	return fragrance.IFRAAndEU
}

// Look is what a part is meant to look like. A fragrance that browns soap is warned of in
// a white or a pale part, and of parts whose colour is not known it says which comes
// first. The zero value is AnyLook.
type Look uint8

// What a part may be meant to look like.
const (
	AnyLook Look = iota // nothing is said of it
	White               // to be worked with first
	Pale                // to stay pale
)

// String gives the word a formula file uses: "any", "white", "pale".
func (l Look) String() string {
	switch l {
	case White:
		return "white"
	case Pale:
		return "pale"
	default:
		return "any"
	}
}
