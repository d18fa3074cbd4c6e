package units_test

import (
	"bytes"
	"encoding/gob"
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/lyewright/units"
)

// A bench has one of every quantity, as a program may keep them.
type bench struct {
	Mass        units.Mass
	Ratio       units.Ratio
	Range       units.Range
	Sum         units.Sum
	Volume      units.Volume
	Density     units.Density
	Length      units.Length
	Area        units.Area
	Temperature units.Temperature
	Apart       units.TemperatureDifference
}

// same reports whether two have the same quantities, not given kept apart from 0.
func (b bench) same(c bench) bool {
	return b.Mass == c.Mass && b.Ratio.Equal(c.Ratio) && b.Sum.Compare(c.Sum) == 0 && b.Volume == c.Volume &&
		b.Density == c.Density &&
		b.Range.Low.Equal(c.Range.Low) && b.Range.Typical.Equal(c.Range.Typical) && b.Range.High.Equal(c.Range.High) &&
		b.Length == c.Length && b.Area == c.Area && b.Temperature == c.Temperature && b.Apart == c.Apart
}

// there and back again, as JSON and through gob.
func (b bench) roundTrips(t *testing.T) (text string) {
	t.Helper()
	object, err := json.Marshal(b)
	if err != nil {
		t.Fatal(err)
	}
	var read bench
	if err := json.Unmarshal(object, &read); err != nil || !read.same(b) {
		t.Fatalf("%s comes back as %+v, %v", object, read, err)
	}
	var stream bytes.Buffer
	if err := gob.NewEncoder(&stream).Encode(b); err != nil {
		t.Fatal(err)
	}
	read = bench{}
	if err := gob.NewDecoder(&stream).Decode(&read); err != nil || !read.same(b) {
		t.Fatalf("%s comes back through gob as %+v, %v", object, read, err)
	}
	return string(object)
}

func TestEveryQuantityIsWrittenAsItsParserReadsIt(t *testing.T) {
	below := units.Mass{}.Sub(units.Nanograms(1))
	for _, c := range []struct {
		bench bench
		want  string
	}{
		{bench{}, `{"Mass":"0 g","Ratio":"","Range":"","Sum":"0 g","Volume":"0 mL","Density":"","Length":"0 mm","Area":"0 mm²","Temperature":"","Apart":"0 K"}`},
		{
			bench{
				Mass: units.Milligrams(118_100), Ratio: units.MustRatio("6.5 %"), Range: units.Between(units.Percent(97),
					units.Percent(99)),
				Sum: units.Sum{}.Plus(units.Grams(360), units.MustRatio("190.5 mg/g")), Volume: units.Millilitres(17),
				Density: units.GramsPerMillilitre(units.MustRatio("1.33")),
				Length:  units.Millimetres(45), Area: units.SquareMillimetres(120), Temperature: units.Celsius(40),
				Apart: units.Kelvins(5),
			},
			`{"Mass":"118.1 g","Ratio":"0.065","Range":"0.97 to 0.99","Sum":"68.58 g","Volume":"17 mL","Density":"1.33 g/mL","Length":"45 mm","Area":"120 mm²","Temperature":"40 °C","Apart":"5 K"}`,
		},
		{
			bench{
				Mass: below, Ratio: units.Percent(-5), Range: units.Range{
					Low: units.Percent(-1), Typical: units.Percent(0),
					High: units.Percent(2),
				},
				Sum: units.Sum{}.Sub(units.Sum{}.Plus(units.Grams(2), units.Percent(25))), Volume: units.Millilitres(-3),
				Density: units.GramsPerMillilitre(units.MustRatio("0.000000001")),
				Length:  units.Millimetres(-1), Area: units.SquareMillimetres(-7), Temperature: temperature(t, "-40 °C"),
				Apart: units.Kelvins(-12),
			},
			`{"Mass":"-0.000000001 g","Ratio":"-0.05","Range":"-0.01 to 0.02, typical 0","Sum":"-0.5 g","Volume":"-3 mL","Density":"0.000000001 g/mL","Length":"-1 mm","Area":"-7 mm²","Temperature":"-40 °C","Apart":"-12 K"}`,
		},
		{
			bench{
				Mass: units.Nanograms(int64(math.MaxInt64)), Range: units.Range{High: units.Percent(2)},
				Sum:    units.Sum{}.Plus(units.Nanograms(1), units.MustRatio("0.0000000000000001")),
				Volume: units.Millilitres(int64(1 << 40)),
			},
			`{"Mass":"9223372036.854775807 g","Ratio":"","Range":"not given to 0.02","Sum":"0.0000000000000000000000001 g","Volume":"1099511627776 mL","Density":"","Length":"0 mm","Area":"0 mm²","Temperature":"","Apart":"0 K"}`,
		},
		{
			bench{Range: units.Range{Typical: units.Percent(2)}},
			`{"Mass":"0 g","Ratio":"","Range":"not given to not given, typical 0.02","Sum":"0 g","Volume":"0 mL","Density":"","Length":"0 mm","Area":"0 mm²","Temperature":"","Apart":"0 K"}`,
		},
	} {
		if got := c.bench.roundTrips(t); got != c.want {
			t.Errorf("%s, want %s", got, c.want)
		}
	}
}

