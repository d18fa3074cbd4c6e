package lye_test

import (
	"errors"
	"testing"

	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

// 1 kg at 50 % of an alkali of 50 % is all alkali and no water. Of 50.1 % it is 1000 × 50/50.1 = 998.004 g and 1.996 g.
func TestAStockHasWaterToDissolveIn(t *testing.T) {
	s := lye.Stock{Alkali: lye.SodiumHydroxide, Strength: units.Percent(50)}
	if alkali, water, err := s.Make(units.Grams(1000), units.Percent(50)); !errors.Is(err, fault.ErrImpossible) {
		t.Errorf("%s, %s, %v", alkali, water, err)
	}
	if alkali, water, err := s.Make(units.Grams(1000), units.MustRatio("50.1 %")); err != nil ||
		alkali.Text(units.Gram, 3) != "998.004" || water.Text(units.Gram, 3) != "1.996" {
		t.Errorf("%s, %s, %v", alkali, water, err)
	}
}
