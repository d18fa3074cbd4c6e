package lye_test

import (
	"testing"

	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units/cite"
)

// IUPAC abridged standard atomic weights (2021; recalled): Na 22.990, K 39.098, O
// 15.999, H 1.0080. Saturation at 20 °C: 108.7 g of NaOH to 100 g of water, a table
// of the University of Campinas (read), 108.7/208.7; 112 g of KOH, Great Soviet
// Encyclopedia (read), 112/212.
func TestTheTwoHydroxides(t *testing.T) {
	for _, c := range []struct {
		alkali                                 lye.Alkali
		id, name, symbol, molarMass, saturated string
		dissolves                              float64 // g to 100 g of water
	}{
		{lye.SodiumHydroxide, "sodium-hydroxide", "Sodium hydroxide", "NaOH", "39.997", "52.1", 108.7},
		{lye.PotassiumHydroxide, "potassium-hydroxide", "Potassium hydroxide", "KOH", "56.105", "52.8", 112},
	} {
		got := []string{c.alkali.String(), c.alkali.Name(), c.alkali.Symbol(), c.alkali.MolarMass().Text(6), c.alkali.Saturation().PercentText(6)}
		want := []string{c.id, c.name, c.symbol, c.molarMass, c.saturated}
		for i := range got {
			if got[i] != want[i] {
				t.Errorf("%v, want %v", got, want)
				break
			}
		}
		if printed := 100 * c.dissolves / (100 + c.dissolves); !near(number(t, c.saturated), printed, 0.05) {
			t.Errorf("%v: %s %%, want %.2f %%", c.alkali, c.saturated, printed)
		}
	}
	var none lye.Alkali
	if none.String()+none.Name()+none.Symbol() != "" {
		t.Errorf("none is %q, %q, %q", none, none.Name(), none.Symbol())
	}
}

func TestEverySourceSaysHowItWasObtained(t *testing.T) {
	for _, s := range []cite.Source{
		lye.AtomicWeights(), lye.TitrationSource(), lye.OlssonSource(), lye.LaliberteSource(), lye.CrystallisesSource(), lye.BoilsSource(), lye.HeatSource(), lye.OilHeatSource(),
	} {
		if s.Title == "" || s.Edition == "" || s.Place == "" || s.How == cite.Unknown {
			t.Errorf("%+v", s)
		}
	}
}
