package soap

import (
	"slices"

	"example.com/lyewright/fragrance"
)

// Market is where the soap is sold: its rules count.
type Market uint8

const (
	EuropeanUnion Market = 1 + iota
	UnitedStates
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

// Law says whose limits on fragrance count, whatever the markets are. The IFRA
// Standards always count.
type Law uint8

const (
	ByMarkets Law = iota // European law too, unless the markets leave the Union out
	IFRAAlone            // the IFRA Standards alone
	WithEU               // European law too
)

// law gives whose limits on fragrance count.
func (f *Formula) law() fragrance.Law {
	leftOut := len(f.Markets) > 0 && !slices.Contains(f.Markets, EuropeanUnion)
	if f.Law == IFRAAlone || f.Law == ByMarkets && leftOut {
		return fragrance.IFRAAlone
	}
	return fragrance.IFRAAndEU
}

// Look is what a part is meant to look like. The zero value is AnyLook.
type Look uint8

const (
	AnyLook Look = iota
	White
	Pale
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
