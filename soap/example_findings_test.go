package soap_test

import (
	"fmt"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// What a maker should know comes most severe first.
func ExampleFinding() {
	formula := lanternBars()
	formula.Alkalis = []soap.AlkaliLine{{Alkali: soap.SodiumHydroxide}}
	batch, err := formula.Batch()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range batch.Findings {
		fmt.Println(f.Severity, f.Code, f.Subject)
	}
	// Output: warning purity-assumed alkali[0]
}

// A sentence for the bench, and the figures that a program reads: here those of a purity
// that nobody gave.
func ExampleFinding_Message() {
	formula := lanternBars()
	formula.Alkalis[0].Purity = units.Range{}
	f := must(formula.Batch()).Findings[0]
	fmt.Println(f.Message())
	fmt.Println("planned", f.Value.PercentText(1), f.Unit, "limit", f.Limit.PercentText(1), f.Unit)
	// Output:
	// Sodium hydroxide: no purity is given. It is planned at 100 %, with 95.5 % as the low end; give the certificate's figures, or titrate the lot.
	// planned 100 % limit 95.5 %
}

// The figure of a finding as a line of a list has it.
func ExampleFinding_Figure() {
	formula := lanternBars()
	formula.Superfat.Planned = units.Percent(12)
	for _, f := range must(formula.Batch()).Findings {
		fmt.Println(f.Code, f.Figure())
	}
	// Output: superfat-unusual 12 %
}

// Without a superfat the bar may well burn skin: a danger, which comes before all else.
func ExampleSeverity() {
	formula := lanternBars()
	formula.Superfat.Planned = units.Percent(0)
	for _, f := range must(formula.Batch()).Findings {
		if f.Severity < soap.Danger {
			break // the most severe come first
		}
		fmt.Println(f.Severity, "at", f.Subject, f.Code)
	}
	// Output:
	// danger at parts[0] superfat-likely-negative
}

// How sure 5 % is. By hand, at the unlucky end: 999.9 g of oil at 188 mg/g demand 187.9812
// g of KOH, and 131.4037 g of alkali at 99 % are 182.4803 g of it, 2.93 % less.
func ExampleOutlook() {
	superfat := must(lanternBars().Batch()).Superfat
	fmt.Println("planned", superfat.Planned.PercentText(2), "%")
	fmt.Println("likely", superfat.LikelyLow.PercentText(2), "to", superfat.LikelyHigh.PercentText(2), "%")
	fmt.Println("at worst", superfat.Low.PercentText(2), "to", superfat.High.PercentText(2), "%")
	fmt.Println("all ranges known:", superfat.Complete, "alkali left over:", superfat.FreeAlkaliWorst.Given())
	// Output:
	// planned 5 %
	// likely 3.39 to 6.61 %
	// at worst 2.93 to 7.03 %
	// all ranges known: true alkali left over: false
}

// A page on fragrance shows what is about fragrance. The clove is far above its cap.
func ExampleOnFragrance() {
	formula := lanternBars()
	formula.Parts = []soap.Part{{Name: "bars", Share: units.Percent(100), Fragrances: []soap.Addition{
		{Name: "clove-bud", Load: soap.Load{OfOils: units.Percent(5)}},
	}, Additives: []soap.Addition{
		{Name: "fine salt", Load: soap.Load{Mass: units.Grams(5)}},
	}}}
	for _, f := range must(formula.Batch()).Findings {
		fmt.Println(f.Severity, f.Code, soap.OnFragrance(f))
	}
	// Output:
	// danger fragrance-over-cap true
	// warning allergens-unknown true
	// note additive-unjudged false
	// note fragrance-behaviour true
}

// A page on colour shows what is about colour, such as three times the white that is usual,
// and every danger whatever it is about.
func ExampleOnColour() {
	formula := lanternAndCloud()
	formula.Superfat.Planned = units.Percent(0)
	formula.Parts[1].Colourants[0].Load.OfOils = units.Percent(3)
	for _, f := range must(formula.Batch()).Findings {
		fmt.Println(f.Severity, f.Code, soap.OnColour(f))
	}
	// Output:
	// danger superfat-likely-negative true
	// warning free-alkali-worst false
	// note superfat-unusual false
	// note part-superfat-shifted false
	// note load-unusual true
}
