package soap_test

import (
	"os"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// A batch whose alkali was weighed a tenth too much, with all that would mend it:
// beside the same formula without any weighing.
func BenchmarkWeighed(b *testing.B) {
	for _, name := range []string{"benchmark", "lantern-walk"} {
		weighed(b, name)
	}
}

func weighed(b *testing.B, name string) {
	text, err := os.ReadFile("../testdata/formulas/" + name + ".json")
	if err != nil {
		b.Fatal(err)
	}
	f, _, err := soap.ParseFormula(text)
	if err != nil {
		b.Fatal(err)
	}
	plan, err := f.Batch()
	if err != nil {
		b.Fatal(err)
	}
	for _, a := range plan.Alkalis {
		f.Weighed.Alkalis = append(f.Weighed.Alkalis, soap.WeighedAlkali{Alkali: a.Alkali, Mass: units.Sum{}.Plus(a.Dry.Mass,
			units.Percent(110)).Mass(units.Nearest)})
	}
	for _, stage := range []soap.Stage{soap.NotWeighed, soap.AtLye, soap.AtPot, soap.AtParts} {
		f.Weighed.Stage = stage
		at := f
		if stage == soap.NotWeighed {
			at.Weighed = soap.Weighed{}
		}
		b.Run(name+"/"+stage.String(), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				batch, err := at.Batch()
				if err != nil {
					b.Fatal(err)
				}
				if stage != soap.NotWeighed && len(batch.Weighed.Remedies) == 0 {
					b.Fatal("nothing mends it")
				}
			}
		})
	}
}
