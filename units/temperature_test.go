package units_test

import (
	"errors"
	"math"
	"math/big"
	"testing"

	"example.com/lyewright/units"
)

func temperature(t testing.TB, text string) units.Temperature {
	t.Helper()
	c, err := units.ParseTemperature(text)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// Ice melts at 32 °F and water boils at 212 °F, 0 and 100 °C; the two scales meet at
// -40; 0 °C is 273.15 K (SI brochure, 9th edition, 2.3.1; recalled).
func TestTheScalesMeetWhereTheyAreDefinedTo(t *testing.T) {
	for text, want := range map[string]string{
		"32 °F": "0 °C", "212 °F": "100 °C", "-40 °F": "-40 °C", "-40 °C": "-40 °C", "0 °F": "-17.777778 °C",
		"273.15 K": "0 °C", "373.15 K": "100 °C", "313.15 K": "40 °C", "104 °F": "40 °C", "104F": "40 °C", "40C": "40 °C", "40 C": "40 °C", "40°C": "40 °C",
		"-0 °C": "0 °C", "98.6 °F": "37 °C", "0.1 °F": "-17.722222 °C", "-459.669 °F": "-273.149444 °C", "9726.85 °C": "9726.85 °C",
		"0.0000005 °C": "0.000001 °C", "0.0000004 °C": "0 °C", "-273.149999 °C": "-273.149999 °C", "0.000001 K": "-273.149999 °C",
	} {
		if got := temperature(t, text); got.String() != want || !got.Given() {
			t.Errorf("%s is %v, want %s", text, got, want)
		}
	}
	if temperature(t, "40 °C") != units.Celsius(40) || temperature(t, "-3 °C") != units.Celsius(-3) {
		t.Error("Celsius gives another temperature")
	}
}

func TestFahrenheitIsFiveNinthsFromThirtyTwo(t *testing.T) {
	s := newSource(43)
	for range 5_000 {
		number := plain(rat(t, s.digits(1+s.IntN(3))+"."+s.digits(1+s.IntN(6))), 6)
		x := rat(t, number)
		if s.IntN(2) == 0 && x.Cmp(big.NewRat(459, 1)) < 0 && x.Sign() > 0 {
			number, x = "-"+number, x.Neg(x)
		}
		want := new(big.Rat).Mul(new(big.Rat).Sub(x, big.NewRat(32, 1)), big.NewRat(5, 9))
		if got := temperature(t, number+" °F"); got.Text(6) != plain(want, 6) {
			t.Fatalf("%s °F is %v, want %s", number, got, plain(want, 6))
		}
	}
}

func TestTemperaturesThatCannotBeReadAreRefused(t *testing.T) {
	tests := append([]struct {
		text string
		kind error
	}{
		{"40", units.ErrUnit},
		{"40 g", units.ErrUnit},
		{"40 °", units.ErrUnit},
		{"40 c", units.ErrUnit},
		{"40 degrees", units.ErrUnit},
		{"40 mK", units.ErrUnit},
		{"-40 %", units.ErrUnit},
		{"--40 °C", units.ErrSize},
		{"- 40 °C", units.ErrSyntax},
		{"-", units.ErrSyntax},
		{"−40 °C", units.ErrSyntax},
		{"-273.15 °C", units.ErrSize},
		{"-274 °C", units.ErrSize},
		{"-459.67 °F", units.ErrSize},
		{"-1 K", units.ErrSize},
		{"0 K", units.ErrSize},
		{"9726.850001 °C", units.ErrSize},
		{"10000.000001 K", units.ErrSize},
		{"9999999999999999 °C", units.ErrSize},
		{"9999999999999999 °F", units.ErrSize},
		{"-9999999999999999 °F", units.ErrSize},
		{"-9999999999999999 °C", units.ErrSize},
	}, unread...)
	for _, test := range tests {
		c, err := units.ParseTemperature(test.text)
		if !errors.Is(err, test.kind) || c.Given() {
			t.Errorf("%.40q: %v, %v, want %v", test.text, c, err, test.kind)
		}
		if err != nil {
			checkFault(t, test.text, err)
		}
	}
}

func TestTemperatureSurvivesWritingAndReading(t *testing.T) {
	s := newSource(44)
	for range 5_000 {
		c, ok := units.CelsiusOfFloat(float64(s.Int64N(9_999_000_000))/1e6 - 273)
		if !ok {
			t.Fatal("not a temperature")
		}
		if back := temperature(t, c.String()); back != c {
			t.Fatalf("%v reads back as %v", c, back)
		}
		if got := c.Ratio().Text(6); got != c.Text(6) {
			t.Fatalf("%v as a number is %s", c, got)
		}
		if back, ok := units.CelsiusOfFloat(c.Celsius()); !ok || back != c {
			t.Fatalf("%v through a float64 is %v", c, back)
		}
	}
}

func TestATemperatureIsNotGivenBeyondItsBounds(t *testing.T) {
	for _, n := range []int64{-274, 9001, math.MinInt64, math.MaxInt64} {
		if c := units.Celsius(n); c.Given() {
			t.Errorf("%d °C is %v", n, c)
		}
	}
	if c := units.Celsius(uint64(math.MaxUint64)); c.Given() {
		t.Errorf("%v", c)
	}
	for _, n := range []int{-273, 0, 9000} {
		if c := units.Celsius(n); !c.Given() || c.Celsius() != float64(n) {
			t.Errorf("%d °C is %v", n, c)
		}
	}
	for _, f := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -273.15, -300, 9726.850001, 1e300} {
		if c, ok := units.CelsiusOfFloat(f); ok || c.Given() {
			t.Errorf("%v is %v", f, c)
		}
	}
	var none units.Temperature
	if none.Given() || none.String() != "not given" || none.Text(2) != "" || none.Ratio().Given() || none.Compare(units.Celsius(-273)) != -1 {
		t.Errorf("none is %v", none)
	}
	if c := none.Add(units.Kelvins(300)); c.Given() {
		t.Errorf("none and 300 K are %v", c)
	}
	if c := units.Celsius(0).Add(units.Kelvins(-274)); c.Given() {
		t.Errorf("below absolute zero: %v", c)
	}
}

