package lye_test

import (
	"fmt"

	"example.com/lyewright/soap/lye"
	"example.com/lyewright/units"
)

// From the bottle to the jug. By hand: 2 × 36.5 − 36.8 = 36.2 mL of 1 N acid for 1.5 g are
// 36.2 × 39.997/1500 = 96.53 % of hydroxide; four readings of 0.02 mL put 0.08 mL on either
// side; 0.3 × 105.988/1500 = 2.12 % are carbonate.
func Example() {
	first, _ := units.ParseVolume("36.5 mL")
	total, _ := units.ParseVolume("36.8 mL")
	burette, _ := units.ParseVolume("0.02 mL")
	found, err := lye.Titration{
		Alkali: lye.SodiumHydroxide, Sample: units.Milligrams(1500), Normality: units.Whole(1),
		First: first, Total: total, Burette: burette,
	}.Result()
	if err != nil {
		fmt.Println(err) // everything that is wrong, together
		return
	}
	purity, _ := found.Range()
	fmt.Println(purity.Typical.PercentText(1), "% of hydroxide,", purity.Low.PercentText(1), "to", purity.High.PercentText(1))
	fmt.Println(found.Carbonate.PercentText(2), "% of carbonate")

	heat, err := lye.Mixing{
		Water: units.Grams(200), WaterAt: units.Celsius(20), Room: units.Celsius(20),
		Alkalis: []lye.Portion{{Alkali: lye.SodiumHydroxide, Mass: units.Grams(100), Hydroxide: purity.High}},
	}.Bound()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("100 g of it in 200 g of water: up to", heat.Final.Ratio().Round(0, units.Up), "°C")
	// Output:
	// 96.5 % of hydroxide, 96.3 to 96.7
	// 2.12 % of carbonate
	// 100 g of it in 200 g of water: up to 107 °C
}

// An exercise of two end points: of 17.5 mL to phenolphthalein, carbonate took the
// 1.5 mL that it takes again to methyl orange. 16.0 × 0.1 × 39.997/400 and 1.5 × 0.1
// × 105.988/400.
func ExampleTitration_Result() {
	first, _ := units.ParseVolume("17.5 mL")
	found, err := lye.Titration{
		Alkali: lye.SodiumHydroxide, Sample: units.Milligrams(400), Normality: units.MustRatio("0.1"),
		First: first, Total: units.Millilitres(19),
	}.Result()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(found.Hydroxide.PercentText(1), "% of hydroxide,", found.Carbonate.PercentText(2), "% of carbonate")
	// Output: 16 % of hydroxide, 3.97 % of carbonate
}

// One end point counts carbonate as hydroxide. With what the bottle may hold of it
// there is a low end: 36.60 × 39.997/1500 = 97.59 %, less 0.7547 × 3 %.
func ExampleTitrated_Range() {
	total, _ := units.ParseVolume("36.60 mL")
	found, err := lye.Titration{
		Alkali: lye.SodiumHydroxide, Sample: units.Milligrams(1500), Normality: units.Whole(1),
		Total: total, CarbonateMax: units.Percent(3),
	}.Result()
	if err != nil {
		fmt.Println(err)
		return
	}
	purity, ok := found.Range()
	fmt.Println(purity.Low.PercentText(2), "to", purity.High.PercentText(2), "%, planned at", purity.Typical.PercentText(2), "%", ok)
	// Output: 95.33 to 97.59 %, planned at 97.59 % true
}

// 98 % when it was titrated, and 2 % heavier since: 0.98/1.02 if all of it is water,
// (0.98 − 0.02 × 1.8177)/1.02 if all is carbon dioxide.
func ExampleAged() {
	purity, err := lye.Aged(lye.SodiumHydroxide, units.Exactly(units.Percent(98)), units.Percent(2))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(purity.Low.PercentText(1), "to", purity.High.PercentText(1), "%")
	// Output: 92.5 to 96.1 %
}

// Of potassium hydroxide a certificate of limits is not enough: it is sold with water in
// it, and the lot's own figure is planned with. 85 − 0.8119 × 3.5 at the least.
func ExampleCertificate() {
	purity, err := lye.Certificate{
		AssayMin: units.Percent(85), AssayMax: units.Percent(100),
		CarbonateMax: units.MustRatio("3.5 %"), Typical: units.Percent(88),
	}.Purity(lye.PotassiumHydroxide)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(purity.Low.PercentText(2), "to", purity.High.PercentText(2), "%, planned at", purity.Plan().PercentText(2), "%")
	// Output: 82.16 to 100 %, planned at 88 %
}

// What the strictest of the grades lets through, and whether somebody saw its text.
func ExampleGrade() {
	grade, err := lye.LookUpGrade("acs-2017", lye.SodiumHydroxide)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("assay", grade.AssayMin.PercentText(1), "%, carbonate up to", grade.CarbonateMax.PercentText(1), "%")
	fmt.Println(grade.Source)
	// Output:
	// assay 97 %, carbonate up to 1 %
	// ACS Reagent Chemicals, 2017, monograph Sodium Hydroxide (recalled, not read)
}

// Which grades are there of sodium hydroxide?
func ExampleGrades() {
	for _, g := range lye.Grades() {
		if g.Alkali == lye.SodiumHydroxide {
			fmt.Println(g.ID)
		}
	}
	// Output:
	// acs-2017
	// jecfa-2002
	// ph-eur-7
	// usp-nf-35
}

// 97.0 % of total alkali and 2.0 % of carbonate at the most: 97.0 − 0.7547 × 2.0.
func ExampleLookUpGrade() {
	grade, err := lye.LookUpGrade("ph-eur-7", lye.SodiumHydroxide)
	if err != nil {
		fmt.Println(err)
		return
	}
	purity, err := grade.Purity(units.Ratio{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(purity.Low.PercentText(1), "to", purity.High.PercentText(1), "%")
	_, err = lye.LookUpGrade("ph-eur-7", lye.PotassiumHydroxide)
	fmt.Println(err)
	// Output:
	// 95.5 to 100 %
	// grade: "ph-eur-7" has no limits for potassium-hydroxide that are known here; the grades are acs-2017, jecfa-2002, usp-nf-35
}

// The molar masses are added up from recalled atomic weights, and say so.
func ExampleAtomicWeights() {
	fmt.Println(lye.AtomicWeights())
	// Output: IUPAC CIAAW, abridged standard atomic weights, 2021, H, C, O, Na, K (recalled, not read)
}

func ExampleTitrationSource() {
	fmt.Println(lye.TitrationSource().Title)
	// Output: United States Pharmacopeia and National Formulary, and JECFA, monographs Sodium Hydroxide and Potassium Hydroxide
}
