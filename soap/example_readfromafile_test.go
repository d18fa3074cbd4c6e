package soap_test

import (
	"errors"
	"fmt"
	"io"
	"os"

	"example.com/lyewright/soap"
)

// A formula read from a file, and its parts.
//
// By hand: 0.6 × 800 g of oils, 0.94 of whose demand meets alkali; the base's own 11.52 g of
// sunflower oil (3 × 0.8 % of 480 g) at 190.5 mg/g demand 2.19456 g of KOH besides.
func Example_readFromAFile() {
	if err := partsOf(os.Stdout, "../testdata/formulas/lantern-walk.json"); err != nil {
		fmt.Println(err)
	}
	// Output:
	// warning lantern-pear: weighed, but not judged. Its limits, its behaviour and its own chemistry are not known here.
	// base of 480 g of oils, superfat 8.06 %
	//   3.8 g ultramarine-blue in 11.5 g sunflower
	//   14.4 g lantern-pear
	// cloud of 320 g of oils, superfat 6 %
	//   3.8 g titanium-dioxide in 7.7 g water
	//   4 g fine salt
}

// partsOf reads a formula file and writes what its parts will be.
func partsOf(w io.Writer, path string) error {
	file, err := os.Open(path)
	if err != nil {
		return err
	}
	formula, err := soap.ReadFormula(file)
	if err := errors.Join(err, file.Close()); err != nil {
		return err // soap.Faults, one a line, each with its line and column
	}
	batch, err := formula.Batch()
	if err != nil {
		return err
	}
	for _, f := range batch.Findings {
		if f.Severity > soap.Note {
			fmt.Fprintln(w, f.Severity, f.Message())
		}
	}
	for _, part := range batch.Parts {
		fmt.Fprintln(w, part.Name, "of", part.Oils, "of oils, superfat", part.Superfat.Planned.PercentText(2), "%")
		for _, a := range part.Additions {
			fmt.Fprint(w, "  ", a.Weigh, " ", a.Name)
			if a.Carrier != nil {
				fmt.Fprint(w, " in ", a.Carrier.Weigh, " ", a.Carrier.Name)
			}
			fmt.Fprintln(w)
		}
	}
	return nil
}
