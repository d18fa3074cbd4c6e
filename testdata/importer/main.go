// Command lanternshop is what a shop's own program may look like that rests on
// lyewright: a module of its own, which reads orders and says what to weigh. Shop,
// orders and figures are invented.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"

	"example.com/lyewright/soap"
)

func main() {
	if err := run(os.Stdin, os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "lanternshop:", err)
		os.Exit(1)
	}
}

// run reads an order, a formula file, and writes its picking list.
func run(in io.Reader, out io.Writer) error {
	formula, err := soap.ReadFormula(in)
	var faults soap.Faults
	if errors.As(err, &faults) {
		return fmt.Errorf("the order has %d faults, the first at %s: %w", len(faults), faults[0].Path, err)
	}
	if err != nil {
		return err
	}
	list, err := Pick(formula)
	if err != nil {
		return err
	}
	_, err = io.WriteString(out, list)
	return err
}
