package sheet_test

import (
	"strings"
	"testing"

	"example.com/lyewright/soap/sheet"
)

// By hand, of two oils of 500 g at 200 (199 to 201) mg/g, 8 % superfat, NaOH of 98 (97.5 to
// 98.5) % and scales of 0.1 g: 184 g × 39.997/56.105/0.98 = 133.8498 g of alkali. At worst
// 133.9498 × 0.985 × 56.105/39.997 = 185.0769 g of KOH meet 2 × 499.9 × 0.199 = 198.9602 g
// of demand, which leaves 6.98 %. Dry are 1000 g and 131.173 g of hydroxide.
func TestTheWorstAndTheDryMassAreThoseWorkedOutByHand(t *testing.T) {
	got := map[string]string{}
	for _, s := range sheet.Working(batchOf(t, bar())) {
		got[s.Of] = s.Result
		if s.Of == "Superfat of the batch, at worst" && strings.Count(s.Figures, "0.985") != 1 {
			t.Errorf("the most alkali is not that of the high end: %s", s.Figures)
		}
	}
	if worst := got["Superfat of the batch, at worst"]; !strings.HasPrefix(worst, "6.97") && !strings.HasPrefix(worst, "6.98") {
		t.Errorf("at worst %s, by hand 6.98 %%", worst)
	}
	if dry := got["Dry mass"]; !strings.HasPrefix(dry, "1131.17") {
		t.Errorf("dry mass %s, by hand 1131.17 g", dry)
	}
}

// Oleic acid alone (M 282.468): n = 1/282.468, 56105 n/(1 + 38.049/3 n) = 190.0891 mg KOH/g.
func TestTheValueOfAProfileIsDerived(t *testing.T) {
	b := batchOf(t, bar("oils", `[{"oil": "hall-oil", "name": "Hall oil", "share": "100 %", "profile": {"C18:1": "100 %"}}]`))
	for _, s := range sheet.Working(b) {
		if s.Of == "Hall oil" && strings.HasPrefix(s.Formula, "value of fatty acids") {
			if !strings.HasPrefix(s.Result, "190.0") || !strings.Contains(s.Figures, "100 / 282.468") {
				t.Errorf("%s = %s", s.Figures, s.Result)
			}
			return
		}
	}
	t.Error("no step derives the value of the profile")
}
