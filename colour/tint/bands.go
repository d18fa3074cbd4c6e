package tint

import (
	_ "embed"
	"strconv"
	"sync"

	"example.com/lyewright/internal/refdata"
)

//go:embed data/observer.txt
var observerTable string

// DataEdition is the date of the table of the observer and the light, as year-month-day.
func DataEdition() string { return refdata.Edition(observerTable) }

// Bands are the wavelengths that a spectrum was read at. The zero value is no spectrum:
// the three bands of linear light that a colour in Lab or sRGB stands for.
type Bands struct {
	From  int // nm, a multiple of 5, 380 to 400
	Step  int // nm: 5, 10 or 20
	Count int // so that the last lies at 700 to 730 nm
}

// The ends of what may be read, and of what must be.
const (
	leastNM, mostFirstNM = 380, 400
	leastLastNM, mostNM  = 700, 730
	gridNM               = 5
)

func (b Bands) last() int { return b.From + (b.Count-1)*b.Step }

// String gives "31 bands, 400 to 700 nm"; of the zero value "3 bands".
func (b Bands) String() string {
	if b == (Bands{}) {
		return "3 bands"
	}
	return strconv.Itoa(b.Count) + " bands, " + strconv.Itoa(b.From) + " to " + strconv.Itoa(b.last()) + " nm"
}

// count is the number of bands: of light, three.
func (b Bands) count() int {
	if b == (Bands{}) {
		return 3
	}
	return b.Count
}

// An eye is what every band adds to X, Y and Z, as shares of the white's: what is
// perfectly white is exactly 1, 1, 1.
type eye [][3]float64

// eye gives the eye for bands that are in order.
func (b Bands) eye() eye {
	if b == (Bands{}) {
		e, of := make(eye, 3), screen().of
		for i := range of {
			for j := range e {
				e[j][i] = of[i][j]
			}
		}
		return e
	}
	table, e, white := observer(), make(eye, b.Count), [3]float64{}
	for j := range e {
		e[j] = table[(b.From+j*b.Step-leastNM)/gridNM]
		for i := range white {
			white[i] += e[j][i]
		}
	}
	for j := range e {
		for i := range white {
			e[j][i] /= white[i]
		}
	}
	return e
}

// sees adds up the bands.
func (e eye) sees(reflectance []float64) (s stimulus) {
	for j := range e {
		r := reflectance[j]
		s[0] += e[j][0] * r
		s[1] += e[j][1] * r
		s[2] += e[j][2] * r
	}
	return s
}

// observer reads the table once: D65 times the observer, every 5 nm from 380.
var observer = sync.OnceValue(func() [][3]float64 {
	var table [][3]float64
	for line := range refdata.Lines(observerTable) {
		number := func(field int) float64 {
			v, _ := strconv.ParseFloat(refdata.Field(line, field), 64) // a test reads every one
			return v
		}
		light := number(4)
		table = append(table, [3]float64{light * number(1), light * number(2), light * number(3)})
	}
	return table
})

// Colour gives the colour of a spectrum read at these bands, one reflectance from 0 to 1
// for each, or of linear light in red, green and blue for the zero value: a perfect white
// is 100, 0, 0. The error is [fault.Faults], with the paths "bands" and "reflectance".
func (b Bands) Colour(reflectance []float64) (Lab, error) {
	c := checker{s: &Swatches{Bands: b, Surface: &Surface{}}}
	if b != (Bands{}) {
		c.grid()
	}
	if len(c.faults) == 0 {
		c.spectrum(reflectance, "reflectance", false)
	}
	if err := c.faults.OrNil(); err != nil {
		return Lab{}, err
	}
	return b.eye().sees(reflectance).lab(), nil
}
