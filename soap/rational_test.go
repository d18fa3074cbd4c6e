package soap_test

import (
	"math/big"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// The checks of this package reckon in fractions of their own, so that no
// expected figure comes out of the arithmetic it is to check.

// frac reads a decimal number or a fraction.
func frac(text string) *big.Rat {
	r, ok := new(big.Rat).SetString(text)
	if !ok {
		panic("not a number: " + text)
	}
	return r
}

// ratioFrac takes a ratio over as a fraction. A ratio that is not given is 0.
func ratioFrac(r units.Ratio) *big.Rat {
	if !r.Given() {
		return new(big.Rat)
	}
	return frac(r.Text(60))
}

// massFrac takes a mass over, in grams.
func massFrac(m units.Mass) *big.Rat { return frac(m.Text(units.Gram, 9)) }

func plus(a, b *big.Rat) *big.Rat  { return new(big.Rat).Add(a, b) }
func minus(a, b *big.Rat) *big.Rat { return new(big.Rat).Sub(a, b) }
func times(a, b *big.Rat) *big.Rat { return new(big.Rat).Mul(a, b) }
func over(a, b *big.Rat) *big.Rat  { return new(big.Rat).Quo(a, b) }
func whole(n int64) *big.Rat       { return new(big.Rat).SetInt64(n) }

// within reports whether two figures lie at most so far apart.
func within(got, want, tolerance *big.Rat) bool {
	apart := minus(got, want)
	return apart.Abs(apart).Cmp(tolerance) <= 0
}

// builtIn looks a built-in oil up.
func builtIn(t testing.TB, id string) soap.Oil {
	t.Helper()
	oil, err := soap.LookUpOil(id)
	if err != nil {
		t.Fatalf("oil %q: %v", id, err)
	}
	return oil
}
