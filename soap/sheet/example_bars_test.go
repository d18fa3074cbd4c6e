package sheet_test

import (
	"fmt"
	"strings"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// What the examples print: bars for an invented village lantern walk. By hand: 1000 g of oil
// at 190 mg/g demand 190 g of KOH; 0.95 of it × 39.997/(56.105 × 0.98) = 131.3037 g of sodium
// hydroxide, and twice as much water.

// lanternBars are these bars, with changes.
func lanternBars(changes ...func(*soap.Formula)) soap.Batch {
	formula := soap.Formula{
		Name: "Lantern walk bars",
		Oils: []soap.OilLine{{Share: units.Percent(100), Oil: must(soap.OwnOil{
			ID: "hall-blend", Name: "Village hall blend",
			Saponification: units.Between(units.MilligramsPerGram(188), units.MilligramsPerGram(192)),
		}.Oil())}},
		Alkalis:  []soap.AlkaliLine{{Alkali: soap.SodiumHydroxide, Purity: units.Between(units.Percent(97), units.Percent(99))}},
		Superfat: soap.Superfat{Planned: units.Percent(5)},
		Water:    soap.Water{PerAlkali: units.Whole(2)},
		Size:     soap.Size{Oils: units.Grams(1000)},
	}
	for _, change := range changes {
		change(&formula)
	}
	return must(formula.Batch())
}

// must stands in short examples for what a program does with an error.
func must[T any](value T, err error) T {
	if err != nil {
		panic(err)
	}
	return value
}

// show prints the lines of a page that hold one of some texts: a page is long, and is to be
// shown whole.
func show(page string, texts ...string) {
	for line := range strings.Lines(page) {
		for _, text := range texts {
			if strings.Contains(line, text) {
				fmt.Println(strings.TrimRight(line, " \n"))
				break
			}
		}
	}
}
