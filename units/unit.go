package units

// Unit is a unit of mass, for reading and printing: a [Mass] itself has none. The zero
// value is [Gram], and an unknown value counts as it.
type Unit uint8

// The units of mass that are read and printed. The ounce and the pound are
// the avoirdupois ones, exact by definition: 28.349 523 125 g and 453.592 37 g
// (NIST Handbook 44, 2014 edition, Appendix C, table "Units of Mass", p. C-14,
// and pp. C-12 and C-20; read).
const (
	Gram      Unit = iota // g
	Kilogram              // kg, 1000 g
	Milligram             // mg, 0.001 g
	Ounce                 // oz, 28.349 523 125 g: avoirdupois, not fluid
	Pound                 // lb, 453.592 37 g, sixteen ounces
)

// nanograms is how many nanograms one of the unit has, exactly.
func (u Unit) nanograms() int64 {
	switch u {
	case Kilogram:
		return 1_000_000_000_000
	case Milligram:
		return 1_000_000
	case Ounce:
		return 28_349_523_125
	case Pound:
		return 453_592_370_000
	default:
		return nanogramsPerGram
	}
}

// String gives the unit's symbol: g, kg, mg, oz, lb.
func (u Unit) String() string {
	switch u {
	case Kilogram:
		return "kg"
	case Milligram:
		return "mg"
	case Ounce:
		return "oz"
	case Pound:
		return "lb"
	default:
		return "g"
	}
}

// ParseUnit reads a unit's symbol as String gives it, letter for letter: g, kg, mg, oz,
// lb; ok is false for anything else.
func ParseUnit(symbol string) (u Unit, ok bool) {
	for u := range Pound + 1 {
		if u.String() == symbol {
			return u, true
		}
	}
	return Gram, false
}