// Up to 34 decimals a ratio is a plain number; a percentage and mg/g have two and three
// fewer. By hand: 34 decimals of a percentage are 36 of the number.
func TestARatioIsWrittenWithAllItsDigits(t *testing.T) {
	d34 := strings.Repeat("3", 34)
	for _, c := range []struct{ read, want string }{
		{"0.1234567890123", "0.1234567890123"}, // thirteen: one more than a narrow ratio
		{"0." + d34, "0." + d34},
		{"0." + d34 + " %", "0." + d34 + " %"},
		{"0." + d34 + " mg/g", "0." + d34 + " mg/g"},
		{"9223372.036854775808", "9223372.036854775808"},
	} {
		r := units.MustRatio(c.read)
		for _, signed := range []struct {
			r    units.Ratio
			want string
		}{{r, c.want}, {units.Whole(0).Sub(r), "-" + c.want}} {
			text, err := signed.r.MarshalText()
			if err != nil || string(text) != signed.want {
				t.Errorf("%s is written %s, %v, want %s", c.read, text, err, signed.want)
			}
			var back units.Ratio
			if err := back.UnmarshalText(text); err != nil || !back.Equal(signed.r) {
				t.Errorf("%s reads back as %v, %v", text, back, err)
			}
		}
	}
}

func TestWhatCannotBeWrittenExactlyIsRefused(t *testing.T) {
	long := units.MustRatio("0." + strings.Repeat("1", 34))
	for name, write := range map[string]func() ([]byte, error){
		"a ratio of 68 decimals":          long.Times(long).MarshalText,
		"a ratio of 20 digits":            units.Whole(uint64(math.MaxUint64)).MarshalText,
		"a sum of 43 decimals":            units.Sum{}.Plus(units.Nanograms(1), long).MarshalText,
		"a range whose end is too long":   units.Between(long.Times(long), long).MarshalText,
		"a temperature that is not read":  units.Celsius(9000).Add(units.Kelvins(9000)).MarshalText,
		"the same ratio, through gob":     long.Times(long).GobEncode,
		"the same range, its value alone": units.Range{Typical: long.Times(long)}.MarshalText,
	} {
		text, err := write()
		var fault *units.ParseError
		if text != nil || !errors.As(err, &fault) || !errors.Is(err, units.ErrSize) || fault.Remedy == "" {
			t.Errorf("%s: %q, %v", name, text, err)
		}
	}
	rounded, err := long.Times(long).Round(34, units.Nearest).MarshalText()
	if err != nil || len(rounded) != 36 {
		t.Errorf("rounded to 34 decimals: %s, %v", rounded, err)
	}
}

