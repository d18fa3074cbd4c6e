package sheet_test

import (
	"io"
	"os"
	"testing"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/sheet"
	"example.com/lyewright/units"
)

func benchmarkBatch(b *testing.B, name string) soap.Batch {
	b.Helper()
	file, err := os.Open("../../testdata/formulas/" + name + ".json")
	if err != nil {
		b.Fatal(err)
	}
	f, err := soap.ReadFormula(file)
	if err == nil {
		err = file.Close()
	}
	if err != nil {
		b.Fatal(err)
	}
	batch, err := f.Batch()
	if err != nil {
		b.Fatal(err)
	}
	return batch
}

// What people see: the sheet with its working, the caps, the colours as text and as a page.
func BenchmarkPages(b *testing.B) {
	whole, scented, dusk := benchmarkBatch(b, "benchmark"), benchmarkBatch(b, "scented-cups"), benchmarkBatch(b, "lantern-dusk")
	for _, page := range []struct {
		name  string
		write func() error
	}{
		{"sheet", func() error { return sheet.Write(io.Discard, whole, units.Gram) }},
		{"working", func() error { return sheet.WriteWorking(io.Discard, whole) }},
		{"caps", func() error { return sheet.WriteCaps(io.Discard, scented, units.Gram) }},
		{"tint", func() error { return sheet.WriteTint(io.Discard, dusk, units.Gram) }},
		{"page", func() error { return sheet.WriteTintPage(io.Discard, dusk) }},
	} {
		b.Run(page.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if err := page.write(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
