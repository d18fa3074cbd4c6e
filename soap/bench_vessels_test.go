package soap_test

import (
	"os"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

// What six vessels of three parts add to a batch: beside the formula that its answer
// is, with oils and shares and no vessels.
func BenchmarkVessels(b *testing.B) {
	text, err := os.ReadFile("../testdata/formulas/benchmark.json")
	if err != nil {
		b.Fatal(err)
	}
	f, _, err := soap.ParseFormula(text)
	if err != nil {
		b.Fatal(err)
	}
	mm := units.Millimetres[int]
	f.Size = soap.Size{Vessels: []soap.Vessel{
		{Name: "cup", Part: "base", Count: 12, Shape: mould.Frustum{Top: mm(60), Bottom: mm(45), Height: mm(40), Fill: units.Percent(90)}},
		{Name: "swirl", Part: "cloud", On: "cup", Shape: mould.Cone{Base: mm(45), Tip: mm(8), Height: mm(35), Fill: units.Percent(85)}},
		{Name: "spark", Part: "flame", On: "cup", Trial: mould.Trial{Count: 6, Mass: units.Grams(12)}},
		{Name: "loaf", Layers: []soap.Layer{{Part: "base", Share: units.Percent(60)}, {Part: "flame", Rest: true}}, Count: 1, Cuts: 10, Shape: mould.Box{Length: mm(200), Width: mm(70), Depth: mm(60)}},
		{Name: "half-moon", Part: "flame", Count: 6, Shape: mould.HalfSphere{Diameter: mm(50)}},
		{Name: "slab", Part: "cloud", Count: 1, Cuts: 6, Shape: mould.Slab{Length: mm(180), Width: mm(120), Height: mm(25), Liner: units.Millimetres(1)}},
	}}
	for i := range f.Parts {
		f.Parts[i].Share, f.Parts[i].Rest = units.Ratio{}, false
	}
	batch, err := f.Batch()
	if err != nil {
		b.Fatal(err)
	}
	resolved := f
	resolved.Size = soap.Size{Oils: batch.OilsTotal}
	resolved.Parts = append([]soap.Part(nil), f.Parts...)
	for i := range resolved.Parts {
		resolved.Parts[i].Share = batch.Parts[i].Share
	}
	for _, c := range []struct {
		name string
		f    soap.Formula
	}{{"plain", resolved}, {"vessels", f}} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := c.f.Batch(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