// A text that is no quantity leaves what stood there, and says what is wrong with it.
func TestWhatIsNoQuantityIsNotReadBack(t *testing.T) {
	kept := bench{
		Mass: units.Grams(1), Ratio: units.Percent(1), Range: units.Exactly(units.Percent(1)),
		Sum: units.Sum{}.Plus(units.Grams(1), units.Whole(1)), Volume: units.Millilitres(1),
		Density: units.GramsPerMillilitre(units.Whole(1)), Length: units.Millimetres(1), Area: units.SquareMillimetres(1),
		Temperature: units.Celsius(1), Apart: units.Kelvins(1),
	}
	b := kept
	for name, c := range map[string]struct {
		read  func([]byte) error
		texts []string
	}{
		"mass": {b.Mass.UnmarshalText, []string{
			"", "-", "5", "5 mL", "--5 g", "- 5 g", "1e3 g",
			"9223372036.854775808 g", "99999999999999 kg",
		}},
		"ratio": {b.Ratio.UnmarshalText, []string{"-", "5 g", "--5", "not given", "0.5 ", strings.Repeat("1", 17)}},
		"range": {b.Range.UnmarshalText, []string{
			"0.5", "0.5 to", "to 0.5", " to 0.5", "0.5 to ",
			"0.1 to 0.2, typical ", "0.1 to 0.2 to 0.3", "0.1 to 5 g", "0.1 to 0.2, typical x",
		}},
		"sum":         {b.Sum.UnmarshalText, []string{"", "5", "5 kg", "--5 g"}},
		"volume":      {b.Volume.UnmarshalText, []string{"", "5 g", "9999999999999999 L"}},
		"density":     {b.Density.UnmarshalText, []string{"-1 g/mL", "0 g/mL", "31 g/mL", "1"}},
		"length":      {b.Length.UnmarshalText, []string{"", "5", "5 ft", "9999999999999999 m"}},
		"area":        {b.Area.UnmarshalText, []string{"", "5 mm", "9999999999999999 m²"}},
		"temperature": {b.Temperature.UnmarshalText, []string{"40", "-300 °C", "-1 K", "10001 K"}},
		"difference":  {b.Apart.UnmarshalText, []string{"", "5", "5 °C", "9999999999999999 K"}},
	} {
		for _, text := range c.texts {
			err := c.read([]byte(text))
			var fault *units.ParseError
			if !errors.As(err, &fault) || fault.Reason == "" || fault.Remedy == "" {
				t.Errorf("%s %q: %v", name, text, err)
			}
		}
	}
	if !b.same(kept) {
		t.Errorf("a refused text left %+v", b)
	}
}

// What an older release wrote of a quantity, an empty object, is no quantity, and neither
// is a bare number.
func TestAnObjectOrANumberIsNoQuantity(t *testing.T) {
	for _, text := range []string{
		`{"Mass":{}}`, `{"Ratio":{}}`, `{"Range":{}}`, `{"Sum":{}}`, `{"Mass":118.1}`,
		`{"Ratio":0.5}`, `{"Temperature":40}`,
	} {
		var b bench
		if err := json.Unmarshal([]byte(text), &b); err == nil {
			t.Errorf("%s was read as %+v", text, b)
		}
	}
}

// Every mass of made-up nanograms, every ratio of up to 34 decimals, and what comes of them.
func TestMadeUpQuantitiesComeBack(t *testing.T) {
	s := newSource(61)
	for range 3_000 {
		r, _ := s.ratio(t)
		n := s.nanograms()
		m := units.Nanograms(n)
		if m.Nanograms() != n {
			t.Fatalf("%d ng are %d ng", n, m.Nanograms())
		}
		narrow := units.MustRatio("0." + s.digits(12))
		v, _ := units.VolumeOfFloat(float64(n%1_000_000_000) / 1e6)
		d, _ := units.DensityOfFloat(float64(s.IntN(30_000)) / 1000)
		c, _ := units.CelsiusOfFloat(float64(s.IntN(1_000_000))/1000 - 273)
		bench{
			Mass: m, Ratio: r, Range: units.Range{Low: r, Typical: narrow, High: r},
			Sum: units.Sum{}.Plus(m, units.MustRatio("0.123456789012")), Volume: v, Density: d,
			Temperature: c, Apart: c.Sub(units.Celsius(20)),
		}.roundTrips(t)
	}
}

func TestNanogramsStopAtTheEnds(t *testing.T) {
	for _, c := range []struct {
		got  units.Mass
		want int64
	}{
		{units.Nanograms(uint64(math.MaxUint64)), math.MaxInt64},
		{units.Nanograms(int64(math.MinInt64)), -math.MaxInt64},
		{units.Nanograms(int64(math.MaxInt64) - 1), math.MaxInt64 - 1},
		{units.Nanograms(int8(-128)), -128},
		{units.Grams(118), 118_000_000_000},
	} {
		if c.got.Nanograms() != c.want {
			t.Errorf("%d ng, want %d", c.got.Nanograms(), c.want)
		}
	}
}
