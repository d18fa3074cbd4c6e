package fragrance_test

import (
	"errors"
	"strings"
	"testing"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/units/fault"
)

// Registry numbers that stand in any handbook: water, ethanol, sodium hydroxide,
// citric acid, menthol; recalled, and checked here by hand for water:
// 7732-18-5: 8×1 + 1×2 + 2×3 + 3×4 + 7×5 + 7×6 = 105, of which the last digit is 5.
func TestHandbookNumbersHaveTheirCheckDigits(t *testing.T) {
	for _, text := range []string{"7732-18-5", "64-17-5", "1310-73-2", "77-92-9", "89-78-1"} {
		cas, err := fragrance.ParseCAS(text)
		if err != nil || cas.String() != text {
			t.Errorf("%s: %v, %v", text, cas, err)
		}
		for d := '0'; d <= '9'; d++ {
			other := text[:len(text)-1] + string(d)
			if _, err := fragrance.ParseCAS(other); (err == nil) != (other == text) {
				t.Errorf("%s: %v", other, err)
			}
		}
	}
}

// One digit wrong is found unless the slip, times the digit's place, is a multiple of
// ten: a check digit cannot do more.
func TestASlipOfTheHandIsFound(t *testing.T) {
	const text = "93-15-2" // methyl eugenol
	places := map[int]int{0: 4, 1: 3, 3: 2, 4: 1}
	for i, place := range places {
		for d := byte('0'); d <= '9'; d++ {
			slip := text[:i] + string(d) + text[i+1:]
			lost := (int(d)-int(text[i]))*place%10 == 0
			if _, err := fragrance.ParseCAS(slip); (err == nil) != lost {
				t.Errorf("%s: %v", slip, err)
			}
		}
	}
	if _, err := fragrance.ParseCAS("39-15-2"); !errors.Is(err, fault.ErrRange) {
		t.Errorf("exchanged digits: %v", err)
	}
}

func TestWhatIsNoNumberIsRefused(t *testing.T) {
	for _, text := range []string{"", "-", "--", "97530", "97-53-00", "9-53-0", "12345678-53-0", "97-5-0", "97-53-", "97–53–0", "٩٧-53-0", "97-53-0 ", " 97-53-0", "97-53-0-0", "+7-53-0", "0097-53-0", "0000-00-0", strings.Repeat("9", 1<<16) + "-53-0"} {
		if cas, err := fragrance.ParseCAS(text); !errors.Is(err, fault.ErrFormat) || cas.String() != "" {
			t.Errorf("%.20q: %v, %v", text, cas, err)
		}
	}
}

func FuzzParseCAS(f *testing.F) {
	f.Add("97-53-0") // eugenol
	f.Fuzz(func(t *testing.T, text string) {
		cas, err := fragrance.ParseCAS(text)
		if err == nil && (cas.String() != text || strings.Trim(text, "0123456789-") != "" || len(text) > 12) {
			t.Errorf("%q is read as %q", text, cas)
		}
		if err != nil && cas != (fragrance.CAS{}) {
			t.Errorf("%q: a number beside an error", text)
		}
		if back, again := fragrance.ParseCAS(cas.String()); err == nil && (again != nil || back != cas) {
			t.Errorf("%q reads back as %q, %v", cas, back, again)
		}
		if err != nil && len(err.Error()) > 300 {
			t.Errorf("%.40q: %d bytes of an error", text, len(err.Error()))
		}
	})
}
