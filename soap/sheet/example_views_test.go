package sheet_test

import (
	"fmt"
	"strings"

	"example.com/lyewright/colour/tint"
	"example.com/lyewright/soap"
	"example.com/lyewright/soap/sheet"
	"example.com/lyewright/units"
)

// How much clove the bars may hold. By hand: 1000 + 0.98 × 131.3037 = 1128.6776 g dry and 6 g
// of clove; 1 % of the whole is 0.01 × 1128.6776/0.99 = 11.4008 g, printed rounded down.
func ExampleWriteCaps() {
	batch := lanternBars(func(f *soap.Formula) {
		f.Parts = []soap.Part{{Name: "bars", Share: units.Percent(100), Fragrances: []soap.Addition{
			{Name: "clove-bud", Load: soap.Load{Mass: units.Grams(6)}},
		}}}
	})
	var page strings.Builder
	if err := sheet.WriteCaps(&page, batch, units.Gram); err != nil {
		fmt.Println(err)
		return
	}
	show(page.String(), "Dry ", "at most 11.4")
	// Output:
	// Dry 1134.7 g, when all water is gone; its oils 1000.0 g
	//    Beside the part's other fragrances at most 11.4 g: 1.14 % of oils.
}

// blueBars are lantern bars with blue, and swatches of it (invented).
func blueBars(f *soap.Formula) {
	plain, pale, deep := must(tint.ParseSRGB("#e8dcc0")), must(tint.ParseSRGB("#b9c3da")), must(tint.ParseSRGB("#7f93c6"))
	blue := func(load string) []tint.Load {
		return []tint.Load{{Colourant: "ultramarine-blue", OfBatter: units.MustRatio(load)}}
	}
	f.Swatches = &tint.Swatches{Name: "blue swatches", Read: []tint.Swatch{
		{Name: "plain", SRGB: &plain},
		{Name: "blue 0.3", SRGB: &pale, Loads: blue("0.3 %")},
		{Name: "blue 1", SRGB: &deep, Loads: blue("1 %")},
	}}
	f.Parts = []soap.Part{{Name: "dusk <blue>", Share: units.Percent(100), Colourants: []soap.Addition{
		{Name: "ultramarine-blue", Load: soap.Load{OfOils: units.MustRatio("0.8 %")}},
	}}}
}

// What colour the bars will have, and what is weighed for it: 8 g of 1000 g of oils, of
// 1393.9 g of batter.
func ExampleWriteTint() {
	var page strings.Builder
	if err := sheet.WriteTint(&page, lanternBars(blueBars), units.Gram); err != nil {
		fmt.Println(err)
		return
	}
	show(page.String(), "DUSK", "Predicted  ", "Ultramarine")
	// Output:
	// DUSK <BLUE>
	// Predicted  L* 71.37, a* 2.58, b* -18.43 (picture #a1afd0)
	// Ultramarine blue                                 8.0       0.5739       0.8000
}

// The same as a page for a browser. Names are escaped.
func ExampleWriteTintPage() {
	var page strings.Builder
	if err := sheet.WriteTintPage(&page, lanternBars(blueBars)); err != nil {
		fmt.Println(err)
		return
	}
	show(page.String(), "<h1>", "dusk &lt;blue&gt;</th>")
	// Output:
	// <h1>Lantern walk bars</h1>
	// <tr><th scope="row">dusk &lt;blue&gt;</th><td class="text">predicted</td><td>71.37</td><td>2.58</td><td>-18.43</td><td></td><td class="text">#a1afd0</td></tr>
	// <tr><th scope="row">dusk &lt;blue&gt;</th><td class="text">Ultramarine blue</td><td>8</td><td>0.5739</td><td>0.8000</td><td>0.7038</td><td class="text">given</td></tr>
}
