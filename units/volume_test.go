package units_test

import (
	"errors"
	"math/big"
	"strings"
	"testing"

	"example.com/lyewright/units"
)

func volume(t testing.TB, text string) units.Volume {
	t.Helper()
	v, err := units.ParseVolume(text)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func TestVolumesAreReadExactly(t *testing.T) {
	for text, want := range map[string]string{
		"17.5 mL":        "17.5 mL",
		"17.5mL":         "17.5 mL",
		"1.2 L":          "1200 mL",
		"0 mL":           "0 mL",
		"0.000001 mL":    "0.000001 mL", // a nanolitre
		"0.0000005 mL":   "0.000001 mL",
		"0.00000049 mL":  "0 mL",
		"0.0000000005 L": "0.000001 mL",
		"007.50 mL":      "7.5 mL",
		"1000 L":         "1000000 mL",
		"1000000 mL":     "1000000 mL",
	} {
		if got := volume(t, text); got.String() != want {
			t.Errorf("%s is %v, want %s", text, got, want)
		}
	}
	if units.Millilitres(19) != volume(t, "19 mL") || units.Millilitres(-3) != (units.Volume{}).Sub(volume(t, "3 mL")) {
		t.Error("Millilitres gives another volume")
	}
}

// unread are texts that no reader of a quantity takes, whatever its unit.
var unread = []struct {
	text string
	kind error
}{
	{"", units.ErrSyntax},
	{" ", units.ErrSyntax},
	{"mL", units.ErrSyntax},
	{"one mL", units.ErrSyntax},
	{"1,5 mL", units.ErrSyntax},
	{"1.2.3 mL", units.ErrSyntax},
	{".5 mL", units.ErrSyntax},
	{"5. mL", units.ErrSyntax},
	{" 5 mL", units.ErrSyntax},
	{"5  mL", units.ErrSyntax},
	{"5 mL ", units.ErrSyntax},
	{"+5 mL", units.ErrSyntax},
	{"1e3 mL", units.ErrSyntax},
	{"12345678901234567 mL", units.ErrSize},
	{"0.00000000000000000000000000000000001 mL", units.ErrSize},
	{strings.Repeat("9", 81), units.ErrSize},
	{strings.Repeat("9", 1<<20) + " mL", units.ErrSize},
}

func TestVolumesThatCannotBeReadAreRefused(t *testing.T) {
	tests := append([]struct {
		text string
		kind error
	}{
		{"5", units.ErrUnit},
		{"5 g", units.ErrUnit},
		{"5 ml", units.ErrUnit},
		{"5 l", units.ErrUnit},
		{"5 fl oz", units.ErrUnit},
		{"5 %", units.ErrUnit},
		{"5 m", units.ErrUnit},
		{"5 mL/g", units.ErrUnit},
		{"5\u00a0mL", units.ErrUnit},
		{"-5 mL", units.ErrSize},
		{"1000.000000001 L", units.ErrSize},
		{"1000000.000001 mL", units.ErrSize},
		{"9999999999999999 L", units.ErrSize},
	}, unread...)
	for _, test := range tests {
		v, err := units.ParseVolume(test.text)
		if !errors.Is(err, test.kind) || v != (units.Volume{}) {
			t.Errorf("%.40q: %v, %v, want %v", test.text, v, err, test.kind)
		}
		if err != nil {
			checkFault(t, test.text, err)
		}
	}
}

func TestVolumeSurvivesWritingAndReading(t *testing.T) {
	s := newSource(41)
	for range 5_000 {
		number := plain(rat(t, s.digits(1+s.IntN(5))+"."+s.digits(1+s.IntN(6))), 6)
		v := volume(t, number+" mL")
		if v.Text(6) != number || volume(t, v.String()) != v {
			t.Fatalf("%s mL is %v", number, v)
		}
		litres := times(rat(t, number), big.NewRat(1, 1000)).FloatString(9)
		if got := volume(t, litres+" L"); got != v {
			t.Fatalf("%s L is %v, want %v", litres, got, v)
		}
		places := s.IntN(7)
		if got, want := v.Text(places), plain(rat(t, number), places); got != want {
			t.Fatalf("%s with %d decimals is %s, want %s", number, places, got, want)
		}
	}
}

func TestVolumesAddSubtractAndCompare(t *testing.T) {
	a, b := volume(t, "17.5 mL"), volume(t, "19 mL")
	if got := a.Add(b).String(); got != "36.5 mL" {
		t.Errorf("the sum is %s", got)
	}
	if d := a.Sub(b); d.String() != "-1.5 mL" || d.Sign() != -1 || d.Add(b) != a {
		t.Errorf("the difference is %v", d)
	}
	if a.Compare(b) != -1 || b.Compare(a) != 1 || a.Compare(a) != 0 || a.Sign() != 1 || a.Sub(a).Sign() != 0 {
		t.Error("the order is wrong")
	}
	if r, ok := a.Per(b); !ok || r.Text(12) != "0.921052631579" { // 35/38 = 0.92105263157894…
		t.Errorf("%v, %t", r, ok)
	}
	if r, ok := a.Per(units.Volume{}); ok || r.Given() {
		t.Errorf("over nothing: %v", r)
	}
}

// Where 64 bits of nanolitres end, 9 223 372 036 854.775 807 mL, sums stop and do
// not wrap round.
func TestHugeVolumesStopAtTheEnd(t *testing.T) {
	most := units.Millilitres(uint64(1) << 63)
	for _, n := range []int64{1 << 40, 1<<40 + 1, 1 << 62} {
		if got := units.Millilitres(n); got != most || got.Sign() != 1 {
			t.Errorf("%d mL are %v", n, got)
		}
		if got := units.Millilitres(-n); got != (units.Volume{}).Sub(most) {
			t.Errorf("-%d mL are %v", n, got)
		}
	}
	sum := most
	for range 40 {
		next := sum.Add(sum)
		if next.Compare(sum) < 0 {
			t.Fatalf("%v twice is %v", sum, next)
		}
		sum = next
	}
	if low := (units.Volume{}).Sub(sum); low.Sub(sum).Sign() != -1 || low.Compare(units.Millilitres(-1)) > 0 {
		t.Errorf("%v", low)
	}
}
