package units

// Rounding says which way a figure goes when it must be cut to fewer digits.
// The zero value is Nearest.
type Rounding uint8

const (
	// Nearest goes to the nearest step; a figure half-way between two steps
	// goes away from zero. It is the rounding of a scale.
	Nearest Rounding = iota
	// Down goes to the step below, of a negative figure away from zero: the rounding
	// of a cap, and of alkali.
	Down
	// Up goes to the step above, of a negative figure towards zero: the rounding of a
	// minimum.
	Up
)

// stepsUp reports whether a magnitude cut to whole steps must go one step
// further from zero. doubled compares twice the remainder with a step (-1, 0
// or 1); the remainder itself is not zero.
func (how Rounding) stepsUp(negative bool, doubled int) bool {
	switch how {
	case Down:
		return negative
	case Up:
		return !negative
	default:
		return doubled >= 0
	}
}

// String names the rounding in English: "nearest", "down", "up".
func (how Rounding) String() string {
	switch how {
	case Down:
		return "down"
	case Up:
		return "up"
	default:
		return "nearest"
	}
}
