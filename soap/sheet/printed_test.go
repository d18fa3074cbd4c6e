package sheet_test

import (
	"strings"
	"testing"

	"example.com/lyewright/units"
)

// As planned 6 % at the shares of the file. At a superfat of over a tenth of a point from the
// plan the sheet says what its own masses give, and else it does not: a scale of a milligram
// rounds nothing away.
func TestTheSheetSaysWhatItsMassesGive(t *testing.T) {
	for scale, says := range map[string]bool{
		`{"oils": "1 g", "small": "1 g"}`:   true,
		`{"oils": "1 mg", "small": "1 mg"}`: false,
	} {
		b := shipped(t, "too-much-alkali", func(text string) string {
			text = strings.Replace(text, `"scale": {"oils": "1 g", "small": "0.1 g"}`, `"scale": `+scale, 1)
			i, j := strings.Index(text, `  "weighed"`), strings.Index(text, `  "parts"`)
			return text[:i] + text[j:]
		})
		want := "Weighed as it is printed, at typical values: batch " + b.Superfat.AsPrinted.PercentFixed(2) + " %"
		if got := strings.Contains(flat(write(t, b, units.Gram)), want); got != says {
			t.Errorf("%s: %q: %v", scale, want, got)
		}
	}
}

// The lye of stock and milk follows from what is printed beside it: alkali and the four
// waters add up to the lye of which the alkali is a share.
func TestTheStrengthOfTheLyeFollowsFromItsLines(t *testing.T) {
	b := shipped(t, "stock-and-milk", func(text string) string { return text })
	page := flat(write(t, b, units.Gram))
	stock := b.Alkalis[0].Stock.Mass.Sub(b.Alkalis[0].Dry.Mass)
	for _, says := range []string{
		"Lye as mixed: " + b.Lye.Concentration.PercentText(2) + " %, alkali over alkali and water: " +
			b.Alkalis[0].Dry.Mass.Fixed(units.Gram, 1) + " g of " + b.Lye.Mass.Fixed(units.Gram, 1) + " g.",
		"The water is " + b.Water.Mass.Fixed(units.Gram, 1) + " g as such, " + b.Liquids[0].Water.Fixed(units.Gram, 1) +
			" g in oat milk",
		stock.Fixed(units.Gram, 1) + " g in the stock lye.",
	} {
		if !strings.Contains(page, says) {
			t.Errorf("the sheet does not say %q", says)
		}
	}
	all := b.Alkalis[0].Dry.Mass.Add(b.Water.Mass).Add(b.Liquids[0].Water).Add(b.Liquids[1].Water).Add(stock)
	if all != b.Lye.Mass {
		t.Errorf("%s of alkali and water in a lye of %s", all, b.Lye.Mass)
	}
}

// A known batch says how many pieces it completes, how it would complete more, and what to
// pour into a cup that a moon is sunk in.
func TestTheSheetSaysWhatAKnownBatchCompletes(t *testing.T) {
	b := shipped(t, "known-batch", func(text string) string { return text })
	page := flat(write(t, b, units.Gram))
	for _, says := range []string{
		"Complete, with every layer and top: 11 pieces.",
		"The same batter would complete 12 pieces if its parts shared it so: base " + b.Better.Parts[0].Share.PercentText(2) +
			" %, cloud " + b.Better.Parts[1].Share.PercentText(2) + " %.",
		"with its embeds and toppings " + b.Pieces[0].Fresh.Fixed(units.Gram, 2) + " g a piece",
	} {
		if !strings.Contains(page, says) {
			t.Errorf("the sheet does not say %q", says)
		}
	}
	if !strings.Contains(page, "cup, base 11 "+b.Pieces[0].Pour.Fixed(units.Gram, 2)) {
		t.Error("the sheet does not say what to pour into a cup")
	}
}
