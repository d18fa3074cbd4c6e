package fragrance_test

import (
	"fmt"
	"strings"

	"example.com/lyewright/fragrance"
)

// Is all that is restricted in an oil known? Of lemongrass it is not: the Annex does not list
// it, and a handbook names citral alone.
func ExampleMaterial() {
	lemongrass, err := fragrance.LookUp("lemongrass")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(lemongrass.Name(), lemongrass.InAnnex(), lemongrass.Complete())
	// Output: Lemongrass false false
}

// Which built-in oils are mints, by their botanical names?
func ExampleMaterials() {
	for _, m := range fragrance.Materials() {
		if strings.HasPrefix(m.Latin(), "Mentha") {
			fmt.Println(m.ID())
		}
	}
	// Output:
	// cornmint
	// peppermint
	// spearmint
	// spearmint-scotch
}

func ExampleKnown() {
	fmt.Println(fragrance.Known("clove-bud"), fragrance.Known("lantern-pear"))
	// Output: true false
}

// A plain name in a formula that may have been meant as a built-in one.
func ExampleSuggest() {
	fmt.Println(fragrance.Suggest("clove buds"))
	// Output: did you mean clove-bud?
}

// What is published of lemongrass, and where?
func ExampleFigure() {
	lemongrass, err := fragrance.LookUp("lemongrass")
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range lemongrass.Figures() {
		fmt.Println(f.CAS, f.Name, f.Low.PercentText(1), "to", f.High.PercentText(1), "% -", f.Source)
	}
	// Output: 5392-40-5 citral 75 to 85 % - Merck Index, Oil of lemon grass, edition not stated
}

// A fragrance that nobody knows but by its name may be weighed, and is not judged.
func ExampleUnknown() {
	moonlight := fragrance.Unknown("moonlight")
	fmt.Println(moonlight.OnlyAName(), len(moonlight.Caps(fragrance.IFRAAndEU)), moonlight.Unjudged(fragrance.IFRAAndEU)[0].Why)
	// Output: true 0 not listed
}

// What will lemongrass do to a white soap, and how is that known?
func ExampleColouring() {
	lemongrass, err := fragrance.LookUp("lemongrass")
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range lemongrass.Colours() {
		fmt.Println(c.Share.PercentText(0), "% of", c.Substance+":", c.Does, "-", c.How)
	}
	// Output: 85 % of citral: is yellow, and resinifies in alkali - memory
}

// Several things that a fragrance does are put together.
func ExampleBehaviour() {
	b := fragrance.Accelerates | fragrance.Rices
	fmt.Println(b.Words(), b&fragrance.Browns != 0)
	// Output: [accelerates rices] false
}

// The words that a formula file knows.
func ExampleBehaviours() {
	fmt.Println(fragrance.Behaviours())
	// Output: [accelerates rices seizes browns]
}

// Why is lemongrass not cleared, though its citral is within its limit?
func ExampleWhy() {
	lemongrass, err := fragrance.LookUp("lemongrass")
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, u := range lemongrass.Unjudged(fragrance.IFRAAlone) {
		fmt.Println(u.Why == fragrance.Unlisted, u.Why)
	}
	// Output: true not listed
}

// What does oakmoss extract leave open? Its composition is not held, and its supplier must
// give its word.
func ExampleUnjudged() {
	oakmoss, err := fragrance.LookUp("oakmoss-extract")
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, u := range oakmoss.Unjudged(fragrance.IFRAAlone) {
		fmt.Println(u.Why, u.Names())
	}
	// Output:
	// not listed []
	// specification [Oakmoss extracts]
}

// A number with a wrong check digit is no number.
func ExampleParseCAS() {
	cas, err := fragrance.ParseCAS("97-53-0")
	fmt.Println(cas, err)
	_, err = fragrance.ParseCAS("97-53-1")
	fmt.Println(err)
	// Output:
	// 97-53-0 <nil>
	// "97-53-1" is not a CAS number: its check digit is wrong; compare it with the supplier's list; if the other digits are right the last is 0
}

// Numbers can be compared: which figures of clove bud oil are of eugenol?
func ExampleCAS() {
	eugenol, err := fragrance.ParseCAS("97-53-0")
	if err != nil {
		fmt.Println(err)
		return
	}
	clove, err := fragrance.LookUp("clove-bud")
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range clove.Figures() {
		if f.CAS == eugenol {
			fmt.Println("up to", f.High.PercentText(0), "%,", f.Source.Title)
		}
	}
	// Output:
	// up to 90 %, Merck Index, Clove oil
	// up to 88 %, European Pharmacopoeia, Clove oil (1091)
	// up to 82 %, IFRA Standards, Annex on contributions from other sources
}
