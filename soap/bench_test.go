package soap_test

import (
	"os"
	"strings"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

// The measure of the house: eight oils, two alkalis, three parts with carriers,
// and findings of every severity.
func readBench(b *testing.B) []byte { return readExample(b, "benchmark") }

func readExample(b *testing.B, name string) []byte {
	b.Helper()
	text, err := os.ReadFile("../testdata/formulas/" + name + ".json")
	if err != nil {
		b.Fatal(err)
	}
	return text
}

func BenchmarkBatch(b *testing.B) {
	f, _, err := soap.ParseFormula(readBench(b))
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := f.Batch(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkTextToJSON(b *testing.B) {
	text := readBench(b)
	b.ReportAllocs()
	for b.Loop() {
		f, _, err := soap.ParseFormula(text)
		if err != nil {
			b.Fatal(err)
		}
		batch, err := f.Batch()
		if err != nil {
			b.Fatal(err)
		}
		if _, err := batch.MarshalJSON(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkParse(b *testing.B) {
	text := readBench(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, _, err := soap.ParseFormula(text); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkAtLeast(b *testing.B) {
	f, _, err := soap.ParseFormula(readBench(b))
	if err != nil {
		b.Fatal(err)
	}
	f.Oils = f.Oils[:3]
	f.Oils[2].Share, f.Oils[2].Rest = f.Oils[2].Share.Sub(f.Oils[2].Share), true
	f.Oils[2] = soap.OilLine{Oil: f.Oils[2].Oil, Rest: true}
	f.Superfat = soap.Superfat{AtLeast: f.Superfat.Planned}
	for i := range f.Alkalis { // a promise rests on a range, and the file has a single figure
		if purity := &f.Alkalis[i].Purity; purity.Typical.Given() {
			purity.Low, purity.High = purity.Typical.Sub(units.Percent(1)), purity.Typical.Add(units.Percent(1))
		}
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := f.Batch(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkToJSON(b *testing.B) {
	f, _, err := soap.ParseFormula(readBench(b))
	if err != nil {
		b.Fatal(err)
	}
	batch, err := f.Batch()
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := batch.MarshalJSON(); err != nil {
			b.Fatal(err)
		}
	}
}

// Cups from the moulds with two fragrances in one part and one in the other: a batch, the
// same with the most of one asked for, and the caps.
func BenchmarkScented(b *testing.B) {
	text := readExample(b, "scented-cups")
	loaded := strings.Replace(string(text), `"load": "max", "margin": "10 %"`, `"load": "4.4 % of oils"`, 1)
	for name, text := range map[string]string{"loads": loaded, "max": string(text)} {
		f, err := soap.ReadFormula(strings.NewReader(text))
		if err != nil {
			b.Fatal(err)
		}
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := f.Batch(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	f, err := soap.ReadFormula(strings.NewReader(loaded))
	if err != nil {
		b.Fatal(err)
	}
	batch, err := f.Batch()
	if err != nil {
		b.Fatal(err)
	}
	b.Run("caps", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			batch.Caps()
		}
	})
}

// Cups at dusk: a part whose loads are looked for, and the colours of all parts.
func BenchmarkTint(b *testing.B) {
	f, _, err := soap.ParseFormula(readExample(b, "lantern-dusk"))
	if err != nil {
		b.Fatal(err)
	}
	batch, err := f.Batch()
	if err != nil {
		b.Fatal(err)
	}
	b.Run("batch", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := f.Batch(); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("tint", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			batch.Tint()
		}
	})
}

func BenchmarkLookUpOil(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := soap.LookUpOil("shea-butter"); err != nil {
			b.Fatal(err)
		}
	}
}
