package colour

import "example.com/lyewright/units"

// Base is what a load is a share of, by mass. The zero value is [OfOils].
type Base uint8

// What a load may be a share of.
const (
	OfOils   Base = iota // of the part's share of all the formula's oils
	OfBatter             // of the part's share of what is in the pot
	OfDry                // of the part's dry mass
)

// String gives "of oils", "of batter" or "of the dry part".
func (b Base) String() string {
	return [...]string{"of oils", "of batter", "of the dry part"}[min(b, OfDry)]
}

// Load is how much of a colourant goes into a part, by mass. The zero value is not given.
type Load struct {
	Of    Base        // what Share is a share of
	Share units.Ratio // over 0 % to 100 %
}

// Text gives the load with at most so many decimals of a percent (0 to 34): "0.8 % of
// oils".
func (l Load) Text(most int) string { return l.Share.PercentText(most) + " % " + l.Of.String() }

// Amounts are the masses of a part that loads are shares of. What is 0 g is not known:
// there is no load of it.
type Amounts struct {
	Oils   units.Mass // the part's share of all the formula's oils
	Batter units.Mass // the part's share of what is in the pot
	Dry    units.Mass // the part without its water
}

func (a Amounts) of(b Base) units.Mass {
	switch b {
	case OfBatter:
		return a.Batter
	case OfDry:
		return a.Dry
	default:
		return a.Oils
	}
}

// Load gives a mass as a load of a base, to twelve decimals; not given where there is
// nothing that it could be a share of.
func (a Amounts) Load(m units.Mass, of Base) Load {
	share, _ := m.Per(a.of(of))
	return Load{of, share}
}

// Mass gives a load as a mass, rounded to the nearest nanogram; 0 g where the load is not
// given.
func (a Amounts) Mass(l Load) units.Mass {
	return units.Sum{}.Plus(a.of(l.Of), l.Share).Mass(units.Nearest)
}

// Convert gives a load as a share of something else in the same part, the ratio of both to
// twelve decimals; not given where there is nothing of that.
func (a Amounts) Convert(l Load, to Base) Load {
	if l.Of == to || !l.Share.Given() {
		return l
	}
	ratio, ok := a.of(l.Of).Per(a.of(to))
	if !ok {
		return Load{Of: to}
	}
	return Load{to, l.Share.Times(ratio)}
}
