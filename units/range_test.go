package units_test

import (
	"testing"

	"example.com/lyewright/units"
)

func TestRangeIsPlannedAtItsTypicalValueOrItsMiddle(t *testing.T) {
	pct := units.Percent[int]
	var none units.Ratio
	tests := []struct {
		name         string
		r            units.Range
		middle, plan string
		given        bool
		ordered      bool
		single       bool
	}{
		{"zero", units.Range{}, "not given", "not given", false, false, false},
		{"middle", units.Between(pct(97), pct(99)), "0.98", "0.98", true, true, false},
		{"odd middle", units.Between(units.MilligramsPerGram(187), units.MilligramsPerGram(196)), "0.1915", "0.1915", true, true, false},
		{"typical", units.Range{Low: pct(10), Typical: pct(12), High: pct(20)}, "0.15", "0.12", true, true, false},
		{"typical at an end", units.Range{Low: pct(10), Typical: pct(20), High: pct(20)}, "0.15", "0.2", true, true, false},
		{"typical below", units.Range{Low: pct(10), Typical: pct(9), High: pct(20)}, "0.15", "0.09", true, false, false},
		{"typical above", units.Range{Low: pct(10), Typical: pct(21), High: pct(20)}, "0.15", "0.21", true, false, false},
		{"reversed", units.Between(pct(99), pct(97)), "0.98", "0.98", true, false, false},
		{"single value", units.Exactly(pct(98)), "0.98", "0.98", true, true, true},
		{"single value of nought", units.Exactly(pct(0)), "0", "0", true, true, true},
		{"no lower end", units.Range{High: pct(5)}, "not given", "not given", false, false, false},
		{"no upper end", units.Range{Low: pct(5), Typical: pct(6)}, "not given", "0.06", false, false, false},
		{"ends not given", units.Between(none, none), "not given", "not given", false, false, false},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if got := test.r.Middle().String(); got != test.middle {
				t.Errorf("the middle is %s, want %s", got, test.middle)
			}
			if got := test.r.Plan().String(); got != test.plan {
				t.Errorf("the plan is %s, want %s", got, test.plan)
			}
			if test.r.Given() != test.given || test.r.Ordered() != test.ordered || test.r.Single() != test.single {
				t.Errorf("given %t, ordered %t, single %t", test.r.Given(), test.r.Ordered(), test.r.Single())
			}
		})
	}
}

func TestRangesAreEqualByEndsAndPlan(t *testing.T) {
	pct := units.Percent[int]
	r := units.Between(pct(10), pct(20))
	tests := []struct {
		name  string
		s     units.Range
		equal bool
	}{
		{"itself", r, true},
		{"the middle spelled out", units.Range{Low: pct(10), Typical: pct(15), High: units.MustRatio("0.20")}, true},
		{"another plan", units.Range{Low: pct(10), Typical: pct(14), High: pct(20)}, false},
		{"another lower end", units.Range{Low: pct(9), Typical: pct(15), High: pct(20)}, false},
		{"another upper end", units.Range{Low: pct(10), Typical: pct(15), High: pct(21)}, false},
		{"not given", units.Range{}, false},
	}
	for _, test := range tests {
		if r.Equal(test.s) != test.equal || test.s.Equal(r) != test.equal {
			t.Errorf("%s: equal is not %t", test.name, test.equal)
		}
	}
	if !(units.Range{}).Equal(units.Range{}) {
		t.Error("two ranges that are not given differ")
	}
}
