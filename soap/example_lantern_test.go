package soap_test

import (
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// What the examples share: bars for an invented village lantern walk, whose figures can be
// followed by hand.

// hall is an invented oil with its certificate: 188 to 192 mg KOH/g.
func hall() soap.Oil {
	oil, err := soap.OwnOil{
		ID:             "hall-blend",
		Name:           "Village hall blend",
		Saponification: units.Between(units.MilligramsPerGram(188), units.MilligramsPerGram(192)),
	}.Oil()
	if err != nil {
		panic(err)
	}
	return oil
}

func lanternBars() soap.Formula {
	return soap.Formula{
		Name:     "Lantern walk bars",
		Oils:     []soap.OilLine{{Oil: hall(), Share: units.Percent(100)}},
		Alkalis:  []soap.AlkaliLine{{Alkali: soap.SodiumHydroxide, Purity: units.Between(units.Percent(97), units.Percent(99))}},
		Superfat: soap.Superfat{Planned: units.Percent(5)},
		Water:    soap.Water{PerAlkali: units.Whole(2)},
		Size:     soap.Size{Oils: units.Grams(1000)},
	}
}

// lanternAndCloud are the same bars in two parts: a blue one in three times its pigment of
// sunflower oil, and a white one in twice its pigment of water.
func lanternAndCloud() soap.Formula {
	formula := lanternBars()
	formula.Parts = []soap.Part{
		{Name: "lantern", Share: units.Percent(60), Colourants: []soap.Addition{{
			Name: "ultramarine-blue", Load: soap.Load{OfOils: units.MustRatio("0.8 %")},
			Carrier: soap.Carrier{In: soap.InOil, Oil: must(soap.LookUpOil("sunflower")), Ratio: units.Whole(3)},
		}}},
		{Name: "cloud", Rest: true, Colourants: []soap.Addition{{
			Name: "titanium-dioxide", Load: soap.Load{OfOils: units.Percent(1)},
			Carrier: soap.Carrier{In: soap.InWater, Ratio: units.Whole(2)},
		}}},
	}
	return formula
}

// must stands in short examples for what a program does with an error.
func must[T any](value T, err error) T {
	if err != nil {
		panic(err)
	}
	return value
}
