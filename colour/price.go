package colour

import (
	"strings"

	"example.com/lyewright/units"
)

// Price is an amount of money, in a currency of the maker's, for a mass. The zero value
// is not given. Which currency it is, the library does not ask.
type Price struct {
	Amount units.Ratio // of money: 0 or more, to a million
	Per    units.Mass  // over 0 g
}

const mostMoney = 1_000_000

// ParsePrice reads a price such as "12.40 per 100 g", exactly: a plain number, " per " and
// a mass over 0 g. More than a million is refused. The error is a [*units.ParseError].
func ParsePrice(text string) (Price, error) {
	const remedy = `write an amount and a mass, such as "12.40 per 100 g"`
	amount, per, found := strings.Cut(text, " per ")
	if !found {
		return Price{}, &units.ParseError{Text: text, Reason: "does not say for how much", Remedy: remedy, Kind: units.ErrSyntax}
	}
	money, err := units.ParseNumber(amount)
	if err != nil {
		return Price{}, err
	}
	if money.Compare(units.Whole(mostMoney)) > 0 {
		return Price{}, &units.ParseError{Text: text, Reason: "is more than a million", Remedy: remedy, Kind: units.ErrSize}
	}
	mass, err := units.ParseMass(per)
	if err != nil {
		return Price{}, err
	}
	if mass.Sign() <= 0 {
		return Price{}, &units.ParseError{Text: text, Reason: "is for nothing", Remedy: remedy, Kind: units.ErrSize}
	}
	return Price{money, mass}, nil
}

// Given reports whether there is a price.
func (p Price) Given() bool { return p.Amount.Given() }

// Of gives what a mass costs, as a plain number of the price's currency, to twelve
// decimals; not given where the price is not.
func (p Price) Of(m units.Mass) units.Ratio {
	if !p.Given() {
		return units.Ratio{}
	}
	cost, _ := units.Sum{}.Plus(m, p.Amount).Per(units.Sum{}.Plus(p.Per, units.Whole(1)))
	return cost
}
