package units_test

import (
	"errors"
	"math"
	"math/big"
	"testing"

	"example.com/lyewright/units"
)

func area(t testing.TB, text string) units.Area {
	t.Helper()
	a, err := units.ParseArea(text)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func TestAreaSurvivesWritingAndReading(t *testing.T) {
	s := newSource(53)
	for range 5_000 {
		number := plain(rat(t, s.digits(1+s.IntN(7))+"."+s.digits(1+s.IntN(6))), 6)
		a := area(t, number+" mm²")
		if a.Text(6) != number || area(t, a.String()) != a {
			t.Fatalf("%s mm² is %v", number, a)
		}
		for unit, scale := range map[string]int64{"cm²": 100, "cm2": 100, "m²": 1_000_000, "m2": 1_000_000} {
			text := times(rat(t, number), big.NewRat(1, scale)).FloatString(12) + " " + unit
			if got := area(t, text); got != a {
				t.Fatalf("%s is %v, want %v", text, got, a)
			}
		}
		places := s.IntN(7)
		if got, want := a.Text(places), plain(rat(t, number), places); got != want {
			t.Fatalf("%s with %d decimals is %s, want %s", number, places, got, want)
		}
	}
}

// The side of a square is a length, so the scale of each unit of area is the square
// of that of the length.
func TestUnitsOfAreaAreTheSquaresOfThoseOfLength(t *testing.T) {
	for _, unit := range []string{"mm", "cm", "m", "in"} {
		side := rat(t, length(t, "1 "+unit).Text(6))
		want := plain(times(side, side), 6)
		for _, square := range []string{"²", "2"} {
			if got := area(t, "1 "+unit+square).Text(6); got != want {
				t.Errorf("1 %s%s is %s mm², want %s", unit, square, got, want)
			}
		}
	}
}

func TestOtherUnitsAreNoAreas(t *testing.T) {
	for _, text := range []string{
		"45", "45 g", "45 ml", "45 mL", "45 %", // another kind's, or none
		"45 mm", "45 cm", "45 m", "45 in", // a length
		"45 mm³", "45 cm3", "45 cm22", "45 cm²²", "45 cm²2", // another power
		"45 cm^2", "45 sq in", "45 square inches", "45 ft²", "45 km²", "45 µm²", // not among the spellings
		"45 CM²", "45 Mm²", "45 M2", // capitals mean something else
		"45 cm ²", "45 cm 2", "45 ²", "45²", // a symbol taken apart
		"45\u00a0cm²", "45 cm\u00b2\u200b", "45 cm\u0662", "45 ㎠", // lookalikes
		"45 cm\xb2", "45 cm\xc2", "45 cm²\x00", "45 cm²\n", // the two in Latin-1, half of it, and what follows
	} {
		a, err := units.ParseArea(text)
		if !errors.Is(err, units.ErrUnit) || a != (units.Area{}) {
			t.Errorf("%q: %v, %v", text, a, err)
		}
		if err != nil {
			checkFault(t, text, err)
		}
	}
}

func TestAreasEndAtAHundredSquareMetres(t *testing.T) {
	for _, text := range []string{"100 m²", "1000000 cm²", "100000000 mm²", "155000.31 in2"} {
		if a := area(t, text); a.Compare(units.SquareMillimetres(100_000_000)) > 0 {
			t.Errorf("%s is %v", text, a)
		}
	}
	for _, text := range []string{
		"100.000000000001 m²", "1000000.00000001 cm²", "100000000.000001 mm²", "155000.32 in²",
		"9999999999999999.9999999999999999999999999999999999 m²", "9223372036854.775808 m²",
		"18446744073709.551616 m²", "18446.744073709551616 m²", // where 64 bits end
	} {
		if a, err := units.ParseArea(text); !errors.Is(err, units.ErrSize) || a != (units.Area{}) {
			t.Errorf("%s is %v, %v", text, a, err)
		}
	}
}

func TestHugeAreasStopAtTheEnd(t *testing.T) {
	most := units.SquareMillimetres(int64(1 << 40))
	if most.String() != "1099511627776 mm²" {
		t.Errorf("2^40 mm² are %v", most)
	}
	for _, n := range []int64{1<<40 + 1, 1 << 62, math.MaxInt64} {
		if got := units.SquareMillimetres(n); got != most {
			t.Errorf("%d mm² are %v", n, got)
		}
		if got := units.SquareMillimetres(-n); got.String() != "-"+most.String() || got.Sign() != -1 {
			t.Errorf("-%d mm² are %v", n, got)
		}
	}
	if got := units.SquareMillimetres(uint64(math.MaxUint64)); got != most {
		t.Errorf("2^64 − 1 mm² are %v", got)
	}
	if got := units.SquareMillimetres(int64(math.MinInt64)); got.String() != "-1099511627776 mm²" {
		t.Errorf("−2^63 mm² are %v", got)
	}
	if got := units.SquareMillimetres(int8(-128)); got.String() != "-128 mm²" {
		t.Errorf("−128 mm² are %v", got)
	}
}

func TestTheZeroAreaIsNothing(t *testing.T) {
	var none units.Area
	if none.String() != "0 mm²" || none.Sign() != 0 || none.SquareMillimetres() != 0 || none != area(t, "0 in2") || none.Compare(none) != 0 {
		t.Errorf("the zero value is %v", none)
	}
}