func TestDifferencesOfTemperatures(t *testing.T) {
	d := units.Celsius(20).Sub(units.Celsius(60))
	if d.String() != "-40 K" || d.Size() != units.Kelvins(40) || d.Size().Size() != d.Size() || d.Kelvin() != -40 || d.Ratio().Text(6) != "-40" {
		t.Errorf("%v", d)
	}
	if units.Celsius(60).Add(d) != units.Celsius(20) {
		t.Errorf("60 °C less 40 K is %v", units.Celsius(60).Add(d))
	}
	if d.Compare(d.Size()) != -1 || d.Size().Compare(d) != 1 || d.Compare(d) != 0 {
		t.Error("the order is wrong")
	}
	// 50/9 = 5.5555…, 9 °F are 5 K, and the other way the sign alone changes.
	for n, want := range map[int]string{9: "5 K", 10: "5.555556 K", -10: "-5.555556 K", 1: "0.555556 K", 0: "0 K", 180: "100 K"} {
		if got := units.FahrenheitDegrees(n); got.String() != want {
			t.Errorf("%d °F are %v, want %s", n, got, want)
		}
	}
	if got := units.FahrenheitDegrees(10).Text(1); got != "5.6" {
		t.Errorf("10 °F are %s K", got)
	}
	for _, n := range []int64{10_000, 10_001, math.MaxInt64} {
		if got := units.Kelvins(n); got.Kelvin() != 10_000 {
			t.Errorf("%d K are %v", n, got)
		}
		if got := units.Kelvins(-n); got.Kelvin() != -10_000 {
			t.Errorf("-%d K are %v", n, got)
		}
	}
}
