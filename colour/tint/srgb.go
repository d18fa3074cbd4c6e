package tint

import (
	"math"
	"sync"

	"example.com/lyewright/units"
)

// SRGB is a colour of a screen, by IEC 61966-2-1: three values of 8 bits. The zero value
// is black.
type SRGB struct {
	R, G, B uint8 // red, green and blue as encoded, not linear: 0 to 255
}

// ParseSRGB reads a colour such as "#c8b49a": # and six hexadecimal digits, of either case.
// The error is a [*units.ParseError].
func ParseSRGB(text string) (SRGB, error) {
	var c SRGB
	if len(text) == 7 && text[0] == '#' {
		ok := true
		for i, to := range []*uint8{&c.R, &c.G, &c.B} {
			high, ok1 := hexDigit(text[1+2*i])
			low, ok2 := hexDigit(text[2+2*i])
			*to, ok = high<<4|low, ok && ok1 && ok2
		}
		if ok {
			return c, nil
		}
	}
	return SRGB{}, &units.ParseError{Text: text, Reason: "is not a colour", Remedy: `write # and six digits, such as "#c8b49a"`, Kind: units.ErrSyntax}
}

func hexDigit(c byte) (digit uint8, ok bool) {
	switch {
	case '0' <= c && c <= '9':
		return c - '0', true
	case 'a' <= c && c <= 'f':
		return c - 'a' + 10, true
	case 'A' <= c && c <= 'F':
		return c - 'A' + 10, true
	default:
		return 0, false
	}
}

// String gives the colour as "#c8b49a".
func (c SRGB) String() string {
	const digits = "0123456789abcdef"
	text := []byte("#......")
	for i, v := range [3]uint8{c.R, c.G, c.B} {
		text[1+2*i], text[2+2*i] = digits[v>>4], digits[v&15]
	}
	return string(text)
}

// Lab gives the colour in CIELAB; white is 100, 0, 0.
func (c SRGB) Lab() Lab { return c.linear().stimulus().lab() }

// light is linear light in the three primaries of sRGB: from 0 to 1 within its gamut.
type light [3]float64

func (c SRGB) linear() light {
	return light{decoded(c.R), decoded(c.G), decoded(c.B)}
}

func decoded(v uint8) float64 {
	c := float64(v) / 255
	if c <= 0.04045 {
		return c / 12.92
	}
	return math.Pow((c+0.055)/1.055, 2.4)
}

func encoded(c float64) uint8 {
	if c <= 0.0031308 {
		c *= 12.92
	} else {
		c = 1.055*math.Pow(c, 1/2.4) - 0.055
	}
	return uint8(math.Round(255 * max(0, min(1, c))))
}

// SRGB gives the colour as a screen can show it. Where that is out of its reach, inGamut
// is false, and the picture keeps lightness and hue and gives up chroma.
func (c Lab) SRGB() (picture SRGB, inGamut bool) {
	shown := c.stimulus().light()
	inGamut = shown.inGamut()
	if !inGamut {
		low, high := 0.0, 1.0 // of the chroma: what can be shown, and what cannot
		for range 40 {
			middle := (low + high) / 2
			if (Lab{c.L, c.A * middle, c.B * middle}).stimulus().light().inGamut() {
				low = middle
			} else {
				high = middle
			}
		}
		shown = Lab{c.L, c.A * low, c.B * low}.stimulus().light()
	}
	return SRGB{encoded(shown[0]), encoded(shown[1]), encoded(shown[2])}, inGamut
}

// inGamut allows for the rounding of the conversion itself.
func (l light) inGamut() bool {
	const rounding = 1e-6
	for _, v := range l {
		if v < -rounding || v > 1+rounding {
			return false
		}
	}
	return true
}

// conversion turns linear light into X, Y and Z as shares of the white's, and back.
// Computed from the primaries of IEC 61966-2-1 (0.64, 0.33; 0.30, 0.60; 0.15, 0.06) and
// its white (0.3127, 0.3290): the standard prints them with four decimals, which are not
// exact inverses of each other.
type conversion struct{ of, to [3][3]float64 }

var screen = sync.OnceValue(func() conversion {
	of := primaries()
	return conversion{of, inverse(of)}
})

func primaries() (m [3][3]float64) {
	x, y := [3]float64{0.64, 0.30, 0.15}, [3]float64{0.33, 0.60, 0.06}
	for j := range x {
		m[0][j], m[1][j], m[2][j] = x[j]/y[j], 1, (1-x[j]-y[j])/y[j]
	}
	white := [3]float64{0.3127 / 0.3290, 1, (1 - 0.3127 - 0.3290) / 0.3290}
	each := times(inverse(m), white)
	for i := range m {
		for j := range m[i] {
			m[i][j] *= each[j] / white[i]
		}
	}
	return m
}

func inverse(m [3][3]float64) (n [3][3]float64) {
	cofactor := func(i, j int) float64 {
		a, b, c, d := (i+1)%3, (i+2)%3, (j+1)%3, (j+2)%3
		return m[a][c]*m[b][d] - m[a][d]*m[b][c]
	}
	determinant := m[0][0]*cofactor(0, 0) + m[0][1]*cofactor(0, 1) + m[0][2]*cofactor(0, 2)
	for i := range n {
		for j := range n[i] {
			n[i][j] = cofactor(j, i) / determinant
		}
	}
	return n
}

func times(m [3][3]float64, v [3]float64) (w [3]float64) {
	for i := range w {
		w[i] = m[i][0]*v[0] + m[i][1]*v[1] + m[i][2]*v[2]
	}
	return w
}

func (l light) stimulus() stimulus { return times(screen().of, l) }
func (s stimulus) light() light    { return times(screen().to, s) }
