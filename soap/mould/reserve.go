package mould

import (
	"example.com/lyewright/units"
	"example.com/lyewright/units/cite"
)

// Work is how a part gets into its vessels. The zero value is [Poured].
type Work uint8

// The ways in which a part gets into its vessels.
const (
	Poured Work = iota // straight out of its jug
	Piped              // through a bag and a nozzle, which keep some
)

// String gives "poured" or "piped"; any other value counts as poured.
func (w Work) String() string {
	if w == Piped {
		return "piped"
	}
	return "poured"
}

// Reserve is what is usually made beyond what is filled, as a share of that: 5 %,
// piped 15 %. Common practice, without a source.
func (w Work) Reserve() units.Ratio {
	if w == Piped {
		return units.Percent(15)
	}
	return units.Percent(5)
}

// ReserveSource is the source of [Work.Reserve].
func ReserveSource() cite.Source { return cite.Source{How: cite.CommonPractice} }

// Shared divides what is poured: what fills the vessels, (poured − loss)/(1 + reserve) to
// the nearest nanogram, and the reserve that is kept beyond it, a share of what is filled.
// With the loss they add up to what is poured; ok is false where the loss is more, and
// where the reserve is not given: it is 0 % where there is none.
func Shared(poured, loss units.Mass, reserve units.Ratio) (filled, kept units.Mass, ok bool) {
	left := poured.Sub(loss)
	if left.Sign() < 0 {
		return units.Mass{}, units.Mass{}, false
	}
	if filled, ok = left.Over(units.Whole(1).Add(reserve), units.Nearest); !ok {
		return units.Mass{}, units.Mass{}, false
	}
	return filled, left.Sub(filled), true
}
