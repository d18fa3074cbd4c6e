package soap_test

import (
	"fmt"
	"strings"

	"example.com/lyewright/soap"
)

// From the text of a file to what to weigh. By hand: 500 g of oil at 192 mg/g are
// 96 g of KOH; 94 % of it is 90.24 g, × 39.997/56.105 = 64.3317... g of sodium
// hydroxide, rounded down to 64.3 g; twice as much water, 128.6634... g, to the
// nearest, 128.7 g.
func Example() {
	formula, err := soap.ReadFormula(strings.NewReader(`{
	  "formula": "Lantern walk bars",
	  "oils": [{"oil": "hall-blend", "share": "100 %", "saponification": {"low": "190", "high": "194"}}],
	  "alkali": [{"kind": "sodium-hydroxide", "purity": "100 %"}],
	  "superfat": "6 %",
	  "water": {"per_alkali": "2"},
	  "size": {"oils": "500 g"}
	}`))
	if err != nil {
		fmt.Println(err)
		return
	}
	batch, err := formula.Batch()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, oil := range batch.Oils {
		fmt.Println(oil.Oil.Name(), oil.Weigh)
	}
	for _, alkali := range batch.Alkalis {
		weighing, _ := alkali.ToWeigh() // of a stock lye, the stock
		fmt.Println(alkali.Alkali, weighing.Weigh)
	}
	fmt.Println("water", batch.Water.Weigh)
	for _, finding := range batch.Findings {
		fmt.Println(finding.Severity, finding.Code)
	}
	// Output:
	// hall-blend 500 g
	// sodium-hydroxide 64.3 g
	// water 128.7 g
	// note purity-single
}
