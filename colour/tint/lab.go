package tint

import (
	"math"

	"example.com/lyewright/units/fault"
)

// Lab is a colour in CIELAB (CIE 15) for the 1931 observer and the light D65. The zero
// value is black.
type Lab struct {
	L float64 // lightness, from 0, black, to 100, white
	A float64 // from green, below 0, to red; 0 is neither
	B float64 // from blue, below 0, to yellow; 0 is neither
}

// The constants of CIE 15, exact.
const (
	labToe   = 6.0 / 29
	labSlope = 3 * labToe * labToe
)

func labFunction(t float64) float64 {
	if t > labToe*labToe*labToe {
		return math.Cbrt(t)
	}
	return t/labSlope + 4.0/29
}

// labFunctionSlope is the derivative of labFunction.
func labFunctionSlope(t float64) float64 {
	if t > labToe*labToe*labToe {
		root := math.Cbrt(t)
		return 1 / (3 * root * root)
	}
	return 1 / labSlope
}

func labInverse(f float64) float64 {
	if f > labToe {
		return f * f * f
	}
	return labSlope * (f - 4.0/29)
}

// A stimulus is X, Y and Z, each as a share of the white's.
type stimulus [3]float64

func (s stimulus) lab() Lab {
	x, y, z := labFunction(s[0]), labFunction(s[1]), labFunction(s[2])
	return Lab{116*y - 16, 500 * (x - y), 200 * (y - z)}
}

func (c Lab) stimulus() stimulus {
	y := (c.L + 16) / 116
	return stimulus{labInverse(y + c.A/500), labInverse(y), labInverse(y - c.B/200)}
}

func (c Lab) finite() bool { return finite(c.L) && finite(c.A) && finite(c.B) }

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// Check says whether this can be a colour: finite, L from 0 to 100, a and b within 200. The
// error is [fault.Faults], with the path "lab".
func (c Lab) Check() error {
	if reason := labFault(c); reason != "" {
		return fault.Faults{{Path: "lab", Text: c.String(), Reason: reason, Remedy: "give L from 0 to 100, a and b", Kind: fault.ErrRange}}
	}
	return nil
}

// String gives the three figures as they are, such as "62, -8, -24".
func (c Lab) String() string { return figure(c.L) + ", " + figure(c.A) + ", " + figure(c.B) }
